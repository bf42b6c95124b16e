package marking_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"testing"
	"text/tabwriter"
	"time"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
	"riserwork/solver/unit/measure"
)

// long is a chain of twelve steps with thirty slips, for timing alone.
func long() *problems.Skill {
	s := &problems.Skill{
		ID: "twelve-steps", Version: 1,
		Givens: []problems.Given{{Name: "street", Says: "street", Measure: &measure.Pressure}, {Name: "height", Says: "height", Measure: &measure.Height}},
		Draw: func(s *building.Sheet) {
			s.Tower(building.Plan{})
			s.Set("street", s.Steps(300, 900, 10))
			s.Set("height", s.Steps(40, 90, 1))
		},
	}
	last, slips := "street", 0
	for i := range 12 {
		r := problems.Rule{Name: fmt.Sprintf("step_%d", i), Says: "step", Measure: &measure.Pressure, Formula: fmt.Sprintf("%s + gamma x height x 0.%d", last, 2*i+11)}
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

// timed is a way of marking the long problem whose time is measured.
type timed struct {
	name string
	learner
	slips, free bool
}

var timedWays = []timed{
	{"blanks, right", learner{write: figures(3)}, false, false},
	{"blanks, two slips", learner{write: figures(3)}, true, false},
	{"answer only, two slips", learner{write: figures(4), lines: last}, true, false},
	{"every second line, two slips", learner{write: figures(4), lines: second}, true, false},
	{"free lines, right", learner{write: figures(3)}, false, true},
	{"free lines, two slips", learner{write: figures(3)}, true, true},
	{"free, one number that nothing explains", learner{write: astray, lines: last}, false, true},
	{"free expressions, two slips", learner{write: figures(3), expr: numbersIn}, true, true},
}

// astray writes a number that has nothing to do with the step.
func astray(_ *learner, _ *problems.Step, v float64) (string, float64) { return round(1.3717*v, 4) }

// sheet is a marking to be timed, and how many lines it has.
type sheet struct {
	mark  func()
	lines int
}

func (w timed) sheets(b *testing.B, seeds int) []sheet {
	b.Helper()
	var out []sheet
	for seed := range uint64(seeds) {
		p, err := problems.WithGivens(long(), seed, problems.Defaults, nil)
		if err != nil {
			b.Fatal(err)
		}
		l := w.learner
		l.rng = rand.New(rand.NewPCG(seed, 9))
		var slips map[int]*problems.Wrong
		if w.slips {
			slips = map[int]*problems.Wrong{3: &p.Steps[3].Wrongs[1], 7: &p.Steps[7].Wrongs[0]}
		}
		blanks := l.work(p, slips)
		lines, _ := freeText(blanks)
		s := sheet{func() { marking.Blanks(p, blanks) }, len(lines)}
		if w.free {
			s.mark = func() { marking.Lines(p, lines) }
		}
		out = append(out, s)
	}
	return out
}

// BenchmarkTwelveSteps marks whole sheets of a twelve-step problem with
// thirty slips.
func BenchmarkTwelveSteps(b *testing.B) {
	for _, w := range timedWays {
		b.Run(w.name, func(b *testing.B) {
			sheets := w.sheets(b, 60)
			for i := 0; b.Loop(); i++ {
				sheets[i%len(sheets)].mark()
			}
		})
	}
}

// BenchmarkOneLine prints how long the long problem takes to mark. The browser
// tests run it in a browser too.
func BenchmarkOneLine(b *testing.B) {
	for b.Loop() {
		printTimes(b)
	}
}

// printTimes prints a table of the times. Each sheet counts with the quickest
// of five runs, so that other work of the machine does not.
func printTimes(b *testing.B) {
	seeds, aim := 200, 2000
	if runtime.GOOS == "js" { // a browser on a cheap phone has the time of one frame
		seeds, aim = 60, 16000
	}
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "\ntime to mark in µs, twelve steps, thirty slips\tsheet, median\tsheet, 99 %\tone line, median\tone line, 99 %")
	for _, way := range timedWays {
		var whole, line []float64
		for _, s := range way.sheets(b, seeds) {
			quickest := math.Inf(1)
			for range 5 {
				start := time.Now()
				s.mark()
				quickest = min(quickest, float64(time.Since(start).Nanoseconds())/1e3)
			}
			whole, line = append(whole, quickest), append(line, quickest/float64(s.lines))
		}
		slices.Sort(whole)
		slices.Sort(line)
		n := len(whole)
		fmt.Fprintf(w, "%s\t%.0f\t%.0f\t%.0f\t%.0f\n", way.name, whole[n/2], whole[n*99/100], line[n/2], line[n*99/100])
	}
	fmt.Fprintf(w, "the aim for one line is at most %d\n", aim)
	w.Flush()
}

// printSkills prints for each skill how many drawn scenarios are rejected and
// how wide the right answer is accepted, half of it as a share of the answer.
func printSkills(b *testing.B) {
	const seeds = 100
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "\nskill\tsystem\trejected %\tband median %\tband 90 %\t")
	for _, s := range skills.All() {
		for _, h := range houses {
			drawn := 0
			var bands []float64
			for seed := range uint64(seeds) {
				p, err := problems.New(s, seed, h)
				if err != nil {
					b.Fatal(err)
				}
				drawn += p.Drawn
				a := p.Answer()
				if len(a.Choices) > 0 {
					continue
				}
				band := p.ChainBand((*problems.Step).Coarse)[p.StepSlot(len(p.Steps)-1)]
				bands = append(bands, 50*band.Width()/a.Value)
			}
			rejected := 100 * (1 - float64(seeds)/float64(drawn))
			if len(bands) == 0 {
				fmt.Fprintf(w, "%s\t%s\t%.0f\t-\t-\t\n", s.ID, h.System, rejected)
				continue
			}
			slices.Sort(bands)
			fmt.Fprintf(w, "%s\t%s\t%.0f\t%.1f\t%.1f\t\n", s.ID, h.System, rejected, bands[len(bands)/2], bands[len(bands)*9/10])
		}
	}
	w.Flush()
}
