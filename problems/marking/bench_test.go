package marking_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/problems/marking"
	"riserwork/solver/unit/measure"
)

// long is a chain of twelve steps with thirty slips, for timing alone.
func long() *problems.Skill {
	s := &problems.Skill{
		ID: "twelve-steps", Version: 1,
		Givens: []problems.Given{{Name: "street", Says: "street", Measure: measure.Pressure}, {Name: "height", Says: "height", Measure: measure.Height}},
		Draw: func(s *building.Sheet) {
			s.Tower(building.Plan{})
			s.Set("street", s.Steps(300, 900, 10))
			s.Set("height", s.Steps(40, 90, 1))
		},
	}
	last, slips := "street", 0
	for i := range 12 {
		r := problems.Rule{Name: fmt.Sprintf("step_%d", i), Says: "step", Measure: measure.Pressure, Formula: fmt.Sprintf("%s + gamma x height x 0.%d", last, 2*i+11)}
		for k := 0; slips < 30 && k < 3; k++ {
			r.Slips = append(r.Slips, problems.Slip{ID: fmt.Sprintf("slip-%d-%d", i, k), Formula: []string{
				fmt.Sprintf("%s - gamma x height x 0.%d", last, 2*i+11),
				fmt.Sprintf("%s + height x 0.%d", last, 2*i+13),
				fmt.Sprintf("%s + gamma x height x 1.%d", last, 2*i+17),
			}[k]})
			slips++
		}
		s.Rules = append(s.Rules, r)
		last = r.Name
	}
	return s
}

func sheets(b *testing.B, l learner, slip bool) ([]*problems.Problem, [][]string) {
	b.Helper()
	var ps []*problems.Problem
	var lines [][]string
	for seed := range uint64(60) {
		p, err := problems.WithGivens(long(), seed, problems.Defaults, nil)
		if err != nil {
			b.Fatal(err)
		}
		l.rng = rand.New(rand.NewPCG(seed, 9))
		var slips map[int]*problems.Wrong
		if slip {
			slips = map[int]*problems.Wrong{3: &p.Steps[3].Wrongs[1], 7: &p.Steps[7].Wrongs[0]}
		}
		ps, lines = append(ps, p), append(lines, l.work(p, slips))
	}
	return ps, lines
}

// BenchmarkTwelveSteps reports how long one sheet of a twelve-step problem
// with thirty slips takes to mark, median and 99th of a hundred.
func BenchmarkTwelveSteps(b *testing.B) {
	for _, c := range []struct {
		name string
		l    learner
		slip bool
		free bool
	}{
		{"blanks, right", learner{write: figures(3)}, false, false},
		{"blanks, two slips", learner{write: figures(3)}, true, false},
		{"answer only, two slips", learner{write: figures(4), only: true}, true, false},
		{"free lines, two slips", learner{write: figures(3)}, true, true},
	} {
		b.Run(c.name, func(b *testing.B) {
			ps, lines := sheets(b, c.l, c.slip)
			var times []time.Duration
			for i := 0; b.Loop(); i++ {
				k := i % len(ps)
				start := time.Now()
				if c.free {
					text, _ := freeText(lines[k])
					marking.Lines(ps[k], text)
				} else {
					marking.Blanks(ps[k], lines[k])
				}
				times = append(times, time.Since(start))
			}
			slices.Sort(times)
			b.ReportMetric(float64(times[len(times)/2].Microseconds()), "median-µs")
			b.ReportMetric(float64(times[len(times)*99/100].Microseconds()), "p99-µs")
		})
	}
}
