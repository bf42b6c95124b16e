package problems_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
)

// A step that reads a table finds it, under every house; the numbers of its
// neighbours stand beside those that the problem tells.
func TestStepsFindTheirTables(t *testing.T) {
	read := map[string]bool{}
	for _, skill := range skills.All() {
		for _, h := range houses {
			for seed := range uint64(8) {
				p, err := problems.New(skill, seed, h)
				require.NoError(t, err)
				for _, name := range lookUps(t, p) {
					read[name] = true
				}
			}
		}
	}
	for _, name := range []string{"demand", "units-ipc", "units-npc", "copper-tube", "fittings-copper", "fittings-cast", "hazen-williams", "arresters", "motors"} {
		assert.True(t, read[name], "%s is read by a step", name)
	}
}

// lookUps are the tables that the steps of a problem read.
func lookUps(t *testing.T, p *problems.Problem) (names []string) {
	t.Helper()
	for i := range p.Steps {
		table, rows, ok := p.LookUp(i)
		if p.Steps[i].Table == "" {
			require.False(t, ok)
			continue
		}
		require.True(t, ok, "%s, step %s names the table %q", p.Skill.ID, p.Steps[i].Name, p.Steps[i].Table)
		require.GreaterOrEqual(t, len(rows), 3, "%s: neighbours in %s", p.Skill.ID, table.Name)
		names = append(names, table.Name)
		if table.Name == "demand" {
			low := p.Told[p.Given("row_low")].Value
			require.True(t, slices.ContainsFunc(rows, func(r solver.TableRow) bool { return r.Key == low }), "the row of %v", low)
		}
	}
	return names
}
