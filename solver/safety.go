package solver

import "riserwork/solver/unit"

// SafeTemperatures reports whether a hot water system is hot enough against
// Legionella in its tank and at the end of its return, and cool enough at the
// shower. A limit met exactly is kept.
func SafeTemperatures(store, back, fixture, storeLeast, returnLeast, fixtureMost unit.Temperature) bool {
	const room = 1e-9
	return store >= storeLeast-room && back >= returnLeast-room && fixture <= fixtureMost+room
}

// PressuresApart is how far two pressures differ, whichever is the higher.
func PressuresApart(a, b unit.Pressure) unit.Pressure { return max(a, b) - min(a, b) }

// HotZoneSetting is the setting of a hot zone valve that stands lower than the
// cold one by some height, so that hot and cold meet at the fixture at flow;
// losses are those of the hot water alone.
//
//	P_hot = P_cold + gamma h + losses
func HotZoneSetting(cold unit.Pressure, gamma unit.Gradient, lower unit.Length, losses unit.Pressure) unit.Pressure {
	return cold + gamma.OfColumn(lower) + losses
}
