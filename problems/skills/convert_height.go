package skills

import (
	"fmt"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var convertHeightSkill = problems.Skill{
	ID: "convert-height", Title: "Heights: feet and inches, feet, metres",
	Chapter: 1, Order: 20, Year: 1, Kind: problems.Sum,
	Ask: "The drawing gives the height from floor to floor as {drawn}. What is that in {own}, and then in {other}?",
	Givens: []problems.Given{
		{Name: "large", Says: "{large_says}", Measure: &measure.Of{Name: "height", US: "ft", SI: "m"}},
		{Name: "small", Says: "{small_says}", Measure: &measure.Of{Name: "height", US: "in", SI: "mm"}},
	},
	Rules: []problems.Rule{
		{
			Name: "part", Says: "{small} in the large unit", Measure: &measure.Of{Name: "height", US: "ft", SI: "m"},
			Formula: "small / inches_per_foot", Metric: "small / mm_per_metre",
			Why: "Two lengths can be added only in one unit. So turn the small unit into a part of the large one first.",
			Slips: []problems.Slip{{
				// as people write it: 10 in as .10, 8 in as .8
				ID:      "behind-the-point",
				Formula: "small / (10 + 90 x (small > 9))", Metric: "small / 100",
				Did:  "You made {got} of {small}.",
				Why:  "A foot has 12 inches and a metre has 1,000 millimetres. The small number goes behind the point only after it is divided by that: 10 in is 0.833 ft, 250 mm is 0.25 m. A few inches lost on each floor make feet over a tall riser.",
				Next: "Look for the half: 6 in is half a foot, 500 mm is half a metre. More than that must come out above .5, less must come out below.",
			}},
		},
		{
			Name: "decimal", Says: "the height in {own}", Measure: &measure.Height,
			Formula: "large + part",
			Why:     "Both are in one unit now and can be added.",
		},
		{
			Name: "converted", Says: "the height in {other}", Measure: &measure.Of{Name: "height", US: "m", SI: "ft", RoundM: 1},
			Formula: "decimal x length_factor",
			Why:     "It is the same height in units of another size: the factor says how many of the new unit go into one of the old.",
			Slips: []problems.Slip{{
				ID: "factor-upside-down", Formula: "decimal / length_factor",
				Did:  "You divided {decimal} by {length_factor}.",
				Why:  "A metre is more than three feet. The metre is the large unit, so a height is a small number of metres and a large number of feet.",
				Next: "A storey is about 3 m, or about 10 ft. An answer near 1 or near 30 went the wrong way.",
			}},
		},
	},
	Holds: "Feet go by twelves and decimals by tens, so inches must be divided by 12 before they stand behind the point: 8'-10\" is 8.833 ft, never 8.10. One foot is exactly 0.3048 m.",
	Sources: []problems.Source{
		{Says: "foot: 0.3048 m exactly; inch: 0.0254 m exactly. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Storey heights: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		if s.US() {
			feet, _ := pick(s, []float64{8, 9, 10, 11, 12, 13, 14, 15})
			inches, _ := pick(s, []float64{2, 3, 4, 5, 7, 8, 9, 10, 11})
			s.Set("large", feet)
			s.Set("small", inches)
			s.Name("drawn", fmt.Sprintf("%.0f'-%.0f\"", feet, inches))
			s.Name("large_says", "whole feet on the drawing")
			s.Name("small_says", "inches on the drawing")
			s.Name("own", "feet with decimals")
			s.Name("other", "metres")
			return
		}
		clear, _ := pick(s, []float64{2.4, 2.45, 2.5, 2.55, 2.6, 2.7, 2.75, 3.0, 3.2, 3.4})
		slab, _ := pick(s, []float64{180, 200, 220, 250, 280, 300, 350, 400})
		s.Set("large", clear)
		s.Set("small", slab)
		s.Name("drawn", fmt.Sprintf("%g m clear and a slab of %.0f mm", clear, slab))
		s.Name("large_says", "clear height from floor to ceiling")
		s.Name("small_says", "slab with its finish")
		s.Name("own", "metres")
		s.Name("other", "feet")
	},
	Solve: func(w problems.World) float64 {
		return (w.SI("large") + w.SI("small")) * w.SI("length_factor")
	},
}

func init() { add(&convertHeightSkill) }
