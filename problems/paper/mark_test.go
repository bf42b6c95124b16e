package paper

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/marking"
)

// hand is how somebody writes a value of a step.
type hand func(s *problems.Step, v float64) (text string, kept float64)

// figures writes so many figures and goes on with what is written.
func figures(n int) hand {
	return func(s *problems.Step, v float64) (string, float64) {
		if len(s.Choices) > 0 || s.Whole {
			return s.Text(v), v
		}
		n := max(n, s.Figures)
		kept, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
		text := strconv.FormatFloat(kept, 'f', -1, 64)
		if s.Unit.Name != "" {
			text += " " + s.Unit.Name
		}
		return text, kept
	}
}

// gauge writes whole psi, kPa and feet where that moves the line by little.
func gauge(s *problems.Step, v float64) (string, float64) {
	if s.Least > 0 && math.Abs(math.Round(v)-v) <= 0.02*math.Abs(v) && s.Half(v) >= s.Least/2 {
		v = math.Round(v)
	}
	return figures(3)(s, v)
}

// precise writes three figures and goes on with what the calculator holds.
func precise(s *problems.Step, v float64) (string, float64) {
	text, _ := figures(3)(s, v)
	return text, v
}

// write works a paper through by hand, with a slip in one place; planted is
// false where the slip has no value there, or one of no use.
func write(p *Paper, by hand, part, step int, slip *problems.Wrong) (work [][]string, possible bool) {
	kept := make([][]float64, len(p.Parts))
	for i := range p.Parts {
		x := &p.Parts[i]
		values := map[string]float64{}
		for _, l := range x.From {
			values[l.Given] = kept[l.Part][l.Step]
		}
		x.retell(p.House, values)
		q, ok := x.Carrying(values)
		if !ok || !q.Possible(x.Problem) {
			return nil, false
		}
		env := q.Env()
		var lines []string
		kept[i] = make([]float64, len(q.Steps))
		for j := range q.Steps {
			s := &q.Steps[j]
			v := s.Bound.Eval(env)
			if slip != nil && part == i && step == j {
				v = slip.Bound.Eval(env)
			}
			if math.IsNaN(v) || math.IsInf(v, 0) || v <= 0 && x.Steps[j].Value > 0 && len(s.Choices) == 0 {
				return nil, false
			}
			text, k := by(s, v)
			lines = append(lines, text)
			kept[i][j], env[q.StepSlot(j)] = k, k
		}
		work = append(work, lines)
	}
	return work, true
}

func TestRightPapersGetFullMarks(t *testing.T) {
	t.Parallel()
	hands := map[string]hand{"three figures": figures(3), "five figures": figures(5), "gauge": gauge, "calculator": precise}
	for name, by := range hands {
		full, all := 0, 0
		for _, sys := range systems {
			n := 60
			if name == "three figures" {
				n = papersDrawn
			}
			for seed := range seeds(n) {
				p := mustNew(t, seed, sys)
				work, possible := write(p, by, -1, -1, nil)
				require.True(t, possible, "%s, %s seed %d", name, sys, seed)
				for _, how := range []How{Blanks, Lines} {
					if how == Lines && seed >= 20 {
						continue
					}
					all++
					m := p.Mark(work, how)
					if m.Marks == m.Of {
						full++
						continue
					}
					for i := range m.Parts {
						if r := &m.Parts[i]; r.Marks != r.Of && !t.Failed() {
							t.Logf("%s, %s seed %d part %s: %q, %v", name, sys, seed, p.Parts[i].Name, work[i], says(r))
						}
					}
				}
			}
		}
		t.Logf("%s: %d of %d right papers get full marks", name, full, all)
		assert.Equal(t, all, full, name)
	}
}

func says(r *PartMark) (list []string) {
	for _, f := range r.Lines {
		if f.Verdict != marking.Right && f.Verdict != marking.FollowThrough {
			list = append(list, f.Text+": "+f.Says)
		}
	}
	return list
}

// A slip loses the marks of its own line and no others: what follows rightly
// from it, in its part and in later ones, is right.
func TestSlipLosesItsOwnMarksOnly(t *testing.T) {
	t.Parallel()
	slips, own, later, through, followed, blocked := 0, 0, 0, 0, 0, 0
	for _, sys := range systems {
		for seed := range seeds(15) {
			p := mustNew(t, seed, sys)
			for i := range p.Parts {
				for j := range p.Parts[i].Steps {
					s := &p.Parts[i].Steps[j]
					for k := range s.Wrongs {
						work, possible := write(p, figures(3), i, j, &s.Wrongs[k])
						if !possible {
							blocked++
							continue
						}
						slips++
						m := p.Mark(work, Blanks)
						if m.Parts[i].Of-m.Parts[i].Marks <= 2 {
							own++
						}
						good := true
						for n := range m.Parts {
							if n == i {
								continue
							}
							r := &m.Parts[n]
							good = good && r.Marks == r.Of
							if r.Through {
								through++
								if r.Marks == r.Of {
									followed++
								}
							}
						}
						if good {
							later++
						} else if slips-later < 6 {
							for n := range m.Parts {
								if r := &m.Parts[n]; n != i && r.Marks != r.Of {
									t.Logf("%s seed %d, %s in %s, then %s: %q %v", sys, seed, s.Wrongs[k].ID, p.Parts[i].Name, p.Parts[n].Name, work[n], says(r))
								}
							}
						}
					}
				}
			}
		}
	}
	t.Logf("%d single slips (%d more lead to what no building has): %.2f %% lose at most their own line's marks in their part, %.2f %% none in any other; of %d parts on a wrong number %.2f %% are right by follow-through",
		slips, blocked, 100*share(own, slips), 100*share(later, slips), through, 100*share(followed, through))
	assert.Greater(t, share(own, slips), 0.99)
	assert.Greater(t, share(later, slips), 0.99)
}

func share(n, of int) float64 { return float64(n) / float64(max(1, of)) }
