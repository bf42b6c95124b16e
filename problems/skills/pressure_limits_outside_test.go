package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/problems"
)

// Published figures of columns, and the shop's of valves.
func TestPressureLimitsAgreeWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_pressure_limits.csv")
}

// Storeys are tried one by one from level 1: each counted one has more than
// the limit at its lowest outlet, and the next has not.
func TestSuiteValvesByTrial(t *testing.T) {
	drawn(t, "suite-valves", func(p *problems.Problem, at func(string) float64) {
		over := func(storey int) bool {
			up := at("depth") + at("outlet")
			for n := 1; n < storey; n++ {
				if n == 1 {
					up += at("ground")
				} else {
					up += at("floor_height")
				}
			}
			return at("discharge")-at("gamma")*up > at("limit")
		}
		n := 0
		for over(n + 1) {
			n++
		}
		assert.Equal(t, float64(n), p.Answer().Value, "seed %d", p.Seed)
	})
}

// The verdict is tried on the valves themselves: no valve may reduce by more
// than its limit.
func TestReductionByTrial(t *testing.T) {
	seen := map[float64]int{}
	drawn(t, "reduction-ratio", func(p *problems.Problem, at func(string) float64) {
		keeps := func(in, out float64) bool { return in <= at("ratio_limit")*out }
		want := 2.0
		if keeps(at("inlet"), at("outlet")) {
			want = 0
		} else if keeps(at("inlet"), at("middle")) && keeps(at("middle"), at("outlet")) {
			want = 1
		}
		assert.Equal(t, want, p.Answer().Value, "seed %d", p.Seed)
		seen[want]++
	})
	for verdict := range 3 {
		assert.Greater(t, seen[float64(verdict)], 40, "verdict %d is drawn", verdict)
	}
}

// Both answers of a decision are drawn, so that neither can be guessed.
func TestDecisionsGoBothWays(t *testing.T) {
	for _, id := range []string{"riser-test", "heater-pressure", "recirculation-required"} {
		yes, all := 0.0, 0.0
		drawn(t, id, func(p *problems.Problem, _ func(string) float64) {
			yes += p.Answer().Value
			all++
		})
		assert.InDelta(t, 0.5, yes/all, 0.2, id)
	}
}
