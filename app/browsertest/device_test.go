//go:build browser

package browsertest

import (
	"fmt"
	"strconv"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/draw"
	"riserwork/problems/devices"
)

// asked opens a question of a kind and gives it as the data has it.
func (p *Page) asked(kind devices.Kind, word string, seed uint64) *devices.Question {
	p.t.Helper()
	p.Open("/reason?kind=" + word + "&seed=" + strconv.FormatUint(seed, 10))
	p.WaitReady()
	q := devices.New(kind, seed)
	p.WaitText("h1", q.Ask)
	return q
}

// keyed is the part of the drawing with a key.
func keyed(key string) string { return `svg [data-key="` + key + `"]` }

// pickOf is the place of a drawing that is right, or one that is not.
func pickOf(t *testing.T, q *devices.Question, right bool) draw.Pick {
	t.Helper()
	for _, pick := range draw.Picks(q.Drawing, q.Kind == devices.Place) {
		for _, s := range q.Places {
			if right && s == pick.Spot {
				return pick
			}
		}
		if !right && q.Kind == devices.Place && !q.Put(pick.Spot).Right || !right && q.Kind == devices.Wrong && !q.Mark(pick.Spot).Right {
			return pick
		}
	}
	require.FailNow(t, "no such place")
	return draw.Pick{}
}

// tapAt taps the middle of an element, scrolled into view.
func (p *Page) tapAt(css string) {
	p.t.Helper()
	Eval[bool](p, `(document.querySelector(`+strconv.Quote(css)+`).scrollIntoView({ block: "center" }), true)`)
	p.Click(css)
}

func (p *Page) focusOn(css string) {
	p.t.Helper()
	Eval[bool](p, `(document.querySelector(`+strconv.Quote(css)+`).focus(), true)`)
}

func (p *Page) reasoned() string {
	p.t.Helper()
	p.WaitFor("#verdict-word")
	return p.Text("#verdict-word")
}

func TestPlaceADeviceByTouch(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			q := p.asked(devices.Place, "place", 3)
			p.tapAt(keyed(pickOf(t, q, false).Key))
			p.WaitFor(`svg [data-state="marked"]`)
			right := pickOf(t, q, true)
			p.tapAt(keyed(right.Key))
			p.WaitText("#said", right.Says)
			p.Fits()
			p.Click("#check")
			assert.Contains(t, p.reasoned(), "✓ Right")
			p.Screenshot("reason-place-" + size.Name)
			p.dark()
			p.Screenshot("reason-place-dark-" + size.Name)
			p.Click("#next")
			p.WaitTrue(`!document.querySelector("#verdict-word")`)
			assert.Contains(t, Eval[string](p, `location.search`), "kind=place")
		})
	}
}

// The keys reach the gaps of the drawing, and the list that is its twin.
func TestPlaceADeviceByKeyboard(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			q := p.asked(devices.Place, "place", 4)
			p.focusOn("#title")
			p.Press(kb.Tab)
			first := Eval[string](p, `document.activeElement.dataset.key`)
			assert.Equal(t, draw.Picks(q.Drawing, true)[0].Key, first)
			p.Press(kb.Enter)
			p.WaitFor(`svg [data-state="marked"]`)
			p.Click("#as-list")
			picks := draw.Picks(q.Drawing, true)
			right := pickOf(t, q, true)
			for i, pick := range picks {
				if pick.Key == right.Key {
					p.focusOn("#pick-" + strconv.Itoa(i))
				}
			}
			p.Press(kb.Enter)
			p.WaitText("#said", right.Says)
			p.focusOn("#check")
			p.Press(kb.Enter)
			assert.Contains(t, p.reasoned(), "✓ Right")
			p.WaitTrue(`document.activeElement.id === "verdict"`)
		})
	}
}

func TestMarkAFaultByTouch(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			q := p.asked(devices.Wrong, "wrong", 12)
			p.Screenshot("reason-wrong-" + size.Name)
			place := pickOf(t, q, true)
			p.tapAt(keyed(place.Key))
			p.WaitText("#said", place.Says)
			for i, o := range q.Options {
				if o.Right {
					p.tapAt("#option-" + strconv.Itoa(i))
				}
			}
			p.Fits()
			p.Click("#check")
			assert.Contains(t, p.reasoned(), "✓ Right")
			assert.Contains(t, p.Text("#verdict"), q.Fault.Then)
			p.Screenshot("reason-wrong-done-" + size.Name)
		})
	}
}

// A place that is not wrong and a reason that is right are judged apart; the
// fault is marked in the drawing.
func TestMarkAFaultByKeyboard(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			q := p.asked(devices.Wrong, "wrong", 7)
			p.focusOn(keyed(pickOf(t, q, false).Key))
			p.Press(" ")
			p.WaitFor(`svg [data-state="marked"]`)
			for i, o := range q.Options {
				if o.Right {
					p.focusOn("#option-" + strconv.Itoa(i))
				}
			}
			p.Press(kb.Enter)
			p.WaitFor("#check:not([hidden])")
			p.focusOn("#check")
			p.Press(kb.Enter)
			assert.Contains(t, p.reasoned(), "✗ Not right")
			assert.Contains(t, p.Text("#verdict"), "✗ The place")
			assert.Contains(t, p.Text("#verdict"), "✓ The reason")
			assert.Equal(t, len(q.Places), p.Count(`svg [data-state="right"]`))
			p.dark()
			p.Screenshot("reason-wrong-dark-" + size.Name)
		})
	}
}

func TestOrderByTouch(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			q := p.asked(devices.Order, "order", 2)
			for n, text := range q.Right {
				p.tapAt(fmt.Sprintf("#item-%d", indexIn(q.Items, text)))
				p.WaitTrue(fmt.Sprintf(`document.querySelectorAll("#ordered li").length === %d`, n+1))
			}
			p.Fits()
			p.Click("#check")
			assert.Contains(t, p.reasoned(), "✓ Right")
			p.Screenshot("reason-order-" + size.Name)
		})
	}
}

// Items are put in with the keys, and moved with the buttons up and down.
func TestOrderByKeyboard(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			q := p.asked(devices.Sequence, "flow", 5)
			order := append([]string{q.Right[1], q.Right[0]}, q.Right[2:]...)
			for n, text := range order {
				p.focusOn(fmt.Sprintf("#item-%d", indexIn(q.Items, text)))
				p.Press(kb.Enter)
				p.WaitTrue(fmt.Sprintf(`document.querySelectorAll("#ordered li").length === %d`, n+1))
			}
			p.WaitTrue(`document.activeElement.id === "check"`)
			p.focusOn("#down-0")
			p.Press(kb.Enter)
			p.WaitText("#said", q.Right[1]+" is now 2.")
			p.WaitTrue(`document.activeElement.id === "down-1"`)
			p.focusOn("#check")
			p.Press(kb.Enter)
			assert.Contains(t, p.reasoned(), "✓ Right")
		})
	}
}

func indexIn(list []string, text string) int {
	for i, s := range list {
		if s == text {
			return i
		}
	}
	return -1
}

// Each kind opens, fits both sizes, is answered with one tap where it is one
// to choose, and leads to the number behind it.
func TestEveryKindOfReasoningFits(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk, {"narrow", 320, 640, true}} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			for word, kind := range map[string]devices.Kind{"missing": devices.Missing, "purpose": devices.Purpose, "without": devices.Without, "right": devices.Sound, "decide": devices.Decide, "place": devices.Place, "wrong": devices.Wrong} {
				q := p.asked(kind, word, 9)
				p.Fits()
				small := Eval[[]string](p, `[...document.querySelectorAll("main button, .bar button, .bar a, main summary")].filter((e) => e.checkVisibility() && (e.getBoundingClientRect().height < 43.5 || e.getBoundingClientRect().width < 43.5)).map((e) => e.id + e.innerText)`)
				assert.Empty(t, small, "too small to tap: %s", word)
				p.Screenshot("reason-" + word + "-" + size.Name)
				if len(q.Options) == 0 || kind == devices.Wrong {
					continue
				}
				wrong := 0
				for i, o := range q.Options {
					if !o.Right {
						wrong = i
					}
				}
				p.tapAt("#option-" + strconv.Itoa(wrong))
				assert.Contains(t, p.reasoned(), "✗ Not right")
				assert.Contains(t, p.Text("#verdict"), "Right is: ")
				p.Fits()
			}
		})
	}
}

// The number behind a consequence can be worked; a card leads to the cards of
// its neighbours in the drawing.
func TestDeviceCard(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/device")
			p.WaitReady()
			p.Fits()
			p.Click("summary")
			p.Screenshot("devices-" + size.Name)
			p.Click(`.signs a[href*="id=meter"]`)
			p.WaitText("h1", "Water meter")
			p.Fits()
			p.Screenshot("device-" + size.Name)
			p.tapAt(`details[open] svg [data-device="backflow-preventer"]`)
			p.WaitText("h1", "Reduced-pressure backflow preventer")
			p.focusOn(`details[open] svg [data-device="main-valve"]`)
			p.Press(kb.Enter)
			p.WaitText("h1", "Main shut-off valve")
			p.Open("/device?id=restraint")
			p.WaitText("h1", "Joint restraint")
			p.dark()
			p.Screenshot("device-dark-" + size.Name)
			p.Click("#work-it")
			p.WaitFor("#line-0")
			p.Open("/device?id=nothing")
			p.WaitText(".fault", "not here")
		})
	}
}
