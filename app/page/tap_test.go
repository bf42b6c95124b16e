package page

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

func TestAMistakeIsFoundAndPutRight(t *testing.T) {
	b := laidAs(t, mistake)
	wrong := b.planted.Wrong
	other := (wrong + 1) % len(b.p.Steps)
	b.tap(other)
	assert.False(t, b.hit())
	b.tap(wrong)
	assert.True(t, b.hit())
	b.tap((wrong + 2) % len(b.p.Steps))
	assert.Equal(t, []int{other, wrong}, b.sheet.Tapped, "what was found stays found")

	b.write(wrong, "987654321")
	assert.False(t, b.putRight())
	assert.False(t, b.sheet.Done)
	b.rightly(wrong)
	assert.True(t, b.putRight(), "the lines before it stand")
	assert.True(t, b.sheet.Done)
	s, ok := b.slipPlanted()
	require.True(t, ok)
	assert.Equal(t, b.planted.Slip, s.ID)

	again := newBench(b.p, address{skill: b.p.Skill, seed: 12, house: problems.Defaults, kind: mistake}, b.sheet)
	assert.True(t, again.hit())
}

func TestAnAnswerIsChosen(t *testing.T) {
	b := laidAs(t, choice)
	for i, o := range b.options {
		if o.Right {
			continue
		}
		b.tap(i)
		assert.False(t, b.hit())
		s, ok := slipOf(b.p, o.Step, o.Slip)
		require.True(t, ok)
		assert.Equal(t, o.Slip, s.ID)
	}
	assert.False(t, b.sheet.Done)
	for i, o := range b.options {
		if o.Right {
			b.tap(i)
		}
	}
	assert.True(t, b.hit())
	assert.True(t, b.sheet.Done)
}

func TestTapsOfNothingAreLeftOut(t *testing.T) {
	b := laidAs(t, choice)
	got := newBench(b.p, address{skill: b.p.Skill, seed: 12, house: problems.Defaults, kind: choice}, sheet{Tapped: []int{-1, 0, 99}})
	assert.Equal(t, []int{0}, got.sheet.Tapped)
}

// Every skill can be worked in every kind, or is laid out line by line; the
// explanations of slips have no place that was not filled.
func TestEverySkillShowsInEveryKind(t *testing.T) {
	for _, skill := range skills.All() {
		t.Run(skill.ID, func(t *testing.T) {
			for _, k := range kinds[1:] {
				a := address{skill: skill, seed: 5, house: problems.Defaults, kind: k.name}
				w := &work{session: session{address: a, own: problems.Defaults, at: -1}}
				w.lay(&desk{})
				require.Empty(t, w.fault)
				b := w.bench
				checkShown(t, shownAs(t, &work{session: w.session}))
				switch b.sheet.Kind {
				case free:
					b.sheet.Lines = make([]entry, len(b.p.Steps))
					for i := range b.p.Steps {
						b.slipped(i)
					}
					b.markAll()
				case mistake:
					b.tap(b.planted.Wrong)
					b.rightly(b.planted.Wrong)
					assert.True(t, b.putRight(), "line %d: %s", b.planted.Wrong+1, b.text(b.planted.Wrong))
					s, ok := b.slipPlanted()
					assert.True(t, ok)
					assert.False(t, strings.ContainsAny(s.Did+s.Why+s.Next, "{}"))
				case choice:
					for i := range b.options {
						b.tap(i)
					}
					assert.True(t, b.hit())
				}
				w.compare = true
				checkShown(t, shownAs(t, &work{session: w.session}))
			}
		})
	}
}
