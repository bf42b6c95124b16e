package sets

import (
	"flag"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/skills"
)

var update = flag.Bool("update", false, "add missing golden links")

func TestALinkIsItsSet(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 2000 {
		s := someSet(r)
		require.NoError(t, s.Check())
		code := s.Link()
		back, err := ReadLink(code)
		require.NoError(t, err)
		require.Equal(t, s, back)
		require.Equal(t, code, back.Link())
	}
}

// A rule of the house that a link does not carry would draw other problems.
func TestALinkCarriesEveryHouseRule(t *testing.T) {
	assert.Equal(t, 6, reflect.TypeFor[problems.House]().NumField(), "a new rule of the house goes into the link, behind a flag of its own")
}

func TestAPlainSetHasAShortLink(t *testing.T) {
	code := plainSet().Link()
	t.Logf("ten problems: %d characters", len(code))
	assert.Less(t, len(code), 200)
}

func TestTheLargestSetFits(t *testing.T) {
	s := plainSet()
	s.Title, s.Note, s.Amends = strings.Repeat("é", MaxTitle), strings.Repeat("水", MaxNote), strings.Repeat("é", MaxNote)
	s.Items = nil
	for range MaxItems {
		it := ItemOf(skills.All()[0], Choice)
		it.Turn, it.Pinned = maxTurn, 1<<32-1
		s.Items = append(s.Items, it)
	}
	require.NoError(t, s.Check())
	back, err := ReadLink(s.Link())
	require.NoError(t, err)
	assert.Equal(t, s, back)
}

// Every cut and every changed letter is found, and said in one sentence.
func TestDamagedLinksAreRefused(t *testing.T) {
	code := plainSet().Link()
	refused := func(code string) {
		_, err := ReadLink(code)
		require.Error(t, err, code)
		require.NotContains(t, err.Error(), "\n")
	}
	for n := range len(code) {
		refused(code[:n])
	}
	const signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_ %.\x00\n"
	for i := range len(code) {
		for _, r := range signs {
			if byte(r) != code[i] {
				refused(code[:i] + string(r) + code[i+1:])
			}
		}
	}
	refused(code + "A")
	refused(strings.Repeat("A", MaxLink+1))
}

// bent is a link with a good checksum over a body that was changed.
func bent(s *Set, change func(b []byte) []byte) string {
	b, _ := letters.DecodeString(s.Link())
	b = change(b[:len(b)-sumLen])
	return letters.EncodeToString(append(b, sum(b)...))
}

func TestLinksOfOtherProgramsAreRefusedByName(t *testing.T) {
	_, err := ReadLink(bent(plainSet(), func(b []byte) []byte { b[0] = 2; return b }))
	assert.ErrorContains(t, err, "version 2")
	s := plainSet()
	assert.Empty(t, s.Earlier())
	s.Items[2].Version++
	back, err := ReadLink(s.Link())
	require.NoError(t, err)
	assert.Contains(t, back.Earlier(), "problem 3 ")
	_, err = ReadLink(bent(plainSet(), func(b []byte) []byte { return append(b, 0) }))
	assert.ErrorContains(t, err, "goes on after its end")
	body, _ := letters.DecodeString(plainSet().Link())
	for n := 1; n < len(body)-sumLen; n++ {
		_, err := ReadLink(bent(plainSet(), func(b []byte) []byte { return b[:n] }))
		assert.Error(t, err)
	}
}

const goldenLinks = "../../testdata/golden_links.txt"

// Links that were given out must be read for good: each line of the file is a
// code and what the first problem of its set asks of the learner Sam, as long
// as no skill of it has changed. Lines are only ever added.
func TestGoldenLinks(t *testing.T) {
	if *update {
		require.NoError(t, addGolden(t))
	}
	raw, err := os.ReadFile(filepath.FromSlash(goldenLinks))
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSpace(string(raw)), "\n")
	require.GreaterOrEqual(t, len(lines), 6)
	for _, l := range lines {
		code, want, ok := strings.Cut(l, "\t")
		require.True(t, ok, l)
		s, err := ReadLink(code)
		require.NoError(t, err, code)
		if s.Earlier() == "" {
			assert.Equal(t, want, firstAsk(t, s))
		}
		assert.Equal(t, code, s.Link())
	}
}

func firstAsk(t *testing.T, s *Set) string {
	task, err := s.Task(0, "Sam")
	require.NoError(t, err)
	return s.Title + ": " + strings.ReplaceAll(task.AskText(), "\u00a0", " ")
}

// addGolden adds a set of every kind of item, where its link is not there yet.
func addGolden(t *testing.T) error {
	raw, err := os.ReadFile(goldenLinks)
	if err != nil {
		return err
	}
	s := plainSet()
	s.Title, s.Items = "Devices", s.Items[:1]
	for _, kind := range devices.Kinds {
		s.Items = append(s.Items, QuestionOf(kind))
	}
	if strings.Contains(string(raw), s.Link()+"\t") {
		return nil
	}
	return os.WriteFile(goldenLinks, append(raw, s.Link()+"\t"+firstAsk(t, s)+"\n"...), 0o644)
}

// FuzzReadLink reads anything: a set that can be worked, or one sentence.
func FuzzReadLink(f *testing.F) {
	f.Add(plainSet().Link(), []byte{})
	f.Add("", []byte{linkVersion, 0, 0, 0, 1})
	r := rand.New(rand.NewPCG(3, 4))
	for range 8 {
		b, _ := letters.DecodeString(someSet(r).Link())
		f.Add("AQ", b[:len(b)-sumLen])
	}
	f.Fuzz(func(t *testing.T, code string, body []byte) {
		for _, c := range []string{code, letters.EncodeToString(append(body[:len(body):len(body)], sum(body)...))} {
			s, err := ReadLink(c)
			if err != nil {
				if strings.ContainsRune(err.Error(), '\n') {
					t.Fatalf("more than a sentence: %q", err)
				}
				continue
			}
			if err := s.Check(); err != nil {
				t.Fatalf("%q gave a set that cannot be worked: %v", c, err)
			}
			back, err := ReadLink(s.Link())
			if err != nil {
				t.Fatalf("%q: its own link is refused: %v", c, err)
			}
			if back.Link() != s.Link() {
				t.Fatalf("%q is not the same again", c)
			}
		}
	})
}

func BenchmarkReadLink(b *testing.B) {
	code := plainSet().Link()
	for b.Loop() {
		if _, err := ReadLink(code); err != nil {
			b.Fatal(err)
		}
	}
}
