package solver

import (
	"errors"
	"math"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// Functions are the named functions that rules may call where a line of the
// working is more than arithmetic: a table look-up, a demand curve, a next
// standard size. They take and give plain numbers in the units that their
// names say.
var Functions = []formula.Func{
	{Name: "next_motor_hp", Arity: 1, Eval: motorHP(NextMotor), Dims: motorDims(NextMotor)},
	{Name: "lower_motor_hp", Arity: 1, Eval: motorHP(LowerMotor), Dims: motorDims(LowerMotor)},
	boosterKW("next_booster_kw", NextBoosterHeater),
	boosterKW("lower_booster_kw", LowerBoosterHeater),
}

// motorHP is a choice of motors on plain horsepower.
func motorHP(choose func(unit.Power) (unit.Power, bool)) func([]float64) float64 {
	return func(args []float64) float64 {
		p, ok := choose(unit.Power(args[0]) * horsepower)
		if !ok {
			return math.NaN()
		}
		return float64(p / horsepower)
	}
}

// motorDims is a choice of motors on a power with its unit.
func motorDims(choose func(unit.Power) (unit.Power, bool)) func([]unit.Quantity) (unit.Quantity, error) {
	return func(args []unit.Quantity) (unit.Quantity, error) {
		hp := mustUnit("hp")
		if args[0].Unit.Dim != hp.Dim {
			return unit.Quantity{}, errors.New("a power was expected")
		}
		p, ok := choose(unit.Power(args[0].SI()))
		if !ok {
			return unit.Quantity{}, errors.New("a power within the list of standard motors was expected")
		}
		return hp.Of(hp.FromSI(float64(p))), nil
	}
}
