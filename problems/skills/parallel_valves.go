package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var parallelValvesSkill = problems.Skill{
	ID: "parallel-valves", Title: "A small and a large valve in parallel",
	Chapter: 5, Order: 130, Year: 3, Kind: problems.Sum,
	Ask: "A zone draws {peak} at its peak. Two reducing valves stand in parallel: the small one is sized for a third of the peak, the large one for the rest. The large one is set to {large_setting}, and the two settings are to lie {gap} apart. What is each sized for, and what is the small one set to?",
	Givens: []problems.Given{
		{Name: "peak", Says: "peak flow of the zone", Measure: &measure.FlowRate},
		{Name: "large_setting", Says: "setting of the large valve", Measure: &measure.Pressure},
		{Name: "gap", Says: "difference between the two settings", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "small_flow", Says: "flow of the small valve", Measure: &measure.FlowRate,
			Formula: "peak / 3",
			Why:     "Most hours need little water. A small valve holds that steadily; a large one would sit almost shut and chatter.",
			Would:   sizeSmallValve,
			Slips: []problems.Slip{
				{
					ID: "small-for-all", Formula: "peak",
					Did:  "You sized the small valve for all of {peak}.",
					Why:  "Then it is no small valve. It stands nearly shut at night, and its seat is cut by the thin jet.",
					Next: "Two equal valves for standby are another plan. A small and a large one share the flow, so their flows add up to the peak.",
				},
				{
					ID: "halves", Formula: "peak / 2",
					Did:  "You gave each valve half of the peak.",
					Why:  "Two equal halves leave no small valve for the quiet hours. The usual split is one third and two thirds.",
					Next: "A third for the small one; check that the large one carries twice as much.",
				},
			},
		},
		{
			Name: "large_flow", Says: "flow of the large valve", Measure: &measure.FlowRate,
			Formula: "peak - small_flow",
			Why:     "The small valve stays open at the peak, so the large one only carries what is left.",
			Would:   sizeLargeValve,
			Slips: []problems.Slip{{
				ID: "large-for-all", Formula: "peak",
				Did:  "You sized the large valve for the whole of {peak}.",
				Why:  "At the peak both valves are open. The small one already carries {small_flow}.",
				Next: "Add the two flows: they must come to {peak}.",
			}},
		},
		{
			Name: "small_setting", Says: "setting of the small valve", Measure: &measure.Pressure,
			Formula: "large_setting + gap",
			Why:     "A reducing valve opens when its outlet sinks below its setting. The one that is to open first must be set higher.",
			Would:   setSmallValve,
			Slips: []problems.Slip{
				{
					ID: "settings-swapped", Formula: "large_setting - gap",
					Did:  "You set the small valve {gap} below the large one.",
					Why:  "Then the large valve opens first and works nearly shut for most of the day. The small one waits for a peak that it cannot serve.",
					Next: "Follow the pressure down as taps open: the first setting it meets is the higher one, and that must be the small valve's.",
				},
				{
					ID: "same-setting", Formula: "large_setting",
					Did:  "You set both valves to {large_setting}.",
					Why:  "Set alike, both open at once and pull against each other. The pressure hunts up and down.",
					Next: "One leads and one follows, so two different numbers go on the tags.",
				},
			},
		},
	},
	Holds:    "With no flow the zone stands at the higher setting, so only the small valve works. As taps open, its outlet sinks; when it comes down to the lower setting, the large valve opens too and both carry the peak.",
	Cautions: []string{relieveFirst, "At night the lowest outlet stands at the small valve's setting and its creep. Check that against the limit, not the large one's."},
	Sources: []problems.Source{
		{Says: "One third and two thirds of the flow; small valve set 5 to 10 psi (35 to 70 kPa) higher", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Uses: zoned, Min: 14, Max: 30})
		gauge := s.UpValve()
		large := s.Pick([]float64{50, 55, 60, 65}, []float64{350, 375, 400, 425, 450})
		gap := s.Pick([]float64{5, 8, 10}, []float64{35, 50, 70})
		pumpRoom(s, gauge, lift(s, t, gauge))
		top := t.Storey(floorsOn(s, t, gauge, large))
		firstZone(s, top, s.Length(gauge), s.Press(large)+s.Press(gap), 0)
		feedAbove(s, top+1)
		s.Focus = t.Storey(1)
		s.Set("peak", s.Pick([]float64{60, 75, 90, 105, 120, 135, 150, 180, 210, 240}, []float64{3.6, 4.5, 5.4, 6, 7.5, 9, 10.5, 12, 13.5, 15}))
		s.Set("large_setting", large)
		s.Set("gap", gap)
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.SmallValveSetting(w.Pressure("large_setting"), w.Pressure("gap")))
	},
}

func init() { add(&parallelValvesSkill) }

// sizeSmallValve sizes the small valve for a flow.
func sizeSmallValve(w problems.World, v float64) problems.Outcome {
	small, third := unit.Flow(v), w.Flow("peak")/3
	lead := "Sized for " + w.Rate(small) + ", the small valve would "
	switch {
	case w.Rate(small) == w.Rate(third):
		return problems.Outcome{Kept: true, Says: []string{lead + "carry the quiet hours by itself."}}
	case small > third:
		return problems.Outcome{Says: []string{lead + "stand nearly shut in the quiet hours: a third of the peak is " + w.Rate(third) + ", and a thin jet cuts its seat."}}
	}
	return problems.Outcome{Says: []string{lead + "be wide open early: a third of the peak is " + w.Rate(third) + ", and the large valve would work nearly shut for most of the day."}}
}

// sizeLargeValve sizes the large valve for a flow, beside the small one.
func sizeLargeValve(w problems.World, v float64) problems.Outcome {
	peak := w.Flow("peak")
	both := peak/3 + unit.Flow(v)
	says := "Beside the small valve's " + w.Rate(peak/3) + ", the two would carry " + w.Rate(both) + " at a peak of " + w.Rate(peak)
	switch {
	case w.Rate(both) == w.Rate(peak):
		return problems.Outcome{Kept: true, Says: []string{says + "."}}
	case both < peak:
		return problems.Outcome{Says: []string{says + ": the top of the zone would run short."}}
	}
	return problems.Outcome{Says: []string{says + ": the large one would never open wide, and hunt."}}
}

// setSmallValve sets the small valve: the higher of the two settings holds the
// zone with no flow, the lower one joins in as the outlet sinks.
func setSmallValve(w problems.World, v float64) problems.Outcome {
	small, large := unit.Pressure(v), w.Pressure("large_setting")
	b := w.Building.Copy()
	zone := b.ZoneOf(w.Focus)
	z := b.Zones[zone]
	z.Valve.Setting = min(max(small, large), b.Inlet(zone, w.Gamma()))
	lead := "Set to " + w.Press(small) + ", "
	o := problems.Outcome{Building: b}
	switch gap, s, l := small-large, w.Press(small), w.Press(large); {
	case s == l:
		o.Says = []string{lead + "the small valve would open together with the large one: they pull against each other, and the pressure hunts."}
	case small < large:
		o.Says = []string{lead + "below the " + l + " of the large valve, the small one would stay shut until the outlet has sunk to " + s + ". The large one would work alone, nearly shut for most of the day."}
	default:
		o.Kept = w.Press(gap) == w.Press(w.Pressure("gap"))
		o.Says = []string{lead + "the small valve would open first, and the large one once the outlet has sunk by " + w.Press(gap) + " to " + l + "."}
		if !o.Kept {
			o.Says = append(o.Says, "The two settings are to lie "+w.Press(w.Pressure("gap"))+" apart.")
		}
	}
	at := b.At(z.Bottom, b.Lowest(z.Bottom), w.Gamma())
	says, within := w.Stands("With no flow the lowest outlet, on "+w.Level(z.Bottom)+",", at, w.Most())
	o.Kept = o.Kept && within
	o.Says = append(o.Says, says+".")
	o.Marks = []problems.Mark{w.Mark(z.Bottom, problems.AtLowest, at, within)}
	return o
}
