package sets

import (
	"encoding/base64"
	"encoding/binary"
	"errors"
	"hash/fnv"
)

// letters write bytes in a link: no sign of them is changed by a mail program
// or an address bar, and no two spellings mean the same.
var letters = base64.RawURLEncoding.Strict()

var errShort = errors.New("it ends too early")

// sumLen is the bytes of a checksum.
const sumLen = 4

// sum is the FNV-1a checksum of 32 bits: every single changed byte changes it.
func sum(b []byte) []byte {
	h := fnv.New32a()
	h.Write(b)
	return h.Sum(nil)
}

// packer writes numbers and texts one after the other.
type packer struct{ b []byte }

func (p *packer) uint(v uint64) { p.b = binary.AppendUvarint(p.b, v) }

func (p *packer) text(s string) {
	p.uint(uint64(len(s)))
	p.b = append(p.b, s...)
}

// unpacker reads them back; the first fault stays.
type unpacker struct {
	b   []byte
	err error
}

// uint reads a number of at most most.
func (u *unpacker) uint(most uint64) uint64 {
	v, n := binary.Uvarint(u.b)
	if n <= 0 || v > most {
		u.fail(n <= 0)
		return 0
	}
	u.b = u.b[n:]
	return v
}

func (u *unpacker) fail(short bool) {
	u.b = nil
	switch {
	case u.err != nil:
	case short:
		u.err = errShort
	default:
		u.err = errors.New("a number in it is larger than it can be")
	}
}

// text reads a text of at most most bytes.
func (u *unpacker) text(most int) string {
	n := u.uint(uint64(most))
	return string(u.bytes(int(n)))
}

func (u *unpacker) bytes(n int) []byte {
	if n > len(u.b) {
		u.fail(true)
		return nil
	}
	out := u.b[:n]
	u.b = u.b[n:]
	return out
}
