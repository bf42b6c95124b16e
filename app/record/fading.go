package record

// A skill is first met as a worked example. Then its lines go blank from the
// last one up, one for each problem in which every blank was right at once. A
// line that went wrong is shown worked the next time, with those before it.

// blank notes whether a step is left to the learner from now on.
func (k *Skill) blank(step string, left bool) {
	if k.Blank == nil {
		k.Blank = map[string]bool{}
	}
	k.Blank[step] = left
}

// leaves reports whether a step is left to the learner.
func (k *Skill) leaves(step string) bool {
	left, ok := k.Blank[step]
	return left || !ok && k.Alone
}

// Given is how many lines at the head of the next problem are shown worked,
// of the steps in their order. A shown line gives away the numbers of those
// before it, so they are shown with it.
func (k *Skill) Given(steps []string) int {
	for i := len(steps); i > 0; i-- {
		if !k.leaves(steps[i-1]) {
			return i
		}
	}
	return 0
}

// fade leaves one line more to the learner.
func (k *Skill) fade(steps []string) {
	if n := k.Given(steps); n > 0 {
		k.blank(steps[n-1], true)
	}
}
