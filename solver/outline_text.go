package solver

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// OutlineField is a figure of an outline by its name, as files, links and pages
// write it.
type OutlineField struct {
	Name    string      // "street"
	Says    string      // "street pressure, no flow"
	Measure *measure.Of // nil: a count, a yes or a word
	read    func(o *Outline, text string, s unit.System) error
	text    func(o *Outline, s unit.System) string
}

// OutlineFields are all of them, in the order that a person is asked.
var OutlineFields = []OutlineField{
	{"use", "what the building is for", nil, readUse, func(o *Outline, _ unit.System) string { return string(o.Use) }},
	counted("storeys", "storeys, from level 1 up", func(o *Outline) *int { return &o.Storeys }),
	counted("below", "levels of parking below", func(o *Outline) *int { return &o.Below }),
	sized("first", "floor to floor, level 1", &measure.Height, func(o *Outline) *float64 { return (*float64)(&o.First) }),
	sized("floor", "floor to floor", &measure.Height, func(o *Outline) *float64 { return (*float64)(&o.Floor) }),
	sized("under", "floor to floor, parking", &measure.Height, func(o *Outline) *float64 { return (*float64)(&o.Under) }),
	sized("street", "street pressure, no flow", &measure.Pressure, func(o *Outline) *float64 { return (*float64)(&o.Static) }),
	sized("low", "street pressure at the busy hour", &measure.Pressure, func(o *Outline) *float64 { return (*float64)(&o.Low) }),
	sized("meter", "loss of the meter", &measure.Pressure, func(o *Outline) *float64 { return (*float64)(&o.Losses.Meter) }),
	sized("backflow", "loss of the backflow preventer", &measure.Pressure, func(o *Outline) *float64 { return (*float64)(&o.Losses.Backflow) }),
	sized("strainer", "loss of the strainer", &measure.Pressure, func(o *Outline) *float64 { return (*float64)(&o.Losses.Strainer) }),
	counted("suites", "suites a floor", func(o *Outline) *int { return &o.Suites }),
	counted("risers", "risers", func(o *Outline) *int { return &o.Risers }),
	yes("booster", "booster", func(o *Outline) *bool { return &o.Booster }),
	sized("boost", "boost at design flow", &measure.Pressure, func(o *Outline) *float64 { return (*float64)(&o.Boost) }),
	counted("lifts", "pump sets in series higher up", func(o *Outline) *int { return &o.Lifts }),
	yes("tank", "house tank on the roof", func(o *Outline) *bool { return &o.Tank }),
	yes("zoned", "pressure zones", func(o *Outline) *bool { return &o.Zoned }),
	{"set", "settings of the reducing valves", &measure.Pressure, readSet, textSet},
	sized("falloff", "fall-off of the valves", &measure.Pressure, func(o *Outline) *float64 { return (*float64)(&o.FallOff) }),
	yes("heater", "hot water", func(o *Outline) *bool { return &o.Heater }),
	sized("volume", "storage", &measure.Tank, func(o *Outline) *float64 { return (*float64)(&o.Volume) }),
	sized("input", "heater input", &measure.HeatRate, func(o *Outline) *float64 { return (*float64)(&o.Input) }),
	sized("hot", "stored water", &measure.Temp, func(o *Outline) *float64 { return (*float64)(&o.Hot) }),
	sized("mixed", "mixing valve", &measure.Temp, func(o *Outline) *float64 { return (*float64)(&o.Mixed) }),
	yes("ownplant", "a heater in each zone", func(o *Outline) *bool { return &o.OwnPlant }),
	yes("loop", "hot water return", func(o *Outline) *bool { return &o.Loop }),
}

// OutlineFieldNamed is the figure of a name.
func OutlineFieldNamed(name string) (OutlineField, bool) {
	for _, f := range OutlineFields {
		if f.Name == name {
			return f, true
		}
	}
	return OutlineField{}, false
}

// Put reads a figure: a number with its unit, or in the unit of the system
// where it has none. What cannot be read leaves the outline as it is.
func (o *Outline) Put(name, text string, s unit.System) error {
	f, ok := OutlineFieldNamed(name)
	if !ok {
		return fmt.Errorf("solver: the figure %q is none of a building, expected one such as storeys or street", clipped(name))
	}
	return f.read(o, strings.TrimSpace(text), s)
}

// Text is a figure as Put reads it, empty where the outline leaves it open.
func (o Outline) Text(name string, s unit.System) string {
	f, ok := OutlineFieldNamed(name)
	if !ok {
		return ""
	}
	return f.text(&o, s)
}

func clipped(text string) string {
	if r := []rune(text); len(r) > 30 {
		return string(r[:30]) + "…"
	}
	return text
}

func counted(name, says string, of func(*Outline) *int) OutlineField {
	return OutlineField{name, says, nil, func(o *Outline, text string, _ unit.System) error {
		n, err := strconv.Atoi(text)
		if text == "" {
			n, err = 0, nil
		}
		if err != nil || n < 0 || n > 1_000_000 {
			return fmt.Errorf("%s: %q was read, and a whole number of 0 or more was expected", says, clipped(text))
		}
		*of(o) = n
		return nil
	}, func(o *Outline, _ unit.System) string { return strconv.Itoa(*of(o)) }}
}

func yes(name, says string, of func(*Outline) *bool) OutlineField {
	return OutlineField{name, says, nil, func(o *Outline, text string, _ unit.System) error {
		switch text {
		case "true", "yes", "1":
			*of(o) = true
		case "false", "no", "0", "":
			*of(o) = false
		default:
			return fmt.Errorf("%s: %q was read, and yes or no was expected", says, clipped(text))
		}
		return nil
	}, func(o *Outline, _ unit.System) string {
		if *of(o) {
			return "yes"
		}
		return "no"
	}}
}

func sized(name, says string, m *measure.Of, of func(*Outline) *float64) OutlineField {
	return OutlineField{name, says, m, func(o *Outline, text string, s unit.System) error {
		v, err := readSized(text, says, m, s)
		if err == nil {
			*of(o) = v
		}
		return err
	}, func(o *Outline, s unit.System) string { return textSized(*of(o), m, s) }}
}

// readSized is a number in SI base units; empty is 0.
func readSized(text, says string, m *measure.Of, s unit.System) (float64, error) {
	if text == "" {
		return 0, nil
	}
	in := m.Unit(s)
	q, err := unit.Read(text)
	if err == nil && q.Unit.IsNumber() {
		q.Unit = in
	}
	if err != nil || q.Unit.Dim != in.Dim || !finite(q.SI()) || math.Abs(q.SI()) > 1e12 {
		return 0, fmt.Errorf("%s: %q was read, and a number such as 60 in %s was expected", says, clipped(text), in.Name)
	}
	if m.Point {
		return q.SI(), nil
	}
	if q.SI() < 0 {
		return 0, fmt.Errorf("%s: %q was read, and 0 or more was expected", says, clipped(text))
	}
	return q.SI(), nil
}

func textSized(v float64, m *measure.Of, s unit.System) string {
	if v == 0 {
		return ""
	}
	u := m.Unit(s)
	return strconv.FormatFloat(math.Round(u.FromSI(v)*1e4)/1e4, 'f', -1, 64) + " " + u.Name
}

func readUse(o *Outline, text string, _ unit.System) error {
	for _, s := range Suites {
		if string(s.Use) == text {
			o.Use = s.Use
			return nil
		}
	}
	return fmt.Errorf("what the building is for: %q was read, and one such as %s was expected", clipped(text), Apartment)
}

// readSet reads settings one after the other, parted by semicolons.
func readSet(o *Outline, text string, s unit.System) error {
	var list []unit.Pressure
	if text != "" {
		for word := range strings.SplitSeq(text, ";") {
			v, err := readSized(strings.TrimSpace(word), "setting of a reducing valve", &measure.Pressure, s)
			if err != nil {
				return err
			}
			list = append(list, unit.Pressure(v))
		}
	}
	if len(list) > maxStoreys {
		return fmt.Errorf("settings of the reducing valves: %d were read, and at most %d were expected", len(list), maxStoreys)
	}
	o.Set = list
	return nil
}

func textSet(o *Outline, s unit.System) string {
	words := make([]string, len(o.Set))
	for i, p := range o.Set {
		words[i] = textSized(float64(p), &measure.Pressure, s)
	}
	return strings.Join(words, "; ")
}
