package draw

import (
	"math"

	"riserwork/problems"
)

// figures are the small pictures that say why a rule holds, by the skill that
// has them. Each draws from the numbers of a problem.
var figures = []struct {
	skill string
	draw  func(*figure)
}{
	{"head-to-pressure", func(f *figure) { f.column("column", "pressure") }},
	{"pressure-to-head", func(f *figure) { f.column("column", "reading") }},
	{"two-gauges", func(f *figure) { f.gauges("apart", "upper", "lower") }},
	{"floor-pressure", func(f *figure) { f.gauges("height", "pressure", "street") }},
	{"pressure-below-gauge", func(f *figure) { f.gauges("drop", "reading", "pressure") }},
	{"gauge-correction", func(f *figure) { f.gauges("above", "reading", "at_main") }},
	{"down-feed-pressure", func(f *figure) { f.gauges("drop", "header", "pressure") }},
	{"base-pressure", func(f *figure) { f.gauges("below", "setting", "base") }},
	{"fall-off", func(f *figure) { f.gauges("height", "at_top", "flowing") }},
	{"fixture-height", func(f *figure) { f.floors(1, f.val("storey"), "gaps") }},
	{"take-off", func(f *figure) { f.floors(2, f.val("top_level"), "gaps") }},
	{"zone-valve-setting", func(f *figure) { f.floors(f.val("bottom_level"), f.val("top_level"), "gaps") }},
	{"reach", func(f *figure) { f.reach("street", "least", "reach") }},
	{"reach-with-losses", func(f *figure) { f.reach("after_losses", "least", "reach") }},
	{"first-short-floor", func(f *figure) { f.reach("street", "least", "reach") }},
	{"demand-from-units", func(f *figure) { f.demand("units", "demand") }},
	{"units-at-junction", func(f *figure) { f.demand("units", "demand") }},
	{"continuous-load", func(f *figure) { f.demand("units", "demand") }},
	{"hot-demand-curve", func(f *figure) { f.demand("hot_units", "demand") }},
	{"combined-service", func(f *figure) { f.demand("units", "demand") }},
	{"hazen-williams", (*figure).friction},
	{"pressure-budget", func(f *figure) { f.stack("street", "column", "devices", "least", "left") }},
	{"boost", func(f *figure) { f.stack("discharge", "column", "friction", "set_loss", "least") }},
	{"pressure-switch", func(f *figure) { f.stack("cut_in", "column", "friction", "least") }},
	{"pumps-together", (*figure).pumps},
	{"speed-change", (*figure).speeds},
	{"pressure-tank", func(f *figure) { f.boyle("tank_volume", "gas_low", "gas_high", "low_abs", "high_abs") }},
	{"zone-breaks", (*figure).zoneStack},
	{"tallest-zone", func(f *figure) { f.wedge("most", "least", "height") }},
	{"tallest-zone-working", func(f *figure) { f.wedge("most", "least", "height") }},
	{"next-valve", func(f *figure) { f.wedge("allowed", "setting", "drop") }},
	{"suite-valves", func(f *figure) { f.wedge("discharge", "limit", "height") }},
	{"mixing-valve", func(f *figure) { f.mix("hot_flow", "hot", "cold_flow", "cold", "flow", "mixed") }},
	{"blend", func(f *figure) { f.mix("warm_flow", "warm", "cool_flow", "cool", "total", "blended") }},
	{"recovery", func(f *figure) { f.heat("input", "useful") }},
	{"tankless-flow", func(f *figure) { f.heat("input", "useful") }},
	{"heat-up-time", func(f *figure) { f.heat("input", "useful") }},
	{"circulation-flow", (*figure).loop},
	{"surge", (*figure).spike},
	{"pipe-movement", (*figure).growth},
	{"thrust", (*figure).bend},
	{"rods", (*figure).deadEnd},
}

// HasFigure reports whether a skill has a picture.
func HasFigure(skill string) bool {
	for i := range figures {
		if figures[i].skill == skill {
			return true
		}
	}
	return false
}

// Figure is the picture of a problem's skill, drawn from its numbers; nil
// where it has none.
func Figure(p *problems.Problem) *Scene {
	for i := range figures {
		if figures[i].skill == p.Skill.ID {
			f := &figure{p: p, env: p.Env(), rows: [][]string{{"What", "Number"}}}
			figures[i].draw(f)
			return f.scene()
		}
	}
	return nil
}

// figure is a picture under way.
type figure struct {
	p           *problems.Problem
	env         []float64
	title, desc string
	height      float64
	items       []Item
	rows        [][]string
}

// letterSize is that of the texts of a picture.
const letterSize = 13

// val is the number of a name, NaN where there is none.
func (f *figure) val(name string) float64 {
	if i := f.slot(name); i >= 0 {
		return f.env[i]
	}
	return math.NaN()
}

// told is the number of a name with its unit.
func (f *figure) told(name string) string {
	if i := f.slot(name); i >= 0 {
		return f.p.SlotText(i, f.env[i])
	}
	return ""
}

func (f *figure) slot(name string) int {
	if i := f.p.Slot(name); i >= 0 {
		return i
	}
	return f.p.Given(name)
}

// says is what a name stands for.
func (f *figure) says(name string) string {
	i := f.slot(name)
	if i < 0 {
		return ""
	}
	if k := i - len(f.p.Told); k >= 0 {
		return f.p.Fill(f.p.Steps[k].Says, f.env)
	}
	return f.p.Fill(f.p.Told[i].Says, f.env)
}

// about begins a picture of a height, with what it shows.
func (f *figure) about(height float64, title, desc string, names ...string) {
	f.height, f.title, f.desc = height, title, desc
	for _, n := range names {
		f.rows = append(f.rows, []string{f.says(n), f.told(n)})
	}
}

func (f *figure) scene() *Scene {
	paper := rect("paper", Paper, Box{0, 0, width, f.height})
	return &Scene{Width: width, Height: f.height, Title: f.title, Desc: f.desc + " Not to scale, for study.", Items: append([]Item{paper}, f.items...), Table: f.rows}
}

func (f *figure) add(items ...Item) { f.items = append(f.items, items...) }

// write puts a text on the sheet; bold ones are the numbers of the problem.
func (f *figure) write(s string, x, y float64, anchor string) {
	f.add(text("dim", s, x, y, letterSize, anchor))
}

func (f *figure) number(s string, x, y float64, anchor string) {
	f.add(text("told", s, x, y, letterSize, anchor).bold())
}

// span is a line of dimension between two points, with a stroke at each end.
func (f *figure) span(a, b Point) {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	dx, dy := 4*(b.Y-a.Y)/long, 4*(a.X-b.X)/long
	f.add(line("dim", 1, a, b),
		line("dim", 1, Point{a.X - dx, a.Y - dy}, Point{a.X + dx, a.Y + dy}),
		line("dim", 1, Point{b.X - dx, b.Y - dy}, Point{b.X + dx, b.Y + dy}))
}

// arrow is a thick arrow from one point to another.
func (f *figure) arrow(part string, stroke float64, a, b Point) {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	ux, uy := (b.X-a.X)/long, (b.Y-a.Y)/long
	head := 5 + 2*stroke
	c := Point{b.X - ux*head, b.Y - uy*head}
	w := head * 0.5
	f.add(line(part, stroke, a, c), shape(part, Ink, 0, b, Point{c.X - uy*w, c.Y + ux*w}, Point{c.X + uy*w, c.Y - ux*w}))
}

// box is a rectangle with an edge.
func box(part, fill string, b Box) Item {
	it := rect(part, fill, b)
	it.Stroke = 1.6
	return it
}

// hatch fills a box with slanted lines, so that it tells apart without colour.
func (f *figure) hatch(part string, b Box, gap float64) {
	for x := b.X0 - (b.Y1 - b.Y0) + gap; x < b.X1; x += gap {
		a, z := Point{x, b.Y1}, Point{x + (b.Y1 - b.Y0), b.Y0}
		if a.X < b.X0 {
			a = Point{b.X0, b.Y1 - (b.X0 - x)}
		}
		if z.X > b.X1 {
			z = Point{b.X1, b.Y0 + (z.X - b.X1)}
		}
		f.add(line(part, 0.8, a, z))
	}
}
