package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/marking"
)

// kindSwitch changes between named lines and lines of one's own.
func (w *work) kindSwitch() app.UI {
	a, text := w.address, "Write your own lines"
	a.kind = free
	if w.bench.sheet.Kind == free {
		a.kind, text = blanks, "Fill in named lines"
	}
	return app.A().Class("switch").ID("switch").Href(a.url()).Text(text)
}

// freeLine is one line of one's own with what was found on it.
func (w *work) freeLine(i int) app.UI {
	tone := blank
	f, ok := w.bench.found(i)
	if ok {
		tone = shown(f.Verdict).tone
	}
	return app.Li().Class("line").ID("card-"+strconv.Itoa(i)).DataSet("tone", tone).DataSet("at", w.at == i).Body(
		app.Div().Class("free").Body(
			app.Label().Class("number").For(lineID(i)).Aria("label", "Line "+strconv.Itoa(i+1)).Text(strconv.Itoa(i+1)),
			w.blank(i, ok, tone),
			app.Button().Type("button").Class("remove").DataSet("line", i).Aria("label", "Remove line "+strconv.Itoa(i+1)).
				Hidden(!w.bench.mayRemove(i)).Text("✕").OnClick(w.onRemove).OnMouseDown(stay),
		),
		app.Div().Class("finding").ID("finding-"+strconv.Itoa(i)).TabIndex(-1).Body(w.freeFinding(i, f, ok)...),
		app.Div().Class("tools").Body(w.freeTools(i, f, ok)...),
	)
}

// freeFinding is what was found, after how the line was read and tied.
func (w *work) freeFinding(i int, f marking.Finding, ok bool) []app.UI {
	if !ok || f.Verdict == marking.Empty {
		return nil
	}
	list := []app.UI{app.P().Class("read-as").Hidden(readAs(w.bench, f) == "").Text(readAs(w.bench, f))}
	list = append(list, w.finding(i, f, ok)...)
	if f.Verdict == marking.Right && f.Says != "Right." {
		list = append(list, app.P().Class("saying").Text(f.Says))
	}
	return list
}

// readAs says how a line was read and which step it was tied to.
func readAs(b *bench, f marking.Finding) string {
	p := b.solved()
	if f.Step < 0 || f.Step >= len(p.Steps) {
		return ""
	}
	text := "read as: " + p.Fill(p.Steps[f.Step].Says, p.Env())
	if f.ReadAs != "" {
		text += ", " + f.ReadAs
	}
	return text
}

// freeTools let the learner say what a line is that was not found right.
func (w *work) freeTools(i int, f marking.Finding, ok bool) []app.UI {
	at := w.bench.tied(i)
	if !ok || f.Verdict == marking.Empty || f.Verdict.Good() && at < 0 {
		return nil
	}
	p := w.bench.solved()
	options := []app.UI{app.Option().Value("-1").Selected(at < 0).Text("as it was read")}
	for k := range p.Steps {
		options = append(options, app.Option().Value(strconv.Itoa(k)).Selected(at == k).Text(p.Fill(p.Steps[k].Says, p.Env())))
	}
	id := "tie-" + strconv.Itoa(i)
	return []app.UI{app.Div().Class("tie").Body(
		app.Label().For(id).Text("This line is"),
		app.Select().ID(id).DataSet("line", i).OnChange(w.onTie).Body(options...),
	)}
}

// onTie ties a line to the step that was chosen, and marks anew.
func (w *work) onTie(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	i := indexOf(el)
	step, err := strconv.Atoi(el.Get("value").String())
	if err != nil || i < 0 || i >= len(w.bench.sheet.Lines) {
		return
	}
	w.bench.tie(i, step)
	w.bench.markAll()
	w.opened[i] = true
	w.note(ctx)
	w.said = w.spoken(i)
	w.after(ctx, w.sync)
}

// onward goes on from line i: a named line is marked first; after the last
// line of one's own a new one begins, and from an empty one all are marked.
func (w *work) onward(ctx app.Context, i int) {
	if w.bench.sheet.Kind != free {
		w.markLine(ctx, i)
		return
	}
	last := i == len(w.bench.sheet.Lines)-1
	if last && w.bench.add() {
		w.save(ctx)
	} else if last && w.bench.sheet.begun() {
		w.markAll(ctx)
		return
	}
	w.goTo(ctx, i+1)
}

func (w *work) onAdd(ctx app.Context, e app.Event) {
	w.bench.add()
	w.save(ctx)
	w.goTo(ctx, len(w.bench.sheet.Lines)-1)
	w.after(ctx, w.sync)
}

// remove takes an empty line away and goes to the one before it.
func (w *work) remove(ctx app.Context, i int) {
	if !w.bench.remove(i) {
		return
	}
	clear(w.opened)
	w.save(ctx)
	w.after(ctx, w.sync)
	w.goTo(ctx, max(i-1, 0))
}

func (w *work) onRemove(ctx app.Context, e app.Event) { w.remove(ctx, indexOf(ctx.JSSrc())) }

// route says which way was taken, where it is another than the skill's own.
func (w *work) route() string {
	if w.bench.sheet.Kind != free || w.bench.solved().Route == "" {
		return ""
	}
	return "You went another way that is right too: " + w.bench.solved().Route + "."
}
