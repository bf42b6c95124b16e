package sets

import (
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"slices"
	"strings"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/skills"
)

// Task is a problem of a set as one learner gets it.
type Task struct {
	*problems.Problem        // nil where it is a question of reasoning
	ID                string // of the skill, or of the kind of question
	Version           int    // of the same
	Seed              uint64
	Kind              Kind
	Planted           problems.Planted  // where a mistake is to be found
	Options           []problems.Option // where an answer is to be chosen
	Question          *devices.Question // where it is a question of reasoning
}

// Title is what the skill, or the kind of question, is called.
func (t *Task) Title() string {
	if t.Question != nil {
		return reasonTitle(t.Question.Kind)
	}
	return t.Skill.Title
}

// AskText is what the task asks, with its numbers.
func (t *Task) AskText() string {
	if t.Question != nil {
		return t.Question.Ask
	}
	return t.Problem.AskText()
}

// maxSeeds is how many seeds in a row are tried where one draws no scenario.
const maxSeeds = 16

// Seed is what problem i is drawn from for a learner. Where each has numbers
// of his own it depends on the name as well.
func (s *Set) Seed(i int, learner string) uint64 {
	it := &s.Items[i]
	if it.Pinned != 0 {
		return uint64(it.Pinned)
	}
	h := fnv.New64a()
	h.Write(binary.LittleEndian.AppendUint32(nil, s.Number))
	h.Write(binary.LittleEndian.AppendUint32(nil, uint32(i)))
	h.Write(binary.LittleEndian.AppendUint32(nil, uint32(it.Turn)))
	if s.Own {
		h.Write([]byte(Key(learner)))
	}
	v := h.Sum64()
	return (v>>32 ^ v) & (1<<32 - 1)
}

// Task draws problem i for a learner. A kind that the problem does not have,
// such as a mistake to find where no slip is plausible, is guided.
func (s *Set) Task(i int, learner string) (Task, error) {
	if i < 0 || i >= len(s.Items) {
		return Task{}, fmt.Errorf("the set has no problem %d, expected 1 to %d", i+1, len(s.Items))
	}
	it := &s.Items[i]
	if kind, ok := reasonOf(it.Skill); ok {
		return question(kind, it.Skill, s.Seed(i, learner)), nil
	}
	skill, ok := skills.ByID(it.Skill)
	if !ok {
		return Task{}, fmt.Errorf("problem %d is of a skill that this program does not hold", i+1)
	}
	seed := s.Seed(i, learner)
	for n := range uint64(maxSeeds) {
		if p, err := problems.New(skill, seed+n, s.House); err == nil {
			return fitted(p, it.Kind), nil
		}
	}
	return Task{}, fmt.Errorf("no numbers could be drawn for problem %d, so draw it anew", i+1)
}

func fitted(p *problems.Problem, kind Kind) Task {
	t := Task{Problem: p, ID: p.Skill.ID, Version: p.Skill.Version, Seed: p.Seed, Kind: kind}
	ok := true
	switch kind {
	case Mistake:
		t.Planted, ok = p.Plant(0)
	case Choice:
		t.Options = p.Options()
		ok = len(t.Options) > 1
	}
	if !ok {
		t.Kind = Guided
	}
	return t
}

// Blueprint asks for problems of a chapter without naming skills.
type Blueprint struct {
	Chapter int
	Year    int // up to this year of school; 0: any
	Count   int
	Kind    Kind
}

// Draw adds the problems of a blueprint, drawn from the set's number: each
// skill once before any comes twice. The skills themselves go into the link,
// so that it stays the same set whatever the catalogue comes to hold.
func (s *Set) Draw(b Blueprint) error {
	var fit []*problems.Skill
	for _, skill := range skills.All() {
		if skill.Chapter == b.Chapter && (b.Year == 0 || skill.Year <= b.Year) {
			fit = append(fit, skill)
		}
	}
	if len(fit) == 0 {
		return fmt.Errorf("chapter %d has no skill up to year %d", b.Chapter, b.Year)
	}
	if b.Count < 1 || len(s.Items)+b.Count > MaxItems {
		return fmt.Errorf("%d problems of chapter %d were asked for, expected 1 to %d", b.Count, b.Chapter, MaxItems-len(s.Items))
	}
	rng := rand.New(rand.NewPCG(uint64(s.Number), uint64(b.Chapter)<<32|uint64(len(s.Items))))
	rng.Shuffle(len(fit), func(i, j int) { fit[i], fit[j] = fit[j], fit[i] })
	var items []Item
	for n := range b.Count {
		items = append(items, ItemOf(fit[n%len(fit)], b.Kind))
	}
	slices.SortStableFunc(items, func(a, b Item) int { return place(a.Skill) - place(b.Skill) })
	s.Items = append(s.Items, items...)
	return nil
}

// place is where a skill stands in the catalogue.
func place(id string) int {
	return slices.IndexFunc(skills.All(), func(s *problems.Skill) bool { return s.ID == id })
}

// Redraw gives problem i other numbers.
func (s *Set) Redraw(i int) {
	s.Items[i].Turn, s.Items[i].Pinned = (s.Items[i].Turn+1)%maxTurn, 0
}

// Pin holds the numbers that problem i has now, for everybody; pinned already,
// it lets them go.
func (s *Set) Pin(i int) {
	if s.Items[i].Pinned != 0 {
		s.Items[i].Pinned = 0
		return
	}
	s.Items[i].Pinned = max(1, uint32(s.Seed(i, "")))
}

// Label is what step i of the task works out, with its unit or the words to
// choose from.
func (t *Task) Label(i int) string {
	s := &t.Steps[i]
	says := t.Fill(s.Says, t.Env())
	switch {
	case len(s.Choices) > 0:
		return says + " (" + strings.Join(s.Choices, ", ") + ")"
	case s.Unit.Name != "":
		return says + ", in " + s.Unit.Name
	}
	return says
}
