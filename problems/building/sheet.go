// Package building draws buildings and their water supply from a seed, in
// round and realistic numbers: storeys, heights, street pressures, valves,
// heaters and loops as they are met on jobs. Ranges are common practice, no
// source, unless said otherwise.
package building

import (
	"math"
	"math/rand/v2"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Sheet is the paper a scenario is drawn on: the random source, the units it
// is drawn in, the building as it grows, and the numbers that the problem
// will tell.
type Sheet struct {
	Rand     *rand.Rand
	System   unit.System
	Profile  *solver.Profile
	Imperial bool
	TopMin   float64 // pressure to keep at the top, psi or kPa

	// PSI and Gallon are what a unit of a US plate comes to: in the mixed
	// system as the school's rounded factor has it, so that the building and
	// the converted numbers of the working are the same.
	PSI    unit.Pressure
	Gallon unit.Volume

	Building *solver.Building
	Focus    int // index of the level asked about
	Values   []Value
	Labels   []Label
}

// Value is a given's number in the unit it is told in.
type Value struct {
	Name  string
	Value float64
	Text  string // as printed where the plain number is not: 8'-10"
}

// Label is a word for the text: {level} is "14".
type Label struct{ Name, Text string }

// Set tells a number of the problem in the unit of its measure; what is read
// off a plate or gauge is in US units where the system is mixed.
func (s *Sheet) Set(name string, v float64) { s.Values = append(s.Values, Value{Name: name, Value: v}) }

// SetHeight tells a drawn height, in feet and inches where it was drawn so.
func (s *Sheet) SetHeight(name string, h Height) {
	s.Values = append(s.Values, Value{name, h.Value, h.Text})
}

// Name sets a word for the problem's text.
func (s *Sheet) Name(name, text string) { s.Labels = append(s.Labels, Label{name, text}) }

// Get is a number already set; 0 where it is not.
func (s *Sheet) Get(name string) float64 {
	v, _ := s.Value(name)
	return v.Value
}

// US reports whether heights and code values are drawn in US units.
func (s *Sheet) US() bool { return s.System == unit.US }

// PlateUS reports whether gauges and plates read US units.
func (s *Sheet) PlateUS() bool { return s.System != unit.Metric }

// Pick draws one number of us or si, by the system of heights and code.
func (s *Sheet) Pick(us, si []float64) float64 {
	if s.US() {
		return one(s.Rand, us)
	}
	return one(s.Rand, si)
}

// PickPlate draws one number of us or si, by the system of gauges and plates.
func (s *Sheet) PickPlate(us, si []float64) float64 {
	if s.PlateUS() {
		return one(s.Rand, us)
	}
	return one(s.Rand, si)
}

// Int draws a whole number from lo to hi, both included.
func (s *Sheet) Int(lo, hi int) int {
	if hi <= lo {
		return lo
	}
	return lo + s.Rand.IntN(hi-lo+1)
}

// Steps draws from lo to hi in steps: Steps(45, 80, 5) is 45, 50 ... 80.
func (s *Sheet) Steps(lo, hi, step float64) float64 {
	n := int((hi-lo)/step + 0.5)
	return tidy(lo + step*float64(s.Rand.IntN(n+1)))
}

// Chance is true in the given share of draws.
func (s *Sheet) Chance(share float64) bool { return s.Rand.Float64() < share }

// tidy takes the noise of binary fractions off a number of few decimals.
func tidy(v float64) float64 { return math.Round(v*1e6) / 1e6 }

func one[T any](r *rand.Rand, from []T) T { return from[r.IntN(len(from))] }

// Length is v in the unit of heights: feet, or metres.
func (s *Sheet) Length(v float64) unit.Length {
	if s.US() {
		return unit.Length(v) * unit.Foot
	}
	return unit.Length(v) * unit.Metre
}

// Heights is a length in the unit of heights.
func (s *Sheet) Heights(l unit.Length) float64 {
	if s.US() {
		return float64(l / unit.Foot)
	}
	return float64(l / unit.Metre)
}

// Press is v in the unit of code pressures: psi, or kPa.
func (s *Sheet) Press(v float64) unit.Pressure {
	if s.US() {
		return unit.Pressure(v) * unit.PSI
	}
	return unit.Pressure(v) * unit.Kilopascal
}

// PlatePress is v in the unit of gauges: psi unless all is metric.
func (s *Sheet) PlatePress(v float64) unit.Pressure {
	if s.PlateUS() {
		return unit.Pressure(v) * s.PSI
	}
	return unit.Pressure(v) * unit.Kilopascal
}

// PlateVolume is v in the unit of tank plates: US gallons unless all is
// metric, then litres.
func (s *Sheet) PlateVolume(v float64) unit.Volume {
	if s.PlateUS() {
		return unit.Volume(v) * s.Gallon
	}
	return unit.Volume(v) * unit.Litre
}

// Value is the number set for a given; false where none was set.
func (s *Sheet) Value(name string) (Value, bool) {
	for _, v := range s.Values {
		if v.Name == name {
			return v, true
		}
	}
	return Value{}, false
}
