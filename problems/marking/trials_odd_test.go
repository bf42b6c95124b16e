package marking_test

import (
	"math"
	"math/rand/v2"
	"strings"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/solver/unit"
)

// swappedLine puts a random number on one line and works the rest rightly
// from it. Numbers that lead to what no building has are left out.
func swappedLine(s *study, p *problems.Problem, rng *rand.Rand) {
	for i := range p.Steps {
		st := &p.Steps[i]
		if len(st.Choices) > 0 {
			continue
		}
		l := plain[rng.IntN(len(plain))]
		l.rng = rng
		v := st.Value * math.Exp((rng.Float64()*2-1)*math.Log(3))
		if st.Whole {
			v = math.Round(v)
		}
		if math.Abs(v-st.Value) <= 0.05*st.Value {
			continue
		}
		l.expr = nil
		lines := l.workWith(p, nil, map[int]float64{i: v})
		r := marking.Blanks(p, lines)
		if below(r) {
			continue
		}
		bad := -1
		for k, f := range r.Lines {
			if k != i && !f.Verdict.Good() && f.Verdict != marking.Empty {
				bad = k
			}
		}
		lost := lostElsewhere(p, r, lines, i)
		s.add(onlyThat, bad < 0 && !lost, "%s: line %d swapped in %q: %v, %d of %d", name(p), i, lines, verdicts(r), r.Marks, r.Of)
	}
}

// below reports a sheet with a number under nought.
func below(r marking.Result) bool {
	for _, f := range r.Lines {
		if f.Value <= 0 {
			return true
		}
	}
	return false
}

// lostElsewhere reports marks lost beyond the two of line i, those of lines
// that could not be worked any more, and one for rounding.
func lostElsewhere(p *problems.Problem, r marking.Result, lines []string, i int) bool {
	lost := 2
	for k := range p.Steps {
		if lines[k] == "" {
			lost += 2
		}
	}
	for _, f := range r.Lines {
		if f.Verdict == marking.RoundedEarly {
			lost++
			break
		}
	}
	return r.Marks < r.Of-lost
}

func unrelated(s *study, p *problems.Problem, rng *rand.Rand) {
	for i := range p.Steps {
		st := &p.Steps[i]
		l := plain[rng.IntN(len(plain))]
		l.rng, l.expr = rng, nil
		text := wild(&l, st)
		if text == "" {
			continue
		}
		lines := l.work(p, nil)
		lines[i] = text
		f := marking.Blanks(p, lines[:i+1]).Lines[i]
		a := falseSlip
		if st.Whole {
			a = falseWhole
		}
		s.add(a, names(f), "%s: line %d of %q: %s", name(p), i, lines[:i+1], ids(f))
		if st.Whole {
			continue
		}
		switch f.Verdict {
		case marking.Transposed, marking.PowerOfTen, marking.Sign, marking.WrongGiven:
			s.add(falseOther, true, "")
		default:
			s.add(falseOther, false, "")
		}
		free, _ := freeText(lines[:i+1])
		r := marking.Lines(p, free)
		s.add(falseFree, len(r.Slips) > 0, "")
	}
}

// misprints are right numbers with two digits exchanged or the point moved.
func misprints(s *study, p *problems.Problem, rng *rand.Rand) {
	for i := range p.Steps {
		st := &p.Steps[i]
		if st.Whole || len(st.Choices) > 0 {
			continue
		}
		l := learner{rng: rng, write: []writer{figures(3), figures(4), whole}[rng.IntN(3)]}
		lines := l.work(p, nil)
		right := lines[i]
		if text := exchanged(right, rng); text != "" {
			lines[i] = text
			f := marking.Blanks(p, lines[:i+1]).Lines[i]
			s.add(transposed, f.Verdict == marking.Transposed, "%s: %q for %q of %q: %s", name(p), text, right, lines[:i+1], ids(f))
		}
		tens := []float64{0.01, 0.1, 10, 100}[rng.IntN(4)]
		text, unit, _ := strings.Cut(right, " ")
		var v float64
		for _, c := range text {
			if c >= '0' && c <= '9' {
				v = v*10 + float64(c-'0')
			}
		}
		if at := strings.IndexByte(text, '.'); at >= 0 {
			v /= math.Pow(10, float64(len(text)-at-1))
		}
		lines[i] = strings.TrimSpace(number(math.Round(v*tens*1e9)/1e9) + " " + unit)
		f := marking.Blanks(p, lines[:i+1]).Lines[i]
		s.add(tenfold, f.Verdict == marking.PowerOfTen, "%s: %q for %q of %q: %s", name(p), lines[i], right, lines[:i+1], ids(f))
	}
}

// exchanged is a number's text with two neighbouring digits in each other's
// place; empty where none differ.
func exchanged(text string, rng *rand.Rand) string {
	b := []byte(text)
	var places [][2]int
	for i := range b {
		j := i + 1
		if j < len(b) && b[j] == '.' {
			j++
		}
		if j < len(b) && isDigit(b[i]) && isDigit(b[j]) && b[i] != b[j] && !(i == 0 && (b[i] == '0' || b[j] == '0')) {
			places = append(places, [2]int{i, j})
		}
	}
	if len(places) == 0 {
		return ""
	}
	at := places[rng.IntN(len(places))]
	b[at[0]], b[at[1]] = b[at[1]], b[at[0]]
	return string(b)
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// wrongGivens are lines with another number of the problem in the place of
// one of the rule's.
func wrongGivens(s *study, p *problems.Problem, rng *rand.Rand) {
	for i := range p.Steps {
		st := &p.Steps[i]
		if st.Whole || len(st.Choices) > 0 {
			continue
		}
		env := p.Env()
		for _, need := range st.Needs {
			if need < len(p.Told) && p.Told[need].Constant {
				continue
			}
			for other := range p.Constants {
				if other == need || p.SlotUnit(other).Dim != p.SlotUnit(need).Dim || math.Abs(env[other]-env[need]) < 0.01*env[need] {
					continue
				}
				was := env[need]
				env[need] = env[other]
				v := st.Bound.Eval(env)
				env[need] = was
				if !sayable(st, v) || v == 0 || math.Abs(v-st.Value) < 0.02*math.Abs(v) {
					continue
				}
				l := learner{rng: rng, write: []writer{figures(3), figures(4)}[rng.IntN(2)]}
				lines := l.work(p, nil)
				lines[i], _ = l.put(st, v)
				f := marking.Blanks(p, lines[:i+1]).Lines[i]
				s.add(wrongGiven, f.Verdict == marking.WrongGiven || f.Verdict == marking.Slip,
					"%s: %s for %s at line %d of %q: %s", name(p), p.Told[other].Name, p.SlotText(need, was), i, lines[:i+1], ids(f))
			}
		}
	}
}

// unitFaults writes the units of some lines wrongly, or not at all.
func unitFaults(s *study, p *problems.Problem, rng *rand.Rand) {
	l := learner{rng: rng, write: figures(3)}
	lines := l.work(p, nil)
	for _, wrong := range []bool{true, false} {
		faulty, faults := append([]string{}, lines...), 0
		for i := range p.Steps {
			st := &p.Steps[i]
			if st.Unit.Name == "" || st.Whole || len(st.Choices) > 0 || rng.IntN(3) == 0 {
				continue
			}
			bare := strings.TrimSpace(strings.TrimSuffix(lines[i], st.Unit.Name))
			if wrong {
				bare += " " + strange(st.Unit)
			}
			faulty[i] = bare
			faults++
		}
		if faults == 0 {
			continue
		}
		r := marking.Blanks(p, faulty)
		s.add(unitOnce, r.Marks == r.Of-1, "%s: %q: %v, %d of %d", name(p), faulty, verdicts(r), r.Marks, r.Of)
	}
}

// strange is a unit of another kind.
func strange(u unit.Unit) string {
	if psi, err := unit.Parse("psi"); err == nil && psi.Dim == u.Dim {
		return "ft"
	}
	return "psi"
}
