package page

import (
	"slices"

	"riserwork/problems"
	"riserwork/problems/marking"
)

// keepTapped leaves out what is not among n things to tap.
func (b *bench) keepTapped(n int) {
	b.sheet.Tapped = slices.DeleteFunc(slices.Clone(b.sheet.Tapped), func(i int) bool { return i < 0 || i >= n })
}

// tapped reports whether a line or an answer was tapped.
func (b *bench) tapped(i int) bool { return slices.Contains(b.sheet.Tapped, i) }

// tap notes the tap of a line or an answer. What was found stays found.
func (b *bench) tap(i int) {
	if !b.hit() && !b.tapped(i) {
		b.sheet.Tapped = append(b.sheet.Tapped, i)
	}
	if b.sheet.Kind == choice && b.hit() {
		b.sheet.Marked, b.sheet.Done = true, true
	}
}

// choose notes the one answer or line that is chosen so far, where nothing is
// said before the set is handed in.
func (b *bench) choose(i int) {
	b.sheet.Tapped = []int{i}
}

// answered reports whether all that can be tapped or written in place of a
// line is there.
func (s *sheet) answered() bool {
	if len(s.Tapped) == 0 {
		return false
	}
	i := s.Tapped[0]
	return s.Kind == choice || s.Kind == mistake && i >= 0 && i < len(s.Lines) && s.Lines[i].Text != ""
}

// chosen is the line or the answer that is chosen so far; -1: none.
func (b *bench) chosen() int {
	if len(b.sheet.Tapped) == 0 {
		return -1
	}
	return b.sheet.Tapped[0]
}

// hit reports whether the wrong line, or the right answer, was tapped.
func (b *bench) hit() bool {
	switch b.sheet.Kind {
	case mistake:
		return b.tapped(b.planted.Wrong)
	case choice:
		return b.tapped(slices.IndexFunc(b.options, func(o problems.Option) bool { return o.Right }))
	}
	return false
}

// putRight marks the line in place of the wrong one and reports whether it is
// good.
func (b *bench) putRight() bool {
	if !b.markLine(b.planted.Wrong) {
		return false
	}
	b.sheet.Marked, b.sheet.Done = true, true
	return true
}

// slipPlanted is the explanation of the planted mistake.
func (b *bench) slipPlanted() (marking.Named, bool) {
	f := marking.Blanks(b.p, b.planted.Lines).Lines[b.planted.Wrong]
	for _, s := range f.Slips {
		if s.ID == b.planted.Slip {
			return s, true
		}
	}
	return slipOf(b.p, b.planted.Wrong, b.planted.Slip)
}

// slipOf is the explanation of a slip of a step on right numbers before it.
func slipOf(p *problems.Problem, step int, id string) (marking.Named, bool) {
	if step < 0 || step >= len(p.Steps) {
		return marking.Named{}, false
	}
	s := &p.Steps[step]
	for k := range s.Wrongs {
		w := &s.Wrongs[k]
		if w.ID != id {
			continue
		}
		env := p.Env()
		carried := p.Carried(map[int]*problems.Wrong{step: w})
		copy(env[len(p.Told):], carried)
		words := []problems.Word{
			{Name: "got", Text: s.Text(carried[step])},
			{Name: "right", Text: s.Text(s.Value)},
			{Name: "formula", Text: w.Expr.Text()},
		}
		fill := func(text string) string { return p.Fill(text, env, words...) }
		return marking.Named{ID: w.ID, Step: step, Did: fill(w.Did), Why: fill(w.Why), Next: fill(w.Next)}, true
	}
	return marking.Named{}, false
}
