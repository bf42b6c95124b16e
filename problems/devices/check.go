package devices

import (
	"slices"

	"riserwork/problems"
)

// Check is one thing that a sound arrangement keeps.
type Check struct {
	ID     string
	Says   string // what must be so, one sentence
	Why    string // what it is good for
	Source problems.Source
	Holds  func(*Arrangement) bool
	Place  string // the device of the main run whose place it settles; empty where it settles none
}

// before holds where, in a run, the first device stands ahead of the second;
// it says nothing where one of them is missing.
func before(run, first, second string) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		r := a.run(run)
		if r == nil || r.at(first) < 0 || r.at(second) < 0 {
			return true
		}
		return r.at(first) < r.at(second)
	}
}

// has holds where a device stands in a run so often, or more.
func has(run, device string, times int) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		r := a.run(run)
		return r != nil && r.count(device) >= times
	}
}

// lacks holds where a device does not stand in a run.
func lacks(run, device string) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		r := a.run(run)
		return r == nil || r.at(device) < 0
	}
}

// faces holds where every device of the kind stands with the flow.
func faces(run, device string) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		r := a.run(run)
		return r == nil || !slices.ContainsFunc(r.Stand, func(s Station) bool { return s.Device == device && s.Turned })
	}
}

// both holds where a device has another somewhere ahead of it and somewhere
// behind it in the run.
func both(run, device, other string) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		r := a.run(run)
		if r == nil || r.at(device) < 0 {
			return true
		}
		is := func(s Station) bool { return s.Device == other }
		i := r.at(device)
		return slices.ContainsFunc(r.Stand[:i], is) && slices.ContainsFunc(r.Stand[i:], is)
	}
}

// marked holds where a device of a run bears a mark.
func marked(run, device, mark string) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		r := a.run(run)
		if r == nil || r.at(device) < 0 {
			return true
		}
		return slices.Contains(r.Stand[r.at(device)].Marks, mark)
	}
}

// bare holds where a device of a run does not bear a mark.
func bare(run, device, mark string) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		r := a.run(run)
		if r == nil || r.at(device) < 0 {
			return true
		}
		return !slices.Contains(r.Stand[r.at(device)].Marks, mark)
	}
}

// none holds where there is no run of the name.
func none(run string) func(*Arrangement) bool {
	return func(a *Arrangement) bool { return a.run(run) == nil }
}

// leaves holds where a side run leaves the other run behind one device and
// ahead of another.
func leaves(run, after, ahead string) func(*Arrangement) bool {
	return func(a *Arrangement) bool {
		side := a.run(run)
		if side == nil {
			return true
		}
		r := a.run(side.Of)
		i, j := r.at(after), r.at(ahead)
		return (i < 0 || i <= side.After) && (j < 0 || side.After < j)
	}
}
