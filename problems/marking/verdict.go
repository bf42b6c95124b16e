// Package marking reads what an apprentice wrote against a problem, line by
// line, and says which line went wrong and why.
//
// Every line is judged from the learner's own earlier numbers, so a wrong
// number loses its mark once and what follows from it rightly is right. The
// right value is accepted in any sensible rounding, unit and constant; a slip
// is named only where its value fits the figures that were written.
package marking

import "riserwork/problems"

// Verdict is what a line is found to be. The list is closed.
type Verdict string

// Verdicts of a line.
const (
	Right         Verdict = "right"
	RoundedEarly  Verdict = "rounded-early"  // right method, rounded too soon or too far
	FollowThrough Verdict = "follow-through" // right method on an earlier wrong number
	Slip          Verdict = "slip"           // one known slip; two are offered where both give this number
	TwoSlips      Verdict = "two-slips"      // two slips on one line, the only pair that fits
	PossibleSlip  Verdict = "possible-slip"  // a slip fits, but the evidence is thin
	Arithmetic    Verdict = "arithmetic"     // the expression is right, the total is not
	NotFollowing  Verdict = "not-following"  // the right value, but not from the line before it
	WrongGiven    Verdict = "wrong-given"    // another number of the problem was taken
	Transposed    Verdict = "transposed"     // two neighbouring digits changed places
	PowerOfTen    Verdict = "power-of-ten"   // the point stands in the wrong place
	Sign          Verdict = "sign"           // the right size with the wrong sign
	WrongUnit     Verdict = "wrong-unit"     // the right number with another unit
	UnitMissing   Verdict = "unit-missing"   // right, and no unit stands by it
	NotRecognised Verdict = "not-recognised" // a number that nothing explains
	NotReadable   Verdict = "not-readable"   // no number was found in it
	NotTied       Verdict = "not-tied"       // reads well, and belongs to no step
	Replaced      Verdict = "replaced"       // put right by a later line
	Empty         Verdict = "empty"          // nothing was written
)

// Good reports whether the line earns its method: right, by whatever road.
func (v Verdict) Good() bool {
	return v == Right || v == RoundedEarly || v == FollowThrough || v == UnitMissing
}

// fault reports a known fault, told for certain.
func (v Verdict) fault() bool {
	switch v {
	case Slip, TwoSlips, Arithmetic, WrongGiven, Transposed, PowerOfTen, Sign:
		return true
	}
	return false
}

// Named is a slip that explains a line, with its text in the learner's
// numbers.
type Named struct {
	ID             string
	Step           int // the step it belongs to
	Did, Why, Next string
}

// Finding is what was found on one line.
type Finding struct {
	Text    string // as written
	Step    int    // the step it answers; -1: none
	Verdict Verdict
	Slips   []Named
	Says    string  // one or two sentences to the learner
	For     string  // what the step works out: "pressure lost going up"
	ReadAs  string  // how it was read: "0.433 × 96 = 41.6 psi"
	Value   float64 // in the step's unit; NaN where none was read

	working    bool // it is written out as an expression
	impossible bool // a value that no building can have
}

// Result is a marked sheet.
type Result struct {
	Lines []Finding
	Marks int
	Of    int
	// First is the line with the earliest fault, which is the one to talk
	// about; -1 where there is none.
	First int
	Slips []string // ids of the slips named, each once
	Done  bool     // the answer stands and is right
	Note  string   // one sentence on the marks, or empty
	// Problem is the one whose steps the lines are tied to: the one marked,
	// or the same worked by another route.
	Problem *problems.Problem
}
