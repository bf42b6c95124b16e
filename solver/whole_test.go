package solver_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

func profile(t testing.TB, id string) *solver.Profile {
	t.Helper()
	p, ok := solver.ProfileByID(id)
	require.True(t, ok)
	return p
}

func whole(t testing.TB, b *solver.Building, c solver.Case) *solver.Whole {
	t.Helper()
	w, err := solver.SolveWhole(b, c)
	require.NoError(t, err)
	return w
}

// By hand: a street of 62 psi at 10 ft below level 1, water of 0.433 psi/ft.
func TestWholeStaticByHand(t *testing.T) {
	gamma := unit.Gradient(0.433 * float64(psi) / float64(foot))
	w := whole(t, tower(5), solver.Case{Settings: solver.Settings{Gamma: gamma}})
	top := w.Floors[5].Cold
	assert.InDelta(t, 62-0.433*(10+40), float64(top.Floor.NoFlow/psi), 1e-9)
	assert.InDelta(t, 62-0.433*(10+40+6.5), float64(top.Highest.NoFlow/psi), 1e-9)
	assert.InDelta(t, 62-0.433*(10+40+0.7), float64(top.Lowest.NoFlow/psi), 1e-9)
	assert.InDelta(t, 55-0.433*(10+40+6.5), float64(top.Highest.Design/psi), 1e-9, "no friction is told")
}

// Where the fixtures are not told the riser loses what the building says, and
// the two ways to a pressure are one.
func TestWholeAgreesWithTheZonesOfProblems(t *testing.T) {
	b := tower(12)
	b.Friction = unit.Gradient(0.03 * float64(psi) / float64(foot))
	b.Losses = solver.Losses{Meter: 5 * psi, Backflow: 8 * psi}
	b.Booster = &solver.Booster{Elevation: b.Street.GaugeAt, Boost: 60 * psi, ShutOff: 70 * psi}
	b.Zones = []solver.Zone{
		{Name: "low", Bottom: 0, Top: 3, Supply: solver.FromStreet},
		{Name: "middle", Bottom: 4, Top: 8, Supply: solver.FromBooster, Valve: &solver.Valve{Elevation: 30 * foot, Setting: 70 * psi, FallOff: 8 * psi}},
		{Name: "high", Bottom: 9, Top: 12, Supply: solver.FromBooster},
	}
	w := whole(t, b, solver.Case{})
	for i, f := range w.Floors {
		assert.InDelta(t, float64(b.At(i, b.Lowest(i), solver.WaterColumn)), float64(f.Cold.Lowest.NoFlow), 1e-6, i)
		assert.InDelta(t, float64(b.At(i, b.Highest(i), solver.WaterColumn)), float64(f.Cold.Highest.NoFlow), 1e-6, i)
		assert.InDelta(t, float64(b.Flowing(i, b.Highest(i), solver.WaterColumn)), float64(f.Cold.Highest.Design), 1e-6, i)
	}
}

func TestTemplatesKeepTheirLimits(t *testing.T) {
	for _, tm := range solver.Templates {
		for _, code := range []string{"npc", "ipc", "upc", "shop"} {
			s := solver.Settings{Profile: profile(t, code)}
			b, err := tm.Outline.Building(s)
			require.NoError(t, err, tm.Name)
			w := whole(t, b, solver.Case{Settings: s})
			assert.Empty(t, w.Findings, "%s, %s", tm.Name, code)
			assert.Greater(t, math.Abs(float64(w.Demand)), 0.0)
		}
	}
}
