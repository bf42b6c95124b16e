package exam

import (
	"encoding/base32"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// letters are those of a code: none that is easily read as another.
var letters = base32.NewEncoding("0123456789ABCDEFGHJKMNPQRSTVWXYZ").WithPadding(base32.NoPadding)

// asMeant reads what people write in place of a letter of the code.
var asMeant = strings.NewReplacer("O", "0", "I", "1", "L", "1", "U", "V", "-", "", " ", "", "\u00a0", "", "\n", "", "\r", "", "\t", "")

// MaxCode is how many characters a code may have.
const MaxCode = 1000

// Flags of a code, above the two bits of the units.
const (
	isWritten = 1 << (iota + 2)
	isImperial
	hasTop
	hasConstants
	allFlags = 1<<(iota+2) - 1
)

// systems by their place in a code; new ones go to the end.
var systems = []unit.System{unit.US, unit.Metric, unit.Mixed}

// Code is the plan as letters and digits in groups of four, to copy or to
// read out. It carries a version and a checksum.
func (p Plan) Code() string { return p.code(Catalogue()) }

func (p Plan) code(catalogue uint16) string {
	kind := slices.IndexFunc(Blueprints, func(b Blueprint) bool { return b.ID == p.Blueprint })
	flags := slices.Index(systems, p.House.System)
	for flag, on := range map[int]bool{isWritten: p.Written, isImperial: p.House.Imperial, hasTop: p.House.TopMin > 0, hasConstants: len(p.House.Constants) > 0} {
		if on {
			flags |= flag
		}
	}
	b := []byte{Version, byte(kind<<4 | slices.Index(Lengths, p.Questions)), byte(flags), markOf(p.House.Code)}
	b = binary.BigEndian.AppendUint16(b, catalogue)
	b = binary.BigEndian.AppendUint16(b, uint16(p.Seed))
	if p.House.TopMin > 0 {
		b = appendText(b, strconv.FormatFloat(p.House.TopMin, 'g', -1, 64))
	}
	if n := len(p.House.Constants); n > 0 {
		b = append(b, byte(n))
		for _, c := range p.House.Constants {
			b = appendText(appendText(b, c.Name), c.Text)
		}
	}
	return grouped(letters.EncodeToString(binary.BigEndian.AppendUint16(b, sum(b))))
}

func appendText(b []byte, text string) []byte { return append(append(b, byte(len(text))), text...) }

// grouped is text in groups of four.
func grouped(text string) string {
	var groups []string
	for chunk := range slices.Chunk([]byte(text), 4) {
		groups = append(groups, string(chunk))
	}
	return strings.Join(groups, "-")
}

func sum(b []byte) uint16 {
	h := fnv.New32a()
	h.Write(b)
	return fold(h.Sum32())
}

// markOf is a byte for the id of a code profile; no two profiles share it.
func markOf(profile string) byte {
	v := sum([]byte(profile))
	return byte(v>>8) ^ byte(v)
}

var errCopied = errors.New("the code was cut short or mistyped, so copy it again whole")

// ReadCode reads a code. Earlier is set where it was made with another
// catalogue, so that its questions may differ. An error is one sentence.
func ReadCode(text string) (plan Plan, earlier bool, err error) {
	if strings.TrimSpace(text) == "" {
		return plan, false, errors.New("no code was written, and one such as 0400-8M9Q-… was expected")
	}
	if len(text) > MaxCode {
		return plan, false, fmt.Errorf("the code has %d characters, and at most %d are expected", len(text), MaxCode)
	}
	text = asMeant.Replace(strings.ToUpper(text))
	b, err := letters.DecodeString(text)
	if err != nil || len(b) < 10 {
		return plan, false, errCopied
	}
	body, check := b[:len(b)-2], binary.BigEndian.Uint16(b[len(b)-2:])
	if sum(body) != check {
		return plan, false, errCopied
	}
	if body[0] != Version {
		return plan, false, fmt.Errorf("the code is of version %d, and this program reads version %d", body[0], Version)
	}
	r := reader{b: body[1:]}
	plan, catalogue := r.plan()
	if r.bad || len(r.b) > 0 {
		return Plan{}, false, errors.New("the code holds no paper that can be drawn")
	}
	if err := plan.Check(); err != nil {
		return Plan{}, false, err
	}
	if strings.ReplaceAll(plan.code(catalogue), "-", "") != text {
		return Plan{}, false, errCopied
	}
	return plan, catalogue != Catalogue(), nil
}

// reader takes a code apart; bad stays once it is set.
type reader struct {
	b   []byte
	bad bool
}

func (r *reader) take(n int) []byte {
	if n > len(r.b) {
		r.b, r.bad = nil, true
		return make([]byte, n)
	}
	out := r.b[:n]
	r.b = r.b[n:]
	return out
}

func (r *reader) byte() int { return int(r.take(1)[0]) }

func (r *reader) text() string { return string(r.take(r.byte())) }

func (r *reader) plan() (p Plan, catalogue uint16) {
	kind, flags, profile := r.byte(), r.byte(), byte(r.byte())
	catalogue = binary.BigEndian.Uint16(r.take(2))
	p.Seed = int(binary.BigEndian.Uint16(r.take(2)))
	if kind>>4 >= len(Blueprints) || kind&15 >= len(Lengths) || flags > allFlags || flags&3 >= len(systems) {
		r.bad = true
		return p, catalogue
	}
	p.Blueprint, p.Questions = Blueprints[kind>>4].ID, Lengths[kind&15]
	p.Written = flags&isWritten != 0
	p.House = problems.House{System: systems[flags&3], Imperial: flags&isImperial != 0}
	for i := range solver.Profiles {
		if markOf(solver.Profiles[i].ID) == profile {
			p.House.Code = solver.Profiles[i].ID
		}
	}
	if flags&hasTop != 0 {
		v, err := strconv.ParseFloat(r.text(), 64)
		p.House.TopMin, r.bad = v, r.bad || err != nil
	}
	if flags&hasConstants != 0 {
		for range r.byte() {
			p.House.Constants = append(p.House.Constants, problems.Pick{Name: r.text(), Text: r.text()})
			if r.bad {
				break
			}
		}
	}
	return p, catalogue
}
