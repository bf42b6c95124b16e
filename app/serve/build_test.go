package serve_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/serve"
)

// program stands in for the compiled program.
var program = strings.Repeat("not a program, ", 200)

// sources are the least that can be built.
var sources = map[string]string{
	"index.html":         `<!doctype html><head><meta content="{{policy}}"></head><progress max="{{program bytes}}"></progress>{{contents}}`,
	"sw.js":              `const version = "{{version}}"; const files = ["{{files}}"];`,
	"style.css":          `body { margin: 0 }`,
	"build/app.wasm":     program,
	"build/wasm_exec.js": `class Go {}`,
}

var pages = serve.Pages{Paths: []string{"/work", "/house"}, Contents: "<p>What is here</p>"}

// source is a folder of the sources with some of them changed; a change to
// nothing leaves the file out.
func source(t *testing.T, changes map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "build"), 0o755))
	for name, text := range sources {
		write(t, dir, name, text)
	}
	for name, text := range changes {
		if text == "" {
			require.NoError(t, os.Remove(filepath.Join(dir, name)))
			continue
		}
		write(t, dir, name, text)
	}
	return dir
}

func write(t *testing.T, dir, name, text string) {
	t.Helper()
	require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
}

func read(t *testing.T, dir, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, name))
	require.NoError(t, err)
	return string(data)
}

func TestBuildFillsBlanks(t *testing.T) {
	dir := source(t, nil)
	require.NoError(t, serve.Build(dir, pages, true))
	page := read(t, dir, "build/index.html")
	assert.Contains(t, page, `<progress max="3000">`)
	assert.Contains(t, page, `content="default-src 'none'; script-src 'self' 'wasm-unsafe-eval';`)
	assert.Contains(t, page, "<p>What is here</p>")
	assert.NotContains(t, page, "{{")
	worker := read(t, dir, "build/sw.js")
	assert.Regexp(t, `^const version = "[0-9a-f]{24}";`, worker)
	assert.Contains(t, worker, `const files = ["app.wasm","./","style.css","wasm_exec.js"];`)
}

func TestBuildJoinsStyles(t *testing.T) {
	dir := source(t, map[string]string{"style.css": "@import url(\"b.css\");\nbody { margin: 0 }", "b.css": "p { margin: 1px }\n"})
	require.NoError(t, serve.Build(dir, pages, false))
	assert.Equal(t, "p { margin: 1px }\n\nbody { margin: 0 }", read(t, dir, "build/style.css"))
	assert.NoFileExists(t, filepath.Join(dir, "build/b.css"))
}

// A host that knows nothing of the program finds each page in a folder, and the
// headers in a file.
func TestBuildForHosts(t *testing.T) {
	dir := source(t, nil)
	require.NoError(t, os.Mkdir(filepath.Join(dir, "build/gone"), 0o755))
	require.NoError(t, serve.Build(dir, pages, false))
	page := read(t, dir, "build/index.html")
	for _, name := range []string{"work", "house"} {
		lower := read(t, dir, "build/"+name+"/index.html")
		assert.Equal(t, page, strings.Replace(lower, "\n<base href=\"../\">", "", 1))
		assert.NotEqual(t, page, lower)
	}
	assert.NoDirExists(t, filepath.Join(dir, "build/gone"))
	headers := read(t, dir, "build/_headers")
	assert.Contains(t, headers, "/*\n  Content-Security-Policy: default-src 'none';")
	assert.Contains(t, headers, "frame-ancestors 'none'\n")
	assert.NotContains(t, read(t, dir, "build/sw.js"), "_headers")
}

func TestBuildCompressesEveryFile(t *testing.T) {
	dir := source(t, nil)
	require.NoError(t, serve.Build(dir, pages, true))
	for _, name := range []string{"app.wasm", "index.html", "style.css", "sw.js", "wasm_exec.js"} {
		plain := read(t, dir, "build/"+name)
		got, err := io.ReadAll(brotli.NewReader(strings.NewReader(read(t, dir, "build/"+name+".br"))))
		require.NoError(t, err, name)
		assert.Equal(t, plain, string(got), name)
		r, err := gzip.NewReader(strings.NewReader(read(t, dir, "build/"+name+".gz")))
		require.NoError(t, err, name)
		got, err = io.ReadAll(r)
		require.NoError(t, err, name)
		assert.Equal(t, plain, string(got), name)
	}
}

func TestBuildVersionFollowsContent(t *testing.T) {
	dir := source(t, nil)
	require.NoError(t, serve.Build(dir, pages, true))
	first := read(t, dir, "build/sw.js")

	require.NoError(t, serve.Build(dir, pages, true))
	assert.Equal(t, first, read(t, dir, "build/sw.js"), "nothing changed")

	for name, text := range map[string]string{"style.css": "body { margin: 1px }", "sw.js": sources["sw.js"] + " // new", "build/app.wasm": "another"} {
		dir := source(t, map[string]string{name: text})
		require.NoError(t, serve.Build(dir, pages, true))
		assert.NotEqual(t, first[:48], read(t, dir, "build/sw.js")[:48], name)
	}
}

func TestBuildAgainAfterChange(t *testing.T) {
	dir := source(t, map[string]string{"old.svg": "<svg/>"})
	require.NoError(t, serve.Build(dir, pages, true))
	require.FileExists(t, filepath.Join(dir, "build/old.svg.br"))

	require.NoError(t, os.Remove(filepath.Join(dir, "old.svg")))
	write(t, dir, "style.css", "body { color: black }")
	write(t, dir, "build/wasm_exec.js.br", "broken")
	require.NoError(t, serve.Build(dir, pages, true))

	for _, name := range []string{"old.svg", "old.svg.br", "old.svg.gz"} {
		assert.NoFileExists(t, filepath.Join(dir, "build", name))
	}
	for _, name := range []string{"style.css", "wasm_exec.js"} {
		got, err := io.ReadAll(brotli.NewReader(strings.NewReader(read(t, dir, "build/"+name+".br"))))
		require.NoError(t, err, name)
		assert.Equal(t, read(t, dir, "build/"+name), string(got), name)
	}
}

func TestBuildQuickly(t *testing.T) {
	dir := source(t, nil)
	require.NoError(t, serve.Build(dir, pages, true))
	write(t, dir, "style.css", "body { color: black }")
	require.NoError(t, serve.Build(dir, pages, false))
	assert.Equal(t, "body { color: black }", read(t, dir, "build/style.css"))
	left, err := filepath.Glob(filepath.Join(dir, "build/*.[bg][rz]"))
	require.NoError(t, err)
	assert.Empty(t, left, "an old compressed form would be served")
}

func TestBuildRefuses(t *testing.T) {
	tests := []struct{ name, file, text, says string }{
		{"no page", "index.html", "", "holds no index.html"},
		{"no worker", "sw.js", "", "holds no sw.js"},
		{"no program", "build/app.wasm", "", "expected app.wasm: run `make build`"},
		{"no blank", "index.html", "<!doctype html>", "has the blank {{program bytes}} 0 times, expected once"},
		{"style that nobody asks for", "old.css", "p {}", "style.css has the blank @import url(\"old.css\"); 0 times, expected once"},
		{"unknown ending", "notes.doc", "x", "notes.doc has an ending with no known content type"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			err := serve.Build(source(t, map[string]string{test.file: test.text}), pages, true)
			assert.ErrorContains(t, err, test.says)
		})
	}
	dir := source(t, nil)
	require.NoError(t, os.Mkdir(filepath.Join(dir, "fonts"), 0o755))
	assert.ErrorContains(t, serve.Build(dir, pages, true), "fonts is a folder, expected files only")
}

func TestSizes(t *testing.T) {
	dir := source(t, nil)
	var out bytes.Buffer
	require.NoError(t, serve.Sizes(&out, []string{filepath.Join(dir, "build/app.wasm"), filepath.Join(dir, "build/wasm_exec.js")}))
	assert.Regexp(t, `app\.wasm +3000 +\d+ +\d+\n`, out.String())
	assert.Regexp(t, `app\.wasm / last +272\.727 `, out.String())
	assert.ErrorContains(t, serve.Sizes(&out, nil), "no file was named")
	assert.ErrorContains(t, serve.Sizes(&out, []string{filepath.Join(dir, "gone")}), "cannot be read")
}
