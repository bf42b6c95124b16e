package marking

import (
	"math"
	"strings"

	"riserwork/problems"
)

// Bounds of a sheet; lines beyond are found not readable.
const maxLines = 60

// Blanks marks a guided sheet: blanks[i] is what stands in the blank of step
// i, empty where nothing does. A step left empty is taken as done in the
// head. Lines of the result are one a step, in order.
func Blanks(p *problems.Problem, blanks []string) Result {
	m := newSheet(p)
	findings := make([]Finding, len(p.Steps))
	for i := range p.Steps {
		text := ""
		if i < len(blanks) {
			text = blanks[i]
		}
		findings[i] = m.line(i, text)
	}
	return m.result(findings, findings)
}

// Lines marks free working: any number of lines in any order, each tied to
// the step that it answers. Of several right routes it takes the one by
// which it can follow most lines, the skill's own first.
func Lines(p *problems.Problem, lines []string) Result {
	best, most := route(p, lines)
	for _, q := range p.OtherRoutes() {
		if r, n := route(q, lines); n > most {
			best, most = r, n
		}
	}
	return best
}

// followed counts the lines that were followed, and those whose own words
// name a step.
func followed(found []Finding, fixed []int) int {
	n := 0
	for l, f := range found {
		if f.Step >= 0 && f.Verdict != NotRecognised && f.Verdict != PossibleSlip {
			n++
		}
		if fixed[l] >= 0 {
			n++
		}
	}
	return n
}

// route marks lines by one way of working, and says how many it followed.
func route(p *problems.Problem, lines []string) (Result, int) {
	m := newSheet(p)
	texts, of := joined(lines[:min(len(lines), maxLines)])
	f := m.read(texts)
	tie := m.tie(f)
	judged := m.adopt(tie, f)
	byStep := make([]Finding, len(p.Steps))
	found := make([]Finding, len(texts))
	for l := range found {
		found[l].Step = -1
	}
	for i := range p.Steps {
		byStep[i] = Finding{Step: i, Verdict: Empty, Value: math.NaN()}
		if l := tie[i]; l >= 0 {
			byStep[i] = m.finding(i, texts[l], judged[i], f.why[l])
			found[l] = byStep[i]
		}
	}
	for l, text := range texts {
		if found[l].Step < 0 {
			found[l] = m.untied(text, f.readings[l], f.why[l], tie, l)
		}
	}
	byLine := make([]Finding, len(lines))
	for l := range byLine {
		if l < len(of) {
			byLine[l] = found[of[l]]
		} else {
			byLine[l] = Finding{Step: -1, Verdict: NotReadable, Value: math.NaN(), Says: "More than 60 lines: this one was not read."}
		}
		byLine[l].Text = lines[l]
	}
	return m.result(byStep, byLine), followed(found, f.fixed)
}

// adopt ties lines that no step took, or that are not recognised where they
// are tied, to steps that have none, where they are a known fault: a misplaced
// point, two slips, a slip that a later right line did not follow from. It
// gives what each step's line is judged to be.
func (m *sheet) adopt(tie []int, f free) []*judgement {
	at := make([]int, len(f.readings)) // by line: the step it is tied to
	for l := range at {
		at[l] = -1
	}
	judged := m.judgeAll(tie, f)
	for i, l := range tie {
		if l >= 0 {
			at[l] = i
		}
	}
	moved := false
	for l, readings := range f.readings {
		was := at[l]
		if len(readings) == 0 || was >= 0 && (f.fixed[l] >= 0 || judged[was] == nil || judged[was].verdict != NotRecognised) {
			continue
		}
		if was >= 0 {
			m.own[was].written = false
		}
		if i := m.faultAt(tie, readings); i >= 0 {
			tie[i], moved = l, true
			if was >= 0 {
				tie[was] = -1
			}
		} else if was >= 0 {
			m.own[was].written = true
		}
	}
	clear(m.own)
	if moved {
		judged = m.judgeAll(tie, f)
		clear(m.own)
	}
	return judged
}

// judgeAll judges the lines that are tied, in the order of their steps.
func (m *sheet) judgeAll(tie []int, f free) []*judgement {
	judged := make([]*judgement, len(tie))
	for i, l := range tie {
		if l < 0 {
			continue
		}
		if j, ok := m.best(m.look(i), f.readings[l], true); ok {
			judged[i] = &j
			m.keep(i, j)
		}
	}
	return judged
}

// deepest is how many steps may be done in the head before a line is tied to
// one for a fault alone.
const deepest = 2

// faultAt is the first step without a line at which a line is a known fault;
// -1.
func (m *sheet) faultAt(tie []int, readings []reading) int {
	for i := range tie {
		if tie[i] >= 0 {
			continue
		}
		v := m.look(i)
		if len(v.hidden) > deepest {
			continue
		}
		if j, ok := m.best(v, readings, true); ok && j.answers() && j.verdict.fault() {
			return i
		}
	}
	return -1
}

// joined puts a line that begins with an equals sign behind the line above it,
// as people break a sum. Of says which joined text each line went into.
func joined(lines []string) (texts []string, of []int) {
	for _, l := range lines {
		t := strings.TrimSpace(l)
		if n := len(texts); n > 0 && strings.HasPrefix(t, "=") && len(texts[n-1])+len(t) < maxLine {
			texts[n-1] += " " + t
		} else {
			texts = append(texts, t)
		}
		of = append(of, len(texts)-1)
	}
	return texts, of
}

// line judges a text as the answer of step i and keeps its number.
func (m *sheet) line(i int, text string) Finding {
	if strings.TrimSpace(text) == "" {
		return Finding{Text: text, Step: i, Verdict: Empty, Value: math.NaN()}
	}
	readings, why := readLine(m.p, text)
	if j, ok := m.best(m.look(i), readings, true); ok {
		return m.finding(i, text, &j, why)
	}
	return m.finding(i, text, nil, why)
}

// finding tells what the line of step i is judged to be and keeps its number;
// why it was not read, where there is no judgement.
func (m *sheet) finding(i int, text string, j *judgement, why string) Finding {
	f := Finding{Text: text, Step: i, Value: math.NaN()}
	if j == nil {
		f.Verdict, f.Says = NotReadable, m.notReadable(i, why)
		return f
	}
	f.Value = j.num.v
	f.For, f.ReadAs = m.sayOf(i), j.num.text(&m.p.Steps[i])
	m.explain(&f, *j)
	m.keep(i, *j)
	return f
}

// best is the kindest judgement over every way a line may be read.
func (m *sheet) best(v *view, readings []reading, full bool) (best judgement, found bool) {
	var room [4]number
	for k := range readings {
		for _, n := range m.numbers(room[:0], &readings[k], v.step) {
			if math.IsNaN(n.v) || math.IsInf(n.v, 0) {
				continue
			}
			j := m.judge(v, n, full)
			j.unit()
			if !found || j.cost() < best.cost() {
				best, found = j, true
			}
		}
	}
	return best, found
}

// unit turns a good verdict on a bare number into the one on its unit.
func (j *judgement) unit() {
	if !j.verdict.Good() {
		return
	}
	switch {
	case j.num.raw:
		j.verdict = WrongUnit
	case j.num.noUnit && j.verdict == Right:
		j.verdict = UnitMissing
	}
}

// answers reports a number that may stand for the step though its unit does
// not fit: the right one, or a sum that is a known slip.
func (j *judgement) answers() bool {
	return !j.num.raw || j.verdict == WrongUnit || j.num.hasExpr && j.verdict.fault()
}

// cost ranks judgements: the fewest faults first.
func (j *judgement) cost() float64 {
	c := costOf(j.verdict)
	if j.num.raw && j.verdict != WrongUnit {
		c += 0.05
	}
	return c
}

// costOf is the cost of a verdict.
func costOf(v Verdict) float64 {
	switch v {
	case Right:
		return 0
	case RoundedEarly, FollowThrough, UnitMissing:
		return 0.02
	case NotFollowing:
		return 0.5
	case WrongUnit:
		return 0.9
	case Slip, Arithmetic:
		return 1
	case TwoSlips, WrongGiven, PossibleSlip, Transposed, PowerOfTen, Sign:
		return 1.15
	}
	return 1.2
}
