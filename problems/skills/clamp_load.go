package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var clampLoadSkill = problems.Skill{
	ID: "clamp-load", Title: "What one riser clamp carries",
	Chapter: 8, Order: 85, Year: 2, Kind: problems.Choice,
	Ask: "A riser of {size} copper tube, type L, is clamped on every floor; floors are {floor_height} apart. By its table the tube weighs {bare} empty and holds {content}. The office wants each clamp to hold {floors} floors of full pipe, in case a neighbour works loose. The clamp at hand is rated {rating}. Does it suit?",
	Givens: []problems.Given{
		{Name: "floor_height", Says: "floor to floor height", Measure: &measure.Height},
		{Name: "bare", Says: "weight of the empty tube", Measure: &measure.PipeWeight},
		{Name: "content", Says: "water that the tube holds", Measure: &measure.PipeContent},
		{Name: "floors", Says: "floors that a clamp must hold", Measure: &measure.Count},
		{Name: "rating", Says: "load that the clamp is rated for", Measure: &measure.Weight},
	},
	Rules: []problems.Rule{
		{
			Name: "water", Says: "water in one foot or metre of the tube, by weight", Measure: &measure.PipeWeight,
			Formula: "content x water_weight",
			Why:     "A US gallon of water weighs 8.34 lb, a litre one kilogram.",
			Slips: []problems.Slip{
				{
					ID: "gallons-as-pounds", Only: problems.OnlyUS, Formula: "content",
					Did:  "You gave the gallons as pounds.",
					Why:  "A gallon of water weighs more than eight pounds.",
					Next: "Lift a gallon can in your mind: it is no pound.",
				},
				{
					ID: "imperial-gallon", Only: problems.OnlyUS, Formula: "content x 10",
					Did:  "You took 10 lb for a gallon.",
					Why:  "That is the imperial gallon. These are US gallons, of 8.34 lb.",
					Next: "Eight and a third for the US gallon, ten for the imperial.",
				},
			},
		},
		{
			Name: "full", Says: "weight of one foot or metre of full tube", Measure: &measure.PipeWeight,
			Formula: "bare + water",
			Why:     "Copper and water hang on the same clamp.",
			Slips: []problems.Slip{
				{
					ID: "tube-alone", Formula: "bare",
					Did:  "You gave the tube without its water.",
					Why:  "The clamp holds the riser on the day it is full, and in large tube the water is the heavier part.",
					Next: "Two columns of the table, copper and water, then the sum.",
				},
				{
					ID: "water-alone", Formula: "water",
					Did:  "You gave the water without its tube.",
					Why:  "The copper hangs there first.",
					Next: "Two columns of the table, copper and water, then the sum.",
				},
			},
		},
		{
			Name: "load", Says: "weight of one floor of full pipe", Measure: &measure.Weight,
			Formula: "full x floor_height",
			Why:     "From one clamp to the next hangs one floor of pipe.",
			Slips: []problems.Slip{{
				ID: "divided-by-height", Formula: "floor_height / full",
				Did:  "You divided the height by the weight.",
				Why:  "A taller floor has more pipe and must give a larger load.",
				Next: "Pounds for a foot times feet, kilograms for a metre times metres: the length cancels.",
			}},
		},
		{
			Name: "carried", Says: "what the clamp must be able to hold", Measure: &measure.Weight,
			Formula: "floors x load",
			Why:     "If a clamp works loose, the next one gets its floor as well.",
			Slips: []problems.Slip{{
				ID: "own-floor-only", Formula: "load",
				Did:  "You let the clamp carry its own floor only.",
				Why:  "That holds while every clamp holds. When one slips, its floor comes onto the neighbour, and a clamp loaded to its limit slips too.",
				Next: "Read how many floors are asked for.",
			}},
		},
		{
			Name: "suits", Says: "does the clamp suit?", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "rating >= carried",
			Why:     "A rating is the most that the maker lets it carry.",
			Slips: []problems.Slip{{
				ID: "rating-turned-round", Formula: "rating < carried",
				Did:  "You read {rating} against {carried} the wrong way round.",
				Why:  "The clamp must be able to carry at least what hangs on it.",
				Next: "Say it in words: can carry, must carry.",
			}},
		},
	},
	Holds: "A clamp on each floor carries one floor of full pipe. Water counts, and in tube of 2 in and more it weighs more than the copper. Clamps stand on the floor, not on the insulation, and on a hot riser only the anchor holds fast: the others must let the pipe grow.",
	Cautions: []string{
		"A full riser that slips falls through every floor below. Nobody stands under it while clamps are changed.",
		"Spacing is that of the local code, often every floor and not over 10 ft for copper; the clamp's maker gives its load.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Bore, wall and weight of type L tube: ASTM B88", Confidence: solver.Confirmed},
		{Says: "8.34 lb in a US gallon, 10 lb in an imperial one; 8.337 at 60 °F from a density table attributed to the US Geological Survey", Confidence: solver.Confirmed},
		{Says: "A clamp that can hold its own floor and its neighbour's", Confidence: solver.Practice},
	},
	Draw: drawClampLoad,
	Solve: func(w problems.World) float64 {
		each := solver.FullPipe(w.SI("bare"), w.SI("content"), w.SI("water_weight"))
		if w.SI("rating") >= w.SI("floors")*each*float64(w.Length("floor_height")) {
			return 1
		}
		return 0
	},
}

func init() { add(&clampLoadSkill) }

// drawClampLoad draws a riser of 1-1/2 to 6 in and a clamp that suits it or
// not by a clear margin.
func drawClampLoad(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Uses: tanks, Min: 5, Max: 20})
	suits, floors := s.Chance(0.5), float64(s.Int(2, 3))
	round := func(v, places float64) float64 { return math.Round(v*places) / places }
	type aim struct {
		tube                  solver.Tube
		bare, content, rating float64
	}
	var fit []aim
	for _, tube := range solver.Tubes {
		if tube.Inches < 1.5 {
			continue
		}
		inside := unit.Volume(solver.TubeArea(tube.Bore(solver.TypeL)))
		metal := copperDensity * (solver.TubeArea(unit.Length(tube.Outside)*unit.Inch) - float64(inside))
		a := aim{
			tube:    tube,
			bare:    round(measure.PipeWeight.Unit(s.System).FromSI(metal), 100),
			content: round(measure.PipeContent.Unit(s.System).FromSI(float64(inside)), s.Pick([]float64{10000}, []float64{1000})),
		}
		load := floors * t.Floor.Value * (a.bare + a.content*s.Pick([]float64{8.34}, []float64{1}))
		for _, rating := range lists(s, []float64{50, 80, 100, 120, 150, 200, 250, 300, 400, 500, 600, 800}, []float64{20, 25, 35, 50, 60, 80, 100, 125, 150, 200, 250, 300, 400}) {
			if off := rating/load - 1; (off > 0) == suits && math.Abs(off) > 0.05 && math.Abs(off) < 0.4 {
				a.rating = rating
				fit = append(fit, a)
			}
		}
	}
	a, _ := pick(s, fit)
	s.Name("size", tubeSize(s, a.tube, solver.TypeL).words)
	s.SetHeight("floor_height", t.Floor)
	s.Set("bare", a.bare)
	s.Set("content", a.content)
	s.Set("floors", floors)
	s.Set("rating", a.rating)
}
