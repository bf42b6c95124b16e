package skills

import (
	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// boostRinse puts a booster heater of v watts before the dishwasher.
func boostRinse(w problems.World, v float64) problems.Outcome {
	right := solveBooster(w)
	text := func(watts float64) string { return w.Text(measure.MotorInput, watts) }
	name := "A booster heater of " + text(v)
	reached := w.SI("supply") + v/boosterLoad(w, 1)
	asked := w.Text(measure.Temp, w.SI("rinse_hot"))
	made, known := solver.NextBoosterHeater(unit.Power(v))
	switch known = known && float64(made) < v*1.001; {
	case v > 0.999*right && v < 1.001*right:
		return problems.Outcome{Kept: true, Says: []string{name + " has power for the " + asked + " of the rinse at the busiest hour, with some to spare; its thermostat holds it there."}}
	case reached < w.SI("rinse_hot"):
		return problems.Outcome{Says: []string{name + " would bring the rinse to " + w.Text(measure.Temp, reached) + " at the busiest hour, where " + asked + " is asked: the dishes are not sanitized."}}
	case !known:
		return problems.Outcome{Says: []string{name + " would reach the " + asked + " of the rinse, and none is made so: the next size is " + text(right) + "."}}
	}
	return problems.Outcome{Says: []string{name + " has power to spare: " + text(right) + " reaches the " + asked + " of the rinse too, and the larger heater and its wiring are paid for nothing."}}
}

// boosterLoad is the power, in watts, that lifts the rinse by so many kelvins.
func boosterLoad(w problems.World, rise unit.TempDifference) float64 {
	heat := float64(solver.HeatForVolume(w.SI("water_heat"), unit.Volume(w.SI("rinse")), rise)) // of a second: watts
	if w.House.System == unit.US {
		return heat / w.SI("btu_per_kwh")
	}
	return heat / w.SI("seconds_per_hour")
}
