package skills_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// Published figures of gauges, vacuum and flow: each row of the table names
// its source and how it is known.
func TestGaugesAgreeWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_gauges.csv")
}

// comparePrinted puts the published givens of each row under its skill and
// compares one line of the working with the printed figure.
func comparePrinted(t *testing.T, path string) {
	t.Helper()
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	for _, row := range rows[1:] {
		of := func(name string) string { return row[column[name]] }
		t.Run(of("id")+"/"+of("skill"), func(t *testing.T) {
			require.NotEmpty(t, of("source"))
			require.Contains(t, []string{"confirmed", "from memory", "common practice, no source"}, of("confidence"))
			skill, ok := skills.ByID(of("skill"))
			require.True(t, ok)
			house := problems.House{System: unit.System(of("system")), Code: "shop"}
			if g := of("gamma"); g != "" {
				house.Constants = []problems.Pick{{Name: "gamma", Text: g}}
			}
			var own []problems.Own
			for _, given := range strings.Split(of("givens"), ";") {
				name, text, _ := strings.Cut(given, "=")
				own = append(own, problems.Own{Name: name, Text: text})
			}
			p, err := problems.WithGivens(skill, 1, house, own)
			require.NoError(t, err)
			want, err := strconv.ParseFloat(of("expected"), 64)
			require.NoError(t, err)
			tolerance, err := strconv.ParseFloat(of("tolerance"), 64)
			require.NoError(t, err)
			s := stepNamed(t, p, of("step"))
			require.Equal(t, of("unit"), s.Unit.Name)
			require.InDelta(t, want, s.Value, tolerance, of("source"))
		})
	}
}

func stepNamed(t *testing.T, p *problems.Problem, name string) *problems.Step {
	t.Helper()
	for i := range p.Steps {
		if p.Steps[i].Name == name {
			return &p.Steps[i]
		}
	}
	require.Fail(t, "no step "+name)
	return nil
}
