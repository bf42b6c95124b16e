package desk

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const good = `{"skill":"floor-pressure","givens":{"street":"62 psi","floor_height":"89.5 ft","outlet":"6.5 ft"},"lines":["96 ft","41.6 psi","103.6 psi"]}`

func TestMarkWritesOneResultALine(t *testing.T) {
	var out, errs bytes.Buffer
	require.NoError(t, Mark(nil, strings.NewReader(good+"\n\n"+good), &out, &errs))
	assert.Empty(t, errs.String())
	results := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.Len(t, results, 2)
	var r MarkJSON
	require.NoError(t, json.Unmarshal([]byte(results[0]), &r))
	assert.Equal(t, []string{"added"}, r.Slips)
	assert.Equal(t, 4, r.Marks)
	assert.Equal(t, 6, r.Of)
	assert.Equal(t, "pressure", r.Lines[2].Step)
}

func TestMarkKnowsTheRuleForAnAnswerAlone(t *testing.T) {
	in := `{"skill":"floor-pressure","givens":{"street":"62 psi","floor_height":"89.5 ft","outlet":"6.5 ft"},"lines":["20.4 psi"]}`
	for word, marks := range map[string]int{"values": 3, "all": 6, "none": 0} {
		var out, errs bytes.Buffer
		require.NoError(t, Mark([]string{"-json", "-alone", word}, strings.NewReader(in), &out, &errs))
		var r MarkJSON
		require.NoError(t, json.Unmarshal(out.Bytes(), &r))
		assert.Equal(t, marks, r.Marks, word)
		assert.Equal(t, word == "all", r.Note == "", r.Note)
	}
	for _, args := range [][]string{{"-alone", "some"}, {"-json", "file"}, {"-x"}} {
		assert.Error(t, Mark(args, strings.NewReader(in), &bytes.Buffer{}, &bytes.Buffer{}), "%q", args)
	}
}

func TestBadInputGetsOneSentenceAndTheRestIsMarked(t *testing.T) {
	bad := []string{
		`{`, `[]`, `"text"`, `{"skill":1}`, `{"skill":"none","lines":[]}`, `{"lines":["1"]}`,
		`{"skill":"floor-pressure","units":"cubits"}`, `{"skill":"floor-pressure","code":"none"}`,
		`{"skill":"floor-pressure","givens":{"street":"blue"}}`, `{"skill":"floor-pressure","givens":{"moon":"1 ft"}}`,
		`{"skill":"floor-pressure","givens":{"street":"3 ft"}}`, `{"skill":"floor-pressure","more":1}`,
		good + good, `{"skill":"` + strings.Repeat("x", maxRequest) + `"}`,
	}
	for _, b := range bad {
		var out, errs bytes.Buffer
		err := Mark(nil, strings.NewReader(good+"\n"+b+"\n"+good+"\n"), &out, &errs)
		require.Error(t, err)
		sentences := strings.Split(strings.TrimSpace(errs.String()), "\n")
		require.Len(t, sentences, 1, "%.80s", b)
		assert.True(t, strings.HasPrefix(sentences[0], "line 2: "), sentences[0])
		assert.Equal(t, 2, strings.Count(out.String(), `"marks"`), "%.80s", b)
	}
}

func TestProblemPrintsItsWorking(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, Problem([]string{"-skill", "floor-pressure", "-given", "street=62 psi", "-given", `floor_height=89'-6"`, "-given", "outlet=6.5 ft", "-json"}, &out))
	var p ProblemJSON
	require.NoError(t, json.Unmarshal(out.Bytes(), &p))
	assert.InDelta(t, 62-0.433*96, p.Answer.Value, 1e-12)
	assert.Equal(t, "psi", p.Answer.Unit)
	require.Len(t, p.Steps, 3)
	assert.Equal(t, "gamma x height", p.Steps[1].Formula)
}

func TestCallsAreRefusedWithOneSentence(t *testing.T) {
	for _, args := range [][]string{
		{}, {"-skill", "none"}, {"-skill", "floor-pressure", "-units", "x"}, {"-skill", "floor-pressure", "-code", "x"},
		{"-skill", "floor-pressure", "-given", "street"}, {"-skill", "floor-pressure", "-given", "street=10 gpm"}, {"-seed", "-1"},
	} {
		err := Problem(args, &bytes.Buffer{})
		require.Error(t, err, "%v", args)
		assert.NotContains(t, err.Error(), "\n")
	}
}

func TestSkillsAreListed(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, Skills([]string{"-json"}, &out))
	var rows []skillRow
	require.NoError(t, json.Unmarshal(out.Bytes(), &rows))
	assert.GreaterOrEqual(t, len(rows), 80)
	chapters := map[int]bool{}
	for _, r := range rows {
		slips := 0
		for _, rule := range r.Rules {
			slips += len(rule.Slips)
		}
		assert.NotEmpty(t, r.Rules, r.ID)
		assert.GreaterOrEqual(t, slips, 2, r.ID)
		assert.NotEmpty(t, r.Sources, r.ID)
		assert.NotZero(t, r.Year, r.ID)
		chapters[r.Chapter] = true
	}
	assert.GreaterOrEqual(t, len(chapters), 8)
}

// FuzzMark reads anything: no panic, and one sentence for each line refused.
func FuzzMark(f *testing.F) {
	for _, s := range []string{
		good, `{"skill":"reach","seed":3,"lines":["= 85.5 ft","h = 37/0.433","yes"]}`, `{"skill":"floor-pressure","lines":["62 psi - 0.433 psi/ft x 96 ft = 20.4 psi"]}`,
		`{"skill":"floor-pressure","seed":18446744073709551615,"units":"mixed","lines":["1,234","8'-10 1/2\" x 12","((((","√√√2","1/0","1e400 psi","½"]}`, "{}\n[]\nnull",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		var out, errs bytes.Buffer
		err := Mark(nil, strings.NewReader(in), &out, &errs)
		if (err != nil) != (errs.Len() > 0) {
			t.Fatalf("error %v with sentences %q", err, errs.String())
		}
	})
}

// FuzzLines marks any working of one problem.
func FuzzLines(f *testing.F) {
	f.Add("62 - 0.433 x 96 = 20.4 psi\nlost = 41,6 psi\n= 20.4", uint64(1))
	f.Add("h = 8'-10\" x 12\n√(4) ^ 2 ÷ (1 - 1)\n1.234,5 kPa", uint64(2))
	f.Fuzz(func(t *testing.T, sheet string, seed uint64) {
		q := map[string]any{"skill": "floor-pressure", "seed": seed, "lines": strings.Split(sheet, "\n")}
		b, err := json.Marshal(q)
		require.NoError(t, err)
		var out, errs bytes.Buffer
		if len(b) < maxRequest {
			require.NoError(t, Mark(nil, bytes.NewReader(b), &out, &errs))
		}
	})
}
