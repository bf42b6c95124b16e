package solver

import "riserwork/solver/unit"

// Inlet is the static pressure at the inlet of the reducing valve of zone z.
// In a down-feed each valve stands in the riser of the zone above it and sees
// what that zone has there; any other valve sees the supply itself. It is 0
// where the zone has no valve.
func (b *Building) Inlet(z int, gamma unit.Gradient) unit.Pressure {
	zone := b.Zones[z]
	if zone.Valve == nil {
		return 0
	}
	if zone.Supply == FromHeader && z+1 < len(b.Zones) && b.Zones[z+1].Supply == FromHeader {
		return b.At(b.Zones[z+1].Bottom, zone.Valve.Elevation, gamma)
	}
	return b.zoneSupply(zone, zone.Valve.Elevation, gamma)
}

// StuckOpen is the static pressure at an elevation of zone z while its
// reducing valve is stuck open: the inlet pressure passes through.
//
//	P = P_inlet + gamma (valve - at)
func (b *Building) StuckOpen(z int, at unit.Length, gamma unit.Gradient) unit.Pressure {
	return FloorPressure(b.Inlet(z, gamma), gamma, at-b.Zones[z].Valve.Elevation)
}

// ZoneOf is the index of the zone that feeds level i; -1 where none does.
func (b *Building) ZoneOf(i int) int { return b.zoneOf(i) }
