package marking

import (
	"math"
	"slices"

	"riserwork/problems"
)

// judgement is what a number is found to be as the answer of a step.
type judgement struct {
	verdict Verdict
	slips   []hypothesis
	sound   bool // the numbers before it are right
	after   int  // the last wrong line it rests on; -1
	coarse  bool // a rounded constant was used
	fact    bool // a whole number: worded as a fact about the number
	allowed bool // some offices work so: slips holds what is remarked on
	givens  []taken
	right   float64 // what the step gives from the learner's own numbers
	num     number
}

// Room for a unit of the other system that was turned round with rounded
// factors, as a share of the value: to accuse, and to accept.
const (
	turnedHalf = 5e-4
	turnedWide = 2e-3
)

// nearly is room for the last bits of floating point.
const nearly = 1e-9

// reach is a number with the rooms that it is judged by.
type reach struct {
	number
	at       float64 // what is held against slips: the expression's value where there is one
	within   float64 // and its rounding
	sensible float64 // half of a sensible rounding of the number written
}

func (n number) reach(s *problems.Step) reach {
	r := reach{number: n, sensible: n.sensible(s)}
	r.at, r.within = n.v, r.sensible
	if n.hasExpr {
		r.at, r.within = n.e, n.eHalf+nearly*math.Abs(n.e)
	}
	return r
}

// sensible is half of a sensible rounding of the number: digits count no
// further than to that of its unit.
func (n number) sensible(s *problems.Step) float64 {
	if n.turned {
		return math.Min(n.half, n.coarse) + turnedHalf*math.Abs(n.v)
	}
	return math.Min(n.half, s.Coarse(n.v))
}

// fits reports whether x is the number, to the figures written.
func (r *reach) fits(x float64) bool { return math.Abs(x-r.at) <= r.within+nearly*math.Abs(x) }

// judge finds what number n is as the answer of the step in view. Full also
// looks for pairs of slips, changed digits and wrong givens.
func (m *sheet) judge(v *view, n number, full bool) judgement {
	r := n.reach(&m.p.Steps[v.step])
	j := judgement{num: n, right: v.right, sound: v.sound, after: v.after}
	switch {
	case m.accepted(v, &r, false, &j):
	case v.roundsTo(n):
		j.verdict = RoundedEarly
	case m.slips(v, &r, &j):
	case m.accepted(v, &r, true, &j):
	case !n.hasExpr && n.figures < 3 && m.inBand(v, n.v, n.half+nearly*math.Abs(n.v), false):
		j.verdict = RoundedEarly
	case full && (m.digits(v, n, &j) || m.wrongGiven(v, &r, &j) || m.pairs(v, &r, &j)):
	case !n.hasExpr && m.isTrue(v, &r), m.twoFigures(v, n):
		j.verdict = RoundedEarly
	default:
		j.verdict = NotRecognised
	}
	return j
}

// inBand reports whether the step's rule on the learner's own numbers gives
// x, by any rounding of the constants that is taken without a word, or by one
// that is named as coarse.
func (m *sheet) inBand(v *view, x, by float64, coarse bool) bool {
	for k, b := range v.bands {
		if m.coarse[k] == coarse && x >= b.Lo-by && x <= b.Hi+by {
			return true
		}
	}
	return false
}

// accepted finds whether the line is right by its rule on the learner's own
// numbers, with the constants as taught or as coarsely rounded ones.
func (m *sheet) accepted(v *view, r *reach, coarse bool, j *judgement) bool {
	s := &m.p.Steps[v.step]
	loose := r.sensible
	if r.figures >= 3 {
		loose *= 2 // cut off as well as rounded
	}
	if r.turned {
		loose += turnedWide * math.Abs(r.v)
	}
	by := loose
	if r.hasExpr {
		by = r.within + 1e-6*math.Abs(r.at)
		if r.turned {
			by += turnedWide * math.Abs(r.at)
		}
	}
	if !m.inBand(v, r.at, by+nearly*math.Abs(r.at), coarse) {
		return false
	}
	j.coarse = coarse
	if off := math.Abs(r.v - r.e); r.hasExpr && off > math.Max(loose, s.Coarse(r.e)*1.0000001)+r.eHalf {
		j.verdict = Arithmetic
		if off <= r.half*1.0000001 { // the total is the sum, rounded hard
			j.verdict = RoundedEarly
		}
		return true
	}
	switch {
	case !v.sound:
		j.verdict = FollowThrough
	case !coarse && m.early(v, r.number):
		j.verdict = RoundedEarly
	default:
		j.verdict = Right
	}
	return true
}

// roundsTo reports a number of one or two figures that is the right value,
// rounded to them: what a slip might give as well is not held against it.
func (v *view) roundsTo(n number) bool {
	return !n.hasExpr && n.figures < 3 && slices.ContainsFunc(v.rights, func(x float64) bool {
		return math.Abs(x-n.v) <= n.half*1.0001
	})
}

// twoFigures reports a right value rounded to two figures and written with
// noughts behind: 290 for 285.
func (m *sheet) twoFigures(v *view, n number) bool {
	if n.hasExpr || n.turned || n.v == 0 || m.p.Steps[v.step].Whole {
		return false
	}
	place := math.Pow10(int(math.Floor(math.Log10(math.Abs(n.v)))) - 1)
	return math.Mod(n.v, place) == 0 && m.inBand(v, n.v, place/2*1.0001, false)
}

// impossible reports a value that no building can have: below zero where the
// right one is above.
func (m *sheet) impossible(i int, v float64) bool { return v < 0 && m.p.Steps[i].Value > 0 }

// early reports a right line whose rounding moved it by more than is sensible.
func (m *sheet) early(v *view, n number) bool {
	s := &m.p.Steps[v.step]
	if len(v.hidden) > 0 {
		b := m.chain[m.p.StepSlot(v.step)]
		h := s.Half(n.v) + n.half
		return n.v < b.Lo-h || n.v > b.Hi+h
	}
	closest := math.Inf(1)
	for _, x := range v.rights {
		closest = math.Min(closest, math.Abs(x-n.v))
	}
	allowed := max(2*problems.Figures(s, n.v), s.Half(n.v))
	if n.turned {
		allowed += turnedWide * math.Abs(n.v)
	}
	return closest > allowed*1.000001+nearly
}
