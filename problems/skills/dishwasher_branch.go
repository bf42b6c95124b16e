package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var dishwasherBranchSkill = problems.Skill{
	ID: "dishwasher-branch", Title: "A booster heater for the dishwasher",
	Chapter: 6, Order: 120, Year: 3, Kind: problems.Sum,
	Ask: "A dishwasher's final rinse takes {rinse} at {rinse_hot}, by its plate. The hot water main brings {supply} to the machine; the cold water of the building is {cold}. An electric booster heater stands beside the machine. It is made in 3, 6, 9, 12, 18, 24, 36, 45 and 54 kW. Which is the smallest that will do?",
	Givens: []problems.Given{
		{Name: "rinse", Says: "water of the final rinse in an hour", Measure: &measure.HourFlow},
		{Name: "rinse_hot", Says: "temperature of the final rinse", Measure: &measure.Temp},
		{Name: "supply", Says: "temperature of the hot water at the machine", Measure: &measure.Temp},
		{Name: "cold", Says: "temperature of the cold water", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "rise", Says: "rise in the booster heater", Measure: &measure.TempDrop,
			Formula: "rinse_hot - supply",
			Why:     "The building's heater has done the first part. The booster lifts the water the rest of the way.",
			Slips: []problems.Slip{
				{
					ID: "rise-from-the-cold", Formula: "rinse_hot - cold",
					Did:  "You began at the cold water's {cold}.",
					Why:  "The booster is fed from the hot main, at {supply}. From the cold it would do the building heater's work too and come out two or three times too large.",
					Next: "Look at the pipe that enters the heater: what temperature is in it?",
				},
				{
					ID: "temperature-for-rise", Formula: "rinse_hot",
					Did:  "You took the rinse temperature itself for the rise.",
					Why:  "The water is not at nought degrees when it comes in. Only the way from {supply} to {rinse_hot} costs heat here.",
					Next: "A rise has two temperatures in it. If one stands alone, the other is missing.",
				},
			},
		},
		{
			Name: "heat", Says: "heat for the rinse in an hour", Measure: &measure.HourHeat,
			Formula: "rinse x water_heat x rise",
			Why:     "So much heat for each gallon or litre and degree, times the water, times the degrees.",
			Slips: []problems.Slip{{
				ID: "water-heat-left-out", Formula: "rinse x rise",
				Did:  "You multiplied the water by the degrees and stopped there.",
				Why:  "A gallon of water weighs more than a pound and a litre holds more than a kilojoule for each degree: {water_heat}.",
				Next: "Three things make heat: how much water, how many degrees, and the figure for water between them.",
			}},
		},
		{
			Name: "power", Says: "power of the booster heater", Measure: &measure.MotorInput,
			Formula: "heat / btu_per_kwh", Metric: "heat / seconds_per_hour",
			Why: "Electric heaters are sold by the kilowatt. What goes into the water over an hour is shared over that hour.",
			Slips: []problems.Slip{
				{
					ID: "thousand-for-kilowatt", Only: problems.OnlyUS, Formula: "heat / 1000",
					Did:  "You divided the Btu by 1,000.",
					Why:  "That gives MBH. A kilowatt is 3,412 Btu an hour, more than three times as much.",
					Next: "MBH are more than the kilowatts, by three and a half.",
				},
				{
					ID: "minutes-for-seconds", Only: problems.OnlySI, Formula: "heat / 60",
					Did:  "You divided by 60.",
					Why:  "A kilowatt is a kilojoule each second, and an hour has 3,600 seconds.",
					Next: "A rinse of a few hundred litres an hour takes a few kilowatts up to some tens. Hundreds are a sign.",
				},
			},
		},
		{
			Name: "booster", Says: "size of the booster heater", Measure: &measure.MotorInput, Whole: true,
			Formula: "next_booster_kw(power)",
			Why:     "The rinse must be hot enough at the busiest hour, so the next size up is taken.",
			Would:   boostRinse,
			Slips: []problems.Slip{{
				ID: "rounded-down", Formula: "lower_booster_kw(power)",
				Did:  "You took the size below, {got}.",
				Why:  "At the busy hour the rinse would come out too cool, and the dishes are not sanitized.",
				Next: "What must be enough is rounded up.",
			}},
		},
	},
	Holds: "Many dishwashers rinse at 180 °F (82 °C), far hotter than any main should be. So the main stays at its own temperature and a booster heater at the machine lifts the rinse water alone. Its power is water times degrees times the heat of water.",
	Cautions: []string{
		"Water of 180 °F (82 °C) burns at a touch. The branch behind the booster serves the machine and nothing else, and it is insulated and labelled.",
		"Electric heater: power off and locked before it is drained or opened; an element that runs dry burns out.",
		"The machine's plate and the local food code decide on temperature and flow.",
	},
	Sources: []problems.Source{
		{Says: "Final rinse of at least 180 °F (82 °C) for most machines, 165 °F (74 °C) for single-temperature racks, at most 194 °F (90 °C). FDA Food Code 4-501.112, as adopted in WAC 246-215-04555", Confidence: solver.Confirmed},
		{Says: "Rinse flows of 60 to 300 gph, and the sizes of booster heaters", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		heaterTower(s)
		hot := s.Pick([]float64{180}, []float64{82})
		type aim struct{ rinse, supply float64 }
		var fit []aim
		for _, rinse := range lists(s, []float64{60, 75, 80, 90, 100, 120, 140, 150, 180, 200, 240, 280, 300}, []float64{230, 280, 300, 340, 380, 450, 520, 570, 680, 760, 900, 1050}) {
			for _, supply := range lists(s, []float64{120, 125, 130, 135, 140}, []float64{50, 52, 55, 58, 60}) {
				kw := rinse * (hot - supply)
				if s.US() {
					kw *= 8.33 / 3412
				} else {
					kw *= 4.19 / 3600
				}
				if boosterClear(kw) {
					fit = append(fit, aim{rinse, supply})
				}
			}
		}
		a, _ := pick(s, fit)
		cold, _ := pick(s, colds(s))
		s.Set("rinse", a.rinse)
		s.Set("rinse_hot", hot)
		s.Set("supply", a.supply)
		s.Set("cold", cold)
	},
	Solve: solveBooster,
}

func init() { add(&dishwasherBranchSkill) }

func solveBooster(w problems.World) float64 {
	rise := unit.TempDifference(w.Temperature("rinse_hot") - w.Temperature("supply"))
	size, _ := solver.NextBoosterHeater(unit.Power(boosterLoad(w, rise)))
	return float64(size)
}

// boosterClear reports that rounding does not change the size of a booster
// heater of so many kilowatts, and that there is a size below it.
func boosterClear(kw float64) bool {
	if kw < 3.2 || kw > 52 {
		return false
	}
	for _, size := range solver.BoosterHeaters {
		if off := kw/size - 1; off > -0.045 && off < 0.045 {
			return false
		}
	}
	return true
}
