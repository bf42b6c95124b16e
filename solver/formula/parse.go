package formula

import (
	"strings"
	"unicode/utf8"

	"riserwork/solver/unit"
)

const (
	maxText  = 2000 // bytes of an expression
	maxNodes = 1000
	maxDepth = 100 // brackets, signs and powers in each other
)

// Parse reads an expression of the catalogue:
//
//	below + ground + (level - 2) x floor_height
//	length > limit or storeys > 4
//
// Multiplication is x, × or *; division / or ÷; a power ^, ² or ³. The
// functions are sqrt (also root, √), roundup, rounddown and round to a whole,
// min, max, abs, and sin and cos of degrees. Numbers may have units.
func Parse(text string) (*Expr, error) { return ParseWith(text, Options{}) }

// ParseWith is Parse as the options say.
func ParseWith(text string, opt Options) (*Expr, error) {
	p := parser{src: text, opt: opt}
	if len(text) > maxText {
		return nil, p.fail(0, "an expression may have at most 2,000 bytes, and this one is longer")
	}
	n, err := p.either()
	if err != nil {
		return nil, err
	}
	p.skip()
	if p.pos < len(p.src) {
		return nil, p.expected("an operation or the end")
	}
	return &Expr{n}, nil
}

// parser reads src from pos by recursive descent.
type parser struct {
	src    string
	base   int // of src in the whole text, for the positions of errors
	pos    int
	opt    Options
	depth  int
	nodes  int
	commas bool // a comma parts the arguments of a function
	learn  bool // counting words may follow a number
}

func (p *parser) node(k kind, kids ...*node) *node {
	p.nodes++
	return &node{kind: k, unit: unit.Number, kids: kids}
}

// binary reads left-associative operations of one rank. The operator is told
// by find, which gives its length, 0 if there is none.
func (p *parser) binary(next func() (*node, error), find func(rest string) (kind, int)) (*node, error) {
	left, err := next()
	if err != nil {
		return nil, err
	}
	for {
		p.skip()
		k, n := find(p.src[p.pos:])
		if n == 0 {
			return left, nil
		}
		p.pos += n
		right, err := next()
		if err != nil {
			return nil, err
		}
		left = p.node(k, left, right)
	}
}

func (p *parser) either() (*node, error) {
	return p.binary(p.both, func(rest string) (kind, int) { return either, keyword(rest, "or") })
}

func (p *parser) both() (*node, error) {
	return p.binary(p.comparison, func(rest string) (kind, int) { return both, keyword(rest, "and") })
}

func (p *parser) comparison() (*node, error) {
	left, err := p.sum()
	if err != nil {
		return nil, err
	}
	p.skip()
	k, n := symbol(p.src[p.pos:], comparisons)
	if n == 0 {
		return left, nil
	}
	p.pos += n
	right, err := p.sum()
	if err != nil {
		return nil, err
	}
	return p.node(k, left, right), nil
}

func (p *parser) sum() (*node, error) {
	return p.binary(p.product, func(rest string) (kind, int) {
		if strings.HasPrefix(rest, "->") {
			return 0, 0
		}
		return symbol(rest, sums)
	})
}

func (p *parser) product() (*node, error) {
	left, err := p.signed()
	if err != nil {
		return nil, err
	}
	for {
		bracketMayFollow := p.pos > 0 && (left.kind == number || closes(p.src[p.pos-1]))
		p.skip()
		rest := p.src[p.pos:]
		k, n := symbol(rest, products)
		if n == 0 {
			k, n = mul, times(rest)
		}
		if n == 0 && !(bracketMayFollow && rest != "" && opens(rest[0])) {
			return left, nil
		}
		p.pos += n
		right, err := p.signed()
		if err != nil {
			return nil, err
		}
		left = p.node(k, left, right)
	}
}

// signed reads a sign, which binds less than a power: -2^2 is -4.
func (p *parser) signed() (*node, error) {
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer p.leave()
	p.skip()
	k, n := symbol(p.src[p.pos:], sums)
	if n == 0 {
		return p.power()
	}
	p.pos += n
	kid, err := p.signed()
	if err != nil || k == add {
		return kid, err
	}
	return p.node(neg, kid), nil
}

func (p *parser) power() (*node, error) {
	base, err := p.primary()
	if err != nil {
		return nil, err
	}
	for {
		p.skip()
		rest := p.src[p.pos:]
		r, n := utf8.DecodeRuneInString(rest)
		switch {
		case r == '²' || r == '³':
			p.pos += n
			base = p.node(pow, base, p.whole(2+float64(r-'²')))
		case r == '%':
			p.pos += n
			base = p.node(percent, base)
		case r == '^' || strings.HasPrefix(rest, "**"):
			p.pos++
			if r == '*' {
				p.pos++
			}
			exponent, err := p.signed()
			if err != nil {
				return nil, err
			}
			return p.node(pow, base, exponent), nil
		default:
			return base, nil
		}
	}
}

func (p *parser) whole(v float64) *node {
	n := p.node(number)
	n.lit = unit.Numeral{Value: v, Half: 0.5, Figures: 1, Text: string('0' + rune(v)), Unit: unit.Number}
	return n
}

// primary reads a number, a name, a function or what stands in brackets.
func (p *parser) primary() (*node, error) {
	p.skip()
	rest := p.src[p.pos:]
	r, n := utf8.DecodeRuneInString(rest)
	switch {
	case rest == "":
		return nil, p.expected("a number or a name")
	case r == '√':
		p.pos += n
		kid, err := p.nested(p.primary)
		if err != nil {
			return nil, err
		}
		return p.node(root, kid), nil
	case opens(rest[0]):
		return p.bracket()
	case startsNumber(rest):
		return p.number()
	case isLetter(r):
		return p.word()
	}
	return nil, p.expected("a number or a name")
}

// nested reads one level deeper.
func (p *parser) nested(read func() (*node, error)) (*node, error) {
	if err := p.enter(); err != nil {
		return nil, err
	}
	defer p.leave()
	return read()
}

func (p *parser) bracket() (*node, error) {
	start := p.pos
	closing := closer(p.src[start])
	p.pos++
	commas := p.commas
	p.commas = false
	n, err := p.nested(p.either)
	p.commas = commas
	if err != nil {
		return nil, err
	}
	return n, p.close(start, closing)
}

// close reads the closing bracket of the one at start.
func (p *parser) close(start int, closing byte) error {
	p.skip()
	if p.pos < len(p.src) && p.src[p.pos] == closing {
		p.pos++
		return nil
	}
	if p.pos < len(p.src) {
		return p.expected("an operation or " + quote(string(closing)))
	}
	return p.fail(start, "the bracket before "+quote(clip(p.src[start+1:]))+" is not closed")
}

func (p *parser) enter() error {
	if p.depth++; p.depth > maxDepth {
		return p.fail(p.pos, "brackets, signs and powers may stand in each other 100 deep, and here are more")
	}
	if p.nodes > maxNodes {
		return p.fail(p.pos, "an expression may have at most 1,000 parts, and this one has more")
	}
	return nil
}

func (p *parser) leave() { p.depth-- }
