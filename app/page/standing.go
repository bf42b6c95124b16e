package page

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/skills"
)

// standing is how things stand: by chapter and skill what holds and what is
// due, which traps still catch, and the days of work.
type standing struct {
	app.Compo

	house   problems.House
	view    record.View
	traps   []trapShown
	read    bool
	notices []string
}

// mostTraps is how many traps are shown.
const mostTraps = 5

// OnNav reads the record.
func (s *standing) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	var says string
	s.read = false
	s.house, says = loadHouse(store)
	s.notices = []string{says}
	v, says := loadStudy(store)
	s.notices = append(s.notices, says)
	arrive(ctx, "standing", "My standing · Riserwork")
	records.refresh(func() {
		ctx.Dispatch(func(app.Context) {
			s.view, s.read = v.view(), true
			s.traps = trapsOf(s.view, s.house)
		})
	})
}

// Render shows the pictures, each with a way to work.
func (s *standing) Render() app.UI {
	if !s.read {
		return frame("standing", s.notices, heading("My standing"), app.P().Text("Reading your record."))
	}
	all := tallyOf(s.view, skills.All())
	return frame("standing", s.notices,
		heading("My standing"),
		app.Section().Class("whole").Aria("label", "All skills").Body(
			bar(all),
			legend(all),
			app.A().Class("button", "primary").ID("to-today").Href(link(todayPath)).Text(dueText(all)),
		),
		app.Section().Class("chapters").Aria("label", "By chapter").Body(s.chapters()...),
		s.trapList(),
		s.calendar(),
		app.A().Class("button").ID("to-record").Href(link(recordPath)).Text("Your record: save it, move it"),
	)
}

// tallied is how many skills stand how.
type tallied struct {
	words map[record.Word]int
	due   int
	of    int
}

func tallyOf(v record.View, list []*problems.Skill) tallied {
	t := tallied{words: map[record.Word]int{}, of: len(list)}
	for _, s := range list {
		t.words[v.Word(s)]++
		if v.Due(s) {
			t.due++
		}
	}
	return t
}

func dueText(t tallied) string {
	if t.due == 0 {
		return "Nothing is due: to today’s work"
	}
	return fmt.Sprintf("%d due: to today’s work", t.due)
}

// words are the states in the order in which they stand in a bar.
var words = []record.Word{record.Firm, record.Shaky, record.Helped, record.New}

// bar is the skills as one bar; its twin in words stands beside it.
func bar(t tallied) app.UI {
	const width, height = 400, 20
	e := app.Elem("svg").XMLNS(draw.Namespace).Attr("viewBox", fmt.Sprintf("0 0 %d %d", width, height)).
		Attr("data-part", "bar").Attr("aria-hidden", "true").Attr("preserveAspectRatio", "none")
	var parts []app.UI
	x := 0.0
	for _, w := range words {
		n := t.words[w]
		if n == 0 {
			continue
		}
		wide := width * float64(n) / float64(t.of)
		parts = append(parts, app.Elem("rect").XMLNS(draw.Namespace).Attr("data-part", string(w)).
			Attr("x", fixed(x)).Attr("y", "1").Attr("width", fixed(wide)).Attr("height", strconv.Itoa(height-2)))
		x += wide
	}
	return e.Body(parts...)
}

func fixed(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }

// legend is the words of a bar with their numbers.
func legend(t tallied) app.UI {
	var list []app.UI
	for _, w := range words {
		list = append(list, app.Li().Body(
			app.Span().Class("swatch").DataSet("word", string(w)).Aria("hidden", true),
			app.Span().Text(countedWord(t.words[w], w)),
		))
	}
	return app.Ul().Class("legend").Body(list...)
}

// countedWord is how many skills stand so.
func countedWord(n int, w record.Word) string {
	if w == record.Firm && n != 1 {
		return fmt.Sprintf("%d hold", n)
	}
	return fmt.Sprintf("%d %s", n, w)
}

func (s *standing) chapters() []app.UI {
	list := []app.UI{app.H2().Text("By chapter")}
	for _, run := range skills.ByChapter() {
		t := tallyOf(s.view, run)
		note := fmt.Sprintf("%d of %d hold", t.words[record.Firm], t.of)
		if t.due > 0 {
			note += fmt.Sprintf(", %d due", t.due)
		}
		var rows []app.UI
		for _, skill := range run {
			rows = append(rows, s.row(skill))
		}
		list = append(list, app.Details().Class("chapter").ID("chapter-"+strconv.Itoa(run[0].Chapter)).Body(
			app.Summary().Body(
				app.Span().Class("name").Text(skills.ChapterTitle(run[0].Chapter)),
				app.Span().Class("count").Text(note),
				bar(t),
			),
			app.Ul().Class("skills").Body(rows...),
		))
	}
	return list
}

func (s *standing) row(skill *problems.Skill) app.UI {
	word, due := stands(s.view, skill)
	return app.Li().Body(
		app.Button().Type("button").Class("skill").DataSet("skill", skill.ID).OnClick(s.onSkill, skill.ID).Body(
			app.Span().Class("name").Text(skill.Title),
			app.Span().Class("state").DataSet("state", string(word)).Text(wordSign(word)+string(word)+due),
		),
	)
}

// onSkill opens a problem of the skill, with as many lines shown as it needs.
func (s *standing) onSkill(ctx app.Context, e app.Event) {
	skill, ok := skills.ByID(ctx.JSSrc().Get("dataset").Get("skill").String())
	if !ok {
		return
	}
	a := address{skill: skill, seed: someSeed(source()), house: s.house}
	a.given = givenOf(a)
	ctx.Navigate(a.url())
}
