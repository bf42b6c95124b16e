//go:build browser

package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/paper"
)

// writePart writes the lines of the part that lies open, from the numbers
// that the page has carried into it, and marks it.
func (p *Page) writePart(x *problems.Problem) {
	p.t.Helper()
	for i := range x.Steps {
		s := &x.Steps[i]
		if len(s.Choices) > 0 {
			p.Click(fmt.Sprintf(`#card-%d [data-word=%q]`, i, s.Choices[int(s.Value)]))
			continue
		}
		p.fill(fmt.Sprintf("#line-%d", i), strings.ReplaceAll(s.Text(s.Value), "\u00a0", " "))
	}
	p.Click("#foot-mark, #onward")
	p.WaitFor("#result")
}

// A paper is worked part by part, with a wrong answer carried along and a
// reload in the middle; at the end stands a report.
func TestPaperPartByPart(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			whole, err := paper.New(paper.MidRise, 3, problems.Defaults)
			require.NoError(t, err)
			p := New(t, size)
			p.Open("/paper")
			p.arrive("paper")
			p.Screenshot("paper-start-" + size.Name)
			p.Fits()
			p.Open("/paper?size=mid-rise&seed=3&units=us&code=" + problems.Defaults.Code)
			p.arrive("paper")
			assert.Equal(t, len(whole.Parts), p.Count(".part-key"))
			p.WaitText("#part", fmt.Sprintf("Part 1 of %d", len(whole.Parts)))
			p.Screenshot("paper-first-" + size.Name)
			p.Fits()

			first := &whole.Parts[0]
			wrong := "999 ft" // the height, carried into what follows
			p.fill(fmt.Sprintf("#line-%d", len(first.Steps)-1), wrong)
			p.Click("#foot-mark, #onward")
			p.WaitText("#result", "0 of")
			p.Click("#part-1")
			p.WaitText("#part", "Part 2 of")
			p.writePart(whole.Parts[1].Problem)
			p.WaitText("#result", "8 of 8")
			p.Screenshot("paper-part-" + size.Name)

			p.Reload()
			p.arrive("paper")
			p.WaitText("#part", "Part 2 of")
			assert.Equal(t, "good", p.attribute("#part-1", "data-tone"))
			p.Click("#part-0")
			p.WaitText("#part", "Part 1 of")
			assert.Equal(t, wrong, p.Value(fmt.Sprintf("#line-%d", len(first.Steps)-1)))

		})
	}
}

// attribute is an attribute of the first element found.
func (p *Page) attribute(css, name string) string {
	p.t.Helper()
	p.WaitFor(css)
	return Eval[string](p, fmt.Sprintf(`document.querySelector(%q).getAttribute(%q)`, css, name))
}
