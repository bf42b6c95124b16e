package page

import (
	"riserwork/app/record"
	"riserwork/problems/exam"
)

// examNews are the entries for the record: each sum that was answered, as if
// it had been worked by itself. What was left open, and questions of
// reasoning, which belong to no skill, make none.
func examNews(p *exam.Paper, answers []exam.Answer) []record.Entry {
	var list []record.Entry
	for i := range p.Questions {
		q := &p.Questions[i]
		if q.Problem == nil || !q.Given(answers[i]) {
			continue
		}
		a := address{skill: q.Problem.Skill, seed: q.Problem.Seed, house: p.House, kind: choice}
		s := sheet{}
		if q.Written {
			a.kind = free
			for _, line := range answers[i].Lines() {
				s.Lines = append(s.Lines, entry{Text: line})
			}
		}
		b := newBench(q.Problem, a, s)
		if q.Written {
			b.markAll()
		} else {
			b.tap(answers[i].Chosen - 1)
			b.sheet.Marked = true
		}
		list = append(list, b.news()...)
	}
	return list
}
