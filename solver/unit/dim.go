package unit

import (
	"strconv"
	"strings"
)

// Dim is a dimension: the exponents of the base quantities, in the order of
// baseNames. The zero Dim is that of a plain number.
type Dim [7]int8

// The base quantities. Fixture is the fixture unit of the plumbing codes,
// which is a count of loading and converts to a flow only by a table.
var (
	dimNumber  = Dim{}
	dimLength  = Dim{1}
	dimMass    = Dim{0, 1}
	dimTime    = Dim{0, 0, 1}
	dimTemp    = Dim{0, 0, 0, 1}
	dimCurrent = Dim{0, 0, 0, 0, 1}
	dimMoney   = Dim{0, 0, 0, 0, 0, 1}
	dimFixture = Dim{0, 0, 0, 0, 0, 0, 1}
)

var baseNames = [7]string{"length", "mass", "time", "temperature", "current", "money", "fixture units"}

// named dimensions, for messages; the first that fits is printed.
var dimNames = []struct {
	dim  Dim
	name string
}{
	{dimNumber, "a plain number"},
	{dimLength, "a length"},
	{dimLength.Pow(2), "an area"},
	{dimLength.Pow(3), "a volume"},
	{dimMass, "a mass"},
	{dimTime, "a time"},
	{dimTemp, "a temperature"},
	{dimCurrent, "an electric current"},
	{dimMoney, "money"},
	{dimFixture, "fixture units"},
	{Dim{-1, 1, -2}, "a pressure"},
	{Dim{-2, 1, -2}, "a pressure per length"},
	{Dim{1, 0, -1}, "a velocity"},
	{Dim{3, 0, -1}, "a flow"},
	{Dim{2, 1, -2}, "heat or energy"},
	{Dim{2, 1, -3}, "a heat rate or power"},
	{Dim{1, 1, -3}, "a heat loss per length"},
	{Dim{1, 1, -2}, "a force"},
	{Dim{-3, 1}, "a density"},
}

// Mul is the dimension of a product.
func (d Dim) Mul(e Dim) Dim {
	for i := range d {
		d[i] += e[i]
	}
	return d
}

// Div is the dimension of a quotient.
func (d Dim) Div(e Dim) Dim {
	for i := range d {
		d[i] -= e[i]
	}
	return d
}

// Pow is the dimension of a whole power.
func (d Dim) Pow(n int) Dim {
	for i := range d {
		d[i] *= int8(n)
	}
	return d
}

// IsNumber reports whether d is the dimension of a plain number.
func (d Dim) IsNumber() bool { return d == dimNumber }

// String names the dimension in words: "a pressure per length".
func (d Dim) String() string {
	for _, n := range dimNames {
		if n.dim == d {
			return n.name
		}
	}
	var parts []string
	for i, e := range d {
		if e == 0 {
			continue
		}
		part := baseNames[i]
		if e != 1 {
			part += "^" + strconv.Itoa(int(e))
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, " ")
}
