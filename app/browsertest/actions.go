//go:build browser

package browsertest

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// do runs steps within the patience of one action.
func (p *Page) do(says string, steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		require.FailNow(p.t, says+": "+err.Error(), "the page shows:\n%s\nand reported: %q", p.visible(), p.faults.take())
	}
}

// visible is the text of the page, for reports.
func (p *Page) visible() string {
	ctx, cancel := context.WithTimeout(p.ctx, 5*time.Second)
	defer cancel()
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.body.innerText`))
	if err != nil {
		return "(not to be read: " + err.Error() + ")"
	}
	return text
}

// Eval is the value of a JavaScript expression; a promise is awaited.
func Eval[T any](p *Page, js string) T {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](js, chromedp.EvalAwaitPromise))
	require.NoError(p.t, err, js)
	return v
}

// Open goes to a path of the site.
func (p *Page) Open(path string) {
	p.t.Helper()
	p.do("opening "+path, chromedp.Navigate(p.origin+path))
}

// Reload loads the page again.
func (p *Page) Reload() {
	p.t.Helper()
	p.do("reloading", chromedp.Reload())
}

// WaitReady waits until the program has put its first page in place.
func (p *Page) WaitReady() {
	p.t.Helper()
	p.WaitFor("html[data-ready]")
}

// WaitFor waits until an element is there.
func (p *Page) WaitFor(css string) {
	p.t.Helper()
	p.do("waiting for "+css, chromedp.WaitReady(chromedp.CSS(css)))
}

// WaitOffline waits until the worker answers for the page, so that it opens
// without the server.
func (p *Page) WaitOffline() {
	p.t.Helper()
	Eval[bool](p, `navigator.serviceWorker.ready.then(() => new Promise((done) => {
		if (navigator.serviceWorker.controller) done(true);
		else navigator.serviceWorker.addEventListener("controllerchange", () => done(true), { once: true });
	}))`)
}

// Click clicks the first element that a CSS selector finds, once it is shown.
func (p *Page) Click(css string) {
	p.t.Helper()
	p.do("clicking "+css, chromedp.Click(chromedp.CSS(css), chromedp.NodeVisible))
}

// Type types at the end of what a box holds; "\n" is Enter.
func (p *Page) Type(css, text string) {
	p.t.Helper()
	p.do(fmt.Sprintf("typing %q into %s", text, css), chromedp.SendKeys(chromedp.CSS(css), text, chromedp.NodeVisible))
}

// Press presses keys in the element that has the focus; see the package kb
// for those that print nothing.
func (p *Page) Press(keys string) {
	p.t.Helper()
	p.do("pressing a key", chromedp.KeyEvent(keys))
}

// Text is the text that the first element found shows.
func (p *Page) Text(css string) string {
	p.t.Helper()
	p.WaitFor(css)
	return Eval[string](p, `document.querySelector(`+strconv.Quote(css)+`).innerText`)
}

// Value is what a box holds.
func (p *Page) Value(css string) string {
	p.t.Helper()
	p.WaitFor(css)
	return Eval[string](p, `document.querySelector(`+strconv.Quote(css)+`).value`)
}

// Count is how many elements a CSS selector finds.
func (p *Page) Count(css string) int {
	p.t.Helper()
	return Eval[int](p, `document.querySelectorAll(`+strconv.Quote(css)+`).length`)
}

// WaitText waits until the first element found shows a text.
func (p *Page) WaitText(css, text string) {
	p.t.Helper()
	p.WaitTrue(`document.querySelector(` + strconv.Quote(css) + `)?.innerText.includes(` + strconv.Quote(text) + `)`)
}

// WaitTrue waits until a JavaScript expression holds.
func (p *Page) WaitTrue(js string) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	for {
		// An error may only mean that another page is being loaded.
		holds, err := chromedp.Run(ctx, chromedp.Evaluate[bool](`Boolean(`+js+`)`))
		switch {
		case holds && err == nil:
			return
		case ctx.Err() != nil:
			require.FailNow(p.t, "waiting for "+js, "the last error was %v, the page shows:\n%s", err, p.visible())
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// Resize gives the page another size.
func (p *Page) Resize(v Viewport) {
	p.t.Helper()
	var options []chromedp.EmulateViewportOption
	if v.Touch {
		options = append(options, chromedp.EmulateMobile, chromedp.EmulateTouch, chromedp.EmulatePortrait)
	}
	p.do("resizing to "+v.Name, chromedp.EmulateViewport(v.Width, v.Height, options...))
}

// Fits checks that nothing makes the page wider than its window.
func (p *Page) Fits() {
	p.t.Helper()
	over := Eval[[]string](p, `[...document.body.querySelectorAll("*")]
		.filter((e) => document.documentElement.scrollWidth > innerWidth && e.getBoundingClientRect().right > innerWidth + 1)
		.map((e) => e.tagName + "#" + e.id + "." + e.getAttribute("class")).slice(0, 5)`)
	assert.Empty(p.t, over, "elements stand out of the window")
}

// Screenshot writes a picture of the window to the folder that SHOTS names.
// Without it nothing is written.
func (p *Page) Screenshot(name string) {
	p.t.Helper()
	dir := os.Getenv("SHOTS")
	if dir == "" {
		return
	}
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	picture, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	require.NoError(p.t, err)
	require.NoError(p.t, os.MkdirAll(dir, 0o755))
	require.NoError(p.t, os.WriteFile(filepath.Join(dir, name+".png"), picture, 0o644))
}
