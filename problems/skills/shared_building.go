package skills

import (
	"math"

	"riserwork/problems/building"
	"riserwork/solver"
)

// TellDemand prints the rows of the demand table around units, for a building
// with flush valves or flush tanks; false past the end of the table.
func TellDemand(s *building.Sheet, units float64, valves bool) bool {
	right, other := curveOf(s, valves)
	if _, _, ok := right.Rows(units); !ok {
		return false
	}
	if _, _, ok := other.Rows(units); !ok {
		return false
	}
	tellRows(s, units, right, other)
	return true
}

// TellRiserTube draws a tube of type L for a flow of cold water whose speed
// keeps clear of the limits, and tells both; false where no tube fits.
func TellRiserTube(s *building.Sheet, flow float64) bool {
	right, _ := tellWater(s, 0)
	var fit []pipeSize
	for _, p := range tubeSizes(s, solver.TypeL) {
		if v := speedOf(s, flow, p.bore); v > 0.4*right && v < 1.6*right && math.Abs(v/right-1) > 0.04 {
			fit = append(fit, p)
		}
	}
	t, ok := pick(s, fit)
	if !ok {
		return false
	}
	s.Name("tube_type", string(rune(solver.TypeL)))
	s.Name("size", t.words)
	s.Set("bore", t.bore)
	s.Set("nominal", t.nominal)
	return true
}

// TellRecirculation draws the pipe from a heater to its farthest outlet, with
// so much of it up the riser, so that its length keeps clear of the rule, and
// tells it. It gives the whole length and what of it is not kept hot; false
// where no pipe fits.
func TellRecirculation(s *building.Sheet, storeys int, up float64) (whole, cold float64, ok bool) {
	rule, says := recirculationRule(s)
	limit := rule.Length.Value(s.System).Value
	loop := rule.Storeys == 0 && s.Chance(0.7)
	long := s.Chance(0.5)
	type aim struct{ run, branch, length float64 }
	var fit []aim
	for _, run := range lists(s, []float64{4, 6, 8, 12, 16, 20, 30, 40, 60, 80}, []float64{1.2, 2, 3, 4, 6, 9, 12, 18, 24}) {
		for _, branch := range lists(s, []float64{5, 8, 12, 15, 20, 25, 30, 35, 40, 58, 65, 75}, []float64{1.5, 2.5, 4, 5, 6.5, 8, 10, 12, 18, 20, 22}) {
			length := run + up + branch
			if loop {
				length = branch
			}
			if part := length / limit; (part > 1.06) == long && (part < 0.94 || part > 1.06) && part < 2 && math.Abs(run+branch-up) > 0.05*up && branch < 2*up+run {
				fit = append(fit, aim{run, branch, length})
			}
		}
	}
	a, ok := pick(s, fit)
	if !ok { // exactly on the limit, which nobody is asked about
		a = aim{run: up, branch: up, length: limit}
	}
	kept, keptSays := 0.0, "None of it is recirculated or heat traced yet."
	if loop {
		kept, keptSays = a.run+up, "A loop already recirculates all but the branch."
	}
	s.Name("kept_says", keptSays)
	s.Name("code", s.Profile.Name)
	s.Name("rule_says", says)
	s.Name("from_says", rule.From)
	s.Set("to_riser", a.run)
	s.Set("up", up)
	s.Set("branch", a.branch)
	s.Set("kept_hot", kept)
	s.Set("storeys", float64(storeys))
	s.Set("length_limit", limit)
	s.Values = append(s.Values, storeysLimit(rule))
	return a.run + up + a.branch, a.length, ok
}
