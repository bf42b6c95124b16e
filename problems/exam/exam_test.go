package exam_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/exam"
	"riserwork/solver/unit"
)

var houses = []problems.House{
	problems.Defaults,
	{System: unit.Metric, Code: "npc"},
	{System: unit.Mixed, Code: "npc", Imperial: true, TopMin: 172.5},
	{System: unit.US, Code: "ipc", Constants: []problems.Pick{{Name: "gamma", Text: "0.434"}}},
}

// planOf is one of many plans: every blueprint, length, way and house comes
// up.
func planOf(i int) exam.Plan {
	b := &exam.Blueprints[i%len(exam.Blueprints)]
	return exam.Plan{
		Blueprint: b.ID, Questions: exam.Lengths[i/len(exam.Blueprints)%len(exam.Lengths)],
		Written: i%5 == 4, Seed: 1 + i*19%exam.MostSeed, House: houses[i%7%len(houses)],
	}
}

func papers(t *testing.T, n int, f func(t *testing.T, p *exam.Paper)) {
	t.Helper()
	if testing.Short() {
		n /= 10
	}
	for i := range n {
		p, err := exam.New(planOf(i))
		require.NoError(t, err)
		f(t, p)
	}
}

// Every paper has its number of questions, each chapter its share within
// rounding, no skill or device twice in a row, and questions of the kind that
// was asked for.
func TestPapersKeepTheirBlueprint(t *testing.T) {
	papers(t, 500, func(t *testing.T, p *exam.Paper) {
		require.Len(t, p.Questions, p.Plan.Questions)
		count := map[int]int{}
		for i := range p.Questions {
			q := &p.Questions[i]
			count[q.Chapter]++
			assert.NotEmpty(t, q.Ask())
			assert.NotEmpty(t, q.Title())
			assert.NotContains(t, q.Ask()+q.Title(), "{")
			if i > 0 {
				assert.NotEqual(t, subject(&p.Questions[i-1]), subject(q), "%s, question %d", p.Code(), i+1)
			}
		}
		b, ok := exam.BlueprintByID(p.Blueprint)
		require.True(t, ok)
		for _, s := range b.Shares {
			assert.InDelta(t, float64(s.Percent)*float64(p.Plan.Questions)/100, count[s.Chapter], 1, "chapter %d", s.Chapter)
			delete(count, s.Chapter)
		}
		assert.Empty(t, count, "chapters that the blueprint does not name")
	})
}

func subject(q *exam.Question) string {
	switch {
	case q.Problem != nil:
		return q.Problem.Skill.ID
	case q.Reason.Device != nil:
		return q.Reason.Device.ID
	}
	return q.Reason.Ask
}

// A question to choose from has one right answer and three wrong ones, or as
// many as the skill gives, no two alike; a written one is a sum.
func TestQuestionsHaveOneRightAnswer(t *testing.T) {
	asked, four, fewest := 0, 0, 9
	papers(t, 500, func(t *testing.T, p *exam.Paper) {
		for i := range p.Questions {
			q := &p.Questions[i]
			if q.Written {
				require.True(t, p.Written)
				require.NotNil(t, q.Problem)
				continue
			}
			right, texts := 0, map[string]bool{}
			for _, o := range q.Options {
				require.NotEmpty(t, o.Text)
				require.False(t, texts[o.Text], "%s: %s twice", q.Title(), o.Text)
				texts[o.Text] = true
				if o.Right {
					right++
				}
				if q.Reason != nil {
					assert.NotEmpty(t, o.Why)
				}
			}
			require.Equal(t, 1, right, q.Title())
			require.True(t, q.Options[q.Right()-1].Right)
			asked++
			fewest = min(fewest, len(q.Options))
			if len(q.Options) >= 4 {
				four++
			} else if q.Problem != nil && len(q.Problem.Answer().Choices) > 0 {
				require.Len(t, q.Options, len(q.Problem.Answer().Choices))
			}
		}
	})
	t.Logf("%d questions to choose from, %d with four answers or more, the fewest %d", asked, four, fewest)
	assert.GreaterOrEqual(t, fewest, 2)
	assert.GreaterOrEqual(t, float64(four), 0.8*float64(asked), "most have as many answers as an examination gives")
}

// right is the right answer to a question, written with its working.
func right(q *exam.Question) exam.Answer {
	if q.Written {
		return exam.Answer{Text: strings.Join(q.Problem.Written(), "\n")}
	}
	return exam.Answer{Chosen: q.Right()}
}

func TestRightAnswersEarnFullMarks(t *testing.T) {
	papers(t, 100, func(t *testing.T, p *exam.Paper) {
		var answers []exam.Answer
		for i := range p.Questions {
			answers = append(answers, right(&p.Questions[i]))
		}
		r := p.Mark(answers)
		for i, m := range r.Questions {
			assert.True(t, m.Right && m.Given, "%s, question %d, %s: %q", p.Code(), i+1, p.Questions[i].Title(), answers[i].Text)
		}
		assert.Equal(t, [3]int{len(answers), len(answers), len(answers)}, [3]int{r.Right, r.Given, r.Of})
		sum := 0
		for _, c := range r.Chapters {
			assert.Equal(t, c.Of, c.Right)
			sum += c.Of
		}
		assert.Equal(t, r.Of, sum)
	})
}

func TestWrongAndMissingAnswers(t *testing.T) {
	p, err := exam.New(exam.Plan{Blueprint: "water", Questions: 20, Seed: 7, House: problems.Defaults})
	require.NoError(t, err)
	answers := make([]exam.Answer, 20)
	for i := range 10 {
		q := &p.Questions[i]
		answers[i] = exam.Answer{Chosen: q.Right()%len(q.Options) + 1}
	}
	answers[10], answers[11] = exam.Answer{Chosen: 99}, exam.Answer{Chosen: -1}
	answers[12] = right(&p.Questions[12])
	r := p.Mark(answers)
	assert.Equal(t, 1, r.Right)
	assert.Equal(t, 11, r.Given)
	assert.Equal(t, exam.Report{}.Right, p.Mark(nil).Right)
	assert.Len(t, p.Mark(nil).Questions, 20)
}

func TestWrittenAnswers(t *testing.T) {
	p, err := exam.New(exam.Plan{Blueprint: "sums", Questions: 20, Written: true, Seed: 7, House: problems.Defaults})
	require.NoError(t, err)
	for i := range p.Questions {
		q := &p.Questions[i]
		if !q.Written {
			continue
		}
		a := q.Problem.Answer()
		assert.True(t, q.Mark(exam.Answer{Text: "\n  " + a.Text(a.Value) + "\n\n"}).Right, "the answer alone: %s", q.Title())
		m := q.Mark(exam.Answer{Text: "I do not know"})
		assert.True(t, m.Given)
		assert.False(t, m.Right)
		assert.False(t, q.Given(exam.Answer{Text: " \n\t", Chosen: 1}))
	}
}

// Outside check: four hours for 120 or 125 questions, as testdata/trade_exams.csv
// has them with their sources, are about the minutes that a question is given.
func TestTimeOfAPaper(t *testing.T) {
	f, err := os.Open("../../testdata/trade_exams.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var hours float64
	var questions []float64
	for _, row := range rows[1:] {
		v, err := strconv.ParseFloat(row[1], 64)
		require.NoError(t, err)
		switch row[2] {
		case "hours":
			hours = v
		case "questions":
			questions = append(questions, v)
		}
	}
	require.Len(t, questions, 2)
	for _, n := range questions {
		each := float64(exam.Plan{Blueprint: "water", Questions: 20}.Minutes()) / 20
		assert.InDelta(t, hours*60/n, each, 0.1)
	}
	assert.Equal(t, 40, exam.Plan{Blueprint: "water", Questions: 20}.Minutes())
	assert.Equal(t, 40+17*3, exam.Plan{Blueprint: "water", Questions: 20, Written: true}.Minutes(), "17 of them are sums")
}

func TestBlueprints(t *testing.T) {
	for _, b := range exam.Blueprints {
		total := 0
		for _, s := range b.Shares {
			total += s.Percent
		}
		assert.Equal(t, 100, total, b.ID)
		for _, n := range exam.Lengths {
			sum := 0
			for _, c := range b.Counts(n) {
				sum += c.Questions
			}
			assert.Equal(t, n, sum, "%s of %d", b.ID, n)
		}
	}
	for _, s := range exam.Weighing {
		assert.NotEmpty(t, s.Confidence)
	}
}

func TestSamePlanSamePaper(t *testing.T) {
	for i := range 8 {
		a, err := exam.New(planOf(i))
		require.NoError(t, err)
		b, err := exam.New(planOf(i))
		require.NoError(t, err)
		assert.Equal(t, said(a), said(b))
		c := planOf(i)
		c.Seed++
		other, err := exam.New(c)
		require.NoError(t, err)
		assert.NotEqual(t, said(a), said(other))
	}
}

func said(p *exam.Paper) string {
	var b strings.Builder
	for i := range p.Questions {
		fmt.Fprintln(&b, p.Questions[i].Ask(), p.Questions[i].Options)
	}
	return b.String()
}

// The fault that is asked for stands in the drawing that is shown.
func TestFaultsAreInTheDrawing(t *testing.T) {
	papers(t, 60, func(t *testing.T, p *exam.Paper) {
		for i := range p.Questions {
			if r := p.Questions[i].Reason; r != nil && r.Kind == devices.Wrong {
				assert.Len(t, r.Detail.Broken(r.Drawing), 1)
			}
		}
	})
}
