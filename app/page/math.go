package page

import (
	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/solver/formula"
)

const mathNS = "http://www.w3.org/1998/Math/MathML"

func mathElem(tag string, kids ...app.UI) app.UI {
	return app.Elem(tag).XMLNS(mathNS).Body(kids...)
}

func mathText(tag, text string) app.UI { return app.Elem(tag).XMLNS(mathNS).Text(text) }

// mathOf is an expression as it is written on paper.
func mathOf(e *formula.Expr) app.UI { return mathElem("math", mathNode(e.Root())) }

func mathNode(n formula.Node) app.UI {
	switch n.Kind {
	case formula.NumberNode:
		return mathText("mn", n.Text)
	case formula.NameNode:
		return mathText("mi", spaced(n.Name))
	case formula.OpNode:
		return mathElem("mrow", mathNode(n.Kids[0]), mathText("mo", sign(n.Op)), mathNode(n.Kids[1]))
	case formula.NegNode:
		return mathElem("mrow", mathText("mo", "−"), mathNode(n.Kids[0]))
	case formula.FracNode:
		return mathElem("mfrac", mathNode(n.Kids[0]), mathNode(n.Kids[1]))
	case formula.PowerNode:
		return mathElem("msup", mathNode(n.Kids[0]), mathNode(n.Kids[1]))
	case formula.RootNode:
		return mathElem("msqrt", mathNode(n.Kids[0]))
	case formula.GroupNode:
		return mathElem("mrow", mathText("mo", "("), mathNode(n.Kids[0]), mathText("mo", ")"))
	case formula.PercentNode:
		return mathElem("mrow", mathNode(n.Kids[0]), mathText("mo", "%"))
	case formula.CallNode:
		return mathCall(n)
	}
	return mathText("mtext", n.Text)
}

func mathCall(n formula.Node) app.UI {
	kids := []app.UI{mathText("mi", n.Name), mathText("mo", "(")}
	for i, k := range n.Kids {
		if i > 0 {
			kids = append(kids, mathText("mo", ","))
		}
		kids = append(kids, mathNode(k))
	}
	return mathElem("mrow", append(kids, mathText("mo", ")"))...)
}

// sign is an operator as it is printed.
func sign(op string) string {
	switch op {
	case "x", "*":
		return "×"
	case "-":
		return "−"
	case "<=":
		return "≤"
	case ">=":
		return "≥"
	}
	return op
}
