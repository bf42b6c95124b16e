package page

import (
	"errors"
	"net/url"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/skills"
)

// study is today's work: how long, what of it is done, and the examination
// that it leads to.
type study struct {
	Version int           `json:"version"`
	Minutes int           `json:"minutes"`
	Exam    int           `json:"exam,omitempty"`  // day of the examination; 0: none
	Day     int           `json:"day,omitempty"`   // the day that the items are for
	Items   []record.Item `json:"items,omitempty"` // problems, in order
	At      int           `json:"at,omitempty"`    // the one that is next or under way
	Open    string        `json:"open,omitempty"`  // its address, once it was opened
}

const (
	studyKey     = "riserwork-today"
	studyVersion = 1
	maxItems     = 60
)

// minutes are how long a session may be.
var minutes = []int{5, 10, 20}

func (s *study) check() error {
	if s.Version != studyVersion {
		return errVersion(s.Version, studyVersion)
	}
	if !slices.Contains(minutes, s.Minutes) || len(s.Items) > maxItems || s.At < 0 || s.At > len(s.Items) || s.Exam < 0 {
		return errors.New("it has a length or a place that no day's work has")
	}
	return nil
}

func loadStudy(s app.BrowserStorage) (study, string) {
	v := study{Version: studyVersion, Minutes: minutes[1]}
	says := load(s, studyKey, "today's work", &v)
	return v, says
}

func (s *study) keep(store app.BrowserStorage) string {
	return keep(store, studyKey, "today's work", s)
}

// view is the record looked at today.
func (s *study) view() record.View {
	return record.View{State: records.state, Today: today(), Exam: s.Exam}
}

// begin draws up the work of the day.
func (s *study) begin() {
	s.Day, s.At, s.Open = today(), 0, ""
	s.Items = s.view().Plan(skills.All(), s.Minutes)
}

// underWay reports whether there is work of today that is not done.
func (s *study) underWay() bool { return s.Day == today() && s.At < len(s.Items) }

// onward is the address of the problem that is next, a fresh one where it was
// not opened yet; false where all are done.
func (s *study) onward(house problems.House) (url string, ok bool) {
	for ; s.At < len(s.Items); s.At++ {
		if s.Open != "" {
			return s.Open, true
		}
		it := s.Items[s.At]
		skill, known := skills.ByID(it.Skill)
		if !known {
			continue
		}
		a := address{skill: skill, seed: someSeed(source()), house: house, today: true}
		switch {
		case it.Mistake:
			a.kind = mistake
		case record.Example(s.Items, s.At):
			a.given = all
		default:
			a.given = givenOf(a)
		}
		s.Open = a.url()
		return s.Open, true
	}
	return "", false
}

// opens reports whether the problem under way is that of the address.
func (s *study) opens(a address) bool {
	u, err := url.Parse(s.Open)
	if err != nil {
		return false
	}
	q := u.Query()
	return q.Get("skill") == a.skill.ID && q.Get("seed") == strconv.FormatUint(a.seed, 10)
}

// done goes past the problem under way.
func (s *study) done() {
	s.At, s.Open = min(s.At+1, len(s.Items)), ""
}

// givenOf is how many lines of a problem are to be shown worked.
func givenOf(a address) int {
	p, err := problems.New(a.skill, a.seed, a.house)
	if err != nil {
		return 0
	}
	b := bench{p: p}
	return records.state.Skill(a.skill.ID).Given(b.stepNames())
}
