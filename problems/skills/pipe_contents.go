package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var pipeContentsSkill = problems.Skill{
	ID: "pipe-contents", Title: "A riser full of water",
	Chapter: 8, Order: 80, Year: 2, Kind: problems.Sum,
	Ask: "A riser of {size} copper tube, type L, is {length} long. By its table the tube weighs {bare} empty and holds {content}. What do its clamps carry when it is full?",
	Givens: []problems.Given{
		{Name: "length", Says: "length of the riser", Measure: &measure.PipeLength},
		{Name: "bare", Says: "weight of the empty tube", Measure: &measure.PipeWeight},
		{Name: "content", Says: "water that the tube holds", Measure: &measure.PipeContent},
	},
	Rules: []problems.Rule{
		{
			Name: "volume", Says: "water in the riser", Measure: &measure.Tank,
			Formula: "content x length",
			Why:     "This is also what has to be drained, and what a dose of chlorine is reckoned for.",
			Slips: []problems.Slip{
				{
					ID: "divided-by-length", Formula: "length / content",
					Did:  "You divided the length by the content.",
					Why:  "A longer pipe holds more, and so does a wider one. Both must make the number larger.",
					Next: "Gallons for a foot times feet: the feet cancel and gallons stay. Litres for a metre the same.",
				},
				{
					ID: "weight-for-content", Formula: "bare x length",
					Did:  "You multiplied the weight of the tube, {bare}, by the length.",
					Why:  "That is the copper. The water has a column of its own in the table.",
					Next: "Read the heading of the column, and its unit, before you take the number.",
				},
			},
		},
		{
			Name: "water", Says: "weight of the water", Measure: &measure.Weight,
			Formula: "volume x water_weight",
			Why:     "A US gallon of water weighs 8.34 lb, a litre one kilogram.",
			Slips: []problems.Slip{
				{
					ID: "gallons-as-pounds", Only: problems.OnlyUS, Formula: "volume",
					Did:  "You gave the gallons as pounds.",
					Why:  "A gallon of water weighs more than eight pounds.",
					Next: "Lift a gallon can in your mind: it is no pound.",
				},
				{
					ID: "imperial-gallon", Only: problems.OnlyUS, Formula: "volume x 10",
					Did:  "You took 10 lb for a gallon.",
					Why:  "That is the imperial gallon. These are US gallons, of 8.34 lb.",
					Next: "Eight and a third for the US gallon, ten for the imperial.",
				},
			},
		},
		{
			Name: "empty", Says: "weight of the tube", Measure: &measure.Weight,
			Formula: "bare x length",
			Why:     "Copper and water hang on the same clamps.",
		},
		{
			Name: "full", Says: "weight of the full riser", Measure: &measure.Weight,
			Formula: "empty + water",
			Why:     "The clamps carry the riser on the day it is full.",
			Slips: []problems.Slip{
				{
					ID: "tube-alone", Formula: "empty",
					Did:  "You gave the tube without its water.",
					Why:  "In large tube the water weighs more than the copper. Clamps chosen for the tube alone slip when it is filled.",
					Next: "Two lines, copper and water, then the sum.",
				},
				{
					ID: "water-alone", Formula: "water",
					Did:  "You gave the water without its tube.",
					Why:  "The clamps hold the copper first, and the water on top of it.",
					Next: "Two lines, copper and water, then the sum.",
				},
			},
		},
	},
	Holds: "A pipe holds its bore times its length, and a table gives that for each foot or metre. Full weight is tube and water together. Valves, insulation and the push of expansion come on top, and the clamps' maker says what one clamp carries.",
	Cautions: []string{
		"Close off, relieve the pressure and prove it on a gauge before a riser is drained. Open a high tap first, so that the falling water draws air and not from a fixture.",
		"A full riser that slips falls through every floor below. Nobody stands under it while clamps are changed.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Bore, wall and weight of type L tube: ASTM B88", Confidence: solver.Confirmed},
		{Says: "8.34 lb in a US gallon, 10 lb in an imperial one; 8.337 at 60 °F from a density table attributed to the US Geological Survey", Confidence: solver.Confirmed},
	},
	Draw: drawContents,
	Solve: func(w problems.World) float64 {
		l := w.Length("length")
		return float64(l) * (w.SI("bare") + w.SI("content")*w.SI("water_weight"))
	},
}

func init() { add(&pipeContentsSkill) }

// copperDensity is that of the tube's metal in kg/m3: 0.323 lb/in3, from
// memory; the weights of ASTM B88 come out with it.
const copperDensity = 8940

// drawContents draws a riser of 1-1/4 to 6 in tube through a tower.
func drawContents(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Min: 4, Max: 20})
	rise := s.Heights(t.Levels[len(t.Levels)-1].Elevation)
	tube, _ := pick(s, solver.Tubes[3:])
	inside := unit.Volume(solver.TubeArea(tube.Bore(solver.TypeL)))
	metal := copperDensity * (solver.TubeArea(unit.Length(tube.Outside)*unit.Inch) - float64(inside))
	round := func(v, places float64) float64 { return math.Round(v*places) / places }
	s.Name("size", tubeSize(s, tube, solver.TypeL).words)
	s.Set("length", math.Floor(rise/s.Pick([]float64{5}, []float64{1}))*s.Pick([]float64{5}, []float64{1}))
	s.Set("bare", round(measure.PipeWeight.Unit(s.System).FromSI(metal), 100))
	s.Set("content", round(measure.PipeContent.Unit(s.System).FromSI(float64(inside)), s.Pick([]float64{10000}, []float64{1000})))
}
