package page

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
)

// silentAnswer is an answer to choose in a set without help: it is shown as
// chosen, and nothing more.
func (w *work) silentAnswer(i int, o *problems.Option) app.UI {
	return app.Li().Class("line", "given").ID("answer-card-" + strconv.Itoa(i)).Body(
		app.Button().Type("button").Class("planted", "option").ID("answer-"+strconv.Itoa(i)).DataSet("line", i).
			Aria("pressed", i == w.bench.chosen()).Text(chosenText(o.Text, i == w.bench.chosen())).OnClick(w.onAnswer),
	)
}

func chosenText(text string, chosen bool) string {
	if chosen {
		return "● " + text
	}
	return text
}

// silentPlanted is a line that may be the wrong one, with room for the line
// in its place once it is chosen.
func (w *work) silentPlanted(i int) app.UI {
	b := w.bench
	chosen := i == b.chosen()
	body := []app.UI{
		app.P().Class("says").Body(
			app.Span().Class("number").Text(strconv.Itoa(i+1)),
			app.Span().Text(w.label(i)),
		),
		app.Button().Type("button").Class("planted").ID("planted-"+strconv.Itoa(i)).DataSet("line", i).Aria("pressed", chosen).
			Aria("label", fmt.Sprintf("Line %d: %s", i+1, b.planted.Lines[i])).Text(chosenText(b.planted.Lines[i], chosen)).OnClick(w.onPlanted),
	}
	if chosen {
		body = append(body, app.Ol().Class("lines", "instead").Aria("label", "In its place").Body(w.line(i)))
	}
	return app.Li().Class("line", "given").Body(body...)
}

// choose notes what is chosen in a set without help.
func (w *work) choose(ctx app.Context, i int) {
	w.bench.choose(i)
	w.save(ctx)
	w.said = fmt.Sprintf("Chosen: %d. You may choose another until you hand in.", i+1)
	if w.bench.sheet.Kind == mistake {
		w.goTo(ctx, i)
	}
}
