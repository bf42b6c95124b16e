package page

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// offers are the other things to do, beside today's work and single skills.
var offers = []struct{ id, path, text, note string }{
	{"paper", paperPath, "A whole building", "8 to 15 linked sums, from the street to the hot water"},
	{"exam", examPath, "Mock paper", "Many questions against the clock, as an exam asks them"},
	{"reason", reasonPath, "Devices and reasons", "What each thing is for, and what is wrong in a drawing"},
	{"walk", walkPath, "Follow the water", "From the street to the top and round the loop, device by device"},
	{"try", tryPath, "Try a building", "Change a number and see what follows on every floor"},
}

// offered shows them as a list of large links.
func offered() app.UI {
	var list []app.UI
	for _, o := range offers {
		list = append(list, app.Li().Body(
			app.A().ID(o.id).Class("offer").Href(link(o.path)).Body(
				app.Strong().Text(o.text),
				app.Span().Text(o.note),
			),
		))
	}
	return app.Nav().Aria("label", "More to do").Body(app.Ul().Class("offers").Body(list...))
}
