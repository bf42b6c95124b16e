package page

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// shelf lists what there is to look up: the formula sheet, the tables, the
// cards of the rules, a converter of units and the words of the trade.
type shelf struct {
	app.Compo

	converter
	find    string // what is searched for, as typed
	notices []string
}

// OnNav reads what is saved.
func (s *shelf) OnNav(ctx app.Context) {
	house, says := loadHouse(ctx.LocalStorage())
	s.imperial, s.notices, s.find = house.Imperial, []string{says}, ""
	s.convert("")
	arrive(ctx, "shelf", "Shelf: rules, tables, units and words · Riserwork")
}

// Render shows the shelf.
func (s *shelf) Render() app.UI {
	tables, cards, terms := tableLinks(s.find), skillRuns(s.find, cardURL), termRows(s.find)
	open := s.find != ""
	return frame("shelf", s.notices,
		heading("Shelf"),
		app.Div().Class("search").Body(
			app.Label().For("find").Text("Find a rule, a table or a word"),
			app.Input().Class("box").ID("find").Type("search").Attr("maxlength", 60).AutoComplete(false).OnInput(s.onFind),
			app.P().Class("aside").Attr("role", "status").ID("found").Text(foundText(s.find, len(cards.list), len(tables), len(terms))),
		),
		app.A().Class("button").ID("formulas").Href(link(formulasPath)).Hidden(open).Text("Formula sheet, to read or print"),
		app.A().Class("button").ID("building").Href(link(tryPath)).Hidden(open).Text("Try a building of your own"),
		app.A().Class("button").ID("own").Href(link(ownPath)).Hidden(open).Text("Your own numbers, worked or marked"),
		s.box(open),
		app.Section().Hidden(len(cards.list) == 0).Body(app.H2().Text("Rule cards"), app.Div().Body(cards.runs...)),
		app.A().Class("button").ID("devices").Href(link(devicePath)).Hidden(open).Text("Devices: cards and questions"),
		app.Details().Class("chapter").Hidden(len(tables) == 0).Open(open).Body(
			app.Summary().ID("tables").Body(app.Span().Class("name").Text("Tables"), count(len(tables))),
			app.Ul().Class("links").Body(tables...),
		),
		app.Details().Class("chapter").Hidden(len(terms) == 0).Open(open).Body(
			app.Summary().ID("words").Body(app.Span().Class("name").Text("Words of the trade"), count(len(terms))),
			app.Dl().Class("terms").Body(terms...),
		),
	)
}

func (s *shelf) onFind(ctx app.Context, e app.Event) { s.find = chosen(ctx) }

func count(n int) app.UI { return app.Span().Class("count").Text(strconv.Itoa(n)) }

// holds reports whether a text stands in any of others, great or small.
func holds(text string, in ...string) bool {
	text = strings.ToLower(strings.TrimSpace(text))
	for _, s := range in {
		if strings.Contains(strings.ToLower(s), text) {
			return true
		}
	}
	return false
}

func foundText(text string, cards, tables, terms int) string {
	if strings.TrimSpace(text) == "" {
		return ""
	}
	if cards+tables+terms == 0 {
		return "Nothing on the shelf has “" + clip(text) + "”. Try a shorter word."
	}
	return "Found: " + plural(cards, "card") + ", " + plural(tables, "table") + ", " + plural(terms, "word") + "."
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// found is the cards that a search found, and their runs of chapters.
type found struct {
	list []*problems.Skill
	runs []app.UI
}

// skillRuns are the skills by chapter whose words hold a text, each a link.
func skillRuns(text string, url func(*problems.Skill) string) (f found) {
	for _, run := range skills.ByChapter() {
		var rows []app.UI
		for _, skill := range run {
			if !holds(text, wordsOf(skill)...) {
				continue
			}
			f.list = append(f.list, skill)
			rows = append(rows, app.Li().Body(app.A().Href(url(skill)).Text(skill.Title)))
		}
		if len(rows) == 0 {
			continue
		}
		n := run[0].Chapter
		f.runs = append(f.runs, app.Details().Class("chapter").Open(text != "").Body(
			app.Summary().Body(app.Span().Class("number").Text(strconv.Itoa(n)), app.Span().Class("name").Text(skills.ChapterTitle(n)), count(len(rows))),
			app.Ul().Class("links").Body(rows...),
		))
	}
	return f
}

// wordsOf are the title of a skill and what its lines work out.
func wordsOf(s *problems.Skill) []string {
	words := []string{s.Title, s.ID}
	for i := range s.Rules {
		words = append(words, s.Rules[i].Says)
	}
	return words
}

// termRows are the words of the trade that hold a text, with what they mean.
func termRows(text string) []app.UI {
	var list []app.UI
	for _, t := range terms {
		if holds(text, t.word, t.means) {
			list = append(list, app.Div().Body(app.Dt().Text(t.word), app.Dd().Text(t.means)))
		}
	}
	return list
}
