package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// peakReadings are pressures behind the meter and the backflow preventer at
// the peak of the day, in the unit of gauges. Common practice, no source.
func peakReadings(s *building.Sheet) []float64 {
	if s.PlateUS() {
		return []float64{40, 42, 44, 45, 46, 48, 50, 52, 54, 55, 56, 58, 60, 62, 64, 65, 66, 68}
	}
	return []float64{275, 280, 290, 300, 310, 320, 325, 340, 350, 360, 375, 380, 390, 400, 410, 425, 440, 450}
}

var _ = add(problems.Skill{
	ID: "first-short-floor", Title: "The first floor that is short of pressure",
	Chapter: 2, Order: 30, Year: 2, Kind: problems.Sum,
	Ask: "At the peak of the day {street} is left behind the meter and the backflow preventer, on a gauge at the floor of level 1. Level 1 is {ground_height} from floor to floor, every level above it {floor_height}. Each level's highest outlet is a shower head {outlet} above its floor, where {least} must be left ({limit_says}). Leave the friction of the riser aside. Which storey, counted from level 1 as the first, is the first that is short?",
	Givens: []problems.Given{
		{Name: "street", Says: "pressure at peak behind the meter and backflow preventer, at the floor of level 1", Measure: measure.Pressure, Plate: true},
		{Name: "least", Says: "pressure to be left at each level's highest outlet", Measure: measure.Pressure},
		{Name: "ground_height", Says: "level 1, floor to floor", Measure: measure.Height},
		{Name: "floor_height", Says: "each level above it, floor to floor", Measure: measure.Height},
		{Name: "outlet", Says: "height of a shower head above its floor", Measure: measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "spare", Says: "pressure that may be spent on height", Measure: measure.Pressure,
			Formula: "street - least",
			Why:     "What must be left at the outlet cannot be used up on the way to it.",
			Slips: []problems.Slip{{
				ID: "nothing-left", Formula: "street",
				Did:  "You spent the whole of {street} on height.",
				Why:  "At that height the shower is only just wet. {least} must still be there.",
				Next: "Set aside what the outlet keeps before you buy any height.",
			}},
		},
		{
			Name: "reach", Says: "height that the street reaches", Measure: measure.Height,
			Formula: "spare / gamma",
			Why:     "Each foot or metre of height costs the same pressure.",
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "spare x gamma",
				Did:  "You multiplied {spare} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. Here the pressure is known and the height is wanted, so divide.",
				Next: "In US units the feet come out more than twice the psi; in SI the metres come out about a tenth of the kPa.",
			}},
		},
		{
			Name: "room", Says: "height left for floors above storey 2", Measure: measure.Height,
			Formula: "reach - outlet - ground_height",
			Why:     "The water must get over level 1 to the floor of storey 2, and at the end up to a shower head. What remains is there for further floors.",
			Slips: []problems.Slip{
				{
					ID: "slab-tested", Formula: "reach - ground_height",
					Did:  "You tested the slab of the floor and left out the {outlet} up to the shower head.",
					Why:  "Nobody showers at the slab. A floor whose slab is just reached has a dead shower.",
					Next: "End each height at the highest outlet of the floor, not at what it stands on.",
				},
				{
					ID: "ground-like-the-rest", Formula: "reach - outlet - floor_height",
					Did:  "You took level 1 as tall as the levels above it.",
					Why:  "Level 1 is {ground_height} from floor to floor, not {floor_height}. All the floors above stand that much higher.",
					Next: "Read the section of the building from the bottom up: lobby, then typical floors.",
				},
			},
		},
		{
			Name: "fits", Says: "whole floors that fit into it", Measure: measure.Count, Whole: true,
			Formula: "rounddown(room / floor_height)",
			Why:     "A floor that is reached in part has its shower above the reach, so only whole floors count.",
			Slips: []problems.Slip{{
				ID: "rounded-up", Formula: "roundup(room / floor_height)",
				Did:  "You rounded the number of floors up.",
				Why:  "The part that is missing is just where the shower of that floor hangs.",
				Next: "Ask on which side the mistake is safe. Promise a floor too few and it costs a pump; promise one too many and its tenants have no water.",
			}},
		},
		{
			Name: "first_short", Says: "first storey that is short", Measure: measure.Count, Whole: true,
			Formula: "fits + 3",
			Why:     "Storey 2 is served, and {fits} more above it. The next one after those is the first that is not.",
			Slips: []problems.Slip{
				{
					ID: "last-served-given", Formula: "fits + 2",
					Did:  "You gave storey {fits + 2}.",
					Why:  "That one still has enough: it is the last storey that is served. The question is for the first that is not.",
					Next: "Put your answer to the test: work out its shower. It must come out under {least}.",
				},
				{
					ID: "gaps-for-storeys", Formula: "fits + 1",
					Did:  "You added 1 to the number of floors that fit.",
					Why:  "The floors that fit were counted from the floor of storey 2. Two storeys lie up to there, so the count starts at 2.",
					Next: "Sketch the levels and number them. Count lines, not the gaps between them.",
				},
			},
		},
	},
	Holds: "The reach is a height, and floors are steps in it. A floor is served when its highest outlet lies below the reach. Near the limit a floor height of six inches decides, so heights come from the drawing, not from ten feet a floor. With friction in the riser the limit comes lower still.",
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "Shower head 6.5 ft (2.0 m) above the floor: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		least := keepAtTop(s)
		var t *building.Tower
		var fit []shortFloor
		for tries := 0; tries < 20 && len(fit) == 0; tries++ {
			t = s.Tower(building.Plan{Min: 6, Max: 24, NoSkip: true})
			fit = shortFloors(s, t, least)
		}
		f, _ := pick(s, fit)
		s.SetStreet(f.street+s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), f.street, 0, "on the gauge behind the backflow preventer")
		s.Focus = t.Storey(f.first)
		s.Set("street", f.street)
		s.Set("least", least)
		s.SetHeight("ground_height", t.Ground)
		s.SetHeight("floor_height", t.Floor)
		s.Set("outlet", s.Shower())
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		sol, err := solver.Solve(b, solver.Settings{Gamma: w.Gamma(), TopMin: w.Pressure("least")})
		if err != nil {
			return math.NaN()
		}
		return float64(sol.FirstLow - b.Ground + 1)
	},
})

type shortFloor struct {
	street float64
	first  int // storey
}

// shortFloors are the street pressures with which the tower has a first short
// storey that honest rounding does not move. A level 1 that is hardly taller
// than the rest, or taller by just the height of an outlet, suits none.
func shortFloors(s *building.Sheet, t *building.Tower, least float64) (fit []shortFloor) {
	bite, lo, hi := 2.4, 0.33, 0.67
	if !s.US() {
		bite, lo, hi = 0.7, 0.2, 0.8
	}
	taller := t.Ground.Value - t.Floor.Value
	if taller < bite || math.Abs(taller-s.Shower()) < 0.1*bite {
		return nil
	}
	for _, street := range peakReadings(s) {
		room := (street-onPlate(s, least))/plateHead(s, 1) - s.Shower() - t.Ground.Value
		part := building.Fraction(room, t.Floor.Value)
		first := int(math.Floor(room/t.Floor.Value)) + 3
		if room > t.Floor.Value && part > lo && part < hi && first <= t.Storeys {
			fit = append(fit, shortFloor{street, first})
		}
	}
	return fit
}

var _ = add(problems.Skill{
	ID: "booster-shortfall", Title: "Does it need a booster, and by how much",
	Chapter: 2, Order: 40, Year: 2, Kind: problems.Sum,
	Ask: "The gauge in the meter room reads {static} at noon with no flow, and {peak} at the peak of the day. At that flow the meter and the backflow preventer take {losses}, the riser {friction}. The shower on level {level}, the highest outlet, is {height} above the gauge; {least} must be left there ({limit_says}). Does the building need a booster? By how much is it short, or how much is to spare?",
	Givens: []problems.Given{
		{Name: "static", Says: "gauge in the meter room at noon, no flow", Measure: measure.Pressure, Plate: true},
		{Name: "peak", Says: "lowest residual on that gauge, at peak flow", Measure: measure.Pressure, Plate: true},
		{Name: "losses", Says: "loss of meter and backflow preventer at peak flow", Measure: measure.Pressure},
		{Name: "friction", Says: "friction of the riser at peak flow", Measure: measure.Pressure},
		{Name: "height", Says: "height of the highest shower above the gauge", Measure: measure.Height},
		{Name: "least", Says: "pressure to be left at the highest outlet", Measure: measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "entry", Says: "pressure behind the backflow preventer at peak", Measure: measure.Pressure,
			Formula: "peak - losses",
			Why:     "The top floor is short at the peak of the day or not at all, so the sum starts from the lowest residual.",
			Slips: []problems.Slip{
				{
					ID: "noon-static", Formula: "static - losses",
					Did:  "You started from {static}, the static of noon.",
					Why:  "At noon nobody showers. At the peak the street itself has fallen to {peak}, and that is when the top floor calls.",
					Next: "For what is too low take the lowest street pressure, for what is too high the highest.",
				},
				{
					ID: "losses-left-out", Formula: "peak",
					Did:  "You left out the meter and the backflow preventer.",
					Why:  "The gauge stands ahead of them, and at peak flow they take {losses}.",
					Next: "Look where the gauge sits. What comes after it must be paid for.",
				},
			},
		},
		{
			Name: "lost", Says: "pressure lost going up", Measure: measure.Pressure,
			Formula: "gamma x height",
			Why:     "Each foot or metre of height costs the same pressure.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known and the pressure is wanted, so multiply.",
				Next: "In US units the psi is less than half the feet; in SI the kPa is about ten times the metres.",
			}},
		},
		{
			Name: "at_top", Says: "pressure at the highest shower at peak", Measure: measure.Pressure,
			Formula: "entry - lost - friction",
			Why:     "Height and friction both come off on the way up.",
			Slips: []problems.Slip{
				{
					ID: "friction-left-out", Formula: "entry - lost",
					Did:  "You left out the friction of the riser.",
					Why:  "At the peak the water runs, and the riser takes {friction} from it.",
					Next: "Devices, height, friction: three things are paid before the shower. Tick them off.",
				},
				{
					ID: "height-left-out", Formula: "entry - friction",
					Did:  "You compared at the ground: the height up to level {level} is left out.",
					Why:  "Pressure is plentiful at the foot of a riser. The highest outlet decides, and {height} of water stands in the way.",
					Next: "Before you compare, ask where this pressure would be read.",
				},
			},
		},
		{
			Name: "booster", Says: "is a booster needed", Measure: measure.Answer,
			Formula: "at_top < least", Choices: []string{"no", "yes"},
			Why: "The street alone must leave {least} at the highest outlet. If it leaves less, a pump makes up the rest.",
			Slips: []problems.Slip{{
				ID: "wrong-way-round", Formula: "at_top > least",
				Did:  "You compared {at_top} with {least} the wrong way round.",
				Why:  "A booster helps where less is there than must be left, and only wears the piping where there is more.",
				Next: "Say it in words: has, needs. Less than it needs is short.",
			}},
		},
		{
			Name: "margin", Says: "pressure short, or to spare", Measure: measure.Pressure,
			Formula: "abs(least - at_top)",
			Why:     "The difference between what is there and what must be left is what is short, or to spare.",
			Slips: []problems.Slip{
				{
					ID: "top-as-answer", Formula: "at_top",
					Did:  "You gave {at_top}, the pressure at the top, as the answer.",
					Why:  "That is what is there. Short or to spare is how far it lies from {least}.",
					Next: "Two numbers stand side by side, has and needs. The answer is the gap between them.",
				},
				{
					ID: "added", Formula: "least + at_top",
					Did:  "You added {at_top} and {least}.",
					Why:  "What is already there need not be made again. A pump sized so would overfeed the top.",
					Next: "If exactly {least} were there, nothing would be short. Your sum must give zero then.",
				},
			},
		},
	},
	Holds: "A building needs a booster when the street, at its lowest and with everything running, does not leave enough at the outlet that is hardest to serve. How short it is there is what the pump must add at that flow. A walk-up of three storeys seldom needs one, and a pump that is not needed is a pump to keep up.",
	Cautions: []string{
		"A booster must not pull the street down: low-suction cut-off by the code and the utility. Pumps are locked out before a coupling or a union is touched.",
	},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "Lowest residual at peak, not the static: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		least := keepAtTop(s)
		friction := s.Pick([]float64{3, 4, 5, 6}, []float64{20, 25, 30, 40})
		short := s.Chance(0.6)
		var height, losses float64
		var fit []noonAndPeak
		for tries := 0; tries < 20 && len(fit) == 0; tries++ {
			t := s.Tower(building.Plan{Min: 3, Max: 10})
			height = t.Up(t.Storeys) + s.Shower()
			losses = s.Meter() + s.Backflow(s.Chance(0.3))
			fit = streetsForTop(s, losses, head(s, height)+friction, least, short)
		}
		b := s.Building
		f, _ := pick(s, fit)
		s.SetStreet(f.static, f.peak, 0, "on the gauge in the meter room")
		b.Friction = unit.Gradient(float64(s.Press(friction)) / float64(s.Length(height)))
		s.Focus = b.Top()
		s.Name("level", b.Levels[b.Top()].Label)
		s.Set("static", f.static)
		s.Set("peak", f.peak)
		s.Set("losses", losses)
		s.Set("friction", friction)
		setHeight(s, "height", height)
		s.Set("least", least)
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		sol, err := solver.Solve(b, solver.Settings{Gamma: w.Gamma(), TopMin: w.Pressure("least")})
		if err != nil {
			return math.NaN()
		}
		return math.Abs(float64(w.Pressure("least") - sol.TopOnly + w.Pressure("friction")))
	},
})

// noonAndPeak are two readings of the street gauge.
type noonAndPeak struct{ static, peak float64 }

// streetsForTop are the readings with which the highest outlet is short, or
// not, of least by a margin that honest rounding does not turn. Losses and
// the rest of the way up are in the unit of code pressures.
func streetsForTop(s *building.Sheet, losses, way, least float64, short bool) (fit []noonAndPeak) {
	unitPlate, unitCode := s.PickPlate([]float64{1}, []float64{7}), s.Pick([]float64{1}, []float64{7})
	for n := 34.0; n <= 80; n++ {
		peak := n * unitPlate
		top := (peak/onPlate(s, 1) - losses - way) / unitCode
		gap := least/unitCode - top
		if top < 4 || math.Abs(gap) < 4 || gap < -25 || short != (gap > 0) || math.Abs(gap-top) < 2.5 {
			continue
		}
		for _, swing := range []float64{5, 7, 8, 10} {
			if math.Abs(swing*unitPlate-onPlate(s, losses)) > 0.5 {
				fit = append(fit, noonAndPeak{peak + swing*unitPlate, peak})
			}
		}
	}
	return fit
}
