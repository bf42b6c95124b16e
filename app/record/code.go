package record

import (
	"encoding/base32"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/fnv"
	"math"
	"slices"
	"strings"
)

// Carry is what a code says of one skill.
type Carry struct {
	Card
	Alone     bool    `json:"alone,omitempty"`
	Average   float64 `json:"avg,omitempty"`
	Tries     int     `json:"tries,omitempty"`
	RightDays int     `json:"rightDays,omitempty"`
}

// check refuses what no state can be.
func (c *Carry) check() error {
	const far = 1 << 20 // days, some 2900 years
	switch {
	case c == nil:
		return errors.New("record: an entry that brings a skill says nothing of it")
	case c.Last < 0 || c.Last > far || c.Due < c.Last || c.Due > far:
		return errors.New("record: an entry brings a skill that is due on a day out of all range")
	case !(c.Average >= 0 && c.Average <= 1) || c.Tries < 0 || c.RightDays < 0:
		return errors.New("record: an entry brings a skill with an average outside 0 to 1")
	case c.Stability != 0 && !(c.Stability >= 0.001 && c.Stability <= 36500 && c.Difficulty >= 1 && c.Difficulty <= 10):
		return errors.New("record: an entry brings a skill with a schedule that cannot be")
	}
	return nil
}

// bring takes in what another device knew, where it is later than what is
// known here.
func (k *Skill) bring(c *Carry) {
	if c == nil || !k.new() && c.Last <= k.Last || c.new() {
		return
	}
	k.Card, k.Average = c.Card, c.Average
	k.Tries, k.RightDays = max(k.Tries, c.Tries), max(k.RightDays, c.RightDays)
	k.Alone = k.Alone || c.Alone
	if c.Alone {
		k.Blank = nil
	}
}

// A code begins with this letter pair; the digit is its version.
const codeHead = "RW1"

// letters writes five bits a letter, without those that are misread: Crockford's
// base 32.
var letters = base32.NewEncoding("0123456789ABCDEFGHJKMNPQRSTVWXYZ").WithPadding(base32.NoPadding)

// maxCode is how many characters of a code are read.
const maxCode = 16 << 10

// Code is what is known of the tried skills as a short text. It leaves out
// what was written and the traps; alone reports whether every line of a skill
// is left to the learner. Stability is kept to 3 %.
func (s *State) Code(alone func(id string) bool) string {
	var ids []string
	first := math.MaxInt
	for id, k := range s.Skills {
		if !k.new() {
			ids = append(ids, id)
			first = min(first, k.Last)
		}
	}
	slices.Sort(ids)
	if len(ids) == 0 {
		return ""
	}
	out := binary.AppendUvarint(nil, uint64(max(first, 0)))
	for _, id := range ids {
		k := s.Skills[id]
		out = binary.BigEndian.AppendUint16(out, short(id))
		flags := min(k.RightDays, 3) | min(k.Tries, 15)<<2
		if alone(id) {
			flags |= 1 << 6
		}
		out = append(out, byte(flags), byte(math.Round(k.Average*255)), squeeze(k.Stability), byte(math.Round((k.Difficulty-1)/9*255)))
		out = binary.AppendUvarint(out, uint64(k.Last-first))
		out = binary.AppendUvarint(out, uint64(max(k.Due-k.Last, 0)))
	}
	h := fnv.New32a()
	h.Write(out)
	return codeHead + letters.EncodeToString(binary.BigEndian.AppendUint32(out, h.Sum32()))
}

// ReadCode is the entries that a code brings, each for a skill of the ids. The
// same code gives the same entries, so that reading it twice adds nothing. A
// skill that is not here is left out.
func ReadCode(text string, ids []string, at int64, zone int) ([]Entry, error) {
	text = strings.ToUpper(strings.Join(strings.Fields(text), ""))
	if len(text) > maxCode {
		return nil, errors.New("record: the code is longer than any that is made")
	}
	body, ok := strings.CutPrefix(text, codeHead)
	if !ok {
		return nil, fmt.Errorf("record: the code begins with %q, expected %q", clip(text), codeHead)
	}
	raw, err := letters.DecodeString(strings.NewReplacer("O", "0", "I", "1", "L", "1").Replace(body))
	if err != nil || len(raw) < 5 {
		return nil, errors.New("record: the code has a letter that no code has, or is cut short")
	}
	raw, want := raw[:len(raw)-4], binary.BigEndian.Uint32(raw[len(raw)-4:])
	h := fnv.New32a()
	h.Write(raw)
	if h.Sum32() != want {
		return nil, errors.New("record: the code does not add up, so a letter of it is wrong or missing")
	}
	named := map[uint16]string{}
	for _, id := range ids {
		named[short(id)] = id
	}
	return readCarried(raw, named, fmt.Sprintf("%08x", want), at, zone)
}

var errCode = errors.New("record: the code ends in the middle of a skill")

func readCarried(raw []byte, named map[uint16]string, name string, at int64, zone int) ([]Entry, error) {
	first, raw, ok := number(raw)
	if !ok {
		return nil, errCode
	}
	var list []Entry
	for len(raw) > 0 {
		if len(raw) < 6 {
			return nil, errCode
		}
		id, flags := named[binary.BigEndian.Uint16(raw)], int(raw[2])
		c := &Carry{Average: float64(raw[3]) / 255, Alone: flags>>6&1 == 1, Tries: flags >> 2 & 15, RightDays: flags & 3}
		c.Stability, c.Difficulty = stretch(raw[4]), 1+float64(raw[5])/255*9
		var last, wait int
		last, raw, ok = number(raw[6:])
		if ok {
			wait, raw, ok = number(raw)
		}
		if !ok {
			return nil, errCode
		}
		c.Last = first + last
		c.Due = c.Last + wait
		if err := c.check(); err != nil {
			return nil, err
		}
		if id != "" {
			list = append(list, Entry{Version: Version, ID: "code-" + name + "-" + id, At: at, Zone: zone, Kind: Brought, Skill: id, From: c})
		}
	}
	return list, nil
}

// number is a small whole number at the head of raw, and what follows it.
func number(raw []byte) (int, []byte, bool) {
	v, n := binary.Uvarint(raw)
	if n <= 0 || v > 1<<30 {
		return 0, raw, false
	}
	return int(v), raw[n:], true
}

// short names a skill in two bytes; a test holds the catalogue to be free of
// clashes.
func short(id string) uint16 {
	h := fnv.New32a()
	h.Write([]byte(id))
	n := h.Sum32()
	return uint16(n>>16) ^ uint16(n)
}

// squeeze keeps a stability of 0.001 to 36500 days in one byte, to 3.5 %.
func squeeze(days float64) byte {
	return byte(math.Round(math.Log(min(max(days, 0.001), 36500)/0.001) / widest * 255))
}

func stretch(b byte) float64 { return min(0.001*math.Exp(float64(b)/255*widest), 36500) }

// widest is the logarithm of the ratio of the longest stability to the
// shortest.
var widest = math.Log(36500 / 0.001)
