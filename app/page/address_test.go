package page

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

func TestALinkComesBackWhole(t *testing.T) {
	skill := skills.All()[0]
	for _, h := range []problems.House{
		problems.Defaults,
		{System: unit.Metric, Code: "npc", TopMin: 210.5, Alone: problems.AloneNone},
		{System: unit.Mixed, Code: "upc", Imperial: true, Constants: []problems.Pick{{Name: "gamma", Text: "9.8"}, {Name: "watt_per_hp", Text: "745.7"}}},
	} {
		a := address{skill: skill, seed: 1<<64 - 1, house: h, mix: []int{1, 4}}
		u, err := url.Parse(a.url())
		require.NoError(t, err)
		assert.Equal(t, workPath, u.Path)
		got, fault := readAddress(u.Query(), problems.House{System: unit.US, Code: "ipc", TopMin: 30})
		assert.Empty(t, fault)
		assert.Equal(t, a, got)
	}
}

func TestAShortLinkTakesOnesOwnHouse(t *testing.T) {
	own := problems.House{System: unit.Metric, Code: "npc", TopMin: 200}
	got, fault := readAddress(url.Values{"skill": {skills.All()[0].ID}, "seed": {"4"}}, own)
	assert.Empty(t, fault)
	assert.Equal(t, own, got.house)
}

func TestAWrongLinkIsSaid(t *testing.T) {
	id := skills.All()[0].ID
	for name, q := range map[string]url.Values{
		"empty":     {},
		"no skill":  {"skill": {"a-skill-that-is-not"}, "seed": {"4"}},
		"no number": {"skill": {id}, "seed": {""}},
		"minus":     {"skill": {id}, "seed": {"-4"}},
		"too large": {"skill": {id}, "seed": {"18446744073709551616"}},
		"words":     {"skill": {id}, "seed": {"four"}},
	} {
		_, fault := readAddress(q, problems.Defaults)
		assert.NotEmpty(t, fault, name)
	}
}

func TestALinkOfAnotherVersionIsSaid(t *testing.T) {
	got, fault := readAddress(url.Values{"skill": {skills.All()[0].ID}, "seed": {"4"}, "v": {"99"}}, problems.Defaults)
	assert.Empty(t, fault)
	assert.Contains(t, got.earlier, "another version")
}

func FuzzReadAddress(f *testing.F) {
	f.Add("skill=floor-pressure&seed=4&units=us&code=shop&top=25&gamma=0.434&mix=1.2")
	f.Add("skill=floor-pressure&seed=4&units=mixed&top=NaN&mix=-1.99.1.1")
	f.Fuzz(func(t *testing.T, text string) {
		q, err := url.ParseQuery(text)
		if err != nil {
			return
		}
		a, fault := readAddress(q, problems.Defaults)
		if fault != "" {
			return
		}
		require.Equal(t, sound(a.house), a.house)
		u, err := url.Parse(a.url())
		require.NoError(t, err)
		again, fault := readAddress(u.Query(), problems.Defaults)
		require.Empty(t, fault)
		again.earlier, a.earlier = "", ""
		require.Equal(t, a, again)
	})
}
