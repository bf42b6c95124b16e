package sets

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Parts of several hand-ins, in any order and some twice, make them whole.
func TestPartsMakeTheirCode(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	for range 200 {
		var c Parted
		var all []string
		want := map[string]bool{}
		for range 1 + r.IntN(4) {
			code := someHandIn(r).Code()
			want[code] = true
			all = append(all, Parts(code)...)
		}
		r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		got := map[string]bool{}
		for i, p := range all {
			require.LessOrEqual(t, len(p), partSize+30)
			if i > 0 && r.IntN(3) == 0 { // a camera reads the same code again and again
				_, _, err := c.Add(all[r.IntN(i)])
				require.NoError(t, err)
			}
			code, says, err := c.Add(p)
			require.NoError(t, err)
			if code != "" {
				got[code] = true
			} else if says != "" {
				require.True(t, strings.HasSuffix(says, "."), says)
			}
		}
		for code := range want {
			require.True(t, got[code])
		}
		require.Empty(t, c.Left())
	}
}

func TestPartsThatDoNotFitAreSaid(t *testing.T) {
	code := handIn(t, plainSet(), "Sam", allRight).Code()
	parts := Parts(code)
	require.Greater(t, len(parts), 1)
	t.Logf("ten problems: %d characters in %d QR codes", len(code), len(parts))
	for _, bad := range []string{
		"", "https://example.org", partBegins, partBegins + "a.b.c.d.", partBegins + "00000000.0.2.AA.", partBegins + "00000000.3.2.AA.",
		partBegins + "00000000.1.99999999.AA.", partBegins + "00000000.1.2..", parts[0][:len(parts[0])-1], partBegins + "zz.1.2." + strings.Repeat("A", partSize+1) + ".",
	} {
		var c Parted
		_, _, err := c.Add(bad)
		require.Error(t, err, bad)
		assert.NotContains(t, err.Error(), "\n")
	}
	var c Parted
	for i, p := range parts {
		if i == 1 {
			p = strings.Replace(p, p[40:44], "AAAA", 1)
		}
		got, _, err := c.Add(p)
		assert.Empty(t, got)
		if i == len(parts)-1 {
			assert.ErrorContains(t, err, "do not fit together")
		}
	}
	assert.Empty(t, c.Left())
	_, says, err := c.Add(parts[0])
	require.NoError(t, err)
	assert.Contains(t, says, "still to come: 2")
	assert.Contains(t, c.Left(), "2")
	whole, _, err := c.Add(" " + code + "\n")
	require.NoError(t, err)
	assert.Equal(t, code, whole)
}
