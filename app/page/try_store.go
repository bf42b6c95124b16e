package page

import (
	"fmt"
	"net/url"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/solver/unit"
)

const triedKey = "riserwork-buildings"

// mostTried is how many buildings are kept.
const mostTried = 20

// triedSaved are the buildings kept in the browser, each as its link has it.
type triedSaved struct {
	Version int     `json:"version"`
	List    []tried `json:"list"`
}

// tried is one building that is kept.
type tried struct {
	Name   string `json:"name"`
	Query  string `json:"query"`
	System string `json:"system"`
}

func (s *triedSaved) check() error {
	if s.Version != 1 {
		return errVersion(s.Version, 1)
	}
	if len(s.List) > mostTried {
		return fmt.Errorf("it holds %d buildings, and at most %d were expected", len(s.List), mostTried)
	}
	return nil
}

// onKeep keeps the building in view under a name that tells it apart.
func (t *tryPage) onKeep(ctx app.Context, e app.Event) {
	if t.built == nil {
		return
	}
	if len(t.saved.List) == mostTried {
		t.said = "Twenty buildings are kept; take one away first."
		return
	}
	b := t.whole.Building
	name := strconv.Itoa(len(t.saved.List)+1) + ": " + string(b.Use) + ", " + strconv.Itoa(b.Storeys()) + " storeys"
	t.saved.Version = 1
	t.saved.List = append(t.saved.List, tried{name, triedQuery(*t.built, t.house.System), string(t.house.System)})
	t.keepTried(ctx, "Kept as “"+name+"”.")
}

func (t *tryPage) keepTried(ctx app.Context, says string) {
	t.said = says
	if fault := keep(ctx.LocalStorage(), triedKey, "your buildings", t.saved); fault != "" {
		t.said = fault
	}
}

func (t *tryPage) onOpen(i int) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		q, err := url.ParseQuery(t.saved.List[i].Query)
		if err != nil {
			t.said = "That building could not be read."
			return
		}
		o, says := readTried(q, unit.System(t.saved.List[i].System))
		t.begin(o)
		if says != "" {
			t.said = says
		}
		ctx.Defer(t.sync)
	}
}

func (t *tryPage) onDrop(i int) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		name := t.saved.List[i].Name
		t.saved.List = append(t.saved.List[:i:i], t.saved.List[i+1:]...)
		t.keepTried(ctx, "“"+name+"” is taken away.")
	}
}

// onShare puts the link of the building on the clipboard.
func (t *tryPage) onShare(ctx app.Context, e app.Event) {
	if t.built == nil {
		return
	}
	u := *ctx.Page().URL()
	u.RawQuery = triedQuery(*t.built, t.house.System)
	copyText(ctx, u.String(), func(ok bool) {
		t.said = "The link is on the clipboard."
		if !ok {
			t.said = "The browser would not copy; hold the link below instead."
		}
	})
}
