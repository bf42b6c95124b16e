package page

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/record"
	"riserwork/problems"
	"riserwork/problems/skills"
)

// start is the page that says what to do next and lists the skills.
type start struct {
	app.Compo

	house   problems.House
	desk    desk
	study   study
	mix     []int  // chapters ticked for the mix
	kind    string // how the problems are worked
	notices []string
}

// OnNav reads what is saved.
func (s *start) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	var says string
	s.house, says = loadHouse(store)
	s.notices = []string{says}
	s.desk, says = loadDesk(store)
	s.notices = append(s.notices, says)
	s.study, says = loadStudy(store)
	s.notices = append(s.notices, says)
	arrive(ctx, "start", "Riserwork: the sums of water supply in tall buildings")
	takeOver(store, records, func() {
		records.refresh(func() { ctx.Dispatch(func(app.Context) {}) })
	})
}

// Render shows what to do next, the mix and the chapters.
func (s *start) Render() app.UI {
	return frame("start", s.notices,
		heading("What shall we work out?"),
		s.nextUp(),
		offered(),
		s.mixed(),
		s.kinds(),
		app.Section().Class("chapters").Aria("labelledby", "chapters").Body(
			app.H2().ID("chapters").Text("Choose a skill"),
			app.Div().Body(s.chapters()...),
		),
	)
}

// nextUp is the one thing to tap for those who do not want to choose.
func (s *start) nextUp() app.UI {
	if open, ok := unfinished(&s.desk); ok {
		if skill, ok := skills.ByID(open.Skill); ok && skill.Version == open.Version {
			return app.Section().Class("next").Aria("label", "Carry on").Body(
				app.P().Class("lead").Text(skill.Title),
				app.P().Text(openText(&open)),
				app.A().Class("button", "primary").ID("next").Href(address{skill: skill, seed: open.Seed, house: open.House, mix: open.Mix, kind: open.Kind, givens: open.Givens}.url()).Text("Carry on"),
			)
		}
	}
	return app.Section().Class("next").Aria("label", "Today").Body(
		app.P().Class("lead").Text("What to do today"),
		app.P().Text("What is due, what is shaky, and a little that is new."),
		app.A().Class("button", "primary").ID("next").Href(link(todayPath)).Text(s.todayText()),
	)
}

// todayText is what the way to today's work says.
func (s *start) todayText() string {
	if s.study.underWay() {
		return "Carry on with today"
	}
	return fmt.Sprintf("Today, %d minutes", s.study.Minutes)
}

// openText says how far an open problem is.
func openText(s *sheet) string {
	if s.Kind == blanks {
		return fmt.Sprintf("Your open problem: %d of %d lines written.", s.written(), len(s.Lines))
	}
	return "Your open problem: " + lower(kindText(s.Kind)) + "."
}

// kinds are the ways of working, behind one line that opens.
func (s *start) kinds() app.UI {
	list := make([]option, len(kinds))
	for i, k := range kinds {
		list[i] = option{k.name, k.text, k.note}
	}
	return app.Details().Class("mix", "kinds").Body(
		app.Summary().ID("kinds").Text("How to work: "+lower(kindText(s.kind))),
		group("kind", "A skill or mix that you open is worked", s.kind, list, s.onKind),
	)
}

func (s *start) onKind(ctx app.Context, e app.Event) { s.kind = readKind(chosen(ctx)) }

// mixed draws from several chapters.
func (s *start) mixed() app.UI {
	var ticks []app.UI
	for _, run := range skills.ByChapter() {
		n := run[0].Chapter
		ticks = append(ticks, app.Label().Class("tick").Body(
			app.Input().Type("checkbox").Name("mix").Value(strconv.Itoa(n)).Checked(slices.Contains(s.mix, n)).OnChange(s.onTick),
			app.Span().Text(skills.ChapterTitle(n)),
		))
	}
	text := "Mix of all chapters"
	if len(s.mix) > 0 {
		text = "Mix of these chapters"
	}
	return app.Details().Class("mix").Body(
		app.Summary().Text("Mixed problems"),
		app.P().Text("Skills in changing order: you decide which sum it takes. Tick chapters, or none for all."),
		app.Div().Class("ticks").Body(ticks...),
		app.Button().Type("button").Class("button").ID("mix").Text(text).OnClick(s.onMix),
	)
}

func (s *start) chapters() []app.UI {
	var list []app.UI
	for _, run := range skills.ByChapter() {
		var rows []app.UI
		for _, skill := range run {
			rows = append(rows, s.row(skill))
		}
		list = append(list, app.Details().Class("chapter").ID("chapter-"+strconv.Itoa(run[0].Chapter)).Body(
			app.Summary().Body(
				app.Span().Class("number").Text(strconv.Itoa(run[0].Chapter)),
				app.Span().Class("name").Text(skills.ChapterTitle(run[0].Chapter)),
				app.Span().Class("count").Text(s.known(run)),
			),
			app.Ul().Class("skills").Body(rows...),
		))
	}
	return list
}

// known says how many skills of a chapter hold.
func (s *start) known(run []*problems.Skill) string {
	n, view := 0, s.study.view()
	for _, skill := range run {
		if view.Word(skill) == record.Firm {
			n++
		}
	}
	return fmt.Sprintf("%d of %d hold", n, len(run))
}

func (s *start) row(skill *problems.Skill) app.UI {
	word, due := stands(s.study.view(), skill)
	return app.Li().Body(
		app.Button().Type("button").Class("skill").DataSet("skill", skill.ID).OnClick(s.onSkill, skill.ID).Body(
			app.Span().Class("name").Text(skill.Title),
			app.Span().Class("year").Text("year "+strconv.Itoa(skill.Year)),
			app.Span().Class("state").DataSet("state", string(word)).Text(wordSign(word)+string(word)+due),
		),
		app.A().Class("card-link").Href(cardURL(skill)).Aria("label", "Rule card: "+skill.Title).Text("Rule"),
	)
}

// onSkill opens a fresh problem of the skill that was tapped.
func (s *start) onSkill(ctx app.Context, e app.Event) {
	skill, ok := skills.ByID(ctx.JSSrc().Get("dataset").Get("skill").String())
	if !ok {
		return
	}
	ctx.Navigate(address{skill: skill, seed: someSeed(source()), house: s.house, kind: s.kind}.url())
}

func (s *start) onTick(ctx app.Context, e app.Event) {
	box := ctx.JSSrc()
	n, err := strconv.Atoi(box.Get("value").String())
	if err != nil {
		return
	}
	s.mix = slices.DeleteFunc(s.mix, func(m int) bool { return m == n })
	if box.Get("checked").Bool() {
		s.mix = append(s.mix, n)
		slices.Sort(s.mix)
	}
}

func (s *start) onMix(ctx app.Context, e app.Event) {
	last := ""
	if len(s.desk.Sheets) > 0 {
		last = s.desk.Sheets[0].Skill
	}
	mix := s.mix
	if len(mix) == 0 {
		for _, run := range skills.ByChapter() {
			mix = append(mix, run[0].Chapter)
		}
	}
	rng := source()
	if skill := pickSkill(skills.All(), mix, last, rng); skill != nil {
		ctx.Navigate(address{skill: skill, seed: someSeed(rng), house: s.house, mix: mix, kind: s.kind}.url())
	}
}
