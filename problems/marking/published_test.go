package marking_test

import (
	"encoding/csv"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// published is a worked example in print: its givens, its lines, and what is
// to be found on each of them.
type published map[string]string

// readPublished reads testdata/worked_examples.csv. Each row names its source
// and how it is known. Lines, verdicts and givens are parted by bars and
// semicolons; a verdict has the ids of its slips behind it.
func readPublished(t *testing.T) []published {
	t.Helper()
	file, err := os.Open("../../testdata/worked_examples.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var out []published
	for _, row := range rows[1:] {
		p := published{}
		for i, name := range rows[0] {
			p[name] = row[i]
		}
		out = append(out, p)
	}
	return out
}

// problem is the skill with the givens of the print.
func (e published) problem(t *testing.T) *problems.Problem {
	t.Helper()
	s, ok := skills.ByID(e["skill"])
	require.True(t, ok, e["skill"])
	house := problems.House{System: unit.System(e["units"]), Code: "shop"}
	if name, text, ok := strings.Cut(e["constants"], "="); ok {
		house.Constants = []problems.Pick{{Name: name, Text: text}}
	}
	var own []problems.Own
	for given := range strings.SplitSeq(e["givens"], "; ") {
		name, text, ok := strings.Cut(given, "=")
		require.True(t, ok, given)
		own = append(own, problems.Own{Name: name, Text: text})
	}
	p, err := problems.WithGivens(s, 1, house, own)
	require.NoError(t, err)
	return p
}

// number reads a column in the unit of the step.
func (e published) number(t *testing.T, column string, s *problems.Step) float64 {
	t.Helper()
	q, err := unit.Read(e[column])
	require.NoError(t, err)
	if q.Unit.Name == "" {
		q.Unit = s.Unit
	}
	v := q.In(s.Unit)
	require.False(t, math.IsNaN(v), "%s %q is no %s", column, e[column], s.Unit.Name)
	return v
}

// Worked examples as printed in manuals, textbooks and codes, line by line
// through the marker: what is right there is accepted, and what is wrong is
// caught and named. Sources and confidence stand in the rows.
func TestPublishedExamplesAreMarkedAsTheyDeserve(t *testing.T) {
	right, wrong := 0, 0
	for _, e := range readPublished(t) {
		t.Run(e["id"]+"/"+e["skill"], func(t *testing.T) {
			source := e["source"] + " (" + e["confidence"] + ")"
			require.NotEmpty(t, e["source"])
			require.Contains(t, []string{"confirmed", "from memory", "common practice, no source"}, e["confidence"], source)
			p := e.problem(t)
			s := &p.Steps[p.Slot(e["step"])-len(p.Told)]
			off := math.Abs(e.number(t, "answer", s) - s.Value)
			within := e.number(t, "within", s) + 1e-9*math.Abs(s.Value)

			r := marking.Lines(p, strings.Split(e["lines"], " | "))
			var got []string
			for _, f := range r.Lines {
				words := []string{string(f.Verdict)}
				for _, slip := range f.Slips {
					words = append(words, slip.ID)
				}
				got = append(got, strings.Join(words, " "))
				assert.NotEmpty(t, f.Says, "%s: %s", f.Text, source)
			}
			assert.Equal(t, e["verdicts"], strings.Join(got, " | "), "%s: %s", e["lines"], source)

			switch e["print"] {
			case "right":
				right++
				assert.LessOrEqual(t, off, within, "%s = %v %s: %s", e["step"], s.Value, s.Unit.Name, source)
				assert.Empty(t, r.Slips, source)
			case "wrong":
				wrong++
				assert.Greater(t, off, within, "%s = %v %s: %s", e["step"], s.Value, s.Unit.Name, source)
				assert.NotEqual(t, -1, r.First, source)
				assert.False(t, r.Done, source)
			default:
				assert.Fail(t, "print is "+e["print"]+", expected right or wrong", source)
			}
		})
	}
	t.Logf("%d examples right in print were accepted, %d wrong ones caught and named", right, wrong)
	assert.GreaterOrEqual(t, right, 80)
	assert.GreaterOrEqual(t, wrong, 19)
}
