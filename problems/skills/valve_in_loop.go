package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var valveInLoopSkill = problems.Skill{
	ID: "valve-in-loop", Title: "A reducing valve in a hot loop",
	Chapter: 5, Order: 170, Year: 4, Kind: problems.Sum,
	Ask: "A drawing shows a reducing valve in the hot riser, and the return of the same loop comes back ahead of it. The valve takes {inlet} in and gives {outlet} out. The loop's friction at circulation flow is {friction}. What head would the circulator have to make to push the return back to where it started?",
	Givens: []problems.Given{
		{Name: "inlet", Says: "pressure at the valve's inlet", Measure: &measure.Pressure, Plate: true},
		{Name: "outlet", Says: "pressure at the valve's outlet", Measure: &measure.Pressure, Plate: true},
		{Name: "friction", Says: "friction of the loop at circulation flow", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "drop", Says: "pressure that the valve takes away", Measure: &measure.Pressure,
			Formula: "inlet - outlet",
			Why:     "The water must come back to the pressure it had before the valve. What the valve took, the circulator has to give back.",
			Slips: []problems.Slip{{
				ID: "inlet-alone", Formula: "inlet",
				Did:  "You went on with the whole inlet pressure, {inlet}.",
				Why:  "The return still has {outlet} of it. Only what the valve took away has to be put back.",
				Next: "Write the pressure before and behind the valve; the pump makes up the difference.",
			}},
		},
		{
			Name: "rise", Says: "pressure that the circulator must add", Measure: &measure.Pressure,
			Formula: "drop + friction",
			Why:     "It works against the valve's drop and the rubbing of the moving water.",
			Slips: []problems.Slip{
				{
					ID: "drop-left-out", Formula: "friction",
					Did:  "You sized the circulator for the {friction} of friction alone.",
					Why:  "That is right for a loop at one pressure. Here the return comes back at the outlet pressure and cannot enter the pipe ahead of the valve. It would stand still.",
					Next: "Walk once round the loop and stop at each thing that lowers the pressure. A reducing valve is one.",
				},
				{
					ID: "friction-left-out", Formula: "drop",
					Did:  "You counted the valve's drop and left out the {friction} of friction.",
					Why:  "With the drop just made up nothing moves yet. The flow itself costs friction.",
					Next: "Standing part and moving part: a pump pays for both.",
				},
				{
					ID: "friction-subtracted", Formula: "drop - friction",
					Did:  "You took the friction off the drop.",
					Why:  "Friction does not help the pump; it is one more thing to push against.",
					Next: "Everything that the pump works against is added.",
				},
			},
		},
		{
			Name: "pump_head", Says: "head of the circulator", Measure: &measure.Height,
			Formula: "rise / gamma",
			Why:     "Pump curves are drawn in height of water. A pressure becomes a height when it is divided by the pressure of one foot or metre.",
			Would:   circulateAcross,
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "rise x gamma",
				Did:  "You multiplied {rise} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. The pressure is known here, so divide.",
				Next: "The feet are more than twice the psi; the metres are about a tenth of the kPa.",
			}},
		},
	},
	Holds: "A loop that stays at one pressure needs a pump for its friction only; height does not count, for what goes up comes down. A reducing valve in it breaks that: on every turn its whole drop must be pumped up again. So it is never built. Zone the heaters, or put the valve on the cold feed of each zone's heater.",
	Cautions: []string{
		"Never put a reducing valve into a recirculated hot loop. The return stands still, the pipe cools, and nobody sees it.",
		legionella,
		"Booster and circulator: lock them out before work, guard the coupling, and never run them dry or against a shut valve.",
	},
	Sources: []problems.Source{
		waterColumn,
		{Says: "No reducing valve in a recirculated loop: trade articles on hot water in tall buildings", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Uses: zoned, Min: 16, Max: 32})
		gauge := s.UpValve()
		inlet := lift(s, t, gauge)
		outlet := s.PickPlate([]float64{50, 55, 60, 65, 70}, []float64{350, 375, 400, 450, 475})
		friction := s.Pick([]float64{4, 5, 6, 8, 10}, []float64{30, 35, 40, 55, 70})
		pumpRoom(s, gauge, inlet)
		top := t.Storey(floorsOn(s, t, gauge, outlet/onPlate(s, 1)))
		firstZone(s, top, s.Length(gauge), s.PlatePress(outlet), 0)
		feedAbove(s, top+1)
		s.Focus = t.Storey(1)
		run := t.Highest(top) - s.Length(gauge)
		t.Loop = &solver.Loop{Supply: run, Return: run, ValveInLoop: s.PlatePress(inlet) - s.PlatePress(outlet), FrictionAtDesignFlow: s.Press(friction)}
		s.Set("inlet", inlet)
		s.Set("outlet", outlet)
		s.Set("friction", friction)
	},
	Solve: func(w problems.World) float64 {
		l := w.Building.Loop
		return float64(solver.CirculatorAcrossValve(l.ValveInLoop, 0, l.FrictionAtDesignFlow, w.Gamma()))
	},
}

func init() { add(&valveInLoopSkill) }

// circulateAcross puts a circulator of some head into the loop.
func circulateAcross(w problems.World, v float64) problems.Outcome {
	l, pump := w.Building.Loop, unit.Length(v)
	makes, drop, friction := w.Gamma().OfColumn(pump), l.ValveInLoop, l.FrictionAtDesignFlow
	o := problems.Outcome{Says: []string{"A circulator of " + w.Tall(pump) + " makes " + w.Press(makes) + "."}}
	left := w.Press(makes - drop)
	switch needs := w.Tall(solver.CirculatorAcrossValve(drop, 0, friction, w.Gamma())); {
	case w.Tall(pump) == needs:
		o.Kept = true
		o.Says = append(o.Says, "That is the "+w.Press(drop)+" of the valve and the "+w.Press(friction)+" of friction: the return would just run. Nobody builds such a pump into a loop; the valve goes.")
	case w.Enough(drop, makes):
		o.Says = append(o.Says, "The valve takes "+w.Press(drop)+", so the return could not get back in. It would stand still, and its pipe would cool.")
	case pump < solver.CirculatorAcrossValve(drop, 0, friction, w.Gamma()):
		o.Says = append(o.Says, "The valve takes "+w.Press(drop)+" and leaves "+left+" of it for the friction, which is "+w.Press(friction)+" at circulation flow: the loop would run too slowly and cool.")
	default:
		o.Says = append(o.Says, "The valve takes "+w.Press(drop)+" and leaves "+left+" of it for the friction, where "+w.Press(friction)+" is enough: the pump would be larger than even this loop needs.")
	}
	o.Marks = []problems.Mark{{Where: problems.AtLoop, Text: w.Press(makes), Kept: o.Kept}}
	return o
}
