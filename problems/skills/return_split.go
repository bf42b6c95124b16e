package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var returnSplitSkill = problems.Skill{
	ID: "return-split", Title: "Where the return goes at the mixing valve",
	Chapter: 7, Order: 100, Year: 4, Kind: problems.Sum,
	Ask: "At night nobody draws. {flow} of return comes back at {back}. One part goes into the heater and leaves it at {hot}; the other goes to the cold port of the master mixing valve, where {cold} cold water stands still. The valve sends {mixed} out again. How much of the return goes to the heater, and how much to the valve's cold port?",
	Givens: []problems.Given{
		{Name: "flow", Says: "return flow", Measure: &measure.FlowRate},
		{Name: "back", Says: "temperature of the return", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature at the heater's outlet", Measure: &measure.Temp},
		{Name: "mixed", Says: "temperature behind the mixing valve", Measure: &measure.Temp},
		{Name: "cold", Says: "temperature of the cold supply", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "made_up", Says: "degrees that the loop has lost, from the valve round to the return", Measure: &measure.TempDrop,
			Formula: "mixed - back",
			Why:     "The heater has to put back just what the loop has given off.",
			Slips: []problems.Slip{{
				ID: "over-the-cold", Formula: "mixed - cold", Family: "cold-for-return",
				Did:  "You reckoned from the cold supply, {cold}.",
				Why:  "While nobody draws no cold water comes in. What enters the cold port is return, at {back}.",
				Next: "Ask which water really moves at this hour.",
			}},
		},
		{
			Name: "lift", Says: "degrees that the heater adds, from the return to its outlet", Measure: &measure.TempDrop,
			Formula: "hot - back",
			Why:     "Every gallon or litre that passes the heater is warmed from the return's temperature to the store's.",
			Slips: []problems.Slip{{
				ID: "heater-from-cold", Formula: "hot - cold", Family: "cold-for-return",
				Did:  "You let the heater start from the cold supply, {cold}.",
				Why:  "It is the return that goes in, and that is at {back} already.",
				Next: "Ask which water really moves at this hour.",
			}},
		},
		{
			Name: "part", Says: "share of the return that goes to the heater", Measure: &measure.Share,
			Formula: "made_up / lift",
			Why:     "A few gallons warmed by much do the same as all of them warmed by little: the shares are as the degrees.",
			Slips: []problems.Slip{
				{
					ID: "upside-down", Formula: "lift / made_up",
					Did:  "You divided the heater's degrees by the loop's and got more than 1.",
					Why:  "A share of the return cannot be more than all of it.",
					Next: "The smaller difference goes on top.",
				},
				{
					ID: "part-of-the-port", Formula: "(lift - made_up) / lift",
					Did:  "You gave the share of the cold port.",
					Why:  "The nearer the valve's water is to the return, the less has to go through the heater.",
					Next: "A loop that loses little needs little from the heater.",
				},
			},
		},
		{
			Name: "to_heater", Says: "return into the heater", Measure: &measure.FlowRate,
			Formula: "flow x part",
			Why:     "The share says how much of the return it is.",
			Would:   splitToHeater,
			Slips: []problems.Slip{{
				ID: "all-to-the-heater", Formula: "flow",
				Did:  "You sent all of the return to the heater.",
				Why:  "Then the cold port gets nothing, and the valve can only send {hot} out: it creeps hot through the night and scalds in the morning.",
				Next: "The return has two places to go: heater and cold port. Both pipes must be there.",
			}},
		},
		{
			Name: "to_port", Says: "return into the valve's cold port", Measure: &measure.FlowRate,
			Formula: "flow - to_heater",
			Why:     "What does not pass the heater cools its water down in the valve.",
			Would:   splitToPort,
			Slips: []problems.Slip{{
				ID: "heater-given-for-port", Formula: "to_heater",
				Did:  "You gave the heater's part again.",
				Why:  "The two parts add up to {flow}, and they are not equal.",
				Next: "Write heater or port beside every flow.",
			}},
		},
	},
	Holds: "At night a loop is closed: the valve gets hot water from the heater and return at its cold port, and mixes what it sends out. The heater must add the heat that the loop has lost, so it gets that share of the return and no more. Without a pipe from the return to the cold port the valve cannot do it.",
	Cautions: []string{
		scald, legionella,
		"Checks in both legs keep hot and cold from crossing through the valve. A crossed valve sends hot water into the cold pipe at night.",
	},
	Sources: []problems.Source{
		{Says: "Return to the heater's inlet and to the cold or return port of the mixing valve. Chicago, 18-29-607 (after International Plumbing Code 607.2.2)", Confidence: solver.Confirmed},
		{Says: "Heat balance of two streams; physics", Confidence: solver.Practice},
		loopReturn,
	},
	Draw: drawReturnSplit,
	Solve: func(w problems.World) float64 {
		b, q := w.Building, w.Flow("flow")
		return float64(q - solver.ToHeater(q, b.Heater.Hot, b.Mixing.Mixed, w.Temperature("back")))
	},
}

func init() { add(&returnSplitSkill) }

func splitToHeater(w problems.World, v float64) problems.Outcome { return split(w, unit.Flow(v)) }
func splitToPort(w problems.World, v float64) problems.Outcome {
	return split(w, w.Flow("flow")-unit.Flow(v))
}

// split sends so much of the return to the heater and the rest to the port.
func split(w problems.World, heated unit.Flow) problems.Outcome {
	all, back, hot, wanted := w.Flow("flow"), w.Temperature("back"), w.Building.Heater.Hot, w.Building.Mixing.Mixed
	lead := "With " + w.Rate(heated) + " through the heater and " + w.Rate(all-heated) + " through the cold port, the valve would send out "
	switch {
	case w.Rate(heated) == w.Rate(all):
		heated = all
		lead = "With all of the return through the heater, the valve would send out "
	case heated > all:
		lead = w.Rate(heated) + " cannot go to the heater where " + w.Rate(all) + " comes back. With all of it heated, the valve would send out "
		heated = all
	case heated < 0:
		lead = w.Rate(all-heated) + " cannot go to the port where " + w.Rate(all) + " comes back. With nothing heated, the valve would send out "
		heated = 0
	}
	got := solver.Blend(heated, hot, all-heated, back)
	o := problems.Outcome{Kept: w.Temp(got) == w.Temp(wanted)}
	o.Marks = []problems.Mark{{Where: problems.AtMixing, Text: w.Temp(got), Kept: o.Kept}}
	switch {
	case o.Kept:
		o.Says = []string{lead + w.Temp(got) + ", as it should: the heater adds what the loop has lost."}
	case got > wanted:
		o.Says = []string{lead + w.Temp(got) + "; " + w.Temp(wanted) + " is wanted. The loop would creep hotter through the night."}
	default:
		o.Says = []string{lead + w.Temp(got) + "; " + w.Temp(wanted) + " is wanted. The loop would cool on every turn, and Legionella grows in lukewarm water."}
	}
	return o
}

// drawReturnSplit draws a night's loop whose return keeps the guideline, and
// whose part is clear of a half.
func drawReturnSplit(s *building.Sheet) {
	heaterTower(s)
	type aim struct{ hot, mixed, back, cold float64 }
	var fit []aim
	for _, hot := range lists(s, []float64{140, 145, 150, 155, 160}, []float64{60, 62, 65, 68, 70}) {
		for _, mixed := range lists(s, []float64{130, 132, 134, 135}, []float64{55, 56, 57, 58}) {
			for _, back := range lists(s, []float64{124, 125, 126, 127}, []float64{51, 52, 53}) {
				for _, cold := range colds(s) {
					part := (mixed - back) / (hot - back)
					if part > 0.15 && math.Abs(part-0.5) > 0.07 && part < 0.75 && mixed-back >= s.Pick([]float64{5}, []float64{3}) {
						fit = append(fit, aim{hot, mixed, back, cold})
					}
				}
			}
		}
	}
	a, _ := pick(s, fit)
	s.Building.Heater.Hot, s.Building.Heater.Cold = degrees(s, a.hot), degrees(s, a.cold)
	s.Building.Mixing = &solver.MixingValve{Mixed: degrees(s, a.mixed)}
	s.Building.Loop = &solver.Loop{Drop: unit.TempDifference(degrees(s, a.mixed) - degrees(s, a.back))}
	s.Set("flow", s.Pick([]float64{3, 4, 5, 6, 8, 10}, []float64{0.2, 0.25, 0.3, 0.4, 0.5, 0.6}))
	s.Set("back", a.back)
	s.Set("hot", a.hot)
	s.Set("mixed", a.mixed)
	s.Set("cold", a.cold)
}
