package marking

import (
	"math"
	"slices"

	"riserwork/problems"
	"riserwork/solver/formula"
)

// world is one way in which the learner may have worked: a rounding of the
// constants, numbers carried as written or unrounded, and a rounding of the
// steps done in the head.
type world struct {
	variant   int
	unrounded bool
	style     style
}

// view is what a step may come to from the learner's numbers before it,
// worked out once and held against any number of lines.
type view struct {
	step    int
	hidden  []int              // unwritten steps that it rests on
	reads   []int              // slots that it, the hidden ones and their slips read
	worlds  []world            // that differ in what is read
	envs    []float64          // by world: the values of all slots before the step
	bands   []formula.Interval // by variant: what its rule gives
	singles []hypothesis       // slips of it and of the hidden ones, beliefs on several
	base    []formula.Interval // what each slot may hold in any world; filled when asked
	hulls   []formula.Interval // by single: all that it may come to in any world; filled when asked
	values  [][]float64        // by single: its value in every world; nil until asked
	rights  []float64          // the value of the rule in every world
	right   float64            // of them, the one from the numbers as they stand
	sound   bool               // every number that it rests on is right
	after   int                // the last that is not; -1
	slab    []float64
}

// look makes the view of step i from the learner's numbers before it. It
// holds until the next look.
func (m *sheet) look(i int) *view {
	v := &m.view
	v.step = i
	m.findHidden(v)
	m.findReads(v)
	v.sound, v.after = m.soundBefore(i)
	m.findWorlds(v)
	m.findBands(v)
	v.singles = append(v.singles[:0], m.slipsOf[i]...)
	for _, h := range v.hidden {
		v.singles = append(v.singles, m.slipsOf[h]...)
	}
	if m.families {
		v.singles = append(v.singles, families(v.singles)...)
	}
	v.base, v.hulls, v.slab = v.base[:0], v.hulls[:0], v.slab[:0]
	v.values = append(v.values[:0], make([][]float64, len(v.singles))...)
	v.rights = m.valuesOf(v, nil, v.rights[:0])
	v.right = math.NaN()
	if len(v.rights) > 0 {
		v.right = v.rights[0]
	}
	return v
}

// findHidden lists the unwritten steps that the step rests on.
func (m *sheet) findHidden(v *view) {
	v.hidden = m.addHidden(v.hidden[:0], v.step)
	slices.Sort(v.hidden)
}

func (m *sheet) addHidden(list []int, step int) []int {
	for _, slot := range m.p.Steps[step].Needs {
		if j := slot - len(m.p.Told); j >= 0 && !m.own[j].written && !slices.Contains(list, j) {
			list = m.addHidden(append(list, j), j)
		}
	}
	return list
}

// hiddenBefore lists the unwritten steps that step i rests on.
func (m *sheet) hiddenBefore(i int) []int { return m.addHidden(nil, i) }

func (m *sheet) findReads(v *view) {
	v.reads = v.reads[:0]
	add := func(slots []int) {
		for _, s := range slots {
			if !slices.Contains(v.reads, s) {
				v.reads = append(v.reads, s)
			}
		}
	}
	of := func(step int) {
		s := &m.p.Steps[step]
		add(s.Needs)
		for k := range s.Wrongs {
			add(s.Wrongs[k].Needs)
		}
	}
	of(v.step)
	for _, h := range v.hidden {
		of(h)
	}
}

// findWorlds works out the worlds that are different for this step.
func (m *sheet) findWorlds(v *view) {
	v.worlds, v.envs = v.worlds[:0], v.envs[:0]
	last, carries := plain, 1
	if len(v.hidden) > 0 {
		last = styles - 1
	}
	if m.anyWritten(v.step) {
		carries = 2
	}
	for t := plain; t <= last; t++ {
		first := len(v.worlds)
		for variant := range m.variants {
			for c := range carries {
				if m.coarse[variant] {
					continue
				}
				w := world{variant, c == 1, t}
				m.fill(m.env, w, v.step, nil)
				if !m.known(v, first) {
					v.worlds, v.envs = append(v.worlds, w), append(v.envs, m.env...)
				}
			}
		}
	}
}

// known reports whether a world from the first on reads as the one in env.
func (m *sheet) known(v *view, first int) bool {
	for k := first; k < len(v.worlds); k++ {
		env := m.envOf(v, k)
		if !slices.ContainsFunc(v.reads, func(s int) bool { return env[s] != m.env[s] }) {
			return true
		}
	}
	return false
}

func (m *sheet) envOf(v *view, k int) []float64 {
	return v.envs[k*len(m.env) : (k+1)*len(m.env)]
}

// valuesOf are the values that the step has under a hypothesis, by world;
// what is no number is left out.
func (m *sheet) valuesOf(v *view, swaps []swap, out []float64) []float64 {
	for k := range v.worlds {
		if x := m.valueIn(v, k, swaps); !math.IsNaN(x) {
			out = append(out, x)
		}
	}
	return out
}

// valueIn is the value of the step in world k under a hypothesis.
func (m *sheet) valueIn(v *view, k int, swaps []swap) float64 {
	env := m.envOf(v, k)
	first := v.step
	for _, w := range swaps {
		first = min(first, w.step)
	}
	if first < v.step {
		copy(m.env, env)
		env = m.env
		for j := first; j < v.step; j++ {
			if s := &m.p.Steps[j]; !m.own[j].written {
				env[m.p.StepSlot(j)] = v.worlds[k].style.apply(s, boundOf(s.Bound, j, swaps).Eval(env))
			}
		}
	}
	return boundOf(m.p.Steps[v.step].Bound, v.step, swaps).Eval(env)
}

// single is the values of one of the view's single hypotheses.
func (m *sheet) single(v *view, h int) []float64 {
	if v.values[h] == nil {
		from := len(v.slab)
		v.slab = m.valuesOf(v, v.singles[h].swaps, v.slab)
		v.values[h] = v.slab[from:len(v.slab):len(v.slab)]
	}
	return v.values[h]
}

func (m *sheet) anyWritten(end int) bool {
	for j := range m.own[:end] {
		if m.own[j].written {
			return true
		}
	}
	return false
}

// soundBefore reports whether every number that step i rests on is right, and
// else which is the last that is not.
func (m *sheet) soundBefore(i int) (bool, int) {
	bad := m.unsound(i, -1)
	return bad < 0, bad
}

func (m *sheet) unsound(step, bad int) int {
	for _, slot := range m.p.Steps[step].Needs {
		j := slot - len(m.p.Told)
		switch {
		case j < 0:
		case !m.own[j].written:
			bad = m.unsound(j, bad)
		case !m.own[j].sound:
			bad = max(bad, j)
		}
	}
	return bad
}

// hull is all that the step may come to under one of the view's single
// hypotheses, in any world and some more.
func (m *sheet) hull(v *view, h int) formula.Interval {
	if len(v.base) == 0 {
		m.findBase(v)
		for k := range v.singles {
			v.hulls = append(v.hulls, m.hullOf(v, v.singles[k].swaps))
		}
	}
	return v.hulls[h]
}

func (m *sheet) hullOf(v *view, swaps []swap) formula.Interval {
	first := v.step
	for _, w := range swaps {
		first = min(first, w.step)
	}
	env := m.bandEnv
	copy(env, v.base)
	for _, j := range v.hidden {
		if j >= first {
			env[m.p.StepSlot(j)] = rounded(&m.p.Steps[j], boundOf(m.p.Steps[j].Bound, j, swaps).Interval(env))
		}
	}
	return boundOf(m.p.Steps[v.step].Bound, v.step, swaps).Interval(env)
}

// findBase works out what each slot may hold in any world by the rules.
func (m *sheet) findBase(v *view) {
	v.base = append(v.base, m.bandEnv...)
	for k := range m.p.Told {
		v.base[k] = formula.Around(m.variants[0][k], 0)
		for t, told := range m.variants {
			if !m.coarse[t] {
				v.base[k] = formula.Hull(v.base[k], formula.Around(told[k], 0))
			}
		}
	}
	for j := range v.step {
		slot := m.p.StepSlot(j)
		switch o := &m.own[j]; {
		case o.written:
			v.base[slot] = formula.Interval{Lo: min(o.v, slices.Min(o.exact)), Hi: max(o.v, slices.Max(o.exact))}
		case slices.Contains(v.hidden, j):
			v.base[slot] = rounded(&m.p.Steps[j], m.p.Steps[j].Bound.Interval(v.base))
		}
	}
}

// findBands works out the values that the step's rule gives from the
// learner's own numbers, by variant of the constants.
func (m *sheet) findBands(v *view) {
	env := m.bandEnv
	v.bands = v.bands[:0]
	for variant, told := range m.variants {
		for k, c := range told {
			env[k] = formula.Interval{Lo: c, Hi: c}
		}
		for j := range v.step {
			if slices.Contains(v.reads, m.p.StepSlot(j)) {
				env[m.p.StepSlot(j)] = m.ownBand(j, variant, env)
			}
		}
		v.bands = append(v.bands, m.p.Steps[v.step].Bound.Interval(env))
	}
}

func (m *sheet) ownBand(j, variant int, env []formula.Interval) formula.Interval {
	if o := &m.own[j]; o.written {
		return formula.Hull(formula.Around(o.v, o.half), formula.Around(o.exact[variant], 0))
	}
	return rounded(&m.p.Steps[j], m.p.Steps[j].Bound.Interval(env))
}

// rounded is what an interval of a step may become when it is rounded or cut
// off in the head.
func rounded(s *problems.Step, b formula.Interval) formula.Interval {
	h := 2 * max(problems.Figures(s, b.Lo), problems.Figures(s, b.Hi))
	if !s.Whole && len(s.Choices) == 0 {
		h = max(h, s.Least/2)
	}
	return formula.Interval{Lo: b.Lo - h, Hi: b.Hi + h}
}
