//go:build browser

package browsertest

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/walk"
)

// heard is what the screen-reader tree of the page says, as one text.
func (p *Page) heard() string {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	tree, err := chromedp.Call(ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	require.NoError(p.t, err)
	var b strings.Builder
	for _, n := range tree.Nodes {
		var name string
		if n.Ignored || n.Name == nil || json.Unmarshal(n.Name.Value, &name) != nil {
			continue
		}
		b.WriteString(name + "\n")
	}
	return plain(b.String())
}

// aloud is an element that the screen reader speaks of by itself.
const aloud = "#said[role=status][aria-live=polite]"

func walkPath(size walk.Size, seed int) string {
	return fmt.Sprintf("/walk?size=%s&seed=%d&units=us&code=%s", size, seed, problems.Defaults.Code)
}

// The water is followed from the street round to the heater by the keyboard
// alone: arrow keys between stations, tab and Enter where a number is asked.
func TestFollowTheWaterByKeyboard(t *testing.T) {
	w, err := walk.New(walk.Middle, 1, problems.Defaults)
	require.NoError(t, err)
	p := New(t, Desk)
	p.Open(walkPath(walk.Middle, 1))
	p.arrive("walk")
	answered := 0
	for i := range w.Stations {
		s := &w.Stations[i]
		p.WaitText(".walk-strip", fmt.Sprintf("station %d of %d", i+1, len(w.Stations)))
		if i > 0 {
			p.WaitTrue(`new URLSearchParams(location.search).get("at") === "` + s.ID + `"`)
			assert.Contains(t, plain(p.Text(aloud)), plain(s.Why()), s.ID)
		}
		assert.Contains(t, plain(p.Text("#station")), plain(s.Device.Without), s.ID)
		if s.Turn && answered < 2 {
			assert.NotContains(t, plain(p.Text("#station")), plain(s.Line()), s.ID)
			p.tabTo("#walk-number")
			p.Press("1")
			p.Press(kb.Enter)
			p.WaitTrue(`document.querySelector("#walk-number").getAttribute("aria-invalid") === "true" && document.querySelector("#walk-finding .word")`)
			p.Press(kb.Backspace)
			for _, key := range strings.ReplaceAll(s.Value, "\u00a0", " ") {
				p.Press(string(key))
			}
			p.Press(kb.Enter)
			p.WaitTrue(`document.activeElement.id === "walk-next"`)
			answered++
		} else if s.Turn {
			assert.Contains(t, p.Text("#station"), "Your turn", s.ID)
			if i == len(w.Stations)-1 {
				break
			}
			p.Press(kb.ArrowRight)
			p.WaitText(".walk-strip", fmt.Sprintf("station %d of", i+2))
			p.Press(kb.ArrowLeft) // what was passed is told
		}
		p.WaitText(".walk-sum", strings.Split(s.Line(), " = ")[0])
		if i == 3 || s.ID == "top-still" {
			heard := p.heard()
			for _, text := range []string{s.Why(), s.Device.Without, s.Line(), s.Says} {
				assert.Contains(t, heard, plain(text), s.ID)
			}
		}
		p.Press(kb.ArrowRight)
	}
	assert.Equal(t, 2, answered)
	p.WaitTrue(`document.querySelector("#walk-next").disabled`)
	p.Screenshot("walk-end-desk")
	p.Fits()
}

// A number asked for is answered wrong, explained, and answered right; the
// link opens at its station; the list leads to any other; a wall shows it large.
func TestFollowTheWaterYourTurn(t *testing.T) {
	w, err := walk.New(walk.Small, 2, problems.Defaults)
	require.NoError(t, err)
	s := &w.Stations[w.Index("top-still")]
	p := New(t, Phone)
	p.Open("/walk")
	p.arrive("walk")
	p.WaitFor("#walk-start")
	p.Screenshot("walk-start-phone")
	p.Fits()
	p.Open(walkPath(walk.Small, 2) + "&at=top-still")
	p.arrive("walk")
	p.WaitText("#station h2", "Highest outlet")
	p.Screenshot("walk-turn-phone")
	p.Fits()

	step := &s.Sum.Steps[0]
	added := step.Text(step.Wrongs[0].Bound.Eval(s.Sum.Env()))
	p.fill("#walk-number", strings.ReplaceAll(added, "\u00a0", " "))
	p.Click("#walk-mark")
	p.WaitText("#walk-finding", "Up takes away")
	p.WaitText(aloud, "Going up, the water overhead")
	p.Screenshot("walk-wrong-phone")
	p.Fits()
	p.fill("#walk-number", strings.ReplaceAll(s.Value, "\u00a0", " "))
	p.Click("#walk-mark")
	p.WaitText(".walk-sum", strings.Split(s.Line(), " = ")[0])
	p.dark()
	p.Screenshot("walk-right-phone-dark")

	p.Click(".walk-list summary")
	p.Click("#stop-heater")
	p.WaitText("#station h2", "Heater")
	p.Reload()
	p.arrive("walk")
	p.WaitText("#station h2", "Heater")
	assert.Contains(t, p.Text("#station"), "Your turn")
	p.Fits()

	p.Resize(Desk)
	p.Click("#walk-wall")
	p.WaitFor(".page-walk.wall")
	p.WaitTrue(`new URLSearchParams(location.search).get("wall") === "1"`)
	p.Click("#walk-next")
	p.WaitText(".walk-sum", "140")
	p.Fits()
	p.Screenshot("walk-wall-desk-dark")
}
