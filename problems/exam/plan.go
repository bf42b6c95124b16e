package exam

import (
	"errors"
	"fmt"
	"hash/fnv"
	"slices"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Version is raised when a plan draws another paper than before.
const Version = 1

// MostSeed is the highest number of a paper.
const MostSeed = 9999

// Plan is what a paper is drawn from: the same plan draws the same paper.
type Plan struct {
	Blueprint string // id
	Questions int
	Written   bool // sums are written, not chosen from answers
	Seed      int  // 1 to MostSeed
	House     problems.House
}

// Check says in one sentence what is wrong with a plan.
func (p Plan) Check() error {
	if _, ok := BlueprintByID(p.Blueprint); !ok {
		return fmt.Errorf("exam: a paper of the kind %q was asked for, which is not known", p.Blueprint)
	}
	if !slices.Contains(Lengths, p.Questions) {
		return fmt.Errorf("exam: a paper of %d questions was asked for, and 10, 20 or 40 are expected", p.Questions)
	}
	if p.Seed < 1 || p.Seed > MostSeed {
		return fmt.Errorf("exam: a paper of number %d was asked for, and 1 to %d is expected", p.Seed, MostSeed)
	}
	if !slices.Contains(unit.Systems, p.House.System) {
		return errors.New("exam: the house rules name units that are not known")
	}
	if _, ok := solver.ProfileByID(p.House.Code); !ok {
		return errors.New("exam: the house rules name a code that is not known")
	}
	if t := p.House.TopMin; !(t >= 0 && t <= 1000) {
		return errors.New("exam: the house rules keep a pressure at the top that no building has")
	}
	if len(p.House.Constants) > len(solver.Constants) {
		return errors.New("exam: the house rules set more constants than there are")
	}
	for _, pick := range p.House.Constants {
		c, ok := solver.ConstantByName(pick.Name)
		if !ok {
			return errors.New("exam: the house rules set a constant that is not known")
		}
		if t := c.In(p.House.System); !slices.Contains(t.Accept, pick.Text) && !slices.Contains(t.Coarse, pick.Text) {
			return errors.New("exam: the house rules set a constant to a number that nobody teaches")
		}
	}
	return nil
}

// Minutes is the time that the paper is given.
func (p Plan) Minutes() int {
	n := p.Questions * minutesToChoose
	b, ok := BlueprintByID(p.Blueprint)
	if !ok || !p.Written {
		return n
	}
	for _, c := range b.Counts(p.Questions) {
		if c.Chapter < devicesChapter {
			n += c.Questions * (minutesToWrite - minutesToChoose)
		}
	}
	return n
}

// Catalogue is a mark of the skills and their versions. A code that was made
// with another catalogue may draw other questions.
func Catalogue() uint16 {
	h := fnv.New32a()
	for _, s := range skills.All() {
		fmt.Fprintf(h, "%s/%d/%d/%d ", s.ID, s.Version, s.Chapter, s.Year)
	}
	return fold(h.Sum32())
}

func fold(v uint32) uint16 { return uint16(v>>16) ^ uint16(v) }
