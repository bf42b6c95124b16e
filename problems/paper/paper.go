// Package paper draws a whole-building paper: one building, and 8 to 15 parts
// that hang together from the street to the hot water loop. A part is a skill
// of the catalogue laid over the building; some of its numbers are answers of
// parts before it. [Paper.Mark] carries the learner's own answers along those
// links, so that a wrong one loses its marks once.
package paper

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"slices"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
)

// Version is raised when a seed draws another paper than before.
const Version = 2

// Bounds of a paper.
const (
	MinParts = 8
	MaxParts = 15
)

// Paper is one building with its questions.
type Paper struct {
	Seed     uint64
	House    problems.House
	Size     Size
	Building *solver.Building // as it is when every part is answered rightly
	Says     string           // the building in a sentence or two
	Facts    []Fact           // what is known of it before any part
	Parts    []Part
	Drawn    int // papers drawn until one held together
	Trimmed  int // slips that these numbers do not tell apart
}

// Fact is a thing known of the building.
type Fact struct{ Says, Text string }

// Part is a skill laid over the building of the paper.
type Part struct {
	*problems.Problem
	Name string // names it in links and saved work: "boost"
	Ask  string // the question, filled in as a skill's is
	From []Link

	plan   *plan
	labels []building.Label
}

// Link is a given that is the answer of a part before.
type Link struct {
	Given string
	Part  int // index of the part
	Step  int // index of its step
}

// Index is where a part of that name stands; -1 where the paper has none.
func (p *Paper) Index(name string) int {
	return slices.IndexFunc(p.Parts, func(x Part) bool { return x.Name == name })
}

// Of is the most marks of the paper: two a step.
func (p *Paper) Of() int {
	n := 0
	for i := range p.Parts {
		n += 2 * len(p.Parts[i].Steps)
	}
	return n
}

// maxDraws bounds how many buildings are drawn before New gives up.
const maxDraws = 60

// New draws the paper of a size, a seed and a house. The zero Size takes any.
func New(size Size, seed uint64, house problems.House) (*Paper, error) {
	sheet := problems.NewSheet(nil, house)
	h := fnv.New64a()
	fmt.Fprintf(h, "paper/%d/%s/%s", Version, size, sheet.System)
	house.System = sheet.System
	rng := rand.New(rand.NewPCG(seed, h.Sum64()))
	for n := 1; n <= maxDraws; n++ {
		of := size
		if !slices.Contains(Sizes, of) {
			of = Sizes[rng.IntN(len(Sizes))]
		}
		p := draw(rng, house, of, seed)
		if p == nil {
			continue
		}
		p.Drawn = n
		return p, nil
	}
	return nil, fmt.Errorf("paper: no building was found for seed %d in %d draws", seed, maxDraws)
}

// draw makes one try; nil where its numbers do not hold together.
func draw(rng *rand.Rand, house problems.House, size Size, seed uint64) *Paper {
	s := survey(rng, house, size)
	if s == nil {
		return nil
	}
	p := &Paper{Seed: seed, House: house, Size: size, Building: s.Building}
	list := plans()
	for i := range list {
		if p.Index(list[i].name) < 0 {
			s.add(p, &list[i])
		}
	}
	p.choose(rng)
	for _, name := range []string{"height", "reach", "need"} {
		if p.Index(name) < 0 {
			return nil
		}
	}
	if len(p.Parts) < MinParts || s.boosted && (p.Index("boost") < 0 && p.Index("series") < 0) {
		return nil
	}
	s.fitOut(p)
	p.Says, p.Facts = s.describe()
	return p
}

// choose leaves out parts that nothing else rests on until the paper has its
// length.
func (p *Paper) choose(rng *rand.Rand) {
	most := 10 + rng.IntN(MaxParts-10+1)
	for len(p.Parts) > most {
		var free []int
		for i := range p.Parts {
			if p.Parts[i].plan.spare && !p.restsOn(i) {
				free = append(free, i)
			}
		}
		if len(free) == 0 {
			break
		}
		p.drop(free[rng.IntN(len(free))])
	}
	if len(p.Parts) > MaxParts {
		p.Parts = p.Parts[:0]
	}
}

func (p *Paper) restsOn(i int) bool {
	return slices.ContainsFunc(p.Parts, func(x Part) bool {
		return slices.ContainsFunc(x.From, func(l Link) bool { return l.Part == i })
	})
}

// drop takes out part i, on which no other rests.
func (p *Paper) drop(i int) {
	p.Parts = slices.Delete(p.Parts, i, i+1)
	for k := range p.Parts {
		for j := range p.Parts[k].From {
			if l := &p.Parts[k].From[j]; l.Part > i {
				l.Part--
			}
		}
	}
}
