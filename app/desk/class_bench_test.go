//go:build unix

package desk

import (
	"fmt"
	"runtime"
	"runtime/metrics"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"riserwork/problems/sets"
)

// benchClass writes n hand-ins of ten problems into a folder.
func benchClass(b *testing.B, n int) string {
	s := madeSet(b, "-own", "-chapter", "5:3")
	dir := b.TempDir()
	for i := range n {
		writeHandIn(b, dir, s, fmt.Sprintf("Learner %05d", i), i)
	}
	return dir
}

// BenchmarkClass marks whole classes with ten problems each, every learner
// with numbers of his own, and reports the processor's time for one hand-in,
// the memory that is kept for it, and the most that the heap came to.
func BenchmarkClass(b *testing.B) {
	for _, n := range []int{100, 1_000, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			dir := benchClass(b, n)
			var before, after runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&before)
			peak := peakHeap()
			start := processorTime(b)
			var c *sets.Class
			for b.Loop() {
				var err error
				c, err = classOf(nil, []string{dir})
				require.NoError(b, err)
			}
			used := processorTime(b) - start
			most := peak()
			runtime.GC()
			runtime.ReadMemStats(&after)
			require.Equal(b, n, c.Len())
			b.ReportMetric(used.Seconds()*1e3/float64(b.N)/float64(n), "ms-cpu/hand-in")
			b.ReportMetric((float64(after.HeapAlloc)-float64(before.HeapAlloc))/float64(n), "B-kept/hand-in")
			b.ReportMetric(float64(most)/(1<<20), "MiB-peak")
		})
	}
}

// processorTime is what all cores have worked for this process.
func processorTime(b *testing.B) time.Duration {
	var r syscall.Rusage
	require.NoError(b, syscall.Getrusage(syscall.RUSAGE_SELF, &r))
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// peakHeap watches the heap until it is asked for the most that it saw.
func peakHeap() (stop func() uint64) {
	end, most := make(chan struct{}), make(chan uint64)
	go func() {
		var top uint64
		sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
		for {
			metrics.Read(sample)
			top = max(top, sample[0].Value.Uint64())
			select {
			case <-end:
				most <- top
				return
			case <-time.After(10 * time.Millisecond):
			}
		}
	}()
	return func() uint64 { close(end); return <-most }
}
