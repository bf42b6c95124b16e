//go:build browser

package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestReloadKeepsTheLines(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	p.Type(box(0), " 80 + 6.5  ft")
	p.Type(box(2), "80 − ")
	p.Reload()
	p.arrive("work")
	p.WaitTrue(`document.querySelector("#line-0").value !== ""`)
	assert.Equal(t, " 80 + 6.5  ft", p.Value(box(0)), "as typed")
	assert.Empty(t, p.Value(box(1)))
	assert.Equal(t, "80 − ", p.Value(box(2)))

	p.Open("/")
	p.arrive("start")
	p.WaitText(".next", "2 of 3 lines written")
	p.Click("#next")
	p.arrive("work")
	p.WaitTrue(`document.querySelector("#line-2").value === "80 − "`)
}

func TestWorkOffline(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	p.Type(box(0), "7")
	p.WaitOffline()
	p.StopServer()
	p.Reload()
	p.arrive("work")
	p.WaitTrue(`document.querySelector("#line-0").value === "7"`)

	p.Open("/work?skill=floor-pressure&seed=77")
	p.arrive("work")
	d := p.problem()
	last := len(d.Steps) - 1
	p.Type(box(last), rightText(&d.Steps[last])+"\n")
	p.WaitText("#result", "marks")
	p.WaitText(finding(last), "Right")
}

func TestHouseRules(t *testing.T) {
	p := New(t, Desk)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	p.Type(box(0), "80")
	p.Click(`a[href="/house"]`)
	p.arrive("house")
	p.Fits()
	p.Click(`input[name="units"][value="metric"]`)
	p.WaitText("fieldset:has(#top-min)", "In kPa")
	p.Click(`input[name="code"][value="npc"]`)
	p.WaitText(".limits", "National Plumbing Code of Canada")
	p.Screenshot("house-desk")

	p.Open("/")
	p.arrive("start")
	p.Click("#next")
	p.arrive("work")
	p.WaitText(".notices", "keeps the house rules it was drawn with: US units")
	p.WaitText(".told", "psi")
	p.Click(`a[href="/"]`)
	p.arrive("start")
	p.choose("floor-pressure")
	p.WaitTrue(`location.search.includes("units=metric")`)
	p.WaitText(".told", "kPa")

	p.Open("/house")
	p.arrive("house")
	p.Type("#top-min", "9999")
	p.WaitText("#top-says", "was expected")
	p.Click(`input[name="theme"][value="dark"]`)
	p.WaitTrue(`getComputedStyle(document.body).backgroundColor === "rgb(15, 19, 22)"`)
	p.Screenshot("house-dark-desk")
}

func TestDamagedStorage(t *testing.T) {
	p := New(t, Phone)
	p.Open("/")
	p.arrive("start")
	Eval[bool](p, `["house", "open", "today", "look", "progress"].map((k, i) => localStorage.setItem("riserwork-" + k, ['{"version":1', '[7]', '{"version":77}', '"?"', '{"version":'][i])).length > 0`)
	p.Reload()
	p.arrive("start")
	p.WaitText(".notices", "your house rules could not be read")
	p.WaitText(".notices", "your open problems could not be read")
	p.WaitText(".notices", "today's work could not be read: it is of version 77")
	p.Fits()
	p.choose("floor-pressure")
	p.arrive("work")
	p.Type(box(0), "80 ft\n")
	p.WaitFor(finding(0) + " .word")
}

func TestLinksThatNameNothing(t *testing.T) {
	p := New(t, Phone)
	for path, says := range map[string]string{
		"/work":                                "names the skill",
		"/work?skill=x%3Cb%3E&seed=1":          "“x<b>”",
		"/work?skill=floor-pressure&seed=four": "whole number was expected",
	} {
		p.Open(path)
		p.arrive("work")
		p.WaitText("main", says)
		p.Fits()
	}
}

// What is tapped is at least 44 px high and wide, as WCAG 2.2 (2023),
// success criterion 2.5.5, asks.
func TestTargetsAreLargeEnough(t *testing.T) {
	p := New(t, Phone)
	for _, path := range addresses() {
		p.Open(path)
		p.WaitReady()
		if p.Count("#foot-line") > 0 {
			p.Click("#foot-line")
			p.WaitFor(".pad .keys")
			p.Click("#mark-line")
		}
		Eval[bool](p, `[...document.querySelectorAll("details")].map((d) => (d.open = true)).length >= 0`)
		small := Eval[[]string](p, `[...document.querySelectorAll("button, a, select, summary, label.tick, label.pick, input.box")]
			.filter((e) => e.checkVisibility() && !e.matches(".skip"))
			.filter((e) => { const r = e.getBoundingClientRect(); return r.height < 43.9 || r.width < 43.9; })
			.map((e) => e.tagName + "." + e.className + " " + e.textContent + " " + e.getBoundingClientRect().width + "x" + e.getBoundingClientRect().height)`)
		assert.Empty(t, small, path)
	}
}
