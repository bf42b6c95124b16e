package formula

import (
	"strings"

	"riserwork/solver/unit"
)

// number reads a number with the unit that may follow it. A dollar sign
// stands before.
func (p *parser) number() (*node, error) {
	n := p.node(number)
	if after, ok := strings.CutPrefix(p.src[p.pos:], "$"); ok {
		n.unit, _ = unit.Match("$")
		p.pos = len(p.src) - len(strings.TrimLeft(after, " "))
	}
	text := p.src[p.pos:]
	if comma := strings.IndexByte(text, ','); p.commas && comma > 0 {
		text = text[:comma]
	}
	lit, used, err := unit.ReadNumber(text, p.opt.DecimalComma)
	if err != nil {
		return nil, p.fail(p.pos, err.Error())
	}
	n.lit = lit
	p.pos += used
	switch {
	case !lit.Unit.IsNumber():
		n.unit = lit.Unit
	case n.unit.Name == "":
		u, used := p.unit()
		p.pos += used
		if u.Name == "%" {
			return p.node(percent, n), nil
		}
		if used > 0 {
			n.unit = u
		}
	}
	if p.learn && n.unit.Name == "" {
		p.skipCount()
	}
	return n, nil
}

// unit is the unit that follows, after spaces or none, and the bytes to it
// and with it. A word that multiplies or joins is none, nor is the "in" of "in
// the shower".
func (p *parser) unit() (unit.Unit, int) {
	rest := p.src[p.pos:]
	trimmed := strings.TrimLeft(rest, spaceChars)
	if times(trimmed) > 0 || strings.HasPrefix(trimmed, "%") || keyword(trimmed, "or")+keyword(trimmed, "and") > 0 {
		return unit.Number, 0
	}
	opt := unit.Options{Imperial: p.opt.Imperial}
	if p.opt.Names != nil {
		opt.Name = func(word string) bool { return p.opt.Names(plain(word)) }
	}
	u, n := unit.MatchWith(trimmed, opt)
	if n == 0 {
		return unit.Number, 0
	}
	if u.Name == "in" {
		after := strings.TrimLeft(trimmed[n:], spaceChars)
		for _, article := range []string{"the", "a", "this", "that", "each"} {
			if keyword(after, article) > 0 {
				return unit.Number, 0
			}
		}
	}
	return u, len(rest) - len(trimmed) + n
}

// counted are the words that may follow a number and change nothing.
var counted = []string{
	"floors", "floor", "storeys", "storey", "stories", "story", "levels", "level", "gaps", "gap",
	"zones", "zone", "valves", "valve", "fixtures", "fixture", "rods", "rod", "pumps", "pump", "flats", "suites",
}

// skipCount passes a counting word that an operation follows: "11 floors x".
func (p *parser) skipCount() {
	rest := strings.TrimLeft(p.src[p.pos:], spaceChars)
	for _, word := range counted {
		n := keyword(rest, word)
		if n == 0 {
			continue
		}
		after := strings.TrimLeft(rest[n:], spaceChars)
		_, sum := symbol(after, sums)
		_, product := symbol(after, products)
		if sum+product+times(after) > 0 || after != "" && closes(after[0]) {
			p.pos = len(p.src) - len(after)
		}
		return
	}
}

// word reads a name or a function. A name of a line may have spaces: the
// longest run of words that is a name is taken.
func (p *parser) word() (*node, error) {
	start := p.pos
	n := wordLength(p.src[start:])
	word := p.src[start : start+n]
	if p.opens(start + n) {
		for i := range builtin {
			if strings.EqualFold(word, builtin[i].name) {
				p.pos += n
				kids, err := p.arguments(word, builtin[i].arity)
				return p.node(builtin[i].kind, kids...), err
			}
		}
		for i := range p.opt.Funcs {
			if f := &p.opt.Funcs[i]; strings.EqualFold(word, f.Name) {
				p.pos += n
				kids, err := p.arguments(word, f.Arity)
				made := p.node(call, kids...)
				made.fn = f
				return made, err
			}
		}
		if p.opt.Names == nil {
			return nil, p.fail(start, quote(word)+" stands before a bracket, but there is no such function")
		}
	}
	if word == "π" || strings.EqualFold(word, "pi") {
		p.pos += n
		return p.node(pi), nil
	}
	if p.opt.Names != nil {
		if word, n = p.longestName(); n == 0 {
			return nil, p.expected("a number or a known name")
		}
	}
	p.pos += n
	made := p.node(name)
	made.name = word
	return made, nil
}

// longestName is the longest known name at the position, as it is asked for,
// and its length in bytes.
func (p *parser) longestName() (found string, length int) {
	rest := p.src[p.pos:]
	end := 0
	for range 6 {
		n := wordLength(rest[end:])
		if n == 0 {
			break
		}
		end += n
		if word := plain(rest[:end]); p.opt.Names(word) {
			found, length = word, end
		}
		end += len(rest[end:]) - len(strings.TrimLeft(rest[end:], spaceChars))
	}
	return found, length
}

// opens reports whether a bracket opens at or after pos.
func (p *parser) opens(pos int) bool {
	rest := strings.TrimLeft(p.src[pos:], spaceChars)
	return rest != "" && rest[0] == '('
}

// arguments reads the arguments of a function. They are parted by semicolons,
// or by commas, which then are in no number.
func (p *parser) arguments(word string, arity int) ([]*node, error) {
	p.skip()
	start := p.pos
	p.pos++
	commas := p.commas
	p.commas = arity != 1 && !hasSemicolon(p.src[p.pos:])
	defer func() { p.commas = commas }()
	var kids []*node
	for {
		kid, err := p.nested(p.either)
		if err != nil {
			return nil, err
		}
		kids = append(kids, kid)
		p.skip()
		if p.pos >= len(p.src) || p.src[p.pos] != ';' && (p.src[p.pos] != ',' || !p.commas) {
			break
		}
		p.pos++
	}
	if err := p.close(start, ')'); err != nil {
		return nil, err
	}
	if arity >= 0 && len(kids) != arity || arity < 0 && len(kids) < 2 {
		return nil, p.fail(start, quote(word)+" takes "+count(arity)+", and "+count(len(kids))+pick(len(kids) == 1, " stands", " stand")+" in its brackets")
	}
	return kids, nil
}

// hasSemicolon reports whether a semicolon parts the arguments that rest
// begins with.
func hasSemicolon(rest string) bool {
	depth := 0
	for i := range len(rest) {
		switch {
		case opens(rest[i]):
			depth++
		case closes(rest[i]):
			if depth--; depth < 0 {
				return false
			}
		case rest[i] == ';' && depth == 0:
			return true
		}
	}
	return false
}
