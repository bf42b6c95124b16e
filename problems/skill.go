// Package problems turns a skill and a seed into a problem: a building with
// its givens, a question, steps and an answer.
//
// A [Skill] is one thing an apprentice must be able to work out. It is data:
// givens, rules written as the trade writes them, and beside each rule its
// slips, the wrong formulas that people really use. [New] draws a scenario
// for a skill and works it out by the rules; package marking reads what the
// apprentice wrote against it. Nothing here knows a page.
package problems

import (
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Kind is what a skill mostly asks for.
type Kind string

// Kinds of skills.
const (
	Sum    Kind = "sum"    // arithmetic
	Table  Kind = "table"  // a value is looked up
	Choice Kind = "choice" // the answer is a decision
)

// Skill is one thing that an apprentice must be able to work out.
type Skill struct {
	ID      string // stable, in links and records: "floor-pressure"
	Version int    // raised when its draws change; old links then say so
	Title   string
	Chapter int
	Order   int // place within the chapter
	Year    int // school level, first to fourth year
	Kind    Kind

	Ask    string // the question; {name} is filled in, see Problem.Fill
	Givens []Given
	Rules  []Rule
	Routes []Route // other right ways to the same answer

	Holds    string   // why the formula holds, for the rule card
	Cautions []string // where a mistake on the job can hurt someone
	Sources  []Source

	// Draw draws the building and the givens in round, realistic numbers.
	Draw func(s *building.Sheet)
	// Solve works the answer out over the whole building with package solver,
	// in SI: the second road to the number that the rules give.
	Solve func(w World) float64
}

// Given is a number that the problem tells.
type Given struct {
	Name    string // as in formulas: "street"
	Says    string // "street pressure on the gauge in the meter room, no flow"
	Measure *measure.Of
	// Plate is set for what is read off a US gauge or plate: in the mixed
	// system it is told in US units and converted as the first step.
	Plate bool
}

// Rule is one line of the working.
type Rule struct {
	Name    string // holds the result: "lost"
	Says    string // "pressure lost going up"
	Formula string // "gamma x height"
	Metric  string // the formula in SI units where it is another; else empty
	Measure *measure.Of
	Whole   bool     // the result counts whole things: floors, zones
	Choices []string // the result is one of these words; the formula gives the index
	Figures int      // figures the worked solution shows; 0: three
	Why     string   // why this line is so, for those who ask
	Table   string   // the table that the line reads, as solver.TableNamed knows it; empty: none
	Row     string   // what finds its row: a number of the problem, or a word to be filled in
	Slips   []Slip
	Would   Would // what the result does where it is built or set; nil: nothing is
}

// Route is another right way to the answer: its rules stand in place of the
// skill's own, with slips of their own.
type Route struct {
	Says  string // "the street pressure in feet first"
	Rules []Rule
}

// Slip is a wrong line that people really write, with what to say to it. The
// three texts may hold {name}, {right}, {got} and {formula}: see Problem.Fill.
type Slip struct {
	ID      string // stable within the skill: "floors-for-gaps"
	Formula string
	Metric  string // the formula in SI units where it is another; else empty
	Only    Units  // the units it is a slip in; empty: all
	Did     string // what you did, in your own numbers
	Why     string // why it is wrong: physics, or the trade's reason
	Next    string // how to see it next time
	Family  string // one belief on several lines: the same word there
	Allowed bool   // some offices work so: it is remarked on and costs nothing
}

// Units says in which working a slip can happen.
type Units string

// Units of a slip.
const (
	OnlyUS Units = "us"
	OnlySI Units = "si" // metric and mixed
)

// in reports whether the slip can happen in a system.
func (s *Slip) in(sys unit.System) bool {
	return s.Only == "" || (s.Only == OnlyUS) == (sys == unit.US)
}

// Source is where a rule or a value comes from.
type Source struct {
	Says       string
	Confidence solver.Confidence
}

// World is a drawn problem as the solver sees it: everything in SI.
type World struct {
	House    House
	Building *solver.Building
	Focus    int // index of the level asked about
	si       func(name string) float64
}

// SI is a given or a constant in SI base units; temperatures in kelvins.
func (w World) SI(name string) float64 { return w.si(name) }

// Gamma is the pressure of a water column as the house rules teach it.
func (w World) Gamma() unit.Gradient { return unit.Gradient(w.si("gamma")) }

// Length, Pressure, Flow and Temperature are givens as typed quantities.
func (w World) Length(name string) unit.Length           { return unit.Length(w.si(name)) }
func (w World) Pressure(name string) unit.Pressure       { return unit.Pressure(w.si(name)) }
func (w World) Flow(name string) unit.Flow               { return unit.Flow(w.si(name)) }
func (w World) Temperature(name string) unit.Temperature { return unit.Temperature(w.si(name)) }
