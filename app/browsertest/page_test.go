//go:build browser

package browsertest

import (
	"net/http"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPageOpens(t *testing.T) {
	for _, size := range []Viewport{Phone, Desk} {
		t.Run(size.Name, func(t *testing.T) {
			p := New(t, size)
			p.Open("/")
			p.WaitReady()
			assert.Zero(t, p.Count("#start"), "the loading text is gone")
			assert.NotEmpty(t, p.Text("body > :first-child"))
			assert.False(t, Eval[bool](p, `document.getElementById("notice").checkVisibility()`), "no notice is shown")
			p.Fits()
			p.Screenshot("open-" + size.Name)
		})
	}
}

func TestOffline(t *testing.T) {
	p := New(t, Phone)
	p.Open("/")
	p.WaitReady()
	p.WaitOffline()
	title := Eval[string](p, `document.title`)

	p.StopServer()
	_, err := http.Get(p.origin + "/")
	require.Error(t, err, "the server is gone")

	p.Reload()
	p.WaitReady()
	assert.Equal(t, title, Eval[string](p, `document.title`))
	for _, path := range []string{"/", "/work", "/?a=b", "/index.html"} {
		p.Open(path)
		p.WaitReady()
	}
	p.Open("/deep/down")
	p.WaitReady()
	assert.Equal(t, "/", Eval[string](p, `location.pathname`), "a deep address leads to the start")
}

// A program that does not start leaves the text that says what the page is,
// and a notice.
func TestProgramBroken(t *testing.T) {
	p := newOver(t, Phone, brokenSite(t))
	p.Open("/")
	p.WaitText("#notice", "The program could not be started")
	assert.Contains(t, p.Text("#start"), "It is a study aid and not a design tool.")
	assert.Empty(t, Eval[string](p, `document.documentElement.dataset.ready ?? ""`))
	p.Fits()
	p.Screenshot("broken")
	p.Click("#notice-reload")
	p.WaitText("#notice", "The program could not be started")
}

// brokenSite is the built site with a program that is none.
func brokenSite(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(built)))
	for _, ending := range []string{".br", ".gz"} {
		require.NoError(t, os.RemoveAll(filepath.Join(dir, "app.wasm"+ending)))
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, "app.wasm"), []byte("not a program"), 0o644))
	return dir
}
