package record

import (
	"math"
	"math/rand/v2"
	"strconv"

	"riserwork/problems"
	"riserwork/problems/marking"
)

const dayMs = 24 * 60 * 60 * 1000

// learner is an invented apprentice whose entries a test makes.
type learner struct {
	rng   *rand.Rand
	log   []Entry
	state *State
	at    int64
	seed  uint64
	care  float64            // chance that a line with everything known is right
	kept  map[string]float64 // days that each skill lasts in the learner's head
	last  map[string]int
}

func newLearner(seed uint64, care float64) *learner {
	return &learner{rng: rand.New(rand.NewPCG(seed, 7)), state: NewState(), care: care, kept: map[string]float64{}, last: map[string]int{}}
}

func (l *learner) add(e Entry) {
	l.at += 1000
	e.Version, e.At, e.ID = Version, l.at, strconv.Itoa(len(l.log))
	l.log = append(l.log, e)
	l.state.Add([]Entry{e})
}

// solve works a problem: each step by name right, or wrong with a slip.
func (l *learner) solve(skill string, steps []string, given int, right func(step int) bool) {
	l.seed++
	for i := given; i < len(steps); i++ {
		e := Entry{Kind: Line, Skill: skill, Seed: l.seed, Given: given, Step: steps[i], Text: "41.6 psi", Verdict: marking.Right}
		if !right(i) {
			e.Verdict, e.Slips = marking.Slip, []string{"slip-" + steps[i]}
			l.add(e)
			e.Verdict, e.Slips = marking.Right, nil
		}
		l.add(e)
	}
	l.add(Entry{Kind: Sheet, Skill: skill, Seed: l.seed, Given: given, Steps: steps, Done: true})
}

// work does a session as the page would.
func (l *learner) work(v View, byID map[string]*problems.Skill, items []Item) {
	for i, it := range items {
		s := byID[it.Skill]
		steps := Steps(s)
		given := l.state.Skill(s.ID).Given(steps)
		if Example(items, i) {
			given = len(steps)
		}
		if it.Mistake {
			l.add(Entry{Kind: Sheet, Skill: s.ID, Seed: l.seed, Way: "mistake", Steps: steps, Done: true})
			continue
		}
		chance := l.care * math.Exp(-float64(v.Today-l.last[s.ID])/max(l.kept[s.ID], 1))
		if l.last[s.ID] == v.Today || l.last[s.ID] == 0 {
			chance = l.care
		}
		l.solve(s.ID, steps, given, func(int) bool { return l.rng.Float64() < math.Pow(chance, 1/float64(len(steps))) })
		l.kept[s.ID] = 3*l.kept[s.ID] + 4
		l.last[s.ID] = v.Today
	}
}
