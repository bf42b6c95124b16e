//go:build browser

package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
)

func TestLinesOfOnesOwnOnAPhone(t *testing.T) {
	p := New(t, Phone)
	p.Open("/work?skill=floor-pressure&seed=12")
	p.arrive("work")
	d := p.problem()
	p.Click("#switch")
	p.WaitTrue(`new URLSearchParams(location.search).get("kind") === "lines"`)
	p.WaitTrue(`document.querySelectorAll(".line").length === 1`)
	p.Fits()
	p.Screenshot("free-empty-phone")

	p.Click("#foot-line")
	p.WaitFor(".pad .keys")
	p.tap(rightText(&d.Steps[0]))
	p.Click("#onward")
	p.WaitTrue(`document.activeElement.id === "line-1"`)
	p.tap(wrongText(d, 1, 0))
	p.Click("#onward")
	p.WaitTrue(`document.activeElement.id === "line-2"`)
	p.Reload()
	p.arrive("work")
	p.WaitTrue(`document.querySelectorAll(".line").length === 3 && document.querySelector("#line-1").value !== ""`)
	assert.Equal(t, rightText(&d.Steps[0]), plain(p.Value(box(0))), "kept as typed")

	p.Click(`.remove[data-line="2"]`)
	p.WaitTrue(`document.querySelectorAll(".line").length === 2`)
	p.Click(`.pad [aria-label="put the keys away"]`)
	p.Click("#foot-mark")
	p.WaitText(finding(0), "read as: "+d.Fill(d.Steps[0].Says, d.Env()))
	p.WaitText(finding(1), d.Fill(d.Steps[1].Wrongs[0].Next, d.Env()))
	p.Fits()
	p.Screenshot("free-marked-phone")
	p.show("#result")
	p.Screenshot("free-result-phone")
	p.Dark()
	p.show("#card-1")
	p.Screenshot("free-dark-phone")

	// A line that is said to be another is held against that one.
	last := len(d.Steps) - 1
	Eval[bool](p, fmt.Sprintf(`(() => { const e = document.querySelector("#tie-1"); e.value = "%d"; e.dispatchEvent(new Event("change")); return true; })()`, last))
	p.WaitTrue(fmt.Sprintf(`document.querySelector("#line-1").value.startsWith(%q)`, strings.ReplaceAll(d.Steps[last].Name, "_", " ")+": "))
	p.WaitText(finding(1), "read as: "+d.Fill(d.Steps[last].Says, d.Env()))
	p.Fits()
}

func TestLinesOfOnesOwnWithTheKeyboardAlone(t *testing.T) {
	p := New(t, Desk)
	p.Open("/work?skill=floor-pressure&seed=12&kind=lines")
	p.arrive("work")
	d := p.problem()
	p.tabTo(box(0))
	for i := range d.Steps {
		p.Press(rightText(&d.Steps[i]) + kb.Enter)
		p.WaitTrue(fmt.Sprintf(`document.activeElement.id === "line-%d"`, i+1))
	}
	p.Press(kb.Enter)
	p.WaitText("#result", "6 of 6 marks")
	p.Press(kb.Tab)
	p.Fits()
	p.Screenshot("free-desk")
	last := len(d.Steps)
	p.Click(box(last))
	p.Press(kb.Backspace)
	p.WaitTrue(fmt.Sprintf(`document.querySelectorAll(".line").length === %d && document.activeElement.id === "line-%d"`, last, last-1))
}

func TestFindTheMistake(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/work?skill=floor-pressure&seed=12&kind=mistake")
			p.arrive("work")
			d := p.problem()
			planted, ok := d.Plant(0)
			require.True(t, ok)
			p.Fits()
			p.Screenshot("mistake-" + size.Name)
			p.Click("#foot-look")
			p.WaitTrue(`document.activeElement.id === "find"`)
			other := (planted.Wrong + 1) % len(planted.Lines)
			p.Click(fmt.Sprintf("#planted-%d", other))
			p.WaitText("#said", "is not the first wrong line")
			p.Click(fmt.Sprintf("#planted-%d", planted.Wrong))
			p.WaitTrue(fmt.Sprintf(`document.activeElement.id === "line-%d"`, planted.Wrong))
			p.Screenshot("mistake-tapped-" + size.Name)

			p.Type(box(planted.Wrong), "987654321\n")
			p.WaitFor(finding(planted.Wrong) + " .word")
			assert.Zero(t, p.Count("#result"))
			p.Click("#onward")
			p.WaitTrue(fmt.Sprintf(`document.querySelector("#line-%d").value === ""`, planted.Wrong))
			p.Type(box(planted.Wrong), rightText(&d.Steps[planted.Wrong]))
			p.Reload()
			p.arrive("work")
			p.WaitTrue(fmt.Sprintf(`document.querySelector("#line-%d")?.value === %q`, planted.Wrong, rightText(&d.Steps[planted.Wrong])))
			p.Click("#foot-mark")
			p.WaitText("#result", "Found and put right")
			assert.NotEmpty(t, p.Text(".planted-why dd"))
			p.Fits()
			p.Screenshot("mistake-found-" + size.Name)
			p.show(".lines")
			p.Screenshot("mistake-why-" + size.Name)
			p.Dark()
			p.Screenshot("mistake-dark-" + size.Name)
			p.Click("#foot-another")
			p.WaitTrue(`new URLSearchParams(location.search).get("kind") === "mistake" && !document.querySelector("#result")`)
		})
	}
}

func TestChooseTheAnswer(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/work?skill=floor-pressure&seed=12&kind=choice")
			p.arrive("work")
			d := p.problem()
			options := d.Options()
			require.Equal(t, len(options), p.Count(".option"))
			p.Fits()
			p.Screenshot("choice-" + size.Name)
			wrong, right := -1, -1
			for i, o := range options {
				if o.Right {
					right = i
				} else {
					wrong = i
				}
			}
			p.Click(fmt.Sprintf("#answer-%d", wrong))
			p.WaitText(fmt.Sprintf("#answer-card-%d", wrong), nextOf(d, options[wrong]))
			p.Fits()
			p.Screenshot("choice-wrong-" + size.Name)
			p.Dark()
			p.Screenshot("choice-dark-" + size.Name)
			p.Click(fmt.Sprintf("#answer-%d", right))
			p.WaitText("#result", "That is the answer")
			p.WaitFor(".worked math")
			p.Fits()
			p.Screenshot("choice-right-" + size.Name)
			p.Reload()
			p.arrive("work")
			p.WaitText("#result", "That is the answer")

			p.Click(".scheme summary")
			p.WaitText(".scheme", "1 mark for the method")
			p.Fits()
			p.show(".scheme")
			p.Screenshot("scheme-" + size.Name)
			p.Click(".others summary")
			p.Click(`.others [data-kind="lines"]`)
			p.WaitTrue(`new URLSearchParams(location.search).get("kind") === "lines" && document.querySelector("#line-0")`)
		})
	}
}

// nextOf is how to see the slip of an option next time.
func nextOf(d *problems.Problem, o problems.Option) string {
	for _, w := range d.Steps[o.Step].Wrongs {
		if w.ID == o.Slip {
			return d.Fill(w.Next, d.Env())
		}
	}
	return o.Slip
}

func TestTheStartOffersTheKinds(t *testing.T) {
	p := New(t, Phone)
	p.Open("/")
	p.arrive("start")
	p.Click(".kinds summary")
	p.Fits()
	p.Screenshot("kinds-start-phone")
	p.Click(`.pick:has([value="mistake"])`)
	p.WaitText("#kinds", "find the mistake")
	p.choose("floor-pressure")
	p.arrive("work")
	p.WaitFor(".planted")
	p.Click(".planted")
	p.Open("/")
	p.arrive("start")
	p.WaitText(".next", "find the mistake")
	p.Click("#next")
	p.WaitFor(".planted")
}

func TestAMarkedLineIsTakenAway(t *testing.T) {
	p := New(t, Desk)
	p.Open("/work?skill=floor-pressure&seed=12&kind=lines")
	p.arrive("work")
	p.Type(box(0), "987 psi\n")
	p.WaitTrue(`document.activeElement.id === "line-1"`)
	p.Press("654 psi" + kb.Enter)
	p.WaitTrue(`document.activeElement.id === "line-2"`)
	p.Press(kb.Enter)
	p.WaitFor("#tie-1")
	p.Click(box(0))
	for p.Value(box(0)) != "" {
		p.Press(kb.Backspace)
	}
	p.Press("9" + kb.Backspace + kb.Backspace)
	p.WaitTrue(`document.querySelectorAll(".line").length === 2`)
	assert.Equal(t, "654 psi", p.Value(box(0)))
}
