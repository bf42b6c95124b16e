//go:build browser

package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// firstShort is the level that a street of so many psi leaves short in the
// building that the page begins with.
func firstShort(t *testing.T, psi float64) string {
	t.Helper()
	o, _ := solver.TemplateNamed("mid-rise")
	o.Static = unit.Pressure(psi) * unit.PSI
	s := solver.Settings{Profile: problems.Defaults.Profile()}
	b, err := o.Building(s)
	require.NoError(t, err)
	w, err := solver.SolveWhole(b, solver.Case{Settings: s})
	require.NoError(t, err)
	require.GreaterOrEqual(t, w.Street.FirstLow, 0)
	return "The street alone leaves level " + b.Levels[w.Street.FirstLow].Label + " short."
}

// set puts a text into a box in place of what it holds.
func (p *Page) set(css, text string) {
	p.t.Helper()
	Eval[bool](p, `(() => { const e = document.querySelector("`+css+`"); e.focus(); e.value = ""; e.dispatchEvent(new Event("input", { bubbles: true })); return true })()`)
	p.Type(css, text)
}

func TestTryABuilding(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/building")
			p.arrive("try")
			p.WaitText("#try-says", firstShort(t, 62))
			p.Fits()
			p.Screenshot("building-" + size.Name)

			// More street: the first short floor moves at once, and so does the table.
			before := p.Text(".levels tbody")
			p.set("#try-street", "80 psi")
			p.WaitText("#try-says", firstShort(t, 80))
			assert.NotEqual(t, before, p.Text(".levels tbody"))
			p.Click(`[aria-label="less: street pressure, no flow"]`)
			p.WaitTrue(`document.querySelector("#try-street").value === "79 psi"`)

			// A bad value gives one sentence and nothing is lost.
			kept := p.Text(".levels tbody")
			p.set("#try-storeys", "lots")
			p.WaitText("#try-storeys-fault", "a whole number of 0 or more was expected")
			assert.Equal(t, kept, p.Text(".levels tbody"))
			p.set("#try-storeys", "10000")
			p.WaitText("#try-refused", "Shown is the last building that could be.")
			assert.Positive(t, p.Count(".levels tbody tr"))
			assert.Equal(t, "10000", p.Value("#try-storeys"))
			p.set("#try-storeys", "20")
			p.WaitTrue(`document.querySelectorAll(".levels tbody tr").length === 20`)
			assert.Empty(t, p.Text("#try-refused"))

			// A number tells how it is worked out.
			p.Click(`[aria-label^="flowing, level 20"]`)
			p.WaitText("#try-working", "Street pressure at the busy hour")
			p.WaitText("#try-working", "Booster")
			p.Fits()
			p.show("#try-working")
			p.Screenshot("building-working-" + size.Name)

			// It is kept, and its link opens it again.
			p.Click("#try-keep")
			p.WaitText("#try-says", "Kept as")
			link := Eval[string](p, `document.querySelector("#try-link").getAttribute("href")`)
			p.Open(link)
			p.arrive("try")
			p.WaitTrue(`document.querySelectorAll(".levels tbody tr").length === 20`)
			assert.Equal(t, "79 psi", p.Value("#try-street"))
			p.Click(".kept .button")
			p.Click(`.try-templates .button:nth-of-type(3)`)
			p.WaitTrue(`document.querySelectorAll(".levels tbody tr").length === 60`)
			p.Fits()
			p.show(".levels")
			p.Dark()
			p.Screenshot("building-tower-dark-" + size.Name)
			p.show("svg")
			p.Screenshot("building-drawing-dark-" + size.Name)
		})
	}
}
