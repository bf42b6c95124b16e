package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// key is one of our own keys.
type key struct {
	cap  string // what stands on it; also its name
	says string // for those who listen, where the cap is a sign
	kind string // a group for the look: digit, sign, move
}

// rows are the keys, six in a row.
var rows = [][]key{
	{{"7", "", "digit"}, {"8", "", "digit"}, {"9", "", "digit"}, {"÷", "divided by", "sign"}, {"( )", "bracket", "sign"}, {"⌫", "back", "move"}},
	{{"4", "", "digit"}, {"5", "", "digit"}, {"6", "", "digit"}, {"×", "times", "sign"}, {"√", "root", "sign"}, {"xⁿ", "power", "sign"}},
	{{"1", "", "digit"}, {"2", "", "digit"}, {"3", "", "digit"}, {"−", "minus", "sign"}, {"′", "feet", "sign"}, {"″", "inches", "sign"}},
	{{"0", "", "digit"}, {".", "point", "digit"}, {"␣", "space", "digit"}, {"+", "plus", "sign"}, {"a⁄b", "fraction bar", "sign"}, {"=", "equals", "sign"}},
}

// press is the line after a key.
func press(e edit, name string) edit {
	switch name {
	case "+", "−", "×", "÷", "=":
		return e.operator(name)
	case "( )":
		return e.bracket()
	case "⌫":
		return e.back()
	case "√":
		return e.insert("√(")
	case "xⁿ":
		return e.insert("^")
	case "a⁄b":
		return e.insert("/")
	case "␣":
		return e.insert(" ")
	case "◀":
		return e.move(-1)
	case "▶":
		return e.move(1)
	}
	return e.insert(name)
}

// pad is the keys at the foot of the page while a line is written.
func (w *work) pad() app.UI {
	ours := "Keys"
	if w.ours {
		ours = "⌨"
	}
	return app.Div().Class("pad").Attr("role", "group").Aria("label", "Keys for line "+strconv.Itoa(w.at+1)).OnMouseDown(stay).Body(
		app.Div().Class("chip-row").Body(
			app.Div().Class("chips").Body(w.chips()...),
			quiet("⌫", "back").ID("chip-back").DataSet("key", "⌫").OnClick(w.onPress).Hidden(w.ours),
			quiet(ours, "change between these keys and those of your device").Class("swap").OnClick(w.onSwap),
			quiet("▾", "put the keys away").OnClick(w.onClose),
		),
		app.Div().Class("keys").Hidden(!w.ours).Body(w.keys()...),
		app.Div().Class("key-row").Body(
			quiet("◀", "caret left").DataSet("key", "◀").OnClick(w.onPress),
			quiet("▶", "caret right").DataSet("key", "▶").OnClick(w.onPress),
			w.ownUnit(),
			w.onwardKey(),
			w.markKey(),
		),
	)
}

// quiet is a key that a keyboard's tab passes over: the keyboard has it.
func quiet(cap, says string) app.HTMLButton {
	b := app.Button().Type("button").Class("key").TabIndex(-1).Text(cap)
	if says != "" {
		b.Aria("label", says)
	}
	return b
}

func (w *work) keys() []app.UI {
	var list []app.UI
	for _, row := range rows {
		for _, k := range row {
			list = append(list, quiet(k.cap, k.says).Class(k.kind).DataSet("key", k.cap).OnClick(w.onPress))
		}
	}
	return list
}

// onwardKey is the key to the next line, and on the last one the marking. The
// one line of a mistake has none after it.
func (w *work) onwardKey() app.UI {
	b := app.Button().Type("button").Class("key", "onward").ID("onward").TabIndex(-1)
	switch {
	case w.bench.sheet.Kind == mistake:
		return b.Text("Clear line").OnClick(w.onClear)
	case w.bench.sheet.Kind == blanks && w.at == len(w.bench.p.Steps)-1 && !w.task.silent():
		return b.Text("Mark all").OnClick(w.onMarkAll)
	}
	return b.Text("Next line").OnClick(w.onOnward)
}

// markKey marks the line, or free lines all together, since each may belong
// to any step.
func (w *work) markKey() app.UI {
	b := app.Button().Type("button").Class("key", "mark").ID("mark-line").TabIndex(-1)
	if w.task.silent() {
		return b.Text("Done").OnClick(w.onMarkAll)
	}
	if w.bench.sheet.Kind == free {
		return b.Text("Mark all").OnClick(w.onMarkAll)
	}
	return b.Text("Mark line").OnClick(w.onMarkLine)
}

// chips are the numbers and units that belong to the line.
func (w *work) chips() []app.UI {
	var list []app.UI
	for _, c := range w.bench.numbers(w.at) {
		list = append(list, quiet("", w.bench.p.Fill(c.says, w.bench.p.Env())+", "+c.show).Class("chip").DataSet("chip", c.text).OnClick(w.onChip).Body(
			app.If(c.name != "", app.Span().Class("of").Text(c.name)),
			app.Span().Class("value").Text(c.show),
		))
	}
	for n, u := range w.bench.units(w.at) {
		if n > 0 {
			list = append(list, quiet(u, "").Class("chip", "unit").DataSet("unit", u).OnClick(w.onUnit))
		}
	}
	return list
}

// ownUnit is the key of the unit that the line asks for.
func (w *work) ownUnit() app.UI {
	list := w.bench.units(w.at)
	if len(list) == 0 {
		return quiet("", "no unit").Disabled(true)
	}
	return quiet(list[0], "").Class("unit").DataSet("unit", list[0]).OnClick(w.onUnit)
}

// stay keeps the caret in its box while a key is pressed.
func stay(ctx app.Context, e app.Event) { e.PreventDefault() }

// editing is line at as it stands in its box.
func (w *work) editing() edit {
	el := box(w.at)
	if !el.Truthy() {
		return edit{}
	}
	return edit{el.Get("value").String(), el.Get("selectionStart").Int(), el.Get("selectionEnd").Int()}
}

// set writes a line into its box and keeps it.
func (w *work) set(ctx app.Context, e edit) {
	el := box(w.at)
	if !el.Truthy() {
		return
	}
	el.Set("value", e.text)
	el.Call("focus")
	el.Call("setSelectionRange", e.start, e.end)
	w.write(ctx, w.at, e.text)
}

func (w *work) onPress(ctx app.Context, e app.Event) {
	w.set(ctx, press(w.editing(), ctx.JSSrc().Get("dataset").Get("key").String()))
}

func (w *work) onChip(ctx app.Context, e app.Event) {
	w.set(ctx, w.editing().insert(ctx.JSSrc().Get("dataset").Get("chip").String()))
}

func (w *work) onUnit(ctx app.Context, e app.Event) {
	name := ctx.JSSrc().Get("dataset").Get("unit").String()
	w.set(ctx, w.editing().unit(name, w.bench.units(w.at)))
}

func (w *work) onOnward(ctx app.Context, e app.Event) {
	if w.bench.sheet.Kind == free {
		w.onward(ctx, w.at)
		return
	}
	w.goTo(ctx, w.at+1)
}

func (w *work) onClear(ctx app.Context, e app.Event) { w.set(ctx, edit{}) }

func (w *work) onMarkLine(ctx app.Context, e app.Event) { w.markLine(ctx, w.at) }

func (w *work) onClose(ctx app.Context, e app.Event) { w.close(ctx) }

// onSwap changes between our keys and those of the device.
func (w *work) onSwap(ctx app.Context, e app.Event) {
	w.ours = !w.ours
	l := loadLook(ctx.LocalStorage())
	l.Keys = "device"
	if w.ours {
		l.Keys = "ours"
	}
	w.say(keepLook(ctx.LocalStorage(), l))
	i := w.at
	w.after(ctx, func() {
		if el := box(i); el.Truthy() {
			el.Call("blur")
			el.Call("focus")
		}
	})
}
