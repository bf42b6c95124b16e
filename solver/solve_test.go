package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

const (
	psi  = unit.PSI
	foot = unit.Foot
)

// tower is a plain building: n storeys of 10 ft, one level of parking.
func tower(n int) *solver.Building {
	b := &solver.Building{Use: solver.Apartment, Ground: 1, HighOutlet: 6.5 * foot, LowOutlet: 0.7 * foot}
	b.Levels = append(b.Levels, solver.Level{Label: "P1", Role: solver.Parking, Elevation: -10 * foot, Height: 10 * foot})
	for i := range n {
		b.Levels = append(b.Levels, solver.Level{Label: string(rune('1' + i)), Role: solver.Typical, Elevation: unit.Length(i) * 10 * foot, Height: 10 * foot})
	}
	b.Levels = append(b.Levels, solver.Level{Label: "Roof", Role: solver.Roof, Elevation: unit.Length(n) * 10 * foot})
	b.Street = solver.Street{Static: 62 * psi, Low: 55 * psi, GaugeAt: -10 * foot}
	return b
}

func TestStaticPressureFallsWithHeight(t *testing.T) {
	b := tower(8)
	sol, err := solver.Solve(b, solver.Settings{Gamma: unit.Gradient(0.433 * float64(psi) / float64(foot)), TopMin: 25 * psi})
	require.NoError(t, err)
	// By hand: level 8 stands 80 ft above the gauge, its shower 86.5 ft.
	top := sol.Levels[b.Top()]
	assert.InDelta(t, 62-0.433*86.5, float64(top.Highest/psi), 1e-9)
	assert.InDelta(t, 62-0.433*80, float64(top.Floor/psi), 1e-9)
	assert.InDelta(t, 62, float64(sol.Levels[0].Floor/psi), 1e-9)
	// (55 - 25) / 0.433 = 69.3 ft: level 6 ends at 66.5 ft, level 7 is short.
	assert.InDelta(t, 30/0.433, float64(sol.Reach/foot), 1e-9)
	require.Equal(t, "7", b.Levels[sol.FirstLow].Label)
	assert.InDelta(t, 25-(55-0.433*86.5), float64(sol.Shortfall/psi), 1e-9)
}

func TestZonesAreFedThroughTheirValves(t *testing.T) {
	b := tower(9)
	b.Booster = &solver.Booster{Elevation: -10 * foot, Boost: 60 * psi, ShutOff: 70 * psi}
	b.Zones = []solver.Zone{
		{Name: "low", Bottom: 0, Top: 3, Supply: solver.FromStreet},
		{Name: "high", Bottom: 4, Top: 9, Supply: solver.FromBooster, Valve: &solver.Valve{Elevation: -10 * foot, Setting: 90 * psi}},
	}
	gamma := unit.Gradient(0.433 * float64(psi) / float64(foot))
	assert.InDelta(t, 90-0.433*(40+6.5), float64(b.At(4, 30*foot+b.HighOutlet, gamma)/psi), 1e-9)
	assert.InDelta(t, 62-0.433*10, float64(b.At(1, 0, gamma)/psi), 1e-9)
}

func TestImpossibleBuildingsAreRefusedWithTheReason(t *testing.T) {
	for _, c := range []struct {
		name, says string
		spoil      func(b *solver.Building)
	}{
		{"no storeys", "expected at least 1", func(b *solver.Building) { b.Levels = b.Levels[:1]; b.Ground = 0 }},
		{"no levels", "expected at least 1", func(b *solver.Building) { b.Levels = nil; b.Ground = 0 }},
		{"flat level", "expected more than 0", func(b *solver.Building) { b.Levels[2].Height = 0 }},
		{"gap", "does not end where", func(b *solver.Building) { b.Levels[3].Elevation += foot }},
		{"10,000 storeys", "expected at most", func(b *solver.Building) { *b = *tower(10000) }},
		{"no street", "street pressure", func(b *solver.Building) { b.Street.Static = 0 }},
		{"low over high", "above the highest", func(b *solver.Building) { b.Street.Low = 100 * psi }},
		{"negative loss", "negative", func(b *solver.Building) { b.Losses.Meter = -1 }},
		{"zone upside down", "lowest first", func(b *solver.Building) { b.Zones = []solver.Zone{{Name: "a", Bottom: 5, Top: 2}} }},
		{"zones apart", "does not begin where", func(b *solver.Building) {
			b.Zones = []solver.Zone{{Name: "a", Bottom: 0, Top: 2}, {Name: "b", Bottom: 4, Top: 6}}
		}},
		{"no booster", "has none", func(b *solver.Building) { b.Zones = []solver.Zone{{Name: "a", Top: 3, Supply: solver.FromBooster}} }},
		{"no header", "has none", func(b *solver.Building) { b.Zones = []solver.Zone{{Name: "a", Top: 3, Supply: solver.FromHeader}} }},
		{"valve above its inlet", "above the", func(b *solver.Building) {
			b.Zones = []solver.Zone{{Name: "a", Top: 3, Supply: solver.FromStreet, Valve: &solver.Valve{Setting: 80 * psi}}}
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := tower(8)
			c.spoil(b)
			_, err := solver.Solve(b, solver.Settings{})
			require.ErrorContains(t, err, c.says)
			assert.NotContains(t, err.Error(), "\n")
		})
	}
}

func TestBreachesNameTheirLevel(t *testing.T) {
	b := tower(8)
	b.Street.Static, b.Street.Low = 100*psi, 90*psi
	npc, _ := solver.ProfileByID("npc")
	sol, err := solver.Solve(b, solver.Settings{Profile: npc})
	require.NoError(t, err)
	require.NotEmpty(t, sol.Breaches)
	assert.Contains(t, sol.Breaches[0].Says, "level P1")
	assert.Contains(t, sol.Breaches[0].Says, "550\u00a0kPa")
}

// What every taught figure must come to: the shop's drills. Common practice,
// no source.
func TestShopDrills(t *testing.T) {
	gamma := unit.Gradient(0.433 * float64(psi) / float64(foot))
	assert.InDelta(t, 127, float64(solver.Reach(80*psi, 25*psi, gamma)/foot), 0.05, "80 psi, 25 kept")
	assert.InDelta(t, 104, float64(solver.NextValve(70*psi, 25*psi, gamma)/foot), 0.1, "70 allowed below a 25 psi setting")
	assert.InDelta(t, 58, float64(solver.FloorPressure(25*psi, gamma, -76*foot)/psi), 0.1, "76 ft below a 25 psi setting")
}
