package paper

import (
	"fmt"
	"math"
	"math/rand/v2"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Size is what kind of building a paper is about.
type Size string

// Sizes of buildings.
const (
	WalkUp  Size = "walk-up"  // three or four storeys, on street pressure
	MidRise Size = "mid-rise" // a booster
	Lodging Size = "lodging"  // a hotel or a hospital: much hot water
	Tower   Size = "tower"    // a booster and zones; high ones lift in two steps
)

// Sizes are all sizes.
var Sizes = []Size{WalkUp, MidRise, Lodging, Tower}

// Says is the size in words.
func (z Size) Says() string {
	switch z {
	case WalkUp:
		return "Walk-up, 3 or 4 storeys"
	case MidRise:
		return "Mid-rise, 7 to 12 storeys"
	case Lodging:
		return "Hotel or hospital"
	case Tower:
		return "Tower, 16 to 40 storeys"
	}
	return "Any building"
}

// site is the building of a paper while it is drawn. Numbers are in the unit
// of heights and of code pressures; the street's are in the unit of gauges.
type site struct {
	*building.Tower
	s     *building.Sheet
	house problems.House

	static, low                        float64
	meter, backflow, friction          float64
	least, most                        float64
	gauge, main                        float64 // below the floor of level 1
	height                             float64 // of the top shower above the gauge
	cold, store, mixed, back           float64
	boosted, lifts, valves             bool
	fallOff, zoneFriction, creep, tank float64
}

func plan4(size Size) building.Plan {
	switch size {
	case WalkUp:
		return building.Plan{Uses: []solver.Use{solver.Apartment, solver.Residence, solver.Office}, Min: 3, Max: 4}
	case MidRise:
		return building.Plan{Uses: []solver.Use{solver.Apartment, solver.Residence, solver.Office}, Min: 7, Max: 12}
	case Lodging:
		return building.Plan{Uses: []solver.Use{solver.Hotel, solver.Hospital}, Min: 7, Max: 15}
	}
	return building.Plan{Uses: []solver.Use{solver.Apartment, solver.Hotel, solver.Office}, Min: 16, Max: 40}
}

// liftsFrom is the height in feet and metres from which a tower lifts in two
// steps. Common practice, no source.
const liftsFromFeet, liftsFromMetres = 290, 88

// survey draws the building and its street; nil where the street's reach ends
// too near a limit for any reading of it.
func survey(rng *rand.Rand, house problems.House, size Size) *site {
	s := problems.NewSheet(rng, house)
	plan := plan4(size)
	plan.Cellar, plan.NoSkip = true, true
	t := &site{s: s, house: house}
	t.Tower = s.Tower(plan)
	for t.deep() {
		t.Tower = s.Tower(plan)
	}
	s.Focus = t.Building.Top()
	t.least, t.most = s.Least(), s.Most()
	if !t.depths() {
		return nil
	}
	t.height = t.gauge + t.Up(t.Storeys) + s.Shower()
	t.lifts = t.height > s.Pick([]float64{liftsFromFeet}, []float64{liftsFromMetres})
	t.boosted = size != WalkUp
	if !t.streetFor() {
		return nil
	}
	t.water()
	return t
}

// deep reports a garage so deep, for the height of the floors, that the street
// feeds hardly a floor above it.
func (t *site) deep() bool {
	return t.Below > 2 || t.Below > 1 && t.Floor.Value > t.s.Pick([]float64{11}, []float64{3.4})
}

// depths draws how far gauge and main lie below level 1: so far from each
// other and from the height of an outlet that a wrong one shows.
func (t *site) depths() bool {
	s := t.s
	by := s.Pick([]float64{3}, []float64{0.9})
	for range 40 {
		t.gauge = t.Parking.Value*float64(t.Below) - s.Pick([]float64{2, 2.5, 3, 3.5, 4, 4.5, 5.5}, []float64{0.4, 0.5, 1, 1.4, 1.5, 1.6, 1.7})
		t.main = s.Pick([]float64{3, 4, 5, 6, 7, 8, 9}, []float64{0.9, 1.2, 1.7, 2.1, 2.4, 2.75})
		apart, out := math.Abs(t.gauge-t.main), s.Shower()
		far := func(v float64) bool { return math.Abs(v-out) >= by/2 }
		if apart >= by && far(apart) && far(t.gauge) && far(t.main) && far(2*t.gauge) {
			return true
		}
	}
	return false
}

// entry is street and losses as one choice.
type entry struct{ static, low, friction float64 }

// streetFor draws street and losses among those whose reach ends clear of the
// top outlet, and inside a floor rather than at its edge.
func (t *site) streetFor() bool {
	s := t.s
	for range 30 {
		t.meter, t.backflow = s.Meter(), s.Backflow(s.Chance(0.4))
		fit := t.entries()
		if len(fit) == 0 {
			continue
		}
		e := fit[s.Int(0, len(fit)-1)]
		t.static, t.low, t.friction = e.static, e.low, e.friction
		s.SetStreet(t.static, t.low, -t.gauge, "on the gauge in the meter room")
		b := t.Building
		b.Street.MainDepth = s.Length(t.main)
		b.Losses = solver.Losses{Meter: s.Press(t.meter), Backflow: s.Press(t.backflow)}
		b.Friction = unit.Gradient(float64(s.Press(t.friction)) / float64(s.Length(t.height)))
		return true
	}
	return false
}

// Street pressures, their daily swing, and friction up to the top outlet.
// Common practice, no source.
var (
	staticUS, staticSI     = []float64{55, 58, 60, 62, 65, 68, 70, 72, 75, 78, 79}, []float64{375, 400, 425, 450, 475, 500, 525, 540}
	swingUS, swingSI       = []float64{5, 8, 10, 12}, []float64{35, 50, 75}
	frictionUS, frictionSI = []float64{3, 6, 8, 9, 12, 14}, []float64{20, 25, 55, 60, 65, 85}
)

func (t *site) entries() (fit []entry) {
	s := t.s
	statics, swings, frictions := staticSI, swingSI, frictionSI
	if s.PlateUS() {
		statics, swings = staticUS, swingUS
	}
	if s.US() {
		frictions = frictionUS
	}
	for _, static := range statics {
		for _, swing := range swings {
			for _, friction := range frictions {
				if t.meter != t.backflow && friction != t.meter && friction != t.backflow && t.suits(static-swing, friction) {
					fit = append(fit, entry{static, static - swing, friction})
				}
			}
		}
	}
	return fit
}

func (t *site) suits(low, friction float64) bool {
	s := t.s
	spare := s.PlatePress(low) - s.Press(t.meter+t.backflow+friction+t.least)
	reach := s.Heights(solver.WaterColumn.HeightOf(spare))
	if spare < 0.13*s.PlatePress(low) || math.Abs(reach/t.height-1) < 0.06 || (reach < t.height) != t.boosted {
		return false
	}
	room := reach - s.Shower() - t.gauge - t.Ground.Value
	part := building.Fraction(room, t.Floor.Value)
	return !t.boosted || room >= t.Floor.Value && part > 0.22 && part < 0.78
}

// water draws the temperatures of cold water, store and loop.
func (t *site) water() {
	s := t.s
	t.cold = s.Pick([]float64{40, 50, 60}, []float64{5, 10, 15})
	t.store = s.Pick([]float64{140, 160}, []float64{60, 65, 70})
	t.mixed = s.Pick([]float64{130, 132, 134}, []float64{55, 56, 57})
	t.back = t.mixed - s.Pick([]float64{5, 6}, []float64{3, 4})
	t.fallOff = s.Pick([]float64{8, 10, 12}, []float64{50, 70, 80})
	t.zoneFriction = s.Pick([]float64{4, 5, 6}, []float64{30, 35, 40})
	t.creep = s.Pick([]float64{2, 3}, []float64{15, 20})
	t.tank = s.Pick([]float64{300, 400, 500, 800, 1000}, []float64{1000, 1200, 1500, 2000, 3000})
}

// fitOut puts what the parts work out into the building.
func (t *site) fitOut(p *Paper) {
	b, s := t.Building, t.s
	b.Heater = &solver.Heater{Elevation: b.Levels[0].Elevation + s.Length(s.UpValve()), Cold: temperature(s, t.cold), Hot: temperature(s, t.store), Volume: s.PlateVolume(t.tank)}
	b.Mixing = &solver.MixingValve{Mixed: temperature(s, t.mixed)}
	first := t.value(p, "first-short", "first_short")
	if !t.boosted || math.IsNaN(first) {
		return
	}
	boost := t.value(p, "boost", "boost")
	if math.IsNaN(boost) {
		boost = t.value(p, "series", "low_boost")
	}
	b.Booster = &solver.Booster{Elevation: b.Street.GaugeAt, Boost: s.Press(boost), ShutOff: s.Press(1.2 * boost)}
	b.Zones = []solver.Zone{{Name: "street", Top: b.Storey(int(first) - 1), Supply: solver.FromStreet}}
	tall := t.value(p, "zone", "floors")
	if math.IsNaN(tall) {
		tall = float64(t.Storeys)
	}
	for bottom := int(first); bottom <= t.Storeys; bottom += int(tall) {
		top := min(bottom+int(tall)-1, t.Storeys)
		at := b.Levels[b.Storey(bottom)].Elevation + s.Length(s.UpValve())
		need := solver.ValveSetting(s.Press(t.least), problems.World.Gamma(p.Parts[0].World()), b.Highest(b.Storey(top))-at, s.Press(t.fallOff), s.Press(t.zoneFriction))
		b.Zones = append(b.Zones, solver.Zone{
			Name: string(rune('A' + len(b.Zones) - 1)), Bottom: b.Storey(bottom), Top: b.Storey(top), Supply: solver.FromBooster,
			Valve: &solver.Valve{Elevation: at, Setting: solver.Upward(need, s.Press(s.ValveStep())), FallOff: s.Press(t.fallOff)},
		})
	}
}

// value is the right value of a step; NaN where the paper has none such.
func (t *site) value(p *Paper, part, step string) float64 {
	i := p.Index(part)
	if i < 0 {
		return math.NaN()
	}
	x := p.Parts[i].Problem
	return x.Steps[x.Slot(step)-len(x.Told)].Value
}

func temperature(s *building.Sheet, v float64) unit.Temperature {
	if s.US() {
		return unit.Fahrenheit(v)
	}
	return unit.Celsius(v)
}

// describe is the building in words, and the facts that stand over all parts.
func (t *site) describe() (says string, facts []Fact) {
	s := t.s
	article := "A "
	if t.Building.Use[0] == 'a' || t.Building.Use[0] == 'o' {
		article = "An "
	}
	says = fmt.Sprintf("%s%s of %d storeys over %d below ground. Level 1 is the ground floor, and no level number is left out.", article, t.Building.Use, t.Storeys, t.Below)
	height := func(v float64, text string) string {
		u := measure.Height.Unit(s.System)
		if text == "" {
			text = building.FeetInches(u, v)
		}
		if text == "" {
			text = u.Of(v).Text(5)
		}
		return text
	}
	gauges, code := s.System, measure.Pressure.Unit(s.System)
	if s.PlateUS() {
		gauges = unit.US
	}
	plate := func(v float64) string { return measure.Pressure.Unit(gauges).Of(v).Text(4) }
	facts = []Fact{
		{"floor to floor, level 1", height(t.Ground.Value, t.Ground.Text)},
		{"floor to floor, every level above", height(t.Floor.Value, t.Floor.Text)},
		{"gauge in the meter room, below the floor of level 1", height(t.gauge, "")},
		{"street main, below the floor of level 1", height(t.main, "")},
		{"top shower above its floor", height(s.Shower(), "")},
		{"street pressure on that gauge, no flow", plate(t.static)},
		{"street pressure on that gauge, lowest at the peak", plate(t.low)},
		{"loss of the meter and of the backflow preventer", code.Of(t.meter).Text(3) + " and " + code.Of(t.backflow).Text(3)},
		{"friction up to the top shower at design flow", code.Of(t.friction).Text(3)},
		{"pressure to be left at the top shower", code.Of(t.least).Text(4)},
		{"most pressure at a fixture, no flow", code.Of(t.most).Text(4)},
		{"cold water, store, hot main", temps(s, t.cold, t.store, t.mixed)},
	}
	return says, facts
}

func temps(s *building.Sheet, list ...float64) string {
	text := ""
	for i, v := range list {
		if i > 0 {
			text += ", "
		}
		text += measure.Temp.Unit(s.System).Of(v).Text(4)
	}
	return text
}

// skill is one of the catalogue.
func skill(id string) *problems.Skill {
	s, ok := skills.ByID(id)
	if !ok {
		return &problems.Skill{ID: id}
	}
	return s
}
