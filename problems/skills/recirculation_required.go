package skills

import (
	"fmt"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// notCounted stands for a number of storeys that no building has, where a
// code does not count them.
const notCounted = 1000

// Slips that only some scenarios have divide by a condition: where it does not
// hold they divide by nothing and have no value.
var recirculationRequiredSkill = problems.Skill{
	ID: "recirculation-required", Title: "Must the hot water be kept hot in the pipe?",
	Chapter: 7, Order: 10, Year: 2, Kind: problems.Choice,
	Ask: "Hot water is supplied to {storeys} storeys. From the heater the pipe runs {to_riser} to the riser, {up} up it, and {branch} along the branch to the farthest outlet. {kept_says} The rule ({code}): {rule_says}. Must this pipe be recirculated or heat traced?",
	Givens: []problems.Given{
		{Name: "to_riser", Says: "pipe from the heater to the riser", Measure: &measure.PipeLength},
		{Name: "up", Says: "riser up to the branch", Measure: &measure.PipeLength},
		{Name: "branch", Says: "branch to the farthest outlet", Measure: &measure.PipeLength},
		{Name: "kept_hot", Says: "pipe of these that is kept hot and counts as the source", Measure: &measure.PipeLength},
		{Name: "storeys", Says: "storeys supplied with hot water", Measure: &measure.Count},
		{Name: "length_limit", Says: "longest pipe without", Measure: &measure.PipeLength},
		{Name: "storeys_limit", Says: "most storeys without", Measure: &measure.Count},
	},
	Rules: []problems.Rule{
		{
			Name: "whole", Says: "developed length, heater to farthest outlet", Measure: &measure.PipeLength,
			Formula: "to_riser + up + branch",
			Why:     "Developed length follows the pipe, along every leg, up and across. That is the way the hot water has to come.",
			Slips: []problems.Slip{
				{
					ID: "riser-left-out", Formula: "to_riser + branch",
					Did:  "You measured {got} on the plan and left out the {up} of riser.",
					Why:  "A plan shows a riser as a dot. Its water cools like all the rest and has to be run off first.",
					Next: "Plan for the runs, section for the risers: a length needs both drawings.",
				},
				{
					ID: "branch-left-out", Formula: "to_riser + up",
					Did:  "You stopped at the top of the riser.",
					Why:  "The rule asks for the farthest outlet, and {branch} of branch still lie before it.",
					Next: "End at the tap: that is where someone waits.",
				},
				{
					ID: "one-leg", Formula: "up",
					Did:  "You gave the riser alone, {up}.",
					Why:  "The water comes through every leg, not only the vertical one.",
					Next: "Put a finger on the heater and follow the pipe to the outlet; add each leg as you leave it.",
				},
			},
		},
		{
			Name: "length", Says: "length as the rule measures it", Measure: &measure.PipeLength,
			Formula: "whole - kept_hot",
			Why:     "A rule says where it measures from: {from_says}.",
			Slips: []problems.Slip{{
				ID: "measured-from-the-heater", Formula: "whole / (kept_hot > 0)",
				Did:  "You measured from the heater, {whole}.",
				Why:  "This code lets pipe that is kept hot count as the source. Behind the loop only the branch to the outlet is cold in the morning.",
				Next: "Ask where the water is hot for certain, and measure from there.",
			}},
		},
		{
			Name: "by_length", Says: "longer than the rule allows", Measure: &measure.Answer, Choices: []string{"no", "yes"}, Table: "limits", Row: "recirculation",
			Formula: "length > length_limit",
			Why:     "\"More than\" means the limit itself is still allowed.",
			Slips: []problems.Slip{{
				ID: "length-read-backwards", Formula: "length <= length_limit",
				Did:  "You wrote {got} for {length} beside the limit of {length_limit}.",
				Why:  "The rule speaks of pipe that is longer than its limit. Shorter pipe, or pipe just as long, does not meet it.",
				Next: "Say it as a sentence: is {length} more than {length_limit}?",
			}},
		},
		{
			Name: "by_storeys", Says: "more storeys than the rule allows", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "storeys > storeys_limit",
			Why:     "Some codes count storeys as well, some do not. Count those that get hot water.",
			Slips: []problems.Slip{
				{
					ID: "more-than-as-at-least", Formula: "1 / ((storeys >= storeys_limit) and (storeys <= storeys_limit))",
					Did:  "You took {storeys} storeys to be more than {storeys_limit}.",
					Why:  "\"More than {storeys_limit}\" begins one storey higher. Other places write \"{storeys_limit} storeys or higher\"; there your answer would be right.",
					Next: "Read the joining words twice when a number stands exactly at the limit.",
				},
				{
					ID: "another-codes-storeys", Formula: "1 / ((storeys > 4) and (storeys_limit > 100))",
					Did:  "You counted storeys, as another code does.",
					Why:  "This rule names a length only. Storeys are not counted in it.",
					Next: "Take the limits from the rule in front of you, not from memory.",
				},
			},
		},
		{
			Name: "required", Says: "recirculation or heat tracing", Measure: &measure.Answer, Choices: []string{"not required", "required"},
			Formula: "by_length or by_storeys",
			Why:     "The two conditions are joined by \"or\": one alone is enough.",
			Slips: []problems.Slip{{
				ID: "both-asked", Formula: "0 / abs(by_length - by_storeys)",
				Did:  "You asked for both conditions at once.",
				Why:  "They are joined by \"or\". A low building with long pipe needs it, and so does a tall one with short pipe.",
				Next: "Find the small word between the conditions and underline it.",
			}},
		},
	},
	Holds: "Water standing in a hot pipe cools in half an hour or so. The longer the pipe, the more is run off and wasted before hot water comes, and the longer it stands lukewarm. So codes set a length, some a number of storeys too, past which the pipe is kept hot.",
	Cautions: []string{
		legionella,
		"Dead legs are kept short even where no rule asks for it, and unused branches are cut off at the main.",
		"Rules differ from place to place and are amended locally: length, storeys, and where the length is measured from. The authority decides.",
	},
	Sources: []problems.Source{
		{Says: "More than 30 m of developed length or more than 4 storeys. Ontario Building Code 2012, 7.6.1.1", Confidence: solver.Confirmed},
		{Says: "The same in the National Plumbing Code of Canada 2020, 2.6.1.1.(2); no such rule in the model text of the Uniform Plumbing Code", Confidence: solver.Memory},
		{Says: "50 ft from the source to the fixture. International Plumbing Code 2015 to 2021, 607.2", Confidence: solver.Confirmed},
		{Says: "Where a code has no such rule: 100 ft (30 m), or more than 4 storeys", Confidence: solver.Practice},
	},
	Draw: drawRecirculation,
	Solve: func(w problems.World) float64 {
		b := w.Building
		rule := solver.RecirculationRule{Length: solver.Limit{SI: unit.SIUnit(unit.Dim{1}).Of(w.SI("length_limit"))}, Storeys: int(w.SI("storeys_limit"))}
		if rule.Required(b.Loop.FarthestFromLoop, b.Storeys()) {
			return 1
		}
		return 0
	},
}

func init() { add(&recirculationRequiredSkill) }

// recirculationRule is the profile's rule; that of the shop where the code has
// none, and says so.
func recirculationRule(s *building.Sheet) (r solver.RecirculationRule, says string) {
	r = s.Profile.Recirculation
	if !r.Length.None {
		return r, r.Words
	}
	if shop, ok := solver.ProfileByID("shop"); ok {
		return shop.Recirculation, r.Words + ". Practice: " + shop.Recirculation.Words
	}
	return r, r.Words
}

// drawRecirculation draws a low building, whose storeys may be exactly on the
// rule.
func drawRecirculation(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: []solver.Use{solver.Apartment, solver.Hotel, solver.Residence, solver.Office}, Min: 3, Max: s.Int(3, 6)})
	s.SetStreet(s.PickPlate([]float64{70, 75}, []float64{475, 500}), s.PickPlate([]float64{60, 62}, []float64{420, 430}), 0, "on the gauge in the meter room")
	whole, cold, _ := TellRecirculation(s, t.Storeys, tape(s, t.Up(t.Storeys)+s.Shower()))
	t.Loop = &solver.Loop{FarthestFromHeater: s.Length(whole), FarthestFromLoop: s.Length(cold)}
}

// storeysLimit is the most storeys that the rule leaves alone.
func storeysLimit(r solver.RecirculationRule) building.Value {
	v := building.Value{Name: "storeys_limit", Value: float64(r.Storeys)}
	switch {
	case r.Storeys == 0:
		v.Value, v.Text = notCounted, "not counted"
	case r.OrMore:
		v.Value = float64(r.Storeys - 1)
		v.Text = fmt.Sprintf("%d", r.Storeys-1)
	}
	return v
}
