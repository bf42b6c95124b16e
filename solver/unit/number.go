package unit

import "errors"

// Numeral is a number as it was written.
type Numeral struct {
	Value   float64
	Half    float64 // half of the last place written
	Figures int     // significant figures
	Text    string  // as written
	Comma   bool    // has a comma that may be a decimal or a thousands comma
	Unit    Unit    // feet where feet and inches were written, else Number
}

// Options say how text is read.
type Options struct {
	Imperial     bool // bare gal, gpm and gph are imperial
	DecimalComma bool // "1,234" is a little more than one
}

// ReadNumber reads the number at the start of text and returns the bytes used.
func ReadNumber(text string, decimalComma bool) (Numeral, int, error) {
	return Numeral{}, 0, errors.New("not read yet")
}

// Parse reads a unit.
func Parse(text string) (Unit, error) { return ParseWith(text, Options{}) }

// ParseWith reads a unit as the options say.
func ParseWith(text string, opt Options) (Unit, error) { return Unit{}, errors.New("not read yet") }

// Match is the longest unit at the start of text and its length in bytes.
func Match(text string) (Unit, int) { return MatchWith(text, Options{}) }

// MatchWith is Match as the options say.
func MatchWith(text string, opt Options) (Unit, int) { return Unit{}, 0 }

// Read reads a quantity: "62 psi".
func Read(text string) (Quantity, error) { return ReadWith(text, Options{}) }

// ReadWith reads a quantity as the options say.
func ReadWith(text string, opt Options) (Quantity, error) {
	return Quantity{}, errors.New("not read yet")
}

// Format prints a number.
func Format(v float64, figures int) string { return "" }

// Text prints a quantity.
func (q Quantity) Text(figures int) string { return "" }

// Units are the table's units of a dimension, in table order.
func Units(d Dim) []Unit { return nil }

// SIUnit is the coherent SI unit of a dimension.
func SIUnit(d Dim) Unit { return Unit{Factor: 1, Dim: d} }
