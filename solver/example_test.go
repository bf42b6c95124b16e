package solver_test

import (
	"fmt"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Two taps on a riser, 6 and 12 m over a street of 300 kPa.
func ExampleNetwork_Solve() {
	water, err := solver.WaterAt(unit.Celsius(10))
	if err != nil {
		fmt.Println(err)
		return
	}
	riser := solver.DarcyPipe{Length: 6, Bore: 0.02, Rough: 1.5e-6}
	n := solver.Network{
		Water: water,
		Nodes: []solver.Node{
			{Name: "street", Held: true, Pressure: 300 * unit.Kilopascal},
			{Name: "level 2", At: 6}, {Name: "level 4", At: 12},
			{Name: "air", At: 6, Held: true}, {Name: "air", At: 12, Held: true},
		},
		Links: []solver.Link{
			{Name: "riser", From: 0, To: 1, Part: riser},
			{Name: "riser", From: 1, To: 2, Part: riser},
			{Name: "tap, level 2", From: 1, To: 3, Part: solver.Throttle{Cv: 0.8}, OneWay: true},
			{Name: "tap, level 4", From: 2, To: 4, Part: solver.Throttle{Cv: 0.8}, OneWay: true},
		},
	}
	f, err := n.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, l := range n.Links {
		fmt.Printf("%s: %.3f L/s\n", l.Name, f.Flow[i]/unit.LitrePerSecond)
	}
	fmt.Printf("at level 4: %.0f kPa\n", f.Pressure[2]/unit.Kilopascal)
	// Output:
	// riser: 0.541 L/s
	// riser: 0.250 L/s
	// tap, level 2: 0.292 L/s
	// tap, level 4: 0.250 L/s
	// at level 4: 169 kPa
}
