package page

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/exam"
	"riserwork/solver"
)

// sitting shows the question that lies open, all questions, and the sheet of
// constants.
func (x *examPage) sitting() app.UI {
	b, _ := exam.BlueprintByID(x.plan.Blueprint)
	return frame("exam", x.notices,
		app.Div().Class("exam-head").Body(
			heading("Mock paper: "+b.Title),
			x.clock(),
		),
		x.timeOver(),
		x.asked(),
		x.overview(),
		x.handInPart(),
		x.constants(),
		app.P().Class("unseen").ID("said").Attr("role", "status").Text(x.said),
		x.thumb(),
	)
}

// clock is the time left, which may be hidden.
func (x *examPage) clock() app.UI {
	_, ok := x.saved.clocked(x.plan)
	if !ok || x.saved.Beyond {
		return app.P().Class("clock").ID("clock").Text("No clock")
	}
	text, do := leftText(x.left), "Hide the clock"
	if x.saved.Hidden {
		text, do = "", "Show the clock"
	}
	return app.P().Class("clock").Body(
		app.Strong().ID("clock").Text(text),
		app.Button().Type("button").Class("link").ID("clock-switch").Text(do).OnClick(x.onClock),
	)
}

func (x *examPage) timeOver() app.UI {
	if !x.saved.over(x.plan, clockNow()) {
		return app.Section().Hidden(true)
	}
	return app.Section().Class("over").Aria("labelledby", "over").Body(
		app.H2().ID("over").TabIndex(-1).Text("The time is over"),
		app.P().Text("Your answers are kept. Hand in as an examination would, or finish it without the clock."),
		app.Div().Class("ways").Body(
			button("over-hand", "Hand in", true).OnClick(x.onHandIn),
			button("over-on", "Go on without the clock", false).OnClick(x.onBeyond),
		),
	)
}

// asked is the question that lies open.
func (x *examPage) asked() app.UI {
	q := x.question()
	n := strconv.Itoa(x.saved.At + 1)
	return app.Section().Class("question").Aria("labelledby", "question").Body(
		app.H2().ID("question").TabIndex(-1).Text("Question "+n+" of "+strconv.Itoa(len(x.paper.Questions))),
		app.P().Class("ask").ID("ask").Text(q.Ask()),
		givens(q),
		x.drawn(q),
		x.options(q),
		x.written(q),
		app.Label().Class("tick").Body(
			app.Input().Type("checkbox").ID("flag").OnChange(x.onFlag),
			app.Span().Text("Look at it again later"),
		),
	)
}

// givens are the numbers of the problem that its question does not tell;
// constants stand on the sheet.
func givens(q *exam.Question) app.UI {
	if q.Problem == nil {
		return app.Dl().Hidden(true)
	}
	p, ask := q.Problem, q.Ask()
	var rows []app.UI
	for i := range p.Told[:p.Constants] {
		t := &p.Told[i]
		if strings.Contains(ask, t.Text) {
			continue
		}
		rows = append(rows, app.Div().Class("given").Body(app.Dt().Text(p.Fill(t.Says, p.Env())), app.Dd().Text(t.Text)))
	}
	return app.Dl().Class("told").Hidden(len(rows) == 0).Body(rows...)
}

// drawn is the drawing of the question: open where it is asked about, else
// behind a word.
func (x *examPage) drawn(q *exam.Question) app.UI {
	switch {
	case x.picture == nil:
		return app.Div().Hidden(true)
	case q.Problem == nil:
		return app.Div().Class("building").Body(&riser{Scene: x.picture})
	}
	return app.Details().Class("building").Body(app.Summary().Text("The building"), &riser{Scene: x.picture})
}

// options are the answers to choose from. Which one is checked is left to the
// browser: a mark that the framework sets late, while arrow keys are pressed
// fast, would take back the next one. See sync.
func (x *examPage) options(q *exam.Question) app.UI {
	if q.Written {
		return app.FieldSet().Hidden(true)
	}
	rows := []app.UI{app.Legend().Class("unseen").Text("Answers")}
	for i, o := range q.Options {
		rows = append(rows, app.Label().Class("exam-option").Body(
			app.Input().Type("radio").Name("answer").ID("option-"+strconv.Itoa(i+1)).Value(strconv.Itoa(i+1)).
				Disabled(x.closed()).OnChange(x.onChoose),
			app.Span().Class("letter").Text(letter(i+1)),
			app.Span().Text(o.Text),
		))
	}
	return app.FieldSet().Class("exam-options").Aria("describedby", "ask").Body(rows...)
}

// letter is the letter of an option, counted from 1.
func letter(n int) string { return string(rune('A' + n - 1)) }

// written is the sheet for an answer that is written.
func (x *examPage) written(q *exam.Question) app.UI {
	if !q.Written {
		return app.Div().Hidden(true)
	}
	return app.Div().Class("exam-written").Body(
		app.Label().For("written").Text("Your working, a line each, and the answer with its unit"),
		app.Textarea().Class("box").ID("written").Rows(5).Spellcheck(false).Attr("maxlength", maxWritten).Attr("autocapitalize", "off").
			Disabled(x.closed()).Aria("describedby", "ask").OnInput(x.onWrite),
	)
}

// overview is all questions with how each stands.
func (x *examPage) overview() app.UI {
	var list []app.UI
	for i := range x.paper.Questions {
		sign, says := "\u00a0", "open"
		if x.paper.Questions[i].Given(x.saved.Answers[i].Answer) {
			sign, says = "●", "answered"
		}
		if x.saved.Answers[i].Flag {
			sign, says = "⚑", says+", to look at again"
		}
		b := app.Button().Type("button").Class("part-key").ID("go-"+strconv.Itoa(i+1)).DataSet("question", i).DataSet("state", says).
			Aria("label", fmt.Sprintf("Question %d: %s", i+1, says)).OnClick(x.onGo).Body(
			app.Span().Class("part-number").Text(strconv.Itoa(i+1)),
			app.Span().Class("part-word").Text(sign),
		)
		if i == x.saved.At {
			b.Aria("current", "step")
		}
		list = append(list, app.Li().Body(b))
	}
	return app.Nav().Class("parts").Aria("label", "All questions").Body(
		app.H2().Text("All questions"),
		app.P().Class("aside").ID("sum").Text(x.sum()+" ● answered, ⚑ to look at again."),
		app.Ol().Body(list...),
	)
}

// sum says how far the paper is.
func (x *examPage) sum() string {
	given, flags := 0, 0
	for i := range x.paper.Questions {
		if x.paper.Questions[i].Given(x.saved.Answers[i].Answer) {
			given++
		}
		if x.saved.Answers[i].Flag {
			flags++
		}
	}
	text := fmt.Sprintf("%d of %d answered", given, len(x.paper.Questions))
	if flags > 0 {
		text += fmt.Sprintf(", %d to look at again", flags)
	}
	return text + "."
}

// handInPart asks before the paper is handed in.
func (x *examPage) handInPart() app.UI {
	if !x.asking {
		return app.Section().Class("hand-in").Body(button("hand-in", "Hand in", false).OnClick(x.onAsk))
	}
	return app.Section().Class("hand-in", "over").Aria("labelledby", "asking").Body(
		app.H2().ID("asking").TabIndex(-1).Text("Hand in now?"),
		app.P().Text(x.sum()+" After that nothing can be changed."),
		app.Div().Class("ways").Body(
			button("hand-in-now", "Hand in", true).OnClick(x.onHandIn),
			button("hand-in-not", "Not yet", false).OnClick(x.onStay),
		),
	)
}

// constants are the figures that an examination room hands out, and no rule.
func (x *examPage) constants() app.UI {
	rows := [][]string{{"Constant", "Figure"}}
	for _, c := range solver.Constants {
		rows = append(rows, []string{c.SaysIn(x.plan.House.System), taught(x.plan.House, c) + " " + c.In(x.plan.House.System).Unit})
	}
	return app.Details().Class("constants").Body(
		app.Summary().Text("Sheet of constants"),
		app.P().Class("aside").Text("House rules: "+houseWords(x.plan.House)+"."),
		table("Constants", rows),
		app.A().Class("switch").Href(link(tablesPath)).Text("Tables of the code: your paper stays, the clock runs on"),
	)
}

// thumb is what is under the thumb: back and on.
func (x *examPage) thumb() app.UI {
	next := "Next"
	switch {
	case x.saved.At+1 == len(x.paper.Questions):
		next = "To the end"
	case !x.question().Given(x.saved.Answers[x.saved.At].Answer):
		next = "Skip for now"
	}
	return app.Div().Class("bar").Body(
		button("exam-back", "Back", false).Disabled(x.saved.At == 0).OnClick(x.onBack),
		button("exam-next", next, true).OnClick(x.onNext),
	)
}
