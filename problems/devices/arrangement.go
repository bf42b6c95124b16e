package devices

import "slices"

// Station is one device as it stands in an arrangement.
type Station struct {
	Device string   // id
	Turned bool     // stands against the flow
	Marks  []string // what is to be seen at it: "air gap", "locked"
}

// Run is a run of pipe with its stations in the order of the flow. A run that
// is not the main one leaves another after one of its stations, and joins it
// again before one, or ends.
type Run struct {
	Name  string // "main", "bypass"
	Of    string // the run it leaves; empty for the main run
	After int    // the station of that run it leaves behind
	Join  int    // the station of that run ahead of which it joins again; -1: it ends
	From  string // where the water comes from, where the drawing does not show it
	To    string // where it goes
	Stand []Station
}

// Arrangement is how devices are put together at one place.
type Arrangement struct {
	ID, Title string
	Runs      []Run // the main run first
}

// Clone is a copy that may be changed.
func (a *Arrangement) Clone() *Arrangement {
	c := *a
	c.Runs = slices.Clone(a.Runs)
	for i := range c.Runs {
		c.Runs[i].Stand = slices.Clone(c.Runs[i].Stand)
		for j := range c.Runs[i].Stand {
			c.Runs[i].Stand[j].Marks = slices.Clone(c.Runs[i].Stand[j].Marks)
		}
	}
	return &c
}

// run is the run of a name, nil where there is none.
func (a *Arrangement) run(name string) *Run {
	for i := range a.Runs {
		if a.Runs[i].Name == name {
			return &a.Runs[i]
		}
	}
	return nil
}

// at is where a device stands in a run, -1 where it does not.
func (r *Run) at(device string) int {
	return slices.IndexFunc(r.Stand, func(s Station) bool { return s.Device == device })
}

// count is how often a device stands in a run.
func (r *Run) count(device string) int {
	n := 0
	for _, s := range r.Stand {
		if s.Device == device {
			n++
		}
	}
	return n
}

// insert puts a station into a run; what leaves or joins the run behind it
// moves along.
func (a *Arrangement) insert(name string, i int, s Station) {
	r := a.run(name)
	r.Stand = slices.Insert(r.Stand, i, s)
	a.shift(name, i, 1)
}

// remove takes a station out of a run.
func (a *Arrangement) remove(name string, i int) {
	r := a.run(name)
	r.Stand = slices.Delete(r.Stand, i, i+1)
	a.shift(name, i, -1)
}

// shift keeps the side runs where they were.
func (a *Arrangement) shift(name string, from, by int) {
	for i := range a.Runs {
		side := &a.Runs[i]
		if side.Of != name {
			continue
		}
		if side.After >= from {
			side.After += by
		}
		if side.Join > from || side.Join == from && by > 0 {
			side.Join += by
		}
	}
}
