package serve

import (
	"bytes"
	"net/http"
	"strings"
	"time"
)

// policy lets the page use what comes from its own origin, run the program,
// and nothing else. It also stands in the page, for hosts that send no headers.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; " +
	"connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'self'; form-action 'none'"

// headers go with every answer.
var headers = []struct{ name, value string }{
	{"Content-Security-Policy", policy + "; frame-ancestors 'none'"},
	{"X-Content-Type-Options", "nosniff"},
	{"Referrer-Policy", "no-referrer"},
	{"Cross-Origin-Opener-Policy", "same-origin"},
	{"Cache-Control", "no-cache"}, // kept, and asked about each time
}

// ServeHTTP answers a file with the file, and an address of the program with
// the page.
func (s *Site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	for _, each := range headers {
		h.Set(each.name, each.value)
	}
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
		h.Set("Location", toTop(name, r.URL.RawQuery))
		w.WriteHeader(http.StatusFound)
		return
	default:
		f = s.files[pageName]
	}
	send(w, r, f)
}

// toTop is the way from a lower address to one at the top, where alone the
// page finds its files: to the page that a slash was put behind, or else to
// the first. It names no host and no prefix, which a proxy may have taken off.
func toTop(name, query string) string {
	up := strings.Repeat("../", strings.Count(name, "/"))
	page, below, _ := strings.Cut(name, "/")
	if page == "" || below != "" {
		return up
	}
	if query != "" {
		query = "?" + query
	}
	return up + page + query
}

func send(w http.ResponseWriter, r *http.Request, f *file) {
	data, coding := choose(f, strings.Join(r.Header.Values("Accept-Encoding"), ","))
	tag := f.hash
	h := w.Header()
	if coding != "" {
		tag += "-" + coding
		h.Set("Content-Encoding", coding)
	}
	h.Set("Vary", "Accept-Encoding")
	h.Set("ETag", `"`+tag+`"`)
	h.Set("Content-Type", f.mime)
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(data))
}
