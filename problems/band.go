package problems

import (
	"math"

	"riserwork/solver/formula"
)

// Half is half of a sensible rounding of value v of the step: half its third
// figure, or half a whole psi, kPa, foot or degree where that is more and
// moves the value by 2 % or less. Counts and words are exact.
func (s *Step) Half(v float64) float64 {
	h := s.figureHalf(v)
	if w := s.Least / 2; w > h && w <= earlyShare*math.Abs(v) {
		return w
	}
	return h
}

// Coarse is Half with whole units allowed at every size: what people write
// though it rounds too early.
func (s *Step) Coarse(v float64) float64 {
	if s.exact() {
		return 0
	}
	return math.Max(s.figureHalf(v), s.Least/2)
}

// earlyShare is how far a rounding to the whole unit may move a line.
const earlyShare = 0.02

func (s *Step) exact() bool { return s.Whole || len(s.Choices) > 0 }

func (s *Step) figureHalf(v float64) float64 {
	if s.exact() || v == 0 {
		return 0
	}
	return math.Pow10(decade(math.Abs(v))-s.figures()+1) / 2
}

// decade is the power of ten at or below v: 2 for 100 up to 1,000. What is
// endless or no number has one beyond any of the trade.
func decade(v float64) int {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return 300
	}
	_, two := math.Frexp(v)
	ten := int(math.Floor(float64(two-1) * (math.Ln2 / math.Ln10)))
	if v >= math.Pow10(ten+1) {
		ten++
	}
	return ten
}

func (s *Step) figures() int { return max(3, s.Figures) }

// rounding is how the lines of a chain are rounded: its half of a value.
type rounding func(s *Step, v float64) float64

// Figures is half of the last of the figures that a value of the step is given
// to: the third, or more where the step asks.
func Figures(s *Step, v float64) float64 { return s.figureHalf(v) }

// ChainBand is the values that every step may have when each line of the
// chain is rounded; constants may be any that is taken without a word.
func (p *Problem) ChainBand(half rounding) []formula.Interval {
	env := p.intervals()
	for i := range p.Steps {
		s := &p.Steps[i]
		v := s.Bound.Interval(env)
		h := math.Max(half(s, v.Lo), half(s, v.Hi))
		env[p.StepSlot(i)] = formula.Interval{Lo: v.Lo - h, Hi: v.Hi + h}
	}
	return env
}

// OneStepBand is the values of step i from right inputs that were each
// rounded, to whole units too.
func (p *Problem) OneStepBand(i int) formula.Interval {
	env := p.intervals()
	for j := 0; j < i; j++ {
		s := &p.Steps[j]
		env[p.StepSlot(j)] = formula.Around(s.Value, s.Coarse(s.Value))
	}
	v := p.Steps[i].Bound.Interval(env)
	h := p.Steps[i].Coarse(p.Steps[i].Value)
	return formula.Interval{Lo: v.Lo - h, Hi: v.Hi + h}
}

// intervals is the environment of what is told: givens exact, constants as
// wide as their accepted roundings; steps are still empty.
func (p *Problem) intervals() []formula.Interval {
	env := make([]formula.Interval, p.Slots())
	for i, t := range p.Told {
		v := formula.Interval{Lo: t.Value, Hi: t.Value}
		for _, a := range t.Accept {
			v = formula.Hull(v, formula.Interval{Lo: a, Hi: a})
		}
		env[i] = v
	}
	return env
}
