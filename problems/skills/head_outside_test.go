package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// Published figures of pressure and height of water.
func TestHeadAgreesWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_head.csv")
}

// The height of a fixture is counted floor by floor on the building itself,
// level 1 to the one below the fixture's, by label and not by number.
func TestFixtureHeightFloorByFloor(t *testing.T) {
	skill, ok := skills.ByID("fixture-height")
	require.True(t, ok)
	skipping := 0
	for _, house := range houses() {
		for seed := range uint64(100) {
			p, err := problems.New(skill, seed, house)
			require.NoError(t, err)
			up := 0.0
			for _, l := range p.Building.Levels[p.Building.Ground:p.Focus] {
				assert.NotEqual(t, "Roof", l.Label)
				up += float64(l.Height)
			}
			want := up + p.World().SI("datum_below") + p.World().SI("outlet")
			assert.InEpsilon(t, want, p.Answer().Unit.SI(p.Answer().Value), 1e-9, "%s seed %d", house.System, seed)
			skipping += int(stepOrTold(p, "skipped"))
		}
	}
	assert.Greater(t, skipping, 10, "buildings without a level 13 are drawn too")
}

// A drawn pressure is one that a first-year meets: under the static limit of
// every code here, and above nothing.
func TestDrawnPressuresAreHousePressures(t *testing.T) {
	for _, id := range []string{"head-to-pressure", "floor-pressure", "pressure-below-gauge"} {
		skill, ok := skills.ByID(id)
		require.True(t, ok)
		for _, house := range houses() {
			for seed := range uint64(100) {
				p, err := problems.New(skill, seed, house)
				require.NoError(t, err)
				kpa := p.Answer().Unit.SI(p.Answer().Value) / 1000
				assert.Greater(t, kpa, 40.0, "%s %s seed %d", id, house.System, seed)
				assert.Less(t, kpa, 550.0, "%s %s seed %d", id, house.System, seed)
			}
		}
	}
}
