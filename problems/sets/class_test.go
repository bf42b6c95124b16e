package sets

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

func TestRightWorkHasFullMarks(t *testing.T) {
	for _, kind := range []Kind{Guided, Free} {
		s := plainSet()
		for i := range s.Items {
			s.Items[i].Kind = kind
		}
		p := NewMarker(s).Mark(handIn(t, s, "Sam", allRight), false)
		assert.Equal(t, OnTime, p.Status, p.Says)
		assert.Equal(t, p.Of, p.Marks)
		assert.Equal(t, 100, p.Percent())
	}
}

func TestTappedWorkIsMarkedByTheFirstTap(t *testing.T) {
	s := plainSet()
	s.Items = s.Items[:2]
	s.Items[0].Kind, s.Items[1].Kind = Choice, Mistake
	choice, err := s.Task(0, "Sam")
	require.NoError(t, err)
	mistake, err := s.Task(1, "Sam")
	require.NoError(t, err)
	require.Equal(t, []Kind{Choice, Mistake}, []Kind{choice.Kind, mistake.Kind})
	right := 0
	for !choice.Options[right].Right {
		right++
	}
	other := (right + 1) % len(choice.Options)
	at := mistake.Planted.Wrong
	lines := make([]string, len(mistake.Steps))
	lines[at] = rightLines(&mistake)[at]
	for _, row := range []struct {
		name            string
		first, second   []int
		lines           []string
		choice, mistake int
	}{
		{"all right", []int{right}, []int{at}, lines, 1, 2},
		{"right at the second tap", []int{other, right}, []int{at + 1, at}, lines, 0, 1},
		{"found and not put right", []int{right}, []int{at}, nil, 1, 1},
		{"nothing", nil, nil, lines, 0, 0},
		{"out of bounds", []int{99}, []int{-1}, nil, 0, 0},
	} {
		h := handIn(t, s, "Sam", func(int, *Task) []string { return nil })
		h.Work[0].Tapped, h.Work[1].Tapped, h.Work[1].Lines = row.first, row.second, row.lines
		h.Seal()
		p := NewMarker(s).Mark(h, false)
		assert.Equal(t, row.choice, p.Items[0].Marks, row.name)
		assert.Equal(t, row.mistake, p.Items[1].Marks, row.name)
		assert.Equal(t, 3, p.Of)
	}
}

func TestStatuses(t *testing.T) {
	s := plainSet()
	s.Closes, s.Minutes = "2026-11-02", 30
	other := plainSet()
	other.Title = "Week 8"
	for _, row := range []struct {
		name string
		bend func(h *HandIn)
		want Status
		says string
	}{
		{"in time", func(h *HandIn) {}, OnTime, "40 minutes of the 30 allowed"},
		{"late", func(h *HandIn) { h.Written = "2026-11-03T00:01"; h.Seal() }, Late, "closed 2026-11-02"},
		{"a line changed", func(h *HandIn) { h.Work[0].Lines[0] = "1 psi" }, Altered, "checksum"},
		{"another's name", func(h *HandIn) { h.Learner = "Jo"; h.Seal() }, Altered, "numbers of another learner"},
		{"another seed", func(h *HandIn) { h.Work[3].Seed++; h.Seal() }, Altered, "Problem 4"},
		{"another skill", func(h *HandIn) { h.Work[0].Skill = "reach"; h.Seal() }, Altered, "not the problem of the set"},
		{"another kind", func(h *HandIn) { h.Work[0].Kind = Choice; h.Seal() }, Altered, "not the problem of the set"},
		{"another version", func(h *HandIn) { h.Work[0].Version = 7; h.Seal() }, Altered, "version 7"},
		{"more problems", func(h *HandIn) { h.Work = append(h.Work, h.Work[0]); h.Seal() }, Altered, "more problems"},
		{"another set", func(h *HandIn) { h.Set = other.Link(); h.Seal() }, Foreign, "“Week 8”"},
	} {
		h := handIn(t, s, "Sam", allRight)
		row.bend(h)
		p := NewMarker(s).Mark(h, false)
		assert.Equal(t, row.want, p.Status, row.name)
		assert.Contains(t, p.Says, row.says, row.name)
	}
}

// A hand-in with marks in it is marked from its lines all the same.
func TestForgedMarksAreNotBelieved(t *testing.T) {
	s := plainSet()
	h := handIn(t, s, "Sam", func(int, *Task) []string { return []string{"1 psi"} })
	var doc map[string]any
	require.NoError(t, json.Unmarshal(h.File(), &doc))
	doc["marks"], doc["of"], doc["status"] = 100, 100, "on-time"
	doc["work"].([]any)[0].(map[string]any)["marks"] = 6
	forged, err := json.Marshal(doc)
	require.NoError(t, err)
	p := NewMarker(s).File("sam.rwork", forged)
	honest := NewMarker(s).Mark(h, false)
	assert.Equal(t, Altered, p.Status)
	assert.Contains(t, p.Says, "more than a hand-in has")
	assert.Equal(t, honest.Marks, p.Marks)
	assert.Less(t, p.Percent(), 50)
}

func TestALearnerCountsOnce(t *testing.T) {
	s := plainSet()
	s.Closes = "2026-11-02"
	c := NewClass(s)
	m := NewMarker(s)
	for i, at := range []string{"2026-11-02T10:00", "2026-11-03T10:00", "2026-11-02T11:00", "2026-11-02T11:00"} {
		h := handIn(t, s, []string{"Sam", "sam ", "SAM", "SAM"}[i], allRight)
		h.Written = at
		h.Seal()
		p := m.Mark(h, false)
		p.Source = fmt.Sprint(i)
		c.Add(p)
	}
	c.Add(m.File("bad", []byte("x")))
	list := c.Papers()
	require.Len(t, list, 5)
	assert.Equal(t, OnTime, list[0].Status)
	assert.Equal(t, "2026-11-02T11:00", list[0].Written)
	var repeated int
	for _, p := range list[1:] {
		assert.False(t, p.Status.Counts())
		if p.Status == Repeated {
			repeated++
		}
	}
	assert.Equal(t, 3, repeated)
	assert.Equal(t, 1, c.Report().Counted)
}

// class is a class of n: learner k has the first k mod 4 problems worked with
// a slip, the rest right.
func class(t *testing.T, s *Set, n int) *Class {
	c, m := NewClass(s), NewMarker(s)
	for k := range n {
		h := handIn(t, s, fmt.Sprintf("Learner %02d", k), func(i int, task *Task) []string {
			if wrong, _, ok := wrongLines(task); ok && i < k%4 {
				return wrong
			}
			return rightLines(task)
		})
		c.Add(m.Mark(h, false))
	}
	return c
}

func TestAReportOfAClass(t *testing.T) {
	s := plainSet()
	r := class(t, s, 12).Report()
	assert.Equal(t, 12, r.Counted)
	require.Len(t, r.Problems, 10)
	assert.Equal(t, 12, r.Problems[0].Tried)
	assert.Equal(t, 3, r.Problems[0].Full, "those whose remainder is 0")
	assert.Equal(t, 12, r.Problems[9].Full)
	assert.InDelta(t, 1, r.Problems[9].Difficulty, 0)
	assert.Nil(t, r.Problems[9].Discrimination)
	require.NotNil(t, r.Problems[1].Discrimination)
	assert.Greater(t, *r.Problems[1].Discrimination, 0.5)
	assert.NotEmpty(t, r.Slips)
	assert.NotEmpty(t, r.Slips[0].Examples[0].Says)
	for i := 1; i < len(r.Slips); i++ {
		assert.GreaterOrEqual(t, r.Slips[i-1].Learners, r.Slips[i].Learners)
	}
	require.Len(t, r.Skills, 10)
	assert.Len(t, r.Skills[0].Shares, 12)
	f, ok := r.FollowUp(s)
	require.True(t, ok)
	require.NoError(t, f.Check())
	assert.Equal(t, 0, len(f.Items)%2)
	none := class(t, s, 1).Report()
	_, ok = none.FollowUp(s)
	assert.False(t, ok)
}

func TestAReportDoesNotDependOnOrder(t *testing.T) {
	s := plainSet()
	a, b := class(t, s, 9), NewClass(s)
	for i := len(a.papers) - 1; i >= 0; i-- {
		b.Add(*a.papers[i])
	}
	assert.Equal(t, a.Report(), b.Report())
}

// The point-biserial correlation is Pearson's product-moment correlation with
// a variable of 0 and 1 (R. F. Tate, Annals of Mathematical Statistics 25,
// 1954, pp. 603-607; from memory).
func TestPointBiserialIsPearson(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	for range 500 {
		n := 3 + r.IntN(40)
		yes, v := make([]bool, n), make([]float64, n)
		x := make([]float64, n)
		for i := range v {
			yes[i], v[i] = r.IntN(2) == 0, float64(r.IntN(30))
			if yes[i] {
				x[i] = 1
			}
		}
		got, want := pointBiserial(yes, v), pearson(x, v)
		if math.IsNaN(got) {
			assert.True(t, math.IsNaN(want) || math.Abs(want) < 1e-6)
			continue
		}
		assert.InDelta(t, want, got, 1e-9)
	}
}

func pearson(x, y []float64) float64 {
	var mx, my float64
	for i := range x {
		mx, my = mx+x[i]/float64(len(x)), my+y[i]/float64(len(y))
	}
	var xy, xx, yy float64
	for i := range x {
		xy += (x[i] - mx) * (y[i] - my)
		xx += (x[i] - mx) * (x[i] - mx)
		yy += (y[i] - my) * (y[i] - my)
	}
	return xy / math.Sqrt(xx*yy)
}

func TestMarksByHandNeedAReason(t *testing.T) {
	s := plainSet()
	c := class(t, s, 4)
	o := Override{Learner: "learner 03", Problem: 1, Marks: 1, Reason: "The sketch shows the method."}
	before := c.Papers()[3]
	require.NoError(t, c.Put(o))
	after := c.Papers()[3]
	assert.Equal(t, before.Marks-before.Items[0].Marks+1, after.Marks)
	assert.Equal(t, o.Reason, after.Items[0].ByHand)
	r := c.Report()
	assert.Contains(t, r.CSV(s), "problem 1: The sketch shows the method.")
	for _, bad := range []Override{
		{Learner: "Learner 03", Problem: 1, Marks: 1}, {Learner: "Learner 03", Problem: 1, Marks: 1, Reason: "\u202e "},
		{Learner: "Learner 03", Problem: 99, Marks: 1, Reason: "x"}, {Learner: "Learner 03", Problem: 1, Marks: 99, Reason: "x"},
		{Learner: "Learner 03", Problem: 1, Marks: -1, Reason: "x"}, {Learner: "Nobody", Problem: 1, Reason: "x"},
	} {
		assert.Error(t, c.Put(bad))
	}
	o.Marks = 0
	require.NoError(t, c.Put(o))
	assert.Zero(t, c.Papers()[3].Items[0].Marks)
}

func TestTheSameWrongLinesArePointedOut(t *testing.T) {
	s := plainSet()
	c, m := NewClass(s), NewMarker(s)
	sam := handIn(t, s, "Sam", func(_ int, task *Task) []string {
		lines, _, ok := wrongLines(task)
		if !ok {
			return rightLines(task)
		}
		for i := range lines {
			lines[i] = "98.71 x 3.3 = 12345 " + task.Steps[i].Unit.Name
		}
		return lines
	})
	jo := handIn(t, s, "Jo", func(i int, _ *Task) []string { return sam.Work[i].Lines })
	c.Add(m.Mark(sam, false))
	c.Add(m.Mark(jo, false))
	c.Add(m.Mark(handIn(t, s, "Kim", allRight), false))
	list := c.Report().Alike
	require.Len(t, list, 1)
	assert.Equal(t, []string{"Jo", "Sam"}, []string{list[0].A, list[0].B})
	assert.GreaterOrEqual(t, list[0].Lines, fewestAlike)
	// With the same numbers for all the same slip is no wonder.
	s.Own = false
	same := NewClass(s)
	m = NewMarker(s)
	for _, h := range []*HandIn{sam, jo} {
		h.Set = s.Link()
		same.Add(m.Mark(h, false))
	}
	assert.Empty(t, same.Report().Alike)
}

func readCSV(t *testing.T, text string) [][]string {
	t.Helper()
	require.True(t, strings.HasPrefix(text, "\ufeff"))
	require.Equal(t, strings.Count(text, "\r\n"), strings.Count(text, "\n"), "every line ends in CR LF")
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	return rows
}

func TestTablesAreReadBack(t *testing.T) {
	s := plainSet()
	s.Pass = 60
	c := class(t, s, 8)
	names := []string{`=HYPERLINK("http://x","y")`, "+1+1", "-2", "@SUM(A1)", "<script>alert(1)</script>", `O"Neil, Pat; jr`, "é 水 ½", "=1\r\n=2"}
	m := NewMarker(s)
	for _, n := range names {
		c.Add(m.Mark(handIn(t, s, n, allRight), false))
	}
	c.Add(m.File("=bad.rwork", []byte("x")))
	r := c.Report()
	rows := readCSV(t, r.CSV(s))
	require.Len(t, rows, 1+8+len(names)+1)
	byName := map[string][]string{}
	for _, row := range rows[1:] {
		assert.Len(t, row, len(rows[0]))
		for _, c := range row {
			assert.False(t, c != "" && strings.ContainsAny(c[:1], "=+-@\t\r"), "a spreadsheet would run %q", c)
		}
		byName[row[0]] = row
	}
	assert.Contains(t, byName, `'=HYPERLINK("http://x","y")`)
	assert.Contains(t, byName, "<script>alert(1)</script>")
	assert.Contains(t, byName, `O"Neil, Pat; jr`)
	assert.Contains(t, byName, "'=1 =2")
	assert.Equal(t, "yes", byName["é 水 ½"][6])
	for i := range r.Papers[:r.Counted] {
		p := &r.Papers[i]
		assert.Equal(t, fmt.Sprint(p.Marks), rows[i+1][3])
		assert.Equal(t, fmt.Sprint(p.Items[2].Marks), rows[i+1][9])
	}
	grades := readCSV(t, r.Grades())
	require.Len(t, grades, 1+r.Counted)
	assert.Len(t, grades[0], 2)
}

// The marks do not depend on how many have the same numbers, and every skill
// can stand in a set in every kind.
func TestEverySkillCanStandInASet(t *testing.T) {
	for n, skill := range skills.All() {
		s := &Set{Title: "x", House: problems.Defaults, Help: NoHelp, Own: n%2 == 0, Number: uint32(n)}
		for _, kind := range Kinds {
			s.Items = append(s.Items, ItemOf(skill, kind))
		}
		p := NewMarker(s).Mark(handIn(t, s, "Sam", allRight), false)
		assert.Equal(t, OnTime, p.Status, skill.ID)
		assert.Equal(t, p.Items[0].Of, p.Items[0].Marks, skill.ID)
	}
}

func BenchmarkMark(b *testing.B) {
	for _, own := range []bool{true, false} {
		b.Run(map[bool]string{true: "own numbers", false: "same numbers"}[own], func(b *testing.B) {
			s := plainSet()
			s.Own = own
			h := New(s, "Sam")
			h.Written = "2026-11-02T09:40"
			for i := range s.Items {
				task, _ := s.Task(i, "Sam")
				h.Work[i] = task.Of()
				h.Work[i].Lines, _, _ = wrongLines(&task)
			}
			file := h.File()
			m := NewMarker(s)
			for b.Loop() {
				m.File("", file)
			}
		})
	}
}
