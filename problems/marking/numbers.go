package marking

import (
	"math"
	"strings"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// number is a reading turned to the unit of a step.
type number struct {
	v, half  float64 // the value written
	e, eHalf float64 // the value of the expression, where there is one
	hasExpr  bool
	noTotal  bool // only the expression is written
	figures  int
	digits   string
	turned   bool    // it was written in another unit of the same kind
	coarse   float64 // turned: half of a sensible rounding in that unit
	raw      bool    // its unit does not fit the step: the bare number is taken
	noUnit   bool    // no unit stands by it and one is needed

	expr *expression // as written; nil where there is none
	unit unit.Unit   // as written; none where the line has none
}

// numbers adds the ways in which a reading may answer step i: in its own
// unit, and as a bare number where that unit does not fit.
func (m *sheet) numbers(out []number, r *reading, i int) []number {
	s := &m.p.Steps[i]
	if r.word != "" || len(s.Choices) > 0 {
		return choice(out, r, s)
	}
	n := number{v: r.value, half: r.half, figures: r.figures, digits: r.digits, expr: r.expr, unit: r.unit}
	if x := r.expr; x != nil {
		x.workOut(m)
		n.e, n.eHalf, n.hasExpr = x.value, x.half, !math.IsNaN(x.value)
	}
	if !r.written {
		if !n.hasExpr {
			return out
		}
		n.v, n.half, n.figures, n.noTotal = n.e, 0, 9, true
	}
	if !r.hasUnit {
		n.noUnit = !n.noTotal && s.Unit.Name != "" && s.Unit.Name != "%"
		return m.withUnits(out, n, r, s)
	}
	from, to := r.unit, s.Unit
	if to.Zero != unit.Scale {
		from = from.Difference()
	}
	switch {
	case from.Dim != to.Dim:
	case otherZero(from, to):
		out = append(out, n.turn(from, to).fromZero(from, to))
	case !zeroFits(from, to):
	case from.Factor == to.Factor && from.Offset == to.Offset:
		return m.withUnits(out, n, r, s)
	default:
		out = append(out, n.turn(from, to))
	}
	n.raw = true
	return append(out, n)
}

// otherZero reports a pressure told above vacuum where one above the
// atmosphere is asked for, or the other way round: psia for psi. Bare psi may
// mean either where psia is asked for.
func otherZero(from, to unit.Unit) bool {
	return from.Zero == unit.Absolute && to.Zero != unit.Absolute || from.Zero == unit.Gauge && to.Zero == unit.Absolute
}

// atmosphere is the standard one, in pascals.
const atmosphere = 101325

// fromZero is the number counted from the zero of the step.
func (n number) fromZero(from, to unit.Unit) number {
	by := atmosphere / to.Factor
	if from.Zero == unit.Absolute {
		by = -by
	}
	n.v += by
	n.e += by
	return n
}

// zeroFits reports whether a pressure or temperature written from one zero
// may answer a step that counts from another: plain psi may stand for both.
func zeroFits(from, to unit.Unit) bool {
	return from.Zero == to.Zero || from.Zero == unit.Plain || to.Zero == unit.Plain && from.Zero != unit.Absolute
}

// turn converts the number and its half from one unit to another.
func (n number) turn(from, to unit.Unit) number {
	from.Zero, to.Zero = unit.Plain, unit.Plain
	scale := math.Abs(from.Factor / to.Factor)
	n.coarse = max(thirdHalf(n.v), wholeHalf(from)) * scale
	n.v, n.half = from.Convert(n.v, to), n.half*scale
	if n.hasExpr {
		n.e, n.eHalf = from.Convert(n.e, to), n.eHalf*scale
	}
	n.turned, n.digits = true, ""
	return n
}

// thirdHalf is half of the third figure of v.
func thirdHalf(v float64) float64 {
	if v == 0 {
		return 0
	}
	return math.Pow10(int(math.Floor(math.Log10(math.Abs(v))))-2) / 2
}

// wholeHalf is half of what a gauge or tape in the unit is read to.
func wholeHalf(u unit.Unit) float64 {
	switch u.Name {
	case "psi", "psia", "kPa", "kPa abs", "ft", "°F", "°C":
		return 0.5
	}
	return 0
}

// withUnits adds the number, and the reading of an expression whose numbers
// bear units of another system: 428 kPa - 9.81 kPa/m x 29.3 m answers a step
// in psi.
func (m *sheet) withUnits(out []number, n number, r *reading, s *problems.Step) []number {
	if r.expr == nil || !r.expr.hasUnits {
		return append(out, n)
	}
	q := r.expr.quantity
	if q.Unit.Dim != s.Unit.Dim || (q.Unit.Zero == unit.Scale) != (s.Unit.Zero == unit.Scale) {
		return append(out, n)
	}
	e := s.Unit.FromSI(q.SI())
	if math.IsNaN(e) || math.Abs(e-n.e) <= nearly*math.Abs(e) {
		if !r.written {
			n.noUnit = false
		}
		return append(out, n)
	}
	t := n
	t.e, t.eHalf, t.turned = e, turnedHalf*math.Abs(e), true
	if !r.written {
		t.v, t.noUnit = e, false
	}
	return append(out, n, t)
}

// choice reads the word of a decision; a bare 0 or 1 is not one.
func choice(out []number, r *reading, s *problems.Step) []number {
	word := r.word
	if word == "" {
		word = strings.TrimSpace(r.label)
	}
	for i, c := range s.Choices {
		if word != "" && strings.EqualFold(c, word) {
			return append(out, number{v: float64(i), figures: 9})
		}
	}
	return out
}
