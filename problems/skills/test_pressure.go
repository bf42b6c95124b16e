package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var riserTestSkill = problems.Skill{
	ID: "riser-test", Version: 2, Title: "Testing a riser",
	Chapter: 5, Order: 150, Year: 3, Kind: problems.Choice,
	Ask: "A riser is tested with water. Its working pressure is {working}. The specification of the job asks {test_factor} times that, but no less than {test_least}, on a gauge at the top of the riser. At the very least ({code}): {test_says}. The foot of the riser is {height} below the gauge, and the weakest part down there is marked {weakest}. What pressure stands at the foot, and may the riser be tested in one piece?",
	Givens: []problems.Given{
		{Name: "working", Says: "working pressure of the riser", Measure: &measure.Pressure},
		{Name: "test_factor", Says: "times the working pressure, by the specification", Measure: &measure.Share},
		{Name: "test_least", Says: "least test pressure, by the specification", Measure: &measure.Pressure},
		{Name: "height", Says: "height of the test gauge above the foot of the riser", Measure: &measure.Height},
		{Name: "weakest", Says: "rating marked on the weakest part at the foot", Measure: &measure.Pressure, Plate: true},
	},
	Rules: []problems.Rule{
		{
			Name: "factored", Says: "working pressure times the factor", Measure: &measure.Pressure,
			Formula: "test_factor x working",
			Why:     "A test must be harder than anything the riser meets in service, so that a weak joint shows while it can still be reached.",
			Slips: []problems.Slip{{
				ID: "working-pressure", Formula: "working",
				Did:  "You tested at the working pressure, {working}.",
				Why:  "The specification asks {test_factor} times that. A joint that just holds {working} will let go at the first surge.",
				Next: "Read the test paragraph of the specification before the pump is connected.",
			}},
		},
		{
			Name: "test", Says: "test pressure on the gauge at the top", Measure: &measure.Pressure,
			Formula: "max(factored, test_least)",
			Why:     "Two conditions stand in the specification, and both must be kept. The higher one keeps both.",
			Would:   pumpUpTo,
			Slips: []problems.Slip{{
				ID: "lower-of-two", Formula: "min(factored, test_least)",
				Did:  "You took the lower of {factored} and {test_least}.",
				Why:  "\"No less than\" is a floor: the test may not go below it, nor below the other figure.",
				Next: "Where two minimums are given, the larger number rules.",
			}},
		},
		{
			Name: "column", Says: "pressure of the water in the riser", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "The riser is full of water for the test, and that water weighs on everything below the gauge.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "at_foot", Says: "pressure at the foot of the riser", Measure: &measure.Pressure,
			Formula: "test + column",
			Why:     "The foot carries the test pressure and the whole column on top of it.",
			Slips: []problems.Slip{
				{
					ID: "column-left-out", Formula: "test",
					Did:  "You gave the gauge's {test} for the foot as well.",
					Why:  "The gauge is at the top. Below it the pressure grows with every foot or metre, and valves at the foot have burst under tests that looked right at the gauge.",
					Next: "Ask where the gauge is, then walk the riser down to the weakest part.",
				},
				{
					ID: "column-subtracted", Formula: "test - column",
					Did:  "You took the column off.",
					Why:  "That is right going up from the gauge. The foot lies below it, and there the water's weight is added.",
					Next: "Down gives, up takes away.",
				},
			},
		},
		{
			Name: "verdict", Says: "the riser in one piece", Measure: &measure.Answer,
			Choices: []string{"may be tested", "must be tested in parts"},
			Formula: "at_foot > weakest",
			Would:   testInOnePiece,
			Why:     "The weakest part decides, not the pipe. Where it is rated for less, isolate it or test the riser in lengths, each with its own gauge.",
		},
	},
	Holds: "A test pressure is a number at one place. In a tall riser the foot carries the whole column besides, often as much again. So a test is planned from the weakest part: its rating, less the water above it, is the most the top gauge may read.",
	Cautions: []string{
		"Test with water, not with air. Squeezed air stores energy, and a part that bursts under it kills. Plastic pipe is never air tested unless its maker allows it in writing.",
		"Shut off and disconnect heaters, reducing valves, expansion tanks and fixtures first: they are rated for less. Raise the pressure in steps, with a gauge and a relief valve on the rig.",
		"Never stand in line with a plug, cap or hose under test, and relieve the pressure at the foot, on a gauge, before a joint is touched.",
	},
	Sources: []problems.Source{
		waterColumn,
		{Says: "One and a half times the working pressure and no less than 100 or 150 psi (700 or 1,000 kPa); cities write their own figures", Confidence: solver.Practice},
		{Says: "What the codes ask at least: National Plumbing Code 2.3.7, International Plumbing Code 312.5, Uniform Plumbing Code 609.4, amended locally", Confidence: solver.Memory},
	},
	Draw: drawRiserTest,
	Solve: func(w problems.World) float64 {
		foot := footUnder(w, specified(w))
		if foot > w.Pressure("weakest") {
			return 1
		}
		return 0
	},
}

func init() { add(&riserTestSkill) }

// drawRiserTest draws a riser from the gauge in the meter room to the top
// outlet, with a weakest part that stands or fails by a clear margin.
func drawRiserTest(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: zoned, Min: 6, Max: 20})
	s.Focus = t.Top()
	top := s.Heights(t.Highest(s.Focus))
	height := tape(s, top)
	step := s.Pick([]float64{5}, []float64{25})
	working := step * (math.Ceil((s.Least()+head(s, height))/step) + float64(s.Int(0, 4)))
	for onPlate(s, working) <= leastStreet(s) {
		working += step
	}
	factor := s.Pick([]float64{1.25, 1.5}, []float64{1.25, 1.5})
	least := s.Pick([]float64{100, 125, 150}, []float64{700, 850, 1000})
	foot := math.Max(working*factor, least) + head(s, height)
	var holds, fails []float64
	for _, r := range ratings(s) {
		switch code := r / onPlate(s, 1); {
		case code > 1.03*foot && code < 1.8*foot:
			holds = append(holds, r)
		case code < 0.97*foot && code > 0.6*foot:
			fails = append(fails, r)
		}
	}
	weakest, ok := pick(s, holds)
	if s.Chance(0.5) || !ok {
		if f, has := pick(s, fails); has {
			weakest = f
		}
	}
	rule := solver.TestRuleOf(s.Profile.ID)
	s.Name("test_says", rule.Words)
	s.Name("code", s.Profile.Name)
	pumpRoom(s, top-height, onPlate(s, working))
	feedAbove(s, 0)
	s.Set("working", working)
	s.Set("test_factor", factor)
	s.Set("test_least", least)
	s.Set("height", height)
	s.Set("weakest", weakest)
}

// ratings are what valves and fittings are marked for, in the unit of plates.
func ratings(s *building.Sheet) []float64 {
	if s.PlateUS() {
		return []float64{125, 150, 175, 200, 225, 250, 300, 350, 400}
	}
	return []float64{860, 1000, 1200, 1400, 1600, 2000, 2500}
}

// specified is the test pressure that the specification asks at the top.
func specified(w problems.World) unit.Pressure {
	return solver.TestPressure(w.Pressure("working"), w.SI("test_factor"), w.Pressure("test_least"))
}

// footUnder is what stands at the foot under a pressure on the top gauge.
func footUnder(w problems.World, test unit.Pressure) unit.Pressure {
	b := w.Building
	return solver.FloorPressure(test, w.Gamma(), b.Street.GaugeAt-b.Highest(w.Focus))
}

// pumpUpTo pumps the riser up to a pressure on the gauge at its top.
func pumpUpTo(w problems.World, v float64) problems.Outcome {
	test, asked := unit.Pressure(v), specified(w)
	foot := footUnder(w, test)
	o := problems.Outcome{Marks: []problems.Mark{{Level: w.Focus, Where: problems.AtHighest, Text: w.Press(test)}, {Where: problems.AtLowest, Text: w.Press(foot)}}}
	lead := "Pumped up to " + w.Press(test) + " at the top, "
	switch {
	case w.Press(test) == w.Press(asked):
		o.Kept = true
		o.Says = []string{lead + "the riser is tested as the specification asks."}
	case test < asked:
		o.Says = []string{lead + "the riser would not have been tested: the specification asks " + w.Press(asked) + ". A weak joint would show in service."}
	default:
		o.Says = []string{lead + "the riser would bear " + w.Press(test-asked) + " more than the " + w.Press(asked) + " that the specification asks."}
	}
	for i := range o.Marks {
		o.Marks[i].Kept = o.Kept
	}
	o.Says = append(o.Says, "Its foot would stand at "+w.Press(foot)+".")
	return o
}

// testInOnePiece tests the riser in one piece (0) or in parts (1).
func testInOnePiece(w problems.World, v float64) problems.Outcome {
	test, weakest := specified(w), w.Pressure("weakest")
	foot := footUnder(w, test)
	holds := foot <= weakest
	o := problems.Outcome{Kept: holds == (v == 0), Marks: []problems.Mark{w.Mark(0, problems.AtLowest, foot, holds)}}
	o.Says = []string{"In one piece, with " + w.Press(test) + " at the top, the foot would stand at " + w.Press(foot) + "; the weakest part there is marked " + w.Press(weakest) + "."}
	switch {
	case v == 0 && !holds:
		o.Says = append(o.Says, "That part may burst, with people beside it.")
	case v == 1 && holds:
		o.Says = append(o.Says, "Every part bears it: cut into lengths, the riser would be opened and closed for nothing.")
	case v == 1 && weakest > test:
		o.Says = append(o.Says, "In lengths of no more than "+w.Tall(solver.Reach(weakest, test, w.Gamma()))+", each with its own gauge at its top, no part bears more than that.")
	case v == 1:
		o.Says = append(o.Says, "That part is marked for less than the test itself: it has to be taken out for the test.")
	}
	return o
}
