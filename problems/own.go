package problems

import (
	"fmt"
	"math"
	"math/rand/v2"

	"riserwork/solver/unit"
)

// Own is a given of one's own: a textbook's or a job's number for the problem.
type Own struct {
	Name string // of the given: "street"
	Text string // with its unit: "62 psi"; without one it is in the problem's unit
}

// WithGivens is the problem of a skill with one's own numbers in place of the
// drawn ones; givens that are not named keep those of the seed. It draws once
// and does not ask whether every slip can be told apart, so the problem has
// no building to show. An error is one sentence on the number at fault.
func WithGivens(skill *Skill, seed uint64, house House, own []Own) (*Problem, error) {
	house = house.normal()
	sheet := newSheet(rand.New(rand.NewPCG(seed, topic(skill, house.System))), house)
	skill.Draw(sheet)
	p, err := lay(skill, house, sheet)
	if err != nil {
		return nil, err
	}
	p.Seed, p.Drawn = seed, 1
	if len(own) == 0 {
		return p, p.solvable()
	}
	p.Building = nil
	for _, o := range own {
		if err := p.put(o); err != nil {
			return nil, err
		}
	}
	return p, p.solvable()
}

func (p *Problem) solvable() error {
	if !p.workOut() {
		return fmt.Errorf("problems: these givens have no answer: a step of the working divides by zero or takes the root of a negative number")
	}
	return nil
}

// put replaces the number of one given.
func (p *Problem) put(o Own) error {
	for i := range p.Told[:p.Constants] {
		t := &p.Told[i]
		if t.Given != o.Name {
			continue
		}
		v, text, err := t.read(o.Text, p.House.Imperial)
		if err != nil {
			return err
		}
		t.Value, t.Text = v, text
		return nil
	}
	return fmt.Errorf("problems: %q is no given of skill %s, expected one of %s", o.Name, p.Skill.ID, p.givenNames())
}

// read is a number as typed, in the unit of what is told.
func (t *Told) read(text string, imperial bool) (v float64, shown string, err error) {
	q, err := unit.ReadWith(text, unit.Options{Imperial: imperial})
	if err != nil {
		return 0, "", fmt.Errorf("problems: %s: %w", t.Given, err)
	}
	if q.Unit.Name == "" && !t.Unit.IsNumber() {
		q.Unit = t.Unit
	}
	if t.Unit.Zero != unit.Scale {
		q.Unit = q.Unit.Difference()
	}
	v = q.In(t.Unit)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, "", fmt.Errorf("problems: %s was given as %q, expected %s in %s or a unit of the same kind", t.Given, text, t.Unit.Dim, t.Unit.Name)
	}
	return v, t.Unit.Of(v).Text(exact), nil
}

func (p *Problem) givenNames() string {
	names := ""
	for i, t := range p.Told[:p.Constants] {
		if i > 0 {
			names += ", "
		}
		names += t.Given
	}
	return names
}
