package skills_test

import (
	"flag"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

var update = flag.Bool("update", false, "write the golden files anew")

const goldenFile = "../../testdata/golden_problems.txt"

// The same link must draw the same problem for good: a change that moves one
// of these lines raises its skill's version.
func TestSeedsDrawTheSameProblems(t *testing.T) {
	var out strings.Builder
	for _, s := range skills.All() {
		for _, h := range houses()[:3] {
			for seed := uint64(1); seed <= 2; seed++ {
				p, err := problems.New(s, seed, h)
				require.NoError(t, err)
				out.WriteString(pinned(p))
			}
		}
	}
	if *update {
		require.NoError(t, os.WriteFile(goldenFile, []byte(out.String()), 0o644))
	}
	want, err := os.ReadFile(goldenFile)
	require.NoError(t, err)
	require.Equal(t, strings.Split(string(want), "\n"), strings.Split(out.String(), "\n"))
}

// pinned is one line for a problem; nine figures, since the last bits of a
// power differ between processors.
func pinned(p *problems.Problem) string {
	line := fmt.Sprintf("%s-%d-%s-%d:", p.Skill.ID, p.Skill.Version, p.House.System, p.Seed)
	for _, t := range p.Told[:p.Constants] {
		line += " " + t.Given + "=" + strings.ReplaceAll(t.Text, "\u00a0", " ")
	}
	line += " ->"
	for i := range p.Steps {
		line += " " + p.Steps[i].Name + "=" + strconv.FormatFloat(p.Steps[i].Value, 'g', 9, 64)
	}
	return line + "\n"
}
