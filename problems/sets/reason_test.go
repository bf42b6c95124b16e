package sets

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/devices"
)

// reasonSet is a question of every kind, beside a problem of a skill.
func reasonSet(own bool) *Set {
	s := plainSet()
	s.Own, s.Items = own, s.Items[:1]
	for _, kind := range devices.Kinds {
		s.Items = append(s.Items, QuestionOf(kind))
	}
	return s
}

// rightAnswer is the answer that earns all marks.
func rightAnswer(q *devices.Question) Answer {
	a := Answer{Option: slices.IndexFunc(q.Options, func(o devices.Option) bool { return o.Right })}
	for _, text := range q.Right {
		a.Order = append(a.Order, slices.Index(q.Items, text))
	}
	if len(q.Places) > 0 {
		a.Spot, a.Placed = q.Places[0], true
	}
	return a
}

func answered(t *testing.T, s *Set, learner string, f func(q *devices.Question) []int) *HandIn {
	t.Helper()
	h := handIn(t, s, learner, func(i int, task *Task) []string {
		if task.Question != nil {
			return nil
		}
		return rightLines(task)
	})
	for i := range h.Work {
		task, err := s.Task(i, learner)
		require.NoError(t, err)
		if task.Question != nil {
			h.Work[i].Tapped = f(task.Question)
		}
	}
	h.Seal()
	return h
}

func TestQuestionsOfReasoningAreMarkedFromWhatWasTapped(t *testing.T) {
	for n := range 40 {
		s := reasonSet(n%2 == 0)
		s.Number = uint32(n + 1)
		name := fmt.Sprint("Learner ", n)
		full := NewMarker(s).Mark(answered(t, s, name, func(q *devices.Question) []int {
			a := rightAnswer(q)
			return a.Taps(q)
		}), false)
		require.Equal(t, OnTime, full.Status, full.Says)
		require.Equal(t, full.Of, full.Marks)
		require.Equal(t, len(devices.Kinds)+1, full.Of-full.Items[0].Of, "one mark each, two where a fault is found and named")
		wrong := NewMarker(s).Mark(answered(t, s, name, func(q *devices.Question) []int {
			a := rightAnswer(q)
			a.Option = (a.Option + 1) % max(1, len(q.Options))
			slices.Reverse(a.Order)
			a.Placed = false
			if q.Kind == devices.Place {
				return []int{0, 9999}
			}
			return a.Taps(q)
		}), false)
		require.Equal(t, full.Items[0].Marks, wrong.Marks, "nothing else is right")
		for i := range wrong.Items[1:] {
			require.NotEmpty(t, wrong.Items[i+1].Faults)
			require.NotEmpty(t, wrong.Items[i+1].Faults[0].Says)
		}
		none := NewMarker(s).Mark(answered(t, s, name, func(*devices.Question) []int { return nil }), false)
		assert.False(t, none.Items[1].Tried)
	}
}

// Whatever stands in a hand-in, an answer is read or left out.
func TestAnswersAreReadWithinTheQuestion(t *testing.T) {
	for n := range 60 {
		q := devices.New(devices.Kinds[n%len(devices.Kinds)], uint64(n))
		a := rightAnswer(q)
		back := AnswerOf(q, a.Taps(q))
		assert.Equal(t, a.Taps(q), back.Taps(q), q.Kind)
		for _, taps := range [][]int{nil, {}, {-1}, {-1, -1, -1}, {99}, {0, 99}, {1 << 40, 1 << 40, 1 << 40}, {0, 0, 0, 0}, {0, -5, 3}} {
			odd := AnswerOf(q, taps)
			assert.NotPanics(t, func() {
				task := Task{Kind: Reason, Question: q}
				task.markReason(&Work{Tapped: taps}, &Mark{})
			})
			assert.Less(t, odd.Option, max(1, len(q.Options)))
		}
	}
}

func TestAFollowUpAsksWeakReasoningAgain(t *testing.T) {
	s := reasonSet(true)
	c := NewClass(s)
	c.Add(NewMarker(s).Mark(answered(t, s, "Sam", func(*devices.Question) []int { return nil }), false))
	r := c.Report()
	f, ok := r.FollowUp(s)
	require.True(t, ok)
	require.NoError(t, f.Check())
	assert.Equal(t, Reason, f.Items[0].Kind)
	back, err := ReadLink(f.Link())
	require.NoError(t, err)
	assert.Equal(t, f, back)
}

func TestKindsOfReasoningHaveIdsOfTheirOwn(t *testing.T) {
	require.Len(t, reasons, len(devices.Kinds))
	for _, kind := range devices.Kinds {
		it := QuestionOf(kind)
		got, ok := reasonOf(it.Skill)
		assert.True(t, ok)
		assert.Equal(t, kind, got)
		assert.Equal(t, it.Skill, skillOf(shortOf(it.Skill)))
		assert.NoError(t, it.check())
		it.Kind = Guided
		assert.Error(t, it.check())
	}
}
