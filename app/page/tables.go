package page

import (
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// tablesPage lists the tables, or shows the one that the address names.
type tablesPage struct {
	app.Compo

	house   problems.House
	named   string
	notices []string
}

func tableURL(t *solver.Table) string { return link(tablesPath) + "?name=" + t.Name }

// OnNav reads which table is asked for.
func (t *tablesPage) OnNav(ctx app.Context) {
	var says string
	t.house, says = loadHouse(ctx.LocalStorage())
	t.notices, t.named = []string{says}, ctx.Page().URL().Query().Get("name")
	title := "Tables"
	if table, ok := t.table(); ok {
		title = table.Title
	}
	arrive(ctx, "tables", title+" · Riserwork")
}

func (t *tablesPage) table() (*solver.Table, bool) {
	return solver.TableNamed(t.named, t.house.Profile().ID)
}

// Render shows it.
func (t *tablesPage) Render() app.UI {
	table, ok := t.table()
	if !ok {
		return frame("tables", t.notices,
			heading("Tables"),
			app.P().Class("fault").Text(t.fault()),
			app.Ul().Class("links").Body(tableLinks("")...),
		)
	}
	return frame("tables", t.notices,
		heading(table.Title),
		app.P().Text(table.Note),
		app.Div().Class("printed").Body(cells(table.Title, table.Head(t.house.System), table.Rows(t.house.System))),
		tableSource(table),
		app.A().Class("switch").Href(link(tablesPath)).Text("All tables"),
	)
}

func (t *tablesPage) fault() string {
	if t.named == "" {
		return ""
	}
	return "The link names the table “" + clip(t.named) + "”, which is not here."
}

// tableSource says where a table is from and how it is known.
func tableSource(t *solver.Table) app.UI {
	return app.P().Class("aside").Text(t.Source + " (" + string(t.Confidence) + "). Amended locally; consult the code itself.")
}

// tableLinks are the tables whose title, heading or source holds a text.
func tableLinks(text string) []app.UI {
	var list []app.UI
	for i := range solver.Tables {
		t := &solver.Tables[i]
		if holds(text, t.Title, t.Source, strings.Join(t.Head(unit.US), " ")) {
			list = append(list, app.Li().Body(app.A().Href(tableURL(t)).Text(t.Title)))
		}
	}
	return list
}

// cells is a table of rows under their heading.
func cells(caption string, head []string, rows []solver.TableRow) app.UI {
	all := [][]string{head}
	for _, r := range rows {
		all = append(all, r.Cells)
	}
	return table(caption, all)
}

// lookUp is the piece of the table that a line reads, beside the line.
func (w *work) lookUp(i int) app.UI {
	t, rows, ok := w.bench.p.LookUp(i)
	if !ok {
		return app.Div().Hidden(true)
	}
	return app.Details().Class("look-up").Open(true).Body(
		app.Summary().Text("Table: "+t.Title),
		cells(t.Title, t.Head(w.bench.p.House.System), rows),
		app.P().Class("aside").Text(t.Source+" ("+string(t.Confidence)+")"),
	)
}
