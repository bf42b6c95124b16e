package marking_test

import (
	"math"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// writer writes a number of a step, and says what it then is.
type writer func(l *learner, s *problems.Step, v float64) (text string, value float64)

func full(_ *learner, _ *problems.Step, v float64) (string, float64) {
	return strconv.FormatFloat(v, 'f', min(max(places(v, 9), 0), 12), 64), v
}

func figures(n int) writer {
	return func(_ *learner, s *problems.Step, v float64) (string, float64) {
		return round(v, max(n, s.Figures))
	}
}

// coarsely writes two figures, but no number coarser than a whole one.
func coarsely(_ *learner, _ *problems.Step, v float64) (string, float64) {
	return round(v, max(2, 1+int(math.Floor(math.Log10(math.Abs(v))))))
}

// hardly writes two figures, whatever the size.
func hardly(_ *learner, _ *problems.Step, v float64) (string, float64) { return round(v, 2) }

// whole writes the whole psi, kPa, foot or degree that a gauge or tape gives
// where that moves the value by 2 % or less, else three figures.
func whole(_ *learner, s *problems.Step, v float64) (string, float64) {
	if r := math.Round(v); s.Least > 0 && math.Abs(r-v) <= 0.02*math.Abs(v) && math.Abs(v) < 1000 {
		return number(r), r
	}
	return round(v, max(3, s.Figures))
}

// everyWhole writes the whole unit of the gauge or tape at every size.
func everyWhole(_ *learner, s *problems.Step, v float64) (string, float64) {
	if s.Least > 0 {
		r := math.Round(v/s.Least) * s.Least
		return number(r), r
	}
	return round(v, max(3, s.Figures))
}

// cut writes n figures, cut off and not rounded.
func cut(n int) writer {
	return func(_ *learner, s *problems.Step, v float64) (string, float64) {
		d := places(v, max(n, s.Figures))
		p := math.Pow(10, float64(d))
		c := math.Trunc(v*p+math.Copysign(1e-9, v)) / p
		return strconv.FormatFloat(c, 'f', max(0, d), 64), c
	}
}

func mixed(l *learner, s *problems.Step, v float64) (string, float64) {
	ways := []writer{full, figures(3), figures(4), whole}
	return ways[l.rng.IntN(len(ways))](l, s, v)
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// places is the decimals that show n figures of v; negative left of the point.
func places(v float64, n int) int {
	if v == 0 {
		return n
	}
	return n - 1 - int(math.Floor(math.Log10(math.Abs(v))))
}

func round(v float64, n int) (string, float64) {
	d := places(v, n)
	p := math.Pow(10, float64(d))
	r := math.Round(v*p) / p
	return strconv.FormatFloat(r, 'f', max(0, d), 64), r
}

// comma writes 20.4 as 20,4.
func comma(text string) string { return strings.Replace(text, ".", ",", 1) }

// thousands puts a mark between groups of three.
func thousands(mark string) func(string) string {
	return func(text string) string {
		whole, rest, point := strings.Cut(text, ".")
		for at := len(whole) - 3; at > 0 && whole[at-1] != '-'; at -= 3 {
			whole = whole[:at] + mark + whole[at:]
		}
		if point {
			whole += "." + rest
		}
		return whole
	}
}

// kinds lists the units that one quantity is written in.
var kinds = [][]string{
	{"psi", "kPa", "bar"}, {"psia", "kPa abs", "bar abs"}, {"inHg", "kPa", "psi"},
	{"ft", "m", "in", "cm"}, {"in", "mm", "cm"},
	{"gpm", "L/s", "L/min", "gph", "m³/h"}, {"gph", "L/h"}, {"US gal", "L", "ft³", "m³"},
	{"°F", "°C"}, {"Btu/h", "kW", "W"}, {"Btu", "kJ", "kWh"}, {"h", "min", "s"}, {"ft/s", "m/s"},
}

// otherUnit is that of the other system.
func otherUnit(_ *learner, u unit.Unit) unit.Unit {
	for _, k := range kinds {
		for n := range 2 {
			if k[n] == u.Name {
				return unitOf(k[1-n], u)
			}
		}
	}
	return u
}

// anyUnit is one of those of its kind.
func anyUnit(l *learner, u unit.Unit) unit.Unit {
	for _, k := range kinds {
		for _, name := range k {
			if name == u.Name {
				return unitOf(k[l.rng.IntN(len(k))], u)
			}
		}
	}
	return u
}

func unitOf(name string, in unit.Unit) unit.Unit {
	u, err := unit.Parse(name)
	if err != nil {
		return in
	}
	if in.Zero != unit.Scale {
		u = u.Difference()
	}
	return u
}

// writing is a way in which right working is written.
type writing struct {
	name string
	learner
}

var writings = []writing{
	{"full figures", learner{write: full, unrounded: true}},
	{"five figures", learner{write: figures(5)}},
	{"four figures", learner{write: figures(4)}},
	{"three figures", learner{write: figures(3)}},
	{"three figures, calculator's memory", learner{write: figures(3), unrounded: true}},
	{"two figures", learner{write: coarsely}},
	{"two figures, calculator's memory", learner{write: coarsely, unrounded: true}},
	{"whole units", learner{write: whole}},
	{"whole units, calculator's memory", learner{write: whole, unrounded: true}},
	{"whole units at every size", learner{write: everyWhole}},
	{"three figures, cut off", learner{write: cut(3)}},
	{"four figures, cut off", learner{write: cut(4)}},
	{"mixed figures", learner{write: mixed}},
	{"other system's unit", learner{write: figures(4), unit: otherUnit}},
	{"other system's unit, three figures", learner{write: figures(3), unit: otherUnit}},
	{"any unit", learner{write: figures(4), unit: anyUnit}},
	{"any unit, three figures, calculator's memory", learner{write: figures(3), unit: anyUnit, unrounded: true}},
	{"constant variants", learner{write: figures(3), variant: true}},
	{"constant variants, full figures", learner{write: full, variant: true, unrounded: true}},
	{"decimal comma", learner{write: figures(4), marks: comma}},
	{"decimal comma, three figures", learner{write: figures(3), marks: comma}},
	{"thousands comma", learner{write: figures(5), marks: thousands(",")}},
	{"thousands space", learner{write: figures(5), marks: thousands(" ")}},
	{"every second line", learner{write: figures(3), lines: second}},
	{"every second line, full figures", learner{write: full, lines: second}},
	{"random lines", learner{write: figures(3), lines: random}},
	{"random lines, hidden whole units", learner{write: whole, hidden: everyWhole, lines: random}},
	{"random lines, hidden three figures", learner{write: figures(3), hidden: figures(3), lines: random}},
	{"random lines, hidden cut off", learner{write: cut(3), hidden: cut(3), lines: random}},
	{"answer only", learner{write: figures(3), lines: last}},
	{"answer only, full figures", learner{write: full, lines: last}},
	{"answer only, whole units", learner{write: whole, hidden: whole, lines: last}},
	{"expressions", learner{write: figures(3), expr: numbersIn}},
	{"expressions, variants", learner{write: whole, expr: numbersIn, variant: true}},
	{"expressions, full figures", learner{write: full, expr: numbersIn, unrounded: true}},
	{"expressions with units", learner{write: figures(3), expr: unitsIn}},
	{"expressions by name", learner{write: figures(4), expr: namesIn}},
	{"expressions without a total", learner{write: figures(4), expr: numbersIn, noTotal: true}},
	{"one expression for everything", learner{write: figures(3), expr: numbersIn, lines: last}},
	{"merged expressions", learner{write: figures(4), expr: numbersIn, lines: second}},
	{"labels", learner{write: figures(3), words: true}},
	{"labels and expressions", learner{write: figures(3), words: true, expr: numbersIn}},
}
