package page

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/sets"
	"riserwork/problems/skills"
)

// Render shows the set under way: what it is called, its problems, its terms,
// and how to give it out.
func (m *setMaker) Render() app.UI {
	if m.print != "" {
		return m.printed()
	}
	return frame("set", m.notices,
		heading("Make a set"),
		app.P().Text("A set is a link. Whoever opens it gets the problems, works them, and hands in a small file or a code. You mark them on the page for a class. Nothing goes through a server."),
		app.Button().Type("button").Class("link").ID("before").Hidden(m.before == nil).Text("Bring back the set that was under way").OnClick(m.onBefore),
		field("set-title", "Title", sets.MaxTitle, m.onBox),
		m.adder(),
		app.H2().Text(countText(len(m.set.Items))),
		app.Ol().Class("items").Body(m.items()...),
		m.terms(),
		m.give(),
		app.P().Class("ways").Body(
			app.A().Class("button").Href(link(classPath)).Text("Mark a class"),
			app.Button().Type("button").Class("button").ID("clear").Hidden(len(m.set.Items) == 0).Text("Begin a new set").OnClick(m.onClear),
		),
		app.P().Class("unseen").ID("said").Attr("role", "status").Text(m.said),
	)
}

func countText(n int) string {
	switch n {
	case 0:
		return "No problems yet"
	case 1:
		return "1 problem"
	}
	return strconv.Itoa(n) + " problems"
}

// field is a box with its label.
func field(id, label string, most int, h app.EventHandler) app.UI {
	return app.P().Class("field").Body(
		app.Label().For(id).Text(label),
		app.Input().Class("box").ID(id).Type("text").Attr("maxlength", most).AutoComplete(false).OnInput(h),
	)
}

func chooser(name, label, chosen string, list []option, h app.EventHandler) app.UI {
	var options []app.UI
	for _, o := range list {
		options = append(options, app.Option().Value(o.value).Selected(o.value == chosen).Text(o.text))
	}
	return app.P().Class("field").Body(
		app.Label().For("pick-"+name).Text(label),
		app.Select().ID("pick-"+name).Name(name).OnChange(h).Body(options...),
	)
}

// adder adds problems: some of a chapter, or one of a skill.
func (m *setMaker) adder() app.UI {
	var rows []app.UI
	var of []option
	for _, run := range skills.ByChapter() {
		n := run[0].Chapter
		of = append(of, option{value: strconv.Itoa(n), text: strconv.Itoa(n) + " " + skills.ChapterTitle(n)})
		var buttons []app.UI
		for _, skill := range run {
			buttons = append(buttons, app.Li().Body(app.Button().Type("button").Class("skill").DataSet("skill", skill.ID).OnClick(m.onAddSkill, skill.ID).Body(
				app.Span().Class("name").Text(skill.Title), app.Span().Class("year").Text("year "+strconv.Itoa(skill.Year)), app.Span().Class("state").Text("+ add"),
			)))
		}
		rows = append(rows, app.Details().Class("chapter").Body(
			app.Summary().Body(app.Span().Class("number").Text(strconv.Itoa(n)), app.Span().Class("name").Text(skills.ChapterTitle(n))),
			app.Ul().Class("skills").Body(buttons...),
		))
	}
	years := []option{{value: "0", text: "any"}, {value: "1", text: "1"}, {value: "2", text: "2"}, {value: "3", text: "3"}, {value: "4", text: "4"}}
	var numbers []option
	for n := 1; n <= 10; n++ {
		numbers = append(numbers, option{value: strconv.Itoa(n), text: strconv.Itoa(n)})
	}
	return app.Section().Class("adder").Aria("label", "Add problems").Body(
		chooser("chapter", "Chapter", strconv.Itoa(m.chapter), of, m.onPick),
		app.Div().Class("row").Body(
			chooser("count", "How many", strconv.Itoa(m.count), numbers, m.onPick),
			chooser("year", "Up to year", strconv.Itoa(m.year), years, m.onPick),
			chooser("kind", "Worked as", string(m.kind), kindOptions(), m.onPick),
		),
		app.P().Class("fault").Aria("live", "polite").Text(m.added),
		app.Button().Type("button").Class("button", "primary").ID("add-chapter").Text("Add these problems").OnClick(m.onAddChapter),
		app.Div().Class("row").Body(
			chooser("reason", "Devices and reasons", string(m.reason), reasonOptions(), m.onPick),
			button("add-reason", "Add a question", false).OnClick(m.onAddReason),
		),
		app.Details().Body(app.Summary().ID("by-skill").Text("Or choose skills one by one"), app.Div().Body(rows...)),
	)
}

func kindOptions() []option {
	var list []option
	for _, k := range sets.Kinds {
		list = append(list, option{value: string(k), text: kindText(kindOfSet(k))})
	}
	return list
}

func reasonOptions() []option {
	var list []option
	for _, k := range askedKinds {
		list = append(list, option{value: string(k.kind), text: problems.Sentence(string(k.kind))})
	}
	return list
}

// items are the problems with a look at each: its numbers, its working, its
// mark scheme.
func (m *setMaker) items() []app.UI {
	var list []app.UI
	for i := range m.set.Items {
		list = append(list, m.shown(i))
	}
	return list
}

func (m *setMaker) shown(i int) app.UI {
	it := &m.set.Items[i]
	title, body := it.Skill, []app.UI{}
	if t := m.task(i); t != nil {
		title = t.Title()
		body = append(body, app.P().Class("ask").Text(t.AskText()), &preview{Task: t, N: i})
	} else {
		body = append(body, app.P().Class("fault").Text("No numbers could be drawn. Take other numbers."))
	}
	pin := "Same numbers for all"
	if it.Pinned != 0 {
		pin = "✓ Same numbers for all"
	}
	var options []app.UI
	for _, o := range kindOptions() {
		options = append(options, app.Option().Value(o.value).Selected(o.value == string(it.Kind)).Text(o.text))
	}
	return app.Li().Class("line").ID("item-" + strconv.Itoa(i)).Body(append([]app.UI{
		app.P().Class("says").Body(app.Span().Class("number").Text(strconv.Itoa(i+1)), app.Strong().Text(title)),
	}, append(body, app.P().Class("tools").Body(
		app.Select().Hidden(it.Kind == sets.Reason).DataSet("line", i).Aria("label", "How problem "+strconv.Itoa(i+1)+" is worked").OnChange(m.onItemKind).Body(options...),
		app.Button().Type("button").Class("link", "redraw").DataSet("line", i).Text("Other numbers").OnClick(m.onRedraw),
		app.If(m.set.Own, app.Button().Type("button").Class("link", "pin").DataSet("line", i).Aria("pressed", it.Pinned != 0).Text(pin).OnClick(m.onPin)),
		app.Button().Type("button").Class("link", "up").DataSet("line", i).Disabled(i == 0).Aria("label", "Problem "+strconv.Itoa(i+1)+" earlier").Text("↑").OnClick(m.onUp),
		app.Button().Type("button").Class("link", "down").DataSet("line", i).Disabled(i+1 == len(m.set.Items)).Aria("label", "Problem "+strconv.Itoa(i+1)+" later").Text("↓").OnClick(m.onDown),
		app.Button().Type("button").Class("link", "take-out").DataSet("line", i).Aria("label", "Take problem "+strconv.Itoa(i+1)+" out").Text("Take out").OnClick(m.onRemove),
	))...)...)
}

// preview is the solution of one problem, once it is asked for.
type preview struct {
	app.Compo
	Task *sets.Task
	N    int
	open bool
}

// Render shows the problem as the instructor's copy has it.
func (p *preview) Render() app.UI {
	body := []app.UI{app.Button().Type("button").Class("link", "solution").ID("solution-"+strconv.Itoa(p.N)).Aria("expanded", p.open).
		Text("Solution and mark scheme").OnClick(p.onOpen)}
	if p.open {
		if p.Task.Question == nil {
			body = append(body, &riser{Scene: draw.Problem(p.Task.Problem, true)})
		}
		body = append(body, solved(p.Task)...)
	}
	return app.Div().Class("preview").Body(body...)
}

func (p *preview) onOpen(ctx app.Context, e app.Event) { p.open = !p.open }

// terms are what holds for the whole set.
func (m *setMaker) terms() app.UI {
	own := "same"
	if m.set.Own {
		own = "own"
	}
	return app.Details().Class("terms").Body(
		app.Summary().ID("terms").Text("Terms: "+termsText(&m.set)),
		group("help", "Help while working", string(m.set.Help), []option{
			{string(sets.AllHelp), "Hints, and lines are marked", "for practice"},
			{string(sets.MarkHelp), "Lines are marked, no hints", ""},
			{string(sets.NoHelp), "Nothing until it is handed in", "for a test"},
		}, m.onPick),
		group("own", "Numbers", own, []option{
			{"own", "Each learner has his own", "drawn from the name; nobody can copy an answer"},
			{"same", "The same for all", "to talk about them in class"},
		}, m.onPick),
		app.Div().Class("row").Body(
			number("set-minutes", "Minutes allowed", m.onBox),
			number("set-pass", "Pass mark, %", m.onBox),
			app.P().Class("field").Body(app.Label().For("set-closes").Text("Closes, at the end of the day"), app.Input().Class("box").ID("set-closes").Type("date").OnChange(m.onBox)),
			app.P().Class("field").Body(app.Label().For("set-closes-at").Text("or at this time"), app.Input().Class("box").ID("set-closes-at").Type("time").OnChange(m.onBox)),
		),
		field("set-note", "A note to the learners", sets.MaxNote, m.onBox),
		field("set-amends", "Local amendments to the code, in your words", sets.MaxNote, m.onBox),
		app.P().Body(app.Span().Text("House rules of the set: "+houseWords(m.set.House)+". "), app.A().Href(link(housePath)).Text("Change yours")),
		app.Button().Type("button").Class("link").ID("take-house").Hidden(sameHouse(m.set.House, m.own)).Text("Take your house rules as they are now").OnClick(m.onHouse),
	)
}

func number(id, label string, h app.EventHandler) app.UI {
	return app.P().Class("field").Body(
		app.Label().For(id).Text(label),
		app.Input().Class("box").ID(id).Type("text").Attr("inputmode", "numeric").Attr("maxlength", 4).AutoComplete(false).OnInput(h),
	)
}

// termsText is the terms in a line.
func termsText(s *sets.Set) string {
	text := map[sets.Help]string{sets.AllHelp: "hints and marking", sets.MarkHelp: "marking, no hints", sets.NoHelp: "no help"}[s.Help]
	if s.Own {
		text += ", own numbers"
	} else {
		text += ", the same numbers"
	}
	if s.Minutes > 0 {
		text += fmt.Sprintf(", %d minutes", s.Minutes)
	}
	if s.Pass > 0 {
		text += fmt.Sprintf(", pass mark %d %%", s.Pass)
	}
	if s.Closes != "" {
		text += ", closes " + strings.Replace(s.Closes, "T", " at ", 1)
	}
	return text
}
