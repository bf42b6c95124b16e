package draw

import "math"

// Where things stand across a riser diagram, in px.
const (
	width     = 360
	xLabel    = 4
	xMain     = 14
	xCurb     = 38
	xWall     = 68
	xService  = 75
	xGate     = 88
	xGauge    = 101
	xStrainer = 115
	xMeter    = 134
	xBackflow = 162
	xZone     = 186 // risers of the zones, one over the other
	xTail     = 201
	xPump     = 214
	xCheck    = 231
	xRise     = 246 // the pipe past the lower zones
	xHot      = 271
	xReturn   = 291
	xFarWall  = 310
	xBracket  = 315
	xZoneName = 319
)

const small = 11 // px, the least size of a text

// pipe is a run of pipe with its letters still to come.
type pipe struct {
	part, letters string // "cw", "CW"
	tag           string // "R2-CW", once, where it fits
	key, label    string
	lines         [][]Point
	marks         []Item // arrows and tees
}

// spot is where a device stands, for notes.
type spot struct {
	where Place
	level int
	box   Box
}

// canvas is a riser diagram under way.
type canvas struct {
	room
	plan  *plan
	opt   Options
	rows  []row
	roof  float64
	foot  float64
	back  []Item
	pipes []*pipe
	front []Item
	spots []spot
	signs [numSigns]bool // to be explained in the legend
}

// rowOf is the row that a level is drawn in; nil where it is folded away.
func (c *canvas) rowOf(level int) *row {
	for i := range c.rows {
		if r := &c.rows[i]; r.lo == level && r.hi == level && (r.kind == levelRow || r.kind == pitRow) {
			return r
		}
	}
	return nil
}

// write puts a text on the sheet.
func (c *canvas) write(it Item) {
	c.front = append(c.front, it)
	c.take(it.Bounds(), "")
}

// device puts a sign on the sheet and remembers where.
func (c *canvas) device(part, key, label string, items []Item) Box {
	g := group(part, key, label, items...)
	c.front = append(c.front, g)
	c.take(g.Bounds(), "")
	return g.Bounds()
}

func (c *canvas) spot(where Place, level int, b Box) {
	c.spots = append(c.spots, spot{where, level, b})
}

// pipe begins a run of pipe.
func (c *canvas) pipe(part, tag, key, label string) *pipe {
	p := &pipe{part: part, letters: pipeKind(part).letters, tag: tag, key: key, label: label}
	c.pipes = append(c.pipes, p)
	return p
}

// run lays pipe through points.
func (c *canvas) run(p *pipe, points ...Point) {
	p.lines = append(p.lines, points)
	for i := range points[1:] {
		c.take(spread(points[i:i+2]).grow(1.5), p.key)
	}
}

func (c *canvas) mark(p *pipe, it Item) {
	p.marks = append(p.marks, it)
	c.take(it.Bounds(), "")
}

// letterGap is how far apart the letters on a pipe are.
const letterGap = 130

// finish letters the pipes and puts the layers of the sheet together.
func (c *canvas) finish() []Item {
	items := []Item{rect("paper", Paper, Box{0, 0, width, c.foot})}
	items = append(items, c.back...)
	for _, p := range c.pipes {
		var kids []Item
		for _, l := range p.lines {
			it := line(p.part, 1.8, l...)
			it.Dash = pipeKind(p.part).dash
			kids = append(kids, it)
		}
		items = append(items, group("pipe", p.key, p.label, append(kids, p.marks...)...))
	}
	return append(items, c.front...)
}

// letter writes the letters of every pipe on it, where nothing else lies.
func (c *canvas) letter() {
	for _, p := range c.pipes {
		text := p.letters
		if p.tag != "" {
			text = p.tag
		}
		if !c.letterAlong(p, text, false) && !c.letterAlong(p, p.letters, false) {
			c.letterAlong(p, p.letters, true)
		}
	}
}

// letterAlong walks the pipe and letters it; the first letters are given, the
// others are the plain ones. Where overThin is set they may hide a wall or a
// floor line. It reports whether there was room for the first.
func (c *canvas) letterAlong(p *pipe, first string, overThin bool) bool {
	const step = 1
	done, since := false, math.Inf(1)
	for _, l := range p.lines {
		for i := range l[1:] {
			a, b := l[i], l[i+1]
			long := math.Hypot(b.X-a.X, b.Y-a.Y)
			for d := 0.0; d < long; d += step {
				since += step
				if since < letterGap {
					continue
				}
				s := p.letters
				if !done {
					s = first
				}
				half := 10.0
				if a.Y == b.Y {
					half = textWidth(s, small, false)/2 + 3
				}
				at := Point{a.X + (b.X-a.X)*d/long, a.Y + (b.Y-a.Y)*d/long}
				if d < half || d > long-half || !c.letterAt(p, s, at, overThin) {
					continue
				}
				done, since = true, 0
			}
		}
	}
	return done
}

func (c *canvas) letterAt(p *pipe, s string, at Point, overThin bool) bool {
	b := around(at.X, at.Y, textWidth(s, small, false)/2+1.5, 6)
	if !c.clear(b, p.key, overThin) {
		return false
	}
	c.take(b, "")
	c.front = append(c.front, group("letters", p.key, "", rect(c.gapPart(at.Y), Paper, b), text(p.part+"-letters", s, at.X, at.Y+4, small, "middle")))
	return true
}

// gapPart is the part of the gap that letters leave in a pipe; it has the
// colour of what lies under it.
func (c *canvas) gapPart(y float64) string {
	for _, r := range c.rows {
		if y > r.y0 && y < r.y1 && c.opt.asks(r.lo) && r.kind != foldRow {
			return "asked"
		}
	}
	return "gap"
}
