package sets

import (
	"slices"
	"strings"

	"riserwork/problems/devices"
	"riserwork/problems/marking"
)

// reason is a kind of question of reasoning with the id that an item names it
// by.
type reason struct {
	id   string
	kind devices.Kind
}

var reasons = []reason{
	{"reason/missing", devices.Missing},
	{"reason/purpose", devices.Purpose},
	{"reason/without", devices.Without},
	{"reason/flow", devices.Sequence},
	{"reason/place", devices.Place},
	{"reason/wrong", devices.Wrong},
	{"reason/right", devices.Sound},
	{"reason/order", devices.Order},
	{"reason/decide", devices.Decide},
}

// reasonVersion is raised when a seed comes to ask another question.
const reasonVersion = 1

// QuestionOf is a question of reasoning of a kind.
func QuestionOf(kind devices.Kind) Item {
	i := slices.IndexFunc(reasons, func(r reason) bool { return r.kind == kind })
	return Item{Skill: reasons[max(i, 0)].id, Version: reasonVersion, Kind: Reason}
}

// reasonOf is the kind of question that an item names.
func reasonOf(id string) (devices.Kind, bool) {
	for _, r := range reasons {
		if r.id == id {
			return r.kind, true
		}
	}
	return "", false
}

func reasonTitle(kind devices.Kind) string { return "Reasoning: " + string(kind) }

// question is the task of a question of reasoning.
func question(kind devices.Kind, id string, seed uint64) Task {
	return Task{Kind: Reason, Seed: seed, ID: id, Version: reasonVersion, Question: devices.New(kind, seed)}
}

// Answer is an answer to a question of reasoning. It is handed in as what was
// tapped: the option; the items in order, each by its place as handed out; the
// run and the place in it; where a fault is marked, the option and then the
// run and the place. What is not answered yet is -1.
type Answer struct {
	Option int
	Order  []int
	Spot   devices.Spot
	Placed bool
}

// Taps is the answer as it is handed in; empty where nothing is answered.
func (a *Answer) Taps(q *devices.Question) []int {
	spot := []int{-1, -1}
	if a.Placed && q.Drawing != nil {
		spot = []int{runOf(q, a.Spot.Run), a.Spot.At}
	}
	switch q.Kind {
	case devices.Sequence, devices.Order:
		return slices.Clone(a.Order)
	case devices.Place:
		if !a.Placed {
			return nil
		}
		return spot
	case devices.Wrong:
		if !a.Placed && a.Option < 0 {
			return nil
		}
		return append([]int{a.Option}, spot...)
	}
	if a.Option < 0 {
		return nil
	}
	return []int{a.Option}
}

// AnswerOf reads what was tapped; what does not fit the question is left out.
func AnswerOf(q *devices.Question, taps []int) Answer {
	a := Answer{Option: -1}
	switch q.Kind {
	case devices.Sequence, devices.Order:
		for _, n := range taps {
			if n >= 0 && n < len(q.Items) && !slices.Contains(a.Order, n) {
				a.Order = append(a.Order, n)
			}
		}
		return a
	case devices.Place:
		a.spot(q, taps)
		return a
	case devices.Wrong:
		if len(taps) > 1 {
			a.spot(q, taps[1:])
		}
	}
	if len(taps) > 0 && taps[0] >= 0 && taps[0] < len(q.Options) {
		a.Option = taps[0]
	}
	return a
}

func (a *Answer) spot(q *devices.Question, taps []int) {
	if len(taps) >= 2 && taps[0] >= 0 && taps[0] < len(q.Drawing.Runs) && taps[1] >= 0 && taps[1] <= len(q.Drawing.Runs[taps[0]].Stand) {
		a.Spot, a.Placed = devices.Spot{Run: q.Drawing.Runs[taps[0]].Name, At: taps[1]}, true
	}
}

func runOf(q *devices.Question, name string) int {
	return slices.IndexFunc(q.Drawing.Runs, func(r devices.Run) bool { return r.Name == name })
}

// items are the items in the order of the answer.
func (a *Answer) items(q *devices.Question) []string {
	list := make([]string, len(a.Order))
	for i, n := range a.Order {
		list[i] = q.Items[n]
	}
	return list
}

// markReason gives a mark for a right answer; where a fault is to be found,
// one for its place and one for the reason.
func (t *Task) markReason(w *Work, mark *Mark) {
	q := t.Question
	if len(w.Tapped) == 0 {
		return
	}
	a := AnswerOf(q, w.Tapped)
	mark.Tried = true
	judge := func(j devices.Judgement, answer string) {
		if j.Right {
			mark.Marks++
			return
		}
		mark.Faults = append(mark.Faults, Fault{Line: Clean(answer, 160), Verdict: marking.NotRecognised, Says: j.Says})
	}
	switch q.Kind {
	case devices.Sequence, devices.Order:
		items := a.items(q)
		judge(q.Arrange(items), strings.Join(items, "; "))
	case devices.Place:
		judge(q.Put(a.Spot), q.Device.Name+" in another place")
	case devices.Wrong:
		judge(q.Mark(a.Spot), "another place in the drawing")
		judge(q.Choose(a.Option), optionText(q, a.Option))
	default:
		judge(q.Choose(a.Option), optionText(q, a.Option))
	}
}

func optionText(q *devices.Question, i int) string {
	if i < 0 || i >= len(q.Options) {
		return ""
	}
	return q.Options[i].Text
}
