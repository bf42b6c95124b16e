package page

import (
	"math/rand/v2"
	"slices"

	"riserwork/problems"
)

// unfinished is the sheet to carry on with: the latest that was begun and is
// not done.
func unfinished(d *desk) (sheet, bool) {
	for _, s := range d.Sheets {
		if s.begun() && !s.Done {
			return s, true
		}
	}
	return sheet{}, false
}

// pickSkill picks a skill of some chapters, no chapters meaning all; never the one
// that came last where there is another.
func pickSkill(list []*problems.Skill, mix []int, last string, rng *rand.Rand) *problems.Skill {
	var from []*problems.Skill
	for _, s := range list {
		if (len(mix) == 0 || slices.Contains(mix, s.Chapter)) && s.ID != last {
			from = append(from, s)
		}
	}
	if len(from) == 0 {
		from = slices.DeleteFunc(slices.Clone(list), func(s *problems.Skill) bool { return s.ID != last })
	}
	if len(from) == 0 {
		return nil
	}
	return from[rng.IntN(len(from))]
}

// someSeed is a number for a new problem, short enough to read out.
func someSeed(rng *rand.Rand) uint64 { return 1 + rng.Uint64N(9999) }

// source is the random source of the page.
func source() *rand.Rand { return rand.New(rand.NewPCG(rand.Uint64(), rand.Uint64())) }
