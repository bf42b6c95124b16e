package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// pages are the pages by their path.
var pages = []struct {
	path string
	page app.Composer
}{
	{startPath, &start{}},
	{workPath, &work{}},
	{housePath, &rules{}},
	{todayPath, &todayPage{}},
	{standingPath, &standing{}},
	{recordPath, &recordPage{}},
	{setPath, &setMaker{}},
	{doPath, &do{}},
	{classPath, &classPage{}},
	{cardPath, &card{}},
	{shelfPath, &shelf{}},
	{tablesPath, &tablesPage{}},
	{formulasPath, &formulas{}},
	{tryPath, &tryPage{}},
	{ownPath, &own{}},
	{paperPath, &paperPage{}},
	{examPath, &examPage{}},
	{reasonPath, &reasonPage{}},
	{devicePath, &deviceCard{}},
	{walkPath, &walkPage{}},
}

// Route registers the pages.
func Route() {
	for _, p := range pages {
		app.Route(p.path, p.page)
	}
	app.RouteWithRegexp("^/.*$", &lost{})
}

// Paths are the paths of the pages below the one at the top.
func Paths() []string {
	var list []string
	for _, p := range pages {
		if p.path != startPath {
			list = append(list, p.path)
		}
	}
	return list
}

// frame is what every page has around its own part. Notices are said on top.
func frame(name string, notices []string, body ...app.UI) app.UI {
	return app.Div().Class("page", "page-"+name).Body(
		&top{},
		app.Main().ID("main").TabIndex(-1).Body(
			app.Div().Class("notices").Aria("live", "polite").Body(notes(append(notices, records.notices()...))...),
			app.Div().Class("content").Body(body...),
		),
		app.Footer().Class("foot").Body(
			app.P().Text("A study aid, not a design tool. Local code, the authority and a licensed plumber or engineer decide."),
			app.P().Body(app.A().Href(link(setPath)).Text("For instructors: make a set, mark a class")),
		),
	)
}

func notes(notices []string) []app.UI {
	var list []app.UI
	for _, text := range notices {
		if text != "" {
			list = append(list, app.P().Class("notice").Text(text))
		}
	}
	return list
}

// top is the head of every page.
type top struct {
	app.Compo
	newer bool
}

// OnMount sees a newer version that came while another page was open.
func (t *top) OnMount(ctx app.Context) { t.newer = ctx.AppUpdateAvailable() }

// OnAppUpdate shows that a newer version is ready.
func (t *top) OnAppUpdate(ctx app.Context) { t.newer = true }

// Render shows the head.
func (t *top) Render() app.UI {
	return app.Header().Class("top").Body(
		app.A().Class("skip").Href("#main").Text("To the content").OnClick(skip),
		app.Nav().Aria("label", "Pages").Body(
			app.A().Class("home").Href(link(startPath)).Text("Riserwork"),
			app.A().Href(link(todayPath)).Text("Today"),
			app.A().Href(link(standingPath)).Text("Standing"),
			app.A().Href(link(shelfPath)).Text("Shelf"),
			app.A().Href(link(housePath)).Text("Rules"),
		),
		app.If(t.newer, app.Div().Class("newer").Body(
			app.Span().Text("A newer version is ready. Your lines are kept."),
			app.Button().Type("button").Text("Load it").OnClick(t.onReload),
		)),
	)
}

func (t *top) onReload(ctx app.Context, e app.Event) { ctx.Reload() }

// skip moves the focus past the head; the framework would take the click on
// the link for a change of page.
func skip(ctx app.Context, e app.Event) {
	e.PreventDefault()
	e.Call("stopPropagation")
	app.Window().GetElementByID("main").Call("focus")
}

// titleID is the heading of every page, which gets the focus on arrival.
const titleID = "title"

func heading(text string) app.UI { return app.H1().ID(titleID).TabIndex(-1).Text(text) }

// arrive names the page, moves the focus to its heading, and tells the
// document that it is ready.
func arrive(ctx app.Context, name, title string) {
	ctx.Page().SetTitle(title)
	dress(ctx)
	ctx.Defer(func(ctx app.Context) {
		data := app.Window().Get("document").Get("documentElement").Get("dataset")
		if data.Get("page").Truthy() {
			app.Window().Call("scrollTo", 0, 0)
			focus(titleID)
		}
		data.Set("page", name)
		data.Set("ready", "")
	})
}

// focus moves the focus to an element, if it is there.
func focus(id string) {
	if el := app.Window().GetElementByID(id); el.Truthy() {
		el.Call("focus")
	}
}

// lost is the page of an address that is none of ours.
type lost struct{ app.Compo }

// OnNav names the page.
func (l *lost) OnNav(ctx app.Context) { arrive(ctx, "lost", "Not a page · Riserwork") }

// Render says it and shows the way back.
func (l *lost) Render() app.UI {
	return frame("lost", nil,
		heading("There is no page here"),
		app.P().Text("The address is not one of this program."),
		app.A().Class("button", "primary").Href(link(startPath)).Text("To the skills"),
	)
}
