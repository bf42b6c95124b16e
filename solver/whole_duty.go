package solver

import (
	"math"

	"riserwork/solver/unit"
)

// PumpDuty is what a booster or a lift does in the building.
type PumpDuty struct {
	Name      string
	Stretch   int
	Flow      unit.Flow     // design flow
	Suction   Pressures     // at the height of the pump
	Discharge Pressures     //
	Boost     unit.Pressure // at design flow
	ShutOff   unit.Pressure // at no flow
	Needed    unit.Pressure // boost at design flow that leaves just enough at the worst outlet behind it
	Head      unit.Length   // of Boost
	Curve     PumpCurve
	Water     unit.Power    // that the water takes at design flow
	CutIn     unit.Pressure // 0: none told
	CutOut    unit.Pressure
	Drawdown  unit.Volume // of its tank between the two; 0: none told
	Starts    float64     // an hour, where half of the pump's flow is drawn; 0: none told
}

// ValveDuty is what the reducing valve of a zone does.
type ValveDuty struct {
	Zone          int
	Stretch       int
	Inlet, Outlet Pressures
	Setting       unit.Pressure
	Flow          unit.Flow // design flow
	Ratio         float64   // inlet over outlet with no flow, gauge pressures
}

// floatValve is what a tank's fill needs to run; common practice, no source.
const floatValve = 5 * unit.PSI

// belowCutIn is how far below cut-in a tank is charged; common practice, no
// source.
const belowCutIn = 2 * unit.PSI

// duties reads off what pumps and valves do.
func (w *Whole) duties(t *tree) {
	short := t.shortfalls()
	for _, p := range t.sets {
		s := &t.s[p.stretch]
		d := PumpDuty{
			Name: p.name, Stretch: p.stretch, Flow: s.Flow, Discharge: s.At, Boost: *p.boost, ShutOff: *p.shutOff,
			Needed: *p.boost + short[p.stretch], Head: t.gamma.HeightOf(*p.boost), Curve: **p.curve,
			Water: unit.Power(float64(*p.boost) * float64(s.Flow)),
		}
		d.Suction = Pressures{
			t.start(p.stretch, t.b.Street.Static, noFlowOf), t.start(p.stretch, w.Case.Street, designOf), t.start(p.stretch, w.Case.Street, openOf),
		}
		if b := t.b.Booster; p.name == "booster" && b.CutIn > 0 {
			d.CutIn, d.CutOut = b.CutIn, b.CutOut
			if b.Tank > 0 && b.CutIn > belowCutIn {
				air := w.Case.Air
				d.Drawdown = AirTank{b.Tank, b.CutIn - belowCutIn + air, b.CutIn + air, b.CutOut + air}.Drawdown()
				if s.Flow > 0 {
					d.Starts = 3600 / CycleSeconds(d.Drawdown, s.Flow, s.Flow/2)
				}
			}
		}
		w.Pumps = append(w.Pumps, d)
	}
	for i := range t.s {
		s := &t.s[i]
		if s.setAt == nil {
			continue
		}
		v := ValveDuty{Zone: s.Zone, Stretch: i, Outlet: s.At, Setting: s.setAt.Setting, Flow: s.Flow}
		v.Inlet = Pressures{t.start(i, 0, noFlowOf), t.start(i, 0, designOf), t.start(i, 0, openOf)}
		if v.Outlet.NoFlow > 0 {
			v.Ratio = ReductionRatio(v.Inlet.NoFlow, v.Outlet.NoFlow)
		}
		w.Valves = append(w.Valves, v)
	}
}

// shortfalls is, for each stretch that is a pump, what is missing at design
// flow at the worst of the places that hang on it: outlets, the inlets of
// valves, and fills. Less than nothing is to spare.
func (t *tree) shortfalls() []unit.Pressure {
	on := make([]int, len(t.s)) // the pump that each hangs on
	short := make([]unit.Pressure, len(t.s))
	least := func(pump int, missing unit.Pressure) {
		if pump >= 0 && (short[pump] == 0 || missing > short[pump]) {
			short[pump] = missing
		}
	}
	for i := range t.s {
		s := &t.s[i]
		on[i] = -1
		if s.From >= 0 {
			on[i] = on[s.From]
		}
		switch s.Kind {
		case PumpStretch:
			on[i] = i
		case TankStretch:
			on[i] = -1
		case ValveStretch:
			least(on[i], FlowingOutlet(s.setAt)-t.start(i, 0, designOf))
			on[i] = -1
		case FillStretch:
			least(on[i], floatValve-s.At.Design)
		case BranchStretch:
			least(on[i], t.w.Top-t.above(s.At, t.b.HighOutlet).Design)
		}
	}
	return short
}

// ShutTap is a tap that closes at once.
type ShutTap struct {
	Level int
	Tap   Tap
	Hot   bool // the hot side of it
}

// SurgeAt is the pressure that rises at a tap when it closes at once: its
// whole flow stopped in the branch.
type SurgeAt struct {
	ShutTap
	Stretch  int
	Velocity unit.Velocity // in the branch
	Wave     unit.Velocity // of the pressure
	Rise     unit.Pressure
	Flowing  unit.Pressure // in the branch before, with no other tap open
	Return   float64       // seconds of the wave along the branch and back: slower closing stops less
}

// Copper's stiffness, drawn tube; from memory.
const copperModulus = 117e9 * unit.Pascal

// surge works out the surge at the tap of the case.
func (w *Whole) surge(t *tree) {
	shut := w.Case.Shut
	if shut == nil || !t.b.loaded() {
		return
	}
	branch := t.cold[shut.Level]
	if shut.Hot {
		branch = t.hot[shut.Level]
	}
	if branch < 0 {
		return
	}
	s := &t.s[branch]
	cold, err := WaterAt(unit.Celsius(15))
	if err != nil {
		return
	}
	bore := s.Tube.Bore(TypeL)
	flowing := s.At.NoFlow
	q := FlowAtPressure(shut.Tap.Flow, shut.Tap.At, max(0, flowing))
	a := SurgeAt{ShutTap: *shut, Stretch: branch, Velocity: PipeVelocity(q, bore, RoundPipe), Flowing: flowing}
	a.Wave = WaveSpeed(cold.Sound, cold.Bulk(), copperModulus, bore, unit.Length(s.Tube.L)*unit.Inch)
	a.Rise = Surge(cold.Density*float64(a.Wave), a.Velocity)
	a.Return = WaveReturn(s.Length/unit.Length(1+t.pipe.Fittings), a.Wave)
	w.Surge = &a
}

// LevelAt is the index of the level that an elevation lies on, the lowest one
// for what lies under it.
func (b *Building) LevelAt(e unit.Length) int {
	at := 0
	for i := range b.Levels {
		if b.Levels[i].Elevation <= e+1e-6 {
			at = i
		}
	}
	return min(at, b.Top())
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
