package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// drawn is the riser diagram of a problem; nil where it has no building.
// Solved, it also shows what was asked.
func drawn(p *problems.Problem, solved bool) *draw.Scene {
	if p.Building == nil {
		return nil
	}
	a := p.Answer()
	opt := draw.Options{
		System:         p.House.System,
		Solved:         solved,
		HideZones:      a.Whole,
		HideElevations: a.Measure.Name == measure.Height.Name,
		HideDepth:      a.Measure.Name == measure.Height.Name,
		Notes:          street(p),
	}
	if a.Measure.Name == measure.Pressure.Name {
		opt.Ask = &draw.Note{Level: p.Focus, Where: draw.AtOutlet, Text: a.Measure.Name}
		if solved {
			opt.Ask.Text = a.Text(a.Value)
		}
	}
	scene := draw.Riser(p.Building, solution(p, p.Building), opt)
	return &scene
}

// street is the told pressure of the street, at the gauge.
func street(p *problems.Problem) []draw.Note {
	for _, t := range p.Told {
		if t.Given == "street" {
			return []draw.Note{{Level: p.Building.Ground, Where: draw.AtGauge, Text: t.Text}}
		}
	}
	return nil
}

// solution is a building worked out under the problem's house; nil where the
// solver refuses it.
func solution(p *problems.Problem, b *solver.Building) *solver.Solution {
	sol, err := solver.Solve(b, solver.Settings{Gamma: p.World().Gamma(), Profile: p.House.Profile(), TopMin: topPressure(p.House)})
	if err != nil {
		return nil
	}
	return sol
}

func topPressure(h problems.House) unit.Pressure {
	return unit.Pressure(measure.Pressure.Unit(h.System).SI(h.TopMin))
}

// riser shows a drawing with its table. It is a component of its own, so that
// typing does not draw it anew.
type riser struct {
	app.Compo
	Scene *draw.Scene
}

// Render shows the drawing.
func (r *riser) Render() app.UI {
	if r.Scene == nil {
		return app.Div().Hidden(true)
	}
	return app.Div().Body(
		svg(r.Scene.Tree()),
		app.Details().Body(
			app.Summary().Text("The drawing as a table"),
			app.P().Text(r.Scene.Desc),
			table(r.Scene.Title, r.Scene.Table),
		),
	)
}
