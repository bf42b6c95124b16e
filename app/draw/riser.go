package draw

import (
	"strings"

	"riserwork/solver"
)

// Riser is the riser diagram of a building: its levels, the entry, the risers
// of its zones, and the heater where it has one. sol fills the table; it may
// be nil. A building that [solver.Building.Check] refuses gives a scene that
// says so.
func Riser(b *solver.Building, sol *solver.Solution, opt Options) Scene {
	if b == nil {
		return refused("there is no building")
	}
	if err := b.Check(); err != nil {
		return refused(err.Error())
	}
	c := &canvas{plan: newPlan(b, opt.zones()), opt: opt, roof: 34}
	if c.plan.high > b.Top() {
		c.roof = 62
	}
	c.settings()
	c.rows = c.plan.rows(c.opt, c.roof)
	c.frame()
	c.street()
	c.entry()
	c.cold()
	c.hot()
	keyed := c.told()
	c.letter()
	c.foot = c.rows[len(c.rows)-1].y1
	c.keys(keyed)
	c.legend()
	return Scene{
		Width: width, Height: c.foot,
		Title: riserTitle(b), Desc: c.desc(),
		Items: c.finish(), Table: levelTable(c.plan, sol, c.opt),
	}
}

func refused(why string) Scene {
	return Scene{
		Width: width, Height: 40, Title: "No drawing", Desc: why,
		Items: []Item{rect("paper", Paper, Box{0, 0, width, 40}), text("note", "This building cannot be drawn.", width/2, 24, small, "middle")},
	}
}

func riserTitle(b *solver.Building) string {
	s := "Riser diagram: " + string(b.Use) + ", " + plural(b.Storeys(), "storey", "storeys")
	if b.Ground > 0 {
		s += " and " + plural(b.Ground, "level", "levels") + " below ground"
	}
	return s
}

// desc is the drawing in sentences.
func (c *canvas) desc() string {
	p := c.plan
	parts := []string{"Water comes from the street main through shut-off valve, strainer, meter and backflow preventer."}
	if p.pump != none {
		parts = append(parts, "A pump lifts it.")
	}
	for _, z := range p.zones {
		if !p.named() {
			continue
		}
		words := c.zoneWords(z) + "."
		if z.Valve != nil {
			words = strings.TrimSuffix(words, ".") + " through a reducing valve."
		}
		parts = append(parts, strings.ToUpper(words[:1])+words[1:])
	}
	if p.hot != none {
		parts = append(parts, "A heater feeds the hot water riser.")
	}
	if p.loop {
		parts = append(parts, "A return brings the hot water back.")
	}
	if a := c.opt.Ask; a != nil && a.Level >= 0 && a.Level <= p.b.Top() {
		parts = append(parts, "Asked about: level "+p.b.Levels[a.Level].Label+".")
	}
	return strings.Join(append(parts, "Not to scale, for study."), " ")
}
