//go:build browser

package browsertest

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"riserwork/app/serve"
)

// built is the folder of the built site.
var built = filepath.Join("..", "..", "web", "build")

// patience is how long a page has for one thing that is asked of it.
const patience = 60 * time.Second

// Viewport is a size of the page in CSS pixels.
type Viewport struct {
	Name          string
	Width, Height int64
	Touch         bool
}

// The sizes that every page is looked at.
var (
	Phone = Viewport{"phone", 390, 844, true}
	Desk  = Viewport{"desk", 1280, 800, false}
)

// Page is a tab of a fresh browser over a server of its own. A test fails if
// the page writes an error or a warning to the console or asks for anything
// from another origin.
type Page struct {
	t      testing.TB
	ctx    context.Context
	origin string
	stop   func() // stops the server
	faults faults
}

// New starts the server, of the built site, and the browser.
func New(t testing.TB, size Viewport) *Page {
	t.Helper()
	return newOver(t, size, built)
}

func newOver(t testing.TB, size Viewport, dir string) *Page {
	t.Helper()
	site, err := serve.Load(dir)
	require.NoError(t, err)
	return newAt(t, size, site)
}

// newAt starts the browser over a server of one's own.
func newAt(t testing.TB, size Viewport, site http.Handler) *Page {
	t.Helper()
	p := &Page{t: t}
	p.answer(site)
	p.browse()
	p.watch()
	p.Resize(size)
	t.Cleanup(p.checkFaults)
	return p
}

// answer starts a server on a free port.
func (p *Page) answer(site http.Handler) {
	p.t.Helper()
	l, err := serve.Listen("127.0.0.1:0")
	require.NoError(p.t, err)
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- serve.Serve(ctx, l, site) }()
	stopped := false
	p.origin = "http://" + l.Addr().String()
	p.stop = func() {
		if stopped {
			return
		}
		stopped = true
		cancel()
		require.NoError(p.t, <-done)
	}
	p.t.Cleanup(p.stop)
}

// browse opens a tab in a new browser with an empty profile.
func (p *Page) browse() {
	p.t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(browser(p.t)),
		chromedp.NoSandbox,
		chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
	)
	alloc, stopAlloc := chromedp.NewExecAllocator(context.Background(), options...)
	tab, closeTab := chromedp.NewContext(alloc)
	p.ctx = tab
	p.t.Cleanup(func() {
		closeTab()
		stopAlloc()
	})
	// The first call starts the browser and may carry no deadline.
	require.NoError(p.t, chromedp.Do(tab))
}

// browser is the path of the browser program.
func browser(t testing.TB) string {
	t.Helper()
	names := []string{"chromium", "chromium-browser", "google-chrome", "chrome"}
	if own := os.Getenv("CHROMIUM"); own != "" {
		names = []string{own}
	}
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	require.FailNow(t, "no browser was found", "expected one of %s on the path", strings.Join(names, ", "))
	return ""
}

// watch collects what the test fails on.
func (p *Page) watch() {
	p.t.Helper()
	messages := chromedp.Console(p.ctx)
	requests := chromedp.Events(p.ctx, network.RequestWillBeSent)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			if m.Type == "error" || m.Type == "warning" || m.Type == chromedp.ConsoleException {
				p.faults.add(fmt.Sprintf("console %s: %s (%s:%d)", m.Type, m.Text, m.URL, m.Line+1))
			}
		}
	}()
	go func() {
		for e, err := range requests {
			if err != nil {
				return
			}
			url := e.Request.URL
			if !strings.HasPrefix(url, p.origin+"/") && !strings.HasPrefix(url, "blob:"+p.origin) && !strings.HasPrefix(url, "data:") {
				p.faults.add("request that leaves the origin: " + url)
			}
		}
	}()
}

// StopServer stops the server, as if the connection were lost.
func (p *Page) StopServer() {
	p.t.Helper()
	p.stop()
}
