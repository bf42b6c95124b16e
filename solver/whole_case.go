package solver

import (
	"errors"
	"fmt"

	"riserwork/solver/unit"
)

var errNoBuilding = errors.New("solver: there is no building, expected one")

// seaLevel is the pressure of the standard atmosphere.
const seaLevel = 101_325 * unit.Pascal

// maxOpen is how many groups of taps may be open; a building has more
// fixtures, but they do not run at once.
const maxOpen = 500

func (c Case) check(b *Building) error {
	if !(c.Street >= 0 && c.Street <= maxPress) {
		return fmt.Errorf("solver: street pressure %.4g kPa, expected 0 to 10,000 kPa", c.Street/unit.Kilopascal)
	}
	if !(c.Gamma >= 0 && c.Gamma <= 10*WaterColumn && c.TopMin >= 0 && c.TopMin <= maxPress && c.Air >= 0 && c.Air <= maxPress) {
		return fmt.Errorf("solver: settings of %.4g kPa/m, %.4g kPa at the top and %.4g kPa of air, expected 0 or more", c.Gamma/1000, c.TopMin/unit.Kilopascal, c.Air/unit.Kilopascal)
	}
	if len(c.Open) > maxOpen {
		return fmt.Errorf("solver: %d open taps, expected at most %d", len(c.Open), maxOpen)
	}
	for _, o := range c.Open {
		if err := checkTap(b, o.Level, o.Tap); err != nil {
			return err
		}
		if o.Count < 0 || o.Count > 1000 {
			return fmt.Errorf("solver: %d of %s open on level %s, expected 0 to 1,000", o.Count, o.Tap.Name, b.Levels[o.Level].Label)
		}
	}
	if c.Shut != nil {
		return checkTap(b, c.Shut.Level, c.Shut.Tap)
	}
	return nil
}

func checkTap(b *Building, level int, t Tap) error {
	if level < 0 || level >= len(b.Levels)-1 {
		return fmt.Errorf("solver: a tap on level index %d, expected 0 to %d", level, len(b.Levels)-2)
	}
	if !(t.Flow > 0 && t.Flow <= unit.CubicMetrePerSec && t.At > 0 && t.At <= maxPress) {
		return fmt.Errorf("solver: a tap that gives %.4g L/s at %.4g kPa, expected more than 0 of both", t.Flow/unit.LitrePerSecond, t.At/unit.Kilopascal)
	}
	return nil
}

// filled is the case with what it leaves open.
func (c Case) filled(b *Building) Case {
	c.Settings = c.Settings.filled()
	if c.Street == 0 {
		c.Street = b.Street.Low
	}
	if c.Air == 0 {
		c.Air = seaLevel
	}
	return c
}

// filled is a copy of the building with what it leaves open: one zone where
// none is told, usual piping, and a heater's usual temperatures.
func (b *Building) filled() *Building {
	c := b.Copy()
	if len(c.Zones) == 0 {
		z := Zone{Name: "all", Bottom: c.Ground, Top: c.Top(), Supply: FromStreet}
		switch {
		case c.Header != nil:
			z.Supply = FromHeader
		case c.Booster != nil:
			z.Supply = FromBooster
		}
		c.Zones = []Zone{z}
	}
	c.Piping = c.Piping.filled()
	if h := c.Heater; h != nil {
		if h.Hot == 0 || h.Cold == 0 {
			h.Cold, h.Hot = unit.Fahrenheit(50), unit.Fahrenheit(140)
		}
		h.Efficiency = orUsual(h.Efficiency, 0.8)
		h.Rating = orUsual(h.Rating, 150*unit.PSI)
		h.Relief = orUsual(h.Relief, h.Rating)
	}
	if p := c.Booster; p != nil {
		p.ShutOff = max(p.ShutOff, p.Boost)
	}
	for i := range c.Lifts {
		c.Lifts[i].ShutOff = max(c.Lifts[i].ShutOff, c.Lifts[i].Boost)
	}
	return c
}

// loaded reports whether the fixtures are told.
func (b *Building) loaded() bool { return len(b.Loads) > 0 }
