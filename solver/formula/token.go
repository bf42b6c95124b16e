package formula

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	spaceChars = " \t\n\r\u00a0\u2007\u2009\u202f"
	vulgar     = "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚"
)

// A sign is how an operation is written.
type sign struct {
	text string
	kind kind
}

var (
	sums        = []sign{{"+", add}, {"-", sub}, {"−", sub}, {"–", sub}}
	products    = []sign{{"×", mul}, {"·", mul}, {"⋅", mul}, {"*", mul}, {"÷", div}, {"/", div}, {"∕", div}}
	comparisons = []sign{{">=", atLeast}, {"≥", atLeast}, {"<=", atMost}, {"≤", atMost}, {">", more}, {"<", less}}
)

// symbol finds one of the signs at the start of rest.
func symbol(rest string, signs []sign) (kind, int) {
	for _, s := range signs {
		if strings.HasPrefix(rest, s.text) {
			if s.text == "*" && strings.HasPrefix(rest, "**") {
				return 0, 0
			}
			return s.kind, len(s.text)
		}
	}
	return 0, 0
}

// times is the length of an x that multiplies: alone, or before a number.
func times(rest string) int {
	if rest == "" || rest[0] != 'x' && rest[0] != 'X' {
		return 0
	}
	r, _ := utf8.DecodeRuneInString(rest[1:])
	if isLetter(r) || r == '_' {
		return 0
	}
	return 1
}

// keyword is the length of word at the start of rest, 0 if it is not there.
func keyword(rest, word string) int {
	if len(rest) < len(word) || !strings.EqualFold(rest[:len(word)], word) {
		return 0
	}
	r, _ := utf8.DecodeRuneInString(rest[len(word):])
	if isLetter(r) || unicode.IsDigit(r) || r == '_' {
		return 0
	}
	return len(word)
}

// wordLength is the length of the name at the start of text: a letter, then
// letters, digits and underscores.
func wordLength(text string) int {
	for i, r := range text {
		if !isLetter(r) && (i == 0 || r != '_' && !unicode.IsDigit(r)) {
			return i
		}
	}
	return len(text)
}

// plain is a name as it is asked for: lower case, underscores for spaces, and
// the Greek letter of the head gradient in full.
func plain(words string) string {
	words = strings.ReplaceAll(words, "γ", "gamma")
	return strings.ToLower(strings.Join(strings.FieldsFunc(words, func(r rune) bool {
		return r == '_' || unicode.IsSpace(r)
	}), "_"))
}

func isLetter(r rune) bool { return unicode.IsLetter(r) && r != utf8.RuneError }

func opens(b byte) bool  { return b == '(' || b == '[' || b == '{' }
func closes(b byte) bool { return b == ')' || b == ']' || b == '}' }

func closer(b byte) byte {
	switch b {
	case '[':
		return ']'
	case '{':
		return '}'
	}
	return ')'
}

// startsNumber reports whether a number begins text.
func startsNumber(text string) bool {
	r, n := utf8.DecodeRuneInString(text)
	switch {
	case '0' <= r && r <= '9' || strings.ContainsRune(vulgar, r):
		return true
	case r == '.' || r == ',':
		return len(text) > 1 && '0' <= text[1] && text[1] <= '9'
	case r == '$':
		return startsNumber(strings.TrimLeft(text[n:], " $"))
	}
	return false
}

// skip passes spaces.
func (p *parser) skip() {
	p.pos = len(p.src) - len(strings.TrimLeft(p.src[p.pos:], spaceChars))
}

func (p *parser) fail(pos int, msg string) *Error { return &Error{p.base + pos, msg} }

// expected is the error of something else than was wanted at the position.
func (p *parser) expected(what string) *Error {
	p.skip()
	msg := what + " was expected, but "
	if before := strings.TrimRight(p.src[:p.pos], spaceChars); before != "" {
		msg = "after " + quote(tail(before)) + " " + msg
	}
	if p.pos >= len(p.src) {
		return p.fail(p.pos, msg+"the line ends")
	}
	rest := p.src[p.pos:]
	n := wordLength(rest)
	if n == 0 {
		_, n = utf8.DecodeRuneInString(rest)
	}
	return p.fail(p.pos, msg+quote(clip(rest[:n]))+" was read")
}

// clip is the beginning of a text, tail its end, short enough for a sentence.
func clip(text string) string {
	if len(text) > 24 {
		return strings.ToValidUTF8(text[:24], "") + "…"
	}
	return text
}

func tail(text string) string {
	if len(text) > 24 {
		return "…" + strings.ToValidUTF8(text[len(text)-24:], "")
	}
	return text
}

func quote(text string) string { return strconv.Quote(text) }

// count is "one number", "2 numbers".
func count(n int) string {
	switch {
	case n < 0:
		return "two or more numbers"
	case n == 1:
		return "one number"
	}
	return strconv.Itoa(n) + " numbers"
}
