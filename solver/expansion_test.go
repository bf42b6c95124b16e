package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// 2 gal from 80 to 135 psig want a tank of 5.44 gal: a consulting engineer's
// article on thermal expansion tanks, part 2 (sizing); confirmed.
func TestExpansionTankOfTheArticle(t *testing.T) {
	v := solver.ExpansionTank(2*unit.Litre, 80*unit.PSI, 135*unit.PSI, 14.7*unit.PSI)
	assert.InDelta(t, 5.444, float64(v/unit.Litre), 0.001)
}

// 1,000 gal from 40 to 140 °F grow by 16.9 gal: ASPE Data Book, vol. 2; from
// memory.
func TestExpansionOfWater(t *testing.T) {
	v := solver.ExpansionVolume(1000, 0.01602, 0.01629)
	assert.InDelta(t, 16.9, float64(v), 0.06)
}

// Each of the three tests of a relief valve fails alone, and a number met
// exactly is allowed.
func TestReliefSuits(t *testing.T) {
	const room, tank, work = 25 * unit.PSI, 150 * unit.PSI, 80 * unit.PSI
	assert.True(t, solver.ReliefSuits(100, 100, tank, tank, work, room))
	assert.False(t, solver.ReliefSuits(99, 100, tank, tank, work, room))
	assert.False(t, solver.ReliefSuits(100, 100, tank+1, tank, work, room))
	assert.False(t, solver.ReliefSuits(100, 100, tank, tank, tank-room+1, room))
}
