package sets

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver/unit"
)

// linkVersion is that of the code of a set; earlier ones stay readable.
const linkVersion = 1

// MaxLink is how many characters the code of a set may have.
const MaxLink = 4096

// systems by their place in a link; new ones go to the end.
var systems = []unit.System{unit.US, unit.Metric, unit.Mixed}

// Flags of a link say what follows the fixed part.
const (
	hasNote = 1 << iota
	hasAmends
	hasMinutes
	hasPass
	hasCloses
	hasTop
	hasConstants
	isOwn
	isImperial
	hasAlone
	allFlags = 1<<iota - 1
)

// Link is the set as a code of letters, digits, - and _ that stands in the
// fragment of an address, where no server reads it. The same set has the same
// code. It carries a version and a checksum.
func (s *Set) Link() string {
	p := packer{[]byte{linkVersion}}
	p.uint(s.flags())
	p.uint(uint64(slices.Index(systems, s.House.System)))
	p.uint(uint64(slices.Index(Helps, s.Help)))
	p.uint(uint64(s.Number))
	p.text(s.House.Code)
	p.text(s.Title)
	s.packMore(&p)
	p.uint(uint64(len(s.Items)))
	for i := range s.Items {
		s.Items[i].pack(&p)
	}
	return letters.EncodeToString(append(p.b, sum(p.b)...))
}

func (s *Set) flags() uint64 {
	var f uint64
	for _, w := range []struct {
		on   bool
		flag uint64
	}{
		{s.Note != "", hasNote}, {s.Amends != "", hasAmends}, {s.Minutes != 0, hasMinutes}, {s.Pass != 0, hasPass}, {s.Closes != "", hasCloses},
		{s.House.TopMin != 0, hasTop}, {len(s.House.Constants) > 0, hasConstants}, {s.Own, isOwn}, {s.House.Imperial, isImperial}, {s.House.Alone != problems.AloneValues, hasAlone},
	} {
		if w.on {
			f |= w.flag
		}
	}
	return f
}

func (s *Set) packMore(p *packer) {
	for _, text := range []string{s.Note, s.Amends} {
		if text != "" {
			p.text(text)
		}
	}
	for _, n := range []int{s.Minutes, s.Pass} {
		if n != 0 {
			p.uint(uint64(n))
		}
	}
	if s.Closes != "" {
		p.text(s.Closes)
	}
	if s.House.TopMin != 0 {
		p.text(strconv.FormatFloat(s.House.TopMin, 'g', -1, 64))
	}
	if n := len(s.House.Constants); n > 0 {
		p.uint(uint64(n))
		for _, c := range s.House.Constants {
			p.text(c.Name)
			p.text(c.Text)
		}
	}
	if s.House.Alone != problems.AloneValues {
		p.text(string(s.House.Alone))
	}
}

// Flags of an item.
const (
	itemKind   = 0b0011
	itemTurn   = 0b0100
	itemPinned = 0b1000
	itemReason = 0b1_0000
)

// pack writes a skill as three bytes of a hash of its id; no two skills of
// the catalogue share them.
func (it *Item) pack(p *packer) {
	f := uint64(itemReason)
	if it.Kind != Reason {
		f = uint64(slices.Index(Kinds, it.Kind))
	}
	if it.Turn != 0 {
		f |= itemTurn
	}
	if it.Pinned != 0 {
		f |= itemPinned
	}
	p.b = append(p.b, shortOf(it.Skill)...)
	p.uint(f)
	p.uint(uint64(it.Version))
	if it.Turn != 0 {
		p.uint(uint64(it.Turn))
	}
	if it.Pinned != 0 {
		p.uint(uint64(it.Pinned))
	}
}

func shortOf(skill string) []byte {
	h := fnv.New32a()
	h.Write([]byte(skill))
	return h.Sum(nil)[1:]
}

func skillOf(short []byte) string {
	for _, s := range skills.All() {
		if bytes.Equal(shortOf(s.ID), short) {
			return s.ID
		}
	}
	for _, r := range reasons {
		if bytes.Equal(shortOf(r.id), short) {
			return r.id
		}
	}
	return ""
}

// ReadLink reads the code of a set. An error is one sentence that says why it
// cannot be read.
func ReadLink(code string) (*Set, error) {
	b, err := opened(code)
	if err != nil {
		return nil, fmt.Errorf("the link holds no set: %w", err)
	}
	u := unpacker{b: b}
	s := u.set()
	switch {
	case u.err != nil:
		return nil, fmt.Errorf("the link holds no set: %w", u.err)
	case len(u.b) > 0:
		return nil, fmt.Errorf("the link holds no set: it goes on after its end")
	}
	if err := s.Check(); err != nil {
		return nil, fmt.Errorf("the set in this link cannot be worked: %w", err)
	}
	return s, nil
}

// opened is what stands in a code, once its checksum and version are found
// good.
func opened(code string) ([]byte, error) {
	if code == "" {
		return nil, fmt.Errorf("nothing stands after the # of its address")
	}
	if len(code) > MaxLink {
		return nil, fmt.Errorf("it has %d characters, and at most %d are expected", len(code), MaxLink)
	}
	b, err := letters.DecodeString(code)
	if err != nil || len(b) < sumLen+1 {
		return nil, errCopied
	}
	body, check := b[:len(b)-sumLen], b[len(b)-sumLen:]
	if !bytes.Equal(sum(body), check) {
		return nil, errCopied
	}
	if body[0] != linkVersion {
		return nil, fmt.Errorf("it is of version %d, and this program reads version %d", body[0], linkVersion)
	}
	return body[1:], nil
}

var errCopied = fmt.Errorf("it was cut short or changed on the way, so copy it again whole")

func (u *unpacker) set() *Set {
	f := u.uint(allFlags)
	has := func(flag uint64) bool { return f&flag != 0 }
	s := &Set{Own: has(isOwn)}
	s.House.Imperial = has(isImperial)
	s.House.System = systems[u.uint(uint64(len(systems)-1))]
	s.Help = Helps[u.uint(uint64(len(Helps)-1))]
	s.Number = uint32(u.uint(1<<32 - 1))
	s.House.Code = u.text(20)
	s.Title = u.text(4 * MaxTitle)
	if has(hasNote) {
		s.Note = u.text(4 * MaxNote)
	}
	if has(hasAmends) {
		s.Amends = u.text(4 * MaxNote)
	}
	if has(hasMinutes) {
		s.Minutes = int(u.uint(maxMinutes))
	}
	if has(hasPass) {
		s.Pass = int(u.uint(100))
	}
	if has(hasCloses) {
		s.Closes = u.text(20)
	}
	if has(hasTop) {
		s.House.TopMin = u.float()
	}
	if has(hasConstants) {
		for range u.uint(maxConstants) {
			s.House.Constants = append(s.House.Constants, problems.Pick{Name: u.text(40), Text: u.text(20)})
		}
	}
	if has(hasAlone) {
		s.House.Alone = problems.Alone(u.text(10))
	}
	for range u.uint(MaxItems) {
		s.Items = append(s.Items, u.item())
	}
	return s
}

func (u *unpacker) float() float64 {
	v, err := strconv.ParseFloat(u.text(24), 64)
	if err != nil {
		u.fail(false)
	}
	return v
}

func (u *unpacker) item() Item {
	it := Item{Skill: skillOf(u.bytes(3))}
	f := u.uint(itemKind | itemTurn | itemPinned | itemReason)
	it.Kind = Kinds[f&itemKind]
	if f&itemReason != 0 {
		it.Kind = Reason
	}
	it.Version = int(u.uint(maxVersion))
	if f&itemTurn != 0 {
		it.Turn = int(u.uint(maxTurn))
	}
	if f&itemPinned != 0 {
		it.Pinned = uint32(u.uint(1<<32 - 1))
	}
	return it
}

// ReadAddress reads the set of an address with its code after the #, or of
// the bare code.
func ReadAddress(text string) (*Set, error) {
	text = strings.TrimSpace(text)
	if i := strings.LastIndexByte(text, '#'); i >= 0 {
		text = text[i+1:]
	}
	return ReadLink(text)
}
