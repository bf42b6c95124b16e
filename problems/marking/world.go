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
	slipsOf  [][]hypothesis     // by step: its slips, one each
	families bool               // a slip of the problem is a belief on several lines

	view    view        // of one step, made by look
	judged  []judgement // of the step that is being tied
	env     []float64
	bandEnv []formula.Interval
	spans   []formula.Interval
}

// maxVariants bounds the combinations of constants that are tried.
const maxVariants = 36

func newSheet(p *problems.Problem) *sheet {
	m := &sheet{p: p, own: make([]own, len(p.Steps)), env: make([]float64, p.Slots()), bandEnv: make([]formula.Interval, p.Slots())}
	m.addVariants()
	m.chain = p.ChainBand(problems.Figures)
	m.truth = make([]formula.Interval, len(p.Steps))
	m.slipsOf = make([][]hypothesis, len(p.Steps))
	for i := range p.Steps {
		m.truth[i] = formula.Hull(m.chain[p.StepSlot(i)], p.OneStepBand(i))
		for k := range p.Steps[i].Wrongs {
			w := &p.Steps[i].Wrongs[k]
			m.slipsOf[i] = append(m.slipsOf[i], one(i, w))
			m.families = m.families || w.Family != ""
		}
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
	if t == plain {
		return v
	}
	h := problems.Figures(s, v)
	switch {
	case h == 0:
		return v
	case t == cutOff:
		return math.Trunc(v/(2*h)+math.Copysign(1e-9, v)) * 2 * h
	case t == wholeUnits:
		h = max(h, s.Least/2)
	}
	return math.Round(v/(2*h)) * 2 * h
}

// swap puts the formula of a slip in the place of a step's rule.
type swap struct {
	step  int
	bound *formula.Bound
}

func boundOf(rule *formula.Bound, step int, swaps []swap) *formula.Bound {
	for _, w := range swaps {
		if w.step == step {
			return w.bound
		}
	}
	return rule
}

// fill works the steps before end out into env: the learner's own numbers
// where they stand, as written or unrounded, else the rule or the slip.
func (m *sheet) fill(env []float64, w world, end int, swaps []swap) {
	copy(env, m.variants[w.variant])
	for j := 0; j < end; j++ {
		slot := m.p.StepSlot(j)
		if o := &m.own[j]; o.written {
			env[slot] = o.v
			if w.unrounded {
				env[slot] = o.exact[w.variant]
			}
			continue
		}
		s := &m.p.Steps[j]
		env[slot] = w.style.apply(s, boundOf(s.Bound, j, swaps).Eval(env))
	}
}

// ownEnv is what is told and the learner's own numbers, hidden steps worked
// out from them.
func (m *sheet) ownEnv() []float64 {
	env := make([]float64, m.p.Slots())
	m.fill(env, world{}, len(m.p.Steps), nil)
	return env
}

// stands is the number of a slot as the learner has it: told, or written, or
// worked out from those.
func (m *sheet) stands(slot int) float64 {
	if slot < len(m.p.Told) {
		return m.variants[0][slot]
	}
	if o := &m.own[slot-len(m.p.Told)]; o.written {
		return o.v
	}
	m.fill(m.env, world{}, slot-len(m.p.Told)+1, nil)
	return m.env[slot]
}

// keep makes the number that was judged the learner's own of step i, for the
// steps that follow.
func (m *sheet) keep(i int, j judgement) {
	s := &m.p.Steps[i]
	o := own{v: j.num.v, half: j.num.sensible(s), exact: make([]float64, len(m.variants))}
	if j.num.noTotal { // what it came to was read off the calculator, and rounded
		o.v, o.half = threeFigures.apply(s, o.v), s.Coarse(o.v)
	}
	switch j.verdict {
	case Right, RoundedEarly, UnitMissing, WrongUnit:
		o.sound = j.sound
	case NotFollowing:
		o.sound = true
	}
	var swaps []swap
	if len(j.slips) > 0 && j.verdict != NotFollowing {
		swaps = j.slips[0].swaps
	}
	bound := boundOf(s.Bound, i, swaps)
	round := max(2*o.half, s.Coarse(o.v), j.num.half)
	if j.verdict == RoundedEarly {
		round = math.Inf(1)
	}
	for v := range m.variants {
		o.exact[v] = o.v
		for _, unrounded := range [2]bool{false, true} {
			m.fill(m.env, world{variant: v, unrounded: unrounded}, i, swaps)
			if x := bound.Eval(m.env); math.Abs(x-o.v) <= round {
				o.exact[v] = x
			}
		}
	}
	o.written = true
	m.own[i] = o
}
