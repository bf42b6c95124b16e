package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

const (
	tankRow   = "The table ({table_says}) has {flow_low} at {row_low} and {flow_high} at {row_high}, for {right_curve}."
	bothRows  = "At {row_low} and {row_high} the table ({table_says}) has {flush_tanks} for flush tanks, {flush_valves} for flush valves."
	whyHunter = "A table of demand answers one question: of so many fixtures, how much water may be drawn at one moment? Not all run together, and the more there are the smaller the share that does. So the curve flattens, and between two of its rows a straight line is near enough."
)

var demandFromUnitsSkill = problems.Skill{
	ID: "demand-from-units", Title: "Demand from fixture units",
	Chapter: 3, Order: 30, Year: 2, Kind: problems.Table,
	Ask:    "The cold water main of a building carries {units}. Its water closets have {right_curve}. " + bothRows + " What demand is the main sized for, read straight between the rows?",
	Givens: append([]problems.Given{{Name: "units", Says: "fixture units on the main", Measure: &measure.Units}}, rowGivens(true)...),
	Rules:  rowRules("units", "demand of the main", true),
	Holds:  whyHunter + " Flush valves draw hard and short, so their column is higher for the same units; near 1,000 units the two columns meet.",
	Cautions: []string{
		sizingStudy,
	},
	Sources: []problems.Source{curveSource, curveAgrees},
	Draw: func(s *building.Sheet) {
		valves := s.Chance(0.5)
		uses := tanks
		if valves {
			uses = flushes
		}
		suppliedTower(s, building.Plan{Uses: uses, Min: 3, Max: 12})
		right, other := curveOf(s, valves)
		units := drawUnits(s, right, 60, 750)
		s.Set("units", units)
		tellRows(s, units, right, other)
	},
	Solve: func(w problems.World) float64 { return straight(w, w.SI("units")) },
}

func init() { add(&demandFromUnitsSkill) }

var unitsAtJunctionSkill = problems.Skill{
	ID: "units-at-junction", Title: "Demand where two branches join",
	Chapter: 3, Order: 40, Year: 2, Kind: problems.Table,
	Ask: "Two branches join. Branch A carries {units_a}, and its demand is {flow_a}; branch B carries {units_b}, and its demand is {flow_b}. All water closets have {right_curve}. " + tankRow + " What demand is the pipe ahead of the junction sized for?",
	Givens: append([]problems.Given{
		{Name: "units_a", Says: "fixture units of branch A", Measure: &measure.Units},
		{Name: "units_b", Says: "fixture units of branch B", Measure: &measure.Units},
		{Name: "flow_a", Says: "demand of branch A alone", Measure: &measure.FlowRate},
		{Name: "flow_b", Says: "demand of branch B alone", Measure: &measure.FlowRate},
	}, rowGivens(false)...),
	Rules: junctionRules(),
	Holds: "Fixture units add, flows do not. The demand of a branch is already the part of its fixtures that may run together; two such peaks hardly fall on the same moment. So the units of both go to the table once more, and the common pipe carries less than the two demands together.",
	Cautions: []string{
		sizingStudy,
	},
	Sources: []problems.Source{curveSource, curveAgrees},
	Draw: func(s *building.Sheet) {
		valves := s.Chance(0.4)
		uses := tanks
		if valves {
			uses = flushes
		}
		suppliedTower(s, building.Plan{Uses: uses, Min: 3, Max: 12})
		right, _ := curveOf(s, valves)
		units := drawUnits(s, right, 140, 1000)
		a := math.Round(units * float64(s.Int(36, 46)) / 100)
		if s.Chance(0.5) {
			a = units - a
		}
		s.Set("units_a", a)
		s.Set("units_b", units-a)
		s.Set("flow_a", curveFlow(s, right, a))
		s.Set("flow_b", curveFlow(s, right, units-a))
		tellRows(s, units, right, nil)
	},
	Solve: func(w problems.World) float64 { return straight(w, w.SI("units_a")+w.SI("units_b")) },
}

func init() { add(&unitsAtJunctionSkill) }

// curveFlow is the demand of units as a drawing notes it: to a tenth of a gpm
// or a hundredth of a L/s.
func curveFlow(s *building.Sheet, c solver.Curve, units float64) float64 {
	q, _ := c.Demand(units)
	if s.US() {
		return math.Round(float64(q/unit.GPM)*10) / 10
	}
	return math.Round(float64(q/unit.LitrePerSecond)*100) / 100
}

func junctionRules() []problems.Rule {
	rules := rowRules("units", "demand ahead of the junction", false)
	last := &rules[len(rules)-1]
	last.Slips = append(last.Slips, problems.Slip{
		ID: "flows-added", Formula: "flow_a + flow_b",
		Did:  "You added the two demands, {flow_a} and {flow_b}.",
		Why:  "Each is the peak of its own branch. The two peaks do not meet, so the common pipe sees less. Added at every junction, the main grows by a size or two, and the water in it stands.",
		Next: "At a junction add units, and go back to the table.",
	})
	return append([]problems.Rule{{
		Name: "units", Says: "fixture units ahead of the junction", Measure: &measure.Units, Whole: true,
		Formula: "units_a + units_b",
		Why:     "The pipe ahead of the junction feeds every fixture of both branches.",
		Slips: []problems.Slip{{
			ID: "larger-branch-only", Formula: "max(units_a, units_b)",
			Did:  "You took the larger branch alone, {got}.",
			Why:  "The smaller branch hangs on the same pipe, and its fixtures are used in the same morning hour.",
			Next: "Stand at the junction and look away from the street: all that you see is on this pipe.",
		}},
	}}, rules...)
}

var continuousLoadSkill = problems.Skill{
	ID: "continuous-load", Title: "A load that runs all the time",
	Chapter: 3, Order: 50, Year: 3, Kind: problems.Table,
	Ask: "A main carries {units} of fixtures whose water closets have {right_curve}, and {load_name}, which takes {continuous} for hours on end. " + tankRow + " (The same table has about {load_units} against a flow of {continuous}.) What demand is the main sized for?",
	Givens: append([]problems.Given{
		{Name: "units", Says: "fixture units on the main", Measure: &measure.Units},
		{Name: "continuous", Says: "flow that runs all the time", Measure: &measure.FlowRate},
		{Name: "load_units", Says: "units that the table has against that flow", Measure: &measure.Units},
	}, rowGivens(false)...),
	Rules: append(rowRules("units", "demand of the fixtures", false), problems.Rule{
		Name: "total", Says: "demand of the main", Measure: &measure.FlowRate,
		Formula: "demand + continuous",
		Why:     "The steady load is there at every moment, so it is there at the peak too, in full.",
		Slips: []problems.Slip{
			{
				ID: "load-as-units", Formula: "flow_low + rise x (past + load_units) / (row_high - row_low)",
				Did:  "You turned the steady load into {load_units} and sent it through the curve with the fixtures.",
				Why:  "The curve counts on most fixtures being shut. A load that never shuts is not thinned out: all of {continuous} is there at the peak.",
				Next: "Sum up what comes and goes in units, read the flow, and add what stays on as a flow.",
			},
			{
				ID: "load-left-out", Formula: "demand",
				Did:  "You gave the demand of the fixtures and left out {load_name}.",
				Why:  "At the peak the fixtures would find {continuous} of their water gone elsewhere.",
				Next: "Look over the drawing for what has a water line and no fixture units.",
			},
		},
	}),
	Holds: "Fixture units stand for things that are used now and then. What runs for hours (cooling make-up, irrigation, a process) does not share the pipe by chance: it is added as a flow, after the curve has been read.",
	Cautions: []string{
		"Make-up to cooling or heating water, irrigation and process lines are cross-connections: each has the backflow preventer that its hazard asks for.",
		sizingStudy,
	},
	Sources: []problems.Source{curveSource, curveAgrees,
		{Says: "Cooling make-up 5 to 40 gpm, irrigation 5 to 30, laundry 10 to 60: common practice, no source", Confidence: solver.Practice}},
	Draw: drawContinuous,
	Solve: func(w problems.World) float64 {
		return straight(w, w.SI("units")) + float64(w.Flow("continuous"))
	},
}

func init() { add(&continuousLoadSkill) }

// steadyLoad is something that draws water for hours, with its usual flows.
type steadyLoad struct {
	name   string
	us, si []float64
}

// steadyLoads are common practice, no source.
var steadyLoads = []steadyLoad{
	{"the make-up of a cooling tower", []float64{20, 25, 30, 40}, []float64{1.2, 1.5, 2, 2.5}},
	{"an irrigation line", []float64{20, 25, 30}, []float64{1.2, 1.5, 1.8}},
	{"a laundry's fill line", []float64{20, 30, 40, 50}, []float64{1.3, 2, 2.5, 3}},
}

func drawContinuous(s *building.Sheet) {
	valves := s.Chance(0.4)
	uses := tanks
	if valves {
		uses = flushes
	}
	suppliedTower(s, building.Plan{Uses: uses, Min: 3, Max: 12})
	right, _ := curveOf(s, valves)
	load, _ := pick(s, steadyLoads)
	flow := s.Pick(load.us, load.si)
	units := drawUnits(s, right, 100, 750)
	s.Name("load_name", load.name)
	s.Set("units", units)
	s.Set("continuous", flow)
	s.Set("load_units", unitsAgainst(s, right, flow))
	tellRows(s, units, right, nil)
}

// unitsAgainst is the whole number of units that a curve has against a flow.
func unitsAgainst(s *building.Sheet, c solver.Curve, flow float64) float64 {
	u := c[0].Units
	for curveFlow(s, c, u) < flow {
		u++
	}
	return u
}
