//go:build browser

package browsertest

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCardOpensAndRedraws(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/")
			p.WaitReady()
			p.Click("#chapter-1 summary")
			p.Click(`#chapter-1 .card-link[href*="floor-pressure"]`)
			p.WaitText("h1", "Pressure at a floor")
			assert.Equal(t, "/card", Eval[string](p, `location.pathname`))
			assert.NotZero(t, p.Count(".rule math"))
			assert.Contains(t, p.Text(".rule .unseen"), "is ")
			assert.Equal(t, 1, p.Count(`svg[data-part="sheet"]`))
			assert.NotZero(t, p.Count(".slips summary"))
			before := p.Text("#example")
			p.Click("#redraw")
			p.WaitTrue(`document.querySelector("[role=status]").textContent.startsWith("Another example")`)
			assert.NotEqual(t, before, p.Text("#example"))
			p.Fits()
			p.Screenshot("card-" + size.Name)
			p.dark()
			p.Screenshot("card-dark-" + size.Name)
			p.Click("#work-one")
			p.WaitText("h1", "Pressure at a floor")
			p.WaitFor("#line-0")
			p.Click("#card-link")
			p.WaitFor("#redraw")
		})
	}
}

// A step that looks a number up shows the rows about it, in the phone's width.
func TestTableStandsBesideItsLine(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/work?skill=demand-from-units&seed=3&units=us&code=ipc")
			p.WaitReady()
			p.WaitText(".look-up summary", "Demand from fixture units")
			assert.Equal(t, 1, p.Count(".look-up"), "once, at the line that finds the row")
			assert.Equal(t, 6, p.Count(".look-up tbody tr"))
			assert.Equal(t, 3, p.Count(".look-up thead th"), "both columns")
			p.Fits()
			Eval[bool](p, `(document.querySelector(".look-up").scrollIntoView({ block: "center" }), true)`)
			p.Screenshot("look-up-" + size.Name)
		})
	}
}

// The printed sheet holds formulas and constants and nothing to press, and
// fits both papers.
func TestFormulaSheetPrints(t *testing.T) {
	p := New(t, Desk)
	p.Open("/formulas")
	p.WaitReady()
	assert.Greater(t, p.Count(".sheet .entry"), 80)
	p.Screenshot("formulas-desk")
	p.emulate(emulation.SetEmulatedMediaParams{Media: "print"})
	assert.Zero(t, Eval[int](p, `[...document.querySelectorAll("button, nav, input, .bar, .skip")].filter((e) => e.checkVisibility()).length`))
	assert.True(t, Eval[bool](p, `document.querySelector(".sheet").checkVisibility()`))
	for name, paper := range map[string][2]float64{"letter": {8.5, 11}, "a4": {8.27, 11.69}} {
		ctx, cancel := context.WithTimeout(p.ctx, patience)
		r, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: paper[0], PaperHeight: paper[1]})
		cancel()
		require.NoError(t, err)
		assert.Greater(t, len(r.Data), 10000)
		if dir := os.Getenv("SHOTS"); dir != "" {
			require.NoError(t, os.WriteFile(filepath.Join(dir, "formulas-"+name+".pdf"), r.Data, 0o644))
		}
	}
}

func TestShelfFindsAndConverts(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/shelf")
			p.WaitReady()
			p.Fits()
			p.Screenshot("shelf-" + size.Name)
			p.Type("#convert", "100 psi")
			p.WaitText("#converted", "689.48")
			p.Type("#convert", " and more")
			p.WaitText("#convert-says", "A number with its unit was expected")
			p.Type("#find", "hammer")
			p.WaitText("#found", "Found: ")
			assert.NotZero(t, Eval[int](p, `[...document.querySelectorAll('.links a[href*="card?skill=surge"]')].filter((e) => e.checkVisibility()).length`))
			p.dark()
			p.Screenshot("shelf-found-" + size.Name)
			p.Type("#find", " of no such thing")
			p.WaitText("#found", "Nothing on the shelf")
			p.Open("/tables?name=copper-tube")
			p.WaitText("h1", "Copper water tube")
			assert.Equal(t, 11, p.Count(".printed tbody tr"))
			p.Fits()
			p.Screenshot("table-" + size.Name)
		})
	}
}

// The keys reach the search, the converter and the lists in their order.
func TestShelfByKeyboard(t *testing.T) {
	p := New(t, Desk)
	p.Open("/shelf")
	p.WaitReady()
	Eval[bool](p, `(document.getElementById("title").focus(), true)`)
	var reached []string
	for len(reached) < 12 && (len(reached) == 0 || reached[len(reached)-1] != "SUMMARY") {
		p.Press(kb.Tab)
		reached = append(reached, Eval[string](p, `document.activeElement.id || document.activeElement.tagName`))
	}
	assert.Subset(t, reached, []string{"find", "formulas", "own", "convert", "SUMMARY"})
	p.Press(kb.Enter)
	p.Press(kb.Tab)
	assert.Contains(t, Eval[string](p, `document.activeElement.href`), "/card?skill=")
	p.Press(kb.Enter)
	p.WaitFor("#redraw")
}

// dark shows the page as on a device that is set to dark.
func (p *Page) dark() {
	p.t.Helper()
	p.emulate(emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}})
}

func (p *Page) emulate(media emulation.SetEmulatedMediaParams) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media)
	require.NoError(p.t, err)
}
