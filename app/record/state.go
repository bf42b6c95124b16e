package record

import (
	"cmp"
	"slices"

	"riserwork/problems/marking"
)

// State is what follows from a log.
type State struct {
	Version int               `json:"version"`
	Entries int               `json:"entries"`
	Latest  int64             `json:"latest"` // time of the latest entry
	Last    string            `json:"last"`   // its name
	Begun   int               `json:"begun"`  // the latest day on which a skill was new
	Skills  map[string]*Skill `json:"skills"`
	Days    map[int]int       `json:"days"` // lines marked on each day
	Traps   map[string]*Trap  `json:"traps"`
}

// stateVersion is raised when the rules below change: what was worked out by
// earlier rules is then worked out anew.
const stateVersion = 1

// Skill is what follows for one skill.
type Skill struct {
	Card
	Met       bool            `json:"met,omitempty"`   // seen worked, or tried
	Blank     map[string]bool `json:"blank,omitempty"` // steps that are left to the learner
	Alone     bool            `json:"alone,omitempty"` // so are steps not named in Blank
	Average   float64         `json:"avg,omitempty"`   // moving, of unaided tries: 1 right, 0 not
	Tries     int             `json:"tries,omitempty"` // unaided tries
	RightDays int             `json:"rightDays,omitempty"`
	RightDay  int             `json:"rightDay,omitempty"` // the latest of those days
	Open      open            `json:"open"`
}

// open is the problem under way: what the first marking of each step said.
type open struct {
	Seed    uint64           `json:"seed,omitempty"`
	Way     string           `json:"way,omitempty"`
	Begun   bool             `json:"begun,omitempty"`
	First   map[string]first `json:"first,omitempty"`
	Trapped []string         `json:"trapped,omitempty"`
	Settled bool             `json:"settled,omitempty"`
	Closed  bool             `json:"closed,omitempty"` // the answer stood; what is marked later is no first try
}

// first is how a step was at its first marking.
type first string

const (
	firstRight first = "right"
	firstAided first = "aided" // right after a hint
	firstWrong first = "wrong" // or seen worked
)

// NewState is the state of an empty log.
func NewState() *State {
	return &State{Version: stateVersion, Skills: map[string]*Skill{}, Days: map[int]int{}, Traps: map[string]*Trap{}}
}

// Derive works the state out from a log in any order; an entry that is there
// twice counts once.
func Derive(log []Entry) *State {
	log = slices.Clone(log)
	slices.SortStableFunc(log, byTime)
	s := NewState()
	for i := range log {
		if i == 0 || log[i].ID != log[i-1].ID {
			s.apply(&log[i])
		}
	}
	return s
}

func byTime(a, b Entry) int { return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.ID, b.ID)) }

// Add takes later entries into the state. It reports false, and has changed
// nothing, where one of them is not later than what is already in it: then
// the state is to be derived anew.
func (s *State) Add(log []Entry) bool {
	log = slices.Clone(log)
	slices.SortStableFunc(log, byTime)
	if len(log) > 0 && byTime(log[0], Entry{At: s.Latest, ID: s.Last}) <= 0 {
		return false
	}
	for i := range log {
		if i == 0 || log[i].ID != log[i-1].ID {
			s.apply(&log[i])
		}
	}
	return true
}

// Skill is the state of a skill; one that was never met is the zero Skill.
func (s *State) Skill(id string) *Skill {
	if k, ok := s.Skills[id]; ok {
		return k
	}
	return &Skill{}
}

func (s *State) apply(e *Entry) {
	s.Entries++
	s.Latest, s.Last = e.At, e.ID
	k, ok := s.Skills[e.Skill]
	if !ok {
		k = &Skill{}
		s.Skills[e.Skill] = k
	}
	if !k.Met {
		k.Met, s.Begun = true, max(s.Begun, e.Day())
	}
	switch e.Kind {
	case Line:
		s.Days[e.Day()]++
		k.line(e)
		s.trap(k, e)
	case Sheet:
		k.sheet(e)
	case Brought:
		k.bring(e.From)
	}
}

// problem is the problem under way, a fresh one where the entry is of another.
func (k *Skill) problem(e *Entry) *open {
	if !k.Open.Begun || k.Open.Seed != e.Seed || k.Open.Way != e.Way {
		k.Open = open{Seed: e.Seed, Way: e.Way, Begun: true, First: map[string]first{}}
	}
	return &k.Open
}

// line takes in a marked line. The first marking of a step is what counts; a
// wrong one settles the try at once, so that a problem left in the middle is
// not lost to the schedule.
func (k *Skill) line(e *Entry) {
	o := k.problem(e)
	if _, seen := o.First[e.Step]; seen || o.Closed || !tries(e.Way) || e.Step == "" && e.Verdict == marking.NotTied {
		return
	}
	f := firstRight
	switch {
	case !stands(e.Verdict) || e.Hints >= Shown:
		f = firstWrong
	case e.Hints > 0:
		f = firstAided
	}
	o.First[e.Step] = f
	if e.Step != "" {
		k.blank(e.Step, f != firstWrong)
	}
	if f == firstWrong {
		k.settle(e, false)
	}
}

// stands reports whether a line was got right: its value is right or follows,
// whatever its unit or rounding.
func stands(v marking.Verdict) bool { return v.Good() || v == marking.NotFollowing }

// tries reports whether working in this way is a try of the skill: lines are
// written, not tapped.
func tries(way string) bool { return way == "" || way == "lines" }

// sheet takes in a problem that was marked as a whole.
func (k *Skill) sheet(e *Entry) {
	o := k.problem(e)
	if !e.Done || o.Closed {
		return
	}
	defer o.close()
	if !tries(e.Way) || o.Settled {
		return
	}
	right := true
	for _, f := range o.First {
		right = right && f == firstRight
	}
	if right {
		k.fade(e.Steps)
	}
	if e.Given < len(e.Steps) {
		k.settle(e, right)
	}
}

func (o *open) close() { *o = open{Seed: o.Seed, Way: o.Way, Begun: true, Settled: true, Closed: true} }

// Rules of knowing a skill: the moving average of unaided tries, over at
// least so many days.
const (
	weight    = 0.4
	threshold = 0.9
	leastDays = 2
)

// settle is the outcome of a try. The first outcome of a problem stands.
func (k *Skill) settle(e *Entry, right bool) {
	if k.Open.Settled {
		return
	}
	k.Open.Settled = true
	k.Card = k.Card.Tried(e.Day(), right)
	if e.Given > 0 {
		return
	}
	score := 0.0
	if right {
		score = 1
		if k.RightDays == 0 || e.Day() != k.RightDay {
			k.RightDays++
			k.RightDay = e.Day()
		}
	}
	if k.Tries++; k.Tries == 1 {
		k.Average = score
		return
	}
	k.Average += weight * (score - k.Average)
}

// Holds reports whether the skill is known.
func (k *Skill) Holds() bool { return k.Average >= threshold && k.RightDays >= leastDays }
