package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var anodeLifeSkill = problems.Skill{
	ID: "anode-life", Title: "How long an anode lasts",
	Chapter: 8, Order: 100, Year: 4, Kind: problems.Sum,
	Ask: "A buried steel pipe of the water service is protected by an anode of {metal}, {weight}. It was measured to give {current}. The metal holds {capacity}, and {efficiency} of that protects the pipe; the rest is lost on the anode itself. How long does it last?",
	Givens: []problems.Given{
		{Name: "weight", Says: "weight of the anode", Measure: &measure.Weight},
		{Name: "current", Says: "current that it gives", Measure: &measure.SmallAmps},
		{Name: "capacity", Says: "charge that the metal holds", Measure: &measure.AnodeCharge},
		{Name: "efficiency", Says: "share of it that protects", Measure: &measure.Share},
	},
	Rules: []problems.Rule{
		{
			Name: "charge", Says: "charge that protects", Measure: &measure.Charge,
			Formula: "weight x capacity x efficiency",
			Why:     "The anode is a store of charge. Only the part that goes through the pipe protects it.",
			Slips: []problems.Slip{
				{
					ID: "efficiency-left-out", Formula: "weight x capacity",
					Did:  "You counted the whole charge.",
					Why:  "An anode also eats itself. Only {efficiency} of it reaches the pipe, and the anode is gone sooner than you say.",
					Next: "Real life is shorter than the book: the share makes the number smaller.",
				},
				{
					ID: "divided-by-efficiency", Formula: "weight x capacity / efficiency",
					Did:  "You divided by the share.",
					Why:  "That gives more charge than the metal holds.",
					Next: "A store after its losses is smaller: multiply by a share under 1.",
				},
				{
					ID: "capacity-upside-down", Formula: "weight / capacity x efficiency",
					Did:  "You divided by the capacity.",
					Why:  "A metal that holds more lasts longer. In your line it lasts less.",
					Next: "Charge for each pound or kilogram times the weight: the weight cancels, charge stays.",
				},
			},
		},
		{
			Name: "steady", Says: "current in amperes", Measure: &measure.Current,
			Formula: "current / ma_per_amp",
			Why:     "The charge is in ampere-hours, so the current must be in amperes.",
			Slips: []problems.Slip{{
				ID: "hundred-for-thousand", Formula: "current / 100",
				Did:  "You divided the milliamperes by 100.",
				Why:  "Milli is a thousandth. The anode would seem to die ten times too soon.",
				Next: "1,000 mA are one ampere.",
			}},
		},
		{
			Name: "life_hours", Says: "life in hours", Measure: &measure.TimeHours,
			Formula: "charge / steady",
			Why:     "Ampere-hours over amperes leaves hours.",
			Slips: []problems.Slip{{
				ID: "multiplied-by-current", Formula: "charge x steady",
				Did:  "You multiplied by the current.",
				Why:  "A stronger current uses the anode up faster, so the life must become shorter.",
				Next: "Look at the units: ampere-hours times amperes is no time.",
			}},
		},
		{
			Name: "life", Says: "life of the anode", Measure: &measure.TimeYears,
			Formula: "life_hours / hours_per_year",
			Why:     "It works day and night: a year has 8,760 hours.",
			Slips: []problems.Slip{{
				ID: "days-for-hours", Formula: "life_hours / 365",
				Did:  "You divided the hours by 365.",
				Why:  "365 are the days of a year. It has 24 times as many hours.",
				Next: "A buried anode lasts some ten to forty years. Hundreds are a sign of a lost 24.",
			}},
		},
	},
	Holds: "Where two metals touch in wet ground or water, the less noble one is eaten. An anode is a piece of magnesium or zinc that is eaten in place of the steel. How long it lasts is the charge it holds, less what it wastes, over the current it gives. It is measured each year and replaced before it is gone.",
	Cautions: []string{
		"Before a meter or a union in a metal service is opened, the bonding jumper goes on, and the pipe is treated as live: an electrician where the law says so.",
		"An insulating joint that keeps the anode's current on the service may also break an electrical ground. Ask before one goes in.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Magnesium holds 1,000 A·h in a pound (2,200 in a kg), zinc 372 (820): Corrosion, vol. 1, abstract; half of magnesium's protects: Corrosion Engineering Principles and Practice, ch. 13", Confidence: solver.Confirmed},
		{Says: "Nine tenths of zinc's protects: the same abstract", Confidence: solver.Confirmed},
		{Says: "Currents of 10 to 60 mA at a service", Confidence: solver.Practice},
	},
	Draw: drawAnode,
	Solve: func(w problems.World) float64 {
		return solver.AnodeLife(w.SI("weight"), w.SI("capacity"), w.SI("efficiency"), w.SI("current"))
	},
}

func init() { add(&anodeLifeSkill) }

// drawAnode draws an anode that lasts some 5 to 45 years.
func drawAnode(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 12})
	metal, capacity, efficiency := "magnesium", s.Pick([]float64{1000}, []float64{2200}), 0.5
	weights := lists(s, []float64{9, 17, 32}, []float64{4, 7.7, 14.5})
	if s.Chance(0.4) {
		metal, capacity, efficiency = "zinc", s.Pick([]float64{372}, []float64{820}), 0.9
		weights = lists(s, []float64{12, 18, 24, 30}, []float64{5.4, 8, 11, 13.6})
	}
	type aim struct{ weight, current float64 }
	var fit []aim
	for _, w := range weights {
		for _, mA := range []float64{8, 12, 15, 20, 25, 30, 40, 50} {
			if years := w * capacity * efficiency / mA * 1000 / 8760; years > 5 && years < 45 {
				fit = append(fit, aim{w, mA})
			}
		}
	}
	a, _ := pick(s, fit)
	s.Name("metal", metal)
	s.Set("weight", a.weight)
	s.Set("current", a.current)
	s.Set("capacity", capacity)
	s.Set("efficiency", efficiency)
}
