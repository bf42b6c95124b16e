package solver_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// taught are the roundings of a constant in SI base units, for a US or an SI
// house.
func taught(t *testing.T, name string, system unit.System) []float64 {
	t.Helper()
	c, ok := solver.ConstantByName(name)
	require.True(t, ok, name)
	in := c.In(system)
	u, err := unit.Parse(in.Unit)
	require.NoError(t, err)
	var out []float64
	for _, text := range in.Accept {
		v, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		out = append(out, u.Difference().SI(v))
	}
	return out
}

// The taught heat of water per volume against density times specific heat,
// from two published tables. From 5 to 60 °C every accepted rounding is within
// 2.5 % of nature, and the one that is shown within 2 %.
func TestTaughtHeatOfWater(t *testing.T) {
	file, err := os.Open("../testdata/water_heat.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var worst float64
	for _, row := range rows[1:] {
		celsius, density, heat := parsed(t, row[0]), parsed(t, row[1]), parsed(t, row[2])
		require.NotEmpty(t, row[3])
		require.Contains(t, []string{"confirmed", "from memory"}, row[4])
		if celsius > 60 {
			continue
		}
		nature := density * heat * 1000 // J/(m3 K)
		for _, system := range []unit.System{unit.US, unit.Metric} {
			for i, c := range taught(t, "water_heat", system) {
				off := c/nature - 1
				assert.InDelta(t, 0, off, 0.025, "%g °C, %s, rounding %d: %s", celsius, system, i, row[3])
				if i == 0 {
					assert.InDelta(t, 0, off, 0.02, "%g °C, %s: %s", celsius, system, row[3])
					worst = max(worst, off)
				}
			}
		}
	}
	t.Logf("the shown constants are at most %.2f %% over nature up to 60 °C", 100*worst)
}

func parsed(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err, text)
	return v
}

// Density of 62.366 lb/ft3 at 60 °F and 61.386 at 140 °F: a table attributed
// to the US Geological Survey; figures confirmed. A gallon is 231 in3.
func TestFiveHundredIsAGallonForAnHour(t *testing.T) {
	perGallon := func(density float64) float64 { return density * 231 / 1728 }
	assert.InDelta(t, 8.33, perGallon(62.366), 0.01)
	assert.InDelta(t, 500, perGallon(62.366)*60, 0.5)
	assert.InDelta(t, 492, perGallon(61.386)*60, 0.5)
	assert.InDelta(t, 10, perGallon(62.366)*1.20095, 0.02, "an imperial gallon")

	flow, water := taught(t, "flow_heat", unit.US)[0], taught(t, "water_heat", unit.US)[0]
	assert.InEpsilon(t, flow, water, 0.001, "500 an hour and gpm, 8.33 a gallon")
}

// UFC 3-420-01 (25 Oct 2004), 506.1.3 to 506.1.4: a shower of 2.5 gpm at 110
// °F from 140 and 40 °F takes 0.70 or 1.75 gpm of hot; confirmed.
func TestMixingAsPrinted(t *testing.T) {
	f := unit.Fahrenheit
	share := solver.HotShare(f(110), f(40), f(140))
	assert.InDelta(t, 0.7, share, 1e-9)
	assert.InDelta(t, 1.75, 2.5*share, 1e-9)
	mix := solver.Blend(1.75*unit.GPM, f(140), 0.75*unit.GPM, f(40))
	assert.InDelta(t, 110, mix.Fahrenheit(), 1e-9)
	swapped := solver.Blend(0.75*unit.GPM, f(40), 1.75*unit.GPM, f(140))
	assert.InDelta(t, float64(mix), float64(swapped), 1e-9, "the order of the streams does not matter")
}

// A trade forum's worked examples, confirmed: 666 Btu for one gallon from 40
// to 120 °F, 73,300 for 80 gallons from 40 to 150. OpenStax College Physics 2e
// (2022), m42224, confirmed: 5.02e8 J for 80,000 L by 1.5 K at 4,186 J.
func TestHeatForVolumeAsPrinted(t *testing.T) {
	c := taught(t, "water_heat", unit.US)[0]
	const btu = 1055.05585262
	rise := func(f float64) unit.TempDifference { return unit.TempDifference(f * 5 / 9) }
	assert.InDelta(t, 666, solver.HeatForVolume(c, unit.USGallon, rise(80))/btu, 1)
	assert.InDelta(t, 73300, solver.HeatForVolume(c, 80*unit.USGallon, rise(110))/btu, 10)
	assert.InDelta(t, 5.02e8, solver.HeatForVolume(4.186e6, 80000*unit.Litre, 1.5), 0.005e8)
}

// Recovery of heaters; figures from memory. 4.1 gallons an hour for one
// kilowatt at 100 °F: common practice, no source.
func TestRecoveryAsPrinted(t *testing.T) {
	c := taught(t, "water_heat", unit.US)[0]
	for _, r := range []struct {
		input      unit.Power
		efficiency float64
		rise       float64
		gph        float64
		within     float64
	}{
		{40000 * unit.BtuHour, 0.8, 90, 42.68, 0.01},
		{75000 * unit.BtuHour, 0.8, 100, 72.03, 0.01},
		{4500 * unit.Watt, 0.98, 90, 20.07, 0.01},
		{1000 * unit.Watt, 1, 100, 4.1, 0.05},
	} {
		got := solver.Recovery(r.input, r.efficiency, c, unit.TempDifference(r.rise*5/9))
		assert.InDelta(t, r.gph, float64(got/unit.GPM)*60, r.within)
	}
}

// A public engineering document's loop, confirmed: six sizes of insulated pipe
// lose 68,311 Btu/h, and 20 °F carry them at 6.83 gpm.
func TestLoopAsPrinted(t *testing.T) {
	perFoot := float64(unit.BtuHour / unit.Power(unit.Foot))
	var sum unit.Power
	for _, pair := range [][4]float64{{948, 15, 1118, 17}, {361, 19, 148, 21}, {730, 24, 262, 29}} {
		sum += solver.LoopLoss(solver.Loop{
			Supply: unit.Length(pair[0]) * unit.Foot, SupplyLoss: pair[1] * perFoot,
			Return: unit.Length(pair[2]) * unit.Foot, ReturnLoss: pair[3] * perFoot,
		})
	}
	assert.InDelta(t, 68311, float64(sum/unit.BtuHour), 0.5)
	c := taught(t, "flow_heat", unit.US)[0]
	flow := solver.CirculationFlow(sum, c, unit.TempDifference(20.0*5/9))
	assert.InDelta(t, 6.83, float64(flow/unit.GPM), 0.005)
}
