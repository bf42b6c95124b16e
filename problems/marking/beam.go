package marking

import (
	"slices"
	"strings"
)

// Costs of tying free lines to steps; found by measurement on simulated
// working.
const (
	costHidden     = 0.01
	costOtherUnit  = 0.03
	costOutOfOrder = 0.15
	costUntied     = 1.25
	costNotAnswer  = 0.12
	costNotLast    = 0.05
	beamWidth      = 6
)

// partial is one way to tie lines to the steps so far.
type partial struct {
	tie  []int  // by step: the line, or -1
	used uint64 // a bit a line; at most maxLines
	last int    // the highest line used
	own  []own
	cost float64
}

// chosen is one way to go on from a partial: a line for the next step, or
// none.
type chosen struct {
	from int // index of the partial
	line int
	j    int     // index of what the line is judged to be
	cost float64 // of the whole tie
	owed float64 // and with what the lines cost that no step is left for
}

// free is the lines of a sheet that are not tied to steps.
type free struct {
	readings [][]reading
	why      []string // by line: why it was not read
	fixed    []int    // by line: the step that its own words name; -1
	kind     []int    // by line: which of the units; -1 where it is not read
	units    []reading
}

func (m *sheet) read(texts []string) free {
	n := len(texts)
	f := free{readings: make([][]reading, n), why: make([]string, n), fixed: make([]int, n), kind: make([]int, n)}
	for l, t := range texts {
		f.readings[l], f.why[l] = readLine(m.p, t)
		f.fixed[l], f.kind[l] = m.labelled(f.readings[l]), -1
		if len(f.readings[l]) == 0 {
			continue
		}
		r := f.readings[l][0]
		f.kind[l] = slices.IndexFunc(f.units, func(u reading) bool { return u.hasUnit == r.hasUnit && u.unit.Dim == r.unit.Dim })
		if f.kind[l] < 0 {
			f.kind[l] = len(f.units)
			f.units = append(f.units, r)
		}
	}
	return f
}

// tie finds for each step the line that answers it best, -1 for none.
func (m *sheet) tie(f free) []int {
	beam := []partial{{last: -1, own: make([]own, len(m.p.Steps))}}
	var next []chosen
	for i := range m.p.Steps {
		next, m.judged = next[:0], m.judged[:0]
		for b := range beam {
			next = m.ways(next, f, &beam[b], b, i)
		}
		steps := m.stepsLeft(f, i+1)
		for k := range next {
			used := beam[next[k].from].used
			if l := next[k].line; l >= 0 {
				used |= 1 << l
			}
			next[k].owed = next[k].cost + f.owed(used, steps)
		}
		slices.SortStableFunc(next, func(a, b chosen) int {
			switch {
			case a.owed < b.owed:
				return -1
			case a.owed > b.owed:
				return 1
			}
			return 0
		})
		was := beam
		beam = make([]partial, 0, beamWidth)
		for _, c := range next[:min(len(next), beamWidth)] {
			beam = append(beam, m.goOn(was[c.from], c, i))
		}
	}
	clear(m.own)
	return beam[0].tie
}

// ways adds the ways to go on from a partial with step i.
func (m *sheet) ways(next []chosen, f free, b *partial, index, i int) []chosen {
	last := i == len(m.p.Steps)-1
	hidden := costHidden
	if last {
		hidden = costNotAnswer
	}
	next = append(next, chosen{from: index, line: -1, cost: b.cost + hidden})
	var v *view
	for l := range f.readings {
		if b.used>>l&1 == 1 || len(f.readings[l]) == 0 || f.fixed[l] >= 0 && f.fixed[l] != i {
			continue
		}
		if v == nil {
			copy(m.own, b.own)
			v = m.look(i)
		}
		j, ok := m.best(v, f.readings[l], false)
		if !ok || !j.answers() && f.fixed[l] != i {
			continue
		}
		c := chosen{from: index, line: l, j: len(m.judged), cost: b.cost + j.cost()}
		m.judged = append(m.judged, j)
		if j.num.turned {
			c.cost += costOtherUnit
		}
		if l < b.last {
			c.cost += costOutOfOrder
		}
		if f.fixed[l] == i {
			c.cost -= costUntied
		}
		if last && l != len(f.readings)-1 {
			c.cost += costNotLast
		}
		next = append(next, c)
	}
	return next
}

// goOn is the partial with one more step tied.
func (m *sheet) goOn(b partial, c chosen, step int) partial {
	b.tie, b.cost = append(slices.Clone(b.tie), c.line), c.cost
	if c.line < 0 {
		return b
	}
	copy(m.own, b.own)
	m.keep(step, m.judged[c.j])
	b.own = slices.Clone(m.own)
	b.used |= 1 << c.line
	b.last = max(b.last, c.line)
	return b
}

// stepsLeft counts by unit the steps from the given one on that a line of
// that unit may answer.
func (m *sheet) stepsLeft(f free, from int) []int {
	steps := make([]int, len(f.units))
	for k, u := range f.units {
		for i := from; i < len(m.p.Steps); i++ {
			if !u.hasUnit || m.p.Steps[i].Unit.Dim == u.unit.Dim {
				steps[k]++
			}
		}
	}
	return steps
}

// owed is what the lines cost that no step is left for, by their unit.
func (f *free) owed(used uint64, steps []int) float64 {
	owed := 0
	for k := range f.units {
		lines := 0
		for l := range f.kind {
			if f.kind[l] == k && used>>l&1 == 0 {
				lines++
			}
		}
		owed += max(0, lines-steps[k])
	}
	return costUntied * float64(owed)
}

// labelled is the step that a line's own words name; -1 where they name none.
func (m *sheet) labelled(readings []reading) int {
	if len(readings) == 0 {
		return -1
	}
	label := strings.ToLower(strings.Trim(strings.ReplaceAll(readings[0].label, "_", " "), " :="))
	if label == "" {
		return -1
	}
	for i, s := range m.p.Steps {
		if label == strings.ReplaceAll(s.Name, "_", " ") || label == strings.ToLower(m.p.Fill(s.Says, m.p.Env())) {
			return i
		}
	}
	return -1
}
