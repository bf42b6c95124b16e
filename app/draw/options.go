package draw

import "riserwork/solver/unit"

// Place is where on a building something is.
type Place string

// Places that notes and questions can stand at. AtFloor, AtOutlet and AtValve
// also need a level.
const (
	AtFloor    Place = "floor"
	AtOutlet   Place = "outlet"   // the highest outlet of a level
	AtGauge    Place = "gauge"    // the gauge in the meter or pump room
	AtMain     Place = "main"     // the street main
	AtStrainer Place = "strainer" //
	AtMeter    Place = "meter"    //
	AtBackflow Place = "backflow" //
	AtPump     Place = "pump"     // the booster
	AtValve    Place = "valve"    // the reducing valve on a level
	AtHeader   Place = "header"   // the header or the roof tank
	AtHeater   Place = "heater"   //
	AtMixing   Place = "mixing"   //
	AtLoop     Place = "loop"     // the circulator of the hot return
)

// Note is a text at a place: a value that the problem tells, or the question.
type Note struct {
	Level int // index into Building.Levels
	Where Place
	Text  string // "62 psi"
}

// Options say what a drawing shows.
type Options struct {
	System unit.System
	Ask    *Note  // the place asked about; nil: none
	Notes  []Note // what is told
	Solved bool   // the answer may be seen: pressures, settings, all that Hide hides

	HideZones      bool // zones, their valves and pumps are part of the answer
	HideElevations bool // heights of the floors are part of the answer
	HideDepth      bool // so is the depth of the main

	Min, Max unit.Pressure // limits in the profile; 0: not shown
}

func (o Options) zones() bool      { return o.Solved || !o.HideZones }
func (o Options) elevations() bool { return o.Solved || !o.HideElevations }
func (o Options) depth() bool      { return o.Solved || !o.HideDepth }

// asks reports whether a level as such, or an outlet on it, is asked about.
func (o Options) asks(level int) bool {
	return o.Ask != nil && o.Ask.Level == level && (o.Ask.Where == "" || o.Ask.Where == AtFloor || o.Ask.Where == AtOutlet)
}
