package skills_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// Printed figures put in as givens, and a line of the working compared with
// the print. Shop figures are common practice, no source.
var zonesOutside = []struct {
	skill  string
	givens []problems.Own
	step   string
	want   float64
	within float64
	source string
}{
	{"next-valve", []problems.Own{{Name: "allowed", Text: "70 psi"}, {Name: "setting", Text: "25 psi"}}, "drop", 104, 0.5,
		"shop drill; common practice, no source"},
	{"next-valve", []problems.Own{{Name: "allowed", Text: "70 psi"}, {Name: "setting", Text: "25 psi"}, {Name: "floor_height", Text: "10 ft"}, {Name: "last_level", Text: "24"}}, "next_level", 14, 0,
		"shop drill: 104 ft is 10 floors of 10 ft; common practice, no source"},
	{"next-valve", []problems.Own{{Name: "allowed", Text: "150 psi"}, {Name: "setting", Text: "0 psi"}, {Name: "last_level", Text: "60"}}, "drop", 346.5, 0.6,
		"U.S. Army TM 10-4320-345-13, hose-line system (2.31 ft a psi); confirmed"},
	{"base-pressure", []problems.Own{{Name: "valve_height", Text: "66 ft"}, {Name: "base_depth", Text: "10 ft"}, {Name: "setting", Text: "25 psi"}}, "base", 58, 0.5,
		"shop drill: 76 ft below a setting of 25 psi; common practice, no source"},
	{"tallest-zone", []problems.Own{{Name: "most", Text: "80 psi"}, {Name: "least", Text: "25 psi"}}, "height", 127, 0.5,
		"shop drill; common practice, no source"},
	{"tallest-zone-working", []problems.Own{{Name: "most", Text: "80 psi"}, {Name: "least", Text: "25 psi"}, {Name: "fall_off", Text: "10 psi"}, {Name: "friction", Text: "5 psi"}}, "height", 92, 0.5,
		"shop drill; common practice, no source"},
	{"zone-valve-setting", []problems.Own{
		{Name: "bottom_level", Text: "1"}, {Name: "top_level", Text: "8"}, {Name: "floor_height", Text: "10 ft"}, {Name: "valve_up", Text: "0.5 ft"}, {Name: "high_outlet", Text: "6.5 ft"},
		{Name: "least", Text: "25 psi"}, {Name: "fall_off", Text: "10 psi"}, {Name: "friction", Text: "0 psi"},
	}, "needed", 68, 0.5,
		"shop drill: 58 psi over 76 ft, 68 with 10 of fall-off; common practice, no source"},
	{"down-feed-pressure", []problems.Own{
		{Name: "header", Text: "0 psi"}, {Name: "top_level", Text: "5"}, {Name: "level", Text: "1"}, {Name: "floor_height", Text: "10 ft"}, {Name: "header_up", Text: "0 ft"}, {Name: "outlet", Text: "0 ft"},
	}, "pressure", 17.32, 0.005,
		"Handbook of Mathematics and Statistics for the Environment (CRC Press, 2013), Example 2.58: 40 ft of water; confirmed"},
}

func TestZonesAgainstPrintedFigures(t *testing.T) {
	for _, c := range zonesOutside {
		s, ok := skills.ByID(c.skill)
		require.True(t, ok, c.skill)
		p, err := problems.WithGivens(s, 1, problems.House{System: unit.US, Code: "shop"}, c.givens)
		require.NoError(t, err)
		found := false
		for i := range p.Steps {
			if p.Steps[i].Name == c.step {
				found = true
				assert.InDelta(t, c.want, p.Steps[i].Value, c.within+1e-9, "%s %s: %s", c.skill, c.step, c.source)
			}
		}
		assert.True(t, found, "%s has no line %s", c.skill, c.step)
	}
}

// The next valve stands where the trade's own reckoning keeps the limit: one
// floor lower breaks it. Common practice, no source.
func TestNextValveKeepsItsLimit(t *testing.T) {
	s, ok := skills.ByID("next-valve")
	require.True(t, ok)
	for _, h := range houses() {
		for seed := range uint64(100) {
			p, err := problems.New(s, seed, h)
			require.NoError(t, err)
			env := p.Env()
			at := func(name string) float64 { return env[p.Slot(name)] }
			below := func(floors float64) float64 {
				return at("setting") + at("gamma")*at("floor_height")*floors
			}
			require.LessOrEqual(t, below(at("floors")), at("allowed"))
			require.Greater(t, below(at("floors")+1), at("allowed"))
		}
	}
}

// A setting leaves the top shower what it must have, and a step less would not.
func TestZoneValveSettingIsEnoughAndNoMore(t *testing.T) {
	s, ok := skills.ByID("zone-valve-setting")
	require.True(t, ok)
	verdicts := map[float64]int{}
	for _, h := range houses() {
		for seed := range uint64(100) {
			p, err := problems.New(s, seed, h)
			require.NoError(t, err)
			env := p.Env()
			at := func(name string) float64 { return env[p.Slot(name)] }
			top := func(setting float64) float64 {
				climb := (at("top_level")-at("bottom_level"))*at("floor_height") - at("valve_up") + at("high_outlet")
				return setting - at("fall_off") - at("friction") - at("gamma")*climb
			}
			require.GreaterOrEqual(t, top(at("setting")), at("least")-1e-9)
			require.Less(t, top(at("setting")-at("valve_step")), at("least"))
			verdicts[at("verdict")]++
		}
	}
	assert.Greater(t, verdicts[0], 100, "zones that keep the limit")
	assert.Greater(t, verdicts[1], 100, "zones that are over it")
}
