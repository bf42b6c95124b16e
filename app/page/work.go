package page

import (
	"errors"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/skills"
)

// work is the page on which a problem is worked.
type work struct {
	app.Compo
	session
}

// session is the work on one problem; another problem gets a fresh one.
type session struct {
	address address
	task    *setTask       // the problem of a set; nil where it stands by itself
	own     problems.House // the house rules as set now
	bench   *bench         // nil where the link names no problem
	fault   string         // why not
	notices []string
	picture *draw.Scene
	study   study // today's work, where the problem is part of it

	at      int          // the line being written; -1: none
	ours    bool         // our own keys are shown
	compare bool         // the whole working is shown
	opened  map[int]bool // lines whose explanation was asked for
	said    string       // the latest finding, for those who listen

	keeper func(app.Context) // keeps the sheet where it is a part of a paper
	judge  func()            // marks it as that
}

// OnNav lays out the problem that the address names.
func (w *work) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	own, says := loadHouse(store)
	w.session = session{own: own, at: -1, ours: loadLook(store).ours(), notices: []string{says}}
	open, says := loadDesk(store)
	w.notices = append(w.notices, says)
	u := *ctx.Page().URL()
	if u.Query().Has("n") {
		w.task, w.fault = openTask(store, &u)
		if w.task != nil && w.task.task.Question != nil {
			w.task, w.fault = nil, "This problem of the set is a question of reasoning. Open it from the set."
		}
		if w.task != nil {
			w.address, open = w.task.address(), w.task.desk()
		}
	} else {
		w.address, w.fault = readAddress(u.Query(), own)
	}
	if w.address.today {
		w.study, says = loadStudy(store)
		w.notices = append(w.notices, says)
	}
	title := "No problem here"
	if w.fault == "" {
		w.lay(&open)
	}
	if w.bench != nil {
		title = w.address.skill.Title
	}
	if w.bench != nil && w.task == nil {
		u.RawQuery = w.address.query()
		ctx.Page().ReplaceURL(&u)
	}
	arrive(ctx, "work", title+" · Riserwork")
	w.after(ctx, w.sync)
	records.refresh(func() { ctx.Dispatch(func(app.Context) {}) })
}

// lay draws the problem and puts the saved lines on it.
func (w *work) lay(open *desk) {
	p, err := w.address.problem()
	if err != nil {
		w.fault = "No problem could be drawn for this link. Take another number for it."
		if e := (*problems.OwnError)(nil); errors.As(err, &e) {
			w.fault = problems.Sentence(e.Says)
		}
		return
	}
	if len(w.address.givens) > 0 && !written(w.address.kind) {
		w.address.kind = blanks // what to find and to choose is drawn, never put in
	}
	if fit := fitting(p, w.address.kind); fit != w.address.kind {
		w.address.kind = fit
		w.notices = append(w.notices, "This problem cannot be asked that way. Here it is line by line.")
	}
	s, _ := open.find(w.address)
	w.bench = newBench(p, w.address, s)
	w.bench.silent = w.task.silent()
	w.picture = draw.Problem(p, w.bench.sheet.Done)
	w.compare = w.bench.sheet.Kind == choice && w.bench.sheet.Done
	w.opened = map[int]bool{}
	w.notices = append(w.notices, w.address.earlier)
	if !sameHouse(w.own, w.address.house) {
		w.notices = append(w.notices, "This problem keeps the house rules it was drawn with: "+houseWords(w.address.house)+".")
	}
}

// save keeps the sheet; it is called at every change.
func (w *work) save(ctx app.Context) {
	if w.keeper != nil {
		w.keeper(ctx)
		return
	}
	store := ctx.LocalStorage()
	if w.task != nil {
		w.say(w.task.keep(store, w.bench.sheet))
		return
	}
	open, _ := loadDesk(store)
	open.put(w.bench.sheet)
	w.say(keep(store, deskKey, "your lines", open))
}

// say adds a notice that is not yet there.
func (w *work) say(text string) {
	if !slices.Contains(w.notices, text) {
		w.notices = append(w.notices, text)
	}
}

// after runs f once the page shows the change. It is bound to the page, since
// the key that was pressed may be gone by then.
func (w *work) after(ctx app.Context, f func()) {
	ctx.Dispatcher().Dispatch(app.Dispatch{Mode: app.Defer, Source: w, Function: func(app.Context) { f() }})
}

// lineID is the box of line i.
func lineID(i int) string { return "line-" + strconv.Itoa(i) }

// box is the box of line i in the document.
func box(i int) app.Value { return app.Window().GetElementByID(lineID(i)) }

// sync puts the lines of the sheet into their boxes. The boxes are left to
// the browser while somebody types, since the framework trims what it writes.
func (w *work) sync() {
	if w.bench == nil {
		return
	}
	for i, e := range w.bench.sheet.Lines {
		if el := box(i); el.Truthy() && el.Get("value").String() != e.Text {
			el.Set("value", e.Text)
		}
	}
}

// indexOf is the line that an element belongs to.
func indexOf(el app.Value) int {
	i, err := strconv.Atoi(el.Get("dataset").Get("line").String())
	if err != nil {
		return -1
	}
	return i
}

func (w *work) onFocus(ctx app.Context, e app.Event) { w.at = indexOf(ctx.JSSrc()) }

func (w *work) onInput(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	w.at = indexOf(el)
	w.write(ctx, w.at, el.Get("value").String())
}

// write is a change of line i, from whichever keyboard.
func (w *work) write(ctx app.Context, i int, text string) {
	if w.bench == nil || i < 0 || i >= len(w.bench.sheet.Lines) {
		return
	}
	w.bench.write(i, text)
	w.save(ctx)
}

// onKey is the keyboard of a desk: enter marks the line, the arrows change
// it, escape puts the keys away.
func (w *work) onKey(ctx app.Context, e app.Event) {
	i := indexOf(ctx.JSSrc())
	switch e.Get("key").String() {
	case "Enter":
		e.PreventDefault()
		if e.Get("ctrlKey").Bool() || e.Get("metaKey").Bool() {
			w.markAll(ctx)
		} else {
			w.onward(ctx, i)
		}
	case "Backspace":
		if w.bench.mayRemove(i) && w.bench.sheet.Lines[i].Text == "" {
			e.PreventDefault()
			w.remove(ctx, i)
		}
	case "ArrowDown":
		e.PreventDefault()
		w.goTo(ctx, i+1)
	case "ArrowUp":
		e.PreventDefault()
		w.goTo(ctx, i-1)
	case "Escape":
		w.close(ctx)
	}
}

// goTo moves on to line i; past the last there is the marking.
func (w *work) goTo(ctx app.Context, i int) {
	if i < w.bench.sheet.Given || i >= len(w.bench.sheet.Lines) {
		return
	}
	w.at = i
	w.after(ctx, func() { focusLine(i) })
}

// focusLine puts the caret behind what stands in line i and brings its card
// into view above the keys.
func focusLine(i int) {
	el := box(i)
	if !el.Truthy() {
		focus("choice-" + strconv.Itoa(i))
		return
	}
	el.Call("focus")
	n := length16(el.Get("value").String())
	el.Call("setSelectionRange", n, n)
	show := app.Window().GetElementByID("card-" + strconv.Itoa(i))
	show.Call("scrollIntoView", map[string]any{"block": "nearest"})
}

// close puts the keys away.
func (w *work) close(ctx app.Context) {
	i := w.at
	w.at = -1
	if el := box(i); el.Truthy() {
		el.Call("blur")
	}
}

// markLine marks line i and, where it is good, moves on.
func (w *work) markLine(ctx app.Context, i int) {
	if w.bench == nil || i < 0 {
		return
	}
	if w.bench.sheet.Kind == mistake {
		w.putRight(ctx)
		return
	}
	if w.task.silent() {
		w.next(ctx, i)
		return
	}
	ok := w.bench.markLine(i)
	w.opened[i] = true
	w.note(ctx)
	w.said = w.spoken(i)
	switch {
	case ok && i+1 < len(w.bench.sheet.Lines):
		w.goTo(ctx, i+1)
	case ok:
		w.markAll(ctx)
	default:
		w.goTo(ctx, i)
	}
}

// next goes on from line i without a word on it.
func (w *work) next(ctx app.Context, i int) {
	if i+1 < len(w.bench.sheet.Lines) {
		w.goTo(ctx, i+1)
		return
	}
	w.close(ctx)
}

// markAll marks the sheet, notes the try, and goes to what there is to say.
func (w *work) markAll(ctx app.Context) {
	if w.bench.sheet.Kind == mistake {
		w.putRight(ctx)
		return
	}
	if w.task.silent() {
		w.close(ctx)
		return
	}
	w.bench.markAll()
	w.at = -1
	w.said = w.verdict()
	w.picture = draw.Problem(w.bench.p, w.bench.sheet.Done)
	w.note(ctx)
	fault := w.bench.fault()
	if fault >= 0 {
		w.opened[fault] = true
	}
	w.after(ctx, func() { lookAt(fault) })
}

// lookAt brings the finding of a line, or the result, into view.
func lookAt(fault int) {
	id := "result"
	if fault >= 0 {
		id = "finding-" + strconv.Itoa(fault)
	}
	el := app.Window().GetElementByID(id)
	if !el.Truthy() {
		return
	}
	el.Call("focus", map[string]any{"preventScroll": true})
	el.Call("scrollIntoView", map[string]any{"block": "center"})
}

// onAnother opens the next problem of the skill.
func (w *work) onAnother(ctx app.Context, e app.Event) {
	a := w.address
	a.seed, a.house, a.earlier, a.givens = a.seed+1, w.own, "", nil
	a.given = w.nextGiven()
	ctx.Navigate(a.url())
}

// onTrap opens a problem in which the first slip of the sheet tempts again.
func (w *work) onTrap(ctx app.Context, e app.Event) {
	p, err := problems.WithTrap(w.address.skill, w.address.seed, w.own, w.bench.result.Slips[0])
	if err != nil {
		w.onAnother(ctx, e)
		return
	}
	a := w.address
	a.seed, a.house, a.earlier, a.given, a.givens = p.Seed, w.own, "", 0, nil
	ctx.Navigate(a.url())
}

// onMix opens another skill of the mix.
func (w *work) onMix(ctx app.Context, e app.Event) {
	rng := source()
	a := w.address
	if a.skill = pickSkill(skills.All(), a.mix, a.skill.ID, rng); a.skill == nil {
		return
	}
	a.seed, a.house, a.earlier, a.given, a.givens = someSeed(rng), w.own, "", 0, nil
	ctx.Navigate(a.url())
}
