package solver

import (
	"strconv"

	"riserwork/solver/unit"
)

// supplies says which floors hang on what, and sets the valves.
func (o Outline) supplies(b *Building, s Settings) {
	room := b.Levels[0].Elevation
	if o.Booster {
		b.Booster = &Booster{Elevation: room, Boost: unit.PSI, ShutOff: unit.PSI}
	}
	first := b.Ground
	if o.Booster && o.Zoned && !o.Tank {
		first = o.fedByStreet(b, s)
	}
	if first > b.Ground {
		b.Zones = append(b.Zones, Zone{Name: "street", Bottom: b.Ground, Top: min(first-1, b.Top()), Supply: FromStreet})
	}
	if first > b.Top() {
		return
	}
	high := o.highest(b, s)
	for _, run := range o.runs(b, s, first) {
		b.Zones = append(b.Zones, o.split(b, run, high)...)
	}
	for i := range b.Zones {
		if b.Zones[i].Name == "" {
			b.Zones[i].Name = strconv.Itoa(i + 1)
		}
	}
	o.valves(b, s)
}

// fedByStreet is the first level that the street leaves short at the busy
// hour, friction counted.
func (o Outline) fedByStreet(b *Building, s Settings) int {
	for i := b.Ground; i <= b.Top(); i++ {
		left := b.flowingFrom(FromStreet, b.Highest(i), s.Gamma)
		if left < s.TopMin+streetRoom {
			return i
		}
	}
	return b.Top() + 1
}

// streetRoom is kept above the least before a floor is left to the street:
// branches, and more friction than was reckoned. Common practice, no source.
const streetRoom = 12 * unit.PSI

// run is a part of the building on one supply.
type run struct {
	bottom, top int
	supply      Supply
	lift        int
}

// runs shares the floors between the supplies, and puts lifts in.
func (o Outline) runs(b *Building, s Settings, first int) []run {
	if o.Tank {
		roof := b.Levels[len(b.Levels)-1].Elevation
		b.Header = &Header{Elevation: roof + tankStands}
		top := first
		for top <= b.Top() && FloorPressure(0, s.Gamma, b.Highest(top)-roof-tankStands) >= s.TopMin+zoneFriction+hotMore {
			top++
		}
		if top > b.Top() {
			return []run{{first, b.Top(), FromHeader, 0}}
		}
		// What the tank leaves short hangs on a small set beside it.
		b.Lifts = []LiftSet{{Name: "top", Elevation: roof, From: -1, BreakTank: true, Boost: unit.PSI, ShutOff: unit.PSI}}
		list := []run{{top, b.Top(), FromLift, 0}}
		if top > first {
			list = append([]run{{first, top - 1, FromHeader, 0}}, list...)
		}
		return list
	}
	if !o.Booster {
		return []run{{first, b.Top(), FromStreet, 0}}
	}
	parts := o.Lifts + 1
	n := b.Top() - first + 1
	var list []run
	bottom := first
	for k := range parts {
		top := first + n*(k+1)/parts - 1
		if top < bottom {
			continue
		}
		r := run{bottom, top, FromBooster, 0}
		if k > 0 {
			r.supply, r.lift = FromLift, len(b.Lifts)
			b.Lifts = append(b.Lifts, LiftSet{Name: strconv.Itoa(k), Elevation: b.Levels[bottom].Elevation, From: len(b.Lifts) - 1, Boost: unit.PSI, ShutOff: unit.PSI})
		}
		list = append(list, r)
		bottom = top + 1
	}
	return list
}

// highest is the tallest zone that keeps both limits, no more than the whole
// building.
func (o Outline) highest(b *Building, s Settings) unit.Length {
	if !o.Zoned {
		return maxHeight
	}
	most := 80 * unit.PSI
	if s.Profile != nil {
		most = unit.Pressure(s.Profile.StaticMax.Lowest())
	}
	return TallestZone(most-unit.PSI, s.TopMin, o.FallOff, zoneFriction, s.Gamma)
}

// zoneFriction is kept for the pipes of a zone; common practice, no source.
const zoneFriction = 12 * unit.PSI

// hotMore is what the hot side loses more than the cold one; common practice,
// no source.
const hotMore = 5 * unit.PSI

// split makes zones of a run, none taller than high, as even as they can be.
func (o Outline) split(b *Building, r run, high unit.Length) []Zone {
	floors := r.top - r.bottom + 1
	fit := max(1, ZoneFloors(high, o.Floor, b.HighOutlet, b.LowOutlet))
	count := ZoneCount(floors, fit)
	var list []Zone
	for k := range count {
		list = append(list, Zone{Bottom: r.bottom + floors*k/count, Top: r.bottom + floors*(k+1)/count - 1, Supply: r.supply, Lift: r.lift})
	}
	return list
}

// valves sets a reducing valve at the foot of each zone but those of the
// street and those that the limits of a pump fit themselves: the highest of
// its supply where one zone is all.
func (o Outline) valves(b *Building, s Settings) {
	if !o.Zoned && len(o.Set) == 0 {
		return
	}
	n := 0
	for i := range b.Zones {
		z := &b.Zones[i]
		if z.Supply == FromStreet || z.Supply == FromHeader {
			most := 80 * unit.PSI
			if s.Profile != nil {
				most = unit.Pressure(s.Profile.StaticMax.Lowest())
			}
			if b.supplyAt(z.Supply, b.Lowest(z.Bottom), s.Gamma) < most {
				continue
			}
		}
		at := b.Levels[z.Bottom].Elevation
		if z.Supply == FromHeader {
			at = b.Levels[z.Top].Elevation
		}
		rise := b.Highest(z.Top) - at
		set := Upward(ValveSetting(s.TopMin, s.Gamma, rise, o.FallOff, zoneFriction), unit.PSI)
		if n < len(o.Set) && o.Set[n] > 0 {
			set = o.Set[n]
		}
		n++
		z.Valve = &Valve{Elevation: at, Setting: set, FallOff: o.FallOff}
	}
}
