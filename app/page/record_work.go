package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
)

// news are the entries for what was marked since the last call: each line as
// it was typed, the answers that were tapped, and the sheet as a whole.
func (b *bench) news() []record.Entry {
	base := record.Entry{
		Skill: b.sheet.Skill, Draws: uint64(max(b.sheet.Version, 0)), Seed: b.sheet.Seed,
		Way: b.sheet.Kind, Given: b.sheet.Given,
	}
	list := append(b.lineNews(base), b.tapNews(base)...)
	n := &b.sheet.Noted
	if !b.sheet.Marked || n.Marked && n.Done == b.sheet.Done {
		return list
	}
	n.Marked, n.Done = true, b.sheet.Done
	e := base
	e.Kind, e.Steps, e.Done = record.Sheet, b.stepNames(), b.sheet.Done
	e.Marks, e.Of = b.marks()
	return append(list, e)
}

func (b *bench) lineNews(base record.Entry) []record.Entry {
	var list []record.Entry
	for i := b.sheet.Given; i < len(b.sheet.Lines); i++ {
		l := &b.sheet.Lines[i]
		f, ok := b.found(i)
		if !ok || l.Text == l.Noted || f.Verdict == marking.Empty || f.Verdict == marking.Replaced {
			continue
		}
		l.Noted = l.Text
		e := base
		e.Kind, e.Text, e.Verdict, e.Hints = record.Line, l.Text, f.Verdict, l.Hints
		if b.sheet.Shown {
			e.Hints = record.Shown
		}
		if p := b.solved(); f.Step >= 0 && f.Step < len(p.Steps) {
			e.Step = p.Steps[f.Step].Name
		}
		for _, s := range f.Slips {
			e.Slips = append(e.Slips, s.ID)
		}
		list = append(list, e)
	}
	return list
}

// tapNews are the answers that were chosen.
func (b *bench) tapNews(base record.Entry) []record.Entry {
	if b.sheet.Kind != choice {
		return nil
	}
	var list []record.Entry
	for _, i := range b.sheet.Tapped[min(b.sheet.Noted.Tapped, len(b.sheet.Tapped)):] {
		o := &b.options[i]
		e := base
		e.Kind, e.Text, e.Step, e.Verdict = record.Line, o.Text, b.p.Answer().Name, marking.NotRecognised
		switch {
		case o.Right:
			e.Verdict = marking.Right
		case o.Slip != "":
			e.Verdict, e.Slips = marking.Slip, []string{o.Slip}
		}
		list = append(list, e)
	}
	b.sheet.Noted.Tapped = len(b.sheet.Tapped)
	return list
}

// note writes what was marked into the record.
func (w *work) note(ctx app.Context) { w.noteThen(ctx, func(app.Context) {}) }

// noteThen writes it and goes on once it is written. Numbers of one's own are
// not noted: no number of a problem draws them again.
func (w *work) noteThen(ctx app.Context, then func(app.Context)) {
	if w.judge != nil {
		w.judge()
	}
	if len(w.address.givens) > 0 {
		w.save(ctx)
		then(ctx)
		return
	}
	list := w.bench.news()
	if _, ok := skills.ByID(w.bench.sheet.Skill); !ok { // one that only a paper asks for
		list = nil
	}
	for i := range list {
		list[i] = records.stamped(list[i])
	}
	w.save(ctx)
	records.write(list, func() { ctx.Dispatch(then) })
}
