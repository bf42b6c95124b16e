package page

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Render shows the problem: what is asked and told, the building, the lines,
// and at the foot what to do next.
func (w *work) Render() app.UI {
	if w.bench == nil {
		return frame("work", w.notices,
			heading("No problem here"),
			app.P().Class("fault").Text(w.fault),
			app.If(len(w.address.givens) > 0, w.numbersLink()),
			app.A().Class("button", "primary").Href(link(startPath)).Text("To the skills"),
		)
	}
	p := w.bench.p
	return frame("work", w.notices,
		app.Div().Class("task").Body(
			w.task.head(),
			w.place(),
			heading(p.Skill.Title),
			app.P().Class("ask").Text(p.AskText()),
			w.told(),
			app.If(w.task == nil && w.keeper == nil, w.numbersLink()),
			w.cautions(),
			app.Div().Class("building").Body(&riser{Scene: w.picture}),
		),
		app.Div().Class("answer").Body(
			w.working(),
			w.wouldDo(),
			w.outcome(),
			w.workedOut(),
			w.scheme(),
			w.background(),
		),
		app.P().Class("unseen").ID("said").Attr("role", "status").Text(w.said),
		w.foot(),
	)
}

// working is where it is worked, after its kind.
func (w *work) working() app.UI {
	switch w.bench.sheet.Kind {
	case mistake:
		return w.toFind()
	case choice:
		return w.toChoose()
	}
	return app.Div().Class("working").Body(
		app.Div().Class("lines-head").Body(
			app.H2().Class("lines-title").Text(w.linesTitle()),
			app.If(w.task == nil && w.bench.sheet.Given == 0, w.kindSwitch()),
		),
		w.unmet(),
		w.example(),
		app.Ol().Class("lines").Body(w.lines()...),
		app.Button().Type("button").Class("button", "add").ID("add").Hidden(w.bench.sheet.Kind != free).Text("Add a line").OnClick(w.onAdd),
	)
}

// told lists what the problem tells.
func (w *work) told() app.UI {
	p := w.bench.p
	var rows []app.UI
	for i := range p.Told {
		t := &p.Told[i]
		class := "given"
		if t.Constant {
			class = "constant"
		}
		rows = append(rows, app.Div().Class(class).Body(
			app.Dt().Text(p.Fill(t.Says, p.Env())),
			app.Dd().Text(t.Text),
		))
	}
	return app.Dl().Class("told").Body(rows...)
}

// numbersLink leads to the boxes for numbers of one's own.
func (w *work) numbersLink() app.UI {
	text := "Put in your own numbers"
	if len(w.address.givens) > 0 {
		text = "Change the numbers"
	}
	if w.address.skill == nil {
		return app.Div().Hidden(true)
	}
	return app.A().Class("switch").ID("numbers").Href(ownURL(w.address)).Text(text)
}

// cautions are one line that opens.
func (w *work) cautions() app.UI {
	list := w.bench.p.Skill.Cautions
	if len(list) == 0 {
		return nil
	}
	env := w.bench.p.Env()
	var rest []app.UI
	for _, text := range list[1:] {
		rest = append(rest, app.P().Text(w.bench.p.Fill(text, env)))
	}
	return app.Details().Class("caution").Body(
		app.Summary().Body(
			app.Strong().Text("⚠ Caution "),
			app.Span().Text(w.bench.p.Fill(list[0], env)),
		),
		app.Div().Body(rest...),
	)
}

// outcome is the marks and the ways on, once the sheet was marked.
func (w *work) outcome() app.UI {
	s := &w.bench.sheet
	if !s.Marked || !written(s.Kind) && !s.Done || w.bench.isExample() {
		return app.Section().Class("outcome").Hidden(true)
	}
	title, note := "Found and put right", ""
	switch {
	case written(s.Kind):
		title, note = w.marksText(), w.bench.result.Note
	case s.Kind == choice:
		title = "That is the answer"
	}
	return app.Section().Class("outcome").ID("result").TabIndex(-1).Aria("label", "Marks").DataSet("done", s.Done).Body(
		app.H2().Text(title),
		app.P().Text(w.advice()),
		app.P().Class("aside").Hidden(w.route() == "").Text(w.route()),
		app.P().Class("aside").Hidden(note == "").Text(note),
		app.Div().Class("ways").Body(w.ways()...),
		app.If(w.task == nil, w.otherKinds()),
	)
}

// advice is what to do now that the sheet is marked.
func (w *work) advice() string {
	switch w.bench.sheet.Kind {
	case mistake:
		return fmt.Sprintf("Line %d was the first wrong line, and yours stands in its place.", w.bench.planted.Wrong+1)
	case choice:
		return "Here is the working that leads there."
	}
	if i := w.bench.fault(); i >= 0 {
		return fmt.Sprintf("Put line %d right, then mark again. The lines below it follow from it.", i+1)
	}
	switch i := w.bench.result.First; {
	case w.bench.sheet.Done && i >= 0:
		return fmt.Sprintf("The answer stands. See line %d: %s.", i+1, lower(shown(w.bench.result.Lines[i].Verdict).word))
	case w.bench.sheet.Done:
		return "The answer stands, and every line with it."
	}
	return "The answer is not there yet. Write the line that is missing."
}

// verdict is the outcome as spoken.
func (w *work) verdict() string {
	return w.marksText() + ". " + w.advice()
}

func (w *work) marksText() string {
	got, of := w.bench.marks()
	return fmt.Sprintf("%d of %d marks", got, of)
}

// ways are what one can go on to.
func (w *work) ways() []app.UI {
	if w.task != nil {
		return w.task.foot(w.bench.sheet.Done)
	}
	another := app.Button().Type("button").Class("button").ID("another").Text("Another like this").OnClick(w.onAnother)
	if w.bench.sheet.Done && len(w.address.mix) == 0 && !w.address.today {
		another.Class("primary")
	}
	list := []app.UI{another}
	if w.address.today {
		list = []app.UI{button("next-today", w.onwardText(), w.bench.sheet.Done).OnClick(w.onNextToday)}
	}
	if written(w.bench.sheet.Kind) && len(w.bench.result.Slips) > 0 {
		list = append(list, app.Button().Type("button").Class("button").ID("trap").Text("Another with this trap").OnClick(w.onTrap))
	}
	if len(w.address.mix) > 0 {
		mix := app.Button().Type("button").Class("button").ID("next-mix").Text("Next of the mix").OnClick(w.onMix)
		if w.bench.sheet.Done {
			mix.Class("primary")
		}
		list = append(list, mix)
	}
	text := "Show the full working"
	if w.compare {
		text = "Hide the full working"
	}
	return append(list, app.Button().Type("button").Class("button").ID("compare").Aria("expanded", w.compare).Text(text).OnClick(w.onCompare))
}

func (w *work) onCompare(ctx app.Context, e app.Event) {
	w.compare = !w.compare
	if !w.bench.sheet.Done {
		w.bench.sheet.Shown = true
		w.save(ctx)
	}
}

// background is where the rule comes from and, once the sheet was marked,
// why it holds.
func (w *work) background() app.UI {
	p := w.bench.p
	return app.Div().Class("background").Body(
		app.A().Class("card-link").ID("card-link").Hidden(w.task.hintless() || w.task.silent()).Href(cardURL(p.Skill)).Text("The rule card"),
		app.Details().Body(app.Summary().Text("Sources"), app.Ul().Body(sources(p.Skill)...)),
		app.If(w.bench.sheet.Marked, app.Details().Body(
			app.Summary().Text("Why the rule holds"),
			app.P().Text(p.Fill(p.Skill.Holds, p.Env())),
		)),
	)
}

// foot is what is under the thumb: the keys while a line is written, else the
// next thing to do.
func (w *work) foot() app.UI {
	if w.at >= 0 && len(w.bench.choices(w.at)) == 0 {
		return w.pad()
	}
	var list []app.UI
	s := &w.bench.sheet
	next := w.bench.next()
	switch {
	case w.task != nil && (s.Done || w.task.silent() && (s.answered() || written(s.Kind) && next < 0)):
		return app.Div().Class("bar").Body(w.task.foot(true)...)
	case w.bench.isExample():
		list = append(list, button("foot-own", w.onwardText(), true).OnClick(w.onOwn))
	case s.Marked && s.Done && w.address.today:
		list = append(list, button("foot-today", w.onwardText(), true).OnClick(w.onNextToday))
	case s.Marked && s.Done && len(w.address.mix) > 0:
		list = append(list, button("foot-mix", "Next of the mix", true).OnClick(w.onMix))
	case s.Marked && s.Done:
		list = append(list, button("foot-another", "Another like this", true).OnClick(w.onAnother))
	case !written(s.Kind):
		list = append(list, w.footFind()...)
	case w.bench.wrong(max(next, 0)):
		list = append(list, button("foot-line", fmt.Sprintf("Fix line %d", next+1), true).OnClick(w.onNextLine))
	case next >= 0:
		list = append(list, button("foot-line", fmt.Sprintf("Write line %d", next+1), true).OnClick(w.onNextLine))
	}
	if written(s.Kind) && s.begun() && !s.Done && !w.task.silent() {
		list = append(list, button("foot-mark", "Mark all", next < 0).OnClick(w.onMarkAll))
	}
	if w.task.silent() && s.begun() {
		list = append(list, w.task.foot(false)[0])
	}
	return app.Div().Class("bar").Hidden(len(list) == 0).Body(list...)
}

func button(id, text string, primary bool) app.HTMLButton {
	b := app.Button().Type("button").Class("button").ID(id).Text(text)
	if primary {
		b.Class("primary")
	}
	return b
}

func (w *work) onNextLine(ctx app.Context, e app.Event) { w.goTo(ctx, w.bench.next()) }

func (w *work) onMarkAll(ctx app.Context, e app.Event) { w.markAll(ctx) }

// lower is text without its capital.
func lower(text string) string {
	if text == "" {
		return text
	}
	return strings.ToLower(text[:1]) + text[1:]
}
