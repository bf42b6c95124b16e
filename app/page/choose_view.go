package page

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
)

// toChoose is the answers to choose from. A wrong one leads to the slip that
// gives it.
func (w *work) toChoose() app.UI {
	b := w.bench
	var list []app.UI
	for i := range b.options {
		list = append(list, w.answer(i, &b.options[i]))
	}
	return app.Div().Class("working").Body(
		app.H2().Class("lines-title").ID("find").TabIndex(-1).Text("Choose the answer"),
		app.P().Class("find-ask").Text(problems.Sentence(w.label(len(b.p.Steps)-1))+"."),
		app.Ol().Class("answers").Body(list...),
	)
}

func (w *work) answer(i int, o *problems.Option) app.UI {
	if w.task.silent() {
		return w.silentAnswer(i, o)
	}
	tapped := w.bench.tapped(i)
	tone, sign := blank, ""
	switch {
	case tapped && o.Right:
		tone, sign = good, "✓ Right"
	case tapped:
		tone, sign = bad, "✗ Not right"
	}
	return app.Li().Class("line", "given").DataSet("tone", tone).ID("answer-card-"+strconv.Itoa(i)).Body(
		app.Button().Type("button").Class("planted", "option").ID("answer-"+strconv.Itoa(i)).DataSet("line", i).
			Disabled(tapped || w.bench.hit()).Text(o.Text).OnClick(w.onAnswer),
		app.P().Class("word").Hidden(sign == "").Body(app.Strong().Text(sign)),
		w.leadsThere(o, tapped && !o.Right),
	)
}

// leadsThere explains the slip that gives a wrong answer.
func (w *work) leadsThere(o *problems.Option, show bool) app.UI {
	if !show {
		return app.Div().Hidden(true)
	}
	s, ok := slipOf(w.bench.p, o.Step, o.Slip)
	if !ok {
		return app.Div().Body(app.P().Text("The lines lead to another answer. Work them one by one to see where it turns."))
	}
	p := w.bench.p
	return app.Div().Class("finding").Body(
		app.P().Text(fmt.Sprintf("This comes from a slip on line %d, %s.", o.Step+1, p.Fill(p.Steps[o.Step].Says, p.Env()))),
		explained(s, "What was done there"),
	)
}

func (w *work) onAnswer(ctx app.Context, e app.Event) {
	i := indexOf(ctx.JSSrc())
	if i < 0 || i >= len(w.bench.options) {
		return
	}
	if w.task.silent() {
		w.choose(ctx, i)
		return
	}
	w.bench.tap(i)
	w.note(ctx)
	if !w.bench.hit() {
		w.said = "Not right: see the slip that leads there."
		w.after(ctx, func() { bring("answer-card-" + strconv.Itoa(i)) })
		return
	}
	w.said = "Right. " + w.bench.options[i].Text
	w.compare = true
	w.picture = draw.Problem(w.bench.p, true)
	w.after(ctx, func() { lookAt(-1) })
}

// bring shows an element whole.
func bring(id string) {
	if el := app.Window().GetElementByID(id); el.Truthy() {
		el.Call("scrollIntoView", map[string]any{"block": "nearest"})
	}
}
