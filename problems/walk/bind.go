package walk

import (
	"fmt"
	"math"
	"slices"

	"riserwork/problems"
	"riserwork/solver/unit/measure"
)

// finest is how many decimals the numbers of a sum may have.
const finest = 6

// bind puts the building's numbers into a sum. They are printed with as few
// decimals as give the number that the building gives; values are in SI, in
// the order of the sum's givens.
func (w *Walk) bind(s *sum, si float64, values ...float64) (*problems.Problem, error) {
	want := problems.World{House: w.House, Building: w.Building}.Read(*s.Rules[0].Measure, si)
	fine := make([]int, len(values))
	try := func() (*problems.Problem, bool, error) {
		p, err := w.laid(s, values, fine)
		if err != nil {
			return nil, false, err
		}
		step := p.Answer()
		got := p.World().Read(*step.Measure, step.Unit.SI(step.Value))
		return p, got == want && !slices.ContainsFunc(p.Told[:p.Constants], blankGiven), nil
	}
	var last error
	for d := range finest + 1 {
		for i, g := range s.Givens {
			fine[i] = decimals(g.Measure, d)
		}
		p, ok, err := try()
		if !ok {
			last = err
			continue
		}
		for i := range fine { // what need not be so fine is not
			for fine[i] > decimals(s.Givens[i].Measure, 0) {
				fine[i]--
				q, ok, err := try()
				if err != nil || !ok {
					fine[i]++
					break
				}
				p = q
			}
		}
		p.Trim()
		return p, nil
	}
	if last != nil {
		return nil, last
	}
	return nil, fmt.Errorf("walk: %s does not give %s", s.Rules[0].Formula, w.Text(s.Rules[0].Measure, si))
}

// laid is a sum over the values, each rounded to its decimals.
func (w *Walk) laid(s *sum, values []float64, fine []int) (*problems.Problem, error) {
	sheet := problems.NewSheet(nil, w.House)
	sheet.Building = w.Building
	for i, g := range s.Givens {
		sheet.Set(g.Name, round(g.Measure.Unit(w.House.System).FromSI(values[i]), fine[i]))
	}
	p, err := problems.Bind(s, w.Seed, w.House, sheet)
	if err != nil {
		return nil, fmt.Errorf("walk: the sum %s cannot be worked out: %w", s.Rules[0].Formula, err)
	}
	return p, nil
}

// blankGiven reports a given that rounding has made nothing of.
func blankGiven(t problems.Told) bool { return t.Value == 0 }

// decimals of a given when d are tried; a share has no size of its own.
func decimals(of *measure.Of, d int) int {
	if of.Name == measure.Share.Name {
		return max(2, d)
	}
	return d
}

func round(v float64, decimals int) float64 {
	ten := math.Pow10(decimals)
	return math.Round(v*ten) / ten
}
