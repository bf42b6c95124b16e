package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// benchOf lays out a problem of an address.
func benchOf(t *testing.T, a address) *bench {
	t.Helper()
	p, err := problems.New(a.skill, a.seed, a.house)
	require.NoError(t, err)
	return newBench(p, a, sheet{})
}

func TestEveryMarkedLineGoesIntoTheRecordAsTyped(t *testing.T) {
	b := laid(t)
	slip := b.slipped(0)
	typed := b.sheet.Lines[0].Text
	b.markLine(0)
	list := b.news()
	require.Len(t, list, 1)
	assert.Equal(t, record.Entry{
		Kind: record.Line, Skill: "floor-pressure", Draws: uint64(b.sheet.Version), Seed: 12,
		Step: b.p.Steps[0].Name, Text: typed, Verdict: marking.Slip, Slips: []string{slip},
	}, list[0])
	assert.Empty(t, b.news(), "once")

	b.markLine(0)
	assert.Empty(t, b.news(), "the same words marked again")
	b.rightly(0)
	b.markLine(0)
	require.Len(t, b.news(), 1)
	for i := 1; i < len(b.p.Steps); i++ {
		b.rightly(i)
	}
	b.markAll()
	list = b.news()
	require.Len(t, list, len(b.p.Steps))
	last := list[len(list)-1]
	assert.Equal(t, record.Sheet, last.Kind)
	assert.True(t, last.Done)
	assert.Equal(t, b.stepNames(), last.Steps)
	b.markAll()
	assert.Empty(t, b.news())
}

func TestWhatWasShownIsSaidToTheRecord(t *testing.T) {
	b := laid(t)
	b.sheet.Lines[1].Hints = 2
	b.rightly(0)
	b.rightly(1)
	b.markLine(0)
	b.markLine(1)
	list := b.news()
	require.Len(t, list, 2)
	assert.Zero(t, list[0].Hints)
	assert.Equal(t, 2, list[1].Hints)
	b.sheet.Shown = true
	b.rightly(2)
	b.markLine(2)
	assert.Equal(t, record.Shown, b.news()[0].Hints)
}

func TestChosenAnswersGoIntoTheRecord(t *testing.T) {
	skill, _ := skills.ByID("floor-pressure")
	b := benchOf(t, address{skill: skill, seed: 12, house: problems.Defaults, kind: choice})
	for i := range b.options {
		b.tap(i)
	}
	list := b.news()
	assert.Equal(t, marking.Right, list[len(list)-2].Verdict)
	assert.Equal(t, record.Sheet, list[len(list)-1].Kind)
	for _, e := range list[:len(list)-2] {
		assert.Len(t, e.Slips, 1)
	}
}

// Lines that are shown worked must stand under the marking of the lines that
// follow them, in every skill and system.
func TestGivenLinesAreRight(t *testing.T) {
	for _, skill := range skills.All() {
		for _, system := range []unit.System{unit.US, unit.Metric, unit.Mixed} {
			house := problems.Defaults
			house.System = system
			a := address{skill: skill, seed: 3, house: house, given: 99}
			b := benchOf(t, a)
			require.True(t, b.isExample())
			b.markAll()
			assert.True(t, b.sheet.Done, "%s, %s", skill.ID, system)
			for i := range b.sheet.Lines {
				f, ok := b.found(i)
				require.True(t, ok)
				assert.True(t, f.Verdict.Good(), "%s, %s, line %d: %q is %s", skill.ID, system, i+1, f.Text, f.Verdict)
			}
			list := b.news()
			require.Len(t, list, 1, "nothing was written")
			assert.Zero(t, list[0].Of)

			a.given = len(b.p.Steps) - 1
			b = benchOf(t, a)
			last := len(b.p.Steps) - 1
			assert.False(t, b.sheet.begun())
			b.write(last, b.p.Written()[last]) // as it follows from the lines that are shown
			assert.True(t, b.markLine(last), "%s, %s", skill.ID, system)
			b.markAll()
			got, of := b.marks()
			assert.Equal(t, 2, of)
			assert.Equal(t, of, got, "%s, %s", skill.ID, system)
			assert.Len(t, b.news(), 2)
		}
	}
}

func TestTheDayGoesFromProblemToProblem(t *testing.T) {
	records.state = record.NewState()
	s := study{Version: studyVersion, Minutes: 10}
	s.begin()
	require.NotEmpty(t, s.Items)
	assert.True(t, s.underWay())
	for i := range s.Items {
		first, ok := s.onward(problems.Defaults)
		require.True(t, ok, "problem %d", i)
		again, _ := s.onward(problems.Defaults)
		assert.Equal(t, first, again, "a problem that was opened stays")
		s.done()
	}
	_, ok := s.onward(problems.Defaults)
	assert.False(t, ok)
	assert.False(t, s.underWay())
	require.NoError(t, s.check())
}

func TestTheOldCountIsTakenOver(t *testing.T) {
	m := newMemory()
	m.items[progressKey] = `{"version":1,"skills":{"reach":{"tries":3,"right":2},"bad":{"tries":1,"right":2}}}`
	b := &book{state: record.NewState()}
	done := false
	takeOver(m, b, func() { done = true })
	assert.True(t, done)
	assert.True(t, b.state.Skill("reach").Met)
	assert.False(t, b.state.Skill("bad").Met)
	assert.Contains(t, m.items, progressKey, "it goes only once the browser has the record")
	m.items[progressKey] = `{"version":`
	takeOver(m, b, func() { done = true })
}

func TestEntriesKeepTheirOrder(t *testing.T) {
	b := &book{state: record.NewState()}
	before := b.stamped(record.Entry{})
	for range 100 {
		e := b.stamped(record.Entry{})
		require.Greater(t, e.At, before.At)
		before = e
	}
}
