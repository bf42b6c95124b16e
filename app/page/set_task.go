package page

import (
	"fmt"
	"net/url"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/sets"
)

// setTask is a problem of a set on the page on which it is worked; nil where
// the problem stands by itself.
type setTask struct {
	set  *sets.Set
	code string
	n    int // the first is 0
	task sets.Task
	work setWork
}

// doLink is the address of a set.
func doLink(code string) string { return link(doPath) + "#" + code }

// taskLink is the address of problem n of a set.
func taskLink(s *sets.Set, code string, n int) string {
	path := workPath
	if s.Items[n].Kind == sets.Reason {
		path = reasonPath
	}
	return link(path) + "?n=" + strconv.Itoa(n+1) + "#" + code
}

// openTask is the problem of a set that an address names. Where there is
// none, fault is one sentence.
func openTask(store app.BrowserStorage, u *url.URL) (t *setTask, fault string) {
	s, err := sets.ReadLink(u.Fragment)
	if err != nil {
		return nil, problems.Sentence(err.Error()) + "."
	}
	learner, _ := loadLearner(store)
	if learner == "" {
		return nil, "This problem is of a set. Open the set first and say who you are."
	}
	n, err := strconv.Atoi(u.Query().Get("n"))
	if err != nil {
		n = 0
	}
	t = &setTask{set: s, code: s.Link(), n: n - 1}
	if t.task, err = s.Task(t.n, learner); err != nil {
		return nil, problems.Sentence(err.Error()) + "."
	}
	t.work, _ = loadWork(store, s, learner, now())
	return t, ""
}

func (t *setTask) address() address {
	return address{skill: t.task.Skill, seed: t.task.Seed, house: t.set.House, kind: kindOfSet(t.task.Kind)}
}

// desk is the saved sheet of the problem.
func (t *setTask) desk() desk { return desk{Version: deskVersion, Sheets: t.work.Sheets[t.n : t.n+1]} }

// keep saves the sheet. The rest is read anew, since another tab may have
// written it.
func (t *setTask) keep(store app.BrowserStorage, s sheet) string {
	t.work, _ = loadWork(store, t.set, t.work.Learner, t.work.Begun)
	t.work.Sheets[t.n], t.work.At[t.n] = s, now()
	return t.work.keep(store)
}

// silent reports that lines are not marked before the set is handed in.
func (t *setTask) silent() bool { return t != nil && t.set.Help == sets.NoHelp }

// hintless reports that there are no hints.
func (t *setTask) hintless() bool { return t != nil && t.set.Help != sets.AllHelp }

// head says where in the set the problem stands.
func (t *setTask) head() app.UI {
	if t == nil {
		return app.P().Hidden(true)
	}
	return app.P().Class("of-set").Body(
		app.A().ID("to-set").Href(doLink(t.code)).Text(t.set.Title),
		app.Span().Text(fmt.Sprintf("problem %d of %d", t.n+1, len(t.set.Items))),
	)
}

// foot are the ways on: the next problem, or back to the set.
func (t *setTask) foot(primary bool) []app.UI {
	back := app.A().Class("button").ID("foot-set").Href(doLink(t.code)).Text("To the set")
	if t.n+1 == len(t.set.Items) {
		if primary {
			back.Class("primary")
		}
		return []app.UI{back}
	}
	next := app.A().Class("button").ID("foot-next").Href(taskLink(t.set, t.code, t.n+1)).Text("Next problem")
	if primary {
		next.Class("primary")
	}
	return []app.UI{back, next}
}
