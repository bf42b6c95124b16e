package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var galvanicPairSkill = problems.Skill{
	ID: "galvanic-pair", Title: "Which of two metals goes first",
	Chapter: 8, Order: 105, Year: 2, Kind: problems.Choice,
	Ask: "{metal_a} is screwed into {metal_b} in wet ground, with nothing between. In the series of metals A, {metal_a}, stands at {potential_a} and B, {metal_b}, at {potential_b}; the further below nought, the less noble. Water wets {area_a} of A and {area_b} of B. Which is eaten, and how much surface of the other works against each part of it?",
	Givens: []problems.Given{
		{Name: "potential_a", Says: "place of A in the series", Measure: &measure.Potential},
		{Name: "potential_b", Says: "place of B in the series", Measure: &measure.Potential},
		{Name: "area_a", Says: "wetted surface of A", Measure: &measure.CrossArea},
		{Name: "area_b", Says: "wetted surface of B", Measure: &measure.CrossArea},
	},
	Rules: []problems.Rule{
		{
			Name: "apart", Says: "how far the metals are apart", Measure: &measure.Potential,
			Formula: "abs(potential_a - potential_b)",
			Why:     "The further apart in the series, the harder the pair drives a current.",
			Slips: []problems.Slip{{
				ID: "places-added", Formula: "abs(potential_a + potential_b)",
				Did:  "You added the two places.",
				Why:  "Both are counted from the same nought. How far they lie apart is the difference.",
				Next: "Two marks on one ruler: the distance is one less the other.",
			}},
		},
		{
			Name: "eaten", Says: "metal that is eaten", Measure: &measure.Answer, Choices: []string{"metal A", "metal B"},
			Formula: "potential_b < potential_a",
			Why:     "The less noble metal gives its metal away and so protects the other. It is the one further below nought.",
			Slips: []problems.Slip{{
				ID: "nobler-chosen", Formula: "potential_b > potential_a",
				Did:  "You chose the nobler metal.",
				Why:  "The nobler one is protected at the cost of the other. That is how an anode of magnesium or zinc saves steel.",
				Next: "Think of the anode rod in a heater: magnesium, far down the series, goes; the steel stays.",
			}},
		},
		{
			Name: "noble_area", Says: "surface of the nobler metal", Measure: &measure.CrossArea,
			Formula: "(potential_a > potential_b) x area_a + (potential_b > potential_a) x area_b", // one of them holds and counts 1
			Why:     "All of the nobler surface takes current.",
			Slips: []problems.Slip{{
				ID: "surfaces-added", Formula: "area_a + area_b",
				Did:  "You took both surfaces together.",
				Why:  "They work against each other. The nobler one draws, the other gives.",
				Next: "Keep two columns, eaten and not eaten.",
			}},
		},
		{
			Name: "eaten_area", Says: "surface of the metal that is eaten", Measure: &measure.CrossArea,
			Formula: "area_a + area_b - noble_area",
			Why:     "It bears the whole current on its own surface.",
		},
		{
			Name: "against", Says: "nobler surface for each part of the eaten one", Measure: &measure.Share,
			Formula: "noble_area / eaten_area",
			Why:     "The current of the whole nobler surface leaves through the eaten one. The smaller that is, the faster it is gone.",
			Slips: []problems.Slip{{
				ID: "upside-down", Formula: "eaten_area / noble_area",
				Did:  "You divided the eaten surface by the nobler one.",
				Why:  "What matters is how much nobler surface draws on each part of the eaten one. A steel nipple in a brass valve goes fast; a brass valve in a steel pipe hardly harms the pipe.",
				Next: "Small metal that is eaten, large metal that is not: the number must be large.",
			}},
		},
	},
	Holds: "Two metals that touch in water make a battery. The less noble is eaten. How fast goes with how far they are apart, with how well the water conducts, and with the surfaces: a small part of poor metal in a large body of good metal goes first and fast. A dielectric union keeps them apart; a sacrificial anode turns the same battery to use.",
	Cautions: []string{
		"An insulating joint may break an electrical ground or the bonding of a metal pipe. Ask before one goes in; an electrician where the law says so.",
		"Places in the series are for sea water and shift with water and temperature; the order is what holds.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Galvanic series in flowing sea water: magnesium -1,600 to -1,650 mV, zinc -980 to -1,030, steel and cast iron -600 to -710, brass -300 to -400, copper -300 to -570: a table of 2006 after the handbooks; a chart against Ag/AgCl", Confidence: solver.Confirmed},
		{Says: "Small anode, large cathode", Confidence: solver.Practice},
	},
	Draw: drawGalvanicPair,
	Solve: func(w problems.World) float64 {
		return solver.GalvanicAreas(w.SI("potential_a"), w.SI("potential_b"), w.SI("area_a"), w.SI("area_b"))
	},
}

func init() { add(&galvanicPairSkill) }

// drawGalvanicPair draws two metals of the series well apart, as a small part
// in a large one, either of them the less noble.
func drawGalvanicPair(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 10})
	series := solver.GalvanicSeries
	i := s.Int(0, len(series)-2)
	j := s.Int(i+1, len(series)-1)
	for series[j].MilliVolts-series[i].MilliVolts < 150 {
		i = s.Int(0, len(series)-2)
		j = s.Int(i+1, len(series)-1)
	}
	if s.Chance(0.5) {
		i, j = j, i
	}
	small := s.Pick([]float64{8, 10, 12, 15}, []float64{5000, 6000, 8000, 10000})
	large := small * s.Pick([]float64{2.5, 4, 5, 6, 8}, []float64{2.5, 4, 5, 6, 8})
	areas := choose(s.Chance(0.5), [2]float64{small, large}, [2]float64{large, small})
	s.Name("metal_a", series[i].Metal)
	s.Name("metal_b", series[j].Metal)
	s.Set("potential_a", series[i].MilliVolts)
	s.Set("potential_b", series[j].MilliVolts)
	s.Set("area_a", areas[0])
	s.Set("area_b", areas[1])
}
