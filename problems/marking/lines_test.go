package marking_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// shower is a problem with numbers of its own: 62 psi, 89.5 ft and 6.5 ft up.
func shower(t testing.TB, house problems.House) *problems.Problem {
	t.Helper()
	s, ok := skills.ByID("floor-pressure")
	require.True(t, ok)
	p, err := problems.WithGivens(s, 1, house, []problems.Own{
		{Name: "street", Text: "62 psi"}, {Name: "floor_height", Text: "89.5 ft"}, {Name: "outlet", Text: "6.5 ft"},
	})
	require.NoError(t, err)
	return p
}

func TestWorkingAsPeopleWriteIt(t *testing.T) {
	us := problems.House{System: unit.US}
	for _, c := range []struct {
		name  string
		lines string // one a row
		want  string // verdicts, with step or slip behind
		marks int    // of 6, or of 8 by the other route
	}{
		{"all lines", "96 ft\n41.6 psi\n20.4 psi", "right right right", 6},
		{"one expression", "62 - 0.433 x 96 = 20.4 psi", "right", 6},
		{"labels and words", "h = 89.5 + 6.5 = 96 ft\npressure lost: 41.6 psi\nso 20.4 psi at the top", "right right right", 6},
		{"broken over two rows", "62 - 0.433 x 96\n= 20.4 psi", "right right", 6},
		{"any order", "20.4 psi\n41.6 psi\n96 ft", "right right right", 6},
		{"metric throughout", "29.3 m\n287 kPa\n141 kPa", "right right right", 6},
		{"expression with units", "62 psi - 0.433 psi/ft x 96 ft = 20.4 psi", "right", 6},
		{"decimal comma", "41,6 psi\n20,4 psi", "right right", 6},
		{"the other route", "62 / 0.433 = 143.2 ft\n143.2 - 96 = 47.2 ft\n0.433 x 47.2 = 20.4 psi", "right right right", 8},
		{"a line put right lower down", "96 ft\n222 psi\n41.6 psi\n20.4 psi", "right replaced right right", 6},
		{"answer only", "20.4 psi", "right", 3},
		{"other system's unit", "41.6 kPa\n20.4 psi", "wrong-unit right", 5},
		{"units twice wrong cost one", "96 m\n41.6 kPa\n20.4 kPa", "wrong-unit wrong-unit wrong-unit", 5},
		{"unit missing", "41.6 psi\n20.4", "right unit-missing", 5},
		{"slip and what follows", "89.5 ft\n38.8 psi\n23.2 psi", "slip follow-through follow-through", 4},
		{"slip at the end", "96 ft\n41.6 psi\n103.6 psi", "right right slip", 4},
		{"two slips on two lines", "89.5 ft\n38.8 psi\n100.8 psi", "slip follow-through slip", 2},
		{"total wrong", "0.433 x 96 = 46.1 psi\n15.9 psi", "arithmetic follow-through", 5},
		{"digits changed places", "96 ft\n46.1 psi\n15.9 psi", "right transposed follow-through", 5},
		{"point misplaced", "96 ft\n416 psi\n20.4 psi", "right power-of-ten not-following", 4},
		{"true numbers again", "96 ft\n222 psi\n20.4 psi", "right slip not-following", 3},
		{"below zero", "96 ft\n222 psi\n-160 psi", "right slip follow-through", 2},
		{"nothing known", "96 ft\n77 psi", "right not-recognised", 2},
		{"not readable", "??\n20.4 psi", "not-readable right", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := marking.Lines(shower(t, us), strings.Split(c.lines, "\n"))
			var got []string
			for _, f := range r.Lines {
				got = append(got, string(f.Verdict))
				assert.NotEmpty(t, f.Says, f.Text)
			}
			assert.Equal(t, c.want, strings.Join(got, " "))
			assert.Equal(t, c.marks, r.Marks, "%s", r.Note)
		})
	}
}

// Wording: the line, what was done in the learner's numbers, why, what next.
func TestASlipIsExplainedInTheLearnersNumbers(t *testing.T) {
	r := marking.Lines(shower(t, problems.House{System: unit.US}), []string{"96 ft", "222 psi"})
	require.Equal(t, 1, r.First)
	require.Len(t, r.Lines[1].Slips, 1)
	s := r.Lines[1].Slips[0]
	assert.Contains(t, s.Did, "96\u00a0ft")
	assert.NotEmpty(t, s.Why)
	assert.NotEmpty(t, s.Next)
}
