package skills

import (
	"math"
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var zoneBreaksSkill = problems.Skill{
	ID: "zone-breaks", Title: "How many zones, and where they break",
	Chapter: 5, Order: 30, Year: 3, Kind: problems.Sum,
	Ask: "A tower has {storeys} storeys, numbered from level 1 without a gap. At the busy hour the gauge at the foot of the riser, at the floor of level 1, reads {street}; the losses up to there and the friction of the riser are already taken off. Every highest shower head must have {least}. Leave to the street what it can feed. Fill the rest from below with booster zones of at most {zone_floors} floors each. On which level does the top zone begin? Least: {least_says}.",
	Givens: []problems.Given{
		{Name: "street", Says: "lowest street pressure at the floor of level 1, losses taken off", Measure: &measure.Pressure, Plate: true},
		{Name: "least", Says: "least pressure at a zone's highest outlet", Measure: &measure.Pressure},
		{Name: "ground_height", Says: "height from the floor of level 1 to that of level 2", Measure: &measure.Height},
		{Name: "floor_height", Says: "floor to floor height from level 2 up", Measure: &measure.Height},
		{Name: "high_outlet", Says: "height of the shower head above its floor", Measure: &measure.Height},
		{Name: "storeys", Says: "storeys, level 1 counted", Measure: &measure.Count},
		{Name: "zone_floors", Says: "floors that one zone may have", Measure: &measure.Count},
	},
	Rules: []problems.Rule{
		{
			Name: "reach", Says: "height that the street reaches", Measure: &measure.Height,
			Formula: "(street - least) / gamma",
			Why:     "Only what is over the pressure promised to the top shower can be spent on height.",
			Slips: []problems.Slip{
				{
					ID: "least-left-out", Formula: "street / gamma",
					Did:  "You let the water climb until all of {street} was used up.",
					Why:  "At that height the gauge stands at zero. The shower there needs {least}, so the street must stop pushing upward that much sooner.",
					Next: "Take off first what must be left at the end, then turn the rest into height.",
				},
				{
					ID: "multiplied", Formula: "(street - least) x gamma",
					Did:  "You multiplied by {gamma}.",
					Why:  "Multiplying turns a height into a pressure. You have the pressure and want the height, so divide.",
					Next: "The feet are more than twice the psi; ten kPa are about one metre.",
				},
			},
		},
		{
			Name: "rest", Says: "what is left of it above level 2, under the shower head", Measure: &measure.Height,
			Formula: "reach - ground_height - high_outlet",
			Why:     "The first storey has its own height and the shower head hangs over its floor. Both come off before equal floors are counted.",
			Slips: []problems.Slip{
				{
					ID: "outlet-left-out", Formula: "reach - ground_height",
					Did:  "You counted up to the floor and left out the {high_outlet} to the shower head.",
					Why:  "The floor has no tap in it. The last floor that your count gives to the street may have a shower that gets too little.",
					Next: "A floor is fed when its highest outlet is fed.",
				},
				{
					ID: "ground-as-typical", Formula: "reach - floor_height - high_outlet",
					Did:  "You took level 1 to be {floor_height} high, like the floors over it.",
					Why:  "It is {ground_height}. Lobbies and shops are built taller, and that height is climbed too.",
					Next: "Read the height of the first storey by itself.",
				},
			},
		},
		{
			Name: "gaps", Says: "whole floor heights above level 2 within reach", Measure: &measure.Count, Whole: true,
			Formula: "rounddown(rest / floor_height)",
			Why:     "A floor that the water reaches in part has too little pressure, so it belongs to the booster.",
			Slips: []problems.Slip{{
				ID: "rounded-up", Formula: "roundup(rest / floor_height)",
				Did:  "You rounded up to {got}.",
				Why:  "The street does not lift the water so far. The highest floor you left to it would run short at the busy hour.",
				Next: "What the street gives is rounded down, what we must build is rounded up.",
			}},
		},
		{
			Name: "fed", Says: "storeys that the street feeds", Measure: &measure.Count, Whole: true,
			Formula: "gaps + 2",
			Why:     "Level 1 and level 2 are below the first of these gaps; each gap adds one storey.",
			Would:   func(w problems.World, v float64) problems.Outcome { return streetFeeds(w, int(v)) },
			Slips: []problems.Slip{
				{
					ID: "gaps-for-floors", Formula: "gaps",
					Did:  "You took the {gaps} gaps for the storeys that the street feeds.",
					Why:  "The gaps were counted from the floor of level 2. Levels 1 and 2 lie under them and are fed as well, free of charge.",
					Next: "Write the level at each end of the first gap: 2 and 3.",
				},
				{
					ID: "one-floor-lost", Formula: "gaps + 1",
					Did:  "You added one storey to the {gaps} gaps.",
					Why:  "One is right where gaps are counted from level 1. Here level 1 was taken off by its own height, so both level 1 and level 2 are still to be added.",
					Next: "With no gap at all the street would still feed levels 1 and 2.",
				},
			},
		},
		{
			Name: "boosted", Says: "storeys left to the booster", Measure: &measure.Count, Whole: true,
			Formula: "storeys - fed",
			Why:     "What the street feeds needs no pump, no valve and no electricity, and still runs in a power failure.",
			Slips: []problems.Slip{{
				ID: "street-not-used", Formula: "storeys",
				Did:  "You put all {storeys} storeys on the booster.",
				Why:  "The street feeds {fed} of them by itself. Pumping that water up and throttling it again costs money every day.",
				Next: "First question in every tower: how far does the street go for nothing?",
			}},
		},
		{
			Name: "zones", Says: "booster zones", Measure: &measure.Count, Whole: true,
			Formula: "roundup(boosted / zone_floors)",
			Why:     "The floors left over from full zones need a zone too, even if it is a short one.",
			Slips: []problems.Slip{{
				ID: "one-zone-short", Formula: "rounddown(boosted / zone_floors)",
				Did:  "You rounded down to {got}.",
				Why:  "Then some floors belong to no zone, or one zone grows past {zone_floors} floors and its bottom is over the limit.",
				Next: "Multiply back: zones x floors must be at least the storeys to be fed.",
			}},
		},
		{
			Name: "first_break", Says: "level on which the lowest booster zone begins", Measure: &measure.Count, Whole: true,
			Formula: "fed + 1",
			Why:     "The zone begins on the first level that the street does not feed.",
			Slips: []problems.Slip{{
				ID: "one-floor-low", Formula: "fed",
				Did:  "You let the booster zone begin on level {fed}.",
				Why:  "That is the last level of the street's zone. A floor tapped into two zones joins them, and pump pressure runs back into the low one.",
				Next: "Write each zone as from-to. No number may stand in two of them.",
			}},
		},
		{
			Name: "top_break", Says: "level on which the top zone begins", Measure: &measure.Count, Whole: true,
			Formula: "first_break + (zones - 1) x zone_floors",
			Why:     "Every booster zone under the top one is full. Count their floors on from the first break.",
			Would:   beginTopZone,
			Slips: []problems.Slip{
				{
					ID: "all-zones-counted", Formula: "first_break + zones x zone_floors",
					Did:  "You counted the floors of all {zones} zones on from level {first_break}.",
					Why:  "That ends above the top zone, where a further zone would begin. Only the zones below the top one lie under its first level.",
					Next: "The second zone begins one zone higher than the first, so the count of steps is one less than the count of zones.",
				},
				{
					ID: "counted-from-ground", Formula: "1 + (zones - 1) x zone_floors",
					Did:  "You counted the zones from level 1.",
					Why:  "The booster zones stand on top of the {fed} storeys that the street feeds. Counted from the ground each break falls too low.",
					Next: "Start at the first break, level {first_break}.",
				},
			},
		},
	},
	Holds:    "The street feeds what it can reach with the right pressure left. The rest is cut into zones no taller than the limits allow. A break is also a place: valves or pumps of the zone need a real floor with room, a drain and access, and hot and cold break on the same floors.",
	Cautions: []string{hotZonesToo, relieveFirst},
	Sources: []problems.Source{
		waterColumn, zoneLimitsBy,
		{Says: "Street first, zones filled from below; 10 to 12 floors a zone in flats, 8 or 9 in offices", Confidence: solver.Practice},
	},
	Draw: drawZoneBreaks,
	Solve: func(w problems.World) float64 {
		fed, ok := fedByStreet(w)
		if !ok {
			return 0
		}
		bottoms := solver.ZoneBottoms(w.Building.Storeys(), fed, int(w.SI("zone_floors")))
		return float64(bottoms[len(bottoms)-1])
	},
}

func init() { add(&zoneBreaksSkill) }

// drawZoneBreaks draws a street whose reach ends well inside a floor, and a
// zone that does not come out even over the rest.
func drawZoneBreaks(s *building.Sheet) {
	towers := building.Plan{Uses: zoned, Min: 20, Max: 45, NoSkip: true}
	t := s.Tower(towers)
	for n := 0; n < maxTowers && sameSlip(s, t); n++ {
		t = s.Tower(towers)
	}
	type scenario struct{ street, least, per float64 }
	streets := []float64{48, 50, 52, 55, 58, 60, 62, 65, 68, 70}
	if !s.PlateUS() {
		streets = []float64{330, 350, 365, 375, 400, 415, 425, 440, 450, 475}
	}
	pers := []float64{9, 10, 11, 12}
	if t.Use == solver.Office {
		pers = []float64{7, 8, 9}
	}
	blur := 1.4
	if !s.US() {
		blur = 0.2
	}
	var list []scenario
	for _, street := range streets {
		for _, least := range leastList(s) {
			rest := (float64(s.PlatePress(street)/s.Press(1))-least)/head(s, 1) - t.Ground.Value - s.Shower()
			if rest < t.Floor.Value || !building.Rounding(rest, t.Floor.Value, blur) {
				continue
			}
			left := float64(t.Storeys - 2 - int(rest/t.Floor.Value))
			for _, per := range pers {
				if f := building.Fraction(left, per); f > 0 && left > per && left < 4*per {
					list = append(list, scenario{street, least, per})
				}
			}
		}
	}
	c, ok := pick(s, list)
	if !ok {
		c = scenario{streets[0], s.Least(), pers[0]}
	}
	s.SetStreet(c.street+s.PickPlate([]float64{8, 10}, []float64{50, 75}), c.street, 0, "at the floor of level 1")
	s.Name("least_says", leastSays(s, c.least))
	s.Set("street", c.street)
	s.Set("least", c.least)
	s.SetHeight("ground_height", t.Ground)
	s.SetHeight("floor_height", t.Floor)
	s.Set("high_outlet", s.Shower())
	s.Set("storeys", float64(t.Storeys))
	s.Set("zone_floors", c.per)
}

// sameSlip is true where leaving the shower head out comes to the same height
// as taking level 1 for a typical floor.
func sameSlip(s *building.Sheet, t *building.Tower) bool {
	return math.Abs(t.Ground.Value-t.Floor.Value-s.Shower()) < 0.05*t.Floor.Value
}

// fedByStreet is how many storeys the street feeds; false where it is all.
func fedByStreet(w problems.World) (storeys int, ok bool) {
	sol, err := solver.Solve(w.Building, solver.Settings{Gamma: w.Gamma(), TopMin: w.Pressure("least")})
	if err != nil || sol.FirstLow < 0 {
		return 0, false
	}
	return sol.FirstLow - w.Building.Ground, true
}

// beginTopZone lets the top zone begin on a level and counts the floors in it
// and under it.
func beginTopZone(w problems.World, v float64) problems.Outcome {
	storeys, per, begins := w.Building.Storeys(), int(w.SI("zone_floors")), int(v)
	fed, _ := fedByStreet(w)
	switch {
	case begins > storeys:
		return problems.Outcome{Says: []string{"The building ends with level " + strconv.Itoa(storeys) + ": no zone can begin on level " + strconv.Itoa(begins) + "."}}
	case begins <= fed:
		return problems.Outcome{Says: []string{"Level " + strconv.Itoa(begins) + " has enough from the street, as every level up to " + strconv.Itoa(fed) + ". A zone that begins there pumps water that needs no pump."}}
	}
	top, under := storeys-begins+1, begins-fed-1
	o := problems.Outcome{Kept: true, Building: brokenAt(w, fed, begins)}
	says := "From level " + strconv.Itoa(begins) + " up the top zone would hold " + counted(top, "floor")
	if o.Kept = top <= per; o.Kept {
		o.Says = []string{says + ", and it may hold " + strconv.Itoa(per) + "."}
	} else {
		o.Says = []string{says + ", where no more than " + strconv.Itoa(per) + " are allowed: its lowest outlets would be over the limit."}
	}
	says = "Between it and the street's " + strconv.Itoa(fed) + " lie " + counted(under, "floor")
	switch full, rest := under/per, under%per; {
	case under == 0:
		o.Says = append(o.Says, "It would lie right on the street's "+strconv.Itoa(fed)+".")
	case rest == 0:
		o.Says = append(o.Says, says+", which is just "+zonesText(full)+" of "+strconv.Itoa(per)+".")
	case full == 0:
		o.Kept = false
		o.Says = append(o.Says, says+", which do not fill a zone of "+strconv.Itoa(per)+".")
	default:
		o.Kept = false
		o.Says = append(o.Says, says+", which is "+zonesText(full)+" of "+strconv.Itoa(per)+" and "+counted(rest, "floor")+" over.")
	}
	return o
}

func zonesText(n int) string {
	if n == 1 {
		return "one full zone"
	}
	return strconv.Itoa(n) + " full zones"
}

// brokenAt is the building with its zones: the street's, full ones above it,
// and the top one from a storey up.
func brokenAt(w problems.World, fed, begins int) *solver.Building {
	b := w.Building.Copy()
	top := b.Highest(b.Top()) - b.Street.GaugeAt
	boost := w.Pressure("least") + w.Gamma().OfColumn(top) - b.Street.Low
	b.Booster = &solver.Booster{Elevation: b.Levels[0].Elevation, Boost: boost, ShutOff: boost}
	b.Zones = []solver.Zone{{Name: "street", Bottom: 0, Top: b.Storey(fed), Supply: solver.FromStreet}}
	per := int(w.SI("zone_floors"))
	for n := fed + 1; n <= b.Storeys(); {
		last := min(n+per, begins) - 1
		if n >= begins {
			last = b.Storeys()
		}
		b.Zones = append(b.Zones, solver.Zone{Name: strconv.Itoa(len(b.Zones)), Bottom: b.Storey(n), Top: b.Storey(last), Supply: solver.FromBooster})
		n = last + 1
	}
	return b
}
