package marking_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"sync"
	"testing"
	"text/tabwriter"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

var houses = []problems.House{
	{System: unit.US, Code: "shop"}, {System: unit.Metric, Code: "npc"}, {System: unit.Mixed, Code: "npc"},
}

// aim is what a share of simulated sheets should be, in percent; without a
// bound it is measured only.
type aim struct {
	name  string
	bound float64
	most  bool // the bound is the most that it should be
	shown bool // measured only
}

func atLeast(name string, p float64) aim { return aim{name: name, bound: p} }
func atMost(name string, p float64) aim  { return aim{name: name, bound: p, most: true} }
func shown(name string) aim              { return aim{name: name, shown: true} }

func (a aim) String() string {
	switch {
	case a.shown:
		return ""
	case a.most:
		return fmt.Sprintf("at most %g", a.bound)
	}
	return fmt.Sprintf("at least %g", a.bound)
}

func (a aim) met(percent float64) bool {
	return a.shown || a.most && percent <= a.bound || !a.most && percent >= a.bound
}

// share counts how often something was so.
type share struct {
	so, all int
	odd     []string // the first cases that speak against the aim
}

func (s *share) percent() float64 {
	if s.all == 0 {
		return 0
	}
	return 100 * float64(s.so) / float64(s.all)
}

// study is the shares of everything that is measured, by name.
type study struct {
	mu     sync.Mutex
	shares map[string]*share
}

// oddKept bounds the cases that are kept of each measure.
const oddKept = 12

// add counts one sheet for a measure; the text says what it was, where it
// speaks against the aim.
func (s *study) add(a aim, so bool, format string, args ...any) {
	s.mu.Lock()
	defer s.mu.Unlock()
	sh := s.shares[a.name]
	if sh == nil {
		sh = &share{}
		s.shares[a.name] = sh
	}
	sh.all++
	if so {
		sh.so++
	}
	if so == a.most && !a.shown && len(sh.odd) < oddKept {
		sh.odd = append(sh.odd, fmt.Sprintf(format, args...))
	}
}

// trial marks simulated sheets of one problem and counts what was found.
type trial func(s *study, p *problems.Problem, rng *rand.Rand)

// over runs trials on problems of the whole catalogue: of every skill and
// system, so many seeds.
func over(tb testing.TB, seeds int, trials ...trial) *study {
	tb.Helper()
	s := &study{shares: map[string]*share{}}
	var wait sync.WaitGroup
	room := make(chan bool, 2)
	for _, skill := range skills.All() {
		wait.Add(1)
		room <- true
		go func() {
			defer func() { <-room; wait.Done() }()
			for _, h := range houses {
				for seed := range uint64(seeds) {
					p, err := problems.New(skill, seed, h)
					if !assert.NoError(tb, err) {
						return
					}
					for k, t := range trials {
						t(s, p, rand.New(rand.NewPCG(seed, uint64(k))))
					}
				}
			}
		}()
	}
	wait.Wait()
	return s
}

// held asserts the aims of a study and logs what it measured.
func (s *study) held(t *testing.T, aims ...aim) {
	t.Helper()
	for _, a := range aims {
		sh := s.shares[a.name]
		require.NotNil(t, sh, "nothing was measured: %s", a.name)
		t.Logf("%s: %.2f %% of %d, %s", a.name, sh.percent(), sh.all, a)
		if testing.Short() && a.bound > 0 && a.bound < 100 {
			continue // a tenth of the seeds is too small a sample to hold a share by
		}
		assert.True(t, a.met(sh.percent()), "%s: %.2f %%, %s:\n%s", a.name, sh.percent(), a, strings.Join(sh.odd, "\n"))
	}
}

// seeds is how many seeds a test takes: a tenth in a short run, at least one.
func seeds(n int) int {
	if testing.Short() {
		return max(1, n/10)
	}
	return n
}

// name says which sheet it was.
func name(p *problems.Problem) string {
	return fmt.Sprintf("%s %s seed %d", p.Skill.ID, p.House.System, p.Seed)
}

// BenchmarkStudy prints one table of what the marker makes of simulated
// working over the whole catalogue, beside what is aimed at.
func BenchmarkStudy(b *testing.B) {
	for b.Loop() {
		s := over(b, 20, rightInBlanks)
		for _, part := range []struct {
			seeds  int
			trials []trial
		}{
			{6, []trial{rightFree, rightByOtherRoutes}},
			{10, []trial{oneSlip, oneSlipFree, twoSlips, mergedSlips, answerAlone}},
			{10, []trial{swappedLine, unrelated, misprints, wrongGivens, unitFaults}},
		} {
			for n, sh := range over(b, part.seeds, part.trials...).shares {
				s.shares[n] = sh
			}
		}
		s.print()
		printSkills(b)
	}
}

func (s *study) print() {
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "\nsimulated working over the catalogue\tmeasured %\taim %\tmet\tsheets")
	for _, a := range aims {
		sh := s.shares[a.name]
		if sh == nil {
			continue
		}
		met := ""
		if !a.shown {
			met = map[bool]string{true: "yes", false: "no"}[a.met(sh.percent())]
		}
		fmt.Fprintf(w, "%s\t%.2f\t%s\t%s\t%d\n", a.name, sh.percent(), a, met, sh.all)
	}
	w.Flush()
}
