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
