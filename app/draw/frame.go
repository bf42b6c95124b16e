package draw

import (
	"strconv"
	"strings"
)

// frame draws the building itself: floors with their names, walls, the ground
// with the main in it, and the zones at the side.
func (c *canvas) frame() {
	c.outline()
	c.floorLabel("ROOF", c.plan.b.Top()+1, c.roof)
	for i := range c.rows {
		c.floor(&c.rows[i])
	}
	c.ground()
	c.brackets()
}

func (c *canvas) outline() {
	bottom := c.bottom()
	c.back = append(c.back,
		line("wall", 2, Point{xWall, bottom}, Point{xWall, c.roof}, Point{xFarWall, c.roof}, Point{xFarWall, bottom}, Point{xWall, bottom}),
		line("wall", 2, Point{xWall, c.roof}, Point{xWall, c.roof - 6}), line("wall", 2, Point{xFarWall, c.roof}, Point{xFarWall, c.roof - 6}))
	c.takeThin(Box{xWall - 1, c.roof - 6, xWall + 3, bottom})
	c.takeThin(Box{xFarWall - 3, c.roof - 6, xFarWall + 1, bottom})
	c.takeThin(Box{xWall, c.roof - 1, xFarWall, c.roof + 1})
}

// bottom is the floor of the lowest room.
func (c *canvas) bottom() float64 {
	last := c.rows[len(c.rows)-1]
	if last.kind == earthRow {
		return last.y0
	}
	return last.y1
}

func (c *canvas) floor(r *row) {
	switch r.kind {
	case earthRow:
		return
	case foldRow:
		c.fold(r)
	case pitRow:
		c.pitLabel(r)
	default:
		if c.opt.asks(r.lo) {
			c.back = append(c.back, rect("asked", "none", Box{xWall + 1, r.y0 + 1, xFarWall - 1, r.y1 - 1}))
		}
		c.floorLabel(levelName(c.plan.b.Levels[r.lo].Label), r.lo, r.y1)
	}
	part := "floor"
	if z := c.plan.zoneOf(r.lo); c.plan.named() && z != nil && z.Bottom == r.lo && r.lo > 0 {
		part = "limit"
	}
	it := line(part, 1, Point{xLabel, r.y1}, Point{xFarWall, r.y1})
	if part == "limit" {
		it.Stroke = 1.8
	}
	c.back = append(c.back, it)
	c.takeThin(Box{xLabel, r.y1 - 1, xFarWall, r.y1 + 1})
}

// floorLabel writes name and elevation of a level over its floor line.
func (c *canvas) floorLabel(name string, level int, y float64) {
	l := c.plan.b.Levels[level]
	words := levelName(l.Label)
	kids := []Item{text("level", name, xLabel, y-16, small, "").bold()}
	if c.opt.elevations() || level == c.plan.b.Ground {
		kids = append(kids, text("elevation", "EL "+height(l.Elevation, c.opt.System), xLabel, y-4, small, ""))
		words += ", floor at " + depth(l.Elevation, c.opt.System)
	}
	for _, k := range kids {
		c.take(k.Bounds(), "")
	}
	c.front = append(c.front, group("storey", "level:"+l.Label, strings.ToLower(words[:1])+words[1:], kids...))
	if level == c.plan.b.Top()+1 {
		c.back = append(c.back, line("floor", 1, Point{xLabel, y}, Point{xWall, y}))
	}
}

func (c *canvas) pitLabel(r *row) {
	name := "METER"
	if c.plan.pump == pit {
		name = "PUMP"
	}
	c.write(text("level", name, xLabel, r.y1-16, small, "").bold())
	c.write(text("level", "ROOM", xLabel, r.y1-4, small, "").bold())
}

// fold draws levels that are alike as one row with a break line through it.
func (c *canvas) fold(r *row) {
	b := c.plan.b
	mid := (r.y0 + r.y1) / 2
	lo, hi := b.Levels[r.lo].Label, b.Levels[r.hi].Label
	kids := []Item{
		text("level", lo+" to "+hi, xLabel, r.y1-19, small, "").bold(),
		text("elevation", "TYPICAL", xLabel, r.y1-7, small, ""),
	}
	for _, k := range kids {
		c.take(k.Bounds(), "")
	}
	c.front = append(c.front, group("storey", "levels:"+lo+"-"+hi, "levels "+lo+" to "+hi+", alike, folded", kids...))
	zig := []Point{{xWall - 5, mid}}
	for _, x := range []float64{98, 216, 340} {
		if x < xFarWall {
			zig = append(zig, Point{x - 6, mid}, Point{x - 2, mid - 9}, Point{x + 2, mid + 9}, Point{x + 6, mid})
		}
	}
	c.back = append(c.back, line("break", 1, append(zig, Point{xFarWall + 4, mid})...))
	c.takeThin(Box{xWall, mid - 1, xFarWall, mid + 1})
}

// ground draws the ground line outside the wall and the earth under it.
func (c *canvas) ground() {
	y := c.groundLine()
	c.back = append(c.back, line("ground", 2.4, Point{2, y}, Point{xWall, y}))
	for x := 4.0; x < xWall-4; x += 8 {
		c.back = append(c.back, line("ground", 0.8, Point{x + 4, y + 1}, Point{x, y + 6}))
	}
	c.take(Box{0, y - 1, xWall, y + 6}, "")
}

func (c *canvas) groundLine() float64 {
	if r := c.rowOf(c.plan.b.Ground); r != nil {
		return r.y1
	}
	return c.bottom()
}

// brackets names the zones at the side of the sheet.
func (c *canvas) brackets() {
	if !c.plan.named() {
		return
	}
	for _, z := range c.plan.zones {
		y0, y1 := c.span(z.Bottom, z.Top)
		y0, y1 = y0+3, y1-3
		lines := wrap("ZONE "+z.Name, width-xZoneName-1)
		if room := int((y1 - y0) / 12); len(lines) > room {
			lines = lines[len(lines)-room:]
		}
		kids := []Item{line("bracket", 1.4, Point{xBracket - 3, y0}, Point{xBracket, y0}, Point{xBracket, y1}, Point{xBracket - 3, y1})}
		y := (y0+y1)/2 - float64(len(lines))*6 + 9
		for i, l := range lines {
			kids = append(kids, text("zone", l, xZoneName, y+12*float64(i), small, "").bold())
		}
		g := group("zone", "zone:"+strconv.Itoa(z.number), c.zoneWords(z), kids...)
		c.front = append(c.front, g)
		c.take(g.Bounds(), "")
	}
}

func (c *canvas) zoneWords(z zonePlan) string {
	b := c.plan.b
	return "zone " + z.Name + ", levels " + b.Levels[z.Bottom].Label + " to " + b.Levels[z.Top].Label + ", fed from the " + string(z.Supply)
}

// span is the strip of the sheet that the levels lo to hi take up.
func (c *canvas) span(lo, hi int) (y0, y1 float64) {
	for _, r := range c.rows {
		if r.hi == hi && r.kind != pitRow {
			y0 = r.y0
		}
		if r.lo == lo && r.kind != pitRow {
			y1 = r.y1
		}
	}
	return y0, y1
}

// wrap breaks a text into lines no wider than w, in bold small letters; a word
// that is wider is cut.
func wrap(s string, w float64) []string {
	var out []string
	for _, word := range strings.Fields(s) {
		for r := []rune(word); textWidth(word, small, true) > w && len(r) > 2; r = r[:len(r)-1] {
			word = string(r[:len(r)-1]) + "…"
		}
		if n := len(out); n > 0 && n > 1 && textWidth(out[n-1]+" "+word, small, true) <= w {
			out[n-1] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}
