package page

import (
	"net/url"
	"slices"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems/sets"
)

// openTask puts the question of a set on the page, with what is answered of
// it. It reports whether there is one.
func (r *reasonPage) openTask(store app.BrowserStorage, u *url.URL) bool {
	r.q, r.mixed = nil, false
	if r.task, r.fault = openTask(store, u); r.task == nil {
		return false
	}
	t := &r.task.task
	if t.Question == nil {
		r.task, r.fault = nil, "This problem of the set is no question of reasoning. Open it from the set."
		return false
	}
	r.ask(t.Question.Kind, t.Seed)
	s := &r.task.work.Sheets[r.task.n]
	a := sets.AnswerOf(r.q, s.Tapped)
	r.option, r.order = a.Option, a.Order
	for _, p := range r.picks {
		if a.Placed && p.Spot == a.Spot {
			r.spot = p.Key
		}
	}
	r.done = s.Done && !r.task.silent()
	return true
}

// keep saves the answer as far as it goes, where the question is of a set.
func (r *reasonPage) keep(ctx app.Context) {
	if r.task == nil {
		return
	}
	if says := r.task.keep(ctx.LocalStorage(), r.answer()); says != "" && !slices.Contains(r.notices, says) {
		r.notices = append(r.notices, says)
	}
}

// answer is the answer as it is saved.
func (r *reasonPage) answer() sheet {
	a := sets.Answer{Option: r.option, Order: slices.Clone(r.order)}
	a.Spot, a.Placed = r.pointed()
	return sheet{
		Skill: r.task.task.ID, Version: r.task.task.Version, Seed: r.q.Seed, House: r.task.set.House, Tapped: a.Taps(r.q),
		Done: r.done || r.task.silent() && r.lacking() == "",
	}
}

// taskBar is the way on in a set; false where the question is not of one, or
// there is something to do first.
func (r *reasonPage) taskBar() (app.UI, bool) {
	if r.task == nil || !r.done && !(r.task.silent() && r.lacking() == "") {
		return nil, false
	}
	return app.Div().Class("bar").Body(r.task.foot(true)...), true
}

// questionOn is a question of reasoning on paper: with room to answer, or with the
// answer and its reasons.
func questionOn(t *sets.Task, key bool) []app.UI {
	q := t.Question
	var list []app.UI
	if q.Drawing != nil {
		list = append(list, app.Div().Class("print-detail").Body(svg(draw.Detail(q.Drawing, draw.DetailOptions{Gaps: len(q.Options) == 0}).Tree())))
	}
	for i, a := range q.Choices {
		list = append(list, app.Div().Class("print-detail").Body(svg(draw.Detail(a, draw.DetailOptions{Title: q.Options[i].Text}).Tree())))
	}
	for _, o := range q.Options {
		switch {
		case !key:
			list = append(list, app.P().Text("☐ "+o.Text))
		case o.Right:
			list = append(list, app.P().Body(app.Strong().Text("☑ "+o.Text), app.Span().Text(" "+o.Why)))
		default:
			list = append(list, app.P().Text("☐ "+o.Text+": "+o.Why))
		}
	}
	items := q.Items
	if key {
		items = nil
		for i, text := range q.Right {
			list = append(list, app.P().Body(app.Strong().Text(numberText(i+1)+". "+text), app.Span().Text(" "+q.Whys[i])))
		}
	}
	for _, text := range items {
		list = append(list, app.P().Text("___ "+text))
	}
	if key && len(q.Places) > 0 {
		list = append(list, app.P().Text(placesText(draw.Picks(q.Drawing, len(q.Options) == 0), q)))
	}
	return list
}
