package unit

import (
	"strconv"
	"strings"
)

// vulgar are the fractions that have a character of their own.
var vulgar = []struct {
	sign      string
	over, den float64
}{
	{"½", 1, 2}, {"¼", 1, 4}, {"¾", 3, 4}, {"⅛", 1, 8}, {"⅜", 3, 8}, {"⅝", 5, 8}, {"⅞", 7, 8},
	{"⅓", 1, 3}, {"⅔", 2, 3}, {"⅕", 1, 5}, {"⅖", 2, 5}, {"⅗", 3, 5}, {"⅘", 4, 5}, {"⅙", 1, 6}, {"⅚", 5, 6},
}

// readFraction reads the fraction after a whole number: " 1/4", "-1/4" before
// an inch mark, "¼". Where whole is empty the fraction stands alone, and 1/4
// must be followed by inches, or it is a division. n is 0 if there is none.
func readFraction(text, whole string) (f Numeral, n int) {
	w := 0.0
	if whole != "" {
		w, _ = strconv.ParseFloat(whole, 64)
	}
	gap := spaces(text)
	dash := gap == 0 && strings.HasPrefix(text, "-")
	if dash {
		gap = 1
	}
	rest := text[gap:]
	if whole == "" && gap > 0 {
		return Numeral{}, 0
	}
	for _, v := range vulgar {
		if strings.HasPrefix(rest, v.sign) {
			return fraction(w, v.over, v.den), gap + len(v.sign)
		}
	}
	over, den, used := readParts(rest)
	alone := whole == "" || dash
	if used == 0 || whole != "" && gap == 0 || alone && !inchesFollow(rest[used:]) {
		return Numeral{}, 0
	}
	return fraction(w, over, den), gap + used
}

func fraction(whole, over, den float64) Numeral {
	return Numeral{Value: whole + over/den, Half: 0.5 / den, Figures: 3, Unit: Number}
}

// readParts reads 3/8: a proper fraction of a tape, in halves to sixty-fourths.
func readParts(text string) (over, den float64, used int) {
	n := leadingDigits(text)
	rest, ok := strings.CutPrefix(text[n:], "/")
	if !ok {
		if rest, ok = strings.CutPrefix(text[n:], "⁄"); !ok {
			return 0, 0, 0
		}
	}
	used = len(text) - len(rest)
	m := leadingDigits(rest)
	if n == 0 || n > 2 || m == 0 || m > 2 {
		return 0, 0, 0
	}
	o, _ := strconv.Atoi(text[:n])
	d, _ := strconv.Atoi(rest[:m])
	after := rest[m:]
	more := len(after) > 1 && (after[0] == '.' || after[0] == ',') && isDigit(after[1])
	if o == 0 || o >= d || d > 64 || d&(d-1) != 0 || more {
		return 0, 0, 0
	}
	return float64(o), float64(d), used + m
}

func inchesFollow(text string) bool {
	u, n := Match(text[spaces(text):])
	return n > 0 && u.Name == "in"
}

// readFeet reads feet and inches: 8'-10", 8' 10 1/2", 8 ft 10 in, 8'10. The
// inches are below twelve. n is 0 if that is not what stands there; "8 ft - 10
// in" with spaces is a subtraction.
func readFeet(text string, decimalComma bool) (f Numeral, n int) {
	n = leadingDigits(text)
	if n == 0 || n > 4 {
		return f, 0
	}
	feet, _ := strconv.ParseFloat(text[:n], 64)
	n += spaces(text[n:])
	used, mark := readFootMark(text[n:])
	if used == 0 {
		return f, 0
	}
	n += used
	gap, minus := readJoint(text[n:])
	if minus && !mark {
		return f, 0
	}
	n += gap
	in, used, err := readInches(text[n:], decimalComma)
	if err != nil || in.Value >= 12 || in.Comma {
		return f, 0
	}
	n += used
	space := spaces(text[n:])
	u, used := Match(text[n+space:])
	switch {
	case used > 0 && u.Name == "in":
		n += space + used
	case !mark || minus || in.Half < 0.5 || !wordEnds(text[n:]) || strings.HasPrefix(text[n+space:], "/"):
		return f, 0
	}
	ft, _ := Match("ft")
	return Numeral{Value: feet + in.Value/12, Half: in.Half / 12, Figures: 3, Text: text[:n], Unit: ft}, n
}

// readFootMark reads a foot mark, or the word, which inches may follow without
// a space.
func readFootMark(text string) (used int, mark bool) {
	for _, m := range []string{"'", "′", "’", "`"} {
		if strings.HasPrefix(text, m) {
			return len(m), true
		}
	}
	for _, word := range []string{"feet", "foot", "ft.", "ft"} {
		if n, _ := prefix(text, word); n > 0 && (wordEnds(text[n:]) || isDigit(text[n])) {
			return n, false
		}
	}
	return 0, false
}

// readJoint reads what stands between feet and inches: nothing, spaces or a
// dash. A dash with spaces around it may be a minus.
func readJoint(text string) (n int, minus bool) {
	before := spaces(text)
	rest := text[before:]
	for _, dash := range []string{"-", "‑", "–"} {
		if strings.HasPrefix(rest, dash) {
			after := spaces(rest[len(dash):])
			return before + len(dash) + after, before+after > 0
		}
	}
	return before, false
}
