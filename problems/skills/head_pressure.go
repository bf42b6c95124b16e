package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

// standingColumn is shown where water stands in a riser above the work.
const standingColumn = "A riser keeps its pressure with every pump off and above a closed valve: 200 ft (61 m) of water stand at about 87 psi (600 kPa). Relieve it, prove it gone on a gauge and drain before a joint is opened."

var headToPressureSkill = problems.Skill{
	ID: "head-to-pressure", Title: "Pressure under a height of water",
	Chapter: 1, Order: 100, Year: 1, Kind: problems.Sum,
	Ask: "An open house tank above the roof feeds the building down a riser. Its water level stands {water_up} above the floor of level 1. A gauge on the shower arm on level {level} is {gauge_up} above the same floor. No water flows. What does the gauge read?",
	Givens: []problems.Given{
		{Name: "water_up", Says: "water level in the open tank, above the floor of level 1", Measure: &measure.Height},
		{Name: "gauge_up", Says: "gauge on level {level}, above the floor of level 1", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "column", Says: "height of the water above the gauge", Measure: &measure.Height,
			Formula: "water_up - gauge_up",
			Why:     "Only the water above the gauge stands on it. What is below the gauge stands on what is below.",
			Slips: []problems.Slip{
				{
					ID: "height-from-the-ground", Formula: "water_up",
					Did:  "You took {water_up}, the whole height from level 1 up to the tank's water.",
					Why:  "The gauge is {gauge_up} up. The water below it does not press on it.",
					Next: "Stand at the gauge and look up: how much water is over your head?",
				},
				{
					ID: "gauge-height-for-column", Formula: "gauge_up",
					Did:  "You took {gauge_up}, the height of the gauge above level 1.",
					Why:  "That is the water below the gauge. What it reads comes from above.",
					Next: "Stand at the gauge and look up: how much water is over your head?",
				},
			},
		},
		{
			Name: "pressure", Says: "pressure on level {level}", Measure: &measure.Pressure,
			Formula: "gamma x column",
			Why:     "Each foot or metre of water adds the same pressure, whatever the width of pipe or tank.",
			Slips: []problems.Slip{
				{
					ID: "divided", Formula: "column / gamma",
					Did:  "You divided {column} by {gamma}.",
					Why:  "Dividing turns a pressure into a height. The other number for water, 2.31 ft to the psi, is the one to divide by: it is 0.433 turned over.",
					Next: "In US units the psi is less than half the feet; in SI the kPa is about ten times the metres.",
				},
				{
					ID: "head-as-answer", Formula: "column",
					Did:  "You gave the height of the water, {column}, as the pressure.",
					Why:  "A height can stand for a pressure, and pump sheets use it so, but the number changes with the unit. A gauge in psi or kPa does not show feet or metres.",
					Next: "Read the unit that is asked for before the last line is written.",
				},
				{
					ID: "other-gradient", Formula: "9.81 x column", Metric: "0.433 x column",
					Did:  "You multiplied {column} by the number of the other system.",
					Why:  "The 0.433 gives psi from feet, the 9.81 gives kPa from metres. Crossed over they give nothing.",
					Next: "Say number and units in one breath: 0.433 psi a foot, 9.81 kPa a metre.",
				},
			},
		},
	},
	Holds: "Water presses with its weight, and the weight over a point goes by the height alone. One foot stands for 0.433 psi and one metre for 9.81 kPa; turned over, 2.31 ft for one psi and 0.102 m for one kPa. A wide tank presses no harder than a narrow pipe of the same height.",
	Cautions: []string{
		standingColumn,
	},
	Sources: []problems.Source{
		{Says: "Foot of water, conventional: 2,989.067 Pa. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "House tanks: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 5, Max: 18})
		above := s.Pick([]float64{10, 12, 14, 15, 18, 20}, []float64{3, 3.5, 4, 4.5, 5, 6})
		water := t.Up(t.Storeys+1) + above
		var fit []int
		for n := 2; n <= t.Storeys; n++ {
			if p := head(s, water-t.Up(n)-s.Shower()); p >= s.Pick([]float64{12}, []float64{80}) && p <= s.Pick([]float64{72}, []float64{500}) {
				fit = append(fit, n)
			}
		}
		n, _ := pick(s, fit)
		s.Street(0, "on the gauge in the meter room")
		b := s.Building
		b.Header = &solver.Header{Elevation: s.Length(water)}
		b.Zones = []solver.Zone{{Name: "tank", Bottom: 0, Top: b.Top(), Supply: solver.FromHeader}}
		s.Focus = t.Storey(n)
		s.Name("level", t.Level(n))
		setHeight(s, "water_up", water)
		setHeight(s, "gauge_up", t.Up(n)+s.Shower())
	},
	Solve: func(w problems.World) float64 {
		return float64(w.Building.At(w.Focus, w.Building.Highest(w.Focus), w.Gamma()))
	},
}

func init() { add(&headToPressureSkill) }

var pressureToHeadSkill = problems.Skill{
	ID: "pressure-to-head", Title: "Height of water that a pressure holds up",
	Chapter: 1, Order: 110, Year: 1, Kind: problems.Sum,
	Ask: "The gauge in the meter room is {gauge_below} below the floor of level 1. It reads {reading} with no water flowing. How high above the floor of level 1 would this pressure hold the water in an open riser?",
	Givens: []problems.Given{
		{Name: "reading", Says: "reading of the gauge in the meter room, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "gauge_below", Says: "gauge below the floor of level 1", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "column", Says: "height of the water above the gauge", Measure: &measure.Height,
			Formula: "reading / gamma",
			Why:     "Each foot or metre of water takes its share of the pressure. How often that share goes into the reading is the height.",
			Slips: []problems.Slip{
				{
					ID: "multiplied", Formula: "reading x gamma",
					Did:  "You multiplied {reading} by {gamma}.",
					Why:  "Multiplying turns a height into a pressure. To go back, divide by 0.433, or multiply by 2.31, which is the same number turned over.",
					Next: "In US units the feet are more than twice the psi; in SI the metres are about a tenth of the kPa.",
				},
				{
					ID: "other-gradient", Formula: "reading / 9.81", Metric: "reading / 0.433",
					Did:  "You divided {reading} by the number of the other system.",
					Why:  "The 0.433 belongs to psi and feet, the 9.81 to kPa and metres. Crossed over they give nothing.",
					Next: "Say number and units in one breath: 0.433 psi a foot, 9.81 kPa a metre.",
				},
				{
					ID: "pressure-as-head", Formula: "reading",
					Did:  "You took the number on the gauge, {reading}, for the height.",
					Why:  "One psi holds up 2.31 ft and one kPa holds up 0.102 m. The number changes with the unit.",
					Next: "A new unit needs a new number. If it did not change, the line is missing.",
				},
			},
		},
		{
			Name: "water_up", Says: "height of the water above the floor of level 1", Measure: &measure.Height,
			Formula: "column - gauge_below",
			Why:     "The column begins at the gauge. Its first part is below level 1 and brings nothing above it.",
			Slips: []problems.Slip{
				{
					ID: "counted-from-level-one", Formula: "column",
					Did:  "You set the column of {column} on the floor of level 1.",
					Why:  "It stands on the gauge, {gauge_below} lower. That much of it is used up before it comes to level 1.",
					Next: "Put a finger on the gauge. The column begins there.",
				},
				{
					ID: "depth-added", Formula: "column + gauge_below",
					Did:  "You added the {gauge_below} to the column.",
					Why:  "A gauge that sits lower does not lift the water higher. Part of its column only brings the water up to level 1.",
					Next: "Draw it: gauge, level 1, water level, from the bottom up. The column is the long line, the question asks for the upper part.",
				},
			},
		},
	},
	Holds: "A pressure and a height of water are two ways to say one thing. One psi holds up 2.31 ft, one kPa 0.102 m. 2.31 is 1 divided by 0.433: dividing by the one is multiplying by the other, so one number is enough to remember. At that height nothing is left to flow with; a fixture needs some of it back.",
	Cautions: []string{
		standingColumn,
	},
	Sources: []problems.Source{
		{Says: "Foot of water, conventional: 2,989.067 Pa, so 2.3067 ft to the psi. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 13, Max: 24, Cellar: true})
		up := s.Pick([]float64{3, 4, 5}, []float64{1.0, 1.2, 1.5})
		below := t.Parking.Value*float64(t.Below) - up
		var fit []float64
		for _, p := range gaugeReadings(s) {
			if h := p / onPlate(s, head(s, 1)); h-below >= t.Up(2) && h-below <= t.Up(t.Storeys+1) {
				fit = append(fit, p)
			}
		}
		reading, _ := pick(s, fit)
		s.SetStreet(reading, reading-s.PickPlate([]float64{5, 8}, []float64{35, 50}), -below, "on the gauge in the meter room")
		s.Set("reading", reading)
		setHeight(s, "gauge_below", below)
	},
	Solve: func(w problems.World) float64 {
		st := w.Building.Street
		return float64(st.GaugeAt + solver.Reach(st.Static, 0, w.Gamma()))
	},
}

func init() { add(&pressureToHeadSkill) }
