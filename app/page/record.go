package page

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
)

// book is the record as the pages have it: what is kept in the browser's
// database, what the browser refused, and the state that follows from both.
type book struct {
	state   *record.State
	last    int            // key of the latest entry of the database that was read
	saved   int            // key of the latest entry in the saved state
	refused []record.Entry // not kept by the browser
	says    string         // why not
	damaged int            // entries that could not be read
	firm    bool           // the browser has promised not to clear the record by itself
	asked   bool           // it was asked for that
	loaded  bool
	loading bool
	again   bool // something was written while it was being read
	waiting []func()
	stamp   int64 // time of the latest entry made here
}

// records is the one record of the program.
var records = &book{state: record.NewState()}

// saveEvery is how many entries are written before the state is saved anew.
const saveEvery = 100

// refresh brings the state up to what is in the database, where other tabs
// may have written too, and then calls done.
func (b *book) refresh(done func()) {
	js, ok := database()
	if !ok {
		done()
		return
	}
	b.waiting = append(b.waiting, done)
	if b.loading {
		b.again = true
		return
	}
	b.loading = true
	if b.loaded {
		b.catchUp(js)
		return
	}
	settled(js.Call("state"), func(v app.Value) {
		if s, err := record.ReadSnapshot(v.Get("text").String()); err == nil && len(b.refused) == 0 {
			b.state, b.last = s, v.Get("last").Int()
			b.saved = b.last
		}
		b.catchUp(js)
	}, b.failed)
	settled(js.Call("persist", false), func(v app.Value) { b.firm = v.Bool() }, func(string) {})
}

// catchUp reads the entries behind the last one known. Where one of them is
// not later than what is known, all are read.
func (b *book) catchUp(js app.Value) {
	b.again = false
	settled(js.Call("since", b.last), func(v app.Value) {
		log, damaged := record.ReadLines(v.Get("text").String())
		switch {
		case b.last == 0:
			b.state, b.damaged = record.Derive(append(log, b.refused...)), damaged
		case b.state.Add(log):
			b.damaged += damaged
		default:
			b.last, b.saved = 0, -saveEvery
			b.catchUp(js)
			return
		}
		b.last = v.Get("last").Int()
		b.loaded = true
		b.saveState(js)
		if b.again {
			b.catchUp(js)
			return
		}
		b.release()
	}, b.failed)
}

// saveState saves the state now and then, so that a start reads little.
func (b *book) saveState(js app.Value) {
	if b.last-b.saved < saveEvery || len(b.refused) > 0 {
		return
	}
	text, err := b.state.Snapshot()
	if err != nil {
		return
	}
	b.saved = b.last
	settled(js.Call("keepState", b.last, text), func(app.Value) {}, func(string) {})
}

func (b *book) failed(why string) {
	b.says = why
	b.release()
}

// release hands the state to those who wait.
func (b *book) release() {
	b.loading = false
	list := b.waiting
	b.waiting = nil
	for _, f := range list {
		f()
	}
}

// write adds entries to the log. What the browser refuses stays until the
// page is closed, is tried again with the next, and can be saved to a file.
func (b *book) write(list []record.Entry, done func()) {
	js, ok := database()
	all := append(b.refused, list...)
	ids, texts, err := asRows(all)
	switch {
	case len(all) == 0:
		done()
		return
	case !ok || err != nil:
		b.hold(list, "")
		done()
		return
	}
	b.refused = nil
	settled(js.Call("add", ids, texts), func(app.Value) {
		b.says = ""
		b.ask(js)
		b.refresh(done)
	}, func(why string) {
		b.refused = all[:len(all)-len(list)]
		b.hold(list, why)
		done()
	})
}

// hold keeps entries in the program alone.
func (b *book) hold(list []record.Entry, why string) {
	b.refused = append(b.refused, list...)
	b.says = why
	if !b.state.Add(list) && !b.loaded {
		b.state = record.Derive(b.refused)
	}
}

// ask asks the browser, once and after real work, not to clear the record by
// itself.
func (b *book) ask(js app.Value) {
	if b.asked || b.firm {
		return
	}
	b.asked = true
	settled(js.Call("persist", true), func(v app.Value) { b.firm = v.Bool() }, func(string) {})
}

// wipe erases the record.
func (b *book) wipe(done func()) {
	fresh := func() {
		*b = book{state: record.NewState(), firm: b.firm, asked: b.asked, stamp: b.stamp}
		done()
	}
	js, ok := database()
	if !ok {
		fresh()
		return
	}
	settled(js.Call("wipe"), func(app.Value) { fresh() }, func(why string) {
		b.says = why
		done()
	})
}

// notices are what the record has to say on every page.
func (b *book) notices() []string {
	var list []string
	if n := len(b.refused); n > 0 && app.IsClient {
		list = append(list, fmt.Sprintf("The browser did not keep your latest work: %s. %s stay until this page is closed. Save them to a file under “Your record”.", whyNotKept(b.says), counted(n, "entry", "entries")))
	}
	if b.damaged > 0 {
		list = append(list, counted(b.damaged, "entry", "entries")+" of your record could not be read. The others are kept.")
	}
	return list
}

// counted is a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// whyNotKept is why the browser keeps nothing, in plain words.
func whyNotKept(why string) string {
	switch {
	case strings.Contains(strings.ToLower(why), "quota"):
		return "its storage is full"
	case why == "":
		return "it has no storage for this page"
	}
	return "its storage is blocked or broken"
}

// stamped is an entry with a fresh name and the time of the device. Entries of
// one device keep their order, though its clock stands still or is put back a
// little.
func (b *book) stamped(e record.Entry) record.Entry {
	const little = 24 * 60 * 60 * 1000
	t := time.Now()
	_, east := t.Zone()
	at := t.UnixMilli()
	if newest := max(b.stamp, b.state.Latest); at <= newest && newest-at < little {
		at = newest + 1
	}
	b.stamp = at
	e.Version, e.ID, e.At, e.Zone = record.Version, record.NewID(rand.Uint64()), at, east/60
	return e
}

// today is the day by the clock of the device.
func today() int {
	t := time.Now()
	_, east := t.Zone()
	return record.DayOf(t.UnixMilli(), east/60)
}
