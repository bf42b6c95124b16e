package page

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/sets"
	"riserwork/problems/skills"
)

// Render shows where hand-ins are dropped and, once they are marked, what
// there is to tell.
func (c *classPage) Render() app.UI {
	body := []app.UI{heading("Mark a class"), c.intake()}
	if c.report != nil && !c.at {
		body = append(body, c.told()...)
	}
	return frame("class", c.notices, append(body, app.P().Class("unseen").ID("said").Attr("role", "status").Text(c.said))...)
}

// intake is where hand-ins come in.
func (c *classPage) intake() app.UI {
	waiting := ""
	marked := c.total - len(c.queue)
	if c.at {
		waiting = fmt.Sprintf("%d of %d marked", marked, c.total)
	}
	return app.Section().Class("intake").Aria("label", "Hand-ins").OnDragOver(c.onOver).OnDrop(c.onDrop).Body(
		app.P().Text("Drop hand-ins here: files, or a ZIP of them. They are marked on this device, again from what was written."),
		app.Label().Class("button", "primary").Body(
			app.Span().Text("Choose files"),
			app.Input().Class("unseen").ID("files").Type("file").Multiple(true).Accept(".rwork,.json,.txt,.eml,.zip").OnChange(c.onFiles),
		),
		app.Label().For("paste").Text("Or paste codes, as many as you have"),
		app.Textarea().Class("box", "code").ID("paste").Rows(3).OnInput(c.onPasted),
		c.scanner(),
		button("read-codes", "Mark the codes", false).OnClick(c.onCodes),
		app.Details().Body(
			app.Summary().Text("Link of the set"),
			app.P().Text("Without it the first hand-in says which set it is."),
			app.Input().Class("box").ID("class-set").Type("text").Aria("label", "Link of the set").AutoComplete(false).OnChange(c.onLink),
		),
		app.P().Class("fault").Aria("live", "polite").Text(c.fault),
		app.Div().Class("progress").Hidden(!c.at).Body(
			app.P().ID("waiting").Text(waiting),
			app.Progress().Max(max(c.total, 1)).Value(max(marked, 0)).Aria("label", "Hand-ins marked"),
			button("cancel", "Stop here", false).OnClick(c.onCancel),
		),
	)
}

// told is what there is to tell.
func (c *classPage) told() []app.UI {
	r := c.report
	_, follow := r.FollowUp(c.set)
	return []app.UI{
		app.H2().ID("counted").Text(c.set.Title + ": " + countedText(r)),
		app.Div().Class("ways").Body(
			button("csv", "Table (CSV)", true).OnClick(c.onCSV),
			button("grades", "Grade book (CSV)", false).OnClick(c.onGrades),
			button("json", "All (JSON)", false).OnClick(c.onJSON),
			button("print-class", "Print", false).OnClick(c.onPrint),
			button("follow", "Set of what went wrong", false).Hidden(!follow).OnClick(c.onFollowUp),
		),
		app.P().Class("aside").ID("kept").Text(c.kept),
		c.pager(),
		c.papers(),
		c.heat(),
		c.problemRows(),
		c.slips(),
		c.alike(),
		c.byHand(),
		app.Button().Type("button").Class("link").ID("again").Text("Clear this class and begin another").OnClick(c.onAgain),
	}
}

// pager shows which of many hand-ins are shown.
func (c *classPage) pager() app.UI {
	n := len(c.report.Papers)
	if n <= perPage {
		return app.Div().Hidden(true)
	}
	return app.Div().Class("ways", "pager").Body(
		button("earlier", "← Earlier", false).Disabled(c.from == 0).OnClick(c.onEarlier),
		app.Span().ID("shown").Text(fmt.Sprintf("%d to %d of %d", c.from+1, min(n, c.from+perPage), n)),
		button("later", "Later →", false).Disabled(c.from+perPage >= n).OnClick(c.onLater),
	)
}

// statusWords are the statuses with their signs.
var statusWords = map[sets.Status]string{
	sets.OnTime: "✓ on time", sets.Late: "◷ late", sets.Altered: "⚠ altered", sets.Repeated: "⟳ repeated",
	sets.Foreign: "≠ other set", sets.Unreadable: "✗ unreadable",
}

// papers is the table of the hand-ins.
func (c *classPage) papers() app.UI {
	head := []app.UI{app.Th().Scope("col").Text("learner"), app.Th().Scope("col").Text("status"), app.Th().Scope("col").Text("marks"), app.Th().Scope("col").Text("%")}
	for i := range c.set.Items {
		head = append(head, app.Th().Scope("col").Text(strconv.Itoa(i+1)))
	}
	var rows []app.UI
	list := c.shown()
	for i := range list {
		rows = append(rows, c.paper(&list[i]))
	}
	return app.Div().Class("table").TabIndex(0).Attr("role", "region").Aria("label", "Hand-ins").Body(app.Table().ID("papers").Body(
		app.THead().Body(app.Tr().Body(head...)), app.TBody().Body(rows...),
	))
}

func (c *classPage) paper(p *sets.Paper) app.UI {
	name := p.Learner
	if name == "" {
		name = p.Source
	}
	cells := []app.UI{
		app.Th().Scope("row").Text(name),
		app.Td().Body(app.Span().Class("status").Text(statusWords[p.Status]), app.Span().Class("note").Text(p.Says)),
	}
	if len(p.Items) == 0 {
		return app.Tr().DataSet("status", string(p.Status)).Body(append(cells, app.Td().ColSpan(2+len(c.set.Items)).Text("not marked"))...)
	}
	percent := strconv.Itoa(p.Percent())
	if c.set.Pass > 0 && c.set.Passed(p) {
		percent += " pass"
	}
	cells = append(cells, app.Td().Text(fmt.Sprintf("%d/%d", p.Marks, p.Of)), app.Td().Text(percent))
	for i := range p.Items {
		m := &p.Items[i]
		text := strconv.Itoa(m.Marks)
		switch {
		case !m.Tried:
			text = "–"
		case m.ByHand != "":
			text += " ✎"
		}
		cell := app.Td().DataSet("heat", heatOf(m.Marks, m.Of)).Text(text)
		if m.ByHand != "" {
			cell.Title(m.ByHand)
		}
		cells = append(cells, cell)
	}
	return app.Tr().DataSet("status", string(p.Status)).Body(cells...)
}

// heatOf is a fifth of the marks, 0 to 4.
func heatOf(part, of int) int {
	if of == 0 {
		return 0
	}
	return min(4, part*5/of)
}

// heat is skills by learners: the share of the marks in each cell.
func (c *classPage) heat() app.UI {
	r := c.report
	if r.Counted == 0 {
		return app.Div().Hidden(true)
	}
	head := []app.UI{app.Th().Scope("col").Text("skill"), app.Th().Scope("col").Text("all")}
	list := c.shownCounted()
	for i := range list {
		head = append(head, app.Th().Scope("col").Class("tall").Body(app.Span().Text(list[i].Learner)))
	}
	var rows []app.UI
	for _, s := range r.Skills {
		cells := []app.UI{app.Th().Scope("row").Text(s.Title), heatCell(s.Share)}
		for _, x := range s.Shares[min(c.from, len(s.Shares)):min(c.from+len(list), len(s.Shares))] {
			cells = append(cells, heatCell(x))
		}
		rows = append(rows, app.Tr().Body(cells...))
	}
	return app.Div().Body(
		app.H2().Text("By skill, percent of the marks"),
		app.Div().Class("table").TabIndex(0).Attr("role", "region").Aria("label", "Skills by learner").Body(app.Table().ID("heat").Body(
			app.THead().Body(app.Tr().Body(head...)), app.TBody().Body(rows...),
		)),
	)
}

func heatCell(share float64) app.UI {
	percent := int(share*100 + 0.5)
	return app.Td().DataSet("heat", heatOf(percent, 100)).Text(strconv.Itoa(percent))
}

// problemRows say how each problem worked as a question.
func (c *classPage) problemRows() app.UI {
	rows := [][]string{{"problem", "full marks", "mean, %", "tells apart"}}
	for _, p := range c.report.Problems {
		apart := "–"
		if p.Discrimination != nil {
			apart = strconv.FormatFloat(*p.Discrimination, 'f', 2, 64)
		}
		rows = append(rows, []string{fmt.Sprintf("%d. %s", p.Problem, p.Title), fmt.Sprintf("%d of %d", p.Full, c.report.Counted), strconv.Itoa(int(p.Difficulty*100 + 0.5)), apart})
	}
	return app.Details().Body(
		app.Summary().Text("How the problems worked"),
		app.P().Class("aside").Text("“Tells apart” is the point-biserial correlation of full marks here with the marks on the others, -1 to 1. Near 0 or below, look at the problem before you look at the class. In a small class it says little."),
		table("Problems", rows),
	)
}

// slips are the commonest slips with examples.
func (c *classPage) slips() app.UI {
	var list []app.UI
	for _, s := range c.report.Slips[:min(len(c.report.Slips), 12)] {
		title := s.Skill
		if skill, ok := skills.ByID(s.Skill); ok {
			title = skill.Title
		}
		var examples []app.UI
		for _, x := range s.Examples {
			examples = append(examples, app.Li().Body(
				app.Span().Text(fmt.Sprintf("%s, problem %d: ", x.Learner, x.Problem)), app.Strong().Text(x.Line), app.P().Class("aside").Text(x.Says),
			))
		}
		list = append(list, app.Li().Class("slip").Body(
			app.P().Body(app.Strong().Text(fmt.Sprintf("%d × ", s.Learners)), app.Span().Text(title+": "+s.Slip)),
			app.Ul().Body(examples...),
		))
	}
	return app.Details().Open(true).Hidden(len(list) == 0).Body(app.Summary().Text("The commonest slips"), app.Ol().ID("slips").Body(list...))
}

// alike points out the same wrong lines on other numbers.
func (c *classPage) alike() app.UI {
	var list []app.UI
	for _, a := range c.report.Alike {
		list = append(list, app.Li().Text(fmt.Sprintf("%s and %s: %d wrong lines are the same on different numbers, in problem %s.", a.A, a.B, a.Lines, joinInts(a.Problem))))
	}
	return app.Details().Hidden(len(list) == 0).Body(
		app.Summary().Text("The same wrong lines"),
		app.P().Class("aside").Text("Two people may have worked at one table, or read one wrong note. Ask before you conclude."),
		app.Ul().ID("alike").Body(list...),
	)
}

// byHand sets marks of one problem by hand.
func (c *classPage) byHand() app.UI {
	r := c.report
	if r.Counted == 0 {
		return app.Div().Hidden(true)
	}
	var learners, numbers []option
	for _, p := range c.shownCounted() {
		learners = append(learners, option{value: p.Learner, text: p.Learner})
	}
	for i := range c.set.Items {
		numbers = append(numbers, option{value: strconv.Itoa(i + 1), text: strconv.Itoa(i + 1)})
	}
	return app.Details().Class("by-hand").Body(
		app.Summary().ID("by-hand").Text("Set marks by hand"),
		app.Div().Class("row").Body(
			chooser("hand-learner", "Learner", c.hand.Learner, learners, c.onHand),
			chooser("hand-problem", "Problem", strconv.Itoa(c.hand.Problem), numbers, c.onHand),
			number("hand-marks", "Marks", c.onHand),
		),
		field("hand-reason", "Reason, which stands in the tables", 200, c.onHand),
		app.P().Class("aside").Aria("live", "polite").ID("hand-says").Text(c.handSays),
		button("set-hand", "Set these marks", false).OnClick(c.onSetByHand),
	)
}
