package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Speed of the wave and surge in type L tube with a modulus of water of
// 300,000 psi and of copper of 17,000,000 psi, 4,720 ft/s in a rigid pipe:
// Korteweg's formula, handbook values; from memory.
func TestWaveSpeedOfCopper(t *testing.T) {
	const foot = float64(unit.Foot)
	for _, c := range []struct{ bore, wall, wave, rate float64 }{
		{0.545, 0.04, 4238, 57.0}, {0.785, 0.045, 4127, 55.5}, {1.025, 0.05, 4045, 54.4}, {1.985, 0.07, 3853, 51.9},
	} {
		a := solver.WaveSpeed(unit.Velocity(4720*foot), 300_000*unit.PSI, 17_000_000*unit.PSI, unit.Length(c.bore)*unit.Inch, unit.Length(c.wall)*unit.Inch)
		assert.InDelta(t, c.wave, float64(a)/foot, 2)
		surge := solver.Surge(1000*float64(a), unit.Velocity(foot))
		assert.InDelta(t, c.rate, float64(surge/unit.PSI), 0.2)
	}
}

// A steel main: 998 kg/m3, wave 1,404 m/s, 4.07 m/s stopped, 5.70 MPa.
// University lecture, example 4.9 of its textbook; confirmed.
func TestSurgeOfASteelMain(t *testing.T) {
	assert.InDelta(t, 5.70e6, float64(solver.Surge(998*1404, 4.07)), 5e3)
	assert.InDelta(t, 2.14, solver.WaveReturn(1500, 1404), 0.005)
}

// Ends of the rows of PDI-WH 201, from memory; a second arrester past 20 ft is
// confirmed by a trade article.
func TestArresterRows(t *testing.T) {
	for _, c := range []struct {
		units, feet float64
		size, count int
	}{{11, 10, 0, 1}, {12, 10, 1, 1}, {330, 10, 5, 1}, {331, 10, 6, 1}, {64, 20, 3, 1}, {64, 21, 1, 2}} {
		size, count := solver.ArresterFor(c.units, unit.Length(c.feet)*unit.Foot, 20*unit.Foot)
		assert.Equal(t, c.size, size, "%v", c)
		assert.Equal(t, c.count, count, "%v", c)
	}
}
