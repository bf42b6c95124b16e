package record

import (
	"cmp"
	"slices"

	"riserwork/problems"
)

// Why is the reason that a problem is in a session.
type Why string

// Reasons, in the order in which they have their place.
const (
	WhyDue   Why = "due"
	WhyNew   Why = "new"
	WhyShaky Why = "shaky"
	WhyEarly Why = "early" // nothing else is left to do: due soonest
)

// Item is one problem of a session.
type Item struct {
	Skill   string `json:"skill"`
	Why     Why    `json:"why"`
	Mistake bool   `json:"mistake,omitempty"` // a mistake is to be found, not the lines written
}

// Minutes that things take: own estimate, no source.
const (
	minutesToRead  = 0.5
	minutesPerLine = 0.5
	minutesToStudy = 0.25 // a line that is shown
	backlog        = 1.0  // times the session: more than this due, and nothing new is begun
	longWait       = 14   // days
	patience       = 7    // days after which something new is begun all the same
)

// planner builds one session.
type planner struct {
	View
	skills []*problems.Skill
	left   float64 // minutes
	items  []Item
	taken  map[string]int
}

// Plan is the work of a day for so many minutes: what is due first, then a
// little that is new, then what is shaky. Once a skill has been met, its
// problems never follow each other; a new one is a worked example and, right
// behind it, the first problem of one's own.
func (v View) Plan(skills []*problems.Skill, minutes int) []Item {
	p := &planner{View: v, skills: skills, left: float64(minutes), taken: map[string]int{}}
	due := p.due()
	unmet := p.unmet(3 * max(1, minutes/10))
	wanted := 0.0
	for _, s := range due {
		wanted += p.minutes(s)
	}
	fresh := max(1, minutes/10)
	if wanted > backlog*float64(minutes) && p.Today-p.State.Begun < patience {
		fresh = 0
	}
	fresh = min(fresh, len(unmet))
	room := 0.0
	for _, s := range unmet[:fresh] {
		room += newMinutes(s)
	}
	p.takeAll(due, WhyDue, room)
	p.takeAll(unmet[:fresh], WhyNew, 0)
	if p.takeAll(due, WhyDue, 0) {
		p.takeAll(p.shaky(), WhyShaky, 0)
		p.takeAll(unmet[fresh:min(len(unmet), 3*fresh)], WhyNew, 0)
		p.again()
	}
	if len(p.items) == 0 {
		p.takeAll(p.early(), WhyEarly, 0)
	}
	return p.mixed()
}

// minutes is how long the next problem of a skill takes.
func (p *planner) minutes(s *problems.Skill) float64 {
	given := p.State.Skill(s.ID).Given(Steps(s))
	return minutesToRead + minutesToStudy*float64(given) + minutesPerLine*float64(len(s.Rules)-given)
}

// newMinutes is how long a worked example and the first problem after it take.
func newMinutes(s *problems.Skill) float64 {
	n := float64(len(s.Rules))
	return 2*minutesToRead + minutesToStudy*(2*n-1) + minutesPerLine
}

// takeAll takes skills in turn while they fit, leaving some room, and reports
// whether all of them were taken. The first of a session always fits.
func (p *planner) takeAll(list []*problems.Skill, why Why, room float64) bool {
	for _, s := range list {
		if p.taken[s.ID] > 0 {
			continue
		}
		cost := p.minutes(s)
		if why == WhyNew {
			cost = newMinutes(s)
		}
		if len(p.items) > 0 && cost > p.left-room {
			return false
		}
		p.take(s, why, cost)
	}
	return true
}

func (p *planner) take(s *problems.Skill, why Why, cost float64) {
	p.left -= cost
	p.taken[s.ID]++
	item := Item{Skill: s.ID, Why: why}
	if why == WhyShaky && p.Word(s) == Shaky {
		item.Mistake = (p.State.Skill(s.ID).Tries+p.Today)%2 == 0
	}
	p.items = append(p.items, item)
	if why == WhyNew {
		p.items = append(p.items, Item{Skill: s.ID, Why: why})
	}
}

// due are the skills to work today, the chapters in turn, in each those most
// likely to be lost first. What has waited long comes before them; so does,
// before an examination, what has not had its turn in the last round.
func (p *planner) due() []*problems.Skill {
	list := p.where(p.Due)
	kept := map[string]float64{}
	for _, s := range list {
		kept[s.ID] = p.State.Skill(s.ID).Kept(p.Today)
	}
	slices.SortStableFunc(list, func(a, b *problems.Skill) int { return cmp.Compare(kept[a.ID], kept[b.ID]) })
	rank, in := map[string]int{}, map[int]int{}
	for _, s := range list {
		rank[s.ID] = in[s.Chapter]
		in[s.Chapter]++
	}
	slices.SortStableFunc(list, func(a, b *problems.Skill) int {
		return cmp.Or(
			cmp.Compare(b2i(p.hadTurn(a)), b2i(p.hadTurn(b))),
			cmp.Compare(b2i(p.waitedLong(b)), b2i(p.waitedLong(a))),
			cmp.Compare(rank[a.ID], rank[b.ID]))
	})
	return list
}

// waitedLong reports whether a skill has been due for so long that it comes
// first.
func (v View) waitedLong(s *problems.Skill) bool {
	in, ok := v.DueIn(s)
	return ok && in <= -longWait
}

// hadTurn reports whether a skill was worked in the last round before an
// examination.
func (v View) hadTurn(s *problems.Skill) bool {
	exam := v.exam()
	return exam > 0 && v.Today >= exam-lastRound && v.State.Skill(s.ID).Last >= exam-lastRound
}

// shaky are skills that do not hold yet, those still with help first, then by
// how long they have lain.
func (p *planner) shaky() []*problems.Skill {
	list := p.where(func(s *problems.Skill) bool {
		w := p.Word(s)
		return (w == Helped || w == Shaky) && !p.Due(s)
	})
	slices.SortStableFunc(list, func(a, b *problems.Skill) int {
		return cmp.Or(
			cmp.Compare(b2i(p.Word(b) == Helped), b2i(p.Word(a) == Helped)),
			cmp.Compare(p.State.Skill(a.ID).Last, p.State.Skill(b.ID).Last))
	})
	return list
}

// early are the skills that hold, the soonest due first.
func (p *planner) early() []*problems.Skill {
	list := p.where(func(s *problems.Skill) bool { return !p.State.Skill(s.ID).new() })
	slices.SortStableFunc(list, func(a, b *problems.Skill) int {
		return cmp.Compare(p.State.Skill(a.ID).Due, p.State.Skill(b.ID).Due)
	})
	return list
}

func (p *planner) where(keep func(*problems.Skill) bool) []*problems.Skill {
	var list []*problems.Skill
	for _, s := range p.skills {
		if keep(s) {
			list = append(list, s)
		}
	}
	return list
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// unmet are the next few new skills, school year by school year; within a year always
// one of the chapter of which the least has been met, so that no chapter waits
// for the end of another.
func (p *planner) unmet(most int) []*problems.Skill {
	type group struct{ met, of int }
	groups := map[[2]int]*group{}
	for _, s := range p.skills {
		key := [2]int{s.Year, s.Chapter}
		if groups[key] == nil {
			groups[key] = &group{}
		}
		groups[key].of++
		groups[key].met += b2i(p.State.Skill(s.ID).Met)
	}
	left := p.where(func(s *problems.Skill) bool { return !p.State.Skill(s.ID).Met })
	share := func(s *problems.Skill) float64 {
		g := groups[[2]int{s.Year, s.Chapter}]
		return float64(g.met) / float64(g.of)
	}
	var list []*problems.Skill
	for len(left) > 0 && len(list) < most {
		best := 0
		for i, s := range left {
			b := left[best]
			if cmp.Or(cmp.Compare(s.Year, b.Year), cmp.Compare(share(s), share(b)), cmp.Compare(s.Chapter, b.Chapter), cmp.Compare(s.Order, b.Order)) < 0 {
				best = i
			}
		}
		list = append(list, left[best])
		groups[[2]int{left[best].Year, left[best].Chapter}].met++
		left = slices.Delete(left, best, best+1)
	}
	return list
}

// again takes up once more what was new in this session or is still worked
// with help, while there is time.
func (p *planner) again() {
	for _, s := range p.skills {
		n := p.taken[s.ID]
		if n != 1 || p.Word(s) != New && p.Word(s) != Helped {
			continue
		}
		if cost := p.minutes(s); cost <= p.left && len(p.taken) > 1 {
			p.take(s, WhyShaky, cost)
		}
	}
}
