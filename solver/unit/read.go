package unit

import (
	"errors"
	"math"
	"strconv"
	"strings"
)

const maxQuantity = 200 // bytes of a quantity's text

// Read reads a quantity: "62 psi", ".433 psi/ft", "1 1/4 in", "140F", "$1,200",
// "−5 °C". Feet and inches are feet. A number alone is a plain number.
func Read(text string) (Quantity, error) { return ReadWith(text, Options{}) }

// ReadWith is Read as the options say.
func ReadWith(text string, opt Options) (Quantity, error) {
	if len(text) > maxQuantity {
		return Quantity{}, errors.New("a text of more than 200 bytes was read where a number with its unit was expected")
	}
	all := trim(text)
	rest, sign := all, 1.0
	for _, s := range []string{"-", "−", "–", "+"} {
		if after, ok := strings.CutPrefix(rest, s); ok {
			if s != "+" {
				sign = -1
			}
			rest = trim(after)
			break
		}
	}
	u := Number
	if after, ok := strings.CutPrefix(rest, "$"); ok {
		u, _ = Match("$")
		rest = trim(after)
	}
	num, n, err := ReadNumber(rest, opt.DecimalComma)
	if err != nil {
		return Quantity{}, err
	}
	rest = trim(rest[n:])
	switch {
	case !num.Unit.IsNumber():
		u = num.Unit
	case u.Name == "" && rest != "":
		if u, n = MatchWith(rest, opt); n == 0 {
			return Quantity{}, unread(rest, "a unit such as psi, kPa, ft or gpm")
		}
		rest = rest[n:]
	}
	if rest != "" {
		return Quantity{}, unread(all, "one number with its unit")
	}
	return u.Of(sign * num.Value), nil
}

// Format prints a number rounded to so many figures, but never coarser than a
// whole one: 41.6, 127, 1,235 for three. Zeros after the point are cut only if
// the number is exactly the round one: 39.98 is printed as 40.0, 40 as 40.
// Thousands have a comma, minus is U+2212; NaN and infinity are "no value".
func Format(v float64, figures int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "no value"
	}
	figures = min(max(figures, 1), 17)
	size := math.Abs(v)
	e := strconv.FormatFloat(size, 'e', figures-1, 64)
	exponent, _ := strconv.Atoi(e[strings.IndexByte(e, 'e')+1:])
	text := e
	if size == 0 {
		text = "0"
	} else if exponent > -12 && exponent < 16 {
		text = strconv.FormatFloat(size, 'f', max(figures-1-exponent, 0), 64)
		if back, _ := strconv.ParseFloat(text, 64); back == size && strings.Contains(text, ".") {
			text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
		}
		text = thousands(text)
	}
	if v < 0 && text != "0" {
		text = "−" + text
	}
	return text
}

// thousands puts a comma between groups of three before the point.
func thousands(text string) string {
	whole, rest, point := strings.Cut(text, ".")
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + "," + whole[at:]
	}
	if point {
		whole += "." + rest
	}
	return whole
}

// Text prints the quantity with a no-break space before its unit; degrees,
// percent and dollars stand without one: "41.6 psi", "140°F", "85%", "$1,200".
func (q Quantity) Text(figures int) string {
	number := Format(q.Value, figures)
	switch name := q.Unit.Name; {
	case name == "" || number == "no value":
		return number
	case name == "$":
		if minus, ok := strings.CutPrefix(number, "−"); ok {
			return "−$" + minus
		}
		return "$" + number
	case name == "%" || name == "¢" || strings.HasPrefix(name, "°"):
		return number + name
	default:
		return number + "\u00a0" + name
	}
}
