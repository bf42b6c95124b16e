package page

import (
	"net/url"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/sets"
	"riserwork/problems/skills"
)

func someTestSet(help sets.Help) *sets.Set {
	s := &sets.Set{Title: "Week 7", House: problems.Defaults, Help: help, Own: true, Number: 4}
	for i, k := range sets.Kinds {
		s.Items = append(s.Items, sets.ItemOf(skills.All()[i+6], k))
	}
	return s
}

// workOn opens problem n of a set as the page does.
func workOn(t *testing.T, store app.BrowserStorage, s *sets.Set, n string) *setTask {
	t.Helper()
	u, err := url.Parse("https://example.org/work?n=" + n + "#" + s.Link())
	require.NoError(t, err)
	task, fault := openTask(store, u)
	require.Empty(t, fault)
	return task
}

func TestWorkOnASetIsHandedInAsTyped(t *testing.T) {
	store := newMemory()
	s := someTestSet(sets.AllHelp)
	require.Empty(t, keepLearner(store, "  Sam \u202e Poe "))
	for n := range s.Items {
		task := workOn(t, store, s, string(rune('1'+n)))
		a := task.address()
		b := newBench(task.task.Problem, a, sheet{})
		for i := range b.sheet.Lines {
			b.write(i, " "+task.task.Worked()[min(i, len(task.task.Steps)-1)].Value+" ")
		}
		b.sheet.Tapped = []int{1, 0}
		require.Empty(t, task.keep(store, b.sheet))
	}
	w, says := loadWork(store, s, "sam poe", "2031-01-01")
	require.Empty(t, says)
	assert.Equal(t, "Sam Poe", w.Learner)
	h, err := w.handIn(s, "2031-01-02T10:00")
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(h.Work[0].Lines[0], " "), "as typed")
	assert.Equal(t, []int{1, 0}, h.Work[3].Tapped)
	p := sets.NewMarker(s).Mark(h, false)
	assert.Equal(t, sets.OnTime, p.Status, p.Says)
	assert.Equal(t, p.Items[0].Of, p.Items[0].Marks)
	back := workOn(t, store, s, "1").desk()
	found, ok := back.find(workOn(t, store, s, "1").address())
	require.True(t, ok)
	assert.True(t, found.begun())
}

func TestWhatIsLeftOfASet(t *testing.T) {
	s := someTestSet(sets.NoHelp)
	w := newWork(s, "Sam", "2026-11-02T09:00")
	empty, open := w.left(s.Help)
	assert.Equal(t, []int{4, 4}, []int{empty, open})
	w.Sheets[0] = sheet{Lines: []entry{{Text: "1"}, {}}}
	w.Sheets[1] = sheet{Kind: free, Lines: []entry{{Text: "1"}}, Done: true}
	assert.Equal(t, []state{begun, finished, untouched}, []state{w.stateOf(0, s.Help), w.stateOf(1, s.Help), w.stateOf(2, s.Help)})
	w.Sheets[0].Lines[1].Text = "2"
	assert.Equal(t, finished, w.stateOf(0, sets.NoHelp))
	assert.Equal(t, begun, w.stateOf(0, sets.AllHelp))
	empty, open = w.left(s.Help)
	assert.Equal(t, []int{2, 2}, []int{empty, open})
}

func TestAWrongTaskIsSaid(t *testing.T) {
	store := newMemory()
	s := someTestSet(sets.AllHelp)
	for address, want := range map[string]string{
		"/work?n=1":                     "holds no set",
		"/work?n=1#AAAA":                "cut short",
		"/work?n=1#" + s.Link():         "say who you are",
		"/work?n=1#" + s.Link()[:8]:     "cut short",
		"/work?n=1#" + s.Link() + "AAA": "cut short",
	} {
		u, err := url.Parse("https://example.org" + address)
		require.NoError(t, err)
		task, fault := openTask(store, u)
		assert.Nil(t, task)
		assert.Contains(t, fault, want, address)
	}
	require.Empty(t, keepLearner(store, "Sam"))
	for _, n := range []string{"0", "5", "x", ""} {
		u, _ := url.Parse("https://example.org/work?n=" + n + "#" + s.Link())
		task, fault := openTask(store, u)
		assert.Nil(t, task, n)
		assert.Contains(t, fault, "expected 1 to 4")
	}
}

func TestSavedSetsAreCheckedBeforeUse(t *testing.T) {
	for _, bad := range []string{`{"version":9}`, `{"version":1,"sheets":[{}],"at":[]}`, `{"version":1,"sheets":[{"kind":"sung"}],"at":[""]}`, `[]`, `{"version":1,"marks":3}`} {
		var w setWork
		assert.Error(t, decode[setWork](([]byte)(bad), &w), bad)
	}
	for _, bad := range []string{`{"version":9}`, `{"version":1,"set":{"items":[{"skill":"none"}]}}`} {
		var m setSaved
		assert.Error(t, decode[setSaved](([]byte)(bad), &m), bad)
	}
}

func TestTheTableOfMarksHasAShadeForEachFifth(t *testing.T) {
	assert.Equal(t, []int{0, 0, 1, 2, 4, 4}, []int{heatOf(0, 0), heatOf(0, 6), heatOf(2, 6), heatOf(3, 6), heatOf(5, 6), heatOf(6, 6)})
}

// Without help a tapped answer is held and may be changed; nothing tells it
// from a right one, and what is handed in is what was chosen last.
func TestASilentTapTellsNothing(t *testing.T) {
	s := someTestSet(sets.NoHelp)
	for i, k := range s.Items {
		if k.Kind != sets.Choice && k.Kind != sets.Mistake {
			continue
		}
		task, err := s.Task(i, "Sam")
		require.NoError(t, err)
		a := address{skill: task.Skill, seed: task.Seed, house: s.House, kind: kindOfSet(task.Kind)}
		b := newBench(task.Problem, a, sheet{})
		b.silent = true
		for n := range max(len(b.options), len(b.planted.Lines)) {
			b.choose(n)
			assert.Equal(t, []int{n}, b.sheet.Tapped)
			assert.False(t, b.sheet.Done || b.sheet.Marked)
			for j := range n {
				if task.Kind == sets.Mistake {
					assert.Equal(t, b.planted.Lines[j], b.text(j), "lines before the chosen one stand")
				}
			}
			assert.Equal(t, task.Kind == sets.Choice, b.sheet.answered())
		}
	}
}

func TestQuestionsOfReasoningAreKeptAndHandedIn(t *testing.T) {
	for _, help := range sets.Helps {
		store := newMemory()
		require.Empty(t, keepLearner(store, "Sam"))
		s := &sets.Set{Title: "Devices", House: problems.Defaults, Help: help, Own: true, Number: 5}
		for _, kind := range devices.Kinds {
			s.Items = append(s.Items, sets.QuestionOf(kind))
		}
		for n := range s.Items {
			u, err := url.Parse("https://example.org/reason?n=" + string(rune('1'+n)) + "#" + s.Link())
			require.NoError(t, err)
			var r reasonPage
			require.True(t, r.openTask(store, u), r.fault)
			r.option = len(r.q.Options) - 1
			for i := range r.q.Items {
				r.order = append(r.order, i)
			}
			if len(r.picks) > 0 {
				r.spot = r.picks[0].Key
			}
			require.Empty(t, r.lacking())
			require.Empty(t, r.task.keep(store, r.answer()))
			var back reasonPage
			require.True(t, back.openTask(store, u))
			assert.Equal(t, []any{r.option, r.order, r.spot}, []any{back.option, back.order, back.spot}, r.q.Kind)
			assert.False(t, back.done)
		}
		w, says := loadWork(store, s, "Sam", "2031-01-01")
		require.Empty(t, says)
		h, err := w.handIn(s, "2031-01-02T10:00")
		require.NoError(t, err)
		p := sets.NewMarker(s).Mark(h, false)
		require.Equal(t, sets.OnTime, p.Status, p.Says)
		for i := range p.Items {
			assert.True(t, p.Items[i].Tried)
		}
		_, open := w.left(help)
		assert.Equal(t, help != sets.NoHelp, open > 0)
	}
}

func TestTheTimeOfClosing(t *testing.T) {
	assert.Equal(t, "2026-12-18", closing("", "set-closes", "2026-12-18"))
	assert.Equal(t, "2026-12-18T16:00", closing("2026-12-18", "set-closes-at", "16:00"))
	assert.Equal(t, "2026-12-19T16:00", closing("2026-12-18T16:00", "set-closes", "2026-12-19"))
	assert.Equal(t, "2026-12-18", closing("2026-12-18T16:00", "set-closes-at", ""))
	assert.Empty(t, closing("2026-12-18T16:00", "set-closes", ""))
	assert.Empty(t, closing("", "set-closes-at", "16:00"))
}
