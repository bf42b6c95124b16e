package unit

import (
	"errors"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// unread is the error of a text that is not what was expected.
func unread(text, want string) error {
	if len(text) > 40 {
		text = strings.ToValidUTF8(text[:40], "") + "…"
	}
	return errors.New(strconv.Quote(text) + " was read where " + want + " was expected")
}

// isSpace tells the spaces that people and programs put around numbers.
func isSpace(r rune) bool {
	switch r {
	case ' ', '\t', '\u00a0', '\u2007', '\u2009', '\u202f':
		return true
	}
	return false
}

// trim cuts the spaces around text.
func trim(text string) string { return strings.TrimFunc(text, unicode.IsSpace) }

// spaces is the length in bytes of the spaces at the start of text.
func spaces(text string) int { return len(text) - len(strings.TrimLeftFunc(text, isSpace)) }

// wordEnds reports whether no letter, digit or underscore is at the start of
// text, so that a word before it has ended.
func wordEnds(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return text == "" || !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_'
}

func endsInLetter(text string) bool {
	r, _ := utf8.DecodeLastRuneInString(text)
	return unicode.IsLetter(r) || unicode.IsDigit(r)
}

// prefix is the length in bytes of name at the start of text, 0 if it is not
// there. A space in name stands for any spaces. Capitals do not matter, save
// in names of one letter; same says that they agreed.
func prefix(text, name string) (n int, same bool) {
	same = true
	for i := range len(name) {
		if name[i] == ' ' {
			gap := spaces(text[n:])
			if gap == 0 {
				return 0, false
			}
			n += gap
			continue
		}
		if n >= len(text) || lower(text[n]) != lower(name[i]) {
			return 0, false
		}
		same = same && text[n] == name[i]
		n++
	}
	if len(name) == 1 && !same {
		return 0, false
	}
	return n, same
}

func lower(b byte) byte {
	if 'A' <= b && b <= 'Z' {
		return b + 'a' - 'A'
	}
	return b
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }
