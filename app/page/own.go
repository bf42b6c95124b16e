package page

import (
	"errors"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
)

// maxOwn is how many letters of a number of one's own are read.
const maxOwn = 60

// own is the page on which one puts in the numbers of a textbook's or a job's
// problem.
type own struct {
	app.Compo

	address address
	p       *problems.Problem // the example; nil where the link names no skill
	mine    *problems.Problem // with one's own numbers, as they last made one
	at      string            // the given at fault
	fault   string            // why the numbers make no problem
	shown   bool              // the working is shown
	notices []string
}

// ownURL is the page for the numbers of a problem.
func ownURL(a address) string { return link(ownPath) + "?" + a.query() }

// ownOf is the page for a skill, over any example.
func ownOf(s *problems.Skill) string { return link(ownPath) + "?skill=" + s.ID }

// OnNav lays out the boxes of the skill that the address names.
func (o *own) OnNav(ctx app.Context) {
	house, says := loadHouse(ctx.LocalStorage())
	*o = own{Compo: o.Compo, notices: []string{says}}
	u := *ctx.Page().URL()
	title := "Your own numbers"
	if u.Query().Has("skill") {
		if o.address, o.fault = readAddress(u.Query(), house); o.fault == "" {
			o.open()
		}
	}
	if o.p != nil {
		title += ": " + o.address.skill.Title
		o.keep(ctx)
	}
	arrive(ctx, "own", title+" · Riserwork")
	ctx.Defer(func(app.Context) { o.sync() })
}

// open draws the example and puts the numbers of the link over it.
func (o *own) open() {
	a := o.address
	a.givens = nil
	p, err := a.problem()
	if err != nil {
		o.fault = "No example could be drawn. Take another number for it."
		return
	}
	o.p, o.mine = p, p
	texts := make([]problems.Own, p.Constants)
	for i := range texts {
		t := &p.Told[i]
		texts[i] = problems.Own{Name: t.Given, Text: t.Bare()}
		for _, g := range o.address.givens {
			if g.Name == t.Given {
				texts[i].Text = g.Text
			}
		}
	}
	o.address.givens = texts
	o.try()
}

// try makes the problem of what stands in the boxes.
func (o *own) try() {
	q, err := o.p.With(o.address.givens)
	if err == nil {
		o.mine, o.at, o.fault = q, "", ""
		return
	}
	o.at, o.fault = "", err.Error()
	if e := (*problems.OwnError)(nil); errors.As(err, &e) {
		o.at, o.fault = e.Given, problems.Sentence(e.Says)
	}
}

// keep puts what stands in the boxes into the address, which outlives a reload.
func (o *own) keep(ctx app.Context) {
	u := *ctx.Page().URL()
	u.RawQuery = o.address.query()
	ctx.Page().ReplaceURL(&u)
}

// sync puts the texts into their boxes, which are left to the browser after.
func (o *own) sync() {
	for _, g := range o.address.givens {
		if el := app.Window().GetElementByID(boxOf(g.Name)); el.Truthy() {
			el.Set("value", g.Text)
		}
	}
}

// boxOf is the box of a given.
func boxOf(given string) string { return "given-" + given }

func (o *own) onInput(ctx app.Context, e app.Event) {
	name := ctx.JSSrc().Get("dataset").Get("given").String()
	for i := range o.address.givens {
		if g := &o.address.givens[i]; g.Name == name {
			g.Text = cut(chosen(ctx))
		}
	}
	o.try()
	o.keep(ctx)
}

// cut keeps a number of one's own as short as a number is.
func cut(text string) string {
	if r := []rune(text); len(r) > maxOwn {
		return string(r[:maxOwn])
	}
	return text
}

// onSubmit is enter in a box: on to the work, or to the box at fault.
func (o *own) onSubmit(ctx app.Context, e app.Event) {
	e.PreventDefault()
	switch {
	case o.fault == "":
		ctx.Navigate(o.address.url())
	case o.at != "":
		focus(boxOf(o.at))
	}
}

func (o *own) onShow(ctx app.Context, e app.Event) { o.shown = !o.shown }

// onAnother takes another example and its words; the numbers go with it.
func (o *own) onAnother(ctx app.Context, e app.Event) {
	a := o.address
	a.seed, a.givens = a.seed+1, nil
	ctx.Navigate(ownURL(a))
}

// Render shows the boxes, or the skills to choose from.
func (o *own) Render() app.UI {
	if o.p == nil {
		return frame("own", o.notices,
			heading("Your own numbers"),
			app.P().Class("fault").Hidden(o.fault == "").Text(o.fault),
			app.P().Text("Put in the numbers of a textbook's or a job's problem. Which rule is it?"),
			app.Section().Aria("label", "Skills").Body(skillRuns("", ownOf).runs...),
		)
	}
	show := "Show the working"
	if o.shown {
		show = "Hide the working"
	}
	return frame("own", o.notices,
		app.P().Class("place").Text("Your own numbers"),
		heading(o.p.Skill.Title),
		app.P().Class("ask").ID("ask").Text(o.mine.AskText()),
		app.Form().Class("givens").OnSubmit(o.onSubmit).Body(
			app.Div().Body(o.boxes()...),
			app.P().Class("fault").ID("own-fault").Attr("role", "status").Text(o.fault),
			app.Input().Type("submit").Class("unseen").TabIndex(-1).Aria("hidden", true).Value("Work it"),
		),
		app.Button().Type("button").Class("link").ID("another").Text("Start from another example").OnClick(o.onAnother),
		o.working(),
		app.P().Class("aside").Text("Marked like any other problem. It does not count in your standing."),
		app.Div().Class("bar").Body(
			app.A().Class("button", "primary").ID("work-own").Hidden(o.fault != "").Href(o.address.url()).Text("Work it"),
			app.Button().Type("button").Class("button").ID("show").Aria("expanded", o.shown).Hidden(o.fault != "").Text(show).OnClick(o.onShow),
		),
	)
}

// boxes are a box a given, its unit beside it.
func (o *own) boxes() []app.UI {
	var list []app.UI
	for i := range o.address.givens {
		t := &o.p.Told[i]
		id := boxOf(t.Given)
		list = append(list, app.Div().Class("given").Body(
			app.Label().For(id).Text(problems.Sentence(o.p.Fill(t.Says, o.p.Env()))),
			app.Div().Class("with-unit").Body(
				app.Input().Class("box").ID(id).Type("text").DataSet("given", t.Given).Attr("maxlength", maxOwn).Attr("autocapitalize", "off").
					Attr("enterkeyhint", "go").Spellcheck(false).AutoComplete(false).Aria("describedby", id+"-unit own-fault").Aria("invalid", o.at == t.Given).OnInput(o.onInput),
				app.Span().ID(id+"-unit").Class("unit").Text(t.Unit.Name),
			),
		))
	}
	return list
}

// working is the worked solution of what stands in the boxes.
func (o *own) working() app.UI {
	if !o.shown || o.fault != "" {
		return app.Section().Hidden(true)
	}
	return app.Section().Class("example").ID("working").Body(
		app.H2().Text("The working"),
		app.Ol().Body(workedLines(o.mine)...),
	)
}

// workedLines is the right working of a problem, a line each.
func workedLines(p *problems.Problem) []app.UI {
	var list []app.UI
	lines := p.Worked()
	for i := range lines {
		l := &lines[i]
		list = append(list, app.Li().Body(
			app.Span().Class("says").Text(l.Says),
			app.P().Class("formula").TabIndex(stop(l.Numbers+l.Value)).Body(numbersOf(l), app.Strong().Class("value").Text(" = "+l.Value)),
		))
	}
	return list
}
