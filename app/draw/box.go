package draw

import (
	"math"
	"strings"
)

// Box is a rectangle on the sheet.
type Box struct{ X0, Y0, X1, Y1 float64 }

// Overlaps reports whether two boxes share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.X0 < c.X1 && c.X0 < b.X1 && b.Y0 < c.Y1 && c.Y0 < b.Y1
}

// Within reports whether a box lies inside another.
func (b Box) Within(c Box) bool {
	return b.X0 >= c.X0 && b.X1 <= c.X1 && b.Y0 >= c.Y0 && b.Y1 <= c.Y1
}

func (b Box) grow(by float64) Box { return Box{b.X0 - by, b.Y0 - by, b.X1 + by, b.Y1 + by} }

func (b Box) join(c Box) Box {
	return Box{math.Min(b.X0, c.X0), math.Min(b.Y0, c.Y0), math.Max(b.X1, c.X1), math.Max(b.Y1, c.Y1)}
}

// around is the box with its centre at x, y.
func around(x, y, halfW, halfH float64) Box { return Box{x - halfW, y - halfH, x + halfW, y + halfH} }

// Bounds is the box that an item takes up; that of a text is an estimate on
// the wide side, since every device has its own typeface.
func (i Item) Bounds() Box {
	switch i.Kind {
	case Group:
		b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
		for _, k := range i.Kids {
			b = b.join(k.Bounds())
		}
		return b
	case Rect:
		return Box{i.X, i.Y, i.X + i.W, i.Y + i.H}
	case Circle:
		return around(i.X, i.Y, i.R, i.R)
	case Text:
		return i.textBounds()
	}
	return spread(i.Points).grow(i.Stroke / 2)
}

func spread(points []Point) Box {
	b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		b = b.join(Box{p.X, p.Y, p.X, p.Y})
	}
	return b
}

func (i Item) textBounds() Box {
	w := textWidth(i.Text, i.Size, i.Bold)
	x := i.X
	switch i.Anchor {
	case "middle":
		x -= w / 2
	case "end":
		x -= w
	}
	return Box{x, i.Y - 0.76*i.Size, x + w, i.Y + 0.22*i.Size}
}

// textWidth estimates the width of a text from usual widths of letters in
// typefaces without serifs, on the wide side.
func textWidth(s string, size float64, bold bool) float64 {
	em := 0.0
	for _, r := range s {
		em += letterWidth(r)
	}
	if bold {
		em *= 1.07
	}
	return em * size
}

func letterWidth(r rune) float64 {
	switch {
	case strings.ContainsRune("ijl.,:;'|! \u00a0\"()", r):
		return 0.33
	case strings.ContainsRune("ftr-/I", r):
		return 0.4
	case strings.ContainsRune("mwMW%", r):
		return 0.92
	case r >= 'A' && r <= 'Z':
		return 0.69
	case r >= '0' && r <= '9':
		return 0.6
	case r == '°':
		return 0.45
	}
	return 0.6
}

// taken is a part of the sheet that is in use.
type taken struct {
	Box
	owner string // the pipe it belongs to: a pipe's letters may lie on it
	thin  bool   // a wall or a floor line, that letters may hide if they must
}

// room is the part of a sheet in use.
type room struct{ boxes []taken }

func (r *room) take(b Box, owner string) { r.boxes = append(r.boxes, taken{Box: b, owner: owner}) }

func (r *room) takeThin(b Box) { r.boxes = append(r.boxes, taken{Box: b, thin: true}) }

// free reports whether nothing lies in b but what belongs to owner.
func (r *room) free(b Box, owner string) bool { return r.clear(b, owner, false) }

func (r *room) clear(b Box, owner string, overThin bool) bool {
	for _, t := range r.boxes {
		if t.Overlaps(b) && (owner == "" || t.owner != owner) && !(overThin && t.thin) {
			return false
		}
	}
	return true
}
