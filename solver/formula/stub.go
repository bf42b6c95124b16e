// Package formula reads, checks, evaluates and prints expressions over
// quantities.
package formula

import (
	"errors"

	"riserwork/solver/unit"
)

// Interval is a closed interval.
type Interval struct{ Lo, Hi float64 }

// Around is v plus and minus half.
func Around(v, half float64) Interval { return Interval{v - half, v + half} }

// Hull is the smallest interval that holds both.
func Hull(a, b Interval) Interval { return Interval{min(a.Lo, b.Lo), max(a.Hi, b.Hi)} }

// Contains reports whether v lies in the interval.
func (i Interval) Contains(v float64) bool { return i.Lo <= v && v <= i.Hi }

// Width is the width.
func (i Interval) Width() float64 { return i.Hi - i.Lo }

// Func is a named function.
type Func struct {
	Name     string
	Arity    int
	Eval     func([]float64) float64
	Interval func([]Interval) Interval
	Dims     func([]unit.Quantity) (unit.Quantity, error)
}

// Options say how text is read.
type Options struct {
	DecimalComma bool
	Imperial     bool
	Names        func(string) bool
	Funcs        []Func
}

// Error is a fault in a text.
type Error struct {
	Pos int
	Msg string
}

func (e *Error) Error() string { return e.Msg }

// Expr is an expression.
type Expr struct{}

// Bound is an expression with its names bound to slots.
type Bound struct{}

// Parse reads an expression.
func Parse(text string) (*Expr, error) { return ParseWith(text, Options{}) }

// ParseWith reads an expression as the options say.
func ParseWith(text string, opt Options) (*Expr, error) { return nil, errors.New("not read yet") }

// Names are the names in order of first appearance.
func (e *Expr) Names() []string { return nil }

// Bind binds names to slots; slot is -1 for an unknown name.
func (e *Expr) Bind(slot func(name string) int) (*Bound, error) { return nil, nil }

// Eval evaluates.
func (b *Bound) Eval(env []float64) float64 { return 0 }

// Interval evaluates over intervals.
func (b *Bound) Interval(env []Interval) Interval { return Interval{} }

// Span is Interval with the rounding of literals of four or more figures.
func (b *Bound) Span(env []Interval) Interval { return Interval{} }

// EvalPlain evaluates an expression without names.
func (e *Expr) EvalPlain() (float64, bool) { return 0, false }

// Check evaluates in SI with dimensions.
func (e *Expr) Check(env func(name string) (unit.Quantity, bool)) (unit.Quantity, error) {
	return unit.Quantity{}, nil
}

// Text prints in symbols.
func (e *Expr) Text() string { return "" }

// Source prints text that parses to an equal expression.
func (e *Expr) Source() string { return "" }

// Numbers prints with numbers put in.
func (e *Expr) Numbers(value func(name string) string) string { return "" }

// MathML prints presentation MathML.
func (e *Expr) MathML(name func(string) string) string { return "" }

// Kind of a node.
type Kind uint8

// Kinds of nodes.
const (
	NumberNode  Kind = iota // Text
	NameNode                // Name
	OpNode                  // Op with two kids: + - x < <= > >= or and
	NegNode                 // one kid
	FracNode                // two kids
	PowerNode               // two kids
	RootNode                // one kid
	CallNode                // Name, kids
	GroupNode               // one kid in brackets
	PercentNode             // one kid
)

// Node is a neutral view of an expression as it is laid out.
type Node struct {
	Kind Kind
	Op   string
	Name string
	Text string
	Kids []Node
}

// Root is the top of the laid-out tree.
func (e *Expr) Root() Node { return Node{} }

// Line is a learner's line.
type Line struct {
	Label     string
	Exprs     []*Expr
	Numerals  []unit.Numeral
	Value     *unit.Numeral
	Unit      unit.Unit
	HasUnit   bool
	Ambiguous bool
	Choice    string
	Words     []string
}

// ReadLine reads a learner's line.
func ReadLine(text string, opt Options) (Line, error) { return Line{}, errors.New("not read yet") }
