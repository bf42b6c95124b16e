package solver

import "riserwork/solver/unit"

// Case is what a building is worked out for. The zero Case is no limits, the
// street at its lowest, and no tap open.
type Case struct {
	Settings
	Street unit.Pressure // at the gauge while water runs; 0: the building's lowest
	Open   []OpenTap     // what runs, for the pressures Open
	Shut   *ShutTap      // a tap that closes at once; nil: none
	Air    unit.Pressure // of the atmosphere; 0: at sea level
}

// Whole is a building worked out: every pressure, flow and temperature. All
// indices are those of Building. Three states are told side by side: no flow
// (the street at its highest, pumps at shut-off), design flow (each pipe at
// the demand of the fixtures behind it, the street at its lowest), and the
// taps of [Case] open (the flows that the pressures really make).
//
// Design flows do not add up where pipes part, since fixture units add and the
// demand of many is less than their sum. The flows of open taps do.
type Whole struct {
	Building *Building // as it was worked out: what was left open is filled in
	Case     Case
	Street   *Solution // reach, first short floor: what the street alone does
	Load     Load      // of all levels in a zone
	Demand   unit.Flow // of all of it

	Stretches []Stretch     // from the street outward: each after what feeds it
	Floors    []FloorWater  // of each level below the roof
	Pumps     []PumpDuty    // the booster, then lifts
	Valves    []ValveDuty   // of each zone that has one
	Taps      []TapFlow     // of each of Case.Open
	Hot       *HotWater     // nil where there is no heater
	Loops     []LoopWater   // one for each zone with hot water; nil where there is no loop
	Surge     *SurgeAt      // of Case.Shut
	Findings  []Finding     // limits not kept, and what cannot work
	Top       unit.Pressure // that is to be left at the highest outlet
}

// Pressures are those of a place in the three states.
type Pressures struct {
	NoFlow, Design, Open unit.Pressure
}

// Kind is what a stretch is.
type Kind string

// Kinds of stretches.
const (
	EntryStretch  Kind = "entry"  // strainer, meter and backflow preventer
	PumpStretch   Kind = "pump"   // booster or lift
	TankStretch   Kind = "tank"   // an open tank or a header: pressure starts anew
	MainStretch   Kind = "main"   // from a source to a zone
	FillStretch   Kind = "fill"   // into a tank
	ValveStretch  Kind = "valve"  // reducing valve
	HeaterStretch Kind = "heater" // heater with its main
	RiserStretch  Kind = "riser"  // from floor to floor
	BranchStretch Kind = "branch" // from the riser to the outlets of a floor
)

// Stretch is a stretch of pipe, or a device in it, with the point where it
// ends. Of like risers side by side one is told, with its own units and flow.
type Stretch struct {
	From  int    // index of the stretch that feeds it; -1: a source of pressure
	Kind  Kind   //
	Name  string // "riser of zone Low, level 7"
	Zone  int    // -1: of no one zone
	Level int    // -1: of no one level
	Hot   bool

	End      unit.Length // elevation of its end
	Length   unit.Length // of pipe, with the allowance for fittings
	Units    float64     // fixture units behind it
	Tube     *Tube       // size; nil: no pipe
	Flow     unit.Flow   // design flow
	Velocity unit.Velocity
	Friction unit.Gradient // at design flow
	Loss     unit.Pressure // of pipe and devices at design flow; negative for a pump
	OpenFlow unit.Flow     // with the taps open

	At Pressures // at its end

	counts byte    // which units: 't' both waters, 'c' cold, 'h' hot
	share  float64 // like stretches side by side
	total  Load    // behind all of them
	known  unit.Pressure
	setAt  *Valve
	pump   *PumpCurve
	pipeK  float64 // Pa at 1 m3/s, to the power 1.852
	devK   float64 // Pa at 1 m3/s, squared
}

// FloorWater is the water of one level.
type FloorWater struct {
	Level int
	Zone  int // -1 where no zone feeds it
	Load  Load
	Cold  Outlets
	Hot   *Outlets // nil where no heater feeds it
}

// Outlets are the pressures of one water on a level.
type Outlets struct {
	Stretch int       // of its branch
	Floor   Pressures // in the branch at the height of the floor
	Highest Pressures // at the highest outlet
	Lowest  Pressures // at the lowest outlet
}

// Finding is a limit that is not kept, or a thing that cannot work.
type Finding struct {
	Limit string // "static", "top", "shower", "velocity", "suction", ...: one word a rule
	Place string // "level 7", "zone Low", "booster"
	Level int    // -1: of no one level
	Says  string // the whole of it as a sentence
}

// SolveWhole works a building out. It refuses an impossible one with one
// sentence; what is possible but wrong is among the findings.
func SolveWhole(b *Building, c Case) (*Whole, error) {
	if b == nil {
		return nil, errNoBuilding
	}
	if err := b.Check(); err != nil {
		return nil, err
	}
	if err := c.check(b); err != nil {
		return nil, err
	}
	w := &Whole{Building: b.filled(), Case: c.filled(b)}
	w.Top = w.Case.TopMin
	t := newTree(w)
	if err := t.load(); err != nil {
		return nil, err
	}
	t.pumps()
	w.Street = solve(w.Building, w.Case.Settings)
	t.noFlow()
	t.design()
	if err := t.open(); err != nil {
		return nil, err
	}
	t.floors()
	w.duties(t)
	if err := w.heat(t); err != nil {
		return nil, err
	}
	w.surge(t)
	w.find(t)
	return w, nil
}
