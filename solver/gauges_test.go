package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Factors by NIST SP 811 (2008), App. B.9: foot of water 2,989.067 Pa, inch of
// mercury 3,386.389 Pa, standard atmosphere 101,325 Pa.
func TestGaugeSums(t *testing.T) {
	foot := unit.Pressure(2989.067)
	assert.InEpsilon(t, 100.0, float64(solver.HeightBetween(160*foot, 60*foot, solver.WaterColumn)/unit.Foot), 1e-6)
	assert.InEpsilon(t, 94.69595, float64(solver.AbsolutePressure(80*unit.PSI, 101325)/unit.PSI), 1e-6)
	perVacuum := 0.3048 / 2989.067
	assert.InEpsilon(t, 1.132925, float64(solver.Lift(3386.389, perVacuum)/unit.Foot), 1e-6)
	assert.InEpsilon(t, 33.89854, float64(solver.Lift(101325, perVacuum)/unit.Foot), 1e-6)
	assert.InEpsilon(t, 20.0, float64(solver.BucketFlow(5*unit.USGallon, 15)/unit.GPM), 1e-12)
}

func TestGoverningOutlet(t *testing.T) {
	gamma := unit.Gradient(9800)
	shower := solver.Outlet{Above: 27 * unit.Metre, Friction: 40_000, Least: 140_000}
	flush := solver.Outlet{Above: 21 * unit.Metre, Friction: 75_000, Least: 240_000}
	near := solver.Outlet{Above: 2 * unit.Metre, Friction: 5_000, Least: 55_000}
	assert.InEpsilon(t, 444_600.0, float64(shower.Needs(gamma)), 1e-12)
	for name, c := range map[string]struct {
		list []solver.Outlet
		want int
	}{
		"lower flush valve": {[]solver.Outlet{shower, flush, near}, 1},
		"highest of like":   {[]solver.Outlet{near, shower}, 1},
		"first of equals":   {[]solver.Outlet{flush, flush}, 0},
		"none":              {nil, -1},
	} {
		assert.Equal(t, c.want, solver.Governing(c.list, gamma), name)
	}
}
