package draw

import (
	"strings"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Levels that are no level of the building.
const (
	pit  = -1 // a pump or meter room under the lowest level
	none = -2
)

// plan is which device stands on which level, read off the building.
type plan struct {
	b     *solver.Building
	zones []zonePlan
	entry int // level of meter and backflow preventer
	pump  int // level of the booster; none where there is none
	high  int // level of the header; Top+1: a tank over the roof
	hot   int // level of the heater
	loop  bool
	rise  bool // a pipe of its own runs up past the lower zones
}

// zonePlan is a zone with what the drawing needs of it.
type zonePlan struct {
	solver.Zone
	number int
	valve  int // level of its valve; none where it has none
	onRise bool
}

func newPlan(b *solver.Building, zones bool) *plan {
	p := &plan{b: b, pump: none, high: none, hot: none}
	p.entry = p.entryLevel()
	if b.Header != nil {
		if p.high = p.levelAt(b.Header.Elevation); p.high == b.Top() && b.Header.Elevation >= b.Levels[b.Top()+1].Elevation {
			p.high++
		}
	}
	switch {
	case b.Booster != nil:
		p.pump = p.levelAt(b.Booster.Elevation)
	case b.Header != nil && p.needsPump():
		p.pump = p.entry
	}
	switch {
	case b.Heater != nil:
		p.hot = p.levelAt(b.Heater.Elevation)
	case b.Loop != nil || b.Mixing != nil:
		p.hot = p.entry
	}
	p.loop = b.Loop != nil
	p.plan(zones)
	return p
}

// plan lists the zones; a building without zones is one of them, unnamed.
func (p *plan) plan(show bool) {
	zones := p.b.Zones
	if len(zones) == 0 || !show {
		all := solver.Zone{Bottom: p.b.Ground, Top: p.b.Top(), Supply: solver.FromStreet}
		if len(zones) > 0 {
			all.Bottom, all.Supply = zones[0].Bottom, zones[len(zones)-1].Supply
		} else if p.b.Header != nil {
			all.Supply = solver.FromHeader
		} else if p.b.Booster != nil {
			all.Supply = solver.FromBooster
		}
		zones = []solver.Zone{all}
	}
	for i, z := range zones {
		q := zonePlan{Zone: z, number: i + 1, valve: none}
		if z.Valve != nil {
			q.valve = p.levelAt(z.Valve.Elevation)
		}
		q.onRise = z.Supply == solver.FromBooster && z.Valve == nil
		p.rise = p.rise || z.Supply != solver.FromStreet
		p.zones = append(p.zones, q)
	}
}

// underFloor is how far under the lowest floor a device stands that needs a
// pit of its own; less is rounding of a taped height.
const underFloor = 0.6 * unit.Metre

// levelAt is the level that an elevation lies on.
func (p *plan) levelAt(e unit.Length) int {
	if e < p.b.Levels[0].Elevation-underFloor {
		return pit
	}
	at := 0
	for i := 0; i <= p.b.Top(); i++ {
		if p.b.Levels[i].Elevation <= e+1e-6 {
			at = i
		}
	}
	return at
}

// entryLevel is the level of the room with the meter. A gauge in that room
// tells it; else it is the lowest level.
func (p *plan) entryLevel() int {
	name := p.b.Street.GaugeName
	room := strings.Contains(name, "room") || strings.Contains(name, "preventer")
	if at := p.levelAt(p.b.Street.GaugeAt); room && at <= p.b.Ground {
		return at
	}
	return 0
}

// gaugeAtMain reports whether the street pressure is read outside.
func (p *plan) gaugeAtMain() bool { return strings.Contains(p.b.Street.GaugeName, "main") }

// needsPump reports whether the street alone cannot hold the header.
func (p *plan) needsPump() bool {
	at := solver.FloorPressure(p.b.Street.Low, solver.WaterColumn, p.b.Header.Elevation-p.b.Street.GaugeAt)
	return at < p.b.Header.Pressure
}

func (p *plan) zoneOf(level int) *zonePlan {
	for i := range p.zones {
		if z := &p.zones[i]; level >= z.Bottom && level <= z.Top {
			return z
		}
	}
	return nil
}

// named reports whether the zones are those of the building.
func (p *plan) named() bool { return p.zones[0].Name != "" }

// hasPit reports whether a room lies under the lowest level.
func (p *plan) hasPit() bool {
	under := p.entry == pit || p.pump == pit || p.hot == pit
	for _, z := range p.zones {
		under = under || z.valve == pit
	}
	return under
}
