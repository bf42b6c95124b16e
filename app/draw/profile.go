package draw

import (
	"math"
	"strconv"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// The frame of a profile, in px.
const (
	plotLeft   = 68
	plotRight  = 344
	plotTop    = 34
	plotHeight = 310
	plotPad    = 9
)

// plot is a profile under way: pressure to the right, height upward.
type plot struct {
	room
	plan   *plan
	sol    *solver.Solution
	opt    Options
	lo, hi unit.Length
	most   float64 // right end of the scale, in the unit of pressures
	edges  room    // lines that numbers only stand on if they must
	items  []Item
}

// Profile is the pressure over the height of a building with no flow, zone by
// zone, against the limits of opt. Until the problem is solved the zone asked
// about is left out.
func Profile(b *solver.Building, sol *solver.Solution, opt Options) Scene {
	if b == nil || sol == nil || len(sol.Levels) != len(b.Levels)-1 {
		return refused("the building has not been worked out")
	}
	if err := b.Check(); err != nil {
		return refused(err.Error())
	}
	p := &plot{plan: newPlan(b, opt.zones()), sol: sol, opt: opt}
	p.lo, p.hi = b.Levels[0].Elevation, b.Levels[b.Top()+1].Elevation
	p.most = p.scale()
	p.limits()
	p.grid()
	p.levels()
	for i := range p.plan.zones {
		p.zone(&p.plan.zones[i])
	}
	frame := rect("wall", "", Box{plotLeft, plotTop, plotRight, plotTop + plotHeight})
	frame.Stroke = 1.4
	return Scene{
		Width: width, Height: plotTop + plotHeight + 44,
		Title: "Pressure over height, no flow: " + string(b.Use),
		Desc:  "Pressure runs to the right, height upward. " + p.desc() + " Not to scale, for study.",
		Items: append([]Item{rect("paper", Paper, Box{0, 0, width, plotTop + plotHeight + 44})}, append(p.items, frame)...),
		Table: levelTable(p.plan, sol, opt),
	}
}

func (p *plot) desc() string {
	s := ""
	if p.opt.Min > 0 {
		s += "Least to keep: " + pressure(p.opt.Min, p.opt.System) + ". "
	}
	if p.opt.Max > 0 {
		s += "Most allowed: " + pressure(p.opt.Max, p.opt.System) + ". "
	}
	return s + plural(len(p.plan.zones), "zone", "zones") + "."
}

// unitOf is a pressure as a number of the scale's unit.
func (p *plot) unitOf(q unit.Pressure) float64 {
	if p.opt.System == unit.US {
		return float64(q / unit.PSI)
	}
	return float64(q / unit.Kilopascal)
}

// scale is the right end of the pressure scale: over all that is drawn, and
// round.
func (p *plot) scale() float64 {
	most := p.unitOf(max(p.opt.Max, p.opt.Min)) * 1.15
	for _, l := range p.sol.Levels {
		if z := p.plan.zoneOf(l.Level); z != nil && !p.hidden(z) {
			most = math.Max(most, p.unitOf(l.Lowest)*1.05)
		}
	}
	s := step(most)
	return math.Max(s, math.Ceil(most/s)*s)
}

// step is a round step that divides a scale into four to eight parts.
func step(most float64) float64 {
	s := math.Pow(10, math.Floor(math.Log10(math.Max(most, 1))))
	for _, f := range []float64{0.1, 0.2, 0.25, 0.5, 1} {
		if most/(s*f) <= 6 {
			return s * f
		}
	}
	return 2 * s
}

func (p *plot) x(q float64) float64 {
	return plotLeft + (plotRight-plotLeft)*math.Min(math.Max(q/p.most, 0), 1)
}

func (p *plot) y(e unit.Length) float64 {
	return plotTop + plotPad + (plotHeight-2*plotPad)*float64((p.hi-e)/(p.hi-p.lo))
}

// limits shades what is under the least and over the most.
func (p *plot) limits() {
	const y0, y1 = plotTop, plotTop + plotHeight
	band := func(part string, x0, x1 float64) {
		p.items = append(p.items, shape(part, "none", 0, Point{x0, y0}, Point{x1, y0}, Point{x1, y1}, Point{x0, y1}))
	}
	edge := func(part, says string, x float64) {
		p.items = append(p.items, line("limit", 1.4, Point{x, y0}, Point{x, y1}))
		p.edges.take(around(x, (y0+y1)/2, 1, (y1-y0)/2), "")
		half := textWidth(says, small, true) / 2
		at := math.Min(math.Max(x, half+2), width-half-2)
		it := text(part, says, at, plotTop-8, small, "middle").bold()
		if !p.free(it.margin(), "") {
			it.Y -= 13
		}
		p.take(it.Bounds(), "")
		p.items = append(p.items, it)
	}
	if p.opt.Min > 0 {
		x := p.x(p.unitOf(p.opt.Min))
		band("under", plotLeft, x)
		edge("limit-text", "least "+pressure(p.opt.Min, p.opt.System), x)
	}
	if p.opt.Max > 0 {
		x := p.x(p.unitOf(p.opt.Max))
		band("over", x, plotRight)
		edge("limit-text", "most "+pressure(p.opt.Max, p.opt.System), x)
	}
}

// grid draws the scale of pressures.
func (p *plot) grid() {
	const y1 = plotTop + plotHeight
	s := step(p.most)
	for i := 0; float64(i)*s <= p.most+s/1000; i++ {
		x := p.x(float64(i) * s)
		p.items = append(p.items, line("floor", 0.8, Point{x, y1}, Point{x, y1 + 4}),
			text("elevation", whole(float64(i)*s), x, y1+16, small, "middle"))
	}
	p.items = append(p.items, text("elevation", "pressure, no flow, "+pressureUnit(p.opt.System), (plotLeft+plotRight)/2, y1+32, small, "middle"))
}

// levels names the floors at the side, those that matter first.
func (p *plot) levels() {
	b := p.plan.b
	order := []int{b.Top(), b.Ground, 0}
	if p.opt.Ask != nil {
		order = append([]int{p.opt.Ask.Level}, order...)
	}
	for _, z := range p.plan.zones {
		order = append(order, z.Bottom)
	}
	for i := range b.Levels[:b.Top()+1] {
		order = append(order, i)
	}
	seen := make([]bool, b.Top()+1)
	for _, i := range order {
		if i < 0 || i > b.Top() || seen[i] {
			continue
		}
		seen[i] = true
		y := p.y(b.Levels[i].Elevation)
		part, stroke := "floor", 0.5
		if z := p.plan.zoneOf(i); p.plan.named() && z != nil && z.Bottom == i && i > 0 {
			part, stroke = "limit", 1.4
		}
		it := text("level", levelName(b.Levels[i].Label), plotLeft-7, y-1, small, "end")
		named := p.free(it.margin(), "")
		if named || part == "limit" {
			p.items = append(p.items, line(part, stroke, Point{plotLeft - 4, y}, Point{plotRight, y}))
		}
		if named {
			p.take(it.Bounds(), "")
			p.items = append(p.items, group("storey", "level:"+b.Levels[i].Label, "level "+b.Levels[i].Label, it))
		}
	}
}

// hidden reports whether the pressures of a zone are part of the answer.
func (p *plot) hidden(z *zonePlan) bool {
	a := p.opt.Ask
	return !p.opt.Solved && a != nil && p.plan.zoneOf(a.Level) == z
}

// zone draws the pressure line of a zone: highest at its lowest outlet.
func (p *plot) zone(z *zonePlan) {
	if p.hidden(z) {
		return
	}
	b := p.plan.b
	low, high := p.sol.Levels[z.Bottom], p.sol.Levels[z.Top]
	pts := []Point{
		{p.x(p.unitOf(low.Lowest)), p.y(b.Lowest(z.Bottom))},
		{p.x(p.unitOf(high.Highest)), p.y(b.Highest(z.Top))},
	}
	says := "no flow: " + pressure(low.Lowest, p.opt.System) + " at the lowest outlet, " + pressure(high.Highest, p.opt.System) + " at the highest"
	for t := 0.0; t <= 1; t += 0.05 {
		p.take(around(pts[0].X+t*(pts[1].X-pts[0].X), pts[0].Y+t*(pts[1].Y-pts[0].Y), 2, 3), "")
	}
	kids := []Item{line("cw", 2.4, pts...), circle("cw", Ink, 0, pts[0].X, pts[0].Y, 3), circle("cw", Ink, 0, pts[1].X, pts[1].Y, 3)}
	if p.plan.named() {
		says = "zone " + z.Name + ", " + says
	}
	for i, q := range []unit.Pressure{low.Lowest, high.Highest} {
		if it, ok := p.beside(pressureNumber(q, p.opt.System), pts[i], i == 0); ok {
			kids = append(kids, it)
		}
	}
	if it, ok := p.zoneName(z); ok {
		kids = append(kids, it)
	}
	p.items = append(p.items, group("zone", "zone:"+strconv.Itoa(z.number), says, kids...))
}

// beside is a number beside an end of a zone's line, where there is room: to
// the right of its foot, to the left of its head.
func (p *plot) beside(s string, at Point, foot bool) (Item, bool) {
	for i, far := range []float64{7, 12, 16, 7} {
		it := text("told", s, at.X+far, at.Y-2, small, "").bold()
		if !foot {
			it = text("told", s, at.X-far, at.Y+10, small, "end").bold()
		}
		if b := it.Bounds().grow(1); b.Within(Box{plotLeft + 1, plotTop, plotRight - 1, plotTop + plotHeight}) && p.free(b, "") && (i == 3 || p.edges.free(b, "")) {
			p.take(it.Bounds(), "")
			return it, true
		}
	}
	return Item{}, false
}

// zoneName is the name of a zone at the right edge, where there is room.
func (p *plot) zoneName(z *zonePlan) (Item, bool) {
	b := p.plan.b
	mid := (p.y(b.Levels[z.Bottom].Elevation) + p.y(b.Levels[z.Top+1].Elevation)) / 2
	it := text("zone", z.Name, plotRight-4, mid+4, small, "end").bold()
	return it, p.plan.named() && p.free(it.margin(), "")
}
