package formula

import (
	"math"

	"riserwork/solver/unit"
)

// Check evaluates the expression in SI with dimensions; env gives the names'
// quantities. The result is in the coherent SI unit. An error names both sides
// where pressures and heights are added. Zero fits every dimension.
//
// Temperatures on a scale count as points: the difference of two is a
// difference, and a mean weighted by flows is a point again. To know, each
// value carries how many times it holds the scale's origin: once for a point,
// q times for q*t, not at all for a difference.
func (e *Expr) Check(env func(name string) (unit.Quantity, bool)) (unit.Quantity, error) {
	v, err := e.root.check(env)
	if err != nil {
		return unit.Quantity{}, err
	}
	u := unit.SIUnit(v.dim)
	switch {
	case near(v.origin, 0):
	case near(v.origin, 1) && v.dim == kelvin.Dim:
		u = kelvin
	default:
		return unit.Quantity{}, e.root.bad("adds up temperatures that are points on a scale; a difference or a weighted mean was expected")
	}
	return u.Of(v.si), nil
}

// kelvin is the scale of temperature in SI.
var kelvin, _ = unit.Match("K")

// A checked value in SI.
type checked struct {
	si     float64
	dim    unit.Dim
	origin float64 // how many times it holds the origin of a temperature scale
	zero   bool    // a literal nought, which fits every dimension
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9 }

const maxExponent = 40 // of a base quantity, in any step

func (n *node) check(env func(string) (unit.Quantity, bool)) (checked, error) {
	switch n.kind {
	case number:
		v := of(n.unit.Of(n.lit.Value))
		v.zero = n.lit.Value == 0 && n.unit.IsNumber()
		return v, nil
	case pi:
		return checked{si: math.Pi}, nil
	case name:
		q, ok := env(n.name)
		if !ok {
			return checked{}, &Error{Msg: quote(n.name) + " was read where a known name was expected"}
		}
		return of(q), nil
	}
	kids := make([]checked, len(n.kids))
	for i, k := range n.kids {
		var err error
		if kids[i], err = k.check(env); err != nil {
			return checked{}, err
		}
	}
	if n.kind == call {
		return n.checkCall(kids)
	}
	if len(kids) == 1 {
		return n.checkOne(kids[0])
	}
	v := kids[0]
	for i := range kids[1:] {
		var err error
		if v, err = n.checkTwo(v, kids[i+1], n.kids[i+1]); err != nil {
			return checked{}, err
		}
	}
	return v, nil
}

func of(q unit.Quantity) checked {
	v := checked{si: q.SI(), dim: q.Unit.Dim}
	if q.Unit.Zero == unit.Scale {
		v.origin = 1
	}
	return v
}

func (n *node) checkOne(a checked) (checked, error) {
	if !near(a.origin, 0) && n.kind != neg && n.kind != percent {
		return a, n.bad("takes a temperature on a scale; a difference or a plain number was expected")
	}
	v := checked{si: unary(n.kind, a.si), dim: a.dim, zero: a.zero}
	switch n.kind {
	case neg:
		v.origin = -a.origin
	case percent:
		v.origin = a.origin / 100
	case abs:
	case root:
		for i, e := range a.dim {
			if e%2 != 0 {
				return a, n.bad("takes the root of " + a.dim.String() + "; a ratio was expected")
			}
			v.dim[i] = e / 2
		}
	default:
		if !a.dim.IsNumber() {
			return a, n.bad("was given " + a.dim.String() + "; a plain number was expected")
		}
	}
	return v, nil
}

func (n *node) checkTwo(a, b checked, right *node) (checked, error) {
	v := checked{si: binary(n.kind, a.si, b.si), dim: a.dim}
	scaled := !near(a.origin, 0) || !near(b.origin, 0)
	switch n.kind {
	case mul:
		if !near(a.origin, 0) && !near(b.origin, 0) {
			return v, n.bad("multiplies two temperatures on a scale; a difference was expected")
		}
		v.origin = a.origin*b.si + b.origin*a.si
		v.dim = a.dim.Mul(b.dim)
	case div:
		if !near(b.origin, 0) {
			return v, n.bad("divides by a temperature on a scale; a difference was expected")
		}
		v.origin = a.origin / b.si
		v.dim = a.dim.Div(b.dim)
	case pow:
		return n.checkPower(a, b)
	case either, both:
		if !a.dim.IsNumber() || !b.dim.IsNumber() {
			return v, n.bad("joins something that is neither true nor false")
		}
		return v, nil
	default:
		return n.checkLike(v, a, b, right)
	}
	for _, e := range v.dim {
		if e > maxExponent || e < -maxExponent {
			return v, n.bad("reaches a power that no quantity has")
		}
	}
	if scaled && math.IsNaN(v.origin) {
		return v, n.bad("has no value")
	}
	return v, nil
}

// checkLike is for operations whose two sides must be alike.
func (n *node) checkLike(v, a, b checked, right *node) (checked, error) {
	if a.dim != b.dim && !a.zero && !b.zero {
		left := &node{kind: n.kind, kids: n.kids[:len(n.kids)-1]}
		if len(n.kids) == 2 {
			left = n.kids[0]
		}
		verb := "compared"
		switch n.kind {
		case add:
			verb = "added"
		case sub:
			verb = "subtracted"
		}
		return v, &Error{Msg: text(left) + " is " + a.dim.String() + ", " + text(right) + " is " + b.dim.String() + ": they cannot be " + verb}
	}
	if a.zero {
		v.dim = b.dim
	}
	switch n.kind {
	case add:
		v.origin = a.origin + b.origin
	case sub:
		v.origin = a.origin - b.origin
	default:
		if !near(a.origin, b.origin) || !near(a.origin, 0) && !near(a.origin, 1) {
			return v, n.bad("compares a temperature on a scale with a difference")
		}
		v.origin = a.origin
		if n.kind != least && n.kind != most {
			return checked{si: v.si}, nil
		}
	}
	v.zero = a.zero && b.zero
	return v, nil
}

func (n *node) checkPower(a, b checked) (checked, error) {
	v := checked{si: binary(pow, a.si, b.si)}
	switch {
	case !near(a.origin, 0) || !near(b.origin, 0):
		return v, n.bad("takes a power of a temperature on a scale; a difference was expected")
	case !b.dim.IsNumber():
		return v, n.bad("has " + b.dim.String() + " as exponent; a plain number was expected")
	}
	for i, e := range a.dim {
		power := float64(e) * b.si
		if power != math.Trunc(power) || math.Abs(power) > maxExponent {
			return v, n.bad("takes a power of " + a.dim.String() + " that is no quantity; a ratio was expected")
		}
		v.dim[i] = int8(power)
	}
	return v, nil
}

func (n *node) checkCall(kids []checked) (checked, error) {
	args, values := make([]unit.Quantity, len(kids)), make([]float64, len(kids))
	for i, k := range kids {
		u := unit.SIUnit(k.dim)
		if near(k.origin, 1) && k.dim == kelvin.Dim {
			u = kelvin
		} else if !near(k.origin, 0) {
			return checked{}, n.bad("takes a sum of temperatures on a scale; a temperature was expected")
		}
		if n.fn.Dims == nil && !k.dim.IsNumber() {
			return checked{}, n.bad("was given " + k.dim.String() + "; a plain number was expected")
		}
		args[i], values[i] = u.Of(k.si), k.si
	}
	if n.fn.Dims == nil {
		return checked{si: finite(n.fn.Eval(values))}, nil
	}
	q, err := n.fn.Dims(args)
	if err != nil {
		return checked{}, n.bad("does not fit: " + err.Error())
	}
	return of(q), nil
}

// bad is the error of a part of the expression.
func (n *node) bad(what string) *Error { return &Error{Msg: quote(text(n)) + " " + what} }
