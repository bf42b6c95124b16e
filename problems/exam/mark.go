package exam

import (
	"slices"
	"strings"

	"riserwork/problems/marking"
)

// Answer is what was given to a question.
type Answer struct {
	Chosen int    `json:"chosen,omitempty"` // the option, counted from 1; 0: none
	Text   string `json:"text,omitempty"`   // the lines of a written answer
}

// Lines are the lines of a written answer that are not empty.
func (a Answer) Lines() []string {
	var list []string
	for line := range strings.SplitSeq(a.Text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			list = append(list, line)
		}
	}
	return list
}

// Given reports whether a question has an answer.
func (q *Question) Given(a Answer) bool {
	if q.Written {
		return len(a.Lines()) > 0
	}
	return a.Chosen >= 1 && a.Chosen <= len(q.Options)
}

// Right is the number of the right option, counted from 1.
func (q *Question) Right() int {
	return 1 + slices.IndexFunc(q.Options, func(o Option) bool { return o.Right })
}

// Marked is what an answer is found to be. As in a trade examination an
// answer is right or not; the marks of a written working are told beside it.
type Marked struct {
	Given, Right bool
	Working      *marking.Result // of a written answer that was given
}

// Tally is how a chapter went.
type Tally struct{ Chapter, Right, Given, Of int }

// Report is a marked paper.
type Report struct {
	Questions []Marked
	Chapters  []Tally // in the order of the chapters
	Right     int
	Given     int
	Of        int
}

// Mark marks one answer.
func (q *Question) Mark(a Answer) Marked {
	m := Marked{Given: q.Given(a)}
	switch {
	case !m.Given:
	case q.Written:
		r := marking.Lines(q.Problem, a.Lines())
		m.Working, m.Right = &r, r.Done
	default:
		m.Right = q.Options[a.Chosen-1].Right
	}
	return m
}

// Mark marks a paper; an answer that is missing was not given.
func (p *Paper) Mark(answers []Answer) Report {
	r := Report{Of: len(p.Questions)}
	tally := map[int]*Tally{}
	for i := range p.Questions {
		q := &p.Questions[i]
		var a Answer
		if i < len(answers) {
			a = answers[i]
		}
		m := q.Mark(a)
		r.Questions = append(r.Questions, m)
		t := tally[q.Chapter]
		if t == nil {
			t = &Tally{Chapter: q.Chapter}
			tally[q.Chapter] = t
		}
		t.Of++
		if m.Given {
			t.Given++
			r.Given++
		}
		if m.Right {
			t.Right++
			r.Right++
		}
	}
	for _, t := range tally {
		r.Chapters = append(r.Chapters, *t)
	}
	slices.SortFunc(r.Chapters, func(a, b Tally) int { return a.Chapter - b.Chapter })
	return r
}
