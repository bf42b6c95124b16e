package page

import (
	"strings"
	"unicode/utf16"
)

// maxLine is how many characters a line may hold.
const maxLine = 160

// edit is a line with its selection, counted as browsers count: in UTF-16
// code units. Start equals end where nothing is selected.
type edit struct {
	text       string
	start, end int
}

// parts are the line before, in and after the selection. A selection past the
// text is brought back to its end.
func (e edit) parts() (before, selected, after string) {
	u := utf16.Encode([]rune(e.text))
	end := min(max(e.end, 0), len(u))
	start := min(max(e.start, 0), end)
	return decode16(u[:start]), decode16(u[start:end]), decode16(u[end:])
}

func decode16(u []uint16) string { return string(utf16.Decode(u)) }

func length16(s string) int { return len(utf16.Encode([]rune(s))) }

// joined is a line with the caret after before.
func joined(before, after string) edit {
	at := length16(before)
	return edit{before + after, at, at}
}

// insert puts text in place of the selection; a line that is full stays.
func (e edit) insert(text string) edit {
	before, _, after := e.parts()
	if length16(before+text+after) > maxLine {
		return e
	}
	return joined(before+text, after)
}

// operator puts an operator with a space on both sides; at the start of a
// line or after an opening bracket it is a sign and stands close.
func (e edit) operator(sign string) edit {
	before, _, _ := e.parts()
	trimmed := strings.TrimRight(before, " ")
	if trimmed == "" || strings.HasSuffix(trimmed, "(") {
		return e.insert(sign)
	}
	if len(trimmed) < len(before) {
		return e.insert(sign + " ")
	}
	return e.insert(" " + sign + " ")
}

// bracket closes what is open after a number, and opens otherwise.
func (e edit) bracket() edit {
	before, _, _ := e.parts()
	open := strings.Count(before, "(") - strings.Count(before, ")")
	if open > 0 && endsInValue(before) {
		return e.insert(")")
	}
	return e.insert("(")
}

func endsInValue(text string) bool {
	text = strings.TrimRight(text, " ")
	if text == "" {
		return false
	}
	last := text[len(text)-1]
	return last >= '0' && last <= '9' || last == ')' || last == '.' || last == '%'
}

// unit writes a unit behind a number, in place of one that already ends the
// line.
func (e edit) unit(name string, all []string) edit {
	before, _, after := e.parts()
	before = strings.TrimRight(before, " ")
	if strings.TrimSpace(after) == "" {
		before, after = cutUnit(before, all), ""
	}
	text := name
	if before != "" && !strings.HasPrefix(name, "°") {
		text = " " + name
	}
	return joined(before, after).insert(text)
}

func cutUnit(text string, all []string) string {
	longest := ""
	for _, u := range all {
		if len(u) > len(longest) && strings.HasSuffix(text, u) && endsInValue(strings.TrimSuffix(text, u)) {
			longest = u
		}
	}
	return strings.TrimRight(strings.TrimSuffix(text, longest), " ")
}

// back takes away the selection, or what stands before the caret; an operator
// goes with its spaces.
func (e edit) back() edit {
	before, selected, after := e.parts()
	if selected != "" || before == "" {
		return joined(before, after)
	}
	for _, op := range []string{" + ", " − ", " × ", " ÷ ", " = "} {
		if strings.HasSuffix(before, op) {
			return joined(strings.TrimSuffix(before, op), after)
		}
	}
	r := []rune(before)
	return joined(string(r[:len(r)-1]), after)
}

// move takes the caret n characters on, to the edge of a selection first.
func (e edit) move(n int) edit {
	before, selected, after := e.parts()
	switch b, a := []rune(before), []rune(after); {
	case selected != "" && n < 0:
		return joined(before, selected+after)
	case selected != "":
		return joined(before+selected, after)
	case n < 0 && len(b) > 0:
		return joined(string(b[:len(b)-1]), string(b[len(b)-1:])+after)
	case n > 0 && len(a) > 0:
		return joined(before+string(a[:1]), string(a[1:]))
	}
	return joined(before, after)
}
