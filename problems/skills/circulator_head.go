package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var circulatorHeadSkill = problems.Skill{
	ID: "circulator-head", Title: "Head of a circulator",
	Chapter: 7, Order: 70, Year: 3, Kind: problems.Sum,
	Ask: "Two risers of a building {height} high share one circulator. At circulation flow the pipe of the loop through the far riser loses {far}, that through the near riser {near}, supply and return counted in each. The loop also runs through the heater, {heater_loss}, the mixing valve, {mixing}, two check valves, {checks} together, and a balancing valve that takes {balancing} wide open. What head must the circulator make?",
	Givens: []problems.Given{
		{Name: "far", Says: "pipe friction of the loop through the far riser", Measure: &measure.Pressure},
		{Name: "near", Says: "pipe friction of the loop through the near riser", Measure: &measure.Pressure},
		{Name: "heater_loss", Says: "loss of the heater", Measure: &measure.Pressure},
		{Name: "mixing", Says: "loss of the mixing valve", Measure: &measure.Pressure},
		{Name: "checks", Says: "loss of the check valves", Measure: &measure.Pressure},
		{Name: "balancing", Says: "loss of a balancing valve, wide open", Measure: &measure.Pressure},
		{Name: "height", Says: "height of the building", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "devices", Says: "lost in heater, mixing valve, checks and balancing valve", Measure: &measure.Pressure,
			Formula: "heater_loss + mixing + checks + balancing",
			Why:     "The water runs through all of them on every turn.",
			Slips: []problems.Slip{
				{
					ID: "mixing-valve-left-out", Formula: "heater_loss + checks + balancing",
					Did:  "You left out the mixing valve, {mixing}.",
					Why:  "At night the loop's whole flow goes through valve or heater and back. The mixing valve is often the largest single loss of the loop.",
					Next: "Walk round the loop and write down everything that water passes through.",
				},
				{
					ID: "checks-and-balancing-left-out", Formula: "heater_loss + mixing",
					Did:  "You counted heater and mixing valve only.",
					Why:  "Check valves and the balancing valve stand in the same pipe. Wide open, the balancing valve still takes {balancing}.",
					Next: "Small valves count at small flows: look for every symbol on the return.",
				},
			},
		},
		{
			Name: "rise", Says: "pressure that the circulator must make", Measure: &measure.Pressure,
			Formula: "far + devices",
			Why:     "The circulator serves its worst loop. The nearer riser is then throttled by its balancing valve.",
			Slips: []problems.Slip{
				{
					ID: "loops-summed", Formula: "far + near + devices",
					Did:  "You added both loops, {far} and {near}.",
					Why:  "They stand side by side, not one behind the other. A drop of water goes through one riser or the other.",
					Next: "Flows of branches add up; losses add up along one way only.",
				},
				{
					ID: "near-loop", Formula: "near + devices",
					Did:  "You took the near riser, {near}.",
					Why:  "With this pump the far riser gets too little water and cools.",
					Next: "The longest way round decides.",
				},
				{
					ID: "devices-left-out", Formula: "far",
					Did:  "You counted pipe alone.",
					Why:  "The devices take {devices} at this flow, and the pump pays for that too.",
					Next: "Pipe and devices: two lines, then the sum.",
				},
			},
		},
		{
			Name: "pump_head", Says: "head of the circulator", Measure: &measure.Height,
			Formula: "rise / gamma",
			Why:     "Pump curves are drawn in height of water. The building's height is not in it: the loop is closed, and the water coming down lifts the water going up.",
			Would:   circulateLoop,
			Slips: []problems.Slip{
				{
					ID: "height-added", Formula: "rise / gamma + height",
					Did:  "You added the building's height, {height}.",
					Why:  "The loop is full and closed. The column in the return balances the column in the supply, so the pump lifts nothing.",
					Next: "Think of a wheel: as much goes down as up. Only the rubbing has to be paid.",
				},
				{
					ID: "multiplied", Formula: "rise x gamma",
					Did:  "You multiplied {rise} by {gamma}.",
					Why:  "Multiplying turns a height into a pressure. The pressure is known here, so divide.",
					Next: "The feet are more than twice the psi; the metres are about a tenth of the kPa.",
				},
			},
		},
	},
	Holds: "A circulator moves water round a full, closed ring. Height cancels, friction does not. It is chosen for the worst way round, pipe and devices, at the flow that carries the heat. A head many times too large wears the tube away where the water turns.",
	Cautions: []string{
		"Booster and circulator: lock them out before work, guard the coupling, and never run them dry or against a shut valve.",
		"A circulator for drinking water has wetted parts of bronze or stainless steel, approved for it; one for heating rusts.",
		legionella,
	},
	Sources: []problems.Source{
		waterColumn,
		{Says: "Mixing valve 3 to 6 psi (20 to 40 kPa), heater, checks and balancing valve about 1 psi (7 kPa) each, at circulation flow; the makers' charts govern", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		heaterTower(s)
		b := s.Building
		type aim struct{ far, near, heater, mixing, checks, balancing float64 }
		var fit []aim
		for _, far := range lists(s, []float64{4, 4.5, 5, 5.5, 6}, []float64{18, 22, 25, 30, 35}) {
			for _, near := range lists(s, []float64{2, 2.2, 2.5}, []float64{8, 10, 12, 14}) {
				for _, mixing := range lists(s, []float64{3, 3.5, 4}, []float64{20, 25, 30, 40}) {
					for _, small := range lists(s, []float64{0.5, 0.6, 0.8}, []float64{4, 5, 6}) {
						devices, checks := 4*small+mixing, s.Pick([]float64{1, 1.2, 1.5}, []float64{7, 8, 10})
						if far-near >= s.Pick([]float64{2.2}, []float64{10}) && math.Abs(devices/far-1) > 0.2 && math.Abs(checks-near)/near > 0.1 {
							fit = append(fit, aim{far, near, small, mixing, checks, 2 * small})
						}
					}
				}
			}
		}
		a, _ := pick(s, fit)
		s.Set("far", a.far)
		s.Set("near", a.near)
		s.Set("heater_loss", a.heater)
		s.Set("mixing", a.mixing)
		s.Set("checks", a.checks)
		s.Set("balancing", a.balancing)
		top := b.Levels[len(b.Levels)-1].Elevation
		setHeight(s, "height", s.Heights(top))
		hot, drop := s.Pick([]float64{135, 140}, []float64{58, 60}), s.Pick([]float64{6, 8, 10}, []float64{4, 5})
		b.Heater.Hot = degrees(s, hot)
		b.Loop = &solver.Loop{
			Supply: top, Return: top, FrictionAtDesignFlow: s.Press(a.far + a.heater + a.mixing + a.checks + a.balancing),
			Drop: unit.TempDifference(degrees(s, hot) - degrees(s, hot-drop)),
		}
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.CirculatorHead(w.Gamma(), w.Pressure("far"), w.Pressure("heater_loss"), w.Pressure("mixing"), w.Pressure("checks"), w.Pressure("balancing")))
	},
}

func init() { add(&circulatorHeadSkill) }

// circulateLoop drives the loop through the far riser with a circulator of
// some head: the flow goes with the root of the pressure, and the drop of
// temperature with one over the flow.
func circulateLoop(w problems.World, v float64) problems.Outcome {
	l, pump := *w.Building.Loop, unit.Length(v)
	makes, needs := w.Gamma().OfColumn(pump), w.Gamma().HeightOf(l.FrictionAtDesignFlow)
	hot := w.Building.Heater.Hot
	part := math.Sqrt(float64(makes / l.FrictionAtDesignFlow))
	back := max(hot-unit.Temperature(float64(l.Drop)/part), unit.Celsius(roomTemperature))
	planned := hot - unit.Temperature(l.Drop)
	o := problems.Outcome{Kept: w.Tall(pump) == w.Tall(needs)}
	lead := "A circulator of " + w.Tall(pump) + " makes " + w.Press(makes) + "."
	share := w.Text(measure.Share, 100*part) + " % of the flow that is planned"
	leaves := "Water that leaves the heater at " + w.Temp(hot) + " would come back from the far riser at " + w.Temp(back)
	switch {
	case o.Kept:
		o.Says = []string{lead + " That is what the worst way round takes at circulation flow.", leaves + ", as planned."}
	case makes < l.FrictionAtDesignFlow:
		o.Says = []string{lead + " The worst way round would carry about " + share + ".", leaves + "; " + w.Temp(planned) + " is planned."}
		if back < loopLeast(w) {
			o.Says = append(o.Says, "Where people are at risk no less than "+w.Temp(loopLeast(w))+" is to come back: below it Legionella grows.")
		}
	default:
		o.Says = []string{lead + " It would drive about " + share + " round, or has to be throttled: current is wasted, and fast hot water wears tube away at its bends."}
	}
	o.Marks = []problems.Mark{{Where: problems.AtLoop, Text: w.Press(makes), Kept: o.Kept}}
	return o
}
