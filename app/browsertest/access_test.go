//go:build browser

package browsertest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/page"
)

// addresses are what is looked at: every page, those that show one thing with
// one to show, and the ways a problem is worked.
func addresses() []string {
	list := append([]string{"/"}, page.Paths()...)
	for _, way := range []string{"", "&kind=lines", "&kind=mistake", "&kind=choice", "&g.creep=6&g.friction=4"} {
		list = append(list, "/work?skill=zone-valve-setting&seed=12"+way)
	}
	return append(list,
		"/card?skill=zone-valve-setting&seed=12", "/card?skill=pressure-tank&seed=12", "/card?skill=units-at-junction&seed=12",
		"/own?skill=zone-valve-setting&seed=12", "/own?skill=floor-pressure&seed=12&g.street=soon",
		"/tables?name=demand", "/tables?name=units-ipc", "/tables?name=limits-npc",
		"/paper?size=tower&seed=3", "/paper?size=mid-rise&seed=4&units=metric&code=npc",
	)
}

// Every page, opened once and looked at in turn as one who listens, who reads
// in the dark, who chose colours, whose phone is narrow, and who reads large.
func TestEveryPage(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join("..", "..", "testdata", "npm", "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		t.Log("axe-core is not there, so the pages are not looked at with it: make test installs it where node and npm are on the path")
	}
	p := New(t, Phone)
	for _, address := range addresses() {
		p.Resize(Phone)
		p.forceColours("none")
		p.Open(address)
		p.WaitReady()
		if axe != nil {
			p.checkAxe(address, string(axe))
		}
		p.forceColours("active")
		p.checkButtonsAreSeen(address)
		p.forceColours("none")
		p.Resize(Viewport{"narrow", 320, 640, true})
		p.Fits() // WCAG 2.2, 1.4.10
		p.Resize(Phone)
		Eval[string](p, `(document.documentElement.style.fontSize = "200%")`)
		p.Fits() // WCAG 2.2, 1.4.4
	}
}

// checkAxe is an outside check: axe-core, pinned in testdata/npm, finds nothing
// against WCAG 2.2, levels A and AA, light or dark.
func (p *Page) checkAxe(address, axe string) {
	p.t.Helper()
	Eval[bool](p, axe+"; true")
	for _, theme := range []string{"dark", "light"} {
		Eval[string](p, `(document.documentElement.dataset.theme = "`+theme+`")`)
		found := Eval[[]string](p, `axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] })
			.then((r) => r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target.join(" ") + " " + n.any.map((a) => a.message).join(" ")).slice(0, 3).join("; ")))`)
		assert.Empty(p.t, found, "%s, %s", address, theme)
	}
}

// checkButtonsAreSeen holds that whoever chose colours still sees what is tapped.
func (p *Page) checkButtonsAreSeen(address string) {
	p.t.Helper()
	require.True(p.t, Eval[bool](p, `matchMedia("(forced-colors: active)").matches`))
	bare := Eval[[]string](p, `[...document.querySelectorAll("button, .button")]
		.filter((e) => e.checkVisibility() && getComputedStyle(e).borderStyle === "none" && !e.closest("summary"))
		.map((e) => e.tagName + "#" + e.id + " " + e.innerText)`)
	assert.Empty(p.t, bare, address)
}

// forceColours shows pages as to somebody who chose the colours, "active", or
// did not, "none".
func (p *Page) forceColours(to string) {
	p.t.Helper()
	_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: to}},
	})
	require.NoError(p.t, err)
}
