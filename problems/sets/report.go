package sets

import (
	"cmp"
	"math"
	"slices"

	"riserwork/problems/skills"
)

// Report is what there is to tell of a class.
type Report struct {
	Version  int          `json:"version"`
	Title    string       `json:"title"`
	Set      string       `json:"set"` // the code of its link
	Papers   []Paper      `json:"papers"`
	Counted  int          `json:"counted"` // papers, from the first, that count
	Problems []ProblemRow `json:"problems"`
	Skills   []SkillRow   `json:"skills"`
	Slips    []SlipRow    `json:"slips"`
	Alike    []Alike      `json:"alike"`
}

const reportVersion = 1

// ProblemRow is how the class did on one problem.
type ProblemRow struct {
	Problem int    `json:"problem"` // the first is 1
	Skill   string `json:"skill"`
	Title   string `json:"title"`
	Kind    Kind   `json:"kind"`
	Of      int    `json:"of"`
	Tried   int    `json:"tried"` // learners who wrote something
	Full    int    `json:"full"`  // learners with full marks
	// Difficulty is the mean share of the marks, 0 to 1: the higher, the
	// easier, as the word is used of test items.
	Difficulty float64 `json:"difficulty"`
	// Discrimination is the point-biserial correlation of full marks here
	// with the marks on all the other problems, -1 to 1; nil where all or
	// none have full marks or the others do not differ.
	Discrimination *float64 `json:"discrimination"`
}

// SkillRow is how the class did on one skill.
type SkillRow struct {
	Skill   string    `json:"skill"`
	Title   string    `json:"title"`
	Chapter int       `json:"chapter"`
	Share   float64   `json:"share"`  // of the marks, 0 to 1
	Shares  []float64 `json:"shares"` // by learner, in the order of the papers
}

// SlipRow is a slip and who made it.
type SlipRow struct {
	Skill    string    `json:"skill"`
	Slip     string    `json:"slip"`
	Learners int       `json:"learners"`
	Examples []Example `json:"examples"`
}

// Example is one line with a slip.
type Example struct {
	Learner string `json:"learner"`
	Problem int    `json:"problem"`
	Line    string `json:"line"`
	Says    string `json:"says,omitempty"`
}

// maxExamples of a slip are shown.
const maxExamples = 3

// Report works out what there is to tell.
func (c *Class) Report() Report {
	r := Report{
		Version: reportVersion, Title: c.Set.Title, Set: c.Set.Link(),
		Papers: c.Papers(), Problems: []ProblemRow{}, Skills: []SkillRow{}, Slips: []SlipRow{}, Alike: []Alike{},
	}
	var counted []*Paper
	for i := range r.Papers {
		if p := &r.Papers[i]; p.Status.Counts() {
			counted = append(counted, p)
		}
	}
	r.Counted = len(counted)
	for i := range c.Set.Items {
		r.Problems = append(r.Problems, c.problem(i, counted))
	}
	r.Skills = append(r.Skills, c.skills(counted)...)
	r.Slips = append(r.Slips, c.slips(counted)...)
	r.Alike = append(r.Alike, alike(counted)...)
	return r
}

func titleOfSkill(id string) (title string, chapter int) {
	if s, ok := skills.ByID(id); ok {
		return s.Title, s.Chapter
	}
	if kind, ok := reasonOf(id); ok {
		return reasonTitle(kind), 0
	}
	return id, 0
}

func (c *Class) problem(i int, counted []*Paper) ProblemRow {
	it := &c.Set.Items[i]
	row := ProblemRow{Problem: i + 1, Skill: it.Skill, Kind: it.Kind}
	row.Title, _ = titleOfSkill(it.Skill)
	var full []bool
	var rest []float64
	var sum, of int
	for _, p := range counted {
		m := &p.Items[i]
		row.Of = m.Of
		sum, of = sum+m.Marks, of+m.Of
		if m.Tried {
			row.Tried++
		}
		all := m.Of > 0 && m.Marks == m.Of
		if all {
			row.Full++
		}
		full, rest = append(full, all), append(rest, float64(p.Marks-m.Marks))
	}
	row.Difficulty = share(sum, of)
	if d := pointBiserial(full, rest); !math.IsNaN(d) {
		d = math.Round(d*1e4) / 1e4
		row.Discrimination = &d
	}
	return row
}

func share(part, of int) float64 {
	if of == 0 {
		return 0
	}
	return math.Round(float64(part)/float64(of)*1e4) / 1e4
}

// pointBiserial is the correlation of a yes or no with a number:
//
//	r = (M1 - M0) / s x sqrt(p q)
//
// M1 and M0 are the means of the number where it is yes and no, s its standard
// deviation over all (divisor n), p and q the shares of yes and no. NaN where
// it is not defined.
func pointBiserial(yes []bool, v []float64) float64 {
	var sum, squares, sumYes float64
	n, nYes := float64(len(v)), 0.0
	for i, x := range v {
		sum += x
		squares += float64(x * x)
		if yes[i] {
			nYes++
			sumYes += x
		}
	}
	variance := squares/n - float64(sum/n*sum/n)
	if nYes == 0 || nYes == n || !(variance > 1e-9) {
		return math.NaN()
	}
	m1, m0 := sumYes/nYes, (sum-sumYes)/(n-nYes)
	return (m1 - m0) / math.Sqrt(variance) * math.Sqrt(nYes/n*(1-nYes/n))
}

func (c *Class) skills(counted []*Paper) []SkillRow {
	var rows []SkillRow
	for i := range c.Set.Items {
		id := c.Set.Items[i].Skill
		if slices.ContainsFunc(rows, func(r SkillRow) bool { return r.Skill == id }) {
			continue
		}
		row := SkillRow{Skill: id, Shares: []float64{}}
		row.Title, row.Chapter = titleOfSkill(id)
		var sum, of int
		for _, p := range counted {
			var s, o int
			for k := range p.Items {
				if c.Set.Items[k].Skill == id {
					s, o = s+p.Items[k].Marks, o+p.Items[k].Of
				}
			}
			row.Shares = append(row.Shares, share(s, o))
			sum, of = sum+s, of+o
		}
		row.Share = share(sum, of)
		rows = append(rows, row)
	}
	return rows
}

// slips are the slips that were made, the commonest first.
func (c *Class) slips(counted []*Paper) []SlipRow {
	type key struct{ skill, slip string }
	rows := map[key]*SlipRow{}
	last := map[key]int{}
	for n, p := range counted {
		for i := range p.Items {
			for _, f := range p.Items[i].Faults {
				if f.Slip == "" {
					continue
				}
				k := key{c.Set.Items[i].Skill, f.Slip}
				if rows[k] == nil {
					rows[k], last[k] = &SlipRow{Skill: k.skill, Slip: k.slip, Examples: []Example{}}, -1
				}
				row := rows[k]
				if last[k] != n {
					last[k] = n
					row.Learners++
				}
				if len(row.Examples) < maxExamples {
					row.Examples = append(row.Examples, Example{p.Learner, i + 1, f.Line, f.Says})
				}
			}
		}
	}
	var list []SlipRow
	for _, r := range rows {
		list = append(list, *r)
	}
	slices.SortFunc(list, func(a, b SlipRow) int {
		return cmp.Or(b.Learners-a.Learners, cmp.Compare(place(a.Skill), place(b.Skill)), cmp.Compare(a.Slip, b.Slip))
	})
	return list
}

// Bounds of a follow-up set.
const (
	followBelow = 0.8 // share of the marks
	followItems = 10
)

// FollowUp is a set of what the class got wrong, the weakest skill first, with
// two problems of each; false where there is nothing to follow up.
func (r *Report) FollowUp(s *Set) (*Set, bool) {
	weak := slices.DeleteFunc(slices.Clone(r.Skills), func(k SkillRow) bool { return k.Share >= followBelow })
	slices.SortStableFunc(weak, func(a, b SkillRow) int { return cmp.Compare(a.Share, b.Share) })
	if len(weak) == 0 || r.Counted == 0 {
		return nil, false
	}
	f := *s
	f.Title, f.Closes, f.Items = Clean("Again: "+s.Title, MaxTitle), "", nil
	f.Number = s.Number + 1
	for _, w := range weak[:min(len(weak), followItems/2)] {
		if skill, ok := skills.ByID(w.Skill); ok {
			f.Items = append(f.Items, ItemOf(skill, Guided), ItemOf(skill, Free))
		} else if kind, ok := reasonOf(w.Skill); ok {
			f.Items = append(f.Items, QuestionOf(kind), QuestionOf(kind))
		}
	}
	return &f, true
}
