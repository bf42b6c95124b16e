package solver_test

import (
	"encoding/csv"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// limits of the profiles by the words of testdata/code_limits.csv.
func limit(p *solver.Profile, name string) solver.Limit {
	switch name {
	case "static max":
		return p.StaticMax
	case "recirculation length":
		return p.Recirculation.Length
	case "fixture hot":
		return p.FixtureHot
	case "suction min":
		return p.SuctionMin
	case "shower min":
		return p.ShowerMin
	}
	return solver.Limit{}
}

// Each limit against the row read or recalled from the code, with its source
// and confidence in the table.
func TestLimitsAreThoseOfTheCodes(t *testing.T) {
	f, err := os.Open("../testdata/code_limits.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 9)
	for _, r := range rows[1:] {
		p, ok := solver.ProfileByID(r[0])
		require.True(t, ok, r[0])
		l := limit(p, r[1])
		us, err := unit.Read(r[2])
		require.NoError(t, err)
		si, err := unit.Read(r[3])
		require.NoError(t, err)
		assert.Equal(t, us.Value, l.US.Value, "%s %s", r[0], r[1])
		assert.Equal(t, us.Unit.Name, l.US.Unit.Name, "%s %s", r[0], r[1])
		assert.Equal(t, si.Value, l.SI.Value, "%s %s", r[0], r[1])
		assert.Equal(t, si.Unit.Name, l.SI.Unit.Name, "%s %s", r[0], r[1])
		if r[7] == "from memory" {
			assert.Equal(t, solver.Memory, l.Confidence, "%s %s: recalled, not read", r[0], r[1])
		}
	}
}

func TestTheTwoPrintsOfALimitAgree(t *testing.T) {
	for _, p := range solver.Profiles {
		for _, name := range []string{"static max", "fixture hot", "suction min", "shower min"} {
			l := limit(&p, name)
			require.InEpsilon(t, l.SI.SI(), l.US.SI(), 0.02, "%s %s", p.ID, name)
			require.NotEmpty(t, l.Words, "%s %s", p.ID, name)
			require.NotEmpty(t, l.Confidence, "%s %s", p.ID, name)
			if !l.None && p.ID != "shop" {
				require.NotEmpty(t, l.Section, "%s %s", p.ID, name)
			}
			if l.None && p.ID != "shop" {
				require.NotEqual(t, solver.Confirmed, l.Confidence, "%s %s: no rule, so practice", p.ID, name)
			}
		}
	}
}

// The connective decides at the limit itself: "more than" leaves it out.
func TestRecirculationIsAskedByTheWordsOfTheCode(t *testing.T) {
	const m = unit.Metre
	for _, c := range []struct {
		code    string
		length  unit.Length
		storeys int
		want    bool
	}{
		{"npc", 30 * m, 4, false},
		{"npc", 30.1 * m, 2, true},
		{"npc", 12 * m, 5, true},
		{"npc", 12 * m, 4, false},
		{"ipc", 15.24 * m, 12, false},
		{"ipc", 15.5 * m, 1, true},
		{"upc", 500 * m, 40, false},
		{"shop", 31 * m, 2, true},
	} {
		p, ok := solver.ProfileByID(c.code)
		require.True(t, ok)
		assert.Equal(t, c.want, p.Recirculation.Required(c.length, c.storeys), "%s %v %d", c.code, c.length, c.storeys)
	}
	orMore := solver.RecirculationRule{Length: solver.Limit{None: true}, Storeys: 4, OrMore: true}
	assert.True(t, orMore.Required(0, 4), "four storeys or higher")
	assert.False(t, orMore.Required(0, 3))
}

func TestConstantsAreTaughtInTheirUnits(t *testing.T) {
	for _, c := range solver.Constants {
		for _, taught := range []solver.Taught{c.US, c.SI} {
			_, err := unit.Parse(taught.Unit)
			require.NoError(t, err, "%s: %s", c.Name, taught.Unit)
			require.NotEmpty(t, taught.Accept, c.Name)
		}
	}
}
