package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
)

// laid is a bench with a drawn problem of floor-pressure: three lines.
func laid(t *testing.T) *bench {
	t.Helper()
	skill, ok := skills.ByID("floor-pressure")
	require.True(t, ok)
	a := address{skill: skill, seed: 12, house: problems.Defaults}
	p, err := problems.New(skill, a.seed, a.house)
	require.NoError(t, err)
	return newBench(p, a, sheet{})
}

func (b *bench) rightly(i int) { b.write(i, b.p.Steps[i].Text(b.p.Steps[i].Value)) }

// slipped writes the value of the first slip of line i, the right one where
// it has none.
func (b *bench) slipped(i int) string {
	if len(b.p.Steps[i].Wrongs) == 0 {
		b.rightly(i)
		return ""
	}
	w := &b.p.Steps[i].Wrongs[0]
	b.write(i, b.p.Steps[i].Text(w.Bound.Eval(b.p.Env())))
	return w.ID
}

func TestRightLinesGetFullMarks(t *testing.T) {
	b := laid(t)
	assert.Equal(t, 0, b.next())
	for i := range b.p.Steps {
		b.rightly(i)
		assert.True(t, b.markLine(i), "line %d", i+1)
	}
	assert.Equal(t, -1, b.next())
	b.markAll()
	assert.True(t, b.sheet.Done)
	assert.Equal(t, b.result.Of, b.result.Marks)
}

func TestAWrongLineIsFoundAndPutRight(t *testing.T) {
	b := laid(t)
	slip := b.slipped(0)
	assert.False(t, b.markLine(0))
	f, ok := b.found(0)
	require.True(t, ok)
	assert.Equal(t, marking.Slip, f.Verdict)
	assert.Equal(t, slip, f.Slips[0].ID)
	assert.Equal(t, 0, b.fault())
	assert.Equal(t, 0, b.next())

	b.rightly(0)
	_, ok = b.found(0)
	assert.False(t, ok, "a finding goes when its line changes")
	assert.True(t, b.markLine(0))
	assert.Equal(t, 1, b.next())
}

func TestAChangeClearsTheLinesBelow(t *testing.T) {
	b := laid(t)
	for i := range b.p.Steps {
		b.rightly(i)
	}
	b.markAll()
	b.write(1, "7 psi")
	_, above := b.found(0)
	_, below := b.found(2)
	assert.True(t, above)
	assert.False(t, below)
	assert.False(t, b.sheet.Done)
}

func TestBetweenHintsStandsATry(t *testing.T) {
	b := laid(t)
	assert.Empty(t, b.hints(0))
	b.hint(0)
	b.hint(0)
	assert.Len(t, b.hints(0), 1, "no second hint without a try")
	b.write(0, "5 ft")
	b.hint(0)
	b.write(0, "6 ft")
	b.hint(0)
	assert.Len(t, b.hints(0), hintTurns)
	b.write(0, "7 ft")
	b.hint(0)
	assert.Len(t, b.hints(0), hintTurns)
	for i := range b.p.Steps {
		b.rightly(i)
	}
	b.markAll()
	assert.True(t, b.sheet.Done)
	list := b.news()
	assert.Equal(t, hintTurns, list[0].Hints, "the record knows that the line was shown")
}

func TestASheetOfAnotherLengthFits(t *testing.T) {
	b := laid(t)
	for _, lines := range [][]entry{nil, {{Text: "1"}}, make([]entry, 20)} {
		got := newBench(b.p, address{skill: b.p.Skill, seed: 12, house: problems.Defaults}, sheet{Lines: lines})
		assert.Len(t, got.sheet.Lines, len(b.p.Steps))
	}
}

func TestChips(t *testing.T) {
	b := laid(t)
	b.write(0, "80 + 6.5 = 86.5 ft")
	list := b.numbers(1)
	require.NotEmpty(t, list)
	assert.Equal(t, "86.5", list[len(list)-1].text)
	for _, c := range list[:len(b.p.Told)] {
		assert.NotContains(t, c.text, "\u00a0", "a chip puts in the number alone")
	}
	assert.Equal(t, "psi", units(&b.p.Steps[1])[0])
	assert.LessOrEqual(t, len(units(&b.p.Steps[1])), maxUnits)
	b.write(0, "about eighty")
	assert.Len(t, b.numbers(1), len(b.p.Told))
}
