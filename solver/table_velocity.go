package solver

import "riserwork/solver/unit"

// VelocityLimits are the highest speeds of water in copper tube: Copper Tube
// Handbook, as an engineering handbook page repeats them; confirmed. Above
// 140 °F it gives 2 to 3 ft/s; small pipe and quiet rooms take less, plastic
// what its maker says.
var VelocityLimits = []VelocityLimit{
	{"cold water", mustUnit("ft/s").Of(8), mustUnit("m/s").Of(2.4)},
	{"hot water up to 140 °F (60 °C)", mustUnit("ft/s").Of(5), mustUnit("m/s").Of(1.5)},
	{"hot water over 140 °F (60 °C)", mustUnit("ft/s").Of(3), mustUnit("m/s").Of(0.9)},
}

// VelocityLimit is the highest speed for one water.
type VelocityLimit struct {
	Water  string
	US, SI unit.Quantity
}

// In is the limit in a system's unit.
func (l VelocityLimit) In(s unit.System) float64 {
	if s == unit.US {
		return l.US.Value
	}
	return l.SI.Value
}
