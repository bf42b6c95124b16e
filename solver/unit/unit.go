package unit

import "math"

// Zero says what the number of a unit is counted from, where that matters.
type Zero uint8

// A pressure may be counted from the atmosphere (gauge) or from vacuum
// (absolute); a temperature may be a point on a scale or a difference.
const (
	Plain    Zero = iota // counted from nothing, or the text did not say
	Scale                // a temperature on its scale: 140 °F
	Gauge                // a pressure above atmosphere: psig
	Absolute             // a pressure above vacuum: psia
)

// Unit is a unit of measure. Value v in the unit is v*Factor+Offset in SI.
type Unit struct {
	Name   string  // as printed: "psi", "US gal", "°F", "psi/ft"
	Factor float64 // SI value of one
	Offset float64 // SI value of zero; only temperature scales have one
	Dim    Dim
	Zero   Zero
}

// Number is the unit of plain numbers; its name is empty.
var Number = Unit{Factor: 1}

// Difference is the unit without its scale: °F as a difference.
func (u Unit) Difference() Unit {
	if u.Zero == Scale {
		u.Zero, u.Offset = Plain, 0
	}
	return u
}

// IsNumber reports whether u is the unit of a plain number, which a percent
// is too.
func (u Unit) IsNumber() bool { return u.Dim.IsNumber() }

// SI is the value v of this unit in SI base units.
func (u Unit) SI(v float64) float64 { return v*u.Factor + u.Offset }

// FromSI is the value in this unit of a value in SI base units.
func (u Unit) FromSI(v float64) float64 { return (v - u.Offset) / u.Factor }

// Convert takes value v of unit u to unit to. It is NaN where the dimensions
// differ, so that a missed check cannot pass as a number. A temperature
// difference does not convert to a scale, nor back.
func (u Unit) Convert(v float64, to Unit) float64 {
	if u.Dim != to.Dim || (u.Zero == Scale) != (to.Zero == Scale) {
		return math.NaN()
	}
	if u.Factor == to.Factor && u.Offset == to.Offset {
		return v
	}
	return to.FromSI(u.SI(v))
}

// Quantity is a number in a unit.
type Quantity struct {
	Value float64
	Unit  Unit
}

// Of is v in unit u.
func (u Unit) Of(v float64) Quantity { return Quantity{v, u} }

// SI is the quantity in SI base units.
func (q Quantity) SI() float64 { return q.Unit.SI(q.Value) }

// In is the quantity's value in unit u, NaN where the dimensions differ.
func (q Quantity) In(u Unit) float64 { return q.Unit.Convert(q.Value, u) }
