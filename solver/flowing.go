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
		out := min(FlowingOutlet(v), b.flowingZone(zone, v.Elevation, gamma))
		return b.climb(out, at-v.Elevation, gamma)
	}
	return b.flowingZone(zone, at, gamma)
}

// flowingZone is what the supply of a zone gives at an elevation at the busy
// hour, before its reducing valve.
func (b *Building) flowingZone(z Zone, at unit.Length, gamma unit.Gradient) unit.Pressure {
	if z.Supply == FromLift {
		return b.flowingLift(z.Lift, at, gamma)
	}
	return b.flowingFrom(z.Supply, at, gamma)
}

func (b *Building) flowingLift(k int, at unit.Length, gamma unit.Gradient) unit.Pressure {
	l := b.Lifts[k]
	var suction unit.Pressure
	switch {
	case l.BreakTank:
	case l.From >= 0:
		suction = b.flowingLift(l.From, l.Elevation, gamma)
	default:
		suction = b.flowingFrom(FromBooster, l.Elevation, gamma)
	}
	return b.climb(suction+l.Boost, at-l.Elevation, gamma)
}

// flowingFrom is what a supply gives at an elevation at the busy hour, before
// any reducing valve.
func (b *Building) flowingFrom(s Supply, at unit.Length, gamma unit.Gradient) unit.Pressure {
	low := b.Street.Low - b.Losses.Total()
	switch s {
	case FromHeader:
		return b.climb(b.Header.Pressure, at-b.Header.Elevation, gamma)
	case FromBooster:
		if b.Booster.BreakTank {
			return b.climb(b.Booster.Boost, at-b.Booster.Elevation, gamma)
		}
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
	for i := range c.Zones {
		c.Zones[i].Plant = own(c.Zones[i].Plant)
	}
	c.Lifts, c.Loads = append([]LiftSet(nil), b.Lifts...), append([]Load(nil), b.Loads...)
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
