// Package walk follows the water through a building: from the street to the
// highest tap, down the zones, through the heater and round the loop. Each
// [Station] is a device with a number there, taken from the building worked
// out as a whole, and the sum that gives it. It knows no page.
package walk

import (
	"slices"

	"riserwork/problems"
	"riserwork/problems/devices"
	"riserwork/problems/marking"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Version is raised when a seed draws another walk than before.
const Version = 1

// Walk is a building with its stations in the order of the flow.
type Walk struct {
	Seed     uint64
	Size     Size
	House    problems.House
	Building *solver.Building
	Whole    *solver.Whole
	Says     string // the building in a sentence
	Stations []Station
	Drawn    int // buildings drawn until one kept every limit
}

// Part is a stretch of the walk.
type Part string

// Parts of the walk, in their order.
const (
	Street Part = "From the street"
	Up     Part = "Up to the highest tap"
	Down   Part = "Down the zones"
	Heater Part = "Through the heater"
	Loop   Part = "Round the hot loop"
)

// State is what the water does while the number is read.
type State string

// States of the water.
const (
	Flowing State = "at the busy hour, water flowing"
	NoFlow  State = "no water flowing"
	Hot     State = "the loop running"
)

// Where on the picture a station stands; the words are those of the drawing.
type Where string

// Places on the picture.
const (
	AtMain     Where = "main"
	AtStrainer Where = "strainer"
	AtMeter    Where = "meter"
	AtBackflow Where = "backflow"
	AtPump     Where = "pump"
	AtValve    Where = "valve"
	AtFloor    Where = "floor"
	AtOutlet   Where = "outlet"
	AtHeater   Where = "heater"
	AtMixing   Where = "mixing"
	AtLoop     Where = "loop"
)

// Station is one place where the walk stops.
type Station struct {
	ID     string // of its own in the walk, for links: "meter", "valve-2"
	Part   Part
	Place  string // "water meter", "top outlet, level 14"
	Device *devices.Device
	State  State
	Says   string // what the number is, one sentence
	Turn   bool   // the number is asked for first

	Level int // index into the building's levels
	Where Where

	Sum   *problems.Problem // one line, with its slips
	Of    *measure.Of
	SI    float64 // the number as the building gives it, in SI
	Value string  // the same as it is printed: "38.4 psi"
}

// Why is why the device is there, a sentence.
func (s *Station) Why() string { return "The " + s.Device.Name + " " + s.Device.Purpose + "." }

// Rule is the sum in words: "before − gamma × height".
func (s *Station) Rule() string { return s.Sum.Worked()[0].Symbols }

// Line is the sum with its numbers: "80 − 0.433 × 96 = 38.4 psi".
func (s *Station) Line() string { return s.Sum.Worked()[0].Numbers + " = " + s.Value }

// Judge marks a line written for the number of the station.
func (s *Station) Judge(text string) marking.Finding {
	return marking.Blanks(s.Sum, []string{text}).Lines[0]
}

// Index is where the station of an id stands; -1 where the walk has none.
func (w *Walk) Index(id string) int {
	return slices.IndexFunc(w.Stations, func(s Station) bool { return s.ID == id })
}

// Text prints a number of the walk in the units of its house.
func (w *Walk) Text(of *measure.Of, si float64) string {
	return problems.World{House: w.House, Building: w.Building}.Text(*of, si)
}

// Press prints a pressure.
func (w *Walk) Press(p unit.Pressure) string { return w.Text(&measure.Pressure, float64(p)) }
