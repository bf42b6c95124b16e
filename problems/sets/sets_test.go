package sets

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// plainSet is ten problems with nothing set that need not be.
func plainSet() *Set {
	s := &Set{Title: "Week 7: zones", House: problems.Defaults, Help: AllHelp, Own: true, Number: 70117}
	for _, skill := range skills.All()[:10] {
		s.Items = append(s.Items, ItemOf(skill, Guided))
	}
	return s
}

var signs = []rune("abc XYZ 0189 .,;:'\"<>&=+-@#% éßñ Ω 水 ½ × ° ’\U0001F527")

func words(r *rand.Rand, most int) string {
	text := make([]rune, r.IntN(most)+1)
	for i := range text {
		text[i] = signs[r.IntN(len(signs))]
	}
	return Clean("T"+string(text), most)
}

// someSet is a set with anything set that can be.
func someSet(r *rand.Rand) *Set {
	s := &Set{Title: words(r, MaxTitle), Help: Helps[r.IntN(3)], Own: r.IntN(2) == 0, Number: r.Uint32()}
	s.House = problems.House{System: systems[r.IntN(3)], Code: solver.Profiles[r.IntN(len(solver.Profiles))].ID, Imperial: r.IntN(2) == 0}
	if r.IntN(2) == 0 {
		s.House.TopMin = float64(r.IntN(400)) / 4
		c := solver.Constants[r.IntN(len(solver.Constants))]
		accept := c.In(s.House.System).Accept
		s.House.Constants = []problems.Pick{{Name: c.Name, Text: accept[r.IntN(len(accept))]}}
		s.House.Alone = []problems.Alone{problems.AloneValues, problems.AloneAll, problems.AloneNone}[r.IntN(3)]
		s.Note, s.Amends = words(r, MaxNote), words(r, MaxNote)
		s.Minutes, s.Pass = r.IntN(maxMinutes), r.IntN(101)
		s.Closes = fmt.Sprintf("%04d-%02d-%02dT%02d:%02d", 2000+r.IntN(99), 1+r.IntN(12), 1+r.IntN(28), r.IntN(24), r.IntN(60))
	}
	all := skills.All()
	for range 1 + r.IntN(20) {
		it := ItemOf(all[r.IntN(len(all))], Kinds[r.IntN(4)])
		if r.IntN(4) == 0 {
			it = Item{Skill: reasons[r.IntN(len(reasons))].id, Version: reasonVersion, Kind: Reason}
		}
		if r.IntN(3) == 0 {
			it.Turn = r.IntN(9)
		} else if r.IntN(3) == 0 {
			it.Pinned = r.Uint32()
		}
		s.Items = append(s.Items, it)
	}
	return s
}

// rightLines are the worked solution, one line a step.
func rightLines(t *Task) []string {
	var lines []string
	for _, l := range t.Worked() {
		lines = append(lines, l.Value)
	}
	return lines
}

// wrongLines are the working with the first slip of a step in it, or false.
func wrongLines(t *Task) ([]string, string, bool) {
	p, ok := t.Plant(0)
	return p.Lines, p.Slip, ok
}

// handIn is a learner's hand-in with lines of each task by f.
func handIn(t *testing.T, s *Set, learner string, f func(i int, task *Task) []string) *HandIn {
	t.Helper()
	h := New(s, learner)
	h.Begun, h.Written = "2026-11-02T09:00", "2026-11-02T09:40"
	for i := range s.Items {
		task, err := s.Task(i, learner)
		require.NoError(t, err)
		h.Work[i] = task.Of()
		h.Work[i].Lines = f(i, &task)
		h.Work[i].At = "2026-11-02T09:30"
	}
	h.Seal()
	return h
}

func allRight(_ int, t *Task) []string { return rightLines(t) }

func TestSetsAreChecked(t *testing.T) {
	require.NoError(t, plainSet().Check())
	for _, row := range []struct {
		name string
		bend func(s *Set)
	}{
		{"no title", func(s *Set) { s.Title = "" }},
		{"long title", func(s *Set) { s.Title = string(make([]byte, 200)) }},
		{"turned title", func(s *Set) { s.Title = "a\u202eb" }},
		{"no problems", func(s *Set) { s.Items = nil }},
		{"too many", func(s *Set) { s.Items = make([]Item, MaxItems+1) }},
		{"help", func(s *Set) { s.Help = "much" }},
		{"minutes", func(s *Set) { s.Minutes = -1 }},
		{"pass", func(s *Set) { s.Pass = 101 }},
		{"no such day", func(s *Set) { s.Closes = "2027-02-29" }},
		{"no such hour", func(s *Set) { s.Closes = "2027-02-28T24:00" }},
		{"words for a date", func(s *Set) { s.Closes = "Friday" }},
		{"units", func(s *Set) { s.House.System = "cubits" }},
		{"code", func(s *Set) { s.House.Code = "none" }},
		{"constant", func(s *Set) { s.House.Constants = []problems.Pick{{Name: "gamma", Text: "7"}} }},
		{"answer alone", func(s *Set) { s.House.Alone = "values" }},
		{"skill", func(s *Set) { s.Items[0].Skill = "none" }},
		{"version", func(s *Set) { s.Items[0].Version = 0 }},
		{"kind", func(s *Set) { s.Items[0].Kind = "sung" }},
	} {
		s := plainSet()
		row.bend(s)
		err := s.Check()
		require.Error(t, err, row.name)
		assert.NotContains(t, err.Error(), "\n", row.name)
	}
}

func TestDates(t *testing.T) {
	for _, good := range []string{"2026-12-18", "2024-02-29", "2026-12-18T23:59"} {
		assert.True(t, isTime(good), good)
	}
	for _, bad := range []string{"", "2026-13-01", "2026-04-31", "2026-1-1", "2026-12-18 16:00", "2026-12-18T16:60", "18.12.2026"} {
		assert.False(t, isTime(bad), bad)
	}
	assert.False(t, after("2026-12-18T23:59", "2026-12-18"), "a date closes at the end of its day")
	assert.True(t, after("2026-12-19T00:00", "2026-12-18"))
	assert.True(t, after("2026-12-18T16:01", "2026-12-18T16:00"))
	assert.False(t, after("2026-12-18T16:01", ""))
	assert.Equal(t, 26*60+1, minutesOf("2027-03-01T01:01")-minutesOf("2027-02-27T23:00"))
	assert.Equal(t, 366*24*60, minutesOf("2025-01-01")-minutesOf("2024-01-01"))
}

func TestNamesOfOthersAreText(t *testing.T) {
	for in, want := range map[string]string{
		"  Sam \t\n Poe ":            "Sam Poe",
		"a\x00b\u202ec\u200bd\ufeff": "abcd",
		"<b>Jo</b>":                  "<b>Jo</b>",
		"\xff\xfeJo":                 "Jo",
	} {
		assert.Equal(t, want, Clean(in, 60))
	}
	r := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		text := words(r, 30)
		assert.Equal(t, text, Clean(text, 30))
	}
	assert.Equal(t, "ab", Clean("ab cd", 3))
	assert.Equal(t, Key("  SAM  poe"), Key("Sam Poe"))
}

// The short names of skills in links must tell them apart.
func TestShortNamesOfSkillsDiffer(t *testing.T) {
	for _, s := range skills.All() {
		assert.Equal(t, s.ID, skillOf(shortOf(s.ID)))
	}
}

func TestNumbersOfLearners(t *testing.T) {
	s := plainSet()
	assert.NotEqual(t, s.Seed(0, "Sam"), s.Seed(0, "Jo"))
	assert.Equal(t, s.Seed(0, "Sam"), s.Seed(0, " SAM "))
	assert.NotEqual(t, s.Seed(0, "Sam"), s.Seed(1, "Sam"))
	s.Own = false
	assert.Equal(t, s.Seed(0, "Sam"), s.Seed(0, "Jo"))
	before := s.Seed(0, "")
	s.Redraw(0)
	assert.NotEqual(t, before, s.Seed(0, ""))
	s.Own = true
	s.Pin(0)
	assert.Equal(t, s.Seed(0, "Sam"), s.Seed(0, "Jo"))
	s.Pin(0)
	assert.NotEqual(t, s.Seed(0, "Sam"), s.Seed(0, "Jo"))
}

func TestBlueprintsDrawSkills(t *testing.T) {
	s := &Set{Title: "x", House: problems.Defaults, Help: NoHelp, Number: 3}
	require.NoError(t, s.Draw(Blueprint{Chapter: 1, Count: 4, Kind: Free}))
	seen := map[string]bool{}
	for _, it := range s.Items {
		skill, _ := skills.ByID(it.Skill)
		assert.Equal(t, 1, skill.Chapter)
		seen[it.Skill] = true
	}
	assert.Len(t, seen, 4)
	require.NoError(t, s.Check())
	assert.Error(t, s.Draw(Blueprint{Chapter: 99, Count: 1}))
	assert.Error(t, s.Draw(Blueprint{Chapter: 1, Count: MaxItems}))
	for _, it := range s.Items {
		assert.Equal(t, Free, it.Kind)
	}
}

func TestTasksAreTheSameAgain(t *testing.T) {
	s := plainSet()
	s.House.System = unit.Metric
	for i := range s.Items {
		s.Items[i].Kind = Kinds[i%4]
		a, err := s.Task(i, "Sam")
		require.NoError(t, err)
		b, err := s.Task(i, "sam")
		require.NoError(t, err)
		assert.Equal(t, a.AskText(), b.AskText())
		assert.Equal(t, a.Kind, b.Kind)
	}
	_, err := s.Task(99, "Sam")
	assert.Error(t, err)
}

func TestJSONOfASetIsTheSet(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		s := someSet(r)
		raw, err := json.Marshal(s)
		require.NoError(t, err)
		var back Set
		require.NoError(t, json.Unmarshal(raw, &back))
		assert.Equal(t, *s, back)
	}
}
