package walk_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/marking"
	"riserwork/problems/walk"
	"riserwork/solver/formula"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var systems = []unit.System{unit.US, unit.Metric, unit.Mixed}

// each runs f over the walks of many seeds, all sizes and all systems.
func each(t *testing.T, seeds uint64, f func(t *testing.T, w *walk.Walk)) {
	if testing.Short() {
		seeds = 12
	}
	for _, sys := range systems {
		t.Run(string(sys), func(t *testing.T) {
			house := problems.Defaults
			house.System = sys
			for seed := uint64(1); seed <= seeds; seed++ {
				w, err := walk.New(walk.Sizes[seed%3].Size, seed, house)
				require.NoError(t, err, "seed %d", seed)
				f(t, w)
				if t.Failed() {
					t.Fatalf("seed %d, size %s", seed, w.Size)
				}
			}
		})
	}
}

func TestWalks(t *testing.T) {
	walks, drawn, stations, most := 0, 0, 0, 0
	each(t, 300, func(t *testing.T, w *walk.Walk) {
		walks, drawn, stations, most = walks+1, drawn+w.Drawn, stations+len(w.Stations), max(most, w.Drawn)
		agree(t, w)
		fallAndRise(t, w)
	})
	t.Logf("%d walks, %d stations; %d buildings drawn, at most %d for one walk", walks, stations, drawn, most)
}

// agree checks that every station has a device of the table, a number with its
// unit, and a sum that, worked out as it is printed, gives the number as it is
// printed.
func agree(t *testing.T, w *walk.Walk) {
	world := problems.World{House: w.House, Building: w.Building}
	seen := map[string]bool{}
	for i := range w.Stations {
		s := &w.Stations[i]
		d, ok := devices.ByID(s.Device.ID)
		require.True(t, ok, s.ID)
		assert.Same(t, d, s.Device)
		assert.False(t, seen[s.ID], "two stations are called %s", s.ID)
		seen[s.ID] = true
		assert.Equal(t, i, w.Index(s.ID))
		assert.NotEmpty(t, s.Place)
		assert.NotEmpty(t, s.Says)
		assert.NotEmpty(t, s.Device.Without)

		numbers, value, ok := strings.Cut(s.Line(), " = ")
		require.True(t, ok, s.Line())
		read, err := unit.Read(value)
		require.NoError(t, err, s.Line())
		assert.Equal(t, s.Of.Unit(w.House.System).Dim, read.Unit.Dim, s.Line())
		e, err := formula.Parse(numbers)
		require.NoError(t, err, s.Line())
		v, ok := e.EvalPlain()
		require.True(t, ok, s.Line())
		u := s.Of.Unit(w.House.System)
		assert.Equal(t, world.Read(*s.Of, s.SI), world.Read(*s.Of, u.SI(v)), "%s: %s", s.ID, s.Line())
		assert.Equal(t, s.Value, w.Text(s.Of, u.SI(v)), "%s: %s", s.ID, s.Line())
	}
}

// fallAndRise checks that along the way the pressure falls but at pumps and on the way down, never
// below what the top is to keep; the loop only cools; and the number of each
// station is the one that the building worked out as a whole has there.
func fallAndRise(t *testing.T, w *walk.Walk) {
	at := func(id string) float64 {
		i := w.Index(id)
		require.GreaterOrEqual(t, i, 0, id)
		return w.Stations[i].SI
	}
	order := []string{"street", "strainer", "meter", "backflow"}
	for i := 1; i < len(order); i++ {
		assert.Less(t, at(order[i]), at(order[i-1]), order[i])
	}
	entry := &w.Whole.Stretches[0]
	assert.InDelta(t, float64(entry.At.Design), at("backflow"), 1e-6)
	flowing := at("backflow")
	for i := range w.Stations {
		s := &w.Stations[i]
		if s.Part != walk.Up || s.State != walk.Flowing || s.Of.Name != measure.Pressure.Name || s.ID == "suction" {
			continue
		}
		if s.ID == "pump" {
			assert.Greater(t, s.SI, flowing, s.ID)
		} else {
			assert.Less(t, s.SI, flowing, s.ID)
		}
		flowing = s.SI
	}
	top := w.Whole.Floors[w.Building.Top()]
	assert.InDelta(t, float64(top.Cold.Highest.Design), at("top-flowing"), 1e-6)
	assert.InDelta(t, float64(top.Cold.Highest.NoFlow), at("top-still"), 1e-6)
	assert.InDelta(t, float64(top.Hot.Highest.Design), at("far-tap"), 1e-6)
	assert.GreaterOrEqual(t, at("top-flowing"), float64(w.Whole.Top)*(1-1e-9))
	assert.Greater(t, at("top-still"), at("top-flowing"))
	assert.Less(t, at("far-tap"), at("top-flowing"))
	most := float64(w.House.Profile().StaticMax.Highest())
	zones := 0
	for i := range w.Building.Zones {
		z := &w.Building.Zones[i]
		lowest := at("lowest-" + z.Name)
		zones++
		assert.InDelta(t, float64(w.Whole.Floors[z.Bottom].Cold.Lowest.NoFlow), lowest, 1e-6)
		assert.LessOrEqual(t, lowest, most*(1+1e-9), z.Name)
		if z.Top == w.Building.Top() {
			assert.Greater(t, lowest, at("top-still"))
		}
	}
	assert.Equal(t, len(w.Building.Zones), zones)
	last := math.Inf(1)
	for _, id := range []string{"mixing", "hot-foot", "hot-top", "back-foot"} {
		if i := w.Index(id); i >= 0 {
			assert.Less(t, w.Stations[i].SI, last, id)
			last = w.Stations[i].SI
		}
	}
	assert.Less(t, at("return"), at("mixing"))
	assert.InDelta(t, at("mixing")-at("return"), at("home"), 1e-6)
	parts := []walk.Part{walk.Street, walk.Up, walk.Down, walk.Heater, walk.Loop}
	assert.True(t, slices.IsSortedFunc(w.Stations, func(a, b walk.Station) int {
		return slices.Index(parts, a.Part) - slices.Index(parts, b.Part)
	}))
}

// The right number is taken as it is printed, with its unit and without, and
// as the sum; each slip's number is not, and is explained.
func TestTurns(t *testing.T) {
	turns, slips, named := 0, 0, 0
	each(t, 40, func(t *testing.T, w *walk.Walk) {
		n := 0
		for i := range w.Stations {
			s := &w.Stations[i]
			if !s.Turn {
				continue
			}
			n++
			assert.Equal(t, marking.Right, s.Judge(s.Value).Verdict, "%s: %s", s.ID, s.Value)
			assert.True(t, s.Judge(s.Line()).Verdict.Good(), "%s: %s", s.ID, s.Line())
			bare, _, _ := strings.Cut(strings.ReplaceAll(s.Value, "°", "\u00a0"), "\u00a0")
			assert.True(t, s.Judge(bare).Verdict.Good(), "%s: %q", s.ID, bare)
			env := s.Sum.Env()
			for k := range s.Sum.Steps[0].Wrongs {
				x := &s.Sum.Steps[0].Wrongs[k]
				f := s.Judge(s.Sum.Steps[0].Text(x.Bound.Eval(env)))
				assert.False(t, f.Verdict.Good(), "%s: %s", s.ID, x.ID)
				slips++
				if len(f.Slips) > 0 {
					named++
				}
			}
		}
		turns += n
		assert.GreaterOrEqual(t, n, 6, "stations that ask")
	})
	t.Logf("%d turns; %d of %d slips named from their bare number", turns, named, slips)
	assert.Greater(t, float64(named), 0.8*float64(slips))
}

// A size that is not known is the middle one, and the same three give the same
// walk.
func TestSameSeedSameWalk(t *testing.T) {
	a, err := walk.New("", 5, problems.Defaults)
	require.NoError(t, err)
	b, err := walk.New(walk.Middle, 5, problems.Defaults)
	require.NoError(t, err)
	assert.Equal(t, walk.Middle, a.Size)
	require.Equal(t, len(a.Stations), len(b.Stations))
	for i := range a.Stations {
		assert.Equal(t, a.Stations[i].Line(), b.Stations[i].Line())
	}
}
