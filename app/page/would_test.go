package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// laidOf is a bench with a problem of a skill.
func laidOf(t *testing.T, id string) *bench {
	t.Helper()
	skill, ok := skills.ByID(id)
	require.True(t, ok)
	a := address{skill: skill, seed: 12, house: problems.Defaults}
	p, err := problems.New(skill, a.seed, a.house)
	require.NoError(t, err)
	return newBench(p, a, sheet{})
}

func TestAWrongNumberIsTriedInTheBuilding(t *testing.T) {
	b := laidOf(t, "reach")
	last := len(b.p.Steps) - 1
	require.NotEmpty(t, b.slipped(last))
	b.markAll()
	require.NotNil(t, b.would)
	want, ok := b.p.Outcome(b.result.Lines[last].Value)
	require.True(t, ok)
	assert.Contains(t, b.would.says, want.Says[0])
	if want.Building != nil {
		assert.NotNil(t, b.would.picture)
	}

	b.rightly(last)
	b.markAll()
	assert.Nil(t, b.would, "a right number is not tried")
}
