package solver

import (
	"math"

	"riserwork/solver/unit"
)

// TallestZone is the height between the lowest and the highest outlet of a
// zone that keeps both limits, with what the valve and the riser lose at flow.
//
//	h = (P_max - P_min - fall-off - friction) / gamma
func TallestZone(most, least, fallOff, friction unit.Pressure, gamma unit.Gradient) unit.Length {
	return gamma.HeightOf(most - least - fallOff - friction)
}

// WholeFloors is how many floor heights fit into a height: rounded down, with
// room for the rounding of floating point.
func WholeFloors(h, floor unit.Length) int { return int(math.Floor(float64(h/floor) + 1e-9)) }

// ValveSetting is what a reducing valve at the foot of a zone is set to, so
// that least is left at an outlet the given height above it at design flow.
//
//	setting = P_min + gamma h + fall-off + friction
func ValveSetting(least unit.Pressure, gamma unit.Gradient, above unit.Length, fallOff, friction unit.Pressure) unit.Pressure {
	return least + gamma.OfColumn(above) + fallOff + friction
}

// NextValve is how far below a reducing valve of a down-feed riser the
// pressure has grown to allowed.
//
//	h = (allowed - setting) / gamma
func NextValve(allowed, setting unit.Pressure, gamma unit.Gradient) unit.Length {
	return gamma.HeightOf(allowed - setting)
}

// ReductionRatio is inlet over outlet, in gauge pressures as the shop does;
// the maker's cavitation chart governs.
func ReductionRatio(in, out unit.Pressure) float64 { return float64(in / out) }

// ZoneCount is how many zones of at most perZone storeys a number of storeys
// needs.
func ZoneCount(storeys, perZone int) int {
	if perZone < 1 {
		return 0
	}
	return (storeys + perZone - 1) / perZone
}

// CirculatorAcrossValve is the head a circulator must make when a reducing
// valve stands in the recirculated loop: never build it so.
//
//	head = (inlet - outlet + friction) / gamma
func CirculatorAcrossValve(in, out, friction unit.Pressure, gamma unit.Gradient) unit.Length {
	return gamma.HeightOf(in - out + friction)
}
