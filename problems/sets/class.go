package sets

import (
	"cmp"
	"fmt"
	"slices"
)

// Class is the papers of a class on one set. Papers may be added in any
// order; what is told of them does not depend on it.
type Class struct {
	Set    *Set
	papers []*Paper
	byHand []Override
}

// Override is marks that the instructor sets by hand on one problem.
type Override struct {
	Learner string `json:"learner"`
	Problem int    `json:"problem"` // the first is 1
	Marks   int    `json:"marks"`
	Reason  string `json:"reason"`
}

// NewClass is a class with no papers yet.
func NewClass(set *Set) *Class { return &Class{Set: set} }

// Add takes a paper in.
func (c *Class) Add(p Paper) { c.papers = append(c.papers, &p) }

// Len counts the papers.
func (c *Class) Len() int { return len(c.papers) }

// ByHand are the marks that were set by hand.
func (c *Class) ByHand() []Override { return slices.Clone(c.byHand) }

// Put sets the marks of one problem of a learner by hand, for a reason.
func (c *Class) Put(o Override) error {
	o.Reason = Clean(o.Reason, 200)
	if o.Reason == "" {
		return fmt.Errorf("the marks of problem %d were set without a reason, and one is expected", o.Problem)
	}
	for _, p := range c.papers {
		if !p.Status.Counts() || Key(p.Learner) != Key(o.Learner) {
			continue
		}
		if o.Problem < 1 || o.Problem > len(p.Items) {
			return fmt.Errorf("the problem was %d, expected 1 to %d", o.Problem, len(p.Items))
		}
		if most := p.Items[o.Problem-1].Of; o.Marks < 0 || o.Marks > most {
			return fmt.Errorf("the marks of problem %d were %d, expected 0 to %d", o.Problem, o.Marks, most)
		}
		c.byHand = slices.DeleteFunc(c.byHand, func(b Override) bool { return Key(b.Learner) == Key(o.Learner) && b.Problem == o.Problem })
		c.byHand = append(c.byHand, o)
		return nil
	}
	return fmt.Errorf("%q has handed in nothing that could be marked by hand", Clean(o.Learner, MaxLearner))
}

// Papers are all papers by learner: those that count first, each learner once,
// with what was set by hand; then the others.
func (c *Class) Papers() []Paper {
	list := make([]Paper, len(c.papers))
	for i, p := range c.papers {
		list[i] = *p
	}
	slices.SortStableFunc(list, byWorth)
	counted := map[string]*Paper{}
	for i := range list {
		p := &list[i]
		if !p.Status.Counts() {
			continue
		}
		first := counted[Key(p.Learner)]
		switch {
		case first == nil:
			counted[Key(p.Learner)] = p
		case first.print == p.print:
			p.Status, p.Says = Repeated, "It is a copy of the one that counts."
		default:
			p.Status, p.Says = Repeated, "The one of "+said(first.Written)+" counts."
		}
	}
	for _, o := range c.byHand {
		if p := counted[Key(o.Learner)]; p != nil {
			p.put(o)
		}
	}
	slices.SortStableFunc(list, byLearner)
	return list
}

// byWorth puts the paper of a learner that counts first: unaltered before
// altered, on time before late, then the latest.
func byWorth(a, b Paper) int {
	rank := func(p *Paper) int { return slices.Index([]Status{OnTime, Late, Altered}, p.Status) }
	return cmp.Or(cmp.Compare(Key(a.Learner), Key(b.Learner)), rank(&a)-rank(&b), cmp.Compare(b.Written, a.Written), cmp.Compare(a.print, b.print), cmp.Compare(a.Source, b.Source))
}

func byLearner(a, b Paper) int {
	other := func(p *Paper) int {
		if p.Status.Counts() {
			return 0
		}
		return 1
	}
	return cmp.Or(other(&a)-other(&b), cmp.Compare(Key(a.Learner), Key(b.Learner)), cmp.Compare(b.Written, a.Written), cmp.Compare(a.Source, b.Source))
}

func (p *Paper) put(o Override) {
	p.Items = slices.Clone(p.Items)
	m := &p.Items[o.Problem-1]
	p.Marks += o.Marks - m.Marks
	m.Marks, m.ByHand = o.Marks, o.Reason
}
