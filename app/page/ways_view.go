package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/marking"
)

// otherKinds offers a fresh problem of the skill, worked in another way.
func (w *work) otherKinds() app.UI {
	var list []app.UI
	for _, k := range kinds {
		if k.name == w.bench.sheet.Kind {
			continue
		}
		a := w.address
		a.kind, a.seed, a.house, a.earlier, a.givens = k.name, a.seed+1, w.own, "", nil
		list = append(list, app.Li().Body(
			app.A().Href(a.url()).DataSet("kind", k.name).Text(k.text),
			app.Span().Class("note").Text(k.note),
		))
	}
	return app.Details().Class("others").Body(
		app.Summary().Text("Work another one differently"),
		app.Ul().Body(list...),
	)
}

// scheme is the mark scheme, once the sheet was marked.
func (w *work) scheme() app.UI {
	if !w.bench.sheet.Marked || w.task != nil && !w.bench.sheet.Done {
		return app.Details().Class("scheme").Hidden(true)
	}
	var list []app.UI
	for _, l := range marking.Scheme(w.bench.solved()) {
		taken := l.Value
		if l.From != l.To {
			taken += ", and from " + l.From + " to " + l.To + " where lines before it were rounded"
		}
		list = append(list, app.Li().Body(
			app.Strong().Text(l.Says),
			app.P().Text("1 mark for the method: "+l.Method),
			app.P().Text("1 mark for the value: "+taken),
		))
	}
	return app.Details().Class("scheme").Body(
		app.Summary().Text("Mark scheme, for an instructor"),
		app.P().Text("A wrong number that is carried on rightly loses its mark once. Units and rounding lose one mark at most in a problem."),
		app.Ol().Body(list...),
	)
}
