package desk

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
)

func examples(t *testing.T) map[string]string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "buildings", "*.json"))
	require.NoError(t, err)
	require.Len(t, files, 4)
	list := map[string]string{}
	for _, f := range files {
		raw, err := os.ReadFile(f)
		require.NoError(t, err)
		list[filepath.Base(f)] = string(raw)
	}
	return list
}

func TestExamplesAreWorkedOut(t *testing.T) {
	for name, text := range examples(t) {
		var out bytes.Buffer
		require.NoError(t, Solve([]string{"-json"}, strings.NewReader(text), &out), name)
		var w WholeJSON
		require.NoError(t, json.Unmarshal(out.Bytes(), &w), name)
		assert.NotEmpty(t, w.Floors, name)
		assert.Empty(t, w.Findings, name)
		for _, f := range w.Floors {
			assert.Greater(t, f.ColdLow.NoFlow, f.ColdHigh.NoFlow, name)
			assert.Greater(t, f.ColdHigh.NoFlow, f.ColdHigh.Design, name)
		}
		out.Reset()
		require.NoError(t, Solve(nil, strings.NewReader(text), &out), name)
		assert.Contains(t, out.String(), "every limit is kept", name)
	}
}

// Schemas by ajv, pinned in testdata/npm: what the schema takes is read, and
// what it refuses is refused here too.
func TestBuildingsFitTheirSchema(t *testing.T) {
	o := outside{Tables: []string{}, Codes: []modules{}}
	var fits []bool
	add := func(text string, ok bool) {
		o.Documents = append(o.Documents, document{schema(t, "building"), text})
		fits = append(fits, ok)
		_, err := readBuilding([]byte(text))
		if ok {
			assert.NoError(t, err, text)
		} else {
			assert.Error(t, err, text)
		}
	}
	for _, text := range examples(t) {
		add(text, true)
	}
	for _, text := range []string{`{"storeys": -3}`, `{"floors": 3}`, `{"booster": "maybe"}`, `{"units": "cubits"}`, `{"template": "castle"}`, `[]`, `{"open": [{"tap": 3}]}`} {
		add(text, false)
	}
	a, there := o.ask(t)
	if !there {
		return
	}
	for i, fault := range a.Faults {
		assert.Equal(t, fits[i], fault == "", "%s: %s", o.Documents[i].Text, fault)
	}
}

// Every figure of an outline is in the schema.
func TestTheSchemaNamesEveryFigure(t *testing.T) {
	var s struct {
		Properties map[string]any `json:"properties"`
	}
	require.NoError(t, json.Unmarshal([]byte(schema(t, "building")), &s))
	for _, f := range solver.OutlineFields {
		assert.Contains(t, s.Properties, f.Name)
	}
	assert.Len(t, s.Properties, len(solver.OutlineFields)+5)
}

func TestBadBuildingsGetOneSentence(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{``, "expected one object"},
		{`null`, "expected one object"},
		{`{"storeys": 0, "floor": "9 ft", "street": "60 psi"}`, "1 storey or more"},
		{`{"template": "tower", "storeys": 10000}`, "levels at most"},
		{`{"template": "mid-rise", "floor": "-9 ft"}`, "0 or more was expected"},
		{`{"template": "mid-rise", "floor": "9 psi"}`, "in ft was expected"},
		{`{"template": "mid-rise", "street": "NaN psi"}`, "was read"},
		{`{"template": "mid-rise", "street": "1e300 psi"}`, "was read"},
		{`{"template": "mid-rise", "street": "0 psi"}`, "more than 0"},
		{`{"template": "mid-rise", "low": "90 psi"}`, "no higher"},
		{`{"template": "hospital", "suites": 190}`, "expected at most 5000"},
		{`{"template": "mid-rise", "colour": "red"}`, `"colour" among them`},
		{`{"template": "mid-rise", "open": [{"level": "99", "tap": "shower"}]}`, `level "99"`},
		{`{"template": "mid-rise", "hot": "120 °C"}`, "0 to 100 °C"},
	} {
		var out bytes.Buffer
		err := Solve(nil, strings.NewReader(c.text), &out)
		require.Error(t, err, c.text)
		assert.Contains(t, err.Error(), c.says, c.text)
		assert.NotContains(t, err.Error(), "\n", c.text)
		assert.Empty(t, out.String())
	}
}

func FuzzBuilding(f *testing.F) {
	f.Add(`{"template": "mid-rise", "storeys": 14, "street": "62 psi", "set": ["70 psi", 0]}`)
	f.Add(`{"units": "metric", "use": "hotel", "storeys": 5, "floor": "3 m", "street": 400, "heater": true, "suites": 4, "loop": true}`)
	f.Add(`{"template": "tower", "open": [{"level": "60", "tap": "shower", "count": 9}], "shut": {"level": "2", "tap": "bath", "hot": true}}`)
	f.Fuzz(func(t *testing.T, text string) {
		var out bytes.Buffer
		_ = Solve([]string{"-json"}, strings.NewReader(text), &out)
	})
}
