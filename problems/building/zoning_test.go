package building_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// sheetOf is a sheet for drawing, as problems makes it.
func sheetOf(t *testing.T, seed uint64, sys unit.System, code string) *building.Sheet {
	t.Helper()
	p, ok := solver.ProfileByID(code)
	require.True(t, ok)
	return &building.Sheet{Rand: rand.New(rand.NewPCG(seed, 1)), System: sys, Profile: p, PSI: unit.PSI, Gallon: unit.USGallon}
}

var zonedHouses = []struct {
	sys  unit.System
	code string
}{{unit.US, "shop"}, {unit.Metric, "npc"}, {unit.Mixed, "npc"}, {unit.US, "ipc"}, {unit.US, "upc"}}

// zoned draws towers and lays them out; it returns the share laid out.
func zoned(t *testing.T, lay func(*building.Sheet, *building.Tower, building.ZonePlan) bool, check func(*building.Sheet, *building.Tower, building.ZonePlan)) float64 {
	t.Helper()
	const seeds = 400
	done, all := 0, 0
	for _, h := range zonedHouses {
		for seed := range uint64(seeds) {
			s := sheetOf(t, seed, h.sys, h.code)
			tower := s.Tower(building.Plan{Min: 8, Max: 36, Parking: true})
			street := s.PickPlate([]float64{50, 55, 60}, []float64{350, 375, 400})
			s.SetStreet(street, street-s.PickPlate([]float64{5, 8}, []float64{35, 50}), 0, "on the gauge")
			p := s.UsualZones()
			all++
			if !lay(s, tower, p) {
				continue
			}
			done++
			require.NoError(t, s.Building.Check())
			checkZones(t, s, p)
			check(s, tower, p)
		}
	}
	return float64(done) / float64(all)
}

// checkZones asks of every layout what a sound one keeps, over the solver's
// own pressures: both limits at every level, and each valve's inlet.
func checkZones(t *testing.T, s *building.Sheet, p building.ZonePlan) {
	t.Helper()
	b := s.Building
	sol, err := solver.Solve(b, solver.Settings{Profile: s.Profile})
	require.NoError(t, err)
	assert.Empty(t, sol.Breaches)
	require.Equal(t, 0, b.Zones[0].Bottom)
	require.Equal(t, b.Top(), b.Zones[len(b.Zones)-1].Top)
	for i, z := range b.Zones {
		if z.Valve == nil {
			continue
		}
		set := float64(z.Valve.Setting / s.Press(1))
		assert.InDelta(t, math.Round(set/s.ValveStep())*s.ValveStep(), set, 1e-6, "whole psi or 5 kPa")
		in := b.Inlet(i, solver.WaterColumn)
		over := s.Press(100)
		if s.US() {
			over = s.Press(15)
		}
		assert.GreaterOrEqual(t, float64(in-z.Valve.Setting), float64(over)-1e-6, "inlet over setting")
		assert.LessOrEqual(t, solver.ReductionRatio(in, z.Valve.Setting), 4.0, "one stage")
		floor := b.Levels[z.Bottom].Elevation
		ceiling := b.Levels[z.Top].Elevation + b.Levels[z.Top].Height
		assert.True(t, z.Valve.Elevation > floor && z.Valve.Elevation < ceiling, "the valve stands in its zone")
		busy := z.Valve.Setting - z.Valve.FallOff - s.Press(p.Friction)
		top := solver.FloorPressure(busy, solver.WaterColumn, b.Highest(z.Top)-z.Valve.Elevation)
		assert.GreaterOrEqual(t, float64(top), float64(s.Press(p.Least))-1e-6, "top shower at flow")
	}
}

func TestUpFeedZonesAreSound(t *testing.T) {
	share := zoned(t, (*building.Sheet).UpFeed, func(s *building.Sheet, tower *building.Tower, p building.ZonePlan) {
		b := tower.Building
		require.Equal(t, solver.FromStreet, b.Zones[0].Supply)
		if len(b.Zones) == 1 {
			return
		}
		discharge := solver.FloorPressure(b.Street.Static+b.Booster.ShutOff, solver.WaterColumn, b.Booster.Elevation-b.Street.GaugeAt)
		most := s.Press(1725)
		if s.US() {
			most = s.Press(250)
		}
		assert.LessOrEqual(t, float64(discharge), float64(most))
		for _, z := range b.Zones[1:] {
			require.NotNil(t, z.Valve)
		}
	})
	t.Logf("laid out: %.0f %%", 100*share)
	assert.Greater(t, share, 0.5)
}

func TestDownFeedZonesAreSound(t *testing.T) {
	share := zoned(t, (*building.Sheet).DownFeed, func(s *building.Sheet, tower *building.Tower, _ building.ZonePlan) {
		b := tower.Building
		require.NotNil(t, b.Header)
		require.Nil(t, b.Zones[len(b.Zones)-1].Valve, "the top zone hangs on the header")
		for _, z := range b.Zones[:len(b.Zones)-1] {
			require.NotNil(t, z.Valve)
			require.GreaterOrEqual(t, z.Top, b.Ground, "the valve stands on a storey")
		}
	})
	t.Logf("laid out: %.0f %%", 100*share)
	assert.Greater(t, share, 0.5)
}

// A tower that cannot be zoned soundly is left as it was.
func TestUnsoundZonesAreRefused(t *testing.T) {
	s := sheetOf(t, 1, unit.US, "shop")
	tower := s.Tower(building.Plan{Min: 20, Max: 30})
	s.SetStreet(120, 110, 0, "on the gauge") // over the limit on level 1, and no valve at the entry
	before := *tower.Building
	assert.False(t, s.UpFeed(tower, s.UsualZones()))
	p := s.UsualZones()
	p.Setting = 10 // leaves the top shower of the zone short
	p.Header = 45
	assert.False(t, s.DownFeed(tower, p))
	assert.Equal(t, before, *tower.Building)
}

func TestRoundingKeepsClearOfWholeSteps(t *testing.T) {
	for _, c := range []struct {
		v, step, blur float64
		want          bool
	}{
		{105, 10, 2, true},
		{101, 10, 2, false},
		{109, 10, 2, false},
		{103, 10, 2, true},
		{101.4, 10, 0, false}, // nearer than 0.15 of a step
		{101.6, 10, 0, true},
	} {
		assert.Equal(t, c.want, building.Rounding(c.v, c.step, c.blur), "%g in steps of %g", c.v, c.step)
	}
}
