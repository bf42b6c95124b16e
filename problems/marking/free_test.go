package marking_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
)

const freeSeeds = 15

// freeText is the sheet without its blanks: lines that were not written are
// not there.
func freeText(blanks []string) (lines []string, step []int) {
	for i, b := range blanks {
		if b != "" {
			lines, step = append(lines, b), append(step, i)
		}
	}
	return lines, step
}

func TestRightFreeWorkingIsNeverRefused(t *testing.T) {
	var refusals, done share
	t.Run("skills", func(t *testing.T) {
		for _, s := range skills.All() {
			t.Run(s.ID, func(t *testing.T) {
				t.Parallel()
				for _, h := range houses {
					for seed := range uint64(freeSeeds) {
						p, err := problems.New(s, seed, h)
						require.NoError(t, err)
						for k, w := range writings {
							l := w.learner
							l.rng = rand.New(rand.NewPCG(seed, uint64(k)))
							lines, _ := freeText(l.work(p, nil))
							r := marking.Lines(p, lines)
							bad := ""
							for _, f := range r.Lines {
								if refused(f.Verdict) && f.Verdict != marking.NotTied {
									bad = f.Text + " is " + string(f.Verdict)
								}
							}
							refusals.add(bad == "", "%s %s seed %d, %s: %s of %q", s.ID, h.System, seed, w.name, bad, lines)
							done.add(r.Done, "not done: %s %s seed %d, %s: %q", s.ID, h.System, seed, w.name, lines)
						}
					}
				}
			})
		}
	})
	t.Logf("right free sheets refused: %d of %d; not seen as done: %d", refusals.all-refusals.ok, refusals.all, done.all-done.ok)
	for _, m := range append(refusals.misses, done.misses...) {
		t.Log(m)
	}
	assert.Equal(t, refusals.all, refusals.ok)
	assert.Equal(t, done.all, done.ok)
}

// One slip on a free sheet, all lines in order.
func TestFreeSlipsAreNamed(t *testing.T) {
	var named share
	t.Run("skills", func(t *testing.T) {
		for _, s := range skills.All() {
			t.Run(s.ID, func(t *testing.T) {
				t.Parallel()
				for _, h := range houses {
					for seed := range uint64(freeSeeds) {
						p, err := problems.New(s, seed, h)
						require.NoError(t, err)
						for i := range p.Steps {
							for k := range p.Steps[i].Wrongs {
								freeSlip(&named, p, i, k, seed)
							}
						}
					}
				}
			})
		}
	})
	t.Logf("free sheets with one slip, named: %.2f %% of %d", named.percent(), named.all)
	for _, m := range named.misses {
		t.Log(m)
	}
	assert.GreaterOrEqual(t, named.percent(), 97.0)
}

func freeSlip(named *share, p *problems.Problem, i, k int, seed uint64) {
	w := &p.Steps[i].Wrongs[k]
	if v := w.Bound.Eval(p.Env()); math.IsNaN(v) || len(p.Steps[i].Choices) > 0 && (v < 0 || int(v) >= len(p.Steps[i].Choices)) {
		return
	}
	l := learner{write: figures(3), rng: rand.New(rand.NewPCG(seed, uint64(i*10+k)))}
	lines, _ := freeText(l.work(p, map[int]*problems.Wrong{i: w}))
	if slices.ContainsFunc(lines, func(s string) bool { return s == "NaN" || s == "NaN psi" }) {
		return
	}
	r := marking.Lines(p, lines)
	named.add(slices.Contains(r.Slips, w.ID), "%s %s seed %d: slip %s at %s: %q gives %v", p.Skill.ID, p.House.System, seed, w.ID, p.Steps[i].Name, lines, verdicts(r))
}

func verdicts(r marking.Result) []string {
	var out []string
	for _, f := range r.Lines {
		v := string(f.Verdict)
		for _, s := range f.Slips {
			v += "/" + s.ID
		}
		out = append(out, v)
	}
	return out
}
