package devices

import (
	"slices"

	"riserwork/problems"
	"riserwork/solver"
)

// Part of the water lines that a device belongs to, in the order of the flow.
type Part string

// Parts of the water lines.
const (
	Service Part = "service and entry"
	Booster Part = "booster"
	Riser   Part = "riser"
	Zone    Part = "reducing valve station"
	Heater  Part = "heater"
	Mixing  Part = "mixed water"
	Loop    Part = "hot water loop"
	Outlet  Part = "branch and fixture"
)

// Parts are the parts in the order of the flow.
var Parts = []Part{Service, Booster, Riser, Zone, Heater, Mixing, Loop, Outlet}

// Device is one thing on the line. Its texts are sentences, or parts of one
// where that is said.
type Device struct {
	ID      string
	Name    string // as the trade calls it, with no article
	Part    Part
	Purpose string // what it is there for: "keeps …", the rest of a sentence about it
	Place   string // where it goes
	Way     string // how it is turned; empty where that is of no matter
	Beside  []string
	Without string // what happens where it is missing: a symptom, one sentence
	Shows   Shown  // the number that shows it, where physics gives one
	Caution string
	Source  problems.Source
	Near    []string // devices whose purpose is near, for wrong choices
}

// All are the devices in the order of the flow.
func All() []*Device { return all }

// ByID is the device of an id.
func ByID(id string) (*Device, bool) {
	i := slices.IndexFunc(all, func(d *Device) bool { return d.ID == id })
	if i < 0 {
		return nil, false
	}
	return all[i], true
}

// all is laid out in table_*.go.
var all = join(serviceDevices, boosterDevices, riserDevices, zoneDevices, heaterDevices, mixingDevices, loopDevices, outletDevices)

func join(tables ...[]Device) []*Device {
	var list []*Device
	for _, t := range tables {
		for i := range t {
			list = append(list, &t[i])
		}
	}
	return list
}

// Sources that many devices share.
var (
	practice = problems.Source{Says: "common practice, no source", Confidence: solver.Practice}
	physics  = problems.Source{Says: "physics", Confidence: solver.Practice}
)

func read(says string) problems.Source {
	return problems.Source{Says: says, Confidence: solver.Confirmed}
}

func recalled(says string) problems.Source {
	return problems.Source{Says: says + ", from memory", Confidence: solver.Memory}
}
