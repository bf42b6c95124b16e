package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var floorPressureSkill = problems.Skill{
	ID: "floor-pressure", Title: "Pressure at a floor, going up",
	Chapter: 1, Order: 140, Year: 1, Kind: problems.Sum,
	Ask: "The gauge in the meter room reads {street} with no water flowing. What does a gauge at the shower on level {level} read?",
	Givens: []problems.Given{
		{Name: "street", Says: "street pressure on the gauge in the meter room, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "floor_height", Says: "height of the shower's floor above the gauge", Measure: &measure.Height},
		{Name: "outlet", Says: "height of the shower head above its floor", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "height", Says: "height of the shower head above the gauge", Measure: &measure.Height,
			Formula: "floor_height + outlet",
			Why:     "Pressure is lost over the whole height from the gauge to the outlet, the last few feet included.",
			Slips: []problems.Slip{{
				ID: "outlet-left-out", Formula: "floor_height",
				Did:  "You went up to the floor of level {level} and stopped there: {floor_height}.",
				Why:  "The water still has to climb {outlet} from that floor to the shower head, and it loses pressure on the way.",
				Next: "End the height where the gauge or the outlet is, not at the slab it stands on.",
			}},
		},
		{
			Name: "lost", Says: "pressure lost going up", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "Each foot or metre of water standing above the gauge weighs the same on it.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known and the pressure is wanted, so multiply.",
				Next: "In US units the psi is always the smaller number, less than half the feet; in SI the kPa is about ten times the metres.",
			}},
		},
		{
			Name: "pressure", Says: "pressure at the shower on level {level}", Measure: &measure.Pressure,
			Formula: "street - lost",
			Why:     "The street pushes, the water standing above the gauge pushes back; what is left is what the shower gets.",
			Slips: []problems.Slip{
				{
					ID: "added", Formula: "street + lost",
					Did:  "You added {lost} to {street}.",
					Why:  "Going up, the water above the gauge works against the street. A top floor never has more pressure than the street that feeds it.",
					Next: "Up takes away, down gives. Say it before you write the sign.",
				},
				{
					ID: "lost-as-answer", Formula: "lost",
					Did:  "You gave {lost}, the pressure lost on the way up, as the answer.",
					Why:  "That is what the height costs. The shower gets what the street has left after paying it.",
					Next: "Read the question once more when the last line is written: lost, or left?",
				},
			},
		},
	},
	Routes: []problems.Route{{
		Says: "the street pressure as a height of water first",
		Rules: []problems.Rule{
			{
				Name: "height", Says: "height of the shower head above the gauge", Measure: &measure.Height,
				Formula: "floor_height + outlet",
				Why:     "The whole height from the gauge to the outlet counts.",
			},
			{
				Name: "street_height", Says: "height of water that the street holds up", Measure: &measure.Height,
				Formula: "street / gamma",
				Why:     "A pressure is a height of water.",
			},
			{
				Name: "height_left", Says: "height of water left at the shower", Measure: &measure.Height,
				Formula: "street_height - height",
				Why:     "Of that height, the way up to the shower is used.",
			},
			{
				Name: "pressure", Says: "pressure at the shower on level {level}", Measure: &measure.Pressure,
				Formula: "gamma x height_left",
				Why:     "What is left stands as pressure at the shower.",
			},
		},
	}},
	Holds: "Standing water pushes with its own weight. A column one foot high pushes 0.433 psi at its foot (one metre: 9.81 kPa), whatever its width. So a gauge raised by that height reads that much less.",
	Sources: []problems.Source{
		{Says: "Foot of water, conventional: 2,989.067 Pa. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 4, Max: 14})
		type found struct {
			street float64
			n      int
		}
		var fit []found
		for _, street := range gaugeReadings(s) {
			for n := 3; n <= t.Storeys; n++ {
				lost := plateHead(s, t.Up(n)+s.Shower())
				left := street - lost
				if left >= s.PickPlate([]float64{8}, []float64{55}) && left >= 0.12*street {
					fit = append(fit, found{street, n})
				}
			}
		}
		f, _ := pick(s, fit)
		s.SetStreet(f.street, f.street-s.PickPlate([]float64{8, 10}, []float64{50, 75}), 0, "on the gauge in the meter room")
		s.Focus = t.Storey(f.n)
		s.Name("level", t.Level(f.n))
		s.Set("street", f.street)
		setHeight(s, "floor_height", t.Up(f.n))
		s.Set("outlet", s.Shower())
	},
	Solve: func(w problems.World) float64 {
		return float64(w.Building.At(w.Focus, w.Building.Highest(w.Focus), w.Gamma()))
	},
}

func init() { add(&floorPressureSkill) }
