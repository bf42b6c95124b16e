package page

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var colour = regexp.MustCompile(`--([a-z-]+): #([0-9a-f]{6});`)

// palettes are the colours of the style sheet: light, dark by choice, dark by
// the device.
func palettes(t *testing.T) []map[string]string {
	t.Helper()
	raw, err := os.ReadFile("../../web/style.css")
	require.NoError(t, err)
	var list []map[string]string
	for _, m := range colour.FindAllStringSubmatch(string(raw), -1) {
		if m[1] == "paper" {
			list = append(list, map[string]string{})
		}
		list[len(list)-1][m[1]] = m[2]
	}
	return list
}

// luminance and contrast are those of WCAG 2.2 (2023), "relative luminance"
// and "contrast ratio".
func luminance(hex string) float64 {
	n, _ := strconv.ParseUint(hex, 16, 32)
	weigh := func(shift uint) float64 {
		c := float64(n>>shift&255) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*weigh(16) + 0.7152*weigh(8) + 0.0722*weigh(0)
}

func contrast(a, b string) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Text must be legible in sunlight: 7 to 1, as WCAG 2.2 (2023), success
// criterion 1.4.6, asks of the enhanced level; edges 3 to 1, criterion 1.4.11.
func TestColoursStandApart(t *testing.T) {
	assert.InDelta(t, 21, contrast("000000", "ffffff"), 1e-9)
	list := palettes(t)
	require.Len(t, list, 3)
	assert.Equal(t, list[1], list[2], "dark is dark, by choice or by the device")
	for i, p := range list {
		for _, pair := range [][2]string{
			{"ink", "paper"}, {"ink", "card"}, {"ink", "key"}, {"ink", "key-sign"}, {"soft", "paper"}, {"soft", "card"}, {"soft", "key"},
			{"soft", "bad-wash"}, {"soft", "fair-wash"}, {"ink", "bad-wash"}, {"ink", "fair-wash"}, {"ink", "good-wash"}, {"ink", "wash"},
			{"act", "paper"}, {"act", "card"}, {"act", "wash"}, {"on-act", "act"},
			{"good", "card"}, {"fair", "card"}, {"bad", "card"}, {"bad", "paper"},
		} {
			assert.GreaterOrEqual(t, contrast(p[pair[0]], p[pair[1]]), 7.0, "palette %d: %s on %s", i, pair[0], pair[1])
		}
		for _, pair := range [][2]string{{"line", "card"}, {"line", "paper"}, {"act", "pad"}} {
			assert.GreaterOrEqual(t, contrast(p[pair[0]], p[pair[1]]), 3.0, "palette %d: %s on %s", i, pair[0], pair[1])
		}
	}
}
