package marking

import (
	"math"

	"riserwork/problems"
	"riserwork/solver/formula"
)

// own is the learner's number of a step.
type own struct {
	written bool
	v       float64
	half    float64   // half of a sensible rounding of it
	exact   []float64 // by variant: the unrounded value of what explains it
	sound   bool      // it is right, and nothing wrong stands before it
}

// sheet is the marking of one problem: what is known of it before a line is
// read, and the learner's numbers as they are read.
type sheet struct {
	p        *problems.Problem
	variants [][]float64 // roundings of the constants: values of the told slots
	coarse   []bool      // by variant: a rounding that is named
	own      []own
	chain    []formula.Interval // of right working, three figures a line
	truth    []formula.Interval // by step: right value as anybody may have rounded it
	scratch  []float64
}

// maxVariants bounds the combinations of constants that are tried.
const maxVariants = 36

func newSheet(p *problems.Problem) *sheet {
	m := &sheet{p: p, own: make([]own, len(p.Steps)), scratch: make([]float64, p.Slots())}
	m.addVariants()
	m.chain = p.ChainBand(problems.Figures)
	for i := range p.Steps {
		m.truth = append(m.truth, formula.Hull(m.chain[p.StepSlot(i)], p.OneStepBand(i)))
	}
	return m
}

// addVariants lists the constants as shown, then each other rounding, in
// combination while there are few.
func (m *sheet) addVariants() {
	shown := make([]float64, len(m.p.Told))
	for i, t := range m.p.Told {
		shown[i] = t.Value
	}
	m.variants, m.coarse = [][]float64{shown}, []bool{false}
	for i, t := range m.p.Told {
		if !t.Constant {
			continue
		}
		have := len(m.variants)
		if have*(1+len(t.Accept)+len(t.Coarse)) > maxVariants {
			have = 1
		}
		for k, c := range append(append([]float64{}, t.Accept...), t.Coarse...) {
			for _, base := range m.variants[:have] {
				v := append([]float64{}, base...)
				v[i] = c
				m.variants = append(m.variants, v)
				m.coarse = append(m.coarse, k >= len(t.Accept))
			}
		}
	}
}

// ownEnv is what is told and the learner's own numbers, hidden steps worked
// out from them.
func (m *sheet) ownEnv() []float64 {
	env := make([]float64, m.p.Slots())
	m.fill(env, 0, true, plain, len(m.p.Steps), nil)
	return env
}

func (m *sheet) ownIntervals() []formula.Interval {
	env := m.ownEnv()
	out := make([]formula.Interval, len(env))
	for i, v := range env {
		out[i] = formula.Interval{Lo: v, Hi: v}
	}
	return out
}

// style is how the learner may have rounded a step that is not written.
type style uint8

const (
	plain style = iota
	threeFigures
	wholeUnits
	cutOff
	styles
)

func (t style) apply(s *problems.Step, v float64) float64 {
	switch h := problems.Figures(s, v); {
	case t == plain || h == 0:
		return v
	case t == threeFigures:
		return math.Round(v/(2*h)) * 2 * h
	case t == cutOff:
		return math.Trunc(v/(2*h)+math.Copysign(1e-9, v)) * 2 * h
	default:
		h = s.Coarse(v)
		return math.Round(v/(2*h)) * 2 * h
	}
}

// swap puts the formula of a slip in the place of a step's rule.
type swap struct {
	step  int
	bound *formula.Bound
}

// fill works the steps before end out into env: the learner's own numbers
// where they stand, as written or unrounded, else the rule or the slip.
func (m *sheet) fill(env []float64, variant int, asWritten bool, t style, end int, swaps []swap) {
	copy(env, m.variants[variant])
	for j := 0; j < end; j++ {
		slot := m.p.StepSlot(j)
		if o := &m.own[j]; o.written {
			env[slot] = o.v
			if !asWritten {
				env[slot] = o.exact[variant]
			}
			continue
		}
		s := &m.p.Steps[j]
		env[slot] = t.apply(s, boundOf(s.Bound, j, swaps).Eval(env))
	}
}

func boundOf(rule *formula.Bound, step int, swaps []swap) *formula.Bound {
	for _, w := range swaps {
		if w.step == step {
			return w.bound
		}
	}
	return rule
}

// predict calls f with every value that step i may have under a hypothesis:
// over the constants, the carrying of rounded numbers and the rounding of
// steps done in the head. It stops when f is false.
func (m *sheet) predict(i int, hidden bool, swaps []swap, f func(v float64, variant int) bool) {
	env := m.scratch
	last := styles
	if !hidden {
		last = plain + 1
	}
	bound := boundOf(m.p.Steps[i].Bound, i, swaps)
	for variant := range m.variants {
		if m.coarse[variant] {
			continue
		}
		for _, asWritten := range [2]bool{true, false} {
			for t := plain; t < last; t++ {
				m.fill(env, variant, asWritten, t, i, swaps)
				if v := bound.Eval(env); !math.IsNaN(v) && !f(v, variant) {
					return
				}
			}
			if !m.anyWritten(i) {
				break
			}
		}
	}
}

func (m *sheet) anyWritten(end int) bool {
	for j := range m.own[:end] {
		if m.own[j].written {
			return true
		}
	}
	return false
}

// hiddenBefore lists the unwritten steps that step i rests on.
func (m *sheet) hiddenBefore(i int) []int {
	need := make([]bool, i)
	var mark func(step int)
	mark = func(step int) {
		for _, slot := range m.p.Steps[step].Needs {
			if j := slot - len(m.p.Told); j >= 0 && j < i && !need[j] && !m.own[j].written {
				need[j] = true
				mark(j)
			}
		}
	}
	mark(i)
	var out []int
	for j, n := range need {
		if n {
			out = append(out, j)
		}
	}
	return out
}

// soundBefore reports whether every number that step i rests on is right, and
// else which is the last that is not.
func (m *sheet) soundBefore(i int) (bool, int) {
	seen := make([]bool, i+1)
	bad := -1
	var visit func(step int)
	visit = func(step int) {
		for _, slot := range m.p.Steps[step].Needs {
			j := slot - len(m.p.Told)
			if j < 0 || seen[j] {
				continue
			}
			seen[j] = true
			if m.own[j].written {
				if !m.own[j].sound {
					bad = max(bad, j)
				}
				continue
			}
			visit(j)
		}
	}
	visit(i)
	return bad < 0, bad
}

// ownBands are the values of step i that its rule gives from the learner's
// own numbers, by variant of the constants.
func (m *sheet) ownBands(i int) []formula.Interval {
	env := make([]formula.Interval, m.p.Slots())
	out := make([]formula.Interval, len(m.variants))
	for v, told := range m.variants {
		for k, c := range told {
			env[k] = formula.Interval{Lo: c, Hi: c}
		}
		for j := 0; j < i; j++ {
			env[m.p.StepSlot(j)] = m.ownBand(j, v, env)
		}
		out[v] = m.p.Steps[i].Bound.Interval(env)
	}
	return out
}

func (m *sheet) ownBand(j, variant int, env []formula.Interval) formula.Interval {
	if o := &m.own[j]; o.written {
		return formula.Hull(formula.Around(o.v, o.half), formula.Around(o.exact[variant], 0))
	}
	s := &m.p.Steps[j]
	b := s.Bound.Interval(env)
	h := math.Max(s.Coarse(b.Lo), s.Coarse(b.Hi))
	third := 2 * math.Max(problems.Figures(s, b.Lo), problems.Figures(s, b.Hi))
	h = math.Max(h, third)
	return formula.Interval{Lo: b.Lo - h, Hi: b.Hi + h}
}
