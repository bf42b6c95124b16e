package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var convertVolumeSkill = problems.Skill{
	ID: "convert-volume", Title: "Volume: imperial gallons, US gallons, litres",
	Chapter: 1, Order: 30, Year: 1, Kind: problems.Sum,
	Ask: "The plate on an old tank says {plate}: imperial gallons. How many US gallons is that, and how many litres?",
	Givens: []problems.Given{
		{Name: "plate", Says: "volume on the tank's plate, in imperial gallons", Measure: &measure.Of{Name: "imp gal", US: "imp gal", SI: "imp gal"}},
	},
	Rules: []problems.Rule{
		{
			Name: "in_us_gallons", Says: "the volume in US gallons", Measure: &measure.Of{Name: "US gal", US: "US gal", SI: "US gal"},
			Formula: "plate x us_per_imperial",
			Why:     "An imperial gallon is a fifth larger than a US one, so the same water is more US gallons.",
			Slips: []problems.Slip{
				{
					ID: "factor-upside-down", Formula: "plate / us_per_imperial",
					Did:  "You divided {plate} by {us_per_imperial}.",
					Why:  "The US gallon is the smaller one, so it takes more of them to hold the same water.",
					Next: "Small cup, many cups. Say which gallon is smaller: its number must be the larger.",
				},
				{
					ID: "same-gallon", Formula: "plate",
					Did:  "You took the {plate} for US gallons as they stand.",
					Why:  "The two gallons differ by a fifth. Pump, heater and expansion tank would each come out a sixth too small.",
					Next: "Where a plate says only gallons, look for its country and its year before you use the number.",
				},
			},
		},
		{
			Name: "in_litres", Says: "the volume in litres", Measure: &measure.Of{Name: "L", US: "L", SI: "L"},
			Formula: "in_us_gallons x litre_per_gallon",
			Why:     "A US gallon holds 3.785 L, so there are nearly four times as many litres as US gallons.",
			Slips: []problems.Slip{
				{
					ID: "us-factor-on-imperial", Formula: "plate x litre_per_gallon",
					Did:  "You multiplied the imperial gallons, {plate}, by {litre_per_gallon}, which is for US gallons.",
					Why:  "Each gallon has its own litres: 3.785 for the US one, 4.546 for the imperial one. The factor must fit the gallon it stands beside.",
					Next: "Write the unit beside the number before you pick the factor. Imperial gallons come to about four and a half litres each.",
				},
				{
					ID: "imperial-factor-on-us", Formula: "in_us_gallons x 4.546",
					Did:  "You multiplied the US gallons, {in_us_gallons}, by 4.546, which is for imperial gallons.",
					Why:  "The step to US gallons has already counted that the imperial gallon is larger. Counted twice, the tank grows by a fifth.",
					Next: "US gallons come to a little under four litres each. More than four: the wrong gallon.",
				},
				{
					ID: "divided", Formula: "in_us_gallons / litre_per_gallon",
					Did:  "You divided {in_us_gallons} by {litre_per_gallon}.",
					Why:  "A litre is smaller than a gallon, so the tank holds more litres than gallons.",
					Next: "Picture the milk carton: nearly four of a litre fill one US gallon.",
				},
			},
		},
	},
	Holds: "Two gallons are about: the US one of 3.785 L and the imperial one of 4.546 L, 1.2 US gallons. On the job a bare gal means the US gallon unless the plate or the drawing is old, Canadian or British.",
	Sources: []problems.Source{
		{Says: "US gallon: 3.785412 L; imperial gallon: 4.54609 L. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		plate, _ := pick(s, []float64{30, 40, 50, 60, 70, 80, 100, 120, 150, 200, 225, 250, 300, 350, 400, 500, 600, 750, 800, 1000, 1200, 1500, 2000})
		s.Set("plate", plate)
	},
	Solve: func(w problems.World) float64 {
		return w.SI("plate") * w.SI("us_per_imperial") * w.SI("litre_per_gallon")
	},
}

func init() { add(&convertVolumeSkill) }

var convertFlowSkill = problems.Skill{
	ID: "convert-flow", Title: "Flow: gpm, litres a minute, litres a second",
	Chapter: 1, Order: 40, Year: 1, Kind: problems.Sum,
	Ask: "A pump's plate says {flow}, in US gallons a minute. What is that in litres a minute, and then in litres a second?",
	Givens: []problems.Given{
		{Name: "flow", Says: "flow on the pump's plate, US gallons a minute", Measure: &measure.Of{Name: "gpm", US: "gpm", SI: "gpm"}},
	},
	Rules: []problems.Rule{
		{
			Name: "per_minute", Says: "the flow in litres a minute", Measure: &measure.Of{Name: "L/min", US: "L/min", SI: "L/min"},
			Formula: "flow x litre_per_gallon",
			Why:     "The minute stays; only the gallons turn into litres, 3.785 for each.",
			Slips: []problems.Slip{
				{
					ID: "factor-upside-down", Formula: "flow / litre_per_gallon",
					Did:  "You divided {flow} by {litre_per_gallon}.",
					Why:  "A litre is smaller than a gallon, so more litres than gallons come out each minute.",
					Next: "Say which number must be larger before you use the factor: the litres.",
				},
				{
					ID: "imperial-gallon", Formula: "flow x 4.546",
					Did:  "You multiplied {flow} by 4.546, the litres in an imperial gallon.",
					Why:  "This pump is rated in US gallons, of 3.785 L. The imperial gallon makes the flow a fifth too large.",
					Next: "US gallons come to a little under four litres each.",
				},
			},
		},
		{
			Name: "per_second", Says: "the flow in litres a second", Measure: &measure.Of{Name: "L/s", US: "L/s", SI: "L/s"},
			Formula: "per_minute / seconds_per_minute",
			Why:     "What flows in a minute is shared out over its 60 seconds.",
			Slips: []problems.Slip{
				{
					ID: "times-sixty", Formula: "per_minute x seconds_per_minute",
					Did:  "You multiplied {per_minute} by 60.",
					Why:  "That is what flows in an hour. In a second less flows than in a minute, so divide.",
					Next: "Shorter time, less water. Most of a building runs on single figures of L/s.",
				},
				{
					ID: "sixty-missed", Formula: "per_minute",
					Did:  "You gave {per_minute}, the litres of a minute, as the litres of a second.",
					Why:  "A minute has 60 seconds. Read as L/s, this pump would be sixty times as large as it is.",
					Next: "A garden hose runs at about 0.3 L/s. Set your answer beside it.",
				},
			},
		},
	},
	Holds: "A flow is a volume in a time, and each of the two is converted by its own number: gallons into litres by 3.785, minutes into seconds by 60. Together one gpm is 0.0631 L/s, and one L/s is nearly 16 gpm.",
	Sources: []problems.Source{
		{Says: "US gallon: 3.785412 L. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "gpm: 0.0630902 L/s. Worked out from the gallon and the minute", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		flow, _ := pick(s, []float64{12, 15, 18, 20, 25, 30, 40, 45, 50, 60, 75, 80, 90, 100, 120, 125, 140, 150, 160, 180, 200, 220, 250, 300, 350, 400})
		s.Set("flow", flow)
	},
	Solve: func(w problems.World) float64 {
		return w.SI("flow") * w.SI("litre_per_gallon")
	},
}

func init() { add(&convertFlowSkill) }
