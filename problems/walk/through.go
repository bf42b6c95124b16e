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
