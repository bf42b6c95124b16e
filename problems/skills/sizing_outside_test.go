package skills_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Published figures of demand, friction and speed.
func TestSizingAgreesWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_sizing.csv")
}

// The rows that a problem prints are two neighbours of the table of IPC 2018,
// E103.3(3) (from memory), and the units lie between them.
func TestPrintedRowsAreNeighbours(t *testing.T) {
	curves := ipcCurves(t)
	for _, id := range []string{"demand-from-units", "units-at-junction", "continuous-load", "hot-demand-curve", "combined-service"} {
		skill, ok := skills.ByID(id)
		require.True(t, ok)
		for seed := range uint64(100) {
			p, err := problems.New(skill, seed, problems.House{System: unit.US, Code: "ipc"})
			require.NoError(t, err)
			units := stepOrTold(p, "units")
			if id == "hot-demand-curve" {
				units = stepOrTold(p, "hot_units")
			}
			low, high := stepOrTold(p, "row_low"), stepOrTold(p, "row_high")
			assert.Less(t, low, units)
			assert.Less(t, units, high)
			found := false
			for _, rows := range curves {
				for i := 1; i < len(rows); i++ {
					found = found || rows[i-1] == [2]float64{low, stepOrTold(p, "flow_low")} && rows[i] == [2]float64{high, stepOrTold(p, "flow_high")}
				}
			}
			assert.True(t, found, "%s seed %d: %g and %g units", id, seed, low, high)
			assert.True(t, p.Answer().Value > stepOrTold(p, "flow_low"), "%s seed %d", id, seed)
		}
	}
}

// ipcCurves are the two curves of the table, each units and gpm by row.
func ipcCurves(t *testing.T) map[string][][2]float64 {
	t.Helper()
	file, err := os.Open("../../testdata/demand_curves.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	out := map[string][][2]float64{}
	for _, row := range rows[1:] {
		if !strings.HasPrefix(row[0], "IPC") {
			continue
		}
		units, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		gpm, err := strconv.ParseFloat(row[3], 64)
		require.NoError(t, err)
		out[row[1]] = append(out[row[1]], [2]float64{units, gpm})
	}
	return out
}

// The demand of two branches together is less than their demands added, and
// more than either: a pipe ahead of a junction never carries less.
func TestJunctionCarriesLessThanBothPeaks(t *testing.T) {
	skill, ok := skills.ByID("units-at-junction")
	require.True(t, ok)
	for _, house := range houses() {
		for seed := range uint64(100) {
			p, err := problems.New(skill, seed, house)
			require.NoError(t, err)
			a, b := stepOrTold(p, "flow_a"), stepOrTold(p, "flow_b")
			assert.Less(t, p.Answer().Value, a+b)
			assert.Greater(t, p.Answer().Value, max(a, b))
		}
	}
}

// Each size is tried against both limits by hand: what is chosen passes, and
// what is smaller fails one. Both limits decide, and every size is drawn.
func TestSizesByTrial(t *testing.T) {
	skill, ok := skills.ByID("choose-size")
	require.True(t, ok)
	for _, house := range houses() {
		bySpeed, seen := 0, map[int]bool{}
		for seed := range uint64(100) {
			p, err := problems.New(skill, seed, house)
			require.NoError(t, err)
			factor := 4 / 3.14159265 * 1000 // L/s and mm to m/s
			if house.System == unit.US {
				factor = 231 / 60.0 / 12 * 4 / 3.14159265 // gpm and inches to ft/s
			}
			passes := func(x string) (loss, speed bool) {
				bore := stepOrTold(p, "bore_"+x)
				v := factor * stepOrTold(p, "flow") / (bore * bore)
				return stepOrTold(p, "loss_"+x) <= stepOrTold(p, "allowed"), v <= stepOrTold(p, "limit")
			}
			got := int(p.Answer().Value)
			seen[got] = true
			for i, x := range []string{"a", "b", "c"} {
				loss, speed := passes(x)
				assert.Equal(t, i >= got, loss && speed, "%s seed %d, size %s", house.System, seed, x)
				if i == got-1 && loss {
					bySpeed++
				}
			}
		}
		assert.Greater(t, bySpeed, 20, "%s", house.System)
		assert.Less(t, bySpeed, 80, "%s", house.System)
		assert.True(t, seen[1] && seen[2], "size A alone would need no second test")
	}
}

// Water at a shower valve or a hose is not over 140 °F: that hot it goes to
// dishwashers alone.
func TestHottestWaterGoesToNoShower(t *testing.T) {
	skill, ok := skills.ByID("pipe-capacity")
	require.True(t, ok)
	for seed := range uint64(100) {
		p, err := problems.New(skill, seed, problems.Defaults)
		require.NoError(t, err)
		text := p.AskText()
		if strings.Contains(text, "carries hot water over 140") {
			assert.Contains(t, text, "dishwashers")
		}
		if strings.Contains(text, "hose") {
			assert.Contains(t, text, "carries cold water")
		}
	}
}

// Both verdicts on speed, and both sides of a compound meter, are drawn.
func TestSizingDecisionsFallBothWays(t *testing.T) {
	for _, c := range []struct{ skill, step string }{{"pipe-velocity", "too_fast"}, {"compound-meter", "large_side"}} {
		skill, ok := skills.ByID(c.skill)
		require.True(t, ok)
		for _, house := range houses() {
			yes := 0
			for seed := range uint64(100) {
				p, err := problems.New(skill, seed, house)
				require.NoError(t, err)
				yes += int(stepOrTold(p, c.step))
			}
			assert.Greater(t, yes, 20, "%s %s", c.skill, house.System)
			assert.Less(t, yes, 80, "%s %s", c.skill, house.System)
		}
	}
}

// The buildings around the problems of sizing are sound: the solver takes
// them, and no storey breaks a limit of the code.
func TestBuildingsAroundSizingAreSound(t *testing.T) {
	for _, skill := range skills.All() {
		if skill.Chapter != 3 {
			continue
		}
		for _, house := range houses() {
			for seed := range uint64(40) {
				p, err := problems.New(skill, seed, house)
				require.NoError(t, err)
				sol, err := solver.Solve(p.Building, solver.Settings{Profile: house.Profile()})
				require.NoError(t, err, "%s seed %d", skill.ID, seed)
				for _, b := range sol.Breaches {
					assert.Less(t, b.Level, p.Building.Ground, "%s %s %s seed %d: %s", skill.ID, house.System, house.Code, seed, b.Says)
				}
			}
		}
	}
}
