package page

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/skills"
)

// start is the page that says what to do next and lists the skills.
type start struct {
	app.Compo

	house    problems.House
	desk     desk
	progress progress
	mix      []int  // chapters ticked for the mix
	kind     string // how the problems are worked
	notices  []string
}

// OnNav reads what is saved.
func (s *start) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	var says string
	s.house, says = loadHouse(store)
	s.notices = []string{says}
	s.desk, says = loadDesk(store)
	s.notices = append(s.notices, says)
	s.progress, says = loadProgress(store)
	s.notices = append(s.notices, says)
	arrive(ctx, "start", "Riserwork: the sums of water supply in tall buildings")
}

// Render shows what to do next, the mix and the chapters.
func (s *start) Render() app.UI {
	return frame("start", s.notices,
		heading("What shall we work out?"),
		s.nextUp(),
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
				app.A().Class("button", "primary").ID("next").Href(address{skill: skill, seed: open.Seed, house: open.House, mix: open.Mix, kind: open.Kind}.url()).Text("Carry on"),
			)
		}
	}
	skill := advice(skills.All(), &s.progress)
	if skill == nil {
		return app.Section().Class("next").Body(app.P().Text("There are no skills here yet."))
	}
	text := "Begin"
	if len(s.progress.Skills) > 0 {
		text = "Next skill"
	}
	return app.Section().Class("next").Aria("label", text).Body(
		app.P().Class("lead").Text(skill.Title),
		app.P().Text("One building, one question, line by line. Each wrong line is explained."),
		app.Button().Type("button").Class("button", "primary").ID("next").Text(text).OnClick(s.onSkill, skill.ID).DataSet("skill", skill.ID),
	)
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
	for _, run := range skillsByChapter() {
		n := run[0].Chapter
		ticks = append(ticks, app.Label().Class("tick").Body(
			app.Input().Type("checkbox").Name("mix").Value(strconv.Itoa(n)).Checked(slices.Contains(s.mix, n)).OnChange(s.onTick),
			app.Span().Text(chapter(n)),
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
	for _, run := range skillsByChapter() {
		var rows []app.UI
		for _, skill := range run {
			rows = append(rows, s.row(skill))
		}
		list = append(list, app.Details().Class("chapter").ID("chapter-"+strconv.Itoa(run[0].Chapter)).Body(
			app.Summary().Body(
				app.Span().Class("number").Text(strconv.Itoa(run[0].Chapter)),
				app.Span().Class("name").Text(chapter(run[0].Chapter)),
				app.Span().Class("count").Text(s.known(run)),
			),
			app.Ul().Class("skills").Body(rows...),
		))
	}
	return list
}

// known says how many skills of a chapter were right once.
func (s *start) known(run []*problems.Skill) string {
	n := 0
	for _, skill := range run {
		if s.progress.Skills[skill.ID].Right > 0 {
			n++
		}
	}
	return fmt.Sprintf("%d of %d", n, len(run))
}

func (s *start) row(skill *problems.Skill) app.UI {
	t := s.progress.Skills[skill.ID]
	text, state := "not tried", "new"
	switch {
	case t.Right > 0:
		text, state = fmt.Sprintf("✓ right %d of %d", t.Right, t.Tries), "right"
	case t.Tries > 0:
		text, state = fmt.Sprintf("tried %d", t.Tries), "tried"
	}
	return app.Li().Body(
		app.Button().Type("button").Class("skill").DataSet("skill", skill.ID).OnClick(s.onSkill, skill.ID).Body(
			app.Span().Class("name").Text(skill.Title),
			app.Span().Class("year").Text("year "+strconv.Itoa(skill.Year)),
			app.Span().Class("state").DataSet("state", state).Text(text),
		),
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
		for _, run := range skillsByChapter() {
			mix = append(mix, run[0].Chapter)
		}
	}
	rng := source()
	if skill := pickSkill(skills.All(), mix, last, rng); skill != nil {
		ctx.Navigate(address{skill: skill, seed: someSeed(rng), house: s.house, mix: mix, kind: s.kind}.url())
	}
}
