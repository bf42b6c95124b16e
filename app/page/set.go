package page

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/sets"
	"riserwork/problems/skills"
)

// setMaker is the page on which an instructor makes a set. It is saved at
// every change.
type setMaker struct {
	app.Compo

	set     sets.Set
	own     problems.House // the house rules as set now
	before  *sets.Set      // what was under way when a link was opened
	chapter int            // what the next problems are drawn from
	year    int
	count   int
	kind    sets.Kind
	reason  devices.Kind // of the next question of reasoning
	link    string       // empty: the set cannot be given out, and fault says why
	fault   string
	added   string                // what is wrong with the problems asked for
	print   string                // "sheet" or "key" while it is printed
	tasks   map[string]*sets.Task // drawn already
	notices []string
	said    string
}

// setSaved is the set under way as saved.
type setSaved struct {
	Version int      `json:"version"`
	Set     sets.Set `json:"set"`
}

const (
	setKey     = "riserwork-set"
	setVersion = 1
)

func (s *setSaved) check() error {
	if s.Version != setVersion {
		return errVersion(s.Version, setVersion)
	}
	if len(s.Set.Items) == 0 {
		return nil
	}
	titled := s.Set
	if titled.Title == "" {
		titled.Title = "x"
	}
	return titled.Check()
}

// OnNav reads the set under way, or the one of the address.
func (m *setMaker) OnNav(ctx app.Context) {
	store := ctx.LocalStorage()
	own, says := loadHouse(store)
	m.notices = []string{says}
	saved := setSaved{Version: setVersion, Set: sets.Set{Help: sets.AllHelp, Own: true, House: own}}
	says = load(store, setKey, "the set under way", &saved)
	m.notices = append(m.notices, says)
	m.set, m.own, m.print, m.before = saved.Set, own, "", nil
	if len(m.set.Items) == 0 {
		m.set.House = own
	}
	if m.set.Number == 0 {
		m.set.Number = uint32(max(1, someSeed(source())))
	}
	if u := *ctx.Page().URL(); u.Fragment != "" {
		m.open(ctx, u.Fragment)
		u.Fragment = ""
		ctx.Page().ReplaceURL(&u)
	}
	m.chapter, m.count, m.kind = max(m.chapter, 1), max(m.count, 4), kindOr(m.kind)
	if m.reason == "" {
		m.reason = devices.Kinds[0]
	}
	m.renew()
	arrive(ctx, "set", "Make a set · Riserwork")
	later(ctx, m, m.sync)
}

func kindOr(k sets.Kind) sets.Kind {
	if k == "" {
		return sets.Guided
	}
	return k
}

// open takes over the set of a link. What was under way can be brought back.
func (m *setMaker) open(ctx app.Context, code string) {
	s, err := sets.ReadLink(code)
	if err != nil {
		m.notices = append(m.notices, problems.Sentence(err.Error())+".")
		return
	}
	if len(m.set.Items) > 0 && m.set.Link() != s.Link() {
		was := m.set
		m.before = &was
	}
	m.set = *s
	m.changed(ctx)
	m.notices = append(m.notices, s.Earlier())
}

// renew works out the link of the set as it stands.
func (m *setMaker) renew() {
	m.link, m.fault = "", ""
	if err := m.set.Check(); err != nil {
		m.fault = problems.Sentence(err.Error()) + "."
		return
	}
	m.link = m.set.Link()
}

// changed keeps the set.
func (m *setMaker) changed(ctx app.Context) {
	m.renew()
	if says := keep(ctx.LocalStorage(), setKey, "the set", setSaved{setVersion, m.set}); says != "" && !slices.Contains(m.notices, says) {
		m.notices = append(m.notices, says)
	}
}

// boxes are the boxes that are left to the browser while somebody types.
func (m *setMaker) boxes() map[string]string {
	day, at, _ := strings.Cut(m.set.Closes, "T")
	return map[string]string{
		"set-title": m.set.Title, "set-note": m.set.Note, "set-amends": m.set.Amends, "set-closes": day, "set-closes-at": at,
		"set-minutes": numberText(m.set.Minutes), "set-pass": numberText(m.set.Pass),
	}
}

func numberText(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

func (m *setMaker) sync() {
	for id, text := range m.boxes() {
		if el := app.Window().GetElementByID(id); el.Truthy() && el.Get("value").String() != text {
			el.Set("value", text)
		}
	}
}

// onBox is a change of one of the boxes.
func (m *setMaker) onBox(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	text := el.Get("value").String()
	n, _ := strconv.Atoi(strings.TrimSpace(text))
	switch el.Get("id").String() {
	case "set-title":
		m.set.Title = sets.Clean(text, sets.MaxTitle)
	case "set-note":
		m.set.Note = sets.Clean(text, sets.MaxNote)
	case "set-amends":
		m.set.Amends = sets.Clean(text, sets.MaxNote)
	case "set-closes", "set-closes-at":
		m.set.Closes = closing(m.set.Closes, el.Get("id").String(), text)
	case "set-minutes":
		m.set.Minutes = n
	case "set-pass":
		m.set.Pass = n
	}
	m.changed(ctx)
}

// closing is a closing time with another day or another time of day. A time
// of day alone is none.
func closing(closes, id, text string) string {
	day, at, _ := strings.Cut(closes, "T")
	if id == "set-closes" {
		day = text
	} else {
		at = text
	}
	if day == "" || at == "" {
		return day
	}
	return day + "T" + at
}

// onAddReason adds a question of reasoning.
func (m *setMaker) onAddReason(ctx app.Context, e app.Event) {
	if len(m.set.Items) == sets.MaxItems {
		return
	}
	m.set.Items = append(m.set.Items, sets.QuestionOf(m.reason))
	m.said = "A question is added."
	m.changed(ctx)
}

// onAddChapter adds problems of a chapter.
func (m *setMaker) onAddChapter(ctx app.Context, e app.Event) {
	m.added = ""
	if err := m.set.Draw(sets.Blueprint{Chapter: m.chapter, Year: m.year, Count: m.count, Kind: m.kind}); err != nil {
		m.added = problems.Sentence(err.Error()) + "."
		return
	}
	m.said = fmt.Sprintf("%d problems added, %d in the set.", m.count, len(m.set.Items))
	m.changed(ctx)
}

// onAddSkill adds one problem of the skill that was tapped.
func (m *setMaker) onAddSkill(ctx app.Context, e app.Event) {
	skill, ok := skills.ByID(ctx.JSSrc().Get("dataset").Get("skill").String())
	if !ok || len(m.set.Items) == sets.MaxItems {
		return
	}
	m.set.Items = append(m.set.Items, sets.ItemOf(skill, m.kind))
	m.said = skill.Title + " added."
	m.changed(ctx)
}

// onPick is a change of a choice.
func (m *setMaker) onPick(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	value := el.Get("value").String()
	n, _ := strconv.Atoi(value)
	switch el.Get("name").String() {
	case "chapter":
		m.chapter = n
	case "year":
		m.year = n
	case "count":
		m.count = n
	case "kind":
		m.kind = sets.Kind(value)
	case "reason":
		m.reason = devices.Kind(value)
	case "help":
		m.set.Help = sets.Help(value)
	case "own":
		m.set.Own = value == "own"
	}
	m.changed(ctx)
}

// item is the problem that an element belongs to.
func (m *setMaker) item(el app.Value) (int, bool) {
	i := indexOf(el)
	return i, i >= 0 && i < len(m.set.Items)
}

func (m *setMaker) onRedraw(ctx app.Context, e app.Event) {
	if i, ok := m.item(ctx.JSSrc()); ok {
		m.set.Redraw(i)
		m.said = fmt.Sprintf("Problem %d has other numbers.", i+1)
		m.changed(ctx)
	}
}

func (m *setMaker) onPin(ctx app.Context, e app.Event) {
	if i, ok := m.item(ctx.JSSrc()); ok {
		m.set.Pin(i)
		m.changed(ctx)
	}
}

func (m *setMaker) onRemove(ctx app.Context, e app.Event) {
	if i, ok := m.item(ctx.JSSrc()); ok {
		m.set.Items = slices.Delete(m.set.Items, i, i+1)
		m.said = fmt.Sprintf("Problem %d is taken out.", i+1)
		m.changed(ctx)
	}
}

func (m *setMaker) onUp(ctx app.Context, e app.Event)   { m.move(ctx, -1) }
func (m *setMaker) onDown(ctx app.Context, e app.Event) { m.move(ctx, 1) }

// move gives a problem another place in the set. Its numbers are drawn from
// its place, so they change unless they are held.
func (m *setMaker) move(ctx app.Context, by int) {
	i, ok := m.item(ctx.JSSrc())
	to := i + by
	if !ok || to < 0 || to >= len(m.set.Items) {
		return
	}
	m.set.Items[i], m.set.Items[to] = m.set.Items[to], m.set.Items[i]
	m.said = fmt.Sprintf("Problem %d is now problem %d.", i+1, to+1)
	m.changed(ctx)
}

func (m *setMaker) onItemKind(ctx app.Context, e app.Event) {
	el := ctx.JSSrc()
	if i, ok := m.item(el); ok && m.set.Items[i].Kind != sets.Reason {
		m.set.Items[i].Kind = sets.Kind(el.Get("value").String())
		m.changed(ctx)
	}
}

// onClear begins a new set.
func (m *setMaker) onClear(ctx app.Context, e app.Event) {
	m.set = sets.Set{Help: m.set.Help, Own: m.set.Own, House: m.set.House, Number: uint32(max(1, someSeed(source())))}
	m.said = "A new set is begun."
	m.changed(ctx)
	later(ctx, m, m.sync)
}

// task is problem i as the instructor's copy has it; nil where none could be
// drawn. It is drawn once.
func (m *setMaker) task(i int) *sets.Task {
	it := &m.set.Items[i]
	key := fmt.Sprint(it.Skill, it.Kind, m.set.Seed(i, ""), m.set.House)
	if t, ok := m.tasks[key]; ok {
		return t
	}
	if m.tasks == nil || len(m.tasks) > 4*sets.MaxItems {
		m.tasks = map[string]*sets.Task{}
	}
	t, err := m.set.Task(i, "")
	m.tasks[key] = &t
	if err != nil {
		m.tasks[key] = nil
	}
	return m.tasks[key]
}

// onBefore brings back what was under way.
func (m *setMaker) onBefore(ctx app.Context, e app.Event) {
	m.set, m.before = *m.before, nil
	m.said = "The set that was under way is back."
	m.changed(ctx)
	later(ctx, m, m.sync)
}

// onHouse takes the house rules as they are now.
func (m *setMaker) onHouse(ctx app.Context, e app.Event) {
	m.set.House = m.own
	m.changed(ctx)
}
