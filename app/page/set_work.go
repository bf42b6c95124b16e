package page

import (
	"errors"
	"hash/fnv"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/sets"
)

// setWork is a learner's work on a set as it is saved.
type setWork struct {
	Version int      `json:"version"`
	Set     string   `json:"set"` // the code of its link
	Learner string   `json:"learner"`
	Begun   string   `json:"begun"`
	Sheets  []sheet  `json:"sheets"`           // by problem
	At      []string `json:"at"`               // when each was last changed
	Handed  string   `json:"handed,omitempty"` // when it was handed in last
}

const setWorkVersion = 1

func (w *setWork) check() error {
	if w.Version != setWorkVersion {
		return errVersion(w.Version, setWorkVersion)
	}
	if len(w.Sheets) > sets.MaxItems || len(w.At) != len(w.Sheets) {
		return errors.New("it has more problems than a set can have")
	}
	for i := range w.Sheets {
		d := desk{Version: deskVersion, Sheets: w.Sheets[i : i+1]}
		if err := d.check(); err != nil {
			return err
		}
	}
	return nil
}

// workKey is where the work of a learner on a set is kept.
func workKey(code, learner string) string {
	h := fnv.New64a()
	h.Write([]byte(code + "\x00" + sets.Key(learner)))
	return "riserwork-set-" + strconv.FormatUint(h.Sum64(), 36)
}

// newWork is work that begins.
func newWork(s *sets.Set, learner, now string) setWork {
	n := len(s.Items)
	return setWork{Version: setWorkVersion, Set: s.Link(), Learner: learner, Begun: now, Sheets: make([]sheet, n), At: make([]string, n)}
}

func loadWork(store app.BrowserStorage, s *sets.Set, learner, now string) (setWork, string) {
	w := newWork(s, learner, now)
	says := load(store, workKey(w.Set, learner), "your work on this set", &w)
	if w.Set != s.Link() || len(w.Sheets) != len(s.Items) {
		w = newWork(s, learner, now)
	}
	return w, says
}

func (w *setWork) keep(store app.BrowserStorage) string {
	return keep(store, workKey(w.Set, w.Learner), "your work on this set", w)
}

// now is the time on the device, to the minute.
func now() string { return time.Now().Format("2006-01-02T15:04") }

// state is how far a problem is.
type state string

// States of a problem of a set.
const (
	untouched state = "new"
	begun     state = "begun"
	finished  state = "done"
)

// stateOf is how far problem i is. Without help, finished means that every
// line is written, or an answer chosen.
func (w *setWork) stateOf(i int, help sets.Help) state {
	s := &w.Sheets[i]
	switch {
	case !s.begun():
		return untouched
	case s.Done, help == sets.NoHelp && (s.answered() || written(s.Kind) && s.Kind != free && s.written() == len(s.Lines)):
		return finished
	}
	return begun
}

// left counts the problems with nothing written, and those not finished.
func (w *setWork) left(help sets.Help) (empty, open int) {
	for i := range w.Sheets {
		switch w.stateOf(i, help) {
		case untouched:
			empty++
			open++
		case begun:
			open++
		}
	}
	return empty, open
}

// handIn is what is handed in: the lines as typed.
func (w *setWork) handIn(s *sets.Set, now string) (*sets.HandIn, error) {
	h := sets.New(s, w.Learner)
	h.Begun, h.Written = w.Begun, now
	for i := range s.Items {
		t, err := s.Task(i, w.Learner)
		if err != nil {
			return nil, err
		}
		work := t.Of()
		if sheet := &w.Sheets[i]; sheet.begun() {
			work.Lines, work.Hints, work.Tapped = linesOf(sheet), hintsOf(sheet), sheet.Tapped
			work.At = w.At[i]
		}
		h.Work[i] = work
	}
	h.Seal()
	return h, nil
}

// linesOf are the lines of a sheet without the empty ones at its end.
func linesOf(s *sheet) []string {
	var list []string
	for _, e := range s.Lines {
		list = append(list, e.Text)
	}
	for len(list) > 0 && strings.TrimSpace(list[len(list)-1]) == "" {
		list = list[:len(list)-1]
	}
	return list
}

func hintsOf(s *sheet) []int {
	var list []int
	for _, e := range s.Lines {
		list = append(list, e.Hints)
	}
	if !slices.ContainsFunc(list, func(n int) bool { return n > 0 }) {
		return nil
	}
	return list
}

// kindOfSet is a kind of a set as the page of a problem names it.
func kindOfSet(k sets.Kind) string {
	if k == sets.Guided {
		return blanks
	}
	return readKind(string(k))
}

// learnerSaved is the name or number that a learner works under.
type learnerSaved struct {
	Version int    `json:"version"`
	Name    string `json:"name"`
}

const (
	learnerKey     = "riserwork-learner"
	learnerVersion = 1
)

func (l *learnerSaved) check() error {
	if l.Version != learnerVersion {
		return errVersion(l.Version, learnerVersion)
	}
	l.Name = sets.Clean(l.Name, sets.MaxLearner)
	return nil
}

func loadLearner(store app.BrowserStorage) (string, string) {
	l := learnerSaved{Version: learnerVersion}
	says := load(store, learnerKey, "your name", &l)
	return l.Name, says
}

func keepLearner(store app.BrowserStorage, name string) string {
	return keep(store, learnerKey, "your name", learnerSaved{learnerVersion, sets.Clean(name, sets.MaxLearner)})
}
