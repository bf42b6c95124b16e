package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/solver/formula"
)

// workedOut is the full working beside one's own lines.
func (w *work) workedOut() app.UI {
	if !w.compare {
		return app.Section().Class("worked").Hidden(true)
	}
	lines := w.bench.solved().Worked()
	var list []app.UI
	for i := range lines {
		list = append(list, w.workedLine(i, &lines[i]))
	}
	return app.Section().Class("worked").Aria("label", "The full working").Body(
		app.H2().Text("The full working"),
		app.Ol().Body(list...),
	)
}

func (w *work) workedLine(i int, l *problems.Line) app.UI {
	own := w.bench.own(i)
	if own == "" {
		own = "nothing written"
	}
	return app.Li().Body(
		app.P().Class("says").Body(app.Span().Class("number").Text(strconv.Itoa(i+1)), app.Span().Text(l.Says)),
		app.Div().Class("side").Body(
			app.Div().Class("own").Hidden(!written(w.bench.sheet.Kind)).Body(app.Span().Class("who").Text("Yours"), app.Span().Class("value").Text(own)),
			app.Div().Class("theirs").Body(
				app.Span().Class("who").Text("Worked"),
				app.P().Class("formula").TabIndex(stop(l.Symbols)).Body(mathOf(l.Expr)),
				app.P().Class("formula").TabIndex(stop(l.Numbers+l.Value)).Body(app.Span().Text("= "), numbersOf(l), app.Strong().Class("value").Text(" = "+l.Value)),
			),
		),
		app.Details().Class("why").Body(app.Summary().Text("Why is this line so?"), app.P().Text(l.Why)),
	)
}

// numbersOf is the line with its numbers put in, laid out where it reads as
// an expression.
func numbersOf(l *problems.Line) app.UI {
	e, err := formula.Parse(l.Numbers)
	if err != nil {
		return app.Span().Text(l.Numbers)
	}
	return mathOf(e)
}
