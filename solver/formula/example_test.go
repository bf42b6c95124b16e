package formula_test

import (
	"fmt"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

func ExampleParse() {
	e, _ := formula.Parse("(street - residual)/gamma")
	fmt.Println(e.Text(), e.Names())
	_, err := formula.Parse("62 -")
	fmt.Println(err)
	// Output:
	// (street − residual) / gamma [street residual gamma]
	// after "62 -" a number or a name was expected, but the line ends
}

func ExampleParseWith() {
	next := formula.Func{Name: "nexteven", Arity: 1, Eval: func(a []float64) float64 { return 2 * float64(int(a[0]/2)+1) }}
	e, _ := formula.ParseWith("nexteven(2.1)", formula.Options{Funcs: []formula.Func{next}})
	fmt.Println(e.EvalPlain())
	// Output: 4 true
}

func ExampleExpr_Bind() {
	e, _ := formula.Parse("street - gamma x height")
	names := []string{"street", "gamma", "height"}
	b, _ := e.Bind(func(name string) int {
		for i, n := range names {
			if n == name {
				return i
			}
		}
		return -1
	})
	fmt.Printf("%.3f\n", b.Eval([]float64{62, 0.433, 96}))
	i := b.Interval([]formula.Interval{{61.5, 62.5}, {0.433, 0.434}, {96, 96}})
	fmt.Printf("%.2f to %.2f\n", i.Lo, i.Hi)
	// Output:
	// 20.432
	// 19.84 to 20.93
}

func ExampleExpr_Check() {
	given := map[string]string{"street": "62 psi", "gamma": "0.433 psi/ft", "height": "96 ft"}
	env := func(name string) (unit.Quantity, bool) {
		q, err := unit.Read(given[name])
		return q, err == nil
	}
	psi, _ := unit.Parse("psi")
	right, _ := formula.Parse("street - gamma x height")
	q, err := right.Check(env)
	fmt.Printf("%.1f psi %v\n", q.In(psi), err)
	wrong, _ := formula.Parse("street - height")
	_, err = wrong.Check(env)
	fmt.Println(err)
	// Output:
	// 20.4 psi <nil>
	// street is a pressure, height is a length: they cannot be subtracted
}

func ExampleExpr_Numbers() {
	e, _ := formula.Parse("street - gamma x height")
	values := map[string]string{"street": "62 psi", "gamma": "0.433 psi/ft", "height": "96 ft"}
	fmt.Println(e.Numbers(func(name string) string { return values[name] }))
	// Output: 62 psi − 0.433 psi/ft × 96 ft
}

func ExampleExpr_MathML() {
	e, _ := formula.Parse("p / g")
	fmt.Println(e.MathML(nil))
	// Output: <mfrac><mi>p</mi><mi>g</mi></mfrac>
}

func ExampleExpr_Source() {
	e, _ := formula.Parse("((62 − 25)) ÷ 0,433")
	fmt.Println(e.Source())
	// Output: (62 - 25) / 0.433
}

func ExampleExpr_Root() {
	e, _ := formula.Parse("p / g")
	top := e.Root()
	fmt.Println(top.Kind == formula.FracNode, top.Kids[0].Name, top.Kids[1].Name)
	// Output: true p g
}

func ExampleReadLine() {
	line, _ := formula.ReadLine("pressure lost: 0.433 x 96 = 41.6 psi at the top", formula.Options{})
	fmt.Println(line.Label, "|", line.Exprs[0].Source(), "|", line.Value.Value, line.Unit.Name, "|", line.Words)
	_, err := formula.ReadLine("62 - 0.433 foo 96", formula.Options{})
	fmt.Println(err)
	// Output:
	// pressure lost | 0.433 x 96 | 41.6 psi | [at the top]
	// after "62 - 0.433" a unit, an operation or the end was expected, but "foo" was read
}
