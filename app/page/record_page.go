package page

import (
	"fmt"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/skills"
)

// recordPage is where the record is saved, read and moved.
type recordPage struct {
	app.Compo

	said    string
	bad     bool // what was said is a refusal
	code    string
	sure    bool // erasing was asked for once
	read    bool
	notices []string
}

// OnNav reads the record.
func (r *recordPage) OnNav(ctx app.Context) {
	r.said, r.bad, r.code, r.sure, r.read = "", false, "", false, false
	arrive(ctx, "record", "Your record · Riserwork")
	records.refresh(func() { ctx.Dispatch(func(app.Context) { r.read = true }) })
}

// Render shows where the record is and what can be done with it.
func (r *recordPage) Render() app.UI {
	tone := good
	if r.bad {
		tone = bad
	}
	return frame("record", r.notices,
		heading("Your record"),
		app.P().Body(app.Strong().Text("Kept in this browser only."), app.Text(" Nobody else sees it, and nobody else has a copy.")),
		app.P().Text(r.kept()),
		r.promise(),
		app.P().Class("said").ID("record-said").Attr("role", "status").DataSet("tone", tone).Text(r.said),
		r.file(),
		r.move(),
		r.erase(),
	)
}

// kept says how much there is.
func (r *recordPage) kept() string {
	if !r.read {
		return "Reading your record."
	}
	s := records.state
	if s.Entries == 0 {
		return "There is nothing in it yet."
	}
	return fmt.Sprintf("It holds %s from %s.", counted(s.Entries, "entry", "entries"), counted(len(s.Days), "day of work", "days of work"))
}

// promise says whether the browser may clear the record by itself. What phones
// do to sites that are not visited: from memory.
func (r *recordPage) promise() app.UI {
	if records.firm {
		return app.P().ID("promise").Text("This browser has promised not to clear it by itself. It still goes when you clear the site’s data, or lose the device.")
	}
	return app.P().ID("promise").Text("This browser has not promised to keep it. A phone may clear the data of a site that is not visited: iPhones after seven days of use without a visit, others when room runs short. Putting this page on the home screen helps; a saved file is safe.")
}

func (r *recordPage) file() app.UI {
	return app.Section().Aria("label", "File").Body(
		app.H2().Text("A file of it"),
		app.P().Text("One file holds everything. Reading a file adds what is missing here and replaces nothing."),
		app.Div().Class("ways").Body(
			button("save-file", "Save to a file", true).OnClick(r.onSave),
			app.Label().Class("button").For("read-file").Text("Read a file"),
			app.Input().Type("file").Class("unseen").ID("read-file").Accept(".txt,text/plain").OnChange(r.onFile),
		),
	)
}

func (r *recordPage) move() app.UI {
	return app.Section().Aria("label", "Code").Body(
		app.H2().Text("To another device"),
		app.P().Text("A code carries what holds and what is due, without the lines you wrote."),
		app.Div().Class("ways").Body(button("make-code", "Make a code", false).OnClick(r.onCode)),
		app.Textarea().Class("box", "code").ID("code").ReadOnly(true).Rows(4).Aria("label", "Your code").Hidden(r.code == "").Text(r.code),
		app.Label().For("code-in").Text("A code from another device"),
		app.Textarea().Class("box", "code").ID("code-in").Rows(2).Spellcheck(false).Attr("autocapitalize", "characters"),
		app.Div().Class("ways").Body(button("read-code", "Read the code", false).OnClick(r.onReadCode)),
	)
}

func (r *recordPage) erase() app.UI {
	text := "Erase the record on this device"
	if r.sure {
		text = "Erase it for good"
	}
	return app.Details().Class("erase").Body(
		app.Summary().Text("Erase it"),
		app.P().Text("There is no way back but a file that was saved."),
		button("erase", text, false).OnClick(r.onErase),
	)
}

func (r *recordPage) say(text string, bad bool) { r.said, r.bad = text, bad }

// onSave hands out everything in the database as it stands there, damaged
// entries too, and what the browser did not keep.
func (r *recordPage) onSave(ctx app.Context, e app.Event) {
	js, ok := database()
	if !ok {
		r.say("This browser cannot save a file from here.", true)
		return
	}
	_, held, err := asRows(records.refused)
	if err != nil {
		r.say("The record could not be written.", true)
		return
	}
	name := "riserwork-record-" + time.Now().Format(time.DateOnly) + ".txt"
	save := func(kept string) {
		text := strings.Trim(kept+"\n"+held, "\n")
		js.Call("save", name, record.File(strings.Split(text, "\n")))
		ctx.Dispatch(func(app.Context) { r.say("Saved as "+name+".", false) })
	}
	settled(js.Call("since", 0), func(v app.Value) { save(v.Get("text").String()) }, func(string) { save("") })
}

func (r *recordPage) onFile(ctx app.Context, e app.Event) {
	input := ctx.JSSrc()
	file := input.Get("files").Index(0)
	if !file.Truthy() {
		return
	}
	settled(file.Call("text"), func(v app.Value) {
		input.Set("value", "")
		log, damaged, err := record.ReadFile(v.String())
		if err != nil {
			ctx.Dispatch(func(app.Context) { r.say(plainly(err), true) })
			return
		}
		r.take(ctx, log, damaged)
	}, func(why string) {
		ctx.Dispatch(func(app.Context) { r.say("The file could not be opened: "+why+".", true) })
	})
}

// take adds entries and says how many were new.
func (r *recordPage) take(ctx app.Context, log []record.Entry, damaged int) {
	before := records.state.Entries
	records.write(log, func() {
		ctx.Dispatch(func(app.Context) {
			text := fmt.Sprintf("%s read, %d of them new here.", counted(len(log), "entry", "entries"), records.state.Entries-before)
			if damaged > 0 {
				text += " " + counted(damaged, "line of it was", "lines of it were") + " damaged and left out."
			}
			r.say(text, damaged > 0)
		})
	})
}

func (r *recordPage) onCode(ctx app.Context, e app.Event) {
	v := study{}
	view := v.view()
	r.code = records.state.Code(func(id string) bool {
		s, ok := skills.ByID(id)
		if !ok {
			return false
		}
		word := view.Word(s)
		return word == record.Firm || word == record.Shaky
	})
	if r.code == "" {
		r.say("There is nothing to carry yet.", true)
		return
	}
	r.say(fmt.Sprintf("The code has %d letters. Copy it, and put it in on the other device.", len(r.code)), false)
	code := r.code
	ctx.Defer(func(app.Context) {
		if el := app.Window().GetElementByID("code"); el.Truthy() {
			el.Set("value", code)
			el.Call("select")
		}
	})
}

func (r *recordPage) onReadCode(ctx app.Context, e app.Event) {
	el := app.Window().GetElementByID("code-in")
	var ids []string
	for _, s := range skills.All() {
		ids = append(ids, s.ID)
	}
	at := records.stamped(record.Entry{})
	log, err := record.ReadCode(el.Get("value").String(), ids, at.At, at.Zone)
	if err != nil {
		r.say(plainly(err), true)
		return
	}
	el.Set("value", "")
	r.take(ctx, log, 0)
}

func (r *recordPage) onErase(ctx app.Context, e app.Event) {
	if !r.sure {
		r.sure = true
		return
	}
	records.wipe(func() {
		ctx.Dispatch(func(app.Context) {
			r.sure, r.code = false, ""
			r.say("The record on this device is erased.", false)
		})
	})
}

// plainly is an error for the learner: a sentence without the name of its
// package.
func plainly(err error) string {
	text := strings.TrimPrefix(err.Error(), "record: ")
	return problems.Sentence(text) + "."
}
