// Package draw lays out the riser diagram and the pressure profile of a
// building as plain data: lines, boxes and texts on a sheet 360 wide, as
// narrow as a phone. It knows no page and no browser; the page turns the tree
// of a [Scene] into elements, and [Scene.SVG] writes it for print and tests.
//
// A drawing is black on white by itself: line patterns and letters tell the
// pipes apart. A style sheet may colour it by the data-part of each element.
package draw

// Kind is what an item is.
type Kind uint8

// Kinds of items.
const (
	Group  Kind = iota // Kids
	Line               // Points, open
	Shape              // Points, closed
	Rect               // X, Y, W, H, R of the corners
	Circle             // X, Y, R
	Text               // Text at X, Y of its baseline
)

// Fills of shapes, rectangles and circles.
const (
	Paper = "white"        // hides what lies under it
	Ink   = "currentColor" //
)

// Point is a place on the sheet, in px from its upper left corner.
type Point struct{ X, Y float64 }

// Item is one thing on a sheet. Sizes are in px of the sheet.
type Item struct {
	Kind  Kind
	Part  string // what it is to a style sheet: "cw", "floor", "ask"
	Key   string // what it stands for, where it can be pointed at: "level:12", "valve:2"
	Label string // the same as words, for those who listen

	Points     []Point
	X, Y, W, H float64
	R          float64
	Fill       string // Paper, Ink or empty
	Stroke     float64
	Dash       string // lengths of strokes and gaps

	Text   string
	Size   float64
	Bold   bool
	Anchor string // "middle", "end" or empty

	Kids []Item
}

// Scene is a drawing with its twin in words.
type Scene struct {
	Width, Height float64
	Title, Desc   string
	Items         []Item
	Table         [][]string // the same as rows; the first is the heading
}

// Walk calls f with every item of the scene, groups before their kids.
func (s Scene) Walk(f func(Item)) { walk(s.Items, f) }

func walk(items []Item, f func(Item)) {
	for _, it := range items {
		f(it)
		walk(it.Kids, f)
	}
}

func line(part string, stroke float64, points ...Point) Item {
	return Item{Kind: Line, Part: part, Stroke: stroke, Points: points}
}

func shape(part, fill string, stroke float64, points ...Point) Item {
	return Item{Kind: Shape, Part: part, Fill: fill, Stroke: stroke, Points: points}
}

func rect(part, fill string, b Box) Item {
	return Item{Kind: Rect, Part: part, Fill: fill, X: b.X0, Y: b.Y0, W: b.X1 - b.X0, H: b.Y1 - b.Y0}
}

func circle(part, fill string, stroke, x, y, r float64) Item {
	return Item{Kind: Circle, Part: part, Fill: fill, Stroke: stroke, X: x, Y: y, R: r}
}

func text(part, s string, x, y, size float64, anchor string) Item {
	return Item{Kind: Text, Part: part, Text: s, X: x, Y: y, Size: size, Anchor: anchor}
}

func (i Item) bold() Item { i.Bold = true; return i }

func group(part, key, label string, kids ...Item) Item {
	return Item{Kind: Group, Part: part, Key: key, Label: label, Kids: kids}
}
