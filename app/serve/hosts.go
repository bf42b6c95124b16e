package serve

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// headersName is a file that many hosts of static files read their headers from.
const headersName = "_headers"

// forHosts writes what a host needs that hands out files and knows nothing
// else: each page in a folder of its name, and the headers. Such a host shows
// the page of a folder at the address with a slash at the end, so that page
// names its files from one step up. What is written is noted in keep.
func forHosts(out string, page []byte, paths []string, keep map[string]bool) error {
	head := []byte("<head>")
	if bytes.Count(page, head) != 1 {
		return fmt.Errorf("%s has %q %d times, expected once", pageName, head, bytes.Count(page, head))
	}
	lower := bytes.Replace(page, head, []byte("<head>\n<base href=\"../\">"), 1)
	for _, path := range paths {
		name := strings.TrimPrefix(path, "/")
		keep[name] = true
		if err := os.MkdirAll(filepath.Join(out, name), 0o755); err != nil {
			return err
		}
		if err := put(filepath.Join(out, name, pageName), lower); err != nil {
			return err
		}
	}
	var all strings.Builder
	all.WriteString("/*\n")
	for _, h := range headers {
		fmt.Fprintf(&all, "  %s: %s\n", h.name, h.value)
	}
	return put(filepath.Join(out, headersName), []byte(all.String()))
}
