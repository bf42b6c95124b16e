package unit

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Numeral is a number as it was written.
type Numeral struct {
	Value float64
	// Half is half of the last place written. Zeros of a whole number past its
	// third figure count as rounding: 28,000 has 50, 1200 has 5, 120 has 0.5.
	Half    float64
	Figures int    // figures that count; feet with inches, and fractions, have 3
	Text    string // as written
	Comma   bool   // a comma in it may be a decimal or a thousands comma
	Unit    Unit   // feet where feet and inches were written, else Number
}

const (
	maxDigits   = 40
	maxExponent = 99
)

// ReadNumber reads the number at the start of text and returns the bytes used.
// It has no sign: that is for the reader of the line. It reads 62, .433,
// 1,200 and 1 200, 20,4 and 28.000,5, 1.2e3, 1 1/4 and ¾, and 8'-10" (in
// feet). "1,234" is a thousand and more unless decimalComma is set; a single
// point is always the decimal point.
func ReadNumber(text string, decimalComma bool) (Numeral, int, error) {
	if f, n := readFeet(text, decimalComma); n > 0 {
		return f, n, nil
	}
	return readInches(text, decimalComma)
}

// readInches reads a number with or without a fraction, but no feet.
func readInches(text string, decimalComma bool) (Numeral, int, error) {
	if f, n := readFraction(text, ""); n > 0 {
		f.Text = text[:n]
		return f, n, nil
	}
	d, err := scan(text)
	if err != nil {
		return Numeral{}, 0, err
	}
	if len(d.marks) == 0 && !d.point {
		whole := text[:d.end]
		if f, n := readFraction(text[d.end:], whole); n > 0 {
			n += d.end
			f.Text = text[:n]
			return f, n, nil
		}
	}
	return d.numeral(text, decimalComma)
}

// digits are the runs of digits of a number and the marks between them.
type digits struct {
	runs  []string
	marks []rune
	point bool // a point after the last run
	end   int
}

// scan reads runs of digits with a comma, a point or a space between them. A
// space joins only groups of three.
func scan(text string) (digits, error) {
	var d digits
	total := 0
	for {
		run := leadingDigits(text[d.end:])
		d.runs = append(d.runs, text[d.end:d.end+run])
		d.end += run
		if total += run; total > maxDigits {
			return d, errors.New("a number of more than 40 digits was read where one of this trade was expected")
		}
		mark, n := utf8.DecodeRuneInString(text[d.end:])
		next := leadingDigits(text[d.end+n:])
		switch {
		case (mark == '.' || mark == ',') && next > 0:
		case isSpace(mark) && next == 3 && d.groups(mark):
		case mark == '.' && total > 0 && !strings.Contains(string(d.marks), "."):
			d.point = true
			d.end++
			return d, nil
		case total == 0:
			return d, unread(text, "a number")
		default:
			return d, nil
		}
		d.marks = append(d.marks, mark)
		d.end += n
	}
}

// groups reports whether what was read may be the start of a number grouped
// by mark: "96" and "96 100", not "0" or "1234".
func (d digits) groups(mark rune) bool {
	for _, m := range d.marks {
		if m != mark {
			return false
		}
	}
	first := d.runs[0]
	return len(first) >= 1 && len(first) <= 3 && first[0] != '0'
}

// grouped reports whether the first n marks are the same and part groups of
// three.
func (d digits) grouped(n int) bool {
	for i, m := range d.marks[:n] {
		if m != d.marks[0] || len(d.runs[i+1]) != 3 {
			return false
		}
	}
	return d.groups(d.marks[0]) || n < len(d.marks) && digits{runs: d.runs}.groups(0)
}

// decimals decides whether the last run is decimals. ok is false where the
// marks make no number; comma where a comma could be either.
func (d digits) decimals(decimalComma bool) (decimals, comma, ok bool) {
	n := len(d.marks)
	if n == 0 {
		return false, false, true
	}
	last := d.marks[n-1]
	switch {
	case n == 1 && last == '.':
		return true, false, true
	case n == 1 && last == ',' && !d.grouped(1):
		return true, false, true
	case n == 1 && last == ',':
		return decimalComma, true, true
	case d.grouped(n):
		return false, false, true
	}
	return true, false, !isSpace(last) && last != d.marks[0] && d.grouped(n-1)
}

// numeral makes the number of its digits, with the exponent that may follow.
func (d digits) numeral(text string, decimalComma bool) (Numeral, int, error) {
	decimals, comma, ok := d.decimals(decimalComma)
	if !ok {
		return Numeral{}, 0, unread(text[:d.end], "a number with one decimal point")
	}
	whole, rest := strings.Join(d.runs, ""), ""
	if decimals {
		whole, rest = strings.Join(d.runs[:len(d.runs)-1], ""), d.runs[len(d.runs)-1]
	}
	exponent, used := readExponent(text[d.end:])
	end := d.end + used
	v, err := strconv.ParseFloat("0"+whole+"."+rest+"0e"+strconv.Itoa(exponent), 64)
	if err != nil {
		return Numeral{}, 0, unread(text[:end], "a number of this trade")
	}
	significant := strings.TrimLeft(whole+rest, "0")
	figures, place := max(len(significant), 1), -len(rest)
	if rest == "" && !d.point {
		zeros := min(len(significant)-len(strings.TrimRight(significant, "0")), len(significant)-3)
		zeros = max(zeros, 0)
		figures, place = figures-zeros, zeros
	}
	half, _ := strconv.ParseFloat("5e"+strconv.Itoa(place+exponent-1), 64)
	return Numeral{Value: v, Half: half, Figures: figures, Text: text[:end], Comma: comma, Unit: Number}, end, nil
}

// readExponent reads the e3 of 1.2e3.
func readExponent(text string) (exponent, used int) {
	if text == "" || text[0] != 'e' && text[0] != 'E' {
		return 0, 0
	}
	sign, at := 1, 1
	for _, s := range []string{"+", "-", "−"} {
		if strings.HasPrefix(text[1:], s) {
			at += len(s)
			if s != "+" {
				sign = -1
			}
		}
	}
	n := leadingDigits(text[at:])
	e, err := strconv.Atoi(text[at : at+n])
	if err != nil || e > maxExponent || !wordEnds(text[at+n:]) {
		return 0, 0
	}
	return sign * e, at + n
}

func leadingDigits(text string) int {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	return n
}
