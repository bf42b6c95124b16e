package solver

import (
	"errors"
	"math"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// BoosterHeaters are the sizes of electric booster heaters for dishwashers in
// kilowatts, the smallest first. Common practice, no source.
var BoosterHeaters = []float64{3, 6, 9, 12, 18, 24, 36, 45, 54}

const kilowatt = 1000 * unit.Watt

// NextBoosterHeater is the smallest size that gives p; false above the list.
func NextBoosterHeater(p unit.Power) (unit.Power, bool) {
	for _, kw := range BoosterHeaters {
		if size := unit.Power(kw) * kilowatt; size >= p*(1-1e-9) {
			return size, true
		}
	}
	return 0, false
}

// LowerBoosterHeater is the largest size that gives no more than p; false
// below the list.
func LowerBoosterHeater(p unit.Power) (unit.Power, bool) {
	for i := len(BoosterHeaters) - 1; i >= 0; i-- {
		if size := unit.Power(BoosterHeaters[i]) * kilowatt; size <= p*(1+1e-9) {
			return size, true
		}
	}
	return 0, false
}

// boosterKW is a choice of booster heaters as a function of a formula, on
// plain kilowatts and on a power with its unit.
func boosterKW(name string, choose func(unit.Power) (unit.Power, bool)) formula.Func {
	return formula.Func{
		Name: name, Arity: 1,
		Eval: func(args []float64) float64 {
			p, ok := choose(unit.Power(args[0]) * kilowatt)
			if !ok {
				return math.NaN()
			}
			return float64(p / kilowatt)
		},
		Dims: func(args []unit.Quantity) (unit.Quantity, error) {
			kw := mustUnit("kW")
			if args[0].Unit.Dim != kw.Dim {
				return unit.Quantity{}, errors.New("a power was expected")
			}
			p, ok := choose(unit.Power(args[0].SI()))
			if !ok {
				return unit.Quantity{}, errors.New("a power within the list of booster heaters was expected")
			}
			return kw.Of(kw.FromSI(float64(p))), nil
		},
	}
}
