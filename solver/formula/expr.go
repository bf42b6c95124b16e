package formula

import "riserwork/solver/unit"

// Expr is an expression. It does not change once read.
type Expr struct{ root *node }

// kind is what a node of the tree does.
type kind uint8

const (
	number kind = iota
	pi
	name
	add
	sub
	mul
	div
	pow
	neg
	percent
	root
	roundUp
	roundDown
	roundHalf
	least
	most
	abs
	sine
	cosine
	less
	atMost
	more
	atLeast
	either
	both
	call
)

// A node of the tree. Binding sets the slots in a copy.
type node struct {
	kind kind
	lit  unit.Numeral // of a number
	unit unit.Unit    // of a number; Number where none was written
	name string       // of a name
	slot int          // of a name, in a bound expression
	fn   *Func        // of a call
	kids []*node
}

// Func is a named function that the caller supplies: a demand curve, a table
// look-up, a next size.
type Func struct {
	Name  string
	Arity int
	// Eval gives the value for plain numbers in the units that the catalogue
	// uses; NaN where there is none.
	Eval func(args []float64) float64
	// Interval gives bounds. It may be nil where Eval rises or falls, never
	// both, with each argument: then the corners are taken.
	Interval func(args []Interval) Interval
	// Dims gives the result for arguments in SI, and an error in plain words
	// where their dimensions do not fit. It may be nil for a function of plain
	// numbers that gives a plain number.
	Dims func(args []unit.Quantity) (unit.Quantity, error)
}

// Options say how text is read.
type Options struct {
	DecimalComma bool // "1,234" is a little more than one
	Imperial     bool // a bare gal, gpm or gph is imperial
	// Names, where set, tells the names that a line may use. It is asked in
	// lower case with underscores; the line may have capitals and spaces.
	// Where it is nil, any word is a name, as written.
	Names func(name string) bool
	Funcs []Func // functions beside the built-in ones
}

// Error is a fault in a text, in one sentence.
type Error struct {
	Pos int // byte in the text
	Msg string
}

func (e *Error) Error() string { return e.Msg }

// builtin are the functions that every formula has; arity -1 is two or more.
var builtin = []struct {
	name  string
	kind  kind
	arity int
}{
	{"sqrt", root, 1}, {"root", root, 1},
	{"roundup", roundUp, 1}, {"rounddown", roundDown, 1}, {"round", roundHalf, 1},
	{"min", least, -1}, {"max", most, -1}, {"abs", abs, 1},
	{"sin", sine, 1}, {"cos", cosine, 1},
}

// Names are the names of the expression in order of first appearance.
func (e *Expr) Names() []string {
	var list []string
	seen := map[string]bool{}
	e.root.walk(func(n *node) {
		if n.kind == name && !seen[n.name] {
			seen[n.name] = true
			list = append(list, n.name)
		}
	})
	return list
}

// numerals are the numbers of the expression in order.
func (e *Expr) numerals() []unit.Numeral {
	var list []unit.Numeral
	e.root.walk(func(n *node) {
		if n.kind == number {
			list = append(list, n.lit)
		}
	})
	return list
}

func (n *node) walk(visit func(*node)) {
	visit(n)
	for _, k := range n.kids {
		k.walk(visit)
	}
}

// Equal reports whether two expressions are the same tree: the same names,
// operations, values and units, however they were written.
func (e *Expr) Equal(other *Expr) bool { return e.root.equal(other.root) }

func (n *node) equal(o *node) bool {
	if n.kind != o.kind || n.lit.Value != o.lit.Value || n.unit != o.unit || n.name != o.name || n.fn != o.fn || len(n.kids) != len(o.kids) {
		return false
	}
	for i, k := range n.kids {
		if !k.equal(o.kids[i]) {
			return false
		}
	}
	return true
}
