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

// Outside check: axe-core, pinned in testdata/npm, finds nothing against
// WCAG 2.2, levels A and AA, on any page, light or dark.
func TestAxe(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join("..", "..", "testdata", "npm", "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		t.Log("axe-core is not there, so the pages are not looked at with it: make test installs it where node and npm are on the path")
		return
	}
	p := New(t, Phone)
	for _, address := range addresses() {
		p.Open(address)
		p.WaitReady()
		Eval[bool](p, string(axe)+"; true")
		for _, theme := range []string{"light", "dark"} {
			Eval[string](p, `(document.documentElement.dataset.theme = "`+theme+`")`)
			found := Eval[[]string](p, `axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] })
				.then((r) => r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target.join(" ") + " " + n.any.map((a) => a.message).join(" ")).slice(0, 3).join("; ")))`)
			assert.Empty(t, found, "%s, %s", address, theme)
		}
	}
}

// The narrowest phone, and text at twice its size: nothing is to be reached
// sideways only (WCAG 2.2, 1.4.4 and 1.4.10).
func TestNarrowAndLarge(t *testing.T) {
	p := New(t, Viewport{"narrow", 320, 640, true})
	for _, address := range addresses() {
		p.Open(address)
		p.WaitReady()
		p.Fits()
	}
	p.Resize(Phone)
	for _, address := range addresses() {
		p.Open(address)
		p.WaitReady()
		Eval[string](p, `(document.documentElement.style.fontSize = "200%")`)
		p.Fits()
	}
}

// Whoever chose colours of their own still sees what is tapped and where one is.
func TestForcedColours(t *testing.T) {
	p := New(t, Phone)
	p.forceColours()
	for _, address := range addresses() {
		p.Open(address)
		p.WaitReady()
		require.True(t, Eval[bool](p, `matchMedia("(forced-colors: active)").matches`))
		bare := Eval[[]string](p, `[...document.querySelectorAll("button, .button")]
			.filter((e) => e.checkVisibility() && getComputedStyle(e).borderStyle === "none" && !e.closest("summary"))
			.map((e) => e.tagName + "#" + e.id + " " + e.innerText)`)
		assert.Empty(t, bare, address)
	}
}

// forceColours shows pages as to somebody who chose the colours.
func (p *Page) forceColours() {
	p.t.Helper()
	_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: "active"}},
	})
	require.NoError(p.t, err)
}
