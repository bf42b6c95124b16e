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

// stepped follows a store in short equal steps, the switch looked at once a
// step: another road to the same day.
func stepped(s solver.Store, step float64) (left [24]float64, in, short float64) {
	now, on := s.Start, s.Start <= s.On
	for h := range s.Draw {
		for range int(3600 / step) {
			out := (s.Draw[h] + float64(s.Losses)) * step
			if now <= s.On {
				on = true
			}
			if on {
				give := math.Min(float64(s.Input)*step, s.Full-now+out)
				now, in = now+give, in+give
			}
			now -= out
			if now < 0 {
				short, now = short-now, 0
			}
			if now >= s.Full*(1-1e-12) {
				on = false
			}
		}
		left[h] = now
	}
	return left, in, short
}

// The day goes from event to event and needs no steps; short steps come to it
// as they get shorter.
func TestTheDayAgainstShortSteps(t *testing.T) {
	sum, finest := 0.0, 0.0
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 8))
		s := solver.Store{Full: 5e8 * (0.5 + r.Float64()), Losses: unit.Power(3000 * r.Float64())}
		s.On, s.Start = 0.8*s.Full, s.Full*r.Float64()
		s.Input = unit.Power(2e4 + 5e4*r.Float64())
		for h := range s.Draw {
			s.Draw[h] = 8e4 * r.Float64()
		}
		d := s.Day()
		assert.InEpsilon(t, d.In+1, d.Drawn+d.Lost+d.Left[23]-s.Start+1, 1e-12, "heat closes")
		coarse, fine := 0.0, 0.0
		left, in, short := stepped(s, 60)
		coarse = math.Abs(left[23]-d.Left[23]) + math.Abs(in-d.In) + math.Abs(short-d.Short)
		left, in, short = stepped(s, 6)
		fine = math.Abs(left[23]-d.Left[23]) + math.Abs(in-d.In) + math.Abs(short-d.Short)
		// Of a day's heat. A long step can miss a mark that the store only just
		// comes to, and the day is another from there; so the long ones are
		// only measured by their sum.
		day := float64(s.Input) * 86400
		assert.Less(t, fine/day, 0.001, "seed %d", seed)
		sum, finest = sum+coarse/day/200, finest+fine/day/200
	}
	t.Logf("off by %.2g of the day's heat with steps of 60 s, %.2g with 6 s", sum, finest)
	assert.Less(t, finest, sum/5)
}

// By hand: 1,000 gal of store, nothing put in, 2 kW of loop: it falls by
// 7.2 MJ an hour until the heater starts.
func TestAnIdleStoreCools(t *testing.T) {
	s := solver.Store{Full: 1e9, Start: 1e9, On: 8e8, Input: 1e5, Losses: 2000}
	d := s.Day()
	assert.InDelta(t, 1e9-7.2e6, d.Left[0], 1)
	assert.InDelta(t, 1e9-24*7.2e6, d.Left[23], 1)
	assert.Zero(t, d.Starts)
	assert.Zero(t, d.In)
}

// Outside check: gonum v0.17.0, package mat, as for networks of any kind.
func TestLoopsAgainstGonumLU(t *testing.T) {
	worst := 0.0
	for _, tm := range solver.Templates {
		b, err := tm.Outline.Building(solver.Settings{})
		require.NoError(t, err)
		w := whole(t, b, solver.Case{})
		require.NotEmpty(t, w.Loops, tm.Name)
		for _, l := range w.Loops {
			q, p := byLU(t, l.Network, l.Solution)
			most, high := 1e-5, 1.0
			for i := range q {
				most = max(most, math.Abs(q[i]))
			}
			for i := range p {
				high = max(high, math.Abs(p[i]))
			}
			for i := range q {
				worst = max(worst, math.Abs(q[i]-float64(l.Solution.Flow[i]))/most)
			}
			for i := range p {
				worst = max(worst, math.Abs(p[i]-float64(l.Solution.Pressure[i]))/high)
			}
		}
	}
	t.Logf("loops of the templates within %.1g", worst)
	assert.Less(t, worst, 1e-9)
}

// A balanced loop gives each riser what was asked, whatever its place.
func TestBalancedLoopsShareAlike(t *testing.T) {
	o, _ := solver.TemplateNamed("hospital")
	b, err := o.Building(solver.Settings{})
	require.NoError(t, err)
	for _, l := range whole(t, b, solver.Case{}).Loops {
		for i, r := range l.Risers {
			assert.InEpsilon(t, float64(r.Asked), float64(r.Flow), 1e-9)
			if i > 0 {
				assert.Greater(t, r.Valve, l.Risers[i-1].Valve, "the nearer to the heater, the further shut")
			}
		}
	}
}

func TestALoopLongerThanItsPumpCanDrive(t *testing.T) {
	o, _ := solver.TemplateNamed("mid-rise")
	b, err := o.Building(solver.Settings{})
	require.NoError(t, err)
	b.Loop.Pump = &solver.PumpCurve{Shut: 0.5, Bend: -1e5}
	w := whole(t, b, solver.Case{})
	var says []string
	for _, f := range w.Findings {
		if f.Limit == "loop" {
			says = append(says, f.Says)
		}
	}
	require.Len(t, says, len(w.Loops))
	assert.Contains(t, says[0], "its circulator gives")
	for _, l := range w.Loops {
		assert.Less(t, float64(l.Flow), float64(l.Asked))
	}
}

func TestWholeBuildingsThatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name, says string
		spoil      func(b *solver.Building)
	}{
		{"no levels", "expected at least 1", func(b *solver.Building) { b.Levels, b.Loads = nil, nil }},
		{"street is no number", "street pressure is NaN", func(b *solver.Building) { b.Street.Static = unit.Pressure(nan) }},
		{"level is no number", "level 2 is NaN", func(b *solver.Building) { b.Levels[2].Height = unit.Length(nan) }},
		{"infinite boost", "the boost is +Inf", func(b *solver.Building) { b.Booster.Boost = unit.Pressure(math.Inf(1)) }},
		{"negative pipe", "a pipe of -3 m", func(b *solver.Building) { b.Piping.Branch = -3 }},
		{"negative load", "fixture units", func(b *solver.Building) { b.Loads[3].Cold = -1 }},
		{"loads of other levels", "expected of each", func(b *solver.Building) { b.Loads = b.Loads[:3] }},
		{"lift on itself", "expected one below it", func(b *solver.Building) { b.Lifts = []solver.LiftSet{{Name: "a", From: 0}} }},
		{"no such lift", "the building has 0", func(b *solver.Building) { b.Zones[0].Supply = solver.FromLift }},
		{"cold above hot", "hot above cold", func(b *solver.Building) { b.Heater.Hot = b.Heater.Cold - 1 }},
		{"negative loop", "a loop of -1 m", func(b *solver.Building) { b.Loop.Supply = -1 }},
		{"pump uphill", "falls with the flow", func(b *solver.Building) { b.Loop.Pump = &solver.PumpCurve{Shut: 5, Slope: 3} }},
		{"stops before it starts", "expected to stop higher", func(b *solver.Building) { b.Booster.CutIn, b.Booster.CutOut = 5e5, 4e5 }},
	} {
		o, _ := solver.TemplateNamed("mid-rise")
		b, err := o.Building(solver.Settings{})
		require.NoError(t, err)
		c.spoil(b)
		_, err = solver.SolveWhole(b, solver.Case{})
		require.Error(t, err, c.name)
		assert.Contains(t, err.Error(), c.says, c.name)
		assert.NotContains(t, err.Error(), "\n", c.name)
	}
	_, err := solver.SolveWhole(nil, solver.Case{})
	require.Error(t, err)
}

// A valve set above its inlet can be built: it stands open, and that is said.
func TestAValveAboveItsInletIsAFinding(t *testing.T) {
	o, _ := solver.TemplateNamed("mid-rise")
	b, err := o.Building(solver.Settings{})
	require.NoError(t, err)
	z := 0
	for b.Zones[z].Valve == nil {
		z++
	}
	b.Zones[z].Valve.Setting = 300 * psi
	w := whole(t, b, solver.Case{})
	require.NotEmpty(t, w.Findings)
	assert.Equal(t, "setting", w.Findings[0].Limit)
	assert.Contains(t, w.Findings[0].Says, "it stands open and reduces nothing")
	assert.Equal(t, w.Valves[0].Inlet.NoFlow, w.Valves[0].Outlet.NoFlow)
}
