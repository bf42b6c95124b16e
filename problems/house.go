package problems

import (
	"riserwork/solver"
	"riserwork/solver/unit"
)

// House is how a school works: its units, constants, code edition and the
// pressure it keeps at the top. The zero House is that of [Defaults].
type House struct {
	System    unit.System `json:"system"`
	Code      string      `json:"code"`               // id of a solver.Profile
	Imperial  bool        `json:"imperial,omitempty"` // a bare "gal" means the imperial gallon
	TopMin    float64     `json:"topMin,omitempty"`   // pressure kept at the top, in psi or kPa of the system; 0: the profile's
	Constants []Pick      `json:"constants,omitempty"`
	Alone     Alone       `json:"alone,omitempty"`
}

// Alone is what an answer earns that stands alone, with no working beside it.
type Alone string

// Rules for an answer that stands alone.
const (
	AloneValues Alone = ""     // the marks for values, not those for methods
	AloneAll    Alone = "all"  // what it would earn with its working
	AloneNone   Alone = "none" // nothing
)

// AloneByWord is the rule of a word: "values", "all" or "none".
func AloneByWord(word string) (a Alone, ok bool) {
	switch a = Alone(word); a {
	case "values":
		return AloneValues, true
	case AloneValues, AloneAll, AloneNone:
		return a, true
	}
	return AloneValues, false
}

// Pick is a school's own rounding of a constant: {"gamma", "0.434"}.
type Pick struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Defaults are the house rules before anybody sets them.
var Defaults = House{System: unit.US, Code: "shop"}

// normal fills in what is not set; what is not known falls back to Defaults.
func (h House) normal() House {
	switch h.System {
	case unit.US, unit.Metric, unit.Mixed:
	default:
		h.System = Defaults.System
	}
	if _, ok := solver.ProfileByID(h.Code); !ok {
		h.Code = Defaults.Code
	}
	h.Alone, _ = AloneByWord(string(h.Alone))
	return h
}

// Profile is the code edition of the house.
func (h House) Profile() *solver.Profile {
	p, _ := solver.ProfileByID(h.normal().Code)
	return p
}

// shown is the constant's number as the house teaches it, as text.
func (h House) shown(c solver.Constant) string {
	for _, p := range h.Constants {
		if p.Name == c.Name {
			return p.Text
		}
	}
	return c.In(h.System).Accept[0]
}

// taught is the number of a constant as the house teaches it.
func (h House) taught(name string) float64 {
	c, _ := solver.ConstantByName(name)
	return number(h.shown(c))
}
