package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// Bounds of the parts of a building.
const (
	maxRisers = 50
	maxLoad   = 5000 // fixture units of a level; the demand tables end there
)

// checkFigures refuses a figure that is no number. What is out of bounds is
// said by the check of its part.
func (b *Building) checkFigures() error {
	list := []figure{
		{"the highest outlet", float64(b.HighOutlet)}, {"the lowest outlet", float64(b.LowOutlet)},
		{"the street pressure", float64(b.Street.Static)}, {"the lowest street pressure", float64(b.Street.Low)},
		{"the elevation of the street gauge", float64(b.Street.GaugeAt)}, {"the depth of the main", float64(b.Street.MainDepth)},
		{"the loss of the meter", float64(b.Losses.Meter)}, {"the loss of the backflow preventer", float64(b.Losses.Backflow)},
		{"the loss of the strainer", float64(b.Losses.Strainer)}, {"the friction of the riser", float64(b.Friction)},
		{"the offset of the risers", float64(b.Piping.Offset)}, {"the length of a branch", float64(b.Piping.Branch)},
		{"the allowance for fittings", b.Piping.Fittings}, {"the C of the pipes", b.Piping.C},
		{"the friction to size by", float64(b.Piping.Friction)}, {"the speed of cold water", float64(b.Piping.Cold)}, {"the speed of hot water", float64(b.Piping.Hot)},
	}
	for _, l := range b.Levels {
		list = append(list, figure{"the elevation of level " + l.Label, float64(l.Elevation)}, figure{"the height of level " + l.Label, float64(l.Height)})
	}
	if p := b.Booster; p != nil {
		list = append(list, figure{"the elevation of the booster", float64(p.Elevation)}, figure{"the boost", float64(p.Boost)}, figure{"the shut-off boost", float64(p.ShutOff)},
			figure{"the cut-in", float64(p.CutIn)}, figure{"the cut-out", float64(p.CutOut)}, figure{"the booster's tank", float64(p.Tank)})
	}
	if h := b.Header; h != nil {
		list = append(list, figure{"the elevation of the header", float64(h.Elevation)}, figure{"the pressure of the header", float64(h.Pressure)}, figure{"the volume of the tank", float64(h.Volume)})
	}
	for _, z := range b.Zones {
		if v := z.Valve; v != nil {
			list = append(list, figure{"the elevation of the valve of zone " + z.Name, float64(v.Elevation)}, figure{"the setting of zone " + z.Name, float64(v.Setting)}, figure{"the fall-off of zone " + z.Name, float64(v.FallOff)})
		}
		if z.Plant != nil {
			list = append(list, figure{"the elevation of the heater of zone " + z.Name, float64(*z.Plant)})
		}
	}
	if h := b.Heater; h != nil {
		list = append(list, figure{"the elevation of the heater", float64(h.Elevation)}, figure{"the volume of the heater", float64(h.Volume)}, figure{"the input of the heater", float64(h.Input)},
			figure{"the efficiency of the heater", h.Efficiency}, figure{"the cold water's temperature", float64(h.Cold)}, figure{"the hot water's temperature", float64(h.Hot)},
			figure{"the rating of the heater", float64(h.Rating)}, figure{"the loss through the heater", float64(h.Loss)}, figure{"the relief setting", float64(h.Relief)},
			figure{"the relief valve's heat", float64(h.ReliefHeat)}, figure{"the expansion tank", float64(h.Tank)}, figure{"the day's hot water", float64(h.Day)})
	}
	if b.Mixing != nil {
		list = append(list, figure{"the mixed temperature", float64(b.Mixing.Mixed)})
	}
	if l := b.Loop; l != nil {
		list = append(list, figure{"the supply of the loop", float64(l.Supply)}, figure{"the return of the loop", float64(l.Return)}, figure{"the loss of the supply", l.SupplyLoss},
			figure{"the loss of the return", l.ReturnLoss}, figure{"the drop of the loop", float64(l.Drop)}, figure{"the valve in the loop", float64(l.ValveInLoop)})
	}
	for _, l := range b.Lifts {
		list = append(list, figure{"the elevation of lift " + l.Name, float64(l.Elevation)}, figure{"the boost of lift " + l.Name, float64(l.Boost)}, figure{"the shut-off boost of lift " + l.Name, float64(l.ShutOff)})
	}
	for _, l := range b.Loads {
		list = append(list, figure{"a fixture load", l.Cold}, figure{"a fixture load", l.Hot}, figure{"a fixture load", l.Total})
	}
	for _, f := range list {
		if math.IsNaN(f.value) || math.Abs(f.value) > 1e12 {
			return fmt.Errorf("solver: %s is %g, expected a number of a building", f.name, f.value)
		}
	}
	return nil
}

// checkParts refuses parts of a building that cannot be.
func (b *Building) checkParts() error {
	if b.HighOutlet < b.LowOutlet || b.LowOutlet < 0 || b.HighOutlet > 100*unit.Metre {
		return fmt.Errorf("solver: outlets from %.4g to %.4g m above their floor, expected the lowest first and none below the floor", b.LowOutlet, b.HighOutlet)
	}
	if d := b.Street.GaugeAt; d < -maxHeight || d > maxHeight {
		return fmt.Errorf("solver: the street gauge is at %.4g m, expected within %g m of level 1", d, maxHeight)
	}
	if l := b.Losses; l.Total() > maxPress {
		return fmt.Errorf("solver: the entry loses %.4g kPa, expected at most 10,000 kPa", l.Total()/unit.Kilopascal)
	}
	if len(b.Loads) > 0 && len(b.Loads) != len(b.Levels)-1 {
		return fmt.Errorf("solver: loads of %d levels, expected of each of the %d below the roof", len(b.Loads), len(b.Levels)-1)
	}
	for i, l := range b.Loads {
		if l.Cold < 0 || l.Hot < 0 || l.Total > maxLoad || l.Total < max(l.Cold, l.Hot) {
			return fmt.Errorf("solver: level %s has %.4g fixture units cold, %.4g hot and %.4g in all, expected 0 to %d, and in all no less than either", b.Levels[i].Label, l.Cold, l.Hot, l.Total, maxLoad)
		}
	}
	return firstError(b.checkPiping, b.checkPumps, b.checkHot)
}

func firstError(checks ...func() error) error {
	for _, c := range checks {
		if err := c(); err != nil {
			return err
		}
	}
	return nil
}

func (b *Building) checkPiping() error {
	p := b.Piping.filled()
	if p.Risers < 1 || p.Risers > maxRisers {
		return fmt.Errorf("solver: %d risers, expected 1 to %d", p.Risers, maxRisers)
	}
	for _, l := range []unit.Length{p.Offset, p.Branch} {
		if l < 0 || l > 10*maxHeight {
			return fmt.Errorf("solver: a pipe of %.4g m, expected 0 to %g m", l, 10*maxHeight)
		}
	}
	if p.Fittings < 0 || p.Fittings > 10 || p.C < 10 || p.C > 200 {
		return fmt.Errorf("solver: an allowance of %.4g for fittings and a C of %.4g, expected 0 to 10, and 10 to 200", p.Fittings, p.C)
	}
	if p.Friction <= 0 || p.Cold <= 0 || p.Hot <= 0 {
		return fmt.Errorf("solver: pipes sized by %.4g kPa/m, %.4g and %.4g m/s, expected more than 0", p.Friction/1000, p.Cold, p.Hot)
	}
	return nil
}

func (b *Building) checkPumps() error {
	if p := b.Booster; p != nil {
		if err := checkPump("the booster", p.Elevation, p.Boost, p.ShutOff, p.Curve); err != nil {
			return err
		}
		if p.CutIn < 0 || p.CutIn > 0 && p.CutOut <= p.CutIn || p.Tank < 0 {
			return fmt.Errorf("solver: the booster starts at %.4g kPa and stops at %.4g kPa, expected to stop higher", p.CutIn/unit.Kilopascal, p.CutOut/unit.Kilopascal)
		}
	}
	if h := b.Header; h != nil && (h.Pressure < 0 || h.Pressure > maxPress || h.Elevation < -maxHeight || h.Elevation > maxHeight || h.Volume < 0) {
		return fmt.Errorf("solver: the header is at %.4g m under %.4g kPa, expected within %g m of level 1, and 0 to 10,000 kPa", h.Elevation, h.Pressure/unit.Kilopascal, maxHeight)
	}
	for i, l := range b.Lifts {
		if l.From < -1 || l.From >= i {
			return fmt.Errorf("solver: lift %s draws from lift %d, expected one below it", l.Name, l.From+1)
		}
		if l.From < 0 && b.Booster == nil && !l.BreakTank {
			return fmt.Errorf("solver: lift %s draws from a booster, and the building has none", l.Name)
		}
		if err := checkPump("lift "+l.Name, l.Elevation, l.Boost, l.ShutOff, l.Curve); err != nil {
			return err
		}
	}
	return nil
}

func checkPump(name string, at unit.Length, boost, shut unit.Pressure, curve *PumpCurve) error {
	if at < -maxHeight || at > maxHeight {
		return fmt.Errorf("solver: %s stands at %.4g m, expected within %g m of level 1", name, at, maxHeight)
	}
	if curve != nil {
		if err := (Pump{*curve}).check(); err != nil {
			return fmt.Errorf("solver: %s: %w", name, err)
		}
		return nil
	}
	if boost < 0 || shut < 0 || boost > maxPress || shut > maxPress {
		return fmt.Errorf("solver: %s adds %.4g kPa at its duty and %.4g kPa at no flow, expected 0 to 10,000 kPa", name, boost/unit.Kilopascal, shut/unit.Kilopascal)
	}
	return nil
}

func (b *Building) checkHot() error {
	if h := b.Heater; h != nil {
		if b.Heater.Volume < 0 || h.Input < 0 || h.Efficiency < 0 || h.Efficiency > 1.0001 || h.Loss < 0 || h.Rating < 0 || h.Day < 0 || h.Tank < 0 {
			return fmt.Errorf("solver: the heater holds %.4g L, takes %.4g kW at %.4g efficiency, expected 0 or more, and 0 to 1", h.Volume/unit.Litre, h.Input/1000, h.Efficiency)
		}
		// A temperature of nought on the absolute scale was not told.
		cold, hot := h.Cold != 0, h.Hot != 0
		if cold && h.Cold < unit.Celsius(-1e-6) || hot && h.Hot > unit.Celsius(100) || cold && hot && h.Hot <= h.Cold {
			return fmt.Errorf("solver: water of %.4g °C is heated to %.4g °C, expected 0 to 100 °C, and hot above cold", h.Cold.Celsius(), h.Hot.Celsius())
		}
	}
	if l := b.Loop; l != nil {
		if l.Supply < 0 || l.Return < 0 || l.Supply > 100*maxHeight || l.Return > 100*maxHeight || l.SupplyLoss < 0 || l.ReturnLoss < 0 || l.Drop < 0 || l.Risers < 0 || l.Risers > maxRisers || l.ValveInLoop < 0 {
			return fmt.Errorf("solver: a loop of %.4g m out and %.4g m back with a drop of %.4g K, expected 0 or more, and at most %d risers", l.Supply, l.Return, l.Drop, maxRisers)
		}
		if l.Pump != nil {
			if err := (Pump{*l.Pump}).check(); err != nil {
				return fmt.Errorf("solver: the circulator: %w", err)
			}
		}
	}
	return nil
}
