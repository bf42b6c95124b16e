package paper

import (
	"slices"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/formula"
)

// plan is how one part is made: a skill, and what the building tells it.
type plan struct {
	name  string
	skill *problems.Skill
	ask   string
	from  []source
	spare bool               // may be left out
	fits  func(*site) bool   // nil: every building
	tell  func(*told) bool   // the building's numbers; false where there are none that suit
	uses  []solver.Use       // that the skill's own drawing must hit; nil: any
	after func(*site, *told) // what later parts want to know
}

// source is a link by names.
type source struct{ given, part, step string }

// told is the sheet of one part. What the building tells is set first and
// stays; the skill's own drawing fills in the rest.
type told struct {
	*building.Sheet
	*site
	p *Paper
}

// as is a skill of the catalogue for use in a paper: it works out no what-if,
// since the building is not its own. Without its first rules, the givens that
// only they read go too, and what they worked out is given.
func as(id string, skip int, drop ...string) *problems.Skill {
	s := *skill(id)
	gone := s.Rules[:skip]
	s.Rules = slices.Clone(s.Rules[skip:])
	for i := range s.Rules {
		s.Rules[i].Would = nil
		s.Rules[i].Slips = slices.Clone(s.Rules[i].Slips)
	}
	s.Givens = slices.DeleteFunc(slices.Clone(s.Givens), func(g problems.Given) bool { return slices.Contains(drop, g.Name) })
	for _, r := range gone {
		if reads(s.Rules, r.Name) {
			s.Givens = append(s.Givens, problems.Given{Name: r.Name, Says: r.Says, Measure: r.Measure})
		}
	}
	if skip > 0 {
		s.Routes = nil
	}
	return &s
}

// bare is a skill whose numbers the building tells all by itself.
func bare(s *problems.Skill) *problems.Skill {
	s.Draw = nil
	return s
}

// full is a skill of the catalogue with all its rules, told by the building.
func full(id string) *problems.Skill { return bare(as(id, 0)) }

func reads(rules []problems.Rule, name string) bool {
	return slices.ContainsFunc(rules, func(r problems.Rule) bool {
		for _, text := range []string{r.Formula, r.Metric} {
			e, err := formula.ParseWith(text, formula.Options{Funcs: solver.Functions})
			if err == nil && slices.Contains(e.Names(), name) {
				return true
			}
		}
		return false
	})
}

// with is the skill with its own words for a given.
func with(s *problems.Skill, given, says string) *problems.Skill {
	for i := range s.Givens {
		if s.Givens[i].Name == given {
			s.Givens[i].Says = says
		}
	}
	return s
}

// without is the skill without some slips, whose reason is another here.
func without(s *problems.Skill, slips ...string) *problems.Skill {
	for i := range s.Rules {
		s.Rules[i].Slips = slices.DeleteFunc(s.Rules[i].Slips, func(x problems.Slip) bool { return slices.Contains(slips, x.ID) })
	}
	return s
}

// partDraws is how often the free numbers of a part are drawn until all its
// slips can be told apart; after that it is taken without those that cannot.
const partDraws = 25

// add makes a part and puts it into the paper, where it fits the building.
func (t *site) add(p *Paper, pl *plan) {
	if pl.fits != nil && !pl.fits(t) {
		return
	}
	links := make([]Link, len(pl.from))
	for i, f := range pl.from {
		k := p.Index(f.part)
		if k < 0 {
			return
		}
		x := p.Parts[k].Problem
		links[i] = Link{f.given, k, x.Slot(f.step) - len(x.Told)}
	}
	var loose *Part
	var looseTold *told
	trimmed := 0
	for range partDraws {
		part, on := t.try(p, pl, links)
		if part == nil {
			continue
		}
		if problems.Accept(part.Problem) == "" {
			t.put(p, pl, part, on, 0)
			return
		}
		if gone, why := part.Trim(); why == "" && steady(p, part) && (loose == nil || gone < trimmed) {
			loose, looseTold, trimmed = part, on, gone
		}
	}
	if loose != nil {
		t.put(p, pl, loose, looseTold, trimmed)
	}
}

func (t *site) put(p *Paper, pl *plan, part *Part, on *told, trimmed int) {
	if pl.after != nil {
		pl.after(t, on)
	}
	p.Trimmed += trimmed
	p.Parts = append(p.Parts, *part)
}

// try makes one part from one drawing; nil where its numbers do not serve.
func (t *site) try(p *Paper, pl *plan, links []Link) (*Part, *told) {
	on := &told{problems.NewSheet(t.s.Rand, t.house), t, p}
	skill := *pl.skill
	skill.Givens = slices.Clone(skill.Givens)
	for _, l := range links {
		for i := range skill.Givens {
			if g := &skill.Givens[i]; g.Name == l.Given {
				g.Plate = false
				on.Set(l.Given, p.Parts[l.Part].Steps[l.Step].Value)
			}
		}
	}
	on.Sheet.Building = t.Building
	if pl.tell != nil && !pl.tell(on) {
		return nil, nil
	}
	if skill.Draw != nil {
		skill.Draw(on.Sheet)
		if len(pl.uses) > 0 && slices.Contains(pl.uses, t.Building.Use) && on.Sheet.Building.Use != t.Building.Use {
			return nil, nil
		}
	}
	on.Sheet.Building, on.Focus = t.Building, t.Building.Top()
	x, err := problems.Bind(&skill, p.Seed, t.house, on.Sheet)
	if err != nil {
		return nil, nil
	}
	for _, l := range links {
		if i := x.Given(l.Given); i >= 0 {
			x.Told[i].Text = x.Told[i].Unit.Of(x.Told[i].Value).Text(4)
		}
	}
	part := &Part{Problem: x, Name: pl.name, Ask: pl.ask, From: slices.Clone(links), plan: pl, labels: on.Labels}
	if !steady(p, part) {
		return nil, nil
	}
	return part, on
}

// steady reports that rounding of the answers before it flips no whole number
// and no choice of a part.
func steady(p *Paper, part *Part) bool {
	for _, up := range [2]float64{1, -1} {
		values := map[string]float64{}
		for _, l := range part.From {
			s := &p.Parts[l.Part].Steps[l.Step]
			values[l.Given] = s.Value + up*s.Coarse(s.Value)*2
		}
		x, ok := part.Carrying(values)
		if !ok || !x.Possible(part.Problem) {
			return false
		}
		for i := range x.Steps {
			if s := &part.Steps[i]; (s.Whole || len(s.Choices) > 0) && x.Steps[i].Value != s.Value {
				return false
			}
		}
	}
	return true
}

// retell sets again what was read from a table for a carried number.
func (part *Part) retell(house problems.House, values map[string]float64) {
	units, ok := values["units"]
	if !ok || part.Given("row_low") < 0 {
		return
	}
	valves := slices.ContainsFunc(part.labels, func(l building.Label) bool { return l.Name == "right_curve" && l.Text == "flush valves" })
	s := problems.NewSheet(nil, house)
	// Exactly on a row the rows below it serve as well as those above, and on
	// them something is left to work out.
	if skills.TellDemand(s, units*(1-1e-12), valves) {
		for _, v := range s.Values {
			values[v.Name] = v.Value
		}
		values["units"] = units
	}
}
