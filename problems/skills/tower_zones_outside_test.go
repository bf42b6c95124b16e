package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/solver"
)

// The buildings around these problems are sound: the solver takes them, and
// no storey breaks a limit of the code but where the problem is about that.
func TestBuildingsAroundValvesAndHeatersAreSound(t *testing.T) {
	for _, id := range []string{
		"reduction-ratio", "parallel-valves", "fall-off", "riser-test", "heater-pressure", "valve-in-loop",
		"mixing-valve", "blend", "heat-for-volume", "recovery", "recirculation-required", "circulation-flow",
	} {
		drawn(t, id, func(p *problems.Problem, _ func(string) float64) {
			sol, err := solver.Solve(p.Building, solver.Settings{Profile: p.House.Profile()})
			require.NoError(t, err, "%s seed %d", id, p.Seed)
			for _, b := range sol.Breaches {
				assert.Less(t, b.Level, p.Building.Ground, "%s %s %s seed %d: %s", id, p.House.System, p.House.Code, p.Seed, b.Says)
			}
		})
	}
}
