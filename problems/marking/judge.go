package marking

import (
	"math"
	"slices"

	"riserwork/problems"
	"riserwork/solver/formula"
)

// judgement is what a number is found to be as the answer of a step.
type judgement struct {
	verdict Verdict
	slips   []hypothesis
	after   int  // NotFollowing, FollowThrough: the wrong line it rests on; -1
	coarse  bool // a rounded constant was used
	fact    bool // a whole number: worded as a fact about the number
	given   [2]int
	right   float64 // what the step gives from the learner's own numbers
	num     number
	isExpr  bool // judged by its expression
}

// hypothesis is one or two slips, or one belief on several lines.
type hypothesis struct {
	wrongs []wrongAt
	swaps  []swap
}

type wrongAt struct {
	step int
	*problems.Wrong
}

// Naming a slip needs evidence: lambda is the chance that an unrelated number
// of these figures fits some slip of the line. A line that stands for several
// steps has many slips, so the chance must be small there.
const (
	lambdaMerged = 0.05
	lambdaPair   = 0.02
	lambdaGiven  = 0.03
	mostPairs    = 40
)

// judge finds what number n is as the answer of step i. Full also looks for
// pairs of slips, changed digits and wrong givens.
func (m *sheet) judge(i int, n number, full bool) judgement {
	s := &m.p.Steps[i]
	hidden := m.hiddenBefore(i)
	sensible := math.Min(n.half, s.Coarse(n.v))
	if n.turned {
		sensible += 5e-4 * math.Abs(n.v)
	}
	at, within := n.v, sensible
	if n.hasExpr {
		at, within = n.e, n.eHalf+1e-9*math.Abs(n.e)
	}
	j := judgement{num: n, isExpr: n.hasExpr, right: m.rightFromOwn(i)}
	if m.accepted(i, n, at, within, sensible, false, &j) ||
		m.slips(i, hidden, n, at, within, sensible, &j) ||
		m.accepted(i, n, at, within, sensible, true, &j) {
		return j
	}
	if !n.hasExpr && n.figures < 3 && m.inOwnBand(i, n.v, n.half+1e-9*math.Abs(n.v), false) {
		j.verdict = RoundedEarly
		return j
	}
	if full && m.digits(i, hidden, n, &j) {
		return j
	}
	if full && m.wrongGiven(i, hidden, n, at, within, &j) {
		return j
	}
	if full && m.pairs(i, hidden, n, at, within, &j) {
		return j
	}
	j.verdict = NotRecognised
	return j
}

// rightFromOwn is what the step gives from the learner's own numbers.
func (m *sheet) rightFromOwn(i int) float64 {
	v := math.NaN()
	m.predict(i, false, nil, func(x float64, _ int) bool { v = x; return false })
	return v
}

// inOwnBand reports whether the step's rule on the learner's own numbers gives
// v, by any rounding of the constants that is taken without a word, or by one
// that is named as coarse.
func (m *sheet) inOwnBand(i int, v, by float64, coarse bool) bool {
	for k, b := range m.ownBands(i) {
		if m.coarse[k] == coarse && v >= b.Lo-by && v <= b.Hi+by {
			return true
		}
	}
	return false
}

// accepted finds whether the line is right by its rule on the learner's own
// numbers, with the constants as taught or as coarsely rounded ones.
func (m *sheet) accepted(i int, n number, at, within, sensible float64, coarse bool, j *judgement) bool {
	s := &m.p.Steps[i]
	loose := sensible
	if n.figures >= 3 {
		loose = 2 * sensible // cut off as well as rounded
	}
	if n.turned {
		loose += 2e-3 * math.Abs(n.v)
	}
	by := loose
	if n.hasExpr {
		by = within + 1e-6*math.Abs(at)
		if n.turned {
			by += 2e-3 * math.Abs(at)
		}
	}
	if !m.inOwnBand(i, at, by+1e-9*math.Abs(at), coarse) {
		return false
	}
	j.coarse = coarse
	sound, bad := m.soundBefore(i)
	j.after = bad
	if off := math.Abs(n.v - n.e); n.hasExpr && off > math.Max(loose, s.Coarse(n.e)*1.0000001)+n.eHalf {
		j.verdict = Arithmetic
		if off <= n.half*1.0000001 { // the total is the sum, rounded hard
			j.verdict = RoundedEarly
		}
		return true
	}
	switch {
	case !sound:
		j.verdict = FollowThrough
	case !coarse && m.early(i, n):
		j.verdict = RoundedEarly
	default:
		j.verdict = Right
	}
	return true
}

// impossible reports a value that no building can have: below zero where the
// right one is above.
func (m *sheet) impossible(i int, v float64) bool { return v < 0 && m.p.Steps[i].Value > 0 }

// early reports a right line whose rounding moved it by more than is sensible.
func (m *sheet) early(i int, n number) bool {
	s := &m.p.Steps[i]
	if len(m.hiddenBefore(i)) > 0 {
		b := m.chain[m.p.StepSlot(i)]
		h := s.Half(n.v) + n.half
		return n.v < b.Lo-h || n.v > b.Hi+h
	}
	closest := math.Inf(1)
	m.predict(i, false, nil, func(x float64, _ int) bool {
		closest = math.Min(closest, math.Abs(x-n.v))
		return true
	})
	allowed := 2 * problems.Figures(s, n.v)
	if w := s.Half(n.v); w > allowed {
		allowed = w
	}
	if n.turned {
		allowed += 2e-3 * math.Abs(n.v)
	}
	return closest > allowed*1.000001+1e-9
}

// slips finds the slips that explain the number, and the right value that
// does not follow from the line before it.
func (m *sheet) slips(i int, hidden []int, n number, at, within, sensible float64, j *judgement) bool {
	s := &m.p.Steps[i]
	singles := m.singles(i, hidden)
	fit := m.fitting(i, hidden, singles, func(x float64) bool { return math.Abs(x-at) <= within+1e-9*math.Abs(x) })
	if len(fit) == 0 && !n.hasExpr && n.figures > 0 {
		step := 2 * math.Min(n.half, s.Coarse(n.v))
		if step > 0 {
			fit = m.fitting(i, hidden, singles, func(x float64) bool {
				d := math.Abs(x) - math.Abs(n.v)
				return x*n.v > 0 && d >= -1e-9*math.Abs(x) && d < step
			})
		}
	}
	if t := m.truth[i]; n.v >= t.Lo-sensible && n.v <= t.Hi+sensible {
		sound, bad := m.soundBefore(i)
		if !sound || len(fit) == 0 {
			j.slips, j.after = fit, bad
			j.verdict = NotFollowing
			if sound {
				j.verdict = RoundedEarly
			}
			return true
		}
	}
	if len(fit) == 0 {
		return false
	}
	j.slips = fit
	if len(fit) > 2 {
		j.verdict = PossibleSlip
		return true
	}
	exact := s.Whole || len(s.Choices) > 0
	j.fact = exact && len(hidden) == 0
	if n.hasExpr || len(hidden) == 0 || m.lambda(i, hidden, singles, n) <= lambdaMerged {
		j.verdict = Slip
		return true
	}
	j.verdict = PossibleSlip
	return true
}

// singles are the slips of the step and of the unwritten steps before it, and
// beliefs that show on several of them.
func (m *sheet) singles(i int, hidden []int) []hypothesis {
	var out []hypothesis
	add := func(step int) {
		for k := range m.p.Steps[step].Wrongs {
			out = append(out, one(step, &m.p.Steps[step].Wrongs[k]))
		}
	}
	add(i)
	for _, h := range hidden {
		add(h)
	}
	return append(out, families(out)...)
}

func one(step int, w *problems.Wrong) hypothesis {
	return hypothesis{[]wrongAt{{step, w}}, []swap{{step, w.Bound}}}
}

func families(singles []hypothesis) []hypothesis {
	var out []hypothesis
	for a, x := range singles {
		name := x.wrongs[0].Family
		if name == "" || slices.ContainsFunc(singles[:a], func(h hypothesis) bool { return h.wrongs[0].Family == name }) {
			continue
		}
		all := x
		for _, y := range singles[a+1:] {
			if y.wrongs[0].Family == name && y.wrongs[0].step != x.wrongs[0].step {
				all = hypothesis{append(slices.Clone(all.wrongs), y.wrongs...), append(slices.Clone(all.swaps), y.swaps...)}
			}
		}
		if len(all.wrongs) > 1 {
			out = append(out, all)
		}
	}
	return out
}

// fitting are the hypotheses with a predicted value that fits.
func (m *sheet) fitting(i int, hidden []int, from []hypothesis, fits func(float64) bool) []hypothesis {
	var out []hypothesis
	for _, h := range from {
		m.predict(i, len(hidden) > 0, h.swaps, func(x float64, _ int) bool {
			if fits(x) {
				out = append(out, h)
				return false
			}
			return true
		})
	}
	return out
}

// lambda is the chance that an unrelated number of the same figures, within a
// factor of three of the right value, fits a hypothesis.
func (m *sheet) lambda(i int, hidden []int, from []hypothesis, n number) float64 {
	c := math.Abs(m.rightFromOwn(i))
	if n.hasExpr || c == 0 || math.IsNaN(c) {
		return 0
	}
	s := &m.p.Steps[i]
	h := math.Min(n.half, s.Coarse(n.v))
	if s.Whole {
		h = 0.5
	}
	var values []float64
	for _, hyp := range from {
		m.predict(i, len(hidden) > 0, hyp.swaps, func(x float64, _ int) bool {
			values = append(values, x)
			return true
		})
	}
	return union(spansAround(values, h, c)) / math.Log(9)
}

// spansAround are the numbers that round to one of the values, within a
// factor of three of c, on a scale of logarithms.
func spansAround(values []float64, h, c float64) []formula.Interval {
	var spans []formula.Interval
	for _, x := range values {
		lo, hi := math.Max(x-h, c/3), math.Min(x+h, 3*c)
		if lo < hi {
			spans = append(spans, formula.Interval{Lo: math.Log(lo), Hi: math.Log(hi)})
		}
	}
	return spans
}

// union is the measure of a union of intervals.
func union(spans []formula.Interval) float64 {
	slices.SortFunc(spans, func(a, b formula.Interval) int {
		switch {
		case a.Lo < b.Lo:
			return -1
		case a.Lo > b.Lo:
			return 1
		}
		return 0
	})
	sum, end := 0.0, math.Inf(-1)
	for _, s := range spans {
		if s.Hi > end {
			sum += s.Hi - math.Max(s.Lo, end)
			end = s.Hi
		}
	}
	return sum
}

// pairs finds the only pair of slips on two of the steps that a line stands
// for.
func (m *sheet) pairs(i int, hidden []int, n number, at, within float64, j *judgement) bool {
	s := &m.p.Steps[i]
	if len(hidden) == 0 || (s.Whole || len(s.Choices) > 0) && !n.hasExpr {
		return false
	}
	singles := m.singles(i, hidden)
	if len(singles) > mostPairs {
		return false
	}
	var all, fit []hypothesis
	for a := range singles {
		for b := a + 1; b < len(singles); b++ {
			x, y := singles[a], singles[b]
			if len(x.wrongs) > 1 || len(y.wrongs) > 1 || x.wrongs[0].step == y.wrongs[0].step {
				continue
			}
			pair := hypothesis{[]wrongAt{x.wrongs[0], y.wrongs[0]}, []swap{x.swaps[0], y.swaps[0]}}
			all = append(all, pair)
			if !m.near(i, pair.swaps, at, 0.05) {
				continue
			}
			fit = append(fit, m.fitting(i, hidden, []hypothesis{pair}, func(v float64) bool {
				return math.Abs(v-at) <= within+1e-9*math.Abs(v)
			})...)
			if len(fit) > 1 {
				return false
			}
		}
	}
	if len(fit) != 1 || !n.hasExpr && m.lambda(i, hidden, all, n) > lambdaPair {
		return false
	}
	j.verdict, j.slips = TwoSlips, fit
	return true
}

// near tests a hypothesis in one world before all are tried.
func (m *sheet) near(i int, swaps []swap, at, share float64) bool {
	ok := false
	m.predict(i, false, swaps, func(x float64, _ int) bool {
		ok = math.Abs(x-at) <= share*math.Abs(x)
		return false
	})
	return ok
}
