package page

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

func TestEveryCardShows(t *testing.T) {
	for _, skill := range skills.All() {
		t.Run(skill.ID, func(t *testing.T) {
			for _, h := range []problems.House{problems.Defaults, {System: unit.Metric, Code: "npc"}} {
				c := &card{house: h}
				c.open(url.Values{"skill": {skill.ID}, "seed": {"5"}})
				require.Empty(t, c.fault)
				html := shownAs(t, c)
				checkShown(t, html)
				assert.Contains(t, html, "<math")
				assert.Contains(t, html, "It gives ")
			}
		})
	}
}

func TestShelfPagesShow(t *testing.T) {
	lost := &card{house: problems.Defaults}
	lost.open(url.Values{"skill": {"nothing"}})
	assert.Contains(t, lost.fault, "“nothing”, which is not here")
	checkShown(t, shownAs(t, lost))
	checkShown(t, shownAs(t, &shelf{}))
	checkShown(t, shownAs(t, &shelf{find: "valve"}))
	checkShown(t, shownAs(t, &formulas{house: problems.Defaults}))
	checkShown(t, shownAs(t, &tablesPage{house: problems.Defaults, named: "nothing"}))
	for i := range solver.Tables {
		checkShown(t, shownAs(t, &tablesPage{house: problems.Defaults, named: solver.Tables[i].Name}))
	}
}

func TestShelfFinds(t *testing.T) {
	assert.Len(t, skillRuns("", cardURL).list, len(skills.All()))
	assert.NotEmpty(t, skillRuns(" HAMMER ", cardURL).list)
	assert.Empty(t, skillRuns("no such thing", cardURL).list)
	assert.Len(t, tableLinks("hazen"), 1)
	assert.Len(t, termRows("stratification"), 1)
	assert.Equal(t, "Found: 1 card, 2 tables, 0 words.", foundText("x", 1, 2, 0))
}

// The words stand in order and each once.
func TestTermsAreInOrder(t *testing.T) {
	require.GreaterOrEqual(t, len(terms), 40)
	assert.True(t, slices.IsSortedFunc(terms, func(a, b term) int { return strings.Compare(strings.ToLower(a.word), strings.ToLower(b.word)) }))
}

// Factors: NIST SP 811 (2008), App. B.9.
func TestConverter(t *testing.T) {
	row := func(c *converter, unit string) string {
		for _, r := range c.rows {
			if r[1] == unit {
				return r[0]
			}
		}
		return ""
	}
	var c converter
	c.convert("100 psi")
	assert.Equal(t, "689.48", row(&c, "kPa"))
	c.convert("10 ft")
	assert.Equal(t, "3.048", row(&c, "m"))
	c.convert("140 °F")
	assert.Equal(t, "60", row(&c, "°C"))
	c.imperial = true
	c.convert("10 gal")
	assert.Equal(t, "45.461", row(&c, "L"))
	for text, says := range map[string]string{"": "", "12": "Write the unit", "twelve psi": "A number with its unit"} {
		c.convert(text)
		assert.Contains(t, c.fault, says)
		assert.Empty(t, c.rows)
	}
}

func TestFormulasAreSpoken(t *testing.T) {
	assert.Equal(t, "gamma times height", spoken("gamma × height"))
	assert.Equal(t, "street minus least, over gamma", spoken("(street − least) / gamma"))
}
