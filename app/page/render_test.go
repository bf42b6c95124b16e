package page

import (
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// shownAs mounts a page without a browser and gives its text.
func shownAs(t *testing.T, c app.Composer) string {
	t.Helper()
	d := app.NewClientTester(c)
	defer d.Close()
	d.Consume()
	return app.HTMLString(c)
}

// The policy of the page forbids style attributes; texts are filled.
func checkShown(t *testing.T, html string) {
	t.Helper()
	assert.NotContains(t, html, " style=")
	assert.NotContains(t, html, "NaN")
	assert.False(t, strings.ContainsAny(html, "{}"), "a text has a place that was not filled")
	assert.Equal(t, 1, strings.Count(html, "<h1"))
}

func TestEverySkillShows(t *testing.T) {
	for _, skill := range skills.All() {
		t.Run(skill.ID, func(t *testing.T) {
			for _, h := range []problems.House{problems.Defaults, {System: unit.Metric, Code: "npc"}, {System: unit.Mixed, Code: "npc"}} {
				a := address{skill: skill, seed: 5, house: h}
				w := &work{session: session{address: a, own: h, at: -1, ours: true}}
				w.lay(&desk{})
				require.Empty(t, w.fault)
				checkShown(t, shownAs(t, w))

				for i := range w.bench.p.Steps {
					w.bench.slipped(i)
					w.bench.hint(i)
				}
				w.bench.markAll()
				w.compare = true
				html := shownAs(t, &work{session: w.session})
				checkShown(t, html)
				assert.Contains(t, html, "<math")

				w.at = 0
				checkShown(t, shownAs(t, &work{session: w.session}))
			}
		})
	}
}

func TestPagesShow(t *testing.T) {
	for name, c := range map[string]app.Composer{
		"start": &start{house: problems.Defaults},
		"carry on": &start{house: problems.Defaults, desk: desk{Sheets: []sheet{{
			Skill: skills.All()[0].ID, Version: skills.All()[0].Version, House: problems.Defaults, Lines: []entry{{Text: "4"}, {}},
		}}}},
		"house":    &rules{house: problems.Defaults, look: look{Version: lookVersion}},
		"no link":  &work{session: session{at: -1, fault: "The link names nothing."}},
		"no page":  &lost{},
		"a notice": &start{house: problems.Defaults, notices: []string{"", "Something was not saved."}},
	} {
		t.Run(name, func(t *testing.T) { checkShown(t, shownAs(t, c)) })
	}
}
