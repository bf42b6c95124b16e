package page

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/exam"
)

// examPage is the page of a mock paper: its start, its questions under the
// clock, and its report.
type examPage struct {
	app.Compo

	own     problems.House
	saved   examSaved
	plan    exam.Plan   // chosen, of a paper to come
	stretch int         // chosen
	code    string      // as typed
	fault   string      // why it cannot be read
	paper   *exam.Paper // nil at the start
	report  exam.Report // once it was handed in
	picture *draw.Scene // of the question that lies open
	asking  bool        // whether to hand in
	left    time.Duration
	ticking int // counts the clocks that were started; only the last one runs
	notices []string
	note    string // for the next paper's notices
	said    string
}

// OnNav shows the paper that the address names, or the start of one.
func (x *examPage) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	own, says := loadHouse(store)
	x.own, x.notices, x.note = own, []string{says, x.note}, ""
	x.saved, says = loadExam(store)
	x.notices = append(x.notices, says)
	x.paper, x.asking, x.said, x.code, x.fault = nil, false, "", "", ""
	x.plan = exam.Plan{Blueprint: exam.Blueprints[0].ID, Questions: exam.Lengths[0], House: own}
	x.stretch = stretches[0]
	if code := ctx.Page().URL().Query().Get("code"); code != "" {
		x.open(code)
	}
	arrive(ctx, "exam", "Mock paper · Riserwork")
	x.sync(ctx)
	x.run(ctx)
}

// open lays out the saved paper where the code names it; another code waits
// in its box to be started.
func (x *examPage) open(code string) {
	plan, earlier, err := exam.ReadCode(code)
	if err != nil {
		x.code, x.fault = clip(code), problems.Sentence(err.Error())+"."
		return
	}
	x.code = plan.Code()
	if saved, _, err := exam.ReadCode(x.saved.Code); err != nil || saved.Code() != x.code {
		if earlier {
			x.fault = otherSkills
		}
		return
	}
	if x.paper, err = exam.New(plan); err != nil {
		x.paper, x.fault = nil, "No paper could be drawn for this code. Take another one."
		return
	}
	x.plan = plan
	x.turn()
	if x.saved.Ended > 0 {
		x.picture = nil
		x.report = x.paper.Mark(x.saved.answers())
	}
}

const otherSkills = "This code was made with another version of the skills: its questions may differ from those of the person who gave it to you."

func examURL(code string) string {
	return link(examPath) + "?" + url.Values{"code": {code}}.Encode()
}

// begin starts a plan and goes to its first question.
func (x *examPage) begin(ctx app.Context, plan exam.Plan) {
	x.saved = freshExam(plan, x.stretch, clockNow())
	x.note += keep(ctx.LocalStorage(), examKey, "your mock paper", x.saved)
	if ctx.Page().URL().Query().Get("code") == x.saved.Code {
		x.OnNav(ctx)
		return
	}
	ctx.Navigate(examURL(x.saved.Code))
}

// change changes the saved paper and keeps it. It is read anew first, since
// another tab may have written it.
func (x *examPage) change(ctx app.Context, f func(s *examSaved)) {
	store := ctx.LocalStorage()
	at := x.saved.At
	if s, _ := loadExam(store); s.Code == x.saved.Code && s.Began == x.saved.Began && s.Ended == x.saved.Ended {
		x.saved = s
		x.saved.At = at
	}
	f(&x.saved)
	x.say(keep(store, examKey, "your mock paper", x.saved))
}

func (x *examPage) say(text string) {
	if !slices.Contains(x.notices, text) {
		x.notices = append(x.notices, text)
	}
}

// question is the one that lies open.
func (x *examPage) question() *exam.Question { return &x.paper.Questions[x.saved.At] }

// closed reports that no answer is taken: the paper was handed in, or its
// time is over.
func (x *examPage) closed() bool { return x.saved.Ended > 0 || x.saved.over(x.plan, clockNow()) }

// turn draws what the question that lies open shows.
func (x *examPage) turn() {
	x.picture = drawingOf(x.question())
}

// drawingOf is the drawing of a question; nil where it has none.
func drawingOf(q *exam.Question) *draw.Scene {
	switch {
	case q.Problem != nil:
		return draw.Problem(q.Problem, false)
	case q.Reason.Kind == devices.Wrong:
		return draw.Detail(q.Reason.Drawing, draw.DetailOptions{})
	}
	return nil
}

// goTo opens a question.
func (x *examPage) goTo(ctx app.Context, i int) {
	if i < 0 || i >= len(x.paper.Questions) {
		return
	}
	x.asking = false
	x.change(ctx, func(s *examSaved) { s.At = i })
	x.turn()
	x.sync(ctx)
	x.after(ctx, func() { app.Window().Call("scrollTo", 0, 0); focus("question") })
}

// after runs f once the page shows the change.
func (x *examPage) after(ctx app.Context, f func()) {
	ctx.Dispatcher().Dispatch(app.Dispatch{Mode: app.Defer, Source: x, Function: func(app.Context) { f() }})
}

// sync puts the answer into its boxes, which are left to the browser while
// somebody answers.
func (x *examPage) sync(ctx app.Context) {
	x.after(ctx, func() {
		if el := app.Window().GetElementByID("exam-code"); el.Truthy() {
			el.Set("value", x.code)
		}
		if x.paper == nil || x.saved.Ended > 0 {
			return
		}
		a := x.saved.Answers[x.saved.At]
		if el := app.Window().GetElementByID("written"); el.Truthy() {
			el.Set("value", a.Text)
		}
		for i := range x.question().Options {
			if el := app.Window().GetElementByID("option-" + strconv.Itoa(i+1)); el.Truthy() {
				el.Set("checked", a.Chosen == i+1)
			}
		}
		if el := app.Window().GetElementByID("flag"); el.Truthy() {
			el.Set("checked", a.Flag)
		}
	})
}

// run starts the clock, which ticks by the time of the device and not by its
// own counting, so that a screen that was locked loses none.
func (x *examPage) run(ctx app.Context) {
	x.ticking++
	if x.paper == nil {
		return
	}
	x.left = x.saved.left(x.plan, clockNow())
	x.tick(ctx, x.ticking)
}

func (x *examPage) tick(ctx app.Context, run int) {
	if _, ok := x.saved.clocked(x.plan); !ok || run != x.ticking || x.saved.Ended > 0 || x.saved.Beyond {
		return
	}
	before := x.left
	x.left = x.saved.left(x.plan, clockNow())
	if says := warning(before, x.left); says != "" {
		x.said = says
	}
	if x.left <= 0 {
		x.said = "The time is over."
		x.after(ctx, func() { focus("over") })
		return
	}
	ctx.After(time.Second, func(ctx app.Context) { x.tick(ctx, run) })
}

// handIn marks the paper and writes it into the record.
func (x *examPage) handIn(ctx app.Context) {
	x.change(ctx, func(s *examSaved) {
		s.Ended = max(clockNow(), s.Began)
		if whole, ok := s.clocked(x.plan); ok && !s.Beyond {
			s.Ended = min(s.Ended, s.Began+whole.Milliseconds())
		}
	})
	x.asking = false
	x.report = x.paper.Mark(x.saved.answers())
	x.said = fmt.Sprintf("Handed in. %d of %d right.", x.report.Right, x.report.Of)
	list := examNews(x.paper, x.saved.answers())
	for i := range list {
		list[i] = records.stamped(list[i])
	}
	records.write(list, func() { ctx.Dispatch(func(app.Context) {}) })
	x.after(ctx, func() { app.Window().Call("scrollTo", 0, 0); focus(titleID) })
}

func (x *examPage) onChoose(ctx app.Context, e app.Event) {
	n, err := strconv.Atoi(chosen(ctx))
	if err != nil || x.closed() {
		x.sync(ctx)
		return
	}
	x.change(ctx, func(s *examSaved) { s.Answers[s.At].Chosen = n })
}

func (x *examPage) onWrite(ctx app.Context, e app.Event) {
	if x.closed() {
		x.sync(ctx)
		return
	}
	text := chosen(ctx)
	if runes := []rune(text); len(runes) > maxWritten {
		text = string(runes[:maxWritten])
	}
	x.change(ctx, func(s *examSaved) { s.Answers[s.At].Text = text })
}

func (x *examPage) onFlag(ctx app.Context, e app.Event) {
	on := ctx.JSSrc().Get("checked").Bool()
	x.change(ctx, func(s *examSaved) { s.Answers[s.At].Flag = on })
}

func (x *examPage) onGo(ctx app.Context, e app.Event) {
	if i, err := strconv.Atoi(ctx.JSSrc().Get("dataset").Get("question").String()); err == nil {
		x.goTo(ctx, i)
	}
}

func (x *examPage) onBack(ctx app.Context, e app.Event) { x.goTo(ctx, x.saved.At-1) }

// onNext goes on; past the last question it asks whether to hand in.
func (x *examPage) onNext(ctx app.Context, e app.Event) {
	if x.saved.At+1 < len(x.paper.Questions) {
		x.goTo(ctx, x.saved.At+1)
		return
	}
	x.onAsk(ctx, e)
}

func (x *examPage) onAsk(ctx app.Context, e app.Event) {
	x.asking = true
	x.after(ctx, func() { bring("asking"); focus("asking") })
}

func (x *examPage) onStay(ctx app.Context, e app.Event) {
	x.asking = false
	x.after(ctx, func() { focus("question") })
}

func (x *examPage) onHandIn(ctx app.Context, e app.Event) { x.handIn(ctx) }

func (x *examPage) onBeyond(ctx app.Context, e app.Event) {
	x.change(ctx, func(s *examSaved) { s.Beyond = true })
	x.said = "You go on without the clock."
	x.after(ctx, func() { focus("question") })
}

func (x *examPage) onClock(ctx app.Context, e app.Event) {
	x.change(ctx, func(s *examSaved) { s.Hidden = !s.Hidden })
}

func (x *examPage) onBegin(ctx app.Context, e app.Event) {
	plan := x.plan
	plan.Seed = int(someSeed(source()))
	x.begin(ctx, plan)
}

// onCode starts the paper of the code that was typed.
func (x *examPage) onCode(ctx app.Context, e app.Event) {
	plan, earlier, err := exam.ReadCode(app.Window().GetElementByID("exam-code").Get("value").String())
	if err == nil {
		_, err = exam.New(plan)
	}
	if err != nil {
		x.fault = problems.Sentence(strings.TrimPrefix(err.Error(), "exam: ")) + "."
		x.after(ctx, func() { focus("exam-code") })
		return
	}
	if earlier {
		x.note = otherSkills + " "
	}
	x.begin(ctx, plan)
}

func (x *examPage) onAgain(ctx app.Context, e app.Event) {
	x.stretch = x.saved.Stretch
	x.begin(ctx, x.plan)
}

func (x *examPage) onPrint(ctx app.Context, e app.Event) { app.Window().Call("print") }
