package solver

import "riserwork/solver/unit"

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

// ReliefSuits reports whether a relief valve passes all of a heater's input,
// opens at or below the tank's rating, and has room above the working pressure
// so that it stays shut.
func ReliefSuits(rating, input unit.Power, setting, tank, working, room unit.Pressure) bool {
	return rating >= input && setting <= tank && setting-working >= room
}
