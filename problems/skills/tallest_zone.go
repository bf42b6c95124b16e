package skills

import (
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var tallestZoneSkill = problems.Skill{
	ID: "tallest-zone", Title: "The tallest zone, at rest",
	Chapter: 5, Order: 10, Year: 2, Kind: problems.Sum,
	Ask:    "A pressure zone may have at most {most} at its lowest outlet, a water closet, and must have at least {least} at its highest, a shower head. Work with no water flowing. Typical floors are {floor_height} apart. How many floors may the zone have? Most: {most_says}. Least: {least_says}.",
	Givens: zoneGivens(),
	Rules: append([]problems.Rule{{
		Name: "spread", Says: "pressure that the height of the zone may use up", Measure: &measure.Pressure,
		Formula: "most - least",
		Why:     "The lowest outlet may have no more than one limit, the highest no less than the other. What lies between them is all that the height may cost.",
		Slips: []problems.Slip{{
			ID: "least-left-out", Formula: "most",
			Did:  "You let the height use up all of {most}.",
			Why:  "Then nothing is left at the top: the highest shower would stand at zero. {least} of it is already promised to that shower.",
			Next: "A zone has two ends. Write both limits down before you divide.",
		}},
	}}, floorsInSpread(zoneAtRest)...),
	Holds:    "Inside one zone the water hangs together, so each floor has more than the one above it. The zone can be as tall as the step from the lowest pressure allowed at its top to the highest allowed at its bottom.",
	Cautions: []string{hotZonesToo},
	Sources:  []problems.Source{waterColumn, zoneLimitsBy},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Uses: zoned, Min: 18, Max: 45})
		s.Street(0, "on the gauge in the meter room")
		tellZone(s, t, 0)
	},
	Solve: func(w problems.World) float64 {
		return zoneFloors(w, solver.TallestZone(w.Pressure("most"), w.Pressure("least"), 0, 0, w.Gamma()))
	},
}

func init() { add(&tallestZoneSkill) }

var tallestZoneWorkingSkill = problems.Skill{
	ID: "tallest-zone-working", Title: "The tallest zone, with water flowing",
	Chapter: 5, Order: 20, Year: 3, Kind: problems.Sum,
	Ask: "A zone behind a reducing valve may have at most {most} at its lowest outlet, a water closet, with no flow, and must have at least {least} at its highest, a shower head, at design flow. At that flow the valve falls off by {fall_off} and the riser loses {friction}. Typical floors are {floor_height} apart. How many floors may the zone have? Most: {most_says}. Least: {least_says}.",
	Givens: append(zoneGivens(),
		problems.Given{Name: "fall_off", Says: "how far the valve's outlet falls at design flow", Measure: &measure.Pressure},
		problems.Given{Name: "friction", Says: "friction of the zone's riser at design flow, fittings included", Measure: &measure.Pressure},
	),
	Rules: append([]problems.Rule{{
		Name: "spread", Says: "pressure left for the height of the zone", Measure: &measure.Pressure,
		Formula: "most - least - fall_off - friction",
		Why:     "The bottom is worst with no flow, the top at full flow. Between those two moments the valve and the pipe take their share, and only the rest is left for height.",
		Slips: []problems.Slip{
			{
				ID: "least-left-out", Formula: "most - fall_off - friction",
				Did:  "You took the losses off {most} and gave all the rest to the height.",
				Why:  "{least} must still be there at the highest shower. With your figure that shower gets nothing at the busy hour.",
				Next: "Ask what the top outlet has when the zone is as tall as you say.",
			},
			{
				ID: "fall-off-left-out", Formula: "most - least - friction",
				Did:  "You left out the {fall_off} that the valve falls off.",
				Why:  "A reducing valve must drop below its setting to open. The setting is limited by the night, when nothing flows; the shower is used by day, when the outlet is {fall_off} lower.",
				Next: "Setting is the no-flow figure. For a top outlet at flow, take the fall-off away.",
			},
			{
				ID: "friction-left-out", Formula: "most - least - fall_off",
				Did:  "You left out the {friction} that the riser loses at flow.",
				Why:  "Moving water rubs along the pipe all the way to the top floor. What is lost there is missing at the shower.",
				Next: "Two limits, two losses: count four terms in this line.",
			},
		},
	}}, floorsInSpread(zoneAtFlow)...),
	Holds:    "At night the bottom floor sees the full setting; at the busy hour the top floor sees the setting less fall-off, friction and height. Both must be right with one setting, so the losses come out of the height that the zone could have.",
	Cautions: []string{hotZonesToo, checkBothSides},
	Sources:  []problems.Source{waterColumn, zoneLimitsBy, valveHabits},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Uses: zoned, Min: 18, Max: 45})
		s.Street(0, "on the gauge in the meter room")
		fall := s.Pick([]float64{8, 10, 12}, []float64{50, 60, 70})
		friction := s.Pick([]float64{3, 4, 5, 6}, []float64{20, 25, 30, 35})
		s.Set("fall_off", fall)
		s.Set("friction", friction)
		tellZone(s, t, fall+friction)
	},
	Solve: func(w problems.World) float64 {
		return zoneFloors(w, solver.TallestZone(w.Pressure("most"), w.Pressure("least"), w.Pressure("fall_off"), w.Pressure("friction"), w.Gamma()))
	},
}

func init() { add(&tallestZoneWorkingSkill) }

func zoneGivens() []problems.Given {
	return []problems.Given{
		{Name: "most", Says: "most pressure at the zone's lowest outlet, no flow", Measure: &measure.Pressure},
		{Name: "least", Says: "least pressure at the zone's highest outlet", Measure: &measure.Pressure},
		{Name: "floor_height", Says: "floor to floor height", Measure: &measure.Height},
		{Name: "high_outlet", Says: "height of the shower head above its floor", Measure: &measure.Height},
		{Name: "low_outlet", Says: "height of the water closet's inlet above its floor", Measure: &measure.Height},
	}
}

// floorsInSpread are the lines from the pressure that height may use up to
// whole floors; would builds a zone of so many.
func floorsInSpread(would problems.Would) []problems.Rule {
	return []problems.Rule{
		{
			Name: "height", Says: "height from the lowest outlet to the highest", Measure: &measure.Height,
			Formula: "spread / gamma",
			Why:     "Each foot or metre of height costs the same pressure, so the pressure to spend divided by the price of one gives the height.",
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "spread x gamma",
				Did:  "You multiplied {spread} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. Here the pressure is known and the height is wanted, so divide.",
				Next: "In US units the feet are more than twice the psi; in SI ten kPa are about one metre.",
			}},
		},
		{
			Name: "rise", Says: "the same height measured from floor to floor", Measure: &measure.Height,
			Formula: "height - high_outlet + low_outlet",
			Why:     "The height runs from a closet low over its floor to a shower head high over its own. Between the two floors themselves there is that much less.",
			Slips: []problems.Slip{
				{
					ID: "outlets-left-out", Formula: "height",
					Did:  "You took {height} as the height from the bottom floor to the top floor.",
					Why:  "It is the height from outlet to outlet. The shower head stands {high_outlet} over its floor and the closet's inlet only {low_outlet}, so the floors are closer together than the outlets.",
					Next: "Sketch the two floors with their outlets and put the arrow where it really begins and ends.",
				},
				{
					ID: "outlets-other-way", Formula: "height + high_outlet - low_outlet",
					Did:  "You added the height of the shower head and took the closet's off.",
					Why:  "That makes the zone taller than the pressure allows. The shower's own height is part of {height}, so it comes off before floors are counted.",
					Next: "The shower head uses up height that no floor can have. It must come off.",
				},
			},
		},
		{
			Name: "gaps", Says: "whole floor heights that fit into it", Measure: &measure.Count, Whole: true,
			Formula: "rounddown(rise / floor_height)",
			Why:     "A floor that fits in part does not fit. One more would put a limit wrong at one end.",
			Slips: []problems.Slip{{
				ID: "rounded-up", Formula: "roundup(rise / floor_height)",
				Did:  "You rounded up to {got}.",
				Why:  "That many floor heights are more than {rise}. The lowest outlet would then be over its limit, or the highest short.",
				Next: "Multiply back: {got} floor heights must not be more than the height you have.",
			}},
		},
		{
			Name: "floors", Says: "floors in the zone", Measure: &measure.Count, Whole: true,
			Formula: "gaps + 1",
			Why:     "Floors stand at both ends of the gaps: two floors have one gap between them.",
			Would:   would,
			Slips: []problems.Slip{{
				ID: "gaps-for-floors", Formula: "gaps",
				Did:  "You gave {gaps}, the number of gaps, as the number of floors.",
				Why:  "There is a floor at the bottom of the first gap and one at the top of the last, so there is one floor more than gaps. Left out, each zone is a floor shorter than it could be, and a tower may get a valve station it does not need.",
				Next: "Try it with two floors: one height between them, and still two floors.",
			}},
		},
	}
}

// tellZone draws limits that end well inside a floor and tells the zone's
// numbers; losses is what comes off the spread.
func tellZone(s *building.Sheet, t *building.Tower, losses float64) {
	l := zoneLimits(s, func(l limits) bool {
		rise := (l.most-l.least-losses)/head(s, 1) - s.Shower() + s.Closet()
		return rise > 3*t.Floor.Value && building.Rounding(rise, t.Floor.Value, wholeUnits(s))
	})
	s.Set("most", l.most)
	s.Set("least", l.least)
	s.SetHeight("floor_height", t.Floor)
	s.Set("high_outlet", s.Shower())
	s.Set("low_outlet", s.Closet())
}

// wholeUnits is how far a height moves when the pressure before it and two
// lines of its own are rounded to whole psi and feet; next to nothing in SI.
func wholeUnits(s *building.Sheet) float64 {
	if s.US() {
		return 2.6
	}
	return 0.25
}

// zoneFloors counts the floors of a zone of that height on the building's
// typical floors.
func zoneFloors(w problems.World, height unit.Length) float64 {
	b := w.Building
	return float64(solver.ZoneFloors(height, b.Levels[w.Focus].Height, b.HighOutlet, b.LowOutlet))
}

func zoneAtRest(w problems.World, v float64) problems.Outcome { return zoneOf(w, int(v), 0, 0) }

func zoneAtFlow(w problems.World, v float64) problems.Outcome {
	return zoneOf(w, int(v), w.Pressure("fall_off"), w.Pressure("friction"))
}

// zoneOf builds a zone of so many floors that has the most it may at its
// lowest outlet, and looks at its top.
func zoneOf(w problems.World, floors int, fallOff, friction unit.Pressure) problems.Outcome {
	if floors < 1 {
		return problems.Outcome{Says: []string{"A zone of no floors serves nobody: the whole tower would still be without water."}}
	}
	b, most, least := w.Building, w.Pressure("most"), w.Pressure("least")
	top := func(floors int) unit.Pressure {
		h := unit.Length(floors-1)*b.Levels[w.Focus].Height + b.HighOutlet - b.LowOutlet
		return solver.FloorPressure(most-fallOff-friction, w.Gamma(), h)
	}
	at := top(floors)
	says, kept := w.Left("its top shower", "", at, least)
	o := problems.Outcome{Kept: kept, Building: builtZone(w, floors, fallOff, friction)}
	o.Says = []string{"In a zone of " + counted(floors, "floor") + " with " + w.Press(most) + " at its lowest outlet, " + says + "."}
	more := 0
	for w.Enough(top(floors+more+1), least) {
		more++
	}
	if more > 0 {
		o.Kept = false
		o.Says = append(o.Says, "It would bear "+counted(more, "floor")+" more. Zones that are too short ask for more valve stations.")
	}
	if o.Building != nil {
		first := b.Storey(2)
		o.Marks = []problems.Mark{w.Mark(first+floors-1, problems.AtHighest, at, kept), w.Mark(first, problems.AtLowest, most, true)}
	}
	return o
}

// builtZone puts the zone on the building's typical floors, from level 2 up;
// nil where they are too few. A gauge at its lowest outlet reads the most.
func builtZone(w problems.World, floors int, fallOff, friction unit.Pressure) *solver.Building {
	b := w.Building.Copy()
	low := b.Storey(2)
	top := low + floors - 1
	if top > b.Top() {
		return nil
	}
	most := w.Pressure("most")
	b.Friction = unit.Gradient(float64(friction) / float64(b.Highest(top)-b.Lowest(low)))
	up := b.Highest(b.Top()) - b.Street.GaugeAt
	boost := most + (w.Gamma() + b.Friction).OfColumn(up)
	b.Booster = &solver.Booster{Elevation: b.Levels[0].Elevation, Boost: boost, ShutOff: boost}
	b.Zones = []solver.Zone{
		{Name: "street", Bottom: 0, Top: low - 1, Supply: solver.FromStreet},
		{Name: "1", Bottom: low, Top: top, Supply: solver.FromBooster, Valve: &solver.Valve{Elevation: b.Lowest(low), Setting: most, FallOff: fallOff}},
	}
	if top < b.Top() {
		b.Zones = append(b.Zones, solver.Zone{Name: "2", Bottom: top + 1, Top: b.Top(), Supply: solver.FromBooster})
	}
	return b
}

// counted is a number of things in words: "1 floor", "3 floors".
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}
