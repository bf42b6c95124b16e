package solver

import "riserwork/solver/unit"

// StoreysOver counts the storeys, from level 1 up, whose lowest outlet stands
// above most with no water flowing: there a valve is needed in the suites
// where the riser has none.
func StoreysOver(b *Building, most unit.Pressure, gamma unit.Gradient) int {
	n := 0
	for i := b.Ground; i <= b.Top(); i++ {
		if b.At(i, b.Lowest(i), gamma) > most {
			n++
		}
	}
	return n
}

// MiddleSettings is the range in which the setting between two reducing valves
// in series may lie, so that neither reduces by more than ratio.
//
//	P_in / ratio <= setting <= ratio P_out
//
// Pressures are gauge pressures. Common practice, no source; the maker's
// cavitation chart governs.
func MiddleSettings(in, out unit.Pressure, ratio float64) (lowest, highest unit.Pressure) {
	return in / unit.Pressure(ratio), out * unit.Pressure(ratio)
}

// FlowingOutlet is what a reducing valve lets through at its design flow.
//
//	P_flowing = setting - fall-off
func FlowingOutlet(v *Valve) unit.Pressure { return v.Setting - v.FallOff }

// SmallValveSetting is the setting of the small one of two parallel valves. It
// opens first as the pressure falls, so it is set higher by gap.
//
//	small = large + gap
func SmallValveSetting(large, gap unit.Pressure) unit.Pressure { return large + gap }

// TestPressure is what a specification asks of a riser: a multiple of the
// working pressure, and no less than least.
//
//	P_test = max(factor P_working, P_least)
func TestPressure(working unit.Pressure, factor float64, least unit.Pressure) unit.Pressure {
	return max(working*unit.Pressure(factor), least)
}

// MayStand reports whether a heater may stand where the working pressure is p:
// room below the weaker of its tank and its relief valve.
func MayStand(p, tank, relief, room unit.Pressure) bool { return p <= min(tank, relief)-room }
