package record

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"riserwork/problems/marking"
)

// Trap is how much a slip has caught the learner. One sighting is evidence
// and no trait: it weighs 1 on its day and half as much every fortnight.
type Trap struct {
	Weight float64 `json:"w"` // on that day
	Day    int     `json:"day"`
}

// halfLife is in days.
const halfLife = 14

// On is the weight on a day.
func (t *Trap) On(day int) float64 {
	return t.Weight * math.Exp2(-float64(max(day-t.Day, 0))/halfLife)
}

// trap notes the slips that were named for certain, each once a problem.
func (s *State) trap(k *Skill, e *Entry) {
	if e.Verdict != marking.Slip && e.Verdict != marking.TwoSlips {
		return
	}
	o := k.problem(e)
	if o.Closed {
		return
	}
	for _, slip := range e.Slips {
		if slices.Contains(o.Trapped, slip) {
			continue
		}
		o.Trapped = append(o.Trapped, slip)
		key := e.Skill + "/" + slip
		t, ok := s.Traps[key]
		if !ok {
			t = &Trap{}
			s.Traps[key] = t
		}
		day := max(e.Day(), t.Day)
		t.Weight, t.Day = t.On(day)+1, day
	}
}

// Caught is a slip that still weighs.
type Caught struct {
	Skill, Slip string
	Weight      float64
}

// least is the weight below which a slip is forgotten: one sighting after a
// month or so.
const least = 0.2

// Catching are the slips that weigh most on a day, the heaviest first.
func (s *State) Catching(day int) []Caught {
	var list []Caught
	for key, t := range s.Traps {
		if w := t.On(day); w >= least {
			skill, slip, _ := strings.Cut(key, "/")
			list = append(list, Caught{skill, slip, w})
		}
	}
	slices.SortFunc(list, func(a, b Caught) int {
		return cmp.Or(cmp.Compare(b.Weight, a.Weight), cmp.Compare(a.Skill, b.Skill), cmp.Compare(a.Slip, b.Slip))
	})
	return list
}
