package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/problems"
)

// Published figures of hot water loops.
func TestLoopsAgreeWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_loop.csv")
}

// The heat that the loop has lost is the heat that the heater adds, and the
// two parts are the whole return: by no formula of the skill.
func TestReturnSplitKeepsItsHeat(t *testing.T) {
	drawn(t, "return-split", func(p *problems.Problem, at func(string) float64) {
		assert.InEpsilon(t, at("flow")*(at("mixed")-at("back")), at("to_heater")*(at("hot")-at("back")), 1e-9, "seed %d", p.Seed)
		assert.InEpsilon(t, at("flow"), at("to_heater")+at("to_port"), 1e-9, "seed %d", p.Seed)
	})
}

// In a steady loop the heat that leaves the water is the heat that the pipe
// loses, piece by piece.
func TestBranchTemperaturesKeepTheirHeat(t *testing.T) {
	drawn(t, "branch-temperature", func(p *problems.Problem, at func(string) float64) {
		carried := at("flow")*(at("hot")-at("at_near")) + at("flow_far")*(at("at_near")-at("at_far"))
		lost := at("loss_near") + at("loss_far")
		per := 500.0 // Btu/h for one gpm and one degree
		if p.World().House.System != "us" {
			per = 4190 // W for one L/s and one kelvin
		}
		assert.InEpsilon(t, lost, per*carried, 1e-9, "seed %d", p.Seed)
	})
}

// Both valves pass the same flow, so what they take goes with one over the
// square of their factor, and the near one is the smaller.
func TestTheNearValveIsFurtherShut(t *testing.T) {
	drawn(t, "loop-balancing", func(p *problems.Problem, at func(string) float64) {
		ratio := at("factor_far") / at("factor_near")
		assert.Greater(t, ratio, 1.0)
		assert.InEpsilon(t, at("spare_near")/at("spare_far"), ratio*ratio, 1e-9, "seed %d", p.Seed)
	})
}

// What is drawn keeps a loop above the guideline of 124 °F (51 °C), ASHRAE
// Guideline 12-2000, confirmed, but for the riser that the problem is about.
func TestDrawnLoopsKeepTheGuideline(t *testing.T) {
	drawn(t, "return-split", func(p *problems.Problem, _ func(string) float64) {
		assert.GreaterOrEqual(t, p.World().Temperature("back").Celsius(), 51-1e-9)
	})
	drawn(t, "mixed-return", func(p *problems.Problem, at func(string) float64) {
		assert.Greater(t, at("blended"), at("least"), "the mix hides the cold riser")
	})
	drawn(t, "branch-temperature", func(p *problems.Problem, at func(string) float64) {
		assert.GreaterOrEqual(t, at("at_far"), map[bool]float64{true: 124, false: 51}[p.World().House.System == "us"])
	})
}
