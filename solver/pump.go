package solver

import (
	"math"

	"riserwork/solver/unit"
)

// horsepower is 550 ft·lbf/s.
const horsepower = unit.Power(745.69987158227022)

// Motors are the standard motors in horsepower, the smallest first. NEMA MG 1,
// from memory.
var Motors = []float64{0.5, 0.75, 1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250}

// NextMotor is the smallest standard motor that gives p; false above the list.
func NextMotor(p unit.Power) (unit.Power, bool) {
	for _, hp := range Motors {
		if m := unit.Power(hp) * horsepower; m >= p*(1-1e-9) {
			return m, true
		}
	}
	return 0, false
}

// LowerMotor is the largest standard motor that gives no more than p; false
// below the list.
func LowerMotor(p unit.Power) (unit.Power, bool) {
	for i := len(Motors) - 1; i >= 0; i-- {
		if m := unit.Power(Motors[i]) * horsepower; m <= p*(1+1e-9) {
			return m, true
		}
	}
	return 0, false
}

// Discharge is the pressure that a pump must have behind it so that least is
// left at an outlet above it.
//
//	P = gamma h + losses + P_least
func Discharge(gamma unit.Gradient, above unit.Length, losses, least unit.Pressure) unit.Pressure {
	return gamma.OfColumn(above) + losses + least
}

// PumpHead is the head between two gauges beside a pump, the discharge gauge
// higher than the suction gauge by apart; the pipes are taken as one size.
//
//	H = (P2 - P1) / gamma + z
func PumpHead(suction, discharge unit.Pressure, gamma unit.Gradient, apart unit.Length) unit.Length {
	return gamma.HeightOf(discharge-suction) + apart
}

// ShaftPower is the power at a pump's shaft. The base is flow times height
// for one unit of power, in SI: 1 / (rho g). Schools teach it as 3960 (gpm,
// ft, hp) or 102 (L/s, m, kW).
//
//	P = Q H / (base x efficiency)
func ShaftPower(q unit.Flow, h unit.Length, base, efficiency float64) unit.Power {
	return unit.Power(float64(q) * float64(h) / (base * efficiency))
}

// Speeds is a point of a pump's own curve.
type Speeds struct {
	Flow  unit.Flow
	Head  unit.Length
	Power unit.Power
}

// AtSpeed is the same point of the curve at n times the speed: flow goes with
// n, head with its square, power with its cube. It holds for the pump alone.
func (p Speeds) AtSpeed(n float64) Speeds {
	return Speeds{p.Flow * unit.Flow(n), p.Head * unit.Length(n*n), p.Power * unit.Power(math.Pow(n, 3))}
}

// Parallel is the flow of n like pumps side by side: flows add, at the boost
// of one.
func Parallel(each unit.Flow, n float64) unit.Flow { return each * unit.Flow(n) }

// Series is the pressure behind n like pumps one after the other: boosts add,
// at the flow of one.
func Series(suction, boost unit.Pressure, n float64) unit.Pressure {
	return suction + boost*unit.Pressure(n)
}

// CycleSeconds is how long a tank's drawdown takes to fill and to empty again
// while the building draws q of the pump's flow; the shortest is at half of
// it. The times of filling and emptying are V/(Qp - q) and V/q.
func CycleSeconds(drawdown unit.Volume, pump, q unit.Flow) float64 {
	return float64(drawdown)/float64(pump-q) + float64(drawdown)/float64(q)
}

// YearlyCost is what a pump's motor costs: the shaft's power over the motor's
// efficiency, times the seconds it runs, times the price of a joule.
func YearlyCost(shaft unit.Power, efficiency, seconds, perJoule float64) float64 {
	return float64(shaft) / efficiency * seconds * perJoule
}
