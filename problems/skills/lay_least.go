package skills

import (
	"riserwork/problems"
	"riserwork/solver/unit/measure"
)

// layLeast lays the branch in one of the three sizes of a chart, under a
// smallest size.
func layLeast(w problems.World, v float64) problems.Outcome {
	const largest = 2
	size, right := int(v), int(solveSizeWithMinimum(w))
	name := sizeChoices[size]
	x := string(rune('a' + size))
	speed, limit := w.SI("speed_"+x), w.SI("limit")
	loss, allowed := w.SI("loss_"+x), w.SI("allowed")
	says := "In " + name + " the water would run at " + w.Text(measure.Velocity, speed) + ", where " + w.Text(measure.Velocity, limit) +
		" is the most, and lose " + w.Text(measure.Friction, loss) + " of the " + w.Text(measure.Friction, allowed) + " allowed."
	o := problems.Outcome{Kept: size == right, Says: []string{says}}
	if size > right {
		o.Says = append(o.Says, problems.Sentence(sizeChoices[right])+" does as well: the larger pipe and its insulation are paid for nothing.")
		return o
	}
	if speed > limit {
		o.Says = append(o.Says, "It would be noisy and wear at its bends.")
	}
	if loss > allowed {
		o.Says = append(o.Says, "Too little would be left at the end.")
	}
	if size < largest && w.SI("nominal_"+x) < w.SI("least_nominal") {
		o.Says = append(o.Says, "It is below the smallest size that code and specification allow: the inspector turns it down.")
	}
	return o
}
