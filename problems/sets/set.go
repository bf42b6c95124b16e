// Package sets is what an instructor gives out and gets back: a set of
// problems as a link, a learner's work as a hand-in, and the marks of a class.
//
// There is no account and no server. A [Set] travels whole in a link. A
// [HandIn] holds what was typed and no marks: a [Marker] draws each problem
// again from the set and the learner's name and marks the lines once more.
// Dates are text given from outside; nothing here reads a clock. A checksum
// finds what was damaged or changed by hand; it is no proof against somebody
// who writes a hand-in by program.
package sets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Set is a set of problems as an instructor gives it out.
type Set struct {
	Title   string         `json:"title"`
	Note    string         `json:"note,omitempty"` // to the learners
	House   problems.House `json:"house"`
	Amends  string         `json:"amends,omitempty"` // local amendments, in the instructor's words
	Help    Help           `json:"help"`
	Minutes int            `json:"minutes,omitempty"` // time allowed; 0: as long as it takes
	Pass    int            `json:"pass,omitempty"`    // percent of the marks; 0: none is set
	Closes  string         `json:"closes,omitempty"`  // "2026-12-18" or "2026-12-18T16:00"; empty: never
	Own     bool           `json:"own,omitempty"`     // each learner has numbers of his own
	Number  uint32         `json:"number"`            // what the numbers are drawn from
	Items   []Item         `json:"items"`
}

// Item is one problem of a set.
type Item struct {
	Skill   string `json:"skill"`   // its id; of a question of reasoning that of its kind
	Version int    `json:"version"` // of the skill
	Kind    Kind   `json:"kind"`
	Turn    int    `json:"turn,omitempty"`   // how often it was drawn anew
	Pinned  uint32 `json:"pinned,omitempty"` // seed that everybody gets; 0: drawn
}

// Kind is how a problem of a set is worked.
type Kind string

// Kinds of working.
const (
	Guided  Kind = "guided"  // named lines, each with its blank
	Free    Kind = "lines"   // lines of one's own
	Mistake Kind = "mistake" // a working with a mistake in it, to find
	Choice  Kind = "choice"  // answers to choose from
	Reason  Kind = "reason"  // a question of reasoning, which no skill has
)

// Kinds are the kinds in which the problem of a skill is worked, the usual one
// first. A link names them by their place, so new ones go to the end.
var Kinds = []Kind{Guided, Free, Mistake, Choice}

// Help is what a learner is told before handing in.
type Help string

// Helps.
const (
	AllHelp  Help = "all"   // hints, and lines are marked
	MarkHelp Help = "marks" // lines are marked, no hints
	NoHelp   Help = "none"  // nothing until it is handed in
)

// Helps are all of them, by their place in a link.
var Helps = []Help{AllHelp, MarkHelp, NoHelp}

// Bounds of a set.
const (
	MaxItems     = 60
	MaxTitle     = 80  // characters
	MaxNote      = 400 // characters; of the amendments too
	maxConstants = 20
	maxTurn      = 1 << 16
	maxVersion   = 1 << 16
	maxMinutes   = 24 * 60
)

// Check refuses a set that cannot be given out, with one sentence.
func (s *Set) Check() error {
	switch {
	case s.Title == "":
		return fmt.Errorf("the set has no title, and one is expected")
	case Clean(s.Title, MaxTitle) != s.Title:
		return fmt.Errorf("the title is longer than %d characters or holds signs that do not print", MaxTitle)
	case Clean(s.Note, MaxNote) != s.Note || Clean(s.Amends, MaxNote) != s.Amends:
		return fmt.Errorf("the note or the amendments are longer than %d characters or hold signs that do not print", MaxNote)
	case len(s.Items) == 0:
		return fmt.Errorf("the set has no problems, and at least one is expected")
	case len(s.Items) > MaxItems:
		return fmt.Errorf("the set has %d problems, and at most %d are expected", len(s.Items), MaxItems)
	case !slices.Contains(Helps, s.Help):
		return fmt.Errorf("the help allowed was %q, expected all, marks or none", s.Help)
	case s.Minutes < 0 || s.Minutes > maxMinutes:
		return fmt.Errorf("the time allowed was %d minutes, expected 0 to %d", s.Minutes, maxMinutes)
	case s.Pass < 0 || s.Pass > 100:
		return fmt.Errorf("the pass mark was %d percent, expected 0 to 100", s.Pass)
	case s.Closes != "" && !isTime(s.Closes):
		return fmt.Errorf("the closing date was %q, expected one such as 2026-12-18 or 2026-12-18T16:00", Clean(s.Closes, 40))
	}
	if err := checkHouse(s.House); err != nil {
		return err
	}
	for i := range s.Items {
		if err := s.Items[i].check(); err != nil {
			return fmt.Errorf("problem %d: %w", i+1, err)
		}
	}
	return nil
}

func checkHouse(h problems.House) error {
	switch h.System {
	case unit.US, unit.Metric, unit.Mixed:
	default:
		return fmt.Errorf("the units were %q, expected us, metric or mixed", Clean(string(h.System), 20))
	}
	if _, ok := solver.ProfileByID(h.Code); !ok {
		return fmt.Errorf("the code was %q, which this program does not hold", Clean(h.Code, 20))
	}
	if !(h.TopMin >= 0 && h.TopMin < 1e4) {
		return fmt.Errorf("the pressure at the top was %g, expected 0 to 10000", h.TopMin)
	}
	if a, ok := problems.AloneByWord(string(h.Alone)); !ok || a != h.Alone {
		return fmt.Errorf("what an answer earns that stands alone was %q, expected nothing said, all or none", Clean(string(h.Alone), 20))
	}
	if len(h.Constants) > maxConstants {
		return fmt.Errorf("%d constants are set, and at most %d are expected", len(h.Constants), maxConstants)
	}
	for _, p := range h.Constants {
		c, ok := solver.ConstantByName(p.Name)
		if !ok || !taught(c, h.System, p.Text) {
			return fmt.Errorf("the constant %q was set to %q, which no school is known to teach", Clean(p.Name, 30), Clean(p.Text, 30))
		}
	}
	return nil
}

func taught(c solver.Constant, sys unit.System, text string) bool {
	t := c.In(sys)
	return slices.Contains(t.Accept, text) || slices.Contains(t.Coarse, text)
}

func (it *Item) check() error {
	_, ok := skills.ByID(it.Skill)
	_, asked := reasonOf(it.Skill)
	switch {
	case !ok && !asked:
		return fmt.Errorf("the skill was %q, which this program does not hold", Clean(it.Skill, 40))
	case it.Version < 1 || it.Version > maxVersion:
		return fmt.Errorf("the version of %s was %d, expected 1 to %d", it.Skill, it.Version, maxVersion)
	case asked != (it.Kind == Reason):
		return fmt.Errorf("the kind of %s was %q, and a question of reasoning has the kind reason", it.Skill, Clean(string(it.Kind), 20))
	case !asked && !slices.Contains(Kinds, it.Kind):
		return fmt.Errorf("the kind was %q, expected guided, lines, mistake or choice", Clean(string(it.Kind), 20))
	case it.Turn < 0 || it.Turn > maxTurn:
		return fmt.Errorf("it was drawn anew %d times, expected 0 to %d", it.Turn, maxTurn)
	}
	return nil
}

// ItemOf is a problem of a skill, to be worked in a kind.
func ItemOf(skill *problems.Skill, kind Kind) Item {
	return Item{Skill: skill.ID, Version: skill.Version, Kind: kind}
}

// Earlier says which problems draw other numbers today than when the set was
// made, because their skill has changed since; empty where none does.
func (s *Set) Earlier() string {
	var list []string
	for i := range s.Items {
		if v := versionOf(s.Items[i].Skill); v != 0 && v != s.Items[i].Version {
			list = append(list, strconv.Itoa(i+1))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "This set was made for another version of the program: the numbers of problem " + strings.Join(list, ", ") + " may differ from those of others."
}

// versionOf is the version that this program holds of a skill or a kind of
// question; 0: none.
func versionOf(id string) int {
	if skill, ok := skills.ByID(id); ok {
		return skill.Version
	}
	if _, ok := reasonOf(id); ok {
		return reasonVersion
	}
	return 0
}
