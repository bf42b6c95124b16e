// Package serve makes the site, a folder of static files that any web server
// can hand out, and is itself a small server of it.
package serve

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// pageName is the file that answers for every address of the program.
const pageName = "index.html"

// kind is how files of one ending are sent.
type kind struct {
	ending, mime string
	packed       bool // is compressed already
}

var kinds = []kind{
	{".html", "text/html; charset=utf-8", false},
	{".js", "text/javascript; charset=utf-8", false},
	{".css", "text/css; charset=utf-8", false},
	{".svg", "image/svg+xml", false},
	{".webmanifest", "application/manifest+json", false},
	{".wasm", "application/wasm", false},
	{".json", "application/json", false},
	{".txt", "text/plain; charset=utf-8", false},
	{".png", "image/png", true},
	{".woff2", "font/woff2", true},
}

func kindOf(name string) (kind, error) {
	for _, k := range kinds {
		if filepath.Ext(name) == k.ending {
			return k, nil
		}
	}
	return kind{}, fmt.Errorf("the file %s has an ending with no known content type, expected one of those in the table of kinds", name)
}

// file is one file of the site with its compressed forms; a form that is not
// there is nil.
type file struct {
	mime, hash          string
	plain, brotli, gzip []byte
}

// Site is the built site, held in memory.
type Site struct {
	files map[string]*file
}

// Load reads the site of a folder that Build has made.
func Load(dir string) (*Site, error) {
	names, _, err := list(dir)
	if err != nil {
		return nil, err
	}
	s := &Site{files: map[string]*file{}}
	for _, name := range names {
		if isPacked(name) {
			continue
		}
		if s.files[name], err = load(dir, name); err != nil {
			return nil, err
		}
	}
	if s.files[pageName] == nil {
		return nil, fmt.Errorf("the folder %s holds no %s, expected a built site: run `make build` first", dir, pageName)
	}
	return s, nil
}

func load(dir, name string) (*file, error) {
	k, err := kindOf(name)
	if err != nil {
		return nil, err
	}
	f := &file{mime: k.mime}
	if f.plain, err = os.ReadFile(filepath.Join(dir, name)); err != nil {
		return nil, err
	}
	f.hash = hashOf(f.plain)
	for _, c := range codings {
		data, err := os.ReadFile(filepath.Join(dir, name+c.ending))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
		*c.form(f) = data
	}
	return f, nil
}

// list names the files and the folders of a folder in order. Dot files are left
// out, and so are the headers for hosts.
func list(dir string) (files, folders []string, err error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, nil, fmt.Errorf("the folder %s cannot be read, expected the files of the site: %w", dir, err)
	}
	for _, e := range entries {
		switch {
		case strings.HasPrefix(e.Name(), "."), e.Name() == headersName:
		case e.IsDir():
			folders = append(folders, e.Name())
		default:
			files = append(files, e.Name())
		}
	}
	return files, folders, nil
}

func hashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:12])
}
