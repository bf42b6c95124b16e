package solver

import "riserwork/solver/unit"

// Flowing is the pressure at an elevation of level i at the busy hour: the
// street at its lowest after the entry's losses, the booster at its duty, a
// reducing valve at its outlet less the fall-off, and the riser's friction
// over the height from there.
//
//	P = P_supply - gamma h - friction |h|
//	P = (setting - fall-off) - gamma h - friction |h|, behind a valve
//
// A valve gives no more than its supply has at its inlet.
func (b *Building) Flowing(i int, at unit.Length, gamma unit.Gradient) unit.Pressure {
	z := b.zoneOf(i)
	if z < 0 {
		return b.flowingFrom(FromStreet, at, gamma)
	}
	zone := b.Zones[z]
	if v := zone.Valve; v != nil {
		out := min(FlowingOutlet(v), b.flowingFrom(zone.Supply, v.Elevation, gamma))
		return b.climb(out, at-v.Elevation, gamma)
	}
	return b.flowingFrom(zone.Supply, at, gamma)
}

// flowingFrom is what a supply gives at an elevation at the busy hour, before
// any reducing valve.
func (b *Building) flowingFrom(s Supply, at unit.Length, gamma unit.Gradient) unit.Pressure {
	low := b.Street.Low - b.Losses.Total()
	switch s {
	case FromHeader:
		return b.climb(b.Header.Pressure, at-b.Header.Elevation, gamma)
	case FromBooster:
		return b.climb(low+b.Booster.Boost, at-b.Street.GaugeAt, gamma)
	}
	return b.climb(low, at-b.Street.GaugeAt, gamma)
}

// climb takes height and friction off a pressure; friction counts the way
// down as well.
func (b *Building) climb(p unit.Pressure, up unit.Length, gamma unit.Gradient) unit.Pressure {
	return FloorPressure(p, gamma, up) - b.Friction.OfColumn(max(up, -up))
}

// Copy is the building with parts of its own, to change and try.
func (b *Building) Copy() *Building {
	c := *b
	c.Levels = append([]Level(nil), b.Levels...)
	c.Zones = append([]Zone(nil), b.Zones...)
	for i := range c.Zones {
		c.Zones[i].Valve = own(c.Zones[i].Valve)
	}
	c.Booster, c.Header = own(b.Booster), own(b.Header)
	c.Heater, c.Mixing, c.Loop = own(b.Heater), own(b.Mixing), own(b.Loop)
	return &c
}

// own is a copy of what p points at; nil where there is nothing.
func own[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}
