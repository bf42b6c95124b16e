package sets

import (
	"fmt"
	"slices"
	"strings"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/marking"
)

// Status is what became of a hand-in. The list is closed.
type Status string

// Statuses. A hand-in that is late or altered is marked all the same.
const (
	OnTime     Status = "on-time"
	Late       Status = "late"
	Altered    Status = "altered"  // its checksum or its problems are not those of the set and the learner
	Repeated   Status = "repeated" // another one of this learner counts
	Foreign    Status = "foreign"  // of another set
	Unreadable Status = "unreadable"
)

// Counts reports whether a hand-in of this status is counted for the class.
func (s Status) Counts() bool { return s == OnTime || s == Late || s == Altered }

// Paper is a hand-in that was marked.
type Paper struct {
	Source  string `json:"source,omitempty"` // name of the file it came in
	Learner string `json:"learner"`
	Status  Status `json:"status"`
	Says    string `json:"says"` // one sentence on the status
	Begun   string `json:"begun,omitempty"`
	Written string `json:"written,omitempty"`
	Marks   int    `json:"marks"`
	Of      int    `json:"of"`
	Items   []Mark `json:"items,omitempty"` // by problem of the set

	print uint64 // of all that was written, to know copies
}

// Mark is the marks of one problem.
type Mark struct {
	Marks  int     `json:"marks"`
	Of     int     `json:"of"`
	Tried  bool    `json:"tried"`
	Shown  int     `json:"shown,omitempty"` // lines that the last hint showed
	Faults []Fault `json:"faults,omitempty"`
	ByHand string  `json:"byHand,omitempty"` // the reason where the marks were set by hand

	wrongs []uint64 // wrong lines, to hold against those of others
	seed   uint64
}

// Fault is a line that lost marks.
type Fault struct {
	Line    string          `json:"line"` // as typed
	Verdict marking.Verdict `json:"verdict"`
	Slip    string          `json:"slip,omitempty"`
	Says    string          `json:"says,omitempty"` // what was done, in the learner's numbers
}

// Percent is the marks as a whole percent, rounded down.
func (p *Paper) Percent() int {
	if p.Of == 0 {
		return 0
	}
	return p.Marks * 100 / p.Of
}

// Marker marks hand-ins of one set. Where all have the same numbers each
// problem is drawn once. A marker is for one worker at a time.
type Marker struct {
	set   *Set
	link  string
	tasks []*Task // drawn already; nil: not yet, or another one for each learner
}

// NewMarker is a marker for a set.
func NewMarker(set *Set) *Marker {
	return &Marker{set: set, link: set.Link(), tasks: make([]*Task, len(set.Items))}
}

func (m *Marker) task(i int, learner string) (*Task, error) {
	if t := m.tasks[i]; t != nil {
		return t, nil
	}
	t, err := m.set.Task(i, learner)
	if err != nil {
		return nil, err
	}
	if !m.set.Own || m.set.Items[i].Pinned != 0 {
		m.tasks[i] = &t
	}
	return &t, nil
}

// File marks a hand-in from the bytes of its file.
func (m *Marker) File(source string, data []byte) Paper {
	h, extra, err := ReadFile(data)
	return m.read(source, h, extra, err)
}

// Code marks a hand-in from its code.
func (m *Marker) Code(source, code string) Paper {
	h, extra, err := ReadCode(code)
	return m.read(source, h, extra, err)
}

func (m *Marker) read(source string, h *HandIn, extra bool, err error) Paper {
	source = Clean(source, 120)
	if err != nil {
		return Paper{Source: source, Status: Unreadable, Says: problems.Sentence(err.Error()) + "."}
	}
	p := m.Mark(h, extra)
	p.Source = source
	return p
}

// Mark draws the problems again and marks what was typed. Nothing else of the
// hand-in is believed. Extra says that its file held more than a hand-in has.
func (m *Marker) Mark(h *HandIn, extra bool) Paper {
	p := Paper{Learner: Clean(h.Learner, MaxLearner), Begun: h.Begun, Written: h.Written}
	if h.Set != m.link {
		p.Status, p.Says = Foreign, "It was worked on another set"+titleOf(h.Set)+"."
		return p
	}
	p.print = fingerprint(h)
	altered := ""
	switch {
	case h.Sum != h.checksum():
		altered = "Its checksum does not fit what stands in it."
	case extra:
		altered = "It holds more than a hand-in has, and that was passed over."
	case len(h.Work) > len(m.set.Items):
		altered = "It has more problems than the set."
	}
	for i := range m.set.Items {
		mark, odd := m.item(i, h)
		if odd != "" && altered == "" {
			altered = fmt.Sprintf("Problem %d %s.", i+1, odd)
		}
		p.Marks, p.Of = p.Marks+mark.Marks, p.Of+mark.Of
		p.Items = append(p.Items, mark)
	}
	p.Status, p.Says = m.status(h, altered)
	return p
}

func titleOf(link string) string {
	if s, err := ReadLink(link); err == nil {
		return ", “" + s.Title + "”"
	}
	return ""
}

func (m *Marker) status(h *HandIn, altered string) (Status, string) {
	status, says := OnTime, "Handed in "+said(h.Written)+"."
	if after(h.Written, m.set.Closes) {
		status, says = Late, "Handed in "+said(h.Written)+", and the set closed "+said(m.set.Closes)+"."
	}
	if h.Begun != "" {
		took := minutesOf(h.Written) - minutesOf(h.Begun)
		if m.set.Minutes > 0 && took > m.set.Minutes {
			says += fmt.Sprintf(" It took %d minutes of the %d allowed.", took, m.set.Minutes)
		}
	}
	if altered != "" {
		return Altered, altered + " The lines are marked as they stand."
	}
	return status, says
}

func said(time string) string { return strings.Replace(time, "T", " at ", 1) }

// item marks problem i. Odd says how the work does not fit the problem that
// the set gives this learner.
func (m *Marker) item(i int, h *HandIn) (mark Mark, odd string) {
	t, err := m.task(i, h.Learner)
	if err != nil {
		return Mark{}, "could not be drawn"
	}
	mark = Mark{Of: t.Worth(), seed: t.Seed}
	if i >= len(h.Work) || h.Work[i].Skill == "" {
		return mark, ""
	}
	w := &h.Work[i]
	switch {
	case w.Skill != t.ID || w.Kind != t.Kind:
		odd = "is not the problem of the set"
	case w.Version != t.Version:
		odd = fmt.Sprintf("was worked in version %d of its skill, and this program holds version %d", w.Version, t.Version)
	case w.Seed != t.Seed:
		odd = "has the numbers of another learner or set"
	}
	for _, n := range w.Hints {
		if n >= 3 {
			mark.Shown++
		}
	}
	t.mark(w, &mark)
	return mark, odd
}

// Worth is the most marks of a task.
func (t *Task) Worth() int {
	switch t.Kind {
	case Choice:
		return 1
	case Mistake:
		return 2
	case Reason:
		if t.Question.Kind == devices.Wrong {
			return 2
		}
		return 1
	}
	return 2 * len(t.Steps)
}

func (t *Task) mark(w *Work, mark *Mark) {
	switch t.Kind {
	case Choice:
		t.markChoice(w, mark)
	case Mistake:
		t.markMistake(w, mark)
	case Reason:
		t.markReason(w, mark)
	default:
		r, ok := t.Marked(w.Lines)
		if !ok {
			return
		}
		mark.Tried, mark.Marks = true, r.Marks
		for _, f := range r.Lines {
			mark.find(f)
		}
	}
}

// Marked is the marking of lines of a guided problem or of one's own; false
// where nothing is written.
func (t *Task) Marked(lines []string) (marking.Result, bool) {
	clean, any := make([]string, 0, len(lines)), false
	for _, l := range lines {
		l = line(l)
		blank := strings.TrimSpace(l) == ""
		any = any || !blank
		if t.Kind == Guided || !blank {
			clean = append(clean, l)
		}
	}
	if !any {
		return marking.Result{}, false
	}
	if t.Kind == Free {
		return marking.Lines(t.Problem, clean), true
	}
	return marking.Blanks(t.Problem, clean), true
}

// find notes what was found on a line, where it lost marks.
func (m *Mark) find(f marking.Finding) {
	switch {
	case f.Verdict.Good() && f.Verdict != marking.UnitMissing, f.Verdict == marking.Empty, f.Verdict == marking.Replaced, f.Verdict == marking.NotTied:
		return
	}
	fault := Fault{Line: Clean(f.Text, 160), Verdict: f.Verdict}
	if len(f.Slips) > 0 && f.Verdict != marking.PossibleSlip {
		fault.Slip, fault.Says = f.Slips[0].ID, f.Slips[0].Did
	}
	m.Faults = append(m.Faults, fault)
	if print := linePrint(f.Text); print != 0 {
		m.wrongs = append(m.wrongs, print)
	}
}

// markChoice goes by the first answer tapped.
func (t *Task) markChoice(w *Work, mark *Mark) {
	if len(w.Tapped) == 0 || w.Tapped[0] < 0 || w.Tapped[0] >= len(t.Options) {
		return
	}
	o := &t.Options[w.Tapped[0]]
	mark.Tried = true
	if o.Right {
		mark.Marks = 1
		return
	}
	mark.Faults = append(mark.Faults, Fault{Line: o.Text, Verdict: marking.Slip, Slip: o.Slip})
}

// markMistake gives one mark for the wrong line found at the first tap, and
// one for the line that stands in its place.
func (t *Task) markMistake(w *Work, mark *Mark) {
	if len(w.Tapped) == 0 {
		return
	}
	mark.Tried = true
	at := t.Planted.Wrong
	if w.Tapped[0] == at {
		mark.Marks++
	} else if k := w.Tapped[0]; k >= 0 && k < len(t.Planted.Lines) {
		mark.Faults = append(mark.Faults, Fault{Line: t.Planted.Lines[k], Verdict: marking.NotRecognised})
	}
	if at >= len(w.Lines) || !slices.Contains(w.Tapped, at) {
		return
	}
	lines := append(slices.Clone(t.Planted.Lines[:at]), line(w.Lines[at]))
	f := marking.Blanks(t.Problem, lines).Lines[at]
	if f.Verdict.Good() {
		mark.Marks++
	}
	mark.find(f)
}
