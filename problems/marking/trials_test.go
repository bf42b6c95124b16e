package marking_test

import (
	"math"
	"math/rand/v2"
	"slices"

	"riserwork/problems"
	"riserwork/problems/marking"
)

// What is aimed at. Refused is right working that is called anything but
// right; named, that the slip is told alone or with one twin.
var (
	refusedBlanks = atMost("right working refused, in blanks", 0)
	refusedFree   = atMost("right working refused, free", 0)
	refusedRoute  = atMost("right working by another route refused", 0)
	refusedHardly = shown("... two figures even above a hundred, refused")

	located     = atLeast("one slip: first wrong line found", 99.5)
	named       = atLeast("one slip: named, in blanks", 99)
	otherNamed  = atMost("one slip: a later line accused", 0.1)
	namedFree   = atLeast("one slip: named, free lines", 98)
	namedPairs  = atLeast("two slips on two lines: both named or flagged", 97)
	namedBoth   = shown("... both named")
	mergedNamed = atLeast("two slips on one line: both named, number alone", 50)
	mergedWrong = atMost("... others named", 1)
	mergedExpr  = shown("two slips on one line: both named, expression")
	mergedFalse = atMost("... others named, expression", 0.3)
	mergedAlike = shown("... the number is that of one slip too")

	aloneNamed = atLeast("answer alone, one slip, four figures: named", 70)
	aloneMaybe = shown("... asked about")
	aloneFalse = atMost("answer alone, unrelated number: a slip named", 1)
	onlyThat   = atLeast("one line swapped: only that line loses marks", 100)
	falseSlip  = atMost("unrelated number: a slip named, decimal lines", 2)
	falseWhole = shown("... whole-number lines")
	falseFree  = shown("... free decimal lines")
	falseOther = shown("... misprint or wrong given named, decimal lines")
	transposed = atLeast("digits exchanged: named so", 95)
	tenfold    = atLeast("point misplaced: named so", 95)
	wrongGiven = atLeast("wrong given: named so, or a slip of that value", 95)
	unitOnce   = atLeast("a unit fault repeated: one mark", 100)
)

var aims = []aim{
	refusedBlanks, refusedFree, refusedRoute, refusedHardly,
	located, named, otherNamed, namedFree, namedPairs, namedBoth,
	mergedNamed, mergedWrong, mergedExpr, mergedFalse, mergedAlike,
	aloneNamed, aloneMaybe, aloneFalse, onlyThat, falseSlip, falseWhole, falseFree, falseOther,
	transposed, tenfold, wrongGiven, unitOnce,
}

// refused is a verdict that right working must never get.
func refused(v marking.Verdict) bool {
	return !v.Good() && v != marking.Empty || v == marking.FollowThrough
}

// firstRefused is the first line of a sheet that right working must not get;
// the whole where it is not seen as done.
func firstRefused(r marking.Result) string {
	for _, f := range r.Lines {
		if refused(f.Verdict) && f.Verdict != marking.NotTied {
			return f.Text + " is " + string(f.Verdict) + ": " + f.Says
		}
	}
	if !r.Done {
		return "not done"
	}
	return ""
}

func rightInBlanks(s *study, p *problems.Problem, rng *rand.Rand) {
	for _, w := range writings {
		l := w.learner
		l.rng = rng
		lines := l.work(p, nil)
		bad := firstRefused(marking.Blanks(p, lines))
		s.add(refusedBlanks, bad != "", "%s, %s: %q: %s", name(p), w.name, lines, bad)
	}
	l := learner{write: hardly, rng: rng}
	s.add(refusedHardly, firstRefused(marking.Blanks(p, l.work(p, nil))) != "", "")
}

// freeText is the sheet without its blanks: lines that were not written are
// not there.
func freeText(blanks []string) (lines []string, step []int) {
	for i, b := range blanks {
		if b != "" {
			lines, step = append(lines, b), append(step, i)
		}
	}
	return lines, step
}

func rightFree(s *study, p *problems.Problem, rng *rand.Rand) {
	for _, w := range writings {
		l := w.learner
		l.rng = rng
		lines, _ := freeText(l.work(p, nil))
		bad := firstRefused(marking.Lines(p, lines))
		s.add(refusedFree, bad != "", "%s, %s: %q: %s", name(p), w.name, lines, bad)
	}
	for _, w := range []writer{full, figures(3), whole} {
		l := learner{write: w, rng: rng}
		lines, _ := freeText(l.work(p, nil))
		rng.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
		bad := firstRefused(marking.Lines(p, lines))
		s.add(refusedFree, bad != "", "%s, shuffled: %q: %s", name(p), lines, bad)
	}
}

func rightByOtherRoutes(s *study, p *problems.Problem, rng *rand.Rand) {
	for _, q := range p.OtherRoutes() {
		for _, w := range writings {
			l := w.learner
			l.rng = rng
			lines, _ := freeText(l.work(q, nil))
			bad := firstRefused(marking.Lines(p, lines))
			s.add(refusedRoute, bad != "", "%s, %s: %q: %s", name(p), w.name, lines, bad)
		}
	}
}

// plain are the writings that sheets with faults are written in.
var plain = []learner{
	{write: figures(3)}, {write: whole}, {write: figures(4)}, {write: mixed}, {write: full, unrounded: true},
	{write: cut(3)}, {write: figures(3), expr: numbersIn}, {write: figures(3), unrounded: true},
}

// does reports whether a slip gives a number here that can be written and is
// not nothing.
func does(p *problems.Problem, i int, w *problems.Wrong) bool {
	v := w.Bound.Eval(p.Env())
	return !w.Allowed && sayable(&p.Steps[i], v) && (math.Abs(v) > 1e-9 || len(p.Steps[i].Choices) > 0)
}

// names reports whether a line is called a slip for certain, and that one.
func names(f marking.Finding, ids ...string) bool {
	if f.Verdict != marking.Slip && f.Verdict != marking.TwoSlips {
		return false
	}
	for _, id := range ids {
		if !slices.ContainsFunc(f.Slips, func(n marking.Named) bool { return n.ID == id }) {
			return false
		}
	}
	return true
}

func ids(f marking.Finding) string {
	out := string(f.Verdict)
	for _, s := range f.Slips {
		out += " " + s.ID
	}
	return out
}

func verdicts(r marking.Result) []string {
	var out []string
	for _, f := range r.Lines {
		out = append(out, ids(f))
	}
	return out
}

// everySlip calls f with each slip of the problem and a learner.
func everySlip(p *problems.Problem, rng *rand.Rand, f func(l *learner, i int, w *problems.Wrong)) {
	for i := range p.Steps {
		for k := range p.Steps[i].Wrongs {
			if w := &p.Steps[i].Wrongs[k]; does(p, i, w) {
				l := plain[rng.IntN(len(plain))]
				l.rng = rng
				f(&l, i, w)
			}
		}
	}
}

func oneSlip(s *study, p *problems.Problem, rng *rand.Rand) {
	everySlip(p, rng, func(l *learner, i int, w *problems.Wrong) {
		lines := l.work(p, map[int]*problems.Wrong{i: w})
		r := marking.Blanks(p, lines)
		s.add(located, r.First == i, "%s: %s at %d in %q: first %d, %v", name(p), w.ID, i, lines, r.First, verdicts(r))
		s.add(named, names(r.Lines[i], w.ID), "%s: %s at %d in %q: %v", name(p), w.ID, i, lines, verdicts(r))
		accused := slices.ContainsFunc(r.Lines[i+1:], func(f marking.Finding) bool { return !f.Verdict.Good() && f.Verdict != marking.Empty })
		s.add(otherNamed, accused, "%s: %s at %d in %q: %v", name(p), w.ID, i, lines, verdicts(r))
	})
}

func oneSlipFree(s *study, p *problems.Problem, rng *rand.Rand) {
	everySlip(p, rng, func(l *learner, i int, w *problems.Wrong) {
		lines, _ := freeText(l.work(p, map[int]*problems.Wrong{i: w}))
		r := marking.Lines(p, lines)
		s.add(namedFree, slices.Contains(r.Slips, w.ID), "%s: %s at %d in %q: %v", name(p), w.ID, i, lines, verdicts(r))
	})
}
