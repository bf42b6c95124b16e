package formula

import (
	"math"
	"strconv"
	"strings"

	"riserwork/solver/unit"
)

// ranks of the operations: what binds more has a higher one.
const (
	rankEither = iota
	rankBoth
	rankComparison
	rankSum
	rankProduct
	rankSign
	rankPower
	rankPostfix
	rankAtom
)

// binaryText is how the operations on two sides are printed, in symbols and
// in plain characters.
var binaryText = [...]struct {
	rank          int
	symbol, plain string
}{
	add:     {rankSum, "+", "+"},
	sub:     {rankSum, "−", "-"},
	mul:     {rankProduct, "×", "x"},
	div:     {rankProduct, "/", "/"},
	less:    {rankComparison, "<", "<"},
	atMost:  {rankComparison, "≤", "<="},
	more:    {rankComparison, ">", ">"},
	atLeast: {rankComparison, "≥", ">="},
	either:  {rankEither, "or", "or"},
	both:    {rankBoth, "and", "and"},
}

func (n *node) rank() int {
	switch n.kind {
	case neg:
		return rankSign
	case pow:
		return rankPower
	case percent:
		return rankPostfix
	case add, sub, mul, div, less, atMost, more, atLeast, either, both:
		return binaryText[n.kind].rank
	}
	return rankAtom
}

// word is the name of a built-in function.
func (k kind) word() string {
	for _, b := range builtin {
		if b.kind == k {
			return b.name
		}
	}
	return ""
}

// Text prints the expression in symbols, names with spaces: "street pressure −
// gamma × height". Where no name has a space, it reads back as it was.
func (e *Expr) Text() string { return text(e.root) }

func text(n *node) string {
	p := printer{symbols: true, name: func(s string) string { return strings.ReplaceAll(s, "_", " ") }}
	return p.print(n)
}

// Source prints the expression in plain characters. It reads back as the same
// expression.
func (e *Expr) Source() string {
	p := printer{name: func(s string) string { return s }}
	return p.print(e.root)
}

// Numbers prints the expression in symbols with what value gives for each
// name: "62 psi − 0.433 psi/ft × 96 ft". Negative numbers get brackets.
func (e *Expr) Numbers(value func(name string) string) string {
	p := printer{symbols: true, values: true, name: value}
	return p.print(e.root)
}

// printer writes an expression with the fewest brackets.
type printer struct {
	symbols bool
	values  bool // names are printed as numbers
	name    func(string) string
	inCall  bool
	b       strings.Builder
}

func (p *printer) print(n *node) string {
	p.write(n, rankEither)
	return p.b.String()
}

// write prints a node where what binds less than rank needs brackets.
func (p *printer) write(n *node, rank int) {
	if n.rank() < rank {
		p.b.WriteByte('(')
		defer p.b.WriteByte(')')
	}
	switch n.kind {
	case number:
		p.literal(n)
	case pi:
		p.b.WriteString(pick(p.symbols, "π", "pi"))
	case name:
		p.writeName(n.name, rank)
	case neg:
		p.b.WriteString(pick(p.symbols, "−", "-"))
		p.write(n.kids[0], rankSign)
	case percent:
		p.write(n.kids[0], rankPostfix)
		p.b.WriteByte('%')
	case pow:
		p.power(n)
	case root:
		p.b.WriteString(pick(p.symbols, "√", "sqrt"))
		p.arguments(n)
	case call:
		p.b.WriteString(n.fn.Name)
		p.arguments(n)
	default:
		if n.rank() == rankAtom {
			p.b.WriteString(n.kind.word())
			p.arguments(n)
			return
		}
		p.operation(n)
	}
}

// operation prints both sides; what stands on the right needs a higher rank,
// and so does what stands on the left of a comparison.
func (p *printer) operation(n *node) {
	op := binaryText[n.kind]
	left := op.rank
	if op.rank == rankComparison {
		left++
	}
	p.write(n.kids[0], left)
	p.b.WriteByte(' ')
	p.b.WriteString(pick(p.symbols, op.symbol, op.plain))
	p.b.WriteByte(' ')
	p.write(n.kids[1], op.rank+1)
}

func (p *printer) power(n *node) {
	base, exponent := n.kids[0], n.kids[1]
	if base.kind == number && base.unit.Name != "" {
		p.b.WriteByte('(')
		p.write(base, rankEither)
		p.b.WriteByte(')')
	} else {
		p.write(base, rankPostfix)
	}
	if v := exponent.lit.Value; p.symbols && exponent.kind == number && exponent.unit.Name == "" && (v == 2 || v == 3) {
		p.b.WriteString(pick(v == 2, "²", "³"))
		return
	}
	p.b.WriteByte('^')
	p.write(exponent, rankSign)
}

func (p *printer) arguments(n *node) {
	inCall := p.inCall
	p.inCall = true
	p.b.WriteByte('(')
	for i, k := range n.kids {
		if i > 0 {
			p.b.WriteString("; ")
		}
		p.write(k, rankEither)
	}
	p.b.WriteByte(')')
	p.inCall = inCall
}

func (p *printer) writeName(name string, rank int) {
	s := p.name(name)
	negative := strings.HasPrefix(s, "−") || strings.HasPrefix(s, "-")
	if p.values && (negative && p.b.Len() > 0 || rank >= rankPower && strings.ContainsAny(s, " \u00a0")) {
		s = "(" + s + ")"
	}
	p.b.WriteString(s)
}

// literal prints a number with its unit. Where the number could be read in
// two ways it is printed without its commas.
func (p *printer) literal(n *node) {
	s := n.lit.Text
	if !p.symbols || n.lit.Comma || p.inCall {
		s = plainDigits(n.lit)
	}
	switch {
	case !n.lit.Unit.IsNumber() || n.unit.Name == "":
		p.b.WriteString(s)
	case n.unit.Name == "$":
		p.b.WriteString("$" + s)
	default:
		p.b.WriteString(s + pick(p.symbols, "\u00a0", " ") + n.unit.Name)
	}
}

// plainDigits is a number with a decimal point and no other marks, with the
// places that were written. Fractions and feet stay as they are.
func plainDigits(n unit.Numeral) string {
	switch points := strings.Count(n.Text, "."); {
	case !n.Unit.IsNumber(), strings.ContainsAny(n.Text, "/⁄"+vulgar):
		return n.Text
	case strings.Trim(n.Text, "0123456789.eE+-") == "" && points <= 1 && !n.Comma:
		return n.Text
	case strings.ContainsAny(n.Text, "eE"):
		return strconv.FormatFloat(n.Value, 'e', -1, 64)
	}
	places := int(math.Round(-math.Log10(2 * n.Half)))
	return strconv.FormatFloat(n.Value, 'f', max(places, 0), 64)
}

func pick(first bool, a, b string) string {
	if first {
		return a
	}
	return b
}
