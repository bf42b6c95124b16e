package devices_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/devices"
)

// Each kind of question, on 500 seeds, has one right answer, or a declared set
// of right places, that the checks of the arrangement confirm; and every wrong
// choice is wrong for a reason that is said.
func TestQuestions(t *testing.T) {
	for _, kind := range devices.Kinds {
		t.Run(string(kind), func(t *testing.T) {
			for seed := range uint64(500) {
				q := devices.New(kind, seed)
				require.NotEmpty(t, q.Ask)
				assert.Equal(t, q, devices.New(kind, seed), "the same seed")
				switch kind {
				case devices.Sequence, devices.Order:
					checkOrder(t, q)
				case devices.Place:
					checkPlace(t, q)
				default:
					checkOptions(t, q)
				}
				if kind == devices.Wrong {
					checkWrong(t, q)
				}
				if kind == devices.Sound {
					for i, a := range q.Choices {
						assert.Equal(t, q.Options[i].Right, len(q.Detail.Broken(a)) == 0)
					}
				}
			}
		})
	}
}

func checkOptions(t *testing.T, q *devices.Question) {
	right := 0
	var texts []string
	for i, o := range q.Options {
		assert.NotEmpty(t, o.Text)
		assert.NotEmpty(t, o.Why, o.Text)
		assert.NotContains(t, texts, o.Text, q.Ask)
		texts = append(texts, o.Text)
		got := q.Choose(i)
		assert.Equal(t, o.Right, got.Right)
		assert.NotEmpty(t, got.Says)
		if o.Right {
			right++
		}
	}
	assert.Equal(t, 1, right, q.Ask)
	assert.GreaterOrEqual(t, len(q.Options), 2, q.Ask)
}

func checkOrder(t *testing.T, q *devices.Question) {
	require.GreaterOrEqual(t, len(q.Right), 3)
	require.Len(t, q.Whys, len(q.Right))
	assert.ElementsMatch(t, q.Right, q.Items)
	assert.True(t, q.Arrange(q.Right).Right)
	got := q.Arrange(q.Items)
	assert.False(t, got.Right)
	assert.NotEqual(t, q.Right[got.At], q.Items[got.At])
	short := q.Arrange(q.Right[:1])
	assert.Equal(t, 1, short.At)
}

func checkPlace(t *testing.T, q *devices.Question) {
	require.NotEmpty(t, q.Places, q.Ask)
	wrong := 0
	for _, run := range q.Drawing.Runs {
		for at := range len(run.Stand) + 1 {
			s := devices.Spot{Run: run.Name, At: at}
			got := q.Put(s)
			assert.Equal(t, slices.Contains(q.Places, s), got.Right)
			assert.NotEmpty(t, got.Says)
			if !got.Right {
				wrong++
			}
		}
	}
	assert.Greater(t, wrong, 0, q.Ask)
}

// A fault breaks one check; a reason that is offered beside it is of a check
// that the drawing keeps. One run and device are the place of it.
func checkWrong(t *testing.T, q *devices.Question) {
	assert.Equal(t, []string{q.Fault.Breaks}, q.Detail.Broken(q.Drawing))
	for _, o := range q.Options {
		if o.Right {
			assert.Equal(t, q.Fault.Did, o.Text)
			continue
		}
		i := slices.IndexFunc(q.Detail.Faults, func(f devices.Fault) bool { return f.Did == o.Text })
		require.GreaterOrEqual(t, i, 0)
		assert.NotEqual(t, q.Fault.Breaks, q.Detail.Faults[i].Breaks)
	}
	right := 0
	for _, run := range q.Drawing.Runs {
		for at := range run.Stand {
			if q.Mark(devices.Spot{Run: run.Name, At: at}).Right {
				right++
			}
		}
	}
	assert.GreaterOrEqual(t, right, 1, q.Fault.ID)
}

// The number that shows a consequence is that of the skill that works it out.
func TestConsequences(t *testing.T) {
	shown := map[devices.Shown]bool{}
	for _, d := range devices.All() {
		shown[d.Shows] = true
	}
	for _, d := range devices.Details() {
		for _, f := range d.Faults {
			shown[f.Shows] = true
		}
	}
	for s := range shown {
		if s == devices.ShowsNothing {
			continue
		}
		for seed := range uint64(50) {
			text, p := devices.Consequence(s, seed, problems.Defaults)
			require.NotEmpty(t, text, s)
			assert.NotContains(t, text, "{", s)
			if s != devices.ShowsScald {
				require.NotNil(t, p)
				assert.True(t, slices.ContainsFunc(p.Steps, func(s problems.Step) bool { return strings.Contains(text, s.Text(s.Value)) }), text)
			}
		}
	}
}
