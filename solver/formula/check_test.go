package formula_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// quantities are the names of the rows below.
var quantities = map[string]string{
	"street": "62 psi", "residual": "25 psi", "gamma": "0.433 psi/ft", "height": "96 ft", "floors": "12",
	"hot": "140 °F", "cold": "40 °F", "mixed": "110 °F", "store": "60 °C", "rise": "100 F°",
	"q1": "3 gpm", "q2": "2 gpm", "p1": "20 psi", "p2": "80 psi", "volume": "100 US gal", "d": "2 in",
}

func given(t *testing.T) func(string) (unit.Quantity, bool) {
	return func(name string) (unit.Quantity, bool) {
		text, ok := quantities[name]
		if !ok {
			return unit.Quantity{}, false
		}
		q, err := unit.Read(text)
		require.NoError(t, err)
		return q, true
	}
}

// curve is a supplied function with dimensions: fixture units to a flow.
var curve = formula.Func{
	Name: "demand", Arity: 1,
	Eval: func(a []float64) float64 { return a[0] / 2 },
	Dims: func(a []unit.Quantity) (unit.Quantity, error) {
		wsfu, _ := unit.Match("wsfu")
		gpm, _ := unit.Match("gpm")
		if a[0].Unit.Dim != wsfu.Dim {
			return unit.Quantity{}, errors.New("fixture units were expected")
		}
		return gpm.Of(a[0].Value / 2), nil
	},
}

func TestCheck(t *testing.T) {
	opt := formula.Options{Funcs: []formula.Func{curve, double}}
	for _, row := range []struct{ text, want string }{
		{"street - gamma x height", "20.432 psi"},
		{"(street - residual) / gamma", "85.4503 ft"},
		{"62 psi - 0.433 psi/ft x 96 ft", "20.432 psi"},
		{"gamma x 8'-10\"", "3.82483 psi"},
		{"max(0, residual - street)", "0 psi"},
		{"0 + street", "62 psi"},
		{"roundup(height / 10 ft)", "10"},
		{"street > residual and floors < 13", "1"},
		{"√(p2 / p1) x q1", "6 gpm"},
		{"q1 x (p2/p1)^0.5", "6 gpm"},
		{"85% x volume", "85 US gal"},
		{"π / 4 x d²", "3.14159 in²"},
		{"√(d²)", "2 in"},
		{"2^floors", "4096"},
		{"abs(residual - street)", "37 psi"},
		{"hot - cold", "100 F°"},
		{"hot - rise", "40 °F"},
		{"hot - (hot - cold) / 4", "115 °F"},
		{"(mixed - cold) / (hot - cold)", "0.7"},
		{"(q1 x hot + q2 x cold) / (q1 + q2)", "100 °F"},
		{"(hot + cold) / 2", "90 °F"},
		{"50% x hot + 50% x cold", "90 °F"},
		{"cold + 70% x (hot - cold)", "110 °F"},
		{"max(hot, store)", "140 °F"},
		{"hot > cold", "1"},
		{"8.33 Btu/(gal·°F) x volume x (hot - cold)", "83300 Btu"},
		{"demand(100 fu)", "50 gpm"},
		{"double(3)", "6"},
		{"sin(30°)", "0.5"},
	} {
		e, err := formula.ParseWith(row.text, opt)
		require.NoError(t, err, row.text)
		got, err := e.Check(given(t))
		require.NoError(t, err, row.text)
		want, err := unit.Read(row.want)
		require.NoError(t, err)
		assert.Equal(t, want.Unit.Dim, got.Unit.Dim, row.text)
		assert.Equal(t, want.Unit.Zero == unit.Scale, got.Unit.Zero == unit.Scale, row.text)
		assert.Equal(t, 1.0, got.Unit.Factor, row.text)
		assert.InDelta(t, want.SI(), got.SI(), 2e-6*math.Abs(want.SI())+1e-9, row.text)
	}
}

func TestCheckFindsFaults(t *testing.T) {
	opt := formula.Options{Funcs: []formula.Func{curve, double}}
	for _, row := range []struct{ text, want string }{
		{"street - height", "street is a pressure, height is a length: they cannot be subtracted"},
		{"street + gamma / height", "street is a pressure, gamma / height is length^-3 mass time^-2: they cannot be added"},
		{"street > height", "street is a pressure, height is a length: they cannot be compared"},
		{"max(street, height)", "street is a pressure, height is a length: they cannot be compared"},
		{"street + 5", "street is a pressure, 5 is a plain number: they cannot be added"},
		{"roundup(street)", `"roundup(street)" was given a pressure; a plain number was expected`},
		{"√(street)", `"√(street)" takes the root of a pressure; a ratio was expected`},
		{"(street / 2)^0.54", `"(street / 2)^0.54" takes a power of a pressure that is no quantity; a ratio was expected`},
		{"2^street", `"2^street" has a pressure as exponent; a plain number was expected`},
		{"hot + cold", `"hot + cold" adds up temperatures that are points on a scale; a difference or a weighted mean was expected`},
		{"q1 x hot", `"q1 × hot" adds up temperatures that are points on a scale; a difference or a weighted mean was expected`},
		{"8.33 x volume x hot", `"8.33 × volume × hot" adds up temperatures that are points on a scale; a difference or a weighted mean was expected`},
		{"hot x cold", `"hot × cold" multiplies two temperatures on a scale; a difference was expected`},
		{"volume / hot", `"volume / hot" divides by a temperature on a scale; a difference was expected`},
		{"hot > rise", `"hot > rise" compares a temperature on a scale with a difference`},
		{"√hot", `"√(hot)" takes a temperature on a scale; a difference or a plain number was expected`},
		{"street and height", `"street and height" joins something that is neither true nor false`},
		{"height^41", `"height^41" takes a power of a length that is no quantity; a ratio was expected`},
		{"height^30 x height^30", `"height^30 × height^30" reaches a power that no quantity has`},
		{"street - foo", `"foo" was read where a known name was expected`},
		{"demand(street)", `"demand(street)" does not fit: fixture units were expected`},
		{"double(street)", `"double(street)" was given a pressure; a plain number was expected`},
	} {
		e, err := formula.ParseWith(row.text, opt)
		require.NoError(t, err, row.text)
		_, err = e.Check(given(t))
		assert.EqualError(t, err, row.want, row.text)
	}
}

// With coherent units, here psi, ft and psi/ft, the plain value times the
// unit's factor is the value in SI.
func TestCheckAgreesWithEval(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	units := map[string]string{"a": "psi", "b": "psi", "c": "psi/ft", "street": "ft", "residual": "ft"}
	psi, err := unit.Parse("psi")
	require.NoError(t, err)
	for _, text := range []string{"a - b", "a - c x street", "a + c x (street - residual)", "a x (street / residual)^2", "max(a; b) - abs(b - c x street)", "(a - b) / c x c x roundup(street / residual)", "√(a x b) + 20% x a"} {
		e, err := formula.Parse(text)
		require.NoError(t, err)
		b, err := e.Bind(slot)
		require.NoError(t, err)
		for range 200 {
			env := make([]float64, len(slots))
			for i := range env {
				env[i] = 1 + 99*r.Float64()
			}
			got, err := e.Check(func(name string) (unit.Quantity, bool) {
				u, err := unit.Parse(units[name])
				require.NoError(t, err)
				return u.Of(env[slot(name)]), true
			})
			require.NoError(t, err, text)
			want := b.Eval(env) * psi.Factor
			assert.InDelta(t, want, got.SI(), 1e-9*(math.Abs(want)+1e6), text)
		}
	}
}
