package problems

import (
	"math"
	"math/rand/v2"
	"slices"

	"riserwork/problems/building"
)

// NewSheet is an empty sheet under the rules of a house, for a scenario that
// several skills share.
func NewSheet(rng *rand.Rand, house House) *building.Sheet { return newSheet(rng, house.normal()) }

// Bind lays a skill over a sheet that holds all its numbers, and works it out.
// It does not ask whether every slip can be told apart; see [Accept].
func Bind(skill *Skill, seed uint64, house House, sheet *building.Sheet) (*Problem, error) {
	p, err := lay(skill, house.normal(), sheet)
	if err != nil {
		return nil, err
	}
	p.Seed, p.Drawn = seed, 1
	return p, p.solvable()
}

// Given is the index in Told of a given; -1 where the skill tells none of
// that name.
func (p *Problem) Given(name string) int {
	return slices.IndexFunc(p.Told[:p.Constants], func(t Told) bool { return t.Given == name })
}

// Carrying is the problem with other values for some givens, each in the
// given's unit, worked out anew; false where a step then has no value.
func (p *Problem) Carrying(values map[string]float64) (*Problem, bool) {
	q := *p
	q.Told, q.Steps = slices.Clone(p.Told), slices.Clone(p.Steps)
	for i := range q.Told[:q.Constants] {
		t := &q.Told[i]
		if v, ok := values[t.Given]; ok {
			t.Value, t.Text = v, t.Unit.Of(v).Text(carriedFigures)
		}
	}
	return &q, q.workOut()
}

// carriedFigures are enough to print a number that was worked out.
const carriedFigures = 4

// Trim takes away the slips that the numbers do not tell apart from the right
// value or from a slip before them, and reports how many. What stays unfit for
// marking is said as [Accept] says it.
func (p *Problem) Trim() (gone int, why string) {
	figures, whole := p.ChainBand(Figures), p.ChainBand((*Step).Coarse)
	for i := range p.Steps {
		s := &p.Steps[i]
		if why := s.usable(whole[p.StepSlot(i)]); why != "" {
			return gone, s.Name + ": " + why
		}
		all := s.Wrongs
		s.Wrongs = nil
		for _, w := range all {
			s.Wrongs = append(s.Wrongs, w)
			if p.apart(i, figures[p.StepSlot(i)]) != "" {
				s.Wrongs = s.Wrongs[:len(s.Wrongs)-1]
				gone++
			}
		}
	}
	return gone, ""
}

// Possible reports whether every step has a value that a building can have:
// one above zero where the right problem's is, a choice on its list.
func (p *Problem) Possible(right *Problem) bool {
	for i := range p.Steps {
		v, r := p.Steps[i].Value, right.Steps[i].Value
		if math.IsNaN(v) || math.IsInf(v, 0) || r > 0 && v <= 0 && len(p.Steps[i].Choices) == 0 {
			return false
		}
		if n := len(p.Steps[i].Choices); n > 0 && (v < 0 || v >= float64(n)) {
			return false
		}
	}
	return true
}
