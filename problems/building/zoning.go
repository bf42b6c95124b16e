package building

import (
	"math"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Where the valve of a zone stands above its floor, in feet and in metres: of
// an up-feed zone on the zone's lowest floor at working height, of a down-feed
// zone under the ceiling of its highest. Common practice, no source.
const (
	upValveFeet, upValveMetres     = 4, 1.2
	downValveFeet, downValveMetres = 8, 2.4
)

// Limits of sound zoning, in psi and in kPa. Common practice, no source; the
// maker's chart governs the ratio.
const (
	overSettingUS, overSettingSI = 15, 100   // inlet over outlet, at the least
	dischargeUS, dischargeSI     = 250, 1725 // of a booster at no flow, at the most
	shopLeastUS, shopLeastSI     = 25, 170   // at the highest outlet of a zone, flowing
	underMostUS, underMostSI     = 1, 10     // clear of the static limit, so that rounding cannot break it
	maxRatio                     = 4         // inlet over outlet of one stage
)

// ZonePlan is what the zones of a tower keep, in the unit of code pressures.
type ZonePlan struct {
	Most     float64 // at the lowest outlet, no flow
	Least    float64 // at the highest outlet, design flow
	FallOff  float64 // of a zone valve at design flow
	Friction float64 // of a zone's riser at design flow
	Creep    float64 // of a zone valve at no flow
	Header   float64 // down-feed: in the header, no flow
	Setting  float64 // down-feed: of every valve; 0: as Least asks
}

// UsualZones is a plan with the limits of the house and the usual losses. It
// keeps what shops plan for at the top where the code asks less.
func (s *Sheet) UsualZones() ZonePlan {
	least := s.Least()
	if s.TopMin == 0 {
		least = math.Max(least, s.system(shopLeastUS, shopLeastSI))
	}
	return ZonePlan{
		Most: s.Most(), Least: least,
		FallOff: s.Pick([]float64{8, 10, 12}, []float64{50, 70}), Friction: s.Pick([]float64{4, 5}, []float64{30, 35}),
		Creep: s.Pick([]float64{3}, []float64{20}), Header: s.Pick([]float64{40, 45}, []float64{280, 300}),
	}
}

// UpValve and DownValve are the heights of zone valves above their floor, in
// the unit of heights.
func (s *Sheet) UpValve() float64   { return s.system(upValveFeet, upValveMetres) }
func (s *Sheet) DownValve() float64 { return s.system(downValveFeet, downValveMetres) }

// ValveStep is the step that valves are set in: 1 psi or 5 kPa.
func (s *Sheet) ValveStep() float64 { return s.system(1, 5) }

// Rounding reports whether v, counted in steps of step, is so far from whole
// that lines rounded to a whole psi, foot or kPa keep the same whole number.
// blur is how far such lines move v, in the unit of v.
func Rounding(v, step, blur float64) bool {
	margin := math.Max(0.15, blur/step)
	f := Fraction(v, step)
	return f > margin && f < 1-margin
}

func (s *Sheet) system(us, si float64) float64 {
	if s.US() {
		return us
	}
	return si
}

// zoneGamma is the pressure of water that zones are laid out by.
const zoneGamma = solver.WaterColumn

// UpFeed zones a tower that is fed upward: the storeys that the street feeds
// by itself, with all below them, then zones of nearly equal height on a
// booster, each with a valve on its lowest floor. Hot and cold share the
// zones, so they break on the same floors. It reports false where no sound
// layout was found: the building is then as it was.
func (s *Sheet) UpFeed(t *Tower, p ZonePlan) bool {
	b := *t.Building
	b.Zones, b.Header = nil, nil
	fed := s.streetFed(&b, p)
	if fed < b.Ground || s.tooMuch(b.At(0, b.Lowest(0), zoneGamma), p) {
		return false
	}
	street := solver.Zone{Name: "street", Bottom: 0, Top: fed, Supply: solver.FromStreet}
	if fed == b.Top() {
		b.Zones, b.Booster = []solver.Zone{street}, nil
		*t.Building = b
		return true
	}
	for n := 1; n <= b.Top()-fed; n++ {
		b.Zones = append([]solver.Zone{street}, divide(fed+1, b.Top(), n, solver.FromBooster)...)
		s.setUpward(&b, p)
		if s.boost(&b, p) && s.sound(&b, p) {
			*t.Building = b
			return true
		}
	}
	return false
}

// streetFed is the highest level whose highest outlet keeps Least from the
// lowest street pressure, after the entry's losses and the riser's friction.
func (s *Sheet) streetFed(b *solver.Building, p ZonePlan) int {
	left := b.Street.Low - b.Losses.Total() - s.Press(p.Friction)
	reach := b.Street.GaugeAt + solver.Reach(left, s.Press(p.Least), zoneGamma)
	fed := -1
	for i := b.Ground; i <= b.Top(); i++ {
		if b.Highest(i) <= reach {
			fed = i
		}
	}
	return fed
}

// setUpward gives each zone on the booster its valve, set in whole steps so
// that its top outlet has Least at flow.
func (s *Sheet) setUpward(b *solver.Building, p ZonePlan) {
	for i := range b.Zones {
		z := &b.Zones[i]
		if z.Supply != solver.FromBooster {
			continue
		}
		at := b.Levels[z.Bottom].Elevation + s.Length(s.UpValve())
		need := solver.ValveSetting(s.Press(p.Least), zoneGamma, b.Highest(z.Top)-at, s.Press(p.FallOff), s.Press(p.Friction))
		z.Valve = s.valve(at, need, p)
	}
}

func (s *Sheet) valve(at unit.Length, need unit.Pressure, p ZonePlan) *solver.Valve {
	return &solver.Valve{Elevation: at, Setting: solver.Upward(need, s.Press(s.ValveStep())), FallOff: s.Press(p.FallOff)}
}

// boost sizes the booster on the lowest level, for the highest valve's inlet;
// its shut-off is a fifth over the duty.
func (s *Sheet) boost(b *solver.Building, p ZonePlan) bool {
	top := b.Zones[len(b.Zones)-1].Valve
	want := top.Setting + s.Press(s.system(overSettingUS, overSettingSI)) + s.Press(p.Friction)
	have := solver.FloorPressure(b.Street.Low-b.Losses.Total(), zoneGamma, top.Elevation-b.Street.GaugeAt)
	step := s.Press(s.system(5, 25))
	b.Booster = &solver.Booster{Elevation: b.Levels[0].Elevation, Boost: solver.Upward(want-have, step)}
	b.Booster.ShutOff = solver.Upward(b.Booster.Boost*1.2, step)
	discharge := solver.FloorPressure(b.Street.Static+b.Booster.ShutOff, zoneGamma, b.Booster.Elevation-b.Street.GaugeAt)
	return discharge <= s.Press(s.system(dischargeUS, dischargeSI))
}

// DownFeed zones a tower that is fed from a header under its roof: the top
// zone straight from the header, then zones of nearly equal height, each with
// a valve under the ceiling of its highest floor, one valve below the other.
// It reports false where no sound layout was found: the building is then as it
// was.
func (s *Sheet) DownFeed(t *Tower, p ZonePlan) bool {
	b := *t.Building
	b.Booster = nil
	b.Header = &solver.Header{Elevation: b.Levels[b.Top()].Elevation + s.Length(s.DownValve()), Pressure: s.Press(p.Header)}
	b.Zones = []solver.Zone{{Name: "top", Bottom: 0, Top: b.Top(), Supply: solver.FromHeader}}
	bottom := b.Top() + 1
	for bottom > 0 && !s.tooMuch(b.At(bottom-1, b.Lowest(bottom-1), zoneGamma), p) {
		bottom--
	}
	if bottom > b.Top() {
		return false
	}
	top := solver.Zone{Name: "top", Bottom: bottom, Top: b.Top(), Supply: solver.FromHeader}
	for n := 0; n <= bottom; n++ {
		b.Zones = append(divide(0, bottom-1, n, solver.FromHeader), top)
		if b.Zones[0].Bottom == 0 && s.setDownward(&b, p) && s.sound(&b, p) {
			*t.Building = b
			return true
		}
	}
	return false
}

// setDownward gives each zone under the top one its valve; false where the
// setting asked for leaves too little, or a zone would hold no storey.
func (s *Sheet) setDownward(b *solver.Building, p ZonePlan) bool {
	for i := range b.Zones[:len(b.Zones)-1] {
		z := &b.Zones[i]
		if z.Top < b.Ground {
			return false
		}
		at := b.Levels[z.Top].Elevation + s.Length(s.DownValve())
		need := solver.ValveSetting(s.Press(p.Least), zoneGamma, b.Highest(z.Top)-at, s.Press(p.FallOff), s.Press(p.Friction))
		z.Valve = s.valve(at, need, p)
		if p.Setting == 0 {
			continue
		}
		if z.Valve.Setting = s.Press(p.Setting); z.Valve.Setting < need {
			return false
		}
	}
	return true
}

// sound checks every zone: its lowest outlet at no flow, and each valve's
// inlet against its setting.
func (s *Sheet) sound(b *solver.Building, p ZonePlan) bool {
	for i, z := range b.Zones {
		if s.tooMuch(b.At(z.Bottom, b.Lowest(z.Bottom), zoneGamma), s.creeping(z, p)) {
			return false
		}
		if z.Valve == nil {
			continue
		}
		in := b.Inlet(i, zoneGamma)
		if in < z.Valve.Setting+s.Press(s.system(overSettingUS, overSettingSI)) || solver.ReductionRatio(in, z.Valve.Setting) > maxRatio {
			return false
		}
	}
	return true
}

// creeping is the plan with room for the creep of the zone's valve.
func (s *Sheet) creeping(z solver.Zone, p ZonePlan) ZonePlan {
	if z.Valve != nil {
		p.Most -= p.Creep
	}
	return p
}

func (s *Sheet) tooMuch(at unit.Pressure, p ZonePlan) bool {
	return at > s.Press(p.Most-s.system(underMostUS, underMostSI))
}

// divide splits levels lo to hi into n zones, the upper ones the taller by a
// floor where they do not come out even.
func divide(lo, hi, n int, from solver.Supply) []solver.Zone {
	var out []solver.Zone
	for i := range n {
		count := (hi - lo + 1) / (n - i)
		if count == 0 {
			continue
		}
		out = append(out, solver.Zone{Name: zoneName(i), Bottom: lo, Top: lo + count - 1, Supply: from})
		lo += count
	}
	return out
}

// zoneName is "A" for the lowest zone that has a valve, then on.
func zoneName(i int) string { return string(rune('A' + i%26)) }
