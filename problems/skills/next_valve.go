package skills

import (
	"slices"
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var nextValveSkill = problems.Skill{
	ID: "next-valve", Title: "Where the down-feed needs its next valve",
	Chapter: 5, Order: 60, Year: 3, Kind: problems.Sum,
	Ask: "In a down-feed riser a reducing valve under the ceiling of level {last_level} is set to {setting}. The fixtures just above the next valve may see at most {allowed} with no flow ({allowed_says}). Floors are {floor_height} apart, and each valve stands equally high on its floor. On which level does the next valve stand, as low as it may?",
	Givens: []problems.Given{
		{Name: "setting", Says: "setting of the last valve, no flow", Measure: &measure.Pressure},
		{Name: "allowed", Says: "most that the fixtures just above the next valve may see", Measure: &measure.Pressure},
		{Name: "floor_height", Says: "floor to floor height", Measure: &measure.Height},
		{Name: "last_level", Says: "level of the last valve", Measure: &measure.Count},
	},
	Rules: []problems.Rule{
		{
			Name: "growth", Says: "pressure that may build up below the last valve", Measure: &measure.Pressure,
			Formula: "allowed - setting",
			Why:     "The riser leaves the valve with its setting. It may grow until the fixtures above the next valve have all they are allowed.",
			Slips: []problems.Slip{{
				ID: "setting-left-out", Formula: "allowed",
				Did:  "You let the whole {allowed} build up below the valve.",
				Why:  "The water leaves the valve with {setting} already. At the foot of your height the fixtures would see {allowed} and {setting} together.",
				Next: "What may grow is the end less the start.",
			}},
		},
		{
			Name: "drop", Says: "height in which it builds up", Measure: &measure.Height,
			Formula: "growth / gamma",
			Why:     "Each foot or metre down adds the same, so the growth divided by it gives the height.",
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "growth x gamma",
				Did:  "You multiplied by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. You have the pressure and want the height.",
				Next: "The feet are more than twice the psi; ten kPa are about one metre.",
			}},
		},
		{
			Name: "floors", Says: "floors from the last valve down to the next", Measure: &measure.Count, Whole: true,
			Formula: "rounddown(drop / floor_height)",
			Why:     "Valves stand on floors. Of the two floors beside the exact place the higher one keeps the limit.",
			Slips: []problems.Slip{{
				ID: "rounded-to-lower-floor", Formula: "roundup(drop / floor_height)",
				Did:  "You went {got} floors down, to the floor below the exact place.",
				Why:  "There the pressure has already grown past {allowed}, and the fixtures just above the valve see it every night.",
				Next: "Round towards the higher floor. Then put the number back: setting and growth must stay within the limit.",
			}},
		},
		{
			Name: "next_level", Says: "level of the next valve", Measure: &measure.Count, Whole: true,
			Formula: "last_level - floors",
			Why:     "The floors are counted down from the last valve.",
			Would:   hangNextValve,
			Slips: []problems.Slip{
				{
					ID: "from-the-ground", Formula: "1 + floors",
					Did:  "You counted the {floors} floors up from level 1.",
					Why:  "The pressure builds up below the last valve, so the height hangs from that valve. From the ground it says nothing.",
					Next: "Measure a down-feed from above: header, valve, next valve.",
				},
				{
					ID: "first-floor-counted", Formula: "last_level - floors + 1",
					Did:  "You counted level {last_level} as the first of the {floors} floors.",
					Why:  "That floor is where you start; no height lies between it and itself. The valve lands one floor higher than it must, and over a tall riser that may cost one valve more.",
					Next: "One floor down from level {last_level} is level {last_level - 1}.",
				},
			},
		},
	},
	Holds:    "Below a valve the pressure grows again with every floor. Before it has grown past what the fixtures may see, the riser needs the next valve. The number that decides is the limit of those fixtures. It is not a limit of the valve, which takes far more at its inlet.",
	Cautions: []string{relieveFirst, hotZonesToo},
	Sources: []problems.Source{
		waterColumn, zoneLimitsBy,
		{Says: "70 psi down to 25 psi (480 to 170 kPa) makes 104 ft (31.6 m): a pair of shop drills, no rule of a code or maker", Confidence: solver.Practice},
	},
	Draw: drawNextValve,
	Solve: func(w problems.World) float64 {
		b := w.Building
		drop := solver.NextValve(w.Pressure("allowed"), w.Pressure("setting"), w.Gamma())
		last := b.Zones[b.ZoneOf(w.Focus)].Top
		return float64(last - solver.WholeFloors(drop, b.Levels[last].Height) - b.Ground + 1)
	},
}

func init() { add(&nextValveSkill) }

// pair is a setting and what it may grow to.
type pair struct {
	allowed, setting float64
	says             string
}

// drawNextValve draws a down-feed whose zones under the last valve are still
// one: the valve that divides them is asked for.
func drawNextValve(s *building.Sheet) {
	t, plan, ok := downFeed(s, building.Plan{Uses: zoned, Min: 20, Max: 36, NoSkip: true}, 1, s.UsualZones())
	if !ok {
		return
	}
	top := len(t.Zones) - 2
	last := t.Zones[top].Top - t.Building.Ground + 1
	p, ok := pick(s, nextPairs(s, t, plan, last))
	if !ok {
		p = drillPair(s)
	}
	zone := t.Zones[top]
	zone.Bottom = 0
	zone.Valve = &solver.Valve{Elevation: zone.Valve.Elevation, Setting: s.Press(p.setting), FallOff: zone.Valve.FallOff}
	t.Zones = []solver.Zone{zone, t.Zones[top+1]}
	s.Focus = zone.Top
	s.Name("allowed_says", p.says)
	s.Set("setting", p.setting)
	s.Set("allowed", p.allowed)
	s.SetHeight("floor_height", t.Floor)
	s.Set("last_level", float64(last))
}

// drillPair is the pair that shops drill with.
func drillPair(s *building.Sheet) pair {
	const says = "a shop drill, common practice and no code rule"
	if s.US() {
		return pair{70, 25, says}
	}
	return pair{480, 170, says}
}

// nextPairs are the pairs that end well inside a floor of the tower.
func nextPairs(s *building.Sheet, t *building.Tower, plan building.ZonePlan, last int) []pair {
	all := []pair{drillPair(s)}
	for _, allowed := range mostList(s) {
		for _, setting := range [][]float64{{170, 200, 225, 240, 250, 275}, {25, 30, 35, 38, 40, 42, 45}}[usIndex(s)] {
			if setting >= plan.Least {
				all = append(all, pair{allowed, setting, mostSays(s, allowed)})
			}
		}
	}
	blur := 2.2
	if !s.US() {
		blur = 0.2
	}
	var fit []pair
	for _, p := range all {
		drop := (p.allowed - p.setting) / head(s, 1)
		n := int(drop / t.Floor.Value)
		if n >= 4 && last-n >= 2 && last-n != n && last-n != n+1 && building.Rounding(drop, t.Floor.Value, blur) {
			fit = append(fit, p)
		}
	}
	if len(fit) > 0 && fit[0] == all[0] && s.Chance(0.3) {
		return fit[:1]
	}
	return fit
}

// usIndex is 1 where heights and code are in US units.
func usIndex(s *building.Sheet) int {
	if s.US() {
		return 1
	}
	return 0
}

// hangNextValve puts the next valve on a level and looks at the fixtures just
// above it.
func hangNextValve(w problems.World, v float64) problems.Outcome {
	b, n := w.Building.Copy(), int(v)
	zone := b.ZoneOf(w.Focus)
	last, allowed := b.Zones[zone], w.Pressure("allowed")
	lastName := w.Level(last.Top)
	if n > last.Top-b.Ground {
		return problems.Outcome{Says: []string{
			"Level " + strconv.Itoa(n) + " does not lie below the last valve, on " + lastName + ". A valve there would hold back nothing that has built up since."}}
	}
	if n < 1 {
		p := b.At(b.Ground, b.Levels[b.Ground].Elevation, w.Gamma())
		says, kept := w.Stands("with no further valve the floor of "+w.Level(b.Ground), p, allowed)
		return problems.Outcome{Says: []string{problems.Sentence(says) + "."}, Kept: kept}
	}
	i := b.Storey(n)
	hung := *last.Valve
	hung.Elevation += b.Levels[i].Elevation - b.Levels[last.Top].Elevation
	b.Zones[zone].Bottom = i + 1
	next := solver.Zone{Name: "next", Bottom: last.Bottom, Top: i, Supply: last.Supply, Valve: &hung}
	b.Zones = slices.Insert(b.Zones, zone, next)
	at := b.Inlet(zone, w.Gamma())
	says, kept := w.Stands("the fixtures just above it", at, allowed)
	o := problems.Outcome{
		Says: []string{"With the next valve on " + w.Level(i) + ", " + says + "."},
		Kept: kept, Building: b, Marks: []problems.Mark{w.Mark(i, problems.AtValve, at, kept)},
	}
	lower := solver.FloorPressure(at, w.Gamma(), -w.Length("floor_height"))
	if w.Within(lower, allowed) {
		o.Kept = false
		o.Says = append(o.Says, "A floor lower they would stand at "+w.Press(lower)+", still within it: the valve could hang lower, and a tall riser need one less.")
	}
	return o
}
