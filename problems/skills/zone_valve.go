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

var zoneValveSettingSkill = problems.Skill{
	ID: "zone-valve-setting", Title: "Setting an up-feed zone valve",
	Chapter: 5, Order: 40, Year: 3, Kind: problems.Sum,
	Ask: "A zone is fed upward and serves levels {bottom_level} to {top_level}, every floor {floor_height} high. Its reducing valve stands {valve_up} above the floor of level {bottom_level}. At design flow the valve falls off by {fall_off}, the riser loses {friction}, and the top shower head must still have {least}. Find the setting, rounded up to the next step of {valve_step}. With no flow the outlet creeps up by {creep}. Does the lowest outlet then keep within {most}? Most: {most_says}. Least: {least_says}.",
	Givens: []problems.Given{
		{Name: "bottom_level", Says: "lowest level of the zone, where the valve stands", Measure: &measure.Count},
		{Name: "top_level", Says: "highest level of the zone", Measure: &measure.Count},
		{Name: "floor_height", Says: "floor to floor height", Measure: &measure.Height},
		{Name: "valve_up", Says: "height of the valve above its floor", Measure: &measure.Height},
		{Name: "high_outlet", Says: "height of the shower head above its floor", Measure: &measure.Height},
		{Name: "low_outlet", Says: "height of the lowest outlet above its floor", Measure: &measure.Height},
		{Name: "least", Says: "least pressure at the top shower head, flowing", Measure: &measure.Pressure},
		{Name: "fall_off", Says: "how far the valve's outlet falls at design flow", Measure: &measure.Pressure},
		{Name: "friction", Says: "friction of the zone's riser at design flow", Measure: &measure.Pressure},
		{Name: "valve_step", Says: "step that the valve is set in", Measure: &measure.Pressure},
		{Name: "creep", Says: "how far the closed valve's outlet creeps above the setting", Measure: &measure.Pressure},
		{Name: "most", Says: "most pressure at the lowest outlet, no flow", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "gaps", Says: "floor heights from the bottom level to the top level", Measure: &measure.Count, Whole: true,
			Formula: "top_level - bottom_level",
			Why:     "From one level to the next is one floor height.",
			Slips: []problems.Slip{{
				ID: "floors-for-gaps", Formula: "top_level - bottom_level + 1",
				Did:  "You counted {got} floors and took as many floor heights.",
				Why:  "The valve stands on the bottom floor and the top shower is over the top floor. Between {got} floors there is one height less.",
				Next: "Subtract the two level numbers and leave it there.",
			}},
		},
		{
			Name: "height", Says: "height from the valve to the top shower head", Measure: &measure.Height,
			Formula: "gaps x floor_height - valve_up + high_outlet",
			Why:     "The setting is read at the valve, so the climb begins there and ends at the outlet.",
			Slips: []problems.Slip{
				{
					ID: "outlet-left-out", Formula: "gaps x floor_height - valve_up",
					Did:  "You stopped at the floor of level {top_level} and left out the {high_outlet} to the shower head.",
					Why:  "The water still climbs to the shower head. The setting comes out too low by that column.",
					Next: "End the height at the outlet, where the pressure is wanted.",
				},
				{
					ID: "valve-height-left-out", Formula: "gaps x floor_height + high_outlet",
					Did:  "You began at the floor of level {bottom_level}; the valve stands {valve_up} above it.",
					Why:  "The valve's own gauge shows the setting. The water below the valve is not part of the climb.",
					Next: "Begin the height where the gauge is.",
				},
			},
		},
		{
			Name: "column", Says: "pressure that the climb costs", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "Each foot or metre of water above the valve weighs on it.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known here and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "bare", Says: "pressure at the valve with no losses", Measure: &measure.Pressure,
			Formula: "least + column",
			Why:     "The valve must carry the climb and still leave the shower its share.",
			Slips: []problems.Slip{
				{
					ID: "column-subtracted", Formula: "abs(column - least)",
					Did:  "You took one of {column} and {least} off the other.",
					Why:  "The valve stands below the shower. It has to push the water up and leave pressure over, so both are added. With your figure no water would reach the top floor.",
					Next: "Below needs more than above. The setting must be larger than {least}.",
				},
				{
					ID: "least-left-out", Formula: "column",
					Did:  "You set the valve to carry the climb and no more: {column}.",
					Why:  "That lifts the water just to the shower head and leaves it at zero pressure. The shower needs {least}.",
					Next: "Climb and what is left at the end: two terms before any loss.",
				},
			},
		},
		{
			Name: "needed", Says: "setting that is needed", Measure: &measure.Pressure,
			Formula: "bare + fall_off + friction",
			Why:     "A valve is set with no flow. At the busy hour its outlet sinks by the fall-off and the riser takes its friction, so both are laid on top.",
			Slips: []problems.Slip{
				{
					ID: "fall-off-left-out", Formula: "bare + friction",
					Did:  "You left out the {fall_off} that the valve falls off.",
					Why:  "A reducing valve opens by letting its outlet sink. At the busy hour the top floor would be short by {fall_off}, though the gauge was right when you set it.",
					Next: "Setting at no flow, shower at flow: between the two lies the fall-off.",
				},
				{
					ID: "friction-left-out", Formula: "bare + fall_off",
					Did:  "You left out the {friction} of the riser.",
					Why:  "It is lost between the valve and the top shower whenever the zone is busy.",
					Next: "Follow the water from the valve: valve, pipe, climb, shower. Four terms.",
				},
				{
					ID: "losses-subtracted", Formula: "bare - fall_off - friction",
					Did:  "You took the losses off.",
					Why:  "Losses make the outlet poorer, so the setting must be richer by as much. Taken off, they hit the top floor twice.",
					Next: "Going back from the shower to the valve, every loss is added.",
				},
			},
		},
		{
			Name: "setting", Says: "setting of the valve", Measure: &measure.Pressure,
			Formula: "roundup(needed / valve_step) x valve_step",
			Why:     "It keeps a minimum, so it is rounded up to what can be set and read on the gauge.",
			Would:   setZoneValve,
			Slips: []problems.Slip{{
				ID: "set-to-the-limit", Formula: "most",
				Did:  "You set the valve to the limit, {most}.",
				Why:  "The limit is what the lowest outlet may have at most. The setting is what the top shower needs. Set to the limit, creep and the drop below the valve push the bottom over it, and every tap of the zone wastes water.",
				Next: "Work the setting out from the top, then check it at the bottom.",
			}},
		},
		{
			Name: "at_bottom", Says: "pressure at the lowest outlet with no flow", Measure: &measure.Pressure,
			Formula: "setting + creep + gamma x (valve_up - low_outlet)",
			Why:     "With no flow there is no friction and no fall-off. The closed valve creeps a little over its setting, and the outlet lies a little lower than the valve.",
			Slips: []problems.Slip{
				{
					ID: "creep-left-out", Formula: "setting + gamma x (valve_up - low_outlet)",
					Did:  "You took the outlet of the closed valve to stand at its setting.",
					Why:  "A valve needs some pressure over its setting to press its seat shut. Here that is {creep}, and the lowest outlet has it all night.",
					Next: "No flow: add creep. Full flow: take fall-off.",
				},
				{
					ID: "fall-off-at-rest", Formula: "setting - fall_off + creep + gamma x (valve_up - low_outlet)",
					Did:  "You took the fall-off away, though nothing flows.",
					Why:  "Fall-off belongs to flow. At night the outlet stands at the setting and a little more, and that is what the limit is about.",
					Next: "For the bottom think of three in the morning, for the top of seven.",
				},
			},
		},
		{
			Name: "verdict", Says: "the lowest outlet", Measure: &measure.Answer, Choices: []string{"keeps the limit", "is over the limit"},
			Formula: "at_bottom > most",
			Why:     "If it is over, the zone is too tall for its losses: take a floor off, or size riser and valve for less loss. Turning the valve down would only move the trouble to the top.",
			Would:   buildZoneValve,
		},
	},
	Holds:    "One setting has to serve two moments. At the busy hour the top shower must have enough after climb, fall-off and friction. At night the bottom outlet must not have too much. The first gives the setting, the second tells whether the zone can be built so.",
	Cautions: []string{checkBothSides, relieveFirst, hotZonesToo},
	Sources:  []problems.Source{waterColumn, zoneLimitsBy, valveHabits},
	Draw:     drawZoneValve,
	Solve: func(w problems.World) float64 {
		b := w.Building
		z := b.Zones[b.ZoneOf(w.Focus)]
		at := b.Levels[z.Bottom].Elevation + w.Length("valve_up")
		if solver.FloorPressure(zoneSetting(w)+w.Pressure("creep"), w.Gamma(), b.Lowest(z.Bottom)-at) > w.Pressure("most") {
			return 1
		}
		return 0
	},
}

func init() { add(&zoneValveSettingSkill) }

// drawZoneValve draws a booster zone over the street's, with limits that its
// lowest outlet keeps or breaks by a clear margin; the valve is still to come.
func drawZoneValve(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: zoned, Min: 18, Max: 40, NoSkip: true})
	fall := s.Pick([]float64{8, 10, 12}, []float64{50, 60, 70})
	friction := s.Pick([]float64{3, 4, 5}, []float64{20, 25, 30})
	creep := s.Pick([]float64{3, 4, 5}, []float64{20, 30, 35})
	z, ok := pick(s, valveZones(s, t, fall+friction, creep, s.Chance(0.4)))
	if !ok {
		z = valveZone{7, limits{s.Most(), s.Least()}}
	}
	bottom := s.Int(5, t.Storeys-z.floors+1)
	top := bottom + z.floors - 1
	s.SetStreet(s.PickPlate([]float64{55, 60, 65}, []float64{400, 425, 450}), s.PickPlate([]float64{48, 50}, []float64{350, 360}), 0, "on the gauge in the meter room")
	b := t.Building
	boost := s.Press(s.Least()) + solver.WaterColumn.OfColumn(b.Levels[b.Top()].Elevation)
	b.Booster = &solver.Booster{Elevation: b.Levels[0].Elevation, Boost: boost, ShutOff: boost * 1.2}
	low, high := t.Storey(bottom), t.Storey(top)
	b.Zones = []solver.Zone{
		{Name: "low", Bottom: 0, Top: low - 1, Supply: solver.FromStreet},
		{Name: strconv.Itoa(bottom) + " to " + strconv.Itoa(top), Bottom: low, Top: high, Supply: solver.FromBooster},
	}
	if high < b.Top() {
		b.Zones = append(b.Zones, solver.Zone{Name: "high", Bottom: high + 1, Top: b.Top(), Supply: solver.FromBooster})
	}
	s.Focus = high
	s.Name("most_says", mostSays(s, z.most))
	s.Name("least_says", leastSays(s, z.least))
	s.Set("bottom_level", float64(bottom))
	s.Set("top_level", float64(top))
	s.SetHeight("floor_height", t.Floor)
	s.Set("valve_up", s.UpValve())
	s.Set("high_outlet", s.Shower())
	s.Set("low_outlet", s.Closet())
	s.Set("least", z.least)
	s.Set("fall_off", fall)
	s.Set("friction", friction)
	s.Set("valve_step", s.ValveStep())
	s.Set("creep", creep)
	s.Set("most", z.most)
}

// valveZone is a number of floors behind one valve, and what they keep.
type valveZone struct {
	floors int
	limits
}

// valveZones are the zones that a tower may have over the street's, whose
// valve is set to something usual and whose lowest outlet is over its limit
// or not, by a clear margin.
func valveZones(s *building.Sheet, t *building.Tower, losses, creep float64, over bool) []valveZone {
	margin := s.Pick([]float64{4.5}, []float64{15})
	lowest, highest := s.Pick([]float64{45}, []float64{300}), s.Pick([]float64{84}, []float64{570})
	var list []valveZone
	for floors := 5; floors <= 12; floors++ {
		column := head(s, float64(floors-1)*t.Floor.Value-s.UpValve()+s.Shower())
		for _, most := range mostList(s) {
			for _, least := range leastList(s) {
				set := math.Ceil((least+column+losses)/s.ValveStep()) * s.ValveStep()
				at := set + creep + head(s, s.UpValve()-s.Closet())
				clear := math.Abs(at-most) > margin && math.Abs(set-most) > margin && math.Abs(column-least) > s.ValveStep()
				if set >= lowest && set <= highest && clear && (at > most) == over {
					list = append(list, valveZone{floors, limits{most, least}})
				}
			}
		}
	}
	return list
}

// zoneSetting is the setting that is right.
func zoneSetting(w problems.World) unit.Pressure {
	b := w.Building
	z := b.Zones[b.ZoneOf(w.Focus)]
	at := b.Levels[z.Bottom].Elevation + w.Length("valve_up")
	set := solver.ValveSetting(w.Pressure("least"), w.Gamma(), b.Highest(z.Top)-at, w.Pressure("fall_off"), w.Pressure("friction"))
	return solver.Upward(set, w.Pressure("valve_step"))
}

// withZoneValve is the building with the zone's valve set; no valve gives more
// than the inlet has.
func withZoneValve(w problems.World, set unit.Pressure) (b *solver.Building, zone int, inlet unit.Pressure) {
	b = w.Building.Copy()
	zone = b.ZoneOf(w.Focus)
	z := &b.Zones[zone]
	at := b.Levels[z.Bottom].Elevation + w.Length("valve_up")
	b.Friction = unit.Gradient(float64(w.Pressure("friction")) / float64(b.Highest(z.Top)-at))
	z.Valve = &solver.Valve{Elevation: at, FallOff: w.Pressure("fall_off")}
	b.Booster.Boost += b.Friction.OfColumn(at - b.Street.GaugeAt) // the pump pays for the way up to the zone
	inlet = b.Inlet(zone, w.Gamma())
	z.Valve.Setting = min(set, inlet)
	return b, zone, inlet
}

// setZoneValve sets the valve and looks at both ends of the zone: at the top
// shower at the busy hour, at the lowest outlet at night.
func setZoneValve(w problems.World, v float64) problems.Outcome {
	set := unit.Pressure(v)
	b, zone, inlet := withZoneValve(w, set)
	z := b.Zones[zone]
	lead := "Set to " + w.Press(set) + ", "
	if out := b.Flowing(z.Top, z.Valve.Elevation, w.Gamma()); set > inlet || out < solver.FlowingOutlet(z.Valve)-unit.Pascal {
		lead += "more than its inlet has at the busy hour, the valve would hold nothing back: "
	}
	at, least := b.Flowing(z.Top, b.Highest(z.Top), w.Gamma()), w.Pressure("least")
	says, kept := w.Left("the shower on "+w.Level(z.Top), "at the busy hour", at, least)
	o := problems.Outcome{Kept: kept, Building: b, Says: []string{lead + says + "."}}
	if over := at - least; float64(over) > float64(w.Pressure("valve_step"))*(1+1e-9) {
		o.Kept = false
		o.Says = append(o.Says, "That is "+w.Press(over)+" more than is asked, and every outlet of the zone has it on top.")
	}
	bottom, mark := lowestAtNight(w, b, z)
	o.Says = append(o.Says, bottom)
	o.Marks = []problems.Mark{w.Mark(z.Top, problems.AtHighest, at, kept), mark}
	return o
}

// buildZoneValve builds the zone with its right setting (0) or calls it over
// the limit (1).
func buildZoneValve(w problems.World, v float64) problems.Outcome {
	b, zone, _ := withZoneValve(w, zoneSetting(w))
	z := b.Zones[zone]
	bottom, mark := lowestAtNight(w, b, z)
	o := problems.Outcome{Kept: mark.Kept == (v == 0), Building: b, Says: []string{bottom}, Marks: []problems.Mark{mark}}
	switch {
	case v == 1 && mark.Kept:
		o.Says = append(o.Says, "A floor taken off the zone would be taken off for nothing.")
	case v == 1:
		o.Says = append(o.Says, "So the zone is not built like this: it loses a floor, or its riser and valve lose less.")
	case !mark.Kept:
		o.Says = append(o.Says, "Built like this, it would have so much every night.")
	}
	return o
}

// lowestAtNight is the lowest outlet of a zone with no flow, when its valve
// has crept over the setting.
func lowestAtNight(w problems.World, b *solver.Building, z solver.Zone) (says string, mark problems.Mark) {
	at := b.At(z.Bottom, b.Lowest(z.Bottom), w.Gamma()) + w.Pressure("creep")
	says, within := w.Stands("With no flow the lowest outlet, on "+w.Level(z.Bottom)+",", at, w.Pressure("most"))
	return says + ".", w.Mark(z.Bottom, problems.AtLowest, at, within)
}
