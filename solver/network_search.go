package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// search is a network on the way to its solution: Newton's method on flows and
// pressures together, as E. Todini and S. Pilati put it (1987), each step cut
// short where it would overshoot. With every check valve either open or shut
// the losses all grow with their flows, so that there is one solution and the
// steps come to it from anywhere.
type search struct {
	net    *Network
	drive  []float64 // of each link, the weight of its own column, Pa
	water  []Water
	q      []float64 // m3/s
	p      []float64 // Pa
	closed []bool    // check valves that are shut by the flow
	g      []float64 // of each link, flow for each Pa
	e      []float64 // of each link, how much its loss is over its drop, Pa
	d      []float64 // of each link, the step
	rounds int
	turns  int
}

func newSearch(n *Network) *search {
	links := len(n.Links)
	s := &search{
		net: n, drive: make([]float64, links), water: make([]Water, links), q: make([]float64, links), p: make([]float64, len(n.Nodes)),
		closed: make([]bool, links), g: make([]float64, links), e: make([]float64, links), d: make([]float64, links),
	}
	for i, node := range n.Nodes {
		s.p[i] = float64(node.Pressure)
	}
	for i, l := range n.Links {
		s.water[i] = n.waterOf(l)
		s.drive[i] = float64(s.water[i].Column().OfColumn(n.Nodes[l.From].At - n.Nodes[l.To].At))
		if !l.Shut {
			s.q[i] = 1e-4
		}
	}
	return s
}

// loss is what link i loses at a flow, and how fast that grows.
func (s *search) loss(i int, q float64) (pa, slope float64) {
	if s.closed[i] {
		pa, _ = s.net.Links[i].Part.drop(0, s.water[i]) // a pump stands against it with its head
		return pa + leak*q, leak
	}
	return s.net.Links[i].Part.drop(q, s.water[i])
}

// settle steps until flows and pressures stand, check valves left as they are.
func (s *search) settle() error {
	for k := range 300 {
		flow, pressure := s.largest()
		s.measure()
		worst := 0.0
		for i := range s.e {
			worst = math.Max(worst, math.Abs(s.e[i]))
		}
		s.step()
		s.rounds++
		share := 1.0
		if k > 0 && worst > 1e-9*pressure {
			share = s.share()
		}
		for i := range s.d {
			s.q[i] += share * s.d[i]
		}
		if k > 0 && worst <= 1e-11*pressure && s.rests(flow, pressure) {
			return nil
		}
	}
	return fmt.Errorf("solver: the flows of the network do not come to rest in %d rounds, expected losses within the bounds of a building", s.rounds)
}

// rests reports whether the last step moved no flow by more than its last
// figures, or than the last figure of a pressure makes of it.
func (s *search) rests(flow, pressure float64) bool {
	for i := range s.d {
		if !(math.Abs(s.d[i]) <= 1e-11*flow+1e-15*pressure*s.g[i]) {
			return false
		}
	}
	return true
}

// largest are the largest flow and the largest pressure or column, to measure
// by; a trickle of 0.01 L/s and 1 Pa where there is less.
func (s *search) largest() (flow, pressure float64) {
	flow, pressure = 1e-5, 1
	for i := range s.q {
		flow = math.Max(flow, math.Abs(s.q[i]))
		pressure = math.Max(pressure, math.Abs(s.drive[i]))
	}
	for i := range s.p {
		pressure = math.Max(pressure, math.Abs(s.p[i]))
	}
	return flow, pressure
}

// measure sets each link's conductance and misfit.
func (s *search) measure() {
	for i, l := range s.net.Links {
		if l.Shut {
			continue
		}
		pa, slope := s.loss(i, s.q[i])
		s.g[i], s.e[i] = 1/slope, pa-s.head(i)
	}
}

// head is the pressure that drives link i.
func (s *search) head(i int) float64 {
	l := s.net.Links[i]
	return s.p[l.From] - s.p[l.To] + s.drive[i]
}

// step works out the next pressures and the change of the flows: the change
// of pressure closes every node's balance if the losses were straight lines.
func (s *search) step() {
	m := newMesh(s.net)
	for i, l := range s.net.Links {
		if l.Shut {
			continue
		}
		m.tie(l.From, l.To, s.g[i])
		m.put(l.From, s.g[i]*s.e[i]-s.q[i])
		m.put(l.To, s.q[i]-s.g[i]*s.e[i])
	}
	for i, node := range s.net.Nodes {
		m.put(i, -float64(node.Draws))
	}
	change := m.solve()
	for i, l := range s.net.Links {
		if !l.Shut {
			s.d[i] = s.g[i] * (change[l.From] - change[l.To] - s.e[i])
		}
	}
	for i := range s.p {
		s.p[i] += change[i]
	}
}

// share is how much of the step to go: all of it, unless the work along it
// rises at its end, then less, by halving. The work's slope grows along the
// step, so that there is one lowest point.
func (s *search) share() float64 {
	slope := func(a float64) float64 {
		sum := 0.0
		for i := range s.d {
			if s.net.Links[i].Shut {
				continue
			}
			pa, _ := s.loss(i, s.q[i]+a*s.d[i])
			sum += s.d[i] * (pa - s.head(i))
		}
		return sum
	}
	start := slope(0)
	low, high := 0.0, 1.0
	for a := 1.0; ; a = (low + high) / 2 {
		at := slope(a)
		if math.Abs(at) <= 0.3*math.Abs(start) || high-low < 1e-3 {
			return a
		}
		if at < 0 {
			if a == 1 {
				return a
			}
			low = a
		} else {
			high = a
		}
	}
}

// turn shuts check valves that water runs back through and opens those that it
// would run forward through, and says whether it turned any. It turns all at a
// time; where that goes on for long it turns the first alone, which cannot go
// round in a ring.
func (s *search) turn() bool {
	s.turns++
	turned := false
	flow, _ := s.largest()
	for i, l := range s.net.Links {
		if l.Shut || !(l.OneWay || l.Part.oneWay()) {
			continue
		}
		wrong := s.q[i] < -1e-13*flow
		if s.closed[i] {
			wrong = s.q[i] > 0
		}
		if wrong {
			s.closed[i] = !s.closed[i]
			turned = true
			if s.turns > 12 {
				break
			}
		}
	}
	return turned
}

// flows reads the solution off, shut check valves at no flow.
func (s *search) flows() (*Flows, error) {
	out := &Flows{Rounds: s.rounds, Flow: make([]unit.Flow, len(s.q)), Pressure: make([]unit.Pressure, len(s.p))}
	flow, pressure := s.largest()
	lost := make([]float64, len(s.p))
	s.measure()
	for i, l := range s.net.Links {
		if l.Shut {
			continue
		}
		if s.closed[i] {
			if -s.q[i] > 1e-9*flow && -s.q[i] > 1e-10 {
				return nil, fmt.Errorf("solver: check valve %s holds back the only way of %.4g L/s, expected another way", l.Name, -s.q[i]*1000)
			}
			continue
		}
		out.Flow[i] = unit.Flow(s.q[i])
		lost[l.From] -= s.q[i]
		lost[l.To] += s.q[i]
		out.Energy = math.Max(out.Energy, math.Abs(s.e[i])/pressure)
	}
	for i, node := range s.net.Nodes {
		out.Pressure[i] = unit.Pressure(s.p[i])
		if !node.Held {
			out.Mass = math.Max(out.Mass, math.Abs(lost[i]-float64(node.Draws))/flow)
		}
	}
	return out, nil
}
