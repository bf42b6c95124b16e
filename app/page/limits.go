package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/solver"
)

// limits are the limits of the chosen code, with where they stand and how
// they are known.
func limits(h problems.House) app.UI {
	p := h.Profile()
	var rows []app.UI
	for _, l := range p.Limits() {
		rows = append(rows, limitRow(l))
	}
	return app.Details().Class("limits").Body(
		app.Summary().Text("Limits of "+p.Name+", "+p.Edition),
		app.P().Text("Amended locally: the code in force where you work, and the authority there, decide. A figure from memory was recalled and not read off the code; look it up."),
		app.Ul().Body(rows...),
	)
}

func limitRow(l solver.Named) app.UI {
	return app.Li().Body(
		app.Strong().Text(l.Title),
		app.Span().Class("words").Text(l.Words),
		app.Span().Class("where").Text(l.Where()+"; "+string(l.Confidence)),
	)
}
