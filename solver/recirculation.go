package solver

import (
	"math"

	"riserwork/solver/unit"
)

// Run is a piece of hot pipe: how long it is, and what heat it loses in W/m.
type Run struct {
	Length unit.Length
	Loss   float64
}

// Heat is what the run loses.
func (r Run) Heat() unit.Power { return unit.Power(float64(r.Length) * r.Loss) }

// RunsLoss is the heat that runs of pipe lose together.
func RunsLoss(runs ...Run) unit.Power {
	var sum unit.Power
	for _, r := range runs {
		sum += r.Heat()
	}
	return sum
}

// Section is a piece of a hot supply between two branches: what heat it loses
// and what flows in it.
type Section struct {
	Loss unit.Power
	Flow unit.Flow
}

// Along is the temperature at the end of each section of a supply, one behind
// the other. c is the heat of water per volume in J/(m3 K).
//
//	T = T before - loss / (c flow)
func Along(hot unit.Temperature, c float64, sections ...Section) []unit.Temperature {
	out := make([]unit.Temperature, len(sections))
	for i, s := range sections {
		hot -= unit.Temperature(LoopDrop(s.Loss, c, s.Flow))
		out[i] = hot
	}
	return out
}

// Stream is a flow and its temperature.
type Stream struct {
	Flow unit.Flow
	Temp unit.Temperature
}

// Together is the temperature of streams run into one pipe, each counted with
// its flow.
//
//	T = (Q1 T1 + Q2 T2 + ...) / (Q1 + Q2 + ...)
func Together(streams ...Stream) unit.Temperature {
	var all Stream
	for _, s := range streams {
		if s.Flow > 0 {
			all = Stream{all.Flow + s.Flow, Blend(all.Flow, all.Temp, s.Flow, s.Temp)}
		}
	}
	return all.Temp
}

// ToHeater is the part of a loop's return that must go to the heater while
// nobody draws, so that with the rest in its cold port the mixing valve gives
// its temperature: heat in is heat out.
//
//	part = Q (mixed - back) / (hot - back)
func ToHeater(q unit.Flow, hot, mixed, back unit.Temperature) unit.Flow {
	return q * unit.Flow(HotShare(mixed, back, hot))
}

// CirculatorHead is the head of a circulator for what its worst loop loses.
// Height is not in it: a loop is closed, and what goes up comes down.
//
//	head = (p1 + p2 + ...) / gamma
func CirculatorHead(gamma unit.Gradient, losses ...unit.Pressure) unit.Length {
	var sum unit.Pressure
	for _, p := range losses {
		sum += p
	}
	return gamma.HeightOf(sum)
}

// ValveUnit is what the flow factor of a valve counts in: it passes Flow at a
// loss of Loss.
type ValveUnit struct {
	Flow unit.Flow
	Loss unit.Pressure
}

// Units of Cv (gpm at 1 psi) and of Kv (m3/h at 1 bar).
var (
	CvUnit = ValveUnit{unit.GPM, unit.PSI}
	KvUnit = ValveUnit{unit.CubicMetrePerSec / 3600, 100 * unit.Kilopascal}
)

// Factor is the flow factor of a valve that takes a drop at a flow.
//
//	factor = Q / sqrt(p)
func (u ValveUnit) Factor(q unit.Flow, drop unit.Pressure) float64 {
	return float64(q/u.Flow) / math.Sqrt(float64(drop/u.Loss))
}

// Drop is what a valve of a flow factor takes at a flow.
//
//	p = (Q / factor)2
func (u ValveUnit) Drop(q unit.Flow, factor float64) unit.Pressure {
	part := float64(q/u.Flow) / factor
	return u.Loss * unit.Pressure(part*part)
}

// Split shares a flow between branches side by side, of which each is known
// by its loss at one and the same flow: the loss grows with the square of the
// flow, so each takes its share by the root of one over the loss.
func Split(q unit.Flow, losses ...unit.Pressure) []unit.Flow {
	out := make([]unit.Flow, len(losses))
	sum := 0.0
	for _, p := range losses {
		sum += 1 / math.Sqrt(float64(p))
	}
	for i, p := range losses {
		out[i] = q * unit.Flow(1/math.Sqrt(float64(p))/sum)
	}
	return out
}

// DrawnOff is the time in seconds until the water that stands in a pipe has
// run off at a flow; content is the pipe's in m3 for each metre.
//
//	t = content length / Q
func DrawnOff(content float64, length unit.Length, q unit.Flow) float64 {
	return content * float64(length) / float64(q)
}

// HeatBought is the heat in joules that a heater takes in to give a power for
// some seconds.
//
//	heat = P t / efficiency
func HeatBought(p unit.Power, seconds, efficiency float64) float64 {
	return float64(p) * seconds / efficiency
}
