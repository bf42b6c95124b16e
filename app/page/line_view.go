package page

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/marking"
)

func (w *work) lines() []app.UI {
	list := make([]app.UI, len(w.bench.sheet.Lines))
	for i := range list {
		if w.bench.sheet.Kind == free {
			list[i] = w.freeLine(i)
			continue
		}
		if w.bench.isGiven(i) {
			list[i] = w.givenLine(i)
			continue
		}
		list[i] = w.line(i)
	}
	return list
}

// line is one blank with what was found on it. Its parts keep their places,
// so that the box is never made anew under the typing hand.
func (w *work) line(i int) app.UI {
	tone := blank
	f, ok := w.bench.found(i)
	if ok {
		tone = shown(f.Verdict).tone
	}
	return app.Li().Class("line").ID("card-"+strconv.Itoa(i)).DataSet("tone", tone).DataSet("at", w.at == i).Body(
		app.Label().Class("says").For(lineID(i)).Body(
			app.Span().Class("number").Text(strconv.Itoa(i+1)),
			app.Span().Text(w.label(i)),
		),
		w.lookUp(i),
		w.blank(i, ok, tone),
		app.Div().Class("finding").ID("finding-"+strconv.Itoa(i)).TabIndex(-1).Body(w.finding(i, f, ok)...),
		app.Div().Class("hints").Body(w.hintList(i)...),
		app.Div().Class("tools").Body(w.tools(i, f, ok)...),
	)
}

// label is what the line holds, with its unit.
func (w *work) label(i int) string {
	s := &w.bench.p.Steps[i]
	text := w.bench.p.Fill(s.Says, w.bench.p.Env())
	if s.Unit.Name != "" && len(s.Choices) == 0 {
		text += ", in " + s.Unit.Name
	}
	return text
}

// blank is the box of a line, or its words to choose from.
func (w *work) blank(i int, marked bool, tone string) app.UI {
	if choices := w.bench.choices(i); len(choices) > 0 {
		return w.choices(i, choices)
	}
	mode := "text"
	if w.ours {
		mode = "none"
	}
	return app.Input().Class("box").ID(lineID(i)).Type("text").DataSet("line", i).
		Attr("inputmode", mode).Attr("enterkeyhint", "next").Attr("maxlength", maxLine).
		AutoComplete(false).Attr("autocapitalize", "off").Attr("autocorrect", "off").Spellcheck(false).
		Aria("invalid", marked && tone == bad).Aria("describedby", "finding-"+strconv.Itoa(i)).
		OnFocus(w.onFocus).OnInput(w.onInput).OnKeyDown(w.onKey)
}

func (w *work) choices(i int, choices []string) app.UI {
	var list []app.UI
	for j, word := range choices {
		b := app.Button().Type("button").Class("choice").DataSet("line", i).DataSet("word", word).
			Aria("pressed", w.bench.sheet.Lines[i].Text == word).Text(word).OnClick(w.onChoice)
		if j == 0 {
			b.ID("choice-" + strconv.Itoa(i))
		}
		list = append(list, b)
	}
	return app.Div().Class("choices").Attr("role", "group").Aria("label", w.label(i)).Body(list...)
}

func (w *work) onChoice(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	w.at = -1
	w.write(ctx, indexOf(el), el.Get("dataset").Get("word").String())
}

// finding is what was found on a line. The earliest fault is explained at
// once, another when it is asked for.
func (w *work) finding(i int, f marking.Finding, ok bool) []app.UI {
	if !ok {
		return nil
	}
	j := shown(f.Verdict)
	list := []app.UI{app.P().Class("word").Body(
		app.Span().Class("sign").Aria("hidden", true).Text(j.sign),
		app.Strong().Text(j.word),
		app.If(w.bench.sheet.Kind != free && readsApart(f), app.Span().Class("read-as").Text("read as "+f.ReadAs)),
	)}
	if f.Verdict == marking.Right && len(f.Slips) == 0 || f.Verdict == marking.Empty {
		return list
	}
	if i != w.bench.fault() && !w.opened[i] && w.bench.wrong(i) {
		return append(list, app.Button().Type("button").Class("link").DataSet("line", i).Text("Explain this line").OnClick(w.onExplain))
	}
	if f.Says != "" && (len(f.Slips) == 0 || f.Slips[0].Did != f.Says) {
		list = append(list, app.P().Class("saying").Text(f.Says))
	}
	for n, s := range f.Slips {
		did := "What you did"
		if n > 0 {
			did = "Or this"
		}
		list = append(list, explained(s, did))
	}
	return list
}

// readsApart reports whether a line was read as other than it looks.
func readsApart(f marking.Finding) bool {
	plain := strings.ReplaceAll(f.ReadAs, "\u00a0", " ")
	return plain != "" && !strings.HasSuffix(strings.TrimSpace(f.Text), plain)
}

// explained is the explanation of a slip in its three parts.
func explained(s marking.Named, did string) app.UI {
	return app.Dl().Class("explained").Body(
		app.Dt().Text(did), app.Dd().Text(s.Did),
		app.Dt().Text("Why it does not hold"), app.Dd().Text(s.Why),
		app.Dt().Text("Next time"), app.Dd().Text(s.Next),
	)
}

func (w *work) onExplain(ctx app.Context, e app.Event) {
	if i := indexOf(ctx.JSSrc()); i >= 0 {
		w.opened[i] = true
	}
}

func (w *work) hintList(i int) []app.UI {
	var list []app.UI
	for _, text := range w.bench.hints(i) {
		list = append(list, app.P().Class("hint").Text(text))
	}
	return list
}

// tools are the hint for a line that is written or wrong, and the reason of a
// line that was marked.
func (w *work) tools(i int, f marking.Finding, ok bool) []app.UI {
	var list []app.UI
	good := ok && f.Verdict.Good()
	if !good && !w.task.hintless() && (w.at == i || w.bench.wrong(i)) {
		list = append(list, w.hintTool(i))
	}
	if ok {
		list = append(list, app.Details().Class("why").Body(
			app.Summary().Text("Why is this line so?"),
			app.P().Text(w.bench.p.Fill(w.bench.p.Steps[i].Why, w.bench.env())),
		))
	}
	return list
}

func (w *work) hintTool(i int) app.UI {
	n := w.bench.sheet.Lines[i].Hints
	switch {
	case n >= hintTurns:
		return app.Span()
	case w.bench.mayHint(i):
		text := "Hint for line " + strconv.Itoa(i+1)
		if n > 0 {
			text = "A further hint"
		}
		return app.Button().Type("button").Class("link").DataSet("line", i).Text(text).OnClick(w.onHint).OnMouseDown(stay)
	}
	return app.P().Class("aside").Text("Try the line with this hint; then there is a further one.")
}

func (w *work) onHint(ctx app.Context, e app.Event) {
	i := indexOf(ctx.JSSrc())
	if i < 0 {
		return
	}
	w.bench.hint(i)
	hints := w.bench.hints(i)
	w.said = "Hint: " + hints[len(hints)-1]
	w.save(ctx)
}

// spoken is the finding of a line for those who listen.
func (w *work) spoken(i int) string {
	f, ok := w.bench.found(i)
	if !ok {
		return ""
	}
	text := fmt.Sprintf("Line %d: %s.", i+1, shown(f.Verdict).word)
	return strings.TrimSpace(text + " " + f.Says)
}
