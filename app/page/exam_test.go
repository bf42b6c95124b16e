package page

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/exam"
	"riserwork/solver/unit"
)

func examPlan(blueprint string, written bool) exam.Plan {
	return exam.Plan{Blueprint: blueprint, Questions: 10, Written: written, Seed: 11, House: problems.Defaults}
}

// sat is a page with a paper begun at a time.
func sat(t *testing.T, plan exam.Plan, began int64) *examPage {
	t.Helper()
	x := &examPage{saved: freshExam(plan, 100, began), own: plan.House}
	x.open(plan.Code())
	require.Empty(t, x.fault)
	require.NotNil(t, x.paper)
	return x
}

// The time goes by the clock of the device: a reload or a locked screen stops
// nothing, and a clock that was put back gives no more than the whole.
func TestExamClock(t *testing.T) {
	plan := examPlan("water", false)
	s := freshExam(plan, 150, 1_000_000)
	minute := time.Minute.Milliseconds()
	assert.Equal(t, 30*time.Minute, s.left(plan, 1_000_000), "20 minutes, stretched by half")
	assert.Equal(t, 18*time.Minute, s.left(plan, 1_000_000+12*minute))
	assert.Equal(t, 30*time.Minute, s.left(plan, 0))
	assert.False(t, s.over(plan, 1_000_000+30*minute-1))
	assert.True(t, s.over(plan, 1_000_000+30*minute))
	s.Beyond = true
	assert.False(t, s.over(plan, 1_000_000+90*minute))
	s = freshExam(plan, 0, 1_000_000)
	assert.False(t, s.over(plan, 1_000_000+900*minute), "no clock")

	for text, left := range map[string]time.Duration{
		"40 min left": 39*time.Minute + time.Second, "5 min left": 5 * time.Minute, "4:59 left": 299 * time.Second, "0:01 left": 10 * time.Millisecond, "0:00 left": -time.Hour,
	} {
		assert.Equal(t, text, leftText(left))
	}
	assert.Equal(t, "5 minutes left.", warning(301*time.Second, 300*time.Second))
	assert.Equal(t, "1 minute left.", warning(20*time.Minute, 30*time.Second), "after a locked screen, the nearest alone")
	assert.Empty(t, warning(299*time.Second, 298*time.Second))
}

func TestExamSaved(t *testing.T) {
	good := freshExam(examPlan("water", true), 125, 5)
	good.Answers[3] = examAnswer{exam.Answer{Text: "a\nb"}, true}
	raw, err := json.Marshal(good)
	require.NoError(t, err)
	var back examSaved
	require.NoError(t, decode(raw, &back))
	assert.Equal(t, good, back)
	for name, change := range map[string]func(*examSaved){
		"version": func(s *examSaved) { s.Version = 9 },
		"code":    func(s *examSaved) { s.Code = "0400" },
		"answers": func(s *examSaved) { s.Answers = s.Answers[:2] },
		"at":      func(s *examSaved) { s.At = 10 },
		"stretch": func(s *examSaved) { s.Stretch = 300 },
		"time":    func(s *examSaved) { s.Began = -1 },
		"text":    func(s *examSaved) { s.Answers[0].Text = string(make([]byte, 5*maxWritten)) },
	} {
		s := back
		s.Answers = append([]examAnswer{}, back.Answers...)
		change(&s)
		assert.Error(t, s.check(), name)
	}
	empty := examSaved{Version: examVersion}
	assert.NoError(t, empty.check())
	assert.False(t, empty.underWay())
}

func TestExamShows(t *testing.T) {
	checkShown(t, shownAs(t, &examPage{plan: examPlan("water", false), stretch: 100, saved: examSaved{Version: examVersion}}))
	for _, b := range exam.Blueprints {
		for _, written := range []bool{false, true} {
			plan := examPlan(b.ID, written)
			if b.ID == "sums" {
				plan.House = problems.House{System: unit.Mixed, Code: "npc"}
			}
			x := sat(t, plan, clockNow())
			for i := range x.paper.Questions {
				x.saved.At = i
				x.turn()
				checkShown(t, shownAs(t, &examPage{saved: x.saved, plan: x.plan, paper: x.paper, picture: x.picture, left: time.Minute, asking: i == 3}))
				q := &x.paper.Questions[i]
				x.saved.Answers[i].Answer = exam.Answer{Chosen: q.Right()%max(1, len(q.Options)) + 1, Text: "17 = 4 psi\n3"}
				if i == 2 {
					x.saved.Answers[i].Answer = exam.Answer{}
				}
			}
			x.saved.Ended = clockNow()
			html := shownAs(t, &examPage{saved: x.saved, plan: x.plan, paper: x.paper, report: x.paper.Mark(x.saved.answers())})
			checkShown(t, html)
			assert.Contains(t, html, "of 10 right")
			assert.Contains(t, html, plan.Code())
		}
	}
	over := sat(t, examPlan("water", false), 1)
	assert.Contains(t, shownAs(t, &examPage{saved: over.saved, plan: over.plan, paper: over.paper}), "The time is over")
}

// Answers are written into the record as if each had been worked by itself.
func TestExamNews(t *testing.T) {
	for _, written := range []bool{false, true} {
		x := sat(t, examPlan("sums", written), 1)
		answers := make([]exam.Answer, 10)
		for i := range 8 {
			q := &x.paper.Questions[i]
			answers[i] = exam.Answer{Chosen: q.Right()}
			if q.Written {
				s := q.Problem.Answer()
				answers[i] = exam.Answer{Text: s.Text(s.Value)}
			}
		}
		if !written {
			answers[0].Chosen = answers[0].Chosen%len(x.paper.Questions[0].Options) + 1
		}
		lines, sheets, done := 0, 0, 0
		for _, e := range examNews(x.paper, answers) {
			switch e.Kind {
			case record.Line:
				lines++
			case record.Sheet:
				sheets++
				if e.Done {
					done++
				}
			}
			assert.NotEmpty(t, e.Skill)
		}
		assert.Equal(t, 8, sheets)
		assert.Equal(t, 8, lines)
		if written {
			assert.Equal(t, 8, done)
		} else {
			assert.Equal(t, 7, done)
		}
	}
}
