package page

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/walk"
)

// walkPage follows the water through a building, one station at a time.
type walkPage struct {
	app.Compo

	own     problems.House
	size    walk.Size // chosen, of a walk to come
	walk    *walk.Walk
	at      int          // index of the station one stands at
	far     int          // the farthest one has come
	tries   map[int]*try // at the stations that ask
	wide    bool         // in large type, for a wall
	fault   string
	said    string
	notices []string
	release func() // lets go of the arrow keys
}

// try is what was written at a station that asks for its number.
type try struct {
	text    string
	finding marking.Finding
	marked  bool
	told    bool // the number is shown
}

// OnMount listens for the arrow keys.
func (p *walkPage) OnMount(ctx app.Context) {
	p.release = app.Window().AddEventListener("keydown", func(_ app.Context, e app.Event) { p.onArrow(ctx, e) })
}

// OnDismount lets go of them.
func (p *walkPage) OnDismount() {
	if p.release != nil {
		p.release()
	}
}

// OnNav draws the walk that the address names, or the start of one.
func (p *walkPage) OnNav(ctx app.Context) {
	var says string
	p.own, says = loadHouse(ctx.LocalStorage())
	p.notices, p.walk, p.fault, p.said = []string{says}, nil, "", ""
	q := ctx.Page().URL().Query()
	p.size, p.wide = walk.Size(q.Get("size")), q.Get("wall") == "1"
	if p.size == "" {
		p.size = walk.Middle
	}
	if q.Has("seed") {
		p.open(q)
	}
	arrive(ctx, "walk", "Follow the water · Riserwork")
	p.sync(ctx)
}

// open draws the walk of a link and goes to its station.
func (p *walkPage) open(q url.Values) {
	seed, err := strconv.ParseUint(q.Get("seed"), 10, 64)
	if err != nil {
		p.fault = "The link has “" + clip(q.Get("seed")) + "” for its number, and a whole number was expected."
		return
	}
	w, err := walk.New(p.size, seed, readHouse(q, p.own))
	if err != nil {
		p.fault = "No building could be drawn for this link. Take another."
		return
	}
	if v := q.Get("v"); v != "" && v != strconv.Itoa(walk.Version) {
		p.notices = append(p.notices, "This link was made for another version of the walk, so its numbers may differ from those of the person who gave it to you.")
	}
	p.walk, p.size, p.tries = w, w.Size, map[int]*try{}
	p.at = max(0, w.Index(q.Get("at")))
	p.far = p.at
	if at := q.Get("at"); at != "" && w.Index(at) < 0 {
		p.notices = append(p.notices, "The link names the station “"+clip(at)+"”, which this building has not. Here is the beginning.")
	}
}

// walkURL is the link of a walk, with the house rules it is drawn under.
func walkURL(size walk.Size, seed uint64, h problems.House, at string, wide bool) string {
	q, _ := url.ParseQuery(address{skill: &problems.Skill{}, seed: seed, house: h, kind: blanks}.query())
	q.Del("skill")
	q.Set("v", strconv.Itoa(walk.Version))
	q.Set("size", string(size))
	if at != "" {
		q.Set("at", at)
	}
	if wide {
		q.Set("wall", "1")
	}
	return link(walkPath) + "?" + q.Encode()
}

// station is where one stands.
func (p *walkPage) station() *walk.Station { return &p.walk.Stations[p.at] }

// tryAt is what was written at a station.
func (p *walkPage) tryAt(i int) *try {
	if p.tries[i] == nil {
		p.tries[i] = &try{}
	}
	return p.tries[i]
}

// asks reports whether the number of a station is still to be found.
func (p *walkPage) asks(i int) bool {
	return p.walk.Stations[i].Turn && i >= p.far && !p.tryAt(i).told
}

// goTo moves to a station. The address goes along, so that a link opens there.
func (p *walkPage) goTo(ctx app.Context, i int) {
	if p.walk == nil || i < 0 || i >= len(p.walk.Stations) {
		return
	}
	p.at, p.far = i, max(p.far, i)
	p.said = p.spoken()
	p.keepAddress(ctx)
	p.sync(ctx)
}

func (p *walkPage) keepAddress(ctx app.Context) {
	w := p.walk
	u := *ctx.Page().URL()
	if to, err := url.Parse(walkURL(w.Size, w.Seed, w.House, p.station().ID, p.wide)); err == nil {
		u.RawQuery = to.RawQuery
		ctx.Page().ReplaceURL(&u)
	}
}

// spoken is the station for those who listen.
func (p *walkPage) spoken() string {
	s := p.station()
	text := fmt.Sprintf("Station %d of %d, %s: %s. %s Without it: %s ", p.at+1, len(p.walk.Stations), s.Part, s.Place, s.Why(), s.Device.Without)
	if p.asks(p.at) {
		return text + "Your turn: " + s.Says
	}
	return text + s.Says + " " + s.Line() + ", " + string(s.State) + "."
}

func (p *walkPage) onNext(ctx app.Context, e app.Event) { p.forth(ctx) }
func (p *walkPage) onBack(ctx app.Context, e app.Event) { p.goTo(ctx, p.at-1) }

// forth goes on. On a wall the number that is asked for is shown first.
func (p *walkPage) forth(ctx app.Context) {
	if p.wide && p.asks(p.at) {
		p.tell(ctx)
		return
	}
	p.goTo(ctx, p.at+1)
}

// onArrow goes back and forth by the arrow keys, but not out of a box that is
// being written in.
func (p *walkPage) onArrow(ctx app.Context, e app.Event) {
	if p.walk == nil || e.Get("ctrlKey").Bool() || e.Get("altKey").Bool() || e.Get("metaKey").Bool() {
		return
	}
	if tag := e.Get("target").Get("tagName"); tag.Truthy() && tag.String() == "INPUT" && e.Get("target").Get("value").String() != "" {
		return
	}
	switch e.Get("key").String() {
	case "ArrowRight":
		ctx.Dispatch(p.forth)
	case "ArrowLeft":
		ctx.Dispatch(func(ctx app.Context) { p.goTo(ctx, p.at-1) })
	default:
		return
	}
	e.PreventDefault()
}

func (p *walkPage) onStation(ctx app.Context, e app.Event) {
	i, err := strconv.Atoi(ctx.JSSrc().Get("dataset").Get("station").String())
	if err != nil {
		return
	}
	p.goTo(ctx, i)
	bring("station")
}

func (p *walkPage) onInput(ctx app.Context, e app.Event) {
	t := p.tryAt(p.at)
	t.text, t.marked = ctx.JSSrc().Get("value").String(), false
}

func (p *walkPage) onKey(ctx app.Context, e app.Event) {
	if e.Get("key").String() == "Enter" {
		e.PreventDefault()
		p.judge(ctx)
	}
}

func (p *walkPage) onJudge(ctx app.Context, e app.Event) { p.judge(ctx) }

// judge marks what was written. What is right shows the sum beside it.
func (p *walkPage) judge(ctx app.Context) {
	t := p.tryAt(p.at)
	if strings.TrimSpace(t.text) == "" {
		p.said = "Write the number first."
		return
	}
	t.finding, t.marked = p.station().Judge(t.text), true
	word := shown(t.finding.Verdict).word
	if t.finding.Verdict.Good() {
		t.told = true
		p.said = word + ". " + p.station().Line()
		p.after(ctx, func() { focus(nextID) })
		return
	}
	p.said = word + ". " + t.finding.Says
	for _, s := range t.finding.Slips {
		p.said += " " + s.Did + " " + s.Why
	}
	p.after(ctx, func() { bring("walk-finding") })
}

func (p *walkPage) onTell(ctx app.Context, e app.Event) { p.tell(ctx) }

// tell shows the number.
func (p *walkPage) tell(ctx app.Context) {
	p.tryAt(p.at).told = true
	p.said = p.station().Line()
	p.after(ctx, func() { focus(nextID) })
}

// after runs f once the page shows the change. It is bound to the page, since
// the box that was written in may be gone by then.
func (p *walkPage) after(ctx app.Context, f func()) {
	ctx.Dispatcher().Dispatch(app.Dispatch{Mode: app.Defer, Source: p, Function: func(app.Context) { f() }})
}

// nextID is the button that goes on.
const nextID = "walk-next"

// boxID is the box of a number that is asked for.
const boxID = "walk-number"

// sync puts what was written into the box, which is left to the browser while
// somebody types.
func (p *walkPage) sync(ctx app.Context) {
	p.after(ctx, func() {
		if el := app.Window().GetElementByID(boxID); el.Truthy() && p.walk != nil {
			el.Set("value", p.tryAt(p.at).text)
		}
		centre()
	})
}

// sceneID is the window on the drawing, which scrolls where it is small.
const sceneID = "walk-scene"

// centre brings the mark of the station into the window on the drawing.
func centre() {
	box := app.Window().GetElementByID(sceneID)
	if !box.Truthy() {
		return
	}
	mark := box.Call("querySelector", `[data-key="ask"]`)
	if !mark.Truthy() {
		return
	}
	top := func(v app.Value) float64 { return v.Call("getBoundingClientRect").Get("top").Float() }
	box.Set("scrollTop", box.Get("scrollTop").Float()+top(mark)-top(box)-box.Get("clientHeight").Float()/2)
}

func (p *walkPage) onWide(ctx app.Context, e app.Event) {
	p.wide = !p.wide
	p.keepAddress(ctx)
}

func (p *walkPage) onSize(ctx app.Context, e app.Event) {
	p.size = walk.Size(chosen(ctx))
}

func (p *walkPage) onStart(ctx app.Context, e app.Event) {
	ctx.Navigate(walkURL(p.size, someSeed(source()), p.own, "", p.wide))
}
