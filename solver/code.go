package solver

import (
	"math"

	"riserwork/solver/unit"
)

// Confidence says how a value is known: seen in a stored public text, recalled,
// or the habit of the trade.
type Confidence string

// Confidences of a limit, a table value or a source.
const (
	Confirmed Confidence = "confirmed"
	Memory    Confidence = "from memory"
	Practice  Confidence = "common practice, no source"
)

// Limit is one limit of a code: the value as the code prints it in US and in
// SI units, and the words that join it to the thing limited.
type Limit struct {
	US, SI     unit.Quantity
	Words      string // "static pressure at a fixture more than {limit}: reducing valve"
	Over       bool   // true: a value met exactly is allowed ("more than"); false: it is not ("or higher")
	Section    string
	Confidence Confidence
	None       bool // the code has no such rule; Words says what is practice
}

// Value is the limit in the unit system given.
func (l Limit) Value(s unit.System) unit.Quantity {
	if s == unit.US {
		return l.US
	}
	return l.SI
}

// Highest is the higher of the two prints of the limit in SI base units: what
// may stand at most where the unit system is not known. Codes round the two
// prints apart: 80 psi is 551.6 kPa and is printed 550 or 552.
func (l Limit) Highest() float64 { return math.Max(l.US.SI(), l.SI.SI()) }

// Lowest is the lower of the two prints in SI base units: what must be there
// at least where the unit system is not known.
func (l Limit) Lowest() float64 { return math.Min(l.US.SI(), l.SI.SI()) }

// Keeps reports whether v keeps below most, a print of the limit. Met exactly,
// within the rounding of floating point, the limit's words decide.
func (l Limit) Keeps(v, most float64) bool {
	room := 1e-9 * math.Abs(most)
	if l.Over {
		return v <= most+room
	}
	return v < most-room
}

// RecirculationRule says when hot water must be kept warm by recirculation or
// heat tracing. A limit of None is not asked.
type RecirculationRule struct {
	Length  Limit // developed length, measured as From says
	Storeys int   // 0: the code does not count storeys
	OrMore  bool  // storeys: "n or higher" where true, "more than n" where false
	From    string
	Words   string
}

// Required reports whether the rule asks for recirculation. Length is
// measured as From says.
func (r RecirculationRule) Required(length unit.Length, storeys int) bool {
	if !r.Length.None && float64(length) > r.Length.SI.SI()+1e-9 {
		return true
	}
	if r.Storeys == 0 {
		return false
	}
	if r.OrMore {
		return storeys >= r.Storeys
	}
	return storeys > r.Storeys
}

// Profile is one code edition with the limits that the sums use. All are
// amended locally; the authority decides.
type Profile struct {
	ID, Name, Edition string
	StaticMax         Limit
	TopMin            Limit // what must be left at the highest outlet
	ShowerMin         Limit // flowing, at a shower
	Recirculation     RecirculationRule
	FixtureHot        Limit // hottest water at a shower or bath
	ExpansionCap      Limit // highest pressure with the water warmed
	SuctionMin        Limit // booster inlet
}

func psi(v float64) unit.Quantity        { return mustUnit("psi").Of(v) }
func kpa(v float64) unit.Quantity        { return mustUnit("kPa").Of(v) }
func feet(v float64) unit.Quantity       { return mustUnit("ft").Of(v) }
func metres(v float64) unit.Quantity     { return mustUnit("m").Of(v) }
func fahrenheit(v float64) unit.Quantity { return mustUnit("°F").Of(v) }
func celsius(v float64) unit.Quantity    { return mustUnit("°C").Of(v) }

// mustUnit reads a unit of a table in this package; a broken table gives a
// unit that converts to nothing, which the tables' tests refuse.
func mustUnit(name string) unit.Unit {
	u, err := unit.Parse(name)
	if err != nil {
		return unit.Unit{Name: name, Factor: math.NaN()}
	}
	return u
}

// ProfileByID is the profile of that name.
func ProfileByID(id string) (*Profile, bool) {
	for i := range Profiles {
		if Profiles[i].ID == id {
			return &Profiles[i], true
		}
	}
	return nil, false
}
