package page

import (
	"slices"
	"strings"

	"riserwork/problems"
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
		if text := lineResult(b.sheet.Lines[j].Text, b.p.House.Imperial); text != "" {
			list = append(list, chip{name: spaced(b.p.Steps[j].Name), says: b.p.Steps[j].Says, text: text, show: text})
		}
	}
	return list
}

// spaced is the name of a number as people read it.
func spaced(name string) string { return strings.ReplaceAll(name, "_", " ") }

// bare is the number of what is told, without the unit that stands behind it.
func bare(t *problems.Told) string { return strings.TrimSuffix(t.Text, "\u00a0"+t.Unit.Name) }

// lineResult is the number that a line comes to, as written; empty where
// there is none.
func lineResult(text string, imperial bool) string {
	l, err := formula.ReadLine(text, formula.Options{Imperial: imperial})
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
