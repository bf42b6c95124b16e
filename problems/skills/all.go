// Package skills is the catalogue: one skill a value, its rules, slips and
// explanations together, chapter by chapter.
//
// Sources of trade facts stand in each skill. Slips are those that people
// make; how often is nobody's published figure.
package skills

import (
	"slices"
	"strings"

	"riserwork/problems"
)

var catalogue []*problems.Skill

// add puts a skill into the catalogue; a file of this package adds its own.
// Skills are variables, not arguments, so that the compiler lays them out and
// nothing is built when the page starts.
func add(s *problems.Skill) {
	s.Version = max(1, s.Version)
	catalogue = append(catalogue, s)
}

// All lists the catalogue by chapter and order.
func All() []*problems.Skill {
	list := slices.Clone(catalogue)
	slices.SortStableFunc(list, func(a, b *problems.Skill) int {
		if a.Chapter != b.Chapter {
			return a.Chapter - b.Chapter
		}
		if a.Order != b.Order {
			return a.Order - b.Order
		}
		return strings.Compare(a.ID, b.ID)
	})
	return list
}

// ByID is the skill of that name.
func ByID(id string) (*problems.Skill, bool) {
	for _, s := range catalogue {
		if s.ID == id {
			return s, true
		}
	}
	return nil, false
}
