package desk

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// mostBuilding is the most that a told building may be in bytes.
const mostBuilding = 1 << 20

// toldBuilding is what is read besides the figures of the outline.
type toldBuilding struct {
	template string
	system   unit.System
	code     string
	outline  solver.Outline
	open     []toldTap
	shut     *toldTap
}

// toldTap is a tap by the label of its level and its kind.
type toldTap struct {
	Level string `json:"level"`
	Tap   string `json:"tap"`
	Count int    `json:"count"`
	Hot   bool   `json:"hot"`
}

// Solve reads a building in JSON and prints it worked out.
func Solve(args []string, in io.Reader, out io.Writer) error {
	fs := flags("solve")
	asJSON := fs.Bool("json", false, "print JSON")
	if err := fs.Parse(args); err != nil {
		return err
	}
	raw, err := io.ReadAll(io.LimitReader(in, mostBuilding+1))
	if err != nil {
		return err
	}
	if len(raw) > mostBuilding {
		return fmt.Errorf("the building is over %d bytes, expected less", mostBuilding)
	}
	told, err := readBuilding(raw)
	if err != nil {
		return err
	}
	w, err := told.solve()
	if err != nil {
		return err
	}
	view := wholeJSON(w, told.system)
	if *asJSON {
		return printJSON(out, view)
	}
	printWhole(out, w, view)
	return nil
}

// readBuilding reads figures by their names, numbers with their units as text.
// A template stands in for what is not told.
func readBuilding(raw []byte) (toldBuilding, error) {
	t := toldBuilding{system: unit.US, code: "ipc"}
	d := json.NewDecoder(bytes.NewReader(raw))
	d.UseNumber()
	var fields map[string]json.RawMessage
	if err := d.Decode(&fields); err != nil || fields == nil {
		return t, fmt.Errorf("the building is not JSON as the schema has it, expected one object: %s", reason(err))
	}
	if d.More() {
		return t, fmt.Errorf("the building has more behind its object, expected one object")
	}
	take := func(name string, into any) error {
		raw, ok := fields[name]
		if !ok {
			return nil
		}
		delete(fields, name)
		if err := json.Unmarshal(raw, into); err != nil {
			return fmt.Errorf("the building's %q is %s, expected as the schema has it", name, shortened(raw))
		}
		return nil
	}
	for _, part := range []struct {
		name string
		into any
	}{{"template", &t.template}, {"units", &t.system}, {"code", &t.code}, {"open", &t.open}, {"shut", &t.shut}} {
		if err := take(part.name, part.into); err != nil {
			return t, err
		}
	}
	if _, err := house(string(t.system), t.code); err != nil {
		return t, err
	}
	t.outline = solver.Outline{Use: solver.Apartment}
	if t.template != "" {
		o, ok := solver.TemplateNamed(t.template)
		if !ok {
			return t, fmt.Errorf("the template was %q, expected one such as mid-rise or tower", t.template)
		}
		t.outline = o
	}
	for _, f := range solver.OutlineFields {
		raw, ok := fields[f.Name]
		if !ok {
			continue
		}
		delete(fields, f.Name)
		text, err := plainText(raw)
		if err != nil {
			return t, fmt.Errorf("the building's %q is %s, expected as the schema has it", f.Name, shortened(raw))
		}
		if err := t.outline.Put(f.Name, text, t.system); err != nil {
			return t, err
		}
	}
	for name := range fields {
		return t, fmt.Errorf("the building has %d figures that are none, %q among them, expected those of the schema", len(fields), firstName(fields, name))
	}
	return t, nil
}

func reason(err error) string {
	if err == nil {
		return "it is null"
	}
	return err.Error()
}

// firstName is the first name by the alphabet, so that the same text always
// gets the same answer.
func firstName(fields map[string]json.RawMessage, name string) string {
	for n := range fields {
		name = min(name, n)
	}
	return name
}

func shortened(raw []byte) string {
	if len(raw) > 40 {
		return strings.ToValidUTF8(string(raw[:40]), "") + "…"
	}
	return string(raw)
}

// plainText is a value as the outline reads it: text, a number, yes or no, or a
// list of texts.
func plainText(raw json.RawMessage) (string, error) {
	var v any
	d := json.NewDecoder(bytes.NewReader(raw))
	d.UseNumber()
	if err := d.Decode(&v); err != nil {
		return "", err
	}
	switch v := v.(type) {
	case string:
		return v, nil
	case json.Number:
		return v.String(), nil
	case bool:
		if v {
			return "yes", nil
		}
		return "no", nil
	case []any:
		words := make([]string, len(v))
		for i, x := range v {
			switch x := x.(type) {
			case string:
				words[i] = x
			case json.Number:
				words[i] = x.String()
			default:
				return "", fmt.Errorf("expected texts")
			}
		}
		return strings.Join(words, "; "), nil
	}
	return "", fmt.Errorf("expected a text")
}

func (t toldBuilding) solve() (*solver.Whole, error) {
	profile, _ := solver.ProfileByID(t.code)
	s := solver.Settings{Profile: profile}
	b, err := t.outline.Building(s)
	if err != nil {
		return nil, err
	}
	c := solver.Case{Settings: s}
	for _, o := range t.open {
		level, tap, err := o.find(b)
		if err != nil {
			return nil, err
		}
		c.Open = append(c.Open, solver.OpenTap{Level: level, Tap: tap, Count: max(1, o.Count)})
	}
	if t.shut != nil {
		level, tap, err := t.shut.find(b)
		if err != nil {
			return nil, err
		}
		c.Shut = &solver.ShutTap{Level: level, Tap: tap, Hot: t.shut.Hot}
	}
	return solver.SolveWhole(b, c)
}

func (o toldTap) find(b *solver.Building) (int, solver.Tap, error) {
	tap, ok := solver.TapNamed(o.Tap)
	if !ok {
		return 0, tap, fmt.Errorf("a tap was %q, expected one such as shower or flush valve", o.Tap)
	}
	for i := range b.Levels[:len(b.Levels)-1] {
		if b.Levels[i].Label == o.Level {
			return i, tap, nil
		}
	}
	return 0, tap, fmt.Errorf("a tap is on level %q, expected one of the building's", o.Level)
}
