package desk

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestPaperAndItsMarks(t *testing.T) {
	t.Parallel()
	var out bytes.Buffer
	require.NoError(t, Paper([]string{"-seed", "5", "-units", "metric", "-json"}, &out))
	var p PaperJSON
	require.NoError(t, json.Unmarshal(out.Bytes(), &p))
	require.GreaterOrEqual(t, len(p.Parts), 8)
	lines := map[string][]string{}
	for _, x := range p.Parts {
		for _, s := range x.Problem.Steps {
			lines[x.Part] = append(lines[x.Part], s.Text)
		}
		require.Len(t, x.Scheme, len(x.Problem.Steps))
	}
	request, err := json.Marshal(map[string]any{"units": "metric", "paper": map[string]any{"seed": 5, "lines": lines}})
	require.NoError(t, err)
	var marked, errs bytes.Buffer
	require.NoError(t, Mark(nil, bytes.NewReader(request), &marked, &errs), errs.String())
	var m PaperMarkJSON
	require.NoError(t, json.Unmarshal(marked.Bytes(), &m))
	require.Equal(t, p.Marks, m.Of)
	require.Equal(t, m.Of, m.Marks)

	var text bytes.Buffer
	require.NoError(t, Paper([]string{"-seed", "5"}, &text))
	require.Contains(t, text.String(), "Part 8")
	require.Contains(t, text.String(), "is the answer of part 1")
	require.ErrorContains(t, Paper([]string{"-size", "hut"}, &text), "walk-up")
	require.Error(t, Mark(nil, strings.NewReader(`{"paper":{"seed":5,"lines":{"nothing":["1"]}}}`), &marked, &errs))
	require.Contains(t, errs.String(), "no part nothing")
}
