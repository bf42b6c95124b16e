package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
)

// formulas is the sheet of all formulas, to read or print.
type formulas struct {
	app.Compo

	house   problems.House
	notices []string
}

// OnNav reads the house rules, whose constants stand on the sheet.
func (f *formulas) OnNav(ctx app.Context) {
	var says string
	f.house, says = loadHouse(ctx.LocalStorage())
	f.notices = []string{says}
	arrive(ctx, "formulas", "Formula sheet · Riserwork")
}

// Render shows the sheet.
func (f *formulas) Render() app.UI {
	var parts []app.UI
	for _, run := range skills.ByChapter() {
		rows := []app.UI{app.H2().Text(strconv.Itoa(run[0].Chapter) + " " + skills.ChapterTitle(run[0].Chapter))}
		for _, skill := range run {
			rows = append(rows, f.skill(skill))
		}
		parts = append(parts, app.Section().Body(rows...))
	}
	return frame("formulas", f.notices,
		heading("Formula sheet"),
		app.P().Class("aside").Text("House rules: "+houseWords(f.house)+"."),
		app.Button().Type("button").Class("button").ID("print").Text("Print").OnClick(f.onPrint),
		app.Div().Class("sheet").Body(append(parts, f.constants(), f.symbols())...),
	)
}

func (f *formulas) onPrint(ctx app.Context, e app.Event) { app.Window().Call("print") }

// skill is the formulas of a skill, of any drawing of it; one whose drawing
// fails is left out.
func (f *formulas) skill(skill *problems.Skill) app.UI {
	p, err := problems.New(skill, 1, f.house)
	if err != nil {
		return app.Div().Hidden(true)
	}
	var list []app.UI
	for i := range p.Steps {
		list = append(list, app.Li().Body(app.Span().Class("formula").TabIndex(stop(p.Steps[i].Expr.Text())).Body(
			app.Span().Aria("hidden", true).Body(mathElem("math", mathElem("mrow", mathText("mi", spaced(p.Steps[i].Name)), mathText("mo", "="), mathNode(p.Steps[i].Expr.Root())))),
			app.Span().Class("unseen").Text(spaced(p.Steps[i].Name)+" is "+spoken(p.Steps[i].Expr.Text())),
		)))
	}
	return app.Div().Class("entry").Body(
		app.H3().Body(app.A().Href(cardURL(skill)).Text(skill.Title)),
		app.Ul().Body(list...),
	)
}

// constants are the figures of the house rules.
func (f *formulas) constants() app.UI {
	var list []app.UI
	for _, c := range solver.Constants {
		list = append(list, app.Div().Body(
			app.Dt().Text(spaced(c.Name)),
			app.Dd().Text(taught(f.house, c)+" "+c.In(f.house.System).Unit),
		))
	}
	return app.Section().Body(app.H2().Text("Constants"), app.Dl().Body(list...))
}

// signs are what the signs of the sheet mean.
var signs = [][2]string{
	{"x² x³", "squared, cubed: times itself"},
	{"√", "square root"},
	{"rounddown, roundup", "to the whole number below, above"},
	{"min, max", "the smallest, the largest of"},
	{"abs", "without its sign"},
	{"a > b", "1 where it holds, else 0"},
	{"gamma", "pressure of a foot or metre of water"},
	{"Δ, rise, drop", "a difference of temperatures: no 32 in it"},
}

func (f *formulas) symbols() app.UI {
	var list []app.UI
	for _, s := range signs {
		list = append(list, app.Div().Body(app.Dt().Text(s[0]), app.Dd().Text(s[1])))
	}
	return app.Section().Body(app.H2().Text("Signs"), app.Dl().Body(list...))
}
