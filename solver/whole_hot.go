package solver

import (
	"math"

	"riserwork/solver/unit"
)

// HotWater is what makes the building's hot water, all plants together.
type HotWater struct {
	Units     float64   // hot fixture units
	Demand    unit.Flow // of them: what the heater must let through
	Delivered unit.Temperature
	HotPart   float64          // share of stored water in what is delivered; 1 without a mixing valve
	Recovery  unit.Flow        // that the input warms from cold to hot
	AtDemand  unit.Temperature // that the input alone would give at the demand
	Day       unit.Volume      // of delivered water in a day
	Hours     [24]unit.Volume  // of it, hour by hour
	Stored    [24]unit.Volume  // left hot at the end of each hour
	Store     StoreDay         // the same as heat
	Lowest    unit.Volume      // least that is left hot
	Missing   unit.Volume      // of delivered water that a day falls short by
	PerVolume float64          // heat of water, J/(m3 K)
	Rise      unit.TempDifference
	Plants    []PlantWater // each heater, where it stands
}

// PlantWater is the heater of one zone, or of all that share the building's.
type PlantWater struct {
	Zone      int           // that it feeds
	At        unit.Length   // elevation
	Share     float64       // of the building's hot units
	Working   unit.Pressure // in it, no flow
	Grows     unit.Volume   // water that warming makes more of: heater and hot pipe
	Content   unit.Volume   // of heater and hot pipe
	Tank      unit.Volume   // expansion tank that keeps it under Cap; infinite where none does
	Cap       unit.Pressure // highest pressure that the warmed water may have
	WarmedTo  unit.Pressure // with the tank told; 0: none told
	MinRelief unit.Power    // that its relief valve must pass: its input
}

// usableShare is how much of a store comes out hot; common practice, no source.
const usableShare = 0.75

// startShare is how full the store still is when its heater starts; common
// practice, no source.
const startShare = 0.8

// dayPerUnit is the warm water in a day for each hot fixture unit; common
// practice, no source.
func dayPerUnit(use Use) unit.Volume {
	switch use {
	case Hotel:
		return 16 * unit.USGallon
	case Residence:
		return 13 * unit.USGallon
	case Office:
		return 5 * unit.USGallon
	}
	return 9.5 * unit.USGallon
}

// roomTemperature is the air around pipes, that of the table of heat losses.
var roomTemperature = unit.Fahrenheit(70)

// heat works the heater, its day, expansion and the loops out.
func (w *Whole) heat(t *tree) error {
	b := t.b
	if b.Heater == nil {
		return nil
	}
	cold, err := WaterAt(unit.Celsius(15))
	if err != nil {
		return err
	}
	h := b.Heater
	hot := &HotWater{PerVolume: cold.Density * cold.Heat, Delivered: b.delivered(), Rise: unit.TempDifference(h.Hot - h.Cold)}
	w.Hot = hot
	hot.HotPart = HotShare(hot.Delivered, h.Cold, h.Hot)
	hot.Recovery = Recovery(h.Input, h.Efficiency, hot.PerVolume, hot.Rise)
	for z := range b.Zones {
		if t.hotZone(z) {
			hot.Units += t.hotUnits(z)
		}
	}
	hot.Demand, _ = demandOf(TankCurve, math.Min(hot.Units, maxLoad))
	if hot.Demand > 0 {
		hot.AtDemand = h.Cold + unit.Temperature(RiseAtFlow(h.Input, h.Efficiency, hot.PerVolume, hot.Demand))
	}
	if err := w.loops(t); err != nil {
		return err
	}
	w.day(t)
	return w.plants(t)
}

func (t *tree) hotUnits(z int) float64 {
	sum := 0.0
	for i := t.b.Zones[z].Bottom; i <= t.b.Zones[z].Top; i++ {
		sum += t.b.Loads[i].Hot
	}
	return sum
}

// day follows the store through the draws of a day that has been before: it
// starts as full as it ends.
func (w *Whole) day(t *tree) {
	h, hot := t.b.Heater, w.Hot
	hot.Day = h.Day
	if hot.Day == 0 {
		hot.Day = dayPerUnit(t.b.Use) * unit.Volume(hot.Units)
	}
	warm := float64(hot.Delivered - h.Cold)
	s := Store{Full: hot.PerVolume * float64(h.Volume) * usableShare * float64(hot.Rise), Input: h.Input * unit.Power(h.Efficiency)}
	s.On, s.Start = startShare*s.Full, s.Full
	for _, l := range w.Loops {
		s.Losses += l.Heat
	}
	for i, share := range DayDrawOf(t.b.Use) {
		hot.Hours[i] = hot.Day * unit.Volume(share)
		s.Draw[i] = hot.PerVolume * float64(hot.Hours[i]) * warm / 3600
	}
	before := s.Day()
	s.Start = before.Left[23]
	hot.Store = s.Day()
	perVolume := hot.PerVolume * float64(hot.Rise)
	for i, left := range hot.Store.Left {
		hot.Stored[i] = unit.Volume(left / perVolume)
	}
	hot.Lowest = unit.Volume(hot.Store.Lowest / perVolume)
	hot.Missing = unit.Volume(hot.Store.Short / (hot.PerVolume * warm))
}

// plants works out the pressure in each heater and the room its water needs.
func (w *Whole) plants(t *tree) error {
	h := t.b.Heater
	coldWater, err := WaterAt(h.Cold)
	if err != nil {
		return err
	}
	hotWater, err := WaterAt(h.Hot)
	if err != nil {
		return err
	}
	for z := range t.b.Zones {
		zone := t.b.Zones[z]
		if t.b.loaded() && !t.hotZone(z) {
			continue
		}
		p := PlantWater{Zone: z, At: h.Elevation, Share: 1, Cap: h.Rating - reliefRoom}
		if zone.Plant != nil {
			p.At = *zone.Plant
		}
		if w.Hot.Units > 0 {
			p.Share = t.hotUnits(z) / w.Hot.Units
		}
		p.Working = FloorPressure(t.s[t.feed[z]].At.NoFlow, t.gamma, p.At-t.s[t.feed[z]].End)
		p.MinRelief = h.Input * unit.Power(p.Share)
		p.Content = h.Volume*unit.Volume(p.Share) + t.hotContent(z)
		p.Grows = ExpansionVolume(p.Content, 1/coldWater.Density, 1/hotWater.Density)
		if c := w.Case.Profile; c != nil {
			p.Cap = min(p.Cap, unit.Pressure(c.ExpansionCap.Lowest())+max(0, FloorPressure(0, t.gamma, p.At-t.b.Lowest(zone.Bottom))))
		}
		p.Tank = unit.Volume(math.Inf(1))
		if p.Cap > p.Working {
			p.Tank = ExpansionTank(p.Grows, p.Working, p.Cap, w.Case.Air)
		}
		if h.Tank > 0 {
			p.WarmedTo = WarmedTo(p.Grows, h.Tank*unit.Volume(p.Share), p.Working, w.Case.Air)
		}
		w.Hot.Plants = append(w.Hot.Plants, p)
	}
	return nil
}

// reliefRoom is kept under a relief valve's setting so that it stays shut;
// common practice, no source.
const reliefRoom = 10 * unit.PSI

// hotContent is the water in the hot pipes of a zone, all its risers.
func (t *tree) hotContent(z int) unit.Volume {
	var sum unit.Volume
	for i := range t.s {
		if s := &t.s[i]; s.Zone == z && s.Hot && s.Tube != nil {
			sum += unit.Volume(TubeArea(s.Tube.Bore(TypeL)) * float64(t.run(s)) * s.share)
		}
	}
	return sum
}

// run is the length of the pipe of a stretch without its fittings.
func (t *tree) run(s *Stretch) unit.Length { return s.Length / unit.Length(1+t.pipe.Fittings) }
