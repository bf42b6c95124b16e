package problems

import (
	"math"
	"unicode"
	"unicode/utf8"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Would works out what the result of a rule would do if something were built
// or set by it. v is that result in SI base units, right or wrong: positive, a
// whole number or one of the choices where the rule has such. The building of
// the world is not to be changed; see [solver.Building.Copy].
type Would func(w World, v float64) Outcome

// Outcome is what a number would do.
type Outcome struct {
	Says []string // sentences with numbers, the most telling first
	// Kept reports that the limits are kept and what was asked is reached, with
	// nothing given away.
	Kept     bool
	Building *solver.Building // as it would be; nil where it is unchanged
	Marks    []Mark
}

// Mark is a reading of an outcome, to be written on the drawing.
type Mark struct {
	Level int // index into Building.Levels
	Where Where
	Text  string // "11 psi"
	Kept  bool   // it keeps its limit
}

// Where is the thing on a level that a mark stands at.
type Where string

// Places of marks.
const (
	AtHighest Where = "outlet" // the level's highest outlet
	AtLowest  Where = "floor"  // the level's lowest outlet
	AtValve   Where = "valve"
	AtHeater  Where = "heater"
	AtMixing  Where = "mixing"
	AtLoop    Where = "loop"
)

// Outcome is what the answer would do, in the answer's unit; false where
// nothing is built or set by it, or the problem has no building.
func (p *Problem) Outcome(answer float64) (Outcome, bool) {
	return p.OutcomeOf(len(p.Steps)-1, answer)
}

// OutcomeOf is what value v of a step would do, in the step's unit. A value
// that nothing can be built with gives one sentence that says so.
func (p *Problem) OutcomeOf(step int, v float64) (Outcome, bool) {
	if p.Building == nil || step < 0 || step >= len(p.Steps) {
		return Outcome{}, false
	}
	s := &p.Steps[step]
	would := p.would(s)
	if would == nil {
		return Outcome{}, false
	}
	if why := p.absurd(s, v); why != "" {
		return Outcome{Says: []string{why}}, true
	}
	w := p.World()
	o := would(w, s.Unit.SI(v))
	if o.Building != nil {
		if _, err := solver.Solve(o.Building, solver.Settings{Gamma: w.Gamma()}); err != nil {
			o.Building = nil
		}
	}
	return o, true
}

// Tried is what the first wrong number of a worked answer would do, of those
// that something is built or set by. Values are in the units of the steps, NaN
// where nothing was written.
func (p *Problem) Tried(values []float64) (step int, o Outcome, ok bool) {
	for i, v := range values {
		if i >= len(p.Steps) || math.IsNaN(v) || !p.Steps[i].apartFrom(v, p.Steps[i].Value) {
			continue
		}
		if o, ok = p.OutcomeOf(i, v); ok {
			return i, o, true
		}
	}
	return -1, Outcome{}, false
}

// would is what is built by a step; a step of another route does what the
// skill's own step of that name does.
func (p *Problem) would(s *Step) Would {
	if s.Would != nil || p.Route == "" {
		return s.Would
	}
	for i := range p.Skill.Rules {
		if p.Skill.Rules[i].Name == s.Name {
			return p.Skill.Rules[i].Would
		}
	}
	return nil
}

// Past these a number is no answer any more, however wrong.
const (
	mostWhole = 300  // floors, levels, zones
	mostTimes = 100  // times the right value
	leastPart = 1e-9 // of the right value
)

// absurd says why nothing can be built with a value; empty where it can.
func (p *Problem) absurd(s *Step, v float64) string {
	what := Sentence(p.Fill(s.Says, p.Env())) + ": "
	switch {
	case math.IsNaN(v):
		return what + "there is no number here to try."
	case len(s.Choices) > 0:
		if v != math.Trunc(v) || v < 0 || v >= float64(len(s.Choices)) {
			return what + "that is none of the answers to choose from."
		}
	case v < 0 || v == 0 && !s.Whole:
		return what + "nothing can be built with " + s.Text(v) + "."
	case !s.Whole && v < leastPart*math.Abs(s.Value):
		return what + "nothing can be built with as good as nothing."
	case s.Whole && v > mostWhole || !s.Whole && v > mostTimes*math.Abs(s.Value):
		return what + s.Text(v) + " is out of all proportion here."
	case s.Whole && s.Unit.Name == "" && v != math.Trunc(v): // motors come in halves
		return what + s.Text(v) + " is no whole number, and a part of one cannot be built."
	}
	return ""
}

// Sentence is text with a capital at its start.
func Sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return ""
	}
	return string(unicode.ToUpper(r)) + text[n:]
}

// Most is the static limit at a fixture, as the code prints it for the system
// of the house.
func (w World) Most() unit.Pressure {
	return unit.Pressure(w.House.Profile().StaticMax.Value(w.House.System).SI())
}

// Hottest is the limit at a shower or bath, printed the same way.
func (w World) Hottest() unit.Temperature {
	return unit.Temperature(w.House.Profile().FixtureHot.Value(w.House.System).SI())
}
