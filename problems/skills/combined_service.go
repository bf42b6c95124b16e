package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var combinedServiceSkill = problems.Skill{
	ID: "combined-service", Title: "One service for fixtures and sprinklers",
	Chapter: 3, Order: 70, Year: 3, Kind: problems.Table,
	Ask: "One service pipe feeds the fixtures and the sprinklers of a low building; they part behind the wall. The fixtures come to {units}, with {right_curve}. " + tankRow + " The sprinklers take {fire}, and the authority asks for both at once. What flow is the service sized for?",
	Givens: append([]problems.Given{
		{Name: "units", Says: "fixture units of the building", Measure: &measure.Units},
		{Name: "fire", Says: "flow that the sprinklers take", Measure: &measure.FlowRate},
	}, rowGivens(false)...),
	Rules: append(rowRules("units", "demand of the fixtures", false), problems.Rule{
		Name: "service", Says: "flow of the common service", Measure: &measure.FlowRate,
		Formula: "demand + fire",
		Why:     "Both draw through this one pipe, and here the authority does not let either wait for the other.",
		Slips: []problems.Slip{
			{
				ID: "sprinklers-left-out", Formula: "demand",
				Did:  "You gave the fixtures' demand alone.",
				Why:  "Up to the tee the service is the sprinklers' pipe too. Sized for the fixtures it chokes them when they open.",
				Next: "Follow the pipe from the street: what has not branched off yet is on it.",
			},
			{
				ID: "fixtures-left-out", Formula: "fire",
				Did:  "You gave the sprinklers' flow alone.",
				Why:  "People go on drawing water in a fire, and this authority asks for both at once.",
				Next: "Ask the authority which of the two it adds. Do not guess.",
			},
		},
	}),
	Holds: "A combined service carries what its fixtures and its sprinklers may draw together, but only where one pipe carries both. In a tower the fire line leaves ahead of the meter, and then each is sized by itself. What is added, and how much of it, the authority says.",
	Cautions: []string{
		"Shutting a combined service puts the sprinklers out of order: tell the authority and the owner first, and post a watch.",
		"Standing water in a sprinkler pipe is not fit to drink: the tee has the backflow preventer that the code asks for.",
	},
	Sources: []problems.Source{curveSource, curveAgrees,
		{Says: "Sprinklers of small buildings 26 to 100 gpm, others 150 to 250 gpm: common practice, no source; the sprinkler designer gives the figure", Confidence: solver.Practice}},
	Draw: func(s *building.Sheet) {
		valves := s.Chance(0.3)
		uses := []solver.Use{solver.Apartment, solver.Hotel}
		if valves {
			uses = []solver.Use{solver.Office, solver.Residence}
		}
		suppliedTower(s, building.Plan{Uses: uses, Min: 3, Max: 5})
		right, _ := curveOf(s, valves)
		units := drawUnits(s, right, 80, 500)
		own := curveFlow(s, right, units)
		var fit []float64
		for _, v := range lists(s, []float64{26, 40, 60, 100, 150, 200, 250}, []float64{1.6, 2.5, 4, 6, 9.5, 12.5, 16}) {
			if math.Abs(v/own-1) > 0.15 {
				fit = append(fit, v)
			}
		}
		fire, _ := pick(s, fit)
		s.Set("units", units)
		s.Set("fire", fire)
		tellRows(s, units, right, nil)
	},
	Solve: func(w problems.World) float64 { return straight(w, w.SI("units")) + float64(w.Flow("fire")) },
}

func init() { add(&combinedServiceSkill) }
