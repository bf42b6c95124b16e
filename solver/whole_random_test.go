package solver_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// anyOutline draws an outline of any kind, ideal valves or falling ones.
func anyOutline(r *rand.Rand) solver.Outline {
	uses := []solver.Use{solver.Apartment, solver.Hotel, solver.Hospital, solver.Residence, solver.Office, solver.MixedUse}
	o := solver.Outline{
		Use: uses[r.IntN(len(uses))], Storeys: 1 + r.IntN(40), Below: r.IntN(4), Floor: unit.Length(2.5 + 2.5*r.Float64()),
		First: unit.Length(3 + 3*r.Float64()), Static: unit.Pressure(200+500*r.Float64()) * unit.Kilopascal,
		Losses: solver.Losses{Meter: unit.Pressure(60e3 * r.Float64()), Backflow: unit.Pressure(90e3 * r.Float64()), Strainer: unit.Pressure(2e4 * r.Float64())},
		Suites: 1 + r.IntN(12), Risers: 1 + r.IntN(4), Booster: r.IntN(4) > 0, Lifts: r.IntN(3), Tank: r.IntN(5) == 0, Zoned: r.IntN(4) > 0,
		Heater: r.IntN(5) > 0, Hot: unit.Celsius(58 + 10*r.Float64()), OwnPlant: r.IntN(2) == 0, Loop: r.IntN(2) == 0,
	}
	if r.IntN(2) == 0 {
		o.FallOff = unit.Pressure(5+80*r.Float64()) * unit.Kilopascal
	}
	if r.IntN(2) == 0 {
		o.Mixed = unit.Celsius(48 + 8*r.Float64())
	}
	if o.Use == solver.Hospital || o.Use == solver.Office {
		o.Suites = 1 + r.IntN(3)
	}
	return o
}

// anyCase opens a few taps anywhere.
func anyCase(r *rand.Rand, b *solver.Building) solver.Case {
	c := solver.Case{Settings: solver.Settings{Profile: &solver.Profiles[r.IntN(len(solver.Profiles))]}}
	for range r.IntN(6) {
		c.Open = append(c.Open, solver.OpenTap{Level: r.IntN(len(b.Levels) - 1), Tap: solver.Taps[r.IntN(len(solver.Taps))], Count: 1 + r.IntN(3)})
	}
	return c
}

func anyBuilding(t *testing.T, r *rand.Rand) (*solver.Building, solver.Case) {
	t.Helper()
	o := anyOutline(r)
	b, err := o.Building(solver.Settings{Profile: &solver.Profiles[r.IntN(len(solver.Profiles))]})
	require.NoError(t, err, "%+v", o)
	return b, anyCase(r, b)
}

func rounds(short, long int) int {
	if testing.Short() {
		return short
	}
	return long
}

// The laws themselves, worked out from the printed results and nothing else of
// the solver: each stretch's loss by the formula of Hazen and Williams, the
// square law or the pump's curve, the height, and the sum of the flows.
func TestEnergyAndMassClose(t *testing.T) {
	var worstP, worstQ, worstHeat, worstDay float64
	for seed := range uint64(rounds(300, 5000)) {
		r := rand.New(rand.NewPCG(seed, 1))
		b, c := anyBuilding(t, r)
		w, err := solver.SolveWhole(b, c)
		require.NoError(t, err, "seed %d", seed)
		worstP = max(worstP, energyOff(t, w, seed))
		worstQ = max(worstQ, massOff(w))
		heat, day := heatOff(w)
		worstHeat, worstDay = max(worstHeat, heat), max(worstDay, day)
	}
	t.Logf("worst relative misfit: pressure %.2g, flow %.2g, heat of loops %.2g, heat of the day %.2g", worstP, worstQ, worstHeat, worstDay)
	assert.Less(t, worstP, 1e-9)
	assert.Less(t, worstQ, 1e-9)
	assert.Less(t, worstHeat, 1e-9)
	assert.Less(t, worstDay, 1e-9)
}

// energyOff is how far the pressures of a path are off, over the largest.
func energyOff(t *testing.T, w *solver.Whole, seed uint64) float64 {
	b := w.Building
	worst, largest := 0.0, float64(b.Street.Static)
	for _, s := range w.Stretches {
		largest = max(largest, math.Abs(float64(s.At.NoFlow)))
	}
	column := func(h unit.Length) float64 { return float64(solver.WaterColumn) * float64(h) }
	for i, s := range w.Stretches {
		if s.Kind == solver.TankStretch {
			continue
		}
		from := solver.Pressures{NoFlow: b.Street.Static, Design: b.Street.Low, Open: b.Street.Low}
		rise := 0.0
		if s.From >= 0 {
			require.Less(t, s.From, i)
			from, rise = w.Stretches[s.From].At, column(s.End-w.Stretches[s.From].End)
		}
		noFlow, design, open := float64(from.NoFlow)-rise, float64(from.Design)-rise, float64(from.Open)-rise
		loss := func(q unit.Flow) float64 {
			switch {
			case s.Tube != nil:
				bore := float64(s.Tube.Bore(solver.TypeL))
				pa := 10.67 * float64(solver.WaterColumn) * math.Pow(float64(q)/140, 1.852) / math.Pow(bore, 4.87) * float64(s.Length)
				if s.Kind == solver.HeaterStretch && s.Flow > 0 {
					pa += float64(b.Heater.Loss) * math.Pow(float64(q/s.Flow), 2)
				}
				return pa
			case s.Kind == solver.EntryStretch && s.Flow > 0:
				return float64(b.Losses.Total()) * math.Pow(float64(q/s.Flow), 2)
			}
			return 0
		}
		switch s.Kind {
		case solver.PumpStretch:
			for _, p := range w.Pumps {
				if p.Stretch == i {
					noFlow += column(p.Curve.Head(0))
					design += column(p.Curve.Head(s.Flow))
					open += column(p.Curve.Head(s.OpenFlow))
				}
			}
		case solver.ValveStretch:
			v := b.Zones[s.Zone].Valve
			noFlow = min(noFlow, float64(v.Setting))
			design = min(design, float64(v.Setting-v.FallOff))
			open = min(open, float64(v.Setting)-float64(v.FallOff)*float64(s.OpenFlow/s.Flow))
		default:
			design -= loss(s.Flow)
			open -= loss(s.OpenFlow)
		}
		for _, off := range []float64{noFlow - float64(s.At.NoFlow), design - float64(s.At.Design), open - float64(s.At.Open)} {
			if math.Abs(off)/largest > 1e-9 {
				t.Fatalf("seed %d: %s is off by %g Pa", seed, s.Name, off)
			}
			worst = max(worst, math.Abs(off)/largest)
		}
	}
	for _, f := range w.Taps { // the taps' own law: flow for the root of pressure
		for _, half := range []struct {
			q unit.Flow
			p unit.Pressure
		}{{f.ColdShare, f.Cold}, {f.HotShare, f.Hot}} {
			share := 1.0
			if f.Tap.Mixed > 0 && w.Hot != nil && w.Floors[f.Level].Hot != nil {
				share = float64(f.Tap.Mixed-b.Heater.Cold) / float64(w.Hot.Delivered-b.Heater.Cold)
			}
			if half.p == f.Cold && half.q == f.ColdShare && share < 1 {
				share = 1 - share
			}
			if half.q <= 0 {
				continue
			}
			loses := float64(f.Tap.At) * math.Pow(float64(half.q/f.Tap.Flow)/share, 2)
			worst = max(worst, math.Abs(loses-float64(half.p))/largest)
		}
	}
	return worst
}

// massOff is how far the flows of the open taps are off at the junctions.
func massOff(w *solver.Whole) float64 {
	out := make([]float64, len(w.Stretches))
	for _, f := range w.Taps {
		n := float64(f.Count)
		if i := w.Floors[f.Level].Cold.Stretch; i >= 0 {
			out[i] += n * float64(f.ColdShare)
		}
		if h := w.Floors[f.Level].Hot; h != nil {
			out[h.Stretch] += n * float64(f.HotShare)
		}
	}
	most := 1e-6
	for _, s := range w.Stretches {
		if s.From >= 0 {
			out[s.From] += float64(s.OpenFlow)
		}
		most = max(most, float64(s.OpenFlow))
	}
	worst := 0.0
	for i, s := range w.Stretches {
		worst = max(worst, math.Abs(out[i]-float64(s.OpenFlow))/most)
	}
	return worst
}

// heatOff is how far heat in and heat out of loops and of the store differ.
func heatOff(w *solver.Whole) (loops, day float64) {
	if w.Hot == nil {
		return 0, 0
	}
	for _, l := range w.Loops {
		in := w.Hot.PerVolume * float64(l.Flow) * float64(l.Supply-l.Return)
		loops = max(loops, math.Abs(in-float64(l.Heat))/float64(l.Heat), l.Mass, l.Energy)
		sum := 0.0
		for _, riser := range l.Risers {
			sum += float64(riser.Flow)
		}
		loops = max(loops, math.Abs(sum-float64(l.Flow))/float64(l.Flow))
	}
	s := w.Hot.Store
	off := s.In - s.Drawn - s.Lost - (s.Left[23] - s.Start)
	return loops, math.Abs(off) / max(1, s.In)
}

// A tap that has more street behind it never gets less: valves are ideal, and
// pipes and settings stay as they are.
func TestMoreStreetNeverLowersATap(t *testing.T) {
	for seed := range uint64(rounds(100, 1000)) {
		r := rand.New(rand.NewPCG(seed, 2))
		b, c := anyBuilding(t, r)
		for i := range b.Zones {
			if v := b.Zones[i].Valve; v != nil {
				v.FallOff = 0
			}
		}
		w := whole(t, b, c)
		more := b.Copy()
		up := unit.Pressure(200e3 * r.Float64())
		more.Street.Static += up
		more.Street.Low += up
		x := whole(t, more, c)
		for i := range w.Floors {
			for _, pair := range [][2]unit.Pressure{
				{w.Floors[i].Cold.Highest.NoFlow, x.Floors[i].Cold.Highest.NoFlow}, {w.Floors[i].Cold.Highest.Design, x.Floors[i].Cold.Highest.Design}, {w.Floors[i].Cold.Highest.Open, x.Floors[i].Cold.Highest.Open},
			} {
				assert.GreaterOrEqual(t, float64(pair[1]), float64(pair[0])-1e-3, "seed %d, level index %d", seed, i)
			}
		}
		for i := range w.Taps {
			assert.GreaterOrEqual(t, float64(x.Taps[i].Each), float64(w.Taps[i].Each)*(1-1e-9), "seed %d", seed)
		}
	}
}

// One tap more never raises another on the same water, and never the street.
func TestOneTapMoreNeverRaisesAnother(t *testing.T) {
	for seed := range uint64(rounds(100, 1000)) {
		r := rand.New(rand.NewPCG(seed, 3))
		b, c := anyBuilding(t, r)
		w := whole(t, b, c)
		c.Open = append(c.Open, solver.OpenTap{Level: r.IntN(len(b.Levels) - 1), Tap: solver.Taps[r.IntN(len(solver.Taps))], Count: 1})
		x := whole(t, b, c)
		for i := range w.Taps {
			assert.LessOrEqual(t, float64(x.Taps[i].ColdShare), float64(w.Taps[i].ColdShare)*(1+1e-9), "seed %d", seed)
			assert.LessOrEqual(t, float64(w.Taps[i].Each), float64(w.Taps[i].Alone)*(1+1e-9), "seed %d", seed)
		}
	}
}

func TestSameBuildingSameResult(t *testing.T) {
	for seed := range uint64(20) {
		b, c := anyBuilding(t, rand.New(rand.NewPCG(seed, 4)))
		before := b.Copy()
		w, x := whole(t, b, c), whole(t, b, c)
		assert.Equal(t, w.Floors, x.Floors)
		assert.Equal(t, w.Findings, x.Findings)
		assert.Equal(t, before, b, "the building told is left as it is")
	}
}
