package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var failedValveSkill = problems.Skill{
	ID: "failed-valve", Title: "A reducing valve stuck open",
	Chapter: 5, Order: 80, Year: 3, Kind: problems.Sum,
	Ask: "In a down-feed riser one reducing valve stands on level {upper_level}, set to {upper_setting}, the next on level {stuck_level}, set to {setting}. Each stands {valve_up} above its floor, and floors are {floor_height} apart. The lower valve sticks open at night, with no flow. What does the {fixture} on level {level} then see?",
	Givens: []problems.Given{
		{Name: "upper_setting", Says: "setting of the upper valve", Measure: &measure.Pressure},
		{Name: "setting", Says: "setting of the lower valve, now stuck open", Measure: &measure.Pressure},
		{Name: "upper_level", Says: "level of the upper valve", Measure: &measure.Count},
		{Name: "stuck_level", Says: "level of the lower valve", Measure: &measure.Count},
		{Name: "level", Says: "level asked about", Measure: &measure.Count},
		{Name: "floor_height", Says: "floor to floor height", Measure: &measure.Height},
		{Name: "valve_up", Says: "height of each valve above its floor", Measure: &measure.Height},
		{Name: "outlet", Says: "height of the fixture's outlet above its floor", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "between", Says: "height from the upper valve to the stuck one", Measure: &measure.Height,
			Formula: "(upper_level - stuck_level) x floor_height",
			Why:     "Both valves stand equally high on their floors, so the floors' distance is the valves' distance.",
			Slips: []problems.Slip{{
				ID: "floors-for-gaps-between", Family: "floors-for-gaps", Formula: "(upper_level - stuck_level + 1) x floor_height",
				Did:  "You counted level {upper_level} and level {stuck_level} both and took as many heights.",
				Why:  "Between the two levels there is one height less than there are floors.",
				Next: "Subtract the level numbers and leave it there.",
			}},
		},
		{
			Name: "inlet", Says: "pressure at the inlet of the stuck valve", Measure: &measure.Pressure,
			Formula: "upper_setting + gamma x between",
			Why:     "The riser leaves the upper valve with its setting and gains on the way down.",
			Slips: []problems.Slip{
				{
					ID: "upper-setting-left-out", Formula: "gamma x between",
					Did:  "You gave the weight of the water between the valves.",
					Why:  "That water leaves the upper valve with {upper_setting}. It comes on top.",
					Next: "Start at the gauge you know, the upper valve's outlet.",
				},
				{
					ID: "no-gain-between", Formula: "upper_setting",
					Did:  "You took the upper valve's setting for the pressure at the lower valve.",
					Why:  "The lower valve stands {between} deeper, and the water in that piece weighs on its inlet.",
					Next: "A setting holds at the valve. Every floor below it has more.",
				},
			},
		},
		{
			Name: "below", Says: "height from the stuck valve down to the outlet", Measure: &measure.Height,
			Formula: "(stuck_level - level) x floor_height + valve_up - outlet",
			Why:     "From floor to floor, then the valve is higher than its floor and the outlet higher than its own.",
			Slips: []problems.Slip{
				{
					ID: "floors-for-gaps-below", Family: "floors-for-gaps", Formula: "(stuck_level - level + 1) x floor_height + valve_up - outlet",
					Did:  "You counted level {stuck_level} and level {level} both and took as many heights.",
					Why:  "Between the two levels there is one height less than there are floors.",
					Next: "One floor down is one height: try it with neighbours.",
				},
				{
					ID: "offsets-left-out", Formula: "(stuck_level - level) x floor_height",
					Did:  "You measured from floor to floor.",
					Why:  "The valve stands {valve_up} over its floor and the outlet {outlet} over its own. The water stands from one to the other.",
					Next: "Measure from valve to outlet.",
				},
			},
		},
		{
			Name: "gained", Says: "pressure gained below the stuck valve", Measure: &measure.Pressure,
			Formula: "gamma x below",
			Why:     "Each foot or metre of water adds its weight, whether the valve works or not.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "below / gamma",
				Did:  "You divided {below} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "pressure", Says: "pressure at the {fixture} on level {level}", Measure: &measure.Pressure,
			Formula: "inlet + gained",
			Why:     "A valve stuck open is a piece of pipe: its inlet pressure passes through to everything below.",
			Slips: []problems.Slip{
				{
					ID: "setting-still-used", Formula: "setting + gained",
					Did:  "You started from the setting of the lower valve, {setting}.",
					Why:  "A valve holds its setting only as long as it can close. Stuck open it holds nothing back, and {inlet} stands at its outlet too.",
					Next: "Cross the failed valve out on the sketch and draw a plain pipe.",
				},
				{
					ID: "stopped-at-the-valve", Formula: "inlet",
					Did:  "You gave {inlet}, the pressure at the valve.",
					Why:  "The {fixture} on level {level} lies {below} lower and has the weight of that water as well.",
					Next: "Go on to the outlet that the question asks about.",
				},
			},
		},
	},
	Holds: "A reducing valve that cannot close passes its inlet pressure to every floor below it, and the floors get the weight of the water besides. What they see is what they would see if the valve had never been there. That is why a relief valve or an alarm stands below it.",
	Cautions: []string{
		"Over-pressure bursts hoses, floods floors and lifts relief valves. A weeping relief valve is a symptom: do not plug it or set it higher.",
		relieveFirst,
	},
	Sources: []problems.Source{
		waterColumn,
		{Says: "Valves one below the other in a down-feed riser; a relief valve or an alarm below each", Confidence: solver.Practice},
	},
	Draw: drawFailedValve,
	Solve: func(w problems.World) float64 {
		b := w.Building
		at := b.Levels[w.Focus].Elevation + w.Length("outlet")
		return float64(b.StuckOpen(b.ZoneOf(w.Focus), at, w.Gamma()))
	},
}

func init() { add(&failedValveSkill) }

// drawFailedValve draws a down-feed with two valves one below the other, and a
// level of the lower zone.
func drawFailedValve(s *building.Sheet) {
	t, _, ok := downFeed(s, building.Plan{Uses: zoned, Min: 22, Max: 40, NoSkip: true}, 2, s.UsualZones())
	if !ok {
		return
	}
	z := s.Int(0, len(t.Zones)-3)
	stuck, upper := t.Zones[z], t.Zones[z+1]
	fix := downFixtures[s.Int(0, len(downFixtures)-1)]
	lowest := max(stuck.Bottom, t.Building.Ground+1)
	s.Focus = s.Int(lowest, max(lowest, stuck.Top-2))
	storey := func(i int) float64 { return float64(i - t.Building.Ground + 1) }
	s.Name("fixture", fix.name)
	s.Set("upper_setting", math.Round(float64(upper.Valve.Setting/s.Press(1))))
	s.Set("setting", math.Round(float64(stuck.Valve.Setting/s.Press(1))))
	s.Set("upper_level", storey(upper.Top))
	s.Set("stuck_level", storey(stuck.Top))
	s.Set("level", storey(s.Focus))
	s.SetHeight("floor_height", t.Floor)
	s.Set("valve_up", s.DownValve())
	s.Set("outlet", s.Pick([]float64{fix.us}, []float64{fix.si}))
}
