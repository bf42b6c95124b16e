package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Temperatures that are usual, in °F and °C. Common practice, no source; what
// a loop and a fixture ask is in the sources of the skills.
var (
	coldUS, coldSI     = []float64{40, 45, 50, 55, 60}, []float64{4, 5, 7, 10, 12, 15}
	storeUS, storeSI   = []float64{140, 145, 150, 160}, []float64{60, 62, 65, 70}
	mainUS, mainSI     = []float64{125, 128, 130}, []float64{52, 54, 55}
	loopUS, loopSI     = []float64{125, 128, 130, 135, 140}, []float64{52, 54, 56, 58, 60}
	showerUS, showerSI = []float64{102, 104, 105, 106, 108}, []float64{38, 39, 40, 41, 42}
)

func colds(s *building.Sheet) []float64  { return lists(s, coldUS, coldSI) }
func stores(s *building.Sheet) []float64 { return lists(s, storeUS, storeSI) }

// hotLists are the hot and the mixed temperatures at the master valve, or at a
// shower's valve.
func hotLists(s *building.Sheet, master bool) (hot, mixed []float64) {
	if master {
		return stores(s), lists(s, mainUS, mainSI)
	}
	return lists(s, loopUS, loopSI), lists(s, showerUS, showerSI)
}

// lists is one of two lists, by the system of heights and code.
func lists(s *building.Sheet, us, si []float64) []float64 {
	if s.US() {
		return us
	}
	return si
}

// heaterTower is a low building with a storage heater on its lowest level, on
// the street where that is enough, else on a booster.
func heaterTower(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: []solver.Use{solver.Apartment, solver.Hotel, solver.Residence, solver.Hospital}, Min: 3, Max: 12})
	gauge := s.UpValve()
	need := lift(s, t, gauge)
	swing := s.PickPlate([]float64{8, 10}, []float64{50, 75})
	if street := need + 2*gaugeStep(s); street <= s.PickPlate([]float64{75}, []float64{500}) {
		s.SetStreet(street, street-swing, gauge, "on the gauge in the meter room")
	} else {
		pumpRoom(s, gauge, need)
		feedAbove(s, 0)
	}
	t.Heater = &solver.Heater{Elevation: t.Levels[0].Elevation + s.Length(gauge), Rating: s.PlatePress(s.PickPlate([]float64{150}, []float64{1035}))}
}

// degrees is a temperature drawn in °F or °C.
func degrees(s *building.Sheet, t float64) unit.Temperature {
	if s.US() {
		return unit.Fahrenheit(t)
	}
	return unit.Celsius(t)
}

// loopLeast is the least temperature at which a loop's water comes back; its
// source is loopReturn.
func loopLeast(w problems.World) unit.Temperature {
	if w.House.System == unit.US {
		return unit.Fahrenheit(124)
	}
	return unit.Celsius(51)
}

// reliefOpens is where the temperature part of a relief valve opens, 210 °F
// (99 °C).
func reliefOpens(w problems.World) unit.Temperature {
	if w.House.System == unit.US {
		return unit.Fahrenheit(210)
	}
	return unit.Celsius(99)
}
