package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var circulationFlowSkill = problems.Skill{
	ID: "circulation-flow", Title: "Flow of a circulator",
	Chapter: 7, Order: 50, Year: 3, Kind: problems.Sum,
	Ask: "A hot loop has {supply_length} of supply that loses {supply_loss} and {return_length} of return that loses {return_loss}. The water leaves the heater at {hot} and may be at {back} where the return comes in at the heater. What flow must the circulator keep up?",
	Givens: []problems.Given{
		{Name: "supply_length", Says: "supply pipe of the loop", Measure: &measure.PipeLength},
		{Name: "supply_loss", Says: "heat that the supply loses", Measure: &measure.HeatPerPipe},
		{Name: "return_length", Says: "return pipe of the loop", Measure: &measure.PipeLength},
		{Name: "return_loss", Says: "heat that the return loses", Measure: &measure.HeatPerPipe},
		{Name: "hot", Says: "temperature at the heater's outlet", Measure: &measure.Temp},
		{Name: "back", Says: "temperature where the return comes in at the heater", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "supply_heat", Says: "heat lost by the supply", Measure: &measure.PipeHeat,
			Formula: "supply_length x supply_loss",
			Why:     "Each foot or metre of insulated pipe gives off the same heat, so length times loss.",
		},
		{
			Name: "return_heat", Says: "heat lost by the return", Measure: &measure.PipeHeat,
			Formula: "return_length x return_loss",
			Why:     "The return is smaller pipe, so its loss for a foot or metre is less. It stands on its own line of the table.",
			Slips: []problems.Slip{{
				ID: "supply-column", Formula: "return_length x supply_loss",
				Did:  "You took the supply's {supply_loss} for the return as well.",
				Why:  "The return is a smaller size and loses {return_loss}. The larger figure makes the pump larger than it need be.",
				Next: "Go to the table once for each size on the drawing.",
			}},
		},
		{
			Name: "loss", Says: "heat lost by the loop", Measure: &measure.PipeHeat,
			Formula: "supply_heat + return_heat",
			Why:     "The drop is told from the heater's outlet round to its return. All the pipe between these two points shares in it.",
			Slips: []problems.Slip{
				{
					ID: "return-left-out", Formula: "supply_heat",
					Did:  "You counted the supply alone.",
					Why:  "That would be right for a drop from the heater to the last branch. This one runs to the end of the return, and the return cools too.",
					Next: "Ask from where to where the drop is told, and count the pipe between.",
				},
				{
					ID: "supply-left-out", Formula: "return_heat",
					Did:  "You counted the return alone.",
					Why:  "The circulator sits in the return, but the water it moves has come through the whole supply and lost heat there.",
					Next: "A loop is a ring: go round until you are back at the heater.",
				},
			},
		},
		{
			Name: "drop", Says: "temperature drop, heater outlet to heater return", Measure: &measure.TempDrop,
			Formula: "hot - back",
			Why:     "The water brings heat into the loop only by cooling down. How far it may cool is the drop.",
			Slips: []problems.Slip{
				{
					ID: "hot-for-drop", Formula: "hot",
					Did:  "You used {hot}, the temperature itself, as the drop.",
					Why:  "That would cool the loop to nought degrees. The flow comes out a small part of what is needed, and the far risers turn lukewarm.",
					Next: "A drop has two temperatures in it: leaving and coming back.",
				},
				{
					ID: "return-for-drop", Formula: "back",
					Did:  "You used {back}, the return's temperature, as the drop.",
					Why:  "What comes back has not been given off. The loop gets only what lies between {hot} and {back}.",
					Next: "Usual drops are 5 to 20 °F (3 to 10 K). A much larger number is a temperature.",
				},
			},
		},
		{
			Name: "flow", Says: "flow of the circulator", Measure: &measure.FlowRate,
			Formula: "loss / (flow_heat x drop)",
			Metric:  "loss / (watt_per_kw x flow_heat x drop)",
			Why:     "One gallon a minute carries 500 Btu in an hour for each degree that it cools; one litre a second carries 4.19 kW.",
			Would:   circulate,
			Slips: []problems.Slip{
				{
					ID: "constant-left-out", Formula: "loss / drop", Metric: "loss / (watt_per_kw x drop)",
					Did:  "You divided the loss by the drop and left out {flow_heat}.",
					Why:  "The drop is in degrees, the loss is heat. Between the two stands how much heat the water carries for a degree.",
					Next: "A hot loop of one building needs a few gallons a minute, some tenths of a litre a second. Compare the size.",
				},
				{
					ID: "unit-step-missed", Formula: "loss / (8.33 x drop)", Metric: "loss / (flow_heat x drop)",
					Did:  "You left out the step between two units: 60 minutes in an hour (US) or 1,000 watts in a kilowatt (SI).",
					Why:  "Dividing by 8.33 gives gallons an hour, not a minute; watts by {flow_heat} give millilitres a second, not litres.",
					Next: "8.33 lb times 60 minutes is where the 500 comes from. In SI turn watts into kilowatts first.",
				},
			},
		},
	},
	Holds: "The loop loses heat all day, and the only thing that brings it is water that enters hot and leaves cooler. Little flow cools much, much flow cools little. The flow is right when the loss just uses up the drop that is allowed.",
	Cautions: []string{
		legionella,
		"Where people are at risk the return is to come back at 124 °F (51 °C) or more: a guideline, not every code.",
		scald,
	},
	Sources: []problems.Source{
		{Says: "Flow = loss / (500 x drop): 8.33 lb x 60 min = 499.8. A water heater maker's design manual", Confidence: solver.Confirmed},
		{Says: "15 to 29 Btu/h for a foot of insulated pipe, 1/2 to 2 in. A public engineering document's worked loop", Confidence: solver.Confirmed},
		loopReturn,
	},
	Draw: drawCirculation,
	Solve: func(w problems.World) float64 {
		l := *w.Building.Loop
		return float64(solver.CirculationFlow(solver.LoopLoss(l), w.SI("flow_heat"), l.Drop))
	},
}

func init() { add(&circulationFlowSkill) }

// circulate keeps up a flow in the loop and feels what comes back.
func circulate(w problems.World, v float64) problems.Outcome {
	l, flow := *w.Building.Loop, unit.Flow(v)
	hot, asked := w.Temperature("hot"), w.Temperature("back")
	back := hot - unit.Temperature(solver.LoopDrop(solver.LoopLoss(l), w.SI("flow_heat"), flow))
	lead := "At " + w.Rate(flow) + " the water that leaves at " + w.Temp(hot) + " would come back at "
	if back < unit.Celsius(roomTemperature) {
		lead, back = lead+"hardly more than ", unit.Celsius(roomTemperature)
	}
	lead += w.Temp(back)
	b := w.Building.Copy()
	b.Loop.Drop = unit.TempDifference(hot - back)
	least := loopLeast(w)
	wanted := solver.CirculationFlow(solver.LoopLoss(l), w.SI("flow_heat"), l.Drop)
	o := problems.Outcome{Building: b, Kept: w.Rate(flow) == w.Rate(wanted)}
	switch {
	case o.Kept:
		o.Says = []string{lead + ", and " + w.Temp(asked) + " is asked."}
	case flow < wanted:
		o.Says = []string{lead + "; " + w.Temp(asked) + " is asked."}
	default:
		o.Says = []string{lead + ", and " + w.Temp(asked) + " is enough: pump and pipes would be larger than the loop needs."}
	}
	if w.Read(measure.Temp, float64(back)) < w.Read(measure.Temp, float64(least)) {
		o.Says = append(o.Says, "Where people are at risk no less than "+w.Temp(least)+" is to come back: below it Legionella grows.")
	} else {
		o.Says = append(o.Says, "That keeps the "+w.Temp(least)+" that is asked where people are at risk.")
	}
	o.Marks = []problems.Mark{{Where: problems.AtLoop, Text: w.Temp(back), Kept: o.Kept}}
	return o
}

// roomTemperature in °C is as far as a loop cools; its loss is told for hot
// water, so a sum that ends colder ends here. Common practice, no source.
const roomTemperature = 20

// drawCirculation draws a loop whose return keeps above the guideline.
func drawCirculation(s *building.Sheet) {
	heaterTower(s)
	supply := s.Pick([]float64{150, 180, 240, 300, 360, 400, 500, 600}, []float64{45, 60, 75, 90, 110, 130, 150, 180})
	var returns []float64
	for _, v := range lists(s, []float64{80, 100, 120, 150, 180, 200, 240, 300, 350, 400}, []float64{25, 30, 40, 50, 60, 75, 90, 100, 120}) {
		if r := v / supply; r > 0.4 && r < 1.2 && math.Abs(r-1) > 0.13 {
			returns = append(returns, v)
		}
	}
	back, _ := pick(s, returns)
	supplyLoss := s.Pick([]float64{21, 24, 29}, []float64{20, 23, 28})
	returnLoss := s.Pick([]float64{15, 17, 19}, []float64{14, 16, 18})
	hot := s.Pick([]float64{130, 132, 135, 140}, []float64{55, 56, 58, 60})
	least := s.Pick([]float64{124}, []float64{51})
	var drops []float64
	for _, d := range lists(s, []float64{5, 6, 8, 10, 12, 15}, []float64{3, 4, 5, 6, 8}) {
		if hot-d >= least {
			drops = append(drops, d)
		}
	}
	drop, _ := pick(s, drops)
	per := unit.BtuHour / unit.Power(unit.Foot)
	if !s.US() {
		per = 1
	}
	b := s.Building
	b.Loop = &solver.Loop{
		Supply: s.Length(supply), Return: s.Length(back),
		SupplyLoss: supplyLoss * float64(per), ReturnLoss: returnLoss * float64(per),
		Drop: unit.TempDifference(degrees(s, hot) - degrees(s, hot-drop)),
	}
	b.Heater.Hot = degrees(s, hot)
	s.Set("supply_length", supply)
	s.Set("supply_loss", supplyLoss)
	s.Set("return_length", back)
	s.Set("return_loss", returnLoss)
	s.Set("hot", hot)
	s.Set("back", hot-drop)
}
