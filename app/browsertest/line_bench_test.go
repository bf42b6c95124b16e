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

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/performance"
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
// page, for the longest problem of the catalogue: by the clock on a processor
// slowed down to that of a cheap phone, and so many times the work of the
// page's own thread, which other programs of the machine do not lengthen.
func BenchmarkVerdict(b *testing.B) {
	longest := skills.All()[0]
	for _, s := range skills.All() {
		if len(s.Rules) > len(longest.Rules) {
			longest = s
		}
	}
	p := New(b, Phone)
	_, err := chromedp.Call(p.ctx, performance.Enable, performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks})
	require.NoError(b, err)
	var clock, work []float64
	for seed := 1; seed <= 8; seed++ {
		p.slowCPU(1)
		p.Open("/work?skill=" + longest.ID + "&seed=" + strconv.Itoa(seed))
		p.arrive("work")
		d := p.problem()
		for _, times := range []float64{1, slowdown} {
			p.slowCPU(times)
			for i := range d.Steps {
				if len(d.Steps[i].Choices) > 0 {
					continue
				}
				for _, text := range []string{odd(d, i), rightText(&d.Steps[i])} {
					p.write(i, text)
					before := p.busy()
					took := p.verdict(i)
					if times == 1 {
						work = append(work, slowdown*(p.busy()-before))
					} else {
						clock = append(clock, took)
					}
				}
			}
		}
	}
	fmt.Printf("\nfrom Enter to the verdict in the page in ms, %s, %d steps, %d lines\n", longest.ID, len(longest.Rules), len(clock))
	for name, list := range map[string][]float64{"clock": clock, "work": work} {
		slices.Sort(list)
		b.ReportMetric(list[len(list)/2], "ms-"+name+"-median")
		b.ReportMetric(list[len(list)*99/100], "ms-"+name+"-99%")
	}
	b.ReportMetric(0, "ns/op")
}

// odd is a number for step i that nothing explains.
func odd(d *problems.Problem, i int) string {
	s := &d.Steps[i]
	return plain(s.Text(1.3717 * s.Value))
}

// busy is how long the page's thread has worked, in ms.
func (p *Page) busy() float64 {
	p.t.Helper()
	r, err := chromedp.Call(p.ctx, performance.GetMetrics, cdp.Empty{})
	require.NoError(p.t, err)
	for _, m := range r.Metrics {
		if m.Name == "TaskDuration" {
			return 1000 * m.Value
		}
	}
	require.FailNow(p.t, "the browser does not tell how long its thread worked")
	return 0
}

// write puts a text on line i and waits until the page has rested.
func (p *Page) write(i int, text string) {
	p.t.Helper()
	Eval[bool](p, `new Promise((done) => {
		const box = document.querySelector("`+box(i)+`");
		box.focus();
		box.value = `+strconv.Quote(text)+`;
		box.dispatchEvent(new Event("input", { bubbles: true }));
		setTimeout(() => done(true), 100);
	})`)
}

// verdict presses Enter on line i and gives the time in ms until what is found
// stands in the page.
func (p *Page) verdict(i int) float64 {
	p.t.Helper()
	return Eval[float64](p, `new Promise((done) => {
		const box = document.querySelector("`+box(i)+`"), finding = document.querySelector("`+finding(i)+`");
		const start = performance.now();
		new MutationObserver((changes, self) => {
			if (!finding.querySelector(".word")) return;
			self.disconnect();
			done(performance.now() - start);
		}).observe(finding, { childList: true, subtree: true, characterData: true });
		box.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true, cancelable: true }));
	})`)
}
