package page

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/exam"
	"riserwork/problems/skills"
)

// Render shows the start, the questions, or the report.
func (x *examPage) Render() app.UI {
	switch {
	case x.paper == nil:
		return x.start()
	case x.saved.Ended > 0:
		return x.reported()
	}
	return x.sitting()
}

// start is where a paper is chosen.
func (x *examPage) start() app.UI {
	return frame("exam", x.notices,
		heading("A mock paper"),
		app.P().Text("As in an examination room: no hints, a plain sheet of constants, marked at the end. Every answer is kept as you give it."),
		x.carryOn(),
		x.kinds(),
		x.lengths(),
		x.ways(),
		x.times(),
		button("exam-start", x.startText(), !x.saved.underWay()).OnClick(x.onBegin),
		app.Section().Class("again").Aria("labelledby", "again").Body(
			app.H2().ID("again").Text("From a code"),
			app.P().Class("aside").Text("The same code gives everybody the same questions."),
			app.Label().For("exam-code").Text("Code of the paper"),
			app.Input().Type("text").Class("box").ID("exam-code").Spellcheck(false).AutoComplete(false).Attr("autocapitalize", "characters").
				Aria("invalid", x.fault != "").Aria("describedby", "exam-fault"),
			app.P().Class("fault").ID("exam-fault").Attr("role", "status").Text(x.fault),
			button("exam-again", "Sit this paper", false).OnClick(x.onCode),
		),
		app.Details().Class("weighing").Body(
			app.Summary().Text("How it is weighed"),
			app.P().Text("An approximation of the water part of a national trade examination, not a copy of one. Ask your school or authority for theirs."),
			x.shares(),
			app.Ul().Body(weighing()...),
		),
	)
}

func weighing() []app.UI {
	var list []app.UI
	for _, s := range exam.Weighing {
		list = append(list, app.Li().Body(app.Span().Text(s.Says+" "), app.Span().Class("confidence").Text("("+string(s.Confidence)+")")))
	}
	return list
}

// carryOn leads back to the paper under way, or to the report of the last.
func (x *examPage) carryOn() app.UI {
	a := app.A().Class("button").ID("exam-on").Href(examURL(x.saved.Code)).Hidden(x.saved.Code == "")
	if x.saved.underWay() {
		return a.Class("primary").Text(fmt.Sprintf("Carry on with your paper, %d of %d answered", x.saved.given(), len(x.saved.Answers)))
	}
	return a.Text("The report of your last paper")
}

// given counts the answers, without the paper being drawn.
func (s *examSaved) given() int {
	n := 0
	for _, a := range s.Answers {
		if a.Chosen > 0 || len(a.Lines()) > 0 {
			n++
		}
	}
	return n
}

func (x *examPage) kinds() app.UI {
	var list []option
	for _, b := range exam.Blueprints {
		list = append(list, option{b.ID, b.Title, b.Note})
	}
	return group("blueprint", "Paper", x.plan.Blueprint, list, x.onKind)
}

func (x *examPage) lengths() app.UI {
	var list []option
	for _, n := range []int{10, 20, 40} {
		list = append(list, option{strconv.Itoa(n), strconv.Itoa(n), ""})
	}
	return app.Div().Class("short-picks").Body(group("questions", "Questions", strconv.Itoa(x.plan.Questions), list, x.onLength))
}

func (x *examPage) ways() app.UI {
	now := "choose"
	if x.plan.Written {
		now = "write"
	}
	return group("way", "Sums", now, []option{
		{"choose", "Choose the answer", "as the examinations do"},
		{"write", "Write the working", "marked line by line"},
	}, x.onWay)
}

func (x *examPage) times() app.UI {
	return app.Div().Class("short-picks").Body(group("stretch", "Time", strconv.Itoa(x.stretch), []option{
		{"100", "As given", ""}, {"125", "× 1.25", ""}, {"150", "× 1.5", ""}, {"0", "No clock", ""},
	}, x.onStretch))
}

func (x *examPage) startText() string {
	if x.saved.underWay() {
		return "Drop it and start another, " + x.howLong()
	}
	return "Start, " + x.howLong()
}

// howLong is the time of the paper that is chosen.
func (x *examPage) howLong() string {
	s := examSaved{Stretch: x.stretch}
	whole, ok := s.clocked(x.plan)
	if !ok {
		return "no clock"
	}
	return counted(int(whole.Minutes()), "minute", "minutes")
}

// shares are the questions of each chapter of the paper that is chosen.
func (x *examPage) shares() app.UI {
	b, ok := exam.BlueprintByID(x.plan.Blueprint)
	if !ok {
		return app.Div().Hidden(true)
	}
	rows := [][]string{{"Chapter", "Share", "Questions"}}
	for i, c := range b.Counts(x.plan.Questions) {
		rows = append(rows, []string{skills.ChapterTitle(c.Chapter), fmt.Sprintf("%d %%", b.Shares[i].Percent), strconv.Itoa(c.Questions)})
	}
	return table("Share of each chapter", rows)
}

func (x *examPage) onKind(ctx app.Context, e app.Event) { x.plan.Blueprint = chosen(ctx) }

func (x *examPage) onLength(ctx app.Context, e app.Event) {
	x.plan.Questions, _ = strconv.Atoi(chosen(ctx))
}

func (x *examPage) onWay(ctx app.Context, e app.Event) { x.plan.Written = chosen(ctx) == "write" }

func (x *examPage) onStretch(ctx app.Context, e app.Event) { x.stretch, _ = strconv.Atoi(chosen(ctx)) }
