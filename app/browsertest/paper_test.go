//go:build browser

package browsertest

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/paper"
)

// writePart writes the lines of the part that lies open and marks it.
func (p *Page) writePart(x *problems.Problem, lines []string) {
	p.t.Helper()
	for i, text := range lines {
		switch {
		case text == "":
		case len(x.Steps[i].Choices) > 0:
			p.Click(fmt.Sprintf(`#card-%d [data-word=%q]`, i, text))
		default:
			p.fill(box(i), text)
		}
	}
	// The keys stand where the foot does, until they are put away.
	p.WaitTrue(`(() => {
		const mark = document.querySelector("#foot-mark"), away = document.querySelector('[aria-label="put the keys away"]');
		(mark ?? away)?.click();
		return mark !== null;
	})()`)
	p.WaitFor("#result")
}

// rightLines are the lines of a part as it is judged.
func rightLines(x *problems.Problem) (lines []string) {
	for i := range x.Steps {
		lines = append(lines, strings.ReplaceAll(x.Steps[i].Text(x.Steps[i].Value), "\u00a0", " "))
	}
	return lines
}

// walkUp is a short paper whose second part rests on its first.
func walkUp(t *testing.T) *paper.Paper {
	t.Helper()
	for seed := uint64(1); seed < 50; seed++ {
		p, err := paper.New(paper.WalkUp, seed, problems.Defaults)
		require.NoError(t, err)
		if len(p.Parts[1].From) > 0 && p.Parts[1].From[0].Part == 0 && len(p.Parts) <= 11 {
			return p
		}
	}
	require.FailNow(t, "no such paper was found")
	return nil
}

// A short paper is worked to its report: its first answer is wrong and carried
// on, its third part is skipped and come back to, and the page is loaded again
// in the middle. The link of the report opens the same paper.
func TestPaperToItsReport(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			whole := walkUp(t)
			n := len(whole.Parts)
			work := make([][]string, n)
			p := New(t, size)
			p.Open("/paper")
			p.arrive("paper")
			p.WaitFor("#paper-start")
			p.look("paper-start-" + size.Name)
			p.Open(fmt.Sprintf("/paper?size=walk-up&seed=%d&units=us&code=%s", whole.Seed, problems.Defaults.Code))
			p.arrive("paper")
			p.WaitText("#part", fmt.Sprintf("Part 1 of %d", n))
			assert.Equal(t, n, p.Count(".part-key"))
			p.look("paper-first-" + size.Name)

			first := whole.Parts[0].Problem
			work[0] = make([]string, len(first.Steps))
			work[0][len(first.Steps)-1] = strings.ReplaceAll(first.Answer().Text(first.Answer().Value+7.3), "\u00a0", " ")
			lost := whole.Mark(work, paper.Blanks).Parts[0]
			p.writePart(first, work[0])
			p.WaitText("#result", fmt.Sprintf("%d of %d marks", lost.Marks, lost.Of))
			assert.Equal(t, "bad", p.attribute("#part-0", "data-tone"))
			p.look("paper-wrong-" + size.Name)

			for k := 1; k < n; k++ {
				p.Click("#foot-part")
				p.WaitText("#part", fmt.Sprintf("Part %d of", k+1))
				if k == 2 { // skipped
					continue
				}
				marked := whole.Mark(work, paper.Blanks)
				work[k] = rightLines(marked.Parts[k].Judged)
				p.writePart(marked.Parts[k].Judged, work[k])
				p.WaitText("#result", fmt.Sprintf("%d of %[1]d marks", marked.Parts[k].Of))
				assert.Equal(t, "good", p.attribute(fmt.Sprintf("#part-%d", k), "data-tone"))
				switch k {
				case 1:
					p.WaitText(".lines", "Right on your own number from part 1.")
					p.WaitText("#result", "lost its marks there")
					p.look("paper-follow-" + size.Name)
				case n / 2:
					p.Reload()
					p.arrive("paper")
					p.WaitText("#part", fmt.Sprintf("Part %d of", k+1))
					p.WaitText("#result", "marks")
					assert.Equal(t, "good", p.attribute("#part-1", "data-tone"))
				}
			}
			require.Zero(t, p.Count("#foot-report"), "a part is not marked yet")
			p.Click("#foot-part")
			p.WaitText("#part", "Part 3 of")
			marked := whole.Mark(work, paper.Blanks)
			work[2] = rightLines(marked.Parts[2].Judged)
			p.writePart(marked.Parts[2].Judged, work[2])
			p.Click("#foot-report")
			want := whole.Mark(work, paper.Blanks)
			p.WaitText("#report", fmt.Sprintf("%d of %d marks", want.Marks, want.Of))
			assert.Equal(t, whole.Of()-lost.Of+lost.Marks, want.Marks, "the wrong answer lost its marks once")
			p.look("paper-report-" + size.Name)

			listed := map[string]bool{}
			for _, e := range p.logged() {
				listed[e.Skill] = true
			}
			assert.True(t, listed["fixture-height"] && listed["reach-with-losses"], "parts are in the record")
			assert.False(t, listed["need-of-boost"], "which is no skill of the catalogue")

			p.Click("#paper-link")
			p.WaitText("#part", "Part 3 of")
			assert.Contains(t, p.Text(".task .ask"), whole.Says)
			assert.Equal(t, "good", p.attribute("#part-2", "data-tone"))
		})
	}
}

// look takes pictures of the window, light and dark, and checks that it fits.
func (p *Page) look(name string) {
	p.t.Helper()
	p.Fits()
	p.Screenshot(name)
	if os.Getenv("SHOTS") == "" {
		return
	}
	p.Dark()
	p.Screenshot(name + "-dark")
	Eval[bool](p, `delete document.documentElement.dataset.theme`)
}

// Another paper leaves the one before it where it was.
func TestPapersAreKept(t *testing.T) {
	p := New(t, Phone)
	for seed := 1; seed <= 2; seed++ {
		p.Open(fmt.Sprintf("/paper?size=walk-up&seed=%d&units=us&code=%s", seed, problems.Defaults.Code))
		p.arrive("paper")
		p.WaitText("#part", "Part 1 of")
		p.fill(box(0), fmt.Sprintf("%d ft", seed))
	}
	p.Open("/paper")
	p.arrive("paper")
	p.WaitFor("#paper-on-1")
	p.look("paper-begun-phone")
	p.Click("#paper-on-1")
	p.WaitText("#part", "Part 1 of")
	assert.Equal(t, "1 ft", p.Value(box(0)))
}

// attribute is an attribute of the first element found.
func (p *Page) attribute(css, name string) string {
	p.t.Helper()
	p.WaitFor(css)
	return Eval[string](p, fmt.Sprintf(`document.querySelector(%q).getAttribute(%q)`, css, name))
}
