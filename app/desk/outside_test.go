package desk

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/draw"
	"riserwork/problems/sets"
)

// What other programs read: documents against their schemas by ajv, tables by
// a reader of RFC 4180 in Node, QR codes by jsQR; all pinned in testdata/npm.
type outside struct {
	Documents []document `json:"documents"`
	Tables    []string   `json:"tables"`
	Codes     []modules  `json:"codes"`
}

type document struct {
	Schema string `json:"schema"`
	Text   string `json:"text"`
}

// modules are the runs of black modules of a code: column, row, length.
type modules struct {
	Side int      `json:"side"`
	Runs [][3]int `json:"runs"`
}

type answer struct {
	Faults []string     `json:"faults"`
	Tables [][][]string `json:"tables"`
	Texts  []string     `json:"texts"`
}

var npm = filepath.Join("..", "..", "testdata", "npm")

// ask runs the programs of others; false where they are not there.
func (o *outside) ask(t *testing.T) (answer, bool) {
	t.Helper()
	var a answer
	node, err := exec.LookPath("node")
	if _, missing := os.Stat(filepath.Join(npm, "node_modules", "ajv")); err != nil || missing != nil {
		t.Log("node, ajv and jsQR are not there, so nothing is compared with them: make test installs them where node and npm are on the path")
		return a, false
	}
	raw, err := json.Marshal(o)
	require.NoError(t, err)
	cmd := exec.Command(node, "sets.mjs")
	cmd.Dir, cmd.Stdin = npm, bytes.NewReader(raw)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	require.NoError(t, err, errs.String())
	require.NoError(t, json.Unmarshal(out, &a))
	return a, true
}

func schema(t *testing.T, name string) string {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", "schemas", name+".schema.json"))
	require.NoError(t, err)
	return string(raw)
}

func TestOthersReadWhatIsWritten(t *testing.T) {
	s := madeSet(t, "-own", "-chapter", "5:3:lines", "-minutes", "45", "-pass", "60", "-note", "Bring a pencil.", "-closes", "2026-12-18T16:00", "-alone", "none")
	dir := t.TempDir()
	names := []string{`=cmd|' /C calc'!A0`, "<b>Jo</b>", `O"Neil, Pat; "jr"`, "水 ½", "Kim"}
	for i, n := range names {
		writeHandIn(t, dir, s, n, i)
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, "bad.rwork"), []byte("{"), 0o644))
	c, err := classOf(nil, []string{dir})
	require.NoError(t, err)
	require.NoError(t, c.Put(sets.Override{Learner: "Kim", Problem: 1, Marks: 1, Reason: "two\nlines, \"quoted\""}))
	r := c.Report()
	setJSON, err := json.Marshal(s)
	require.NoError(t, err)
	handIn, err := os.ReadFile(filepath.Join(dir, "2.rwork"))
	require.NoError(t, err)

	o := outside{
		Documents: []document{
			{schema(t, "set"), string(setJSON)}, {schema(t, "handin"), string(handIn)}, {schema(t, "result"), string(r.JSON())},
			{schema(t, "set"), `{"title":"x"}`}, {schema(t, "handin"), strings.Replace(string(handIn), `"work"`, `"marks": 3, "work"`, 1)}, {schema(t, "result"), `{"version":2}`},
		},
		Tables: []string{r.CSV(s), r.Grades()},
	}
	long := *s
	long.Note = strings.Repeat("A long note. ", 30)
	long.Note = sets.Clean(long.Note, sets.MaxNote)
	texts := []string{"https://example.org/riserwork/do#" + s.Link(), "https://example.org/do#" + long.Link()}
	for _, text := range texts {
		node, ok := draw.QR(text, "the set")
		require.True(t, ok)
		o.Codes = append(o.Codes, modulesOf(t, node))
	}
	a, ok := o.ask(t)
	if !ok {
		return
	}
	assert.Equal(t, []string{"", "", ""}, a.Faults[:3])
	for _, fault := range a.Faults[3:] {
		assert.NotEmpty(t, fault, "a schema must refuse what does not fit it")
	}
	assert.Equal(t, texts, a.Texts)
	require.Len(t, a.Tables[0], 1+len(r.Papers))
	require.Len(t, a.Tables[1], 1+r.Counted)
	for i := range r.Papers {
		row := a.Tables[0][i+1]
		assert.Len(t, row, len(a.Tables[0][0]))
		assert.Equal(t, r.Papers[i].Learner, strings.TrimPrefix(row[0], "'"))
		for _, cell := range row {
			assert.NotRegexp(t, `^[=+@\-\t\r]`, cell)
		}
	}
}

var run = regexp.MustCompile(`M(\d+) (\d+)h(\d+)v1h-\d+z`)

// modulesOf are the modules of a drawn code.
func modulesOf(t *testing.T, n draw.Node) modules {
	t.Helper()
	var m modules
	for _, a := range n.Attrs {
		if a.Name == "viewBox" {
			side, err := strconv.Atoi(strings.Fields(a.Value)[2])
			require.NoError(t, err)
			m.Side = side
		}
	}
	for _, r := range run.FindAllStringSubmatch(n.SVG(), -1) {
		var three [3]int
		for i := range three {
			three[i], _ = strconv.Atoi(r[i+1])
		}
		m.Runs = append(m.Runs, three)
	}
	require.NotEmpty(t, m.Runs)
	return m
}
