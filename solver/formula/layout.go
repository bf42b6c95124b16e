package formula

import "strings"

// Kind is what a node of the layout is.
type Kind uint8

// Kinds of layout nodes.
const (
	NumberNode  Kind = iota // Text, and Unit where one was written
	NameNode                // Name
	OpNode                  // two kids with Op between them
	NegNode                 // a minus before one kid
	FracNode                // the first kid over the second
	PowerNode               // the first kid with the second as exponent
	RootNode                // the square root of one kid
	CallNode                // the function Name of its kids
	GroupNode               // one kid in round brackets
	PercentNode             // one kid with a percent sign
)

// Node is an expression as it is laid out in two dimensions: fractions have
// bars, roots have roofs, and brackets stand only where those leave a doubt. A
// page can build its own elements from it.
type Node struct {
	Kind Kind
	Op   string // + − × < ≤ > ≥ or and
	Name string
	Text string
	Unit string
	Kids []Node
}

// Root is the top of the layout.
func (e *Expr) Root() Node { return layout(e.root, rankEither) }

// layout lays out a node where what binds less than rank needs brackets.
func layout(n *node, rank int) Node {
	laid := Node{}
	own := n.rank()
	switch n.kind {
	case number:
		laid = Node{Kind: NumberNode, Text: n.lit.Text, Unit: n.unit.Name}
		if !n.lit.Unit.IsNumber() {
			laid.Unit = ""
		}
	case pi:
		laid = Node{Kind: NumberNode, Text: "π"}
	case name:
		laid = Node{Kind: NameNode, Name: n.name}
	case neg:
		laid = Node{Kind: NegNode, Kids: []Node{layout(n.kids[0], rankSign)}}
	case percent:
		laid = Node{Kind: PercentNode, Kids: []Node{layout(n.kids[0], rankPostfix)}}
	case div:
		own = rankProduct
		laid = Node{Kind: FracNode, Kids: []Node{layout(n.kids[0], rankEither), layout(n.kids[1], rankEither)}}
		if rank <= rankProduct+1 {
			return laid
		}
	case pow:
		base := layout(n.kids[0], rankPostfix)
		if n.kids[0].kind == number && n.kids[0].unit.Name != "" {
			base = Node{Kind: GroupNode, Kids: []Node{base}}
		}
		laid = Node{Kind: PowerNode, Kids: []Node{base, layout(n.kids[1], rankEither)}}
	case root:
		return Node{Kind: RootNode, Kids: []Node{layout(n.kids[0], rankEither)}}
	default:
		if own == rankAtom {
			return layoutCall(n)
		}
		left := own
		if own == rankComparison {
			left++
		}
		laid = Node{Kind: OpNode, Op: binaryText[n.kind].symbol, Kids: []Node{layout(n.kids[0], left), layout(n.kids[1], own+1)}}
	}
	if own < rank {
		return Node{Kind: GroupNode, Kids: []Node{laid}}
	}
	return laid
}

func layoutCall(n *node) Node {
	laid := Node{Kind: CallNode, Name: n.kind.word()}
	if n.kind == call {
		laid.Name = n.fn.Name
	}
	for _, k := range n.kids {
		laid.Kids = append(laid.Kids, layout(k, rankEither))
	}
	return laid
}

// MathML prints presentation MathML (MathML Core), without the math element
// around it. name gives what is shown for a name; nil shows it with spaces.
func (e *Expr) MathML(name func(string) string) string {
	if name == nil {
		name = func(s string) string { return strings.ReplaceAll(s, "_", " ") }
	}
	var b strings.Builder
	e.Root().mathML(&b, name)
	return b.String()
}

func (n Node) mathML(b *strings.Builder, name func(string) string) {
	kids := func(element string) {
		b.WriteString("<" + element + ">")
		for _, k := range n.Kids {
			k.mathML(b, name)
		}
		b.WriteString("</" + element + ">")
	}
	row := func(parts ...func()) {
		b.WriteString("<mrow>")
		for _, part := range parts {
			part()
		}
		b.WriteString("</mrow>")
	}
	op := func(s string) func() { return func() { tag(b, "mo", s) } }
	kid := func(i int) func() { return func() { n.Kids[i].mathML(b, name) } }
	switch n.Kind {
	case NumberNode:
		if n.Unit == "" {
			tag(b, "mn", n.Text)
			return
		}
		row(func() { tag(b, "mn", n.Text) }, func() { tag(b, "mtext", "\u00a0"+n.Unit) })
	case NameNode:
		shown := name(n.Name)
		tag(b, pick(len([]rune(shown)) == 1, "mi", "mtext"), shown)
	case OpNode:
		row(kid(0), op(n.Op), kid(1))
	case NegNode:
		row(op("−"), kid(0))
	case PercentNode:
		row(kid(0), op("%"))
	case GroupNode:
		row(op("("), kid(0), op(")"))
	case FracNode:
		kids("mfrac")
	case PowerNode:
		kids("msup")
	case RootNode:
		kids("msqrt")
	case CallNode:
		row(func() { tag(b, "mi", n.Name) }, op("("), func() {
			for i := range n.Kids {
				if i > 0 {
					tag(b, "mo", ";")
				}
				kid(i)()
			}
		}, op(")"))
	}
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func tag(b *strings.Builder, element, content string) {
	b.WriteString("<" + element + ">" + escaper.Replace(content) + "</" + element + ">")
}
