package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// copyText puts a text on the clipboard and says whether that worked.
func copyText(ctx app.Context, text string, then func(ok bool)) {
	board := app.Window().Get("navigator").Get("clipboard")
	if !board.Truthy() {
		then(false)
		return
	}
	end := func(ok bool) { ctx.Dispatch(func(app.Context) { then(ok) }) }
	settled(board.Call("writeText", text), func(app.Value) { end(true) }, func(string) { end(false) })
}

func copied(ok bool) string {
	if ok {
		return "Copied."
	}
	return "The browser would not copy it. Mark the text and copy it by hand."
}

// canShare reports whether the device has a way to share.
func canShare() bool { return app.Window().Get("navigator").Get("share").Truthy() }

// share offers what is given to the other programs of the device; that the
// learner turns it down is no fault.
func share(what map[string]any) {
	settled(app.Window().Get("navigator").Call("share", what), func(app.Value) {}, func(string) {})
}

// file is bytes as a file of the browser.
func file(name, kind string, data []byte) app.Value {
	bytes := app.Window().Get("Uint8Array").New(len(data))
	app.CopyBytesToJS(bytes, data)
	parts := app.Window().Get("Array").New()
	parts.Call("push", bytes)
	return app.Window().Get("File").New(parts, name, map[string]any{"type": kind})
}

// download hands a file to the browser to save.
func download(name, kind string, data []byte) {
	at := app.Window().Get("URL")
	url := at.Call("createObjectURL", file(name, kind, data)).String()
	a := app.Window().Get("document").Call("createElement", "a")
	a.Set("href", url)
	a.Set("download", name)
	a.Call("click")
	at.Call("revokeObjectURL", url)
}

// mayShareFile reports whether the device shares files of ours.
func mayShareFile(f app.Value) bool {
	nav := app.Window().Get("navigator")
	if !canShare() || !nav.Get("canShare").Truthy() {
		return false
	}
	return nav.Call("canShare", map[string]any{"files": listOf(f)}).Bool()
}

func listOf(v app.Value) app.Value {
	list := app.Window().Get("Array").New()
	list.Call("push", v)
	return list
}

// later runs f once the page shows the change. It is bound to the page, since
// what was tapped may be gone by then.
func later(ctx app.Context, page app.Composer, f func()) {
	ctx.Dispatcher().Dispatch(app.Dispatch{Mode: app.Defer, Source: page, Function: func(app.Context) { f() }})
}
