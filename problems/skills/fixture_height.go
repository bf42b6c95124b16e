package skills

import (
	"math"
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var fixtureHeightSkill = problems.Skill{
	ID: "fixture-height", Title: "Height of a fixture above the gauge or the main",
	Chapter: 1, Order: 90, Year: 1, Kind: problems.Sum,
	Ask: "The street pressure was read {read_at}, {datum_below} below the floor of level 1. How high above that point is the shower head on level {level}? {skip_says}",
	Givens: []problems.Given{
		{Name: "label", Says: "number of the shower's level as the elevator shows it; level 1 is the ground floor", Measure: &measure.Count},
		{Name: "skipped", Says: "numbers left out below it", Measure: &measure.Count},
		{Name: "ground", Says: "floor to floor, level 1 to level 2", Measure: &measure.Height},
		{Name: "typical", Says: "floor to floor, every level above", Measure: &measure.Height},
		{Name: "datum_below", Says: "{datum}, below the floor of level 1", Measure: &measure.Height},
		{Name: "other_below", Says: "{other}, below the floor of level 1", Measure: &measure.Height},
		{Name: "outlet", Says: "shower head above its floor", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "storey", Says: "which storey it is, level 1 counted as the first", Whole: true, Measure: &measure.Count,
			Formula: "label - skipped",
			Why:     "The elevator shows a label, the riser passes real floors. A number that is left out has no floor and no height.",
			Slips: []problems.Slip{{
				// no value, and so no slip, where no number is left out
				ID: "label-as-count", Formula: "label x skipped / skipped",
				Did:  "You counted {label} storeys because the elevator says {label}.",
				Why:  "This building has no level 13. A floor that is not there adds no height, but it would cost you the pressure of one whole storey in the sum.",
				Next: "Look up the panel in the elevator, or count the floor lines on the riser diagram.",
			}},
		},
		{
			Name: "gaps", Says: "floor-to-floor heights from level 1 up to that floor", Whole: true, Measure: &measure.Count,
			Formula: "storey - 1",
			Why:     "Between two floors is one height, as between two posts of a fence there is one panel: one fewer than posts.",
			Slips: []problems.Slip{{
				ID: "floors-for-gaps", Formula: "storey",
				Did:  "You took {storey} heights for {storey} storeys.",
				Why:  "The last of them is above the shower's own floor; the water never climbs it. That is one storey too much height.",
				Next: "Try it on level 2: one height up from level 1, not two.",
			}},
		},
		{
			Name: "floor_up", Says: "floor of level {level} above the floor of level 1", Measure: &measure.Height,
			Formula: "ground + (gaps - 1) x typical",
			Why:     "Level 1 is taller than the rest, so its height stands apart and the others are multiplied.",
			Slips: []problems.Slip{
				{
					ID: "ground-as-typical", Formula: "gaps x typical",
					Did:  "You took all {gaps} heights as {typical}.",
					Why:  "Lobby, shops or entrance make level 1 taller: {ground} here. The difference is real climb.",
					Next: "Read the lowest floor-to-floor height on the drawing by itself, before you multiply anything.",
				},
				{
					ID: "all-as-ground", Formula: "gaps x ground",
					Did:  "You took all {gaps} heights as {ground}, that of level 1.",
					Why:  "Only level 1 is that tall. The floors above it are {typical} each.",
					Next: "Read two floor-to-floor heights off the drawing, the lowest and one further up.",
				},
				{
					ID: "ground-left-over", Formula: "ground + gaps x typical",
					Did:  "You added level 1 to {gaps} typical heights.",
					Why:  "Level 1 is one of the {gaps} heights already. After it there is one fewer left to multiply.",
					Next: "Count them off: level 1 is the first height, the rest must make up the number.",
				},
			},
		},
		{
			Name: "height", Says: "height of the shower head above {datum}", Measure: &measure.Height,
			Formula: "datum_below + floor_up + outlet",
			Why:     "The height begins where the pressure was read and ends where the water comes out: up to level 1, up the floors, up to the head.",
			Slips: []problems.Slip{
				{
					ID: "depth-left-out", Formula: "floor_up + outlet",
					Did:  "You began at the floor of level 1.",
					Why:  "The pressure was read {datum_below} lower. The water has to climb that too before it reaches level 1.",
					Next: "Put a finger on the point where the pressure was read. The height begins there.",
				},
				{
					ID: "outlet-left-out", Formula: "datum_below + floor_up",
					Did:  "You stopped at the floor of level {level}.",
					Why:  "The shower head is {outlet} above that floor, and the water has to get up to it.",
					Next: "End the height where the water comes out, not at the slab below it.",
				},
				{
					ID: "other-datum", Formula: "other_below + floor_up + outlet",
					Did:  "You began {other_below} below level 1: that is {other}.",
					Why:  "The pressure was read elsewhere. The same street gives one number there and another here, because the two points are not equally deep.",
					Next: "A pressure and its place belong together: at the main, or on the gauge in the meter room. Note both.",
				},
				{
					ID: "depth-subtracted", Formula: "floor_up + outlet - datum_below",
					Did:  "You took the {datum_below} off.",
					Why:  "The point lies below level 1, so from there the way up is longer, not shorter.",
					Next: "Draw the line from the lower point to the upper one. Every part of it that goes up is added.",
				},
			},
		},
	},
	Holds: "Pressure changes with the height between two points and with nothing else, so both points must be named. On the way up there is one floor-to-floor height fewer than floors, level 1 is often taller, and the label in the elevator is no count.",
	Sources: []problems.Source{
		{Says: "Level 1 is the ground floor, as in North America; heights of floors and outlets: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 5, Max: 20, Cellar: true})
		var fit []int
		for n := 4; n <= t.Storeys; n++ {
			// all heights as level 1's, and one height too many, differ
			gaps := float64(n - 1)
			if math.Abs(t.Ground.Value+gaps*t.Floor.Value-gaps*t.Ground.Value) > 0.02*t.Up(n) {
				fit = append(fit, n)
			}
		}
		n, _ := pick(s, fit)
		main, gauge := depths(s, t)
		at := point{"the street main", "at the street main", main}
		off := point{"the gauge in the meter room", "on the gauge in the meter room", gauge}
		if s.Chance(0.5) {
			at, off = off, at
		}
		s.SetStreet(
			s.PickPlate([]float64{60, 65, 70, 75}, []float64{425, 450, 475, 500}),
			s.PickPlate([]float64{50, 55}, []float64{350, 375}), -at.below, at.readAt)
		s.Building.Street.MainDepth = s.Length(main)
		s.Focus = t.Storey(n)

		label, _ := strconv.Atoi(t.Level(n))
		skips := "The building has every level from 1 up."
		if label > n {
			skips = "The building has no level 13."
		}
		s.Name("level", t.Level(n))
		s.Name("skip_says", skips)
		s.Name("datum", at.name)
		s.Name("other", off.name)
		s.Name("read_at", at.readAt)
		s.Set("label", float64(label))
		s.Set("skipped", float64(label-n))
		s.SetHeight("ground", t.Ground)
		s.SetHeight("typical", t.Floor)
		setHeight(s, "datum_below", at.below)
		setHeight(s, "other_below", off.below)
		s.Set("outlet", s.Shower())
	},
	Solve: func(w problems.World) float64 {
		return float64(w.Building.Highest(w.Focus) - w.Building.Street.GaugeAt)
	},
}

func init() { add(&fixtureHeightSkill) }

// point is where a pressure is read, below the floor of level 1 in the unit
// of heights.
type point struct {
	name, readAt string
	below        float64
}

// depths draws how far the street main and the gauge in the meter room, which
// is on the lowest level, lie below the floor of level 1. They differ from
// each other and from the outlet's height by more than rounding hides.
func depths(s *building.Sheet, t *building.Tower) (main, gauge float64) {
	type pair struct{ main, gauge float64 }
	mains, ups, apart := []float64{4, 5, 6, 7, 8, 9}, []float64{3, 3.5, 4, 4.5, 5, 5.5}, 3.0
	if !s.US() {
		mains, ups, apart = []float64{0.9, 1.2, 1.5, 1.7, 2.4, 2.75}, []float64{1.0, 1.2, 1.4, 1.5}, 0.5
	}
	var fit []pair
	for _, m := range mains {
		for _, up := range ups {
			p := pair{m, t.Parking.Value*float64(t.Below) - up}
			if differ(apart, p.main, p.gauge, s.Shower()) {
				fit = append(fit, p)
			}
		}
	}
	p, _ := pick(s, fit)
	return p.main, p.gauge
}

// differ reports whether two depths and an outlet's height are so far apart
// that leaving one out, or taking the wrong one, shows in the sum.
func differ(by, main, gauge, outlet float64) bool {
	far := func(a, b float64) bool { return math.Abs(a-b) >= by/2 }
	return math.Abs(main-gauge) >= by && far(main, outlet) && far(gauge, outlet) &&
		far(math.Abs(main-gauge), outlet) && far(2*main, outlet) && far(2*gauge, outlet)
}
