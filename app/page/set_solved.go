package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/marking"
	"riserwork/problems/sets"
)

// solved is the full working of a task with what earns each mark, for an
// instructor.
func solved(t *sets.Task) []app.UI {
	var list []app.UI
	if t.Question != nil {
		return append(questionOn(t, true), app.P().Class("aside").Text(worthText(t)))
	}
	switch t.Kind {
	case sets.Mistake:
		for k, l := range t.Planted.Lines {
			if k == t.Planted.Wrong {
				l += "  ✗ the mistake to find: " + t.Planted.Slip
			}
			list = append(list, app.P().Text(fmt.Sprintf("%d. %s", k+1, l)))
		}
	case sets.Choice:
		for _, o := range t.Options {
			text := "☐ " + o.Text
			if o.Right {
				text = "☑ " + o.Text
			} else if o.Slip != "" {
				text += ", from the slip " + o.Slip
			}
			list = append(list, app.P().Text(text))
		}
	}
	scheme := marking.Scheme(t.Problem)
	var lines []app.UI
	for i, l := range t.Worked() {
		taken := ""
		if s := scheme[i]; s.From != s.To {
			taken = "taken from " + s.From + " to " + s.To
		}
		lines = append(lines, app.Li().Body(
			app.Strong().Text(l.Says),
			app.P().Text(l.Symbols+" = "+l.Numbers+" = "+l.Value),
			app.P().Class("aside").Hidden(taken == "").Text(taken),
		))
	}
	list = append(list, app.Ol().Class("solved").Body(lines...))
	return append(list, app.P().Class("aside").Text(worthText(t)))
}

// worthText says what earns the marks.
func worthText(t *sets.Task) string {
	switch t.Kind {
	case sets.Choice:
		return "1 mark, for the first answer tapped."
	case sets.Mistake:
		return "1 mark for the wrong line found at the first tap, 1 for the line in its place."
	}
	if t.Question != nil {
		if t.Worth() == 2 {
			return "1 mark for the place, 1 for the reason."
		}
		return "1 mark for the right answer, checked once."
	}
	return fmt.Sprintf("%d marks: each line has one for its method and one for its value.", t.Worth())
}
