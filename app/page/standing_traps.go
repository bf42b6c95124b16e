package page

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/skills"
)

// trapShown is a slip that still catches, in words.
type trapShown struct {
	record.Caught
	skill *problems.Skill
	next  string // how to see it next time
}

// trapsOf are the slips that catch most. What is no longer in the catalogue is
// left out.
func trapsOf(v record.View, house problems.House) []trapShown {
	var list []trapShown
	for _, c := range v.State.Catching(v.Today) {
		if len(list) == mostTraps {
			break
		}
		skill, ok := skills.ByID(c.Skill)
		if !ok {
			continue
		}
		p, err := problems.New(skill, 1, house)
		if err != nil {
			continue
		}
		for i := range p.Steps {
			if s, ok := slipOf(p, i, c.Slip); ok {
				list = append(list, trapShown{c, skill, s.Next})
				break
			}
		}
	}
	return list
}

func (s *standing) trapList() app.UI {
	if len(s.traps) == 0 {
		return app.Section().Class("traps").Hidden(true)
	}
	var list []app.UI
	most := s.traps[0].Weight
	for i, t := range s.traps {
		list = append(list, app.Li().Body(
			app.P().Class("name").Text(t.skill.Title),
			weight(t.Weight/most),
			app.P().Text(t.next),
			app.Button().Type("button").Class("link").DataSet("trap", i).Text("Work one with this trap").OnClick(s.onTrap, t.Skill+t.Slip),
		))
	}
	return app.Section().Class("traps").Aria("label", "Traps").Body(
		app.H2().Text("Traps that still catch"),
		app.P().Class("aside").Text("The longest bar caught most and latest. A trap that is not stepped in fades."),
		app.Ul().Body(list...),
	)
}

// weight is a share of the heaviest trap as a bar.
func weight(share float64) app.UI {
	return app.Elem("svg").XMLNS(draw.Namespace).Attr("viewBox", "0 0 100 6").Attr("data-part", "weight").
		Attr("aria-hidden", "true").Attr("preserveAspectRatio", "none").Body(
		app.Elem("rect").XMLNS(draw.Namespace).Attr("width", fixed(100*share)).Attr("height", "6"),
	)
}

// onTrap opens a problem in which the slip tempts.
func (s *standing) onTrap(ctx app.Context, e app.Event) {
	i, err := strconv.Atoi(ctx.JSSrc().Get("dataset").Get("trap").String())
	if err != nil || i < 0 || i >= len(s.traps) {
		return
	}
	t := s.traps[i]
	a := address{skill: t.skill, seed: someSeed(source()), house: s.house}
	if p, err := problems.WithTrap(t.skill, a.seed, s.house, t.Slip); err == nil {
		a.seed = p.Seed
	}
	ctx.Navigate(a.url())
}
