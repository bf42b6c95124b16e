package sets

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"strconv"
)

// HandIn is a learner's work on a set as it is handed in: what was typed, and
// no marks. Times are those of the learner's device, "2026-12-18T16:00".
type HandIn struct {
	Version int    `json:"version"`
	Set     string `json:"set"` // the code of the set's link
	Learner string `json:"learner"`
	Begun   string `json:"begun,omitempty"`
	Written string `json:"written"`
	Work    []Work `json:"work"` // by problem of the set
	Sum     string `json:"sum"`  // checksum of all that stands above
}

// Work is the work on one problem.
type Work struct {
	Skill   string   `json:"skill"`
	Version int      `json:"version"` // of the skill
	Seed    uint64   `json:"seed"`
	Kind    Kind     `json:"kind"`
	Lines   []string `json:"lines,omitempty"`  // as typed; in a guided problem one a step
	Tapped  []int    `json:"tapped,omitempty"` // lines or answers in the order they were tapped; see [Answer] too
	Hints   []int    `json:"hints,omitempty"`  // hints shown by line, of three
	At      string   `json:"at,omitempty"`     // of the last change
}

// Bounds of a hand-in.
const (
	handInVersion = 1
	MaxHandIn     = 256 << 10 // bytes of a file
	MaxLearner    = 60        // characters of a name
	MaxLines      = 60        // of a problem
	MaxLine       = 640       // bytes of a line
	Ending        = ".rwork"  // of a file
)

// New is a hand-in of a learner with nothing on it.
func New(set *Set, learner string) *HandIn {
	return &HandIn{Version: handInVersion, Set: set.Link(), Learner: Clean(learner, MaxLearner), Work: make([]Work, len(set.Items))}
}

// Of is the work on a task with nothing written yet.
func (t *Task) Of() Work {
	return Work{Skill: t.ID, Version: t.Version, Seed: t.Seed, Kind: t.Kind}
}

// Seal puts the checksum under the hand-in.
func (h *HandIn) Seal() { h.Sum = h.checksum() }

// checksum goes over every part in order, each with its length before it.
func (h *HandIn) checksum() string {
	p := packer{}
	p.uint(uint64(h.Version))
	for _, text := range []string{h.Set, h.Learner, h.Begun, h.Written} {
		p.text(text)
	}
	for i := range h.Work {
		w := &h.Work[i]
		p.text(w.Skill)
		p.uint(uint64(w.Version))
		p.uint(w.Seed)
		p.text(string(w.Kind))
		p.uint(uint64(len(w.Lines)))
		for _, l := range w.Lines {
			p.text(l)
		}
		for _, list := range [][]int{w.Tapped, w.Hints} {
			p.uint(uint64(len(list)))
			for _, n := range list {
				p.uint(uint64(n))
			}
		}
		p.text(w.At)
	}
	f := fnv.New64a()
	f.Write(p.b)
	return fmt.Sprintf("%016x", binary.BigEndian.Uint64(f.Sum(nil)))
}

// File is the hand-in as the bytes of a file.
func (h *HandIn) File() []byte {
	h.Seal()
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(h); err != nil { // texts and numbers always encode
		return nil
	}
	return out.Bytes()
}

// FileName is a name for the file: letters and digits of the learner's name.
func (h *HandIn) FileName() string {
	name := []byte{}
	for _, r := range Key(h.Learner) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			name = append(name, byte(r))
		case len(name) > 0 && name[len(name)-1] != '-':
			name = append(name, '-')
		}
	}
	name = bytes.Trim(name, "-")
	if len(name) == 0 {
		name = []byte("work")
	}
	f := fnv.New32a()
	f.Write([]byte(h.Set))
	return string(name) + "-" + strconv.FormatUint(uint64(f.Sum32()), 36) + Ending
}

// ReadFile reads the bytes of a file. Parts that no hand-in has are passed
// over and told by extra. An error is one sentence.
func ReadFile(data []byte) (h *HandIn, extra bool, err error) {
	if len(data) > MaxHandIn {
		return nil, false, TooLarge(int64(len(data)))
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	h = &HandIn{}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(h); err != nil {
		h, extra = &HandIn{}, true
		if err := json.Unmarshal(data, h); err != nil {
			return nil, false, fmt.Errorf("the file is no hand-in: it is damaged or of another program")
		}
	} else if d.More() {
		extra = true
	}
	if err := h.check(); err != nil {
		return nil, false, err
	}
	return h, extra, nil
}

// check refuses what cannot have been written by this program.
func (h *HandIn) check() error {
	switch {
	case h.Version == 0 && h.Set == "":
		return fmt.Errorf("the file is no hand-in: it names no set")
	case h.Version != handInVersion:
		return fmt.Errorf("the hand-in is of version %d, and this program reads version %d", h.Version, handInVersion)
	case Key(h.Learner) == "":
		return fmt.Errorf("the hand-in names no learner")
	case len(h.Work) > MaxItems:
		return fmt.Errorf("the hand-in has %d problems, and at most %d are expected", len(h.Work), MaxItems)
	case h.Begun != "" && !isTime(h.Begun) || !isTime(h.Written):
		return fmt.Errorf("the hand-in has %q for its time, expected one such as 2026-12-18T16:00", Clean(h.Written, 20))
	}
	for i := range h.Work {
		if err := h.Work[i].check(); err != nil {
			return fmt.Errorf("problem %d of the hand-in: %w", i+1, err)
		}
	}
	return nil
}

func (w *Work) check() error {
	if len(w.Lines) > MaxLines || len(w.Tapped) > MaxLines || len(w.Hints) > MaxLines {
		return fmt.Errorf("it has more lines than the %d that a problem can have", MaxLines)
	}
	for _, l := range w.Lines {
		if len(l) > MaxLine {
			return fmt.Errorf("a line has %d characters, and at most %d are expected", len(l), MaxLine)
		}
	}
	if w.At != "" && !isTime(w.At) {
		return fmt.Errorf("it has %q for its time, expected one such as 2026-12-18T16:00", Clean(w.At, 20))
	}
	return nil
}
