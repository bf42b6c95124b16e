package draw

import (
	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Problem is the riser diagram of a problem; nil where it has no building.
// Solved, it also shows what was asked.
func Problem(p *problems.Problem, solved bool) *Scene {
	if p.Building == nil {
		return nil
	}
	a := p.Answer()
	opt := Options{
		System:         p.House.System,
		Solved:         solved,
		HideZones:      a.Whole,
		HideElevations: a.Measure.Name == measure.Height.Name,
		HideDepth:      a.Measure.Name == measure.Height.Name,
		Notes:          streetNote(p),
	}
	if a.Measure.Name == measure.Pressure.Name {
		opt.Ask = &Note{Level: p.Focus, Where: AtOutlet, Text: a.Measure.Name}
		if solved {
			opt.Ask.Text = a.Text(a.Value)
		}
	}
	scene := Riser(p.Building, Solution(p, p.Building), opt)
	return &scene
}

// streetNote is the told pressure of the street, at the gauge.
func streetNote(p *problems.Problem) []Note {
	for _, t := range p.Told {
		if t.Given == "street" {
			return []Note{{Level: p.Building.Ground, Where: AtGauge, Text: t.Text}}
		}
	}
	return nil
}

// Solution is a building worked out under the problem's house; nil where the
// solver refuses it.
func Solution(p *problems.Problem, b *solver.Building) *solver.Solution {
	topMin := unit.Pressure(measure.Pressure.Unit(p.House.System).SI(p.House.TopMin))
	sol, err := solver.Solve(b, solver.Settings{Gamma: p.World().Gamma(), Profile: p.House.Profile(), TopMin: topMin})
	if err != nil {
		return nil
	}
	return sol
}
