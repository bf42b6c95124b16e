package page

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// ownAt is the page of an address.
func ownAt(t *testing.T, a address) *own {
	t.Helper()
	o := &own{address: a}
	o.open()
	return o
}

// The numbers of a link are those of the problem that it opens, and its right
// working is marked right.
func TestOwnNumbersOfEverySkill(t *testing.T) {
	for _, skill := range skills.All() {
		t.Run(skill.ID, func(t *testing.T) {
			for _, h := range []problems.House{problems.Defaults, {System: unit.Metric, Code: "npc"}, {System: unit.Mixed, Code: "npc"}} {
				o := ownAt(t, address{skill: skill, seed: 5, house: h})
				require.Empty(t, o.fault)
				o.shown = true
				checkShown(t, shownAs(t, &own{address: o.address, p: o.p, mine: o.mine, shown: true}))

				u, err := url.Parse(o.address.url())
				require.NoError(t, err)
				require.Less(t, len(u.RawQuery), 1500)
				a, fault := readAddress(u.Query(), problems.Defaults)
				require.Empty(t, fault)
				require.Equal(t, o.address, a)
				w := &work{session: session{address: a, own: h, at: -1, ours: true}}
				w.lay(&desk{})
				require.Empty(t, w.fault)
				require.Equal(t, o.mine.Answer().Value, w.bench.p.Answer().Value)
				require.True(t, marking.Blanks(w.bench.p, w.bench.p.Written()).Done)
				checkShown(t, shownAs(t, w))
			}
		})
	}
	checkShown(t, shownAs(t, &own{}))
}

func TestOwnNumbersAreRefusedAtTheirBox(t *testing.T) {
	skill, _ := skills.ByID("floor-pressure")
	o := ownAt(t, address{skill: skill, seed: 12, house: problems.Defaults, givens: []problems.Own{{Name: "street", Text: " 4 bar"}}})
	require.Empty(t, o.fault)
	assert.Contains(t, o.mine.AskText(), "58")
	ask := o.mine.AskText()

	o.address.givens[0].Text = "soon"
	o.try()
	assert.Equal(t, "street", o.at)
	assert.Contains(t, o.fault, "“soon” was read")
	assert.Equal(t, ask, o.mine.AskText(), "the last numbers stand")
	html := shownAs(t, &own{address: o.address, p: o.p, mine: o.mine, at: o.at, fault: o.fault})
	assert.Regexp(t, `aria-invalid[ >]`, html, "the framework prints what is true by its name alone")

	w := &work{session: session{address: o.address, at: -1}}
	w.lay(&desk{})
	assert.Contains(t, w.fault, "“soon” was read")
	assert.Contains(t, shownAs(t, w), "Change the numbers")
}

func TestSheetsOfOwnNumbersAreKeptApart(t *testing.T) {
	skill, _ := skills.ByID("floor-pressure")
	a := address{skill: skill, seed: 12, house: problems.Defaults}
	b := a
	b.givens = []problems.Own{{Name: "street", Text: "70"}}
	var d desk
	for _, x := range []address{a, b} {
		p, err := x.problem()
		require.NoError(t, err)
		d.put(newBench(p, x, sheet{Lines: []entry{{Text: x.query()}}}).sheet)
	}
	require.NoError(t, d.check())
	require.Len(t, d.Sheets, 2)
	for _, x := range []address{a, b} {
		s, ok := d.find(x)
		require.True(t, ok)
		assert.Equal(t, x.query(), s.Lines[0].Text)
	}
	d.Sheets[0].Givens[0].Text = strings.Repeat("9", 9*maxOwn)
	require.Error(t, d.check())
}

func TestLongNumbersAreCut(t *testing.T) {
	skill, _ := skills.ByID("floor-pressure")
	got, fault := readAddress(url.Values{"skill": {skill.ID}, "seed": {"4"}, "g.street": {strings.Repeat("é", 500)}, "g.roof": {"4"}}, problems.Defaults)
	require.Empty(t, fault)
	require.Len(t, got.givens, 1)
	assert.Equal(t, strings.Repeat("é", maxOwn), got.givens[0].Text)
}
