package unit_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver/unit"
)

var numberRows = []struct {
	text    string
	value   float64
	half    float64
	figures int
	used    int // 0: all of it
	comma   bool
}{
	{"62", 62, 0.5, 2, 0, false},
	{"0.433", 0.433, 0.0005, 3, 0, false},
	{".433", 0.433, 0.0005, 3, 0, false},
	{"41.60", 41.6, 0.005, 4, 0, false},
	{"62. x", 62, 0.5, 2, 3, false},
	{"007", 7, 0.5, 1, 0, false},
	{"0", 0, 0.5, 1, 0, false},
	{"120", 120, 0.5, 3, 0, false},
	{"1200", 1200, 5, 3, 0, false},
	{"28000", 28000, 50, 3, 0, false},
	{"12340", 12340, 5, 4, 0, false},
	{"28000.", 28000, 0.5, 5, 0, false},
	{"1,200", 1200, 5, 3, 0, true},
	{"1,234", 1234, 0.5, 4, 0, true},
	{"1,234,567", 1234567, 0.5, 7, 0, false},
	{"1,234.5", 1234.5, 0.05, 5, 0, false},
	{"28.000,5", 28000.5, 0.05, 6, 0, false},
	{"1.234.567", 1234567, 0.5, 7, 0, false},
	{"96 100", 96100, 50, 3, 0, false},
	{"96 100 psi", 96100, 50, 3, 6, false},
	{"96\u2009100", 96100, 50, 3, 0, false},
	{"28 000,5", 28000.5, 0.05, 6, 0, false},
	{"1 234 567 L", 1234567, 0.5, 7, 9, false},
	{"96 10", 96, 0.5, 2, 2, false},
	{"1234 567", 1234, 0.5, 4, 4, false},
	{"0 433", 0, 0.5, 1, 1, false},
	{"20,4", 20.4, 0.05, 3, 0, false},
	{"0,433", 0.433, 0.0005, 3, 0, false},
	{",433", 0.433, 0.0005, 3, 0, false},
	{"12,3456", 12.3456, 0.00005, 6, 0, false},
	{"1.2e3", 1200, 50, 2, 0, false},
	{"6.3E-5 m3/s", 6.3e-5, 5e-7, 2, 6, false},
	{"2e", 2, 0.5, 1, 1, false},
	{"3 elbows", 3, 0.5, 1, 1, false},
	{"1 1/4 in", 1.25, 0.125, 3, 5, false},
	{"1 1/4", 1.25, 0.125, 3, 0, false},
	{`1-1/4"`, 1.25, 0.125, 3, 5, false},
	{"1-1/4 psi", 1, 0.5, 1, 1, false},
	{"3/4 in", 0.75, 0.125, 3, 3, false},
	{"3/4", 3, 0.5, 1, 1, false},
	{"37/64 psi", 37, 0.5, 2, 2, false},
	{"1 5/4", 1, 0.5, 1, 1, false},
	{"1 1/3", 1, 0.5, 1, 1, false},
	{"½", 0.5, 0.25, 3, 0, false},
	{"1½ in", 1.5, 0.25, 3, 3, false},
	{"1 ⅜", 1.375, 0.0625, 3, 0, false},
	{"x2", 0, 0, 0, -1, false},
	{"", 0, 0, 0, -1, false},
	{"1.2.3", 0, 0, 0, -1, false},
	{"1,23,456", 0, 0, 0, -1, false},
	{"62,5.3", 0, 0, 0, -1, false},
	{"11111111111111111111111111111111111111111", 0, 0, 0, -1, false},
}

func TestReadNumber(t *testing.T) {
	for _, row := range numberRows {
		got, used, err := unit.ReadNumber(row.text, false)
		if row.used < 0 {
			assert.Error(t, err, row.text)
			continue
		}
		require.NoError(t, err, row.text)
		want := row.used
		if want == 0 {
			want = len(row.text)
		}
		assert.Equal(t, want, used, row.text)
		assert.Equal(t, row.text[:used], got.Text)
		assert.InDelta(t, row.value, got.Value, 1e-12*math.Abs(row.value), row.text)
		assert.InEpsilon(t, row.half, got.Half, 1e-12, row.text)
		assert.Equal(t, row.figures, got.Figures, row.text)
		assert.Equal(t, row.comma, got.Comma, row.text)
		assert.True(t, got.Unit.IsNumber(), row.text)
	}
}

func TestDecimalComma(t *testing.T) {
	for _, row := range []struct {
		text  string
		value float64
		comma bool
	}{{"1,234", 1.234, true}, {"1,234,567", 1234567, false}, {"28.000,5", 28000.5, false}, {"0.433", 0.433, false}, {"20,4", 20.4, false}, {"1.234", 1.234, false}} {
		got, used, err := unit.ReadNumber(row.text, true)
		require.NoError(t, err, row.text)
		assert.Len(t, row.text, used)
		assert.InDelta(t, row.value, got.Value, 1e-12, row.text)
		assert.Equal(t, row.comma, got.Comma, row.text)
	}
}

func TestFeetAndInches(t *testing.T) {
	for _, row := range []struct {
		text string
		feet float64
		used int // 0: all of it
	}{
		{`8'-10"`, 8 + 10.0/12, 0}, {`8' 10"`, 8 + 10.0/12, 0}, {`8'10"`, 8 + 10.0/12, 0}, {`8' - 10"`, 8 + 10.0/12, 0},
		{"8′-10″", 8 + 10.0/12, 0}, {"8’-10”", 8 + 10.0/12, 0}, {"8'-10''", 8 + 10.0/12, 0}, {"8'-10", 8 + 10.0/12, 0}, {"8'10 x 12", 8 + 10.0/12, 4},
		{`8'10 1/2"`, 8.875, 0}, {`8'-10½"`, 8.875, 0}, {`8'-10-1/2"`, 8.875, 0}, {`8' 1/2"`, 8 + 0.5/12, 0}, {`0'-6"`, 0.5, 0},
		{"8 ft 10 in", 8 + 10.0/12, 0}, {"8ft10in", 8 + 10.0/12, 0}, {"8 feet 10 inches", 8 + 10.0/12, 0}, {"8 ft-10 in", 8 + 10.0/12, 0}, {"8 ft 10.5 in", 8.875, 0},
	} {
		got, used, err := unit.ReadNumber(row.text, false)
		require.NoError(t, err, row.text)
		want := row.used
		if want == 0 {
			want = len(row.text)
		}
		assert.Equal(t, want, used, row.text)
		assert.Equal(t, "ft", got.Unit.Name, row.text)
		assert.InDelta(t, row.feet, got.Value, 1e-12, row.text)
		assert.Equal(t, 3, got.Figures)
	}
	for _, text := range []string{`8'-14"`, "8 ft - 10 in", "8' - 2", "8'", "8 ft", "96'-2.31", "8 ft x 12", "8'/2"} {
		got, _, err := unit.ReadNumber(text, false)
		require.NoError(t, err, text)
		assert.True(t, got.Unit.IsNumber(), text)
		assert.Contains(t, []float64{8, 96}, got.Value, text)
	}
}

var readRows = []struct {
	text  string
	value float64
	unit  string
}{
	{"62 psi", 62, "psi"}, {".433 psi/ft", 0.433, "psi/ft"}, {"1,200 US gal", 1200, "US gal"}, {"20,4 kPa", 20.4, "kPa"},
	{`8'-10"`, 8 + 10.0/12, "ft"}, {"1 1/4 in", 1.25, "in"}, {`1 1/4"`, 1.25, "in"}, {"3/4 in.", 0.75, "in"},
	{"140 °F", 140, "°F"}, {"140F", 140, "°F"}, {"−5 °C", -5, "°C"}, {"-5 C", -5, "°C"}, {"85%", 85, "%"}, {"$1,200.50", 1200.5, "$"},
	{"0.15 $/kWh", 0.15, "$/kWh"}, {"  62\u00a0psi  ", 62, "psi"}, {"106", 106, ""}, {"101.3 kPa abs", 101.3, "kPa abs"}, {"5.3 psi per 100 ft", 5.3, "psi/100 ft"},
}

func TestRead(t *testing.T) {
	for _, row := range readRows {
		got, err := unit.Read(row.text)
		require.NoError(t, err, row.text)
		assert.InDelta(t, row.value, got.Value, 1e-12, row.text)
		assert.Equal(t, row.unit, got.Unit.Name, row.text)
	}
	for _, text := range []string{"", "psi", "62 parsec", "62 psi 3", "62 psi at the top", "--3", "$", "2 floors"} {
		_, err := unit.Read(text)
		assert.ErrorContains(t, err, "expected", text)
	}
	got, err := unit.ReadWith("1,234 gal", unit.Options{Imperial: true, DecimalComma: true})
	require.NoError(t, err)
	assert.Equal(t, "imp gal", got.Unit.Name)
	assert.InDelta(t, 1.234, got.Value, 1e-12)
}

func TestFormat(t *testing.T) {
	for _, row := range []struct {
		v       float64
		figures int
		want    string
	}{
		{41.568, 3, "41.6"}, {127.02, 3, "127"}, {1234.5, 3, "1,234"}, {1235.5, 3, "1,236"}, {199920, 3, "199,920"}, {39.98, 3, "40.0"}, {40, 3, "40"}, {40.5, 3, "40.5"},
		{0.433, 3, "0.433"}, {0.4335275, 3, "0.434"}, {9.9996, 3, "10.0"}, {999.6, 3, "1,000"}, {-13.25, 3, "−13.2"}, {0, 3, "0"}, {math.Copysign(0, -1), 3, "0"},
		{-0.0004, 3, "−0.0004"}, {9.8e-6, 2, "0.0000098"}, {1e20, 3, "1.00e+20"}, {math.NaN(), 3, "no value"}, {math.Inf(1), 3, "no value"}, {1234567.8, 9, "1,234,567.8"}, {2.5, 0, "2"},
	} {
		assert.Equal(t, row.want, unit.Format(row.v, row.figures), "%v", row.v)
	}
}

func TestText(t *testing.T) {
	for _, row := range []struct {
		text, want string
	}{
		{"41.568 psi", "41.6\u00a0psi"}, {"140 F", "140°F"}, {"85 %", "85%"}, {"$1200", "$1,200"}, {"-5 C", "−5°C"}, {"-3 $", "−$3"}, {"106", "106"}, {`8'-10"`, "8.83\u00a0ft"},
	} {
		q, err := unit.Read(row.text)
		require.NoError(t, err)
		assert.Equal(t, row.want, q.Text(3))
	}
	assert.Equal(t, "no value", unit.Number.Of(math.NaN()).Text(3))
}

// What is printed is read back, for every unit and numbers of up to five
// figures.
func TestReadOfTextIsTheQuantity(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	names := []string{"psi", "kPa abs", "US gal", "imp gpm", "°F", "°C", "K", "C°", "%", "$", "$/kWh", "psi/100 ft", "Btu/(h·ft)", "ft·US gal/(min·hp)", "m³/h", "starts/h", "inHg", ""}
	for range 20000 {
		u := parse(t, names[r.IntN(len(names))])
		v, err := strconv.ParseFloat(strconv.FormatFloat((r.Float64()*2-1)*math.Pow(10, r.Float64()*9-3), 'g', 5, 64), 64)
		require.NoError(t, err)
		q := u.Of(v)
		got, err := unit.Read(q.Text(5))
		require.NoError(t, err, q.Text(5))
		assert.Equal(t, q, got, q.Text(5))
	}
}

func TestConvertAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for _, name := range []string{"psi", "ft", "gpm", "°F", "US gal", "Btu/h", "psi/ft", "kWh"} {
		u := parse(t, name)
		for _, to := range unit.Units(u.Dim) {
			if (u.Zero == unit.Scale) != (to.Zero == unit.Scale) {
				continue
			}
			v := r.Float64() * 1000
			assert.InEpsilon(t, v, to.Convert(u.Convert(v, to), u), 1e-9, "%s to %s", name, to.Name)
		}
	}
}

func FuzzUnitRead(f *testing.F) {
	for _, row := range numberRows {
		f.Add(row.text)
	}
	for _, row := range readRows {
		f.Add(row.text)
	}
	for _, s := range []string{"psi/((((m", "1/(m·s)", "Btu/(h·ft²·°F)", `8'-10 1/2"`, "m^4·m^4·m^4", "a·b/c per d", "A*h2", "Ah2", "1/Btuh", "$/Ah", "in·\"3", "CF2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		u, n := unit.Match(text)
		require.LessOrEqual(t, n, min(len(text), 64))
		if n > 0 {
			again, m := unit.Match(u.Name)
			require.Len(t, u.Name, m, "%q of %q", u.Name, text)
			require.Equal(t, u.Dim, again.Dim, u.Name)
			require.InEpsilon(t, u.Factor, again.Factor, 1e-9, u.Name)
		}
		_, err := unit.Parse(text)
		if err != nil {
			require.NotEmpty(t, err.Error())
		}
		for _, comma := range []bool{false, true} {
			num, used, err := unit.ReadNumber(text, comma)
			if err == nil {
				require.Positive(t, used)
				require.Equal(t, text[:used], num.Text)
				require.False(t, math.IsNaN(num.Value) || math.IsInf(num.Value, 0) || num.Value < 0)
				require.Positive(t, num.Half)
				require.GreaterOrEqual(t, num.Figures, 1)
			}
			q, err := unit.ReadWith(text, unit.Options{DecimalComma: comma, Imperial: comma})
			if err == nil {
				require.False(t, math.IsNaN(q.Value))
				require.NotEmpty(t, q.Text(3))
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	for b.Loop() {
		if _, err := unit.Read("0.433 psi/ft"); err != nil {
			b.Fatal(err)
		}
	}
}
