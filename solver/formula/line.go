package formula

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"riserwork/solver/unit"
)

const maxLine = 400 // bytes of a learner's line

// Line is what was read of a line of working:
//
//	pressure lost: 62 psi - 0.433 psi/ft x 96 ft = 20.4 psi
type Line struct {
	Label     string         // words or a name before a colon, a first "=" or the expression
	Exprs     []*Expr        // the parts of the chain that are more than one number
	Numerals  []unit.Numeral // the numbers of the last of them
	Value     *unit.Numeral  // the number that ends the chain; nil where an expression does
	Unit      unit.Unit      // of the value, or of the whole last expression
	HasUnit   bool           // a unit was written there
	Ambiguous bool           // a number's comma may be a decimal or a thousands comma
	Choice    string         // "yes" or "no", where the line says so
	Words     []string       // words after the last part that were not read
}

// ReadLine reads a line of working: a number, an expression, or a chain of
// them with "=" between. Words at either end are set aside; one within the
// arithmetic that is not a name is an error. The unit after the last number of
// an expression whose other numbers have none is the unit of the whole.
func ReadLine(text string, opt Options) (Line, error) {
	var line Line
	if len(text) > maxLine {
		return line, &Error{Msg: "a line may have at most 400 bytes, and this one is longer"}
	}
	if opt.Names == nil {
		opt.Names = func(string) bool { return false }
	}
	end := len(strings.TrimRight(text, spaceChars+".,;!?✓✔"))
	if line.choose(text[:end]) {
		return line, nil
	}
	parts := split(text[:end], line.colon(text[:end]))
	if line.Label == "" && len(parts) > 1 && isLabel(text[parts[0].from:parts[0].to]) {
		line.Label = strings.Trim(text[parts[0].from:parts[0].to], spaceChars)
		parts = parts[1:]
	}
	read := false
	for _, s := range parts {
		if strings.Trim(text[s.from:s.to], spaceChars) == "" {
			continue
		}
		if err := line.part(text[s.from:s.to], s.from, opt); err != nil {
			return line, err
		}
		read = true
	}
	if !read {
		return line, &Error{len(text), "a number or an expression was expected, but the line has none"}
	}
	if n := len(line.Words); n > 0 && line.Choice == "" {
		line.Choice = answer(line.Words[n-1])
	}
	return line, nil
}

// choose reads a line that is yes or no, with more words or without.
func (l *Line) choose(text string) bool {
	words := strings.Fields(text)
	if len(words) == 0 || strings.ContainsFunc(text, unicode.IsDigit) || strings.ContainsAny(text, "=") {
		return false
	}
	l.Choice = answer(words[0])
	if l.Choice != "" {
		l.Words = words[1:]
	}
	return l.Choice != ""
}

func answer(word string) string {
	switch strings.ToLower(strings.Trim(word, ".,;:!")) {
	case "yes", "y":
		return "yes"
	case "no", "n":
		return "no"
	}
	return ""
}

// colon takes the label before a colon and gives the position after it.
func (l *Line) colon(text string) int {
	at := strings.IndexByte(text, ':')
	if at < 0 || !strings.ContainsFunc(text[:at], isLetter) || strings.Contains(text[:at], "=") {
		return 0
	}
	l.Label = strings.Trim(text[:at], spaceChars)
	return at + 1
}

// isLabel reports whether what stands before a first "=" is words and not
// arithmetic: "h", "pressure lost", "level 12", "P (psi)".
func isLabel(text string) bool {
	text = strings.Trim(text, spaceChars)
	first, _ := utf8.DecodeRuneInString(text)
	if !isLetter(first) || strings.ContainsAny(text, "+×*÷/^√<>[{") {
		return false
	}
	if strings.ContainsAny(text, "(") && strings.ContainsFunc(text, unicode.IsDigit) {
		return false
	}
	for i, r := range text {
		if i > 0 && symbolAt(text[i:]) && !joins(text, i) {
			return false
		}
		if r == 'x' || r == 'X' {
			before, _ := utf8.DecodeLastRuneInString(text[:i])
			if i > 0 && strings.ContainsRune(spaceChars, before) && times(text[i:]) > 0 && len(text) > i+1 {
				return false
			}
		}
	}
	return true
}

func symbolAt(rest string) bool {
	_, n := symbol(rest, sums)
	return n > 0
}

// joins reports whether the dash at i is within a word: "low-zone".
func joins(text string, i int) bool {
	before, _ := utf8.DecodeLastRuneInString(text[:i])
	_, n := symbol(text[i:], sums)
	after, _ := utf8.DecodeRuneInString(text[i+n:])
	return text[i] != '+' && isLetter(before) && isLetter(after)
}

// A span is a part of the text.
type span struct{ from, to int }

// equals are the signs that part a chain. Those of comparisons do not.
var equals = []string{"=>", "->", "→", "⇒", "=", "≈", "≅", "~"}

// split parts text from a position at its equal signs.
func split(text string, from int) []span {
	var parts []span
	for at := from; at < len(text); {
		n := 0
		for _, e := range equals {
			if strings.HasPrefix(text[at:], e) {
				n = len(e)
				break
			}
		}
		_, comparison := symbol(text[at:], comparisons)
		switch {
		case comparison > 0:
			at += comparison
		case n > 0:
			parts = append(parts, span{from, at})
			at += n
			from = at
		default:
			at++
		}
	}
	return append(parts, span{from, len(text)})
}

// part reads one part of the chain.
func (l *Line) part(text string, base int, opt Options) error {
	p := parser{src: text, base: base, opt: opt, learn: true}
	l.lead(&p)
	n, err := p.either()
	if err != nil {
		return err
	}
	p.ordinal(n)
	u, used := unit.Number, 0
	if whole(n) == nil || n.unit.Name == "" && n.kind == number {
		u, used = p.unit()
		p.pos += used
	}
	words, err := p.rest(n)
	if err != nil {
		return err
	}
	l.take(n, u, used > 0)
	l.Words = words
	return nil
}

// lead passes the words before the first number, name or bracket.
func (l *Line) lead(p *parser) {
	p.skip()
	start := p.pos
	for p.pos < len(p.src) {
		rest := p.src[p.pos:]
		n := wordLength(rest)
		switch {
		case n > 0:
			_, known := p.longestName()
			switch {
			case known > 0 && p.labels(known):
				n = known
			case known > 0, p.isFunction(rest[:n]), rest[:n] == "π":
				n = 0
			}
		case strings.IndexByte(",;.", rest[0]) >= 0 && !startsNumber(rest) && p.pos > start:
			n = 1
		}
		if n == 0 {
			break
		}
		p.pos += n
		p.skip()
	}
	if words := strings.Trim(p.src[start:p.pos], spaceChars+",;"); words != "" && l.Label == "" {
		l.Label = words
	}
}

// labels reports whether the name of n bytes at the position only says what
// the number after it is: "lost 41.6 psi", "reach is 85.5 ft".
func (p *parser) labels(n int) bool {
	rest := strings.TrimLeft(p.src[p.pos+n:], spaceChars)
	if startsNumber(rest) {
		return true
	}
	after := parser{src: rest, opt: p.opt}
	_, unit := after.unit()
	word := wordLength(rest) > 0 && times(rest) == 0 && keyword(rest, "or")+keyword(rest, "and") == 0
	return word && unit == 0 && strings.ContainsFunc(rest, unicode.IsDigit)
}

// isFunction reports whether a function of that name and a bracket stand at
// the position.
func (p *parser) isFunction(word string) bool {
	if !p.opens(p.pos + len(word)) {
		return false
	}
	for _, b := range builtin {
		if strings.EqualFold(b.name, word) {
			return true
		}
	}
	for _, f := range p.opt.Funcs {
		if strings.EqualFold(f.Name, word) {
			return true
		}
	}
	return false
}

// ordinal passes the ending of "12th".
func (p *parser) ordinal(n *node) {
	if n.kind != number || n.unit.Name != "" {
		return
	}
	for _, ending := range []string{"st", "nd", "rd", "th"} {
		if used := keyword(p.src[p.pos:], ending); used > 0 {
			p.pos += used
			return
		}
	}
}

// rest reads the words that end a part. After arithmetic they may hold no
// number or operation; after a single number they may: "20.4 psi at floor 12".
func (p *parser) rest(n *node) ([]string, error) {
	p.skip()
	rest := p.src[p.pos:]
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(rest, ",;("+spaceChars))
	single := whole(n) != nil
	arithmetic := strings.ContainsFunc(rest, unicode.IsDigit) && !single
	for i := range rest {
		arithmetic = arithmetic || strings.ContainsAny(rest[i:i+1], "+*/^<>") || symbolAt(rest[i:]) && !(i > 0 && joins(rest, i)) ||
			strings.HasPrefix(rest[i:], "×") || strings.HasPrefix(rest[i:], "÷") || strings.HasPrefix(rest[i:], "√")
	}
	if rest != "" && (!isLetter(first) || arithmetic) {
		return nil, p.expected("a unit, an operation or the end")
	}
	return strings.FieldsFunc(rest, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",;()", r) }), nil
}

// whole is the literal of a part that is one number, with a sign or percent,
// or without; nil for anything more.
func whole(n *node) *node {
	for n.kind == neg || n.kind == percent {
		n = n.kids[0]
	}
	if n.kind == number {
		return n
	}
	return nil
}

// take puts a part into the line, with the unit after it.
func (l *Line) take(n *node, u unit.Unit, hasUnit bool) {
	l.Value = nil
	if lit := whole(n); lit != nil {
		v := lit.lit
		if lit.unit.Name != "" {
			u, hasUnit = lit.unit, true
		}
		for k := n; k != lit; k = k.kids[0] {
			switch k.kind {
			case neg:
				v.Value, v.Text = -v.Value, "−"+v.Text
			case percent:
				u, _ = unit.Match("%")
				hasUnit = true
			}
		}
		l.Value = &v
		l.Ambiguous = l.Ambiguous || v.Comma
	} else {
		if last := lastUnit(n); !hasUnit && last != nil {
			u, hasUnit = last.unit, true
			n = n.without(last)
		}
		e := &Expr{n}
		l.Exprs = append(l.Exprs, e)
		l.Numerals = e.numerals()
		for _, v := range l.Numerals {
			l.Ambiguous = l.Ambiguous || v.Comma
		}
	}
	l.Unit, l.HasUnit = u, hasUnit
}

// lastUnit is the last number of an expression if it alone has a unit and is
// not on its own: "37/0.433 ft".
func lastUnit(n *node) *node {
	var last *node
	units, names := 0, 0
	n.walk(func(k *node) {
		switch k.kind {
		case number:
			last = k
			if k.unit.Name != "" {
				units++
			}
		case name:
			names++
		}
	})
	if units != 1 || last.unit.Name == "" || names > 0 || !last.lit.Unit.IsNumber() {
		return nil
	}
	return last
}

// without is the tree with the unit of one number taken off.
func (n *node) without(lit *node) *node {
	c := *n
	if n == lit {
		c.unit = unit.Number
	}
	c.kids = make([]*node, len(n.kids))
	for i, k := range n.kids {
		c.kids[i] = k.without(lit)
	}
	return &c
}
