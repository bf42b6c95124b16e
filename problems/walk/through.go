package walk

import (
	"fmt"
	"math"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Through is the walk through a building that was worked out, with the
// constants of the house. It goes from the street to the highest outlet, so
// the water must come all the way under pressure: a building with an open tank
// on that way is refused.
func Through(whole *solver.Whole, seed uint64, house problems.House) (*Walk, error) {
	w := &Walk{Seed: seed, House: house, Building: whole.Building, Whole: whole}
	k := &walker{Walk: w, b: whole.Building, gamma: whole.Case.Gamma}
	k.top = k.b.Top()
	if whole.Floors[k.top].Cold.Stretch < 0 {
		return nil, fmt.Errorf("walk: no pipe feeds level %s, and the walk goes there", k.b.Levels[k.top].Label)
	}
	w.Says = k.says()
	k.street()
	k.up()
	k.down()
	k.hot()
	if k.err != nil {
		return nil, k.err
	}
	return w, nil
}

func (w *Walk) says() string {
	b := w.Building
	text := fmt.Sprintf("%s, %d storeys", b.Use, b.Storeys())
	if b.Booster != nil {
		text += ", pumped"
	}
	if n := len(b.Zones); n > 1 {
		text += fmt.Sprintf(", %d zones", n)
	}
	return text
}

// walker writes a walk station by station. The first thing that does not fit
// stops it.
type walker struct {
	*Walk
	b     *solver.Building
	gamma unit.Gradient
	top   int // index of the highest level
	err   error
}

// at is a station without its sum.
type at struct {
	id, place, device string
	part              Part
	state             State
	says              string
	turn              bool
	level             int
	where             Where
}

// add binds the sum of a station and appends it.
func (k *walker) add(a at, s *sum, si float64, values ...float64) {
	if k.err != nil {
		return
	}
	d, ok := devices.ByID(a.device)
	if !ok {
		k.err = fmt.Errorf("walk: there is no device %s", a.device)
		return
	}
	p, err := k.bind(s, si, values...)
	if err != nil {
		k.err = fmt.Errorf("%w at %s", err, a.id)
		return
	}
	of := s.Rules[0].Measure
	k.Stations = append(k.Stations, Station{
		ID: a.id, Part: a.part, Place: a.place, Device: d, State: a.state, Says: a.says, Turn: a.turn,
		Level: a.level, Where: a.where, Sum: p, Of: of, SI: si, Value: k.Text(of, si),
	})
}

// nothing is what is too little to be told.
const nothing = 1e-6

// still adds a station at rest: h above a place that stands at p. What lies no
// higher is not a sum.
func (k *walker) still(a at, is, p unit.Pressure, h unit.Length) {
	switch {
	case h > nothing:
		k.add(a, standSum, float64(is), float64(p), float64(h))
	case h < -nothing:
		k.add(a, hangSum, float64(is), float64(p), float64(-h))
	}
}

// moving adds a station with water flowing: h above a place with p. What the
// climb does not account for is friction.
func (k *walker) moving(a at, is, p unit.Pressure, h unit.Length) {
	rub := float64(p - is - k.gamma.OfColumn(h))
	switch {
	case rub < nothing:
		k.still(a, is, p, h)
	case math.Abs(float64(h)) < nothing:
		k.add(a, loseSum, float64(is), float64(p), rub)
	case h > 0:
		k.add(a, climbSum, float64(is), float64(p), float64(h), rub)
	default:
		k.add(a, fallSum, float64(is), float64(p), float64(-h), rub)
	}
}

// street goes from the main to behind the backflow preventer.
func (k *walker) street() {
	b, room := k.b, k.b.LevelAt(k.b.Street.GaugeAt)
	low := k.Whole.Case.Street
	k.add(at{"street", "street main, as the gauge in the meter room reads it", "service-valve", Street, Flowing, "What the street gives when everybody draws.", false, room, AtMain},
		loseSum, float64(low), float64(b.Street.Static), float64(b.Street.Static-low))
	k.push(room)
	k.add(at{"main-valve", "main valve, shut for the night", "main-valve", Street, NoFlow, "Shut tight, the valve holds back what the street has at night.", true, room, AtMain},
		nightSum, float64(b.Street.Static), float64(low), float64(b.Street.Static-low))
	p := low
	take := func(id, place, device string, lost unit.Pressure, where Where) {
		if lost <= 0 {
			return
		}
		p -= lost
		k.add(at{id, place, device, Street, Flowing, "What is left behind it when everybody draws.", id == "backflow", room, where},
			loseSum, float64(p), float64(p+lost), float64(lost))
	}
	take("strainer", "strainer", "entry-strainer", b.Losses.Strainer, AtStrainer)
	take("meter", "water meter", "meter", b.Losses.Meter, AtMeter)
	take("backflow", "backflow preventer", "backflow-preventer", b.Losses.Backflow, AtBackflow)
}

// push is what the water does to the end of the service pipe.
func (k *walker) push(room int) {
	for i := range solver.Tubes {
		t := &solver.Tubes[i]
		fits := solver.PipeVelocity(k.Whole.Demand, t.Bore(solver.TypeK), solver.RoundPipe) <= k.b.Piping.Cold
		if !fits && i < len(solver.Tubes)-1 {
			continue
		}
		outside := unit.Length(t.Outside) * unit.Inch
		static := k.b.Street.Static
		area := solver.EndThrust(1, outside)
		place := fmt.Sprintf("service pipe, %s in (DN %d)", t.Nominal, t.DN)
		k.add(at{"restraint", place, "restraint", Street, NoFlow, "The water pushes the dead end of the service with this force, all night.", false, room, AtMain},
			pushSum, solver.EndThrust(static, outside), float64(static), area)
		return
	}
}

// chain is the stretches from the source to one, in the order of the flow.
func (k *walker) chain(to int) []int {
	var list []int
	for i := to; i >= 0; i = k.Whole.Stretches[i].From {
		list = append([]int{i}, list...)
	}
	return list
}

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
