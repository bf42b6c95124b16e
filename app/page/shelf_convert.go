package page

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/solver/unit"
)

// converter reads a quantity and tells it in every unit of its kind.
type converter struct {
	imperial bool
	fault    string
	rows     [][]string
	said     string
}

// convert reads what was typed; nothing is no fault.
func (c *converter) convert(text string) {
	c.fault, c.rows, c.said = "", nil, ""
	if strings.TrimSpace(text) == "" {
		return
	}
	q, err := unit.ReadWith(text, unit.Options{Imperial: c.imperial})
	if err != nil {
		c.fault = "A number with its unit was expected, such as 62 psi or 8'-10\"."
		return
	}
	if q.Unit.IsNumber() {
		c.fault = "Write the unit beside the number: 62 psi, 140 °F, 30 gpm."
		return
	}
	for _, u := range unit.Units(q.Unit.Dim) {
		if v := q.In(u); u.Name != q.Unit.Name && v == v && u.Zero == q.Unit.Zero {
			c.rows = append(c.rows, []string{unit.Format(steady(v), 5), u.Name})
		}
	}
	if len(c.rows) == 0 {
		c.fault = "There is no other unit for " + q.Unit.Name + " here."
		return
	}
	c.said = q.Text(5) + " is " + c.rows[0][0] + " " + c.rows[0][1] + ", and the others below."
}

// steady takes away what floating point leaves in the last places, so that a
// round number prints as one.
func steady(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 9, 64), 64)
	if err != nil {
		return v
	}
	return r
}

func (c *converter) onConvert(ctx app.Context, e app.Event) { c.convert(chosen(ctx)) }

// box is where it is typed, and the list below it.
func (c *converter) box(hidden bool) app.UI {
	var list []app.UI
	for _, r := range c.rows {
		list = append(list, app.Div().Body(app.Dt().Text(r[1]), app.Dd().Text(r[0])))
	}
	return app.Section().Class("convert").Hidden(hidden).Body(
		app.Label().For("convert").Text("Convert a number with its unit"),
		app.Input().Class("box").ID("convert").Type("text").Attr("maxlength", 60).Attr("autocapitalize", "off").Spellcheck(false).AutoComplete(false).
			Placeholder("62 psi").Aria("invalid", c.fault != "").Aria("describedby", "convert-says").OnInput(c.onConvert),
		app.P().ID("convert-says").Class("aside").Attr("role", "status").Text(c.fault+c.said),
		app.Dl().Class("told").ID("converted").Hidden(len(list) == 0).Body(list...),
	)
}
