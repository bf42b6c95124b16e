package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var tapWaitSkill = problems.Skill{
	ID: "tap-wait", Title: "Waiting for hot water at a tap",
	Chapter: 7, Order: 30, Year: 2, Kind: problems.Sum,
	Ask: "The loop is hot up to the tee. From there a branch of {size} copper tube, type L, bore {bore} (nominal {nominal}), runs {length} to {tap} that lets out {flow}. The branch has gone cold. How long does it take until hot water comes, if the pipe only has to empty once?",
	Givens: []problems.Given{
		{Name: "bore", Says: "inside diameter of the branch", Measure: &measure.Bore},
		{Name: "nominal", Says: "nominal size of the branch", Measure: &measure.Bore},
		{Name: "length", Says: "branch from the loop to the tap", Measure: &measure.PipeLength},
		{Name: "flow", Says: "flow of the tap", Measure: &measure.OutletFlow},
	},
	Rules: []problems.Rule{
		{
			Name: "content", Says: "water in each foot or metre of the branch", Measure: &measure.PipeContent,
			Formula: "content_factor x (bore / bore_base)^2",
			Why:     "A pipe holds the area of its opening times its length, and the area grows with the square of the bore.",
			Slips: []problems.Slip{{
				ID: "nominal-for-bore", Formula: "content_factor x (nominal / bore_base)^2",
				Did:  "You put in the nominal size, {nominal}.",
				Why:  "The nominal size is a name. The water stands in the bore, {bore}, and the square makes more of the difference.",
				Next: "Take the inside diameter from the tube's table, for its type.",
			}},
		},
		{
			Name: "volume", Says: "cold water standing in the branch", Measure: &measure.Tank,
			Formula: "content x length",
			Why:     "All of it has to leave the pipe before the loop's water arrives.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "length / content",
				Did:  "You divided the length by the content.",
				Why:  "A pipe that holds more for each foot must come out with more water, not with less.",
				Next: "Gallons for a foot times feet leaves gallons; litres for a metre times metres leaves litres.",
			}},
		},
		{
			Name: "run_off", Says: "time to run it off, in minutes", Measure: &measure.FillTime,
			Formula: "volume / flow",
			Why:     "The flow says how much leaves in a minute.",
			Slips: []problems.Slip{{
				ID: "upside-down", Formula: "flow / volume",
				Did:  "You divided the flow by the water in the pipe.",
				Why:  "Then a longer branch would make a shorter wait.",
				Next: "More water, longer wait: the water stands on top.",
			}},
		},
		{
			Name: "wait", Says: "waiting time in seconds", Measure: &measure.TimeSeconds,
			Formula: "run_off x seconds_per_minute",
			Why:     "Taps are told for a minute; people wait in seconds.",
			Slips: []problems.Slip{
				{
					ID: "minutes-as-seconds", Formula: "run_off",
					Did:  "You gave the minutes as seconds.",
					Why:  "The flow is told for a minute, so volume over flow is in minutes.",
					Next: "Write the unit behind the quotient before you read it out.",
				},
				{
					ID: "divided-by-sixty", Formula: "run_off / 60",
					Did:  "You divided by 60.",
					Why:  "A minute is sixty seconds, so there are more seconds than minutes.",
					Next: "From large units to small ones the number grows.",
				},
			},
		},
	},
	Holds:    "What stands cold in a branch has to run off at the tap's flow. A wide branch on a slow tap makes the longest wait: 3/4 in on a water-saving lavatory is worse than 1/2 in on a shower. The pipe's own metal takes heat as well, so the real wait is longer, often by half.",
	Cautions: []string{"Water that waits in a long branch is lukewarm for hours each day. Keep branches short and no wider than needed, and flush those that are seldom used.", legionella, scald},
	Sources: []problems.Source{
		{Says: "Volume over flow, 1.75 gal at 1.5 gpm in 70 s: an article of a builders' journal on hot water circulation", Confidence: solver.Confirmed},
		{Says: "Real waits are longer, for the pipe warms too", Confidence: solver.Practice},
		tubeSource,
	},
	Draw: drawTapWait,
	Solve: func(w problems.World) float64 {
		part := float64(w.Length("bore") / w.Length("bore_base"))
		return solver.DrawnOff(w.SI("content_factor")*part*part, w.Building.Loop.FarthestFromLoop, w.Flow("flow"))
	},
}

func init() { add(&tapWaitSkill) }

// drawTapWait draws a branch of 1/2 to 1 in to a lavatory, sink or shower,
// with a wait that people know.
func drawTapWait(s *building.Sheet) {
	heaterTower(s)
	type tap struct {
		name   string
		us, si []float64
	}
	of, _ := pick(s, []tap{
		{"a lavatory tap", []float64{0.5, 1, 1.2, 1.5}, []float64{1.9, 4.5, 5.7}},
		{"a kitchen tap", []float64{1.5, 1.8, 2.2}, []float64{5.7, 6.8, 8.3}},
		{"a shower", []float64{1.8, 2, 2.5}, []float64{6.8, 7.6, 9.5}},
	})
	flow := s.Pick(of.us, of.si)
	tube, _ := pick(s, solver.Tubes[:2])
	p := tubeSize(s, tube, solver.TypeL)
	holds := 0.0408 * p.bore * p.bore
	if !s.US() {
		holds = 0.0007854 * p.bore * p.bore
	}
	var fit []float64
	for _, v := range lists(s, []float64{10, 12, 15, 18, 20, 25, 30, 35, 40, 45, 50}, []float64{3, 3.5, 4, 5, 6, 7, 8, 9, 10, 12, 15}) {
		minutes, volume := holds*v/flow, holds*v
		if wait := minutes * 60; wait >= 8 && wait <= 200 && math.Abs(minutes-1) > 0.08 && volume > 0.08 {
			fit = append(fit, v)
		}
	}
	length, _ := pick(s, fit)
	s.Building.Loop = &solver.Loop{FarthestFromLoop: s.Length(length), Drop: unit.TempDifference(5)}
	s.Name("size", p.words)
	s.Name("tap", of.name)
	s.Set("bore", p.bore)
	s.Set("nominal", p.nominal)
	s.Set("length", length)
	s.Set("flow", flow)
}
