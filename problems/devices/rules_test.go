package devices_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/devices"
	"riserwork/solver"
)

// What published sections ask for, read from testdata/device_rules.csv with
// its sources, is kept by the sound arrangement, and is what its check says it
// is: same section, same confidence. A check that no row backs is marked as
// practice.
func TestArrangementsKeepPublishedSections(t *testing.T) {
	f, err := os.Open("../../testdata/device_rules.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	backed := map[string][]string{}
	for _, row := range rows[1:] {
		require.NotContains(t, backed, row[0])
		backed[row[0]] = row
	}
	seen := 0
	for _, d := range devices.Details() {
		for i := range d.Checks {
			c := &d.Checks[i]
			row, ok := backed[c.ID]
			if !ok {
				assert.Equal(t, solver.Practice, c.Source.Confidence, "%s: no published section in testdata, so practice", c.ID)
				continue
			}
			seen++
			assert.True(t, asked(t, &d.Arrangement, row[1]), "%s: the sound arrangement has not %q", c.ID, row[1])
			assert.Contains(t, c.Source.Says, row[2], c.ID)
			assert.Equal(t, row[4], string(c.Source.Confidence), c.ID)
		}
	}
	assert.Equal(t, len(backed), seen, "a row names a check that is not here")
	t.Logf("%d checks are backed by a section", seen)
}

// asked reports whether an arrangement has what a row of the testdata asks
// for: a word, the run, a device, and what belongs to the word.
func asked(t *testing.T, a *devices.Arrangement, text string) bool {
	t.Helper()
	words := strings.Fields(text)
	i := slices.IndexFunc(a.Runs, func(r devices.Run) bool { return strings.ReplaceAll(r.Name, " ", "-") == words[1] })
	if words[0] == "norun" {
		return i < 0
	}
	require.GreaterOrEqual(t, i, 0, "%q names a run", text)
	stand := a.Runs[i].Stand
	at := func(id string) int {
		return slices.IndexFunc(stand, func(s devices.Station) bool { return s.Device == id })
	}
	lastOf := func(id string) int {
		for k := len(stand) - 1; k >= 0; k-- {
			if stand[k].Device == id {
				return k
			}
		}
		return -1
	}
	switch words[0] {
	case "has":
		return at(words[2]) >= 0
	case "lacks":
		return at(words[2]) < 0
	case "first":
		return at(words[2]) == 0
	case "last":
		return at(words[2]) == len(stand)-1
	case "order":
		return at(words[2]) >= 0 && at(words[2]) < lastOf(words[3])
	case "mark":
		return at(words[2]) >= 0 && slices.Contains(stand[at(words[2])].Marks, strings.Join(words[3:], " "))
	case "joins":
		main := a.Runs[0].Stand
		return a.Runs[i].Join >= 0 && slices.ContainsFunc(main[a.Runs[i].Join:], func(s devices.Station) bool { return s.Device == words[2] })
	}
	require.FailNow(t, "the row asks for "+text)
	return false
}
