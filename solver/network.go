package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// Network is pipes, valves and pumps between nodes, solved for the flow in
// every one of them. It is for networks of a building: up to 1,000 nodes.
//
// A tap is a [Throttle] to a node held at no pressure, one way so that it
// draws no air. A reducing valve in use is a node held at its setting, with
// the flow that leaves there drawn from the node before it. Density enters
// the weight of each link's own column, so that a loop of hot and cool water
// moves by itself; that a kilogram takes more room hot is left out, 2 % at
// most.
type Network struct {
	Water Water // in every link that has none of its own
	Nodes []Node
	Links []Link
}

// Node is a point of a network. One at least is held at a pressure.
type Node struct {
	Name     string
	At       unit.Length   // elevation
	Draws    unit.Flow     // out of the network; negative is into it
	Held     bool          // at Pressure, whatever flows
	Pressure unit.Pressure // gauge pressure where it is held
}

// Link is what lies between two nodes. A flow from From to To counts positive.
type Link struct {
	Name     string
	From, To int // indices of nodes
	Part     Part
	OneWay   bool   // a check valve in it; a pump always has one
	Shut     bool   // a closed valve in it
	Water    *Water // nil for that of the network
}

// Flows is a network solved. Mass and Energy say how well: the largest flow
// that a node loses, over the largest flow; and the largest pressure that a
// link's loss is off by, over the largest pressure. A node that only shut check
// valves tie to the rest has the pressure that would leak through them.
type Flows struct {
	Flow         []unit.Flow     // of each link
	Pressure     []unit.Pressure // at each node
	Mass, Energy float64
	Rounds       int // of Newton's method
}

const (
	mostNodes = 1000
	mostLinks = 4000
	// leak is the drop in Pa of a check valve for each m3/s backwards, so great
	// that a whole building's pressure passes a drop of water in a century.
	leak = 1e22
)

// Solve works out the flows. The error says in one sentence what of the
// network cannot be.
func (n *Network) Solve() (*Flows, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	s := newSearch(n)
	for range 20 + 2*len(n.Links) {
		if err := s.settle(); err != nil {
			return nil, err
		}
		if !s.turn() {
			return s.flows()
		}
	}
	return nil, fmt.Errorf("solver: the check valves of the network do not come to rest, expected each open or shut")
}

func (n *Network) check() error {
	if len(n.Nodes) > mostNodes || len(n.Links) > mostLinks {
		return fmt.Errorf("solver: a network of %d nodes and %d links, expected at most %d and %d", len(n.Nodes), len(n.Links), mostNodes, mostLinks)
	}
	for _, node := range n.Nodes {
		for _, v := range []float64{float64(node.At), float64(node.Draws), float64(node.Pressure)} {
			if math.IsNaN(v) || math.Abs(v) > 1e12 {
				return fmt.Errorf("solver: node %s has a figure of %g, expected a number of a building", node.Name, v)
			}
		}
	}
	for _, l := range n.Links {
		if l.From < 0 || l.From >= len(n.Nodes) || l.To < 0 || l.To >= len(n.Nodes) || l.From == l.To {
			return fmt.Errorf("solver: link %s goes from node %d to %d, expected two of the %d nodes", l.Name, l.From, l.To, len(n.Nodes))
		}
		if w := n.waterOf(l); !(w.Density > 0 && w.Viscosity > 0) {
			return fmt.Errorf("solver: the water in link %s has no density or no viscosity, expected both", l.Name)
		}
		if l.Part == nil {
			return fmt.Errorf("solver: link %s holds nothing, expected a pipe, a throttle or a pump", l.Name)
		}
		if err := l.Part.check(); err != nil {
			return fmt.Errorf("solver: link %s: %w", l.Name, err)
		}
	}
	return n.checkReach()
}

// checkReach refuses nodes that no link ties to a held one: nothing says what
// pressure they have.
func (n *Network) checkReach() error {
	reached := make([]bool, len(n.Nodes))
	for i, node := range n.Nodes {
		reached[i] = node.Held
	}
	for again := true; again; {
		again = false
		for _, l := range n.Links {
			if !l.Shut && reached[l.From] != reached[l.To] {
				reached[l.From], reached[l.To], again = true, true, true
			}
		}
	}
	for i, node := range n.Nodes {
		if !reached[i] {
			return fmt.Errorf("solver: no open link ties node %s to a pressure, expected a way to a node that is held", node.Name)
		}
	}
	return nil
}

func (n *Network) waterOf(l Link) Water {
	if l.Water != nil {
		return *l.Water
	}
	return n.Water
}
