package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems/sets"
)

// whole is the full address of a link of ours, to give to others.
func whole(path string) string {
	return app.Window().Get("location").Get("origin").String() + path
}

// give is how the set reaches the learners.
func (m *setMaker) give() app.UI {
	if m.link == "" {
		return app.Section().Class("give").Body(app.P().Class("fault").ID("set-fault").Text(m.fault))
	}
	address := whole(doLink(m.link))
	return app.Section().Class("give").Aria("labelledby", "give").Body(
		app.H2().ID("give").Text("Give it out"),
		app.Textarea().Class("box", "code").ID("set-link").ReadOnly(true).Rows(3).Aria("label", "Link of the set").Text(address),
		app.Div().Class("ways").Body(
			button("copy", "Copy the link", true).OnClick(m.onCopy, address),
			button("share", "Share", false).Hidden(!canShare()).OnClick(m.onShare, address),
			app.A().Class("button").ID("try").Href(doLink(m.link)).Text("Open it as a learner"),
		),
		&qrCode{Text: address},
		app.Div().Class("ways").Body(
			button("print-sheet", "Print sheets", false).OnClick(m.onPrint, "sheet"),
			button("print-key", "Print the answer key", false).OnClick(m.onPrint, "key"),
		),
		app.P().Class("aside").Text("Printed sheets have the numbers of your copy. For sheets with each learner's own numbers use the command sheet."),
	)
}

// qrCode is a link to read with a camera.
type qrCode struct {
	app.Compo
	Text, Label string
}

// Render draws the code, or says that there is none.
func (q *qrCode) Render() app.UI {
	label := q.Label
	if label == "" {
		label = "the link as a QR code"
	}
	code, ok := draw.QR(q.Text, label)
	if !ok {
		return app.P().Class("aside").Text("This is too long for a QR code.")
	}
	return app.Div().Class("qr").ID("qr").Body(svg(code))
}

func (m *setMaker) onCopy(ctx app.Context, e app.Event) {
	copyText(ctx, whole(doLink(m.link)), func(ok bool) { m.said = copied(ok) })
}

func (m *setMaker) onShare(ctx app.Context, e app.Event) {
	share(map[string]any{"title": m.set.Title, "url": whole(doLink(m.link))})
}

// onPrint shows the set as it is printed, and asks the browser to print it.
func (m *setMaker) onPrint(ctx app.Context, e app.Event) {
	m.print = "sheet"
	if ctx.JSSrc().Get("id").String() == "print-key" {
		m.print = "key"
	}
	later(ctx, m, func() {
		app.Window().Call("scrollTo", 0, 0)
		app.Window().Call("print")
	})
}

func (m *setMaker) onPrinted(ctx app.Context, e app.Event) {
	m.print = ""
	later(ctx, m, m.sync)
}

// printed is the set on paper: problems with room to write, or the key.
func (m *setMaker) printed() app.UI {
	key := m.print == "key"
	title := m.set.Title
	if key {
		title += ": answer key"
	}
	var list []app.UI
	for i := range m.set.Items {
		if t, err := m.set.Task(i, ""); err == nil {
			list = append(list, printedTask(i, &t, key))
		}
	}
	return frame("print", nil,
		app.P().Class("ways", "no-print").Body(button("printed", "Back to the set", true).OnClick(m.onPrinted)),
		app.Div().Class("print-head").Body(
			app.If(!key, &qrCode{Text: whole(doLink(m.link))}),
			heading(title),
			app.If(!key, app.P().Class("print-name").Text("Name")),
			app.P().Text(termsText(&m.set)),
			app.P().Text(m.set.Note),
			app.If(m.set.Amends != "", app.P().Text("Local amendments: "+m.set.Amends)),
			app.P().Class("code").Text(m.link),
		),
		app.Ol().Class("print-tasks").Body(list...),
	)
}

func printedTask(i int, t *sets.Task, key bool) app.UI {
	body := []app.UI{
		app.H2().Text(strconv.Itoa(i+1) + ". " + t.Title()),
		app.P().Class("ask").Text(t.AskText()),
	}
	if t.Question != nil {
		return app.Li().Body(append(body, questionOn(t, key)...)...)
	}
	if scene := draw.Problem(t.Problem, key); scene != nil {
		body = append(body, app.Div().Class("print-riser").Body(svg(scene.Tree())))
	}
	var rows []app.UI
	for _, told := range t.Told {
		rows = append(rows, app.Div().Body(app.Dt().Text(t.Fill(told.Says, t.Env())), app.Dd().Text(told.Text)))
	}
	body = append(body, app.Dl().Class("told").Body(rows...))
	if key {
		return app.Li().Body(append(body, solved(t)...)...)
	}
	return app.Li().Body(append(body, room(t)...)...)
}

// printLines is the room for lines of one's own.
const printLines = 8

// room is where the working of a problem is written by hand.
func room(t *sets.Task) []app.UI {
	ruled := func(text string) app.UI { return app.P().Class("ruled").Text(text) }
	var list []app.UI
	switch t.Kind {
	case sets.Choice:
		for _, o := range t.Options {
			list = append(list, app.P().Text("☐ "+o.Text))
		}
	case sets.Mistake:
		list = append(list, app.P().Text("One line of this working is wrong. Mark the first wrong line and write it rightly."))
		for k, l := range t.Planted.Lines {
			list = append(list, app.P().Text(strconv.Itoa(k+1)+". "+l))
		}
		list = append(list, ruled("Line"))
	case sets.Free:
		for range printLines {
			list = append(list, ruled("\u00a0"))
		}
	default:
		for k := range t.Steps {
			list = append(list, ruled(strconv.Itoa(k+1)+". "+t.Label(k)))
		}
	}
	return list
}
