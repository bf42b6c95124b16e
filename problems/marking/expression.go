package marking

import (
	"math"
	"slices"

	"riserwork/problems"
	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// expression is the arithmetic of a line, with its value over what is told
// and the learner's own numbers.
type expression struct {
	*formula.Expr
	bound *formula.Bound
	slots []int     // that it names
	at    []float64 // their numbers when it was last worked out; nil before

	value    float64       // NaN where it has none
	half     float64       // the rounding of the numbers in it
	quantity unit.Quantity // the value with the units written in it
	hasUnits bool
}

func newExpression(p *problems.Problem, e *formula.Expr) *expression {
	x := &expression{Expr: e, value: math.NaN()}
	b, err := e.Bind(p.Slot)
	if err != nil {
		return x
	}
	x.bound = b
	for _, name := range e.Names() {
		x.slots = append(x.slots, p.Slot(name))
	}
	return x
}

// workOut works the expression out, anew where a number that it names is
// another.
func (x *expression) workOut(m *sheet) {
	if x.bound == nil || x.at != nil && !slices.ContainsFunc(x.slots, func(s int) bool { return m.stands(s) != x.at[s] }) {
		return
	}
	x.at = m.ownEnv()
	x.value, x.hasUnits = math.NaN(), false
	exact := make([]formula.Interval, len(x.at))
	for i, v := range x.at {
		exact[i] = formula.Around(v, 0)
	}
	span := x.bound.Span(exact)
	if math.IsInf(span.Lo, 0) || math.IsInf(span.Hi, 0) || math.IsNaN(span.Lo) || math.IsNaN(span.Hi) {
		return
	}
	x.value, x.half = x.bound.Eval(x.at), span.Width()/2
	q, err := x.Check(func(name string) (unit.Quantity, bool) {
		i := m.p.Slot(name)
		if i < 0 {
			return unit.Quantity{}, false
		}
		return m.p.SlotUnit(i).Of(x.at[i]), true
	})
	x.quantity, x.hasUnits = q, err == nil && !q.Unit.IsNumber()
}
