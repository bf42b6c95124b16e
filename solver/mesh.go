package solver

// mesh is a set of straight-line links between nodes: conductances, and what
// is put into each node. It is solved by taking one node after the other out
// and tying its neighbours to each other instead, as a star of resistors is
// made a mesh. Nothing is ever subtracted, so that a great conductance beside
// a tiny one costs no figures.
type mesh struct {
	place []int // of each node among the free ones; -1 where it is held
	tied  [][]float64
	held  []float64 // conductance to held nodes
	in    []float64
	deg   []int // how many free nodes each is tied to
}

func newMesh(n *Network) *mesh {
	m := &mesh{place: make([]int, len(n.Nodes))}
	free := 0
	for i, node := range n.Nodes {
		m.place[i] = -1
		if !node.Held {
			m.place[i] = free
			free++
		}
	}
	all := make([]float64, free*free)
	for i := range free {
		m.tied = append(m.tied, all[i*free:(i+1)*free])
	}
	m.held, m.in, m.deg = make([]float64, free), make([]float64, free), make([]int, free)
	return m
}

// tie adds a conductance between two nodes.
func (m *mesh) tie(a, b int, g float64) {
	i, j := m.place[a], m.place[b]
	switch {
	case i >= 0 && j >= 0:
		m.join(i, j, g)
	case i >= 0:
		m.held[i] += g
	case j >= 0:
		m.held[j] += g
	}
}

func (m *mesh) join(i, j int, g float64) {
	if m.tied[i][j] == 0 && g > 0 {
		m.deg[i]++
		m.deg[j]++
	}
	m.tied[i][j] += g
	m.tied[j][i] += g
}

// put adds what flows into a node from outside the mesh.
func (m *mesh) put(node int, q float64) {
	if i := m.place[node]; i >= 0 {
		m.in[i] += q
	}
}

// solve gives the potential of every node, held ones at nought. Every free
// node must have a way to a held one.
func (m *mesh) solve() []float64 {
	free := len(m.in)
	type taken struct {
		node       int
		conducts   float64
		neighbours []int
	}
	var order []taken
	out := make([]bool, free)
	for range free {
		k := -1
		for i := range free {
			if !out[i] && (k < 0 || m.deg[i] < m.deg[k]) {
				k = i
			}
		}
		t := taken{node: k, conducts: m.held[k]}
		for j, g := range m.tied[k] {
			if g > 0 && !out[j] {
				t.neighbours = append(t.neighbours, j)
				t.conducts += g
			}
		}
		out[k] = true
		order = append(order, t)
		for a, i := range t.neighbours {
			share := m.tied[k][i] / t.conducts
			m.held[i] += share * m.held[k]
			m.in[i] += share * m.in[k]
			m.deg[i]--
			for _, j := range t.neighbours[a+1:] {
				m.join(i, j, share*m.tied[k][j])
			}
		}
	}
	x := make([]float64, free)
	for n := free - 1; n >= 0; n-- {
		t := order[n]
		sum := m.in[t.node]
		for _, j := range t.neighbours {
			sum += m.tied[t.node][j] * x[j]
		}
		x[t.node] = sum / t.conducts
	}
	change := make([]float64, len(m.place))
	for i, at := range m.place {
		if at >= 0 {
			change[i] = x[at]
		}
	}
	return change
}
