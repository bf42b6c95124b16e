package building

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// Height is a drawn height: a number in feet or metres, and its text where it
// is written in feet and inches.
type Height struct {
	Value float64
	Text  string
}

// feetInches is a height of whole feet and inches, as drawings write it.
func feetInches(feet, inches int) Height {
	return Height{float64(feet) + float64(inches)/12, fmt.Sprintf("%d'-%d\"", feet, inches)}
}

// FeetInches is a height as a drawing in feet writes it, where it is a whole
// number of inches and no half foot; else empty.
func FeetInches(u unit.Unit, v float64) string {
	in := math.Round(v * 12)
	if u.Name != "ft" || math.Abs(v*12-in) > 1e-6 || v < 0 || math.Mod(in, 6) == 0 {
		return ""
	}
	return feetInches(int(in)/12, int(in)%12).Text
}

// plain is a height written as a decimal number.
func plain(v float64) Height { return Height{Value: tidy(v)} }

// In inches, for lists: 106 is 8'-10".
func inches(list ...int) []Height {
	var out []Height
	for _, n := range list {
		out = append(out, feetInches(n/12, n%12))
	}
	return out
}

func plains(list ...float64) []Height {
	var out []Height
	for _, v := range list {
		out = append(out, plain(v))
	}
	return out
}

// Fraction is the part of v above a whole number of steps, 0 to 1: how far a
// reach is into its last floor.
func Fraction(v, step float64) float64 {
	q := v / step
	return q - math.Floor(q)
}
