package desk

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/sets"
)

// madeSet is a set that the command makes.
func madeSet(t testing.TB, args ...string) *sets.Set {
	t.Helper()
	var out bytes.Buffer
	args = append([]string{"-title", "Week 7", "-number", "5", "-chapter", "1:7", "-base", "https://example.org/riserwork/"}, args...)
	require.NoError(t, Set(args, &out))
	s, err := sets.ReadAddress(out.String())
	require.NoError(t, err)
	return s
}

// handIn is a hand-in of a learner; the first wrong problems have a slip.
func handIn(t testing.TB, s *sets.Set, learner string, wrong int) *sets.HandIn {
	t.Helper()
	h := sets.New(s, learner)
	h.Begun, h.Written = "2026-11-02T09:00", "2026-11-02T09:40"
	for i := range s.Items {
		task, err := s.Task(i, learner)
		require.NoError(t, err)
		h.Work[i] = task.Of()
		if p, ok := task.Plant(0); ok && i < wrong {
			h.Work[i].Lines = p.Lines
			continue
		}
		for _, l := range task.Worked() {
			h.Work[i].Lines = append(h.Work[i].Lines, l.Value)
		}
	}
	return h
}

func writeHandIn(t testing.TB, dir string, s *sets.Set, learner string, n int) {
	t.Helper()
	require.NoError(t, os.WriteFile(filepath.Join(dir, fmt.Sprintf("%d.rwork", n)), handIn(t, s, learner, n%4).File(), 0o644))
}

func TestASetIsMadeFromFlags(t *testing.T) {
	s := madeSet(t, "-skill", "floor-pressure:mistake", "-skill", "reach:choice:2", "-own", "-help", "none")
	assert.Len(t, s.Items, 10)
	assert.Equal(t, sets.Mistake, s.Items[0].Kind)
	assert.True(t, s.Own)
	for _, bad := range [][]string{
		{}, {"-skill", "none"}, {"-skill", "reach:sung"}, {"-skill", "reach::0"}, {"-chapter", "1"}, {"-chapter", "x:1"}, {"-chapter", "99:1"},
		{"-skill", "reach", "-closes", "soon"}, {"-skill", "reach", "-pass", "101"}, {"-skill", "reach", "-help", "much"}, {"-skill", "reach", "-units", "x"},
	} {
		err := Set(bad, &bytes.Buffer{})
		require.Error(t, err, "%v", bad)
		assert.NotContains(t, err.Error(), "\n")
	}
	var out bytes.Buffer
	require.NoError(t, Set([]string{"-skill", "reach", "-json"}, &out))
	assert.Contains(t, out.String(), `"skill": "reach"`)
}

func TestSheetsArePrinted(t *testing.T) {
	s := madeSet(t, "-own", "-skill", "floor-pressure:mistake", "-skill", "reach:choice", "-skill", "floor-pressure:lines", "-note", "<i>")
	link := "https://example.org/do#" + s.Link()
	var sheet, key bytes.Buffer
	require.NoError(t, Sheet([]string{"-set", link, "-learner", "Sam <b>", "-learner", "Jo", "-paper", "a4"}, &sheet))
	require.NoError(t, Sheet([]string{"-set", link, "-learner", "Jo", "-key"}, &key))
	assert.Contains(t, sheet.String(), "size: a4")
	assert.Contains(t, key.String(), "size: letter")
	assert.Equal(t, 2, strings.Count(sheet.String(), `data-part="qr"`), "a code on each sheet")
	assert.Equal(t, 2, strings.Count(sheet.String(), s.Link()+"</p>"))
	assert.NotContains(t, sheet.String(), "<b>Sam <b>")
	assert.Contains(t, sheet.String(), "Sam &lt;b&gt;")
	assert.Contains(t, sheet.String(), `class="ruled"`)
	task, err := s.Task(len(s.Items)-1, "Jo")
	require.NoError(t, err)
	answer := task.Answer().Text(task.Answer().Value)
	assert.NotContains(t, sheet.String(), `class="scheme"`)
	assert.Contains(t, key.String(), `class="scheme"`)
	assert.Contains(t, key.String(), answer)
	for _, bad := range [][]string{{}, {"-set", link}, {"-set", link, "-learner", "x", "-paper", "a5"}, {"-set", link[:40], "-learner", "x"}, {"-set", link, "-learners", "/none"}} {
		assert.Error(t, Sheet(bad, &bytes.Buffer{}), "%v", bad)
	}
}

func TestAClassIsMarkedFromFilesFoldersAndArchives(t *testing.T) {
	s := madeSet(t, "-own")
	dir := t.TempDir()
	writeHandIn(t, dir, s, "Sam", 1)
	writeHandIn(t, dir, s, "Jo", 2)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "mail.txt"), []byte("Hello,\n"+handIn(t, s, "Kim", 0).Code()), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "big.rwork"), make([]byte, 100<<20), 0o644))
	archive := filepath.Join(t.TempDir(), "more.zip")
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	w, err := z.Create("pat.rwork")
	require.NoError(t, err)
	w.Write(handIn(t, s, "Pat", 3).File())
	require.NoError(t, z.Close())
	require.NoError(t, os.WriteFile(archive, buf.Bytes(), 0o644))
	marks := filepath.Join(t.TempDir(), "marks.csv")
	require.NoError(t, os.WriteFile(marks, []byte("learner,problem,marks,reason\nPat,1,1,\"a sketch, not lines\"\n"), 0o644))

	var out, errs bytes.Buffer
	require.NoError(t, ClassMark([]string{"-override", marks, dir, archive}, &out, &errs))
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(out.String(), "\ufeff"))).ReadAll()
	require.NoError(t, err)
	var names []string
	for _, r := range rows[1:] {
		names = append(names, r[0]+" "+r[1])
	}
	assert.Equal(t, []string{"Jo on-time", "Kim on-time", "Pat on-time", "Sam on-time", " unreadable"}, names)
	assert.Equal(t, "1", rows[3][7])
	assert.Contains(t, out.String(), "a sketch, not lines")
	assert.Contains(t, out.String(), "102400 kB")
	assert.Contains(t, errs.String(), "4 learners counted")
	out.Reset()
	require.NoError(t, ClassMark([]string{"-grades", "-set", s.Link(), dir}, &out, &errs))
	assert.Equal(t, 4, strings.Count(out.String(), "\r\n"))
	for _, bad := range [][]string{{}, {"/none"}, {"-set", "x", dir}, {"-override", "/none", dir}, {marks}} {
		assert.Error(t, ClassMark(bad, &out, &errs), "%v", bad)
	}
}
