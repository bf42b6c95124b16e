package record

import (
	"encoding/json"
	"errors"
	"fmt"
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"riserwork/problems/marking"
)

// Kind is what an entry tells.
type Kind string

// Kinds of entries.
const (
	Line    Kind = "line"    // a line was marked
	Sheet   Kind = "sheet"   // a whole problem was marked
	Earlier Kind = "earlier" // tries counted before there was a log
	Brought Kind = "brought" // what a code from another device said of a skill
)

// Entry is one thing that happened. What does not belong to its kind is zero.
type Entry struct {
	Version int    `json:"v"`
	ID      string `json:"id"`
	At      int64  `json:"at"`           // milliseconds since 1970-01-01 UTC
	Zone    int    `json:"tz,omitempty"` // minutes east of UTC where it happened
	Kind    Kind   `json:"kind"`
	Skill   string `json:"skill"`

	Draws uint64 `json:"draws,omitempty"` // version of the skill
	Seed  uint64 `json:"seed,omitempty"`
	Way   string `json:"way,omitempty"`   // how it was worked; empty: named blanks
	Given int    `json:"given,omitempty"` // lines at the head that were shown worked

	Step    string          `json:"step,omitempty"` // the step that a line answers
	Text    string          `json:"text,omitempty"` // as typed
	Verdict marking.Verdict `json:"verdict,omitempty"`
	Slips   []string        `json:"slips,omitempty"`
	Hints   int             `json:"hints,omitempty"` // hints shown on the line by then; Shown: it was seen worked

	Steps []string `json:"steps,omitempty"` // of a sheet: all of them in order
	Marks int      `json:"marks,omitempty"`
	Of    int      `json:"of,omitempty"`
	Done  bool     `json:"done,omitempty"` // the answer stands

	Tries int    `json:"tries,omitempty"`
	Right int    `json:"right,omitempty"`
	From  *Carry `json:"from,omitempty"`
}

// Version of the entries that are written now.
const Version = 1

// Shown is the number of hints at which a line has been seen worked.
const Shown = 3

// Bounds of what is read.
const (
	maxEntry = 8 << 10 // bytes of one entry
	maxText  = 2 << 10 // bytes of a typed line
	maxSteps = 60
	maxID    = 80
)

// Day is the day of the entry where it was made, counted from 1970-01-01.
func (e *Entry) Day() int { return DayOf(e.At, e.Zone) }

// DayOf is the day of a time in milliseconds, so many minutes east of UTC.
func DayOf(at int64, zone int) int {
	const day = 24 * 60 * 60 * 1000
	at += int64(zone) * 60 * 1000
	n := at / day
	if at%day < 0 {
		n--
	}
	return int(n)
}

// Write is the entry as one line of text, with a sum that tells whether it
// was changed since.
func (e Entry) Write() (string, error) {
	raw, err := json.Marshal(e)
	if err != nil {
		return "", fmt.Errorf("record: an entry could not be written: %w", err)
	}
	return sum(string(raw)) + " " + string(raw), nil
}

// Read is the entry of a line of text. Entries of earlier versions are
// brought up to this one.
func Read(text string) (Entry, error) {
	var e Entry
	if len(text) > maxEntry {
		return e, errors.New("record: an entry is longer than any that is written")
	}
	want, raw, ok := strings.Cut(text, " ")
	if !ok || sum(raw) != want {
		return e, errors.New("record: an entry is damaged, its sum does not fit it")
	}
	if err := json.Unmarshal([]byte(raw), &e); err != nil {
		return Entry{}, errors.New("record: an entry is not written as entries are")
	}
	if e.Version > Version {
		return Entry{}, fmt.Errorf("record: an entry is of version %d, and versions up to %d are read", e.Version, Version)
	}
	e = e.upgraded()
	if err := e.check(); err != nil {
		return Entry{}, err
	}
	return e, nil
}

// upgrades bring an entry of a version to the next, the first from version 0,
// which counted tries and nothing else.
var upgrades = [Version]func(*Entry){
	func(e *Entry) {
		e.Kind = Earlier
		if e.ID == "" {
			e.ID = "earlier-" + e.Skill
		}
	},
}

func (e Entry) upgraded() Entry {
	for e.Version = max(e.Version, 0); e.Version < Version; e.Version++ {
		upgrades[e.Version](&e)
	}
	return e
}

// FromTally is what a count of tries from before the log becomes in it.
func FromTally(skill string, tries, right int) Entry {
	return Entry{Skill: skill, Tries: tries, Right: right}.upgraded()
}

func (e *Entry) check() error {
	if !slices.Contains([]Kind{Line, Sheet, Earlier, Brought}, e.Kind) {
		return fmt.Errorf("record: an entry is of the kind %q, which is not known", e.Kind)
	}
	if e.ID == "" || len(e.ID) > maxID || e.Skill == "" || len(e.Skill) > maxID || len(e.Step) > maxID {
		return errors.New("record: an entry lacks its name or its skill, or has one too long")
	}
	if len(e.Text) > maxText || len(e.Steps) > maxSteps || len(e.Slips) > maxSteps || e.Given < 0 || e.Given > maxSteps || e.Hints < 0 {
		return errors.New("record: an entry has more in it than is ever written")
	}
	if e.Tries < 0 || e.Right < 0 || e.Right > e.Tries {
		return errors.New("record: an entry counts more right tries than tries")
	}
	if e.Kind == Brought {
		return e.From.check()
	}
	return nil
}

// sum tells whether a text was changed: 32 bits of FNV-1a, in hexadecimal.
func sum(text string) string {
	h := fnv.New32a()
	h.Write([]byte(text))
	return fmt.Sprintf("%08x", h.Sum32())
}

// NewID names an entry by a random number.
func NewID(random uint64) string { return strconv.FormatUint(random, 36) }
