package exam

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"slices"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/skills"
)

// Paper is a plan with its questions.
type Paper struct {
	Plan
	Questions []Question
}

// Question is one question of a paper: a problem to work out, or a question
// to reason about.
type Question struct {
	Chapter int
	Problem *problems.Problem // nil where it is reasoned about
	Reason  *devices.Question // nil where it is worked out
	Written bool              // lines are written; else one of the options is chosen
	Options []Option
}

// Option is one answer to choose from.
type Option struct {
	Text  string
	Right bool
	Why   string // of a question of reasoning
	Slip  string // of a problem: the slip that leads there
	Step  int    // the step of that slip
}

// Ask is the question in words.
func (q *Question) Ask() string {
	if q.Problem != nil {
		return problems.Sentence(q.Problem.AskText())
	}
	if q.Reason.Kind == devices.Wrong {
		return q.Reason.Detail.Title + ": one thing is wrong in this drawing. What is it?"
	}
	return q.Reason.Ask
}

// Title is what the question is about.
func (q *Question) Title() string {
	switch {
	case q.Problem != nil:
		return q.Problem.Skill.Title
	case q.Reason.Device != nil && q.Reason.Kind != devices.Missing:
		return problems.Sentence(q.Reason.Device.Name)
	case q.Reason.Detail != nil:
		return q.Reason.Detail.Title
	}
	return skills.ChapterTitle(q.Chapter)
}

// about is what two questions in a row may not share.
func (q *Question) about() string {
	switch {
	case q.Problem != nil:
		return q.Problem.Skill.ID
	case q.Reason.Device != nil:
		return q.Reason.Device.ID
	case q.Reason.Detail != nil:
		return q.Reason.Detail.ID
	}
	return q.Reason.Ask
}

// reasons are the kinds of questions of the chapters that are reasoned about.
var reasons = map[int][]devices.Kind{
	devicesChapter: {devices.Purpose, devices.Without, devices.Decide},
	faultsChapter:  {devices.Missing, devices.Wrong},
}

// New draws the paper of a plan.
func New(plan Plan) (*Paper, error) {
	if err := plan.Check(); err != nil {
		return nil, err
	}
	h := fnv.New64a()
	fmt.Fprintf(h, "exam/%d/%s/%d/%t/%s", Version, plan.Blueprint, plan.Questions, plan.Written, plan.House.System)
	d := drawing{plan, rand.New(rand.NewPCG(uint64(plan.Seed), h.Sum64()))}
	b, _ := BlueprintByID(plan.Blueprint)
	var list []Question
	for _, c := range b.Counts(plan.Questions) {
		var err error
		if list, err = d.chapter(list, c, b.Years); err != nil {
			return nil, err
		}
	}
	d.rng.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	spread(list)
	return &Paper{plan, list}, nil
}

// drawing is a paper under way.
type drawing struct {
	Plan
	rng *rand.Rand
}

// chapter adds the questions of a chapter.
func (d *drawing) chapter(list []Question, c Count, years int) ([]Question, error) {
	if kinds := reasons[c.Chapter]; len(kinds) > 0 {
		order := d.rng.Perm(len(kinds))
		for i := range c.Questions {
			list = append(list, d.reason(list, c.Chapter, kinds[order[i%len(kinds)]]))
		}
		return list, nil
	}
	var from []*problems.Skill
	for _, s := range skills.All() {
		if s.Chapter == c.Chapter && (years == 0 || s.Year <= years) {
			from = append(from, s)
		}
	}
	if len(from) == 0 {
		return nil, fmt.Errorf("exam: chapter %d has no questions to draw", c.Chapter)
	}
	sums, err := d.sums(from, c.Questions)
	return append(list, sums...), err
}

// sums draws n problems, each skill once before any comes twice. An
// examination gives four answers to choose from: skills that give fewer are
// passed over after the first of them, while there are others.
func (d *drawing) sums(from []*problems.Skill, n int) ([]Question, error) {
	var list, spare []Question
	for len(list) < n {
		for _, k := range d.rng.Perm(len(from)) {
			q, err := d.sum(from[k])
			switch {
			case err != nil:
				return nil, err
			case q.few() && slices.ContainsFunc(list, func(o Question) bool { return o.few() }):
				spare = append(spare, q)
			default:
				list = append(list, q)
			}
			if len(list) == n {
				break
			}
		}
		more := min(n-len(list), len(spare))
		list, spare = append(list, spare[:more]...), spare[more:]
	}
	return list, nil
}

// few reports that a question has fewer answers to choose from than an
// examination gives.
func (q *Question) few() bool { return !q.Written && len(q.Options) < enough }

// enough is how many answers an examination gives to choose from.
const enough = 4

// tries bounds how often a question is drawn anew for a better one.
const tries = 12

// sum draws a problem. One with four answers is preferred.
func (d *drawing) sum(skill *problems.Skill) (best Question, err error) {
	for range tries {
		p, fault := problems.New(skill, 1+d.rng.Uint64N(MostSeed), d.House)
		if fault != nil {
			err = fault
			continue
		}
		q := Question{Chapter: skill.Chapter, Problem: p, Written: d.Written && len(p.Answer().Choices) == 0}
		for _, o := range p.Options() {
			q.Options = append(q.Options, Option{Text: o.Text, Right: o.Right, Slip: o.Slip, Step: o.Step})
		}
		if best.Problem == nil || len(q.Options) > len(best.Options) {
			best = q
		}
		if !q.few() || len(p.Answer().Choices) > 0 {
			break
		}
	}
	if best.Problem == nil {
		return best, err
	}
	return best, nil
}

// reason draws a question of reasoning that is not on the paper yet, where
// there is one.
func (d *drawing) reason(list []Question, chapter int, kind devices.Kind) Question {
	var q Question
	for range tries {
		q = Question{Chapter: chapter, Reason: devices.New(kind, 1+d.rng.Uint64N(MostSeed))}
		if !asked(list, &q) {
			break
		}
	}
	for _, o := range q.Reason.Options {
		q.Options = append(q.Options, Option{Text: problems.Sentence(o.Text), Right: o.Right, Why: o.Why, Step: -1})
	}
	return q
}

// asked reports whether a question about the same thing is on the list.
func asked(list []Question, q *Question) bool {
	for i := range list {
		if list[i].about() == q.about() {
			return true
		}
	}
	return false
}

// spread moves questions so that no two in a row are about the same, as far
// as that can be.
func spread(list []Question) {
	fits := func(i int) bool {
		return (i == 0 || list[i].about() != list[i-1].about()) && (i+1 >= len(list) || list[i].about() != list[i+1].about())
	}
	for i := 1; i < len(list); i++ {
		if fits(i) {
			continue
		}
		for j := range list {
			list[i], list[j] = list[j], list[i]
			if fits(i) && fits(j) {
				break
			}
			list[i], list[j] = list[j], list[i]
		}
	}
}
