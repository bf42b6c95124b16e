package marking_test

import (
	"math"
	"math/rand/v2"
	"slices"

	"riserwork/problems"
	"riserwork/problems/marking"
)

// anySlip is a slip of step i that gives a number there; nil where it has
// none.
func anySlip(p *problems.Problem, i int, rng *rand.Rand) *problems.Wrong {
	wrongs := p.Steps[i].Wrongs
	if len(wrongs) == 0 {
		return nil
	}
	if w := &wrongs[rng.IntN(len(wrongs))]; does(p, i, w) {
		return w
	}
	return nil
}

// twoSlips are on two lines: the second is told from the learner's own wrong
// number.
func twoSlips(s *study, p *problems.Problem, rng *rand.Rand) {
	for i := range p.Steps {
		for k := i + 1; k < len(p.Steps); k++ {
			a, b := anySlip(p, i, rng), anySlip(p, k, rng)
			if a == nil || b == nil {
				continue
			}
			l := plain[rng.IntN(len(plain))]
			l.rng = rng
			lines := l.work(p, map[int]*problems.Wrong{i: a, k: b})
			if lines[k] == "" || unseen(p, i, k, a, b) {
				continue
			}
			r := marking.Blanks(p, lines)
			first, second := names(r.Lines[i], a.ID), names(r.Lines[k], b.ID)
			flagged := r.Lines[k].Verdict == marking.NotFollowing && slices.ContainsFunc(r.Lines[k].Slips, func(n marking.Named) bool { return n.ID == b.ID })
			s.add(namedPairs, first && (second || flagged), "%s: %s, %s in %q: %v", name(p), a.ID, b.ID, lines, verdicts(r))
			s.add(namedBoth, first && second, "")
		}
	}
}

// unseen reports a second slip that gives what right working gives from the
// first, to its rounding.
func unseen(p *problems.Problem, i, k int, a, b *problems.Wrong) bool {
	with := p.Carried(map[int]*problems.Wrong{i: a, k: b})[k]
	without := p.Carried(map[int]*problems.Wrong{i: a})[k]
	return math.Abs(with-without) <= 2*p.Steps[k].Coarse(with)
}

// mergedSlips are two slips on a line that stands for two steps.
func mergedSlips(s *study, p *problems.Problem, rng *rand.Rand) {
	for k := range p.Steps {
		for i := range k {
			a, b := anySlip(p, i, rng), anySlip(p, k, rng)
			if a == nil || b == nil || !slices.Contains(p.Steps[k].Needs, p.StepSlot(i)) || !slices.Contains(b.Needs, p.StepSlot(i)) {
				continue
			}
			l := plain[rng.IntN(len(plain))]
			l.rng, l.expr = rng, nil
			l.lines = func(_ *learner, step int) bool { return step != i }
			mergedLine(s, p, &l, i, k, a, b, mergedNamed, mergedWrong)
			l.expr = numbersIn
			mergedLine(s, p, &l, i, k, a, b, mergedExpr, mergedFalse)
		}
	}
}

func mergedLine(s *study, p *problems.Problem, l *learner, i, k int, a, b *problems.Wrong, both, others aim) {
	lines := l.work(p, map[int]*problems.Wrong{i: a, k: b})
	if lines[k] == "" {
		return
	}
	f := marking.Blanks(p, lines[:k+1]).Lines[k]
	alike := likeOne(p, i, k, a, b)
	s.add(both, names(f, a.ID, b.ID), "%s: %s, %s in %q: %s", name(p), a.ID, b.ID, lines[:k+1], ids(f))
	s.add(mergedAlike, alike, "")
	wrong := names(f) && !alike && !names(f, a.ID) && !names(f, b.ID)
	s.add(others, wrong, "%s: %s, %s in %q: %s", name(p), a.ID, b.ID, lines[:k+1], ids(f))
}

// likeOne reports whether two slips together give the number of one alone, or
// the right one: nobody could tell them from it.
func likeOne(p *problems.Problem, i, k int, a, b *problems.Wrong) bool {
	pair := p.Carried(map[int]*problems.Wrong{i: a, k: b})[k]
	same := func(slips map[int]*problems.Wrong) bool {
		return math.Abs(p.Carried(slips)[k]-pair) <= 1e-9*math.Abs(pair)
	}
	if same(nil) {
		return true
	}
	for _, step := range []int{i, k} {
		for n := range p.Steps[step].Wrongs {
			if same(map[int]*problems.Wrong{step: &p.Steps[step].Wrongs[n]}) {
				return true
			}
		}
	}
	return false
}

// answerAlone is one slip, and the answer to four figures with nothing
// before it.
func answerAlone(s *study, p *problems.Problem, rng *rand.Rand) {
	end := len(p.Steps) - 1
	if end == 0 {
		return
	}
	for i := range p.Steps {
		for k := range p.Steps[i].Wrongs {
			w := &p.Steps[i].Wrongs[k]
			v := p.Carried(map[int]*problems.Wrong{i: w})[end]
			if !does(p, i, w) || !sayable(p.Answer(), v) || math.Abs(v-p.Answer().Value) <= 0.02*math.Abs(v) {
				continue // it does not change the answer
			}
			l := learner{rng: rng, write: figures(4), lines: last}
			lines := l.work(p, map[int]*problems.Wrong{i: w})
			f := marking.Blanks(p, lines).Lines[end]
			s.add(aloneNamed, names(f, w.ID), "%s: %s, %q: %s", name(p), w.ID, lines[end], ids(f))
			s.add(aloneMaybe, f.Verdict == marking.PossibleSlip, "")
		}
	}
	if text := wild(&learner{rng: rng, write: figures(4)}, p.Answer()); text != "" {
		lines := make([]string, len(p.Steps))
		lines[end] = text
		f := marking.Blanks(p, lines).Lines[end]
		s.add(aloneFalse, names(f), "%s: %q: %s", name(p), text, ids(f))
	}
}

// wild is an unrelated number as the result of a step, within a factor of
// three of the right one; empty where it is too near to it.
func wild(l *learner, s *problems.Step) string {
	v := s.Value * math.Exp((l.rng.Float64()*2-1)*math.Log(3))
	if s.Whole {
		v = math.Round(v)
	}
	if len(s.Choices) > 0 || math.Abs(v-s.Value) <= 0.05*math.Abs(s.Value) {
		return ""
	}
	text, _ := l.put(s, v)
	return text
}
