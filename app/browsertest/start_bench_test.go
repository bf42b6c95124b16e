//go:build browser

package browsertest

import (
	"net/http"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/stretchr/testify/require"

	"riserwork/app/serve"
)

// A cheap phone on a slow line.
const (
	slowdown  = 4
	bytesPerS = 1.6e6 / 8
	latency   = 150 * time.Millisecond
)

// BenchmarkStart prints when the page can be used, from the start of the
// navigation: cold with nothing kept, warm with all kept; and when its first
// content is painted. Beside it stands a page that only counts taps, on the
// framework's own loader.
func BenchmarkStart(b *testing.B) {
	site, err := serve.Load(built)
	require.NoError(b, err)
	tests := []struct {
		name, usable string
		site         http.Handler
	}{
		{"riserwork", "html[data-ready]", site},
		{"counter", "button", counterSite(b)},
	}
	for _, test := range tests {
		b.Run(test.name, func(b *testing.B) {
			var cold, warm, paint float64
			for range b.N {
				p := newAt(b, Phone, slowLine(test.site))
				p.slowCPU(slowdown)
				p.noteWhen(test.usable)
				p.Open("/")
				cold += p.usable()
				paint += Eval[float64](p, `performance.getEntriesByName("first-contentful-paint")[0].startTime`)
				Eval[bool](p, `navigator.serviceWorker.ready.then(() => true)`)
				p.Reload()
				warm += p.usable()
				p.Faults()
			}
			n := float64(b.N)
			b.ReportMetric(cold/n, "ms-cold")
			b.ReportMetric(warm/n, "ms-warm")
			b.ReportMetric(paint/n, "ms-paint")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// slowCPU makes the page's processor so many times slower.
func (p *Page) slowCPU(times float64) {
	p.t.Helper()
	_, err := chromedp.Call(p.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: times})
	require.NoError(p.t, err)
}

// noteWhen keeps the time, in ms from the start of the navigation, at which an
// element is there.
func (p *Page) noteWhen(css string) {
	p.t.Helper()
	_, err := chromedp.Call(p.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `(function look() {
			if (document.querySelector("` + css + `")) globalThis.usableAt = performance.now();
			else requestAnimationFrame(look);
		})()`,
	})
	require.NoError(p.t, err)
}

func (p *Page) usable() float64 {
	p.t.Helper()
	p.WaitTrue(`globalThis.usableAt > 0`)
	return Eval[float64](p, `globalThis.usableAt`)
}

// counterSite is the counter as the framework hands it out, its program
// compressed as ours is.
func counterSite(b *testing.B) http.Handler {
	dir := b.TempDir()
	require.NoError(b, os.CopyFS(dir, os.DirFS(filepath.Join("..", "..", "web"))))
	program, err := os.ReadFile(filepath.Join("..", "..", ".bin", "counter.wasm"))
	require.NoError(b, err)
	require.NoError(b, os.WriteFile(filepath.Join(dir, "build", "app.wasm"), program, 0o644))
	require.NoError(b, serve.Build(dir, serve.Pages{}, true))
	files, err := serve.Load(filepath.Join(dir, "build"))
	require.NoError(b, err)

	app.Route("/", &empty{})
	all := http.NewServeMux()
	all.Handle("/web/", http.StripPrefix("/web", files))
	// Without icons of our own its worker asks another host for some.
	const icon = "/web/icon-192.png"
	all.Handle("/", &app.Handler{Name: "Counter", Icon: app.Icon{Default: icon, Large: icon, SVG: icon, AppleTouch: icon}})
	return all
}

// empty is what the framework's server knows of the counter.
type empty struct{ app.Compo }

// Render shows nothing.
func (e *empty) Render() app.UI { return app.Div() }

// slowLine answers as over the line of a phone: each answer begins late, and
// all share so many bytes a second.
func slowLine(site http.Handler) http.Handler {
	line := &line{free: time.Now()}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		time.Sleep(latency)
		site.ServeHTTP(&slowWriter{w, line}, r)
	})
}

// line is when the line is free again.
type line struct {
	mu   sync.Mutex
	free time.Time
}

func (l *line) take(bytes int) {
	l.mu.Lock()
	if now := time.Now(); l.free.Before(now) {
		l.free = now
	}
	l.free = l.free.Add(time.Duration(float64(bytes) / bytesPerS * float64(time.Second)))
	until := l.free
	l.mu.Unlock()
	time.Sleep(time.Until(until))
}

type slowWriter struct {
	http.ResponseWriter
	line *line
}

func (w *slowWriter) Write(data []byte) (int, error) {
	const piece = 4 << 10
	sent := 0
	for len(data) > 0 {
		n := min(piece, len(data))
		w.line.take(n)
		m, err := w.ResponseWriter.Write(data[:n])
		sent += m
		if err != nil {
			return sent, err
		}
		if f, ok := w.ResponseWriter.(http.Flusher); ok {
			f.Flush()
		}
		data = data[n:]
	}
	return sent, nil
}
