package unit_test

import (
	"fmt"

	"riserwork/solver/unit"
)

func ExampleRead() {
	q, err := unit.Read(`8'-10"`)
	fmt.Println(q.Text(4), err)
	_, err = unit.Read("62 parsec")
	fmt.Println(err)
	// Output:
	// 8.833 ft <nil>
	// "parsec" was read where a unit such as psi, kPa, ft or gpm was expected
}

func ExampleReadNumber() {
	n, used, _ := unit.ReadNumber("28.000,5 L", false)
	fmt.Println(n.Value, n.Half, used)
	// Output: 28000.5 0.05 8
}

func ExampleParse() {
	u, _ := unit.Parse("pounds per square inch per 100 ft")
	fmt.Println(u.Name, "is", u.Dim)
	// Output: psi/100 ft is a pressure per length
}

func ExampleParseWith() {
	u, _ := unit.ParseWith("gpm", unit.Options{Imperial: true})
	fmt.Println(u.Name)
	// Output: imp gpm
}

func ExampleMatch() {
	u, n := unit.Match("psi/ft x 96 ft")
	fmt.Println(u.Name, n)
	// Output: psi/ft 6
}

func ExampleQuantity_In() {
	psi, _ := unit.Parse("psi")
	kPa, _ := unit.Parse("kPa")
	fmt.Println(kPa.Of(psi.Of(80).In(kPa)).Text(3))
	// Output: 552 kPa
}

func ExampleFormat() {
	fmt.Println(unit.Format(41.568, 3), unit.Format(39.98, 3), unit.Format(199920, 3))
	// Output: 41.6 40.0 199,920
}

func ExampleUnits() {
	psi, _ := unit.Parse("psi/ft")
	for _, u := range unit.Units(psi.Dim) {
		fmt.Println(u.Name)
	}
	// Output:
	// psi/ft
	// psi/100 ft
	// kPa/m
	// Pa/m
}
