package solver_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// byLU solves the same network on another road: Newton on all flows and free
// pressures at once, the Jacobian by differences from the loss laws written
// out a second time, its equations by gonum's dense LU. Links that carry
// nothing by f, shut ones and check valves, are left out.
func byLU(t *testing.T, n *solver.Network, f *solver.Flows) (flow, pressure []float64) {
	t.Helper()
	var open, free []int
	place := make([]int, len(n.Nodes))
	p := make([]float64, len(n.Nodes))
	for i, node := range n.Nodes {
		p[i], place[i] = float64(node.Pressure), -1
		if !node.Held {
			place[i] = len(free)
			free = append(free, i)
		}
	}
	q := make([]float64, len(n.Links))
	for i, l := range n.Links {
		_, pump := l.Part.(solver.Pump)
		if !l.Shut && ((!l.OneWay && !pump) || f.Flow[i] > 0) {
			open = append(open, i)
			q[i] = 3e-4
		}
	}
	const litres, bar = 1000.0, 1e5 // L/s and bar, so that the figures are near 1
	size := len(open) + len(free)
	for round := range 400 {
		jacobian, misfit := mat.NewDense(size, size, nil), mat.NewVecDense(size, nil)
		for k, node := range free {
			misfit.SetVec(len(open)+k, -float64(n.Nodes[node].Draws)*litres)
		}
		add := func(row int, v float64) { misfit.SetVec(row, misfit.AtVec(row)+v) }
		for r, i := range open {
			l := n.Links[i]
			step := 1e-6*math.Abs(q[i]) + 1e-12
			slope := (lossAgain(l, q[i]+step, n.Water) - lossAgain(l, q[i]-step, n.Water)) / (2 * step)
			jacobian.Set(r, r, slope/litres/bar)
			drives := p[l.From] - p[l.To] + n.Water.Density*9.80665*float64(n.Nodes[l.From].At-n.Nodes[l.To].At)
			add(r, (lossAgain(l, q[i], n.Water)-drives)/bar)
			for node, sign := range map[int]float64{l.From: -1, l.To: 1} {
				if k := place[node]; k >= 0 {
					jacobian.Set(r, len(open)+k, sign)
					jacobian.Set(len(open)+k, r, sign)
					add(len(open)+k, sign*q[i]*litres)
				}
			}
		}
		var lu mat.LU
		lu.Factorize(jacobian)
		var change mat.VecDense
		if err := lu.SolveVecTo(&change, false, misfit); err != nil {
			require.IsType(t, mat.Condition(0), err) // solved, and said to be steep
		}
		share, moved, most := 1.0, 0.0, 1e-5
		if round < 40 {
			share = 0.6 // half steps at first: a plain Newton swings
		}
		for r, i := range open {
			q[i] -= share * change.AtVec(r) / litres
			moved, most = max(moved, math.Abs(change.AtVec(r))/litres), max(most, math.Abs(q[i]))
		}
		for k, node := range free {
			p[node] -= share * change.AtVec(len(open)+k) * bar
		}
		if round > 45 && moved < 1e-13*most {
			return q, p
		}
	}
	return q, p
}

// Outside check: gonum v0.17.0, package mat. Flows to 1e-9 of the largest and
// pressures to 1e-9 of the largest. Only networks where every node keeps a way
// to a held one past its shut check valves, since LU cannot say what pressure
// a cut-off pocket has.
func TestNetworksAgainstGonumLU(t *testing.T) {
	runs := uint64(150)
	if testing.Short() {
		runs = 16
	}
	flow, pressure, links, checked := 0.0, 0.0, 0, 0
	for seed := range runs {
		rng := rand.New(rand.NewPCG(seed, 6))
		n := randomNetwork(rng, water(t, 5+60*rng.Float64()), seed%2 == 1)
		f, err := n.Solve()
		require.NoError(t, err, "seed %d", seed)
		if !tied(n, f) {
			continue
		}
		checked++
		q, p := byLU(t, n, f)
		most, high := 1e-5, 1.0
		for i := range q {
			most = max(most, math.Abs(q[i]))
		}
		for i := range p {
			high = max(high, math.Abs(p[i]))
		}
		for i := range q {
			flow = max(flow, math.Abs(q[i]-float64(f.Flow[i]))/most)
			assert.InDelta(t, q[i], float64(f.Flow[i]), 1e-9*most, "seed %d link %d", seed, i)
			links++
		}
		for i := range p {
			pressure = max(pressure, math.Abs(p[i]-float64(f.Pressure[i]))/high)
			assert.InDelta(t, p[i], float64(f.Pressure[i]), 1e-9*high, "seed %d node %d", seed, i)
		}
	}
	assert.Greater(t, checked, int(runs)/2)
	t.Logf("%d networks, %d links: flows within %.1g, pressures within %.1g", checked, links, flow, pressure)
}

// tied reports whether every node has a way to a held one along links that are
// open by f.
func tied(n *solver.Network, f *solver.Flows) bool {
	reached := make([]bool, len(n.Nodes))
	for i, node := range n.Nodes {
		reached[i] = node.Held
	}
	for range n.Nodes {
		for i, l := range n.Links {
			_, pump := l.Part.(solver.Pump)
			if !l.Shut && ((!l.OneWay && !pump) || f.Flow[i] > 0) && (reached[l.From] || reached[l.To]) {
				reached[l.From], reached[l.To] = true, true
			}
		}
	}
	for _, r := range reached {
		if !r {
			return false
		}
	}
	return true
}

// Outside check: gonum v0.17.0, package optimize. The flows of a network are
// those of the least work, the sum over its links of the loss gathered up to
// the flow. Here three loops of Hazen and Williams pipe: flows that keep every
// balance, and what goes round each loop left free.
func TestLoopsAreOfLeastWork(t *testing.T) {
	n := &solver.Network{Water: water(t, 15), Nodes: []solver.Node{
		{Name: "main", Held: true, Pressure: 500e3}, {Name: "a"}, {Name: "b", Draws: 1e-3, At: 12}, {Name: "c", At: 20}, {Name: "d", Draws: 2e-3, At: 3},
	}}
	var k []float64
	for i, ends := range [][2]int{{0, 1}, {1, 2}, {2, 4}, {0, 3}, {3, 4}, {2, 3}, {1, 3}} {
		pipe := solver.HazenPipe{Length: unit.Length(10 + 7*i), Bore: unit.Length(0.02 + 0.003*float64(i%3)), C: 130}
		n.Links = append(n.Links, solver.Link{From: ends[0], To: ends[1], Part: pipe})
		k = append(k, lossAgain(n.Links[i], 1e-3, n.Water)/1e5) // bar at 1 L/s
	}
	base := []float64{3, 3, 2, 0, 0, 0, 0} // L/s
	around := [][]float64{{1, 0, 0, -1, 0, 0, 1}, {0, 1, 0, 0, 0, 1, -1}, {0, 0, 1, 0, -1, -1, 0}}
	flows := func(x []float64) []float64 {
		q := append([]float64(nil), base...)
		for l, loop := range around {
			for i, sign := range loop {
				q[i] += x[l] * sign
			}
		}
		return q
	}
	found, err := optimize.Minimize(optimize.Problem{
		Func: func(x []float64) (work float64) {
			for i, q := range flows(x) {
				work += k[i] * math.Pow(math.Abs(q), 2.852) / 2.852
			}
			return work
		},
		Grad: func(grad, x []float64) {
			for l, loop := range around {
				grad[l] = 0
				for i, q := range flows(x) {
					grad[l] += loop[i] * k[i] * math.Copysign(math.Pow(math.Abs(q), 1.852), q)
				}
			}
		},
	}, []float64{-1, -1, -1}, &optimize.Settings{GradientThreshold: 1e-6}, &optimize.BFGS{})
	require.NoError(t, err)
	f, err := n.Solve()
	require.NoError(t, err)
	worst := 0.0
	for i, q := range flows(found.X) {
		worst = max(worst, math.Abs(q-1000*float64(f.Flow[i])))
		assert.InDelta(t, q, 1000*float64(f.Flow[i]), 1e-6, "link %d", i)
	}
	t.Logf("least work: flows within %.1g L/s", worst)
}
