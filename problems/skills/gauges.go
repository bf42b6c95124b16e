package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var twoGaugesSkill = problems.Skill{
	ID: "two-gauges", Title: "Height between two gauges",
	Chapter: 1, Order: 160, Year: 1, Kind: problems.Sum,
	Ask: "No water is flowing. A tested gauge in the meter room reads {lower}. A tested gauge on the same riser, on level {level}, reads {upper}. How high is the upper gauge above the lower one?",
	Givens: []problems.Given{
		{Name: "lower", Says: "lower gauge, in the meter room, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "upper", Says: "upper gauge, on level {level}, no flow", Measure: &measure.Pressure, Plate: true},
	},
	Rules: []problems.Rule{
		{
			Name: "difference", Says: "pressure between the two gauges", Measure: &measure.Pressure,
			Formula: "lower - upper",
			Why:     "The lower gauge carries everything that the upper one does, and the water between them as well. Their difference is that water alone.",
			Slips: []problems.Slip{
				{
					ID: "one-gauge-alone", Formula: "lower",
					Did:  "You went on with {lower}, the reading of the lower gauge alone.",
					Why:  "That reading would stand for a column with nothing left at its top. At the upper gauge {upper} is still left.",
					Next: "A height has two ends, so it takes two readings. Ask what the gauge at each end says.",
				},
				{
					ID: "readings-added", Formula: "lower + upper",
					Did:  "You added the two readings, {lower} and {upper}.",
					Why:  "The water above the upper gauge pushes on both gauges. Added, it counts twice; subtracted, it drops out.",
					Next: "Put both gauges at one place in your mind: no height, so the sum you do must give zero.",
				},
			},
		},
		{
			Name: "apart", Says: "height between the gauges", Measure: &measure.Height,
			Formula: "difference / gamma",
			Why:     "Each foot or metre of standing water adds the same pressure, so the pressure between them counts the feet or metres.",
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "difference x gamma",
				Did:  "You multiplied {difference} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. Here the pressure is known and the height is wanted, so divide.",
				Next: "In US units the feet come out more than twice the psi; in SI the metres come out about a tenth of the kPa.",
			}},
		},
	},
	Holds: "Water at rest differs in pressure by height alone: 0.433 psi for each foot, 9.81 kPa for each metre. With water flowing, friction comes between the two readings and the height would come out wrong. Hang both gauges at one place first: if they do not agree there, they will not agree on two floors either.",
	Cautions: []string{
		"A gauge is fitted on a live riser: shut the cock, relieve the pressure and prove it gone before a plug is turned out. Two hundred feet of riser stand at about 87 psi with every pump off.",
	},
	Sources: []problems.Source{
		{Says: "Foot of water, conventional: 2,989.067 Pa. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Both gauges tested, no flow; swap them if in doubt: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 5, Max: 16})
		type found struct {
			street, upper float64
			n             int
		}
		var fit []found
		for _, street := range gaugeReadings(s) {
			for n := 4; n <= t.Storeys; n++ {
				upper := math.Round(street - plateHead(s, t.Up(n)+s.Shower()))
				if gap := street - upper; upper >= 0.1*street && math.Abs(upper-gap) > 0.05*street {
					fit = append(fit, found{street, upper, n})
				}
			}
		}
		f, _ := pick(s, fit)
		s.SetStreet(f.street, f.street-s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), 0, "on the gauge in the meter room")
		s.Focus = t.Storey(f.n)
		s.Name("level", t.Level(f.n))
		s.Set("lower", f.street)
		s.Set("upper", f.upper)
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.HeightBetween(w.Building.Street.Static, w.Pressure("upper"), w.Gamma()))
	},
}

func init() { add(&twoGaugesSkill) }

// gaugeReadings are street pressures as a gauge shows them, in its unit.
// Common practice, no source.
func gaugeReadings(s *building.Sheet) []float64 {
	if s.PlateUS() {
		return []float64{50, 55, 58, 60, 62, 65, 68, 70, 72, 75, 80, 90}
	}
	return []float64{350, 375, 400, 420, 425, 440, 450, 475, 500, 520, 550, 600}
}

var gaugeCorrectionSkill = problems.Skill{
	ID: "gauge-correction", Title: "Correct a gauge for its own height",
	Chapter: 1, Order: 170, Year: 1, Kind: problems.Sum,
	Ask: "The job sheet wants the static pressure at the street main. The only gauge reads {reading} with no water flowing. It hangs {gauge_up} above the floor of the meter room; the main lies {main_depth} below that floor. What is the pressure at the main?",
	Givens: []problems.Given{
		{Name: "reading", Says: "reading of the gauge, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "gauge_up", Says: "height of the gauge above the floor of the meter room", Measure: &measure.Height},
		{Name: "main_depth", Says: "depth of the main below that floor", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "above", Says: "height of the gauge above the main", Measure: &measure.Height,
			Formula: "gauge_up + main_depth",
			Why:     "The gauge is above the floor and the main is below it, so the two heights lie end to end.",
			Slips: []problems.Slip{
				{
					ID: "depth-left-out", Formula: "gauge_up",
					Did:  "You took {gauge_up} and stopped at the floor of the meter room.",
					Why:  "The water goes on down another {main_depth} to the main, and its weight goes with it.",
					Next: "Name both ends of the height before you write it: from the gauge, to the main.",
				},
				{
					ID: "gauge-left-out", Formula: "main_depth",
					Did:  "You took {main_depth}, from the floor down to the main.",
					Why:  "The gauge does not sit on the floor. The water between its dial and the floor, {gauge_up} of it, weighs too.",
					Next: "Name both ends of the height before you write it: from the gauge, to the main.",
				},
			},
		},
		{
			Name: "correction", Says: "pressure of the water between them", Measure: &measure.Pressure,
			Formula: "gamma x above",
			Why:     "Each foot or metre of water between the main and the gauge weighs the same.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "above / gamma",
				Did:  "You divided {above} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known and the pressure is wanted, so multiply.",
				Next: "In US units the psi is less than half the feet; in SI the kPa is about ten times the metres.",
			}},
		},
		{
			Name: "at_main", Says: "pressure at the main", Measure: &measure.Pressure,
			Formula: "reading + correction",
			Why:     "The main lies lower than the gauge, so it carries the reading and the water between them on top.",
			Slips: []problems.Slip{
				{
					ID: "subtracted", Formula: "reading - correction",
					Did:  "You took {correction} off the reading.",
					Why:  "That is the pressure as far above the gauge as the main is below it. Going down, the water adds.",
					Next: "Up takes away, down gives. Ask which of the two points lies lower: it has the higher pressure.",
				},
				{
					ID: "correction-as-answer", Formula: "correction",
					Did:  "You gave {correction}, the correction, as the pressure at the main.",
					Why:  "That is only the water between the gauge and the main. The gauge's own {reading} comes on top of it.",
					Next: "A correction is added to something. Look for what it corrects.",
				},
			},
		},
	},
	Holds: "A gauge tells the pressure where it hangs, and nowhere else. Standing water below it has more, water above it less: 0.433 psi for each foot, 9.81 kPa for each metre. So a pressure without the place it was read at is half a fact: at the main, or on the gauge in the meter room.",
	Cautions: []string{
		"In a meter pit, test the air before going in, and leave the utility's seals alone.",
	},
	Sources: []problems.Source{
		{Says: "Foot of water, conventional: 2,989.067 Pa. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Depth of mains by climate: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		s.Tower(building.Plan{Min: 3, Max: 14})
		reading, _ := pick(s, gaugeReadings(s))
		up := s.Pick([]float64{3.5, 4, 4.5, 5, 5.5}, []float64{1.1, 1.3, 1.4, 1.6})
		depth := s.MainDepth()
		for depth == up {
			depth = s.MainDepth()
		}
		s.SetStreet(reading, reading-s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), up, "on the gauge in the meter room")
		s.Set("reading", reading)
		s.Set("gauge_up", up)
		s.Set("main_depth", depth)
	},
	Solve: func(w problems.World) float64 {
		st := w.Building.Street
		return float64(solver.FloorPressure(st.Static, w.Gamma(), -st.MainDepth-st.GaugeAt))
	},
}

func init() { add(&gaugeCorrectionSkill) }
