package record

import "riserwork/problems"

// mixed puts the items in order: the reasons in their order, chapters in
// turn, and never two problems of one skill in a row but for the worked
// example and the problem behind it. An item that cannot be placed so is left
// out.
func (p *planner) mixed() []Item {
	chapter := map[string]int{}
	for _, s := range p.skills {
		chapter[s.ID] = s.Chapter
	}
	left := p.items
	var out []Item
	for len(left) > 0 {
		at := pick(left, out, chapter)
		if at < 0 {
			return out
		}
		n := 1
		if left[at].Why == WhyNew {
			n = 2
		}
		out = append(out, left[at:at+n]...)
		left = append(append([]Item(nil), left[:at]...), left[at+n:]...)
	}
	return out
}

// pick is the item to come next: the first of the leading reason that is of
// another chapter than the last, else of another skill; -1 where there is
// none. New skills come in behind every second problem that is due.
func pick(left, out []Item, chapter map[string]int) int {
	last := ""
	if len(out) > 0 {
		last = out[len(out)-1].Skill
	}
	best, rank := -1, 0
	for i, it := range left {
		if it.Skill == last || i > 0 && it.Why == WhyNew && left[i-1] == it {
			continue
		}
		r := 0
		if chapter[it.Skill] == chapter[last] {
			r++
		}
		switch {
		case it.Why == WhyNew && len(out) < 2 && left[0].Why == WhyDue:
			r += 4
		case it.Why == WhyShaky && (left[0].Why == WhyDue || left[0].Why == WhyNew):
			r += 2
		}
		if best < 0 || r < rank {
			best, rank = i, r
		}
	}
	return best
}

// Example reports whether item i of a session is a worked example: the first
// of a new skill.
func Example(items []Item, i int) bool {
	return items[i].Why == WhyNew && i+1 < len(items) && items[i+1] == items[i]
}

// Minutes is about how long a session takes, in whole minutes.
func (v View) Minutes(skills []*problems.Skill, items []Item) int {
	p := &planner{View: v, skills: skills}
	total := 0.0
	for _, it := range items {
		for _, s := range skills {
			if s.ID == it.Skill {
				total += p.minutes(s)
			}
		}
	}
	return max(1, int(total+0.5))
}
