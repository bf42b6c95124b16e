package serve

import (
	"net/http"
	"strconv"
	"strings"
)

// policy lets the page use what comes from its own origin, run the program,
// and nothing else.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; " +
	"connect-src 'self'; manifest-src 'self'; worker-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// ServeHTTP answers a file with the file, and an address of the program with
// the page.
func (s *Site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		h.Set("Allow", "GET, HEAD")
		http.Error(w, "only GET and HEAD are answered here", http.StatusMethodNotAllowed)
		return
	}
	name := strings.TrimPrefix(r.URL.Path, "/")
	f := s.files[name]
	switch {
	case f != nil:
	case strings.Contains(name[strings.LastIndex(name, "/")+1:], "."):
		http.Error(w, "there is no such file here", http.StatusNotFound)
		return
	case strings.Contains(name, "/"):
		// The page names its files relative to itself, so it is only handed
		// out at the top.
		http.Redirect(w, r, "/", http.StatusFound)
		return
	default:
		f = s.files[pageName]
	}
	send(w, r, f)
}

func send(w http.ResponseWriter, r *http.Request, f *file) {
	data, coding := choose(f, strings.Join(r.Header.Values("Accept-Encoding"), ","))
	tag := `"` + f.hash + `"`
	h := w.Header()
	if coding != "" {
		tag = `"` + f.hash + "-" + coding + `"`
		h.Set("Content-Encoding", coding)
	}
	h.Set("Vary", "Accept-Encoding")
	h.Set("Cache-Control", "no-cache")
	h.Set("ETag", tag)
	if matches(r.Header.Get("If-None-Match"), tag) {
		h.Del("Content-Encoding")
		w.WriteHeader(http.StatusNotModified)
		return
	}
	h.Set("Content-Type", f.mime)
	h.Set("Content-Length", strconv.Itoa(len(data)))
	if r.Method == http.MethodHead {
		return
	}
	// An error here means that the reader has gone away.
	_, _ = w.Write(data)
}

// matches reports whether an If-None-Match header names the tag.
func matches(header, tag string) bool {
	for part := range strings.SplitSeq(header, ",") {
		part = strings.TrimPrefix(strings.TrimSpace(part), "W/")
		if part == tag || part == "*" {
			return true
		}
	}
	return false
}
