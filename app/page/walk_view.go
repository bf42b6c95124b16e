package page

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/walk"
)

// Render shows the station one stands at, the building beside it, and the way
// on at the foot.
func (p *walkPage) Render() app.UI {
	if p.walk == nil {
		return p.begin()
	}
	name := "walk"
	if p.wide {
		name = "walk wall"
	}
	return frame(name, p.notices,
		app.Div().Class("task").Body(
			heading("Follow the water"),
			p.strip(),
			p.here(),
		),
		app.Div().Class("building").Body(app.Div().Class("walk-scene").ID(sceneID).TabIndex(0).Attr("role", "region").Aria("label", "The building").Body(&riser{Scene: p.picture()})),
		app.Div().Class("rest").Body(
			p.list(),
			app.Div().Class("ways").Body(
				button("walk-wall", p.wideText(), false).Aria("pressed", p.wide).OnClick(p.onWide),
				button("walk-other", "Another building", false).OnClick(p.onStart),
			),
		),
		app.P().Class("unseen").ID("said").Attr("role", "status").Aria("live", "polite").Text(p.said),
		app.Div().Class("bar").Body(
			button("walk-back", "Back", false).Disabled(p.at == 0).OnClick(p.onBack),
			button(nextID, p.nextText(), !p.asks(p.at) || p.wide).Disabled(p.at == len(p.walk.Stations)-1 && !(p.wide && p.asks(p.at))).OnClick(p.onNext),
		),
	)
}

func (p *walkPage) wideText() string {
	if p.wide {
		return "Small type again"
	}
	return "Large type, for a wall"
}

func (p *walkPage) nextText() string {
	switch {
	case p.wide && p.asks(p.at):
		return "Show the number"
	case p.at == len(p.walk.Stations)-1:
		return "The round is done"
	case p.asks(p.at):
		return "Skip this one"
	}
	return "Next"
}

// begin is the start of a walk.
func (p *walkPage) begin() app.UI {
	var list []option
	for _, z := range walk.Sizes {
		list = append(list, option{string(z.Size), z.Says, ""})
	}
	return frame("walk", p.notices,
		heading("Follow the water"),
		app.P().Class("fault").Text(p.fault),
		app.P().Text("From the street to the highest tap, down the zones, through the heater and round the hot loop, one device at a time. Some stations ask you for the number first."),
		group("size", "Building", string(p.size), list, p.onSize),
		button("walk-start", "Start at the street", true).OnClick(p.onStart),
	)
}

// strip shows how far one has come: the parts of the walk, the one one is in
// marked.
func (p *walkPage) strip() app.UI {
	var list []app.UI
	var part walk.Part
	for i := range p.walk.Stations {
		s := &p.walk.Stations[i]
		if s.Part == part {
			continue
		}
		part = s.Part
		state := "ahead"
		if i <= p.at {
			state = "behind"
		}
		item := app.Li().DataSet("state", state)
		if part == p.station().Part {
			item = app.Li().DataSet("state", "here").Aria("current", "step")
		}
		list = append(list, item.Text(string(part)))
	}
	return app.Div().Class("walk-strip").Body(
		app.P().Body(
			app.Strong().Text(fmt.Sprintf("You are here: station %d of %d", p.at+1, len(p.walk.Stations))),
			app.Span().Text(", "+lower(p.walk.Says)),
		),
		app.Ol().Aria("label", "Parts of the walk").Body(list...),
	)
}

// here is the station.
func (p *walkPage) here() app.UI {
	s := p.station()
	return app.Section().Class("station").ID("station").Aria("label", "Station").Body(
		app.H2().Text(problems.Sentence(s.Place)),
		app.Dl().Class("walk-why").Body(
			app.Dt().Text("Why it is there"), app.Dd().Text(s.Why()),
			app.Dt().Text("Without it"), app.Dd().Text(s.Device.Without),
		),
		app.P().Class("caution").Hidden(s.Device.Caution == "").Text("⚠ "+s.Device.Caution),
		p.number(s),
	)
}

// number is the number of the station, or the box that asks for it.
func (p *walkPage) number(s *walk.Station) app.UI {
	if p.asks(p.at) {
		return p.turn(s)
	}
	return app.Div().Class("walk-number").DataSet("state", "told").Body(
		app.P().Body(app.Strong().Class("walk-value").Text(s.Value), app.Span().Class("walk-state").Text(" "+string(s.State))),
		app.P().Text(s.Says),
		app.P().Class("walk-sum").Text(s.Line()),
		app.Details().Body(app.Summary().Text("Where each figure comes from"), p.told(s), app.P().Text(s.Sum.Steps[0].Why)),
	)
}

// told are the figures of the sum.
func (p *walkPage) told(s *walk.Station) app.UI {
	var rows []app.UI
	for i := range s.Sum.Told {
		t := &s.Sum.Told[i]
		rows = append(rows, app.Div().Body(app.Dt().Text(t.Says), app.Dd().Text(t.Text)))
	}
	return app.Dl().Class("told").Body(rows...)
}

// turn asks for the number.
func (p *walkPage) turn(s *walk.Station) app.UI {
	t := p.tryAt(p.at)
	tone := blank
	if t.marked {
		tone = shown(t.finding.Verdict).tone
	}
	return app.Div().Class("walk-number", "line").DataSet("state", "asked").DataSet("tone", tone).Body(
		app.P().Body(app.Strong().Text("Your turn. "), app.Span().Text(s.Says)),
		p.told(s),
		app.Div().Class("walk-box").Hidden(p.wide).Body(
			app.Label().For(boxID).Text("What is it, in "+s.Sum.Steps[0].Unit.Name+"? "+problems.Sentence(string(s.State))+"."),
			app.Input().Class("box").ID(boxID).Type("text").Attr("inputmode", "decimal").Attr("enterkeyhint", "done").Attr("maxlength", maxLine).
				AutoComplete(false).Attr("autocapitalize", "off").Spellcheck(false).
				Aria("invalid", t.marked && tone == bad).Aria("describedby", "walk-finding").OnInput(p.onInput).OnKeyDown(p.onKey),
			button("walk-mark", "Mark it", true).OnClick(p.onJudge),
		),
		app.Div().Class("finding").ID("walk-finding").Body(p.finding(t)...),
		app.Button().Type("button").Class("link").ID("walk-tell").Hidden(p.wide).Text("Show the number").OnClick(p.onTell),
	)
}

// finding is what was found on the number that was written.
func (p *walkPage) finding(t *try) []app.UI {
	if !t.marked {
		return nil
	}
	j := shown(t.finding.Verdict)
	list := []app.UI{app.P().Class("word").Body(
		app.Span().Class("sign").Aria("hidden", true).Text(j.sign),
		app.Strong().Text(j.word),
	)}
	if t.finding.Says != "" && (len(t.finding.Slips) == 0 || t.finding.Slips[0].Did != t.finding.Says) {
		list = append(list, app.P().Class("saying").Text(t.finding.Says))
	}
	for n, s := range t.finding.Slips {
		did := "What you did"
		if n > 0 {
			did = "Or this"
		}
		list = append(list, explained(s, did))
	}
	return list
}

// list is every station, part by part; a number shows where one has been.
func (p *walkPage) list() app.UI {
	var parts, rows []app.UI
	var part walk.Part
	flush := func() {
		if part != "" {
			parts = append(parts, app.H3().Text(string(part)), app.Ol().Body(rows...))
		}
		rows = nil
	}
	for i := range p.walk.Stations {
		s := &p.walk.Stations[i]
		if s.Part != part {
			flush()
			part = s.Part
		}
		value := ""
		if i < p.far || i == p.far && !p.asks(i) {
			value = s.Value
		}
		b := app.Button().Type("button").Class("walk-stop").ID("stop-"+s.ID).DataSet("station", i).OnClick(p.onStation).Body(
			app.Span().Class("number").Text(strconv.Itoa(i+1)),
			app.Span().Class("name").Text(problems.Sentence(s.Place)),
			app.Span().Class("walk-value").Text(value),
		)
		if i == p.at {
			b.Aria("current", "step")
		}
		rows = append(rows, app.Li().Body(b))
	}
	flush()
	return app.Details().Class("walk-list").Body(app.Summary().Text("All stations"), app.Div().Body(parts...))
}
