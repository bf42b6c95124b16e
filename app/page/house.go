package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// rules is the page of the house rules: how one's school works. They hold for
// new problems; one under way keeps those it was drawn with.
type rules struct {
	app.Compo

	house   problems.House
	look    look
	top     string // the pressure at the top, as typed
	topSays string // what is wrong with it
	notices []string
	said    string
}

// OnNav reads what is saved.
func (r *rules) OnNav(ctx app.Context) {
	var says string
	r.house, says = loadHouse(ctx.LocalStorage())
	r.notices = []string{says}
	r.look = loadLook(ctx.LocalStorage())
	r.top, r.topSays, r.said = topText(r.house), "", ""
	arrive(ctx, "house", "House rules · Riserwork")
	ctx.Defer(r.sync)
}

func topText(h problems.House) string {
	if h.TopMin == 0 {
		return ""
	}
	return strconv.FormatFloat(h.TopMin, 'g', -1, 64)
}

// topID is the box of the pressure at the top.
const topID = "top-min"

// sync puts the pressure into its box, which is left to the browser while
// somebody types.
func (r *rules) sync(app.Context) {
	if el := app.Window().GetElementByID(topID); el.Truthy() && el.Get("value").String() != r.top {
		el.Set("value", r.top)
	}
}

// Render shows the rules to choose.
func (r *rules) Render() app.UI {
	return frame("house", r.notices,
		heading("House rules"),
		app.P().Text("Work as your school works. New problems follow these rules; an open problem keeps those it was drawn with. Changes are saved at once."),
		r.systems(),
		r.gallons(),
		r.profiles(),
		r.topMin(),
		r.constants(),
		r.alone(),
		r.looks(),
		app.P().Class("unseen").Attr("role", "status").Text(r.said),
	)
}

// option is one of a group to choose from.
type option struct{ value, text, note string }

// group is a question with one answer.
func group(name, title, chosen string, list []option, h app.EventHandler) app.UI {
	rows := []app.UI{app.Legend().Text(title)}
	for _, o := range list {
		rows = append(rows, app.Label().Class("pick").Body(
			app.Input().Type("radio").Name(name).Value(o.value).Checked(o.value == chosen).OnChange(h),
			app.Span().Class("name").Text(o.text),
			app.If(o.note != "", app.Span().Class("note").Text(o.note)),
		))
	}
	return app.FieldSet().Body(rows...)
}

func (r *rules) systems() app.UI {
	return group("units", "Units", string(r.house.System), []option{
		{string(unit.US), "US", "psi, feet, gallons, °F"},
		{string(unit.Metric), "Metric", "kPa, metres, litres, °C"},
		{string(unit.Mixed), "Mixed, as in Canada", "heights and code in metric; gauges and plates read US and are converted first"},
	}, r.onSystem)
}

func (r *rules) gallons() app.UI {
	chosen := "us"
	if r.house.Imperial {
		chosen = "imperial"
	}
	return group("gal", "A gallon without a word before it", chosen, []option{
		{"us", "US gallon", "3.785 L"},
		{"imperial", "Imperial gallon", "4.546 L"},
	}, r.onGallons)
}

func (r *rules) profiles() app.UI {
	var list []option
	for i := range solver.Profiles {
		p := &solver.Profiles[i]
		list = append(list, option{p.ID, p.Name, p.Edition})
	}
	return app.Div().Class("code").Body(
		group("code", "Code", r.house.Code, list, r.onCode),
		limits(r.house),
	)
}

func (r *rules) topMin() app.UI {
	p := r.house.Profile()
	return app.FieldSet().Body(
		app.Legend().Text("Pressure to keep at the highest outlet"),
		app.Label().For(topID).Text("In "+topUnit(r.house.System)+"; empty means that of the code, "+p.TopMin.Value(r.house.System).Text(3)),
		app.Input().Class("box", "short").ID(topID).Type("text").Attr("inputmode", "decimal").Attr("maxlength", 8).
			AutoComplete(false).Aria("invalid", r.topSays != "").Aria("describedby", "top-says").OnInput(r.onTop),
		app.P().Class("fault").ID("top-says").Aria("live", "polite").Text(r.topSays),
	)
}

// constants are the figures that are taught in more than one rounding.
func (r *rules) constants() app.UI {
	rows := []app.UI{
		app.Summary().Text("Figures as your school rounds them"),
		app.P().Text("All sensible roundings are accepted in your lines. This chooses the one that problems show."),
	}
	for _, c := range solver.Constants {
		list := roundings(c, r.house.System)
		if len(list) < 2 {
			continue
		}
		id := "constant-" + c.Name
		var options []app.UI
		for _, text := range list {
			options = append(options, app.Option().Value(text).Text(text).Selected(text == taught(r.house, c)))
		}
		rows = append(rows, app.Div().Class("constant").Body(
			app.Label().For(id).Text(c.SaysIn(r.house.System)),
			app.Select().ID(id).DataSet("constant", c.Name).OnChange(r.onConstant, c.Name).Body(options...),
			app.Span().Class("unit").Text(c.In(r.house.System).Unit),
		))
	}
	return app.Details().Class("constants").Body(rows...)
}

// alone is what an answer earns that has no working beside it.
func (r *rules) alone() app.UI {
	return group("alone", "An answer without its working earns", string(r.house.Alone), []option{
		{string(problems.AloneValues), "The marks for values", "those for methods are for what is shown"},
		{string(problems.AloneAll), "All marks", ""},
		{string(problems.AloneNone), "No marks", ""},
	}, r.onAlone)
}

func (r *rules) looks() app.UI {
	return app.Div().Body(
		group("theme", "Light or dark", r.look.Theme, []option{
			{"", "As the device", ""}, {"light", "Light", ""}, {"dark", "Dark", ""},
		}, r.onTheme),
		group("keys", "Keys for writing a line", r.look.Keys, []option{
			{"", "These keys on a touch screen", ""}, {"ours", "These keys always", "digits, operators, feet and inches"}, {"device", "Those of the device always", ""},
		}, r.onKeys),
	)
}

// set keeps changed rules.
func (r *rules) set(ctx app.Context, h problems.House) {
	r.house = h
	r.top, r.topSays = topText(h), ""
	r.kept(keepHouse(ctx.LocalStorage(), h))
	ctx.Defer(r.sync)
}

func (r *rules) kept(says string) {
	r.said = "Saved."
	if says != "" {
		r.notices, r.said = append(r.notices, says), ""
	}
}

func chosen(ctx app.Context) string { return ctx.JSSrc().Get("value").String() }

func (r *rules) onSystem(ctx app.Context, e app.Event) {
	r.set(ctx, withSystem(r.house, unit.System(chosen(ctx))))
}

func (r *rules) onGallons(ctx app.Context, e app.Event) {
	h := r.house
	h.Imperial = chosen(ctx) == "imperial"
	r.set(ctx, h)
}

func (r *rules) onCode(ctx app.Context, e app.Event) {
	h := r.house
	h.Code = chosen(ctx)
	r.set(ctx, sound(h))
}

func (r *rules) onAlone(ctx app.Context, e app.Event) {
	h := r.house
	h.Alone = problems.Alone(chosen(ctx))
	r.set(ctx, sound(h))
}

func (r *rules) onConstant(ctx app.Context, e app.Event) {
	r.set(ctx, withConstant(r.house, ctx.JSSrc().Get("dataset").Get("constant").String(), chosen(ctx)))
}

func (r *rules) onTop(ctx app.Context, e app.Event) {
	r.top = chosen(ctx)
	h, fault := withTop(r.house, r.top)
	r.topSays = fault
	if fault == "" {
		r.house = h
		r.kept(keepHouse(ctx.LocalStorage(), h))
	}
}

func (r *rules) onTheme(ctx app.Context, e app.Event) {
	r.look.Theme = chosen(ctx)
	r.kept(keepLook(ctx.LocalStorage(), r.look))
	dress(ctx)
}

func (r *rules) onKeys(ctx app.Context, e app.Event) {
	r.look.Keys = chosen(ctx)
	r.kept(keepLook(ctx.LocalStorage(), r.look))
}
