package serve

import (
	"bytes"
	"compress/gzip"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/andybalholm/brotli"
)

// coding is a way to compress, best first in codings.
type coding struct {
	name, ending string
	form         func(*file) *[]byte
	writer       func(io.Writer) (io.WriteCloser, error)
	reader       func(io.Reader) (io.Reader, error)
}

var codings = []coding{
	{
		"br", ".br",
		func(f *file) *[]byte { return &f.brotli },
		func(w io.Writer) (io.WriteCloser, error) {
			return brotli.NewWriterLevel(w, brotli.BestCompression), nil
		},
		func(r io.Reader) (io.Reader, error) { return brotli.NewReader(r), nil },
	},
	{
		"gzip", ".gz",
		func(f *file) *[]byte { return &f.gzip },
		func(w io.Writer) (io.WriteCloser, error) { return gzip.NewWriterLevel(w, gzip.BestCompression) },
		func(r io.Reader) (io.Reader, error) { return gzip.NewReader(r) },
	},
}

// isPacked reports whether name is the compressed form of another file.
func isPacked(name string) bool {
	for _, c := range codings {
		if filepath.Ext(name) == c.ending {
			return true
		}
	}
	return false
}

func (c coding) pack(data []byte) ([]byte, error) {
	var out bytes.Buffer
	w, err := c.writer(&out)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// holds reports whether packed unpacks to data.
func (c coding) holds(packed, data []byte) bool {
	r, err := c.reader(bytes.NewReader(packed))
	if err != nil {
		return false
	}
	// One byte more than data would show that packed holds something else.
	got, err := io.ReadAll(io.LimitReader(r, int64(len(data))+1))
	return err == nil && bytes.Equal(got, data)
}

// choose is the best form of f that an Accept-Encoding header takes, with the
// name of its coding; empty for the plain one.
func choose(f *file, accept string) (data []byte, name string) {
	for _, c := range codings {
		if data := *c.form(f); data != nil && accepts(accept, c.name) {
			return data, c.name
		}
	}
	return f.plain, ""
}

// accepts reports whether an Accept-Encoding header names a coding, or *, with
// a weight above zero.
func accepts(header, name string) bool {
	star := false
	for part := range strings.SplitSeq(header, ",") {
		token, params, _ := strings.Cut(part, ";")
		token = strings.TrimSpace(token)
		takes := weight(params) > 0
		if strings.EqualFold(token, name) {
			return takes
		}
		star = star || token == "*" && takes
	}
	return star
}

// weight is the q of a part of the header: 1 where none is written, 0 where it
// cannot be read.
func weight(params string) float64 {
	_, q, ok := strings.Cut(strings.ReplaceAll(strings.ToLower(params), " ", ""), "q=")
	if !ok {
		return 1
	}
	w, err := strconv.ParseFloat(q, 64)
	if err != nil {
		return 0
	}
	return w
}
