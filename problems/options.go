package problems

import (
	"math/rand/v2"
	"slices"
)

// Option is one answer to choose from.
type Option struct {
	Text  string
	Value float64 // in the answer's unit
	Right bool
	Slip  string // the slip that leads there; empty for the right one
	Step  int    // the step of that slip
}

// Options are the right answer and up to three wrong ones, each from another
// slip carried through to the answer, in order of size. None is within
// rounding of another.
func (p *Problem) Options() []Option {
	a := p.Answer()
	out := []Option{{Text: a.Text(a.Value), Value: a.Value, Right: true, Step: -1}}
	if len(a.Choices) > 0 {
		return p.wordOptions(out)
	}
	for _, o := range p.wrongAnswers() {
		if len(out) == 4 {
			break
		}
		if slices.ContainsFunc(out, func(x Option) bool { return !a.apartFrom(x.Value, o.Value) || x.Text == o.Text }) {
			continue
		}
		out = append(out, o)
	}
	slices.SortFunc(out, byValue)
	return out
}

func byValue(a, b Option) int {
	switch {
	case a.Value < b.Value:
		return -1
	case a.Value > b.Value:
		return 1
	}
	return 0
}

// wrongAnswers are the plausible answers of all slips, in an order drawn from
// the seed.
func (p *Problem) wrongAnswers() []Option {
	a := p.Answer()
	var out []Option
	for i := range p.Steps {
		for k := range p.Steps[i].Wrongs {
			w := &p.Steps[i].Wrongs[k]
			if w.Allowed {
				continue
			}
			v := p.Carried(map[int]*Wrong{i: w})
			last := v[len(v)-1]
			if a.plausible(last) && a.apartFrom(last, a.Value) {
				out = append(out, Option{Text: a.Text(last), Value: last, Slip: w.ID, Step: i})
			}
		}
	}
	r := rand.New(rand.NewPCG(p.Seed, topic(p.Skill, p.House.System)+1))
	r.Shuffle(len(out), func(i, j int) { out[i], out[j] = out[j], out[i] })
	return out
}

// wordOptions are the words that a decision may have.
func (p *Problem) wordOptions(right []Option) []Option {
	a := p.Answer()
	var out []Option
	for n, c := range a.Choices {
		o := Option{Text: c, Value: float64(n), Step: -1}
		if float64(n) == a.Value {
			o = right[0]
		}
		for _, w := range p.wrongAnswers() {
			if w.Value == o.Value && !o.Right && o.Slip == "" {
				o.Slip, o.Step = w.Slip, w.Step
			}
		}
		out = append(out, o)
	}
	return out
}
