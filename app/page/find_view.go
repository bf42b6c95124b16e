package page

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
)

// toFind is a finished working with a mistake in it: the first wrong line is
// tapped, then written rightly.
func (w *work) toFind() app.UI {
	b := w.bench
	ask := "One line is wrong, and the lines after it go on from it. Tap the first wrong line."
	if b.sheet.Done {
		ask = fmt.Sprintf("Line %d it was.", b.planted.Wrong+1)
	} else if b.hit() {
		ask = fmt.Sprintf("Line %d it is. Now write it rightly.", b.planted.Wrong+1)
	}
	if w.task.silent() {
		ask = "One line is wrong, and the lines after it go on from it. Tap the first wrong line, and write it rightly. You may choose another until you hand in."
	}
	var list []app.UI
	for i := range b.planted.Lines {
		list = append(list, w.plantedLine(i))
	}
	return app.Div().Class("working").Body(
		app.H2().Class("lines-title").ID("find").TabIndex(-1).Text("Find the mistake"),
		app.P().Class("find-ask").ID("find-ask").Text(ask),
		app.Ol().Class("lines").Body(list...),
	)
}

func (w *work) plantedLine(i int) app.UI {
	if w.task.silent() {
		return w.silentPlanted(i)
	}
	b := w.bench
	tone, says := blank, ""
	switch {
	case i == b.planted.Wrong && b.hit():
		tone = bad
	case !b.tapped(i):
	case i < b.planted.Wrong:
		tone, says = good, "This line is right."
	default:
		says = "This line goes on rightly from the lines before it. The first wrong line stands earlier."
	}
	body := []app.UI{
		app.P().Class("says").Body(
			app.Span().Class("number").Text(strconv.Itoa(i+1)),
			app.Span().Text(w.label(i)),
		),
		app.Button().Type("button").Class("planted").ID("planted-"+strconv.Itoa(i)).DataSet("line", i).
			Aria("label", fmt.Sprintf("Line %d: %s", i+1, b.planted.Lines[i])).Disabled(b.hit()).Text(b.planted.Lines[i]).OnClick(w.onPlanted),
		app.P().Class("saying").Hidden(says == "").Text(says),
	}
	card := app.Li().Class("line", "given").DataSet("tone", tone)
	if tone != bad {
		return card.Body(body...)
	}
	return card.Body(append(body, app.Ol().Class("lines", "instead").Aria("label", "In its place").Body(w.line(i)), w.plantedWhy())...)
}

// plantedWhy explains the mistake, once the line was put right.
func (w *work) plantedWhy() app.UI {
	if !w.bench.sheet.Done {
		return app.Div().Hidden(true)
	}
	s, ok := w.bench.slipPlanted()
	if !ok {
		return app.Div().Hidden(true)
	}
	return app.Div().Class("planted-why").Body(explained(s, "What was done there"))
}

func (w *work) onPlanted(ctx app.Context, e app.Event) {
	i := indexOf(ctx.JSSrc())
	if i < 0 {
		return
	}
	if w.task.silent() {
		w.choose(ctx, i)
		return
	}
	w.bench.tap(i)
	w.save(ctx)
	if w.bench.hit() {
		w.said = "This is the first wrong line. Write it rightly."
		w.goTo(ctx, w.bench.planted.Wrong)
		return
	}
	w.said = fmt.Sprintf("Line %d is not the first wrong line.", i+1)
}

// putRight marks the line that stands in place of the wrong one.
func (w *work) putRight(ctx app.Context) {
	if w.task.silent() {
		w.close(ctx)
		w.save(ctx)
		return
	}
	i := w.bench.planted.Wrong
	ok := w.bench.putRight()
	w.opened[i] = true
	w.said = w.spoken(i)
	w.note(ctx)
	if !ok {
		w.goTo(ctx, i)
		return
	}
	w.at = -1
	w.picture = draw.Problem(w.bench.p, true)
	w.after(ctx, func() { lookAt(-1) })
}

// footFind is the next thing to do where something is to be tapped, and then
// written in place of a mistake.
func (w *work) footFind() []app.UI {
	b := w.bench
	switch {
	case w.task.silent():
		return []app.UI{button("foot-look", "To the lines", len(b.sheet.Tapped) == 0).OnClick(w.onLook)}
	case b.sheet.Kind == choice:
		return []app.UI{button("foot-look", "To the answers", len(b.sheet.Tapped) == 0).OnClick(w.onLook)}
	case !b.hit():
		return []app.UI{button("foot-look", "To the lines", len(b.sheet.Tapped) == 0).OnClick(w.onLook)}
	}
	list := []app.UI{button("foot-line", fmt.Sprintf("Write line %d", b.planted.Wrong+1), b.text(b.planted.Wrong) == "").OnClick(w.onFixPlanted)}
	if b.text(b.planted.Wrong) != "" {
		list = append(list, button("foot-mark", "Mark the line", true).OnClick(w.onMarkAll))
	}
	return list
}

// onLook goes to what is to be tapped.
func (w *work) onLook(ctx app.Context, e app.Event) {
	el := app.Window().GetElementByID("find")
	if el.Truthy() {
		el.Call("focus", map[string]any{"preventScroll": true})
		el.Call("scrollIntoView", map[string]any{"block": "start"})
	}
}

func (w *work) onFixPlanted(ctx app.Context, e app.Event) { w.goTo(ctx, w.bench.planted.Wrong) }
