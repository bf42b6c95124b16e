package marking

import (
	"math"
	"slices"

	"riserwork/problems"
	"riserwork/solver/formula"
)

// hypothesis is one or two slips, or one belief on several lines.
type hypothesis struct {
	wrongs []wrongAt
	swaps  []swap
}

type wrongAt struct {
	step int
	*problems.Wrong
}

func one(step int, w *problems.Wrong) hypothesis {
	return hypothesis{[]wrongAt{{step, w}}, []swap{{step, w.Bound}}}
}

// Naming a slip needs evidence: lambda is the chance that an unrelated number
// of these figures fits some slip of the line. A line that stands for several
// steps has many slips, so the chance must be small there.
const (
	lambdaMerged = 0.05
	lambdaPair   = 0.02
	lambdaGiven  = 0.10
	mostPairs    = 40
)

// slips finds the slips that explain the number, and the right value that
// does not follow from the line before it.
func (m *sheet) slips(v *view, r *reach, j *judgement) bool {
	s := &m.p.Steps[v.step]
	fit := m.fitting(v, r.at, r.within, r.fits)
	if step := 2 * math.Min(r.half, s.Coarse(r.v)); len(fit) == 0 && !r.hasExpr && step > 0 {
		fit = m.fitting(v, r.v, step, func(x float64) bool { // cut off
			d := math.Abs(x) - math.Abs(r.v)
			return x*r.v > 0 && d >= -nearly*math.Abs(x) && d < step
		})
	}
	if !v.sound && m.isTrue(v, r) {
		j.slips, j.verdict = fit, NotFollowing
		return true
	}
	if len(fit) == 0 {
		return false
	}
	j.slips = fit
	j.fact = (s.Whole || len(s.Choices) > 0) && len(v.hidden) == 0
	j.verdict = PossibleSlip
	if len(fit) <= 2 && (r.hasExpr || len(v.hidden) == 0 || m.lambda(v, r.number) <= lambdaMerged) {
		j.verdict = Slip
		j.allow()
	}
	return true
}

// allow makes a line right that some offices would work as it is.
func (j *judgement) allow() {
	for _, h := range j.slips {
		if slices.ContainsFunc(h.wrongs, func(w wrongAt) bool { return !w.Allowed }) {
			continue
		}
		j.slips, j.allowed, j.verdict = []hypothesis{h}, true, Right
		if !j.sound {
			j.verdict = FollowThrough
		}
		return
	}
}

// isTrue reports the value that right working has there, as anybody may have
// rounded it on the way.
func (m *sheet) isTrue(v *view, r *reach) bool {
	t := m.truth[v.step]
	return r.v >= t.Lo-r.sensible && r.v <= t.Hi+r.sensible
}

// families are the beliefs that show on several of the steps.
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
				all = both(all, y)
			}
		}
		if len(all.wrongs) > 1 {
			out = append(out, all)
		}
	}
	return out
}

func both(x, y hypothesis) hypothesis {
	return hypothesis{append(slices.Clone(x.wrongs), y.wrongs...), append(slices.Clone(x.swaps), y.swaps...)}
}

// fitting are the single hypotheses with a predicted value that fits, which is
// one within reach of at. Where a line stands for several steps, those that no
// rounding brings near are not tried in every world.
func (m *sheet) fitting(v *view, at, reach float64, fits func(float64) bool) []hypothesis {
	var out []hypothesis
	reach += 2 * nearly * math.Abs(at)
	for h := range v.singles {
		if len(v.hidden) > 0 {
			if b := m.hull(v, h); at < b.Lo-reach || at > b.Hi+reach {
				continue
			}
		}
		if slices.ContainsFunc(m.single(v, h), fits) {
			out = append(out, v.singles[h])
		}
	}
	return out
}

// lambda is the chance that an unrelated number of the same figures, within a
// factor of three of the right value, fits a single hypothesis.
func (m *sheet) lambda(v *view, n number) float64 {
	if n.hasExpr {
		return 0
	}
	m.spans = m.spans[:0]
	for h := range v.singles {
		m.addSpans(v, m.single(v, h), n)
	}
	return union(m.spans) / windowWidth
}

// windowWidth is that of a factor of three to either side, in logarithms.
const windowWidth = 2 * 1.0986122886681098

// addSpans adds the numbers of the same figures as n that round to one of the
// values, within a factor of three of the right one, on a scale of logarithms.
func (m *sheet) addSpans(v *view, values []float64, n number) {
	c := math.Abs(v.right)
	s := &m.p.Steps[v.step]
	h := math.Min(n.half, s.Coarse(n.v))
	if s.Whole {
		h = 0.5
	}
	for _, x := range values {
		lo, hi := math.Max(x-h, c/3), math.Min(x+h, 3*c)
		if lo < hi {
			m.spans = append(m.spans, formula.Interval{Lo: math.Log(lo), Hi: math.Log(hi)})
		}
	}
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
func (m *sheet) pairs(v *view, r *reach, j *judgement) bool {
	s := &m.p.Steps[v.step]
	if len(v.hidden) == 0 || len(v.singles) > mostPairs || (s.Whole || len(s.Choices) > 0) && !r.hasExpr {
		return false
	}
	var found *hypothesis
	var firsts, values []float64
	for a, x := range v.singles {
		for _, y := range v.singles[a+1:] {
			if len(x.wrongs) > 1 || len(y.wrongs) > 1 || x.wrongs[0].step == y.wrongs[0].step {
				continue
			}
			swaps := [2]swap{x.swaps[0], y.swaps[0]}
			first := m.valueIn(v, 0, swaps[:])
			firsts = append(firsts, first)
			if !(math.Abs(first-r.at) <= 0.05*math.Abs(first)) {
				continue // tested in one world before all are tried
			}
			values = m.valuesOf(v, swaps[:], values[:0])
			if !slices.ContainsFunc(values, r.fits) {
				continue
			}
			if found != nil {
				return false
			}
			pair := both(x, y)
			if x.wrongs[0].step > y.wrongs[0].step {
				pair = both(y, x)
			}
			found = &pair
		}
	}
	if found == nil || !r.hasExpr && m.manyPairs(v, r, firsts) {
		return false
	}
	j.verdict, j.slips = TwoSlips, []hypothesis{*found}
	return true
}

// manyPairs reports whether an unrelated number would fit some pair too
// easily. Firsts are the values of the pairs in one world; every world is
// counted where these alone are few.
func (m *sheet) manyPairs(v *view, r *reach, firsts []float64) bool {
	m.spans = m.spans[:0]
	m.addSpans(v, firsts, r.number)
	var values []float64
	for a, x := range v.singles {
		if union(m.spans)/windowWidth > lambdaPair {
			return true
		}
		for _, y := range v.singles[a+1:] {
			if len(x.wrongs) > 1 || len(y.wrongs) > 1 || x.wrongs[0].step == y.wrongs[0].step {
				continue
			}
			values = m.valuesOf(v, []swap{x.swaps[0], y.swaps[0]}, values[:0])
			m.addSpans(v, values, r.number)
		}
	}
	return union(m.spans)/windowWidth > lambdaPair
}
