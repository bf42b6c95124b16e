package record

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

func byID() map[string]*problems.Skill {
	m := map[string]*problems.Skill{}
	for _, s := range skills.All() {
		m[s.ID] = s
	}
	return m
}

// promises checks what a session keeps to.
func promises(t *testing.T, v View, minutes int, items []Item) {
	t.Helper()
	all := byID()
	require.NotEmpty(t, items, "the button always gives work")
	chapters, reasons, inPlan := map[int]bool{}, map[Why]int{}, map[string]bool{}
	for i, it := range items {
		chapters[all[it.Skill].Chapter] = true
		reasons[it.Why]++
		inPlan[it.Skill] = true
		if i > 0 && items[i-1].Skill == it.Skill {
			require.True(t, Example(items, i-1), "day %d: %s twice in a row", v.Today, it.Skill)
		}
		require.False(t, it.Mistake && v.Word(all[it.Skill]) != Shaky, "a mistake is to be found where a skill is half known")
	}
	waiting, dueChapters := 0, map[int]bool{}
	for _, s := range skills.All() {
		if v.Due(s) {
			dueChapters[s.Chapter] = true
			if !inPlan[s.ID] {
				waiting++
			}
		}
	}
	if waiting > 0 {
		require.Zero(t, reasons[WhyShaky]+reasons[WhyEarly], "day %d: %d due skills wait while others are worked", v.Today, waiting)
		for _, it := range items {
			for _, s := range skills.All() {
				require.False(t, it.Why == WhyDue && v.hadTurn(all[it.Skill]) && v.Due(s) && !inPlan[s.ID] && !v.hadTurn(s),
					"day %d: %s comes again before %s had its turn", v.Today, it.Skill, s.ID)
			}
		}
		require.LessOrEqual(t, reasons[WhyNew], 2*max(1, minutes/10), "day %d", v.Today)
	}
	if reasons[WhyDue] > 1 && len(dueChapters) > 1 {
		require.Greater(t, len(chapters), 1, "day %d: one chapter only, though %d are due", v.Today, len(dueChapters))
	}
	took := v.Minutes(skills.All(), items)
	require.LessOrEqual(t, took, minutes+4, "day %d takes %d minutes", v.Today, took)
}

// Invented apprentices at work for 90 days.
func TestNinetyDays(t *testing.T) {
	all := byID()
	for _, c := range []struct {
		name    string
		minutes int
		care    float64
		rest    int // works on all days but every so many; 0: on all
		exam    int
	}{
		{"steady", 10, 0.92, 7, 0},
		{"keen", 20, 0.97, 0, 0},
		{"short of time", 5, 0.9, 0, 0},
		{"struggling", 10, 0.6, 0, 0},
		{"before an examination", 20, 0.92, 7, 90},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := newLearner(11, c.care)
			const start = 20000
			longest, began := 0, 0 // days: the longest wait when due, the last on which a skill was new
			var slowest time.Duration
			for day := range 90 {
				if c.rest > 0 && day%c.rest == 0 && day > 0 {
					continue
				}
				v := View{State: l.state, Today: start + day}
				if c.exam > 0 {
					v.Exam = start + c.exam
				}
				begin := time.Now()
				items := v.Plan(skills.All(), c.minutes)
				slowest = max(slowest, time.Since(begin))
				promises(t, v, c.minutes, items)
				for _, s := range skills.All() {
					if in, ok := v.DueIn(s); ok {
						longest = max(longest, -in)
					}
				}
				l.at = int64(v.Today) * dayMs
				left := len(all) - len(l.state.Skills)
				l.work(v, all, items)
				if len(l.state.Skills) < len(all) && c.exam == 0 {
					if len(all)-len(l.state.Skills) < left {
						began = day
					}
					require.LessOrEqual(t, day-began, patience+1, "day %d: a week without anything new, and %d skills left", day, left)
				}
			}
			met, firm, chapters := 0, 0, map[int]int{}
			v := View{State: l.state, Today: start + 90}
			for _, s := range skills.All() {
				if w := v.Word(s); w != New {
					met++
					chapters[s.Chapter]++
					if w == Firm {
						firm++
					}
				}
			}
			t.Logf("%d entries, %d skills met, %d hold, longest wait when due %d days, slowest plan %v", len(l.log), met, firm, longest, slowest)
			for _, s := range skills.All() {
				assert.NotZero(t, chapters[s.Chapter], "chapter %d starves", s.Chapter)
			}
			assert.LessOrEqual(t, longest, 2*longWait, "a due skill waits")
			if c.exam > 0 {
				again := 0
				for _, s := range skills.All() {
					again += b2i(l.state.Skill(s.ID).Last >= start+c.exam-lastRound)
				}
				t.Logf("%d of %d skills were worked in the three weeks before the examination", again, met)
				assert.Greater(t, 10*again, 9*met)
			}
		})
	}
}

func TestTheFirstSession(t *testing.T) {
	for _, minutes := range []int{5, 10, 20} {
		v := View{State: NewState(), Today: 20000}
		items := v.Plan(skills.All(), minutes)
		promises(t, v, minutes, items)
		require.GreaterOrEqual(t, len(items), 2)
		assert.True(t, Example(items, 0))
		assert.Equal(t, items[0], items[1])
		assert.False(t, Example(items, 1))
		t.Logf("%d minutes: %v", minutes, items)
	}
}

func TestAPlanIsTheSameEveryTime(t *testing.T) {
	l := newLearner(2, 0.8)
	l.at = 20000 * dayMs
	v := View{State: l.state, Today: 20000}
	l.work(v, byID(), v.Plan(skills.All(), 20))
	v.Today += 3
	want := v.Plan(skills.All(), 20)
	for range 20 {
		assert.Equal(t, want, v.Plan(skills.All(), 20))
	}
}

func TestOneSkillAlone(t *testing.T) {
	one := skills.All()[:1]
	l := newLearner(2, 1)
	for day := range 30 {
		l.at = int64(day) * dayMs
		v := View{State: l.state, Today: day}
		items := v.Plan(one, 20)
		require.NotEmpty(t, items)
		if day > 0 {
			require.Len(t, items, 1, "no skill twice in a row")
		}
		l.work(v, byID(), items)
	}
	assert.Empty(t, View{State: l.state}.Plan(nil, 20))
}

func TestMistakesAreForTheHalfKnown(t *testing.T) {
	l := newLearner(4, 0.7)
	found := 0
	for day := range 60 {
		l.at = int64(day+100) * dayMs
		v := View{State: l.state, Today: day + 100}
		items := v.Plan(skills.All()[:12], 20)
		found += len(slices.DeleteFunc(slices.Clone(items), func(it Item) bool { return !it.Mistake }))
		l.work(v, byID(), items)
	}
	assert.NotZero(t, found)
}

// long is a log of 50,000 entries.
func long() *learner {
	l := newLearner(9, 0.9)
	all := skills.All()
	for i := 0; len(l.log) < 50_000; i++ {
		l.at = int64(20000)*dayMs + int64(i)*dayMs/20
		s := all[i%len(all)]
		steps := Steps(s)
		l.solve(s.ID, steps, l.state.Skill(s.ID).Given(steps), func(int) bool { return l.rng.Float64() < 0.9 })
	}
	return l
}

func BenchmarkStartAfter50000Entries(b *testing.B) {
	l := long()
	text, err := l.state.Snapshot()
	require.NoError(b, err)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		s, err := ReadSnapshot(text)
		require.NoError(b, err)
		View{State: s, Today: DayOf(l.at, 0)}.Plan(skills.All(), 20)
	}
}

func BenchmarkPlanAfter50000Entries(b *testing.B) {
	l := long()
	v := View{State: l.state, Today: DayOf(l.at, 0)}
	for b.Loop() {
		v.Plan(skills.All(), 20)
	}
}

func BenchmarkRebuildOf50000Entries(b *testing.B) {
	l := long()
	lines := make([]string, len(l.log))
	for i, e := range l.log {
		var err error
		lines[i], err = e.Write()
		require.NoError(b, err)
	}
	file := File(lines)
	for b.Loop() {
		log, damaged, err := ReadFile(file)
		require.NoError(b, err)
		require.Zero(b, damaged)
		Derive(log)
	}
}
