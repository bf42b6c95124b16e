//go:build browser

package browsertest

import (
	"context"
	"fmt"
	"net/http"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// BenchmarkMarking prints how long the marker takes for a twelve-step problem
// in the browser, the processor slowed down to that of a cheap phone. It runs
// the benchmark of package marking, built for the browser.
func BenchmarkMarking(b *testing.B) {
	bin := filepath.Join("..", "..", ".bin")
	site := http.NewServeMux()
	site.HandleFunc("/{$}", func(w http.ResponseWriter, r *http.Request) {
		// Only a page that shares nothing with others has a clock of 5 µs.
		w.Header().Set("Cross-Origin-Opener-Policy", "same-origin")
		w.Header().Set("Cross-Origin-Embedder-Policy", "require-corp")
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprint(w, `<!doctype html><link rel="icon" href="data:,"><script src="/wasm_exec.js"></script>`)
	})
	site.HandleFunc("/wasm_exec.js", func(w http.ResponseWriter, r *http.Request) {
		http.ServeFile(w, r, filepath.Join(built, "wasm_exec.js"))
	})
	site.HandleFunc("/marking.wasm", func(w http.ResponseWriter, r *http.Request) {
		http.ServeFile(w, r, filepath.Join(bin, "marking.wasm"))
	})
	p := newAt(b, Phone, site)
	p.slowCPU(slowdown)
	p.Open("/")
	ctx, cancel := context.WithTimeout(p.ctx, 10*time.Minute)
	defer cancel()
	lines, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](`(() => {
		const said = [], go = new Go();
		console.log = (line) => said.push(line);
		go.argv = ["marking", "-test.run=^$", "-test.bench=OneLine", "-test.benchtime=1x"];
		return WebAssembly.instantiateStreaming(fetch("/marking.wasm"), go.importObject)
			.then(({ instance }) => go.run(instance)).then(() => said);
	})()`, chromedp.EvalAwaitPromise))
	require.NoError(b, err)
	for _, line := range lines {
		fmt.Println(line)
	}
	require.Contains(b, strings.Join(lines, "\n"), "PASS")
}

// BenchmarkVerdict prints the time from Enter on a line to the verdict in the
// page, for the longest problem of the catalogue on a cheap phone.
func BenchmarkVerdict(b *testing.B) {
	longest := skills.All()[0]
	for _, s := range skills.All() {
		if len(s.Rules) > len(longest.Rules) {
			longest = s
		}
	}
	p := New(b, Phone)
	var times []float64
	for seed := 1; seed <= 15; seed++ {
		p.slowCPU(1)
		p.Open("/work?skill=" + longest.ID + "&seed=" + strconv.Itoa(seed))
		p.arrive("work")
		p.slowCPU(slowdown)
		d := p.problem()
		for i := range d.Steps {
			if len(d.Steps[i].Choices) > 0 {
				continue
			}
			times = append(times, p.verdict(i, odd(d, i)), p.verdict(i, rightText(&d.Steps[i])))
		}
	}
	slices.Sort(times)
	n := len(times)
	fmt.Printf("\nfrom Enter to the verdict in the page, %s, %d steps, %d lines marked: median %.1f ms, 99 %% %.1f ms\n",
		longest.ID, len(longest.Rules), n, times[n/2], times[n*99/100])
	b.ReportMetric(times[n/2], "ms-median")
	b.ReportMetric(times[n*99/100], "ms-99%")
	b.ReportMetric(0, "ns/op")
}

// odd is a number for step i that nothing explains.
func odd(d *problems.Problem, i int) string {
	s := &d.Steps[i]
	return plain(s.Text(1.3717 * s.Value))
}

// verdict writes a line, presses Enter and gives the time in ms until what is
// found stands in the page.
func (p *Page) verdict(i int, text string) float64 {
	p.t.Helper()
	return Eval[float64](p, `new Promise((done) => {
		const box = document.querySelector("`+box(i)+`"), finding = document.querySelector("`+finding(i)+`");
		box.focus();
		box.value = `+strconv.Quote(text)+`;
		box.dispatchEvent(new Event("input", { bubbles: true }));
		setTimeout(() => {
			let start;
			new MutationObserver((changes, self) => {
				if (!finding.querySelector(".word")) return;
				self.disconnect();
				done(performance.now() - start);
			}).observe(finding, { childList: true, subtree: true, characterData: true });
			start = performance.now();
			box.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true, cancelable: true }));
		}, 100);
	})`)
}
