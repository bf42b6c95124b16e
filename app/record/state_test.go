package record

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/marking"
)

var abc = []string{"a", "b", "c"}

func always(int) bool { return true }

func wrongAt(step int) func(int) bool { return func(i int) bool { return i != step } }

func TestLinesGoBlankOneByOneAndComeBack(t *testing.T) {
	l := newLearner(1, 1)
	given := func() int { return l.state.Skill("s").Given(abc) }
	assert.Equal(t, 3, given(), "first contact is a worked example")
	l.solve("s", abc, 3, always)
	for want := 2; want >= 0; want-- {
		assert.Equal(t, want, given())
		l.solve("s", abc, given(), always)
	}
	assert.Equal(t, 0, given())
	l.solve("s", abc, 0, wrongAt(1))
	assert.Equal(t, 2, given(), "the wrong line comes back, with the one that it rests on")
	l.solve("s", abc, 2, always)
	assert.Equal(t, 0, given(), "the others are known still")
	l.solve("s", abc, 0, wrongAt(2))
	assert.Equal(t, 3, given())
}

func TestALineThatWasShownIsNotKnown(t *testing.T) {
	l := newLearner(1, 1)
	l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Step: "a", Verdict: marking.Right})
	l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Step: "b", Verdict: marking.Right, Hints: Shown})
	l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Step: "c", Verdict: marking.RoundedEarly})
	l.add(Entry{Kind: Sheet, Skill: "s", Seed: 5, Steps: abc, Done: true})
	k := l.state.Skill("s")
	assert.Equal(t, 2, k.Given(abc))
	assert.Zero(t, k.Average)
	assert.Equal(t, 1, k.Tries)

	l.add(Entry{Kind: Line, Skill: "s", Seed: 6, Given: 2, Step: "c", Verdict: marking.Right, Hints: 1})
	l.add(Entry{Kind: Sheet, Skill: "s", Seed: 6, Given: 2, Steps: abc, Done: true})
	assert.Equal(t, 2, k.Given(abc), "right after a hint: nothing more goes blank, nothing comes back")
	assert.Equal(t, 1, k.Tries, "with lines given it is no try alone")
}

func TestKnowingTakesTwoDays(t *testing.T) {
	l := newLearner(1, 1)
	l.solve("s", abc, 0, always)
	l.solve("s", abc, 0, always)
	k := l.state.Skill("s")
	assert.InDelta(t, 1, k.Average, 1e-12)
	assert.False(t, k.Holds(), "one day")
	l.at += dayMs
	l.solve("s", abc, 0, always)
	assert.True(t, k.Holds())
	l.solve("s", abc, 0, wrongAt(0))
	assert.InDelta(t, 0.6, k.Average, 1e-12)
	assert.False(t, k.Holds())
	for _, want := range []float64{0.76, 0.856, 0.9136} {
		assert.False(t, k.Holds())
		l.solve("s", abc, 0, always)
		assert.InDelta(t, want, k.Average, 1e-12)
	}
	assert.True(t, k.Holds())
}

func TestTheFirstMarkingCounts(t *testing.T) {
	l := newLearner(1, 1)
	l.solve("s", abc, 0, wrongAt(2))
	k := l.state.Skill("s")
	assert.Equal(t, Card{}.Tried(0, false), k.Card)
	assert.Zero(t, k.Average)
	assert.Equal(t, 1, k.Tries)
}

func TestAProblemLeftInTheMiddleCountsByItsWrongLine(t *testing.T) {
	l := newLearner(1, 1)
	l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Step: "a", Verdict: marking.Right})
	assert.True(t, l.state.Skill("s").new())
	l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Step: "b", Verdict: marking.NotRecognised})
	assert.Equal(t, Card{}.Tried(0, false), l.state.Skill("s").Card)
}

func TestTappingIsNoTry(t *testing.T) {
	l := newLearner(1, 1)
	l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Way: "choice", Step: "c", Verdict: marking.Slip, Slips: []string{"x"}})
	l.add(Entry{Kind: Sheet, Skill: "s", Seed: 5, Way: "choice", Steps: abc, Done: true})
	k := l.state.Skill("s")
	assert.True(t, k.Met)
	assert.True(t, k.new())
	assert.Zero(t, k.Tries)
	assert.Len(t, l.state.Catching(0), 1, "the trap caught all the same")
}

func TestTrapsFade(t *testing.T) {
	l := newLearner(1, 1)
	for range 3 { // the same slip thrice on one problem is one sighting
		l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Step: "b", Verdict: marking.Slip, Slips: []string{"x"}})
	}
	l.add(Entry{Kind: Line, Skill: "s", Seed: 5, Step: "a", Verdict: marking.PossibleSlip, Slips: []string{"y"}})
	assert.Equal(t, []Caught{{"s", "x", 1}}, l.state.Catching(0), "a slip that may be one is no evidence")
	assert.InDelta(t, 0.5, l.state.Catching(14)[0].Weight, 1e-12)
	assert.Empty(t, l.state.Catching(60))
	l.at += 14 * dayMs
	l.add(Entry{Kind: Line, Skill: "s", Seed: 6, Step: "b", Verdict: marking.Slip, Slips: []string{"x"}})
	assert.InDelta(t, 1.5, l.state.Catching(14)[0].Weight, 1e-12)
}

func TestTheOrderOfArrivalDoesNotMatter(t *testing.T) {
	l := newLearner(3, 0.8)
	for day := range 30 {
		l.at = int64(day)*dayMs + 1
		for _, id := range []string{"s", "u", "v"} {
			l.solve(id, abc, l.state.Skill(id).Given(abc), func(int) bool { return l.rng.Float64() < 0.8 })
		}
	}
	want := Derive(l.log)
	assert.Equal(t, l.state, want, "one by one or all at once")
	mixed := append(slices.Clone(l.log), l.log[:40]...)
	rng := rand.New(rand.NewPCG(1, 1))
	rng.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
	assert.Equal(t, want, Derive(mixed), "in any order, some of it twice")

	half := Derive(l.log[:50])
	text, err := half.Snapshot()
	require.NoError(t, err)
	back, err := ReadSnapshot(text)
	require.NoError(t, err)
	require.True(t, back.Add(l.log[50:]))
	assert.Equal(t, want, back, "from what was saved on the way")
	assert.False(t, back.Add(l.log[7:8]), "an entry that comes late calls for the whole log")
	assert.Equal(t, want, back)
}

func TestADamagedSnapshotIsRefused(t *testing.T) {
	l := newLearner(1, 1)
	l.solve("s", abc, 0, always)
	text, err := l.state.Snapshot()
	require.NoError(t, err)
	for i := range text {
		_, err := ReadSnapshot(text[:i])
		require.Error(t, err)
	}
	for _, raw := range []string{`{}`, `[]`, `{"version":1,"skills":{"a":null}}`, `{"version":1,"traps":{"a":null}}`, `{"version":1,"days":null}`} {
		_, err := ReadSnapshot(sum(raw) + " " + raw)
		require.Error(t, err, raw)
	}
}
