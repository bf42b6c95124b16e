package problems

import (
	"math/rand/v2"
	"slices"
)

// Planted is a worked answer with a slip in it, to find and put right. Later
// lines follow rightly from the wrong one.
type Planted struct {
	Lines []string // one a step: "0.433 × 96 = 41.6 psi"
	Slip  string
	Wrong int // the first wrong step
}

// Plant works the problem with one slip drawn from turn, plausible to the
// end; false where the skill has none here.
func (p *Problem) Plant(turn uint64) (Planted, bool) {
	type place struct{ step, wrong int }
	var places []place
	for i := range p.Steps {
		for k := range p.Steps[i].Wrongs {
			if p.Steps[i].Wrongs[k].Allowed {
				continue
			}
			v := p.Carried(map[int]*Wrong{i: &p.Steps[i].Wrongs[k]})
			if !slices.ContainsFunc(indexes(len(v)), func(j int) bool { return j >= i && !p.Steps[j].plausible(v[j]) }) {
				places = append(places, place{i, k})
			}
		}
	}
	if len(places) == 0 {
		return Planted{}, false
	}
	r := rand.New(rand.NewPCG(p.Seed+turn, topic(p.Skill, p.House.System)+2))
	at := places[r.IntN(len(places))]
	w := &p.Steps[at.step].Wrongs[at.wrong]
	return Planted{Lines: p.written(at.step, w), Slip: w.ID, Wrong: at.step}, true
}

func indexes(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// Written is the right working as somebody would write it who carries each
// line on as it is rounded, so that every line adds up by itself.
func (p *Problem) Written() []string { return p.written(-1, nil) }

// written is the working with a slip, each line rounded as the worked
// solution is and carried as it stands; a step below zero has none.
func (p *Problem) written(step int, w *Wrong) []string {
	env := p.Env()
	lines := make([]string, len(p.Steps))
	for i := range p.Steps {
		s := &p.Steps[i]
		expr, bound := s.Expr, s.Bound
		if i == step {
			expr, bound = w.Expr, w.Bound
		}
		v := s.rounded(bound.Eval(env))
		lines[i] = expr.Numbers(func(name string) string { return p.bare(name, env) }) + " = " + s.Text(v)
		if len(s.Choices) > 0 {
			lines[i] = s.Text(v)
		}
		env[p.StepSlot(i)] = v
	}
	return lines
}
