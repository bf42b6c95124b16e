package page

import (
	"math"
	"strings"

	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/marking"
)

// bench is a problem on which somebody works: the sheet and what marking
// found on it.
type bench struct {
	p       *problems.Problem
	sheet   sheet
	result  marking.Result
	planted problems.Planted  // the working with a mistake, where that is the kind
	options []problems.Option // the answers to choose from, where that is the kind
	would   *would            // what the sheet's first wrong number would do
	silent  bool              // nothing is told before it is handed in
}

// hintTurns is how many hints a line has; at the last it is seen worked.
const hintTurns = record.Shown

// newBench lays out a problem with a sheet, which may be an empty one.
func newBench(p *problems.Problem, a address, s sheet) *bench {
	s.Skill, s.Version, s.Seed, s.House, s.Mix, s.Kind, s.Givens = a.skill.ID, a.skill.Version, a.seed, a.house, a.mix, a.kind, a.givens
	n := len(p.Steps)
	if s.Kind == free {
		n = max(1, len(s.Lines))
	}
	lines := make([]entry, n)
	copy(lines, s.Lines)
	s.Lines = lines
	if !s.begun() && !s.Marked {
		s.Given = a.given
	}
	b := &bench{p: p, sheet: s}
	b.give()
	switch s.Kind {
	case mistake:
		b.planted, _ = p.Plant(0)
		b.keepTapped(len(b.planted.Lines))
	case choice:
		b.options = p.Options()
		b.keepTapped(len(b.options))
	}
	b.mark()
	if s.Marked {
		b.would = b.tried()
	}
	return b
}

// solved is the problem by the route that the sheet takes.
func (b *bench) solved() *problems.Problem {
	if b.result.Problem != nil {
		return b.result.Problem
	}
	return b.p
}

func (b *bench) mark() {
	texts := make([]string, len(b.sheet.Lines))
	for i := range texts {
		texts[i] = b.text(i)
	}
	if b.sheet.Kind == free {
		b.result = markFree(b.p, texts)
		return
	}
	b.result = marking.Blanks(b.p, texts)
}

// text is what stands on line i: in a working with a mistake, the lines
// before it as they were given.
func (b *bench) text(i int) string {
	from := b.planted.Wrong
	if b.silent {
		from = b.chosen()
	}
	if b.sheet.Kind == mistake && i < from {
		return b.planted.Lines[i]
	}
	return b.sheet.Lines[i].Text
}

// write sets the text of line i. Findings on it and on the lines after it no
// longer hold, so they go.
func (b *bench) write(i int, text string) {
	if b.sheet.Lines[i].Text == text {
		return
	}
	b.sheet.Lines[i].Text = text
	for j := range b.sheet.Lines {
		if f, ok := b.found(j); j >= i || ok && f.Verdict == marking.Replaced {
			b.sheet.Lines[j].Marked = false
		}
	}
	b.sheet.Done = false
}

// markLine marks line i and reports whether it is good.
func (b *bench) markLine(i int) bool {
	b.mark()
	b.sheet.Lines[i].Marked = true
	f, ok := b.found(i)
	return ok && f.Verdict.Good()
}

// markAll marks the whole sheet.
func (b *bench) markAll() {
	b.mark()
	for i := range b.sheet.Lines {
		b.sheet.Lines[i].Marked = true
	}
	b.would = b.tried()
	b.sheet.Marked, b.sheet.Done = true, b.result.Done
}

// found is what marking found on line i, where the line was marked.
func (b *bench) found(i int) (marking.Finding, bool) {
	if !b.sheet.Lines[i].Marked || i >= len(b.result.Lines) {
		return marking.Finding{}, false
	}
	return b.result.Lines[i], true
}

// wrong reports whether line i was marked and does not stand.
func (b *bench) wrong(i int) bool {
	f, ok := b.found(i)
	if !ok || f.Verdict.Good() {
		return false
	}
	return f.Verdict != marking.Empty && f.Verdict != marking.Replaced && f.Verdict != marking.NotTied
}

// fault is the earliest line that was marked and does not stand; -1: none.
func (b *bench) fault() int {
	for i := range b.sheet.Lines {
		if b.wrong(i) {
			return i
		}
	}
	return -1
}

// next is the line to write next: the earliest fault, else the first empty
// one; -1 where every line is written.
func (b *bench) next() int {
	if i := b.fault(); i >= 0 {
		return i
	}
	for i, e := range b.sheet.Lines {
		if strings.TrimSpace(e.Text) == "" {
			return i
		}
	}
	return -1
}

// mayHint reports whether line i has a further hint to give. Between two
// hints stands a try.
func (b *bench) mayHint(i int) bool {
	e := &b.sheet.Lines[i]
	return e.Hints == 0 || e.Hints < hintTurns && strings.TrimSpace(e.Text) != "" && e.Text != e.HintAt
}

func (b *bench) hint(i int) {
	if e := &b.sheet.Lines[i]; b.mayHint(i) {
		e.Hints++
		e.HintAt = e.Text
	}
}

// hints are the hints shown for line i.
func (b *bench) hints(i int) []string {
	env := b.env()
	var list []string
	for turn := 1; turn <= b.sheet.Lines[i].Hints; turn++ {
		list = append(list, b.p.Hint(i, turn, env))
	}
	return list
}

// env is the numbers of the problem, the learner's own where marking has read
// them.
func (b *bench) env() []float64 {
	p := b.solved()
	env := p.Env()
	for i := range b.sheet.Lines {
		if f, ok := b.found(i); ok && f.Step >= 0 && !math.IsNaN(f.Value) {
			env[p.StepSlot(f.Step)] = f.Value
		}
	}
	return env
}
