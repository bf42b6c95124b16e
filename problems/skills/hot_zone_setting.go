package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var hotZoneSettingSkill = problems.Skill{
	ID: "hot-zone-setting", Title: "Setting the hot zone to match the cold",
	Chapter: 5, Order: 90, Year: 4, Kind: problems.Sum,
	Ask: "Hot and cold of a zone break on the same floors. The cold zone valve is set to {cold_setting}. The hot water of the zone is heated in a heater of its own, and the hot zone valve stands on the cold feed of that heater, {lower} lower than the cold zone valve. At the busy hour heater and pipe take {heater_loss} and the mixing valve {mixing_loss} that the cold water does not pass. To what is the hot zone valve set so that hot and cold meet at the shower, flowing? Both valves fall off alike.",
	Givens: []problems.Given{
		{Name: "cold_setting", Says: "setting of the cold zone valve", Measure: &measure.Pressure, Plate: true},
		{Name: "lower", Says: "how much lower the hot zone valve stands", Measure: &measure.Height},
		{Name: "heater_loss", Says: "loss of the heater and its pipe at the busy hour", Measure: &measure.Pressure},
		{Name: "mixing_loss", Says: "loss of the mixing valve at the busy hour", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "losses", Says: "what the hot water loses that the cold does not", Measure: &measure.Pressure,
			Formula: "heater_loss + mixing_loss",
			Why:     "Hot water goes through two things more on its way to the shower.",
			Slips: []problems.Slip{
				{
					ID: "heater-left-out", Formula: "mixing_loss",
					Did:  "You left out the {heater_loss} of heater and pipe.",
					Why:  "All hot water goes through the heater. Left out, the hot side is poorer in every shower, and cold pushes in.",
					Next: "Follow the hot water from its valve to the shower and write down each thing it passes.",
				},
				{
					ID: "mixing-valve-left-out", Formula: "heater_loss",
					Did:  "You left out the {mixing_loss} of the mixing valve.",
					Why:  "It is a narrow place, and all the hot water of the zone goes through it.",
					Next: "Follow the hot water from its valve to the shower and write down each thing it passes.",
				},
			},
		},
		{
			Name: "column", Says: "pressure of the water between the two valves", Measure: &measure.Pressure,
			Formula: "gamma x lower",
			Why:     "The hot valve stands lower, so it must carry that much more height.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "lower / gamma",
				Did:  "You divided {lower} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "hot_setting", Says: "setting of the hot zone valve", Measure: &measure.Pressure,
			Formula: "cold_setting + column + losses",
			Why:     "To arrive at the shower with the same pressure, the hot water must start with all that it loses more.",
			Would:   setHotZone,
			Slips: []problems.Slip{
				{
					ID: "losses-left-out", Formula: "cold_setting + column",
					Did:  "You set the hot side as if it lost no more than the cold.",
					Why:  "At night both would agree. At the busy hour the hot side falls behind by {losses}, and the showers run cold.",
					Next: "Settings are read at rest and showers taken at flow: between them lie the losses.",
				},
				{
					ID: "column-left-out", Formula: "cold_setting + losses",
					Did:  "You left out the height between the two valves.",
					Why:  "Two gauges on one riser agree only at one height. The lower one reads {column} more for the same zone.",
					Next: "Ask of each setting: where does the valve stand?",
				},
				{
					ID: "column-subtracted", Formula: "cold_setting - column + losses",
					Did:  "You took the height off.",
					Why:  "The hot valve stands lower than the cold one. Lower carries more.",
					Next: "Down gives: the lower gauge of two shows the larger number.",
				},
				{
					ID: "losses-subtracted", Formula: "cold_setting + column - losses",
					Did:  "You took the losses off.",
					Why:  "What is lost on the way must be there at the start. Taken off, the hot side is short twice over.",
					Next: "From the shower back to the valve every loss is added.",
				},
			},
		},
	},
	Holds: "Shower valves want hot and cold at nearly the same pressure while they flow. Hot water loses more on its way, through heater and mixing valve, so its zone is set that much higher. Breaks lie on the same floors, each hot zone has a heater behind its own valve, and the valve stands on the cold feed, never in the hot loop.",
	Cautions: []string{
		"At night the hot side stands higher than the cold by what it loses by day: the lowest outlet must still keep the limit, and the checks in the shower valves must be tight.",
		hotZonesToo, checkBothSides, relieveFirst,
	},
	Sources: []problems.Source{
		waterColumn, valveHabits,
		{Says: "Heaters 1 to 5 psi (5 to 35 kPa), mixing valves 3 to 10 psi (20 to 70 kPa)", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Uses: zoned, Min: 14, Max: 30})
		gauge := s.UpValve()
		lower := s.Pick([]float64{8, 10, 12, 14, 15, 18}, []float64{2.5, 3, 3.5, 4, 4.5, 5})
		heaterLoss := s.Pick([]float64{2, 3, 4, 5}, []float64{15, 20, 25, 35})
		mixingLoss := heaterLoss
		for mixingLoss == heaterLoss {
			mixingLoss = s.Pick([]float64{4, 5, 6, 8, 10}, []float64{30, 35, 40, 50, 70})
		}
		setting := s.PickPlate([]float64{50, 52, 55, 58, 60}, []float64{350, 360, 375, 400, 415})
		pumpRoom(s, gauge, lift(s, t, gauge))
		top := t.Storey(floorsOn(s, t, gauge, setting/onPlate(s, 1)))
		firstZone(s, top, s.Length(gauge), s.PlatePress(setting), 0)
		feedAbove(s, top+1)
		s.Focus = t.Storey(1)
		s.Set("cold_setting", setting)
		s.Set("lower", lower)
		s.Set("heater_loss", heaterLoss)
		s.Set("mixing_loss", mixingLoss)
	},
	Solve: func(w problems.World) float64 {
		cold := w.Building.Zones[0].Valve
		return float64(solver.HotZoneSetting(cold.Setting, w.Gamma(), w.Length("lower"), w.Pressure("heater_loss")+w.Pressure("mixing_loss")))
	},
}

func init() { add(&hotZoneSettingSkill) }

// setHotZone sets the hot zone valve and compares the two sides at a shower.
func setHotZone(w problems.World, v float64) problems.Outcome {
	cold := w.Building.Zones[0].Valve.Setting
	losses := w.Pressure("heater_loss") + w.Pressure("mixing_loss")
	set, right := unit.Pressure(v), solver.HotZoneSetting(cold, w.Gamma(), w.Length("lower"), losses)
	o := problems.Outcome{Says: []string{"Set to " + w.Press(set) + ", the hot side would give up " + w.Press(losses) + " more than the cold on its way at the busy hour."}}
	switch apart := w.Press(solver.PressuresApart(set, right)); {
	case w.Press(set) == w.Press(right):
		o.Kept = true
		o.Says = append(o.Says, "Hot and cold would meet at the shower. At night the hot side would stand "+w.Press(losses)+" over the cold.")
	case set < right:
		o.Says = append(o.Says, "At the shower hot would be "+apart+" under cold: the water turns cold, and cold pushes into the hot pipe wherever a check leaks.")
	default:
		o.Says = append(o.Says, "At the shower hot would be "+apart+" over cold: the water turns hot when someone else draws cold.")
	}
	return o
}
