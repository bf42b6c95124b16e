package problems_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// typed are the givens of a problem as somebody copies them from it.
func typed(p *problems.Problem, bare bool) []problems.Own {
	var own []problems.Own
	for i := range p.Told[:p.Constants] {
		t := &p.Told[i]
		text := t.Text
		if bare {
			text = t.Bare()
		}
		own = append(own, problems.Own{Name: t.Given, Text: text})
	}
	return own
}

// The givens of a drawn problem, put in by hand, give its answer, line by
// line, and the right working of it is not refused.
func TestDrawnGivensPutInByHand(t *testing.T) {
	for _, s := range skills.All() {
		t.Run(s.ID, func(t *testing.T) {
			for _, h := range houses {
				for seed := range uint64(6) {
					p, err := problems.New(s, seed, h)
					require.NoError(t, err)
					for _, bare := range []bool{false, true} {
						q, err := p.With(typed(p, bare))
						require.NoError(t, err, "%s seed %d", h.System, seed)
						for i := range p.Steps {
							require.InEpsilon(t, 1+p.Steps[i].Value, 1+q.Steps[i].Value, 1e-9, "%s seed %d, %s", h.System, seed, p.Steps[i].Name)
						}
						assert.Equal(t, p.AskText(), q.AskText())
						// The same numbers over another drawing.
						if q, err = problems.WithGivens(s, seed+1, h, typed(p, bare)); err == nil {
							require.InEpsilon(t, 1+p.Answer().Value, 1+q.Answer().Value, 1e-9, "%s seed %d over another", h.System, seed)
						}
					}
				}
			}
		})
	}
}

// Nothing that can be typed breaks it: a problem that can be worked and
// marked, or one sentence.
func TestNonsenseNumbers(t *testing.T) {
	words := []string{"", " ", "0", "-1", "−3 psi", "1e308", "1e-308", "NaN", "Inf", "red", "5 ft", "7 °C", "8'-10\"", "9999999", "1/0", "3,5", "½", strings.Repeat("9", 400), "40 gpm", "\x00", "1e9 psi"}
	taken, refused := 0, 0
	for _, s := range skills.All() {
		rng := rand.New(rand.NewPCG(7, 7))
		for _, h := range houses {
			for range 40 {
				p, err := problems.New(s, uint64(rng.IntN(5)), h)
				require.NoError(t, err)
				own := typed(p, true)
				for range 1 + rng.IntN(2) {
					k := rng.IntN(len(own))
					if own[k].Text = words[rng.IntN(len(words))]; rng.IntN(2) == 0 {
						own[k].Text = unit.Format(p.Told[k].Value*math.Exp(4*rng.Float64()-2), 3)
					}
				}
				q, err := p.With(own)
				if err != nil {
					var e *problems.OwnError
					require.True(t, errors.As(err, &e))
					require.NotEmpty(t, e.Says)
					require.NotContains(t, e.Says, "\n")
					require.NotContains(t, e.Says, "{")
					refused++
					continue
				}
				taken++
				r := marking.Blanks(q, q.Written())
				require.True(t, r.Done, "%s %s: %v %v", s.ID, h.System, own, q.Written())
				q.Worked()
			}
		}
	}
	t.Logf("%d taken, %d refused", taken, refused)
	assert.Greater(t, taken, 1000)
	assert.Greater(t, refused, 1000)
}

func TestWhatIsRefusedIsSaid(t *testing.T) {
	s, _ := skills.ByID("floor-pressure")
	for _, c := range []struct{ name, text, given, says string }{
		{"street", "red", "street", "“red” was read, and a number in psi or another unit of pressure was expected."},
		{"street", "5 ft", "street", "another unit of pressure was expected"},
		{"street", "", "street", "Nothing was read"},
		{"street", "9000 psi", "street", "0 psi to 1,500 psi was expected: no pipe of a building holds more."},
		{"floor_height", "-4 ft", "floor_height", "no building stands higher, nor a mountain"},
		{"street", "10 psi", "", "comes to −"},
		{"roof", "5 ft", "", "is no given of skill floor-pressure"},
	} {
		p, err := problems.New(s, 1, problems.House{System: unit.US})
		require.NoError(t, err)
		_, err = p.With([]problems.Own{{Name: c.name, Text: c.text}})
		var e *problems.OwnError
		require.ErrorAs(t, err, &e, c.text)
		assert.Equal(t, c.given, e.Given)
		assert.Contains(t, strings.ReplaceAll(e.Says, "\u00a0", " "), c.says)
		t.Log(e.Says)
	}
}
