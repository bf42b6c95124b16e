package record

import "riserwork/problems"

// Word is how a skill stands.
type Word string

// Words for how a skill stands.
const (
	New    Word = "new"       // never met
	Helped Word = "with help" // some lines are still shown
	Shaky  Word = "shaky"     // worked alone, and not yet sure
	Firm   Word = "holds"
)

// View is a state looked at on a day, with the examination that lies ahead.
type View struct {
	State *State
	Today int
	Exam  int // day of the examination; 0: none
}

// exam is the day of the examination while it lies ahead.
func (v View) exam() int {
	if v.Exam <= v.Today {
		return 0
	}
	return v.Exam
}

// Steps are the names of the lines of a skill.
func Steps(s *problems.Skill) []string {
	names := make([]string, len(s.Rules))
	for i := range s.Rules {
		names[i] = s.Rules[i].Name
	}
	return names
}

// Word is how a skill stands.
func (v View) Word(s *problems.Skill) Word {
	k := v.State.Skill(s.ID)
	switch {
	case !k.Met:
		return New
	case k.Given(Steps(s)) > 0:
		return Helped
	case k.Holds():
		return Firm
	}
	return Shaky
}

// DueIn is in how many days a skill is due, zero and less meaning now; false
// where it was never tried.
func (v View) DueIn(s *problems.Skill) (days int, ok bool) {
	k := v.State.Skill(s.ID)
	if k.new() {
		return 0, false
	}
	return k.DueBy(v.exam(), turn(s.ID)) - v.Today, true
}

// Due reports whether a skill is to be worked today.
func (v View) Due(s *problems.Skill) bool {
	days, ok := v.DueIn(s)
	return ok && days <= 0
}

// turn spreads skills over the last weeks before an examination.
func turn(id string) int {
	n := 0
	for _, b := range []byte(id) {
		n += int(b)
	}
	return n
}
