//go:build browser

package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatItWouldDo(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/work?skill=zone-valve-setting&seed=12")
			p.arrive("work")
			d := p.problem()
			at := 0
			for d.Steps[at].Would == nil || d.Steps[at].Unit.Name == "" {
				at++
			}
			p.Type(box(at), wrongText(d, at, 0))
			p.Click(`.pad [aria-label="put the keys away"]`)
			p.Click("#foot-mark")
			p.WaitText(".would h2", "What it would do")
			o, ok := d.OutcomeOf(at, d.Steps[at].Wrongs[0].Bound.Eval(d.Env()))
			require.True(t, ok)
			assert.NotEmpty(t, o.Says)
			assert.Greater(t, len(p.Text(".would p")), 20)
			p.Fits()
			p.Click(".would summary")
			p.WaitFor(".would svg")
			p.Fits()
			p.show(".would")
			p.Screenshot("would-" + size.Name)
			p.Dark()
			p.Screenshot("would-dark-" + size.Name)
		})
	}
}

// show brings an element to the top of the window, for pictures.
func (p *Page) show(css string) {
	p.t.Helper()
	Eval[bool](p, `(document.querySelector("`+css+`").scrollIntoView(), true)`)
}

// Dark shows the page in its dark colours.
func (p *Page) Dark() {
	p.t.Helper()
	Eval[string](p, `(document.documentElement.dataset.theme = "dark")`)
}
