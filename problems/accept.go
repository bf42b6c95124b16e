package problems

import (
	"math"
	"strconv"

	"riserwork/solver/formula"
)

// Accept says why a drawn problem cannot be marked for certain; empty where
// it can. Every slip must stand apart from the right value and from the other
// slips of its step, and honest rounding must not flip a whole number or a
// choice.
func Accept(p *Problem) string {
	figures := p.ChainBand(Figures)
	whole := p.ChainBand((*Step).Coarse)
	for i := range p.Steps {
		s := &p.Steps[i]
		if why := s.usable(whole[p.StepSlot(i)]); why != "" {
			return s.Name + ": " + why
		}
		if why := p.apart(i, figures[p.StepSlot(i)]); why != "" {
			return s.Name + ": " + why
		}
	}
	return ""
}

// usable refuses values that are not positive or not of a size that people
// write, and whole numbers or choices that rounding flips.
func (s *Step) usable(band formula.Interval) string {
	if s.exact() {
		if band.Lo != band.Hi {
			return "rounding flips it"
		}
		if s.Value < 0 || len(s.Choices) == 0 && s.Value == 0 {
			return "the count is not positive"
		}
		if len(s.Choices) > 0 && (s.Value != math.Trunc(s.Value) || int(s.Value) >= len(s.Choices)) {
			return "the choice is off its list"
		}
		return ""
	}
	if s.Value < 1e-4 || s.Value > 5e8 {
		return "the value is not of a usable size"
	}
	if band.Lo <= 0 {
		return "rounding may take it to zero"
	}
	return ""
}

// apart checks the slips of step i on right inputs.
func (p *Problem) apart(i int, chain formula.Interval) string {
	s := &p.Steps[i]
	one := p.OneStepBand(i)
	env := p.Env()
	values := make([]float64, 0, len(s.Wrongs))
	for j := range s.Wrongs {
		w := &s.Wrongs[j]
		v := w.Bound.Eval(env)
		if math.IsNaN(v) {
			continue
		}
		// the slip is written rounded too, or cut off
		by := math.Max(2*s.figureHalf(s.Value), s.Coarse(v))
		if overlaps(chain, v, by) || overlaps(one, v, by) {
			return "slip " + w.ID + " gives " + strconv.FormatFloat(v, 'g', 5, 64) + ", within the rounding of the right value"
		}
		if s.readsWhole() && math.Abs(v-s.Value) <= math.Min(0.5, earlyShare*s.Value) {
			return "slip " + w.ID + " is the right value to the whole " + s.Unit.Name
		}
		for k, u := range values {
			if math.Abs(u-v) <= s.figureHalf(u)+s.figureHalf(v)+1e-9 {
				return "slips " + w.ID + " and the " + strconv.Itoa(k+1) + ". of its step give the same value"
			}
		}
		values = append(values, v)
	}
	return ""
}

// overlaps reports whether v plus and minus by touches the band.
func overlaps(band formula.Interval, v, by float64) bool {
	return v >= band.Lo-by && v <= band.Hi+by
}

// readsWhole reports a unit that people round to the whole, gauge or not.
func (s *Step) readsWhole() bool {
	switch s.Unit.Name {
	case "psi", "kPa", "ft":
		return true
	}
	return false
}
