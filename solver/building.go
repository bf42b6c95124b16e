package solver

import (
	"fmt"

	"riserwork/solver/unit"
)

// Use is what a building is for; it decides storeys, heights and fixtures.
type Use string

// The uses that buildings are drawn for.
const (
	Apartment Use = "apartment building"
	Hotel     Use = "hotel"
	Hospital  Use = "hospital"
	Residence Use = "student residence"
	Office    Use = "office building"
	MixedUse  Use = "mixed-use building"
)

// Role is what one level of a building is.
type Role string

// Roles of levels.
const (
	Parking    Role = "parking"
	Cellar     Role = "cellar"
	GroundRole Role = "ground"
	Typical    Role = "typical"
	Mechanical Role = "mechanical"
	Roof       Role = "roof"
)

// Level is one level of a building.
type Level struct {
	Label     string      // as the elevator shows it: "P2", "1", "14"; not a count
	Role      Role        //
	Elevation unit.Length // of its floor above the floor of level 1
	Height    unit.Length // floor to floor; 0 for the roof
}

// Street is the water main and what it gives. Pressures are gauge pressures
// at GaugeAt.
type Street struct {
	Static    unit.Pressure // the highest, no flow
	Low       unit.Pressure // the lowest residual, at the peak of the day
	GaugeAt   unit.Length   // elevation of the point where they were read
	GaugeName string        // "at the main", "on the gauge in the meter room"
	MainDepth unit.Length   // of the main below the floor of level 1
}

// Losses are pressure losses of the water entry at the design flow.
type Losses struct {
	Meter, Backflow, Strainer unit.Pressure
}

// Total is the sum of the entry's losses.
func (l Losses) Total() unit.Pressure { return l.Meter + l.Backflow + l.Strainer }

// Supply is what feeds a zone.
type Supply string

// Supplies of a zone: straight from the street, from the booster, down from a
// header under a roof tank or a high main, or from a lift higher up.
const (
	FromStreet  Supply = "street"
	FromBooster Supply = "booster"
	FromHeader  Supply = "header"
	FromLift    Supply = "lift"
)

// Booster is a booster set.
type Booster struct {
	Elevation unit.Length
	Boost     unit.Pressure // added at design flow
	ShutOff   unit.Pressure // added at no flow
	Curve     *PumpCurve    // in place of Boost and ShutOff
	CutIn     unit.Pressure // discharge at which it starts; 0: none told
	CutOut    unit.Pressure // and at which it stops
	Tank      unit.Volume   // of its pressure tank; 0: none
	BreakTank bool          // it draws from an open tank beside it
}

// Header is the high main of a down-feed system.
type Header struct {
	Elevation unit.Length
	Pressure  unit.Pressure // in the header, no flow; 0 at the water of an open tank
	Volume    unit.Volume   // of the tank; 0: none told
}

// Valve is a pressure reducing valve.
type Valve struct {
	Elevation unit.Length
	Setting   unit.Pressure // at its outlet, no flow
	FallOff   unit.Pressure // outlet lower than the setting at design flow
}

// Zone is a run of levels fed at one pressure.
type Zone struct {
	Name   string
	Bottom int // index of its lowest level
	Top    int // index of its highest level
	Supply Supply
	Lift   int          // index of the lift that feeds it, where Supply is FromLift
	Valve  *Valve       // nil where there is none
	Plant  *unit.Length // elevation of the zone's own heater; nil: it stands with the building's
}

// Heater is a storage water heater.
type Heater struct {
	Elevation  unit.Length
	Volume     unit.Volume
	Input      unit.Power
	Efficiency float64
	Cold, Hot  unit.Temperature
	Rating     unit.Pressure // highest working pressure on its plate
	Loss       unit.Pressure // of the water through it at design flow
	Relief     unit.Pressure // setting of its relief valve; 0: its rating
	ReliefHeat unit.Power    // that the relief valve passes; 0: not told
	Tank       unit.Volume   // of its expansion tank; 0: as large as it need be
	Day        unit.Volume   // of warm water drawn in a day; 0: usual for the use
}

// MixingValve is the master mixing valve at the heater.
type MixingValve struct{ Mixed unit.Temperature }

// Loop is the hot water recirculation of one supply and one return.
type Loop struct {
	Supply, Return       unit.Length         // of pipe
	SupplyLoss           float64             // W/m
	ReturnLoss           float64             // W/m
	Drop                 unit.TempDifference // that the flow keeps to
	FarthestFromHeater   unit.Length         // developed length, source to farthest outlet
	FarthestFromLoop     unit.Length         // developed length of the longest dead branch
	ValveInLoop          unit.Pressure
	FrictionAtDesignFlow unit.Pressure
	Risers               int        // of hot water with a return each; 0: as many as cold ones
	Pump                 *PumpCurve // its circulator; nil: one chosen for it
}

// Building is a building and its water supply. Elevations count from the
// floor of level 1, upward positive.
type Building struct {
	Use        Use
	Levels     []Level // lowest first; the last is the roof
	Ground     int     // index of level 1
	HighOutlet unit.Length
	LowOutlet  unit.Length
	Street     Street
	Losses     Losses
	Friction   unit.Gradient // of a riser at design flow, per height, fittings included
	Booster    *Booster
	Header     *Header
	Zones      []Zone
	Heater     *Heater
	Mixing     *MixingValve
	Loop       *Loop
	Lifts      []LiftSet // lowest first
	Loads      []Load    // of each level below the roof; nil: not told, and risers lose Friction
	FlushValve bool      // the closets have flush valves
	Piping     Piping    // how the pipes run, where Loads are told
	Limited    bool      // every shower and bath has its own temperature limit
}

// Storeys counts the levels from level 1 to below the roof.
func (b *Building) Storeys() int { return len(b.Levels) - 1 - b.Ground }

// Top is the index of the highest storey.
func (b *Building) Top() int { return len(b.Levels) - 2 }

// Storey is the index of the n-th storey, level 1 counted as the first.
func (b *Building) Storey(n int) int { return b.Ground + n - 1 }

// Highest is the elevation of the highest outlet of level i.
func (b *Building) Highest(i int) unit.Length { return b.Levels[i].Elevation + b.HighOutlet }

// Lowest is the elevation of the lowest outlet of level i.
func (b *Building) Lowest(i int) unit.Length { return b.Levels[i].Elevation + b.LowOutlet }

// Bounds of a building; more is refused.
const (
	maxStoreys = 200
	maxHeight  = 1000 * unit.Metre
	maxPress   = 10_000 * unit.Kilopascal
)

// Check refuses an impossible building with one sentence that says why.
func (b *Building) Check() error {
	if err := b.checkFigures(); err != nil {
		return err
	}
	if err := b.checkLevels(); err != nil {
		return err
	}
	if b.Street.Static <= 0 || b.Street.Static > maxPress {
		return fmt.Errorf("solver: street pressure %.4g kPa, expected above 0 and at most 10,000 kPa", b.Street.Static/unit.Kilopascal)
	}
	if b.Street.Low > b.Street.Static {
		return fmt.Errorf("solver: lowest street pressure %.4g kPa is above the highest %.4g kPa", b.Street.Low/unit.Kilopascal, b.Street.Static/unit.Kilopascal)
	}
	if b.Losses.Meter < 0 || b.Losses.Backflow < 0 || b.Losses.Strainer < 0 || b.Friction < 0 {
		return fmt.Errorf("solver: a pressure loss is negative, expected 0 or more")
	}
	if err := b.checkParts(); err != nil {
		return err
	}
	return b.checkZones()
}

func (b *Building) checkLevels() error {
	if b.Ground < 0 || b.Storeys() < 1 {
		return fmt.Errorf("solver: %d storeys, expected at least 1", max(0, b.Storeys()))
	}
	if len(b.Levels) > maxStoreys {
		return fmt.Errorf("solver: %d levels, expected at most %d", len(b.Levels), maxStoreys)
	}
	for i, l := range b.Levels[:len(b.Levels)-1] {
		if l.Height <= 0 {
			return fmt.Errorf("solver: level %s is %.4g m high, expected more than 0", l.Label, l.Height/unit.Metre)
		}
		gap := b.Levels[i+1].Elevation - l.Elevation - l.Height
		if gap > 1e-6 || gap < -1e-6 {
			return fmt.Errorf("solver: level %s does not end where the level above it begins", l.Label)
		}
	}
	if roof := b.Levels[len(b.Levels)-1]; roof.Elevation > maxHeight {
		return fmt.Errorf("solver: building is %.4g m high, expected at most %g m", roof.Elevation/unit.Metre, maxHeight/unit.Metre)
	}
	return nil
}

func (b *Building) checkZones() error {
	for i, z := range b.Zones {
		switch {
		case z.Bottom < 0 || z.Top < z.Bottom || z.Top > b.Top():
			return fmt.Errorf("solver: zone %s runs from level index %d to %d, expected levels of the building, lowest first", z.Name, z.Bottom, z.Top)
		case i > 0 && z.Bottom != b.Zones[i-1].Top+1:
			return fmt.Errorf("solver: zone %s does not begin where zone %s ends", z.Name, b.Zones[i-1].Name)
		case z.Supply == FromBooster && b.Booster == nil:
			return fmt.Errorf("solver: zone %s is fed by a booster, and the building has none", z.Name)
		case z.Supply == FromLift && (z.Lift < 0 || z.Lift >= len(b.Lifts)):
			return fmt.Errorf("solver: zone %s is fed by lift %d, and the building has %d", z.Name, z.Lift+1, len(b.Lifts))
		case z.Supply == FromHeader && b.Header == nil:
			return fmt.Errorf("solver: zone %s is fed from a header, and the building has none", z.Name)
		case z.Valve != nil && z.Valve.Setting <= 0:
			return fmt.Errorf("solver: reducing valve of zone %s is set to %.4g kPa, expected more than 0", z.Name, z.Valve.Setting/unit.Kilopascal)
		}
	}
	return nil
}
