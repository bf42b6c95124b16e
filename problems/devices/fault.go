package devices

// Fault is a fault of installation put into a sound arrangement.
type Fault struct {
	ID     string
	Breaks string // the check it breaks, and the only one
	Run    string // where the learner marks it
	At     string // the device of that run, or what stands next to the gap; empty for the run itself
	Did    string // what is wrong in the drawing, one sentence
	Then   string // what would happen, one or two sentences
	Shows  Shown  // the number that shows it
	Change func(*Arrangement)
}

// missing takes the device out, the last one of its kind in the run.
func missing(run, device string) func(*Arrangement) {
	return func(a *Arrangement) {
		r := a.run(run)
		for i := len(r.Stand) - 1; i >= 0; i-- {
			if r.Stand[i].Device == device {
				a.remove(run, i)
				return
			}
		}
	}
}

// added puts a station ahead of a device.
func added(run, ahead string, s Station) func(*Arrangement) {
	return func(a *Arrangement) { a.insert(run, a.run(run).at(ahead), s) }
}

// swapped changes the places of two devices.
func swapped(run, one, other string) func(*Arrangement) {
	return func(a *Arrangement) {
		r := a.run(run)
		i, j := r.at(one), r.at(other)
		r.Stand[i], r.Stand[j] = r.Stand[j], r.Stand[i]
	}
}

// turned sets a device against the flow.
func turned(run, device string) func(*Arrangement) {
	return func(a *Arrangement) {
		r := a.run(run)
		r.Stand[r.at(device)].Turned = true
	}
}

// unmarked takes all that is to be seen at a device away and puts something
// else there; nothing where mark is empty.
func unmarked(run, device, mark string) func(*Arrangement) {
	return func(a *Arrangement) {
		r := a.run(run)
		s := &r.Stand[r.at(device)]
		s.Marks = nil
		if mark != "" {
			s.Marks = []string{mark}
		}
	}
}

// along puts a further run in.
func along(run Run) func(*Arrangement) {
	return func(a *Arrangement) { a.Runs = append(a.Runs, run) }
}

// away takes a run out.
func away(run string) func(*Arrangement) {
	return func(a *Arrangement) {
		for i := range a.Runs {
			if a.Runs[i].Name == run {
				a.Runs = append(a.Runs[:i], a.Runs[i+1:]...)
				return
			}
		}
	}
}

// moved lets a side run leave the other run somewhere else.
func moved(run string, after int) func(*Arrangement) {
	return func(a *Arrangement) { a.run(run).After = after }
}

// unmark puts one thing to be seen at a device in place of another.
func unmark(run, device, mark, now string) func(*Arrangement) {
	return func(a *Arrangement) {
		r := a.run(run)
		s := &r.Stand[r.at(device)]
		for i := range s.Marks {
			if s.Marks[i] == mark {
				s.Marks[i] = now
			}
		}
	}
}
