package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Every table has a source, as many cells in each row as in its heading, and
// rows that a key finds in rising order.
func TestTablesAreWhole(t *testing.T) {
	names := map[string]bool{}
	for _, table := range solver.Tables {
		t.Run(table.Name, func(t *testing.T) {
			assert.False(t, names[table.Name], "name used twice")
			names[table.Name] = true
			assert.NotEmpty(t, table.Title)
			assert.NotEmpty(t, table.Source)
			assert.NotEmpty(t, table.Confidence)
			for _, s := range unit.Systems {
				rows := table.Rows(s)
				require.NotEmpty(t, rows)
				for i, r := range rows {
					require.Len(t, r.Cells, len(table.Head(s)), "row %d", i)
					for _, text := range r.Cells {
						assert.NotEmpty(t, text, "row %d", i)
						assert.NotContains(t, text, "no value", "row %d", i)
					}
					if i > 0 && r.Key != 0 {
						assert.Greater(t, r.Key, rows[i-1].Key)
					}
				}
			}
		})
	}
}

// A tube's bore, and a row of the demand table, as published: ASTM B88, and
// IPC (2018), Table E103.3(3).
func TestTablesShowWhatIsPrinted(t *testing.T) {
	for _, c := range []struct {
		table string
		sys   unit.System
		key   float64
		want  []string
	}{
		{"copper-tube", unit.US, 1.25, []string{"1-1/4", "1.375", "1.245", "1.265", "1.291"}},
		{"demand", unit.US, 100, []string{"100", "43.5", "67.5"}},
		{"demand", unit.Metric, 4, []string{"4", "0.5", "none"}},
		{"arresters", unit.US, 32, []string{"32", "B"}},
	} {
		table, ok := solver.TableNamed(c.table, "shop")
		require.True(t, ok)
		found := false
		for _, r := range table.Rows(c.sys) {
			if r.Key == c.key {
				found = true
				assert.Equal(t, c.want, r.Cells)
			}
		}
		assert.True(t, found, "%s has a row %v", c.table, c.key)
	}
}

// An excerpt holds the rows on both sides of a key, and the lines for another
// use where a word finds them.
func TestTableExcerpts(t *testing.T) {
	demand, ok := solver.TableNamed("demand", "upc")
	require.True(t, ok)
	keys := func(key float64) []float64 {
		var out []float64
		for _, r := range demand.Around(unit.US, key, 3) {
			out = append(out, r.Key)
		}
		return out
	}
	assert.Equal(t, []float64{80, 90, 100, 120, 140, 160}, keys(115))
	assert.Equal(t, []float64{80, 90, 100, 120, 140, 160}, keys(100), "a row counts as below")
	assert.Equal(t, []float64{1, 2, 3}, keys(0))
	assert.Equal(t, []float64{3000, 4000, 5000}, keys(9000))

	units, ok := solver.TableNamed("units", "upc")
	require.True(t, ok)
	assert.Equal(t, "units-upc", units.Name)
	uses := map[string]bool{}
	for _, r := range units.About(unit.US, "lavatory") {
		if r.Cells[0] == "Lavatory" {
			uses[r.Cells[1]] = true
		}
	}
	assert.Equal(t, map[string]bool{"private": true, "public": true}, uses)
	shop, ok := solver.TableNamed("units", "shop")
	require.True(t, ok)
	assert.Equal(t, "units-ipc", shop.Name, "shops use the table of the IPC")
	_, ok = solver.TableNamed("nothing", "ipc")
	assert.False(t, ok)
}
