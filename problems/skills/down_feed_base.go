package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var basePressureSkill = problems.Skill{
	ID: "base-pressure", Title: "Pressure at the foot of a down-feed",
	Chapter: 5, Order: 70, Year: 2, Kind: problems.Sum,
	Ask: "A down-feed riser starts at a header {header_height} above the floor of level 1. Its last reducing valve stands {valve_height} above that floor and is set to {setting}. The riser ends at a gauge {base_depth} below the floor of level 1. What does that gauge read with no flow?",
	Givens: []problems.Given{
		{Name: "header_height", Says: "height of the header above the floor of level 1", Measure: &measure.Height},
		{Name: "valve_height", Says: "height of the last reducing valve above the floor of level 1", Measure: &measure.Height},
		{Name: "setting", Says: "setting of the last reducing valve, no flow", Measure: &measure.Pressure},
		{Name: "base_depth", Says: "depth of the gauge at the riser's foot below the floor of level 1", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "below", Says: "height from the last valve down to the gauge", Measure: &measure.Height,
			Formula: "valve_height + base_depth",
			Why:     "A closed reducing valve cuts the column: what stands above it does not weigh on what is below. Only the height under the last valve counts.",
			Slips: []problems.Slip{
				{
					ID: "whole-height", Formula: "header_height + base_depth",
					Did:  "You took the whole riser from the header down, {got}.",
					Why:  "The valve holds back what is above it. If the whole column weighed on the foot, the building would have no need of the valves.",
					Next: "Start at the last valve above the gauge. Forget what is higher.",
				},
				{
					ID: "depth-left-out", Formula: "valve_height",
					Did:  "You stopped at the floor of level 1.",
					Why:  "The gauge hangs {base_depth} lower, and the water in that last piece weighs as well.",
					Next: "Follow the pipe to the gauge itself, the levels below ground too.",
				},
			},
		},
		{
			Name: "gained", Says: "pressure gained below the valve", Measure: &measure.Pressure,
			Formula: "gamma x below",
			Why:     "Each foot or metre of water under the valve adds its weight.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "below / gamma",
				Did:  "You divided {below} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "base", Says: "pressure at the foot of the riser", Measure: &measure.Pressure,
			Formula: "setting + gained",
			Why:     "The valve hands on its setting, and the water below it adds its weight.",
			Slips: []problems.Slip{
				{
					ID: "setting-left-out", Formula: "gained",
					Did:  "You gave {gained}, the weight of the water under the valve.",
					Why:  "The valve does not shut the pressure off, it brings it down to {setting}. Everything below has that as well.",
					Next: "Read the setting first, then add what the height gives.",
				},
				{
					ID: "subtracted", Formula: "abs(setting - gained)",
					Did:  "You took one of {setting} and {gained} off the other.",
					Why:  "The gauge is below the valve, so the water weighs with the valve's pressure, not against it.",
					Next: "Down gives. The foot reads more than the setting.",
				},
			},
		},
	},
	Holds:    "With no flow a reducing valve keeps its setting at its outlet whatever stands above. From there down the pressure grows with depth as in any standing water, so the foot of the riser has the setting of the last valve and the height under it.",
	Cautions: []string{relieveFirst, checkBothSides},
	Sources: []problems.Source{
		waterColumn,
		{Says: "76 ft below a valve set to 25 psi: 58 psi, a figure of shop drills", Confidence: solver.Practice},
	},
	Draw: drawBase,
	Solve: func(w problems.World) float64 {
		return float64(w.Building.At(0, -w.Length("base_depth"), w.Gamma()))
	},
}

func init() { add(&basePressureSkill) }

// drawBase draws a down-feed whose foot is in the lowest level, with a gauge
// at working height.
func drawBase(s *building.Sheet) {
	t, _, ok := downFeed(s, building.Plan{Uses: zoned, Min: 14, Max: 36, Cellar: true, NoSkip: true}, 1, s.UsualZones())
	if !ok {
		return
	}
	last := t.Zones[0].Valve
	s.Focus = 0
	setHeight(s, "header_height", s.Heights(t.Header.Elevation))
	setHeight(s, "valve_height", s.Heights(last.Elevation))
	s.Set("setting", math.Round(float64(last.Setting/s.Press(1))))
	setHeight(s, "base_depth", float64(t.Below)*t.Parking.Value-s.UpValve())
}
