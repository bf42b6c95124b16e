package skills_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Published figures of rinse heat, scalding, expansion legs and full pipe.
func TestSafetyAgreesWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_safety.csv")
}

func csvRows(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	return rows[1:]
}

// Each row that scald problems print is a published one for an adult, to the
// tenth of a degree in which the sources give it. Sources in the file.
func TestScaldRowsArePublished(t *testing.T) {
	published := csvRows(t, "../../testdata/scald_times.csv")
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		for _, r := range solver.ScaldTimesIn(sys) {
			found := false
			for _, row := range published {
				at, err := strconv.ParseFloat(row[0], 64)
				require.NoError(t, err)
				seconds, err := strconv.ParseFloat(row[1], 64)
				require.NoError(t, err)
				found = found || row[2] == "adult" && seconds == r.Seconds && math.Abs(float64(unit.Celsius(at))-r.Water.SI()) < 0.06
			}
			assert.True(t, found, "%s, %g s", r.Water.Text(3), r.Seconds)
		}
	}
}

// The series stands in its published order, each place inside its range.
func TestGalvanicSeriesIsPublished(t *testing.T) {
	rows := csvRows(t, "../../testdata/galvanic_series.csv")
	require.Len(t, rows, len(solver.GalvanicSeries))
	for i, p := range solver.GalvanicSeries {
		lowest, err := strconv.ParseFloat(rows[i][1], 64)
		require.NoError(t, err)
		highest, err := strconv.ParseFloat(rows[i][2], 64)
		require.NoError(t, err)
		assert.Equal(t, rows[i][0], p.Metal)
		assert.True(t, p.MilliVolts >= lowest && p.MilliVolts <= highest, p.Metal)
		assert.True(t, i == 0 || p.MilliVolts > solver.GalvanicSeries[i-1].MilliVolts, p.Metal)
	}
}

// What each code asks of a storage tank. UPC 608.7 (2015), by a code body's
// note, confirmed; IPC 504.2, from memory; NPC 2020, from memory, as British
// Columbia 2.6.1.7.(8) has it, confirmed.
func TestVacuumReliefByProfile(t *testing.T) {
	asks := map[string]func(above, bottom bool) bool{
		"upc":  func(above, _ bool) bool { return above },
		"ipc":  func(_, bottom bool) bool { return bottom },
		"npc":  func(_, _ bool) bool { return true },
		"shop": func(above, bottom bool) bool { return above || bottom },
	}
	s, ok := skills.ByID("vacuum-relief")
	require.True(t, ok)
	for code, want := range asks {
		seen := map[bool]bool{}
		for seed := range uint64(80) {
			p, err := problems.New(s, seed, problems.House{System: unit.Metric, Code: code})
			require.NoError(t, err)
			at := func(name string) float64 { return stepOrTold(p, name) }
			needed := at("stores") > 0 && want(at("tank_up") > at("outlet_up"), at("bottom_fed") > 0)
			assert.Equal(t, needed, p.Answer().Value == 1, "%s seed %d", code, seed)
			seen[needed] = true
		}
		assert.Len(t, seen, 2, "%s: both answers are drawn", code)
	}
}

// A jumper comes before every other move on metal pipe that has none, and a
// sealed bypass is left alone. NEC 250.53(D)(1), by inspectors' forums.
func TestBondBeforeTheMeterIsOpened(t *testing.T) {
	drawn(t, "meter-change", func(p *problems.Problem, at func(string) float64) {
		const jumper, bypass, shut = 0, 1, 2
		moves := []float64{at("move_one"), at("move_two"), at("move_three")}
		if at("metal") > 0 && at("bonded") == 0 {
			require.EqualValues(t, jumper, moves[0], "seed %d", p.Seed)
		} else {
			require.NotContains(t, moves, float64(jumper), "seed %d", p.Seed)
		}
		assert.Equal(t, at("leave") > 0, moves[0] == bypass || moves[1] == bypass, "seed %d", p.Seed)
		assert.Contains(t, moves, float64(shut))
	})
}
