package skills

import (
	"math"
	"strconv"

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

var firstShortFloorSkill = problems.Skill{
	ID: "first-short-floor", Title: "The first floor that is short of pressure",
	Chapter: 2, Order: 30, Year: 2, Kind: problems.Sum,
	Ask: "At the peak of the day {street} is left behind the meter and the backflow preventer, on a gauge at the floor of level 1. Level 1 is {ground_height} from floor to floor, every level above it {floor_height}. Each level's highest outlet is a shower head {outlet} above its floor, where {least} must be left ({limit_says}). Leave the friction of the riser aside. Which storey, counted from level 1 as the first, is the first that is short?",
	Givens: []problems.Given{
		{Name: "street", Says: "pressure at peak behind the meter and backflow preventer, at the floor of level 1", Measure: &measure.Pressure, Plate: true},
		{Name: "least", Says: "pressure to be left at each level's highest outlet", Measure: &measure.Pressure},
		{Name: "ground_height", Says: "level 1, floor to floor", Measure: &measure.Height},
		{Name: "floor_height", Says: "each level above it, floor to floor", Measure: &measure.Height},
		{Name: "outlet", Says: "height of a shower head above its floor", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "spare", Says: "pressure that may be spent on height", Measure: &measure.Pressure,
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
			Name: "reach", Says: "height that the street reaches", Measure: &measure.Height,
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
			Name: "room", Says: "height left for floors above storey 2", Measure: &measure.Height,
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
			Name: "fits", Says: "whole floors that fit into it", Measure: &measure.Count, Whole: true,
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
			Name: "first_short", Says: "first storey that is short", Measure: &measure.Count, Whole: true,
			Formula: "fits + 3",
			Why:     "Storey 2 is served, and {fits} more above it. The next one after those is the first that is not.",
			Would:   func(w problems.World, v float64) problems.Outcome { return streetFeeds(w, int(v)-1) },
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
	Holds: "The reach is a height, and floors are steps in it. A floor is served when its highest outlet lies below the reach. Near the limit six inches more on each floor decide, so heights come from the drawing, not from ten feet a floor. With friction in the riser the limit comes lower still.",
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
}

func init() { add(&firstShortFloorSkill) }

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

// streetFeeds leaves storeys, counted from level 1, to the street alone, and
// asks the last of them and the one above it.
func streetFeeds(w problems.World, storeys int) problems.Outcome {
	b, least := w.Building.Copy(), w.Pressure("least")
	last := min(storeys, b.Storeys())
	b.Zones = nil
	if last >= 1 {
		b.Zones = []solver.Zone{{Name: "street", Bottom: 0, Top: b.Storey(last), Supply: solver.FromStreet}}
	}
	o := problems.Outcome{Building: b, Kept: true}
	at := func(n int) (string, unit.Pressure) {
		i := b.Storey(n)
		return "the shower on " + w.Level(i), b.Flowing(i, b.Highest(i), w.Gamma())
	}
	lead := "Fed by the street up to storey " + strconv.Itoa(storeys) + ", "
	switch {
	case last < 1:
		o.Says = append(o.Says, "Nothing would be left to the street.")
	case storeys > last:
		lead = "The building ends at storey " + strconv.Itoa(last) + ". Even there "
	}
	if last >= 1 {
		where, p := at(last)
		says, kept := w.Left(where, "", p, least)
		o.Kept = kept && storeys == last
		o.Says = append(o.Says, lead+says+".")
		o.Marks = append(o.Marks, w.Mark(b.Storey(last), problems.AtHighest, p, kept))
	}
	if next := max(1, last+1); o.Kept && next <= b.Storeys() {
		where, p := at(next)
		says, spare := w.Left(where, "", p, least)
		o.Kept = !spare
		if spare {
			o.Says = append(o.Says, problems.Sentence(w.Level(b.Storey(next)))+" has "+w.Press(p)+" at its shower from the street, and needs "+w.Press(least)+": a pump would have nothing to do there.")
		} else {
			o.Says = append(o.Says, "From the street "+says+": that is the first that is short.")
		}
		o.Marks = append(o.Marks, w.Mark(b.Storey(next), problems.AtHighest, p, !spare))
	}
	return o
}
