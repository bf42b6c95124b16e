package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// Published figures of the reach of the street pressure.
func TestReachAgreesWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_reach.csv")
}

// A first short storey is tried shower by shower, up from level 1: each one
// below it keeps the least pressure and it does not. Nothing is asked of the
// solver.
func TestFirstShortFloorByTrial(t *testing.T) {
	skill, ok := skills.ByID("first-short-floor")
	require.True(t, ok)
	for _, house := range houses() {
		for seed := range uint64(100) {
			p, err := problems.New(skill, seed, house)
			require.NoError(t, err)
			street := stepOrTold(p, "street")
			at := func(storey int) float64 {
				up := stepOrTold(p, "outlet")
				for n := 1; n < storey; n++ {
					if n == 1 {
						up += stepOrTold(p, "ground_height")
					} else {
						up += stepOrTold(p, "floor_height")
					}
				}
				return street - stepOrTold(p, "gamma")*up
			}
			first := int(p.Answer().Value)
			for n := 1; n < first; n++ {
				assert.GreaterOrEqual(t, at(n), stepOrTold(p, "least"), "seed %d, storey %d", seed, n)
			}
			assert.Less(t, at(first), stepOrTold(p, "least"), "seed %d", seed)
		}
	}
}

// stepOrTold is the value of a step, or of what the problem tells.
func stepOrTold(p *problems.Problem, name string) float64 {
	for i := range p.Steps {
		if p.Steps[i].Name == name {
			return p.Steps[i].Value
		}
	}
	for _, told := range p.Told {
		if told.Name == name {
			return told.Value
		}
	}
	return 0
}

// In a drawn problem on the governing outlet the highest one never governs,
// and each of the three does in some draw.
func TestEachOutletGovernsSometimes(t *testing.T) {
	skill, ok := skills.ByID("controlling-outlet")
	require.True(t, ok)
	seen := map[int]bool{}
	for seed := range uint64(60) {
		p, err := problems.New(skill, seed, problems.Defaults)
		require.NoError(t, err)
		got := int(p.Answer().Value)
		seen[got] = true
		high := 0
		for i, x := range []string{"a", "b", "c"} {
			if stepOrTold(p, "height_"+x) > stepOrTold(p, "height_"+[]string{"a", "b", "c"}[high]) {
				high = i
			}
		}
		assert.NotEqual(t, high, got, "seed %d", seed)
	}
	assert.Len(t, seen, 3)
}

// Both answers of a decision are drawn, so that neither can be guessed.
func TestDecisionsFallBothWays(t *testing.T) {
	for _, c := range []struct{ skill, step string }{
		{"siphon-depth", "drawn"}, {"static-or-flowing", "verdict"}, {"booster-shortfall", "booster"},
	} {
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
