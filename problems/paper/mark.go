package paper

import (
	"math"
	"slices"
	"strconv"

	"riserwork/problems"
	"riserwork/problems/marking"
)

// Marked is a whole paper, marked.
type Marked struct {
	Parts []PartMark
	Marks int
	Of    int
}

// PartMark is what marking found on one part.
type PartMark struct {
	marking.Result
	// Judged is the part as it was judged: with the learner's own answers in
	// the givens that come from earlier parts.
	Judged  *problems.Problem
	Carried []Carried
	Through bool   // it rests on a wrong answer of an earlier part
	Blocked string // why no answer was carried into it; empty where that went well
	Written bool
}

// Carried is an answer of the learner's that an earlier part handed on.
type Carried struct {
	Link
	Value float64
	Text  string // "61.3 psi"
	Own   bool   // the learner's number; else the right one stands in
	Sound bool   // it is right
}

// How lines are tied to steps.
type How bool

// Ways of writing a part: a line for each step in its order, or lines of
// one's own.
const (
	Blanks How = true
	Lines  How = false
)

// Mark marks a paper part by part; work holds the lines of each, those that
// are missing count as empty. A part is judged from the learner's own answers
// to the parts it rests on, as written or as they were before rounding, so a
// wrong one loses its marks once.
func (p *Paper) Mark(work [][]string, how How) Marked {
	m := Marked{Of: p.Of()}
	for i := range p.Parts {
		m.Parts = append(m.Parts, p.markPart(i, linesOf(work, i), how, m.Parts))
		m.Marks += m.Parts[i].Marks
	}
	return m
}

// Again marks part i anew, whose lines were changed since, and after it those
// parts that another number is now carried into.
func (p *Paper) Again(m *Marked, i int, work [][]string, how How) {
	for k := i; k < len(p.Parts); k++ {
		old := &m.Parts[k]
		if k > i && slices.Equal(p.carried(&p.Parts[k], m.Parts), old.Carried) {
			continue
		}
		m.Marks -= old.Marks
		*old = p.markPart(k, linesOf(work, k), how, m.Parts)
		m.Marks += old.Marks
	}
}

// linesOf are the lines of part i; none where they are missing.
func linesOf(work [][]string, i int) []string {
	if i < len(work) {
		return work[i]
	}
	return nil
}

func (p *Paper) markPart(i int, lines []string, how How, before []PartMark) PartMark {
	part := &p.Parts[i]
	out := PartMark{Judged: part.Problem, Carried: p.carried(part, before)}
	for _, c := range out.Carried {
		out.Through = out.Through || !c.Sound
	}
	out.Written = slices.ContainsFunc(lines, func(l string) bool { return l != "" })
	var tries []*problems.Problem
	if own, ok := part.carrying(p, out.Carried, false); ok && own.Possible(part.Problem) {
		tries = append(tries, own)
		if exact, ok := part.carrying(p, out.Carried, true); ok && len(part.From) > 0 {
			tries = append(tries, exact)
		}
		if short, ok := part.carrying(p, p.shortened(out.Carried), false); ok && slices.ContainsFunc(out.Carried, func(c Carried) bool { return !c.Own }) {
			tries = append(tries, short)
		}
		out.Judged = own
	} else {
		out.Blocked = p.blocked(out.Carried)
		out.Through = false
		tries = append(tries, part.Problem)
	}
	for k, q := range tries {
		r := read(q, lines, how)
		if k == 0 || r.Marks > out.Marks {
			out.Result, out.Judged = r, q
		}
	}
	out.follow(p, part)
	return out
}

func read(q *problems.Problem, lines []string, how How) marking.Result {
	if how == Blanks {
		full := make([]string, len(q.Steps))
		copy(full, lines)
		return marking.Blanks(q, full)
	}
	return marking.Lines(q, lines)
}

// carried are the answers that a part rests on.
func (p *Paper) carried(part *Part, before []PartMark) []Carried {
	var out []Carried
	for _, l := range part.From {
		from := &before[l.Part]
		c := Carried{Link: l, Value: p.Parts[l.Part].Steps[l.Step].Value, Sound: true}
		if v, sound, ok := from.at(l.Step); ok {
			c.Value, c.Own, c.Sound = v, true, sound
		}
		c.Text = p.Parts[l.Part].Steps[l.Step].Text(c.Value)
		out = append(out, c)
	}
	return out
}

// shortened are carried answers with those that were never written down as
// three figures, which is what somebody who worked them aside goes on with.
func (p *Paper) shortened(list []Carried) []Carried {
	out := slices.Clone(list)
	for i := range out {
		s := &p.Parts[out[i].Part].Steps[out[i].Step]
		if out[i].Own || s.Whole || len(s.Choices) > 0 {
			continue
		}
		if v, err := strconv.ParseFloat(strconv.FormatFloat(out[i].Value, 'g', max(3, s.Figures), 64), 64); err == nil {
			out[i].Value = v
		}
	}
	return out
}

// carrying is the part with the answers carried into it; exact takes the
// right number, unrounded, where the learner's is right.
func (part *Part) carrying(p *Paper, list []Carried, exact bool) (*problems.Problem, bool) {
	values := map[string]float64{}
	for _, c := range list {
		values[c.Given] = c.Value
		if right := p.Parts[c.Part].Steps[c.Step].Value; exact && c.Sound {
			values[c.Given] = right
		}
	}
	part.retell(p.House, values)
	return part.Carrying(values)
}

// at is the learner's number of a step: written, or worked out from those
// that are. ok is false where nothing leads to it.
func (m *PartMark) at(step int) (v float64, sound, ok bool) {
	if m.Problem != nil && m.Problem.Route != "" { // another way, with steps of its own
		want := m.Judged.Steps[step].Name
		i := slices.IndexFunc(m.Problem.Steps, func(s problems.Step) bool { return s.Name == want })
		if i < 0 {
			if step != len(m.Judged.Steps)-1 {
				return m.Judged.Steps[step].Value, m.Done, m.Done
			}
			i = len(m.Problem.Steps) - 1
		}
		step = i
	}
	q := m.Problem
	if q == nil || !m.Written {
		return 0, true, false
	}
	env, sound, any := q.Env(), !m.Through, false
	for i := 0; i <= step; i++ {
		f, found := m.of(i)
		switch {
		case found:
			env[q.StepSlot(i)], any = f.Value, true
			if needed(q, step, i) {
				sound = sound && (f.Verdict.Good() || f.Verdict == marking.WrongUnit || f.Verdict == marking.NotFollowing)
			}
		default:
			env[q.StepSlot(i)] = q.Steps[i].Bound.Eval(env)
		}
	}
	v = env[q.StepSlot(step)]
	return v, sound, any && !math.IsNaN(v) && !math.IsInf(v, 0)
}

// needed reports whether a step rests on another, or is it.
func needed(q *problems.Problem, step, on int) bool {
	if step == on {
		return true
	}
	return slices.ContainsFunc(q.Steps[step].Needs, func(slot int) bool {
		k := slot - len(q.Told)
		return k >= on && needed(q, k, on)
	})
}

// of is the finding that answers a step.
func (m *PartMark) of(step int) (marking.Finding, bool) {
	for _, f := range m.Lines {
		if f.Step == step && f.Verdict != marking.Replaced && f.Verdict != marking.Empty && !math.IsNaN(f.Value) {
			return f, true
		}
	}
	return marking.Finding{}, false
}

// follow words what is right only on an earlier part's wrong number as that.
func (m *PartMark) follow(p *Paper, part *Part) {
	if !m.Through {
		return
	}
	for i := range m.Lines {
		f := &m.Lines[i]
		if f.Step < 0 || f.Verdict != marking.Right {
			continue
		}
		if from := m.rests(f.Step); from >= 0 {
			f.Verdict = marking.FollowThrough
			f.Says = "Right on your own number from part " + strconv.Itoa(from+1) + "."
		}
	}
}

// rests is the part whose wrong answer a step rests on; -1.
func (m *PartMark) rests(step int) int {
	for _, c := range m.Carried {
		if !c.Sound && m.Problem != nil && m.readsGiven(step, m.Problem.Given(c.Given)) {
			return c.Part
		}
	}
	return -1
}

func (m *PartMark) readsGiven(step, told int) bool {
	return slices.ContainsFunc(m.Problem.Steps[step].Needs, func(slot int) bool {
		if k := slot - len(m.Problem.Told); k >= 0 {
			return m.readsGiven(k, told)
		}
		return slot == told
	})
}

// blocked says that a carried number leads to what no building has.
func (p *Paper) blocked(list []Carried) string {
	for _, c := range list {
		if c.Own && !c.Sound {
			return "Your " + c.Text + " from part " + strconv.Itoa(c.Part+1) + " leads here to what no building has. Go back to that part. Until then this part is marked from the right number."
		}
	}
	return "The numbers carried here lead to what no building has. Go back to the parts before."
}

// AskText is the question of a part, with the numbers as the learner has them.
func (part *Part) AskText(judged *problems.Problem) string {
	var words []problems.Word
	for i := range judged.Told[:judged.Constants] {
		t := &judged.Told[i]
		text := t.Text
		if slices.ContainsFunc(part.From, func(l Link) bool { return l.Given == t.Given }) {
			text = "the " + t.Says
		}
		words = append(words, problems.Word{Name: t.Given, Text: text})
	}
	return judged.Fill(part.Ask, judged.Env(), words...)
}
