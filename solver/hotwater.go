package solver

import "riserwork/solver/unit"

// HotShare is the share of hot water in a mix.
//
//	share = (mixed - cold) / (hot - cold)
func HotShare(mixed, cold, hot unit.Temperature) float64 {
	return float64(mixed-cold) / float64(hot-cold)
}

// Blend is the temperature of two streams run together.
//
//	T = (Q1 T1 + Q2 T2) / (Q1 + Q2)
func Blend(q1 unit.Flow, t1 unit.Temperature, q2 unit.Flow, t2 unit.Temperature) unit.Temperature {
	return t1 + unit.Temperature(float64(q2/(q1+q2))*float64(t2-t1))
}

// HeatForVolume is the heat in joules that warms a volume of water. c is the
// heat of water per volume in J/(m3 K), as the school's constant gives it.
//
//	heat = c V dT
func HeatForVolume(c float64, v unit.Volume, rise unit.TempDifference) float64 {
	return c * float64(v) * float64(rise)
}

// Recovery is the flow that a heater of the given input warms by rise.
//
//	flow = input efficiency / (c dT)
func Recovery(input unit.Power, efficiency, c float64, rise unit.TempDifference) unit.Flow {
	return unit.Flow(float64(input) * efficiency / (c * float64(rise)))
}

// CirculationFlow is the flow that carries a loop's heat loss at a drop of
// temperature over the pipe whose loss it is.
//
//	flow = loss / (c drop)
func CirculationFlow(loss unit.Power, c float64, drop unit.TempDifference) unit.Flow {
	return unit.Flow(float64(loss) / (c * float64(drop)))
}

// RiseOfHeat is how far an amount of heat in joules warms a volume of water.
//
//	dT = heat / (c V)
func RiseOfHeat(heat, c float64, v unit.Volume) unit.TempDifference {
	return unit.TempDifference(heat / (c * float64(v)))
}

// RiseAtFlow is how far a heater of the given input warms a flow.
//
//	dT = input efficiency / (c flow)
func RiseAtFlow(input unit.Power, efficiency, c float64, flow unit.Flow) unit.TempDifference {
	return unit.TempDifference(float64(input) * efficiency / (c * float64(flow)))
}

// LoopDrop is how far the water of a loop cools at a circulation flow, over
// the pipe whose heat loss it is.
//
//	drop = loss / (c flow)
func LoopDrop(loss unit.Power, c float64, flow unit.Flow) unit.TempDifference {
	return unit.TempDifference(float64(loss) / (c * float64(flow)))
}

// LoopLoss is the heat loss of a loop: supply and return, each its length
// times its loss per length in W/m.
func LoopLoss(l Loop) unit.Power {
	return unit.Power(float64(l.Supply)*l.SupplyLoss + float64(l.Return)*l.ReturnLoss)
}

// HeatingTime is the time in seconds in which a heater of the given input
// brings an amount of heat in joules into the water.
//
//	t = heat / (input efficiency)
func HeatingTime(heat float64, input unit.Power, efficiency float64) float64 {
	return heat / (float64(input) * efficiency)
}

// PeakStorage is the tank that, with the heater's recovery, gives a draw of
// hot water over some seconds; usable is the share of it that comes out hot.
//
//	V = (draw - recovery t) / usable
func PeakStorage(draw unit.Volume, recovery unit.Flow, seconds, usable float64) unit.Volume {
	return (draw - unit.Volume(float64(recovery)*seconds)) / unit.Volume(usable)
}
