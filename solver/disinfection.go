package solver

import "riserwork/solver/unit"

// ChlorineDose is the mass in kg of a chemical of which strength is chlorine
// that brings a volume of water to a dose in kg/m3. One ppm is one part of
// chlorine by weight in a million of water, about 1 mg/L.
//
//	m = dose V / strength
func ChlorineDose(v unit.Volume, dose, strength float64) float64 {
	return dose * float64(v) / strength
}
