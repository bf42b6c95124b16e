package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var loopBalancingSkill = problems.Skill{
	ID: "loop-balancing", Title: "Setting the balancing valves of two risers",
	Chapter: 7, Order: 80, Year: 4, Kind: problems.Sum,
	Ask: "A loop has two risers with direct return. The circulator gives {pump} between supply and return and moves {flow} through each. At that flow the way through the far riser takes {far} without its balancing valve, the way through the near riser {near}. {factor_says} To what {factor} are the two balancing valves set, the far one first, then the near one?",
	Givens: []problems.Given{
		{Name: "pump", Says: "pressure of the circulator at its duty", Measure: &measure.Pressure},
		{Name: "flow", Says: "flow wanted in each riser", Measure: &measure.FlowRate},
		{Name: "far", Says: "taken by the way through the far riser", Measure: &measure.Pressure},
		{Name: "near", Says: "taken by the way through the near riser", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "spare_far", Says: "pressure that the far valve must take", Measure: &measure.Pressure,
			Formula: "pump - far",
			Why:     "Pipe and valve together use up the circulator's pressure, on every way round.",
			Slips: []problems.Slip{{
				ID: "far-way-as-drop", Formula: "far", Family: "way-as-drop",
				Did:  "You gave the valve what the pipe takes, {far}.",
				Why:  "The pipe has taken that already. The valve takes what is left of {pump}.",
				Next: "Pipe and valve together must come to {pump}.",
			}},
		},
		{
			Name: "factor_far", Says: "{factor} of the far valve", Measure: &measure.ValveFactor,
			Formula: "flow / valve_flow / sqrt(spare_far / valve_press)",
			Why:     "The flow through a valve goes with the root of what it takes. {factor} is the flow at a loss of one.",
			Slips: []problems.Slip{
				{
					ID: "far-root-left-out", Formula: "flow / valve_flow / (spare_far / valve_press)", Family: "root-left-out",
					Did:  "You divided by the pressure itself.",
					Why:  "Four times the pressure gives twice the flow. So the root stands under the line.",
					Next: "Pressure goes with the square of the flow, flow with the root of the pressure.",
				},
				{
					ID: "far-multiplied", Formula: "flow / valve_flow x sqrt(spare_far / valve_press)", Family: "root-multiplied",
					Did:  "You multiplied by the root.",
					Why:  "A valve that must take more has to be shut further, so its {factor} gets smaller.",
					Next: "More to take, smaller opening: the root divides.",
				},
			},
		},
		{
			Name: "spare_near", Says: "pressure that the near valve must take", Measure: &measure.Pressure,
			Formula: "pump - near",
			Why:     "The short way leaves much of the circulator's pressure over. Without a valve to take it, all the water would go that way.",
			Slips: []problems.Slip{
				{
					ID: "near-way-as-drop", Formula: "near", Family: "way-as-drop",
					Did:  "You gave the valve what the pipe takes, {near}.",
					Why:  "The pipe has taken that already. The valve takes what is left of {pump}.",
					Next: "Pipe and valve together must come to {pump}.",
				},
				{
					ID: "far-less-near", Formula: "far - near",
					Did:  "You took the difference between the two ways.",
					Why:  "That would do if the far valve took nothing. It takes {spare_far}, and the near valve must match pipe and valve of the far way.",
					Next: "Reckon every way round from the circulator, not from its neighbour.",
				},
			},
		},
		{
			Name: "factor_near", Says: "{factor} of the near valve", Measure: &measure.ValveFactor,
			Formula: "flow / valve_flow / sqrt(spare_near / valve_press)",
			Why:     "The same flow against more pressure: the near valve stands further shut than the far one.",
			Would:   setNearValve,
			Slips: []problems.Slip{
				{
					ID: "same-setting", Formula: "factor_far",
					Did:  "You set both valves alike.",
					Why:  "Alike, the near riser gets most of the flow, for its way is shorter. The far one cools.",
					Next: "In direct return the valves open wider from the heater outward.",
				},
				{
					ID: "near-root-left-out", Formula: "flow / valve_flow / (spare_near / valve_press)", Family: "root-left-out",
					Did:  "You divided by the pressure itself.",
					Why:  "Four times the pressure gives twice the flow. So the root stands under the line.",
					Next: "Pressure goes with the square of the flow, flow with the root of the pressure.",
				},
				{
					ID: "near-multiplied", Formula: "flow / valve_flow x sqrt(spare_near / valve_press)", Family: "root-multiplied",
					Did:  "You multiplied by the root.",
					Why:  "A valve that must take more has to be shut further, so its {factor} gets smaller.",
					Next: "The near valve is the one that is nearly shut.",
				},
			},
		},
	},
	Holds: "Water takes the easy way. A balancing valve makes every way round equally hard at its own flow: the near one nearly shut, the far one wide open. What a valve passes is its factor times the root of what it takes; Cv is the gpm at 1 psi, Kv the cubic metres an hour at 1 bar, and Kv is 0.865 Cv.",
	Cautions: []string{
		legionella, scald,
		"A balancing valve is set with a thermometer on each return after an hour of rest, then locked and written down. Never shut one fully: its riser goes dead.",
	},
	Sources: []problems.Source{
		{Says: "Cv = Q / sqrt(p) in gpm and psi, Kv in m³/h and bar, Kv = 0.865 Cv", Confidence: solver.Memory},
		{Says: "Flow of a return riser not under 0.5 gpm (0.03 L/s), valves opening from the heater outward in direct return", Confidence: solver.Practice},
		loopReturn,
	},
	Draw: func(s *building.Sheet) {
		heaterTower(s)
		type aim struct{ pump, far, near float64 }
		var fit []aim
		for _, pump := range lists(s, []float64{5, 6, 7, 8, 9}, []float64{35, 40, 45, 50, 60}) {
			for _, far := range lists(s, []float64{3, 3.5, 4, 4.5, 5, 6}, []float64{20, 22, 26, 30, 34, 40}) {
				for _, near := range lists(s, []float64{0.8, 1, 1.2, 1.5, 2}, []float64{6, 7, 8, 10, 12}) {
					a, b, one := pump-far, pump-near, s.Pick([]float64{1}, []float64{7})
					if a > 1.25*one && a < 0.5*b && math.Abs(a/far-1) > 0.2 && math.Abs((far-near)/b-1) > 0.2 && math.Abs(near/b-1) > 0.2 {
						fit = append(fit, aim{pump, far, near})
					}
				}
			}
		}
		a, _ := pick(s, fit)
		flow := s.Pick([]float64{0.5, 0.8, 1, 1.2, 1.5, 2}, []float64{0.03, 0.05, 0.06, 0.08, 0.1, 0.12})
		hot, drop := s.Pick([]float64{135, 138, 140}, []float64{58, 59, 60}), s.Pick([]float64{6, 8, 10}, []float64{4, 5, 6})
		factor, says := "Cv", "Cv is the flow in gpm at which a valve takes 1 psi."
		if !s.US() {
			factor, says = "Kv", "Kv is the flow in m³/h at which a valve takes 1 bar."
		}
		s.Name("factor", factor)
		s.Name("factor_says", says)
		s.Set("pump", a.pump)
		s.Set("flow", flow)
		s.Set("far", a.far)
		s.Set("near", a.near)
		s.Building.Heater.Hot = degrees(s, hot)
		s.Building.Loop = &solver.Loop{
			FrictionAtDesignFlow: s.Press(a.pump),
			Drop:                 unit.TempDifference(degrees(s, hot) - degrees(s, hot-drop)),
		}
	},
	Solve: func(w problems.World) float64 {
		valve := solver.ValveUnit{Flow: w.Flow("valve_flow"), Loss: w.Pressure("valve_press")}
		return valve.Factor(w.Flow("flow"), w.Building.Loop.FrictionAtDesignFlow-w.Pressure("near"))
	},
}

func init() { add(&loopBalancingSkill) }

// setNearValve sets the near riser's valve while the far one stands right, and
// shares the circulator's flow between the two ways.
func setNearValve(w problems.World, v float64) problems.Outcome {
	valve := solver.ValveUnit{Flow: w.Flow("valve_flow"), Loss: w.Pressure("valve_press")}
	flow, l, hot := w.Flow("flow"), w.Building.Loop, w.Building.Heater.Hot
	near := w.Pressure("near") + valve.Drop(flow, v)
	part := solver.Split(2*flow, near, l.FrictionAtDesignFlow)
	back := func(q unit.Flow) unit.Temperature {
		return max(hot-unit.Temperature(float64(l.Drop)*float64(flow/q)), unit.Celsius(roomTemperature))
	}
	o := problems.Outcome{Kept: w.Rate(part[1]) == w.Rate(flow)}
	shares := "With the near valve set so, " + w.Rate(part[0]) + " would go through the near riser and " + w.Rate(part[1]) + " through the far one"
	worst, which := part[1], "far"
	if part[0] < part[1] {
		worst, which = part[0], "near"
	}
	cold := back(worst)
	leaves := "Of water that leaves the heater at " + w.Temp(hot) + ", the " + which + " riser would send back "
	switch {
	case o.Kept:
		o.Says = []string{shares + ", as wanted.", "Water that leaves the heater at " + w.Temp(hot) + " would come back from the far riser at " + w.Temp(back(part[1])) + ", as planned."}
	default:
		o.Says = []string{shares + "; " + w.Rate(flow) + " is wanted in each.", leaves + w.Temp(cold) + "; " + w.Temp(back(flow)) + " is planned."}
		if cold < loopLeast(w) {
			o.Says = append(o.Says, "Where people are at risk no less than "+w.Temp(loopLeast(w))+" is to come back: below it Legionella grows.")
		}
	}
	o.Marks = []problems.Mark{{Where: problems.AtLoop, Text: w.Temp(cold), Kept: o.Kept}}
	return o
}
