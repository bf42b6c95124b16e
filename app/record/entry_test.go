package record

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/marking"
)

var sample = []Entry{
	{Version: 1, ID: "a", At: 1_000, Zone: -300, Kind: Line, Skill: "floor-pressure", Draws: 2, Seed: 1<<63 + 5, Step: "lost", Text: " 0.433 × 96 = \"41.6\"\tpsi ", Verdict: marking.Slip, Slips: []string{"x"}, Hints: 2},
	{Version: 1, ID: "b", At: 2_000, Kind: Sheet, Skill: "floor-pressure", Steps: []string{"rise", "lost"}, Marks: 3, Of: 4, Done: true},
	{Version: 1, ID: "c", At: 3_000, Kind: Brought, Skill: "reach", From: &Carry{Card: Card{Due: 9, Last: 4, Stability: 5, Difficulty: 5}, Average: 0.5}},
}

func text(t *testing.T, log []Entry) []string {
	t.Helper()
	lines := make([]string, len(log))
	for i, e := range log {
		var err error
		lines[i], err = e.Write()
		require.NoError(t, err)
		require.NotContains(t, lines[i], "\n")
	}
	return lines
}

func TestWrittenComesBack(t *testing.T) {
	for i, line := range text(t, sample) {
		e, err := Read(line)
		require.NoError(t, err)
		assert.Equal(t, sample[i], e)
	}
}

func TestAChangedEntryIsRefused(t *testing.T) {
	line := text(t, sample)[0]
	for i := range line {
		_, err := Read(line[:i])
		require.Error(t, err, "cut at %d", i)
		_, err = Read(line[:i] + string(line[i]^1) + line[i+1:])
		require.Error(t, err, "changed at %d", i)
	}
}

func TestEntriesThatCannotBe(t *testing.T) {
	for says, raw := range map[string]string{
		"of version 9":    `{"v":9,"id":"a","kind":"line","skill":"s"}`,
		"not known":       `{"v":1,"id":"a","kind":"dance","skill":"s"}`,
		"lacks its name":  `{"v":1,"kind":"line","skill":"s"}`,
		"more in it":      `{"v":1,"id":"a","kind":"line","skill":"s","text":"` + strings.Repeat("7", 2049) + `"}`,
		"more right":      `{"v":1,"id":"a","kind":"earlier","skill":"s","tries":1,"right":2}`,
		"says nothing":    `{"v":1,"id":"a","kind":"brought","skill":"s"}`,
		"cannot be":       `{"v":1,"id":"a","kind":"brought","skill":"s","from":{"s":-4,"d":1}}`,
		"outside 0 to 1":  `{"v":1,"id":"a","kind":"brought","skill":"s","from":{"avg":4}}`,
		"out of all":      `{"v":1,"id":"a","kind":"brought","skill":"s","from":{"last":-1}}`,
		"as entries are":  `[1]`,
		"longer than any": `"` + strings.Repeat("7", maxEntry) + `"`,
	} {
		_, err := Read(sum(raw) + " " + raw)
		assert.ErrorContains(t, err, says)
	}
}

func TestACountOfTriesIsTakenOver(t *testing.T) {
	raw := `{"skill":"reach","tries":3,"right":2}`
	e, err := Read(sum(raw) + " " + raw)
	require.NoError(t, err)
	assert.Equal(t, Entry{Version: 1, ID: "earlier-reach", Kind: Earlier, Skill: "reach", Tries: 3, Right: 2}, e)
	assert.Equal(t, FromTally("reach", 3, 2), e)
	s := Derive([]Entry{e})
	assert.True(t, s.Skill("reach").Met)
	assert.False(t, s.Skill("reach").Holds())
}

func TestDaysAreThoseOfTheLearner(t *testing.T) {
	const hour = int64(60 * 60 * 1000)
	assert.Equal(t, 0, DayOf(0, 0))
	assert.Equal(t, -1, DayOf(0, -1))
	assert.Equal(t, 1, DayOf(23*hour, 60))
	assert.Equal(t, 0, DayOf(23*hour, 59))
}

func TestAFileComesBack(t *testing.T) {
	lines := text(t, sample)
	got, damaged, err := ReadFile(File(lines))
	require.NoError(t, err)
	assert.Zero(t, damaged)
	assert.Equal(t, sample, got)

	got, damaged, err = ReadFile("\ufeff" + strings.ReplaceAll(File(lines), "\n", "\r\n"))
	require.NoError(t, err)
	assert.Zero(t, damaged)
	assert.Equal(t, sample, got, "a file that went through another system")

	whole := File(lines)
	got, damaged, err = ReadFile(whole[:len(whole)-9])
	require.NoError(t, err)
	assert.Equal(t, 1, damaged)
	assert.Equal(t, sample[:2], got, "a tail that is cut off costs its entry alone")

	lines[1] = "?" + lines[1]
	got, damaged, err = ReadFile(File(lines))
	require.NoError(t, err)
	assert.Equal(t, 1, damaged)
	assert.Equal(t, []Entry{sample[0], sample[2]}, got)

	_, _, err = ReadFile("PK\x03\x04")
	assert.ErrorContains(t, err, "expected")
}

func FuzzReadFile(f *testing.F) {
	f.Add(heading + "\n0 {}\n")
	f.Add("")
	f.Fuzz(func(t *testing.T, text string) {
		log, _, err := ReadFile(text)
		if err == nil {
			Derive(log)
		}
	})
}

func FuzzReadEntry(f *testing.F) {
	for _, e := range sample {
		line, err := e.Write()
		require.NoError(f, err)
		f.Add(line[9:])
	}
	f.Fuzz(func(t *testing.T, raw string) {
		e, err := Read(sum(raw) + " " + raw)
		if err != nil {
			return
		}
		Derive([]Entry{e, e})
		line, err := e.Write()
		require.NoError(t, err)
		again, err := Read(line)
		require.NoError(t, err)
		require.Equal(t, e.ID, again.ID)
	})
}
