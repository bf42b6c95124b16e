package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// suiteTower is a tower of n storeys of 10 ft whose street gauge, on the floor
// of level 1, reads p.
func suiteTower(n int, p unit.Pressure) *solver.Building {
	b := &solver.Building{LowOutlet: 1 * unit.Foot, HighOutlet: 6.5 * unit.Foot, Street: solver.Street{Static: p}}
	for i := range n + 1 {
		b.Levels = append(b.Levels, solver.Level{Elevation: unit.Length(i) * 10 * unit.Foot, Height: 10 * unit.Foot})
	}
	return b
}

// 110 psi with 80 allowed is 69.2 ft of water: the outlets at 1 to 61 ft are
// over it, seven storeys.
func TestStoreysOver(t *testing.T) {
	for _, c := range []struct {
		storeys int
		psi     unit.Pressure
		want    int
	}{{20, 110, 7}, {20, 80, 0}, {5, 110, 5}, {20, 81, 1}} {
		got := solver.StoreysOver(suiteTower(c.storeys, c.psi*unit.PSI), 80*unit.PSI, solver.WaterColumn)
		assert.Equal(t, c.want, got, "%d storeys at %v psi", c.storeys, float64(c.psi))
	}
}

// 200 psi down to 40 is 5 to 1; at 4 to 1 a valve the middle lies between 50
// and 160 psi. Common practice, no source.
func TestMiddleSettings(t *testing.T) {
	lo, hi := solver.MiddleSettings(200*unit.PSI, 40*unit.PSI, 4)
	assert.InDelta(t, 50, float64(lo/unit.PSI), 1e-9)
	assert.InDelta(t, 160, float64(hi/unit.PSI), 1e-9)
	assert.InDelta(t, 4, solver.ReductionRatio(200*unit.PSI, lo), 1e-9)
	assert.InDelta(t, 4, solver.ReductionRatio(hi, 40*unit.PSI), 1e-9)
}

func TestValveSums(t *testing.T) {
	v := &solver.Valve{Setting: 68 * unit.PSI, FallOff: 10 * unit.PSI}
	assert.InDelta(t, 58, float64(solver.FlowingOutlet(v)/unit.PSI), 1e-9)
	assert.InDelta(t, 70, float64(solver.SmallValveSetting(60*unit.PSI, 10*unit.PSI)/unit.PSI), 1e-9)
	head := solver.CirculatorAcrossValve(118*unit.PSI, 68*unit.PSI, 6*unit.PSI, solver.WaterColumn)
	assert.InDelta(t, 129, float64(head/unit.Foot), 0.5, "common practice, no source")
}

func TestTestPressureKeepsBothMinimums(t *testing.T) {
	assert.InDelta(t, 150, float64(solver.TestPressure(80*unit.PSI, 1.5, 150*unit.PSI)/unit.PSI), 1e-9)
	assert.InDelta(t, 180, float64(solver.TestPressure(120*unit.PSI, 1.5, 150*unit.PSI)/unit.PSI), 1e-9)
}

// Every profile has a test rule with words.
func TestEveryProfileHasATestRule(t *testing.T) {
	for _, p := range solver.Profiles {
		r := solver.TestRuleOf(p.ID)
		assert.Equal(t, p.ID, r.Profile)
		assert.NotEmpty(t, r.Words)
		assert.Contains(t, []solver.Confidence{solver.Confirmed, solver.Memory, solver.Practice}, r.Confidence)
		assert.Equal(t, r.Confidence == solver.Practice, r.Section == "", "%s: a code's rule has a section", p.ID)
	}
	assert.Equal(t, "shop", solver.TestRuleOf("no such code").Profile)
}

func TestHeaterMayStand(t *testing.T) {
	psi := func(v unit.Pressure) unit.Pressure { return v * unit.PSI }
	for _, c := range []struct {
		at, tank, relief unit.Pressure
		want             bool
	}{{115, 150, 125, true}, {116, 150, 125, false}, {115, 125, 150, true}, {171, 150, 150, false}} {
		assert.Equal(t, c.want, solver.MayStand(psi(c.at), psi(c.tank), psi(c.relief), psi(10)), "%v", c)
	}
}
