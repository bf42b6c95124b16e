package solver

import (
	"math"

	"riserwork/solver/unit"
)

// Drawing is how a kind of fixture takes water when it is busiest: it runs for
// some seconds, once in so many seconds, at a flow. It is the model of R. B.
// Hunter, National Bureau of Standards report BMS65 (1940), that the curves of
// fixture units come from.
type Drawing struct {
	Runs, Every float64 // seconds
	Flow        unit.Flow
}

// Chance is how likely the fixture is to run at any moment.
//
//	p = t / T
func (d Drawing) Chance() float64 { return d.Runs / d.Every }

// Demand is the flow to be expected of n such fixtures: of as many as are
// found running together all but the rarest share of the time. Hunter takes a
// share of 0.01.
func (d Drawing) Demand(n int, rarest float64) unit.Flow {
	return d.Flow * unit.Flow(TogetherAtMost(n, d.Chance(), rarest))
}

// TogetherAtMost is the smallest number m so that more than m of n fixtures,
// each running with the chance p, run together no more than the rarest share
// of the time. Their number is spread by the binomial law; its terms are
// summed as logarithms, so that many fixtures do not underflow.
//
//	P(X = m) = n! / (m! (n-m)!) p^m (1-p)^(n-m)
func TogetherAtMost(n int, p, rarest float64) int {
	switch {
	case n <= 0 || p <= 0:
		return 0
	case p >= 1:
		return n
	}
	odds := math.Log(p / (1 - p))
	term := float64(n) * math.Log1p(-p) // of the logarithm of P(X = 0)
	sum := 0.0
	for m := 0; m < n; m++ {
		sum += math.Exp(term)
		if 1-sum <= rarest {
			return m
		}
		term += odds + math.Log(float64(n-m)/float64(m+1))
	}
	return n
}

// Fixtures as BMS65 takes them, with their weights in fixture units for public
// use; from memory.
var (
	FlushValveDrawing = Drawing{Runs: 9, Every: 300, Flow: 27 * unit.GPM}
	FlushTankDrawing  = Drawing{Runs: 60, Every: 300, Flow: 4 * unit.GPM}
)

// Weights of one fixture in BMS65.
const (
	FlushValveWeight = 10.0
	FlushTankWeight  = 5.0
)
