package solver

import (
	"math"

	"riserwork/solver/unit"
)

// ExpansionVolume is how much more room a volume of water takes when it warms,
// from its specific volumes in m3/kg cold and hot.
//
//	dV = V (v2 / v1 - 1)
func ExpansionVolume(v unit.Volume, cold, hot float64) unit.Volume {
	return v * unit.Volume((hot-cold)/cold)
}

// ExpansionTank is the volume of a diaphragm tank that takes in so much water
// while its pressure goes from line, its pre-charge, to top, gauge pressures
// under an atmosphere of air.
//
//	V = dV / (1 - P1 / P2), absolute pressures
func ExpansionTank(taken unit.Volume, line, top, air unit.Pressure) unit.Volume {
	return taken / unit.Volume(1-float64((line+air)/(top+air)))
}

// WarmedTo is the pressure that a diaphragm tank of a volume comes to when it
// has taken so much water in from line, its pre-charge; infinite where the
// water fills it.
//
//	P2 = P1 V / (V - dV), absolute pressures
func WarmedTo(taken, tank unit.Volume, line, air unit.Pressure) unit.Pressure {
	if tank <= taken {
		return unit.Pressure(math.Inf(1))
	}
	return (line+air)*unit.Pressure(tank/(tank-taken)) - air
}

// ReliefSuits reports whether a relief valve passes all of a heater's input,
// opens at or below the tank's rating, and has room above the working pressure
// so that it stays shut.
func ReliefSuits(rating, input unit.Power, setting, tank, working, room unit.Pressure) bool {
	return rating >= input && setting <= tank && setting-working >= room
}
