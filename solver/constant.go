package solver

import "riserwork/solver/unit"

// Constant is a figure that schools teach in more than one rounding. The
// first of each list is shown unless the house rules choose another; every
// other in Accept is taken without a word, Coarse with the remark that it is
// rounded.
type Constant struct {
	Name   string // as in formulas: "gamma"
	Says   string
	SaysSI string // in SI units where it is another; else empty
	US     Taught
	SI     Taught
}

// SaysIn is what the constant is, in the system.
func (c Constant) SaysIn(s unit.System) string {
	if s != unit.US && c.SaysSI != "" {
		return c.SaysSI
	}
	return c.Says
}

// Taught is a constant in one system: its unit and its roundings.
type Taught struct {
	Unit   string
	Accept []string // numbers as written; the first is shown
	Coarse []string
}

// In is the constant as taught in the system.
func (c Constant) In(s unit.System) Taught {
	if s == unit.US {
		return c.US
	}
	return c.SI
}

// ConstantByName is the constant of that name.
func ConstantByName(name string) (Constant, bool) {
	for _, c := range Constants {
		if c.Name == name {
			return c, true
		}
	}
	return Constant{}, false
}
