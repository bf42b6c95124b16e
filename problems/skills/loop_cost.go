package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var loopCostSkill = problems.Skill{
	ID: "loop-cost", Title: "What insulating a loop saves in a year",
	Chapter: 7, Order: 120, Year: 3, Kind: problems.Sum,
	Ask: "{length} of bare {size} copper in a hot loop lose {bare}; insulated they would lose {wrapped}. The loop is hot {run_hours} in the year. The heater turns {efficiency} of its fuel into hot water, and fuel costs {price}. What does insulation save in a year?",
	Givens: []problems.Given{
		{Name: "length", Says: "pipe of the loop that is bare", Measure: &measure.PipeLength},
		{Name: "bare", Says: "heat loss, bare", Measure: &measure.HeatPerPipe},
		{Name: "wrapped", Says: "heat loss, insulated", Measure: &measure.HeatPerPipe},
		{Name: "run_hours", Says: "hours that the loop is hot in a year", Measure: &measure.TimeHours},
		{Name: "efficiency", Says: "efficiency of the heater, as a decimal", Measure: &measure.Share},
		{Name: "price", Says: "price of the fuel", Measure: &measure.FuelPrice},
	},
	Rules: []problems.Rule{
		{
			Name: "bare_heat", Says: "heat lost bare", Measure: &measure.PipeHeat,
			Formula: "length x bare",
			Why:     "This is what goes off into the building now, day and night.",
		},
		{
			Name: "wrapped_heat", Says: "heat lost insulated", Measure: &measure.PipeHeat,
			Formula: "length x wrapped",
			Why:     "Insulation slows the loss; it does not end it.",
		},
		{
			Name: "less", Says: "heat kept in by the insulation", Measure: &measure.PipeHeat,
			Formula: "bare_heat - wrapped_heat",
			Why:     "Only the difference is saved.",
			Slips: []problems.Slip{
				{
					ID: "all-saved", Formula: "bare_heat",
					Did:  "You counted the whole bare loss as saved.",
					Why:  "Insulated pipe still loses {wrapped_heat}.",
					Next: "Saved is before less after.",
				},
				{
					ID: "rest-for-saved", Formula: "wrapped_heat",
					Did:  "You gave what is still lost, {wrapped_heat}.",
					Why:  "That is what insulation does not hold. Saved is the rest of {bare_heat}.",
					Next: "Saved is before less after.",
				},
			},
		},
		{
			Name: "year_heat", Says: "heat kept in during the year", Measure: &measure.Fuel,
			Formula: "less x run_hours / fuel_base", Metric: "less x run_hours x seconds_per_hour / fuel_base",
			Why: "A rate times the time it lasts is an amount. Fuel is sold by the therm of 100,000 Btu, or by the gigajoule.",
			Slips: []problems.Slip{{
				ID: "one-day", Formula: "less x 24 / fuel_base", Metric: "less x 24 x seconds_per_hour / fuel_base",
				Did:  "You counted the hours of one day.",
				Why:  "The loop is hot {run_hours} in the year.",
				Next: "A bill for a year needs the hours of a year.",
			}},
		},
		{
			Name: "bought", Says: "fuel that need not be bought", Measure: &measure.Fuel,
			Formula: "year_heat / efficiency",
			Why:     "Part of the fuel goes up the flue. So more is bought than arrives in the water.",
			Slips: []problems.Slip{
				{
					ID: "efficiency-upside-down", Formula: "year_heat x efficiency",
					Did:  "You multiplied by the efficiency.",
					Why:  "Then less fuel would be bought than heat arrives. No heater does that.",
					Next: "From water to fuel: divide. The fuel is the larger number.",
				},
				{
					ID: "efficiency-left-out", Formula: "year_heat",
					Did:  "You left the heater's efficiency out.",
					Why:  "The meter counts the fuel that goes in, flue and all.",
					Next: "Ask where the meter sits: ahead of the heater.",
				},
			},
		},
		{
			Name: "saving", Says: "saved in a year", Measure: &measure.Money,
			Formula: "bought x price",
			Why:     "Each therm or gigajoule costs {price}.",
			Slips: []problems.Slip{{
				ID: "divided-by-price", Formula: "bought / price",
				Did:  "You divided by the price.",
				Why:  "Dearer fuel must make the saving larger.",
				Next: "Double the price in your mind: the saving must double.",
			}},
		},
	},
	Holds:    "A loop loses heat every hour of the year, and the heater pays for it with more fuel than the heat it gives. Insulation holds back more than a third of it on small tube and about half on large. With smaller losses the circulator can be smaller too.",
	Cautions: []string{"Turning the loop down or stopping it at night saves fuel and grows Legionella. Insulate instead.", legionella},
	Sources: []problems.Source{
		heatLossSource,
		{Says: "A therm is 100,000 Btu. NIST SP 811 (2008), App. B", Confidence: solver.Memory},
		{Says: "Hours, prices and efficiencies: common practice, no source", Confidence: solver.Practice},
	},
	Draw: drawLoopCost,
	Solve: func(w problems.World) float64 {
		l := w.Building.Loop
		before := solver.Run{Length: l.Supply, Loss: l.SupplyLoss}.Heat()
		after := solver.Run{Length: l.Supply, Loss: w.SI("wrapped")}.Heat()
		return solver.HeatBought(before-after, w.SI("run_hours"), w.Building.Heater.Efficiency) * w.SI("price")
	},
}

func init() { add(&loopCostSkill) }

// drawLoopCost draws bare pipe of one size, hot all year or most of it.
func drawLoopCost(s *building.Sheet) {
	heaterTower(s)
	var rows []solver.PipeLoss
	for _, r := range solver.HeatLosses[2:8] {
		if math.Abs(r.Bare-2*r.Insulated) > 1 { // else saved and still lost are the same number
			rows = append(rows, r)
		}
	}
	row, _ := pick(s, rows)
	length := s.Pick([]float64{120, 150, 200, 250, 300, 400, 500}, []float64{35, 45, 60, 75, 90, 120, 150})
	efficiency := s.Pick([]float64{0.78, 0.8, 0.82, 0.85}, []float64{0.78, 0.8, 0.82, 0.85})
	bare, wrapped := lossOf(s, row.Bare), lossOf(s, row.Insulated)
	s.Building.Heater.Efficiency = efficiency
	s.Building.Loop = &solver.Loop{Supply: s.Length(length), SupplyLoss: lossSI(s, bare), Drop: unit.TempDifference(5)}
	s.Name("size", tubeRow(s, row))
	s.Set("length", length)
	s.Set("bare", bare)
	s.Set("wrapped", wrapped)
	s.Set("run_hours", s.Pick([]float64{8760, 8000, 6000}, []float64{8760, 8000, 6000}))
	s.Set("efficiency", efficiency)
	s.Set("price", s.Pick([]float64{0.9, 1.2, 1.35, 1.5, 1.8}, []float64{9, 11, 12, 14, 16}))
}
