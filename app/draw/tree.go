package draw

import (
	"math"
	"strconv"
	"strings"
)

// Node is an element of the drawing: what a page needs to build it in its own
// way. Text is set only where there are no Kids.
type Node struct {
	Tag   string
	Attrs []Attr // in a fixed order
	Kids  []Node
	Text  string
}

// Attr is an attribute of a node.
type Attr struct{ Name, Value string }

// Namespace is that of every element of a drawing.
const Namespace = "http://www.w3.org/2000/svg"

// Tree is the scene as SVG elements.
func (s Scene) Tree() Node {
	n := Node{Tag: "svg", Attrs: []Attr{
		{"xmlns", Namespace},
		{"viewBox", "0 0 " + num(s.Width) + " " + num(s.Height)},
		{"data-part", "sheet"},
		{"role", "img"},
		{"aria-label", s.Title},
		{"font-family", "system-ui, sans-serif"},
	}}
	n.Kids = append(n.Kids, Node{Tag: "desc", Text: s.Desc})
	for _, it := range s.Items {
		n.Kids = append(n.Kids, it.node())
	}
	return n
}

// SVG is the scene as a file by itself.
func (s Scene) SVG() string {
	var b strings.Builder
	s.Tree().write(&b)
	b.WriteByte('\n')
	return b.String()
}

var escape = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;")

func (n Node) write(b *strings.Builder) {
	b.WriteString("<" + n.Tag)
	for _, a := range n.Attrs {
		b.WriteString(" " + a.Name + `="` + escape.Replace(a.Value) + `"`)
	}
	if len(n.Kids) == 0 && n.Text == "" {
		b.WriteString("/>")
		return
	}
	b.WriteString(">" + escape.Replace(n.Text))
	for _, k := range n.Kids {
		b.WriteByte('\n')
		k.write(b)
	}
	b.WriteString("</" + n.Tag + ">")
}

func (i Item) node() Node {
	var n Node
	if i.Part != "" {
		n.attr("data-part", i.Part)
	}
	if i.Key != "" {
		n.attr("data-key", i.Key)
	}
	if i.Label != "" {
		n.attr("role", "img") // a name without a role is heard by nobody
		n.attr("aria-label", i.Label)
	}
	switch i.Kind {
	case Group:
		n.Tag = "g"
		for _, k := range i.Kids {
			n.Kids = append(n.Kids, k.node())
		}
		return n
	case Text:
		n.Tag, n.Text = "text", i.Text
		n.attr("x", num(i.X))
		n.attr("y", num(i.Y))
		n.attr("font-size", num(i.Size))
		n.attr("fill", Ink)
		if i.Anchor != "" {
			n.attr("text-anchor", i.Anchor)
		}
		if i.Bold {
			n.attr("font-weight", "700")
		}
		return n
	case Rect:
		n.Tag = "rect"
		n.attr("x", num(i.X))
		n.attr("y", num(i.Y))
		n.attr("width", num(i.W))
		n.attr("height", num(i.H))
		if i.R > 0 {
			n.attr("rx", num(i.R))
		}
	case Circle:
		n.Tag = "circle"
		n.attr("cx", num(i.X))
		n.attr("cy", num(i.Y))
		n.attr("r", num(i.R))
	case Shape:
		n.Tag = "polygon"
		n.attr("points", list(i.Points))
	default:
		n.Tag = "polyline"
		n.attr("points", list(i.Points))
	}
	n.paint(i)
	return n
}

// paint sets fill and stroke; they are attributes, so that the drawing shows
// with no style sheet and a style sheet can still overrule them.
func (n *Node) paint(i Item) {
	fill := i.Fill
	if fill == "" {
		fill = "none"
	}
	n.attr("fill", fill)
	if i.Stroke > 0 {
		n.attr("stroke", Ink)
		n.attr("stroke-width", num(i.Stroke))
		n.attr("stroke-linejoin", "round")
	}
	if i.Dash != "" {
		n.attr("stroke-dasharray", i.Dash)
	}
}

func (n *Node) attr(name, value string) { n.Attrs = append(n.Attrs, Attr{name, value}) }

func list(points []Point) string {
	var out []string
	for _, p := range points {
		out = append(out, num(p.X)+","+num(p.Y))
	}
	return strings.Join(out, " ")
}

// num prints a place on the sheet to a tenth of a px.
func num(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }
