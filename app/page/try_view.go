package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// tryGroups are the figures as they are asked for, group by group.
var tryGroups = []struct {
	title string
	names []string
}{
	{"Street", []string{"street", "low"}},
	{"Floors", []string{"storeys", "floor", "first", "below"}},
	{"Fixtures", []string{"suites", "risers"}},
	{"Water entry", []string{"meter", "backflow", "strainer"}},
	{"Pumps", []string{"booster", "boost", "lifts", "tank"}},
	{"Zones", []string{"zoned", "falloff"}},
	{"Hot water", []string{"heater", "volume", "input", "hot", "mixed", "ownplant", "loop"}},
}

// open groups stand open on arrival.
const tryOpen = 3

// boxes are the figures that have a box.
func (t *tryPage) boxes() []string {
	var list []string
	for _, g := range tryGroups {
		list = append(list, g.names...)
	}
	for i := range t.valves() {
		list = append(list, "set-"+strconv.Itoa(i))
	}
	return list
}

func (t *tryPage) valves() []solver.Zone {
	if t.whole == nil {
		return nil
	}
	var list []solver.Zone
	for _, z := range t.whole.Building.Zones {
		if z.Valve != nil {
			list = append(list, z)
		}
	}
	return list
}

// Render shows the figures beside what they make.
func (t *tryPage) Render() app.UI {
	return frame("try", t.notices,
		heading("Try a building"),
		t.templates(),
		app.Div().Class("try").Body(
			app.Div().Class("figures").Body(t.groups()...),
			app.Div().Class("results").Body(t.results()...),
		),
		app.Div().Class("try-bar").Body(
			app.P().Attr("role", "status").ID("try-says").Text(t.said),
		),
	)
}

func (t *tryPage) templates() app.UI {
	var list []app.UI
	for _, tm := range solver.Templates {
		list = append(list, app.Button().Class("button").Type("button").Text(tm.Name).OnClick(t.onTemplate(tm.Name), tm.Name))
	}
	for i, s := range t.saved.List {
		list = append(list, app.Span().Class("kept").Body(
			app.Button().Class("button").Type("button").Text(s.Name).OnClick(t.onOpen(i), s.Name),
			app.Button().Class("button").Type("button").Aria("label", "take away "+s.Name).Text("×").OnClick(t.onDrop(i), s.Name),
		))
	}
	return app.Div().Class("try-templates").Attr("role", "group").Aria("label", "Begin with").Body(list...)
}

func (t *tryPage) groups() []app.UI {
	var list []app.UI
	for i, g := range tryGroups {
		var rows []app.UI
		for _, name := range g.names {
			rows = append(rows, t.row(name))
		}
		if g.title == "Zones" {
			for i, z := range t.valves() {
				rows = append(rows, t.stepped("set-"+strconv.Itoa(i), "valve of zone "+z.Name))
			}
		}
		list = append(list, app.Details().Class("group").Open(i < tryOpen).Body(
			app.Summary().Text(g.title),
			app.Div().Body(rows...),
		))
	}
	return list
}

func (t *tryPage) row(name string) app.UI {
	f, _ := solver.OutlineFieldNamed(name)
	says := f.Says
	if name == "suites" {
		says = solver.SuiteOf(t.outline.Use).Name + " a floor"
	}
	switch t.outline.Text(name, t.house.System) {
	case "yes", "no":
		return app.Label().Class("yes").Body(
			app.Input().Type("checkbox").ID("try-"+name).Checked(t.outline.Text(name, t.house.System) == "yes").OnChange(t.onYes(name), name),
			app.Span().Text(says),
		)
	}
	return t.stepped(name, says)
}

// stepped is a box with a button on each side.
func (t *tryPage) stepped(name, says string) app.UI {
	id, fault := "try-"+name, t.faults[name]
	return app.Div().Class("stepped").Body(
		app.Label().For(id).Text(says),
		app.Div().Body(
			app.Button().Type("button").Class("step").Aria("label", "less: "+says).Text("−").OnClick(t.onStep(name, -1), name),
			app.Input().Class("box").ID(id).Type("text").Attr("inputmode", "text").Attr("maxlength", 24).AutoComplete(false).
				Placeholder(t.worked(name)).Aria("invalid", strconv.FormatBool(fault != "")).Aria("describedby", id+"-fault").OnInput(t.onType(name), name),
			app.Button().Type("button").Class("step").Aria("label", "more: "+says).Text("+").OnClick(t.onStep(name, 1), name),
		),
		app.P().Class("fault").ID(id+"-fault").Text(fault),
	)
}

func (t *tryPage) results() []app.UI {
	if t.whole == nil {
		return []app.UI{app.P().Class("fault").ID("try-refused").Text(t.refused)}
	}
	return []app.UI{
		app.P().Class("fault").ID("try-refused").Text(t.refusedText()),
		t.findings(),
		t.levels(),
		t.working(),
		&riser{Scene: t.riser},
		&riser{Scene: t.profile},
		t.plant(),
		t.keeping(),
	}
}

func (t *tryPage) refusedText() string {
	if t.refused == "" {
		return ""
	}
	return t.refused + " Shown is the last building that could be."
}

// findings are the limits not kept.
func (t *tryPage) findings() app.UI {
	list := t.whole.Findings
	if len(list) == 0 {
		return app.P().Class("kept-all").Text("✓ Every limit of " + t.whole.Case.Profile.Name + " is kept.")
	}
	var rows []app.UI
	for _, f := range list {
		rows = append(rows, app.Li().Text("! "+problems.Sentence(f.Says)+"."))
	}
	return app.Details().Class("findings").Open(len(list) < 6).Body(
		app.Summary().Text(limitsText(len(list))),
		app.Ul().Body(rows...),
	)
}

func limitsText(n int) string {
	if n == 1 {
		return "1 limit is not kept"
	}
	return strconv.Itoa(n) + " limits are not kept"
}

// say is a quantity in the units of the house.
func (t *tryPage) say(v float64, m *measure.Of, figures int) string {
	u := m.Unit(t.house.System)
	return u.Of(u.FromSI(v)).Text(figures)
}

// levels is a row for each level, the highest first.
func (t *tryPage) levels() app.UI {
	w := t.whole
	unitName := measure.Pressure.Unit(t.house.System).Name
	head := []app.UI{app.Th().Scope("col").Text("Level"), app.Th().Scope("col").Text("No flow, lowest outlet"), app.Th().Scope("col").Text("Flowing, highest outlet"), app.Th().Scope("col").Text("Hot, flowing"), app.Th().Scope("col").Text("Riser")}
	bad := map[int]string{}
	for _, f := range w.Findings {
		if f.Level >= 0 {
			bad[f.Level] = f.Limit
		}
	}
	var rows []app.UI
	for i := len(w.Floors) - 1; i >= 0; i-- {
		f := w.Floors[i]
		if f.Zone < 0 {
			continue
		}
		label := w.Building.Levels[i].Label
		name := label
		if bad[i] != "" {
			name += " !"
		}
		if i == w.Street.FirstLow {
			name += " ↓"
		}
		hot := app.UI(app.Td().Text("–"))
		if f.Hot != nil {
			hot = app.Td().Body(t.number(asked{i, "design", true}, f.Hot.Highest.Design, "hot, flowing, level "+label))
		}
		speed := "–"
		if from := w.Stretches[f.Cold.Stretch].From; from >= 0 && w.Stretches[from].Tube != nil {
			s := w.Stretches[from]
			speed = s.Tube.Nominal + " in, " + t.say(float64(s.Velocity), &measure.Velocity, 2)
		}
		rows = append(rows, app.Tr().Body(
			app.Th().Scope("row").Text(name),
			app.Td().Body(t.number(asked{i, "none", false}, f.Cold.Lowest.NoFlow, "no flow, level "+label)),
			app.Td().Body(t.number(asked{i, "design", false}, f.Cold.Highest.Design, "flowing, level "+label)),
			hot,
			app.Td().Class("pipe").Text(speed),
		))
	}
	return app.Section().Class("levels").Aria("labelledby", "try-levels").Body(
		app.H2().ID("try-levels").Text("Pressures in "+unitName),
		app.P().Class("aside").Text("Tap a number to see how it is worked out. ↓ is the first floor that the street alone leaves short; ! marks a limit that is not kept."),
		app.Div().Class("table").TabIndex(0).Attr("role", "region").Aria("label", "Every floor").Body(app.Table().Body(app.THead().Body(app.Tr().Body(head...)), app.TBody().Body(rows...))),
	)
}

func (t *tryPage) number(a asked, p unit.Pressure, says string) app.UI {
	u := measure.Pressure.Unit(t.house.System)
	text := unit.Format(roundTo(u.FromSI(float64(p)), 1), 6)
	return app.Button().Type("button").Class("number").Aria("label", says+": "+text+", how it is worked out").Aria("expanded", strconv.FormatBool(t.asked == a)).
		Text(text).OnClick(t.onAsk(a), a.state+strconv.Itoa(a.level)+strconv.FormatBool(a.hot))
}

// plant is what pumps, valves, heater and loops do, in lines.
func (t *tryPage) plant() app.UI {
	w := t.whole
	line := func(name, says string) app.UI { return app.Div().Body(app.Dt().Text(name), app.Dd().Text(says)) }
	press := func(p unit.Pressure) string { return t.say(roundedTo(p, t.house.System), &measure.Pressure, 3) }
	list := []app.UI{line("Demand", t.say(float64(w.Demand), &measure.FlowRate, 3)+" of "+unit.Format(roundTo(w.Load.Total, 1), 6)+" fixture units")}
	for _, p := range w.Pumps {
		list = append(list, line(problems.Sentence(p.Name), t.say(float64(p.Flow), &measure.FlowRate, 3)+", "+press(p.Suction.Design)+" in, "+press(p.Discharge.Design)+" out; "+press(p.Discharge.NoFlow)+" out with no flow"))
	}
	for _, v := range w.Valves {
		list = append(list, line("Valve of zone "+w.Building.Zones[v.Zone].Name, "set to "+press(v.Setting)+", "+press(v.Inlet.NoFlow)+" before it, "+press(v.Outlet.Design)+" behind it flowing"))
	}
	if h := w.Hot; h != nil {
		list = append(list,
			line("Hot water of a day", t.say(float64(h.Day), &measure.Tank, 3)+"; at the busiest "+t.say(float64(h.Lowest), &measure.Tank, 3)+" are left hot"),
			line("Recovery", t.say(float64(h.Recovery), &measure.FlowRate, 3)+", the heater runs "+unit.Format(roundTo(h.Store.Running, 1), 3)+" h a day"))
		for _, p := range h.Plants {
			list = append(list, line("Heater of zone "+w.Building.Zones[p.Zone].Name, "stands under "+press(p.Working)+"; expansion tank "+t.say(float64(p.Tank), &measure.Tank, 2)))
		}
	}
	for _, l := range w.Loops {
		list = append(list, line("Return of zone "+w.Building.Zones[l.Zone].Name, t.say(float64(l.Flow), &measure.FlowRate, 2)+", head "+t.say(float64(l.Head), &measure.Height, 3)+", "+t.say(float64(l.Supply), &measure.Temp, 3)+" out, "+t.say(float64(l.Return), &measure.Temp, 3)+" back"))
	}
	return app.Section().Aria("labelledby", "try-plant").Body(app.H2().ID("try-plant").Text("What the devices do"), app.Dl().Class("plant").Body(list...))
}

// roundedTo is a pressure to the whole psi or kPa.
func roundedTo(p unit.Pressure, s unit.System) float64 {
	u := measure.Pressure.Unit(s)
	return u.SI(roundTo(u.FromSI(float64(p)), 0))
}

func (t *tryPage) keeping() app.UI {
	return app.Section().Class("keeping").Body(
		app.Button().Class("button").Type("button").ID("try-keep").Text("Keep this building").OnClick(t.onKeep),
		app.Button().Class("button").Type("button").ID("try-share").Text("Copy its link").OnClick(t.onShare),
		app.A().Class("switch").ID("try-link").Href(link(tryPath)+"?"+triedQuery(*t.built, t.house.System)).Text("Link to this building"),
	)
}
