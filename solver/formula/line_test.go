package formula_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver/formula"
)

var known = map[string]bool{"street": true, "gamma": true, "h": true, "street_pressure": true, "lost": true, "reach": true}

var lineOptions = formula.Options{Names: func(name string) bool { return known[name] }}

const none = -1e9 // the row's line has no value

// lineRows are lines with what is read of them: the last expression, the
// value, its unit, the label and the words left over.
var lineRows = []struct {
	text  string
	expr  string
	value float64
	unit  string
	label string
	words string
}{
	{"62 - 0.433 x 96 = 20.4 psi", "62 - 0.433 x 96", 20.4, "psi", "", ""},
	{"62 psi - 0.433 psi/ft × 96 ft ≈ 20.4 psi.", "62 psi - 0.433 psi/ft x 96 ft", 20.4, "psi", "", ""},
	{"h = 37/0.433", "37 / 0.433", none, "", "h", ""},
	{"h = 37/0.433 = 85.5 ft", "37 / 0.433", 85.5, "ft", "h", ""},
	{"= 85.5 ft", "", 85.5, "ft", "", ""},
	{"~ 85 ft", "", 85, "ft", "", ""},
	{"85.5", "", 85.5, "", "", ""},
	{"-3.5 psi", "", -3.5, "psi", "", ""},
	{"85%", "", 85, "%", "", ""},
	{"$1,200", "", 1200, "$", "", ""},
	{"pressure lost: 41.6 psi", "", 41.6, "psi", "pressure lost", ""},
	{"step 2: 41.6 psi", "", 41.6, "psi", "step 2", ""},
	{"level 12 = 20.4 psi", "", 20.4, "psi", "level 12", ""},
	{"low-zone = 20 psi", "", 20, "psi", "low-zone", ""},
	{"so 41.6 psi at the top", "", 41.6, "psi", "so", "at the top"},
	{"lost 41.6 psi", "", 41.6, "psi", "lost", ""},
	{"reach is 85.5 ft", "", 85.5, "ft", "reach is", ""},
	{"41.6 in the riser", "", 41.6, "", "", "in the riser"},
	{"20.4 psi at floor 12", "", 20.4, "psi", "", "at floor 12"},
	{"P = 62 psi - 41.6 psi = 20.4 psi", "62 psi - 41.6 psi", 20.4, "psi", "P", ""},
	{"62 - 41.6 -> 20.4psi", "62 - 41.6", 20.4, "psi", "", ""},
	{"(62 - 41.6) psi", "62 - 41.6", none, "psi", "", ""},
	{"37/0.433 ft", "37 / 0.433", none, "ft", "", ""},
	{"62 - 41.6 = 20.4 psi = 47.1 ft", "62 - 41.6", 47.1, "ft", "", ""},
	{`8'-10" x 12 = 106 ft`, `8'-10" x 12`, 106, "ft", "", ""},
	{"8 ft 10 in", "", 8 + 10.0/12, "ft", "", ""},
	{"1 1/4 in", "", 1.25, "in", "", ""},
	{"28.000,5", "", 28000.5, "", "", ""},
	{"37 ÷ .433 = 85,5 ft", "37 / .433", 85.5, "ft", "", ""},
	{"2 floors", "", 2, "", "", "floors"},
	{"12th floor", "", 12, "", "", "floor"},
	{"11 floors x 10 ft = 110 ft", "11 x 10", 110, "ft", "", ""},
	{"(12 floors - 1) x 10 = 110 ft", "(12 - 1) x 10", 110, "ft", "", ""},
	{"Street Pressure - gamma * h = 20.4", "street_pressure - gamma x h", 20.4, "", "", ""},
	{"street - γ x 96", "street - gamma x 96", none, "", "", ""},
	{"20.4 psi ✓", "", 20.4, "psi", "", ""},
	{"street_pressure - lost", "street_pressure - lost", none, "", "", ""},
	{"62 psi/h", "62 psi / h", none, "", "", ""},
	{"h x 0.433 = 41.6", "h x 0.433", 41.6, "", "", ""},
	{"2.5 x sqrt(25/80) = 1.4 gpm", "2.5 x sqrt(25 / 80)", 1.4, "gpm", "", ""},
	{"2.5 √(25/80) x 1", "", none, "", "", "fault"},
	{"62 - 0.433 foo 96", "", none, "", "", "fault"},
	{"62 - foo", "", none, "", "", "fault"},
	{"62 -", "", none, "", "", "fault"},
	{"62 96 psi x", "", none, "", "", "fault"},
	{"20.4 psi 3", "", none, "", "", "fault"},
	{"floor", "", none, "", "", "fault"},
	{"", "", none, "", "", "fault"},
	{"=", "", none, "", "", "fault"},
	{"3:1", "", none, "", "", "fault"},
	{"62 & 3", "", none, "", "", "fault"},
}

func TestReadLine(t *testing.T) {
	for _, row := range lineRows {
		line, err := formula.ReadLine(row.text, lineOptions)
		if row.words == "fault" {
			var fault *formula.Error
			require.ErrorAs(t, err, &fault, row.text)
			assert.Contains(t, fault.Msg, "expected", row.text)
			continue
		}
		require.NoError(t, err, row.text)
		if row.expr == "" {
			assert.Empty(t, line.Exprs, row.text)
		} else if assert.NotEmpty(t, line.Exprs, row.text) {
			last := line.Exprs[len(line.Exprs)-1]
			assert.Equal(t, row.expr, last.Source(), row.text)
		}
		if row.value == none {
			assert.Nil(t, line.Value, row.text)
		} else if assert.NotNil(t, line.Value, row.text) {
			assert.InDelta(t, row.value, line.Value.Value, 1e-9, row.text)
		}
		assert.Equal(t, row.unit, line.Unit.Name, row.text)
		assert.Equal(t, row.unit != "", line.HasUnit, row.text)
		assert.Equal(t, row.label, line.Label, row.text)
		assert.Equal(t, row.words, strings.Join(line.Words, " "), row.text)
		assert.Empty(t, line.Choice, row.text)
		assert.False(t, line.Ambiguous && !strings.Contains(row.text, ","), row.text)
	}
}

func TestChoices(t *testing.T) {
	for text, want := range map[string]string{"yes": "yes", "Yes.": "yes", "Y": "yes", "no": "no", "No, it is not": "no", "n": "no", "62 psi > 20 psi, yes": "yes", "northern": "error", "62 > 20": ""} {
		line, err := formula.ReadLine(text, lineOptions)
		if want == "error" {
			assert.Error(t, err, text)
			continue
		}
		require.NoError(t, err, text)
		assert.Equal(t, want, line.Choice, text)
	}
}

func TestCommasOfALine(t *testing.T) {
	for _, row := range []struct {
		text      string
		comma     bool
		value     float64
		ambiguous bool
	}{
		{"1,234 L", false, 1234, true}, {"1,234 L", true, 1.234, true}, {"20,4 kPa", false, 20.4, false}, {"60 x 3,785 = 227,1 L", false, 227.1, true},
		{"1,234,567 L", true, 1234567, false},
	} {
		opt := lineOptions
		opt.DecimalComma = row.comma
		line, err := formula.ReadLine(row.text, opt)
		require.NoError(t, err)
		require.NotNil(t, line.Value)
		assert.InDelta(t, row.value, line.Value.Value, 1e-9, row.text)
		assert.Equal(t, row.ambiguous, line.Ambiguous, row.text)
	}
}

func TestImperialLine(t *testing.T) {
	opt := lineOptions
	opt.Imperial = true
	line, err := formula.ReadLine("20 gal", opt)
	require.NoError(t, err)
	assert.Equal(t, "imp gal", line.Unit.Name)
}

func TestNumeralsOfTheLastExpression(t *testing.T) {
	line, err := formula.ReadLine("62 - 25 = 37, 37 / 0.433", lineOptions)
	require.Error(t, err, "two lines in one")
	assert.Len(t, line.Numerals, 2)
	line, err = formula.ReadLine("62 - 25 = 37/1 = 85.50", lineOptions)
	require.NoError(t, err)
	assert.Len(t, line.Exprs, 2)
	require.Len(t, line.Numerals, 2)
	assert.Equal(t, "37", line.Numerals[0].Text)
	assert.InDelta(t, 0.005, line.Value.Half, 1e-12)
	v, ok := line.Exprs[0].EvalPlain()
	assert.True(t, ok)
	assert.InDelta(t, 37, v, 1e-12)
}

func TestLongLine(t *testing.T) {
	_, err := formula.ReadLine(strings.Repeat("1+", 300)+"1", lineOptions)
	assert.EqualError(t, err, "a line may have at most 400 bytes, and this one is longer")
}

func FuzzReadLine(f *testing.F) {
	for _, row := range lineRows {
		f.Add(row.text)
	}
	for _, row := range evalRows {
		f.Add(row.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, opt := range []formula.Options{{}, lineOptions, {DecimalComma: true, Imperial: true, Names: lineOptions.Names, Funcs: withDouble.Funcs}} {
			line, err := formula.ReadLine(text, opt)
			if err != nil {
				require.NotEmpty(t, err.Error())
				continue
			}
			require.True(t, line.Value != nil || len(line.Exprs) > 0 || line.Choice != "", text)
			if line.Value != nil {
				require.False(t, math.IsNaN(line.Value.Value) || math.IsInf(line.Value.Value, 0), text)
			}
			for _, e := range line.Exprs {
				v, ok := e.EvalPlain()
				require.Equal(t, ok, !math.IsNaN(v))
				require.NotEmpty(t, e.Text())
				_, err := e.Bind(func(name string) int {
					require.True(t, known[name], "%q in %q", name, text)
					return 0
				})
				require.NoError(t, err)
			}
		}
	})
}

func BenchmarkReadLine(b *testing.B) {
	for b.Loop() {
		if _, err := formula.ReadLine("62 psi - 0.433 psi/ft x 96 ft = 20.4 psi", lineOptions); err != nil {
			b.Fatal(err)
		}
	}
}
