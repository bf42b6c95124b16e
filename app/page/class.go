package page

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/sets"
)

// classPage is the page on which an instructor marks the hand-ins of a class.
// They are marked and kept on this device.
type classPage struct {
	app.Compo
	classwork
}

// classwork is the class under way; a fresh page begins a fresh one.
type classwork struct {
	link   string // the set's link as typed; empty: that of the first hand-in
	fault  string
	pasted string
	set    *sets.Set
	class  *sets.Class
	marker *sets.Marker
	pieces []sets.Piece // all that can be kept
	queue  []sets.Piece // still to be marked
	total  int
	at     bool // hand-ins are being marked
	report *sets.Report
	from   int // the first hand-in that is shown

	parts      sets.Parted
	scan       scan
	kept       string // where it is kept
	byHandKept []sets.Override

	hand      sets.Override // being set by hand
	handMarks string
	handSays  string
	notices   []string
	said      string
}

// OnNav begins a class; a set in the address is its set.
func (c *classPage) OnNav(ctx app.Context) {
	c.cameraOff()
	c.classwork = classwork{}
	if code := ctx.Page().URL().Fragment; code != "" {
		c.setLink(code)
	}
	c.restore(ctx)
	arrive(ctx, "class", "Mark a class · Riserwork")
}

// setLink takes the link of the set.
func (c *classPage) setLink(text string) {
	c.link, c.fault = text, ""
	if strings.TrimSpace(text) == "" {
		return
	}
	s, err := sets.ReadAddress(text)
	if err != nil {
		c.fault = problems.Sentence(err.Error()) + "."
		return
	}
	c.begin(s)
}

// begin is a class on a set.
func (c *classPage) begin(s *sets.Set) {
	c.set, c.class, c.marker, c.report = s, sets.NewClass(s), sets.NewMarker(s), nil
	c.total, c.pieces, c.from = len(c.queue), c.pieces[:0], 0
	for _, p := range c.queue {
		c.hold(p)
	}
	if says := s.Earlier(); says != "" {
		c.notices = append(c.notices, says)
	}
}

func (c *classPage) onLink(ctx app.Context, e app.Event) {
	c.setLink(ctx.JSSrc().Get("value").String())
}

func (c *classPage) onPasted(ctx app.Context, e app.Event) {
	c.pasted = ctx.JSSrc().Get("value").String()
}

// onCodes reads the codes that were pasted.
func (c *classPage) onCodes(ctx app.Context, e app.Event) {
	if strings.TrimSpace(c.pasted) == "" {
		return
	}
	c.take(ctx, "pasted", []byte(c.pasted))
	c.pasted = ""
	later(ctx, c, func() {
		if el := app.Window().GetElementByID("paste"); el.Truthy() {
			el.Set("value", "")
		}
	})
}

func (c *classPage) onFiles(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	c.read(ctx, el.Get("files"))
	el.Set("value", "")
}

func (c *classPage) onOver(ctx app.Context, e app.Event) { e.PreventDefault() }

func (c *classPage) onDrop(ctx app.Context, e app.Event) {
	e.PreventDefault()
	c.read(ctx, e.Get("dataTransfer").Get("files"))
}

// maxArchive is how many bytes of an archive are read on the page.
const maxArchive = 64 << 20

// read reads the files one by one; one that is too large is not read at all.
func (c *classPage) read(ctx app.Context, files app.Value) {
	for i := range files.Length() {
		f := files.Index(i)
		name, size := f.Get("name").String(), int64(f.Get("size").Float())
		most := int64(sets.MaxText)
		if strings.HasSuffix(strings.ToLower(name), ".zip") {
			most = maxArchive
		}
		if size > most {
			c.put(ctx, sets.Piece{Source: name, Fault: sets.TooLarge(size)})
			continue
		}
		settled(f.Call("arrayBuffer"), func(buffer app.Value) {
			data := make([]byte, size)
			app.CopyBytesToGo(data, app.Window().Get("Uint8Array").New(buffer))
			ctx.Dispatch(func(ctx app.Context) { c.take(ctx, name, data) })
		}, func(says string) {
			ctx.Dispatch(func(ctx app.Context) {
				c.notices = append(c.notices, "The browser could not read "+sets.Clean(name, 60)+": "+says+".")
			})
		})
	}
}

// take puts what is in a file with those to mark. A large archive is taken
// apart a little at a time, so that the page goes on.
func (c *classPage) take(ctx app.Context, name string, data []byte) {
	ctx.Async(func() {
		var list []sets.Piece
		end := time.Now().Add(aTurn)
		sets.Gather(name, data, func(p sets.Piece) {
			list = append(list, p)
			if time.Now().After(end) {
				time.Sleep(time.Millisecond)
				end = time.Now().Add(aTurn)
			}
		})
		ctx.Dispatch(func(ctx app.Context) { c.putAll(ctx, list) })
	})
}

// hold notes a hand-in to be kept.
func (c *classPage) hold(p sets.Piece) {
	if p.Fault == nil {
		c.pieces = append(c.pieces, p)
	}
}

// putAll lines hand-ins up; the first that can be read names the set, where
// no link did.
func (c *classPage) putAll(ctx app.Context, list []sets.Piece) {
	for _, p := range list {
		c.queue = append(c.queue, p)
		c.total++
		if c.set != nil {
			c.hold(p)
		} else if s, ok := sets.SetOf(p); ok {
			c.begin(s)
		}
	}
	if c.set == nil {
		c.fault = "None of these can be read so far, so give the link of the set too."
		return
	}
	c.fault = ""
	c.start(ctx)
}

func (c *classPage) put(ctx app.Context, p sets.Piece) { c.putAll(ctx, []sets.Piece{p}) }

// start marks what waits, unless that is under way.
func (c *classPage) start(ctx app.Context) {
	if !c.at && len(c.queue) > 0 {
		c.at = true
		ctx.After(time.Millisecond, c.step)
	}
}

// aTurn is how long hand-ins are marked before the page may show itself.
const aTurn = 30 * time.Millisecond

// step marks some of those that wait.
func (c *classPage) step(ctx app.Context) {
	if c.class == nil || !c.at {
		return
	}
	for end := time.Now().Add(aTurn); len(c.queue) > 0 && time.Now().Before(end); c.queue = c.queue[1:] {
		c.class.Add(c.marker.Piece(c.queue[0]))
	}
	if len(c.queue) > 0 {
		ctx.After(time.Millisecond, c.step)
		return
	}
	c.end(ctx)
}

// end tells what came of the hand-ins and keeps the class.
func (c *classPage) end(ctx app.Context) {
	c.at, c.total = false, 0
	for _, o := range c.byHandKept {
		if err := c.class.Put(o); err != nil {
			c.notices = append(c.notices, problems.Sentence(err.Error())+".")
		}
	}
	c.byHandKept = nil
	ctx.After(time.Millisecond, func(ctx app.Context) {
		c.tell()
		ctx.After(time.Millisecond, c.keepClass)
	})
}

// onCancel leaves out what is not marked yet.
func (c *classPage) onCancel(ctx app.Context, e app.Event) {
	c.notices = append(c.notices, strconv.Itoa(len(c.queue))+" hand-ins were left out. Those marked before stand.")
	left := map[string]int{}
	for _, p := range c.queue {
		left[p.Source+"\x00"+string(p.Data)]++
	}
	c.pieces = slices.DeleteFunc(c.pieces, func(p sets.Piece) bool {
		key := p.Source + "\x00" + string(p.Data)
		left[key]--
		return left[key] >= 0
	})
	c.queue = nil
	c.end(ctx)
}

// tell works out the report.
func (c *classPage) tell() {
	r := c.class.Report()
	c.report = &r
	c.from = min(c.from, len(r.Papers)/perPage*perPage)
	c.said = countedText(&r)
}

func countedText(r *sets.Report) string {
	text := strconv.Itoa(r.Counted) + " learners"
	if r.Counted == 1 {
		text = "1 learner"
	}
	switch n := len(r.Papers) - r.Counted; {
	case n == 1:
		text += ", 1 hand-in that does not count"
	case n > 1:
		text += ", " + strconv.Itoa(n) + " hand-ins that do not count"
	}
	return text
}

func (c *classPage) onHand(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	value := el.Get("value").String()
	switch el.Get("id").String() {
	case "pick-hand-learner":
		c.hand.Learner = value
	case "pick-hand-problem":
		c.hand.Problem, _ = strconv.Atoi(value)
	case "hand-marks":
		c.handMarks = value
	case "hand-reason":
		c.hand.Reason = value
	}
}

// onSetByHand sets marks by hand.
func (c *classPage) onSetByHand(ctx app.Context, e app.Event) {
	o := c.hand
	if list := c.shownCounted(); o.Learner == "" && len(list) > 0 {
		o.Learner = list[0].Learner
	}
	o.Problem = max(1, o.Problem)
	n, err := strconv.Atoi(strings.TrimSpace(c.handMarks))
	if err != nil {
		c.handSays = "Write the marks as a whole number."
		return
	}
	o.Marks = n
	if err := c.class.Put(o); err != nil {
		c.handSays = problems.Sentence(err.Error()) + "."
		return
	}
	c.tell()
	c.keepClass(ctx)
	c.handSays = "Set. It stands in the tables with its reason."
}

func (c *classPage) onCSV(ctx app.Context, e app.Event) {
	download("class.csv", "text/csv", []byte(c.report.CSV(c.set)))
}

func (c *classPage) onGrades(ctx app.Context, e app.Event) {
	download("grades.csv", "text/csv", []byte(c.report.Grades()))
}

func (c *classPage) onJSON(ctx app.Context, e app.Event) {
	download("class.json", "application/json", c.report.JSON())
}

// onFollowUp opens a set of what went wrong.
func (c *classPage) onFollowUp(ctx app.Context, e app.Event) {
	if f, ok := c.report.FollowUp(c.set); ok {
		ctx.Navigate(link(setPath) + "#" + f.Link())
	}
}

// onAgain begins anew and clears what is kept.
func (c *classPage) onAgain(ctx app.Context, e app.Event) {
	c.cameraOff()
	c.classwork = classwork{said: "The class is cleared."}
	clearKept()
}

func (c *classPage) onPrint(ctx app.Context, e app.Event) { app.Window().Call("print") }

// perPage is how many hand-ins are shown at once.
const perPage = 50

func (c *classPage) onEarlier(ctx app.Context, e app.Event) { c.from = max(0, c.from-perPage) }
func (c *classPage) onLater(ctx app.Context, e app.Event)   { c.from += perPage }

// shown are the hand-ins shown now.
func (c *classPage) shown() []sets.Paper {
	list := c.report.Papers
	from := max(0, min(c.from, len(list)))
	return list[from:min(len(list), from+perPage)]
}

// shownCounted are those of them that count.
func (c *classPage) shownCounted() []sets.Paper {
	list := c.shown()
	n := max(0, min(len(list), c.report.Counted-c.from))
	return list[:n]
}
