package solver_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

func solved(t *testing.T, n *solver.Network) *solver.Flows {
	t.Helper()
	f, err := n.Solve()
	require.NoError(t, err)
	holds(t, n, f, "")
	return f
}

// One pipe between two held pressures carries the flow of its formula turned
// round.
func TestOnePipe(t *testing.T) {
	pipe := solver.HazenPipe{Length: 30, Bore: 0.025, C: 140}
	n := &solver.Network{Water: solver.Water{Density: 1000, Viscosity: 1e-3}, Nodes: []solver.Node{
		{Name: "main", Held: true, Pressure: 400e3}, {Name: "tap", Held: true, At: 10},
	}, Links: []solver.Link{{Name: "riser", From: 0, To: 1, Part: pipe}}}
	left := 400e3 - 1000*9.80665*10
	per := float64(solver.HazenSI.Loss(1, 140, 0.025)) * 30
	assert.InEpsilon(t, math.Pow(left/per, 1/1.852), float64(solved(t, n).Flow[0]), 1e-9)
}

// Valves side by side add their Cv; valves in line add the squares of 1/Cv.
func TestThrottlesTogether(t *testing.T) {
	nodes := []solver.Node{{Held: true, Pressure: 100 * unit.PSI}, {}, {Held: true}}
	n := &solver.Network{Water: solver.Water{Density: 999, Viscosity: 1e-3}, Nodes: nodes, Links: []solver.Link{
		{From: 0, To: 1, Part: solver.Throttle{Cv: 3}}, {From: 0, To: 1, Part: solver.Throttle{Cv: 4}}, {From: 1, To: 2, Part: solver.Throttle{Cv: 5}},
	}}
	whole := 1 / math.Sqrt(1/49.0+1/25.0)
	f := solved(t, n)
	assert.InEpsilon(t, 10*whole, float64(f.Flow[2]/unit.GPM), 1e-9, "10 is the root of 100 psi")
	assert.InEpsilon(t, 3.0/4, float64(f.Flow[0]/f.Flow[1]), 1e-9)
}

// A pump on its system comes to the operating point; a like pump beside it, or
// behind it, to that of the curve of both.
func TestPumpsInANetwork(t *testing.T) {
	w := solver.Water{Density: 1000, Viscosity: 1e-3}
	pump, err := solver.PumpCurveThrough(45, solver.Duty{Flow: 0.004, Head: 38}, solver.Duty{Flow: 0.008, Head: 20})
	require.NoError(t, err)
	pipe := solver.HazenPipe{Length: 60, Bore: 0.06, C: 120}
	loss := unit.Length(float64(solver.HazenSI.Loss(0.005, 120, 0.06)) * 60 / (1000 * 9.80665))
	system := solver.SystemCurve{Static: 22, Loss: solver.Duty{Flow: 0.005, Head: loss}, Power: 1.852}
	for says, c := range map[string]struct {
		curve solver.PumpCurve
		links []solver.Link
	}{
		"one":           {pump, []solver.Link{{From: 0, To: 1, Part: solver.Pump{Curve: pump}}, {From: 1, To: 2, Part: solver.Throttle{Cv: 1e7}}}},
		"two, parallel": {pump.Parallel(2), []solver.Link{{From: 0, To: 1, Part: solver.Pump{Curve: pump}}, {From: 0, To: 1, Part: solver.Pump{Curve: pump}}, {From: 1, To: 2, Part: solver.Throttle{Cv: 1e7}}}},
		"two, series":   {pump.Series(2), []solver.Link{{From: 0, To: 1, Part: solver.Pump{Curve: pump}}, {From: 1, To: 2, Part: solver.Pump{Curve: pump}}}},
	} {
		n := &solver.Network{Water: w, Nodes: []solver.Node{{Held: true}, {}, {}, {Held: true, At: 22}}}
		n.Links = append(c.links, solver.Link{From: 2, To: 3, Part: pipe})
		want, err := solver.OperatingPoint(c.curve, system)
		require.NoError(t, err)
		f := solved(t, n)
		assert.InEpsilon(t, float64(want.Flow), float64(f.Flow[len(n.Links)-1]), 1e-6, says)
	}
	// The system stands higher than the pump can: its check valve shuts.
	n := &solver.Network{Water: w, Nodes: []solver.Node{{Held: true}, {Held: true, At: 50}}, Links: []solver.Link{{From: 0, To: 1, Part: solver.Pump{Curve: pump}}}}
	assert.Zero(t, solved(t, n).Flow[0])
}

// A loop of hot water that goes up warm and comes down cooler moves by its own
// weight: the two columns differ by what the pipe loses.
func TestLoopMovesByItsOwnWeight(t *testing.T) {
	hot, cool := water(t, 60), water(t, 50)
	n := &solver.Network{Water: hot, Nodes: []solver.Node{{Name: "heater", Held: true, Pressure: 300e3}, {Name: "top", At: 30}}, Links: []solver.Link{
		{Name: "up", From: 0, To: 1, Part: solver.DarcyPipe{Length: 40, Bore: 0.026, Rough: 1.5e-6}},
		{Name: "down", From: 1, To: 0, Part: solver.DarcyPipe{Length: 40, Bore: 0.02, Rough: 1.5e-6}, Water: &cool},
	}}
	f := solved(t, n)
	lost := 40 * (float64(solver.DarcyLoss(f.Flow[0], 0.026, 1.5e-6, hot)) + float64(solver.DarcyLoss(f.Flow[1], 0.02, 1.5e-6, cool)))
	assert.InEpsilon(t, (cool.Density-hot.Density)*9.80665*30, lost, 1e-6)
	assert.InEpsilon(t, float64(f.Flow[0]), float64(f.Flow[1]), 1e-9)
	assert.Greater(t, f.Flow[0], unit.Flow(0))
}

// risers is a hot loop: a pump, a main with n risers off it, each with its
// balancing valve, and a return.
func risers(w solver.Water, cv []float64) *solver.Network {
	pump := solver.PumpCurve{Shut: 6, Slope: -500, Bend: -2e6}
	n := &solver.Network{Water: w, Nodes: []solver.Node{{Name: "heater", Held: true, Pressure: 400e3}, {Name: "pump"}}}
	n.Links = []solver.Link{{Name: "pump", From: 0, To: 1, Part: solver.Pump{Curve: pump}}}
	flow, back := 1, 0
	for _, v := range cv {
		at := len(n.Nodes)
		n.Nodes = append(n.Nodes, solver.Node{}, solver.Node{At: 40}, solver.Node{})
		n.Links = append(n.Links,
			solver.Link{Name: "main", From: flow, To: at, Part: solver.DarcyPipe{Length: 12, Bore: 0.032, Rough: 1.5e-6}},
			solver.Link{Name: "riser", From: at, To: at + 1, Part: solver.DarcyPipe{Length: 42, Bore: 0.026, Rough: 1.5e-6}},
			solver.Link{Name: "valve", From: at + 1, To: at + 2, Part: solver.Throttle{Cv: v}},
			solver.Link{Name: "return", From: at + 2, To: back, Part: solver.DarcyPipe{Length: 12, Bore: 0.02, Rough: 1.5e-6}})
		flow, back = at, at+2
	}
	return n
}

// With all valves alike the nearest riser takes the most; throttled toward the
// heater all can be brought to the same flow.
func TestBalancingAHotLoop(t *testing.T) {
	w, cv := water(t, 55), []float64{1, 1, 1, 1, 1}
	flows := func(f *solver.Flows) (q []float64) {
		for i := range cv {
			q = append(q, float64(f.Flow[3+4*i]))
		}
		return q
	}
	q := flows(solved(t, risers(w, cv)))
	for i := 1; i < len(q); i++ {
		assert.Less(t, q[i], q[i-1], "riser %d", i)
	}
	last := len(cv) - 1
	for range 200 {
		for i := range last {
			cv[i] *= math.Pow(q[last]/q[i], 0.5)
		}
		q = flows(solved(t, risers(w, cv)))
	}
	for i := range q {
		assert.InEpsilon(t, q[last], q[i], 1e-4, "riser %d", i)
	}
	for i := range last {
		assert.Less(t, cv[i], cv[i+1], "the nearest valve is closed the most")
	}
}

// A tap over the reach of the street gives nothing and draws no air; opened
// lower down, taps share the pressure, and one more never helps another.
func TestTapsOfABuilding(t *testing.T) {
	tower := func(open int) *solver.Network {
		n := &solver.Network{Water: water(t, 10), Nodes: []solver.Node{{Name: "street", Held: true, Pressure: 300e3}}}
		below := 0
		for floor := range 14 {
			at := len(n.Nodes)
			up := unit.Length(3 * (floor + 1))
			n.Nodes = append(n.Nodes, solver.Node{At: up}, solver.Node{At: up, Held: true})
			n.Links = append(n.Links,
				solver.Link{Name: "riser", From: below, To: at, Part: solver.DarcyPipe{Length: 3, Bore: 0.026, Rough: 1.5e-6}},
				solver.Link{Name: "tap", From: at, To: at + 1, Part: solver.Throttle{Cv: 0.6}, OneWay: true, Shut: floor >= open})
			below = at
		}
		return n
	}
	var before *solver.Flows
	for open := 1; open <= 14; open++ {
		f := solved(t, tower(open))
		for floor := range open {
			q := f.Flow[2*floor+1]
			switch up := 3 * (floor + 1); {
			case up > 30:
				assert.Zero(t, q, "floor %d, %d open", floor, open)
			case up < 27: // between, friction decides
				assert.Greater(t, q, unit.Flow(0), "floor %d, %d open", floor, open)
			}
			if before != nil && floor < open-1 {
				assert.LessOrEqual(t, float64(q), float64(before.Flow[2*floor+1])*(1+1e-9), "floor %d, %d open", floor, open)
			}
		}
		before = f
	}
}

func TestTheSameNetworkGivesTheSameFigures(t *testing.T) {
	cv := []float64{0.4, 0.7, 1.2}
	assert.Equal(t, solved(t, risers(water(t, 55), cv)), solved(t, risers(water(t, 55), cv)))
}

func TestNetworksThatCannotBeAreRefused(t *testing.T) {
	w := solver.Water{Density: 1000, Viscosity: 1e-3}
	good := func() *solver.Network {
		return &solver.Network{Water: w, Nodes: []solver.Node{{Name: "a", Held: true}, {Name: "b"}}, Links: []solver.Link{{Name: "l", From: 0, To: 1, Part: solver.Throttle{Cv: 1}}}}
	}
	solved(t, good())
	for says, change := range map[string]func(n *solver.Network){
		"expected two of the 2 nodes": func(n *solver.Network) { n.Links[0].To = 2 },
		"goes from node 0 to 0":       func(n *solver.Network) { n.Links[0].To = 0 },
		"no density":                  func(n *solver.Network) { n.Water = solver.Water{} },
		"holds nothing":               func(n *solver.Network) { n.Links[0].Part = nil },
		"link l: the Cv is 0":         func(n *solver.Network) { n.Links[0].Part = solver.Throttle{} },
		"the bore is -1":              func(n *solver.Network) { n.Links[0].Part = solver.HazenPipe{Length: 1, Bore: -1, C: 100} },
		"the length is NaN":           func(n *solver.Network) { n.Links[0].Part = solver.DarcyPipe{Length: unit.Length(math.NaN()), Bore: 1} },
		"a twentieth of the bore":     func(n *solver.Network) { n.Links[0].Part = solver.DarcyPipe{Length: 1, Bore: 0.1, Rough: 0.01} },
		"a head that falls with the flow": func(n *solver.Network) {
			n.Links[0].Part = solver.Pump{Curve: solver.PumpCurve{Shut: 10, Slope: 5, Bend: -9}}
		},
		"ties node b to a pressure":      func(n *solver.Network) { n.Links[0].Shut = true },
		"node b has a figure of NaN":     func(n *solver.Network) { n.Nodes[1].Draws = unit.Flow(math.NaN()) },
		"holds back the only way":        func(n *solver.Network) { n.Links[0].OneWay, n.Nodes[1].Draws = true, -0.001 },
		"expected at most 1000 and 4000": func(n *solver.Network) { n.Nodes = make([]solver.Node, 1001) },
	} {
		n := good()
		change(n)
		_, err := n.Solve()
		assert.ErrorContains(t, err, says)
	}
}

// A building of 60 storeys with four risers and a tap on each.
func BenchmarkNetwork(b *testing.B) {
	w, err := solver.WaterAt(unit.Celsius(10))
	require.NoError(b, err)
	n := &solver.Network{Water: w, Nodes: []solver.Node{{Held: true, Pressure: 1000e3}}}
	for riser := range 4 {
		below := 0
		for floor := range 60 {
			at := len(n.Nodes)
			n.Nodes = append(n.Nodes, solver.Node{At: unit.Length(3 * floor)}, solver.Node{At: unit.Length(3 * floor), Held: true})
			n.Links = append(n.Links,
				solver.Link{From: below, To: at, Part: solver.DarcyPipe{Length: 3, Bore: 0.08, Rough: 1.5e-6}},
				solver.Link{From: at, To: at + 1, Part: solver.Throttle{Cv: 0.5 + 0.1*float64(riser)}, OneWay: true})
			below = at
		}
	}
	for b.Loop() {
		if _, err := n.Solve(); err != nil {
			b.Fatal(err)
		}
	}
}
