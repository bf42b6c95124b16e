package problems

import (
	"math"
	"strconv"
)

// Carried is the values of all steps when the slips of some stand in place of
// their rules and every later line is worked rightly from there.
func (p *Problem) Carried(slips map[int]*Wrong) []float64 {
	env := p.Env()
	out := make([]float64, len(p.Steps))
	for i := range p.Steps {
		b := p.Steps[i].Bound
		if w := slips[i]; w != nil {
			b = w.Bound
		}
		out[i] = b.Eval(env)
		env[p.StepSlot(i)] = out[i]
	}
	return out
}

// plausible reports a value that a learner would not stop at: a number of the
// right kind, positive, within a factor of a hundred of the right one.
func (s *Step) plausible(v float64) bool {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return false
	}
	if len(s.Choices) > 0 {
		return v >= 0 && int(v) < len(s.Choices)
	}
	if s.Whole {
		return v >= 1
	}
	return v > s.Value/100 && v < s.Value*100 && v > 0
}

// apartFrom reports that two values of a step are not the same by rounding.
func (s *Step) apartFrom(a, b float64) bool {
	return math.Abs(a-b) > s.Coarse(a)+s.Coarse(b)+1e-9
}

// rounded is v as the step's figures show it, as a number.
func (s *Step) rounded(v float64) float64 {
	h := Figures(s, v)
	if h == 0 {
		return v
	}
	d := int(math.Round(-math.Log10(2 * h)))
	r, err := strconv.ParseFloat(strconv.FormatFloat(math.Round(v/(2*h))*2*h, 'f', max(0, d), 64), 64)
	if err != nil {
		return v
	}
	return r
}
