package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// Duty is a flow and the head at it.
type Duty struct {
	Flow unit.Flow
	Head unit.Length
}

// PumpCurve is the head of a pump over its flow, a quadratic in SI units.
//
//	H = Shut + Slope Q + Bend Q2
type PumpCurve struct {
	Shut  unit.Length // at no flow
	Slope float64     // m per m3/s
	Bend  float64     // m per (m3/s)2
}

// PumpCurveThrough is the quadratic through three points of a maker's curve:
// at no flow, near the duty, and far out. An error says which points do not
// make a curve that falls ever faster.
func PumpCurveThrough(shut unit.Length, near, far Duty) (PumpCurve, error) {
	if !(near.Flow > 0 && far.Flow > near.Flow && shut > 0) {
		return PumpCurve{}, fmt.Errorf("solver: a pump curve at flows 0, %.4g and %.4g L/s, expected rising flows and a head at no flow",
			near.Flow/unit.LitrePerSecond, far.Flow/unit.LitrePerSecond)
	}
	// Falls from the first point, each for its flow.
	first := float64(near.Head-shut) / float64(near.Flow)
	second := float64(far.Head-shut) / float64(far.Flow)
	bend := (second - first) / float64(far.Flow-near.Flow)
	c := PumpCurve{Shut: shut, Slope: first - bend*float64(near.Flow), Bend: bend}
	if !(c.Bend <= 0 && far.Head < shut) {
		return PumpCurve{}, fmt.Errorf("solver: a pump curve of %.4g, %.4g and %.4g m, expected heads that fall, and fall faster farther out", shut, near.Head, far.Head)
	}
	return c, nil
}

// Head is the head at a flow; below zero the pump is in the way.
func (c PumpCurve) Head(q unit.Flow) unit.Length {
	return c.Shut + unit.Length(float64(c.Slope*float64(q))+float64(c.Bend*float64(q)*float64(q)))
}

// Parallel is the curve of n like pumps side by side: at a head each gives its
// flow.
func (c PumpCurve) Parallel(n float64) PumpCurve {
	return PumpCurve{c.Shut, c.Slope / n, c.Bend / (n * n)}
}

// Series is the curve of n like pumps one after the other: at a flow each adds
// its head.
func (c PumpCurve) Series(n float64) PumpCurve {
	return PumpCurve{c.Shut * unit.Length(n), c.Slope * n, c.Bend * n}
}

// AtSpeed is the curve at n times the speed: each point goes to n times its
// flow and the square of n times its head.
func (c PumpCurve) AtSpeed(n float64) PumpCurve {
	return PumpCurve{c.Shut * unit.Length(n*n), c.Slope * n, c.Bend}
}

// SystemCurve is the head that a system asks for over its flow: a height, and
// a loss that is known at one duty and grows with a power of the flow, 2 for
// fittings and rough pipe, 1.852 by Hazen and Williams.
//
//	H = Static + loss (Q / Q0)^Power
type SystemCurve struct {
	Static unit.Length
	Loss   Duty
	Power  float64
}

// Head is the head at a flow.
func (s SystemCurve) Head(q unit.Flow) unit.Length {
	return s.Static + s.Loss.Head*unit.Length(math.Pow(float64(q/s.Loss.Flow), s.Power))
}

// OperatingPoint is where the curve of a pump and that of its system cross:
// the flow that the pump really gives. The pump's surplus of head has no
// hollow in it, so that there is one crossing at most; it is halved down to.
func OperatingPoint(p PumpCurve, s SystemCurve) (Duty, error) {
	if !(s.Loss.Flow > 0) {
		return Duty{}, fmt.Errorf("solver: the system's loss is known at %.4g L/s, expected more than 0", s.Loss.Flow/unit.LitrePerSecond)
	}
	surplus := func(q unit.Flow) unit.Length { return p.Head(q) - s.Head(q) }
	if !(surplus(0) > 0) {
		return Duty{}, fmt.Errorf("solver: the pump gives %.4g m at no flow, expected more than the %.4g m that the system stands over it", p.Shut, s.Static)
	}
	low, high := unit.Flow(0), s.Loss.Flow
	for range 60 {
		if surplus(high) < 0 {
			break
		}
		low, high = high, 2*high
	}
	if !(surplus(high) < 0) {
		return Duty{}, fmt.Errorf("solver: the head of the pump never falls to that of the system, expected curves that cross")
	}
	for range 200 {
		middle := low + (high-low)/2
		if middle == low || middle == high {
			break
		}
		if surplus(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return Duty{low, s.Head(low)}, nil
}
