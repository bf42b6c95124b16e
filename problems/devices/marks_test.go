package devices

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What may be marked as the place of a fault has the device that the fault
// names among it, and is a small part of the drawing.
func TestMarksOfFaults(t *testing.T) {
	for _, d := range details {
		for i := range d.Faults {
			f := &d.Faults[i]
			spots := d.marksOf(f)
			a := d.With(f)
			all, named := 0, 0
			for _, r := range a.Runs {
				all += len(r.Stand)
			}
			var says []string
			for _, s := range spots {
				r := a.run(s.Run)
				says = append(says, s.Run+"/"+r.Stand[s.At].Device)
				if s.Run == f.Run && r.Stand[s.At].Device == f.At {
					named++
				}
			}
			assert.GreaterOrEqual(t, named, 1, "%s: %v", f.ID, says)
			assert.LessOrEqual(t, len(spots), 4, "%s: %v", f.ID, says)
			t.Log(f.ID, says)
		}
	}
}
