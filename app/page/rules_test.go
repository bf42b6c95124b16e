package page

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"riserwork/problems"
	"riserwork/solver/unit"
)

func TestOtherUnitsDropTheirNumbers(t *testing.T) {
	h := withConstant(problems.House{System: unit.US, Code: "shop", TopMin: 30}, "gamma", "0.434")
	assert.Equal(t, []problems.Pick{{Name: "gamma", Text: "0.434"}}, h.Constants)
	m := withSystem(h, unit.Metric)
	assert.Zero(t, m.TopMin)
	assert.Empty(t, m.Constants)
	assert.Equal(t, h, withSystem(h, unit.US))
}

func TestTheUsualConstantNeedsNoWord(t *testing.T) {
	h := withConstant(problems.Defaults, "gamma", "0.434")
	h = withConstant(h, "gamma", "0.433")
	assert.Empty(t, h.Constants)
	assert.Equal(t, problems.Defaults, withConstant(problems.Defaults, "gamma", "7"))
}

func TestPressureAtTheTop(t *testing.T) {
	for text, want := range map[string]float64{"": 0, " 30 ": 30, "22.5": 22.5} {
		h, fault := withTop(problems.Defaults, text)
		assert.Empty(t, fault, text)
		assert.Equal(t, want, h.TopMin, text)
	}
	for _, text := range []string{"0", "-5", "600", "NaN", "Inf", "1e9", "thirty", "30 psi"} {
		h, fault := withTop(problems.Defaults, text)
		assert.Contains(t, fault, "was expected", text)
		assert.Zero(t, h.TopMin, text)
	}
}

func TestHouseWords(t *testing.T) {
	h := problems.House{System: unit.Metric, Code: "npc", Imperial: true, TopMin: 200, Constants: []problems.Pick{{Name: "gamma", Text: "9.8"}}, Alone: problems.AloneNone}
	assert.Equal(t, "metric units, National Plumbing Code of Canada, imperial gallons, 200 kPa at the top, 9.8 taught, an answer alone earns no marks", houseWords(h))
	h.Alone = "some"
	assert.Equal(t, problems.AloneValues, sound(h).Alone)
}
