package solver

import "riserwork/solver/unit"

// Load is what the fixtures of a level ask of its pipes, in fixture units: of
// the cold pipe, of the hot pipe, and of a pipe that feeds both.
type Load struct{ Cold, Hot, Total float64 }

func (l Load) plus(m Load) Load { return Load{l.Cold + m.Cold, l.Hot + m.Hot, l.Total + m.Total} }

// Piping says how the pipes of a building run and what they are sized by. A
// figure left at 0 is the one of [UsualPiping].
type Piping struct {
	Risers   int           // like risers side by side in each zone
	Offset   unit.Length   // of pipe along the floor, from a source to the foot of the farthest riser
	Branch   unit.Length   // of pipe from a riser to the outlets of its floor
	Fittings float64       // allowance on the length of pipe: 0.5 is half as long again
	C        float64       // of Hazen and Williams
	Friction unit.Gradient // no more than this at design flow
	Cold     unit.Velocity // nor faster than this in cold pipe
	Hot      unit.Velocity // nor than this in hot pipe
}

// UsualPiping are the figures of a Piping that says nothing: 4 psi a hundred
// feet, and the speeds of [VelocityLimits]. Common practice, no source.
var UsualPiping = Piping{
	Risers: 1, Offset: 60 * unit.Foot, Branch: 20 * unit.Foot, Fittings: 0.5, C: 140,
	Friction: unit.Gradient(0.04 * float64(unit.PSI) / float64(unit.Foot)),
	Cold:     8 * unit.Velocity(unit.Foot), Hot: 5 * unit.Velocity(unit.Foot),
}

// filled is the piping with the usual figures where it has none.
func (p Piping) filled() Piping {
	u := UsualPiping
	return Piping{
		orUsual(p.Risers, u.Risers), orUsual(p.Offset, u.Offset), orUsual(p.Branch, u.Branch), orUsual(p.Fittings, u.Fittings),
		orUsual(p.C, u.C), orUsual(p.Friction, u.Friction), orUsual(p.Cold, u.Cold), orUsual(p.Hot, u.Hot),
	}
}

func orUsual[T comparable](v, usual T) T {
	var none T
	if v == none {
		return usual
	}
	return v
}

// LiftSet is a pump set that stands higher up and lifts on what another gives: in
// series straight from the discharge below it, or out of a break tank that the
// pump below fills.
type LiftSet struct {
	Name      string
	Elevation unit.Length
	From      int  // index of the lift below it; -1: the booster
	BreakTank bool // it draws from an open tank beside it
	Boost     unit.Pressure
	ShutOff   unit.Pressure
	Curve     *PumpCurve // in place of Boost and ShutOff
}

// Tap is a kind of fixture that can be opened: the flow it gives at a pressure,
// and which outlet of its floor it is.
type Tap struct {
	Name  string // "shower"
	Flow  unit.Flow
	At    unit.Pressure    // flowing pressure that Flow belongs to
	Least unit.Pressure    // flowing pressure that it needs
	High  bool             // the highest outlet of its floor, else the lowest
	Mixed unit.Temperature // what it is mixed to; 0: cold water alone
}

// Taps are the kinds of fixtures to choose from; common practice, no source.
var Taps = []Tap{
	{"shower", 2 * unit.GPM, 20 * unit.PSI, 20 * unit.PSI, true, unit.Celsius(40)},
	{"lavatory", 1.2 * unit.GPM, 20 * unit.PSI, 8 * unit.PSI, false, unit.Celsius(40)},
	{"kitchen sink", 1.8 * unit.GPM, 20 * unit.PSI, 8 * unit.PSI, false, unit.Celsius(45)},
	{"bath", 4 * unit.GPM, 20 * unit.PSI, 20 * unit.PSI, false, unit.Celsius(40)},
	{"tank closet", 3 * unit.GPM, 20 * unit.PSI, 20 * unit.PSI, false, 0},
	{"flush valve", 25 * unit.GPM, 35 * unit.PSI, 35 * unit.PSI, false, 0},
	{"washing machine", 4 * unit.GPM, 20 * unit.PSI, 20 * unit.PSI, false, 0},
}

// TapNamed is the kind of fixture of a name.
func TapNamed(name string) (Tap, bool) {
	for _, t := range Taps {
		if t.Name == name {
			return t, true
		}
	}
	return Tap{}, false
}

// OpenTap is a number of like taps that run at once on one riser of a level.
type OpenTap struct {
	Level int // index into Building.Levels
	Tap   Tap
	Count int
}
