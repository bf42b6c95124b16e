package page

import (
	"encoding/binary"
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/sets"
)

// A class is kept on the device as it came: the link of its set, what was set
// by hand, and the hand-ins, all marked again when the page is opened. It
// stands in a store of the browser for answers to requests, since hand-ins of
// a large class outgrow what is kept for a page.
const (
	keptStore   = "class-kept"
	keptVersion = 1
	maxKept     = 32 << 20 // bytes
)

var errKept = errors.New("what was kept of the class cannot be read")

// packKept writes a class as it is kept.
func packKept(link string, byHand []sets.Override, pieces []sets.Piece) []byte {
	b := []byte{keptVersion}
	text := func(s string) {
		b = binary.AppendUvarint(b, uint64(len(s)))
		b = append(b, s...)
	}
	text(link)
	b = binary.AppendUvarint(b, uint64(len(byHand)))
	for _, o := range byHand {
		text(o.Learner)
		b = binary.AppendUvarint(b, uint64(o.Problem))
		b = binary.AppendUvarint(b, uint64(o.Marks))
		text(o.Reason)
	}
	for _, p := range pieces {
		text(p.Source)
		text(string(p.Data))
	}
	return b
}

// readKept reads it back.
func readKept(b []byte) (link string, byHand []sets.Override, pieces []sets.Piece, err error) {
	if len(b) == 0 || b[0] != keptVersion {
		return "", nil, nil, errKept
	}
	b = b[1:]
	number := func() int {
		v, n := binary.Uvarint(b)
		if n <= 0 || v > maxKept {
			b, err = nil, errKept
			return 0
		}
		b = b[n:]
		return int(v)
	}
	text := func() string {
		n := number()
		if n > len(b) {
			b, err = nil, errKept
			return ""
		}
		s := string(b[:n])
		b = b[n:]
		return s
	}
	link = text()
	for range number() {
		if err != nil {
			break
		}
		byHand = append(byHand, sets.Override{Learner: text(), Problem: number(), Marks: number(), Reason: text()})
	}
	for err == nil && len(b) > 0 {
		pieces = append(pieces, sets.Piece{Source: text(), Data: []byte(text())})
	}
	return link, byHand, pieces, err
}

// stores are the browser's stores; false where it has none.
func stores() (app.Value, bool) {
	v := app.Window().Get("caches")
	return v, v.Truthy()
}

// keepClass keeps the class as it stands.
func (c *classPage) keepClass(ctx app.Context) {
	s, ok := stores()
	if !ok || c.set == nil {
		return
	}
	data := packKept(c.set.Link(), c.class.ByHand(), c.pieces)
	if len(data) > maxKept {
		c.kept = fmt.Sprintf("The class is larger than the %d MB that are kept, so it is gone when you leave the page. Take its tables away first.", maxKept>>20)
		return
	}
	bytes := app.Window().Get("Uint8Array").New(len(data))
	app.CopyBytesToJS(bytes, data)
	fail := func(says string) {
		ctx.Dispatch(func(app.Context) { c.kept = "The browser would not keep the class: " + says + "." })
	}
	settled(s.Call("open", keptStore), func(store app.Value) {
		settled(store.Call("put", link("/"+keptStore), app.Window().Get("Response").New(bytes)), func(app.Value) {
			ctx.Dispatch(func(app.Context) {
				c.kept = "Kept in this browser on this device until you clear it."
			})
		}, fail)
	}, fail)
}

// restore takes up the class that was kept, if there is one and the address
// names no other.
func (c *classPage) restore(ctx app.Context) {
	s, ok := stores()
	if !ok {
		return
	}
	quiet := func(string) {}
	settled(s.Call("match", link("/"+keptStore), map[string]any{"cacheName": keptStore}), func(found app.Value) {
		if !found.Truthy() {
			return
		}
		settled(found.Call("arrayBuffer"), func(buffer app.Value) {
			bytes := app.Window().Get("Uint8Array").New(buffer)
			data := make([]byte, min(bytes.Length(), maxKept))
			app.CopyBytesToGo(data, bytes)
			ctx.Dispatch(func(ctx app.Context) { c.takeUp(ctx, data) })
		}, quiet)
	}, quiet)
}

// takeUp marks again what was kept.
func (c *classPage) takeUp(ctx app.Context, data []byte) {
	code, byHand, pieces, err := readKept(data)
	s, bad := sets.ReadLink(code)
	if err != nil || bad != nil {
		c.notices = append(c.notices, "What was kept of a class cannot be read, so it is left out.")
		return
	}
	if c.set != nil && c.set.Link() != code || len(c.pieces) > 0 {
		return
	}
	c.begin(s)
	c.byHandKept = byHand
	c.putAll(ctx, pieces)
}

// clearKept takes away what is kept of a class.
func clearKept() {
	if s, ok := stores(); ok {
		settled(s.Call("delete", keptStore), func(app.Value) {}, func(string) {})
	}
}
