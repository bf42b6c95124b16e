package page

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/devices"
	"riserwork/problems/exam"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
)

// reported shows the marked paper: by chapter, then each answer that was not
// right, then the right ones.
func (x *examPage) reported() app.UI {
	var wrong, right []app.UI
	for i := range x.paper.Questions {
		if x.report.Questions[i].Right {
			right = append(right, x.rightOne(i))
			continue
		}
		wrong = append(wrong, x.wrongOne(i))
	}
	b, _ := exam.BlueprintByID(x.plan.Blueprint)
	return frame("exam", x.notices,
		heading(fmt.Sprintf("%d of %d right", x.report.Right, x.report.Of)),
		app.P().Class("lead").Text(b.Title+". "+x.spent()),
		x.byChapter(),
		app.Section().Class("wrongs").Aria("labelledby", "wrongs").Hidden(len(wrong) == 0).Body(
			append([]app.UI{app.H2().ID("wrongs").Text("What to look at")}, wrong...)...,
		),
		app.Details().Class("rights").Hidden(len(right) == 0).Body(
			app.Summary().Text("The "+counted(len(right), "right answer", "right answers")),
			app.Ol().Body(right...),
		),
		app.Section().Class("again").Aria("labelledby", "again").Body(
			app.H2().ID("again").Text("This paper again"),
			app.P().Body(app.Text("Its code: "), app.Strong().ID("its-code").Text(x.saved.Code)),
			app.P().Class("aside").Text("Drawn under "+houseWords(x.plan.House)+"."),
			app.Div().Class("ways").Body(
				button("sit-again", "Sit it again", false).OnClick(x.onAgain),
				app.A().Class("button").ID("another-paper").Href(link(examPath)).Text("Another paper"),
				button("print", "Print", false).OnClick(x.onPrint),
			),
		),
		app.P().Class("unseen").ID("said").Attr("role", "status").Text(x.said),
	)
}

// spent says how long it took and what was left open.
func (x *examPage) spent() string {
	text := "It took " + counted(max(1, int(x.saved.used().Minutes()+0.5)), "minute", "minutes")
	if whole, ok := x.saved.clocked(x.plan); ok {
		text += fmt.Sprintf(" of %d", int(whole.Minutes()))
	}
	text += "."
	if x.saved.Beyond {
		text += " It was finished without the clock."
	}
	if open := x.report.Of - x.report.Given; open > 0 {
		text += " " + counted(open, "question", "questions") + " without an answer."
	}
	return text
}

func (x *examPage) byChapter() app.UI {
	rows := [][]string{{"Chapter", "Right", "Open"}}
	for _, c := range x.report.Chapters {
		open := ""
		if n := c.Of - c.Given; n > 0 {
			open = strconv.Itoa(n)
		}
		rows = append(rows, []string{skills.ChapterTitle(c.Chapter), fmt.Sprintf("%d of %d", c.Right, c.Of), open})
	}
	return app.Section().Class("by-chapter").Body(table("Right answers by chapter", rows))
}

func (x *examPage) rightOne(i int) app.UI {
	q := &x.paper.Questions[i]
	return app.Li().Body(
		app.P().Text(fmt.Sprintf("%d. %s", i+1, q.Ask())),
		app.P().Class("aside").Text("✓ "+given(q, x.saved.Answers[i].Answer)),
	)
}

// given is an answer in words.
func given(q *exam.Question, a exam.Answer) string {
	switch {
	case !q.Given(a):
		return "nothing"
	case q.Written:
		return strings.Join(a.Lines(), "; ")
	}
	return letter(a.Chosen) + " " + q.Options[a.Chosen-1].Text
}

// right is the right answer in words.
func right(q *exam.Question) string {
	if q.Written {
		s := q.Problem.Answer()
		return s.Text(s.Value)
	}
	return letter(q.Right()) + " " + q.Options[q.Right()-1].Text
}

// wrongOne is a question that was not answered rightly, with why.
func (x *examPage) wrongOne(i int) app.UI {
	q := &x.paper.Questions[i]
	a := x.saved.Answers[i].Answer
	return app.Article().Class("wrong-one").ID("wrong-"+strconv.Itoa(i+1)).Body(
		app.H3().Text(fmt.Sprintf("%d. %s", i+1, q.Title())),
		app.P().Text(q.Ask()),
		givens(q),
		faulty(q),
		app.Dl().Class("two-answers").Body(
			app.Dt().Text("Yours"), app.Dd().Text(given(q, a)),
			app.Dt().Text("Right"), app.Dd().Text(right(q)),
		),
		x.whyWrong(i),
		app.Div().Class("onwards").Body(onwards(q)...),
	)
}

// faulty is the drawing that the question was about.
func faulty(q *exam.Question) app.UI {
	if q.Reason == nil || q.Reason.Kind != devices.Wrong {
		return app.Div().Hidden(true)
	}
	return app.Details().Class("building").Body(app.Summary().Text("The drawing"), &riser{Scene: drawingOf(q)})
}

// whyWrong explains an answer: the slip that leads there, the lines that do
// not stand, or what is said of an option; and the right working.
func (x *examPage) whyWrong(i int) app.UI {
	q, m := &x.paper.Questions[i], &x.report.Questions[i]
	a := x.saved.Answers[i].Answer
	var list []app.UI
	switch {
	case q.Reason != nil && m.Given:
		list = append(list, app.P().Text(q.Options[a.Chosen-1].Why), app.P().Text(q.Options[q.Right()-1].Why))
	case q.Reason != nil:
		list = append(list, app.P().Text(q.Options[q.Right()-1].Why))
	case m.Working != nil:
		list = append(list, workingFaults(m.Working)...)
	case m.Given:
		o := q.Options[a.Chosen-1]
		if s, ok := slipOf(q.Problem, o.Step, o.Slip); ok {
			list = append(list, explained(s, "What leads there"))
		}
	}
	if q.Problem != nil {
		list = append(list, solvedLines(q))
	}
	if q.Reason != nil {
		if text, _ := devices.Consequence(q.Reason.Shows, q.Reason.Seed, x.plan.House); text != "" {
			list = append(list, app.P().Class("aside").Text(text))
		}
		if q.Reason.Caution != "" {
			list = append(list, app.P().Class("aside").Text("⚠ "+q.Reason.Caution))
		}
	} else {
		for _, text := range q.Problem.Skill.Cautions {
			list = append(list, app.P().Class("aside").Text("⚠ "+q.Problem.Fill(text, q.Problem.Env())))
		}
	}
	return app.Div().Class("reasons").Body(list...)
}

// workingFaults are the lines of a written answer that do not stand.
func workingFaults(r *marking.Result) []app.UI {
	list := []app.UI{app.P().Text(fmt.Sprintf("The working by itself: %d of %d marks.", r.Marks, r.Of))}
	for n, f := range r.Lines {
		if f.Verdict.Good() || f.Verdict == marking.Empty || f.Verdict == marking.Replaced {
			continue
		}
		list = append(list, app.P().Text(fmt.Sprintf("Line %d, %s: %s. %s", n+1, f.Text, lower(shown(f.Verdict).word), f.Says)))
		if len(f.Slips) > 0 {
			list = append(list, explained(f.Slips[0], "What was done there"))
		}
	}
	return list
}

// solvedLines is the right working behind a word.
func solvedLines(q *exam.Question) app.UI {
	var list []app.UI
	lines := q.Problem.Worked()
	for i := range lines {
		l := &lines[i]
		list = append(list, app.Li().Body(
			app.Span().Class("says").Text(l.Says),
			app.P().Class("formula").Body(numbersOf(l), app.Strong().Class("value").Text(" = "+l.Value)),
		))
	}
	return app.Details().Class("solved-lines").Body(app.Summary().Text("The working"), app.Ol().Body(list...))
}

// onwards are the ways on from a question: its card, and one to work.
func onwards(q *exam.Question) []app.UI {
	if q.Problem != nil {
		return []app.UI{
			app.A().Class("switch").Href(cardURL(q.Problem.Skill)).Text("The rule card"),
			app.A().Class("switch").Href(link(workPath) + "?skill=" + q.Problem.Skill.ID).Text("Work one of these"),
		}
	}
	list := []app.UI{app.A().Class("switch").Href(link(reasonPath)).Text("Questions on devices")}
	if q.Reason.Device != nil {
		list = append([]app.UI{app.A().Class("switch").Href(deviceURL(q.Reason.Device)).Text("Card: " + q.Reason.Device.Name)}, list...)
	}
	return list
}
