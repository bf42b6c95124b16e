package unit_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver/unit"
)

// NIST SP 811, Guide for the Use of the International System of Units (2008),
// Appendix B.9; the rows' confidence says which were recalled.
func TestFactorsOfNIST(t *testing.T) {
	file, err := os.Open("../../testdata/units_nist.csv")
	require.NoError(t, err)
	defer func() { require.NoError(t, file.Close()) }()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 50)
	for _, row := range rows[1:] {
		from, to := parse(t, row[0]), parse(t, row[1])
		want, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err, row)
		got := from.Difference().Convert(1, to.Difference())
		if row[3] == "yes" {
			assert.InEpsilon(t, want, got, 1e-14, "%s in %s", row[0], row[1])
		} else {
			assert.InEpsilon(t, want, got, 6e-6, "%s in %s", row[0], row[1])
		}
	}
}

func parse(t *testing.T, name string) unit.Unit {
	t.Helper()
	u, err := unit.Parse(name)
	require.NoError(t, err, name)
	return u
}

// The ice point, the boiling point and -40 by definition of the scales (NIST
// SP 811, 2008, App. B.9: t/°C = (t/°F - 32)/1.8).
func TestTemperatures(t *testing.T) {
	f, c, k := parse(t, "°F"), parse(t, "°C"), parse(t, "K")
	for _, row := range []struct{ f, c float64 }{{32, 0}, {212, 100}, {-40, -40}, {140, 60}} {
		assert.InDelta(t, row.c, f.Convert(row.f, c), 1e-9)
		assert.InDelta(t, row.f, c.Convert(row.c, f), 1e-9)
		assert.InDelta(t, row.c+273.15, f.Convert(row.f, k), 1e-9)
		assert.InDelta(t, row.c, unit.Fahrenheit(row.f).Celsius(), 1e-9)
		assert.InDelta(t, row.f, unit.Celsius(row.c).Fahrenheit(), 1e-9)
	}
	assert.InDelta(t, 100.0/1.8, f.Difference().Convert(100, c.Difference()), 1e-9, "a difference has no 32")
	assert.True(t, math.IsNaN(f.Convert(100, c.Difference())), "a point is no difference")
}

func TestConvertRefusesOtherDimensions(t *testing.T) {
	assert.True(t, math.IsNaN(parse(t, "psi").Convert(1, parse(t, "ft"))))
	assert.InDelta(t, 96, parse(t, "ft").Of(96).In(parse(t, "ft")), 0)
}

func TestEveryUnitOfTheTableReadsItsName(t *testing.T) {
	seen := map[string]bool{}
	dims := map[unit.Dim]bool{}
	for _, name := range []string{
		"", "psi", "ft", "ft²", "m³", "gpm", "ft/s", "s", "rpm", "lb", "mg/L", "lbf", "°F", "Btu", "kW", "Btu/(h·ft)",
		"A", "A·h", "$", "wsfu", "psi/ft", "lb/ft", "ft²/s", "Btu/(lb·°F)", "kJ/(L·K)", "$/kWh", "A·h/kg", "1/K", "US gal/ft", "ft·US gal/(min·hp)",
	} {
		dims[parse(t, name).Dim] = true
	}
	count := 0
	for d := range dims {
		for _, u := range unit.Units(d) {
			got := parse(t, u.Name)
			assert.Equal(t, u, got, u.Name)
			assert.False(t, seen[u.Name], "%s stands in the table twice", u.Name)
			seen[u.Name] = true
			assert.Equal(t, d, u.Dim)
			assert.Positive(t, u.Factor)
			count++
		}
	}
	assert.GreaterOrEqual(t, count, 110)
}

func TestWhatPeopleWriteForUnits(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"PSI", "psi"}, {"Psi", "psi"}, {"lb/in2", "psi"}, {"pounds per square inch", "psi"}, {"psi abs", "psia"},
		{"KPA", "kPa"}, {"kpa", "kPa"}, {"feet of water", "ft water"}, {"in. Hg", "inHg"}, {"inches of mercury", "inHg"},
		{"'", "ft"}, {"′", "ft"}, {`"`, "in"}, {"”", "in"}, {"''", "in"}, {"feet", "ft"}, {"ft of head", "ft"},
		{"gal", "US gal"}, {"gallons", "US gal"}, {"imp. gal", "imp gal"}, {"l/s", "L/s"}, {"LPS", "L/s"}, {"litres per second", "L/s"},
		{"gal/min", "gpm"}, {"gallons per minute", "gpm"}, {"US gal/min", "gpm"}, {"m3/h", "m³/h"}, {"m^3/h", "m³/h"}, {"cfs", "ft³/s"},
		{"cu ft", "ft³"}, {"ft3", "ft³"}, {"sq in", "in²"}, {"hr", "h"}, {"fps", "ft/s"}, {"feet per second", "ft/s"},
		{"psi per ft", "psi/ft"}, {"psi/100ft", "psi/100 ft"}, {"psi per 100 feet", "psi/100 ft"},
		{"F", "°F"}, {"deg F", "°F"}, {"ºC", "°C"}, {"degrees Celsius", "°C"}, {"°F rise", "F°"},
		{"BTU/hr", "Btu/h"}, {"btuh", "Btu/h"}, {"Mbh", "MBH"}, {"Btu/h ft", "Btu/(h·ft)"}, {"Btu/hr-ft", "Btu/(h·ft)"}, {"Btu/h/ft", "Btu/(h·ft)"}, {"Btu/h·ft", "Btu/(h·ft)"},
		{"BTU/lb·F", "Btu/(lb·°F)"}, {"kJ/(l·K)", "kJ/(L·K)"}, {"lb/gal", "lb/US gal"}, {"gal/ft", "US gal/ft"}, {"$/kwh", "$/kWh"}, {"Ah/kg", "A·h/kg"},
		{"kW-h", "kWh"}, {"FU", "wsfu"}, {"fixture units", "wsfu"}, {"percent", "%"}, {"starts per hour", "starts/h"},
		{"ft·gal/(min·hp)", "ft·US gal/(min·hp)"}, {"horsepower", "hp"}, {"lb/ft2", "psf"},
	} {
		assert.Equal(t, row.want, parse(t, row.text).Name, row.text)
	}
}

func TestImperialGallons(t *testing.T) {
	imperial := unit.Options{Imperial: true}
	for text, want := range map[string]string{"gal": "imp gal", "gpm": "imp gpm", "gph": "imp gph", "US gal": "US gal", "US gpm": "gpm", "gal/min": "imp gpm", "lb/gal": "lb/imp gal"} {
		u, err := unit.ParseWith(text, imperial)
		require.NoError(t, err, text)
		assert.Equal(t, want, u.Name, text)
	}
}

func TestMatchTakesTheLongestUnit(t *testing.T) {
	for _, row := range []struct {
		text, want string
		n          int
	}{
		{"psi at the top", "psi", 3}, {"psi/ft x 96", "psi/ft", 6}, {"psi/0.433", "psi", 3}, {"psi/gamma", "psi", 3},
		{"ft", "ft", 2}, {"fthree", "", 0}, {"x 96", "", 0}, {"x", "", 0}, {"floors", "", 0}, {"in the shower", "in", 2},
		{"m2 of floor", "m²", 2}, {"m23", "", 0}, {"ft-10", "ft", 2}, {"kPa abs.", "kPa abs", 7}, {"min)", "min", 3}, {"", "", 0}, {"°F.", "°F", 3},
		{"(psi)", "", 0}, {"psi/(ft", "psi", 3}, {"M", "", 0}, {"H", "", 0},
	} {
		u, n := unit.Match(row.text)
		assert.Equal(t, row.n, n, row.text)
		assert.Equal(t, row.want, u.Name, row.text)
	}
}

func TestNamesAreNotUnits(t *testing.T) {
	opt := unit.Options{Name: func(word string) bool { return word == "h" }}
	_, n := unit.MatchWith("psi/h", opt)
	assert.Equal(t, 3, n)
	_, n = unit.MatchWith("h", opt)
	assert.Equal(t, 1, n, "right after a number it can only be hours")
}

func TestParseSaysWhatItRead(t *testing.T) {
	for _, text := range []string{"parsec", "psi psi", "psi/", "1", "m^9"} {
		_, err := unit.Parse(text)
		assert.ErrorContains(t, err, "was read where a unit", text)
	}
}

func TestSIUnitsAreCoherent(t *testing.T) {
	for name, want := range map[string]string{"psi": "Pa", "gpm": "m³/s", "Btu/h": "W", "psi/ft": "Pa/m", "°F": "K", "lb/gal": "kg/m³", "kJ/(L·K)": "kg/(m·s²·K)", "%": ""} {
		got := unit.SIUnit(parse(t, name).Dim)
		assert.Equal(t, want, got.Name, name)
		assert.Equal(t, 1.0, got.Factor)
		if want != "" && want != "K" {
			assert.Equal(t, got, parse(t, got.Name))
		}
	}
}

func TestDimensionsHaveNames(t *testing.T) {
	for name, want := range map[string]string{"psi": "a pressure", "psi/100 ft": "a pressure per length", "gpm": "a flow", "": "a plain number", "$/kWh": "length^-2 mass^-1 time^2 money"} {
		assert.Equal(t, want, parse(t, name).Dim.String(), name)
	}
}
