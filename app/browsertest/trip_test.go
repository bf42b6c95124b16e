//go:build browser

package browsertest

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// problem is the one that the address of the page names.
func (p *Page) problem() *problems.Problem {
	p.t.Helper()
	q, err := url.ParseQuery(strings.TrimPrefix(Eval[string](p, `location.search`), "?"))
	require.NoError(p.t, err)
	skill, ok := skills.ByID(q.Get("skill"))
	require.True(p.t, ok, "%v", q)
	seed, err := strconv.ParseUint(q.Get("seed"), 10, 64)
	require.NoError(p.t, err)
	drawn, err := problems.New(skill, seed, problems.Defaults)
	require.NoError(p.t, err)
	return drawn
}

// arrive waits for a page after a change of it.
func (p *Page) arrive(name string) {
	p.t.Helper()
	p.WaitFor(`html[data-ready][data-page="` + name + `"]`)
}

// choose taps a skill of the first chapter on the start page.
func (p *Page) choose(skill string) {
	p.t.Helper()
	p.Click("#chapter-1 summary")
	p.Click(`.skill[data-skill="` + skill + `"]`)
}

// plain is a value as it is typed: with a common space before its unit.
func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

func rightText(s *problems.Step) string { return plain(s.Text(s.Value)) }

func wrongText(d *problems.Problem, i, wrong int) string {
	s := &d.Steps[i]
	return plain(s.Text(s.Wrongs[wrong].Bound.Eval(d.Env())))
}

func box(i int) string { return fmt.Sprintf("#line-%d", i) }

func finding(i int) string { return fmt.Sprintf("#finding-%d", i) }

// tap writes a value with our own keys: its digits, then the key of the unit.
func (p *Page) tap(text string) {
	p.t.Helper()
	number, unit, _ := strings.Cut(text, " ")
	for _, r := range number {
		p.Click(`.keys [data-key="` + string(r) + `"]`)
	}
	if unit != "" {
		p.Click(`.pad [data-unit="` + unit + `"]`)
	}
}

// empty takes a line away with our own key.
func (p *Page) empty(i int) {
	p.t.Helper()
	for p.Value(box(i)) != "" {
		p.Click(`.keys [data-key="⌫"]`)
	}
}

func TestTripOnAPhone(t *testing.T) {
	p := New(t, Phone)
	p.Open("/")
	p.arrive("start")
	p.Fits()
	p.Screenshot("trip-start-phone")
	p.choose("floor-pressure")
	p.arrive("work")
	d := p.problem()
	assert.Equal(t, "title", Eval[string](p, `document.activeElement.id`), "the focus is on the heading")
	assert.Contains(t, plain(p.Text(".ask")), plain(d.AskText()))
	assert.NotZero(t, p.Count(".building svg [data-part]"), "the building is drawn")
	p.Fits()
	p.Screenshot("trip-question-phone")

	p.Click("#foot-line")
	p.WaitFor(".pad .keys")
	assert.Equal(t, "none", Eval[string](p, `document.querySelector("#line-0").inputMode`), "the device's keyboard stays away")
	p.tap(wrongText(d, 0, 0))
	p.Screenshot("trip-keys-phone")
	p.Click("#mark-line")
	w := d.Steps[0].Wrongs[0]
	p.WaitText(finding(0), d.Fill(w.Next, d.Env()))
	assert.Contains(t, plain(p.Text(finding(0))), plain(d.Fill(w.Did, d.Env())))
	p.Fits()
	p.Screenshot("trip-slip-phone")

	p.empty(0)
	p.tap(rightText(&d.Steps[0]))
	p.Click("#mark-line")
	p.WaitText(finding(0), "Right")
	for i := 1; i < len(d.Steps); i++ {
		p.WaitTrue(fmt.Sprintf(`document.activeElement.id === "line-%d"`, i))
		p.tap(rightText(&d.Steps[i]))
		p.Click("#mark-line")
	}
	p.WaitText("#result", "6 of 6 marks")
	p.Fits()
	p.Screenshot("trip-marks-phone")

	p.Click("#foot-another")
	p.WaitTrue(fmt.Sprintf(`location.search.includes("seed=%d&")`, d.Seed+1))
	p.WaitTrue(`document.querySelector("#line-0").value === "" && !document.querySelector("#result")`)
	assert.Empty(t, strings.TrimSpace(p.Text("#said")))
}

func TestTripWithTheKeyboardAlone(t *testing.T) {
	p := New(t, Desk)
	p.Open("/")
	p.arrive("start")
	p.Screenshot("trip-start-desk")
	p.tabTo("#chapter-1 summary")
	p.Press(kb.Enter)
	p.tabTo(`.skill[data-skill="floor-pressure"]`)
	p.Press(kb.Enter)
	p.arrive("work")
	d := p.problem()
	p.Fits()
	p.Screenshot("trip-question-desk")

	p.tabTo(box(0))
	last := len(d.Steps) - 1
	for i := range last {
		p.Press(rightText(&d.Steps[i]) + kb.Enter)
		p.WaitText(finding(i), "Right")
		p.WaitTrue(fmt.Sprintf(`document.activeElement.id === "line-%d"`, i+1))
	}
	p.Press(wrongText(d, last, 0) + kb.Enter)
	w := d.Steps[last].Wrongs[0]
	p.WaitText(finding(last), d.Fill(w.Next, d.Env()))
	p.Fits()
	p.Screenshot("trip-slip-desk")

	for p.Value(box(last)) != "" {
		p.Press(kb.Backspace)
	}
	p.Press(rightText(&d.Steps[last]) + kb.Enter)
	p.WaitText("#result", "6 of 6 marks")
	p.WaitTrue(`document.activeElement.id === "result"`)
	p.Screenshot("trip-marks-desk")
	p.tabTo("#another")
	p.Press(kb.Enter)
	p.WaitTrue(fmt.Sprintf(`location.search.includes("seed=%d&")`, d.Seed+1))
	p.WaitTrue(`document.activeElement.id === "title"`)
}

// tabTo presses tab until an element has the focus.
func (p *Page) tabTo(css string) {
	p.t.Helper()
	for range 80 {
		p.Press(kb.Tab)
		if Eval[bool](p, `document.activeElement.matches(`+strconv.Quote(css)+`)`) {
			return
		}
	}
	require.FailNow(p.t, "the tab key does not lead to "+css)
}

func TestHintsAndTheFullWorking(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	d := p.problem()
	p.Click(box(1))
	p.Click(`.tools .link[data-line="1"]`)
	p.WaitText(".hint", "Look for this line")
	p.WaitText("#card-1 .aside", "Try the line")
	p.Type(box(1), "1 psi")
	p.Click(`.tools .link[data-line="1"]`)
	p.WaitTrue(`document.querySelectorAll(".hint").length === 2`)
	p.Click(`.pad [aria-label="put the keys away"]`)
	p.Click("#foot-mark")
	p.WaitFor("#result")
	p.Click("#compare")
	p.WaitTrue(fmt.Sprintf(`document.querySelectorAll(".worked math").length >= %d`, len(d.Steps)))
	assert.Equal(t, "http://www.w3.org/1998/Math/MathML", Eval[string](p, `document.querySelector(".worked math").namespaceURI`))
	for i, l := range d.Worked() {
		assert.Contains(t, plain(p.Text(fmt.Sprintf(".worked li:nth-child(%d)", i+1))), plain(l.Value))
	}
	p.Fits()
	p.Screenshot("trip-worked-phone")
}

func TestTheDevicesOwnKeyboard(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	p.Click("#foot-line")
	p.Click(".swap")
	p.WaitTrue(`document.querySelector("#line-0").inputMode === "text" && document.querySelector(".keys").hidden`)
	p.Fits()
	p.Reload()
	p.arrive("work")
	assert.Equal(t, "text", Eval[string](p, `document.querySelector("#line-0").inputMode`), "the choice is kept")
}

func TestTheMixGoesOnToAnotherSkill(t *testing.T) {
	p := New(t, Phone)
	p.Open("/")
	p.arrive("start")
	p.Click(".mix summary")
	p.Click(`.tick:has([value="1"])`)
	p.WaitText("#mix", "these chapters")
	p.Click("#mix")
	p.arrive("work")
	p.WaitTrue(`new URLSearchParams(location.search).get("mix") === "1"`)
	first := p.problem().Skill
	assert.Equal(t, 1, first.Chapter)
	p.Open("/work?skill=floor-pressure&seed=12&mix=1")
	p.arrive("work")
	d := p.problem()
	last := len(d.Steps) - 1
	p.Type(box(last), rightText(&d.Steps[last])+"\n")
	p.WaitFor("#result")
	p.Click("#foot-mix")
	p.WaitTrue(`new URLSearchParams(location.search).get("skill") !== "floor-pressure"`)
	assert.Equal(t, 1, p.problem().Skill.Chapter)
}

// Every problem must fit on a phone, with the keys up and with every line
// marked wrong.
func TestEverySkillFits(t *testing.T) {
	p := New(t, Phone)
	p.Open("/")
	p.arrive("start")
	for _, skill := range skills.All() {
		for _, house := range []string{"units=us&code=shop", "units=mixed&code=npc"} {
			Eval[bool](p, `goappNav("/work?skill=`+skill.ID+`&seed=5&`+house+`") ?? true`)
			p.WaitText("h1", skill.Title)
			p.WaitTrue(`location.search.includes("skill=` + skill.ID + `&") && !document.querySelector("#result") && document.querySelector(".line")`)
			p.Fits()
			Eval[bool](p, `(() => { for (const e of document.querySelectorAll("input.box")) { e.value = "987654321.5 psi"; e.dispatchEvent(new Event("input")); }
				if (!document.querySelector("input.box")) document.querySelector(".choice").click();
				return true; })()`)
			p.WaitTrue(`(() => {
				const mark = document.querySelector("#foot-mark"), away = document.querySelector('.pad [aria-label="put the keys away"]');
				(mark ?? away)?.click();
				return mark !== null;
			})()`)
			p.WaitFor("#result")
			p.Fits()
			p.Click("#foot-line")
			p.WaitTrue(`document.querySelector(".pad") || document.activeElement.matches(".choice")`)
			p.Fits()
			if t.Failed() {
				require.FailNow(t, skill.ID+" does not fit, "+house)
			}
		}
	}
}
