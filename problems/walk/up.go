package walk

import (
	"fmt"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// up goes from the entry to the highest outlet.
func (k *walker) up() {
	branch := k.Whole.Floors[k.top].Cold.Stretch
	pumps, mains, valves := 0, 0, 0
	for _, i := range k.chain(branch) {
		s := &k.Whole.Stretches[i]
		switch s.Kind {
		case solver.PumpStretch:
			pumps++
			k.pump(i, pumps)
		case solver.MainStretch:
			mains++
			k.foot(i, mains)
		case solver.ValveStretch:
			valves++
			k.valve(i, Up)
		case solver.TankStretch, solver.FillStretch:
			if k.err == nil {
				k.err = fmt.Errorf("walk: the %s stands on the way, and the walk needs pressure all the way", s.Name)
			}
		}
	}
	k.outlet(k.top, "top")
	zone := k.b.ZoneOf(k.top)
	k.lowest(zone, Up)
}

// numbered is an id of its own for the n-th of its kind.
func numbered(id string, n int) string {
	if n > 1 {
		return fmt.Sprintf("%s-%d", id, n)
	}
	return id
}

// duty is what the pump of a stretch does.
func (k *walker) duty(stretch int) *solver.PumpDuty {
	for i := range k.Whole.Pumps {
		if k.Whole.Pumps[i].Stretch == stretch {
			return &k.Whole.Pumps[i]
		}
	}
	return nil
}

func (k *walker) pump(stretch, n int) {
	d := k.duty(stretch)
	if d == nil {
		return
	}
	level := k.b.LevelAt(k.Whole.Stretches[stretch].End)
	if c := k.Whole.Case.Profile; c != nil {
		least := unit.Pressure(c.SuctionMin.Value(k.House.System).SI())
		if d.Suction.Design > least && least > 0 {
			k.add(at{numbered("suction", n), "inlet of the pumps", "low-suction-switch", Up, Flowing, "So much is to spare before the switch stops the pumps; they are not to draw below " + k.Press(least) + ".", false, level, AtPump},
				spareSum, float64(d.Suction.Design-least), float64(d.Suction.Design), float64(least))
		}
	}
	k.add(at{numbered("pump", n), "outlet of the pumps", "pump", Up, Flowing, "What the pumps give at their design flow.", true, level, AtPump},
		boostSum, float64(d.Discharge.Design), float64(d.Suction.Design), float64(d.Boost))
	k.add(at{numbered("check", n), "check valve of the pumps", "check-valve", Up, NoFlow, "With no flow the street stands at its highest and the pumps at their shut-off.", false, level, AtPump},
		boostSum, float64(d.Discharge.NoFlow), float64(d.Suction.NoFlow), float64(d.ShutOff))
}

// foot is the end of a main, where a riser or a valve begins.
func (k *walker) foot(stretch, n int) {
	s := &k.Whole.Stretches[stretch]
	from := &k.Whole.Stretches[s.From]
	level := k.b.LevelAt(s.End)
	device := "riser-valve"
	if n > 1 {
		device = "riser-anchor"
	}
	k.moving(at{numbered("foot", n), "main at level " + k.b.Levels[level].Label, device, Up, Flowing, "What arrives at the end of this main.", n == 1, level, AtFloor},
		s.At.Design, from.At.Design, s.End-from.End)
}

// stationDevices are what stands in a reducing valve station, told one a zone.
var stationDevices = []string{"reducing-valve", "reducing-bypass", "small-reducing-valve"}

// valve is the reducing valve of a zone.
func (k *walker) valve(stretch int, part Part) {
	s := &k.Whole.Stretches[stretch]
	zone := &k.b.Zones[s.Zone]
	level := k.b.LevelAt(s.End)
	n := 0
	for i := range k.Stations {
		if k.Stations[i].Where == AtValve {
			n++
		}
	}
	if zone.Valve.FallOff <= 0 {
		return
	}
	k.add(at{"valve-" + zone.Name, "valve station of zone " + zone.Name, stationDevices[n%len(stationDevices)], part, Flowing,
		"The valve is set to " + k.Press(zone.Valve.Setting) + " with no flow; when water flows, its outlet falls off. This is left.", part == Up, level, AtValve},
		loseSum, float64(s.At.Design), float64(zone.Valve.Setting), float64(zone.Valve.FallOff))
}

// base is the last place before a stretch where the pressure at rest is made:
// a valve, a pump or the entry.
func (k *walker) base(stretch int) *solver.Stretch {
	for i := stretch; ; i = k.Whole.Stretches[i].From {
		s := &k.Whole.Stretches[i]
		if s.Kind == solver.ValveStretch || s.Kind == solver.PumpStretch || s.From < 0 {
			return s
		}
	}
}

// riserFoot is where the risers of a branch begin: the last stretch before
// them.
func (k *walker) riserFoot(branch int) *solver.Stretch {
	for i := branch; ; i = k.Whole.Stretches[i].From {
		s := &k.Whole.Stretches[i]
		if s.Kind != solver.BranchStretch && s.Kind != solver.RiserStretch || s.From < 0 {
			return s
		}
	}
}

// outlet is the highest outlet of a level, flowing and at rest.
func (k *walker) outlet(level int, id string) {
	out := k.Whole.Floors[level].Cold
	foot, base := k.riserFoot(out.Stretch), k.base(out.Stretch)
	high := k.b.Highest(level)
	place := "highest outlet, level " + k.b.Levels[level].Label
	k.moving(at{id + "-flowing", place, "fixture-stop", Up, Flowing, "This outlet governs: if it has enough, all have. " + k.Press(k.Whole.Top) + " is to be kept here.", true, level, AtOutlet},
		out.Highest.Design, foot.At.Design, high-foot.End)
	k.still(at{id + "-still", place, "air-vent", Up, NoFlow, "The same outlet at night, from the outlet of its valve or pump.", true, level, AtOutlet},
		out.Highest.NoFlow, base.At.NoFlow, high-base.End)
}

// lowest is the lowest outlet of a zone, which has the most pressure.
func (k *walker) lowest(zone int, part Part) {
	z := &k.b.Zones[zone]
	out := k.Whole.Floors[z.Bottom].Cold
	if out.Stretch < 0 {
		return
	}
	base := k.base(out.Stretch)
	low := k.b.Lowest(z.Bottom)
	k.still(at{"lowest-" + z.Name, "lowest outlet of zone " + z.Name + ", level " + k.b.Levels[z.Bottom].Label, "arrester", part, NoFlow, "The most that any outlet of this zone gets.", part == Down, z.Bottom, AtOutlet},
		out.Lowest.NoFlow, base.At.NoFlow, low-base.End)
}

// down goes through the zones below the highest, the higher first.
func (k *walker) down() {
	for z := k.b.ZoneOf(k.top) - 1; z >= 0; z-- {
		out := k.Whole.Floors[k.b.Zones[z].Bottom].Cold
		if out.Stretch < 0 {
			continue
		}
		for _, i := range k.chain(out.Stretch) {
			if s := &k.Whole.Stretches[i]; s.Kind == solver.ValveStretch && s.Zone == z {
				k.valve(i, Down)
			}
		}
		k.lowest(z, Down)
	}
}
