package page

import (
	"net/url"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
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
