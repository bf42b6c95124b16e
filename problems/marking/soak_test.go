package marking_test

import (
	"math"
	"math/rand/v2"
	"sync/atomic"
	"testing"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
)

// BenchmarkSoak draws problems over the whole catalogue, solves each on both
// roads, writes it rightly in one of the writings and marks it. None may be
// refused. A long run: -bench Soak -benchtime 1000000x.
func BenchmarkSoak(b *testing.B) {
	all := skills.All()
	var next atomic.Int64
	b.RunParallel(func(pb *testing.PB) {
		for pb.Next() {
			n := next.Add(1) - 1
			skill := all[n%int64(len(all))]
			h := houses[n/int64(len(all))%int64(len(houses))]
			p, err := problems.New(skill, uint64(n), h)
			if err != nil {
				b.Errorf("%s, seed %d: %v", skill.ID, n, err)
				continue
			}
			got, want := p.Answer().Value, p.Answer().Unit.FromSI(skill.Solve(p.World()))
			if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
				b.Errorf("%s: the rules give %v, the solver %v", name(p), got, want)
			}
			rng := rand.New(rand.NewPCG(uint64(n), 0))
			w := writings[rng.IntN(len(writings))]
			l := w.learner
			l.rng = rng
			lines := l.work(p, nil)
			if bad := firstRefused(marking.Blanks(p, lines)); bad != "" {
				b.Errorf("%s, %s: %q: %s", name(p), w.name, lines, bad)
			}
		}
	})
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "problems/s")
}
