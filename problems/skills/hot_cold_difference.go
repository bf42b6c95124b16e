package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var hotColdDifferenceSkill = problems.Skill{
	ID: "hot-cold-difference", Title: "Hot against cold at a shower",
	Chapter: 6, Order: 140, Year: 3, Kind: problems.Choice,
	Ask: "A shower runs hot and cold by turns. Gauges on both sides of its valve read {hot_rest} hot and {cold_rest} cold with no flow, and {hot_flow} hot and {cold_flow} cold with the shower running. The maker of the valve allows the two sides to differ by {allowed}, flowing. Which side loses more, and is the difference within what the maker allows?",
	Givens: []problems.Given{
		{Name: "hot_rest", Says: "hot side, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "cold_rest", Says: "cold side, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "hot_flow", Says: "hot side, flowing", Measure: &measure.Pressure, Plate: true},
		{Name: "cold_flow", Says: "cold side, flowing", Measure: &measure.Pressure, Plate: true},
		{Name: "allowed", Says: "difference that the valve's maker allows, flowing", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "hot_fall", Says: "what the hot side loses when it flows", Measure: &measure.Pressure,
			Formula: "hot_rest - hot_flow",
			Why:     "From rest to flow, a gauge falls by all that the moving water rubs off on the way: heater, mixing valve, pipe, stops.",
			Slips: []problems.Slip{{
				ID: "side-against-side-hot", Formula: "abs(hot_rest - cold_flow)",
				Did:  "You compared the hot side at rest with the cold side flowing.",
				Why:  "Those are two pipes and two moments. What one pipe loses is seen on its own gauge, before and after.",
				Next: "Same gauge, two moments: that is a loss.",
			}},
		},
		{
			Name: "cold_fall", Says: "what the cold side loses when it flows", Measure: &measure.Pressure,
			Formula: "cold_rest - cold_flow",
			Why:     "The same for the cold pipe, on its own gauge.",
			Slips: []problems.Slip{{
				ID: "side-against-side-cold", Formula: "abs(cold_rest - hot_flow)",
				Did:  "You compared the cold side at rest with the hot side flowing.",
				Why:  "Those are two pipes and two moments. What one pipe loses is seen on its own gauge, before and after.",
				Next: "Same gauge, two moments: that is a loss.",
			}},
		},
		{
			Name: "poorer", Says: "side that loses more", Measure: &measure.Answer, Choices: []string{"cold", "hot"},
			Formula: "hot_fall > cold_fall",
			Why:     "The side that falls further has something narrow in it: a blocked strainer or heater, a half-shut stop, a small pipe.",
			Slips: []problems.Slip{{
				ID: "sides-swapped", Formula: "hot_fall < cold_fall",
				Did:  "You took the side that loses less.",
				Why:  "Hot loses {hot_fall}, cold {cold_fall}. The trouble is where the gauge falls further.",
				Next: "Large fall, narrow place.",
			}},
		},
		{
			Name: "apart", Says: "difference between the sides, flowing", Measure: &measure.Pressure,
			Formula: "abs(cold_flow - hot_flow)",
			Why:     "The valve mixes moving water. What counts is how far the two sides are apart while it does.",
			Slips: []problems.Slip{
				{
					ID: "rest-compared", Formula: "abs(cold_rest - hot_rest)",
					Did:  "You compared the readings with no flow.",
					Why:  "At rest a pipe shows no loss, however blocked it is. Two sides that agree at rest may be far apart in the shower.",
					Next: "Open the valve first, then read both gauges.",
				},
				{
					ID: "falls-compared", Formula: "abs(hot_fall - cold_fall)",
					Did:  "You took the difference of the two losses.",
					Why:  "That leaves out how far the sides stood apart before. The valve feels the two pressures themselves.",
					Next: "Two gauges, one moment: that is a difference.",
				},
			},
		},
		{
			Name: "verdict", Says: "the difference", Measure: &measure.Answer, Choices: []string{"within the limit", "over the limit"},
			Formula: "apart > allowed",
			Why:     "If it is over, the valve cannot hold its temperature. Cure the side that loses more, or set both zones to meet at the shower, flowing.",
			Slips: []problems.Slip{{
				ID: "limit-turned-round", Formula: "apart < allowed",
				Did:  "You read {apart} against {allowed} the wrong way round.",
				Why:  "What the maker allows is a most. Less is good.",
				Next: "Say it in words: has, may have.",
			}},
		},
	},
	Holds: "A balancing shower valve evens out small differences between hot and cold, as far as its maker says. The two sides are compared at the valve and while it flows. Hot comes a longer way, through heater and mixing valve, so it mostly falls further. Zones for hot and cold therefore break on the same floors and are set to meet at the fixture.",
	Cautions: []string{
		"A shower that swings can scald. Until it is cured, tell the people who use it and turn its stop down.",
		"Gauges go on live pipe: shut the stops, relieve the pressure, and prove it gone before a cap is turned out.",
		"Where hot and cold differ, water runs from one into the other through a worn check: test the checks of the valve too.",
	},
	Sources: []problems.Source{
		{Says: "Both sides read at flow; allowed differences of 10 to 20 psi (70 to 140 kPa), the valve's maker governs", Confidence: solver.Practice},
	},
	Draw: drawHotCold,
	Solve: func(w problems.World) float64 {
		if solver.PressuresApart(w.Pressure("hot_flow"), w.Pressure("cold_flow")) > w.Pressure("allowed") {
			return 1
		}
		return 0
	},
}

func init() { add(&hotColdDifferenceSkill) }

// drawHotCold draws readings of which rest and flow tell different tales.
func drawHotCold(s *building.Sheet) {
	heaterTower(s)
	allowed := s.Pick([]float64{10, 15, 20}, []float64{70, 100, 140})
	unit5, one := s.PickPlate([]float64{5}, []float64{25}), s.PickPlate([]float64{1}, []float64{5})
	limit := onPlate(s, allowed)
	over := s.Chance(0.5)
	type aim struct{ hotRest, coldRest, hotFlow, coldFlow float64 }
	var fit []aim
	for _, hot := range upTo(11*unit5, 15*unit5, unit5) {
		for _, gap := range upTo(-4*one, 4*one, one) {
			for _, hotFall := range upTo(4*one, 40*one, 3*one) {
				for _, coldFall := range upTo(3*one, 18*one, 3*one) {
					a := aim{hot, hot + gap, hot - hotFall, hot + gap - coldFall}
					apart := math.Abs(a.hotFlow - a.coldFlow)
					clear := math.Abs(apart/limit-1) > 0.12 && apart > 2*one && apart < 2*limit
					told := math.Abs(math.Abs(gap)-apart) > 2*one && math.Abs(gap) > 1.5*one && math.Abs(math.Abs(hotFall-coldFall)-apart) > 1.5*one && math.Abs(math.Abs(hotFall-coldFall)-math.Abs(gap)) > 1.5*one
					falls := math.Abs(hotFall-coldFall) > 2*one && a.hotFlow >= 4*unit5 && a.coldFlow >= 4*unit5
					cross := math.Abs(math.Abs(a.hotRest-a.coldFlow)-hotFall) > 0.5*one && math.Abs(math.Abs(a.coldRest-a.hotFlow)-coldFall) > 0.5*one
					if clear && told && falls && cross && (apart > limit) == over {
						fit = append(fit, a)
					}
				}
			}
		}
	}
	a, _ := pick(s, fit)
	s.Set("hot_rest", a.hotRest)
	s.Set("cold_rest", a.coldRest)
	s.Set("hot_flow", a.hotFlow)
	s.Set("cold_flow", a.coldFlow)
	s.Set("allowed", allowed)
}
