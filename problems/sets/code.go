package sets

import (
	"bytes"
	"compress/flate"
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// A code is a hand-in as text to copy into a message: a word that begins it,
// the compressed hand-in in letters, and a full stop.
const (
	codeBegins = "rwork1."
	codeEnds   = "."
)

// MaxCode is how many characters a code may have.
const MaxCode = 64 << 10

// Code is the hand-in as text to copy.
func (h *HandIn) Code() string {
	h.Seal()
	raw, err := json.Marshal(h)
	if err != nil { // texts and numbers always encode
		return ""
	}
	var out bytes.Buffer
	w, err := flate.NewWriter(&out, flate.BestCompression)
	if err != nil {
		return ""
	}
	w.Write(raw)
	w.Close()
	return codeBegins + letters.EncodeToString(append(out.Bytes(), sum(out.Bytes())...)) + codeEnds
}

// Codes finds the codes in a text, such as messages pasted one under the
// other. A mail program may have broken them into lines or quoted them.
func Codes(text string) []string {
	var list []string
	for {
		_, rest, ok := strings.Cut(text, codeBegins)
		if !ok {
			return list
		}
		body, after, closed := strings.Cut(rest, codeEnds)
		if !closed {
			body, after = rest, ""
		}
		if next := strings.Index(rest, codeBegins); next >= 0 && next < len(body)+1 {
			body, after = rest[:next], rest[next:]
		}
		list, text = append(list, codeBegins+body+codeEnds), after
	}
}

// ReadCode reads one code. An error is one sentence.
func ReadCode(code string) (h *HandIn, extra bool, err error) {
	code = strings.Map(func(r rune) rune {
		if strings.ContainsRune(" \t\r\n>\u00a0\u200b", r) {
			return -1
		}
		return r
	}, code)
	if len(code) > MaxCode {
		return nil, false, fmt.Errorf("the code has %d characters, and at most %d are expected", len(code), MaxCode)
	}
	body, ok := strings.CutPrefix(code, codeBegins)
	body, closed := strings.CutSuffix(body, codeEnds)
	if !ok || !closed {
		return nil, false, fmt.Errorf("the code is not whole: it begins with %s and ends with a full stop", codeBegins)
	}
	b, err := letters.DecodeString(body)
	if err != nil || len(b) <= sumLen || !bytes.Equal(sum(b[:len(b)-sumLen]), b[len(b)-sumLen:]) {
		return nil, false, fmt.Errorf("the code was cut short or changed on the way, so copy it again whole")
	}
	raw, err := io.ReadAll(io.LimitReader(flate.NewReader(bytes.NewReader(b[:len(b)-sumLen])), MaxHandIn+1))
	if err != nil {
		return nil, false, fmt.Errorf("the code holds nothing that can be unpacked")
	}
	return ReadFile(raw)
}
