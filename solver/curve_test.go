package solver_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Printed heads of systems; sources and confidence in the rows. Where no
// factor of friction is printed it is the one of pipe 0.0265 mm rough with
// water of 1.14 mPa·s, and the print is wrong: 2.31 m is right.
func TestSystemHeadsAsPrinted(t *testing.T) {
	for _, row := range published(t, "system_curves.csv") {
		q, bore := unit.Flow(quantity(t, row["flow"])), unit.Length(quantity(t, row["bore"]))
		v := solver.PipeVelocity(q, bore, solver.RoundPipe)
		w, rough := solver.Water{Density: 1000, Viscosity: 0.00114}, unit.Length(2.65e-5)
		f := solver.FrictionFactor(solver.Reynolds(q, bore, w.Kinematic()), float64(rough/bore))
		if row["factor"] != "" {
			f = parsed(t, row["factor"])
		}
		k := f*quantity(t, row["length"])/float64(bore) + parsed(t, row["fittings"])
		got := quantity(t, row["static"]) + float64(solver.FittingsHead(k, v))
		if row["print"] == "wrong" {
			assert.Greater(t, math.Abs(got-quantity(t, row["head"])), quantity(t, row["within"]), row["source"])
			assert.InDelta(t, 2.31, got, 0.01, row["source"])
			continue
		}
		assert.InDelta(t, quantity(t, row["head"]), got, quantity(t, row["within"]), "%s: %s", row["id"], row["source"])
	}
}

// University course notes, CE 3305 Engineering Fluid Mechanics (Texas Tech
// University), examination 3, spring 2024, solution sheet: the pump of
// 68.7 + 32.1 Q - 327 Q2 on 150 m of 0.3 m pipe, f 0.029 and fittings 5, meets
// its system 40 m up at 0.266 m3/s and 54.1 m; confirmed.
func TestOperatingPointAsPrinted(t *testing.T) {
	pump := solver.PumpCurve{Shut: 68.7, Slope: 32.1, Bend: -327}
	loss := solver.FittingsHead(0.029*150/0.3+5, solver.PipeVelocity(0.2, 0.3, solver.RoundPipe))
	got, err := solver.OperatingPoint(pump, solver.SystemCurve{Static: 40, Loss: solver.Duty{Flow: 0.2, Head: loss}, Power: 2})
	require.NoError(t, err)
	assert.InEpsilon(t, 0.266, float64(got.Flow), 0.005)
	assert.InEpsilon(t, 54.1, float64(got.Head), 0.005)
	t.Logf("meets at %.5f m3/s, %.3f m", got.Flow, got.Head)
}

func TestPumpCurveGoesThroughItsPoints(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	for range 500 {
		shut := unit.Length(10 + 90*rng.Float64())
		near := solver.Duty{Flow: unit.Flow(0.001 + 0.01*rng.Float64()), Head: shut * unit.Length(0.7+0.25*rng.Float64())}
		far := solver.Duty{Flow: near.Flow * unit.Flow(1.5+rng.Float64())}
		// Lower than the straight line goes on to.
		far.Head = shut - (shut-near.Head)*unit.Length(far.Flow/near.Flow)*unit.Length(1+rng.Float64())
		c, err := solver.PumpCurveThrough(shut, near, far)
		require.NoError(t, err)
		for _, d := range []solver.Duty{{Head: shut}, near, far} {
			assert.InDelta(t, float64(d.Head), float64(c.Head(d.Flow)), 1e-9*float64(shut))
		}
		q, n := near.Flow, 2.0
		assert.InDelta(t, float64(c.Head(q)), float64(c.Parallel(n).Head(2*q)), 1e-9)
		assert.InDelta(t, 2*float64(c.Head(q)), float64(c.Series(n).Head(q)), 1e-9)
		p := solver.Speeds{Flow: q, Head: c.Head(q)}.AtSpeed(1.3)
		assert.InDelta(t, float64(p.Head), float64(c.AtSpeed(1.3).Head(p.Flow)), 1e-9)

		s := solver.SystemCurve{Static: shut / 2, Loss: solver.Duty{Flow: near.Flow, Head: shut / 5}, Power: 1.852}
		one, err := solver.OperatingPoint(c, s)
		require.NoError(t, err)
		assert.InDelta(t, float64(c.Head(one.Flow)), float64(s.Head(one.Flow)), 1e-9)
		two, err := solver.OperatingPoint(c.Parallel(2), s)
		require.NoError(t, err)
		assert.Greater(t, two.Flow, one.Flow)
		assert.Less(t, two.Flow, 2*one.Flow, "two pumps on one pipe never give twice the flow")
		behind, err := solver.OperatingPoint(c.Series(2), s)
		require.NoError(t, err)
		assert.Greater(t, behind.Head, one.Head)
	}
}

func TestCurvesThatCannotBeAreRefused(t *testing.T) {
	for _, c := range []struct{ near, far solver.Duty }{
		{solver.Duty{Flow: 2, Head: 20}, solver.Duty{Flow: 1, Head: 10}},
		{solver.Duty{Flow: 0, Head: 20}, solver.Duty{Flow: 1, Head: 10}},
		{solver.Duty{Flow: 1, Head: 10}, solver.Duty{Flow: 2, Head: 9}},
		{solver.Duty{Flow: 1, Head: 40}, solver.Duty{Flow: 2, Head: 35}},
		{solver.Duty{Flow: unit.Flow(math.NaN()), Head: 20}, solver.Duty{Flow: 1, Head: 10}},
	} {
		_, err := solver.PumpCurveThrough(30, c.near, c.far)
		assert.ErrorContains(t, err, "expected")
	}
	s := solver.SystemCurve{Static: 40, Loss: solver.Duty{Flow: 1, Head: 5}, Power: 2}
	_, err := solver.OperatingPoint(solver.PumpCurve{Shut: 30, Bend: -1}, s)
	assert.ErrorContains(t, err, "expected more than the 40 m")
	_, err = solver.OperatingPoint(solver.PumpCurve{Shut: 50}, solver.SystemCurve{Static: 40, Loss: solver.Duty{Flow: 1}, Power: 2})
	assert.ErrorContains(t, err, "expected curves that cross")
	_, err = solver.OperatingPoint(solver.PumpCurve{Shut: 50}, solver.SystemCurve{Static: 40, Power: 2})
	assert.ErrorContains(t, err, "known at 0 L/s")
}
