package page

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Paths of the pages.
const (
	startPath    = "/"
	workPath     = "/work"
	housePath    = "/house"
	todayPath    = "/today"
	standingPath = "/standing"
	recordPath   = "/record"
	setPath      = "/set"
	doPath       = "/do"
	classPath    = "/class"
	cardPath     = "/card"
	shelfPath    = "/shelf"
	tablesPath   = "/tables"
	formulasPath = "/formulas"
	tryPath      = "/building"
	ownPath      = "/own"
	paperPath    = "/paper"
	examPath     = "/exam"
	reasonPath   = "/reason"
	devicePath   = "/device"
	walkPath     = "/walk"
)

// link is a path of ours where the program is served below the top of a site.
func link(path string) string { return app.Getenv("GOAPP_ROOT_PREFIX") + path }

// address is a problem as a link names it: with the house rules it is drawn
// under, so that the link gives everybody the same numbers.
type address struct {
	skill   *problems.Skill
	seed    uint64
	house   problems.House
	mix     []int          // chapters of the mix it was drawn from; empty: none
	kind    string         // how it is worked; see kinds
	given   int            // lines at the head that are shown worked
	today   bool           // it is part of today's work
	givens  []problems.Own // numbers of one's own in place of the drawn ones
	earlier string         // what is to be said where the link is of an earlier version
}

// givenKey begins the word of a number of one's own in a link.
const givenKey = "g."

// problem is the problem of the address.
func (a address) problem() (*problems.Problem, error) {
	p, err := problems.New(a.skill, a.seed, a.house)
	if err != nil || len(a.givens) == 0 {
		return p, err
	}
	return p.With(a.givens)
}

// url is the link.
func (a address) url() string { return link(workPath) + "?" + a.query() }

func (a address) query() string {
	q := url.Values{}
	q.Set("skill", a.skill.ID)
	q.Set("v", strconv.Itoa(a.skill.Version))
	q.Set("seed", strconv.FormatUint(a.seed, 10))
	q.Set("units", string(a.house.System))
	q.Set("code", a.house.Code)
	if a.house.Imperial {
		q.Set("gal", "imperial")
	}
	if a.house.TopMin > 0 {
		q.Set("top", strconv.FormatFloat(a.house.TopMin, 'g', -1, 64))
	}
	if a.house.Alone != problems.AloneValues {
		q.Set("alone", string(a.house.Alone))
	}
	for _, c := range a.house.Constants {
		q.Set(c.Name, c.Text)
	}
	if a.kind != blanks {
		q.Set("kind", a.kind)
	}
	if a.given > 0 {
		q.Set("given", strconv.Itoa(a.given))
	}
	if a.today {
		q.Set("today", "1")
	}
	for _, g := range a.givens {
		q.Set(givenKey+g.Name, g.Text)
	}
	if len(a.mix) > 0 {
		q.Set("mix", joinInts(a.mix))
	}
	return q.Encode()
}

// readAddress reads a link; what it does not name is as in one's own house
// rules, and a problem without a number is a fresh one. Where it cannot be read, fault is one sentence for the learner.
func readAddress(q url.Values, own problems.House) (a address, fault string) {
	var ok bool
	if a.skill, ok = skills.ByID(q.Get("skill")); !ok {
		return a, "The link names the skill “" + clip(q.Get("skill")) + "”, which is not here."
	}
	var err error
	if !q.Has("seed") {
		a.seed = someSeed(source())
	} else if a.seed, err = strconv.ParseUint(q.Get("seed"), 10, 64); err != nil {
		return a, "The link has “" + clip(q.Get("seed")) + "” for its problem number, and a whole number was expected."
	}
	a.house = readHouse(q, own)
	a.mix = splitInts(q.Get("mix"))
	a.kind = readKind(q.Get("kind"))
	a.given, _ = strconv.Atoi(q.Get("given"))
	a.today = q.Get("today") == "1"
	for i := range a.skill.Givens {
		if name := a.skill.Givens[i].Name; q.Has(givenKey + name) {
			a.givens = append(a.givens, problems.Own{Name: name, Text: cut(q.Get(givenKey + name))})
		}
	}
	if v := q.Get("v"); v != "" && v != strconv.Itoa(a.skill.Version) {
		a.earlier = "This link was made for another version of this skill, so its numbers may differ from those of the person who gave it to you."
	}
	return a, ""
}

// readHouse is the house of a link. Constants are read only where the link
// names its units, since they belong to them.
func readHouse(q url.Values, own problems.House) problems.House {
	if q.Get("units") == "" {
		return sound(own)
	}
	h := problems.House{System: unit.System(q.Get("units")), Code: q.Get("code"), Imperial: q.Get("gal") == "imperial", Alone: problems.Alone(q.Get("alone"))}
	h.TopMin, _ = strconv.ParseFloat(q.Get("top"), 64)
	for _, c := range solver.Constants {
		if text := q.Get(c.Name); text != "" {
			h.Constants = append(h.Constants, problems.Pick{Name: c.Name, Text: text})
		}
	}
	return sound(h)
}

// clip keeps a text of others short where it is shown.
func clip(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return text
}

func joinInts(list []int) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = strconv.Itoa(n)
	}
	return strings.Join(words, ".")
}

// splitInts reads chapters; what is no chapter is left out.
func splitInts(text string) []int {
	var list []int
	for word := range strings.SplitSeq(text, ".") {
		n, err := strconv.Atoi(word)
		if err == nil && n > 0 && n <= len(skills.Chapters) && !slices.Contains(list, n) {
			list = append(list, n)
		}
	}
	return list
}
