package draw

import "strconv"

// told writes the notes where they belong. One that finds no room there gets
// a number there, and its text under the drawing.
func (c *canvas) told() (keyed []Note) {
	if c.opt.Ask != nil {
		c.ask(*c.opt.Ask)
	}
	for _, n := range c.opt.Notes {
		s, ok := c.find(n)
		if ok && c.noteAt(n, s.box) {
			continue
		}
		keyed = append(keyed, n)
		if ok {
			c.numbered(len(keyed), s.box)
		}
	}
	return keyed
}

// settings are the notes of a solved drawing: what each valve is set to,
// where the problem does not tell it anyway.
func (c *canvas) settings() {
	if !c.opt.Solved {
		return
	}
	for i := range c.plan.zones {
		z := &c.plan.zones[i]
		if z.Valve == nil || c.hasNote(AtValve, z.valve) {
			continue
		}
		c.opt.Notes = append(c.opt.Notes, Note{z.valve, AtValve, pressure(z.Valve.Setting, c.opt.System)})
	}
}

func (c *canvas) hasNote(w Place, level int) bool {
	for _, n := range c.opt.Notes {
		if n.Where == w && n.Level == level {
			return true
		}
	}
	return false
}

// find is where a note belongs. Of a device that stands only once the level
// does not matter.
func (c *canvas) find(n Note) (spot, bool) {
	if r := c.rowOf(n.Level); n.Where == AtFloor && r != nil {
		return spot{AtFloor, n.Level, around((xWall+xZone)/2-10, r.y1-11, 4, 4)}, true
	}
	var first *spot
	for i := range c.spots {
		if s := &c.spots[i]; s.where == n.Where {
			if s.level == n.Level {
				return *s, true
			}
			if first == nil {
				first = s
			}
		}
	}
	if first == nil || n.Where == AtOutlet || n.Where == AtFloor {
		return spot{}, false
	}
	return *first, true
}

// noteAt writes a note beside a box, as near as there is room.
func (c *canvas) noteAt(n Note, b Box) bool {
	it := text("told", n.Text, 0, 0, small, "middle").bold()
	w := textWidth(n.Text, small, true) / 2
	rings := []float64{0, 4, 8, 12, 16, 20}
	if n.Where == AtFloor {
		rings = []float64{0, 10, 20, 30, 40, 60, 80, 100, 120, 140}
	}
	for _, far := range rings {
		for _, at := range around8(b, w, far) {
			it.X, it.Y = at.X, at.Y+4
			if box := it.margin(); c.onSheet(box, b) && c.free(box, "") {
				c.write(group("told", "", "", it))
				return true
			}
		}
	}
	return false
}

// margin is the box of a text with room to its neighbours.
func (i Item) margin() Box {
	b := i.Bounds()
	return Box{b.X0 - 3, b.Y0 - 1, b.X1 + 3, b.Y1 + 1}
}

// around8 are the places about a box for a text half w wide, nearest first.
func around8(b Box, w, far float64) []Point {
	x, y := (b.X0+b.X1)/2, (b.Y0+b.Y1)/2
	below, above := b.Y1+8+far/2, b.Y0-8-far/2
	right, left := b.X1+w+3+far, b.X0-w-3-far
	return []Point{
		{x, below}, {x, above}, {right, y}, {left, y},
		{x + far, below}, {x - far, below}, {x + far, above}, {x - far, above},
		{right, below}, {left, below}, {right, above}, {left, above},
	}
}

// onSheet reports whether a note for a device at b may lie in box: on the
// sheet, and not in another row.
func (c *canvas) onSheet(box, b Box) bool {
	if !box.Within(Box{2, 2, width - 2, c.rows[len(c.rows)-1].y1}) {
		return false
	}
	mid := (b.Y0 + b.Y1) / 2
	for _, r := range c.rows {
		if mid >= r.y0 && mid <= r.y1 {
			return box.Y0 >= r.y0 && box.Y1 <= r.y1
		}
	}
	return box.Y1 <= c.roof
}

// numbered marks a place with the number of a note under the drawing.
func (c *canvas) numbered(n int, b Box) {
	for _, far := range []float64{0, 5, 10, 16, 24, 32, 44, 60} {
		for _, at := range around8(b, 8, far) {
			if box := around(at.X, at.Y, 8, 8); c.onSheet(box, b) && c.free(box, "") {
				c.write(group("told", "note:"+strconv.Itoa(n), "note "+strconv.Itoa(n), keyNumber(n, at.X, at.Y)...))
				return
			}
		}
	}
}

func keyNumber(n int, x, y float64) []Item {
	return []Item{circle("key", Paper, 1.2, x, y, 8), text("key", strconv.Itoa(n), x, y+4, small, "middle").bold()}
}

// ask marks the place asked about with a balloon and its text.
func (c *canvas) ask(n Note) {
	if n.Where == "" {
		n.Where = AtOutlet
	}
	s, ok := c.find(n)
	if !ok {
		n.Where = AtFloor
		if s, ok = c.find(n); !ok {
			return
		}
	}
	for _, far := range []float64{1, 5, 10, 16, 24, 32, 44, 60, 80} {
		for _, at := range around8(s.box, 10, far) {
			box := around(at.X, at.Y, 10, 10)
			if !c.onSheet(box, s.box) || !c.free(box, "") {
				continue
			}
			c.write(group("ask", "ask", "asked: "+n.Text,
				circle("ask", Paper, 2.2, at.X, at.Y, 9.5), text("ask", "?", at.X, at.Y+5, 14, "middle").bold()))
			c.askText(n.Text, box)
			return
		}
	}
}

func (c *canvas) askText(s string, b Box) {
	if s == "" || s == "?" {
		return
	}
	it := text("ask", s, 0, 0, small+1, "middle").bold()
	w := textWidth(s, small+1, true) / 2
	for _, far := range []float64{0, 6, 12, 20, 30, 45, 60} {
		pts := around8(b, w, far)
		for _, at := range append([]Point{pts[3], pts[2]}, pts...) {
			it.X, it.Y = at.X, at.Y+4
			if box := it.margin(); c.onSheet(box, b) && c.free(box, "") {
				c.write(it)
				return
			}
		}
	}
}

// keys lists the notes that found no room, under the drawing.
func (c *canvas) keys(notes []Note) {
	for i, n := range notes {
		c.foot += 20
		c.front = append(c.front, group("told", "note:"+strconv.Itoa(i+1), "note "+strconv.Itoa(i+1)+": "+n.Text,
			append(keyNumber(i+1, 14, c.foot-8), text("told", n.Text, 28, c.foot-4, small, ""))...))
	}
}
