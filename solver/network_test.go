package solver_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// randomNetwork is a tree of 3 to 60 nodes up a building with more links laid
// over it. Oneway says whether it has check valves, pumps and taps.
func randomNetwork(rng *rand.Rand, w solver.Water, oneway bool) *solver.Network {
	n := &solver.Network{Water: w}
	count := 3 + rng.IntN(58)
	for i := range count {
		node := solver.Node{Name: fmt.Sprint("n", i), At: unit.Length(60 * rng.Float64())}
		if rng.IntN(3) == 0 {
			node.Draws = unit.Flow(0.002 * rng.Float64())
		}
		if i == 0 || rng.IntN(12) == 0 {
			node.Held, node.Draws, node.Pressure = true, 0, unit.Pressure(100e3+700e3*rng.Float64())
		}
		n.Nodes = append(n.Nodes, node)
	}
	link := func(a, b int, main bool) {
		l := solver.Link{Name: fmt.Sprint("l", len(n.Links)), From: a, To: b}
		length, bore := unit.Length(0.5+80*rng.Float64()), unit.Length(0.013+0.09*rng.Float64())
		switch rng.IntN(5) {
		case 0, 1:
			l.Part = solver.HazenPipe{Length: length, Bore: bore, C: 90 + 60*rng.Float64()}
		case 2, 3:
			l.Part = solver.DarcyPipe{Length: length, Bore: bore, Rough: 1e-4 * unit.Length(rng.Float64()), Fittings: 20 * rng.Float64()}
		case 4:
			l.Part = solver.Throttle{Cv: math.Pow(10, 2*rng.Float64()) / 2}
		}
		if oneway && !main {
			l.OneWay = rng.IntN(2) == 0
			if rng.IntN(8) == 0 {
				l.Part = solver.Pump{Curve: solver.PumpCurve{Shut: unit.Length(5 + 60*rng.Float64()), Slope: -500 * rng.Float64(), Bend: -1e6 * (0.1 + rng.Float64())}}
			}
			l.Shut = rng.IntN(10) == 0
		}
		n.Links = append(n.Links, l)
	}
	for i := 1; i < count; i++ {
		link(rng.IntN(i), i, true)
	}
	for range rng.IntN(count) {
		if a, b := rng.IntN(count), rng.IntN(count); a != b {
			link(a, b, false)
		}
	}
	if oneway { // taps to the air
		for range 1 + rng.IntN(6) {
			at := rng.IntN(count)
			n.Nodes = append(n.Nodes, solver.Node{Name: "air", At: n.Nodes[at].At, Held: true})
			n.Links = append(n.Links, solver.Link{Name: "tap", From: at, To: len(n.Nodes) - 1, Part: solver.Throttle{Cv: 0.3 + rng.Float64()}, OneWay: true})
		}
	}
	return n
}

// Loss laws written out a second time, in the units of their prints.
func lossAgain(l solver.Link, q float64, w solver.Water) float64 {
	sign, size := 1.0, math.Abs(q)
	if q < 0 {
		sign = -1
	}
	switch p := l.Part.(type) {
	case solver.HazenPipe:
		head := 10.67 * float64(p.Length) * math.Pow(size/p.C, 1.852) / math.Pow(float64(p.Bore), 4.87)
		return sign * head * w.Density * 9.80665
	case solver.DarcyPipe:
		d := float64(p.Bore)
		v := size / (math.Pi * d * d / 4)
		if v < 1e-12 {
			return 0
		}
		re := w.Density * v * d / w.Viscosity
		return sign * (solver.FrictionFactor(re, float64(p.Rough)/d)*float64(p.Length)/d + p.Fittings) * w.Density * v * v / 2
	case solver.Throttle:
		gpm := size * 60 / 231 / math.Pow(0.0254, 3)
		return sign * math.Pow(gpm/p.Cv, 2) * 6894.757293168361 * w.Density / 999
	case solver.Pump:
		return -w.Density * 9.80665 * (float64(p.Curve.Shut) + p.Curve.Slope*q + p.Curve.Bend*q*size)
	}
	return math.NaN()
}

// What must hold of any solution, worked out again from the result alone: each
// node keeps its balance and each open link loses what drives it, to 1e-9 of
// the largest flow and pressure; a check valve carries nothing backwards, and
// is shut only where it would.
func holds(t *testing.T, n *solver.Network, f *solver.Flows, says string) (mass, energy float64) {
	t.Helper()
	most, high := 1e-5, 1.0
	for _, q := range f.Flow {
		most = max(most, math.Abs(float64(q)))
	}
	for _, p := range f.Pressure {
		high = max(high, math.Abs(float64(p)))
	}
	kept := make([]float64, len(n.Nodes))
	for i, node := range n.Nodes {
		kept[i] = -float64(node.Draws)
		if node.Held {
			require.Equal(t, node.Pressure, f.Pressure[i], says)
		}
	}
	for i, l := range n.Links {
		q := float64(f.Flow[i])
		if l.Shut {
			require.Zero(t, q, says)
			continue
		}
		w := n.Water
		if l.Water != nil {
			w = *l.Water
		}
		drives := float64(f.Pressure[l.From]-f.Pressure[l.To]) + w.Density*9.80665*float64(n.Nodes[l.From].At-n.Nodes[l.To].At)
		_, pump := l.Part.(solver.Pump)
		if l.OneWay || pump {
			require.Greater(t, q, -1e-12*most, "%s %s runs backwards", says, l.Name)
			if q <= 0 {
				require.Less(t, drives-lossAgain(l, 0, w), 1e-9*high, "%s %s is shut for nothing", says, l.Name)
				continue
			}
		}
		kept[l.From] -= q
		kept[l.To] += q
		energy = max(energy, math.Abs(lossAgain(l, q, w)-drives)/high)
	}
	for i, node := range n.Nodes {
		if !node.Held {
			mass = max(mass, math.Abs(kept[i])/most)
		}
	}
	require.Less(t, mass, 1e-9, says)
	require.Less(t, energy, 1e-9, says)
	return mass, energy
}

func TestRandomNetworksKeepMassAndEnergy(t *testing.T) {
	runs := uint64(1000)
	if testing.Short() {
		runs = 100
	}
	rounds, mass, energy, shut, pumped := 0, 0.0, 0.0, 0, 0
	for seed := range runs {
		rng := rand.New(rand.NewPCG(seed, 5))
		n := randomNetwork(rng, water(t, 5+60*rng.Float64()), seed%2 == 1)
		f, err := n.Solve()
		require.NoError(t, err, "seed %d", seed)
		m, e := holds(t, n, f, fmt.Sprint("seed ", seed))
		rounds, mass, energy = max(rounds, f.Rounds), max(mass, m, f.Mass), max(energy, e, f.Energy)
		for i, l := range n.Links {
			if l.OneWay && f.Flow[i] == 0 {
				shut++
			}
			if _, ok := l.Part.(solver.Pump); ok && f.Flow[i] > 0 {
				pumped++
			}
		}
	}
	assert.Greater(t, shut, 10)
	assert.Greater(t, pumped, 10)
	t.Logf("%d networks: mass within %.1g, energy within %.1g, at most %d rounds; %d check valves shut, %d pumps ran", runs, mass, energy, rounds, shut, pumped)
}
