package page

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
)

// card is the page of one rule: the formula, why it holds, an example drawn
// fresh, and the slips that people make on it.
type card struct {
	app.Compo

	house   problems.House
	p       *problems.Problem // the example; nil where the link names no skill
	picture *draw.Scene
	fault   string
	said    string
	notices []string
}

// cardURL is the link of a skill's card.
func cardURL(s *problems.Skill) string { return link(cardPath) + "?skill=" + s.ID }

// OnNav draws an example of the skill that the address names.
func (c *card) OnNav(ctx app.Context) {
	var says string
	c.house, says = loadHouse(ctx.LocalStorage())
	c.notices, c.said = []string{says}, ""
	c.open(ctx.Page().URL().Query())
	title := "No card here"
	if c.p != nil {
		title = c.p.Skill.Title
	}
	arrive(ctx, "card", title+" · Riserwork")
}

// open reads the address.
func (c *card) open(q url.Values) {
	c.p, c.fault = nil, ""
	skill, ok := skills.ByID(q.Get("skill"))
	if !ok {
		c.fault = "The link names the skill “" + clip(q.Get("skill")) + "”, which is not here."
		return
	}
	seed, err := strconv.ParseUint(q.Get("seed"), 10, 64)
	if err != nil {
		seed = someSeed(source())
	}
	c.example(skill, seed)
}

// example draws an example.
func (c *card) example(skill *problems.Skill, seed uint64) {
	p, err := problems.New(skill, seed, c.house)
	if err != nil {
		c.fault = "No example could be drawn. Try again."
		return
	}
	c.p, c.fault, c.picture = p, "", draw.Figure(p)
}

func (c *card) onRedraw(ctx app.Context, e app.Event) {
	last := c.p.AskText()
	for range 4 {
		c.example(c.p.Skill, someSeed(source()))
		if c.p.AskText() != last {
			break
		}
	}
	c.said = "Another example: " + c.p.AskText()
}

// Render shows the card.
func (c *card) Render() app.UI {
	if c.p == nil {
		return frame("card", c.notices,
			heading("No card here"),
			app.P().Class("fault").Text(c.fault),
			app.A().Class("button", "primary").Href(link(shelfPath)).Text("To the shelf"),
		)
	}
	s := c.p.Skill
	return frame("card", c.notices,
		app.P().Class("place").Text(strconv.Itoa(s.Chapter)+" "+skills.ChapterTitle(s.Chapter)),
		heading(s.Title),
		c.rule(),
		c.why(),
		c.worked(),
		c.slips(),
		c.cautions(),
		c.limits(),
		c.sources(),
		c.neighbours(),
		app.P().Class("unseen").Attr("role", "status").Text(c.said),
		app.Div().Class("bar").Body(
			app.A().Class("button", "primary").ID("work-one").Href(link(workPath)+"?skill="+s.ID).Text("Work one"),
			app.A().Class("button").ID("own").Href(ownOf(s)).Text("Own numbers"),
		),
	)
}

// rule is the formula, line by line.
func (c *card) rule() app.UI {
	var list []app.UI
	for i := range c.p.Steps {
		list = append(list, app.Li().Body(ruleLine(c.p, i)...))
	}
	return app.Section().Class("rule").Aria("label", "The rule").Body(app.Ol().Body(list...))
}

// ruleLine is what a step works out and its formula.
func ruleLine(p *problems.Problem, i int) []app.UI {
	s := &p.Steps[i]
	return []app.UI{
		app.Span().Class("says").Text(p.Fill(s.Says, p.Env())),
		app.Span().Class("formula").TabIndex(stop(s.Expr.Text())).Body(
			app.Span().Aria("hidden", true).Body(mathElem("math", mathElem("mrow", mathText("mi", spaced(s.Name)), mathText("mo", "="), mathNode(s.Expr.Root())))),
			app.Span().Class("unseen").Text(spaced(s.Name)+" is "+spoken(s.Expr.Text())),
		),
	}
}

// stop is whether the keyboard stops at a formula, 0, or passes it, -1: one
// that may be wider than a phone is moved sideways by it.
func stop(formula string) int {
	const fits = 24 // letters
	if len([]rune(formula)) > fits {
		return 0
	}
	return -1
}

// spoken is a formula as it is said.
func spoken(text string) string {
	said := strings.Join(strings.Fields(sayings.Replace(text)), " ")
	return strings.Trim(strings.ReplaceAll(said, " ,", ","), ", ")
}

var sayings = strings.NewReplacer(
	"×", " times ", "÷", " over ", "/", " over ", "−", " minus ", "-", " minus ", "+", " plus ",
	"^2", " squared", "²", " squared", "^3", " cubed", "³", " cubed", "^", " to the power ",
	"√", " the root of ", "sqrt", " the root of ", "≤", " at most ", "≥", " at least ", "<", " less than ", ">", " more than ",
	"(", ", ", ")", ", ", "_", " ",
)

// why is why the rule holds, with the picture that says it.
func (c *card) why() app.UI {
	return app.Section().Class("holds").Body(
		app.H2().Text("Why it holds"),
		app.P().Text(c.p.Fill(c.p.Skill.Holds, c.p.Env())),
		&riser{Scene: c.picture},
	)
}

// worked is the example.
func (c *card) worked() app.UI {
	return app.Section().Class("example").Body(
		app.Div().Class("lines-head").Body(
			app.H2().Text("An example"),
			app.Button().Type("button").Class("link").ID("redraw").Text("Draw another").OnClick(c.onRedraw),
		),
		app.P().ID("example").Text(c.p.AskText()),
		app.Ol().Body(workedLines(c.p)...),
	)
}

// slips are the slips of the example's steps, with what each would give.
func (c *card) slips() app.UI {
	var list []app.UI
	for i := range c.p.Steps {
		for k := range c.p.Steps[i].Wrongs {
			list = append(list, c.slip(i, &c.p.Steps[i].Wrongs[k]))
		}
	}
	return app.Section().Class("slips").Hidden(len(list) == 0).Body(app.H2().Text("Common slips"), app.Div().Body(list...))
}

func (c *card) slip(step int, w *problems.Wrong) app.UI {
	s := &c.p.Steps[step]
	n, ok := slipOf(c.p, step, w.ID)
	gives := s.Text(c.p.Carried(map[int]*problems.Wrong{step: w})[step])
	if !ok || gives == "no value" {
		return app.Div().Hidden(true)
	}
	return app.Details().Body(
		app.Summary().Text(n.Did),
		app.P().Body(
			app.Text("It gives "), app.Strong().Text(gives), app.Text(" for "+c.p.Fill(s.Says, c.p.Env())+"; right is "), app.Strong().Text(s.Text(s.Value)), app.Text("."),
		),
		app.P().Text(n.Why),
		app.P().Class("aside").Text(n.Next),
	)
}

func (c *card) cautions() app.UI {
	var list []app.UI
	for _, text := range c.p.Skill.Cautions {
		list = append(list, app.P().Text("⚠ "+c.p.Fill(text, c.p.Env())))
	}
	return app.Section().Class("caution").Aria("label", "Cautions").Hidden(len(list) == 0).Body(app.Div().Body(list...))
}

// limited says which limit of the code a given may be.
var limited = []struct{ given, title string }{
	{"least", "Left at the top"}, {"most", "Static pressure"}, {"limit", "Static pressure"}, {"allowed", "Static pressure"},
	{"length_limit", "Recirculation"}, {"cap", "Warmed water"}, {"allowed", "At the booster's inlet"},
}

// limits are the limits of the code that the example holds to.
func (c *card) limits() app.UI {
	profile := c.p.House.Profile()
	var list []app.UI
	for _, l := range profile.Limits() {
		value := l.Value(c.p.House.System)
		for _, t := range c.p.Told[:c.p.Constants] {
			named := slices.ContainsFunc(limited, func(x struct{ given, title string }) bool { return x.given == t.Given && x.title == l.Title })
			if named && value.In(t.Unit) == t.Value {
				list = append(list, limitRow(l))
			}
		}
	}
	return app.Section().Class("limits").Hidden(len(list) == 0).Body(
		app.H2().Text("Limits of "+profile.Name+", "+profile.Edition),
		app.Ul().Body(list...),
	)
}

func (c *card) sources() app.UI {
	return app.Section().Class("sources").Body(app.H2().Text("Sources"), app.Ul().Body(sources(c.p.Skill)...))
}

// sources are where a skill's rule comes from, with how it is known.
func sources(s *problems.Skill) []app.UI {
	var list []app.UI
	for _, src := range s.Sources {
		list = append(list, app.Li().Body(
			app.Span().Text(src.Says+" "),
			app.Span().Class("confidence").Text("("+string(src.Confidence)+")"),
		))
	}
	return list
}

// neighbours are the tables that the rule reads, and the cards beside it.
func (c *card) neighbours() app.UI {
	var list []app.UI
	add := func(text, url string) {
		list = append(list, app.Li().Body(app.A().Href(url).Text(text)))
	}
	for _, t := range tablesOf(c.p) {
		add("Table: "+t.Title, tableURL(t))
	}
	for _, run := range skills.ByChapter() {
		at := slices.Index(run, c.p.Skill)
		if at > 0 {
			add("Before: "+run[at-1].Title, cardURL(run[at-1]))
		}
		if at >= 0 && at+1 < len(run) {
			add("Next: "+run[at+1].Title, cardURL(run[at+1]))
		}
	}
	add(fmt.Sprintf("All of the shelf, %d cards", len(skills.All())), link(shelfPath))
	return app.Nav().Class("neighbours").Aria("label", "Near this card").Body(app.Ul().Body(list...))
}

// tablesOf are the tables that the steps of a problem read, each once.
func tablesOf(p *problems.Problem) []*solver.Table {
	var list []*solver.Table
	for i := range p.Steps {
		if t, _, ok := p.LookUp(i); ok && !slices.Contains(list, t) {
			list = append(list, t)
		}
	}
	return list
}
