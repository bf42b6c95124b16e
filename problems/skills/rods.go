package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var rodsSkill = problems.Skill{
	ID: "rods", Title: "Rods at a closed valve",
	Chapter: 8, Order: 60, Year: 4, Kind: problems.Sum,
	Ask: "The water service is {size} iron pipe, {outside} outside, and ends at a closed valve. It works at {working} and is tested at {test}. Threaded rods with clamps, in pairs left and right, hold the valve back; one rod may carry {rod_load}. How many rods?",
	Givens: []problems.Given{
		{Name: "nominal", Says: "nominal size of the pipe", Measure: &measure.Bore},
		{Name: "outside", Says: "outside diameter of the pipe", Measure: &measure.Bore},
		{Name: "working", Says: "working pressure", Measure: &measure.Pressure},
		{Name: "test", Says: "test pressure", Measure: &measure.Pressure},
		{Name: "rod_load", Says: "load that one rod may carry", Measure: &measure.Force},
	},
	Rules: []problems.Rule{
		outsideArea, axialPush,
		{
			Name: "needed", Says: "rods by the load", Measure: &measure.Share,
			Formula: "push / rod_load",
			Why:     "At a dead end the whole push is on the rods.",
			Slips: []problems.Slip{
				{
					ID: "two-from-the-bend", Formula: "2 x push / rod_load",
					Did:  "You doubled the push.",
					Why:  "The 2 belongs to a bend, which has two open legs. A closed valve is pushed from one side.",
					Next: "Count the openings that the water pushes through: one here.",
				},
				{
					ID: "upside-down", Formula: "rod_load / push",
					Did:  "You divided the load of a rod by the push.",
					Why:  "A harder push needs more rods. In your line it would need fewer.",
					Next: "What has to be held goes on top, what one rod holds below.",
				},
			},
		},
		{
			Name: "rods", Says: "rods in pairs", Measure: &measure.Count, Whole: true,
			Formula: "2 x roundup(needed / 2)",
			Would:   holdByRods,
			Why:     "Rods are set left and right of the pipe. An odd one pulls the joint crooked, so the number goes up to the next even one.",
			Slips: []problems.Slip{
				{
					ID: "odd-rods", Formula: "roundup(needed) + 0 / (roundup(needed) > 2 x rounddown(roundup(needed) / 2))",
					Did:  "You set {got} rods, an odd number.",
					Why:  "A clamp has two ears. One side with more rods than the other bends the joint open.",
					Next: "Rods come in pairs: the answer must halve without a rest.",
				},
				{
					ID: "pairs-rounded-down", Formula: "2 x rounddown(needed / 2) + 0 / (needed >= 2)",
					Did:  "You rounded down to {got} rods.",
					Why:  "Each of them would carry more than {rod_load} in the test.",
					Next: "Multiply back: {got} rods times {rod_load} must be at least the push.",
				},
			},
		},
	},
	Holds:    "A closed valve takes the whole push of the water, P A, with the outside diameter and the test pressure. Rods share it, and they come in pairs. Fire mains use rods of 5/8 in or more; many shops take 3/4 in. Rods in the ground are coated against rust.",
	Cautions: thrustCautions,
	Sources: []problems.Source{
		{Says: "Push on a dead end for each 100 psi: NFPA 24, Table A-8-6.2, quoted in a city's calculation", Confidence: solver.Confirmed},
		{Says: "Rods of 5/8 in or more: NFPA 24 (2019), 10.6.2, for fire mains, the usual yardstick", Confidence: solver.Confirmed},
		{Says: "Loads of one rod: common practice, no source; the maker's figure governs", Confidence: solver.Practice},
	},
	Draw: drawRods,
	Solve: func(w problems.World) float64 {
		return float64(solver.PairedRods(solver.EndThrust(w.Pressure("test"), w.Length("outside")), w.SI("rod_load")))
	},
}

func init() { add(&rodsSkill) }

// holdByRods holds the closed valve in the test by so many rods.
func holdByRods(w problems.World, v float64) problems.Outcome {
	push, load := solver.EndThrust(w.Pressure("test"), w.Length("outside")), w.SI("rod_load")
	right := solver.PairedRods(push, load)
	force := func(v float64) string { return w.Text(measure.Force, v) }
	if v == 0 {
		return problems.Outcome{Says: []string{"With no rods at all, " + force(push) + " would push the valve off the pipe in the test."}}
	}
	each := "each"
	if v == 1 {
		each = "it"
	}
	says := "With " + counted(int(v), "rod") + ", " + each + " would carry " + force(push/v) + " in the test; one may carry " + force(load)
	switch {
	case int(v) == right:
		return problems.Outcome{Kept: true, Says: []string{says + "."}}
	case push/v > load:
		return problems.Outcome{Says: []string{says + ". The rods would stretch, and the joint would open."}}
	case int(v)%2 == 1:
		return problems.Outcome{Says: []string{says + ". But with one rod more on one side, the joint is pulled crooked."}}
	}
	return problems.Outcome{Says: []string{says + ". It would hold, and " + counted(right, "rod") + " as well."}}
}

// drawRods draws a valve whose rods are clear of a whole number; three times
// in four an odd number would carry the load.
func drawRods(s *building.Sheet) {
	odd := s.Chance(0.75)
	for range 40 {
		s.Values, s.Labels = nil, nil
		ironService(s)
		var fit []float64
		for _, rod := range lists(s, []float64{4000, 5000, 6000, 7000}, []float64{18, 22, 27, 31}) {
			o := s.Get("outside")
			n := s.Get("test") * math.Pi * o * o / 4 / rod
			if !s.US() {
				n /= 1e6
			}
			f := building.Fraction(n, 1)
			if n > 0.3 && f > 0.06 && f < 0.94 && (int(math.Ceil(n))%2 == 1) == odd && n < 12 {
				fit = append(fit, rod)
			}
		}
		if rod, ok := pick(s, fit); ok {
			s.Set("rod_load", rod)
			return
		}
	}
	s.Set("rod_load", s.Pick([]float64{5000}, []float64{22}))
}
