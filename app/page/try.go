package page

import (
	"math"
	"net/url"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// tryPage is a building of one's own: it is worked out anew with every figure
// that is changed. What cannot be read or built is said in one sentence, and
// the last building that could be stays in view.
type tryPage struct {
	app.Compo

	house   problems.House
	outline solver.Outline
	typed   map[string]string // what stands in the boxes that were typed in
	faults  map[string]string // what is wrong with them
	refused string            // why the whole cannot be built

	built   *solver.Outline // that is in view
	whole   *solver.Whole
	riser   *draw.Scene
	profile *draw.Scene
	asked   asked
	saved   triedSaved
	notices []string
	said    string
}

// asked is the number whose working is shown.
type asked struct {
	level int // -1: none
	state string
	hot   bool
}

// OnNav reads the building of the link, or the template it begins with.
func (t *tryPage) OnNav(ctx app.Context) {
	house, says := loadHouse(ctx.LocalStorage())
	t.house, t.notices = house, []string{says, load(ctx.LocalStorage(), triedKey, "your buildings", &t.saved)}
	t.asked.level = -1
	o, _ := solver.TemplateNamed("mid-rise")
	if q := ctx.Page().URL().Query(); len(q) > 0 {
		o, says = readTried(q, house.System)
		t.notices = append(t.notices, says)
	}
	t.begin(o)
	arrive(ctx, "try", "Try a building · Riserwork")
	ctx.Defer(t.sync)
}

// begin puts another outline in.
func (t *tryPage) begin(o solver.Outline) {
	t.outline, t.typed, t.faults, t.asked.level = o, map[string]string{}, map[string]string{}, -1
	t.work()
}

// readTried is the outline of a link; what it does not name is left open.
func readTried(q url.Values, s unit.System) (solver.Outline, string) {
	o, ok := solver.TemplateNamed(q.Get("template"))
	if !ok {
		o = solver.Outline{Use: solver.Apartment, Storeys: 3, Floor: 10 * unit.Foot, Static: 60 * unit.PSI}
	}
	for _, f := range solver.OutlineFields {
		if !q.Has(f.Name) {
			continue
		}
		if err := o.Put(f.Name, q.Get(f.Name), s); err != nil {
			return o, "The link was not read whole: " + sentence(err)
		}
	}
	return o, ""
}

// triedQuery is the link of an outline.
func triedQuery(o solver.Outline, s unit.System) string {
	q := url.Values{}
	for _, f := range solver.OutlineFields {
		if text := o.Text(f.Name, s); text != "" && text != "no" && text != "0" {
			q.Set(f.Name, text)
		}
	}
	return q.Encode()
}

// sentence is an error as the learner reads it.
func sentence(err error) string {
	text := strings.TrimPrefix(err.Error(), "solver: ")
	return problems.Sentence(text) + "."
}

// settings are those of the house.
func (t *tryPage) settings() solver.Settings {
	s := solver.Settings{Profile: t.house.Profile()}
	if t.house.TopMin > 0 {
		s.TopMin = unit.Pressure(t.house.TopMin) * unit.Kilopascal
		if t.house.System == unit.US {
			s.TopMin = unit.Pressure(t.house.TopMin) * unit.PSI
		}
	}
	return s
}

// work works the outline out; one that cannot be leaves what is in view.
func (t *tryPage) work() {
	b, err := t.outline.Building(t.settings())
	if err == nil {
		var w *solver.Whole
		if w, err = solver.SolveWhole(b, solver.Case{Settings: t.settings()}); err == nil {
			o := t.outline
			t.built, t.whole, t.refused = &o, w, ""
			if t.asked.level > b.Top() {
				t.asked.level = -1
			}
			t.draw()
			t.said = t.short()
			return
		}
	}
	t.refused = sentence(err)
	t.said = t.refused
}

// draw draws the building in view.
func (t *tryPage) draw() {
	w := t.whole
	opt := draw.Options{System: t.house.System, Solved: true, Min: w.Top}
	if p := w.Case.Profile; p != nil {
		opt.Max = unit.Pressure(p.StaticMax.Highest())
	}
	if i := w.Street.FirstLow; i >= 0 {
		opt.Ask = &draw.Note{Level: i, Where: draw.AtOutlet, Text: "street short"}
	}
	riser := draw.Riser(w.Building, w.Street, opt)
	opt.Ask = nil
	profile := draw.Profile(w.Building, w.Street, opt)
	t.riser, t.profile = &riser, &profile
}

// short says the building in one sentence.
func (t *tryPage) short() string {
	w := t.whole
	text := "The street alone serves every floor."
	if i := w.Street.FirstLow; i >= 0 {
		text = "The street alone leaves level " + w.Building.Levels[i].Label + " short."
	}
	if len(w.Findings) == 0 {
		return text + " Every limit is kept."
	}
	return text + " " + problems.Sentence(limitsText(len(w.Findings))) + "."
}

// value is what stands in the box of a figure.
func (t *tryPage) value(name string) string {
	if text, ok := t.typed[name]; ok {
		return text
	}
	return t.text(name)
}

// text is a figure of the outline; of one valve where the name has its number.
func (t *tryPage) text(name string) string {
	if i, ok := valveOf(name); ok {
		if i < len(t.outline.Set) {
			one := solver.Outline{Set: t.outline.Set[i : i+1]}
			return one.Text("set", t.house.System)
		}
		return ""
	}
	return t.outline.Text(name, t.house.System)
}

// valveOf is the number of the valve whose setting a box holds.
func valveOf(name string) (int, bool) {
	rest, ok := strings.CutPrefix(name, "set-")
	if !ok {
		return 0, false
	}
	i, err := strconv.Atoi(rest)
	return i, err == nil
}

// put reads a figure into the outline and works it out.
func (t *tryPage) put(name, text string) {
	var err error
	if i, ok := valveOf(name); ok {
		var one solver.Outline
		if err = one.Put("set", text, t.house.System); err == nil {
			set := make([]unit.Pressure, max(len(t.outline.Set), i+1))
			copy(set, t.outline.Set)
			set[i] = 0
			if len(one.Set) == 1 {
				set[i] = one.Set[0]
			}
			t.outline.Set = set
		}
	} else {
		err = t.outline.Put(name, text, t.house.System)
	}
	if err != nil {
		t.faults[name] = sentence(err)
		t.said = t.faults[name]
		return
	}
	delete(t.faults, name)
	t.work()
}

func (t *tryPage) onType(name string) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		t.typed[name] = chosen(ctx)
		t.put(name, t.typed[name])
	}
}

func (t *tryPage) onYes(name string) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		text := "no"
		if ctx.JSSrc().Get("checked").Bool() {
			text = "yes"
		}
		t.put(name, text)
	}
}

// onStep goes a step up or down from what the figure is, or from what was
// worked out where it is left open.
func (t *tryPage) onStep(name string, by float64) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		delete(t.typed, name)
		text := t.text(name)
		if text == "" {
			text = t.worked(name)
		}
		number, unitName, _ := strings.Cut(text, " ")
		v, err := strconv.ParseFloat(number, 64)
		if err != nil {
			v = 0
		}
		v = math.Max(0, math.Round((v+by*t.step(unitName))*1e4)/1e4)
		t.put(name, strings.TrimSpace(strconv.FormatFloat(v, 'f', -1, 64)+" "+unitName))
		ctx.Defer(t.sync)
	}
}

// step is one tap of a figure in a unit.
func (t *tryPage) step(unitName string) float64 {
	switch unitName {
	case "ft":
		return 0.5
	case "m":
		return 0.1
	case "kPa":
		return 10
	case "US gal", "L":
		return 50
	case "Btu/h":
		return 10000
	}
	return 1
}

// worked is what was worked out for a figure that is left open.
func (t *tryPage) worked(name string) string {
	if t.whole == nil {
		return ""
	}
	b, o := t.whole.Building, solver.Outline{}
	if i, ok := valveOf(name); ok {
		if valves := b.Zones; i >= 0 {
			for _, z := range valves {
				if z.Valve == nil {
					continue
				}
				if i == 0 {
					o.Set = []unit.Pressure{z.Valve.Setting}
				}
				i--
			}
		}
		return o.Text("set", t.house.System)
	}
	o.Static, o.Low, o.First, o.Under, o.Risers = b.Street.Static, b.Street.Low, t.outline.Floor, 10*unit.Foot, b.Piping.Risers
	if b.Booster != nil {
		o.Boost = b.Booster.Boost
	}
	if b.Heater != nil {
		o.Volume, o.Input, o.Hot = b.Heater.Volume, b.Heater.Input, b.Heater.Hot
	}
	return o.Text(name, t.house.System)
}

// sync puts the figures into boxes that nobody is typing in.
func (t *tryPage) sync(app.Context) {
	active := app.Window().Get("document").Get("activeElement")
	for _, name := range t.boxes() {
		el := app.Window().GetElementByID("try-" + name)
		if !el.Truthy() || el.Equal(active) && t.typed[name] != "" {
			continue
		}
		if want := t.value(name); el.Get("value").String() != want {
			el.Set("value", want)
		}
	}
}

func (t *tryPage) onTemplate(name string) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		o, _ := solver.TemplateNamed(name)
		t.begin(o)
		ctx.Defer(t.sync)
	}
}

func (t *tryPage) onAsk(a asked) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		if t.asked == a {
			a.level = -1
		}
		t.asked = a
		if a.level >= 0 {
			ctx.Defer(func(app.Context) { focus("try-working") })
		}
	}
}
