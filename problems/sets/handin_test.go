package sets

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// someHandIn is a hand-in with any working.
func someHandIn(r *rand.Rand) *HandIn {
	h := New(someSet(r), words(r, MaxLearner))
	h.Begun, h.Written = "2026-11-02T09:00", fmt.Sprintf("2026-11-%02dT10:%02d", 1+r.IntN(30), r.IntN(60))
	for i := range h.Work {
		w := &h.Work[i]
		*w = Work{Skill: "reach", Version: 1, Seed: r.Uint64(), Kind: Kinds[r.IntN(4)], At: h.Written}
		for range r.IntN(6) {
			w.Lines = append(w.Lines, words(r, 40))
			w.Tapped = append(w.Tapped, r.IntN(9))
			w.Hints = append(w.Hints, r.IntN(4))
		}
	}
	h.Seal()
	return h
}

func TestAHandInIsTheSameByEveryRoad(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for range 200 {
		h := someHandIn(r)
		back, extra, err := ReadFile(h.File())
		require.NoError(t, err)
		require.False(t, extra)
		require.Equal(t, h, back)
		code := h.Code()
		back, extra, err = ReadCode(code)
		require.NoError(t, err)
		require.False(t, extra)
		require.Equal(t, h, back)
		list := Codes("Dear Sir,\n> " + broken(code) + "\n\nbest, " + code + " end.")
		require.Len(t, list, 2)
		for _, c := range list {
			back, _, err = ReadCode(c)
			require.NoError(t, err)
			require.Equal(t, h, back)
		}
	}
}

// broken is a code as mail programs break and quote it.
func broken(code string) string {
	var out strings.Builder
	for i, r := range code {
		if i > 0 && i%76 == 0 {
			out.WriteString("\r\n> ")
		}
		out.WriteRune(r)
	}
	return out.String()
}

func TestDamagedHandInsAreRefused(t *testing.T) {
	h := handIn(t, plainSet(), "Sam", allRight)
	code := h.Code()
	t.Logf("ten problems: a code of %d characters, a file of %d bytes", len(code), len(h.File()))
	for n := range len(code) {
		_, _, err := ReadCode(code[:n])
		require.Error(t, err)
		require.NotContains(t, err.Error(), "\n")
	}
	for i := len(codeBegins); i < len(code)-1; i++ {
		other := byte('A')
		if code[i] == other {
			other = 'B'
		}
		_, _, err := ReadCode(code[:i] + string(other) + code[i+1:])
		require.Error(t, err, i)
	}
	file := h.File()
	for n := range len(file) - 2 { // the last two bytes are } and a line end
		_, _, err := ReadFile(file[:n])
		require.Error(t, err)
		require.NotContains(t, err.Error(), "\n")
	}
}

func TestWhatIsNoHandInGetsOneSentence(t *testing.T) {
	deep := `{"version":1,"x":` + strings.Repeat("[", 100_000) + strings.Repeat("]", 100_000) + `}`
	long, _ := json.Marshal(HandIn{Version: 1, Learner: "x", Written: "2026-01-01", Work: []Work{{Lines: []string{strings.Repeat("1", MaxLine+1)}}}})
	for _, data := range []string{
		"", "null", "{}", "[]", "PK", "\x00", `{"version":9,"set":"x"}`, `{"version":1,"set":"x"}`, deep, string(long),
		`{"version":1,"set":"x","learner":"\u0000\u202e","written":"2026-01-01"}`, `{"version":1,"set":"x","learner":"a","written":"soon"}`,
		`{"version":1e99}`, strings.Repeat(" ", MaxHandIn+1), "\xff\xfe{}",
	} {
		_, _, err := ReadFile([]byte(data))
		require.Error(t, err, "%.60s", data)
		assert.NotContains(t, err.Error(), "\n")
	}
}

func TestHugeFilesAreRefusedByTheirSize(t *testing.T) {
	_, _, err := ReadFile(make([]byte, 100<<20))
	assert.ErrorContains(t, err, "at most 256")
	var pieces []Piece
	Gather("big", make([]byte, 100<<20), func(p Piece) { pieces = append(pieces, p) })
	require.Len(t, pieces, 1)
	assert.ErrorContains(t, pieces[0].Fault, "at most 256")
}

// bomb is a lot of noughts, small when packed.
func bomb(n int) []byte {
	var out bytes.Buffer
	w, _ := flate.NewWriter(&out, flate.BestCompression)
	block := make([]byte, 1<<20)
	for range n >> 20 {
		w.Write(block)
	}
	w.Close()
	return out.Bytes()
}

func TestPackedNoughtsAreNotUnpacked(t *testing.T) {
	packed := bomb(100 << 20)
	code := codeBegins + letters.EncodeToString(append(packed, sum(packed)...)) + codeEnds
	_, _, err := ReadCode(code)
	require.Error(t, err)
	small := bomb(16 << 20)
	code = codeBegins + letters.EncodeToString(append(small, sum(small)...)) + codeEnds
	used := testing.Benchmark(func(b *testing.B) {
		for b.Loop() {
			_, _, err = ReadCode(code)
		}
	})
	require.ErrorContains(t, err, "at most 256")
	assert.Less(t, used.AllocedBytesPerOp(), int64(4<<20))

	var file bytes.Buffer
	z := zip.NewWriter(&file)
	w, err := z.Create("big.rwork")
	require.NoError(t, err)
	w.Write(make([]byte, 64<<20))
	require.NoError(t, z.Close())
	n := 0
	Gather("bomb.zip", file.Bytes(), func(p Piece) {
		n++
		assert.ErrorContains(t, p.Fault, "at most 256")
	})
	assert.Equal(t, 1, n)
	// The size that an archive tells is not believed.
	lied := bytes.ReplaceAll(file.Bytes(), []byte{0, 0, 0, 4}, []byte{1, 0, 0, 0})
	Gather("bomb.zip", lied, func(p Piece) { assert.Error(t, p.Fault) })
}

func TestAnArchiveIsTakenApart(t *testing.T) {
	s := plainSet()
	sam, jo := handIn(t, s, "Sam", allRight), handIn(t, s, "Jo", allRight)
	var inner, file bytes.Buffer
	z := zip.NewWriter(&inner)
	require.NoError(t, z.Close())
	inner.Write([]byte("PK\x03\x04"))
	z = zip.NewWriter(&file)
	for _, f := range []struct{ name, data string }{
		{"class/sam.rwork", string(sam.File())}, {"class/mail.txt", jo.Code() + "\n\n" + sam.Code()}, {"__MACOSX/class/sam.rwork", "x"},
		{"class/.hidden", "x"}, {"class/notes.txt", "nothing"}, {"class/again.zip", "PK\x03\x04"},
	} {
		w, err := z.Create(f.name)
		require.NoError(t, err)
		w.Write([]byte(f.data))
	}
	require.NoError(t, z.Close())
	m := NewMarker(s)
	var got []string
	Gather("all.zip", file.Bytes(), func(p Piece) {
		paper := m.Piece(p)
		got = append(got, paper.Source+" "+string(paper.Status))
	})
	assert.Equal(t, []string{"all.zip/sam.rwork on-time", "all.zip/mail.txt on-time", "all.zip/mail.txt on-time", "all.zip/notes.txt unreadable", "all.zip/again.zip unreadable"}, got)
	for n := 0; n < file.Len()-1; n += 97 {
		Gather("cut.zip", file.Bytes()[:n], func(p Piece) { assert.Error(t, p.Fault) })
	}
}

func TestFileNames(t *testing.T) {
	h := New(plainSet(), "Sam O'Poe / 12")
	assert.Regexp(t, `^sam-o-poe-12-[0-9a-z]+\.rwork$`, h.FileName())
	assert.Regexp(t, `^work-[0-9a-z]+\.rwork$`, New(plainSet(), "水").FileName())
}

// FuzzReadHandIn reads anything as a file and as a code: a hand-in that can
// be marked, or one sentence.
func FuzzReadHandIn(f *testing.F) {
	s := plainSet()
	h := New(s, "Sam")
	h.Written = "2026-11-02T09:40"
	f.Add(h.File())
	f.Add([]byte(h.Code()))
	f.Add([]byte(`{"version":1,"set":"x","learner":"<b>","written":"2026-01-01","work":[{"lines":["\u0000"],"tapped":[-1,9999999999]}],"marks":100}`))
	m := NewMarker(s)
	f.Fuzz(func(t *testing.T, data []byte) {
		Gather("x", data, func(p Piece) {
			paper := m.Piece(p)
			if paper.Says == "" || strings.ContainsRune(paper.Says, '\n') {
				t.Fatalf("%q is no sentence", paper.Says)
			}
		})
	})
}
