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
	rows := []app.UI{
		limitRow("Static pressure", p.StaticMax),
		limitRow("Left at the top", p.TopMin),
		limitRow("At a shower", p.ShowerMin),
		limitRow("Recirculation", recirculation(p)),
		limitRow("Hot water at a shower or bath", p.FixtureHot),
		limitRow("Warmed water", p.ExpansionCap),
		limitRow("At the booster's inlet", p.SuctionMin),
	}
	return app.Details().Class("limits").Body(
		app.Summary().Text("Limits of "+p.Name+", "+p.Edition),
		app.P().Text("Amended locally: the code in force where you work, and the authority there, decide. A figure from memory was recalled and not read off the code; look it up."),
		app.Ul().Body(rows...),
	)
}

// recirculation is the rule as a limit; a rule that counts only storeys has
// its words all the same.
func recirculation(p *solver.Profile) solver.Limit {
	l := p.Recirculation.Length
	l.Words = p.Recirculation.Words
	return l
}

func limitRow(title string, l solver.Limit) app.UI {
	where := "section " + l.Section
	switch {
	case l.None && l.Section == "":
		where = "no such rule"
	case l.None:
		where = "no number in section " + l.Section
	case l.Section == "":
		where = "no section"
	}
	return app.Li().Body(
		app.Strong().Text(title),
		app.Span().Class("words").Text(l.Words),
		app.Span().Class("where").Text(where+"; "+string(l.Confidence)),
	)
}
