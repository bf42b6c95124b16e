package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var heatForVolumeSkill = problems.Skill{
	ID: "heat-for-volume", Title: "Heat to warm a tank",
	Chapter: 6, Order: 30, Year: 2, Kind: problems.Sum,
	Ask: "A storage tank holds {volume}. It is full of water at {cold} and is to be brought to {hot}. How much heat does the water take up?",
	Givens: []problems.Given{
		{Name: "volume", Says: "volume on the tank's plate", Measure: &measure.Tank, Plate: true},
		{Name: "cold", Says: "temperature at the start", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature wanted", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "rise", Says: "temperature rise", Measure: &measure.TempDrop,
			Formula: "hot - cold",
			Why:     "The water has {cold} already. Heat is paid for the degrees above that.",
			Slips: []problems.Slip{
				{
					ID: "temperature-for-rise", Formula: "hot",
					Did:  "You heated by {hot}, the whole temperature.",
					Why:  "That would be right for water at nought degrees. The tank starts at {cold}.",
					Next: "A rise has two temperatures in it. If only one stands on the line, the other is missing.",
				},
				{
					ID: "temperatures-added", Formula: "hot + cold",
					Did:  "You added the two temperatures.",
					Why:  "Warmer water at the start needs less heat, not more.",
					Next: "Ask what happens if the tank starts hotter: the answer must shrink.",
				},
			},
		},
		{
			Name: "heat", Says: "heat that the water takes up", Measure: &measure.Heat,
			Formula: "water_heat x volume x rise",
			Why:     "Each gallon or litre takes the same heat for each degree: {water_heat}.",
			Would:   putHeatIn,
			Slips: []problems.Slip{
				{
					ID: "water-heat-left-out", Formula: "volume x rise",
					Did:  "You multiplied volume and rise and left out {water_heat}.",
					Why:  "A gallon weighs 8.33 lb, and each pound takes 1 Btu per degree; a litre takes 4.19 kJ. Without it the number is no heat.",
					Next: "Gallons times degrees are not Btu, and litres times degrees are not kJ. Read the units along the line.",
				},
				{
					ID: "imperial-gallon", Formula: "1.2 x water_heat x volume x rise",
					Did:  "Your number is 1.2 times too large, as if the plate's gallon were the imperial one.",
					Why:  "An imperial gallon holds 10 lb of water (4.546 L), a US gallon 8.33 lb (3.785 L). Tank plates here are in US gallons or litres.",
					Next: "Look for US or imp. on the plate before the first line.",
				},
			},
		},
	},
	Holds: "One Btu warms one pound of water by one degree Fahrenheit; 4.19 kJ warm one litre by one degree Celsius. So heat is water times degrees. The heater must burn more than this, for some of it goes up the flue.",
	Cautions: []string{
		"Before an electric heater is filled or drained, its power is off and locked: dry elements burn out, and the terminals are live.",
		scald,
		neverRelief,
	},
	Sources: []problems.Source{
		{Says: "8.33 lb in a US gallon at about 60 °F, from a density of 62.366 lb/ft³. Density table attributed to the US Geological Survey", Confidence: solver.Confirmed},
		{Says: "4.18 to 4.19 kJ for a litre and a degree. IAPWS-IF97, region 1", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		heaterTower(s)
		h := s.Building.Heater
		volume := s.PickPlate([]float64{80, 119, 175, 250, 300, 400, 500, 750, 1000}, []float64{300, 450, 750, 1000, 1500, 2000, 3000})
		h.Volume = s.PlateVolume(volume)
		cold, hot := s.Pick(coldUS, coldSI), s.Pick(storeUS, storeSI)
		h.Cold, h.Hot = degrees(s, cold), degrees(s, hot)
		s.Set("volume", volume)
		s.Set("cold", cold)
		s.Set("hot", hot)
	},
	Solve: func(w problems.World) float64 {
		rise := unit.TempDifference(w.Temperature("hot") - w.Temperature("cold"))
		return solver.HeatForVolume(w.SI("water_heat"), w.Building.Heater.Volume, rise)
	},
}

func init() { add(&heatForVolumeSkill) }

// putHeatIn gives the full tank so much heat.
func putHeatIn(w problems.World, v float64) problems.Outcome {
	h := w.Building.Heater
	end := h.Cold + unit.Temperature(solver.RiseOfHeat(v, w.SI("water_heat"), h.Volume))
	lead := "With " + w.Text(measure.Heat, v) + " the tank would come to "
	o := problems.Outcome{Kept: w.Temp(end) == w.Temp(h.Hot)}
	switch {
	case o.Kept:
		o.Says = []string{lead + w.Temp(end) + ", as it should."}
	case end >= reliefOpens(w):
		o.Says = []string{"With " + w.Text(measure.Heat, v) + " the relief valve would open long before the end: it does so at " + w.Temp(reliefOpens(w)) + ", and " + w.Temp(h.Hot) + " is wanted."}
	case end < h.Hot:
		o.Says = []string{lead + w.Temp(end) + " and stay there; " + w.Temp(h.Hot) + " is wanted."}
	default:
		o.Says = []string{lead + w.Temp(end) + "; " + w.Temp(h.Hot) + " is wanted, and hotter water only scalds sooner."}
	}
	o.Marks = []problems.Mark{{Where: problems.AtHeater, Text: w.Temp(min(end, reliefOpens(w))), Kept: o.Kept}}
	return o
}

var recoverySkill = problems.Skill{
	ID: "recovery", Title: "Recovery of a heater",
	Chapter: 6, Order: 40, Year: 3, Kind: problems.Sum,
	Ask: "A storage heater has an input of {input} and an efficiency of {efficiency}. Its plate gives the recovery at a rise of {rating_rise}, but here water comes in at {cold} and is wanted at {hot}. How much does it recover in an hour?",
	Givens: []problems.Given{
		{Name: "input", Says: "input on the heater's plate", Measure: &measure.HeatRate},
		{Name: "efficiency", Says: "efficiency, as a decimal", Measure: &measure.Share},
		{Name: "cold", Says: "temperature of the cold supply", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature wanted", Measure: &measure.Temp},
		{Name: "rating_rise", Says: "rise at which the plate tells the recovery", Measure: &measure.TempDrop},
	},
	Rules: []problems.Rule{
		{
			Name: "rise", Says: "temperature rise here", Measure: &measure.TempDrop,
			Formula: "hot - cold",
			Why:     "The heater has to lift the water from the cold supply to the set point, in the coldest season too.",
			Slips: []problems.Slip{
				{
					ID: "temperature-for-rise", Formula: "hot",
					Did:  "You used {hot} as the rise.",
					Why:  "The water does not come in at nought degrees. It has {cold} already.",
					Next: "A rise has two temperatures in it.",
				},
				{
					ID: "rise-of-the-plate", Formula: "rating_rise",
					Did:  "You took the plate's rise of {rating_rise}.",
					Why:  "The plate is written for one rise. With another supply or set point the same burner gives another flow.",
					Next: "Read the rise on the plate, then work out your own and compare.",
				},
			},
		},
		{
			Name: "useful", Says: "heat that gets into the water", Measure: &measure.HeatRate,
			Formula: "input x efficiency",
			Why:     "Part of the input goes up the flue or out through the jacket. The water gets the rest.",
			Slips: []problems.Slip{
				{
					ID: "efficiency-left-out", Formula: "input",
					Did:  "You gave the water the whole input, {input}.",
					Why:  "Of it only the part {efficiency} arrives. The recovery on paper would be better than in the building.",
					Next: "Input is what is paid for, output is what the water gets. Output is smaller.",
				},
				{
					ID: "divided-by-efficiency", Formula: "input / efficiency",
					Did:  "You divided the input by the efficiency.",
					Why:  "That makes more heat than was put in. Dividing is for the way back: from the heat that is needed to the input.",
					Next: "From input to water: times. From water to input: divided.",
				},
			},
		},
		{
			Name: "recovered", Says: "recovery in an hour", Measure: &measure.HourFlow,
			Formula: "useful / (water_heat x rise)",
			Metric:  "useful x seconds_per_hour / (water_heat x rise)",
			Why:     "Each gallon or litre needs its heat for the whole rise. The heat of an hour divided by that is the water of an hour.",
			Would:   loadHeater,
			Slips: []problems.Slip{
				{
					ID: "water-heat-left-out", Formula: "useful / rise", Metric: "useful x seconds_per_hour / rise",
					Did:  "You divided by the rise alone and left out {water_heat}.",
					Why:  "The rise says how many degrees, and {water_heat} says what one degree costs for one gallon or litre. Both are needed.",
					Next: "A heater of 75,000 Btu/h gives some 70 gallons an hour; one of 22 kW some 300 litres. Compare the size.",
				},
				{
					ID: "hour-missed", Formula: "useful / (500 x rise)", Metric: "useful / (water_heat x rise)",
					Did:  "Your number is a flow per minute (US) or per second (SI), and the hour is asked.",
					Why:  "Dividing by 500 gives gallons a minute; kilowatts by {water_heat} give litres a second. Recovery is told by the hour.",
					Next: "Btu per hour by 8.33 stays per hour. Kilowatts are kilojoules a second, so an hour has 3,600 of them.",
				},
			},
		},
	},
	Holds: "A burner or element gives the same heat every hour. How much water that warms depends on the rise: half the rise, twice the water. So a recovery without its rise says nothing.",
	Cautions: []string{
		"A relief valve is chosen by the input, not by the output: it must pass all the heat that the burner can make.",
		neverRelief,
		"Gas and power to a heater are the work of those licensed for it. Lock out before a cover comes off.",
	},
	Sources: []problems.Source{
		{Says: "8.33 lb in a US gallon at about 60 °F, from a density of 62.366 lb/ft³. Density table attributed to the US Geological Survey", Confidence: solver.Confirmed},
		{Says: "Recovery told at a rise of 100 °F (56 K)", Confidence: solver.Practice},
	},
	Draw: drawRecovery,
	Solve: func(w problems.World) float64 {
		h := w.Building.Heater
		return float64(solver.Recovery(h.Input, h.Efficiency, w.SI("water_heat"), unit.TempDifference(h.Hot-h.Cold)))
	},
}

func init() { add(&recoverySkill) }

// loadHeater draws so much hot water from the heater, hour after hour.
func loadHeater(w problems.World, v float64) problems.Outcome {
	h, load := w.Building.Heater, unit.Flow(v)
	c := w.SI("water_heat")
	gives := solver.Recovery(h.Input, h.Efficiency, c, unit.TempDifference(h.Hot-h.Cold))
	end := h.Cold + unit.Temperature(solver.RiseAtFlow(h.Input, h.Efficiency, c, load))
	hourly := func(q unit.Flow) string { return w.Text(measure.HourFlow, float64(q)) }
	lead := "Loaded with " + hourly(load) + ", "
	o := problems.Outcome{Kept: hourly(load) == hourly(gives)}
	switch {
	case o.Kept:
		o.Says = []string{lead + "the heater would just keep up and give " + w.Temp(h.Hot) + "."}
	case load > gives:
		o.Says = []string{lead + "the heater would fall behind: once the store is used up, the water would come at " + w.Temp(end) + "; " + w.Temp(h.Hot) + " is wanted."}
	default:
		end = h.Hot
		o.Says = []string{lead + "the heater would rest for part of each hour: it can give " + hourly(gives-load) + " more at " + w.Temp(h.Hot) + "."}
	}
	o.Marks = []problems.Mark{{Where: problems.AtHeater, Text: w.Temp(end), Kept: o.Kept}}
	return o
}

// drawRecovery draws a heater whose rise differs from the plate's.
func drawRecovery(s *building.Sheet) {
	heaterTower(s)
	h := s.Building.Heater
	plate := s.Pick([]float64{100}, []float64{56})
	type aim struct{ hot, cold float64 }
	var fit []aim
	for _, hot := range stores(s) {
		for _, cold := range colds(s) {
			if math.Abs((hot-cold)/plate-1) > 0.04 {
				fit = append(fit, aim{hot, cold})
			}
		}
	}
	a, _ := pick(s, fit)
	input := s.Pick([]float64{75000, 100000, 150000, 199000, 250000, 300000, 399000, 500000}, []float64{22, 29, 36, 45, 58, 73, 88, 117, 147})
	h.Efficiency = s.Pick([]float64{0.8, 0.82, 0.85, 0.95}, []float64{0.8, 0.82, 0.85, 0.95})
	h.Cold, h.Hot = degrees(s, a.cold), degrees(s, a.hot)
	h.Input = unit.Power(input) * unit.BtuHour
	if !s.US() {
		h.Input = unit.Power(input) * 1000 * unit.Watt
	}
	s.Set("input", input)
	s.Set("efficiency", h.Efficiency)
	s.Set("cold", a.cold)
	s.Set("hot", a.hot)
	s.Set("rating_rise", plate)
}
