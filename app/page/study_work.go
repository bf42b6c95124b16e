package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// nextGiven is how many lines are shown of another problem of the skill: all
// are left to those who never asked for help, else as the record has it.
func (w *work) nextGiven() int {
	if w.bench.sheet.Given == 0 {
		return 0
	}
	a := w.address
	a.seed++
	return givenOf(a)
}

// linesTitle is the heading of the lines.
func (w *work) linesTitle() string {
	switch {
	case w.bench.isExample():
		return "A worked example"
	case w.bench.sheet.Given > 0:
		return fmt.Sprintf("Write from line %d on", w.bench.sheet.Given+1)
	}
	return "Your lines"
}

// example is what stands below a worked example.
func (w *work) example() app.UI {
	return app.P().Class("aside").Hidden(!w.bench.isExample()).Text("Read it line by line. The next problem leaves a line to you.")
}

// unmet offers a worked example to those who open a skill that is new to
// them.
func (w *work) unmet() app.UI {
	a := w.address
	a.seed, a.given = a.seed+1, all
	fresh := w.task == nil && w.keeper == nil && records.loaded && !w.bench.sheet.begun() && w.bench.sheet.Kind == blanks &&
		w.bench.sheet.Given == 0 && !records.state.Skill(w.bench.sheet.Skill).Met
	return app.A().Class("switch").ID("see-one").Hidden(!fresh).Href(a.url()).Text("New to you? See one worked first")
}

// givenLine is a line that is shown worked.
func (w *work) givenLine(i int) app.UI {
	return app.Li().Class("line", "shown").Body(
		app.P().Class("says").Body(
			app.Span().Class("number").Text(fmt.Sprint(i+1)),
			app.Span().Text(w.label(i)),
		),
		app.P().Class("formula", "worked-line").Text(w.bench.sheet.Lines[i].Text),
		app.Div().Class("tools").Body(app.Details().Class("why").Body(
			app.Summary().Text("Why is this line so?"),
			app.P().Text(w.bench.p.Fill(w.bench.p.Steps[i].Why, w.bench.env())),
		)),
	)
}

// place says where in today's work the problem stands.
func (w *work) place() app.UI {
	if len(w.address.givens) > 0 {
		return app.P().Class("place").Text("Your own numbers")
	}
	if !w.address.today || len(w.study.Items) == 0 {
		return app.P().Hidden(true)
	}
	return app.P().Class("place").Text(fmt.Sprintf("Today: problem %d of %d", min(w.study.At+1, len(w.study.Items)), len(w.study.Items)))
}

// onwardText is what the button to the next problem of today says.
func (w *work) onwardText() string {
	n := len(w.study.Items) - w.study.At - 1
	switch {
	case w.bench.isExample():
		return "Now one with a line for you"
	case n <= 0:
		return "Done for today"
	}
	return fmt.Sprintf("Next problem, %d to go", n)
}

// onOwn goes on from a worked example to a problem of one's own.
func (w *work) onOwn(ctx app.Context, e app.Event) {
	w.bench.markAll()
	w.noteThen(ctx, func(ctx app.Context) {
		if w.address.today {
			w.onNextToday(ctx, e)
			return
		}
		w.onAnother(ctx, e)
	})
}

// onNextToday opens the next problem of today's work.
func (w *work) onNextToday(ctx app.Context, e app.Event) {
	store := ctx.LocalStorage()
	s, _ := loadStudy(store)
	if s.opens(w.address) {
		s.done()
	}
	url, ok := s.onward(w.own)
	w.say(s.keep(store))
	if !ok {
		url = link(todayPath)
	}
	ctx.Navigate(url)
}
