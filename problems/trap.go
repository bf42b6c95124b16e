package problems

import "fmt"

// trapSeeds bounds the seeds that WithTrap tries.
const trapSeeds = 80

// WithTrap draws a problem after the given seed in which a slip is tempting:
// its number is plausible, and it changes the answer.
func WithTrap(skill *Skill, after uint64, house House, slip string) (*Problem, error) {
	for n := uint64(1); n <= trapSeeds; n++ {
		p, err := New(skill, after+n, house)
		if err != nil {
			return nil, err
		}
		if p.tempts(slip) {
			return p, nil
		}
	}
	return nil, fmt.Errorf("problems: no scenario of skill %s in %d seeds makes the slip %q tempting", skill.ID, trapSeeds, slip)
}

func (p *Problem) tempts(slip string) bool {
	for i := range p.Steps {
		for k := range p.Steps[i].Wrongs {
			w := &p.Steps[i].Wrongs[k]
			if w.ID != slip {
				continue
			}
			v := p.Carried(map[int]*Wrong{i: w})
			last := len(v) - 1
			return p.Steps[i].plausible(v[i]) && p.Steps[last].plausible(v[last]) && p.Answer().apartFrom(v[last], p.Answer().Value)
		}
	}
	return false
}
