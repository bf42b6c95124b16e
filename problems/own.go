package problems

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Own is a given of one's own: a textbook's or a job's number for the problem.
type Own struct {
	Name string `json:"name"` // of the given: "street"
	Text string `json:"text"` // with its unit: "62 psi"; without one it is in the problem's unit
}

// OwnError is one sentence on numbers of one's own that make no problem.
type OwnError struct {
	Given string // the given at fault; empty where they do not go together
	Says  string
}

func (e *OwnError) Error() string {
	if e.Given == "" {
		return "problems: " + e.Says
	}
	return "problems: " + e.Given + ": " + e.Says
}

// WithGivens is the problem of a skill with one's own numbers in place of the
// drawn ones; givens that are not named keep those of the seed. It draws once
// and does not ask whether every slip can be told apart. An error is one
// sentence on the number at fault.
func WithGivens(skill *Skill, seed uint64, house House, own []Own) (*Problem, error) {
	house = house.normal()
	sheet := newSheet(rand.New(rand.NewPCG(seed, topic(skill, house.System))), house)
	skill.Draw(sheet)
	p, err := lay(skill, house, sheet)
	if err != nil {
		return nil, err
	}
	p.Seed, p.Drawn = seed, 1
	return p.With(own)
}

// With is the same problem with one's own numbers in place of the drawn ones.
// The building goes where a number differs from what was drawn for it.
func (p *Problem) With(own []Own) (*Problem, error) {
	q := *p
	q.Told, q.Steps = slices.Clone(p.Told), slices.Clone(p.Steps)
	for _, o := range own {
		if err := q.put(o); err != nil {
			return nil, err
		}
	}
	for i := range q.Told {
		if q.Told[i].Value != p.Told[i].Value {
			q.Building = nil
		}
	}
	return &q, q.solvable()
}

// solvable works the problem out; the first line that comes to nothing that
// can be written is told, with the givens that lead to it.
func (p *Problem) solvable() error {
	p.workOut()
	for i := range p.Steps {
		s := &p.Steps[i]
		what, from := p.Fill(s.Says, p.Env()), p.leadsTo(i)
		switch {
		case math.IsNaN(s.Value) || math.IsInf(s.Value, 0):
			return &OwnError{Says: what + " cannot be worked out from " + from + ": it would take a division by zero, the root of a number below zero, or a row that the table does not have."}
		case len(s.Choices) > 0:
			if s.Value != math.Trunc(s.Value) || s.Value < 0 || int(s.Value) >= len(s.Choices) {
				return &OwnError{Says: what + " is none of the answers to choose from with " + from + "."}
			}
		case s.Value < 0:
			return &OwnError{Says: what + " comes to " + s.Text(s.Value) + " with " + from + ", and it cannot be below zero."}
		}
	}
	return nil
}

// leadsTo names the givens that a step comes from, with their numbers.
func (p *Problem) leadsTo(step int) string {
	var list []string
	for slot := range p.Constants {
		if t := &p.Told[slot]; p.reads(step, slot) {
			list = append(list, p.Fill(t.Says, p.Env())+" "+t.Text)
		}
	}
	switch n := len(list); n {
	case 0:
		return "these numbers"
	case 1:
		return list[0]
	default:
		return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
	}
}

// reads reports whether a step needs a slot, itself or by the steps before it.
func (p *Problem) reads(step, slot int) bool {
	return slices.ContainsFunc(p.Steps[step].Needs, func(n int) bool {
		return n == slot || n >= len(p.Told) && p.reads(n-len(p.Told), slot)
	})
}

// put replaces the number of one given.
func (p *Problem) put(o Own) error {
	for i := range p.Told[:p.Constants] {
		t := &p.Told[i]
		if t.Given != o.Name {
			continue
		}
		of := p.Skill.Givens[i].Measure
		v, says := t.read(o.Text, of, p.House.Imperial)
		if says == "" {
			says = t.outside(v, of, o.Text)
		}
		if says != "" {
			return &OwnError{o.Name, says}
		}
		if v != t.Value {
			t.Value, t.Text = v, t.Unit.Of(v).Text(exact)
		}
		return nil
	}
	return &OwnError{Says: fmt.Sprintf("%q is no given of skill %s, expected one of %s", o.Name, p.Skill.ID, p.givenNames())}
}

// read is a number as typed, in the unit of what is told. Where it cannot be
// read, says is one sentence.
func (t *Told) read(text string, of *measure.Of, imperial bool) (v float64, says string) {
	if strings.TrimSpace(text) == strings.ReplaceAll(t.Text, "\u00a0", " ") {
		return t.Value, "" // as it was drawn, to the last figure
	}
	q, err := unit.ReadWith(text, unit.Options{Imperial: imperial})
	if err == nil && q.Unit.Name == "" {
		q.Unit = t.Unit
	}
	if t.Unit.Zero != unit.Scale {
		q.Unit = q.Unit.Difference()
	}
	v = q.In(t.Unit)
	switch {
	case strings.TrimSpace(text) == "":
		return 0, "Nothing was read, and " + t.kind(of) + " was expected."
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0):
		return 0, "“" + text + "” was read, and " + t.kind(of) + " was expected."
	}
	return v, ""
}

// kind is what is to be put in: "a number in psi or another unit of pressure".
func (t *Told) kind(of *measure.Of) string {
	if t.Unit.IsNumber() {
		return "a plain number"
	}
	return "a number in " + t.Unit.Name + " or another unit of " + of.Name
}

// span is what a number of a measure may be, and why no more. Common
// practice, no source: far past anything a building has.
type span struct{ of, least, most, why string }

var spans = []span{
	{"pressure", "0 psi", "1500 psi", "no pipe of a building holds more"},
	{"absolute pressure", "0 psia", "1500 psia", "no pipe of a building holds more"},
	{"height", "0 ft", "30000 ft", "no building stands higher, nor a mountain"},
	{"pipe length", "0 ft", "100000 ft", "no run of a building is longer"},
	{"flow", "0 gpm", "20000 gpm", "no building draws more"},
	{"temperature", "-60 °F", "400 °F", "neither water nor the air about its pipe goes there"},
	{"velocity", "0 ft/s", "6000 ft/s", "not even a blow runs through water faster"},
	{"electric potential", "-5000 mV", "5000 mV", "no two metals in water are further apart"},
	{"pipe diameter", "0 in", "120 in", "no pipe of a building is wider"},
}

// outside says that a number is no number of its measure; empty where it may be.
func (t *Told) outside(v float64, of *measure.Of, text string) string {
	for _, s := range spans {
		if s.of != of.Name {
			continue
		}
		least, most := t.in(s.least), t.in(s.most)
		if v >= least && v <= most {
			return ""
		}
		return "“" + text + "” was read, and " + t.Unit.Of(least).Text(4) + " to " + t.Unit.Of(most).Text(4) + " was expected: " + s.why + "."
	}
	switch {
	case v < 0:
		return "“" + text + "” was read, and it cannot be below zero."
	case v > mostOwn:
		return "“" + text + "” was read, and that is out of all proportion."
	case of == &measure.Count && v != math.Trunc(v):
		return "“" + text + "” was read, and a whole number was expected: a part of one cannot be built."
	}
	return ""
}

// mostOwn is more than any number that is told, in its unit.
const mostOwn = 1e9

// in is a limit in the unit of what is told.
func (t *Told) in(text string) float64 {
	q, err := unit.Read(text)
	if err != nil {
		return math.NaN()
	}
	return q.In(t.Unit)
}

func (p *Problem) givenNames() string {
	names := make([]string, p.Constants)
	for i := range names {
		names[i] = p.Told[i].Given
	}
	return strings.Join(names, ", ")
}

// Bare is the number of what is told as it is typed, without its unit where
// that stands beside it: "62", 8'-10".
func (t *Told) Bare() string {
	return strings.ReplaceAll(strings.TrimSuffix(strings.TrimSuffix(t.Text, t.Unit.Name), "\u00a0"), "\u00a0", " ")
}
