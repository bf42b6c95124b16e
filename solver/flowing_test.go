package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// By hand, with 0.433 psi/ft: every figure is a sum on paper.
func TestFlowingTakesEveryLossOnTheWay(t *testing.T) {
	gamma := unit.Gradient(0.433 * float64(psi) / float64(foot))
	b := tower(9)
	b.Losses = solver.Losses{Meter: 6 * psi, Backflow: 4 * psi}
	b.Friction = unit.Gradient(0.05 * float64(psi) / float64(foot))
	b.Booster = &solver.Booster{Elevation: -10 * foot, Boost: 70 * psi, ShutOff: 90 * psi}
	b.Zones = []solver.Zone{
		{Name: "low", Bottom: 0, Top: 3, Supply: solver.FromStreet},
		{Name: "mid", Bottom: 4, Top: 6, Supply: solver.FromBooster, Valve: &solver.Valve{Elevation: 34 * foot, Setting: 60 * psi, FallOff: 8 * psi}},
		{Name: "high", Bottom: 7, Top: 9, Supply: solver.FromBooster},
	}
	for _, c := range []struct {
		says  string
		level int
		at    unit.Length
		want  float64 // psi
	}{
		{"street, 36.5 ft over its gauge", 3, 26.5 * foot, 55 - 10 - (0.433+0.05)*36.5},
		{"below the gauge friction is lost as well", 0, -20 * foot, 55 - 10 + 0.433*10 - 0.05*10},
		{"valve less fall-off, 22.5 ft over it", 6, 56.5 * foot, 60 - 8 - (0.433+0.05)*22.5},
		{"booster at its duty, 96.5 ft up", 9, 86.5 * foot, 55 - 10 + 70 - (0.433+0.05)*96.5},
	} {
		assert.InDelta(t, c.want, float64(b.Flowing(c.level, c.at, gamma)/psi), 1e-9, c.says)
	}
	b.Zones[1].Valve.Setting = 300 * psi
	assert.InDelta(t, 55-10+70-(0.433+0.05)*66.5, float64(b.Flowing(6, 56.5*foot, gamma)/psi), 1e-9, "a valve gives no more than its inlet")
	b.Zones = nil
	assert.InDelta(t, 55-10-(0.433+0.05)*36.5, float64(b.Flowing(3, 26.5*foot, gamma)/psi), 1e-9, "no zones: the street")
	b.Header = &solver.Header{Elevation: 88 * foot, Pressure: 45 * psi}
	b.Zones = []solver.Zone{{Name: "top", Bottom: 0, Top: 9, Supply: solver.FromHeader}}
	assert.InDelta(t, 45+(0.433-0.05)*20, float64(b.Flowing(7, 68*foot, gamma)/psi), 1e-9, "down from the header")
}

func TestACopySharesNothing(t *testing.T) {
	b := tower(4)
	b.Booster, b.Heater, b.Loop = &solver.Booster{Boost: 5 * psi}, &solver.Heater{Efficiency: 0.8}, &solver.Loop{SupplyLoss: 20}
	b.Zones = []solver.Zone{{Name: "a", Top: 4, Supply: solver.FromStreet, Valve: &solver.Valve{Setting: 40 * psi}}}
	c := b.Copy()
	require.Equal(t, b, c)
	c.Levels[0].Label, c.Zones[0].Valve.Setting, c.Zones[0].Name = "X", 10*psi, "x"
	c.Booster.Boost, c.Heater.Efficiency, c.Loop.SupplyLoss = 0, 0, 0
	assert.Equal(t, "P1", b.Levels[0].Label)
	assert.Equal(t, "a", b.Zones[0].Name)
	assert.Equal(t, 40*psi, b.Zones[0].Valve.Setting)
	assert.Equal(t, 5*psi, b.Booster.Boost)
	assert.Equal(t, 0.8, b.Heater.Efficiency)
	assert.Equal(t, 20.0, b.Loop.SupplyLoss)
}

// A pressure right at the code's own print of its limit is no breach, in
// either unit; 1 psi or 10 kPa over both prints is one.
func TestBothPrintsOfALimitAreKept(t *testing.T) {
	for i := range solver.Profiles {
		p := &solver.Profiles[i]
		at := func(lowest unit.Pressure) int {
			b := tower(2)
			b.Street = solver.Street{Static: lowest, Low: lowest, GaugeAt: b.Lowest(0)}
			sol, err := solver.Solve(b, solver.Settings{Profile: p, TopMin: psi})
			require.NoError(t, err)
			return len(sol.Breaches)
		}
		us, si := unit.Pressure(p.StaticMax.US.SI()), unit.Pressure(p.StaticMax.SI.SI())
		assert.Zero(t, at(us), "%s, %s", p.ID, p.StaticMax.US.Text(3))
		assert.Zero(t, at(si), "%s, %s", p.ID, p.StaticMax.SI.Text(3))
		assert.Equal(t, 1, at(max(us, si)+psi), p.ID)
		assert.Equal(t, 1, at(max(us, si)+10*unit.Kilopascal), p.ID)
	}
}

func TestALimitMetExactlyFollowsItsWords(t *testing.T) {
	moreThan, orHigher := solver.Limit{Over: true}, solver.Limit{}
	assert.True(t, moreThan.Keeps(80, 80))
	assert.True(t, moreThan.Keeps(80+1e-12, 80), "rounding of floating point")
	assert.False(t, moreThan.Keeps(80.01, 80))
	assert.False(t, orHigher.Keeps(80, 80))
	assert.True(t, orHigher.Keeps(79.9, 80))
}

// The way there and the way back: what a heat, a heater and a loop do is the
// reverse of what is asked of them.
func TestHotWaterBackwards(t *testing.T) {
	const c = 4.19e6 // J/(m3 K)
	rise := unit.TempDifference(45)
	heat := solver.HeatForVolume(c, 0.3, rise)
	assert.InEpsilon(t, 45, float64(solver.RiseOfHeat(heat, c, 0.3)), 1e-12)
	flow := solver.Recovery(36_000, 0.8, c, rise)
	assert.InEpsilon(t, 45, float64(solver.RiseAtFlow(36_000, 0.8, c, flow)), 1e-12)
	assert.InEpsilon(t, 90, float64(solver.RiseAtFlow(36_000, 0.8, c, flow/2)), 1e-12, "half the flow, twice the rise")
	q := solver.CirculationFlow(4_000, c, 5)
	assert.InEpsilon(t, 5, float64(solver.LoopDrop(4_000, c, q)), 1e-12)
	assert.InEpsilon(t, 10, float64(solver.LoopDrop(4_000, c, q/2)), 1e-12)
}

// Level 7: 68 ft, 6 psi of friction; at 64 psi it has 64 - 29.4 - 6.
func TestWhatAnOutletHasLeft(t *testing.T) {
	gamma := unit.Gradient(0.433 * float64(psi) / float64(foot))
	o := solver.Outlet{Above: 68 * foot, Friction: 6 * psi, Least: 35 * psi}
	assert.InDelta(t, 64-0.433*68-6, float64(o.Left(64*psi, gamma)/psi), 1e-9)
	assert.InDelta(t, 35, float64(o.Left(o.Needs(gamma), gamma)/psi), 1e-9)
}
