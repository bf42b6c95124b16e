package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var reducedBudgetSkill = problems.Skill{
	ID: "reduced-budget", Title: "What is left for friction behind a reducing valve",
	Chapter: 3, Order: 105, Year: 3, Kind: problems.Sum,
	Ask: "The street is over the limit, so a reducing valve stands behind the meter, set to {setting} with no flow. The pipe behind it is sized on {part} of the setting ({part_says}). The highest outlet is {height} above the valve and must keep {least} ({limit_says}). What pressure is left for friction in the pipe behind the valve?",
	Givens: []problems.Given{
		{Name: "setting", Says: "setting of the reducing valve, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "part", Says: "part of the setting that may be counted, as a decimal", Measure: &measure.Share},
		{Name: "height", Says: "height of the highest outlet above the valve", Measure: &measure.Height},
		{Name: "least", Says: "pressure to be kept at the highest outlet", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "counted", Says: "pressure that may be counted behind the valve", Measure: &measure.Pressure,
			Formula: "part x setting",
			Why:     "A reducing valve gives its setting with no flow only. At the busy hour its outlet sinks, and the part that is counted stands for that.",
			Slips: []problems.Slip{
				{
					ID: "whole-setting", Formula: "setting",
					Did:  "You counted the whole setting, {setting}.",
					Why:  "That is what the gauge shows at night. At the busy hour the valve gives less, and the pipe would come out too small.",
					Next: "A reducing valve at the entry: first take the part that counts.",
				},
				{
					ID: "the-other-part", Formula: "(1 - part) x setting",
					Did:  "You took the part that is not counted.",
					Why:  "{part} of the setting is to be used; the rest is kept back for the valve's fall-off.",
					Next: "The part that counts is the larger one.",
				},
			},
		},
		{
			Name: "column", Says: "pressure that the height costs", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "Each foot or metre of water above the valve weighs on it.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "left", Says: "pressure left for friction", Measure: &measure.Pressure,
			Formula: "counted - column - least",
			Why:     "Height and the outlet are served first. What remains may be lost along the pipe.",
			Slips: []problems.Slip{
				{
					ID: "least-left-out", Formula: "counted - column",
					Did:  "You spent what the outlet must keep as well.",
					Why:  "{least} must arrive at the top shower. Spent on friction, it is not there.",
					Next: "Four things share the setting: the valve's fall-off, height, outlet, friction.",
				},
				{
					ID: "column-left-out", Formula: "counted - least",
					Did:  "You left the height out.",
					Why:  "The water must be lifted {height} before any of it comes out.",
					Next: "In a building of several floors the height is a large item.",
				},
			},
		},
	},
	Holds: "Behind a reducing valve the budget does not begin with the street any more. It begins with what the valve gives while water flows. Some codes say how much of the setting may be counted; else the maker's curve tells the fall-off at the design flow.",
	Cautions: []string{
		"The setting is not turned up to make a small pipe do: the lowest outlet must keep the static limit, and the valve can fail open.",
		"A reducing valve closes the building off from the street. Warmed water then needs an expansion tank.",
		sizingStudy,
	},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "80 % of the reduced pressure where Table 610.4 is used: UPC", Confidence: solver.Memory},
		{Says: "Where a code has no such rule: 80 % of the setting, for the fall-off of the valve", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		least := keepAtTop(s)
		const part = 0.8
		type aim struct{ setting, height float64 }
		var fit []aim
		var t *building.Tower
		for tries := 0; tries < 30 && len(fit) == 0; tries++ {
			t = s.Tower(building.Plan{Min: 3, Max: 5})
			height := t.Up(t.Storeys) + s.Shower() - s.UpValve()
			for _, setting := range lists(s, []float64{60, 65, 68, 70, 72, 75, 78}, []float64{450, 475, 490, 500, 525, 540}) {
				set := onPlate(s, setting)
				if s.PlateUS() && !s.US() {
					set = float64(int(set))
				}
				left := part*set - plateHead(s, height) - onPlate(s, least)
				if over := onPlate(s, s.Most()) - set; left >= s.PickPlate([]float64{4}, []float64{28}) && left <= s.PickPlate([]float64{25}, []float64{170}) && over > 0 {
					fit = append(fit, aim{set, height})
				}
			}
		}
		a, _ := pick(s, fit)
		gauge := s.UpValve()
		street := onPlate(s, s.Most()) + s.PickPlate([]float64{16, 20, 26, 30}, []float64{110, 150, 190, 210})
		step := s.PickPlate([]float64{1}, []float64{10})
		street = step * float64(int(street/step))
		s.SetStreet(street, street-s.PickPlate([]float64{5, 8}, []float64{35, 50}), gauge, "on the gauge in the meter room")
		t.Zones = []solver.Zone{{Name: "1", Bottom: 0, Top: t.Top(), Supply: solver.FromStreet, Valve: &solver.Valve{Elevation: s.Length(gauge), Setting: s.PlatePress(a.setting)}}}
		s.Name("part_says", reducedPart(s.Profile.ID))
		s.Set("setting", a.setting)
		s.Set("part", part)
		setHeight(s, "height", a.height)
		s.Set("least", least)
	},
	Solve: func(w problems.World) float64 {
		valve := w.Building.Zones[0].Valve
		counted := valve.Setting * unit.Pressure(w.SI("part"))
		return float64(solver.PressureLeft(counted, w.Gamma(), w.Length("height"), 0, w.Pressure("least")))
	},
}

func init() { add(&reducedBudgetSkill) }

// reducedPart says whose rule it is that a part of the setting counts.
func reducedPart(profile string) string {
	if profile == "upc" {
		return "UPC, where its Table 610.4 is used"
	}
	return "no such rule here; shop practice, for the valve's fall-off"
}
