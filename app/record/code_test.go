package record

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/skills"
)

func catalogue() (ids []string) {
	for _, s := range skills.All() {
		ids = append(ids, s.ID)
	}
	return ids
}

func TestShortNamesDoNotClash(t *testing.T) {
	seen := map[uint16]string{}
	for _, id := range catalogue() {
		assert.Empty(t, seen[short(id)], id)
		seen[short(id)] = id
	}
}

func TestACodeCarriesTheSchedule(t *testing.T) {
	ids := catalogue()
	l := newLearner(5, 0.9)
	const start = 20000
	for day := range 40 {
		l.at = int64(start+day) * dayMs
		for i := range 5 {
			id := ids[(day*5+i)%60]
			l.solve(id, abc, l.state.Skill(id).Given(abc), func(int) bool { return l.rng.Float64() < 0.9 })
		}
	}
	code := l.state.Code(func(id string) bool { return l.state.Skill(id).Given(abc) == 0 })
	t.Logf("%d skills in %d characters", len(l.state.Skills), len(code))
	assert.Less(t, len(code), 15*60+20, "some 15 characters a skill, which one QR symbol holds")

	typed := strings.ToLower(code[:7] + " \n" + code[7:])
	log, err := ReadCode(typed, ids, l.at+1, 0)
	require.NoError(t, err)
	require.Len(t, log, len(l.state.Skills))
	for _, e := range log {
		line, err := e.Write()
		require.NoError(t, err)
		_, err = Read(line)
		require.NoError(t, err)
	}
	got := Derive(append(log, log...))
	for id, want := range l.state.Skills {
		k := got.Skill(id)
		assert.Equal(t, want.Due, k.Due, id)
		assert.Equal(t, want.Last, k.Last, id)
		assert.InEpsilon(t, want.Stability, k.Stability, 0.035, id)
		assert.InDelta(t, want.Difficulty, k.Difficulty, 0.02, id)
		assert.InDelta(t, want.Average, k.Average, 0.002, id)
		assert.Equal(t, want.Holds(), k.Holds(), id)
		assert.Equal(t, want.Given(abc) == 0, k.Given(abc) == 0, id)
	}
	text, err := got.Snapshot()
	require.NoError(t, err)
	known := Derive(append(l.log, log...))
	assert.Equal(t, l.state.Skill(ids[3]).Card, known.Skill(ids[3]).Card, "what is known here and no older stays")
	assert.NotEmpty(t, text)
}

func TestAWrongCodeIsRefused(t *testing.T) {
	l := newLearner(1, 1)
	l.solve("floor-pressure", abc, 0, always)
	code := l.state.Code(func(string) bool { return true })
	for i := range code {
		changed := code[:i] + string("0123456789"[(i+3)%10]) + code[i+1:]
		if changed == code || strings.ContainsRune("OIL", rune(code[i])) {
			continue
		}
		_, err := ReadCode(changed, catalogue(), 0, 0)
		require.Error(t, err, "letter %d", i)
		_, err = ReadCode(code[:i], catalogue(), 0, 0)
		require.Error(t, err, "cut at %d", i)
	}
	assert.Empty(t, NewState().Code(func(string) bool { return true }))
}

func FuzzReadCode(f *testing.F) {
	f.Add("RW1", []byte{})
	f.Add("RW1AAAAAAAAAAAAAAAA", []byte{200, 1, 0x12, 0x34, 5, 255, 90, 90, 0, 3})
	ids := catalogue()
	named := map[uint16]string{0x1234: "a"}
	f.Fuzz(func(t *testing.T, text string, raw []byte) {
		log, err := ReadCode(text, ids, 0, 0)
		if err == nil {
			Derive(log)
		}
		log, err = readCarried(raw, named, "x", 0, 0) // past the sum, which guesses do not meet
		if err == nil {
			Derive(log).Skill("a").Tried(1<<20, true)
		}
	})
}
