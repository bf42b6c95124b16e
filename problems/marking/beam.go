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
	beamWidth      = 6
)

// partial is one way to tie lines to the steps so far.
type partial struct {
	tie  []int // by step: the line, or -1
	used []bool
	last int // the highest line used
	own  []own
	cost float64
}

// tie finds for each step the line that answers it best, -1 for none.
func (m *sheet) tie(texts []string) []int {
	readings := make([][]reading, len(texts))
	fixed := make([]int, len(texts))
	for l, t := range texts {
		readings[l], _ = readLine(m.p, t)
		fixed[l] = m.labelled(readings[l])
	}
	beam := []partial{{tie: nil, used: make([]bool, len(texts)), last: -1, own: make([]own, len(m.p.Steps))}}
	for i := range m.p.Steps {
		var next []partial
		for _, b := range beam {
			hidden := costHidden
			if i == len(m.p.Steps)-1 {
				hidden = costNotAnswer
			}
			next = append(next, b.with(i, -1, own{}, hidden))
			for l := range texts {
				if b.used[l] || len(readings[l]) == 0 || fixed[l] >= 0 && fixed[l] != i {
					continue
				}
				copy(m.own, b.own)
				j, ok := m.best(i, readings[l], false)
				if !ok || j.num.raw && j.verdict != WrongUnit && fixed[l] != i {
					continue
				}
				cost := j.cost()
				if j.num.turned {
					cost += costOtherUnit
				}
				if l < b.last {
					cost += costOutOfOrder
				}
				if fixed[l] == i {
					cost -= costUntied
				}
				if i == len(m.p.Steps)-1 && l != len(texts)-1 {
					cost += 0.05
				}
				m.keep(i, j)
				next = append(next, b.with(i, l, m.own[i], cost))
			}
		}
		slices.SortStableFunc(next, func(a, b partial) int {
			x, y := a.cost+m.owed(a, i+1, readings), b.cost+m.owed(b, i+1, readings)
			switch {
			case x < y:
				return -1
			case x > y:
				return 1
			}
			return 0
		})
		beam = next[:min(len(next), beamWidth)]
	}
	clear(m.own)
	return beam[0].tie
}

// with is the partial with one more step tied.
func (b partial) with(step, line int, o own, cost float64) partial {
	n := partial{tie: append(slices.Clone(b.tie), line), used: b.used, last: b.last, own: b.own, cost: b.cost + cost}
	if line >= 0 {
		n.used = slices.Clone(b.used)
		n.used[line] = true
		n.own = slices.Clone(b.own)
		n.own[step] = o
		n.last = max(n.last, line)
	}
	return n
}

// owed is what the lines cost that no step is left for, by their unit.
func (m *sheet) owed(b partial, from int, readings [][]reading) float64 {
	owed := 0
	counted := make([]bool, len(readings))
	for l, r := range readings {
		if b.used[l] || counted[l] || len(r) == 0 {
			continue
		}
		lines, steps := 0, 0
		for k := l; k < len(readings); k++ {
			if !b.used[k] && len(readings[k]) > 0 && sameKind(readings[k][0], r[0]) {
				counted[k] = true
				lines++
			}
		}
		for _, s := range m.p.Steps[from:] {
			if !r[0].hasUnit || s.Unit.Dim == r[0].unit.Dim {
				steps++
			}
		}
		owed += max(0, lines-steps)
	}
	return costUntied * float64(owed)
}

func sameKind(a, b reading) bool {
	return a.hasUnit == b.hasUnit && a.unit.Dim == b.unit.Dim
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
