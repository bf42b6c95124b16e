package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// NEMA MG 1, standard ratings, from memory.
func TestStandardMotors(t *testing.T) {
	const hp = 745.69987158227022
	for _, c := range []struct{ need, next, lower float64 }{
		{0.6, 0.75, 0.5}, {1.2, 1.5, 1}, {3.885, 5, 3}, {5, 5, 5}, {5.01, 7.5, 5}, {9.6, 10, 7.5}, {12.6, 15, 10}, {110, 125, 100},
	} {
		next, ok := solver.NextMotor(unit.Power(c.need * hp))
		assert.True(t, ok)
		assert.InDelta(t, c.next, float64(next)/hp, 1e-9, "next of %v hp", c.need)
		lower, ok := solver.LowerMotor(unit.Power(c.need * hp))
		assert.True(t, ok)
		assert.InDelta(t, c.lower, float64(lower)/hp, 1e-9, "below %v hp", c.need)
	}
	_, ok := solver.NextMotor(251 * hp)
	assert.False(t, ok, "above the list")
	_, ok = solver.LowerMotor(0.4 * hp)
	assert.False(t, ok, "below the list")
}

// No draw makes the pump start more often than half of its flow.
func TestStartsAreWorstAtHalfFlow(t *testing.T) {
	const v, q = 0.1, 0.004
	worst := solver.CycleSeconds(v, q, q/2)
	assert.InDelta(t, 4*v/q, worst, 1e-9)
	for share := 0.05; share < 1; share += 0.05 {
		assert.GreaterOrEqual(t, solver.CycleSeconds(v, q, unit.Flow(share)*q), worst-1e-9, "at %.2f of the flow", share)
	}
}

// 3500 to 2800 rpm: 100 gpm, 120 ft, 5 hp become 80 gpm, 76.8 ft, 2.56 hp.
// Speed laws of the Hydraulic Institute, from memory.
func TestSpeedLaws(t *testing.T) {
	p := solver.Speeds{Flow: 100, Head: 120, Power: 5}.AtSpeed(2800.0 / 3500)
	assert.InDelta(t, 80, float64(p.Flow), 1e-9)
	assert.InDelta(t, 76.8, float64(p.Head), 1e-9)
	assert.InDelta(t, 2.56, float64(p.Power), 1e-9)
}

func TestPumpsTogether(t *testing.T) {
	assert.InDelta(t, 195, float64(solver.Parallel(65, 3)), 1e-9)
	assert.InDelta(t, 170, float64(solver.Series(30, 70, 2)), 1e-9)
}

// Drawdown of 85 gal with 28 psi of pre-charge and a switch of 30 to 50 psi:
// 25.1 gal at sea level. Articles on pressure tanks in a drilling trade
// magazine. Factors of common switches, worked out: from memory.
func TestDrawdown(t *testing.T) {
	at := func(v, charge, in, out float64) float64 {
		const air = 14.7
		return float64(solver.AirTank{
			Volume: unit.Volume(v), Precharge: unit.Pressure(charge + air), CutIn: unit.Pressure(in + air), CutOut: unit.Pressure(out + air),
		}.Drawdown())
	}
	assert.InDelta(t, 25.1, at(85, 28, 30, 50), 0.05)
	assert.InDelta(t, 0.345, at(1, 18, 20, 40), 0.0005)
	assert.InDelta(t, 0.295, at(1, 28, 30, 50), 0.0005)
	assert.InDelta(t, 0.258, at(1, 38, 40, 60), 0.0005)
	assert.InDelta(t, 0.229, at(1, 48, 50, 70), 0.0005)
}
