package page

import (
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/devices"
)

// deviceCard is the page of one device, or the list of all where the address
// names none.
type deviceCard struct {
	app.Compo

	house   problems.House
	d       *devices.Device // nil: the list
	seed    uint64
	fault   string
	notices []string
}

func deviceURL(d *devices.Device) string { return link(devicePath) + "?id=" + d.ID }

// OnNav reads which device is asked for.
func (c *deviceCard) OnNav(ctx app.Context) {
	var says string
	c.house, says = loadHouse(ctx.LocalStorage())
	c.notices, c.d, c.fault, c.seed = []string{says}, nil, "", someSeed(source())
	title := "Devices"
	if id := ctx.Page().URL().Query().Get("id"); id != "" {
		d, ok := devices.ByID(id)
		if ok {
			c.d, title = d, problems.Sentence(d.Name)
		} else {
			c.fault = "The link names the device “" + clip(id) + "”, which is not here."
		}
	}
	arrive(ctx, "device", title+" · Riserwork")
}

// Render shows the card, or the list.
func (c *deviceCard) Render() app.UI {
	if c.d == nil {
		return c.list()
	}
	d := c.d
	return frame("device", c.notices,
		app.P().Class("place").Body(app.A().Href(link(devicePath)).Text("Devices"), app.Text(" · "+string(d.Part))),
		app.Div().Class("device-head").Body(svg(draw.Sign(d).Tree()), heading(problems.Sentence(d.Name))),
		app.P().Class("ask").Text(problems.Sentence("it "+d.Purpose)+"."),
		app.Dl().Class("facts").Body(
			fact("Where", problems.Sentence(d.Place)+"."),
			fact("How it stands", d.Way),
			c.beside(),
			fact("Without it", d.Without),
		),
		consequence(d.Shows, c.seed, c.house),
		app.P().Class("caution").Hidden(d.Caution == "").Text("⚠ "+d.Caution),
		app.Div().Body(c.arrangements()...),
		app.P().Class("aside").Text("Source: "+sourceWords(d.Source)+"."),
		app.Div().Class("bar").Body(app.A().Class("button", "primary").ID("practise").Href(link(reasonPath)).Text("Questions on devices")),
	)
}

// sourceWords are a source with how it is known, each said once.
func sourceWords(s problems.Source) string {
	if s.Says == string(s.Confidence) {
		return s.Says
	}
	return s.Says + " (" + string(s.Confidence) + ")"
}

func fact(name, text string) app.UI {
	return app.Div().Hidden(text == "").Body(app.Dt().Text(name), app.Dd().Text(problems.Sentence(text)))
}

// beside are the devices that must stand beside it.
func (c *deviceCard) beside() app.UI {
	var list []app.UI
	for _, id := range c.d.Beside {
		if n, ok := devices.ByID(id); ok {
			list = append(list, app.Li().Body(app.A().Href(deviceURL(n)).Text(n.Name)))
		}
	}
	return app.Div().Hidden(len(list) == 0).Body(app.Dt().Text("Beside it"), app.Dd().Body(app.Ul().Class("links").Body(list...)))
}

// arrangements are those in which the device stands, each device in them
// leading to its own card.
func (c *deviceCard) arrangements() []app.UI {
	var list []app.UI
	for _, a := range devices.Details() {
		if !slices.ContainsFunc(a.Runs, func(r devices.Run) bool {
			return slices.ContainsFunc(r.Stand, func(s devices.Station) bool { return s.Device == c.d.ID })
		}) {
			continue
		}
		list = append(list, app.Details().Class("chapter").Open(len(list) == 0).Body(
			app.Summary().Text(a.Title),
			app.P().Class("aside").Text("Tap a device for its card."),
			dressed(draw.Detail(&a.Arrangement, draw.DetailOptions{}).Tree(), "group", c.dressIn(&a.Arrangement)),
		))
	}
	return list
}

// dressIn lets each device of a drawing lead to its card.
func (c *deviceCard) dressIn(a *devices.Arrangement) func(string, app.HTMLElem) {
	ids := map[string]string{}
	for _, p := range draw.Picks(a, false) {
		for _, r := range a.Runs {
			if r.Name == p.Spot.Run {
				ids[p.Key] = r.Stand[p.Spot.At].Device
			}
		}
	}
	return func(key string, e app.HTMLElem) {
		id, ok := ids[key]
		if !ok {
			return
		}
		e.Attr("role", "link").TabIndex(0).DataSet("device", id).OnClick(c.onDevice).On("keydown", c.onDeviceKey)
		if id == c.d.ID {
			e.DataSet("state", "marked").Aria("current", "true")
		}
	}
}

func (c *deviceCard) onDevice(ctx app.Context, e app.Event) {
	ctx.Navigate(link(devicePath) + "?id=" + ctx.JSSrc().Get("dataset").Get("device").String())
}

func (c *deviceCard) onDeviceKey(ctx app.Context, e app.Event) {
	if e.Get("key").String() == "Enter" {
		c.onDevice(ctx, e)
	}
}

// list is all devices by the part of the line they belong to.
func (c *deviceCard) list() app.UI {
	var parts []app.UI
	for _, part := range devices.Parts {
		var rows []app.UI
		for _, d := range devices.All() {
			if d.Part == part {
				rows = append(rows, app.Li().Body(app.A().Href(deviceURL(d)).Body(svg(draw.Sign(d).Tree()), app.Span().Text(d.Name))))
			}
		}
		parts = append(parts, app.Details().Class("chapter").Body(
			app.Summary().Body(app.Span().Class("name").Text(problems.Sentence(string(part))), count(len(rows))),
			app.Ul().Class("links", "signs").Body(rows...),
		))
	}
	return frame("device", c.notices,
		heading("Devices along the line"),
		app.P().Class("fault").Text(c.fault),
		app.P().Text("What each is for, where it goes, and what happens without it: "+strconv.Itoa(len(devices.All()))+" devices from the street to the tap."),
		app.Div().Body(parts...),
		app.Div().Class("bar").Body(app.A().Class("button", "primary").ID("practise").Href(link(reasonPath)).Text("Questions on devices")),
	)
}
