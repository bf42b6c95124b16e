package solver

import (
	"fmt"
	"math"
	"sort"

	"riserwork/solver/unit"
)

// tree is the piping of a building from its sources outward. Nothing but the
// hot water loop closes a ring, and that has a network of its own, so each
// stretch has one that feeds it and stands after it in the list.
type tree struct {
	w     *Whole
	b     *Building
	gamma unit.Gradient
	pipe  Piping
	s     []Stretch
	cold  []int // of each level, the stretch of its branch; -1: none
	hot   []int
	feed  []int // of each zone, the stretch that its risers begin at
	sets  []set // pump sets that stand in it
}

// set is a pump set and the stretch it is.
type set struct {
	name    string
	stretch int
	boost   *unit.Pressure
	shutOff *unit.Pressure
	curve   **PumpCurve
}

// source is what feeds zones and lifts: a key, and where its pressure starts.
type source struct {
	supply  Supply
	lift    int
	stretch int
}

// takeOff is where a main is tapped.
type takeOff struct {
	at   unit.Length
	zone int // -1: none
	lift int // -1: none; the roof tank is len(Lifts)
}

func newTree(w *Whole) *tree {
	b := w.Building
	t := &tree{w: w, b: b, gamma: w.Case.Gamma, pipe: b.Piping, s: make([]Stretch, 0, 8+6*len(b.Levels))}
	t.cold, t.hot = filledInts(len(b.Levels)-1), filledInts(len(b.Levels)-1)
	t.feed = filledInts(len(b.Zones))
	entry := t.add(-1, Stretch{Kind: EntryStretch, Name: "water entry", Zone: -1, Level: -1, End: b.Street.GaugeAt, known: b.Losses.Total()})
	t.main(source{supply: FromStreet, lift: -1, stretch: entry})
	if p := b.Booster; p != nil {
		from := entry
		if p.BreakTank {
			fill := t.add(entry, Stretch{Kind: FillStretch, Name: "fill of the break tank", Zone: -1, Level: -1, End: p.Elevation})
			from = t.tank("break tank at the booster", fill, p.Elevation)
		}
		i := t.add(from, Stretch{Kind: PumpStretch, Name: "booster", Zone: -1, Level: -1, End: p.Elevation})
		t.sets = append(t.sets, set{"booster", i, &p.Boost, &p.ShutOff, &p.Curve})
		t.main(source{supply: FromBooster, lift: -1, stretch: i})
	}
	return t
}

func filledInts(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = -1
	}
	return list
}

func (t *tree) add(from int, s Stretch) int {
	s.From = from
	if s.counts == 0 {
		s.counts = 't'
	}
	s.share = max(s.share, 1)
	t.s = append(t.s, s)
	return len(t.s) - 1
}

// tank starts the pressure anew; what it gives is drawn through its fill.
func (t *tree) tank(name string, fill int, at unit.Length) int {
	return t.add(fill, Stretch{Kind: TankStretch, Name: name, Zone: -1, Level: -1, End: at})
}

// main lays the pipe from a source to its zones and to the lifts that draw on
// it, upward and downward from where the source stands.
func (t *tree) main(src source) {
	start := t.s[src.stretch].End
	var up, down []takeOff
	for _, o := range t.takeOffs(src, start) {
		if o.at >= start {
			up = append(up, o)
		} else {
			down = append(down, o)
		}
	}
	sort.SliceStable(up, func(i, j int) bool { return up[i].at < up[j].at })
	sort.SliceStable(down, func(i, j int) bool { return down[i].at > down[j].at })
	for _, chain := range [][]takeOff{up, down} {
		from, at := src.stretch, start
		for i, o := range chain {
			length := unit.Length(math.Abs(float64(o.at - at)))
			if i == 0 {
				length += t.pipe.Offset
			}
			if i == 0 || length > 1e-9 {
				from = t.add(from, Stretch{Kind: MainStretch, Name: t.mainName(src, o), Zone: -1, Level: -1, End: o.at, Length: length})
			}
			at = o.at
			t.tap(from, o)
		}
	}
}

func (t *tree) mainName(src source, o takeOff) string {
	to := "the tank"
	switch {
	case o.zone >= 0:
		to = "zone " + t.b.Zones[o.zone].Name
	case o.lift < len(t.b.Lifts):
		to = "lift " + t.b.Lifts[o.lift].Name
	}
	from := string(src.supply)
	if src.lift >= 0 {
		from = "lift " + t.b.Lifts[src.lift].Name
	}
	return "main from " + from + " to " + to
}

func (t *tree) takeOffs(src source, start unit.Length) []takeOff {
	var list []takeOff
	for z, zone := range t.b.Zones {
		if zone.Supply != src.supply || zone.Supply == FromLift && zone.Lift != src.lift {
			continue
		}
		at := min(max(start, t.b.Levels[zone.Bottom].Elevation), t.b.Levels[zone.Top].Elevation)
		if zone.Valve != nil {
			at = zone.Valve.Elevation
		}
		list = append(list, takeOff{at, z, -1})
	}
	for k, l := range t.b.Lifts {
		below := FromLift
		if l.From < 0 {
			below = FromBooster
			if t.b.Booster == nil {
				below = FromStreet
			}
		}
		if below == src.supply && (below != FromLift || l.From == src.lift) {
			list = append(list, takeOff{l.Elevation, -1, k})
		}
	}
	if h := t.b.Header; h != nil && src.supply == t.fills() {
		list = append(list, takeOff{h.Elevation, -1, len(t.b.Lifts)})
	}
	return list
}

// fills is the supply that fills the roof tank.
func (t *tree) fills() Supply {
	if t.b.Booster != nil {
		return FromBooster
	}
	return FromStreet
}

// tap lays what a take-off feeds.
func (t *tree) tap(from int, o takeOff) {
	switch {
	case o.zone >= 0:
		t.zone(from, o.zone)
	case o.lift < len(t.b.Lifts):
		l := &t.b.Lifts[o.lift]
		if l.BreakTank {
			fill := t.add(from, Stretch{Kind: FillStretch, Name: "fill of the break tank of lift " + l.Name, Zone: -1, Level: -1, End: l.Elevation})
			from = t.tank("break tank of lift "+l.Name, fill, l.Elevation)
		}
		i := t.add(from, Stretch{Kind: PumpStretch, Name: "lift " + l.Name, Zone: -1, Level: -1, End: l.Elevation})
		t.sets = append(t.sets, set{"lift " + l.Name, i, &l.Boost, &l.ShutOff, &l.Curve})
		t.main(source{supply: FromLift, lift: o.lift, stretch: i})
	default:
		h := t.b.Header
		fill := t.add(from, Stretch{Kind: FillStretch, Name: "fill of the tank", Zone: -1, Level: -1, End: h.Elevation})
		i := t.tank("tank", fill, h.Elevation)
		t.main(source{supply: FromHeader, lift: -1, stretch: i})
	}
}

// zone lays the valve, the cold riser and the hot riser of a zone.
func (t *tree) zone(from, z int) {
	zone := t.b.Zones[z]
	t.feed[z] = from
	if v := zone.Valve; v != nil {
		from = t.add(from, Stretch{Kind: ValveStretch, Name: "reducing valve of zone " + zone.Name, Zone: z, Level: -1, End: v.Elevation, setAt: v})
		t.feed[z] = from
	}
	counts := byte('t')
	warm := t.hotZone(z)
	if warm {
		counts = 'c'
	}
	t.riser(z, from, counts, t.cold)
	if warm {
		h := t.add(from, Stretch{Kind: HeaterStretch, Name: "heater of zone " + zone.Name, Zone: z, Level: -1, Hot: true, End: t.s[from].End, Length: t.pipe.Offset, known: t.b.Heater.Loss, counts: 'h'})
		t.riser(z, h, 'h', t.hot)
	}
}

// hotZone reports whether a heater feeds a zone.
func (t *tree) hotZone(z int) bool {
	if t.b.Heater == nil || !t.b.loaded() {
		return false
	}
	for i := t.b.Zones[z].Bottom; i <= t.b.Zones[z].Top; i++ {
		if t.b.Loads[i].Hot > 0 {
			return true
		}
	}
	return false
}

// riser lays a riser from a point upward and downward past the floors of its
// zone, with a branch on each.
func (t *tree) riser(z, start int, counts byte, branches []int) {
	zone := t.b.Zones[z]
	begin := t.s[start].End
	split := zone.Bottom
	for split <= zone.Top && t.b.Levels[split].Elevation < begin-1e-9 {
		split++
	}
	water := "cold "
	if counts == 'h' {
		water = "hot "
	}
	lay := func(i, from int) int {
		l := t.b.Levels[i]
		length := unit.Length(math.Abs(float64(l.Elevation - t.s[from].End)))
		where := " of zone " + zone.Name + ", level " + l.Label
		share := float64(t.pipe.Risers)
		from = t.add(from, Stretch{Kind: RiserStretch, Name: water + "riser" + where, Zone: z, Level: i, Hot: counts == 'h', End: l.Elevation, Length: length, counts: counts, share: share})
		branches[i] = t.add(from, Stretch{Kind: BranchStretch, Name: water + "branch" + where, Zone: z, Level: i, Hot: counts == 'h', End: l.Elevation, Length: t.pipe.Branch, counts: counts, share: share})
		if t.b.loaded() {
			t.s[branches[i]].total = t.b.Loads[i]
		}
		return from
	}
	from := start
	for i := split; i <= zone.Top; i++ {
		from = lay(i, from)
	}
	from = start
	for i := split - 1; i >= zone.Bottom; i-- {
		from = lay(i, from)
	}
}

// load adds the units up from the branches to the street, and gives each
// stretch its demand and its size.
func (t *tree) load() error {
	for i := len(t.s) - 1; i >= 0; i-- {
		s := &t.s[i]
		if s.Kind == HeaterStretch {
			continue // the cold riser beside it has counted the level already
		}
		if s.From >= 0 {
			t.s[s.From].total = t.s[s.From].total.plus(s.total)
		}
	}
	t.w.Load = t.s[0].total
	for i := range t.s {
		s := &t.s[i]
		s.Units = s.units() / s.share
		curve := TankCurve
		if t.b.FlushValve && s.counts != 'h' {
			curve = ValveCurve
		}
		q, ok := demandOf(curve, s.Units)
		if !ok {
			return fmt.Errorf("solver: %.4g fixture units behind the %s, expected at most %g, where the demand table ends", s.Units, s.Name, curve[len(curve)-1].Units)
		}
		s.Flow = q
		t.size(s)
	}
	t.w.Demand = t.s[0].Flow
	return nil
}

func (s *Stretch) units() float64 {
	switch s.counts {
	case 'c':
		return s.total.Cold
	case 'h':
		return s.total.Hot
	}
	return s.total.Total
}

// demandOf is the demand of fixture units; of fewer than the table begins with
// it is that of its first row, one fixture, and of none it is nothing.
func demandOf(c Curve, units float64) (unit.Flow, bool) {
	if units <= 0 {
		return 0, true
	}
	return c.Demand(max(units, c[0].Units))
}
