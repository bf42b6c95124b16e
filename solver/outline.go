package solver

import (
	"fmt"
	"math"
	"strconv"

	"riserwork/solver/unit"
)

// Outline is a building told in the few figures that a person knows of it;
// what is left at 0 is worked out or usual. [Outline.Building] lays it out.
type Outline struct {
	Use     Use
	Storeys int         // from level 1 up
	Below   int         // levels of parking below level 1
	First   unit.Length // floor to floor of level 1; 0: as the others
	Floor   unit.Length // floor to floor of the others
	Under   unit.Length // floor to floor below level 1; 0: 10 ft

	Static unit.Pressure // of the street at the gauge in the meter room on the lowest level
	Low    unit.Pressure // at the busy hour; 0: 8 psi less
	Losses Losses

	Suites int // suites, rooms, beds or washrooms a floor, as [SuiteOf] the use
	Risers int // 0: one for each four

	Booster bool          // pumps lift what the street leaves short
	Boost   unit.Pressure // 0: as much as it takes, in whole psi
	Lifts   int           // pump sets in series higher up
	Tank    bool          // an open house tank on the roof feeds downward, a small set the top of it
	Zoned   bool          // zones of as many floors as the limits allow; else one for each supply
	Set     []unit.Pressure
	// Set are settings of the reducing valves, lowest zone first; 0 or none:
	// what leaves enough at the top of the zone, in whole psi.
	FallOff unit.Pressure // of each valve

	Heater   bool
	Volume   unit.Volume // 0: 40 US gal a suite
	Input    unit.Power  // 0: 5,000 Btu/h a suite
	Hot      unit.Temperature
	Mixed    unit.Temperature // 0: no mixing valve
	OwnPlant bool             // each zone has its own heater on its lowest level; else all stand on the lowest level of all
	Loop     bool
}

// Bounds of an outline.
const (
	maxSuites   = 200
	usualSwing  = 8 * unit.PSI
	tankStands  = 10 * unit.Foot // above the roof
	shutOffOver = 1.2            // of a booster: shut-off over duty
)

// Suite is what one suite, room, bed or washroom asks for.
type Suite struct {
	Use  Use
	Name string // "suites"
	Load
	FlushValve bool
}

// Suites are sums of rows of the IPC's table of fixture units: an apartment is
// a bathroom group, a kitchen sink and a dishwasher. What belongs to a suite is
// common practice, no source.
var Suites = []Suite{
	{Apartment, "suites", Load{3.7, 3.9, 6.4}, false},
	{Hotel, "rooms", Load{2.7, 1.5, 3.6}, false},
	{Hospital, "beds", Load{6, 3, 8}, true},
	{Residence, "rooms", Load{2.7, 1.5, 3.6}, false},
	{Office, "washrooms", Load{33, 4.5, 36}, true},
	{MixedUse, "suites", Load{3.7, 3.9, 6.4}, false},
}

// SuiteOf is the suite of a use; that of apartments where it has none.
func SuiteOf(use Use) Suite {
	for _, s := range Suites {
		if s.Use == use {
			return s
		}
	}
	return Suites[0]
}

// Templates are outlines to begin from, by name.
var Templates = []struct {
	Name string
	Outline
}{
	{"walk-up", Outline{Use: Apartment, Storeys: 3, Floor: 9 * unit.Foot, Static: 62 * unit.PSI, Losses: Losses{Meter: 5 * unit.PSI, Backflow: 5 * unit.PSI, Strainer: 2 * unit.PSI}, Suites: 4, Risers: 1, Heater: true, Hot: unit.Fahrenheit(140), Mixed: unit.Fahrenheit(130), Loop: true}},
	{"mid-rise", Outline{Use: Apartment, Storeys: 14, Below: 1, First: 13 * unit.Foot, Floor: 9 * unit.Foot, Static: 62 * unit.PSI, Losses: Losses{Meter: 6 * unit.PSI, Backflow: 10 * unit.PSI, Strainer: 2 * unit.PSI}, Suites: 8, Risers: 2, Booster: true, Zoned: true, FallOff: 8 * unit.PSI, Heater: true, Hot: unit.Fahrenheit(140), Mixed: unit.Fahrenheit(130), Loop: true}},
	{"tower", Outline{Use: Apartment, Storeys: 60, Below: 3, First: 16 * unit.Foot, Floor: 9.5 * unit.Foot, Static: 65 * unit.PSI, Losses: Losses{Meter: 6 * unit.PSI, Backflow: 10 * unit.PSI, Strainer: 2 * unit.PSI}, Suites: 8, Risers: 4, Booster: true, Lifts: 2, Zoned: true, FallOff: 8 * unit.PSI, Heater: true, Hot: unit.Fahrenheit(140), Mixed: unit.Fahrenheit(130), OwnPlant: true, Loop: true}},
	{"house tank", Outline{Use: Residence, Storeys: 20, Below: 1, First: 13 * unit.Foot, Floor: 9.5 * unit.Foot, Static: 60 * unit.PSI, Losses: Losses{Meter: 6 * unit.PSI, Backflow: 10 * unit.PSI, Strainer: 2 * unit.PSI}, Suites: 10, Risers: 2, Booster: true, Tank: true, Zoned: true, FallOff: 8 * unit.PSI, Heater: true, Hot: unit.Fahrenheit(140), Mixed: unit.Fahrenheit(130), OwnPlant: true, Loop: true}},
	{"hotel", Outline{Use: Hotel, Storeys: 18, Below: 1, First: 16 * unit.Foot, Floor: 9.5 * unit.Foot, Static: 60 * unit.PSI, Losses: Losses{Meter: 6 * unit.PSI, Backflow: 10 * unit.PSI, Strainer: 2 * unit.PSI}, Suites: 16, Risers: 4, Booster: true, Zoned: true, FallOff: 8 * unit.PSI, Heater: true, Hot: unit.Fahrenheit(140), Mixed: unit.Fahrenheit(130), OwnPlant: true, Loop: true}},
	{"hospital", Outline{Use: Hospital, Storeys: 8, Below: 1, First: 16 * unit.Foot, Floor: 14 * unit.Foot, Static: 60 * unit.PSI, Losses: Losses{Meter: 6 * unit.PSI, Backflow: 12 * unit.PSI, Strainer: 2 * unit.PSI}, Suites: 24, Risers: 6, Booster: true, Zoned: true, FallOff: 8 * unit.PSI, Heater: true, Hot: unit.Fahrenheit(140), Mixed: unit.Fahrenheit(130), OwnPlant: true, Loop: true}},
}

// TemplateNamed is the outline of a name, with parts of its own.
func TemplateNamed(name string) (Outline, bool) {
	for _, t := range Templates {
		if t.Name == name {
			return t.Outline, true
		}
	}
	return Outline{}, false
}

func (o Outline) check() error {
	switch {
	case o.Storeys < 1 || o.Storeys+o.Below > maxStoreys-1 || o.Below < 0:
		return fmt.Errorf("solver: %d storeys and %d levels below, expected 1 storey or more, and %d levels at most", o.Storeys, o.Below, maxStoreys-1)
	case !(o.Floor > 0 && o.Floor <= 100*unit.Metre) || !(o.First >= 0 && o.First <= 100*unit.Metre) || !(o.Under >= 0 && o.Under <= 100*unit.Metre):
		return fmt.Errorf("solver: floors of %.4g, %.4g and %.4g m, expected more than 0 and at most 100 m", o.Floor, o.First, o.Under)
	case !(o.Static > 0 && o.Static <= maxPress) || !(o.Low >= 0 && o.Low <= o.Static):
		return fmt.Errorf("solver: a street of %.4g kPa, at the lowest %.4g kPa, expected more than 0, and the lowest no higher", o.Static/unit.Kilopascal, o.Low/unit.Kilopascal)
	case o.Suites < 0 || o.Suites > maxSuites || o.Risers < 0 || o.Risers > maxRisers || o.Lifts < 0 || o.Lifts > 3:
		return fmt.Errorf("solver: %d %s a floor, %d risers and %d lifts, expected 0 to %d, %d and 3", o.Suites, SuiteOf(o.Use).Name, o.Risers, o.Lifts, maxSuites, maxRisers)
	case !(o.Boost >= 0 && o.Boost <= maxPress) || !(o.FallOff >= 0 && o.FallOff <= maxPress):
		return fmt.Errorf("solver: a boost of %.4g kPa and a fall-off of %.4g kPa, expected 0 to 10,000 kPa", o.Boost/unit.Kilopascal, o.FallOff/unit.Kilopascal)
	}
	for _, s := range o.Set {
		if !(s >= 0 && s <= maxPress) {
			return fmt.Errorf("solver: a valve is set to %.4g kPa, expected 0 to 10,000 kPa", s/unit.Kilopascal)
		}
	}
	return nil
}

// Building lays the outline out under the settings: levels, loads, zones with
// their valves, pumps with as much boost as it takes, heaters.
func (o Outline) Building(s Settings) (*Building, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	s = s.filled()
	if s.Profile != nil {
		s.TopMin = max(s.TopMin, unit.Pressure(s.Profile.ShowerMin.Highest()))
	}
	b := o.levels()
	if err := b.Check(); err != nil {
		return nil, err
	}
	o.supplies(b, s)
	if o.Heater && o.Suites > 0 {
		o.heater(b)
	}
	if err := b.Check(); err != nil {
		return nil, err
	}
	return b, o.boost(b, s)
}

func (o Outline) levels() *Building {
	b := &Building{Use: o.Use, Ground: o.Below, HighOutlet: 6.5 * unit.Foot, LowOutlet: 0.7 * unit.Foot, Losses: o.Losses, Limited: true}
	under, first := orUsual(o.Under, 10*unit.Foot), orUsual(o.First, o.Floor)
	at := -under * unit.Length(o.Below)
	add := func(label string, role Role, h unit.Length, load Load) {
		b.Levels = append(b.Levels, Level{Label: label, Role: role, Elevation: at, Height: h})
		at += h
		if role != Roof && o.Suites > 0 {
			b.Loads = append(b.Loads, load)
		}
	}
	for i := o.Below; i > 0; i-- {
		add("P"+strconv.Itoa(i), Parking, under, Load{})
	}
	suite := SuiteOf(o.Use)
	n := float64(o.Suites)
	load := Load{n * suite.Cold, n * suite.Hot, n * suite.Total}
	if !o.Heater {
		load.Cold, load.Hot = load.Total, 0
	}
	b.FlushValve = suite.FlushValve
	for i := range o.Storeys {
		role, h := Typical, o.Floor
		if i == 0 {
			role, h = GroundRole, first
		}
		add(strconv.Itoa(i+1), role, h, load)
	}
	add("Roof", Roof, 0, Load{})
	low := o.Low
	if low == 0 {
		low = max(0.5*o.Static, o.Static-usualSwing)
	}
	b.Street = Street{Static: o.Static, Low: low, GaugeAt: b.Levels[0].Elevation, GaugeName: "on the gauge in the meter room", MainDepth: 6 * unit.Foot}
	b.Piping.Risers = o.Risers
	if o.Risers == 0 {
		b.Piping.Risers = max(1, (o.Suites+3)/4)
	}
	b.Friction = UsualPiping.Friction
	return b
}

// heater puts the plant in: on the lowest level of all, or on the lowest of
// each zone.
func (o Outline) heater(b *Building) {
	suites := float64(o.Suites * o.Storeys)
	b.Heater = &Heater{
		Elevation: b.Levels[0].Elevation, Volume: orUsual(o.Volume, unit.Volume(40*suites)*unit.USGallon), Input: orUsual(o.Input, unit.Power(5000*suites)*unit.BtuHour),
		Efficiency: 0.8, Cold: unit.Fahrenheit(50), Hot: orUsual(o.Hot, unit.Fahrenheit(140)), Rating: 150 * unit.PSI, Loss: 3 * unit.PSI,
	}
	if o.Mixed > 0 {
		b.Mixing = &MixingValve{o.Mixed}
	}
	if o.OwnPlant {
		for i := range b.Zones {
			at := b.Levels[b.Zones[i].Bottom].Elevation
			b.Zones[i].Plant = &at
		}
	}
	if o.Loop {
		b.Loop = &Loop{Drop: usualDrop, ValveInLoop: 5 * unit.PSI}
	}
}

// boost gives each pump as much as the worst outlet behind it needs, in whole
// psi, the lowest set first.
func (o Outline) boost(b *Building, s Settings) error {
	sets := len(b.Lifts)
	if b.Booster != nil {
		sets++
	}
	for k := range sets {
		w, err := SolveWhole(b, Case{Settings: s})
		if err != nil {
			return err
		}
		need := Upward(max(unit.PSI, w.Pumps[k].Needed), unit.PSI)
		shut := unit.Pressure(math.Round(float64(need*shutOffOver/unit.PSI))) * unit.PSI
		if k == 0 && b.Booster != nil {
			if o.Boost > 0 {
				need, shut = o.Boost, o.Boost*shutOffOver
			}
			b.Booster.Boost, b.Booster.ShutOff = need, shut
			continue
		}
		l := &b.Lifts[k-(sets-len(b.Lifts))]
		l.Boost, l.ShutOff = need, shut
	}
	return nil
}
