package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var convertHeatRateSkill = problems.Skill{
	ID: "convert-heat-rate", Title: "Heat input: Btu/h, MBH and kW",
	Chapter: 1, Order: 70, Year: 1, Kind: problems.Sum,
	Ask: "The rating plate of a gas water heater says {plate}. What is that in MBH, and then in kilowatts?",
	Givens: []problems.Given{
		{Name: "plate", Says: "input on the heater's rating plate", Measure: &measure.Of{Name: "Btu/h", US: "Btu/h", SI: "Btu/h"}},
	},
	Rules: []problems.Rule{
		{
			Name: "in_thousands", Says: "the input in MBH", Measure: &measure.Of{Name: "MBH", US: "MBH", SI: "MBH"},
			Formula: "plate / btu_per_mbh",
			Why:     "MBH is a thousand Btu an hour. The M is the Roman thousand, as on old plates.",
			Slips: []problems.Slip{
				{
					ID: "m-as-million", Formula: "plate / 1000000",
					Did:  "You took the M of MBH for a million.",
					Why:  "Here the M is the Roman thousand. In units of the SI the same letter means a million, and that is where the trouble starts.",
					Next: "A house heater is about 40 MBH, plant for a tower some hundreds. Less than one MBH would not warm a kettle in time.",
				},
				{
					ID: "multiplied-by-thousand", Formula: "plate x btu_per_mbh",
					Did:  "You multiplied {plate} by 1,000.",
					Why:  "The MBH is the large unit, so there are fewer of them: the number must shrink.",
					Next: "MBH was made to get rid of three noughts. Strike them off.",
				},
			},
		},
		{
			Name: "in_kilowatts", Says: "the input in kilowatts", Measure: &measure.Of{Name: "kW", US: "kW", SI: "kW"},
			Formula: "in_thousands / mbh_per_kw",
			Why:     "One kilowatt is 3,412 Btu an hour, so 3.412 MBH.",
			Slips: []problems.Slip{
				{
					ID: "factor-upside-down", Formula: "in_thousands x mbh_per_kw",
					Did:  "You multiplied {in_thousands} by {mbh_per_kw}.",
					Why:  "The kilowatt is more than three MBH, so the same heat is fewer kilowatts.",
					Next: "The kW are about three tenths of the MBH: 100 MBH is about 29 kW.",
				},
				{
					ID: "thousand-twice", Formula: "in_thousands / 3412",
					Did:  "You divided {in_thousands} by 3,412.",
					Why:  "The 3,412 is for Btu/h. The MBH have their thousand taken off already, so the factor for them is 3.412.",
					Next: "Write the unit beside the number before you pick the factor: 3,412 goes with Btu/h, 3.412 with MBH.",
				},
			},
		},
	},
	Holds: "Btu/h, MBH and kW count the same thing, heat in a time. 1,000 Btu/h is one MBH, and 3.412 MBH is one kW. Input is what the burner takes in; what reaches the water is less, by the efficiency.",
	Cautions: []string{
		"Gas piping and vent are sized from the input on the plate. Both are work for a licensed fitter under the local code.",
	},
	Sources: []problems.Source{
		{Says: "Btu (IT): 1,055.056 J. NIST SP 811 (2008), App. B.9; kilowatt: 3,412.142 Btu/h, worked out from it", Confidence: solver.Confirmed},
		{Says: "Inputs of heaters: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		plate, _ := pick(s, []float64{75000, 100000, 120000, 150000, 199000, 250000, 300000, 360000, 399000, 500000, 600000, 750000, 800000, 1000000, 1200000, 1500000, 2000000})
		s.Set("plate", plate)
	},
	Solve: func(w problems.World) float64 { return w.SI("plate") / w.SI("mbh_per_kw") },
}

func init() { add(&convertHeatRateSkill) }

var convertPowerSkill = problems.Skill{
	ID: "convert-power", Title: "Motor power: hp and kW",
	Chapter: 1, Order: 80, Year: 1, Kind: problems.Sum,
	Ask: "A booster set has {pumps} pumps with a motor of {motor} each. Its sheet asks for the motors' power together, in {other}. What is it?",
	Givens: []problems.Given{
		{Name: "pumps", Says: "number of pumps", Measure: &measure.Count},
		{Name: "motor", Says: "power on each motor's plate", Measure: &measure.Of{Name: "power", US: "hp", SI: "kW"}},
	},
	Rules: []problems.Rule{
		{
			Name: "together", Says: "power of all the motors", Measure: &measure.Of{Name: "power", US: "hp", SI: "kW"},
			Formula: "pumps x motor",
			Why:     "Each motor has its own plate, and the plates add up.",
			Slips: []problems.Slip{{
				ID: "one-motor", Formula: "motor",
				Did:  "You went on with {motor}, the plate of one motor.",
				Why:  "The question is about the set: {pumps} motors, each with that power.",
				Next: "Read what the answer is for, one pump or the set, before the first line.",
			}},
		},
		{
			Name: "converted", Says: "the same in {other}", Measure: &measure.Of{Name: "power", US: "kW", SI: "hp"},
			Formula: "together x power_factor",
			Why:     "It is the same power in units of another size: one horsepower is 0.746 kW.",
			Slips: []problems.Slip{
				{
					ID: "factor-upside-down", Formula: "together / power_factor",
					Did:  "You divided {together} by {power_factor}.",
					Why:  "The horsepower is the smaller unit, about three quarters of a kilowatt. So there are more horsepower than kilowatts.",
					Next: "Four horsepower are about three kilowatts. Say which number must be larger before you use the factor.",
				},
				{
					ID: "left-as-it-stood", Formula: "together",
					Did:  "You gave {got}: the number of the plates with another unit behind it.",
					Why:  "A horsepower is only three quarters of a kilowatt. Read one for the other and breaker and cable come out a third too large or a quarter too small.",
					Next: "A new unit needs a new number. If it did not change, the line is missing.",
				},
			},
		},
	},
	Holds: "Horsepower and kilowatt both count work in a time. One horsepower is 0.746 kW, one kilowatt 1.341 hp. A motor's plate tells what its shaft can give; what it draws from the line is more, by the motor's efficiency.",
	Cautions: []string{
		"Lock out the power before a motor is touched. Its wiring is for an electrician.",
	},
	Sources: []problems.Source{
		{Says: "horsepower (550 ft·lbf/s): 745.6999 W. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Motor sizes: standard ratings, from memory", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		s.Name("other", words(s, "kilowatts", "horsepower"))
		s.Set("pumps", float64(s.Int(2, 4)))
		s.Set("motor", s.Pick([]float64{1.5, 2, 3, 5, 7.5, 10, 15, 20, 25}, []float64{1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15}))
	},
	Solve: func(w problems.World) float64 {
		return w.SI("pumps") * w.SI("motor") * w.SI("power_factor")
	},
}

func init() { add(&convertPowerSkill) }
