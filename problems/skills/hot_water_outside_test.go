package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// Published figures of mixing, heating and circulating.
func TestHotWaterAgreesWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_hot_water.csv")
}

// drawn calls f with drawn problems of one skill under every house.
func drawn(t *testing.T, id string, f func(p *problems.Problem, at func(string) float64)) {
	t.Helper()
	skill, ok := skills.ByID(id)
	require.True(t, ok)
	for _, house := range houses() {
		for seed := range uint64(100) {
			p, err := problems.New(skill, seed, house)
			require.NoError(t, err)
			f(p, func(name string) float64 { return stepOrTold(p, name) })
		}
	}
}

// What the hot water gives the cold water takes: a heat balance, by no formula
// of the skills.
func TestMixesKeepTheirHeat(t *testing.T) {
	drawn(t, "mixing-valve", func(p *problems.Problem, at func(string) float64) {
		given := at("hot_flow") * (at("hot") - at("mixed"))
		taken := at("cold_flow") * (at("mixed") - at("cold"))
		assert.InEpsilon(t, given, taken, 1e-9, "seed %d", p.Seed)
	})
	drawn(t, "blend", func(p *problems.Problem, at func(string) float64) {
		given := at("warm_flow") * (at("warm") - at("blended"))
		taken := at("cool_flow") * (at("blended") - at("cool"))
		assert.InEpsilon(t, given, taken, 1e-9, "seed %d", p.Seed)
	})
}

// The master valve's drawings keep a loop above the guideline, and a shower's
// keep the limit of its fixture: 124 °F (51 °C) is ASHRAE Guideline 12-2000,
// confirmed; 120 °F (49 °C) is the limit of the codes, from memory.
func TestMixedWaterIsNeverLukewarm(t *testing.T) {
	drawn(t, "mixing-valve", func(p *problems.Problem, _ func(string) float64) {
		mixed := p.World().Temperature("mixed").Celsius()
		loop, shower := mixed >= 51, mixed <= 49
		assert.True(t, loop || shower, "%.1f °C suits neither a loop nor a shower", mixed)
	})
	drawn(t, "circulation-flow", func(p *problems.Problem, _ func(string) float64) {
		assert.GreaterOrEqual(t, p.World().Temperature("back").Celsius(), 51.0)
	})
}

// The rule of each code at its limits and beside them. Ontario Building Code
// 2012, 7.6.1.1: more than 30 m or more than 4 storeys; confirmed. The
// National code reads the same; from memory. International Plumbing Code 2015
// to 2021, 607.2: 50 ft from the source; confirmed.
func TestRecirculationAtTheLimits(t *testing.T) {
	skill, ok := skills.ByID("recirculation-required")
	require.True(t, ok)
	metric := problems.House{System: unit.Metric, Code: "npc"}
	us := problems.House{System: unit.US, Code: "ipc"}
	for _, c := range []struct {
		house         problems.House
		branch, kept  string
		storeys, most string
		want          float64
		why           string
	}{
		{metric, "10 m", "0 m", "4", "4", 0, "30 m and 4 storeys are both still allowed"},
		{metric, "10.1 m", "0 m", "4", "4", 1, "length alone"},
		{metric, "10 m", "0 m", "5", "4", 1, "storeys alone"},
		{metric, "12 m", "0 m", "6", "4", 1, "both"},
		{us, "50 ft", "20 m", "12", "1000", 0, "50 ft of branch behind a loop, storeys not counted"},
		{us, "51 ft", "20 m", "3", "1000", 1, "a branch over 50 ft"},
	} {
		p, err := problems.WithGivens(skill, 1, c.house, []problems.Own{
			{Name: "to_riser", Text: "10 m"}, {Name: "up", Text: "10 m"}, {Name: "branch", Text: c.branch}, {Name: "kept_hot", Text: c.kept},
			{Name: "storeys", Text: c.storeys}, {Name: "storeys_limit", Text: c.most},
		})
		require.NoError(t, err)
		assert.Equal(t, c.want, p.Answer().Value, c.why)
	}
}

// Each profile tells its own limit; one without a rule says that practice is
// asked. At exactly 4 storeys the slip of "more than" must exist.
func TestRecirculationByProfile(t *testing.T) {
	drawn(t, "recirculation-required", func(p *problems.Problem, at func(string) float64) {
		ask := p.AskText()
		limit := p.World().SI("length_limit")
		switch p.House.Code {
		case "npc":
			assert.InDelta(t, 30, limit, 1e-9)
			assert.Contains(t, ask, "more than 4 storeys")
		case "ipc":
			assert.InDelta(t, 15.24, limit, 1e-9)
			assert.Contains(t, ask, "storeys are not counted")
		case "upc":
			assert.InDelta(t, 30.48, limit, 1e-9)
			assert.Contains(t, ask, "no such rule in the model text")
			assert.Contains(t, ask, "Practice: ")
		}
		exact := false
		for i := range p.Steps {
			for _, w := range p.Steps[i].Wrongs {
				exact = exact || w.ID == "more-than-as-at-least" && w.Bound.Eval(p.Env()) == 1
			}
		}
		assert.Equal(t, at("storeys") == at("storeys_limit"), exact, "seed %d", p.Seed)
	})
}
