package solver

import "riserwork/solver/unit"

// AirTank is a pressure tank with a bladder: its volume, and the absolute
// pressures of its air where it stands.
type AirTank struct {
	Volume    unit.Volume
	Precharge unit.Pressure // no water in it
	CutIn     unit.Pressure
	CutOut    unit.Pressure
}

// Drawdown is the water that the tank gives from cut-out to cut-in, by Boyle:
// the air of the pre-charge fills V P0/P at each pressure.
//
//	V0 = V (P0/P1 - P0/P2)
func (t AirTank) Drawdown() unit.Volume {
	return t.Volume * unit.Volume(t.Precharge/t.CutIn-t.Precharge/t.CutOut)
}

// StandAbove is how high an open tank's lowest water must stand above an
// outlet, and how much of that the roof does not give already.
//
//	h = P / gamma - roof
func StandAbove(least unit.Pressure, gamma unit.Gradient, roof unit.Length) unit.Length {
	return gamma.HeightOf(least) - roof
}

// FillRate is the flow that fills the part of a tank between two levels in a
// time.
func FillRate(base float64, high, low unit.Length, seconds float64) unit.Flow {
	return unit.Flow(base * float64(high-low) / seconds)
}
