package page

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems/exam"
)

// examKey is where the mock paper under way is saved.
const examKey = "riserwork-exam"

const examVersion = 1

// stretches are the time of a paper in percent of what it is given; 0: no
// clock.
var stretches = []int{100, 125, 150, 0}

// examSaved is the mock paper under way, or the one that was handed in last.
type examSaved struct {
	Version int          `json:"version"`
	Code    string       `json:"code"`
	At      int          `json:"at"` // the question that lies open
	Answers []examAnswer `json:"answers"`
	Stretch int          `json:"stretch"`
	Hidden  bool         `json:"hidden,omitempty"` // the clock is
	Began   int64        `json:"began"`            // milliseconds since 1970-01-01 UTC
	Beyond  bool         `json:"beyond,omitempty"` // went on when the time was over
	Ended   int64        `json:"ended,omitempty"`  // when it was handed in; 0: it was not
}

// examAnswer is what was given to a question.
type examAnswer struct {
	exam.Answer
	Flag bool `json:"flag,omitempty"` // to be looked at again
}

// maxWritten is how long a written answer may be, in characters.
const maxWritten = 2000

func (s *examSaved) check() error {
	if s.Version != examVersion {
		return errVersion(s.Version, examVersion)
	}
	if s.Code == "" {
		return nil
	}
	plan, _, err := exam.ReadCode(s.Code)
	if err != nil {
		return err
	}
	if len(s.Answers) != plan.Questions || s.At < 0 || s.At >= plan.Questions {
		return errors.New("it has another number of answers than questions")
	}
	if !slices.Contains(stretches, s.Stretch) || s.Began < 0 || s.Ended < 0 {
		return errors.New("it has a time that no paper has")
	}
	for _, a := range s.Answers {
		if length16(a.Text) > 4*maxWritten {
			return errors.New("an answer in it is longer than an answer can be")
		}
	}
	return nil
}

func loadExam(store app.BrowserStorage) (examSaved, string) {
	s := examSaved{Version: examVersion}
	says := load(store, examKey, "your mock paper", &s)
	return s, says
}

// freshExam is a paper that begins.
func freshExam(plan exam.Plan, stretch int, at int64) examSaved {
	return examSaved{Version: examVersion, Code: plan.Code(), Answers: make([]examAnswer, plan.Questions), Stretch: stretch, Began: at}
}

// underWay reports that a paper was begun and not handed in.
func (s *examSaved) underWay() bool { return s.Code != "" && s.Ended == 0 }

func (s *examSaved) answers() []exam.Answer {
	list := make([]exam.Answer, len(s.Answers))
	for i, a := range s.Answers {
		list[i] = a.Answer
	}
	return list
}

// clocked is the time that the paper is given, and whether it has a clock.
func (s *examSaved) clocked(plan exam.Plan) (time.Duration, bool) {
	return time.Duration(plan.Minutes()) * time.Minute * time.Duration(s.Stretch) / 100, s.Stretch > 0
}

// left is the time that is left at a time in milliseconds. A clock that was
// put back gives no more than the whole.
func (s *examSaved) left(plan exam.Plan, at int64) time.Duration {
	whole, _ := s.clocked(plan)
	return min(whole, whole-time.Duration(at-s.Began)*time.Millisecond)
}

// over reports that the time is over and that nobody chose to go on.
func (s *examSaved) over(plan exam.Plan, at int64) bool {
	_, ok := s.clocked(plan)
	return ok && s.Ended == 0 && !s.Beyond && s.left(plan, at) <= 0
}

// used is the time from the start to the hand-in.
func (s *examSaved) used() time.Duration { return time.Duration(s.Ended-s.Began) * time.Millisecond }

// leftText is the time left in words: minutes, and seconds near the end.
func leftText(left time.Duration) string {
	left = max(left, 0)
	if left < 5*time.Minute {
		seconds := int((left + time.Second - 1) / time.Second)
		return fmt.Sprintf("%d:%02d left", seconds/60, seconds%60)
	}
	return fmt.Sprintf("%d min left", int((left+time.Minute-1)/time.Minute))
}

// warning is said once when so much time is left; empty at other times.
func warning(before, now time.Duration) string {
	for _, m := range []time.Duration{time.Minute, 5 * time.Minute, 15 * time.Minute} {
		if before > m && now <= m {
			return counted(int(m/time.Minute), "minute", "minutes") + " left."
		}
	}
	return ""
}

// clockNow is the time of the device in milliseconds since 1970-01-01 UTC.
func clockNow() int64 { return time.Now().UnixMilli() }
