package sets

import (
	"encoding/hex"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// A part is a piece of a code that fits a QR code which a phone reads from
// another screen: a word that begins it, the checksum of the whole code, its
// number, how many there are, the piece, and a full stop.
const (
	partBegins = "rwpart1."
	partSize   = 340 // characters of the code in one part
	maxParts   = (MaxCode + partSize - 1) / partSize
)

// Parts are the parts of the code of a hand-in, to show one after the other.
func Parts(code string) []string {
	body := strings.TrimSuffix(strings.TrimPrefix(code, codeBegins), codeEnds)
	var pieces []string
	for len(body) > partSize {
		pieces, body = append(pieces, body[:partSize]), body[partSize:]
	}
	pieces = append(pieces, body)
	for i, p := range pieces {
		pieces[i] = fmt.Sprintf("%s%s.%d.%d.%s.", partBegins, wholeSum(code), i+1, len(pieces), p)
	}
	return pieces
}

func wholeSum(code string) string { return hex.EncodeToString(sum([]byte(code))) }

// Parted collects the parts of codes, in any order and of several hand-ins at
// once. The zero value has none.
type Parted struct {
	open []*parted
	done []string // checksums of those that are whole
}

type parted struct {
	sum    string
	pieces []string // empty: still to come
}

// Add takes the text of a QR code. Code is the code of the hand-in once it is
// whole, as it is where the text is no part but a code itself. Says is one
// sentence on what is still to come.
func (c *Parted) Add(text string) (code, says string, err error) {
	text = strings.TrimSpace(text)
	if strings.HasPrefix(text, codeBegins) {
		return text, "", nil
	}
	p, n, piece, err := readPart(text)
	if err != nil {
		return "", "", err
	}
	if slices.Contains(c.done, p.sum) {
		return "", "This hand-in is whole already.", nil
	}
	i := slices.IndexFunc(c.open, func(o *parted) bool { return o.sum == p.sum && len(o.pieces) == len(p.pieces) })
	if i < 0 {
		i = len(c.open)
		c.open = append(c.open, p)
	}
	o := c.open[i]
	o.pieces[n-1] = piece
	if left := o.left(); len(left) > 0 {
		return "", fmt.Sprintf("Code %d of %d is read; still to come: %s.", n, len(o.pieces), strings.Join(left, ", ")), nil
	}
	c.open = slices.Delete(c.open, i, i+1)
	code = codeBegins + strings.Join(o.pieces, "") + codeEnds
	if wholeSum(code) != o.sum {
		return "", "", fmt.Errorf("the QR codes of this hand-in do not fit together, so read all of them again")
	}
	c.done = append(c.done, o.sum)
	return code, "", nil
}

// Left says what is still to come of those that are not whole; empty where
// none is open.
func (c *Parted) Left() string {
	var list []string
	for _, o := range c.open {
		list = append(list, fmt.Sprintf("%s of %d", strings.Join(o.left(), ", "), len(o.pieces)))
	}
	return strings.Join(list, "; ")
}

func (p *parted) left() []string {
	var list []string
	for i, text := range p.pieces {
		if text == "" {
			list = append(list, strconv.Itoa(i+1))
		}
	}
	return list
}

func readPart(text string) (p *parted, n int, piece string, err error) {
	body, ok := strings.CutPrefix(text, partBegins)
	fields := strings.Split(body, ".")
	if !ok || len(fields) != 5 || fields[4] != "" {
		return nil, 0, "", fmt.Errorf("the QR code holds %q, and a code of a hand-in was expected", Clean(text, 40))
	}
	n, errN := strconv.Atoi(fields[1])
	of, errOf := strconv.Atoi(fields[2])
	if errN != nil || errOf != nil || of < 1 || of > maxParts || n < 1 || n > of || fields[3] == "" || len(fields[3]) > partSize || len(fields[0]) != 2*sumLen {
		return nil, 0, "", fmt.Errorf("the QR code is not that of a hand-in: its part is %q of %q", Clean(fields[1], 8), Clean(fields[2], 8))
	}
	return &parted{sum: fields[0], pieces: make([]string, of)}, n, fields[3], nil
}
