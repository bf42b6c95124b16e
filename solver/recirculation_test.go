package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// The table is the published one, row for row.
func TestHeatLossesAreThePublishedOnes(t *testing.T) {
	columns := map[string]map[string]float64{}
	for _, row := range published(t, "pipe_heat_loss.csv") {
		if columns[row["pipe"]] == nil {
			columns[row["pipe"]] = map[string]float64{}
		}
		columns[row["pipe"]][row["nominal"]] = parsed(t, row["btu_per_h_ft"])
	}
	for _, got := range solver.HeatLosses {
		assert.Equal(t, columns["copper tube type L, bare"][got.Nominal], got.Bare, got.Nominal)
		assert.Equal(t, columns["any pipe, insulated"][got.Nominal], got.Insulated, got.Nominal)
	}
	assert.Len(t, columns["copper tube type L, bare"], len(solver.HeatLosses))
}

// Six sections of a loop and their sum, 68,311 Btu/h: a public engineering
// document, confirmed. Its flow at a drop of 20 °F is 6.83 gpm by the rule of
// 10,000 Btu/h for a gpm.
func TestLossOfAPublishedLoop(t *testing.T) {
	per := float64(unit.BtuHour) / float64(unit.Foot)
	var runs []solver.Run
	for _, r := range [][2]float64{{948, 15}, {1118, 17}, {361, 19}, {148, 21}, {730, 24}, {262, 29}} {
		runs = append(runs, solver.Run{Length: unit.Length(r[0]) * unit.Foot, Loss: r[1] * per})
	}
	assert.InDelta(t, 68311, float64(solver.RunsLoss(runs...)/unit.BtuHour), 0.5)
}

// Cooling piece by piece gives the same heat as the pieces lose; one piece is
// the drop of the whole.
func TestAlongALoop(t *testing.T) {
	const c = 4.19e6
	at := solver.Along(unit.Celsius(60), c, solver.Section{Loss: 838, Flow: 2e-4}, solver.Section{Loss: 838, Flow: 1e-4})
	assert.InDelta(t, 59, at[0].Celsius(), 1e-9)
	assert.InDelta(t, 57, at[1].Celsius(), 1e-9)
	assert.Empty(t, solver.Along(unit.Celsius(60), c))
}

func TestStreamsTogether(t *testing.T) {
	got := solver.Together(solver.Stream{Flow: 3, Temp: unit.Celsius(60)}, solver.Stream{Flow: 1, Temp: unit.Celsius(40)}, solver.Stream{Flow: 0, Temp: unit.Celsius(5)})
	assert.InDelta(t, 55, got.Celsius(), 1e-9)
	part := solver.ToHeater(4, unit.Celsius(65), unit.Celsius(55), unit.Celsius(51))
	assert.InDelta(t, 55, solver.Blend(part, unit.Celsius(65), 4-part, unit.Celsius(51)).Celsius(), 1e-9)
}

// Cv 1 passes 1 gpm at 1 psi, Kv 1 one m3/h at 1 bar, and Kv is 0.865 Cv: from
// memory. Drop undoes Factor.
func TestFactorsOfValves(t *testing.T) {
	assert.InDelta(t, 1, solver.CvUnit.Factor(unit.GPM, unit.PSI), 1e-12)
	q, p := 3*unit.GPM, 2*unit.PSI
	cv, kv := solver.CvUnit.Factor(q, p), solver.KvUnit.Factor(q, p)
	assert.InDelta(t, 0.865, kv/cv, 0.0005)
	assert.InEpsilon(t, float64(p), float64(solver.KvUnit.Drop(q, kv)), 1e-12)
}

// A way that loses four times as much at the same flow gets half of it.
func TestFlowIsShared(t *testing.T) {
	part := solver.Split(3, 1, 4)
	assert.InDelta(t, 2, float64(part[0]), 1e-12)
	assert.InDelta(t, 1, float64(part[1]), 1e-12)
}

func TestCirculatorWaitAndFuel(t *testing.T) {
	assert.InDelta(t, 8.004, float64(solver.CirculatorHead(solver.WaterColumn, 30*unit.Kilopascal, 48.49*unit.Kilopascal)), 0.001)
	assert.InDelta(t, 30, solver.DrawnOff(1e-4, 30, 1e-4), 1e-12)
	assert.InDelta(t, 1000, solver.HeatBought(80, 10, 0.8), 1e-9)
}
