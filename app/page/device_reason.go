package page

import (
	"math/rand/v2"
	"net/url"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/devices"
)

// reasonPage is the page of questions of reasoning: devices, where they stand,
// what they are for, and what is wrong in a drawing.
type reasonPage struct {
	app.Compo

	house   problems.House
	mixed   bool // the next question is of another kind
	q       *devices.Question
	picks   []draw.Pick // what can be pointed at in its drawing
	spot    string      // key of the place that was pointed at
	option  int         // the option that was chosen; -1: none
	order   []int       // items in the order they were tapped
	done    bool        // it is judged
	task    *setTask    // the problem of a set; nil where it stands by itself
	fault   string      // why there is no question
	said    string      // to be read out
	notices []string
}

// askedKinds are the kinds of questions by their word in a link.
var askedKinds = []struct {
	word string
	kind devices.Kind
	note string
}{
	{"missing", devices.Missing, "a symptom: name the device that would have prevented it"},
	{"purpose", devices.Purpose, "a device: say what it does"},
	{"without", devices.Without, "a device is left out: say what follows"},
	{"flow", devices.Sequence, "put devices in their order"},
	{"place", devices.Place, "put a device where it belongs in the drawing"},
	{"wrong", devices.Wrong, "mark the fault in a drawing, and say why"},
	{"right", devices.Sound, "four drawings, one of them sound"},
	{"order", devices.Order, "steps of a job, first to last"},
	{"decide", devices.Decide, "ways to build: choose one with its reason"},
}

func kindOfWord(word string) (devices.Kind, bool) {
	for _, k := range askedKinds {
		if k.word == word {
			return k.kind, true
		}
	}
	return "", false
}

func wordOfKind(kind devices.Kind) string {
	for _, k := range askedKinds {
		if k.kind == kind {
			return k.word
		}
	}
	return ""
}

// reasonQuery is a question as a link names it.
func reasonQuery(kind devices.Kind, seed uint64, mixed bool) string {
	q := url.Values{"kind": {wordOfKind(kind)}, "seed": {strconv.FormatUint(seed, 10)}}
	if mixed {
		q.Set("mixed", "1")
	}
	return q.Encode()
}

// OnNav draws the question that the address names, or a fresh one.
func (r *reasonPage) OnNav(ctx app.Context) {
	u := *ctx.Page().URL()
	var says string
	r.house, says = loadHouse(ctx.LocalStorage())
	r.notices, r.task, r.fault = []string{says}, nil, ""
	if u.Query().Has("n") {
		r.openTask(ctx.LocalStorage(), &u)
		arrive(ctx, "reason", "Devices and reasons · Riserwork")
		return
	}
	r.open(u.Query(), source())
	u.RawQuery = reasonQuery(r.q.Kind, r.q.Seed, r.mixed)
	ctx.Page().ReplaceURL(&u)
	arrive(ctx, "reason", "Devices and reasons · Riserwork")
}

// open reads the address. A link without a kind asks for mixed questions, one
// without a number for a fresh one.
func (r *reasonPage) open(q url.Values, rng *rand.Rand) {
	kind, known := kindOfWord(q.Get("kind"))
	r.mixed = !known || q.Get("mixed") == "1"
	if !known {
		kind = askedKinds[rng.IntN(len(askedKinds))].kind
		if word := q.Get("kind"); word != "" {
			r.notices = append(r.notices, "The link names the kind “"+clip(word)+"”, which is not here. Here is another question.")
		}
	}
	seed, err := strconv.ParseUint(q.Get("seed"), 10, 64)
	if err != nil {
		seed = someSeed(rng)
	}
	r.ask(kind, seed)
}

// ask puts a question on the page.
func (r *reasonPage) ask(kind devices.Kind, seed uint64) {
	r.q = devices.New(kind, seed)
	r.spot, r.option, r.order, r.done, r.said = "", -1, nil, false, ""
	r.picks = nil
	if r.q.Drawing != nil {
		r.picks = draw.Picks(r.q.Drawing, kind == devices.Place)
	}
}

// next is the link of the next question: of another kind where they are
// mixed, and not the same again.
func (r *reasonPage) next(rng *rand.Rand) string {
	kind := r.q.Kind
	if r.mixed {
		others := slices.DeleteFunc(slices.Clone(devices.Kinds), func(k devices.Kind) bool { return k == kind })
		kind = others[rng.IntN(len(others))]
	}
	seed := someSeed(rng)
	for range 8 {
		if devices.New(kind, seed).Ask != r.q.Ask {
			break
		}
		seed = someSeed(rng)
	}
	return link(reasonPath) + "?" + reasonQuery(kind, seed, r.mixed)
}

// pointed is the place that was pointed at.
func (r *reasonPage) pointed() (devices.Spot, bool) {
	for _, p := range r.picks {
		if p.Key == r.spot {
			return p.Spot, true
		}
	}
	return devices.Spot{}, false
}

// items are the items in the order they were tapped.
func (r *reasonPage) items() []string {
	list := make([]string, len(r.order))
	for i, n := range r.order {
		list[i] = r.q.Items[n]
	}
	return list
}

// lacking says what is still to be done before the answer can be judged;
// empty where it is whole.
func (r *reasonPage) lacking() string {
	_, pointed := r.pointed()
	switch r.q.Kind {
	case devices.Sequence, devices.Order:
		if n := len(r.q.Items) - len(r.order); n > 0 {
			return "Tap the next one. " + strconv.Itoa(n) + " to go."
		}
	case devices.Place:
		if !pointed {
			return "Tap a + in the drawing."
		}
	case devices.Wrong:
		switch {
		case !pointed && r.option < 0:
			return "Tap the place in the drawing, then the reason."
		case !pointed:
			return "Now tap the place in the drawing."
		case r.option < 0:
			return "Now tap what is wrong there."
		}
	default:
		if r.option < 0 {
			return "Tap one."
		}
	}
	return ""
}

// judged are the judgements of the answer: of the place and then of the
// reason, where both are asked for.
func (r *reasonPage) judged() []devices.Judgement {
	spot, _ := r.pointed()
	switch r.q.Kind {
	case devices.Sequence, devices.Order:
		return []devices.Judgement{r.q.Arrange(r.items())}
	case devices.Place:
		return []devices.Judgement{r.q.Put(spot)}
	case devices.Wrong:
		return []devices.Judgement{r.q.Mark(spot), r.q.Choose(r.option)}
	}
	return []devices.Judgement{r.q.Choose(r.option)}
}

// right reports whether all of the answer is right.
func (r *reasonPage) right() bool {
	return !slices.ContainsFunc(r.judged(), func(j devices.Judgement) bool { return !j.Right })
}

// check judges the answer once it is whole.
func (r *reasonPage) check(ctx app.Context) {
	if r.done {
		return
	}
	if says := r.lacking(); says != "" {
		r.said = says
		return
	}
	r.done = true
	r.keep(ctx)
	r.said = "Not right. "
	if r.right() {
		r.said = "Right. "
	}
	r.said += r.judged()[0].Says
	r.after(ctx, func() {
		focus("verdict")
		if el := app.Window().GetElementByID("verdict"); el.Truthy() {
			el.Call("scrollIntoView", map[string]any{"block": "start"})
		}
	})
}

// after runs f once the page shows the change. It is bound to the page, since
// what was tapped may be gone by then.
func (r *reasonPage) after(ctx app.Context, f func()) {
	ctx.Dispatcher().Dispatch(app.Dispatch{Mode: app.Defer, Source: r, Function: func(app.Context) { f() }})
}

// Handlers. What was tapped is named by the element.

func (r *reasonPage) onPick(ctx app.Context, e app.Event) {
	r.point(ctx, ctx.JSSrc().Get("dataset").Get("key").String())
}

func (r *reasonPage) onPickKey(ctx app.Context, e app.Event) {
	if key := e.Get("key").String(); key == "Enter" || key == " " {
		e.PreventDefault()
		r.point(ctx, ctx.JSSrc().Get("dataset").Get("key").String())
	}
}

// point notes the place that is pointed at.
func (r *reasonPage) point(ctx app.Context, key string) {
	if r.done {
		return
	}
	r.spot = key
	r.keep(ctx)
	for _, p := range r.picks {
		if p.Key == key {
			r.said = "Marked: " + p.Says + ". " + r.lacking()
		}
	}
}

func (r *reasonPage) onOption(ctx app.Context, e app.Event) {
	i := indexOf(ctx.JSSrc())
	if r.done || i < 0 || i >= len(r.q.Options) {
		return
	}
	r.option = i
	r.keep(ctx)
	if r.q.Kind != devices.Wrong && !r.task.silent() {
		r.check(ctx)
		return
	}
	r.said = "Chosen: " + r.q.Options[i].Text + " " + r.lacking()
}

func (r *reasonPage) onItem(ctx app.Context, e app.Event) {
	i := indexOf(ctx.JSSrc())
	if r.done || i < 0 || i >= len(r.q.Items) || slices.Contains(r.order, i) {
		return
	}
	r.order = append(r.order, i)
	r.keep(ctx)
	r.said = strconv.Itoa(len(r.order)) + ": " + r.q.Items[i] + ". " + r.lacking()
	r.keepFocus(ctx)
}

// keepFocus goes to the next item where the one that had the focus is gone.
func (r *reasonPage) keepFocus(ctx app.Context) {
	r.after(ctx, func() {
		for i := range r.q.Items {
			if !slices.Contains(r.order, i) {
				focus("item-" + strconv.Itoa(i))
				return
			}
		}
		focus("check")
	})
}

func (r *reasonPage) onUp(ctx app.Context, e app.Event)   { r.move(ctx, indexOf(ctx.JSSrc()), -1) }
func (r *reasonPage) onDown(ctx app.Context, e app.Event) { r.move(ctx, indexOf(ctx.JSSrc()), 1) }

// move changes the place of an item that was put in order.
func (r *reasonPage) move(ctx app.Context, at, by int) {
	to := at + by
	if r.done || at < 0 || at >= len(r.order) || to < 0 || to >= len(r.order) {
		return
	}
	r.order[at], r.order[to] = r.order[to], r.order[at]
	r.keep(ctx)
	r.said = r.q.Items[r.order[to]] + " is now " + strconv.Itoa(to+1) + "."
	id := "up-"
	if by > 0 {
		id = "down-"
	}
	r.after(ctx, func() { focus(id + strconv.Itoa(to)) })
}

func (r *reasonPage) onBack(ctx app.Context, e app.Event) {
	at := indexOf(ctx.JSSrc())
	if r.done || at < 0 || at >= len(r.order) {
		return
	}
	item := r.order[at]
	r.order = slices.Delete(r.order, at, at+1)
	r.keep(ctx)
	r.said = r.q.Items[item] + " is taken out. " + r.lacking()
	r.after(ctx, func() { focus("item-" + strconv.Itoa(item)) })
}

func (r *reasonPage) onCheck(ctx app.Context, e app.Event) { r.check(ctx) }
func (r *reasonPage) onNext(ctx app.Context, e app.Event)  { ctx.Navigate(r.next(source())) }
