//go:build browser

package browsertest

import (
	"archive/zip"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"riserwork/problems/sets"
)

// BenchmarkClass prints how long a class of 1,000 hand-ins of ten problems
// takes on the page, and the longest the page stood still.
func BenchmarkClass(b *testing.B) {
	const learners = 1000
	s := &sets.Set{Title: "Large", Help: sets.NoHelp, Own: true, Number: 9}
	s.House.System, s.House.Code = "us", "shop"
	require.NoError(b, s.Draw(sets.Blueprint{Chapter: 1, Count: 5, Kind: sets.Guided}))
	require.NoError(b, s.Draw(sets.Blueprint{Chapter: 2, Count: 5, Kind: sets.Guided}))
	path := filepath.Join(b.TempDir(), "class.zip")
	f, err := os.Create(path)
	require.NoError(b, err)
	z := zip.NewWriter(f)
	for n := range learners {
		h := sets.New(s, fmt.Sprintf("Learner %04d", n))
		h.Written = "2026-11-02T09:40"
		for i := range s.Items {
			task, err := s.Task(i, h.Learner)
			require.NoError(b, err)
			h.Work[i] = task.Of()
			h.Work[i].Lines = right(i, &task)
			if (n+i)%3 == 0 {
				h.Work[i].Lines[0] = "12.5"
			}
		}
		w, err := z.Create(h.FileName())
		require.NoError(b, err)
		_, err = w.Write(h.File())
		require.NoError(b, err)
	}
	require.NoError(b, z.Close())
	require.NoError(b, f.Close())

	p := New(b, Desk)
	p.Open("/class")
	p.WaitReady()
	Eval[bool](p, `(window.longest = 0, new PerformanceObserver((l) => { for (const e of l.getEntries()) longest = Math.max(longest, e.duration); }).observe({ type: "longtask" }), true)`)
	begun := time.Now()
	p.do("choosing files", chromedp.SetUploadFiles(chromedp.CSS("#files"), []string{path}))
	for Eval[int](p, `document.querySelectorAll("#counted").length`) == 0 {
		require.Less(b, time.Since(begun), 10*time.Minute)
		time.Sleep(200 * time.Millisecond)
	}
	took := time.Since(begun)
	p.WaitText("#kept", "Kept")
	p.WaitText("#counted", "1000 learners")
	longest := Eval[float64](p, `window.longest`)
	fmt.Printf("%d hand-ins of %d problems: %.1f s, the longest task %.0f ms\n", learners, len(s.Items), took.Seconds(), longest)
	b.ReportMetric(longest, "ms/longest")
}
