package page

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/problems/marking"
)

// markFree marks lines of one's own; an empty one is passed over.
func markFree(p *problems.Problem, texts []string) marking.Result {
	var lines []string
	var of []int // the line that each came from
	for i, text := range texts {
		if strings.TrimSpace(text) != "" {
			lines, of = append(lines, text), append(of, i)
		}
	}
	r := marking.Lines(p, lines)
	all := make([]marking.Finding, len(texts))
	for i := range all {
		all[i] = marking.Finding{Step: -1, Verdict: marking.Empty, Value: math.NaN()}
	}
	for n, i := range of {
		all[i] = r.Lines[n]
	}
	r.Lines = all
	if r.First >= 0 {
		r.First = of[r.First]
	}
	return r
}

// add puts an empty line at the end; false where the last one is empty still
// or the sheet is full.
func (b *bench) add() bool {
	n := len(b.sheet.Lines)
	if n >= maxLines || strings.TrimSpace(b.sheet.Lines[n-1].Text) == "" {
		return false
	}
	b.sheet.Lines = append(b.sheet.Lines, entry{})
	return true
}

// mayRemove reports whether line i is empty and not the only one.
func (b *bench) mayRemove(i int) bool {
	return b.sheet.Kind == free && i >= 0 && i < len(b.sheet.Lines) && len(b.sheet.Lines) > 1 && strings.TrimSpace(b.sheet.Lines[i].Text) == ""
}

// remove takes an empty line away; the findings move up with their lines.
func (b *bench) remove(i int) bool {
	if !b.mayRemove(i) {
		return false
	}
	b.sheet.Lines = slices.Delete(b.sheet.Lines, i, i+1)
	if i < len(b.result.Lines) {
		b.result.Lines = slices.Delete(b.result.Lines, i, i+1)
	}
	switch first := b.result.First; {
	case first == i:
		b.result.First = -1
	case first > i:
		b.result.First--
	}
	return true
}

// tie says by a word before line i which step it belongs to; a step below
// zero takes the word away.
func (b *bench) tie(i, step int) {
	text := strings.TrimSpace(b.sheet.Lines[i].Text)
	if label, rest, ok := strings.Cut(text, ":"); ok && b.known(label) {
		text = strings.TrimSpace(rest)
	}
	if p := b.solved(); step >= 0 && step < len(p.Steps) {
		text = spaced(p.Steps[step].Name) + ": " + text
	}
	b.write(i, text)
}

// tied is the step that a word before line i names; -1: none.
func (b *bench) tied(i int) int {
	label, _, ok := strings.Cut(b.sheet.Lines[i].Text, ":")
	if !ok {
		return -1
	}
	return b.named(label)
}

// named is the step of a name as people write it; -1: none.
func (b *bench) named(label string) int { return stepNamed(b.solved(), label) }

// known reports whether a label names a step on any route.
func (b *bench) known(label string) bool {
	return stepNamed(b.p, label) >= 0 || slices.ContainsFunc(b.p.OtherRoutes(), func(q *problems.Problem) bool { return stepNamed(q, label) >= 0 })
}

func stepNamed(p *problems.Problem, label string) int {
	label = strings.ToLower(strings.TrimSpace(spaced(label)))
	return slices.IndexFunc(p.Steps, func(s problems.Step) bool { return spaced(s.Name) == label })
}

// lineName is the name of line i on a chip: that of its step, where it is
// known.
func (b *bench) lineName(i int) string {
	if k := b.step(i); k >= 0 {
		return spaced(b.solved().Steps[k].Name)
	}
	return "line " + strconv.Itoa(i+1)
}

// step is the step that line i answers; -1 where that is not known.
func (b *bench) step(i int) int {
	if b.sheet.Kind != free {
		return i
	}
	if k := b.tied(i); k >= 0 {
		return k
	}
	if f, ok := b.found(i); ok {
		return f.Step
	}
	return -1
}

// own is what was written for a step; empty where nothing was.
func (b *bench) own(step int) string {
	for i := range b.sheet.Lines {
		if b.sheet.Kind != free && i == step || i < len(b.result.Lines) && b.result.Lines[i].Step == step {
			return b.sheet.Lines[i].Text
		}
	}
	return ""
}
