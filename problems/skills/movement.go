package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var pipeMovementSkill = problems.Skill{
	ID: "pipe-movement", Title: "How far a hot pipe grows",
	Chapter: 8, Order: 40, Year: 3, Kind: problems.Sum,
	Ask: "A hot riser of {pipe} runs {length} between its anchor and the top. It was put in at {installed} and will carry water at {hot}. {metal} grows by {growth}: so many parts in a million of its length for each degree. How far does the top move?",
	Givens: []problems.Given{
		{Name: "length", Says: "length from the anchor", Measure: &measure.PipeLength},
		{Name: "installed", Says: "temperature when it was put in", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature of the water", Measure: &measure.Temp},
		{Name: "growth", Says: "growth of the material, in millionths for each degree", Measure: &measure.Growth},
	},
	Rules: []problems.Rule{
		{
			Name: "change", Says: "change of temperature", Measure: &measure.TempDrop,
			Formula: "hot - installed",
			Why:     "The pipe fitted at {installed}. It grows only by what it warms from there.",
			Slips: []problems.Slip{
				{
					ID: "temperature-for-change", Formula: "hot",
					Did:  "You took {hot}, the temperature itself.",
					Why:  "The pipe was not put in at nought degrees. What counts is how far it warms.",
					Next: "A change has two temperatures in it. If only one stands on the line, the other is missing.",
				},
				{
					ID: "temperatures-added", Formula: "hot + installed",
					Did:  "You added the two temperatures.",
					Why:  "A pipe put in on a warm day has less way to go, not more.",
					Next: "A change is the larger less the smaller.",
				},
			},
		},
		{
			Name: "longer", Says: "growth in the unit of the length", Measure: &measure.LongPart,
			Formula: "growth x length x change / million",
			Why:     "Each part of the pipe grows by the same share, so a long riser moves far; and the more it warms, the further.",
			Slips: []problems.Slip{
				{
					ID: "length-left-out", Formula: "growth x change / million",
					Did:  "You left the length out.",
					Why:  "{growth} holds for one foot or one metre of pipe. Every one of the {length} grows as much.",
					Next: "A pipe twice as long must move twice as far: is the length in your line?",
				},
			},
		},
		{
			Name: "movement", Says: "movement at the top", Measure: &measure.Movement,
			Formula: "longer x inches_per_foot", Metric: "longer x mm_per_metre",
			Why: "Offsets, loops and compensators are chosen by inches or millimetres.",
			Slips: []problems.Slip{
				{
					ID: "feet-as-inches", Only: problems.OnlyUS, Formula: "longer",
					Did:  "You gave the feet as inches.",
					Why:  "The length went in as feet, so feet come out. A foot is 12 inches.",
					Next: "About an inch for 100 ft of copper and 100 °F: your answer must be of that size.",
				},
				{
					ID: "hundred-for-thousand", Only: problems.OnlySI, Formula: "longer x 100",
					Did:  "You multiplied the metres by 100.",
					Why:  "That gives centimetres. A metre is 1,000 mm.",
					Next: "About 8 mm for 10 m of copper and 50 K: your answer must be of that size.",
				},
			},
		},
	},
	Holds: "A pipe grows by the same share of its length for each degree. Nothing stops it: held at both ends it bends, or tears a branch off. So it is anchored in one place, guided along the way, and given an offset, a loop or a compensator for the movement. Branches near the free end need a swing of their own.",
	Cautions: []string{
		"Expansion joints push with the pressure on their whole opening. They go in only between anchors and guides that are made for it.",
		"Restore the fire-stop at a sleeve so that the pipe may still move in it.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Growth of 9.4 for copper (17 in SI) and 38 for CPVC (68 in SI): tables of a pipe trade site and a plastics supplier", Confidence: solver.Confirmed},
		{Says: "About an inch for 100 ft of copper and 100 °F: the same tables, and the maker's own figure governs", Confidence: solver.Confirmed},
	},
	Draw: drawMovement,
	Solve: func(w problems.World) float64 {
		change := unit.TempDifference(w.Temperature("hot") - w.Temperature("installed"))
		return float64(solver.PipeMovement(w.SI("growth"), w.Length("length"), change))
	},
}

func init() { add(&pipeMovementSkill) }

func drawMovement(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Min: 4, Max: 15})
	rise := s.Heights(t.Levels[len(t.Levels)-1].Elevation)
	pipe, metal, growth := "copper tube", "Copper", s.Pick([]float64{9.4}, []float64{17})
	if s.Chance(0.25) {
		pipe, metal, growth = "CPVC pipe", "CPVC", s.Pick([]float64{38}, []float64{68})
	}
	var lengths []float64
	for _, l := range lists(s, []float64{30, 40, 50, 60, 80, 100, 120, 150, 180}, []float64{10, 12, 15, 20, 25, 30, 40, 45, 50}) {
		if l <= rise {
			lengths = append(lengths, l)
		}
	}
	if len(lengths) == 0 {
		lengths = []float64{math.Floor(rise)}
	}
	length, _ := pick(s, lengths)
	s.Name("pipe", pipe)
	s.Name("metal", metal)
	s.Set("length", length)
	s.Set("installed", s.Pick([]float64{45, 50, 55, 60, 65, 70}, []float64{5, 8, 10, 12, 15, 18}))
	s.Set("hot", s.Pick([]float64{125, 130, 140, 150}, []float64{52, 55, 60, 65}))
	s.Set("growth", growth)
}
