package skills

import (
	"fmt"
	"math"

	"riserwork/problems/building"
)

// setHeight tells a height, in feet and inches where it is no whole number of
// feet: 57'-2". It rounds to the inch only what is an inch already.
func setHeight(s *building.Sheet, name string, v float64) {
	h := building.Height{Value: v}
	inches := math.Round(v * 12)
	if s.US() && v != math.Trunc(v) && math.Abs(v*12-inches) < 1e-6 {
		h.Text = fmt.Sprintf("%d'-%d\"", int(inches)/12, int(inches)%12)
	} else if !s.US() {
		h.Value = math.Round(v*1e6) / 1e6
	}
	s.SetHeight(name, h)
}

// keepAtTop sets {limit_says}, the words for the pressure kept at the highest
// outlet, and returns that pressure in the unit of code pressures.
func keepAtTop(s *building.Sheet) float64 {
	words := s.Profile.TopMin.Words
	if s.TopMin > 0 {
		words = "the house rules of the school"
	}
	s.Name("limit_says", words)
	return s.Least()
}

// pick draws one of the candidates; ok is false where there is none.
func pick[T any](s *building.Sheet, from []T) (v T, ok bool) {
	if len(from) == 0 {
		return v, false
	}
	return from[s.Int(0, len(from)-1)], true
}

// head is the usual pressure of a column, to draw by: psi of feet, kPa of
// metres. The sums themselves use the school's constant.
func head(s *building.Sheet, height float64) float64 {
	if s.US() {
		return 0.433 * height
	}
	return 9.81 * height
}

// plateHead is head in the unit of gauges.
func plateHead(s *building.Sheet, height float64) float64 {
	return onPlate(s, head(s, height))
}

// onPlate turns a pressure of the code's unit into the unit of gauges, to
// draw by.
func onPlate(s *building.Sheet, p float64) float64 {
	if s.PlateUS() && !s.US() {
		return p / 6.895
	}
	return p
}
