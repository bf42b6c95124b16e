//go:build !js

package formula_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// A pair is one expression in two spellings, ours and that of mathjs.
type pair struct{ ours, theirs string }

// theirUnits are the units that both know, by dimension: ours, then theirs.
var theirUnits = map[string][][2]string{
	"length":   {{"ft", "ft"}, {"in", "inch"}, {"m", "m"}, {"mm", "mm"}, {"cm", "cm"}, {"km", "km"}, {"miles", "miles"}, {"feet", "feet"}},
	"area":     {{"ft²", "ft^2"}, {"sq ft", "ft^2"}, {"in²", "inch^2"}, {"m²", "m^2"}, {"mm²", "mm^2"}},
	"volume":   {{"US gal", "gallon"}, {"gal", "gallon"}, {"L", "L"}, {"mL", "mL"}, {"m³", "m^3"}, {"cu ft", "ft^3"}, {"in³", "inch^3"}},
	"time":     {{"s", "s"}, {"min", "minute"}, {"h", "hour"}, {"hr", "hour"}, {"days", "day"}},
	"flow":     {{"gpm", "gallon/minute"}, {"gph", "gallon/hour"}, {"L/s", "L/s"}, {"L/min", "L/minute"}, {"m³/h", "m^3/hour"}, {"cfs", "ft^3/s"}},
	"pressure": {{"psi", "psi"}, {"kPa", "kPa"}, {"bar", "bar"}, {"Pa", "Pa"}, {"MPa", "MPa"}, {"mbar", "mbar"}, {"atm", "atm"}, {"lb/ft2", "lbf/ft^2"}},
	"mass":     {{"lb", "lbm"}, {"kg", "kg"}, {"g", "g"}, {"oz", "oz"}, {"tonne", "tonne"}, {"ton", "ton"}},
	"force":    {{"lbf", "lbf"}, {"N", "N"}, {"kN", "kN"}},
	"energy":   {{"Btu", "BTU"}, {"J", "J"}, {"kJ", "kJ"}, {"MJ", "MJ"}, {"kWh", "kWh"}},
	"power":    {{"Btu/h", "BTU/hour"}, {"MBH", "* 1000 BTU/hour"}, {"kW", "kW"}, {"W", "W"}, {"hp", "hp"}},
	"gradient": {{"psi/ft", "psi/ft"}, {"kPa/m", "kPa/m"}, {"psi/100 ft", "psi/(100 ft)"}, {"Pa/m", "Pa/m"}},
	"speed":    {{"ft/s", "ft/s"}, {"m/s", "m/s"}, {"fps", "ft/s"}},
}

// made are the ways to a dimension from two others.
var made = map[string][][3]string{
	"length":   {{"area", "÷", "length"}, {"pressure", "÷", "gradient"}, {"speed", "×", "time"}},
	"area":     {{"length", "×", "length"}, {"volume", "÷", "length"}, {"force", "÷", "pressure"}, {"flow", "÷", "speed"}},
	"volume":   {{"area", "×", "length"}, {"flow", "×", "time"}, {"energy", "÷", "pressure"}},
	"time":     {{"volume", "÷", "flow"}, {"length", "÷", "speed"}, {"energy", "÷", "power"}},
	"flow":     {{"volume", "÷", "time"}, {"speed", "×", "area"}, {"power", "÷", "pressure"}},
	"pressure": {{"force", "÷", "area"}, {"gradient", "×", "length"}, {"energy", "÷", "volume"}},
	"force":    {{"pressure", "×", "area"}, {"energy", "÷", "length"}},
	"energy":   {{"power", "×", "time"}, {"force", "×", "length"}, {"pressure", "×", "volume"}},
	"power":    {{"energy", "÷", "time"}, {"pressure", "×", "flow"}, {"force", "×", "speed"}},
	"gradient": {{"pressure", "÷", "length"}},
	"speed":    {{"length", "÷", "time"}, {"flow", "÷", "area"}},
	"mass":     {},
}

var dimensions = []string{"length", "area", "volume", "time", "flow", "pressure", "mass", "force", "energy", "power", "gradient", "speed"}

// writer makes random expressions of a dimension; "" is a plain number.
type writer struct{ rng *rand.Rand }

func (w writer) one(list []string) string { return list[w.rng.IntN(len(list))] }

func (w writer) literal(dim string) pair {
	text := fmt.Sprintf("%.*f", w.rng.IntN(4), 0.5+math.Pow(10, 3*w.rng.Float64()))
	if dim == "" {
		return pair{text, text}
	}
	units := theirUnits[dim]
	u := units[w.rng.IntN(len(units))]
	return pair{text + " " + u[0], "(" + text + " " + u[1] + ")"}
}

func (w writer) join(a pair, op string, b pair) pair {
	switch op {
	case "×":
		return pair{a.ours + " " + w.one([]string{"x", "×", "*", "·"}) + " " + b.ours, a.theirs + " * " + b.theirs}
	case "÷":
		return pair{a.ours + " " + w.one([]string{"/", "÷"}) + " " + b.ours, a.theirs + " / " + b.theirs}
	}
	return pair{a.ours + " " + op + " " + b.ours, a.theirs + " " + op + " " + b.theirs}
}

func call(name, theirs string, args ...pair) pair {
	var a, b []string
	for _, p := range args {
		a, b = append(a, p.ours), append(b, p.theirs)
	}
	return pair{name + "(" + strings.Join(a, ", ") + ")", theirs + "(" + strings.Join(b, ", ") + ")"}
}

func bracket(p pair) pair { return pair{"(" + p.ours + ")", "(" + p.theirs + ")"} }

// sum, term and factor follow the ranks of the operations, so that brackets
// stand only where they are drawn, and the ranks themselves are compared.
func (w writer) sum(dim string, depth int) pair {
	p := w.term(dim, depth)
	if w.rng.IntN(8) == 0 {
		p = pair{"-" + p.ours, "-" + p.theirs}
	}
	for range w.rng.IntN(3) {
		p = w.join(p, w.one([]string{"+", "-"}), w.term(dim, depth))
	}
	return p
}

func (w writer) term(dim string, depth int) pair {
	ways := made[dim]
	if depth <= 0 {
		return w.literal(dim)
	}
	switch w.rng.IntN(6) {
	case 0:
		return w.join(w.factor(dim, depth-1), w.one([]string{"×", "÷"}), w.factor("", depth-1))
	case 1:
		return w.join(w.factor("", depth-1), "×", w.factor(dim, depth-1))
	case 2:
		if dim == "" {
			other := w.one(dimensions)
			return w.join(w.factor(other, depth-1), "÷", w.factor(other, depth-1))
		}
	case 3:
		if len(ways) > 0 {
			way := ways[w.rng.IntN(len(ways))]
			return w.join(w.factor(way[0], depth-1), way[1], w.factor(way[2], depth-1))
		}
	}
	return w.factor(dim, depth)
}

func (w writer) factor(dim string, depth int) pair {
	if depth <= 0 {
		return w.literal(dim)
	}
	switch w.rng.IntN(9) {
	case 0:
		return call("min", "min", w.sum(dim, depth-1), w.sum(dim, depth-1))
	case 1:
		return call("max", "max", w.sum(dim, depth-1), w.sum(dim, depth-1))
	case 2:
		return call("abs", "abs", w.sum(dim, depth-1))
	case 3, 4:
		return bracket(w.sum(dim, depth-1))
	case 5:
		if dim == "length" {
			return call("sqrt", "sqrt", call("abs", "abs", w.sum("area", depth-1)))
		}
		if dim == "area" {
			l := bracket(w.sum("length", depth-1))
			return pair{l.ours + w.one([]string{"^2", "²"}), l.theirs + "^2"}
		}
		if dim == "" {
			return w.plain(depth)
		}
	}
	return w.literal(dim)
}

// plain is a number by what only numbers take.
func (w writer) plain(depth int) pair {
	inner := w.sum("", depth-1)
	switch w.rng.IntN(7) {
	case 0:
		return call("roundup", "ceil", inner)
	case 1:
		return call("rounddown", "floor", inner)
	case 2:
		return call("round", "round", call("abs", "abs", inner))
	case 3:
		return pair{"sin(" + inner.ours + ")", "sin((" + inner.theirs + ") deg)"}
	case 4:
		p := w.literal("")
		return pair{p.ours + " %", "(" + p.theirs + " / 100)"}
	case 5:
		p := w.literal("")
		return pair{p.ours + "^" + "1.852", p.theirs + "^1.852"}
	}
	return call("sqrt", "sqrt", call("abs", "abs", inner))
}

// answers puts expressions to mathjs; false where it is not there.
func answers(t *testing.T, pairs []pair) ([]struct {
	SI      float64
	Refused string
}, bool) {
	t.Helper()
	const home = "../../testdata/npm"
	if _, err := os.Stat(home + "/node_modules/mathjs/package.json"); err != nil {
		return nil, false
	}
	node, err := exec.LookPath("node")
	if err != nil {
		return nil, false
	}
	var in, out bytes.Buffer
	for _, p := range pairs {
		in.WriteString(p.theirs + "\n")
	}
	cmd := exec.Command(node, "evaluate.mjs")
	cmd.Dir, cmd.Stdin, cmd.Stdout, cmd.Stderr = home, &in, &out, os.Stderr
	require.NoError(t, cmd.Run())
	list := make([]struct {
		SI      float64
		Refused string
	}, 0, len(pairs))
	for lines := bufio.NewScanner(&out); lines.Scan(); {
		var a struct {
			SI      float64
			Refused string
		}
		require.NoError(t, json.Unmarshal(lines.Bytes(), &a))
		list = append(list, a)
	}
	require.Len(t, list, len(pairs))
	return list, true
}

// Outside check: mathjs, pinned in testdata/npm. Random expressions
// with units are worked out by both, and sums of unlike things are refused by
// both. mathjs writes psi and hp as decimals, which part from their definitions
// by 1e-10; a difference of near numbers makes that more.
func TestExpressionsAgainstMathjs(t *testing.T) {
	w := writer{rand.New(rand.NewPCG(7, 7))}
	var pairs []pair
	runs := 3000
	if testing.Short() {
		runs = 300
	}
	for range runs {
		dim := append(dimensions, "")[w.rng.IntN(len(dimensions)+1)]
		pairs = append(pairs, w.sum(dim, 1+w.rng.IntN(4)))
	}
	good := len(pairs)
	for range runs / 8 {
		at := w.rng.IntN(len(dimensions))
		other := dimensions[(at+1+w.rng.IntN(len(dimensions)-1))%len(dimensions)]
		pairs = append(pairs, w.join(w.term(dimensions[at], 2), w.one([]string{"+", "-"}), w.term(other, 2)))
	}
	theirs, ok := answers(t, pairs)
	if !ok {
		t.Log("node or mathjs is not there, so expressions are not compared: make test installs mathjs where node and npm are on the path")
		return
	}
	worst, compared, refused := 0.0, 0, 0
	for i, p := range pairs {
		e, err := formula.Parse(p.ours)
		require.NoError(t, err, p.ours)
		got, err := e.Check(func(string) (unit.Quantity, bool) { return unit.Quantity{}, false })
		if i >= good {
			assert.Error(t, err, p.ours)
			assert.NotEmpty(t, theirs[i].Refused, p.theirs)
			refused++
			continue
		}
		require.NoError(t, err, p.ours)
		if math.IsNaN(got.SI()) || theirs[i].Refused != "" {
			assert.True(t, math.IsNaN(got.SI()) && theirs[i].Refused != "", "%s gave %v, %s gave %+v", p.ours, got.SI(), p.theirs, theirs[i])
			continue
		}
		compared++
		d := math.Abs(got.SI()-theirs[i].SI) / math.Max(math.Abs(theirs[i].SI), 1e-12)
		worst = max(worst, d)
		assert.Less(t, d, 1e-7, "%s = %v, %s = %v", p.ours, got.SI(), p.theirs, theirs[i].SI)
	}
	t.Logf("%d expressions compared, the worst within %.1g; %d sums of unlike things refused by both", compared, worst, refused)
}
