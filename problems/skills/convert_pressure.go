package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var convertPressureSkill = problems.Skill{
	ID: "convert-pressure", Title: "Pressure: psi, kPa and bar",
	Chapter: 1, Order: 10, Year: 1, Kind: problems.Sum,
	Ask: "The gauge on a booster set reads {reading}. The sheet of the spare pump wants it in {other}. What is the reading in kPa, and then in {other}?",
	Givens: []problems.Given{
		{Name: "reading", Says: "reading of the gauge", Measure: &measure.Of{Name: "pressure", US: "psi", SI: "bar"}},
	},
	Rules: []problems.Rule{
		{
			Name: "in_kpa", Says: "the reading in kPa",
			Measure: &measure.Of{Name: "pressure", US: "kPa", SI: "kPa", Round: 1, RoundM: 1},
			Formula: "reading x pressure_factor", Metric: "reading x kpa_per_bar",
			Why: "The kPa is the smallest of the three units, so the same pressure is the largest number of them.",
			Slips: []problems.Slip{
				{
					ID: "factor-upside-down", Formula: "reading / pressure_factor", Metric: "reading / kpa_per_bar",
					Did:  "You divided {reading} by the factor.",
					Why:  "One psi is nearly 7 kPa and one bar is 100 kPa. Either way there must be more kPa than what the gauge shows.",
					Next: "Say first which number must be larger. Then the factor can only go one way.",
				},
				{
					ID: "ten-kpa-in-a-bar", Only: problems.OnlySI, Formula: "reading x 10",
					Did:  "You took 10 kPa for one bar.",
					Why:  "One bar is 100 kPa. The ten belongs to metres: one bar holds up about 10 m of water.",
					Next: "A house runs at about 300 to 550 kPa. An answer of two figures would not run a shower one floor up.",
				},
			},
		},
		{
			Name: "converted", Says: "the reading in {other}",
			Measure: &measure.Of{Name: "pressure", US: "bar", SI: "psi", RoundM: 1},
			Formula: "in_kpa / kpa_per_bar", Metric: "in_kpa x pressure_factor",
			Why: "A bar is 100 kPa and a psi nearly 7 kPa: fewer of the larger unit make up the same pressure.",
			Slips: []problems.Slip{
				{
					ID: "gauge-for-kpa", Formula: "reading / kpa_per_bar", Metric: "reading x pressure_factor",
					Did:  "You used the {reading} of the gauge with the factor for kPa.",
					Why:  "A factor fits one pair of units. The one for kPa works on the {in_kpa}, not on the number that the gauge shows.",
					Next: "Write the unit beside each number and strike out what is above and below the line. What is left must be {other}.",
				},
				{
					ID: "wrong-way", Formula: "in_kpa x kpa_per_bar", Metric: "in_kpa / pressure_factor",
					Did:  "You made {got} of {in_kpa}: the number grew.",
					Why:  "A bar and a psi are both larger than a kPa, so their numbers must be smaller than the kPa.",
					Next: "Keep one pair in mind to lean on: 60 psi is about 414 kPa, about 4.1 bar.",
				},
				{
					ID: "ten-kpa-to-a-bar", Only: problems.OnlyUS, Formula: "in_kpa / 10",
					Did:  "You took 10 kPa for one bar.",
					Why:  "One bar is 100 kPa. The ten belongs to metres: one bar holds up about 10 m of water.",
					Next: "A house runs at about 3 to 6 bar. Two figures before the point is far above its piping.",
				},
			},
		},
	},
	Holds: "A psi, a kPa and a bar measure one thing in steps of another size. One psi is 6.895 kPa, one bar is exactly 100 kPa. So the kPa number is about seven times the psi number, and the bar number about a fourteenth of it.",
	Cautions: []string{
		"Pipe or tank under test can burst on a wrongly converted number: hold the result against the rating of the weakest part before the pressure goes on.",
	},
	Sources: []problems.Source{
		{Says: "psi: 6.894757 kPa; bar: 100 kPa exactly. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		s.Name("other", words(s, "bar", "psi"))
		s.Set("reading", s.Pick(
			[]float64{35, 40, 45, 48, 52, 55, 58, 60, 62, 65, 68, 70, 75, 85, 90, 95, 100, 110, 120, 125, 130, 140, 150},
			[]float64{2.5, 2.8, 3, 3.2, 3.5, 3.8, 4, 4.2, 4.5, 4.8, 5, 5.2, 5.6, 5.8, 6, 6.2, 6.5, 7, 7.5, 8, 8.5, 9, 10}))
	},
	// Both units of each pair measure pascals; only the rounding of the
	// school's factor comes in.
	Solve: func(w problems.World) float64 { return w.SI("reading") * w.SI("pressure_factor") },
}

func init() { add(&convertPressureSkill) }

// words is the word for US working, or the one for SI.
func words(s *building.Sheet, us, si string) string {
	if s.US() {
		return us
	}
	return si
}
