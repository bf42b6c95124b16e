package solver

import (
	"math"

	"riserwork/solver/unit"
)

// StandardGravity is the conventional value in m/s2 (NIST SP 811, App. B.9).
const StandardGravity = 9.80665

// WaterColumn is the pressure of a conventional water column, water of
// 1,000 kg/m3 under standard gravity: 9.80665 kPa/m, 0.4335 psi/ft
// (NIST SP 811, 2008, App. B.9, foot of water, conventional).
const WaterColumn = unit.Gradient(1000 * StandardGravity)

// FloorPressure is the static pressure at a height above the point where p
// stands; below it the height is negative.
//
//	P2 = P1 - gamma h
func FloorPressure(p unit.Pressure, gamma unit.Gradient, above unit.Length) unit.Pressure {
	return p - gamma.OfColumn(above)
}

// Reach is the height above the gauge at which keep is left of p.
//
//	h = (P - P_keep) / gamma
func Reach(p, keep unit.Pressure, gamma unit.Gradient) unit.Length {
	return gamma.HeightOf(p - keep)
}

// FlowAtPressure is the flow of one open outlet after the pressure at it went
// from p1 to p2: flow follows the root of pressure.
//
//	Q2 = Q1 sqrt(P2 / P1)
func FlowAtPressure(q unit.Flow, p1, p2 unit.Pressure) unit.Flow {
	return q * unit.Flow(math.Sqrt(float64(p2/p1)))
}

// StreetFlow is what a main would give at residual want, from a flow test
// that drew q and moved the pressure from static to residual.
//
//	Q2 = Q1 ((S - R2) / (S - R1))^0.54
//
// The exponent is that of the Hazen-Williams formula (1/1.85).
func StreetFlow(q unit.Flow, static, residual, want unit.Pressure) unit.Flow {
	return q * unit.Flow(math.Pow(float64((static-want)/(static-residual)), 0.54))
}
