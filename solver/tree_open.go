package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// TapFlow is what an open tap gives.
type TapFlow struct {
	OpenTap
	Each       unit.Flow     // of one of them
	Alone      unit.Flow     // of one, if it ran and nothing else
	ColdShare  unit.Flow     // of one, out of the cold pipe
	HotShare   unit.Flow     // of one, out of the hot pipe
	Cold, Hot  unit.Pressure // at the outlet, flowing
	Mixed      unit.Temperature
	MixedAlone unit.Temperature // if it ran alone
}

// outlet is an open end of a branch: flow for the root of pressure.
type outlet struct {
	tap    int
	branch int
	up     unit.Length
	k      float64 // m3/s for the root of a Pa, of all the like taps together
	hot    bool
	q      float64
	closed bool
}

// open works out the flows of the open taps and the pressures that they make:
// Newton's method on flows and pressures together, one pass inward and one
// outward a round, since the piping is a tree.
func (t *tree) open() error {
	taps := t.b.loadedTaps(t.w.Case.Open)
	t.w.Taps = make([]TapFlow, len(taps))
	if len(taps) > 1 {
		for i := range taps {
			if err := t.flow(taps, i); err != nil {
				return err
			}
			f := &t.w.Taps[i]
			f.Alone, f.MixedAlone = f.Each, f.Mixed
		}
	}
	if err := t.flow(taps, -1); err != nil {
		return err
	}
	if len(taps) == 1 {
		f := &t.w.Taps[0]
		f.Alone, f.MixedAlone = f.Each, f.Mixed
	}
	return nil
}

// loadedTaps are the open taps of a building whose pipes are sized; of one
// without loads there is none, since no pipe has a bore.
func (b *Building) loadedTaps(list []OpenTap) []OpenTap {
	if !b.loaded() {
		return nil
	}
	return list
}

// flow works out the open state with all taps, or with one alone.
func (t *tree) flow(taps []OpenTap, alone int) error {
	ends := t.ends(taps, alone)
	f := newFlowing(t, ends)
	if err := f.settle(); err != nil {
		return err
	}
	for i := range t.s {
		t.s[i].OpenFlow, t.s[i].At.Open = unit.Flow(f.q[i]), unit.Pressure(f.p[i])
	}
	for i := range taps {
		if alone < 0 || alone == i {
			t.readTap(i, taps[i], ends)
		}
	}
	return nil
}

func (t *tree) ends(taps []OpenTap, alone int) []outlet {
	var ends []outlet
	for i, o := range taps {
		if o.Count == 0 || alone >= 0 && alone != i || t.cold[o.Level] < 0 {
			continue
		}
		up := t.b.LowOutlet
		if o.Tap.High {
			up = t.b.HighOutlet
		}
		k := float64(o.Tap.Flow) / math.Sqrt(float64(o.Tap.At)) * float64(o.Count)
		share := 0.0
		if o.Tap.Mixed > 0 && t.hot[o.Level] >= 0 {
			share = math.Min(1, math.Max(0, HotShare(o.Tap.Mixed, t.b.Heater.Cold, t.b.delivered())))
		}
		if share < 1 {
			ends = append(ends, outlet{tap: i, branch: t.cold[o.Level], up: up, k: k * (1 - share)})
		}
		if share > 0 {
			ends = append(ends, outlet{tap: i, branch: t.hot[o.Level], up: up, k: k * share, hot: true})
		}
	}
	return ends
}

// delivered is the temperature that the hot pipes are fed with.
func (b *Building) delivered() unit.Temperature {
	if b.Mixing != nil && b.Mixing.Mixed > b.Heater.Cold && b.Mixing.Mixed < b.Heater.Hot {
		return b.Mixing.Mixed
	}
	return b.Heater.Hot
}

func (t *tree) readTap(i int, o OpenTap, ends []outlet) {
	f := &t.w.Taps[i]
	*f = TapFlow{OpenTap: o, Alone: f.Alone, MixedAlone: f.MixedAlone}
	for _, e := range ends {
		if e.tap != i {
			continue
		}
		each := unit.Flow(e.q / float64(o.Count))
		p := t.s[e.branch].At.Open - t.gamma.OfColumn(e.up)
		if e.hot {
			f.HotShare, f.Hot = each, p
		} else {
			f.ColdShare, f.Cold = each, p
		}
	}
	f.Each = f.ColdShare + f.HotShare
	if t.b.Heater != nil && f.Each > 0 {
		f.Mixed = Together(Stream{f.ColdShare, t.b.Heater.Cold}, Stream{f.HotShare, t.b.delivered()})
	}
}

// flowing is the open state under way.
type flowing struct {
	t      *tree
	ends   []outlet
	on     []bool    // whether water runs in a stretch at all
	q, p   []float64 // flow in each, pressure at its end
	held   []bool    // whether its valve reduces
	a, g   []float64 // what leaves the end of each, a + g p
	level0 []float64 // Pa, the weight between its start and its end
}

func newFlowing(t *tree, ends []outlet) *flowing {
	n := len(t.s)
	f := &flowing{t: t, ends: ends, on: make([]bool, n), q: make([]float64, n), p: make([]float64, n), held: make([]bool, n), a: make([]float64, n), g: make([]float64, n), level0: make([]float64, n)}
	for k := range ends {
		e := &ends[k]
		e.q = e.k * math.Sqrt(float64(unit.PSI)*20)
		f.q[e.branch] += e.q
		f.on[e.branch] = true
	}
	for i := n - 1; i >= 0; i-- {
		s := &t.s[i]
		if s.From >= 0 {
			f.level0[i] = float64(t.gamma.OfColumn(s.End - t.s[s.From].End))
			if f.on[i] {
				f.q[s.From] += f.q[i]
				f.on[s.From] = true
			}
		}
		f.held[i] = s.setAt != nil
	}
	return f
}

// loss is what stretch i loses at a flow, and how fast that grows.
func (f *flowing) loss(i int, q float64) (pa, slope float64) {
	s := &f.t.s[i]
	if s.pipeK > 0 {
		v, d := steep(s.pipeK, q, 1.852)
		pa, slope = pa+v, slope+d
	}
	if s.devK > 0 {
		v, d := steep(s.devK, q, 2)
		pa, slope = pa+v, slope+d
	}
	if s.pump != nil {
		weight := float64(f.t.gamma)
		pa -= weight * float64(s.pump.Head(unit.Flow(q)))
		slope -= weight * (s.pump.Slope + 2*s.pump.Bend*q)
	}
	return pa, slope
}

// steep is k q |q|^(n-1), and a slope to step by that does not vanish where the
// flow does.
func steep(k, q, n float64) (v, slope float64) {
	size := math.Abs(q)
	return k * q * math.Pow(size, n-1), n * k * math.Pow(math.Max(size, creep), n-1)
}

// fall is how much a reducing valve gives less for each m3/s.
func (f *flowing) fall(i int) float64 {
	s := &f.t.s[i]
	if s.Flow <= 0 {
		return 0
	}
	return float64(s.setAt.FallOff) / float64(s.Flow)
}

// settle runs rounds until nothing moves any more.
func (f *flowing) settle() error {
	for round := range 400 {
		f.inward()
		moved, most := f.outward()
		turned := f.turn(round)
		if !turned && round > 1 && moved <= 1e-12*most+1e-15 {
			// A round more, for taps whose flow is small beside the largest.
			f.inward()
			f.outward()
			f.finish()
			return nil
		}
	}
	return fmt.Errorf("solver: the flows of the open taps do not come to rest, expected losses within the bounds of a building")
}

// inward gathers, from the taps to the street, what leaves each end as a
// straight line of the pressure there.
func (f *flowing) inward() {
	for i := range f.a {
		f.a[i], f.g[i] = 0, 0
	}
	for k := range f.ends {
		e := &f.ends[k]
		if e.closed {
			continue
		}
		pa, slope := steep(1/(e.k*e.k), e.q, 2)
		// q = q0 + (p - column - pa) / slope
		f.a[e.branch] += e.q - (float64(f.t.gamma.OfColumn(e.up))+pa)/slope
		f.g[e.branch] += 1 / slope
	}
	for i := len(f.a) - 1; i > 0; i-- {
		s := &f.t.s[i]
		if !f.on[i] || s.From < 0 {
			continue
		}
		if s.Kind == TankStretch || f.held[i] {
			// The pressure at its end is its own, whatever feeds it.
			p := float64(f.tank(i))
			if f.held[i] {
				// p = setting - fall q, q = a + g p
				fall := f.fall(i)
				p = (float64(s.setAt.Setting) - fall*f.a[i]) / (1 + fall*f.g[i])
			}
			f.a[s.From] += f.a[i] + f.g[i]*p
			continue
		}
		// p_from - level - pa - slope (q - q0) = p, q = a + g p
		pa, slope := f.loss(i, f.q[i])
		rest := pa - slope*f.q[i] + f.level0[i]
		under := 1 + slope*f.g[i]
		f.a[s.From] += f.a[i] - f.g[i]*(rest+slope*f.a[i])/under
		f.g[s.From] += f.g[i] / under
	}
}

// tank is the pressure of an open tank or a header.
func (f *flowing) tank(i int) unit.Pressure { return f.t.start(i, 0, openOf) }

// outward puts the pressures and flows in from the street to the taps, and
// says how far the flows moved and how large they are.
func (f *flowing) outward() (moved, most float64) {
	for i := range f.p {
		s := &f.t.s[i]
		var from float64
		switch {
		case s.From < 0:
			from = float64(f.t.w.Case.Street)
		default:
			from = f.p[s.From] - f.level0[i]
		}
		switch {
		case s.Kind == TankStretch:
			f.p[i] = float64(f.tank(i))
		case f.held[i]:
			fall := f.fall(i)
			f.p[i] = (float64(s.setAt.Setting) - fall*f.a[i]) / (1 + fall*f.g[i])
		case !f.on[i]:
			pa, _ := f.loss(i, 0)
			f.p[i] = from - pa
		default:
			pa, slope := f.loss(i, f.q[i])
			f.p[i] = (from - pa + slope*f.q[i] - slope*f.a[i]) / (1 + slope*f.g[i])
		}
		if f.on[i] {
			q := f.a[i] + f.g[i]*f.p[i]
			moved, most = math.Max(moved, math.Abs(q-f.q[i])), math.Max(most, math.Abs(q))
			f.q[i] = q
		}
	}
	for k := range f.ends {
		e := &f.ends[k]
		if e.closed {
			continue
		}
		pa, slope := steep(1/(e.k*e.k), e.q, 2)
		step := (f.p[e.branch] - float64(f.t.gamma.OfColumn(e.up)) - pa) / slope
		e.q += step
	}
	return moved, most
}

// turn opens and shuts what the pressures ask for: a reducing valve that has
// less at its inlet than it is set to stands open, and a tap under no pressure
// gives nothing. Late in the search it turns one at a time.
func (f *flowing) turn(round int) bool {
	turned := false
	for i := range f.p {
		s := &f.t.s[i]
		if s.setAt == nil || round > 20 && turned {
			continue
		}
		set := float64(s.setAt.Setting) - f.fall(i)*f.q[i]
		in := f.p[s.From] - f.level0[i]
		held := in >= set
		if f.held[i] != held {
			f.held[i], turned = held, true
		}
	}
	for k := range f.ends {
		e := &f.ends[k]
		if round > 20 && turned {
			break
		}
		closed := f.p[e.branch] <= float64(f.t.gamma.OfColumn(e.up))
		if e.closed != closed && (closed && e.q <= 0 || !closed) {
			e.closed, turned = closed, true
			e.q = 0
			if !closed {
				e.q = e.k * 10
			}
		}
	}
	return turned
}

// finish sums the flows anew from the taps, so that they balance to the last
// figure, and puts the pressures in from the street once more.
func (f *flowing) finish() {
	for i := range f.q {
		f.q[i] = 0
	}
	for k := range f.ends {
		f.q[f.ends[k].branch] += f.ends[k].q
	}
	for i := len(f.q) - 1; i > 0; i-- {
		if from := f.t.s[i].From; from >= 0 {
			f.q[from] += f.q[i]
		}
	}
	for i := range f.p {
		s := &f.t.s[i]
		from := float64(f.t.w.Case.Street)
		if s.From >= 0 {
			from = f.p[s.From] - f.level0[i]
		}
		if s.Kind == TankStretch {
			f.p[i] = float64(f.tank(i))
			continue
		}
		if s.setAt != nil {
			f.p[i] = math.Min(from, float64(s.setAt.Setting)-f.fall(i)*f.q[i])
			continue
		}
		pa, _ := f.loss(i, f.q[i])
		f.p[i] = from - pa
	}
}
