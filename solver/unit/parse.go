package unit

import (
	"strconv"
	"strings"
	"sync"
)

const (
	maxUnit  = 64 // bytes of a unit's text
	maxParts = 8  // units in a composed one
	maxDepth = 3  // brackets in brackets
)

// Options say how text is read.
type Options struct {
	Imperial     bool // a bare gal, gpm or gph is imperial, not US
	DecimalComma bool // "1,234" is a little more than one
	// Name, where set, tells the words that are names in the text at hand and
	// so are not units after a slash or a dot: h in "37 psi/h".
	Name func(string) bool
}

// Parse reads a unit: "psi", "psi/100 ft", "Btu/(lb·°F)". A bare gal, gpm or
// gph is the US one. The empty text is the unit of plain numbers.
func Parse(text string) (Unit, error) { return ParseWith(text, Options{}) }

// ParseWith is Parse as the options say.
func ParseWith(text string, opt Options) (Unit, error) {
	text = trim(text)
	if text == "" {
		return Number, nil
	}
	u, n := MatchWith(text, opt)
	if n == 0 || n < len(text) {
		return Unit{}, unread(text, "a unit such as psi, kPa, ft or gpm")
	}
	return u, nil
}

// Match is the longest unit at the start of text and its length in bytes, 0
// if there is none. A unit ends where its word ends: "ft" is not in "fthree".
func Match(text string) (Unit, int) { return MatchWith(text, Options{}) }

// MatchWith is Match as the options say.
func MatchWith(text string, opt Options) (Unit, int) {
	all := text
	text = text[:min(len(text), maxUnit)]
	whole, wholeLen := lookUp(text, opt, true)
	c := composer{text: text, opt: opt}
	n := c.expression(0)
	if max(n, wholeLen) == maxUnit && !wordEnds(all[maxUnit:]) {
		return Unit{}, 0
	}
	if n <= wholeLen {
		return whole, wholeLen
	}
	return c.unit(), n
}

// A part of a composed unit. Count is the 100 of "psi/100 ft".
type part struct {
	unit  Unit
	power int
	count int
}

// composer reads a unit built of others. The parts before the position it
// returns are those read; a try that fails takes its parts back.
type composer struct {
	text  string
	opt   Options
	parts []part
	depth int
}

// written counts the units that the name of what was read is written with:
// two for A·h.
func (c *composer) written() int {
	n := 0
	for _, p := range c.parts {
		n += 1 + strings.Count(p.unit.Name, "·")
	}
	return n
}

// expression reads "a·b/c·d" from pos and returns its end, or 0. What follows
// the first slash is all below the line, as the trade writes Btu/h·ft.
func (c *composer) expression(pos int) int {
	start, sign, end := len(c.parts), 1, pos+1
	if !strings.HasPrefix(c.text[pos:], "1/") {
		end = c.factor(pos, sign)
	}
	for end > 0 {
		next, below := c.joint(end)
		if below {
			sign = -1
		}
		if next > 0 {
			next = c.factor(next, sign)
		}
		if next == 0 {
			break
		}
		end = next
	}
	if len(c.parts) == start {
		return 0
	}
	return end
}

// joint reads what joins two units: a dot, a slash or " per ".
func (c *composer) joint(pos int) (next int, below bool) {
	rest := c.text[pos:]
	for _, dot := range []string{"·", "⋅", "∙", "*"} {
		if strings.HasPrefix(rest, dot) {
			return pos + len(dot), false
		}
	}
	if strings.HasPrefix(rest, "/") {
		return pos + 1, true
	}
	if len(rest) > 5 && strings.EqualFold(rest[:5], " per ") {
		return pos + 5, true
	}
	return 0, false
}

// hundreds reads the number of "psi/100 ft".
func (c *composer) hundreds(pos int) (next, count int) {
	for _, n := range []int{1000, 100} {
		if rest, ok := strings.CutPrefix(c.text[pos:], strconv.Itoa(n)); ok {
			return len(c.text) - len(strings.TrimLeft(rest, " \u00a0")), n
		}
	}
	return pos, 1
}

// factor reads one unit with its power, or units in brackets.
func (c *composer) factor(pos, sign int) int {
	opt, count := c.opt, 1
	if pos == 0 {
		opt.Name = nil
	} else {
		pos, count = c.hundreds(pos)
	}
	if c.written() >= maxParts || pos >= len(c.text) {
		return 0
	}
	if c.text[pos] == '(' && pos > 0 && count == 1 {
		return c.bracket(pos, sign)
	}
	u, n := lookUp(c.text[pos:], opt, false)
	if n == 0 {
		return 0
	}
	power, used := 1, 0
	if endsInLetter(c.text[:pos+n]) {
		power, used = readPower(c.text[pos+n:])
	}
	end := pos + n + used
	if used > 0 && (!wordEnds(c.text[end:]) || strings.ContainsAny(u.Name, "/·²³")) {
		return 0
	}
	if row, m := lookUp(u.Name+powerSign(power), Options{}, true); power > 1 && m == len(u.Name+powerSign(power)) {
		u, power = row, 1
	}
	if c.written()+strings.Count(u.Name, "·") >= maxParts {
		return 0
	}
	c.parts = append(c.parts, part{u, sign * power, count})
	return end
}

func (c *composer) bracket(pos, sign int) int {
	if c.depth >= maxDepth {
		return 0
	}
	start := len(c.parts)
	c.depth++
	end := c.expression(pos + 1)
	c.depth--
	if end == 0 || !strings.HasPrefix(c.text[end:], ")") {
		c.parts = c.parts[:start]
		return 0
	}
	for i := range c.parts[start:] {
		c.parts[start+i].power *= sign
	}
	return end + 1
}

// unit multiplies the parts. A temperature among others is a difference. If
// the result is in the table by its name, it is that one.
func (c *composer) unit() Unit {
	if len(c.parts) == 1 && c.parts[0].power == 1 {
		return c.parts[0].unit
	}
	u := Unit{Factor: 1}
	var over, under []string
	for _, p := range c.parts {
		name := p.unit.Name
		if top, bottom, ok := strings.Cut(name, "/"); ok && p.power == 1 && !strings.Contains(bottom, "(") {
			name = top
			under = append(under, bottom)
		} else if ok {
			name = "(" + name + ")"
		}
		if p.count > 1 {
			name = strconv.Itoa(p.count) + " " + name
		}
		factor := p.unit.Factor * float64(p.count)
		if p.power > 0 {
			over = append(over, name+powerSign(p.power))
		} else {
			under = append(under, name+powerSign(-p.power))
			factor = 1 / factor
		}
		for range max(p.power, -p.power) {
			u.Factor *= factor
		}
		u.Dim = u.Dim.Mul(p.unit.Dim.Pow(p.power))
	}
	u.Name = joinName(over, under)
	if t, n := lookUp(u.Name, Options{}, true); n == len(u.Name) {
		return t
	}
	return u
}

// joinName is "a·b/(c·d)".
func joinName(over, under []string) string {
	name := strings.Join(over, "·")
	if name == "" {
		name = "1"
	}
	switch len(under) {
	case 0:
		return name
	case 1:
		return name + "/" + under[0]
	}
	return name + "/(" + strings.Join(under, "·") + ")"
}

// powerSign is the power as printed after a unit: nothing, ² ³, or ^4.
func powerSign(n int) string {
	switch n {
	case 1:
		return ""
	case 2:
		return "²"
	case 3:
		return "³"
	}
	return "^" + strconv.Itoa(n)
}

// readPower reads the power after a unit and its length in bytes.
func readPower(text string) (power, used int) {
	for _, p := range []struct {
		text  string
		power int
	}{{"²", 2}, {"³", 3}, {"^2", 2}, {"^3", 3}, {"^4", 4}, {"2", 2}, {"3", 3}} {
		if strings.HasPrefix(text, p.text) {
			return p.power, len(p.text)
		}
	}
	return 1, 0
}

// An item is a name of the table, ready for looking up.
type item struct {
	name     string
	unit     *Unit
	composed bool // has a slash or a dot, so is no part of another unit
	bare     bool // stands for the US or the imperial unit
	imperial bool
}

// index holds the names by their first byte in lower case: bare ones first,
// then in table order.
var index = sync.OnceValue(func() *[256][]item {
	var list [256][]item
	put := func(e *entry, names string, bare bool) {
		for name := range strings.SplitSeq(names, "|") {
			if name != "" {
				first := lower(name[0])
				list[first] = append(list[first], item{name, &e.Unit, strings.ContainsAny(name, "/·"), bare, e.imperial})
			}
		}
	}
	for i := range table {
		put(&table[i], table[i].bare, true)
	}
	for i := range table {
		put(&table[i], table[i].Name, false)
		put(&table[i], table[i].also, false)
	}
	return &list
})

// lookUp finds the longest name of the table at the start of text. Names that
// are themselves composed count only where whole is set; a power may follow
// the others. Of names that differ only in capitals the one as written wins.
func lookUp(text string, opt Options, whole bool) (found Unit, length int) {
	if text == "" {
		return found, 0
	}
	exact := false
	for _, it := range index()[lower(text[0])] {
		if !whole && it.composed || it.bare && it.imperial != opt.Imperial {
			continue
		}
		n, same := prefix(text, it.name)
		if n == 0 || n < length || n == length && (exact || !same) {
			continue
		}
		if _, power := readPower(text[n:]); !wordEnds(text[n:]) && endsInLetter(it.name) && (whole || power == 0) {
			continue
		}
		if !whole && opt.Name != nil && opt.Name(text[:n]) {
			continue
		}
		found, length, exact = *it.unit, n, same
	}
	return found, length
}
