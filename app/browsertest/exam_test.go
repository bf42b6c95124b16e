//go:build browser

package browsertest

import (
	"fmt"
	"net/url"
	"testing"
	"time"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/exam"
)

func examAt(plan exam.Plan) string { return "/exam?code=" + url.QueryEscape(plan.Code()) }

// focused is the id of the element that has the focus.
func (p *Page) focused() string {
	p.t.Helper()
	return Eval[string](p, `document.activeElement?.id ?? ""`)
}

// answerByKeys chooses option n of the question that lies open, by the arrows.
func (p *Page) answerByKeys(n int) {
	p.t.Helper()
	p.tabTo("#option-1")
	p.Press(" ")
	for range n - 1 {
		p.Press(kb.ArrowDown)
	}
	p.WaitTrue(fmt.Sprintf(`document.querySelector("#option-%d").checked && document.activeElement.id === "option-%d"`, n, n))
}

// A paper is begun from its code, sat by keyboard alone with a reload in the
// middle and the tab opened anew, and handed in; the report explains what was
// wrong.
func TestExamByKeyboard(t *testing.T) {
	plan := exam.Plan{Blueprint: "water", Questions: 10, Seed: 12, House: problems.Defaults}
	paper, err := exam.New(plan)
	require.NoError(t, err)
	p := New(t, Desk)
	p.Open("/exam")
	p.arrive("exam")
	p.tabTo("#exam-code")
	p.Press(plan.Code())
	p.Press(kb.Tab)
	require.Equal(t, "exam-again", p.focused())
	p.Press(kb.Enter)
	p.WaitText("#question", "Question 1 of 10")
	p.WaitText("#clock", "20 min left")

	const wrong, open = 3, 6 // counted from 0
	for i := range paper.Questions {
		q := &paper.Questions[i]
		p.WaitText("#question", fmt.Sprintf("Question %d of 10", i+1))
		p.WaitTrue(`document.activeElement.id === "question" || document.activeElement.id === "title" || document.activeElement === document.body`)
		switch i {
		case open:
			p.tabTo("#flag")
			p.Press(" ")
			p.WaitText("#sum", "1 to look at again")
		case wrong:
			p.answerByKeys(q.Right()%len(q.Options) + 1)
		default:
			p.answerByKeys(q.Right())
		}
		if i == 4 {
			p.WaitText("#sum", "5 of 10")
			p.Reload()
			p.arrive("exam")
			p.WaitText("#question", "Question 5 of 10")
			p.WaitTrue(fmt.Sprintf(`document.querySelector("#option-%d").checked`, q.Right()))
		}
		if i == 7 { // the page is left, and opened again from the start
			p.WaitText("#sum", "7 of 10")
			p.Open("/")
			p.arrive("start")
			p.Open("/exam")
			p.arrive("exam")
			p.WaitText("#exam-on", "7 of 10 answered")
			p.tabTo("#exam-on")
			p.Press(kb.Enter)
			p.WaitText("#question", "Question 8 of 10")
		}
		p.tabTo("#exam-next")
		p.Press(kb.Enter)
	}
	p.WaitText("#asking", "Hand in now?")
	assert.Contains(t, p.Text(".hand-in"), "9 of 10 answered")
	p.tabTo("#hand-in-now")
	p.Press(kb.Enter)
	p.WaitText("#title", "8 of 10 right")
	p.WaitText("#said", "Handed in")
	assert.Equal(t, 2, p.Count(".wrong-one"))
	assert.Equal(t, 1, p.Count(fmt.Sprintf("#wrong-%d", wrong+1)))
	assert.Contains(t, p.Text(fmt.Sprintf("#wrong-%d", open+1)), "nothing")
	assert.Equal(t, plan.Code(), p.Text("#its-code"))
	p.Fits()

	p.Reload()
	p.arrive("exam")
	p.WaitText("#title", "8 of 10 right")
	p.Click("#sit-again")
	p.WaitText("#question", "Question 1 of 10")
	assert.Contains(t, p.Text("#sum"), "0 of 10")
}

// When the time is over no answer is taken any more; one may hand in, or go
// on without the clock.
func TestExamTimeOver(t *testing.T) {
	plan := exam.Plan{Blueprint: "reasons", Questions: 10, Seed: 5, House: problems.Defaults}
	paper, err := exam.New(plan)
	require.NoError(t, err)
	right := paper.Questions[0].Right()
	p := New(t, Phone)
	p.Open(examAt(plan))
	p.arrive("exam")
	p.WaitTrue(fmt.Sprintf(`document.querySelector("#exam-code").value === %q`, plan.Code()))
	p.Click("#exam-again")
	p.WaitText("#question", "Question 1 of 10")
	p.Click(fmt.Sprintf(`label:has(#option-%d)`, right))
	p.WaitText("#sum", "1 of 10")
	p.Click("#clock-switch")
	p.WaitTrue(`document.querySelector("#clock").innerText === ""`)
	p.Click("#clock-switch")
	p.WaitText("#clock", "min left")

	p.agedBy(20*time.Minute - 3*time.Second)
	p.WaitText("#clock", "0:0")
	p.WaitText("#said", "The time is over")
	p.WaitText("#over", "The time is over")
	assert.Equal(t, "over", p.focused())
	assert.True(t, Eval[bool](p, `[...document.querySelectorAll("[name=answer]")].every((e) => e.disabled)`))
	p.Screenshot("exam-over")
	p.Click("#over-on")
	p.WaitText("#clock", "No clock")
	p.WaitTrue(`!document.querySelector("#option-1").disabled`)

	p.Click("#hand-in")
	p.Click("#hand-in-now")
	p.WaitText("#title", "1 of 10 right")
	assert.Contains(t, p.Text(".lead"), "without the clock")
}

// agedBy moves the start of the saved paper back and opens it anew.
func (p *Page) agedBy(d time.Duration) {
	p.t.Helper()
	Eval[bool](p, fmt.Sprintf(`(() => { const s = JSON.parse(localStorage.getItem("riserwork-exam")); s.began -= %d; localStorage.setItem("riserwork-exam", JSON.stringify(s)); return true; })()`, d.Milliseconds()))
	p.Reload()
	p.arrive("exam")
}

// A written paper: lines are kept as typed and marked line by line.
func TestExamWritten(t *testing.T) {
	plan := exam.Plan{Blueprint: "sums", Questions: 10, Written: true, Seed: 3, House: problems.Defaults}
	paper, err := exam.New(plan)
	require.NoError(t, err)
	p := New(t, Phone)
	p.Open(examAt(plan))
	p.arrive("exam")
	p.Click("#exam-again")
	right := 0
	for i := range paper.Questions {
		p.WaitText("#question", fmt.Sprintf("Question %d of 10", i+1))
		q := &paper.Questions[i]
		if q.Written && i > 0 {
			a := q.Problem.Answer()
			p.Type("#written", a.Text(a.Value))
			right++
		} else if q.Written {
			p.Type("#written", "999999 psi")
		}
		p.Click("#exam-next")
	}
	p.WaitText("#asking", "Hand in now?")
	p.Click("#hand-in-now")
	p.WaitText("#title", fmt.Sprintf("%d of 10 right", right))
	p.Fits()
}

func TestExamLooks(t *testing.T) {
	plan := exam.Plan{Blueprint: "water", Questions: 20, Seed: 7, House: problems.Defaults}
	paper, err := exam.New(plan)
	require.NoError(t, err)
	for _, size := range []Viewport{Phone, Desk, {"narrow", 320, 640, true}} {
		p := New(t, size)
		p.Open("/exam")
		p.arrive("exam")
		p.Fits()
		p.Screenshot("exam-start-" + size.Name)
		p.Open(examAt(plan))
		p.arrive("exam")
		p.Click("#exam-again")
		for i := range paper.Questions {
			p.WaitText("#question", fmt.Sprintf("Question %d of 20", i+1))
			p.Fits()
			p.big()
			if q := &paper.Questions[i]; i < 3 || q.Reason != nil && q.Reason.Drawing != nil {
				p.Screenshot(fmt.Sprintf("exam-question-%d-%s", i+1, size.Name))
			}
			p.Click(`label:has(#option-1)`)
			p.Click("#exam-next")
		}
		p.Click("#hand-in-now")
		p.WaitText("#title", "of 20 right")
		p.Fits()
		p.big()
		p.Screenshot("exam-report-" + size.Name)
		Eval[string](p, `(document.documentElement.dataset.theme = "dark")`)
		Eval[bool](p, `(document.querySelector(".wrong-one").scrollIntoView(), true)`)
		p.Screenshot("exam-report-dark-" + size.Name)
	}
}

// big checks that what can be tapped is 44 px high at least; links within a
// text are left out, as WCAG 2.2 (2023), 2.5.8, does.
func (p *Page) big() {
	p.t.Helper()
	small := Eval[[]string](p, `[...document.querySelectorAll("main button, main summary, main a, main label:has(input)")]
		.filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 43.9)
		.map((e) => e.tagName + "#" + e.id + " " + e.innerText + " " + e.getBoundingClientRect().height)`)
	assert.Empty(p.t, small)
}
