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

// ZoneFloors is how many floors a zone of a height between its lowest and its
// highest outlet can hold: the gaps between its floors that fit under the top
// floor's high outlet and over the bottom floor's low one, and one floor more
// than gaps.
//
//	n = rounddown((h - high + low) / floor) + 1
//
// It is 0 where not even one floor's outlets fit.
func ZoneFloors(h, floor, high, low unit.Length) int {
	if h < high-low {
		return 0
	}
	return WholeFloors(h-high+low, floor) + 1
}

// ValveSetting is what a reducing valve at the foot of a zone is set to, so
// that least is left at an outlet the given height above it at design flow.
//
//	setting = P_min + gamma h + fall-off + friction
func ValveSetting(least unit.Pressure, gamma unit.Gradient, above unit.Length, fallOff, friction unit.Pressure) unit.Pressure {
	return least + gamma.OfColumn(above) + fallOff + friction
}

// Upward is p rounded up to whole steps of step: a setting that must leave at
// least a pressure. It has room for the rounding of floating point.
func Upward(p, step unit.Pressure) unit.Pressure {
	return unit.Pressure(math.Ceil(float64(p/step)-1e-9)) * step
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

// ZoneBottoms is the storey on which each zone above the street's begins,
// lowest first, storeys counted from 1: fed storeys are left to the street and
// the rest is filled from below with zones of perZone storeys.
func ZoneBottoms(storeys, fed, perZone int) []int {
	var out []int
	for z := range ZoneCount(storeys-fed, perZone) {
		out = append(out, fed+1+z*perZone)
	}
	return out
}

// CirculatorAcrossValve is the head a circulator must make when a reducing
// valve stands in the recirculated loop: never build it so.
//
//	head = (inlet - outlet + friction) / gamma
func CirculatorAcrossValve(in, out, friction unit.Pressure, gamma unit.Gradient) unit.Length {
	return gamma.HeightOf(in - out + friction)
}
