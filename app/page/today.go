package page

import (
	"fmt"
	"slices"
	"strconv"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/skills"
)

// todayPage is the work of the day behind one button.
type todayPage struct {
	app.Compo

	house   problems.House
	study   study
	items   []record.Item // what the button would begin
	read    bool          // the record is here
	notices []string
}

// OnNav reads what is saved and draws up the day.
func (t *todayPage) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	var says string
	t.notices, t.read = nil, false
	t.house, says = loadHouse(store)
	t.notices = append(t.notices, says)
	t.study, says = loadStudy(store)
	t.notices = append(t.notices, says)
	arrive(ctx, "today", "What to do today · Riserwork")
	records.refresh(func() {
		ctx.Dispatch(func(ctx app.Context) {
			t.read = true
			t.plan()
			ctx.Defer(func(app.Context) { t.sync() })
		})
	})
}

func (t *todayPage) plan() { t.items = t.study.view().Plan(skills.All(), t.study.Minutes) }

// Render shows the work that is ahead.
func (t *todayPage) Render() app.UI {
	if !t.read {
		return frame("today", t.notices, heading("What to do today"), app.P().Text("Reading your record."))
	}
	list := t.items
	if t.study.underWay() {
		list = t.study.Items[t.study.At:]
	}
	return frame("today", t.notices,
		heading(t.title()),
		app.P().Class("lead").ID("sum").Text(t.sum(list)),
		t.button(),
		t.lengths(),
		app.Ol().Class("plan").Aria("label", "The problems in their order").Body(t.rows(list)...),
		t.exam(),
	)
}

func (t *todayPage) title() string {
	if t.finished() {
		return "Done for today"
	}
	return "What to do today"
}

// finished reports whether work of today was begun and is done.
func (t *todayPage) finished() bool {
	return t.study.Day == today() && len(t.study.Items) > 0 && t.study.At >= len(t.study.Items)
}

// sum says what is ahead.
func (t *todayPage) sum(list []record.Item) string {
	count := map[record.Why]int{}
	seen := map[string]bool{}
	for _, it := range list {
		if !seen[it.Skill] {
			count[it.Why]++
		}
		seen[it.Skill] = true
	}
	text := ""
	for _, w := range []record.Why{record.WhyDue, record.WhyNew, record.WhyShaky, record.WhyEarly} {
		if n := count[w]; n > 0 {
			text += fmt.Sprintf("%d %s, ", n, w)
		}
	}
	text += fmt.Sprintf("about %s.", counted(t.study.view().Minutes(skills.All(), list), "minute", "minutes"))
	if t.finished() {
		text = fmt.Sprintf("%s worked. There is more if you like: %s", counted(len(t.study.Items), "problem", "problems"), text)
	}
	return text
}

func (t *todayPage) button() app.UI {
	text := "Start"
	switch {
	case t.study.underWay():
		text = fmt.Sprintf("Carry on, %d to go", len(t.study.Items)-t.study.At)
	case t.finished():
		text = "Another round"
	}
	return button("start-today", text, true).OnClick(t.onStart)
}

func (t *todayPage) onStart(ctx app.Context, e app.Event) {
	store := ctx.LocalStorage()
	if !t.study.underWay() {
		t.study.begin()
	}
	url, ok := t.study.onward(t.house)
	says := t.study.keep(store)
	if ok {
		ctx.Navigate(url)
		return
	}
	t.notices = append(t.notices, says)
}

// lengths lets one choose how long it takes, while nothing is under way.
func (t *todayPage) lengths() app.UI {
	if t.study.underWay() {
		return app.Div().Class("lengths").Body(
			app.Button().Type("button").Class("link").ID("drop").Text("Leave it and begin anew").OnClick(t.onDrop),
		)
	}
	var list []app.UI
	for _, n := range minutes {
		list = append(list, app.Button().Type("button").Class("choice").DataSet("minutes", n).
			Aria("pressed", t.study.Minutes == n).Text(fmt.Sprintf("%d minutes", n)).OnClick(t.onLength))
	}
	return app.Div().Class("lengths", "choices").Attr("role", "group").Aria("label", "How long").Body(list...)
}

func (t *todayPage) onLength(ctx app.Context, e app.Event) {
	n, err := strconv.Atoi(ctx.JSSrc().Get("dataset").Get("minutes").String())
	if err != nil || !slices.Contains(minutes, n) {
		return
	}
	t.study.Minutes = n
	t.plan()
	t.notices = append(t.notices, t.study.keep(ctx.LocalStorage()))
}

func (t *todayPage) onDrop(ctx app.Context, e app.Event) {
	t.study.Items, t.study.At, t.study.Open = nil, 0, ""
	t.plan()
	t.notices = append(t.notices, t.study.keep(ctx.LocalStorage()))
}

// reasons are the reasons in words, of skills that were met.
var reasons = map[record.Why]string{
	record.WhyDue: "due", record.WhyShaky: "shaky", record.WhyEarly: "ahead of time",
}

func (t *todayPage) rows(list []record.Item) []app.UI {
	var rows []app.UI
	for i, it := range list {
		skill, ok := skills.ByID(it.Skill)
		if !ok {
			continue
		}
		how := reasons[it.Why]
		switch word := t.study.view().Word(skill); {
		case record.Example(list, i):
			how = "new: a worked example"
		case it.Mistake:
			how += ": find the mistake"
		case it.Why == record.WhyNew, it.Why == record.WhyShaky && word == record.New:
			how = "new, with a line for you"
		case it.Why == record.WhyShaky && word == record.Helped:
			how = "with help"
		}
		rows = append(rows, app.Li().DataSet("why", string(it.Why)).Body(
			app.Span().Class("name").Text(skill.Title),
			app.Span().Class("how").Text(how),
		))
	}
	return rows
}

// examID is the box of the day of the examination.
const examID = "exam"

func (t *todayPage) exam() app.UI {
	text := "An examination ahead?"
	if left := t.study.Exam - today(); left > 0 {
		text = fmt.Sprintf("Your examination is in %s", counted(left, "day", "days"))
	}
	return app.Details().Class("exam").Body(
		app.Summary().Text(text),
		app.P().Text("Every skill then comes round once more in the three weeks before it."),
		app.Div().Class("exam-day").Body(
			app.Label().For(examID).Text("Its day"),
			app.Input().Type("date").ID(examID).OnChange(t.onExam),
		),
	)
}

func (t *todayPage) onExam(ctx app.Context, e app.Event) {
	day, err := time.Parse(time.DateOnly, ctx.JSSrc().Get("value").String())
	t.study.Exam = 0
	if err == nil && day.Unix() > 0 {
		t.study.Exam = record.DayOf(day.UnixMilli(), 0)
	}
	t.plan()
	t.notices = append(t.notices, t.study.keep(ctx.LocalStorage()))
}

// sync puts the day of the examination into its box, which is left to the
// browser while somebody types.
func (t *todayPage) sync() {
	if el := app.Window().GetElementByID(examID); el.Truthy() && t.study.Exam > 0 {
		el.Set("value", dateOf(t.study.Exam).Format(time.DateOnly))
	}
}

// dateOf is the date of a day of the record.
func dateOf(day int) time.Time { return time.Unix(int64(day)*24*60*60, 0).UTC() }
