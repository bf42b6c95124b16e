package page

import (
	"slices"
	"strings"

	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// chip is a word or number that a tap puts into the line.
type chip struct {
	name string // its name on the chip: "street"; a constant has none
	says string // what it is: "street pressure on the gauge"
	text string // what is put in: "80"
	show string // what is shown: "80 psi"
}

// numbers are the chips of line i: what is told, then the results of the
// lines above it as they were written.
func (b *bench) numbers(i int) []chip {
	var list []chip
	for j := range b.p.Told {
		t := &b.p.Told[j]
		c := chip{name: spaced(t.Given), says: t.Says, text: bare(t), show: t.Text}
		if t.Constant {
			c.name = ""
		}
		list = append(list, c)
	}
	for j := 0; j < i; j++ {
		text := lineResult(b.text(j), b.p.House.Imperial)
		if text == "" {
			continue
		}
		c := chip{name: b.lineName(j), says: "your " + b.lineName(j), text: text, show: text}
		if k := b.step(j); k >= 0 {
			c.says = b.solved().Steps[k].Says
		}
		list = append(list, c)
	}
	if b.sheet.Kind == free {
		list = append(list, b.words()...)
	}
	return list
}

// words are the chips of all words that answer a line, for the keys have no
// letters.
func (b *bench) words() []chip {
	var list []chip
	for i := range b.p.Steps {
		for _, word := range b.p.Steps[i].Choices {
			if c := (chip{says: "the answer", text: word, show: word}); !slices.Contains(list, c) {
				list = append(list, c)
			}
		}
	}
	return list
}

// units are the names of the units offered for line i, the likeliest first.
func (b *bench) units(i int) []string {
	p := b.solved()
	if k := b.step(i); k >= 0 {
		return units(&p.Steps[k])
	}
	var list []string
	for n := range p.Steps {
		own := units(&p.Steps[(i+n)%len(p.Steps)])
		if len(own) > 0 && !slices.Contains(list, own[0]) {
			list = append(list, own[0])
		}
	}
	return list
}

// choices are the words of line i where it has no box.
func (b *bench) choices(i int) []string {
	if b.sheet.Kind == free {
		return nil
	}
	return b.p.Steps[i].Choices
}

// spaced is the name of a number as people read it.
func spaced(name string) string { return strings.ReplaceAll(name, "_", " ") }

// bare is the number of what is told, without the unit that stands behind it.
func bare(t *problems.Told) string { return strings.TrimSuffix(t.Text, "\u00a0"+t.Unit.Name) }

// lineResult is the number that a line comes to, as written; empty where
// there is none.
func lineResult(text string, imperial bool) string {
	l, err := formula.ReadLine(text, formula.Options{Imperial: imperial, Funcs: solver.Functions})
	if err != nil || l.Value == nil {
		return ""
	}
	return l.Value.Text
}

// daily are the units that are offered; a step offers those of its dimension.
var daily = []string{
	"psi", "kPa", "bar", "psia", "kPa abs", "inHg", "ft water", "psi/ft", "psi/100 ft", "kPa/m",
	"ft", "in", "m", "mm", "US gal", "imp gal", "L", "m³", "gpm", "L/s", "L/min", "gph", "L/h",
	"ft/s", "m/s", "s", "min", "h", "day", "°F", "°C", "F°", "C°", "K", "Btu", "kJ", "kWh", "MJ",
	"Btu/h", "MBH", "kW", "W", "hp", "Btu/(h·ft)", "W/m", "lb", "kg", "lbf", "N", "kN", "wsfu", "%", "$", "A",
}

// maxUnits is how many units are offered for a line.
const maxUnits = 6

// units are the names of the units offered for a step, its own first. A count
// and a choice have none.
func units(s *problems.Step) []string {
	if s.Whole || len(s.Choices) > 0 {
		return nil
	}
	var list []string
	if s.Unit.Name != "" {
		list = append(list, s.Unit.Name)
	}
	for _, name := range daily {
		u, err := unit.Parse(name)
		if err == nil && u.Dim == s.Unit.Dim && u.Zero == s.Unit.Zero && !slices.Contains(list, name) && len(list) < maxUnits {
			list = append(list, name)
		}
	}
	return list
}
