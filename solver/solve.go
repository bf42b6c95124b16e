package solver

import (
	"fmt"

	"riserwork/solver/unit"
)

// Settings are what a school or a code decides about a solution.
type Settings struct {
	Gamma   unit.Gradient // pressure per height of water; zero means WaterColumn
	Profile *Profile      // nil: no limits are checked
	TopMin  unit.Pressure // to be left at the highest outlet; zero: the profile's
}

// LevelPressure is what stands at one level with no water flowing.
type LevelPressure struct {
	Level   int // index into Building.Levels
	Zone    int // index into Building.Zones; -1 where no zone feeds it
	Street  unit.Pressure
	Floor   unit.Pressure // at the height of the floor itself
	Highest unit.Pressure // at the highest outlet
	Lowest  unit.Pressure // at the lowest outlet
}

// Breach is one limit that the building does not keep.
type Breach struct {
	Level int
	Says  string
}

// Solution is the building worked out.
type Solution struct {
	Levels    []LevelPressure
	Reach     unit.Length   // above the street gauge, keeping TopMin after the entry's losses
	FirstLow  int           // index of the first level whose highest outlet the street alone leaves short; -1: none
	TopOnly   unit.Pressure // at the highest outlet from the street alone, after losses
	Shortfall unit.Pressure // what is missing there of TopMin; 0: nothing
	Breaches  []Breach
}

// Solve works out the static pressures of a building, where the street
// pressure runs out, and which limits are not kept. It refuses an impossible
// building with the reason.
func Solve(b *Building, s Settings) (*Solution, error) {
	if err := b.Check(); err != nil {
		return nil, err
	}
	s = s.filled()
	if err := checkValves(b, s.Gamma); err != nil {
		return nil, err
	}
	return solve(b, s), nil
}

// filled are the settings with what they leave open.
func (s Settings) filled() Settings {
	if s.Gamma == 0 {
		s.Gamma = WaterColumn
	}
	if s.TopMin == 0 && s.Profile != nil {
		s.TopMin = unit.Pressure(s.Profile.TopMin.Lowest())
	}
	return s
}

// solve is Solve for a building that can be.
func solve(b *Building, s Settings) *Solution {
	sol := &Solution{FirstLow: -1}
	sol.Reach = Reach(b.Street.Low-b.Losses.Total(), s.TopMin, s.Gamma)
	for i := range b.Levels[:len(b.Levels)-1] {
		sol.Levels = append(sol.Levels, levelPressure(b, i, s.Gamma))
		if sol.FirstLow < 0 && i >= b.Ground && b.Highest(i)-b.Street.GaugeAt > sol.Reach+1e-9 {
			sol.FirstLow = i
		}
	}
	sol.TopOnly = FloorPressure(b.Street.Low-b.Losses.Total(), s.Gamma, b.Highest(b.Top())-b.Street.GaugeAt)
	sol.Shortfall = max(0, s.TopMin-sol.TopOnly)
	if s.Profile != nil {
		sol.Breaches = breaches(b, sol, s)
	}
	return sol
}

// At is the static pressure at an elevation of level i, through its zone.
func (b *Building) At(i int, at unit.Length, gamma unit.Gradient) unit.Pressure {
	z := b.zoneOf(i)
	if z < 0 {
		return FloorPressure(b.Street.Static, gamma, at-b.Street.GaugeAt)
	}
	zone := b.Zones[z]
	if v := zone.Valve; v != nil {
		out := min(v.Setting, b.zoneSupply(zone, v.Elevation, gamma))
		return FloorPressure(out, gamma, at-v.Elevation)
	}
	return b.zoneSupply(zone, at, gamma)
}

// zoneSupply is the static pressure that the supply of a zone gives at an
// elevation, before its reducing valve.
func (b *Building) zoneSupply(z Zone, at unit.Length, gamma unit.Gradient) unit.Pressure {
	if z.Supply == FromLift {
		return b.liftAt(z.Lift, at, gamma)
	}
	return b.supplyAt(z.Supply, at, gamma)
}

// liftAt is the static pressure that lift k gives at an elevation: its shut-off
// boost over what it draws from.
func (b *Building) liftAt(k int, at unit.Length, gamma unit.Gradient) unit.Pressure {
	l := b.Lifts[k]
	var suction unit.Pressure
	switch {
	case l.BreakTank:
	case l.From >= 0:
		suction = b.liftAt(l.From, l.Elevation, gamma)
	default:
		suction = b.supplyAt(FromBooster, l.Elevation, gamma)
	}
	return FloorPressure(suction+l.ShutOff, gamma, at-l.Elevation)
}

// supplyAt is the static pressure that a supply gives at an elevation, before
// any reducing valve. The booster stands at its shut-off boost over the
// highest street pressure: the worst case for what it feeds.
func (b *Building) supplyAt(s Supply, at unit.Length, gamma unit.Gradient) unit.Pressure {
	switch s {
	case FromHeader:
		return FloorPressure(b.Header.Pressure, gamma, at-b.Header.Elevation)
	case FromBooster:
		if b.Booster.BreakTank {
			return FloorPressure(b.Booster.ShutOff, gamma, at-b.Booster.Elevation)
		}
		return FloorPressure(b.Street.Static+b.Booster.ShutOff, gamma, at-b.Street.GaugeAt)
	}
	return FloorPressure(b.Street.Static, gamma, at-b.Street.GaugeAt)
}

func (b *Building) zoneOf(i int) int {
	for z, zone := range b.Zones {
		if i >= zone.Bottom && i <= zone.Top {
			return z
		}
	}
	return -1
}

func levelPressure(b *Building, i int, gamma unit.Gradient) LevelPressure {
	return LevelPressure{
		Level: i, Zone: b.zoneOf(i),
		Street:  FloorPressure(b.Street.Static, gamma, b.Levels[i].Elevation-b.Street.GaugeAt),
		Floor:   b.At(i, b.Levels[i].Elevation, gamma),
		Highest: b.At(i, b.Highest(i), gamma),
		Lowest:  b.At(i, b.Lowest(i), gamma),
	}
}

func checkValves(b *Building, gamma unit.Gradient) error {
	for _, z := range b.Zones {
		if z.Valve == nil {
			continue
		}
		if in := b.zoneSupply(z, z.Valve.Elevation, gamma); z.Valve.Setting > in {
			return fmt.Errorf("solver: reducing valve of zone %s is set to %.4g kPa, above the %.4g kPa at its inlet",
				z.Name, z.Valve.Setting/unit.Kilopascal, in/unit.Kilopascal)
		}
	}
	return nil
}

// breaches lists the limits of the profile that the zones do not keep. A
// limit is kept where either of its two prints is.
func breaches(b *Building, sol *Solution, s Settings) []Breach {
	var out []Breach
	static := s.Profile.StaticMax
	most := static.Highest()
	for _, l := range sol.Levels {
		label := b.Levels[l.Level].Label
		if !static.Keeps(float64(l.Lowest), most) {
			out = append(out, Breach{l.Level, fmt.Sprintf("level %s: %s at its lowest outlet with no flow, over the %s (%s) of %s",
				label, both(l.Lowest), static.US.Text(3), static.SI.Text(3), s.Profile.Name)})
		}
		if l.Level >= b.Ground && l.Highest < s.TopMin-1e-6 {
			out = append(out, Breach{l.Level, fmt.Sprintf("level %s: %s at its highest outlet with no flow, under the %s to be kept",
				label, both(l.Highest), both(s.TopMin))})
		}
	}
	return out
}

// both prints a pressure in the two units of gauges: "84 psi (579 kPa)".
func both(p unit.Pressure) string {
	return fmt.Sprintf("%.0f\u00a0psi (%.0f\u00a0kPa)", p/unit.PSI, p/unit.Kilopascal)
}
