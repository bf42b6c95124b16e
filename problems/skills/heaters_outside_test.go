package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/problems"
)

// Published figures of demand, storage, heating and expansion.
func TestHeatersAgreeWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_heaters.csv")
}

// Gas keeps pressure times volume (Boyle's law): the gas of the chosen tank,
// squeezed by the water, stands at the cap and not over it.
func TestGasOfTheTankEndsAtTheCap(t *testing.T) {
	drawn(t, "expansion-tank", func(p *problems.Problem, at func(string) float64) {
		start := (at("line") + at("air")) * at("tank")
		end := start / (at("tank") - at("expansion"))
		assert.InEpsilon(t, at("cap")+at("air"), end, 1e-9, "seed %d", p.Seed)
	})
}

// A valve is rated for the input of the heater: one that passes the output
// alone never suits. Model codes and the plate of the valve; from memory.
func TestReliefValveIsRatedForTheInput(t *testing.T) {
	drawn(t, "relief-rating", func(p *problems.Problem, at func(string) float64) {
		if at("rating") < at("input") || at("setting") > at("tank_rating") {
			assert.Zero(t, at("suits"), "seed %d", p.Seed)
		}
	})
}
