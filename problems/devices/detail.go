package devices

import "slices"

// Detail is a sound arrangement, what it keeps, and the faults met in it.
type Detail struct {
	Arrangement
	Flow   []string // devices of the main run whose order along the flow is beyond dispute
	Checks []Check
	Faults []Fault
}

// Details are the details in the order of the flow.
func Details() []*Detail { return details }

var details = []*Detail{
	&serviceDetail, &entryDetail, &compoundMeterDetail, &backflowDetail, &boosterDetail, &riserFootDetail,
	&valveStationDetail, &parallelStationDetail, &downFeedDetail, &zonePairDetail,
	&heaterDetail, &openFeedDetail, &reliefDetail, &mixingDetail, &returnDetail, &branchReturnsDetail, &branchEndDetail,
}

// DetailByID is the detail of an arrangement.
func DetailByID(id string) (*Detail, bool) {
	i := slices.IndexFunc(details, func(d *Detail) bool { return d.ID == id })
	if i < 0 {
		return nil, false
	}
	return details[i], true
}

// Broken are the ids of the checks that a does not keep.
func (d *Detail) Broken(a *Arrangement) []string {
	var ids []string
	for i := range d.Checks {
		if !d.Checks[i].Holds(a) {
			ids = append(ids, d.Checks[i].ID)
		}
	}
	return ids
}

// flows reports whether the devices of the main run whose order is beyond
// dispute stand in it.
func (d *Detail) flows(a *Arrangement) bool {
	main, last := &a.Runs[0], -1
	for _, id := range d.Flow {
		at := main.at(id)
		if at < 0 {
			continue
		}
		if at < last {
			return false
		}
		last = at
	}
	return true
}

// With is the arrangement with a fault in it.
func (d *Detail) With(f *Fault) *Arrangement {
	a := d.Clone()
	f.Change(a)
	return a
}
