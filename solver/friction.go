package solver

import (
	"math"

	"riserwork/solver/unit"
)

// Reynolds numbers between which a flow is neither smooth nor turbulent for
// certain; common practice, no source beyond it.
const (
	laminarTo     = 2000.0
	turbulentFrom = 4000.0
)

// Reynolds is the Reynolds number of a flow in a round pipe; nu is the
// kinematic viscosity, m2/s.
//
//	Re = v d / nu
func Reynolds(q unit.Flow, bore unit.Length, nu float64) float64 {
	return RoundPipe * math.Abs(float64(q)) / (float64(bore) * nu)
}

// FrictionFactor is the factor f of Darcy and Weisbach for a Reynolds number
// and a roughness relative to the bore: 64/Re while the flow is laminar, the
// formula of Colebrook and White when it is turbulent, and straight between
// the two from 2,000 to 4,000.
//
//	1/sqrt(f) = -2 log10(rough/3.7 + 2.51 / (Re sqrt(f)))
//
// C. F. Colebrook, Journal of the Institution of Civil Engineers 11 (1939);
// from memory. It holds for Reynolds numbers to 1e8 and a roughness to 0.05.
func FrictionFactor(reynolds, rough float64) float64 {
	switch {
	case reynolds <= laminarTo:
		return 64 / reynolds
	case reynolds < turbulentFrom:
		share := (reynolds - laminarTo) / (turbulentFrom - laminarTo)
		low, high := 64/laminarTo, colebrook(turbulentFrom, rough)
		return low + share*(high-low)
	}
	return colebrook(reynolds, rough)
}

// colebrook solves the formula for x = 1/sqrt(f) by Newton, from the explicit
// formula of Swamee and Jain, which is near it. Four rounds reach the
// last figure, since the left side is a line and the right one nearly.
func colebrook(reynolds, rough float64) float64 {
	x := 1 / math.Sqrt(SwameeJain(reynolds, rough))
	for range 4 {
		inside := rough/3.7 + 2.51*x/reynolds
		miss := x + 2*math.Log10(inside)
		slope := 1 + 2/math.Ln10*2.51/reynolds/inside
		x -= miss / slope
	}
	return 1 / (x * x)
}

// SwameeJain is the friction factor without trial, for turbulent flow:
// P. K. Swamee and A. K. Jain, Journal of the Hydraulics Division, ASCE 102
// (1976); from memory. It is made for a relative roughness from 1e-6 to 0.01
// and Reynolds numbers from 5,000 to 1e8 and is there within 3 % of Colebrook's
// formula.
func SwameeJain(reynolds, rough float64) float64 {
	x := math.Log10(rough/3.7 + 5.74/math.Pow(reynolds, 0.9))
	return 0.25 / (x * x)
}

// DarcyLoss is the friction per length of water in a round pipe whose wall is
// rough, a height of roughness.
//
//	p per length = f rho v2 / (2 d), which is 32 mu v / d2 in laminar flow
func DarcyLoss(q unit.Flow, bore, rough unit.Length, w Water) unit.Gradient {
	v := float64(PipeVelocity(q, bore, RoundPipe))
	reynolds := Reynolds(q, bore, w.Kinematic())
	if reynolds <= laminarTo {
		return unit.Gradient(32 * w.Viscosity * v / float64(bore*bore))
	}
	f := FrictionFactor(reynolds, float64(rough/bore))
	return unit.Gradient(f * w.Density * v * math.Abs(v) / (2 * float64(bore)))
}

// Roughness is the height of the roughness of a pipe's wall.
type Roughness struct {
	Material string
	Height   unit.Length
}

// Roughnesses are values of new pipe: L. F. Moody, Transactions of the ASME 66
// (1944), fig. 2, in feet there; from memory. Plastic is taken as drawn tube.
var Roughnesses = []Roughness{
	{"copper tube", 5e-6 * unit.Foot},
	{"plastic pipe", 5e-6 * unit.Foot},
	{"steel", 1.5e-4 * unit.Foot},
	{"asphalted cast iron", 4e-4 * unit.Foot},
	{"galvanized steel", 5e-4 * unit.Foot},
	{"cast iron", 8.5e-4 * unit.Foot},
}

// FittingsHead is the head that fittings lose, from the sum of their loss
// factors: so many times the velocity head.
//
//	h = K v2 / (2 g)
func FittingsHead(factor float64, v unit.Velocity) unit.Length {
	return unit.Length(factor * float64(v) * math.Abs(float64(v)) / (2 * StandardGravity))
}
