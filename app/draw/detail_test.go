package draw_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/draw"
	"riserwork/problems/devices"
)

// Every arrangement and every fault in it is drawn on its sheet, with no text
// over another, and each device can be pointed at. A fault is to be seen: the
// drawing and its table differ from the sound ones.
func TestArrangementsAndFaultsAreDrawn(t *testing.T) {
	for _, d := range devices.Details() {
		t.Run(d.ID, func(t *testing.T) {
			sound := draw.Detail(&d.Arrangement, draw.DetailOptions{})
			checkDetail(t, &d.Arrangement, sound)
			for i := range d.Faults {
				f := &d.Faults[i]
				t.Run(f.ID, func(t *testing.T) {
					a := d.With(f)
					s := draw.Detail(a, draw.DetailOptions{})
					checkDetail(t, a, s)
					assert.NotEqual(t, sound.SVG(), s.SVG(), "the fault is not to be seen in the drawing")
					assert.NotEqual(t, sound.Table, s.Table, "the fault is not in the table")
				})
			}
		})
	}
}

func checkDetail(t *testing.T, a *devices.Arrangement, s *draw.Scene) {
	t.Helper()
	sheet := draw.Box{X0: -1, Y0: -1, X1: s.Width + 1, Y1: s.Height + 1}
	var texts []draw.Item
	keys := map[string]bool{}
	var centres []draw.Point
	s.Walk(func(it draw.Item) {
		b := it.Bounds()
		require.False(t, math.IsNaN(b.X0+b.Y0+b.X1+b.Y1), "%+v", it)
		assert.True(t, b.Within(sheet), "off the sheet: %v %q %q", b, it.Part, it.Text)
		if it.Key != "" {
			assert.False(t, keys[it.Key], it.Key)
			assert.NotEmpty(t, it.Label, it.Key)
			keys[it.Key] = true
		}
		if it.Part == "hit" {
			assert.GreaterOrEqual(t, it.W, 43.9)
			assert.GreaterOrEqual(t, it.H, 43.9)
			c := draw.Point{X: it.X + it.W/2, Y: it.Y + it.H/2}
			for _, o := range centres {
				assert.True(t, math.Abs(o.X-c.X) > 40 || math.Abs(o.Y-c.Y) > 40, "two devices stand too close to be tapped: %v %v", o, c)
			}
			centres = append(centres, c)
		}
		if it.Kind == draw.Text {
			for _, o := range texts {
				assert.False(t, b.Overlaps(o.Bounds()), "%q lies on %q", it.Text, o.Text)
			}
			texts = append(texts, it)
		}
	})
	picks := draw.Picks(a, false)
	for _, p := range picks {
		assert.True(t, keys[p.Key], "%s cannot be pointed at", p.Says)
	}
	assert.Len(t, s.Table, len(picks)+1)
	for _, row := range s.Table {
		require.Len(t, row, 4)
		for _, cell := range row {
			assert.NotEmpty(t, cell)
		}
	}
}

// Where a device is to be put, the gaps of the main run can be pointed at, and
// no device.
func TestGapsCanBePointedAt(t *testing.T) {
	for seed := range uint64(200) {
		q := devices.New(devices.Place, seed)
		s := draw.Detail(q.Drawing, draw.DetailOptions{Gaps: true})
		keys := map[string]int{}
		s.Walk(func(it draw.Item) {
			if it.Key != "" {
				keys[it.Key]++
			}
		})
		picks := draw.Picks(q.Drawing, true)
		assert.Len(t, keys, len(picks))
		right := 0
		for _, p := range picks {
			assert.Equal(t, 1, keys[p.Key], p.Says)
			if q.Put(p.Spot).Right {
				right++
			}
		}
		assert.GreaterOrEqual(t, right, 1, q.Ask)
		assert.LessOrEqual(t, right, len(picks)/2, q.Ask)
	}
}

// Every device has a sign that stands on its sheet.
func TestEveryDeviceHasASign(t *testing.T) {
	const pipe = 3 // paper, pipe and arrow
	for _, d := range devices.All() {
		s := draw.Sign(d)
		signs := 0
		s.Walk(func(it draw.Item) {
			assert.True(t, it.Bounds().Within(draw.Box{X1: s.Width, Y1: s.Height}), "%s: %+v", d.ID, it)
			if it.Part == "symbol" {
				signs++
			}
		})
		assert.Positive(t, signs, d.ID)
		assert.Greater(t, len(s.Items), pipe, d.ID)
	}
}

// A device that stands against the flow is drawn the other way round.
func TestTurnedDevicesAreSeenTurned(t *testing.T) {
	for _, d := range devices.Details() {
		for i := range d.Faults {
			a := d.With(&d.Faults[i])
			for _, r := range a.Runs {
				for k, st := range r.Stand {
					if !st.Turned {
						continue
					}
					turned := draw.Detail(a, draw.DetailOptions{}).SVG()
					r.Stand[k].Turned = false
					assert.NotEqual(t, len(turned), 0)
					words := strings.NewReplacer(", against the flow", "")
					assert.NotEqual(t, words.Replace(turned), words.Replace(draw.Detail(a, draw.DetailOptions{}).SVG()), "%s: %s", d.Faults[i].ID, st.Device)
					r.Stand[k].Turned = true
				}
			}
		}
	}
}

func TestGoldenDetails(t *testing.T) {
	for _, id := range []string{"entry", "mixing"} {
		d, ok := devices.DetailByID(id)
		require.True(t, ok)
		file := filepath.Join("testdata", "detail_"+id+".svg")
		got := draw.Detail(&d.Arrangement, draw.DetailOptions{}).SVG()
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, string(want), got)
	}
	if dir := os.Getenv("SHOTS"); dir != "" {
		for _, d := range devices.Details() {
			require.NoError(t, os.WriteFile(filepath.Join(dir, "detail-"+d.ID+".svg"), []byte(draw.Detail(&d.Arrangement, draw.DetailOptions{}).SVG()), 0o644))
		}
	}
}
