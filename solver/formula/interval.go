package formula

import "math"

// Interval is all numbers from Lo to Hi, both within.
type Interval struct{ Lo, Hi float64 }

// everything is the answer where nothing is known.
var everything = Interval{math.Inf(-1), math.Inf(1)}

// Around is v with half on either side.
func Around(v, half float64) Interval { return Interval{v - half, v + half} }

// Hull is the smallest interval that holds both.
func Hull(a, b Interval) Interval { return Interval{min(a.Lo, b.Lo), max(a.Hi, b.Hi)} }

// Contains reports whether v is within.
func (i Interval) Contains(v float64) bool { return i.Lo <= v && v <= i.Hi }

// Width is Hi less Lo.
func (i Interval) Width() float64 { return i.Hi - i.Lo }

// Interval evaluates over intervals: the result holds every value that Eval
// gives for numbers within them. A name that appears twice counts as two, so
// the result may be too wide, never too narrow. Where there is no bound, as
// after a division by an interval with zero in it, it is all numbers.
func (b *Bound) Interval(env []Interval) Interval { return b.root.interval(env, false) }

// Span is Interval with the rounding of written numbers: those of four and
// more figures carry half of their last place, shorter ones are exact.
func (b *Bound) Span(env []Interval) Interval { return b.root.interval(env, true) }

func (n *node) interval(env []Interval, rounded bool) Interval {
	switch n.kind {
	case number:
		if rounded && n.lit.Figures >= 4 {
			return Around(n.lit.Value, n.lit.Half)
		}
		return Interval{n.lit.Value, n.lit.Value}
	case pi:
		return Interval{math.Pi, math.Pi}
	case name:
		if n.slot >= len(env) {
			return everything
		}
		return sound(env[n.slot])
	case call:
		args := make([]Interval, len(n.kids))
		for i, k := range n.kids {
			args[i] = k.interval(env, rounded)
		}
		return sound(n.fn.bounds(args))
	}
	a := n.kids[0].interval(env, rounded)
	if len(n.kids) == 1 {
		return sound(unaryOf(n.kind, a))
	}
	for _, k := range n.kids[1:] {
		a = sound(binaryOf(n.kind, a, k.interval(env, rounded)))
	}
	return a
}

// sound makes all numbers of an interval that is none.
func sound(i Interval) Interval {
	if i.Lo <= i.Hi {
		return i
	}
	return everything
}

func unaryOf(k kind, a Interval) Interval {
	switch k {
	case neg:
		return Interval{-a.Hi, -a.Lo}
	case root:
		if a.Hi < 0 {
			return everything
		}
		return Interval{math.Sqrt(max(a.Lo, 0)), math.Sqrt(a.Hi)}
	case abs:
		if a.Contains(0) {
			return Interval{0, max(-a.Lo, a.Hi)}
		}
		lo, hi := math.Abs(a.Lo), math.Abs(a.Hi)
		return Interval{min(lo, hi), max(lo, hi)}
	case sine:
		return wave(a, 90)
	case cosine:
		return wave(a, 0)
	}
	return Interval{unary(k, a.Lo), unary(k, a.Hi)}
}

// wave bounds a sine whose crest is at the given degrees.
func wave(a Interval, crest float64) Interval {
	if !(a.Width() < 360) || math.Abs(a.Lo) > 1e6 {
		return Interval{-1, 1}
	}
	at := func(x float64) float64 { return math.Cos((x - crest) * math.Pi / 180) }
	lo, hi := min(at(a.Lo), at(a.Hi)), max(at(a.Lo), at(a.Hi))
	if math.Ceil((a.Lo-crest)/360)*360+crest <= a.Hi {
		hi = 1
	}
	if math.Ceil((a.Lo-crest-180)/360)*360+crest+180 <= a.Hi {
		lo = -1
	}
	const room = 1e-9 // the angle's own rounding, up to 1e6 degrees
	return Interval{max(lo-room, -1), min(hi+room, 1)}
}

func binaryOf(k kind, a, b Interval) Interval {
	switch k {
	case add:
		return Interval{a.Lo + b.Lo, a.Hi + b.Hi}
	case sub:
		return Interval{a.Lo - b.Hi, a.Hi - b.Lo}
	case mul:
		return corners(a, b, times0)
	case div:
		if b.Contains(0) {
			return everything
		}
		return corners(a, b, over0)
	case pow:
		return power(a, b)
	case least:
		return Interval{min(a.Lo, b.Lo), min(a.Hi, b.Hi)}
	case most:
		return Interval{max(a.Lo, b.Lo), max(a.Hi, b.Hi)}
	case more:
		return Interval{truth(above(a.Lo, b.Hi)), truth(above(a.Hi, b.Lo))}
	case less:
		return Interval{truth(above(b.Lo, a.Hi)), truth(above(b.Hi, a.Lo))}
	case atLeast:
		return Interval{truth(!above(b.Hi, a.Lo)), truth(!above(b.Lo, a.Hi))}
	case atMost:
		return Interval{truth(!above(a.Hi, b.Lo)), truth(!above(a.Lo, b.Hi))}
	case either, both:
		pa, pb := possible(a), possible(b)
		return Interval{binary(k, pa.Lo, pb.Lo), binary(k, pa.Hi, pb.Hi)}
	}
	return everything
}

// possible is the truth of an interval: 1, 0, or either.
func possible(a Interval) Interval {
	return Interval{truth(!a.Contains(0)), truth(a.Lo != 0 || a.Hi != 0)}
}

// times0 and over0 take zero times infinity, and infinity over infinity, as 0:
// an end of an interval that has no bound is never reached.
func times0(x, y float64) float64 {
	if x == 0 || y == 0 {
		return 0
	}
	return x * y
}

func over0(x, y float64) float64 {
	if x == 0 || math.IsInf(y, 0) {
		return 0
	}
	return x / y
}

// corners bounds a function that rises or falls with each of its arguments.
func corners(a, b Interval, f func(x, y float64) float64) Interval {
	p, q, r, s := f(a.Lo, b.Lo), f(a.Lo, b.Hi), f(a.Hi, b.Lo), f(a.Hi, b.Hi)
	return Interval{min(p, q, r, s), max(p, q, r, s)}
}

// power bounds a to the power b. A base below zero has bounds for a single
// whole exponent only.
func power(a, b Interval) Interval {
	whole := b.Lo == b.Hi && b.Lo == math.Trunc(b.Lo)
	switch {
	case a.Lo >= 0 && !(a.Lo == 0 && b.Lo < 0):
	case !whole, b.Lo < 0 && a.Contains(0):
		return everything
	case math.Mod(b.Lo, 2) == 0 && b.Lo != 0 && a.Contains(0):
		top := max(-a.Lo, a.Hi)
		return widen(Interval{0, math.Pow(top, b.Lo)})
	}
	return widen(corners(a, b, math.Pow))
}

// widen gives room for the last bits of math.Pow, which may not rise evenly.
func widen(i Interval) Interval {
	const room = 1e-14
	return Interval{i.Lo - room*math.Abs(i.Lo), i.Hi + room*math.Abs(i.Hi)}
}

const maxCorners = 6 // arguments whose corners are tried

// bounds evaluates a supplied function over intervals.
func (f *Func) bounds(args []Interval) Interval {
	if f.Interval != nil {
		return f.Interval(args)
	}
	if len(args) > maxCorners {
		return everything
	}
	found := Interval{math.Inf(1), math.Inf(-1)}
	point := make([]float64, len(args))
	for corner := range 1 << len(args) {
		for i, a := range args {
			point[i] = a.Lo
			if corner>>i&1 == 1 {
				point[i] = a.Hi
			}
			if math.IsInf(point[i], 0) {
				return everything
			}
		}
		v := f.Eval(point)
		if math.IsNaN(v) {
			return everything
		}
		found = Hull(found, Interval{v, v})
	}
	return found
}
