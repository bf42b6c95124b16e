package skills_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// seedsPerSkill times the skills and systems makes more than 20,000 scenarios
// in a run of the whole catalogue.
const seedsPerSkill = 200

// seeds is how many seeds a test takes: a tenth in a short run, at least one.
func seeds(n int) int {
	if testing.Short() {
		return max(1, n/10)
	}
	return n
}

func houses() []problems.House {
	return []problems.House{
		{System: unit.US, Code: "shop"}, {System: unit.Metric, Code: "npc"}, {System: unit.Mixed, Code: "npc"},
		{System: unit.US, Code: "ipc"}, {System: unit.US, Code: "upc"},
	}
}

// each calls f with so many drawn problems of every skill under every house.
func each(t *testing.T, n int, f func(t *testing.T, p *problems.Problem)) {
	t.Helper()
	for _, s := range skills.All() {
		t.Run(s.ID, func(t *testing.T) {
			t.Parallel()
			for _, h := range houses() {
				for seed := range uint64(seeds(n)) {
					p, err := problems.New(s, seed, h)
					require.NoError(t, err)
					f(t, p)
				}
			}
		})
	}
}

var nameForm = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
var idForm = regexp.MustCompile(`^[a-z][a-z0-9-]*$`)

// The catalogue covers the trade: eighty skills or more over the chapters.
func TestTheCatalogueIsWide(t *testing.T) {
	assert.GreaterOrEqual(t, len(skills.All()), 80)
	runs := skills.ByChapter()
	assert.GreaterOrEqual(t, len(runs), 8)
	for i, run := range runs {
		assert.Equal(t, i+1, run[0].Chapter, "a chapter has no skill")
		t.Logf("chapter %d: %d skills", run[0].Chapter, len(run))
	}
}

func TestEverySkillIsComplete(t *testing.T) {
	ids := map[string]bool{}
	for _, s := range skills.All() {
		t.Run(s.ID, func(t *testing.T) {
			assert.Regexp(t, idForm, s.ID)
			assert.False(t, ids[s.ID], "id used twice")
			ids[s.ID] = true
			assert.NotEmpty(t, s.Title)
			assert.NotEmpty(t, s.Ask)
			assert.Contains(t, []problems.Kind{problems.Sum, problems.Table, problems.Choice}, s.Kind)
			assert.NotEmpty(t, s.Rules, "rules")
			assert.NotEmpty(t, s.Holds, "why the formula holds")
			assert.NotEmpty(t, s.Sources)
			assert.NotEmpty(t, s.Givens)
			assert.NotNil(t, s.Draw)
			assert.NotNil(t, s.Solve)
			assert.Contains(t, []int{1, 2, 3, 4}, s.Year)
			assert.True(t, s.Chapter >= 1 && s.Chapter <= len(skills.Chapters), "chapter %d has no title", s.Chapter)
			for _, src := range s.Sources {
				assert.NotEmpty(t, src.Says)
				assert.NotEmpty(t, src.Confidence)
			}
			names, slips := map[string]bool{}, map[string]bool{}
			for _, g := range s.Givens {
				checkName(t, names, g.Name)
				assert.NotEmpty(t, g.Says, g.Name)
			}
			for _, r := range s.Rules {
				checkName(t, names, r.Name)
				assert.NotEmpty(t, r.Says, r.Name)
				assert.NotEmpty(t, r.Why, r.Name)
				for _, sl := range r.Slips {
					assert.Regexp(t, idForm, sl.ID)
					assert.False(t, slips[sl.ID], "slip id %s used twice", sl.ID)
					slips[sl.ID] = true
					assert.NotEmpty(t, sl.Did, sl.ID)
					assert.NotEmpty(t, sl.Why, sl.ID)
					assert.NotEmpty(t, sl.Next, sl.ID)
				}
			}
			assert.GreaterOrEqual(t, len(slips), 2, "at least two slips")
		})
	}
}

// A label of a line ends at its colon: what a line works out must not hold
// one, or the line that bears it as its label cannot be read.
func TestLabelsHoldNoColon(t *testing.T) {
	each(t, 1, func(t *testing.T, p *problems.Problem) {
		for i := range p.Steps {
			assert.NotContains(t, p.Fill(p.Steps[i].Says, p.Env()), ":", p.Steps[i].Name)
		}
		for _, told := range p.Told {
			assert.NotContains(t, p.Fill(told.Says, p.Env()), ":", told.Name)
		}
	})
}

// checkName refuses names that a reader of formulas could take for a unit.
func checkName(t *testing.T, seen map[string]bool, name string) {
	t.Helper()
	assert.Regexp(t, nameForm, name)
	assert.False(t, seen[name], "name %s used twice", name)
	seen[name] = true
	_, err := unit.Parse(name)
	assert.Error(t, err, "name %s is a unit too", name)
}

// Formulas must be sound in their dimensions, and the plain arithmetic in the
// problem's units must agree with the arithmetic in SI.
func TestRulesKeepTheirDimensions(t *testing.T) {
	each(t, 3, func(t *testing.T, p *problems.Problem) {
		for i := range p.Steps {
			s := &p.Steps[i]
			q, err := s.Expr.Check(func(name string) (unit.Quantity, bool) {
				for _, told := range p.Told {
					if told.Name == name {
						return told.Unit.Of(told.Value), true
					}
				}
				for _, st := range p.Steps[:i] {
					if st.Name == name {
						return st.Unit.Of(st.Value), true
					}
				}
				return unit.Quantity{}, false
			})
			require.NoError(t, err, "%s: %s", s.Name, s.Expr.Source())
			require.Equal(t, s.Unit.Dim, q.Unit.Dim, "%s is %s, its formula gives %s", s.Name, s.Unit.Dim, q.Unit.Dim)
			if len(s.Choices) > 0 {
				continue
			}
			got := s.Unit.FromSI(q.SI())
			require.InEpsilon(t, s.Value, got, 1e-9, "%s: %s", s.Name, s.Expr.Source())
		}
	})
}

func TestSolverAndRulesAgree(t *testing.T) {
	each(t, seedsPerSkill, func(t *testing.T, p *problems.Problem) {
		a := p.Answer()
		want := a.Unit.FromSI(p.Skill.Solve(p.World()))
		if len(a.Choices) > 0 || a.Whole {
			require.InDelta(t, want, a.Value, 1e-9, "seed %d, %s", p.Seed, p.House.System)
			return
		}
		require.InEpsilon(t, want, a.Value, 1e-9, "seed %d, %s", p.Seed, p.House.System)
	})
}

// Every text must find its numbers.
func TestTextsAreFilled(t *testing.T) {
	each(t, 2, func(t *testing.T, p *problems.Problem) {
		env := p.Env()
		extra := []problems.Word{{Name: "got", Text: "1"}, {Name: "right", Text: "2"}, {Name: "formula", Text: "3"}}
		texts := []string{p.Skill.Ask, p.Skill.Holds}
		texts = append(texts, p.Skill.Cautions...)
		for i := range p.Steps {
			texts = append(texts, p.Steps[i].Says, p.Steps[i].Why)
			for _, w := range p.Steps[i].Wrongs {
				texts = append(texts, w.Did, w.Why, w.Next)
			}
		}
		for _, g := range p.Skill.Givens {
			texts = append(texts, g.Says)
		}
		for _, text := range texts {
			got := p.Fill(text, env, extra...)
			require.False(t, strings.ContainsAny(got, "{}"), "%s", got)
		}
	})
}

// The share of drawn scenarios that cannot be marked for certain is kept low.
func TestFewScenariosAreRejected(t *testing.T) {
	for _, s := range skills.All() {
		t.Run(s.ID, func(t *testing.T) {
			t.Parallel()
			n := seeds(seedsPerSkill)
			for _, h := range houses()[:3] {
				drawn := 0
				for seed := range uint64(n) {
					p, err := problems.New(s, seed, h)
					require.NoError(t, err)
					drawn += p.Drawn
				}
				rejected := 1 - float64(n)/float64(drawn)
				t.Logf("%s %s: %.0f %% rejected", s.ID, h.System, 100*rejected)
				assert.Less(t, rejected, 0.25, "%s", h.System)
			}
		})
	}
}

func TestEveryValueIsPlain(t *testing.T) {
	each(t, 5, func(t *testing.T, p *problems.Problem) {
		for _, told := range p.Told {
			require.False(t, math.IsNaN(told.Value), told.Name)
			require.LessOrEqual(t, len(strings.TrimSpace(told.Text)), 24, told.Text)
		}
		if p.Building != nil {
			require.NoError(t, p.Building.Check())
		}
	})
}
