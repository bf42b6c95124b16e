package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
)

// laidAs is floor-pressure, seed 12, worked in a kind.
func laidAs(t *testing.T, kind string) *bench {
	t.Helper()
	skill, ok := skills.ByID("floor-pressure")
	require.True(t, ok)
	a := address{skill: skill, seed: 12, house: problems.Defaults, kind: kind}
	p, err := problems.New(skill, a.seed, a.house)
	require.NoError(t, err)
	require.Equal(t, kind, fitting(p, kind))
	return newBench(p, a, sheet{})
}

func (b *bench) stepText(i int) string { return b.p.Steps[i].Text(b.p.Steps[i].Value) }

func TestLinesOfOnesOwn(t *testing.T) {
	b := laidAs(t, free)
	require.Len(t, b.sheet.Lines, 1)
	assert.False(t, b.add(), "no second empty line")
	assert.False(t, b.remove(0), "one line stays")
	last := len(b.p.Steps) - 1
	// In the other order, with an empty line between.
	b.write(0, b.stepText(last))
	require.True(t, b.add())
	b.sheet.Lines = append(b.sheet.Lines, entry{})
	b.write(2, b.stepText(0))
	b.markAll()
	for i, want := range []int{last, -1, 0} {
		f, ok := b.found(i)
		require.True(t, ok)
		assert.Equal(t, want, f.Step, "line %d", i+1)
		assert.Equal(t, want, b.step(i))
	}
	assert.True(t, b.sheet.Done)
	assert.Equal(t, -1, b.fault(), "an empty line is no fault")
	assert.Equal(t, b.stepText(0), b.own(0))
	assert.Empty(t, b.own(1))

	require.True(t, b.remove(1))
	f, ok := b.found(1)
	require.True(t, ok, "the findings move with their lines")
	assert.Equal(t, 0, f.Step)
	assert.False(t, b.remove(1), "what is written stays")
	assert.Contains(t, readAs(b, f), "read as: ")
}

func TestTheEarliestFaultMovesWithItsLine(t *testing.T) {
	b := laidAs(t, free)
	b.sheet.Lines = make([]entry, 3)
	b.write(0, b.stepText(len(b.p.Steps)-1))
	b.write(2, "about nine")
	b.markAll()
	require.True(t, b.sheet.Done)
	require.Equal(t, 2, b.result.First)
	require.True(t, b.remove(1))
	assert.Equal(t, 1, b.result.First)
	b.sheet.Lines[1].Text = ""
	require.True(t, b.remove(1))
	assert.Equal(t, -1, b.result.First)
	checkShown(t, shownAs(t, &work{session: session{bench: b, at: -1, opened: map[int]bool{}, address: address{skill: b.p.Skill, house: b.sheet.House, kind: free}}}))
}

func TestALineIsSaidToBeAStep(t *testing.T) {
	b := laidAs(t, free)
	for i := range b.p.Steps {
		b = newBench(b.p, address{skill: b.p.Skill, seed: 12, house: problems.Defaults, kind: free}, sheet{})
		b.write(0, "pressure: "+b.stepText(i))
		b.tie(0, i)
		assert.Equal(t, spaced(b.p.Steps[i].Name)+": "+b.stepText(i), b.sheet.Lines[0].Text)
		b.markAll()
		assert.Equal(t, i, b.result.Lines[0].Step, "the word before the line decides")
		assert.Equal(t, i, b.tied(0))
		b.tie(0, -1)
		assert.Equal(t, b.stepText(i), b.sheet.Lines[0].Text)
		assert.Equal(t, -1, b.tied(0))
	}
}

func TestALineIsOnlyAsLongAsTheSheet(t *testing.T) {
	b := laidAs(t, free)
	for range 2 * maxLines {
		b.write(len(b.sheet.Lines)-1, "7")
		b.add()
	}
	assert.Len(t, b.sheet.Lines, maxLines)
}

func TestAChangeClearsWhatWasSaidToBePutRight(t *testing.T) {
	b := laidAs(t, free)
	w := b.p.Steps[1].Wrongs[0]
	b.sheet.Lines = make([]entry, 3)
	b.write(0, b.stepText(0))
	b.write(1, b.p.Steps[1].Text(w.Bound.Eval(b.p.Env())))
	b.write(2, b.stepText(1))
	b.markAll()
	require.Equal(t, marking.Replaced, b.result.Lines[1].Verdict)
	assert.Equal(t, -1, b.fault(), "what was put right is no fault")
	b.write(2, "7")
	_, ok := b.found(1)
	assert.False(t, ok)
	_, ok = b.found(0)
	assert.True(t, ok)
}

func TestALineOfOnesOwnShowsWithItsKeys(t *testing.T) {
	b := laidAs(t, free)
	w := &work{session: session{bench: b, at: -1, opened: map[int]bool{}, address: address{skill: b.p.Skill, seed: 12, house: b.sheet.House, kind: free}}}
	b.sheet.Lines = make([]entry, len(b.p.Steps)+1)
	for i := range b.p.Steps {
		b.write(i, b.stepText(i))
	}
	b.write(len(b.p.Steps), "about nine")
	b.markAll()
	for i := range b.sheet.Lines {
		w.at = i
		checkShown(t, shownAs(t, &work{session: w.session}))
	}
}

func TestAnotherRouteIsSaid(t *testing.T) {
	b := laidAs(t, free)
	others := b.p.OtherRoutes()
	require.NotEmpty(t, others)
	q := others[0]
	b.sheet.Lines = make([]entry, len(q.Steps))
	for i := range q.Steps {
		b.write(i, spaced(q.Steps[i].Name)+": "+q.Steps[i].Text(q.Steps[i].Value))
	}
	b.markAll()
	assert.True(t, b.sheet.Done)
	w := &work{session: session{bench: b}}
	assert.Contains(t, w.route(), q.Route)
	for i := range q.Steps {
		assert.Equal(t, i, b.tied(i))
	}
}
