package serve_test

import (
	"io"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/serve"
)

func site(t *testing.T) *serve.Site {
	t.Helper()
	dir := source(t, nil)
	require.NoError(t, serve.Build(dir, pages, true))
	s, err := serve.Load(filepath.Join(dir, "build"))
	require.NoError(t, err)
	return s
}

// ask sends a request; headers come as name, value pairs.
func ask(h http.Handler, method, target string, headers ...string) *http.Response {
	r := httptest.NewRequest(method, target, nil)
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Add(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func body(t *testing.T, r *http.Response) string {
	t.Helper()
	data, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return string(data)
}

func TestAddresses(t *testing.T) {
	const page = "text/html; charset=utf-8"
	tests := []struct {
		path, mime string
		status     int
		to         string
	}{
		{"/", page, 200, ""},
		{"/index.html", page, 200, ""},
		{"/work", page, 200, ""},
		{"/work?skill=floor-pressure&seed=1", page, 200, ""},
		{"/style.css", "text/css; charset=utf-8", 200, ""},
		{"/sw.js", "text/javascript; charset=utf-8", 200, ""},
		{"/app.wasm", "application/wasm", 200, ""},
		{"/app.wasm.br", "text/plain; charset=utf-8", 404, ""},
		{"/robots.txt", "text/plain; charset=utf-8", 404, ""},
		{"/../go.mod", "text/plain; charset=utf-8", 404, ""},
		{"/..", "text/plain; charset=utf-8", 404, ""},
		{"/house/old", "", 302, "../"},
		{"/house/", "", 302, "../house"},
		{"/house/?units=us&code=npc", "", 302, "../house?units=us&code=npc"},
		{"//elsewhere.example/", "", 302, "../../"},
		{"///", "", 302, "../../"},
	}
	s := site(t)
	for _, test := range tests {
		t.Run(test.path, func(t *testing.T) {
			r := ask(s, http.MethodGet, "http://localhost"+test.path)
			assert.Equal(t, test.status, r.StatusCode)
			assert.Equal(t, test.mime, r.Header.Get("Content-Type"))
			assert.Equal(t, "nosniff", r.Header.Get("X-Content-Type-Options"))
			assert.Contains(t, r.Header.Get("Content-Security-Policy"), "default-src 'none'; script-src 'self' 'wasm-unsafe-eval';")
			assert.Equal(t, test.to, r.Header.Get("Location"))
		})
	}
}

// The weights and the star are those of RFC 9110, HTTP Semantics, 12.5.3.
func TestCoding(t *testing.T) {
	tests := []struct{ accept, coding string }{
		{"", ""},
		{"gzip, deflate, br, zstd", "br"},
		{"gzip", "gzip"},
		{"GZIP;q=0.5", "gzip"},
		{"br;q=0, gzip", "gzip"},
		{"br; q=0.0, gzip; q=0", ""},
		{"br;q=high", ""},
		{"identity", ""},
		{"*", "br"},
		{"*;q=0", ""},
		{"br;q=0, *", "gzip"},
	}
	s := site(t)
	for _, test := range tests {
		t.Run(test.accept, func(t *testing.T) {
			r := ask(s, http.MethodGet, "/app.wasm", "Accept-Encoding", test.accept)
			assert.Equal(t, test.coding, r.Header.Get("Content-Encoding"))
			assert.Equal(t, "Accept-Encoding", r.Header.Get("Vary"))
			if test.coding == "" {
				assert.Equal(t, program, body(t, r))
			}
		})
	}
	got, err := io.ReadAll(brotli.NewReader(ask(s, http.MethodGet, "/app.wasm", "Accept-Encoding", "br").Body))
	require.NoError(t, err)
	assert.Equal(t, program, string(got))
}

func TestRevalidation(t *testing.T) {
	s := site(t)
	plain := ask(s, http.MethodGet, "/app.wasm").Header.Get("ETag")
	r := ask(s, http.MethodGet, "/app.wasm", "Accept-Encoding", "br")
	packed := r.Header.Get("ETag")
	assert.Equal(t, "no-cache", r.Header.Get("Cache-Control"))
	assert.NotEqual(t, plain, packed, "each coding has a tag of its own")

	tests := []struct {
		match  string
		status int
	}{
		{packed, 304},
		{"W/" + packed, 304},
		{`"other", ` + packed, 304},
		{"*", 304},
		{plain, 200},
		{strings.Trim(packed, `"`), 200},
	}
	for _, test := range tests {
		r := ask(s, http.MethodGet, "/app.wasm", "Accept-Encoding", "br", "If-None-Match", test.match)
		assert.Equal(t, test.status, r.StatusCode, test.match)
		if test.status == 304 {
			assert.Empty(t, body(t, r))
			assert.Equal(t, packed, r.Header.Get("ETag"))
		}
	}
}

// A piece of a file, as a broken transfer asks for it.
func TestRange(t *testing.T) {
	s := site(t)
	r := ask(s, http.MethodGet, "/app.wasm", "Range", "bytes=2990-")
	assert.Equal(t, 206, r.StatusCode)
	assert.Equal(t, "bytes 2990-2999/3000", r.Header.Get("Content-Range"))
	assert.Equal(t, program[2990:], body(t, r))
	r = ask(s, http.MethodGet, "/app.wasm", "Range", "bytes=2990-", "If-Range", `"old"`)
	assert.Equal(t, 200, r.StatusCode)
	r = ask(s, http.MethodGet, "/app.wasm", "Range", "bytes=5000-")
	assert.Equal(t, 416, r.StatusCode)
}

func TestMethods(t *testing.T) {
	s := site(t)
	r := ask(s, http.MethodHead, "/app.wasm")
	assert.Equal(t, 200, r.StatusCode)
	assert.Equal(t, "3000", r.Header.Get("Content-Length"))
	assert.Empty(t, body(t, r))
	for _, method := range []string{http.MethodPost, http.MethodPut, http.MethodDelete, "TRACE"} {
		r := ask(s, method, "/")
		assert.Equal(t, 405, r.StatusCode, method)
		assert.Equal(t, "GET, HEAD", r.Header.Get("Allow"), method)
	}
}

func TestLoadRefuses(t *testing.T) {
	_, err := serve.Load(filepath.Join(t.TempDir(), "gone"))
	assert.ErrorContains(t, err, "gone cannot be read")
	_, err = serve.Load(t.TempDir())
	assert.ErrorContains(t, err, "holds no index.html, expected a built site: run `make build` first")
}
