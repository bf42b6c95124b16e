package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Push for 100 psi in lb, of the pipe's outside diameter in inches. Iron pipe:
// NFPA 24, Table A-8-6.2, quoted in a city's calculation; resin pipe: a
// maker's handbook. Both confirmed.
func TestPushAtFittings(t *testing.T) {
	const pound = 0.45359237 * 9.80665
	for _, c := range []struct{ outside, angle, want float64 }{
		{4.8, 0, 1810}, {4.8, 90, 2559}, {4.8, 45, 1385}, {4.8, 22.5, 706}, {4.8, 11.25, 355},
		{6.9, 0, 3739}, {6.9, 90, 5288}, {6.9, 45, 2862},
		{3.268, 90, 1187}, {3.268, 45, 642}, {8.36, 0, 5489}, {12.28, 90, 16750},
	} {
		od := unit.Length(c.outside) * unit.Inch
		got := solver.EndThrust(100*unit.PSI, od)
		if c.angle > 0 {
			got = solver.BendThrust(100*unit.PSI, od, c.angle)
		}
		assert.InDelta(t, c.want, got/pound, 1, "%v", c)
	}
}

// 10,576 lb on rods of 5,000 lb: 2.1 rods, so two pairs. Pairs: NFPA 24
// (2019), 10.6.2; confirmed.
func TestRodsInPairs(t *testing.T) {
	assert.Equal(t, 4, solver.PairedRods(10576, 5000))
	assert.Equal(t, 2, solver.PairedRods(10000, 5000))
	assert.Equal(t, 2, solver.PairedRods(900, 5000))
}
