package page

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
)

var three = []*problems.Skill{{ID: "a", Chapter: 1}, {ID: "b", Chapter: 1}, {ID: "c", Chapter: 2}}

func TestTheMixKeepsToItsChapters(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	last, seen := "", map[string]bool{}
	for range 200 {
		s := pickSkill(three, []int{1, 2}, last, rng)
		require.NotEqual(t, last, s.ID, "one skill twice in a row")
		last = s.ID
		seen[last] = true
	}
	assert.Len(t, seen, 3)
	for range 20 {
		assert.Equal(t, 2, pickSkill(three, []int{2}, "a", rng).Chapter)
	}
	assert.Equal(t, "c", pickSkill(three, []int{2}, "c", rng).ID, "the only one there is")
	assert.Nil(t, pickSkill(nil, nil, "", rng))
}

func TestTheUnfinishedProblem(t *testing.T) {
	d := desk{Sheets: []sheet{
		{Skill: "empty", Lines: []entry{{Text: "  "}}},
		{Skill: "done", Lines: []entry{{Text: "4"}}, Done: true},
		{Skill: "open", Lines: []entry{{}, {Text: "4"}}},
	}}
	s, ok := unfinished(&d)
	require.True(t, ok)
	assert.Equal(t, "open", s.Skill)
	assert.Equal(t, 1, s.written())
	_, ok = unfinished(&desk{})
	assert.False(t, ok)
}
