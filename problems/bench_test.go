package problems_test

import (
	"testing"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// BenchmarkNew draws problems over the whole catalogue.
func BenchmarkNew(b *testing.B) {
	all := skills.All()
	for i := 0; b.Loop(); i++ {
		if _, err := problems.New(all[i%len(all)], uint64(i), problems.Defaults); err != nil {
			b.Fatal(err)
		}
	}
}
