package problems_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

var houses = []problems.House{{System: unit.US}, {System: unit.Metric, Code: "npc"}, {System: unit.Mixed, Code: "npc"}}

// seeds is how many seeds a test takes: a tenth in a short run, at least one.
func seeds(n int) int {
	if testing.Short() {
		return max(1, n/10)
	}
	return n
}

// every calls f with so many problems of every skill and system.
func every(t *testing.T, n int, f func(t *testing.T, p *problems.Problem)) {
	t.Helper()
	for _, s := range skills.All() {
		t.Run(s.ID, func(t *testing.T) {
			t.Parallel()
			for _, h := range houses {
				for seed := range uint64(seeds(n)) {
					p, err := problems.New(s, seed, h)
					require.NoError(t, err)
					f(t, p)
				}
			}
		})
	}
}

func TestOptionsHoldOneRightAnswer(t *testing.T) {
	every(t, 30, func(t *testing.T, p *problems.Problem) {
		o := p.Options()
		require.GreaterOrEqual(t, len(o), 2, "seed %d", p.Seed)
		right := 0
		texts := map[string]bool{}
		for _, x := range o {
			if x.Right {
				right++
			}
			require.False(t, texts[x.Text], "%s twice", x.Text)
			texts[x.Text] = true
		}
		require.Equal(t, 1, right)
		if len(p.Answer().Choices) == 0 {
			require.True(t, slices.IsSortedFunc(o, func(a, b problems.Option) int {
				if a.Value < b.Value {
					return -1
				}
				return 1
			}))
		}
	})
}

// A planted slip is what the marker finds, on the line where it stands.
func TestPlantedSlipsAreFound(t *testing.T) {
	found, all := 0, 0
	for _, s := range skills.All() {
		for _, h := range houses {
			for seed := range uint64(seeds(20)) {
				p, err := problems.New(s, seed, h)
				require.NoError(t, err)
				pl, ok := p.Plant(seed)
				if !ok {
					continue
				}
				require.Len(t, pl.Lines, len(p.Steps))
				all++
				r := marking.Blanks(p, pl.Lines)
				if slices.Contains(r.Slips, pl.Slip) && r.First == pl.Wrong {
					found++
				} else {
					t.Logf("%s %s seed %d: %s at %d in %q, found %v first %d", s.ID, h.System, seed, pl.Slip, pl.Wrong, pl.Lines, r.Slips, r.First)
				}
			}
		}
	}
	t.Logf("planted slips found: %d of %d", found, all)
	require.Greater(t, all, 100)
	assert.GreaterOrEqual(t, float64(found)/float64(all), 0.99)
}

func TestATrapIsTempting(t *testing.T) {
	s, ok := skills.ByID("floor-pressure")
	require.True(t, ok)
	for _, slip := range []string{"added", "lost-as-answer", "divided"} {
		p, err := problems.WithTrap(s, 5, houses[1], slip)
		if slip == "divided" {
			continue // a tenth of the pressure: rarely tempting in SI
		}
		require.NoError(t, err)
		assert.Greater(t, p.Seed, uint64(5))
	}
	_, err := problems.WithTrap(s, 5, houses[0], "no-such-slip")
	require.ErrorContains(t, err, "tempting")
}

func TestOwnGivensAreReadOrRefused(t *testing.T) {
	s, _ := skills.ByID("floor-pressure")
	p, err := problems.WithGivens(s, 1, problems.House{System: unit.US}, []problems.Own{
		{Name: "street", Text: "4.27 bar"}, {Name: "floor_height", Text: "89.5"}, {Name: "outlet", Text: "2 m"},
	})
	require.NoError(t, err)
	assert.InDelta(t, 61.93-0.433*(89.5+6.5617), p.Answer().Value, 0.01)
	assert.Nil(t, p.Building)
	for _, bad := range []problems.Own{{Name: "street", Text: "red"}, {Name: "street", Text: "5 ft"}, {Name: "roof", Text: "5 ft"}, {Name: "street", Text: ""}} {
		_, err := problems.WithGivens(s, 1, problems.House{System: unit.US}, []problems.Own{bad})
		require.Error(t, err, "%v", bad)
		assert.NotContains(t, err.Error(), "\n")
	}
}
