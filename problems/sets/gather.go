package sets

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"math"
	"path"
	"strings"
)

// Piece is one hand-in as it came, not yet read: the bytes of a file, or a
// code. Fault is one sentence where it cannot even be looked at.
type Piece struct {
	Source string
	Data   []byte
	Fault  error
}

// maxPieces bounds the files of one archive and the codes of one text.
const maxPieces = 50_000

// MaxText is how many bytes of pasted text or of a text file are read.
const MaxText = 16 << 20

// Gather takes the bytes of a file apart: an archive into its files, a text
// into its codes, anything else as it is.
func Gather(source string, data []byte, take func(Piece)) {
	switch {
	case IsZip(data):
		Unzip(source, bytes.NewReader(data), int64(len(data)), take)
	case isFile(data):
		take(Piece{Source: source, Data: data})
	case len(data) > MaxText:
		take(Piece{Source: source, Fault: TooLarge(int64(len(data)))})
	default:
		list := Codes(string(data))
		if len(list) == 0 {
			take(Piece{Source: source, Fault: fmt.Errorf("the file holds no hand-in and no code")})
		}
		for _, code := range list[:min(len(list), maxPieces)] {
			take(Piece{Source: source, Data: []byte(code)})
		}
	}
}

// IsZip reports whether bytes begin as a ZIP archive does.
func IsZip(data []byte) bool { return bytes.HasPrefix(data, []byte("PK\x03\x04")) }

func isFile(data []byte) bool {
	data = bytes.TrimPrefix(data, []byte(byteOrderMark))
	return bytes.HasPrefix(bytes.TrimLeft(data[:min(len(data), 64)], " \t\r\n"), []byte("{"))
}

// TooLarge is the sentence on a file of more bytes than a hand-in may have.
func TooLarge(bytes int64) error {
	return fmt.Errorf("the file has %d kB, and a hand-in has at most %d", bytes>>10, MaxHandIn>>10)
}

// Unzip takes the files of an archive one by one. No more of a file is
// unpacked than a hand-in may have, whatever the archive says of it.
func Unzip(source string, r io.ReaderAt, size int64, take func(Piece)) {
	z, err := zip.NewReader(r, size)
	if err != nil {
		take(Piece{Source: source, Fault: fmt.Errorf("the archive is damaged or cut short")})
		return
	}
	if len(z.File) > maxPieces {
		take(Piece{Source: source, Fault: fmt.Errorf("the archive has %d files, and at most %d are expected", len(z.File), maxPieces)})
		return
	}
	for _, f := range z.File {
		name := path.Base(f.Name)
		if f.FileInfo().IsDir() || strings.HasPrefix(name, ".") || strings.HasPrefix(f.Name, "__MACOSX/") {
			continue
		}
		name = source + "/" + name
		data, err := unpacked(f)
		switch {
		case err != nil:
			take(Piece{Source: name, Fault: err})
		case IsZip(data):
			take(Piece{Source: name, Fault: fmt.Errorf("the archive holds another archive, which is not opened")})
		default:
			Gather(name, data, take)
		}
	}
}

func unpacked(f *zip.File) ([]byte, error) {
	if f.UncompressedSize64 > MaxHandIn {
		return nil, TooLarge(int64(min(f.UncompressedSize64, math.MaxInt64)))
	}
	r, err := f.Open()
	if err != nil {
		return nil, fmt.Errorf("the file is packed in a way that is not read here")
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, MaxHandIn+1))
	switch {
	case len(data) > MaxHandIn:
		return nil, TooLarge(int64(len(data)))
	case err != nil:
		return nil, fmt.Errorf("the file is damaged in its archive")
	}
	return data, nil
}

// Piece marks a piece.
func (m *Marker) Piece(p Piece) Paper {
	switch {
	case p.Fault != nil:
		return m.read(p.Source, nil, false, p.Fault)
	case isFile(p.Data):
		return m.File(p.Source, p.Data)
	}
	return m.Code(p.Source, string(p.Data))
}

// SetOf is the set that a piece was worked on, to begin a class with.
func SetOf(p Piece) (*Set, bool) {
	if p.Fault != nil {
		return nil, false
	}
	read := ReadFile
	if !isFile(p.Data) {
		read = func(data []byte) (*HandIn, bool, error) { return ReadCode(string(data)) }
	}
	h, _, err := read(p.Data)
	if err != nil {
		return nil, false
	}
	s, err := ReadLink(h.Set)
	return s, err == nil
}
