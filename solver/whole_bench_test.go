package solver_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/solver"
)

// BenchmarkWhole is a building with a booster, zones, hot water, loops and
// three open taps, over its storeys.
func BenchmarkWhole(b *testing.B) {
	for _, storeys := range []int{3, 14, 30, 60, 120} {
		b.Run(strconv.Itoa(storeys), func(b *testing.B) {
			o, _ := solver.TemplateNamed("tower")
			o.Storeys, o.Lifts, o.Suites = storeys, min(3, storeys/30), 4
			s := solver.Settings{Profile: profile(b, "ipc")}
			t, err := o.Building(s)
			require.NoError(b, err)
			shower, _ := solver.TapNamed("shower")
			c := solver.Case{Settings: s, Open: []solver.OpenTap{{Level: t.Top(), Tap: shower, Count: 1}, {Level: t.Top(), Tap: solver.Taps[5], Count: 1}, {Level: t.Ground, Tap: solver.Taps[3], Count: 2}}}
			b.ReportAllocs()
			for b.Loop() {
				_, err = solver.SolveWhole(t, c)
			}
			require.NoError(b, err)
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/float64(storeys), "us/storey")
		})
	}
}
