package page

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/sets"
)

// do is the page on which a learner works a set: who it is, what is left, and
// the handing in.
type do struct {
	app.Compo
	doing
}

// doing is the work on one set; another link gets a fresh one.
type doing struct {
	set      *sets.Set // nil where the link holds none
	code     string
	fault    string
	learner  string // empty: not asked yet
	typed    string
	asked    string // what is wrong with the name typed
	work     setWork
	titles   []string
	codeText string   // the code to copy, once it was asked for
	parts    []string // the same as QR codes, once they were asked for
	part     int      // the one that is shown
	notices  []string
	said     string
}

// OnNav reads the set of the address and what is done of it.
func (d *do) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	d.doing = doing{}
	s, err := sets.ReadLink(ctx.Page().URL().Fragment)
	title := "No set here"
	if err != nil {
		d.fault = problems.Sentence(err.Error()) + "."
	} else {
		d.set, d.code, title = s, s.Link(), s.Title
		name, says := loadLearner(store)
		d.notices = []string{says, s.Earlier()}
		d.begin(ctx, name)
	}
	arrive(ctx, "do", title+" · Riserwork")
}

// begin is the set as a learner gets it.
func (d *do) begin(ctx app.Context, name string) {
	if d.learner = sets.Clean(name, sets.MaxLearner); d.learner == "" {
		return
	}
	store := ctx.LocalStorage()
	var says string
	d.work, says = loadWork(store, d.set, d.learner, now())
	d.notices = append(d.notices, says, d.work.keep(store))
	d.titles = nil
	for i := range d.set.Items {
		title := "Problem " + strconv.Itoa(i+1)
		if t, err := d.set.Task(i, d.learner); err == nil {
			title = t.Title()
		}
		d.titles = append(d.titles, title)
	}
}

func (d *do) onName(ctx app.Context, e app.Event) { d.typed = ctx.JSSrc().Get("value").String() }

// onBegin takes the name that was typed.
func (d *do) onBegin(ctx app.Context, e app.Event) {
	e.PreventDefault()
	name := sets.Clean(d.typed, sets.MaxLearner)
	if sets.Key(name) == "" {
		d.asked = "Write your name or your number."
		return
	}
	d.notices = append(d.notices, keepLearner(ctx.LocalStorage(), name))
	d.begin(ctx, name)
	later(ctx, d, func() { focus(titleID) })
}

// onOther asks again who it is. What was written stays under its name.
func (d *do) onOther(ctx app.Context, e app.Event) {
	d.learner, d.typed, d.codeText, d.parts = "", "", "", nil
	later(ctx, d, func() { focus("learner") })
}

// Render shows the set.
func (d *do) Render() app.UI {
	if d.set == nil {
		return frame("do", d.notices,
			heading("No set here"),
			app.P().Class("fault").Text(d.fault),
			app.A().Class("button", "primary").Href(link(startPath)).Text("To the skills"),
		)
	}
	body := []app.UI{heading(d.set.Title), d.terms()}
	if d.learner == "" {
		body = append(body, d.ask())
	} else {
		body = append(body, d.who(), d.problems(), d.handing())
	}
	return frame("do", d.notices, append(body, app.P().Class("unseen").ID("said").Attr("role", "status").Text(d.said))...)
}

// terms are what the instructor set.
func (d *do) terms() app.UI {
	s := d.set
	rows := []app.UI{}
	add := func(text string) {
		if text != "" {
			rows = append(rows, app.Li().Text(text))
		}
	}
	add(s.Note)
	add(map[sets.Help]string{
		sets.AllHelp:  "Each line can be marked at once, and there are hints.",
		sets.MarkHelp: "Each line can be marked at once. There are no hints.",
		sets.NoHelp:   "Nothing is marked before you hand in.",
	}[s.Help])
	if s.Closes != "" {
		add("Hand in by " + strings.Replace(s.Closes, "T", " at ", 1) + ".")
	}
	if s.Minutes > 0 {
		add(fmt.Sprintf("%d minutes are allowed.", s.Minutes))
	}
	if s.Pass > 0 {
		add(fmt.Sprintf("%d %% of the marks are a pass.", s.Pass))
	}
	add("House rules: " + houseWords(s.House) + ".")
	if s.Amends != "" {
		add("Local amendments: " + s.Amends)
	}
	return app.Ul().Class("terms-list").Body(rows...)
}

// ask asks once who it is.
func (d *do) ask() app.UI {
	return app.Form().Class("next").OnSubmit(d.onBegin).Body(
		app.Label().For("learner").Text("Your name or number, as your instructor knows you"),
		app.Input().Class("box").ID("learner").Type("text").Attr("maxlength", sets.MaxLearner).Attr("autocomplete", "name").OnInput(d.onName),
		app.P().Class("fault").Aria("live", "polite").Text(d.asked),
		app.Button().Type("submit").Class("button", "primary").ID("begin").Text("Begin"),
	)
}

func (d *do) who() app.UI {
	text := d.learner + ", begun " + strings.Replace(d.work.Begun, "T", " at ", 1)
	return app.P().Class("who-is").Body(
		app.Strong().ID("who").Text(text),
		app.Button().Type("button").Class("link").ID("other").Text("Not you?").OnClick(d.onOther),
	)
}

// stateWords are the states with their signs.
var stateWords = map[state]string{untouched: "○ not begun", begun: "◐ begun", finished: "● done"}

func (d *do) problems() app.UI {
	var list []app.UI
	for i := range d.set.Items {
		st := d.work.stateOf(i, d.set.Help)
		list = append(list, app.Li().Body(
			app.A().Class("skill").ID("problem-"+strconv.Itoa(i+1)).Href(taskLink(d.set, d.code, i)).DataSet("state", string(st)).Body(
				app.Span().Class("name").Text(strconv.Itoa(i+1)+". "+d.titles[i]),
				app.Span().Class("state").Text(stateWords[st]),
			),
		))
	}
	return app.Ol().Class("skills", "problems").Body(list...)
}

// leftText says what is left.
func (d *do) leftText() string {
	empty, open := d.work.left(d.set.Help)
	n := len(d.set.Items)
	switch {
	case open == 0:
		return "All problems are done."
	case empty == n:
		return "Nothing is written yet."
	case empty == 0:
		return fmt.Sprintf("%d of %d problems are not finished.", open, n)
	}
	return fmt.Sprintf("%d of %d problems are not finished, %d of them not begun.", open, n, empty)
}

// handing is the ways to hand in.
func (d *do) handing() app.UI {
	empty, open := d.work.left(d.set.Help)
	if empty == len(d.set.Items) {
		return app.Section().Class("give").Body(app.P().ID("left").Text(d.leftText()))
	}
	handed := ""
	if d.work.Handed != "" {
		handed = "Handed in " + strings.Replace(d.work.Handed, "T", " at ", 1) + ". You may hand in again; the latest counts."
	}
	return app.Section().Class("give").Aria("labelledby", "hand-in").DataSet("open", open > 0).Body(
		app.H2().ID("hand-in").Text("Hand in"),
		app.P().ID("left").Text(d.leftText()),
		app.P().ID("handed").Hidden(handed == "").Text(handed),
		app.Div().Class("ways").Body(
			button("hand-file", "Save as a file", open == 0).OnClick(d.onFile),
			button("hand-share", "Share the file", false).Hidden(!canShare()).OnClick(d.onShare),
			button("hand-code", "Copy as a code", false).OnClick(d.onCode),
			button("hand-qr", "Show as QR codes", false).OnClick(d.onQR),
		),
		app.P().Class("aside").Text("Send the file or the code to your instructor in your usual way, or have the QR codes read from your screen. It holds your lines and no marks."),
		d.partView(),
		app.Textarea().Class("box", "code").ID("code").ReadOnly(true).Rows(4).Aria("label", "Code of your work").Hidden(d.codeText == "").Text(d.codeText),
	)
}

// handIn is the work as it is handed in now.
func (d *do) handIn(ctx app.Context) (*sets.HandIn, bool) {
	store := ctx.LocalStorage()
	at := now()
	d.work, _ = loadWork(store, d.set, d.learner, at)
	h, err := d.work.handIn(d.set, at)
	if err != nil {
		d.notices = append(d.notices, problems.Sentence(err.Error())+".")
		return nil, false
	}
	d.work.Handed = at
	d.notices = append(d.notices, d.work.keep(store))
	return h, true
}

// handInKind is what the file is to the device.
const handInKind = "application/json"

func (d *do) onFile(ctx app.Context, e app.Event) {
	if h, ok := d.handIn(ctx); ok {
		download(h.FileName(), handInKind, h.File())
		d.said = "Saved as " + h.FileName() + "."
	}
}

func (d *do) onShare(ctx app.Context, e app.Event) {
	h, ok := d.handIn(ctx)
	if !ok {
		return
	}
	if f := file(h.FileName(), handInKind, h.File()); mayShareFile(f) {
		share(map[string]any{"title": d.set.Title, "files": listOf(f)})
		return
	}
	share(map[string]any{"title": d.set.Title, "text": h.Code()})
}

func (d *do) onCode(ctx app.Context, e app.Event) {
	h, ok := d.handIn(ctx)
	if !ok {
		return
	}
	d.codeText = h.Code()
	copyText(ctx, d.codeText, func(ok bool) { d.said = copied(ok) })
	later(ctx, d, func() {
		if el := app.Window().GetElementByID("code"); el.Truthy() {
			el.Set("value", d.codeText)
		}
	})
}

// onQR shows the work as QR codes, the first of them.
func (d *do) onQR(ctx app.Context, e app.Event) {
	h, ok := d.handIn(ctx)
	if !ok {
		return
	}
	d.parts, d.part = sets.Parts(h.Code()), 0
	later(ctx, d, func() { bring("part") })
}

func (d *do) onNextPart(ctx app.Context, e app.Event) {
	d.part = (d.part + 1) % len(d.parts)
	d.said = d.partText()
}

func (d *do) partText() string { return fmt.Sprintf("Code %d of %d", d.part+1, len(d.parts)) }

// partView is one QR code of the work, large enough for a camera.
func (d *do) partView() app.UI {
	if len(d.parts) == 0 {
		return app.Div().Hidden(true)
	}
	next := "Next code"
	if d.part+1 == len(d.parts) {
		next = "First code again"
	}
	return app.Div().Class("part").ID("part").Body(
		&qrCode{Text: d.parts[d.part], Label: "your work as a QR code"},
		app.P().ID("part-at").Text(d.partText()),
		button("next-part", next, true).Hidden(len(d.parts) == 1).OnClick(d.onNextPart),
	)
}
