package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

// scaldByNumber is shown where a converted temperature may end on a valve.
const scaldByNumber = "Water at 140 °F (60 °C) burns deeply in a few seconds. After a valve is set from a converted number, prove it with a thermometer at the outlet."

var convertTemperatureSkill = problems.Skill{
	ID: "convert-temperature", Title: "Temperature: °F and °C",
	Chapter: 1, Order: 50, Year: 1, Kind: problems.Sum,
	Ask: "The thermometer at {place} reads {reading}. The sheet of the valve is in {other}. What is the reading there?",
	Givens: []problems.Given{
		{Name: "reading", Says: "reading of the thermometer", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "above", Says: "Fahrenheit degrees above freezing",
			Measure: &measure.Of{Name: "temperature difference", US: "°F", SI: "°F", Round: 1, RoundM: 1},
			Formula: "reading - 32 °F", Metric: "(reading - 0 °C) x f_per_c",
			Why: "The two scales agree on nothing but where water freezes and boils. So count from freezing: 32 on the one, 0 on the other.",
			Slips: []problems.Slip{
				{
					ID: "thirty-two-forgotten", Only: problems.OnlyUS, Formula: "reading",
					Did:  "You went on with {reading} and did not take off the 32.",
					Why:  "Fahrenheit puts freezing at 32 and Celsius puts it at 0. Without the 32 the reading is counted from the wrong mark.",
					Next: "Try it on freezing water: 32 °F must come out as 0 °C.",
				},
				{
					ID: "thirty-two-added", Only: problems.OnlyUS, Formula: "reading + 32",
					Did:  "You added 32 to {reading}.",
					Why:  "Fahrenheit counts freezing water as 32 already. To count from freezing that comes off; it goes on when you go the other way.",
					Next: "Try it on freezing water: 32 °F must come out as 0 °C.",
				},
				{
					ID: "divided-to-fahrenheit", Only: problems.OnlySI, Formula: "reading / f_per_c",
					Did:  "You divided {reading} by 1.8.",
					Why:  "From freezing to boiling are 180 Fahrenheit degrees and 100 Celsius degrees. The Fahrenheit degree is the smaller one, so there are more of them.",
					Next: "Boiling water must come out as 212 °F. Try your line on 100 °C.",
				},
			},
		},
		{
			Name: "converted", Says: "the reading in {other}",
			Measure: &measure.Of{Name: "temperature", US: "°C", SI: "°F", Round: 1, RoundM: 1, Point: true},
			Formula: "0 °C + above / f_per_c", Metric: "32 °F + above",
			Why: "Each Celsius degree is 1.8 Fahrenheit degrees. Once counted from freezing, put the result on the other scale, which has freezing at its own number.",
			Slips: []problems.Slip{
				{
					ID: "multiplied-to-celsius", Only: problems.OnlyUS, Formula: "above x f_per_c",
					Did:  "You multiplied {above} by 1.8.",
					Why:  "A Celsius degree is the larger one, so the same warmth is fewer of them.",
					Next: "Boiling water must come out as 100 °C. Try your line on 212 °F.",
				},
				{
					ID: "thirty-two-last", Formula: "reading / f_per_c - 32", Metric: "(reading + 32) x f_per_c",
					Did:  "You did the 32 and the 1.8 in the wrong order and got {got}.",
					Why:  "The 32 is in Fahrenheit degrees. It comes off before they are turned into Celsius, and goes on after they have been turned back.",
					Next: "The 32 stays on the Fahrenheit side of the sum: first on the way to °C, last on the way to °F.",
				},
				{
					ID: "thirty-two-not-added", Only: problems.OnlySI, Formula: "above",
					Did:  "You stopped at {above} above freezing.",
					Why:  "Fahrenheit puts freezing water at 32, not at 0. Those 32 degrees are still missing.",
					Next: "Try it on freezing water: 0 °C must come out as 32 °F.",
				},
				{
					ID: "thirty-two-taken-off", Only: problems.OnlySI, Formula: "above - 32",
					Did:  "You took 32 off {above}.",
					Why:  "Freezing water stands at 32 on the Fahrenheit scale, so the degrees above freezing stand on top of it.",
					Next: "Try it on freezing water: 0 °C must come out as 32 °F.",
				},
			},
		},
	},
	Holds:    "Water freezes at 32 °F and 0 °C and boils at 212 °F and 100 °C. That is 180 degrees on one scale for 100 on the other: 1.8 for 1. A reading is a place on a scale, so it needs both the 32 and the 1.8.",
	Cautions: []string{scaldByNumber},
	Sources: []problems.Source{
		{Says: "°C = (°F - 32)/1.8 exactly. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		s.Name("other", words(s, "°C", "°F"))
		if s.Chance(0.25) {
			s.Name("place", "the cold main")
			s.Set("reading", s.Pick([]float64{45, 48, 50, 52, 55, 60, 65}, []float64{5, 7, 8, 10, 12, 15, 18}))
			return
		}
		s.Name("place", "the hot water main")
		s.Set("reading", s.Pick([]float64{105, 110, 115, 118, 120, 124, 125, 128, 130, 135, 140, 145, 150, 160}, []float64{40, 42, 43, 45, 48, 49, 51, 52, 54, 55, 58, 60, 62, 65, 70}))
	},
	Solve: func(w problems.World) float64 { return w.SI("reading") },
}

func init() { add(&convertTemperatureSkill) }

var convertTemperatureDifferenceSkill = problems.Skill{
	ID: "convert-temperature-difference", Title: "Temperature rise: a difference has no 32",
	Chapter: 1, Order: 60, Year: 1, Kind: problems.Sum,
	Ask: "A heater takes water in at {cold} and sends it out at {hot}. How large is the rise in {other} degrees?",
	Givens: []problems.Given{
		{Name: "cold", Says: "water entering the heater", Measure: &measure.Temp},
		{Name: "hot", Says: "water leaving the heater", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "rise", Says: "the rise, in degrees of the thermometers", Measure: &measure.TempDrop,
			Formula: "hot - cold",
			Why:     "The heater has only to make up what the water was short of.",
			Slips: []problems.Slip{
				{
					ID: "temperature-for-rise", Formula: "hot",
					Did:  "You took {hot}, the temperature that leaves, for the rise.",
					Why:  "The water came in at {cold} already. The heater adds only what is between the two.",
					Next: "A rise needs two thermometers. Look for the second one.",
				},
				{
					ID: "added", Formula: "hot + cold",
					Did:  "You added {hot} and {cold}.",
					Why:  "A rise is how far apart two temperatures are. Adding them gives no temperature that is anywhere in the pipe.",
					Next: "If the water went through unheated, the rise would be nothing. Only a subtraction says so.",
				},
			},
		},
		{
			Name: "converted", Says: "the rise in {other} degrees",
			Measure: &measure.Of{Name: "temperature difference", US: "°C", SI: "°F", Round: 1, RoundM: 1},
			Formula: "rise / f_per_c", Metric: "rise x f_per_c",
			Why: "Both thermometers have freezing at the same mark, so it drops out of the difference. Only the size of the degree is left: 1.8 Fahrenheit degrees for one Celsius degree.",
			Slips: []problems.Slip{
				{
					ID: "thirty-two-on-difference", Formula: "(rise - 32) / f_per_c", Metric: "rise x f_per_c + 32",
					Did:  "You brought the 32 into it and got {got}.",
					Why:  "The 32 is where the scale puts freezing. It stands in both temperatures and went out when one was taken from the other.",
					Next: "No rise must stay no rise: put 0 into your line and see whether 0 comes out.",
				},
				{
					ID: "wrong-way", Formula: "rise x f_per_c", Metric: "rise / f_per_c",
					Did:  "You used the 1.8 the wrong way round on {rise}.",
					Why:  "A Celsius degree is the larger one. The same rise is fewer Celsius degrees and more Fahrenheit degrees.",
					Next: "Lean on one pair: a rise of 90 °F is a rise of 50 °C.",
				},
			},
		},
	},
	Holds:    "A reading is a place on a scale; a rise is a length on it. The place where the scale begins does not change a length, so a rise takes the 1.8 and never the 32. A rise of one kelvin is a rise of one Celsius degree.",
	Cautions: []string{scaldByNumber},
	Sources: []problems.Source{
		{Says: "One Celsius degree is 1.8 Fahrenheit degrees exactly. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		s.Name("other", words(s, "Celsius", "Fahrenheit"))
		s.Set("cold", s.Pick([]float64{40, 42, 45, 48, 50, 55, 60}, []float64{4, 5, 7, 8, 10, 12, 15}))
		s.Set("hot", s.Pick([]float64{120, 125, 130, 135, 140, 145, 150}, []float64{49, 52, 55, 58, 60, 62, 65}))
	},
	Solve: func(w problems.World) float64 { return w.SI("hot") - w.SI("cold") },
}

func init() { add(&convertTemperatureDifferenceSkill) }
