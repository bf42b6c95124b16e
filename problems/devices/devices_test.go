package devices_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/devices"
)

func TestDevices(t *testing.T) {
	all := devices.All()
	require.GreaterOrEqual(t, len(all), 35)
	seen := map[string]bool{}
	for _, d := range all {
		assert.False(t, seen[d.ID], "%s stands twice", d.ID)
		seen[d.ID] = true
		assert.Contains(t, devices.Parts, d.Part, d.ID)
		for what, text := range map[string]string{"name": d.Name, "purpose": d.Purpose, "place": d.Place, "without": d.Without, "source": d.Source.Says, "confidence": string(d.Source.Confidence)} {
			assert.NotEmpty(t, text, "%s has no %s", d.ID, what)
		}
		assert.True(t, strings.HasSuffix(d.Without, "."), d.ID)
		assert.GreaterOrEqual(t, len(d.Near), 3, "%s: wrong choices", d.ID)
		for _, near := range append(d.Near, d.Beside...) {
			assert.NotEqual(t, d.ID, near)
			_, ok := devices.ByID(near)
			assert.True(t, ok, "%s names %s", d.ID, near)
		}
	}
}

// A sound arrangement keeps every check, each fault breaks the one it names
// and no other, and every check has a fault that breaks it or is one that no
// fault can be shown for.
func TestDetails(t *testing.T) {
	faults := 0
	ids := map[string]bool{}
	for _, d := range devices.Details() {
		t.Run(d.ID, func(t *testing.T) {
			require.Empty(t, d.Broken(&d.Arrangement))
			for _, run := range d.Runs {
				for _, s := range run.Stand {
					_, ok := devices.ByID(s.Device)
					assert.True(t, ok, s.Device)
				}
			}
			before := d.Clone()
			for i := range d.Faults {
				f := &d.Faults[i]
				faults++
				assert.False(t, ids[f.ID], "%s stands twice", f.ID)
				ids[f.ID] = true
				faulty := d.With(f)
				assert.Equal(t, []string{f.Breaks}, d.Broken(faulty), f.ID)
				assert.Equal(t, before, d.Clone(), "%s changed the sound one", f.ID)
				assert.True(t, shown(faulty, f.Run, f.At), "%s: %s is not to be seen in the run %s", f.ID, f.At, f.Run)
				assert.NotEmpty(t, f.Did, f.ID)
				assert.NotEmpty(t, f.Then, f.ID)
			}
		})
	}
	t.Logf("%d faults in %d arrangements", faults, len(devices.Details()))
	assert.GreaterOrEqual(t, faults, 75)
}

// shown reports whether the place that the learner marks is in the drawing.
func shown(a *devices.Arrangement, run, at string) bool {
	for _, r := range a.Runs {
		if r.Name != run {
			continue
		}
		for _, s := range r.Stand {
			if s.Device == at {
				return true
			}
		}
		return at == ""
	}
	return false
}
