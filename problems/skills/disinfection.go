package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var chlorineDoseSkill = problems.Skill{
	ID: "chlorine-dose", Title: "Chlorine for a new pipe",
	Chapter: 8, Order: 90, Year: 3, Kind: problems.Sum,
	Ask: "The new piping of a building holds {volume}. It has been flushed and is to stand for {contact} with {dose} of chlorine. The {chemical} at hand holds {strength} of its weight as chlorine. How much of it is needed?",
	Givens: []problems.Given{
		{Name: "volume", Says: "water in the piping", Measure: &measure.Tank},
		{Name: "dose", Says: "chlorine in the water, by weight", Measure: &measure.Dose},
		{Name: "strength", Says: "share of chlorine in what is at hand, by weight", Measure: &measure.Share},
	},
	Rules: []problems.Rule{
		{
			Name: "chlorine", Says: "pure chlorine", Measure: &measure.Chemical,
			Formula: "volume x water_weight x dose / million", Metric: "volume x dose / mg_per_gram",
			Why: "The dose is so many parts of chlorine in a million of water, by weight; one mg in a litre is one part.",
			Slips: []problems.Slip{
				{
					ID: "weight-of-water-left-out", Only: problems.OnlyUS, Formula: "volume x dose / million",
					Did:  "You put the gallons in as pounds.",
					Why:  "Parts in a million go by weight. A US gallon weighs 8.34 lb, so your dose is an eighth of what is asked.",
					Next: "Turn the water into pounds first, then take the millionths.",
				},
				{
					ID: "thousand-gallons", Only: problems.OnlyUS, Formula: "volume x water_weight x dose / 1000",
					Did:  "You divided by a thousand.",
					Why:  "The dose is parts in a million. A thousand times too much burns pipe, skin and lungs.",
					Next: "A thousand gallons at 50 parts needs less than half a pound of chlorine.",
				},
				{
					ID: "milligrams-as-grams", Only: problems.OnlySI, Formula: "volume x dose",
					Did:  "You gave the milligrams as grams.",
					Why:  "A thousand times too much burns pipe, skin and lungs. A gram is 1,000 mg.",
					Next: "A cubic metre at 50 mg/L needs 50 g of chlorine.",
				},
			},
		},
		{
			Name: "chemical", Says: "weight of what is at hand", Measure: &measure.Chemical,
			Formula: "chlorine / strength",
			Why:     "Only a part of it is chlorine, so more of it is needed than of pure chlorine.",
			Slips: []problems.Slip{
				{
					ID: "strength-left-out", Formula: "chlorine",
					Did:  "You weighed it as if it were pure chlorine.",
					Why:  "Only {strength} of it is. The water would stay below {dose} and the sample may fail.",
					Next: "Read the label for the strength, and divide by it.",
				},
				{
					ID: "multiplied-by-strength", Formula: "chlorine x strength",
					Did:  "You multiplied by the strength.",
					Why:  "Then the weaker it is, the less you would take. It is the other way round.",
					Next: "The answer must be more than the pure chlorine, {chlorine}.",
				},
			},
		},
	},
	Holds: "A dose is chlorine in a million of water, by weight. Work out the pure chlorine first, then divide by the strength of what is in the drum. Fill from the far side until every outlet smells of it, let it stand, measure what is left at the farthest outlet, flush, and take a sample.",
	Cautions: []string{
		"Post every outlet and tell the occupants: nobody drinks or washes until the sample is good. Gloves, goggles and fresh air for the one who mixes.",
		"Never let chlorine meet an acid or another cleaner: the gas kills. Put the chemical into water, not water onto it.",
		"Neutralise before it is drained, as the authority asks, and flush until only the residual allowed is left.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "50 parts for 24 hours or 200 parts for 3 hours, 5 left at every outlet: National Standard Plumbing Code, seen in a local text", Confidence: solver.Confirmed},
		{Says: "Powder of 65 %, liquids of 5 to 12 %", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		suppliedTower(s, building.Plan{Min: 3, Max: 20})
		contact, dose := "24 hours", 50.0
		if s.Chance(0.35) {
			contact, dose = "3 hours", 200
		}
		chemical, strength := "powder (calcium hypochlorite)", 0.65
		if s.Chance(0.5) {
			chemical, strength = "liquid (sodium hypochlorite)", s.Pick([]float64{0.05, 0.1, 0.12}, []float64{0.05, 0.1, 0.12})
		}
		s.Name("contact", contact)
		s.Name("chemical", chemical)
		s.Set("volume", s.Pick([]float64{80, 120, 200, 250, 300, 500, 800, 1200, 2000, 3000}, []float64{300, 450, 750, 1000, 1200, 2000, 3000, 4500, 7500, 11000}))
		s.Set("dose", dose)
		s.Set("strength", strength)
	},
	Solve: func(w problems.World) float64 {
		dose := w.SI("dose")
		if w.House.System == unit.US { // parts by weight
			dose *= w.SI("water_weight")
		}
		return solver.ChlorineDose(unit.Volume(w.SI("volume")), dose, w.SI("strength"))
	},
}

func init() { add(&chlorineDoseSkill) }
