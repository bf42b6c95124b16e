package formula

import "math"

// slack is how near to a whole number, or to a limit, a value counts as it:
// room for the rounding of floating point, far below any rounding of people.
const slack = 1e-9

// Bound is an expression whose names have places in a list of values.
type Bound struct{ root *node }

// Bind gives each name its place in the values that Eval and Interval take;
// slot is negative for a name that has none, which is the error.
func (e *Expr) Bind(slot func(name string) int) (*Bound, error) {
	root, err := e.root.bind(slot)
	if err != nil {
		return nil, err
	}
	return &Bound{root}, nil
}

func (n *node) bind(slot func(string) int) (*node, error) {
	c := *n
	if c.kind == name {
		if c.slot = slot(c.name); c.slot < 0 {
			return nil, &Error{Msg: quote(c.name) + " was read where a known name was expected"}
		}
	}
	c.kids = make([]*node, len(n.kids))
	for i, k := range n.kids {
		kid, err := k.bind(slot)
		if err != nil {
			return nil, err
		}
		c.kids[i] = kid
	}
	return &c, nil
}

// Eval evaluates over plain numbers; the units of literals are left out of
// account, and feet with inches are feet. Comparisons give 1 or 0. Where there
// is no value (a division by zero, a root of a negative, a value too large, a
// place beyond env) it is NaN, never infinite.
func (b *Bound) Eval(env []float64) float64 { return b.root.eval(env) }

// EvalPlain evaluates an expression that has no names.
func (e *Expr) EvalPlain() (v float64, ok bool) {
	if len(e.Names()) > 0 {
		return math.NaN(), false
	}
	v = e.root.eval(nil)
	return v, !math.IsNaN(v)
}

func (n *node) eval(env []float64) float64 {
	switch n.kind {
	case number:
		return n.lit.Value
	case pi:
		return math.Pi
	case name:
		if n.slot >= len(env) {
			return math.NaN()
		}
		return finite(env[n.slot])
	case call:
		args := make([]float64, len(n.kids))
		for i, k := range n.kids {
			if args[i] = k.eval(env); math.IsNaN(args[i]) {
				return math.NaN()
			}
		}
		return finite(n.fn.Eval(args))
	}
	a := n.kids[0].eval(env)
	if len(n.kids) == 1 {
		return unary(n.kind, a)
	}
	for _, k := range n.kids[1:] {
		a = binary(n.kind, a, k.eval(env))
	}
	return a
}

func unary(k kind, a float64) float64 {
	switch k {
	case neg:
		return -a
	case percent:
		return a / 100
	case root:
		return math.Sqrt(a)
	case roundUp:
		return math.Ceil(a - slack*max(1, math.Abs(a)))
	case roundDown:
		return math.Floor(a + slack*max(1, math.Abs(a)))
	case roundHalf:
		return math.Floor(a + 0.5 + slack*max(1, math.Abs(a)))
	case abs:
		return math.Abs(a)
	case sine:
		return math.Sin(a * math.Pi / 180)
	case cosine:
		return math.Cos(a * math.Pi / 180)
	}
	return math.NaN()
}

func binary(k kind, a, b float64) float64 {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.NaN()
	}
	switch k {
	case add:
		return finite(a + b)
	case sub:
		return finite(a - b)
	case mul:
		return finite(a * b)
	case div:
		return finite(a / b)
	case pow:
		return finite(math.Pow(a, b))
	case least:
		return min(a, b)
	case most:
		return max(a, b)
	case more:
		return truth(above(a, b))
	case less:
		return truth(above(b, a))
	case atLeast:
		return truth(!above(b, a))
	case atMost:
		return truth(!above(a, b))
	case either:
		return truth(a != 0 || b != 0)
	case both:
		return truth(a != 0 && b != 0)
	}
	return math.NaN()
}

// above reports whether a is more than b by more than the slack.
func above(a, b float64) bool {
	if math.IsInf(b, 0) {
		return a > b
	}
	return a > b+slack*max(1, math.Abs(b))
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func finite(v float64) float64 {
	if v-v != 0 { // quicker than to ask for either infinity
		return math.NaN()
	}
	return v
}
