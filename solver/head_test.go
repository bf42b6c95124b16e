package solver_test

import (
	"encoding/csv"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// worked is a row of testdata/worked_zones.csv: givens and answer as printed.
type worked struct {
	id, sum      string
	givens       [4]float64 // in SI
	want, within float64    // in SI
}

// workedZones reads the rows of the sums named.
func workedZones(t *testing.T, sums ...string) []worked {
	t.Helper()
	f, err := os.Open("../testdata/worked_zones.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	si := func(text string) float64 {
		if text == "" {
			return 0
		}
		q, err := unit.Read(text)
		require.NoError(t, err)
		return q.SI()
	}
	var out []worked
	for _, r := range rows[1:] {
		require.NotEmpty(t, r[8], "%s: source", r[0])
		require.NotEmpty(t, r[9], "%s: confidence", r[0])
		for _, sum := range sums {
			if r[1] == sum {
				w := worked{id: r[0], sum: sum, want: si(r[6]), within: si(r[7])}
				for i := range w.givens {
					w.givens[i] = si(r[2+i])
				}
				out = append(out, w)
			}
		}
	}
	require.NotEmpty(t, out)
	return out
}

// Published columns of water and what they press, with the sources in the
// table. Books print 0.433 psi a foot or 2.31 ft a psi; both lie within 0.15 %
// of the conventional column, and the tolerances allow for it.
func TestColumnsOfWater(t *testing.T) {
	for _, w := range workedZones(t, "column", "height", "reach") {
		var got float64
		switch w.sum {
		case "column":
			got = -float64(solver.FloorPressure(0, solver.WaterColumn, unit.Length(w.givens[0])))
		case "height":
			got = float64(solver.Reach(unit.Pressure(w.givens[0]), 0, solver.WaterColumn))
		case "reach":
			got = float64(solver.Reach(unit.Pressure(w.givens[0]), unit.Pressure(w.givens[1]), solver.WaterColumn))
		}
		assert.InDelta(t, w.want, got, w.within, w.id)
	}
}

func TestFlowsOfAnOutletAndAMain(t *testing.T) {
	for _, w := range workedZones(t, "root", "street flow") {
		g := w.givens
		got := solver.FlowAtPressure(unit.Flow(g[0]), unit.Pressure(g[1]), unit.Pressure(g[2]))
		if w.sum == "street flow" {
			got = solver.StreetFlow(unit.Flow(g[0]), unit.Pressure(g[1]), unit.Pressure(g[2]), unit.Pressure(g[3]))
		}
		assert.InDelta(t, w.want, float64(got), w.within, w.id)
	}
}

// Going up and coming down again ends where it began, and the reach is where
// just the pressure to keep is left.
func TestHeightAndPressureUndoEachOther(t *testing.T) {
	for psi := 20.0; psi <= 120; psi += 5 {
		p := unit.Pressure(psi) * unit.PSI
		for feet := -40.0; feet <= 400; feet += 20 {
			h := unit.Length(feet) * unit.Foot
			up := solver.FloorPressure(p, solver.WaterColumn, h)
			require.InDelta(t, float64(p), float64(solver.FloorPressure(up, solver.WaterColumn, -h)), 1e-6)
		}
		keep := 15 * unit.PSI
		left := solver.FloorPressure(p, solver.WaterColumn, solver.Reach(p, keep, solver.WaterColumn))
		require.InDelta(t, float64(keep), float64(left), 1e-6)
	}
}
