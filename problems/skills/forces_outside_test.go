package skills_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/problems"
)

// Published figures of surge, movement, thrust, disinfection and corrosion.
func TestForcesAgreeWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_forces.csv")
}

// Rods come in pairs and carry the push with one pair less falling short: by
// counting up, not by the rule. Pairs: NFPA 24 (2019), 10.6.2; confirmed.
func TestRodsCarryThePushInPairs(t *testing.T) {
	drawn(t, "rods", func(p *problems.Problem, at func(string) float64) {
		n, push, rod := at("rods"), at("push"), at("rod_load")
		assert.Zero(t, math.Mod(n, 2), "seed %d", p.Seed)
		assert.GreaterOrEqual(t, n*rod, push, "seed %d", p.Seed)
		assert.Less(t, (n-2)*rod, push, "seed %d", p.Seed)
	})
}
