package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// riseRule is the rise of temperature of a heater.
var riseRule = problems.Rule{
	Name: "rise", Says: "temperature rise", Measure: &measure.TempDrop,
	Formula: "hot - cold",
	Why:     "The water has {cold} already. Heat is paid for the degrees above that.",
	Slips: []problems.Slip{
		{
			ID: "temperature-for-rise", Formula: "hot",
			Did:  "You used {hot} as the rise.",
			Why:  "The water does not come in at nought degrees. It has {cold} already.",
			Next: "A rise has two temperatures in it.",
		},
		{
			ID: "temperatures-added", Formula: "hot + cold",
			Did:  "You added the two temperatures.",
			Why:  "Warmer water at the start has less way to go, not more.",
			Next: "The rise must be smaller than {hot}.",
		},
	},
}

// usefulRule is what of a heater's input gets into the water.
var usefulRule = problems.Rule{
	Name: "useful", Says: "heat that gets into the water", Measure: &measure.HeatRate,
	Formula: "input x efficiency",
	Why:     "Part of the input goes up the flue or out through the jacket. The water gets the rest.",
	Slips: []problems.Slip{
		{
			ID: "efficiency-left-out", Formula: "input",
			Did:  "You gave the water the whole input, {input}.",
			Why:  "Of it only the part {efficiency} arrives.",
			Next: "Input is what is paid for, output is what the water gets. Output is smaller.",
		},
		{
			ID: "divided-by-efficiency", Formula: "input / efficiency",
			Did:  "You divided the input by the efficiency.",
			Why:  "That makes more heat than was put in.",
			Next: "From input to water: times. From water to input: divided.",
		},
	},
}

var tanklessFlowSkill = problems.Skill{
	ID: "tankless-flow", Title: "Flow of a heater without a tank",
	Chapter: 6, Order: 60, Year: 3, Kind: problems.Sum,
	Ask: "A heater without a tank has an input of {input} and an efficiency of {efficiency}. Water comes in at {cold} and is wanted at {hot}. What flow can it heat?",
	Givens: []problems.Given{
		{Name: "input", Says: "input on the heater's plate", Measure: &measure.HeatRate},
		{Name: "efficiency", Says: "efficiency, as a decimal", Measure: &measure.Share},
		{Name: "cold", Says: "temperature of the cold supply", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature wanted", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		riseRule, usefulRule,
		{
			Name: "flow", Says: "flow that it can heat", Measure: &measure.FlowRate,
			Formula: "useful / (flow_heat x rise)",
			Why:     "There is no store: what runs through must be heated in that moment.",
			Would:   runThrough,
			Slips: []problems.Slip{
				{
					ID: "by-the-hour", Only: problems.OnlyUS, Formula: "useful / (8.33 x rise)",
					Did:  "You worked out the water of an hour.",
					Why:  "Divided by 8.33 for each degree it is gallons an hour. A tap is told in gallons a minute, 60 times less.",
					Next: "500 is 8.33 times 60: it turns Btu an hour into gallons a minute.",
				},
				{
					ID: "constant-left-out", Formula: "useful / rise",
					Did:  "You divided by the rise alone.",
					Why:  "The rise says how many degrees. {flow_heat} says what one degree costs for a flow of one. Both are needed.",
					Next: "A heater for one flat gives a few gallons a minute, or a fifth of a litre a second. Compare the size.",
				},
			},
		},
	},
	Holds: "A heater without a tank gives heat at one rate. The colder the supply, the greater the rise and the less the flow: size it for the coldest month. More flow than that comes out cooler.",
	Cautions: []string{
		scald,
		"Gas and power to a heater are the work of those licensed for it. Lock out before a cover comes off.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "500 from 8.33 lb in a US gallon times 60 minutes; a manufacturer's design manual uses it", Confidence: solver.Confirmed},
	},
	Draw: drawTankless,
	Solve: func(w problems.World) float64 {
		h := w.Building.Heater
		return float64(solver.Recovery(h.Input, h.Efficiency, w.SI("flow_heat"), unit.TempDifference(h.Hot-h.Cold)))
	},
}

func init() { add(&tanklessFlowSkill) }

// runThrough draws so much through the heater.
func runThrough(w problems.World, v float64) problems.Outcome {
	h, flow, c := w.Building.Heater, unit.Flow(v), w.SI("flow_heat")
	gives := solver.Recovery(h.Input, h.Efficiency, c, unit.TempDifference(h.Hot-h.Cold))
	end := h.Cold + unit.Temperature(solver.RiseAtFlow(h.Input, h.Efficiency, c, flow))
	o := problems.Outcome{Kept: w.Rate(flow) == w.Rate(gives)}
	lead := "With " + w.Rate(flow) + " drawn through it, the heater would "
	switch {
	case o.Kept:
		o.Says = []string{lead + "just give " + w.Temp(h.Hot) + "."}
	case flow > gives:
		o.Says = []string{lead + "bring the water to " + w.Temp(end) + "; " + w.Temp(h.Hot) + " is wanted."}
	default:
		end = h.Hot
		o.Says = []string{lead + "turn itself down: it can heat " + w.Rate(gives-flow) + " more to " + w.Temp(h.Hot) + ", and a larger one would be bought for nothing."}
	}
	o.Marks = []problems.Mark{{Where: problems.AtHeater, Text: w.Temp(end), Kept: o.Kept}}
	return o
}

// plainHeater draws a heater's input, efficiency and temperatures.
func plainHeater(s *building.Sheet, input float64, efficiencies, hots []float64) {
	heaterTower(s)
	h := s.Building.Heater
	h.Efficiency = s.Pick(efficiencies, efficiencies)
	cold, _ := pick(s, colds(s))
	hot, _ := pick(s, hots)
	h.Cold, h.Hot = degrees(s, cold), degrees(s, hot)
	h.Input = unit.Power(input) * unit.BtuHour
	if !s.US() {
		h.Input = unit.Power(input) * 1000 * unit.Watt
	}
	s.Set("input", input)
	s.Set("efficiency", h.Efficiency)
	s.Set("cold", cold)
	s.Set("hot", hot)
}

func drawTankless(s *building.Sheet) {
	input := s.Pick([]float64{120000, 150000, 180000, 199000, 300000, 399000}, []float64{24, 29, 36, 45, 58, 88})
	plainHeater(s, input, []float64{0.8, 0.82, 0.95}, lists(s, []float64{120, 125, 130, 140}, []float64{49, 52, 55, 60}))
}

var heatUpTimeSkill = problems.Skill{
	ID: "heat-up-time", Title: "How long to heat a tank",
	Chapter: 6, Order: 70, Year: 3, Kind: problems.Sum,
	Ask: "A storage heater of {volume} has an input of {input} and an efficiency of {efficiency}. After a repair it is full of water at {cold}. Nothing is drawn. How many hours until it is at {hot}?",
	Givens: []problems.Given{
		{Name: "volume", Says: "volume on the tank's plate", Measure: &measure.Tank, Plate: true},
		{Name: "input", Says: "input on the heater's plate", Measure: &measure.HeatRate},
		{Name: "efficiency", Says: "efficiency, as a decimal", Measure: &measure.Share},
		{Name: "cold", Says: "temperature at the start", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature wanted", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		riseRule,
		{
			Name: "heat", Says: "heat that the water takes up", Measure: &measure.Heat,
			Formula: "water_heat x volume x rise",
			Why:     "Each gallon or litre takes its heat for each degree.",
			Slips: []problems.Slip{{
				ID: "water-heat-left-out", Formula: "volume x rise",
				Did:  "You left {water_heat} out.",
				Why:  "Volume times degrees is no heat yet. It says how much water and how far; {water_heat} says what that costs.",
				Next: "The unit of your line must come out as Btu or kJ.",
			}},
		},
		usefulRule,
		{
			Name: "heating", Says: "time to heat it", Measure: &measure.TimeHours,
			Formula: "heat / useful", Metric: "heat / (useful x seconds_per_hour)",
			Would: openAfter,
			Why:   "Heat needed over heat brought in each hour gives hours. A kilowatt is a kilojoule each second, and an hour has 3,600 of them.",
			Slips: []problems.Slip{
				{
					ID: "minutes-as-hours", Formula: "60 x heat / useful", Metric: "heat / (useful x 60)",
					Did:  "Your number is in minutes, and hours are asked.",
					Why:  "The line itself is right up to a factor of 60.",
					Next: "A tank on its own burner is hot in an hour or a few, not in a hundred.",
				},
				{
					ID: "upside-down", Formula: "useful / heat", Metric: "useful x seconds_per_hour / heat",
					Did:  "You divided the heater by the heat.",
					Why:  "A larger tank must take longer. In your line it takes less.",
					Next: "What is needed goes on top, what comes in each hour below.",
				},
			},
		},
	},
	Holds: "Time is the heat the water needs over the heat that gets into it in an hour. Only input times efficiency gets into it. Draw hot water meanwhile, and it takes longer.",
	Cautions: []string{
		"An electric heater is switched off and locked until the tank is full: a dry element burns out.",
		scald, neverRelief, forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "8.33 lb in a US gallon at about 60 °F, from a density of 62.366 lb/ft³. Density table attributed to the US Geological Survey", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		i := s.Int(0, 3)
		input := s.Pick(
			[][]float64{{75000, 100000}, {150000, 199000}, {199000, 250000, 300000}, {399000, 500000}}[i],
			[][]float64{{22, 29}, {36, 45, 58}, {58, 73, 88}, {117, 147}}[i])
		plainHeater(s, input, []float64{0.8, 0.82, 0.85}, stores(s))
		v := s.PickPlate(
			[][]float64{{80, 100, 119}, {175, 250}, {300, 400, 500}, {750, 1000}}[i],
			[][]float64{{300, 450}, {750, 1000}, {1200, 1500, 2000}, {3000, 4000}}[i])
		s.Building.Heater.Volume = s.PlateVolume(v)
		s.Set("volume", v)
	},
	Solve: func(w problems.World) float64 {
		h := w.Building.Heater
		heat := solver.HeatForVolume(w.SI("water_heat"), h.Volume, unit.TempDifference(h.Hot-h.Cold))
		return solver.HeatingTime(heat, h.Input, h.Efficiency)
	},
}

func init() { add(&heatUpTimeSkill) }

// openAfter opens the taps so many seconds after the heater was lit.
func openAfter(w problems.World, v float64) problems.Outcome {
	h := w.Building.Heater
	takes := solver.HeatingTime(solver.HeatForVolume(w.SI("water_heat"), h.Volume, unit.TempDifference(h.Hot-h.Cold)), h.Input, h.Efficiency)
	end := h.Cold + unit.Temperature(v/takes)*(h.Hot-h.Cold)
	hours := func(s float64) string { return w.Text(measure.TimeHours, s) }
	o := problems.Outcome{Kept: hours(v) == hours(takes)}
	lead := "After " + hours(v) + " the tank would "
	switch {
	case o.Kept:
		o.Says = []string{lead + "just be at " + w.Temp(h.Hot) + "."}
	case v < takes:
		o.Says = []string{lead + "be at " + w.Temp(end) + "; " + w.Temp(h.Hot) + " is wanted."}
	default:
		end = h.Hot
		o.Says = []string{lead + "have stood at " + w.Temp(h.Hot) + " for " + hours(v-takes) + " already: it is hot after " + hours(takes) + "."}
	}
	o.Marks = []problems.Mark{{Where: problems.AtHeater, Text: w.Temp(end), Kept: o.Kept}}
	return o
}
