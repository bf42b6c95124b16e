package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

// rowFlow is a row's flow in the unit of the system.
func rowFlow(s *building.Sheet, r solver.Row) float64 {
	if s.US() {
		return r.GPM
	}
	return r.LS
}

// unitsBetween lists the multiples of step from lo to hi that lie between two
// rows of the demand tables, clear of both rows and of the middle.
func unitsBetween(lo, hi, step float64) []float64 {
	var out []float64
	for u := math.Ceil(lo/step) * step; u <= hi; u += step {
		if clearOfRows(u) {
			out = append(out, u)
		}
	}
	return out
}

// clearOfRows reports units whose flow no row, and no middle of two, gives.
func clearOfRows(u float64) bool {
	below, above, ok := solver.TankCurve.Rows(u)
	share := (u - below.Units) / (above.Units - below.Units)
	return ok && share >= 0.2 && share <= 0.8 && math.Abs(share-0.5) >= 0.07
}

// drawUnits draws units between lo and hi, every pair of rows as often, save
// those whose flows are so near each other that rounding hides which was read.
func drawUnits(s *building.Sheet, c solver.Curve, lo, hi float64) float64 {
	var rows []solver.Row
	for i := 1; i < len(c); i++ {
		a, b := c[i-1], c[i]
		if a.Units >= lo && b.Units <= hi && b.GPM-a.GPM >= 0.055*b.GPM {
			rows = append(rows, a)
		}
	}
	low, _ := pick(s, rows)
	_, above, _ := c.Rows(low.Units)
	u, _ := pick(s, unitsBetween(low.Units, above.Units, 1))
	return u
}

// tellRows prints the rows of the right curve, and those of the other, that
// units lie between.
func tellRows(s *building.Sheet, units float64, right, other solver.Curve) {
	below, above, _ := right.Rows(units)
	s.Set("row_low", below.Units)
	s.Set("row_high", above.Units)
	s.Set("flow_low", rowFlow(s, below))
	s.Set("flow_high", rowFlow(s, above))
	s.Name("table_says", tableWords(s))
	if other == nil {
		return
	}
	below, above, _ = other.Rows(units)
	s.Set("other_low", rowFlow(s, below))
	s.Set("other_high", rowFlow(s, above))
	tankLow, tankHigh, _ := solver.TankCurve.Rows(units)
	valveLow, valveHigh, _ := solver.ValveCurve.Rows(units)
	of := func(r solver.Row) string { return flowText(s, rowFlow(s, r)) }
	s.Name("flush_tanks", of(tankLow)+" and "+of(tankHigh))
	s.Name("flush_valves", of(valveLow)+" and "+of(valveHigh))
}

// tableWords says which demand table is printed.
func tableWords(s *building.Sheet) string {
	if s.Profile.ID == "ipc" {
		return "IPC, Table E103.3(3)"
	}
	return "the demand table of the class, after Hunter; your code may print another"
}

// rowGivens are the printed rows; both adds those of the other curve.
func rowGivens(both bool) []problems.Given {
	out := []problems.Given{
		{Name: "row_low", Says: "units of the table's row below", Measure: &measure.Units},
		{Name: "row_high", Says: "units of the table's row above", Measure: &measure.Units},
		{Name: "flow_low", Says: "{right_curve}, flow of the row below", Measure: &measure.FlowRate},
		{Name: "flow_high", Says: "{right_curve}, flow of the row above", Measure: &measure.FlowRate},
	}
	if both {
		out = append(out,
			problems.Given{Name: "other_low", Says: "{other_curve}, flow of the row below", Measure: &measure.FlowRate},
			problems.Given{Name: "other_high", Says: "{other_curve}, flow of the row above", Measure: &measure.FlowRate})
	}
	return out
}

// rowRules read the flow of units between two rows of the table; both names
// the slips of the other curve.
func rowRules(units, says string, both bool) []problems.Rule {
	past := problems.Rule{
		Name: "past", Says: "units above the row below", Measure: &measure.Units,
		Formula: units + " - row_low", Table: "demand", Row: units,
		Why: "The flow goes up from the lower row by the part of the way that the units have gone.",
		Slips: []problems.Slip{{
			ID: "from-the-row-above", Formula: "row_high - " + units,
			Did:  "You took how far {" + units + "} is below the row above, {got}.",
			Why:  "That is the part of the way still to go. The flow is built up from the lower row, so the part already gone counts.",
			Next: "Lower row first, then up. If the units are near the lower row, the flow must be near its flow.",
		}},
	}
	rise := problems.Rule{
		Name: "rise", Says: "how much the flow grows from row to row", Measure: &measure.FlowRate,
		Formula: "flow_high - flow_low",
		Why:     "Between two rows the table is taken as a straight line.",
	}
	demand := problems.Rule{
		Name: "demand", Says: says, Measure: &measure.FlowRate,
		Formula: "flow_low + rise x past / (row_high - row_low)",
		Why:     "The same part of the way in units is the same part of the way in flow.",
		Slips: []problems.Slip{
			{
				ID: "row-below", Formula: "flow_low",
				Did:  "You took {flow_low}, the flow of the row below.",
				Why:  "The pipe carries more units than that row. A flow read low gives a pipe that is starved at the morning peak.",
				Next: "Find your units between the rows before you look at any flow.",
			},
			{
				ID: "row-above", Formula: "flow_high", Allowed: true,
				Did:  "You took {flow_high}, the flow of the row above.",
				Why:  "Many offices round up to the next row, and it is on the safe side. Read between the rows it is {right}. Taken up at each section, a whole riser grows a size.",
				Next: "Ask your office which it does: the row above, or between the rows.",
			},
			{
				ID: "in-proportion", Formula: "flow_low x " + units + " / row_low",
				Did:  "You raised {flow_low} in the ratio of the units.",
				Why:  "Demand does not grow in step with the units: the more fixtures there are, the fewer of them run at one time. The line goes from row to row, not from zero.",
				Next: "Double the units and look at the table: the flow is well short of double.",
			},
		},
	}
	if both {
		rise.Slips = append(rise.Slips, problems.Slip{
			ID: "other-curve-rise", Family: "other-curve", Formula: "other_high - other_low",
			Did:  "You read the column for {other_curve}: {other_low} and {other_high}.",
			Why:  "{curve_why}",
			Next: "Put a finger on the head of the column, and say what flushes, before you go down to the row.",
		})
		demand.Slips = append(demand.Slips, problems.Slip{
			ID: "other-curve", Family: "other-curve", Formula: "other_low + rise x past / (row_high - row_low)",
			Did:  "You started from {other_low}, the column for {other_curve}.",
			Why:  "{curve_why}",
			Next: "Put a finger on the head of the column, and say what flushes, before you go down to the row.",
		})
	}
	return []problems.Rule{past, rise, demand}
}

// straight is the flow of units by the rows that the problem prints.
func straight(w problems.World, units float64) float64 {
	return float64(solver.Straight(units, w.SI("row_low"), w.SI("row_high"), w.Flow("flow_low"), w.Flow("flow_high")))
}

// curveOf sets the words of a right curve and says what flushes.
func curveOf(s *building.Sheet, valves bool) (right, other solver.Curve) {
	right, other = solver.TankCurve, solver.ValveCurve
	words := [2]string{"flush tanks", "flush valves"}
	why := "A flush tank fills slowly from a small stream. On the column for flush valves the pipe comes out larger than it need be, and water stands in it."
	if valves {
		right, other = other, right
		words[0], words[1] = words[1], words[0]
		why = "A flush valve takes its water in a few seconds straight from the pipe. On the column for flush tanks the pipe comes out too small, and valves fail to close."
	}
	nameCurves(s, words, why)
	return right, other
}

// nameCurves sets the words for the right curve, the other, and why not that.
func nameCurves(s *building.Sheet, words [2]string, why string) {
	s.Name("right_curve", words[0])
	s.Name("other_curve", words[1])
	s.Name("curve_why", why)
}
