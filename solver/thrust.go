package solver

import (
	"math"

	"riserwork/solver/unit"
)

// EndThrust is the push in newtons on a dead end or a closed valve: pressure
// on the area of the outside diameter, which a joint lets the water press on.
//
//	T = P A
func EndThrust(p unit.Pressure, outside unit.Length) float64 {
	return float64(p) * math.Pi * float64(outside) * float64(outside) / 4
}

// BendThrust is the push in newtons on a bend, angle in degrees.
//
//	T = 2 P A sin(angle / 2)
func BendThrust(p unit.Pressure, outside unit.Length, angle float64) float64 {
	return 2 * EndThrust(p, outside) * math.Sin(angle/2*math.Pi/180)
}

// PairedRods is how many rods of a load carry a thrust, set in pairs.
func PairedRods(thrust, rod float64) int { return 2 * int(math.Ceil(thrust/rod/2-1e-9)) }

// BlockArea is the area in m2 that a thrust block presses on the soil with.
//
//	A = T factor / bearing
func BlockArea(thrust, factor float64, bearing unit.Pressure) float64 {
	return thrust * factor / float64(bearing)
}
