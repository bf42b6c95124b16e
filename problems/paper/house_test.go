package paper

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// houses are houses unlike the default one: every other code, and constants
// as other schools round them.
func houses() []problems.House {
	var list []problems.House
	for i := range solver.Profiles {
		id := solver.Profiles[i].ID
		if id == problems.Defaults.Code {
			continue
		}
		for _, sys := range systems {
			list = append(list, problems.House{System: sys, Code: id})
		}
	}
	return append(list,
		problems.House{System: unit.US, Code: "shop", TopMin: 30, Constants: []problems.Pick{{Name: "gamma", Text: "0.434"}, {Name: "water_heat", Text: "8.34"}}},
		problems.House{System: unit.Metric, Code: "shop", TopMin: 200, Constants: []problems.Pick{{Name: "gamma", Text: "9.8"}, {Name: "flow_heat", Text: "4.18"}}},
		problems.House{System: unit.Mixed, Code: "npc", Constants: []problems.Pick{{Name: "gamma", Text: "9.8"}, {Name: "kpa_per_psi", Text: "6.89"}}},
	)
}

// Papers are drawn and right ones get full marks under every code and with
// other constants.
func TestOtherHouses(t *testing.T) {
	t.Parallel()
	for _, h := range houses() {
		for _, size := range Sizes {
			for seed := range seeds(10) {
				p, err := New(size, seed, h)
				require.NoError(t, err, "%+v %s %d", h, size, seed)
				require.GreaterOrEqual(t, len(p.Parts), MinParts)
				work, possible := write(p, figures(3), -1, -1, nil)
				require.True(t, possible, "%+v %s %d", h, size, seed)
				m := p.Mark(work, Blanks)
				for i := range m.Parts {
					r := &m.Parts[i]
					assert.Equal(t, r.Of, r.Marks, "%+v %s %d %s: %q %v", h, size, seed, p.Parts[i].Name, work[i], says(r))
				}
			}
		}
	}
}

// Marking one part again comes to the same as marking the paper.
func TestAgainIsTheWholePaper(t *testing.T) {
	t.Parallel()
	for _, sys := range systems {
		p := mustNew(t, 3, sys)
		work, possible := write(p, figures(3), -1, -1, nil)
		require.True(t, possible)
		m := p.Mark(work, Blanks)
		for i := range p.Parts {
			right := work[i]
			for _, lines := range [][]string{{right[0] + "7"}, right} {
				work[i] = lines
				p.Again(&m, i, work, Blanks)
				want := p.Mark(work, Blanks)
				require.Equal(t, want.Marks, m.Marks)
				for k := range want.Parts {
					require.Equal(t, want.Parts[k].Carried, m.Parts[k].Carried)
					require.Equal(t, fmt.Sprint(want.Parts[k].Lines), fmt.Sprint(m.Parts[k].Lines), "part %d after %d", k, i)
				}
			}
		}
	}
}
