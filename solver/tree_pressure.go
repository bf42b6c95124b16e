package solver

import (
	"math"

	"riserwork/solver/unit"
)

// size chooses the tube of a stretch of pipe: the smallest that keeps the
// friction and the speed at design flow, the largest of the table where none
// does.
func (t *tree) size(s *Stretch) {
	if s.known > 0 && s.Flow > 0 {
		s.devK = float64(s.known) / float64(s.Flow) / float64(s.Flow)
	}
	switch s.Kind {
	case MainStretch, FillStretch, RiserStretch, BranchStretch, HeaterStretch:
	default:
		return
	}
	if !t.b.loaded() {
		return
	}
	fastest := t.pipe.Cold
	if s.Hot {
		fastest = t.pipe.Hot
	}
	for i := range Tubes {
		s.Tube = &Tubes[i]
		bore := s.Tube.Bore(TypeL)
		s.Velocity = PipeVelocity(s.Flow, bore, RoundPipe)
		if s.Velocity > fastest && i < len(Tubes)-1 {
			continue
		}
		if s.Friction = HazenSI.Loss(s.Flow, t.pipe.C, bore); s.Friction <= t.pipe.Friction {
			break
		}
	}
	s.Length *= unit.Length(1 + t.pipe.Fittings)
	s.pipeK = float64(HazenSI.Loss(1, t.pipe.C, s.Tube.Bore(TypeL)).OfColumn(s.Length))
}

// pumps puts the curves in: where none is told, one that falls with the square
// of the flow from the shut-off boost to the boost at design flow.
func (t *tree) pumps() {
	for _, p := range t.sets {
		s := &t.s[p.stretch]
		if *p.curve == nil {
			c := &PumpCurve{Shut: t.gamma.HeightOf(*p.shutOff)}
			if s.Flow > 0 {
				c.Bend = -float64(t.gamma.HeightOf(*p.shutOff-*p.boost)) / float64(s.Flow) / float64(s.Flow)
			}
			*p.curve = c
		} else {
			*p.boost, *p.shutOff = t.gamma.OfColumn((*p.curve).Head(s.Flow)), t.gamma.OfColumn((*p.curve).Shut)
		}
		s.pump, s.known = *p.curve, -*p.boost
	}
}

// start is the pressure that a stretch begins at, at the height of its end, in
// a state: what feeds it less the height.
func (t *tree) start(i int, street unit.Pressure, of func(*Pressures) *unit.Pressure) unit.Pressure {
	s := &t.s[i]
	if s.Kind == TankStretch {
		if h := t.b.Header; h != nil && s.Name == "tank" {
			return h.Pressure
		}
		return 0
	}
	if s.From < 0 {
		return street
	}
	f := &t.s[s.From]
	return FloorPressure(*of(&f.At), t.gamma, s.End-f.End)
}

func noFlowOf(p *Pressures) *unit.Pressure { return &p.NoFlow }
func designOf(p *Pressures) *unit.Pressure { return &p.Design }
func openOf(p *Pressures) *unit.Pressure   { return &p.Open }

// noFlow goes from the street outward with nothing running: the street at its
// highest, each pump at its shut-off, each valve at its setting.
func (t *tree) noFlow() {
	for i := range t.s {
		s := &t.s[i]
		p := t.start(i, t.b.Street.Static, noFlowOf)
		if s.pump != nil {
			p += t.gamma.OfColumn(s.pump.Shut)
		}
		if s.setAt != nil {
			p = min(p, s.setAt.Setting)
		}
		s.At.NoFlow = p
	}
}

// design goes from the street outward at design flow, the street at its
// lowest. A valve gives its setting less the fall-off, and no more than it has.
func (t *tree) design() {
	for i := range t.s {
		s := &t.s[i]
		p := t.start(i, t.w.Case.Street, designOf)
		if t.b.loaded() {
			q := float64(s.Flow)
			s.Loss = unit.Pressure(s.pipeK*math.Pow(q, 1.852)) + s.known
		} else {
			s.Loss = s.known
			if s.Kind == MainStretch || s.Kind == RiserStretch {
				run := s.End - t.s[s.From].End
				s.Loss += t.b.Friction.OfColumn(max(run, -run))
			}
		}
		in := p
		if s.setAt != nil {
			p = min(p, FlowingOutlet(s.setAt))
			s.Loss = in - p
		} else {
			p -= s.Loss
		}
		s.At.Design = p
	}
}

// floors reads the pressures of every outlet off.
func (t *tree) floors() {
	t.w.Stretches = t.s
	for i := range t.cold {
		f := FloorWater{Level: i, Zone: t.b.zoneOf(i)}
		if t.b.loaded() {
			f.Load = t.b.Loads[i]
		}
		if t.cold[i] >= 0 {
			f.Cold = t.outlets(t.cold[i])
		} else {
			f.Cold.Stretch = -1
		}
		if t.hot[i] >= 0 {
			hot := t.outlets(t.hot[i])
			f.Hot = &hot
		}
		t.w.Floors = append(t.w.Floors, f)
	}
}

// outlets are the pressures at the outlets behind a branch.
func (t *tree) outlets(branch int) Outlets {
	at := t.s[branch].At
	return Outlets{branch, at, t.above(at, t.b.HighOutlet), t.above(at, t.b.LowOutlet)}
}

func (t *tree) above(p Pressures, h unit.Length) Pressures {
	column := t.gamma.OfColumn(h)
	p.NoFlow -= column
	p.Open -= column
	p.Design -= column
	if !t.b.loaded() {
		p.Design -= t.b.Friction.OfColumn(h)
	}
	return p
}
