package formula_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// env gives the letters and a few names values, in the order of slots.
var (
	slots  = []string{"a", "b", "c", "street", "residual", "gamma", "level", "floor_height", "reach", "length", "limit", "storeys", "x1"}
	values = []float64{2, 3, 5, 62, 25, 0.433, 12, 10, 85.45, 110, 100, 4, 7}
)

func slot(name string) int {
	for i, s := range slots {
		if s == name {
			return i
		}
	}
	return -1
}

// double is a supplied function, rising.
var double = formula.Func{Name: "double", Arity: 1, Eval: func(a []float64) float64 { return 2 * a[0] }}

var withDouble = formula.Options{Funcs: []formula.Func{double}}

var evalRows = []struct {
	text   string
	want   float64
	source string
}{
	{"2 + 3 x 4", 14, "2 + 3 x 4"},
	{"(2 + 3) x 4", 20, "(2 + 3) x 4"},
	{"2 - 3 - 4", -5, "2 - 3 - 4"},
	{"2 - (3 - 4)", 3, "2 - (3 - 4)"},
	{"16 / 4 / 2", 2, "16 / 4 / 2"},
	{"16 / (4 / 2)", 8, "16 / (4 / 2)"},
	{"2^3^2", 512, "2^3^2"},
	{"(2^3)^2", 64, "(2^3)^2"},
	{"-2^2", -4, "-2^2"},
	{"(-2)²", 4, "(-2)^2"},
	{"2**3", 8, "2^3"},
	{"2³", 8, "2^3"},
	{"2^-1", 0.5, "2^-1"},
	{"3 - -2", 5, "3 - -2"},
	{"+3 − 2", 1, "3 - 2"},
	{"0.433x96", 41.568, "0.433 x 96"},
	{"0.433 X 96", 41.568, "0.433 x 96"},
	{"2 × 3 · 4 * 5 ÷ 6", 20, "2 x 3 x 4 x 5 / 6"},
	{"2 x x1", 14, "2 x x1"},
	{"a x b", 6, "a x b"},
	{"2(3+4)", 14, "2 x (3 + 4)"},
	{"(1+2)(3+4)", 21, "(1 + 2) x (3 + 4)"},
	{"[2 + {3}] x 4", 20, "(2 + 3) x 4"},
	{"√16 + √(9)", 7, "sqrt(16) + sqrt(9)"},
	{"root(80/20)", 2, "sqrt(80 / 20)"},
	{"Sqrt(2,25)", 1.5, "sqrt(2.25)"},
	{"roundup(12.1)", 13, "roundup(12.1)"},
	{"roundup(12.0000000001)", 12, "roundup(12.0000000001)"},
	{"rounddown(11.9999999999)", 12, "rounddown(11.9999999999)"},
	{"rounddown(12.9)", 12, "rounddown(12.9)"},
	{"round(12.5)", 13, "round(12.5)"},
	{"min(3, 2, 4)", 2, "min(3; 2; 4)"},
	{"max(3; 2,5)", 3, "max(3; 2.5)"},
	{"abs(2 - 5)", 3, "abs(2 - 5)"},
	{"sin(30)", 0.5, "sin(30)"},
	{"cos(60°)", 0.5, "cos(60 °)"},
	{"π", math.Pi, "pi"},
	{"pi x 2²", 4 * math.Pi, "pi x 2^2"},
	{"85% x 200", 170, "85% x 200"},
	{"(80 + 5)%", 0.85, "(80 + 5)%"},
	{"3 > 2", 1, "3 > 2"},
	{"3 ≤ 2", 0, "3 <= 2"},
	{"0.1 + 0.2 > 0.3", 0, "0.1 + 0.2 > 0.3"},
	{"0.1 + 0.2 >= 0.3", 1, "0.1 + 0.2 >= 0.3"},
	{"3 > 2 and 1 > 2 or 5 < 6", 1, "3 > 2 and 1 > 2 or 5 < 6"},
	{"3 > 2 and (1 > 2 or 5 < 6)", 1, "3 > 2 and (1 > 2 or 5 < 6)"},
	{"1,200 + 1", 1201, "1200 + 1"},
	{"96 100 / 100", 961, "96100 / 100"},
	{"28.000,5", 28000.5, "28000.5"},
	{"8'-10\" x 12", 106, "8'-10\" x 12"},
	{"1 1/4 in + 3/4 in", 2, "1 1/4 in + 3/4 in"},
	{"0.433 psi/ft x 96 ft", 41.568, "0.433 psi/ft x 96 ft"},
	{"62 psi/0.433", 62 / 0.433, "62 psi / 0.433"},
	{"(4 in)^2", 16, "(4 in)^2"},
	{"$120 + $5", 125, "$120 + $5"},
	{"double(3) + 1", 7, "double(3) + 1"},
	{"(street - residual) / gamma", 37 / 0.433, "(street - residual) / gamma"},
	{"(level - 2) x floor_height", 100, "(level - 2) x floor_height"},
	{"roundup(reach / floor_height)", 9, "roundup(reach / floor_height)"},
	{"length > limit or storeys > 4", 1, "length > limit or storeys > 4"},
	{"1/0", math.NaN(), "1 / 0"},
	{"1/(1/0)", math.NaN(), "1 / (1 / 0)"},
	{"√(2 - 3)", math.NaN(), "sqrt(2 - 3)"},
	{"10^99 x 10^99 x 10^99 x 10^99", math.NaN(), "10^99 x 10^99 x 10^99 x 10^99"},
	{"√(2 - 3) > 1", math.NaN(), "sqrt(2 - 3) > 1"},
}

func TestParseAndEval(t *testing.T) {
	for _, row := range evalRows {
		e, err := formula.ParseWith(row.text, withDouble)
		require.NoError(t, err, row.text)
		assert.Equal(t, row.source, e.Source(), row.text)
		b, err := e.Bind(slot)
		require.NoError(t, err, row.text)
		got := b.Eval(values)
		if math.IsNaN(row.want) {
			assert.True(t, math.IsNaN(got), row.text)
		} else {
			assert.InDelta(t, row.want, got, 1e-9, row.text)
		}
	}
}

var faultRows = []struct{ text, want string }{
	{"", "a number or a name was expected, but the line ends"},
	{"62 -", `after "62 -" a number or a name was expected, but the line ends`},
	{"62 - )", `after "62 -" a number or a name was expected, but ")" was read`},
	{"62 - 4 foo", `after "62 - 4" an operation or the end was expected, but "foo" was read`},
	{"(62 - 4", `the bracket before "62 - 4" is not closed`},
	{"(62 - 4]", `after "(62 - 4" an operation or ")" was expected, but "]" was read`},
	{"foo(3)", `"foo" stands before a bracket, but there is no such function`},
	{"sqrt(3; 4)", `"sqrt" takes one number, and 2 numbers stand in its brackets`},
	{"min(3)", `"min" takes two or more numbers, and one number stands in its brackets`},
	{"1.2.3", `"1.2.3" was read where a number with one decimal point was expected`},
	{"a b", `after "a" an operation or the end was expected, but "b" was read`},
	{"1 < 2 < 3", `after "1 < 2" an operation or the end was expected, but "<" was read`},
	{strings.Repeat("(", 101) + "1" + strings.Repeat(")", 101), "brackets, signs and powers may stand in each other 100 deep, and here are more"},
	{strings.Repeat("1+", 1200) + "1", "an expression may have at most 2,000 bytes, and this one is longer"},
	{strings.Repeat("a+", 900) + "a", "an expression may have at most 1,000 parts, and this one has more"},
}

func TestFaultsAreSaidInOneSentence(t *testing.T) {
	for _, row := range faultRows {
		_, err := formula.Parse(row.text)
		var fault *formula.Error
		require.ErrorAs(t, err, &fault, row.text)
		assert.Equal(t, row.want, fault.Error())
		assert.LessOrEqual(t, fault.Pos, len(row.text))
	}
}

func TestNamesInOrder(t *testing.T) {
	e, err := formula.Parse("below + ground + (level - 2) x floor_height + ground")
	require.NoError(t, err)
	assert.Equal(t, []string{"below", "ground", "level", "floor_height"}, e.Names())
	_, err = e.Bind(func(name string) int { return strings.Index("below ground level", name) })
	assert.EqualError(t, err, `"floor_height" was read where a known name was expected`)
	_, ok := e.EvalPlain()
	assert.False(t, ok)
}

// randomTree writes a random expression with brackets wherever they may be.
func randomTree(r *rand.Rand, depth int) string {
	if depth == 0 || r.IntN(5) == 0 {
		leaves := []string{"a", "b", "c", "2", "0.433", "1,200", "20,4", "3 psi", "62 psi/ft", "8'-10\"", "1 1/4 in", "pi", "$5", "4 in", "28000", "1.2e3"}
		return leaves[r.IntN(len(leaves))]
	}
	sub := func() string { return "(" + randomTree(r, depth-1) + ")" }
	switch r.IntN(12) {
	case 0:
		return "-" + sub()
	case 1:
		return sub() + "%"
	case 2:
		return "√" + sub()
	case 3:
		return "max(" + sub() + ", " + sub() + ", " + sub() + ")"
	case 4:
		return "roundup" + sub()
	case 5:
		return sub() + "^" + sub()
	case 6:
		return sub() + "²"
	case 7:
		return "double" + sub()
	}
	ops := []string{"+", "-", "x", "/", ">", "<=", "or", "and", "×", "÷"}
	return sub() + " " + ops[r.IntN(len(ops))] + " " + sub()
}

func TestSourceAndTextReadBack(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 5000 {
		text := randomTree(r, 1+r.IntN(4))
		if len(text) > 500 {
			continue
		}
		e, err := formula.ParseWith(text, withDouble)
		require.NoError(t, err, text)
		for _, printed := range []string{e.Source(), e.Text()} {
			again, err := formula.ParseWith(printed, withDouble)
			require.NoError(t, err, "%s from %s", printed, text)
			require.True(t, e.Equal(again), "%s from %s", printed, text)
		}
	}
}

func TestIntervalHoldsEveryValue(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	finite := 0
	for range 20000 {
		text := randomTree(r, 1+r.IntN(4))
		if len(text) > 500 {
			continue
		}
		e, err := formula.ParseWith(text, withDouble)
		require.NoError(t, err)
		b, err := e.Bind(slot)
		require.NoError(t, err)
		env, point := make([]formula.Interval, 3), make([]float64, 3)
		for i := range env {
			env[i] = formula.Around(r.NormFloat64()*10, r.Float64()*3)
		}
		bounds, span := b.Interval(env), b.Span(env)
		require.LessOrEqual(t, bounds.Lo, bounds.Hi, text)
		if !math.IsInf(bounds.Width(), 0) {
			finite++
		}
		for range 20 {
			for i := range point {
				point[i] = env[i].Lo + r.Float64()*env[i].Width()
				if r.IntN(4) == 0 {
					point[i] = env[i].Lo
				}
			}
			v := b.Eval(point)
			require.False(t, math.IsInf(v, 0), text)
			if math.IsNaN(v) {
				continue
			}
			require.True(t, bounds.Contains(v), "%s: %v in %v for %v", text, v, bounds, point)
			require.True(t, span.Contains(v), text)
		}
	}
	assert.Greater(t, finite, 5000, "bounds that say something")
}

func TestIntervals(t *testing.T) {
	env := []formula.Interval{{Lo: 1, Hi: 2}, {Lo: -1, Hi: 1}, {Lo: 3, Hi: 4}}
	inf := math.Inf(1)
	for _, row := range []struct {
		text string
		want formula.Interval
	}{
		{"a + c", formula.Interval{Lo: 4, Hi: 6}}, {"a - c", formula.Interval{Lo: -3, Hi: -1}}, {"a x b", formula.Interval{Lo: -2, Hi: 2}},
		{"c / a", formula.Interval{Lo: 1.5, Hi: 4}}, {"a / b", formula.Interval{Lo: -inf, Hi: inf}}, {"abs(b)", formula.Interval{Lo: 0, Hi: 1}},
		{"roundup(a / c)", formula.Interval{Lo: 1, Hi: 1}}, {"rounddown(c)", formula.Interval{Lo: 3, Hi: 4}}, {"√b", formula.Interval{Lo: 0, Hi: 1}},
		{"a > c", formula.Interval{Lo: 0, Hi: 0}}, {"c > a", formula.Interval{Lo: 1, Hi: 1}}, {"a > b", formula.Interval{Lo: 0, Hi: 1}}, {"a >= b", formula.Interval{Lo: 1, Hi: 1}},
		{"c > a and b > 0", formula.Interval{Lo: 0, Hi: 1}}, {"c > a or b > 0", formula.Interval{Lo: 1, Hi: 1}}, {"min(a, b)", formula.Interval{Lo: -1, Hi: 1}},
		{"double(c)", formula.Interval{Lo: 6, Hi: 8}}, {"√(0 - c)", formula.Interval{Lo: -inf, Hi: inf}},
	} {
		e, err := formula.ParseWith(row.text, withDouble)
		require.NoError(t, err)
		b, err := e.Bind(slot)
		require.NoError(t, err)
		assert.Equal(t, row.want, b.Interval(env), row.text)
	}
	assert.Equal(t, formula.Interval{Lo: -1, Hi: 4}, formula.Hull(env[1], env[2]))
}

func TestSpanOfWrittenNumbers(t *testing.T) {
	for _, row := range []struct {
		text       string
		value, own float64
	}{{"665 - 516.987", 148.013, 0.0005}, {"62 - 41.6", 20.4, 0}, {"665 - 517.0", 148, 0.05}, {"3960 x 2", 7920, 0}, {"1714 + 1", 1715, 0.5}} {
		e, err := formula.Parse(row.text)
		require.NoError(t, err)
		b, err := e.Bind(slot)
		require.NoError(t, err)
		got := b.Span(nil)
		assert.InDelta(t, row.value-row.own, got.Lo, 1e-9, row.text)
		assert.InDelta(t, row.value+row.own, got.Hi, 1e-9, row.text)
	}
}

func TestEvalDoesNotAllocate(t *testing.T) {
	e, err := formula.Parse("max(0, (street - residual) / gamma - roundup(level) x floor_height) > 3 or a^2 > sin(b)")
	require.NoError(t, err)
	b, err := e.Bind(slot)
	require.NoError(t, err)
	env := make([]formula.Interval, len(values))
	for i, v := range values {
		env[i] = formula.Around(v, 0.01)
	}
	assert.Zero(t, testing.AllocsPerRun(100, func() { b.Eval(values); b.Interval(env) }))
}

func FuzzParse(f *testing.F) {
	for _, row := range evalRows {
		f.Add(row.text)
	}
	for _, row := range faultRows {
		f.Add(row.text)
	}
	f.Add("0psi*\"3")
	f.Add("2 psi·in^3")
	f.Add("0A*h2")
	f.Fuzz(func(t *testing.T, text string) {
		for _, comma := range []bool{false, true} {
			opt := withDouble
			opt.DecimalComma = comma
			e, err := formula.ParseWith(text, opt)
			if err != nil {
				require.NotEmpty(t, err.Error())
				return
			}
			source := e.Source()
			if len(source) <= 1000 {
				again, err := formula.ParseWith(source, withDouble)
				require.NoError(t, err, "%q from %q", source, text)
				require.True(t, e.Equal(again), "%q from %q", source, text)
			}
			e.Text()
			e.MathML(nil)
			zero := func(string) int { return 0 }
			b, err := e.Bind(zero)
			require.NoError(t, err)
			v, i := b.Eval([]float64{2}), b.Interval([]formula.Interval{{Lo: 1, Hi: 3}})
			require.False(t, math.IsInf(v, 0))
			require.LessOrEqual(t, i.Lo, i.Hi)
			require.True(t, math.IsNaN(v) || i.Contains(v), "%q: %v in %v", text, v, i)
			_, err = e.Check(func(string) (unit.Quantity, bool) { return unit.Number.Of(2), true })
			if err != nil {
				require.NotEmpty(t, err.Error())
			}
		}
	})
}
