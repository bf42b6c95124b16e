package solver_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// off is how far got is from want, as a share of want.
func off(want, got float64) float64 { return math.Abs(got/want - 1) }

// Published tables against the formulas; sources and confidence in the rows.
// The print is held to its own figures, the releases of IAPWS to the formulas:
// in the tables of 1928-29 viscosities are up to 0.7 % high, London South Bank
// prints those of the hottest water with two figures, and the hottest rows of
// the Geological Survey's weights stand 0.03 % over everybody else's.
func TestWaterAgainstPublishedTables(t *testing.T) {
	within := map[string]float64{
		"density": 1e-4, "relative density": 3e-4, "weight": 3e-4,
		"viscosity": 0.016, "kinematic viscosity": 0.0095,
		"heat": 1e-3, "vapour pressure": 1.3e-3, "sound": 1e-3,
		"density, IAPWS": 2e-5, "viscosity, IAPWS": 1e-3, "heat, IAPWS": 1e-3, "vapour pressure, IAPWS": 1e-5,
	}
	worst := map[string]float64{}
	for _, row := range published(t, "water_properties.csv") {
		w, err := solver.WaterAt(unit.Celsius(parsed(t, row["celsius"])))
		require.NoError(t, err)
		name := row["property"]
		got := map[string]float64{
			"density": w.Density, "relative density": w.Density / 999.975, "weight": w.Density * 0.3048 * 0.3048 * 0.3048 / 0.45359237,
			"viscosity": w.Viscosity * 1000, "kinematic viscosity": w.Kinematic() * 1e6,
			"heat": w.Heat / 1000, "vapour pressure": float64(w.Vapour / unit.Kilopascal), "sound": float64(w.Sound),
		}[name]
		if strings.HasPrefix(row["source"], "IAPWS") {
			name += ", IAPWS"
		}
		d := off(parsed(t, row["value"]), got)
		worst[name] = max(worst[name], d)
		assert.LessOrEqual(t, d, within[name], "%s at %s °C, %s: %s %g", name, row["celsius"], row["source"], row["value"], got)
	}
	require.Len(t, worst, len(within), "every property has rows")
	for _, name := range slices.Sorted(maps.Keys(worst)) {
		t.Logf("%s: within %.2g %%", name, 100*worst[name])
	}
}

// Joukowsky's speed in a rigid pipe of water of 20 °C is about 1,485 m/s, and
// the modulus about 2.2 GPa: the round figures of course notes on surge.
func TestBulkModulusOfWater(t *testing.T) {
	w, err := solver.WaterAt(unit.Celsius(20))
	require.NoError(t, err)
	assert.InEpsilon(t, 2.2e9, float64(w.Bulk()), 0.01)
	assert.InEpsilon(t, 9789.0, float64(w.Column()), 1e-4, "998.2 kg/m3 at 9.80665 m/s2")
}

func TestWaterOutsideItsRangeIsRefused(t *testing.T) {
	for _, c := range []float64{-1, 101, math.NaN(), math.Inf(1)} {
		_, err := solver.WaterAt(unit.Celsius(c))
		assert.ErrorContains(t, err, "expected 0 to 100 °C")
	}
	ice, err := solver.WaterAt(unit.Celsius(0))
	require.NoError(t, err)
	assert.InDelta(t, 999.84, ice.Density, 0.01)
}

// Warmer water is thinner and boils sooner, and above 4 °C it is lighter.
func TestWaterChangesOneWay(t *testing.T) {
	for c := 5.0; c < 100; c += 0.5 {
		a, err := solver.WaterAt(unit.Celsius(c))
		require.NoError(t, err)
		b, err := solver.WaterAt(unit.Celsius(c + 0.5))
		require.NoError(t, err)
		assert.Less(t, b.Density, a.Density)
		assert.Less(t, b.Viscosity, a.Viscosity)
		assert.Greater(t, b.Vapour, a.Vapour)
	}
}
