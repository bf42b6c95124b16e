package page

import (
	"math"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// tryStep is a line of the working: what is added or taken, and what is left.
type tryStep struct {
	says   string
	change unit.Pressure
	left   unit.Pressure
}

// working shows how the number asked about is worked out.
func (t *tryPage) working() app.UI {
	a := t.asked
	if a.level < 0 || t.whole == nil || t.whole.Floors[a.level].Zone < 0 || a.hot && t.whole.Floors[a.level].Hot == nil {
		return app.Section().Hidden(true)
	}
	label := t.whole.Building.Levels[a.level].Label
	title := "Level " + label + ", lowest outlet, no flow"
	switch {
	case a.hot:
		title = "Level " + label + ", highest outlet, hot, flowing"
	case a.state == "design":
		title = "Level " + label + ", highest outlet, flowing"
	}
	var rows []app.UI
	for _, s := range t.steps() {
		rows = append(rows, app.Tr().Body(
			app.Th().Scope("row").Text(problems.Sentence(s.says)),
			app.Td().Text(t.signed(s.change)),
			app.Td().Text(t.psi(s.left)),
		))
	}
	unitName := measure.Pressure.Unit(t.house.System).Name
	return app.Section().Class("sum").ID("try-working").TabIndex(-1).Aria("labelledby", "try-worked").Body(
		app.H2().ID("try-worked").Text(title),
		app.Div().Class("table").TabIndex(0).Attr("role", "region").Aria("label", "The working").Body(app.Table().Body(
			app.THead().Body(app.Tr().Body(app.Th().Scope("col").Text("From the street"), app.Th().Scope("col").Text(unitName), app.Th().Scope("col").Text("left"))),
			app.TBody().Body(rows...),
		)),
		t.rule(),
		app.Button().Type("button").Class("button").ID("try-close").Text("Close").OnClick(t.onAsk(asked{level: -1})),
	)
}

// rule is the reason, as the card of the rule has it.
func (t *tryPage) rule() app.UI {
	id := "floor-pressure"
	s, ok := skills.ByID(id)
	if !ok || len(s.Rules) == 0 {
		return app.P().Hidden(true)
	}
	return app.P().Class("aside").Body(
		app.Text(s.Holds+" "),
		app.A().Href(cardURL(s)).Text("The rule: "+s.Title),
	)
}

// steps follows the water from the street, or the last tank, to the outlet;
// what a riser does from floor to floor is one line.
func (t *tryPage) steps() []tryStep {
	w, a := t.whole, t.asked
	out, of := w.Floors[a.level].Cold, func(p solver.Pressures) unit.Pressure { return p.NoFlow }
	high := w.Building.LowOutlet
	street, says := w.Building.Street.Static, "street pressure"
	if a.state == "design" {
		of, high = func(p solver.Pressures) unit.Pressure { return p.Design }, w.Building.HighOutlet
		street, says = w.Case.Street, "street pressure at the busy hour"
	}
	end := of(out.Lowest)
	if a.hot {
		out = *w.Floors[a.level].Hot
	}
	if a.state == "design" {
		end = of(out.Highest)
	}
	var path []int
	for i := out.Stretch; i >= 0; i = w.Stretches[i].From {
		path = append(path, i)
		if w.Stretches[i].Kind == solver.TankStretch {
			break
		}
	}
	list := []tryStep{{says, 0, street}}
	left := street
	at := w.Building.Street.GaugeAt
	var rise unit.Length
	var friction unit.Pressure
	flush := func() {
		if math.Abs(float64(rise)) > 1e-9 {
			change := -w.Case.Gamma.OfColumn(rise)
			left += change
			list = append(list, tryStep{t.riseText(rise, w.Case.Gamma), change, left})
		}
		if friction != 0 {
			left -= friction
			list = append(list, tryStep{"friction of pipe and fittings", -friction, left})
		}
		rise, friction = 0, 0
	}
	for k := len(path) - 1; k >= 0; k-- {
		s := w.Stretches[path[k]]
		if s.Kind == solver.TankStretch {
			left, at = of(s.At), s.End
			list = []tryStep{{s.Name, 0, left}}
			continue
		}
		rise += s.End - at
		at = s.End
		device := s.Kind == solver.EntryStretch || s.Kind == solver.PumpStretch || s.Kind == solver.ValveStretch || s.Kind == solver.HeaterStretch
		if !device {
			if a.state == "design" {
				friction += s.Loss
			}
			continue
		}
		flush()
		change := of(s.At) - left
		if math.Abs(float64(change)) > 0.5 || s.Kind == solver.ValveStretch {
			left = of(s.At)
			list = append(list, tryStep{s.Name, change, left})
		}
	}
	rise += high
	flush()
	list[len(list)-1].left = end
	return list
}

// riseText is a height with the sum that it is in.
func (t *tryPage) riseText(rise unit.Length, gamma unit.Gradient) string {
	dir := " up"
	if rise < 0 {
		dir = " down"
	}
	per := &measure.Of{US: "psi/ft", SI: "kPa/m"}
	return t.say(math.Abs(float64(rise)), &measure.Height, 4) + dir + " × " + t.say(float64(gamma), per, 3)
}

func (t *tryPage) psi(p unit.Pressure) string {
	return unit.Format(roundTo(measure.Pressure.Unit(t.house.System).FromSI(float64(p)), 1), 6)
}

func (t *tryPage) signed(p unit.Pressure) string {
	text := t.psi(p)
	switch {
	case p == 0:
		return ""
	case !strings.HasPrefix(text, "−"):
		return "+" + text
	}
	return text
}

// roundTo is v to so many places.
func roundTo(v float64, places int) float64 {
	scale := math.Pow(10, float64(places))
	return math.Round(v*scale) / scale
}
