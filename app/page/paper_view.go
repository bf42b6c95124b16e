package page

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/paper"
	"riserwork/problems/skills"
)

// Render shows the paper: the building once, its parts, and the one that lies
// open.
func (p *paperPage) Render() app.UI {
	if p.paper == nil {
		return p.begin()
	}
	return frame("paper", p.notices,
		app.Div().Class("task").Body(
			heading("One building, part by part"),
			app.P().Class("ask").Text(p.paper.Says),
			p.facts(),
		),
		app.Div().Class("answer").Body(
			p.progress(),
			p.part(),
			p.reported(),
			p.soFar(),
		),
		app.Div().Class("building").Body(&riser{Scene: p.picture}),
		app.P().Class("unseen").ID("said").Attr("role", "status").Text(p.said),
		p.thumb(),
	)
}

// begin is the start of a paper.
func (p *paperPage) begin() app.UI {
	list := []option{{"", paper.Size("").Says(), ""}}
	for _, z := range paper.Sizes {
		list = append(list, option{string(z), z.Says(), ""})
	}
	return frame("paper", p.notices,
		heading("One building, part by part"),
		app.P().Text("From the street to the hot water, 8 to 15 sums on one building. Later parts go on with your own answers: a wrong one loses its marks once."),
		app.Div().Class("begun").Hidden(len(p.begun) == 0).Body(p.toCarryOn()...),
		group("size", "Building", string(p.size), list, p.onSize),
		button("paper-start", "Start a paper", len(p.begun) == 0).OnClick(p.onStart),
	)
}

// toCarryOn are the papers that lie begun.
func (p *paperPage) toCarryOn() []app.UI {
	list := []app.UI{app.H2().Text("Carry on")}
	for i := range p.begun {
		s := &p.begun[i]
		a := app.A().Class("button").ID("paper-on-" + strconv.Itoa(i)).Href(paperURL(s.Size, s.Seed, s.House)).Text(s.stands())
		if i == 0 {
			a.Class("primary")
		}
		list = append(list, a)
	}
	return list
}

func (p *paperPage) facts() app.UI {
	var rows []app.UI
	for _, f := range p.paper.Facts {
		rows = append(rows, app.Div().Class("given").Body(app.Dt().Text(f.Says), app.Dd().Text(f.Text)))
	}
	return app.Details().Class("facts").Body(
		app.Summary().Text("What is known of the building"),
		app.Dl().Class("told").Body(rows...),
	)
}

// progress is the parts with how each stands.
func (p *paperPage) progress() app.UI {
	var list []app.UI
	marked := 0
	for i := range p.paper.Parts {
		word := partWord(&p.marked.Parts[i], &p.saved.Parts[i])
		tone := blank
		if p.isMarked(i) {
			marked++
			tone = bad
			if word == "right" {
				tone = good
			}
		}
		b := app.Button().Type("button").Class("part-key").ID("part-"+strconv.Itoa(i)).DataSet("part", i).DataSet("tone", tone).
			Aria("label", fmt.Sprintf("Part %d, %s: %s", i+1, p.paper.Parts[i].Skill.Title, word)).
			OnClick(p.onPart).Body(
			app.Span().Class("part-number").Text(strconv.Itoa(i+1)),
			app.Span().Class("part-word").Text(partSign(word)),
		)
		if i == p.saved.At {
			b.Aria("current", "step")
		}
		list = append(list, app.Li().Body(b))
	}
	return app.Nav().Class("parts").Aria("label", fmt.Sprintf("Parts, %d of %d marked", marked, len(list))).Body(app.Ol().Body(list...))
}

// partSign is how a part stands, short enough for its key.
func partSign(word string) string {
	switch word {
	case "right":
		return "✓"
	case "open":
		return "\u00a0"
	case "begun":
		return "…"
	}
	return word
}

// part is the part that lies open.
func (p *paperPage) part() app.UI {
	if p.report {
		return app.Section().Class("part").Hidden(true)
	}
	i := p.saved.At
	x := &p.paper.Parts[i]
	return app.Section().Class("part").Aria("labelledby", "part").Body(
		app.H2().ID("part").TabIndex(-1).Text(fmt.Sprintf("Part %d of %d: %s", i+1, len(p.paper.Parts), x.Skill.Title)),
		app.P().Class("ask").Text(x.AskText(p.bench.p)),
		app.Div().Class("carried").Body(p.carried()...),
		p.told(),
		p.cautions(),
		app.Ol().Class("lines").Body(p.lines()...),
		p.partOutcome(),
	)
}

// carried says which numbers come from earlier parts.
func (p *paperPage) carried() []app.UI {
	m := &p.marked.Parts[p.saved.At]
	if m.Blocked != "" {
		return []app.UI{app.P().Class("fault").Text(m.Blocked)}
	}
	var list []app.UI
	for _, c := range m.Carried {
		says := p.bench.p.Told[p.bench.p.Given(c.Given)].Says
		text := fmt.Sprintf("From part %d, %s: your %s.", c.Part+1, says, c.Text)
		if !c.Own {
			text = fmt.Sprintf("From part %d, %s: %s, the right number, since you have not done that part yet.", c.Part+1, says, c.Text)
		}
		list = append(list, app.P().Class("aside").Text(text))
	}
	return list
}

func (p *paperPage) partOutcome() app.UI {
	if !p.isMarked(p.saved.At) {
		return app.Section().Class("outcome").Hidden(true)
	}
	m := &p.marked.Parts[p.saved.At]
	note := m.Note
	if m.Through {
		note = "It was judged on your own number from an earlier part, which lost its marks there."
	}
	return app.Section().Class("outcome").ID("result").TabIndex(-1).Aria("label", "Marks of this part").DataSet("done", m.Done).Body(
		app.H2().Text(fmt.Sprintf("%d of %d marks", m.Marks, m.Of)),
		app.P().Text(p.advice()),
		app.P().Class("aside").Hidden(note == "").Text(note),
	)
}

// reported is the marks of the whole paper.
func (p *paperPage) reported() app.UI {
	if !p.report {
		return app.Section().Hidden(true)
	}
	rows := [][]string{{"Part", "Marks", "First fault"}}
	chapters := map[int][2]int{}
	for i := range p.paper.Parts {
		m := &p.marked.Parts[i]
		rows = append(rows, []string{fmt.Sprintf("%d %s", i+1, p.paper.Parts[i].Skill.Title), fmt.Sprintf("%d of %d", m.Marks, m.Of), firstFault(m)})
		c := chapters[p.paper.Parts[i].Skill.Chapter]
		chapters[p.paper.Parts[i].Skill.Chapter] = [2]int{c[0] + m.Marks, c[1] + m.Of}
	}
	byChapter := [][]string{{"Chapter", "Marks"}}
	for _, n := range slices.Sorted(maps.Keys(chapters)) {
		c := chapters[n]
		byChapter = append(byChapter, []string{skills.ChapterTitle(n), fmt.Sprintf("%d of %d", c[0], c[1])})
	}
	return app.Section().Class("outcome", "report").Aria("labelledby", "report").Body(
		app.H2().ID("report").TabIndex(-1).Text(fmt.Sprintf("The whole paper: %d of %d marks", p.marked.Marks, p.marked.Of)),
		table("Marks by part", rows),
		table("Marks by chapter", byChapter),
		app.P().Body(
			app.Span().Text("This paper for somebody else: "),
			app.A().ID("paper-link").Href(paperURL(p.size, p.paper.Seed, p.paper.House)).Text("link to the same numbers"),
		),
		app.A().Class("button").Href(link(paperPath)).Text("Another building"),
	)
}

// soFar offers the report before all parts are marked.
func (p *paperPage) soFar() app.UI {
	marked := slices.ContainsFunc(p.saved.Parts, func(s partSaved) bool { return s.Marked })
	return app.Button().Type("button").Class("add").ID("so-far").Hidden(!marked || p.report || p.nextPart() < 0).Text("Marks so far").OnClick(p.onReport)
}

// firstFault is the earliest line of a part that lost marks.
func firstFault(m *paper.PartMark) string {
	switch {
	case !m.Written:
		return "not written"
	case m.First < 0 || m.First >= len(m.Lines):
		return ""
	}
	f := m.Lines[m.First]
	return fmt.Sprintf("line %d: %s", m.First+1, lower(shown(f.Verdict).word))
}

// thumb is what is under the thumb: the keys while a line is written, else
// the next thing to do.
func (p *paperPage) thumb() app.UI {
	if p.at >= 0 && len(p.bench.choices(p.at)) == 0 {
		return p.pad()
	}
	var list []app.UI
	next, done := p.bench.next(), p.isMarked(p.saved.At) && p.bench.sheet.Done
	switch {
	case done || p.report:
	case p.bench.wrong(max(next, 0)):
		list = append(list, button("foot-line", fmt.Sprintf("Fix line %d", next+1), true).OnClick(p.onNextLine))
	case next >= 0:
		list = append(list, button("foot-line", fmt.Sprintf("Write line %d", next+1), true).OnClick(p.onNextLine))
	}
	if p.bench.sheet.begun() && !done && !p.report {
		list = append(list, button("foot-mark", "Mark part", next < 0).OnClick(p.onMarkAll))
	}
	switch i := p.nextPart(); {
	case i < 0 && !p.report:
		list = append(list, button("foot-report", "See the report", done).OnClick(p.onReport))
	case i >= 0:
		text := "Next part"
		if !p.isMarked(p.saved.At) && !p.report {
			text = "Skip"
		}
		list = append(list, button("foot-part", text, done || p.report).OnClick(p.onNextPart))
	}
	return app.Div().Class("bar").Hidden(len(list) == 0).Body(list...)
}
