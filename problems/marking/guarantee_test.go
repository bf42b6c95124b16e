package marking_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

var houses = []problems.House{
	{System: unit.US, Code: "shop"}, {System: unit.Metric, Code: "npc"}, {System: unit.Mixed, Code: "npc"},
}

// writings are the ways that right working is written.
var writings = []struct {
	name string
	learner
}{
	{"full precision", learner{write: full, unrounded: true}},
	{"three figures", learner{write: figures(3)}},
	{"three figures, calculator's memory", learner{write: figures(3), unrounded: true}},
	{"whole units", learner{write: whole}},
	{"whole units, calculator's memory", learner{write: whole, unrounded: true}},
	{"other unit", learner{write: figures(4), other: true}},
	{"constant variants", learner{write: figures(3), variant: true}},
	{"decimal comma", learner{write: figures(4), comma: true}},
	{"every second line", learner{write: figures(3), merge: 2}},
	{"answer only", learner{write: figures(3), only: true}},
	{"answer only, full precision", learner{write: full, only: true}},
	{"answer only, whole units", learner{write: whole, only: true}},
	{"whole expression", learner{write: figures(3), expr: true}},
	{"whole expression, variants", learner{write: whole, expr: true, variant: true}},
	{"whole expression, full precision", learner{write: full, expr: true, unrounded: true}},
	{"cut off", learner{write: cut}},
	{"mixed", learner{write: mixed}},
	{"whole units at every size", learner{write: everyWhole}},
}

// refused is a verdict that right working must never get.
func refused(v marking.Verdict) bool {
	return !v.Good() && v != marking.Empty || v == marking.FollowThrough
}

const rightSeeds = 40

func TestRightWorkingIsNeverRefused(t *testing.T) {
	for _, s := range skills.All() {
		t.Run(s.ID, func(t *testing.T) {
			t.Parallel()
			for _, h := range houses {
				for seed := range uint64(rightSeeds) {
					p, err := problems.New(s, seed, h)
					require.NoError(t, err)
					for k, w := range writings {
						l := w.learner
						l.rng = rand.New(rand.NewPCG(seed, uint64(k)))
						lines := l.work(p, nil)
						r := marking.Blanks(p, lines)
						for i, f := range r.Lines {
							require.False(t, refused(f.Verdict), "%s %s seed %d, %s: %s: %q is %s, right is %v: %s", s.ID, h.System, seed, w.name, p.Steps[i].Name, f.Text, f.Verdict, p.Steps[i].Value, f.Says)
						}
						require.True(t, r.Done, "%s seed %d, %s", h.System, seed, w.name)
					}
				}
			}
		})
	}
}

// share counts how often something was as it should be, over all skills.
type share struct {
	mu      sync.Mutex
	ok, all int
	misses  []string
}

func (s *share) add(ok bool, format string, args ...any) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.all++
	if ok {
		s.ok++
	} else if len(s.misses) < 25 {
		s.misses = append(s.misses, fmt.Sprintf(format, args...))
	}
}

func (s *share) percent() float64 { return 100 * float64(s.ok) / math.Max(1, float64(s.all)) }

const slipSeeds = 200

// Every slip of every skill is named when its value stands on its own line,
// with the right lines before it.
func TestEverySlipIsNamed(t *testing.T) {
	var named share
	t.Run("skills", func(t *testing.T) {
		for _, s := range skills.All() {
			t.Run(s.ID, func(t *testing.T) {
				t.Parallel()
				for _, h := range houses {
					for seed := range uint64(slipSeeds) {
						p, err := problems.New(s, seed, h)
						require.NoError(t, err)
						for i := range p.Steps {
							for k := range p.Steps[i].Wrongs {
								nameSlip(&named, p, i, k, seed)
							}
						}
					}
				}
			})
		}
	})
	t.Logf("slips named: %.3f %% of %d", named.percent(), named.all)
	for _, m := range named.misses {
		t.Log(m)
	}
	assert.GreaterOrEqual(t, named.percent(), 99.0)
}

func nameSlip(named *share, p *problems.Problem, i, k int, seed uint64) {
	w := &p.Steps[i].Wrongs[k]
	ways := []learner{{write: figures(3)}, {write: whole}, {write: figures(4)}, {write: mixed}}
	l := ways[seed%uint64(len(ways))]
	l.rng = rand.New(rand.NewPCG(seed, uint64(i*10+k)))
	v := w.Bound.Eval(p.Env())
	if math.IsNaN(v) || math.Abs(v) < 1e-9 || len(p.Steps[i].Choices) > 0 && (v < 0 || int(v) >= len(p.Steps[i].Choices)) {
		return
	}
	lines := l.work(p, map[int]*problems.Wrong{i: w})
	f := marking.Blanks(p, lines[:i+1]).Lines[i]
	ok := f.Verdict == marking.Slip
	if ok {
		ok = false
		for _, s := range f.Slips {
			ok = ok || s.ID == w.ID
		}
	}
	named.add(ok, "%s %s seed %d: slip %s at %s written %q is %s %v (right %v): %s", p.Skill.ID, p.House.System, seed, w.ID, p.Steps[i].Name, lines[i], f.Verdict, ids(f), p.Steps[i].Value, f.Says)
}

func ids(f marking.Finding) []string {
	var out []string
	for _, s := range f.Slips {
		out = append(out, s.ID)
	}
	return out
}

// Unrelated wrong numbers must not be called a slip.
func TestUnrelatedNumbersAreNotAccused(t *testing.T) {
	var decimal, count share
	t.Run("skills", func(t *testing.T) {
		for _, s := range skills.All() {
			t.Run(s.ID, func(t *testing.T) {
				t.Parallel()
				for _, h := range houses {
					for seed := range uint64(slipSeeds) {
						p, err := problems.New(s, seed, h)
						require.NoError(t, err)
						rng := rand.New(rand.NewPCG(seed, 77))
						for i := range p.Steps {
							accuse(&decimal, &count, p, i, rng)
						}
					}
				}
			})
		}
	})
	t.Logf("unrelated numbers that a slip was named for: decimal lines %.2f %% of %d; whole-number lines %.2f %% of %d",
		100-decimal.percent(), decimal.all, 100-count.percent(), count.all)
	assert.LessOrEqual(t, 100-decimal.percent(), 2.0)
}

func accuse(decimal, count *share, p *problems.Problem, i int, rng *rand.Rand) {
	s := &p.Steps[i]
	if len(s.Choices) > 0 {
		return
	}
	l := learner{write: figures(3), rng: rng}
	lines := l.work(p, nil)
	v := s.Value * math.Exp((rng.Float64()*2-1)*math.Log(3))
	if s.Whole {
		v = math.Round(v)
	}
	if math.Abs(v-s.Value) <= 0.05*math.Abs(s.Value) {
		return
	}
	lines[i], _ = l.put(s, v)
	f := marking.Blanks(p, lines[:i+1]).Lines[i]
	ok := f.Verdict != marking.Slip && f.Verdict != marking.TwoSlips
	if s.Whole {
		count.add(ok, "")
		return
	}
	decimal.add(ok, "")
}
