package marking_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// learner is a simulated apprentice. It knows the rules and slips of a
// problem as text and works them out with its own numbers; of the marker it
// knows nothing.
type learner struct {
	rng       *rand.Rand
	write     func(l *learner, s *problems.Step, v float64) (text string, value float64)
	unrounded bool // carries the unrounded number on, as a calculator's memory does
	variant   bool // takes another rounding of each constant
	other     bool // writes in the other system's unit
	comma     bool // writes a decimal comma
	merge     int  // writes every merge-th line and the answer; 1: all
	only      bool // writes the answer only
	expr      bool // writes the line out with numbers put in
}

// work writes one line a step; skipped steps are empty. Slips go in the place
// of rules by step.
func (l *learner) work(p *problems.Problem, slips map[int]*problems.Wrong) []string {
	lines := make([]string, len(p.Steps))
	env := make([]float64, p.Slots())
	exact := make([]float64, p.Slots())
	for i, t := range p.Told {
		env[i] = t.Value
		if n := len(t.Accept); t.Constant && l.variant && n > 0 {
			env[i] = t.Accept[l.rng.IntN(n)]
		}
		exact[i] = env[i]
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		bound, expr := s.Bound, s.Expr
		if w := slips[i]; w != nil {
			bound, expr = w.Bound, w.Expr
		}
		v := bound.Eval(env)
		if l.unrounded {
			v = bound.Eval(exact)
		}
		exact[p.StepSlot(i)] = v
		written := i == len(p.Steps)-1 || !l.only && (l.merge < 2 || i%l.merge == l.merge-1)
		if !written {
			env[p.StepSlot(i)] = v
			continue
		}
		text, value := l.put(s, v)
		if l.expr && len(s.Choices) == 0 {
			numbers := expr.Numbers(func(name string) string { return number(env[p.Slot(name)]) })
			text = numbers + " = " + text
		}
		lines[i] = text
		env[p.StepSlot(i)] = value
		if l.unrounded {
			env[p.StepSlot(i)] = v
		}
	}
	return lines
}

// put writes value v of a step with its unit, and says what it then is.
func (l *learner) put(s *problems.Step, v float64) (string, float64) {
	if n := int(v); len(s.Choices) > 0 && n >= 0 && n < len(s.Choices) {
		return s.Choices[n], v
	}
	if s.Whole {
		return strings.TrimSpace(number(v) + " " + s.Unit.Name), v
	}
	u := s.Unit
	if l.other {
		u = otherUnit(u)
	}
	conv := u.FromSI(s.Unit.SI(v))
	step := *s
	step.Unit = u
	text, value := l.write(l, &step, conv)
	if l.comma {
		text = strings.Replace(text, ".", ",", 1)
	}
	return strings.TrimSpace(text + " " + u.Name), s.Unit.FromSI(u.SI(value))
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// others pairs the units of the two systems.
var others = [][2]string{
	{"psi", "kPa"}, {"ft", "m"}, {"gpm", "L/s"}, {"US gal", "L"}, {"Btu/h", "kW"}, {"Btu", "kJ"}, {"gph", "L/h"}, {"in", "mm"},
}

func otherUnit(u unit.Unit) unit.Unit {
	for _, o := range others {
		for k := range o {
			if o[k] == u.Name {
				if v, err := unit.Parse(o[1-k]); err == nil {
					return v
				}
			}
		}
	}
	return u
}

// Ways to write a number.

func full(_ *learner, _ *problems.Step, v float64) (string, float64) {
	return strconv.FormatFloat(v, 'f', places(v, 9), 64), v
}

func figures(n int) func(*learner, *problems.Step, float64) (string, float64) {
	return func(_ *learner, s *problems.Step, v float64) (string, float64) {
		return round(v, max(n, s.Figures))
	}
}

// whole writes the whole psi, kPa, foot or degree that a gauge or tape gives
// where that moves the value by 2 % or less, else three figures.
func whole(_ *learner, s *problems.Step, v float64) (string, float64) {
	if r := math.Round(v); s.Least > 0 && math.Abs(r-v) <= 0.02*math.Abs(v) && math.Abs(v) < 1000 {
		return number(r), r
	}
	return round(v, max(3, s.Figures))
}

// everyWhole writes the whole unit of the gauge or tape at every size.
func everyWhole(_ *learner, s *problems.Step, v float64) (string, float64) {
	if s.Least > 0 {
		r := math.Round(v/s.Least) * s.Least
		return number(r), r
	}
	return round(v, max(3, s.Figures))
}

// cut writes three figures, cut off and not rounded.
func cut(_ *learner, s *problems.Step, v float64) (string, float64) {
	p := math.Pow(10, float64(places(v, max(3, s.Figures))))
	c := math.Trunc(v*p+math.Copysign(1e-9, v)) / p
	return strconv.FormatFloat(c, 'f', max(0, places(v, max(3, s.Figures))), 64), c
}

func mixed(l *learner, s *problems.Step, v float64) (string, float64) {
	ways := []func(*learner, *problems.Step, float64) (string, float64){full, figures(3), figures(4), whole}
	return ways[l.rng.IntN(len(ways))](l, s, v)
}

// places is the decimals that show n figures of v; negative left of the point.
func places(v float64, n int) int {
	if v == 0 {
		return n
	}
	return n - 1 - int(math.Floor(math.Log10(math.Abs(v))))
}

func round(v float64, n int) (string, float64) {
	d := places(v, n)
	p := math.Pow(10, float64(d))
	r := math.Round(v*p) / p
	return strconv.FormatFloat(r, 'f', max(0, d), 64), r
}
