package solver

import (
	"fmt"

	"riserwork/solver/unit"
)

// Limits of practice that no code names; no source beyond it.
const (
	mostDischarge = 250 * unit.PSI // of pumps: fittings and valves are rated for it
	mostRatio     = 4              // of a reducing valve
	mostStarts    = 20             // of a pump in an hour
)

// find checks every limit of the profile and what cannot work, from the street
// outward.
func (w *Whole) find(t *tree) {
	w.findPumps(t)
	w.findValves(t)
	w.findFloors(t)
	w.findPipes(t)
	w.findHot(t)
	w.findLoops(t)
	if s := w.Surge; s != nil && w.Case.Profile != nil {
		if sum := s.Flowing + s.Rise; sum > mostDischarge {
			w.add("surge", "level "+t.b.Levels[s.Level].Label, s.Level, "the %s of level %s stopped at once makes %s more, %s in all, over the %s that pipe and fittings are held to", s.Tap.Name, t.b.Levels[s.Level].Label, both(s.Rise), both(sum), both(mostDischarge))
		}
	}
}

func (w *Whole) add(limit, place string, level int, format string, args ...any) {
	w.Findings = append(w.Findings, Finding{limit, place, level, fmt.Sprintf(format, args...)})
}

func (w *Whole) findPumps(t *tree) {
	for _, p := range w.Pumps {
		level := t.b.LevelAt(t.s[p.Stretch].End)
		if c := w.Case.Profile; c != nil && t.s[t.s[p.Stretch].From].Kind != TankStretch {
			if least := unit.Pressure(c.SuctionMin.Lowest()); p.Suction.Design < least*(1-1e-9) {
				w.add("suction", p.Name, level, "the %s has %s at its inlet at design flow, under the %s of %s", p.Name, both(p.Suction.Design), both(least), c.Name)
			}
		}
		if p.Discharge.NoFlow > mostDischarge {
			w.add("discharge", p.Name, level, "the %s makes %s at no flow, over the %s that pipe and fittings are held to: split the plant", p.Name, both(p.Discharge.NoFlow), both(mostDischarge))
		}
		if p.Boost < 0 {
			w.add("pump", p.Name, level, "the %s cannot pass the design flow of %.3g gpm (%.3g L/s): its curve ends before", p.Name, p.Flow/unit.GPM, p.Flow/unit.LitrePerSecond)
		}
		if p.Starts > mostStarts {
			w.add("starts", p.Name, level, "the %s starts %.0f times an hour at half flow, over %d: the tank is small", p.Name, p.Starts, mostStarts)
		}
		if p.CutIn > 0 && p.CutOut > p.Discharge.NoFlow {
			w.add("switch", p.Name, level, "the %s makes %s at no flow and is to stop at %s: it never stops", p.Name, both(p.Discharge.NoFlow), both(p.CutOut))
		}
	}
	if h := t.b.Header; h != nil {
		for i := range t.s {
			if s := &t.s[i]; s.Kind == FillStretch && s.Name == "fill of the tank" && s.At.Design < floatValve && h.Pressure == 0 {
				w.add("fill", "tank", t.b.LevelAt(h.Elevation), "the tank is filled under %s at design flow, less than the %s that its float valve needs", both(s.At.Design), both(floatValve))
			}
		}
	}
}

func (w *Whole) findValves(t *tree) {
	for _, v := range w.Valves {
		zone := t.b.Zones[v.Zone]
		place, level := "zone "+zone.Name, t.b.LevelAt(zone.Valve.Elevation)
		switch {
		case v.Setting > v.Inlet.NoFlow*(1+1e-12):
			w.add("setting", place, level, "the reducing valve of zone %s is set to %s, above the %s at its inlet: it stands open and reduces nothing", zone.Name, both(v.Setting), both(v.Inlet.NoFlow))
		case v.Inlet.Design < FlowingOutlet(zone.Valve)*(1-1e-12):
			w.add("setting", place, level, "the reducing valve of zone %s has %s at its inlet at design flow, under the %s it is to give", zone.Name, both(v.Inlet.Design), both(FlowingOutlet(zone.Valve)))
		}
		if v.Ratio > mostRatio*(1+1e-9) {
			w.add("ratio", place, level, "the reducing valve of zone %s takes %s down to %s, %.3g to 1, over %d to 1: two in series", zone.Name, both(v.Inlet.NoFlow), both(v.Outlet.NoFlow), v.Ratio, mostRatio)
		}
	}
}

func (w *Whole) findFloors(t *tree) {
	c := w.Case.Profile
	for i := range w.Floors {
		f := &w.Floors[i]
		if f.Zone < 0 {
			continue
		}
		label := t.b.Levels[f.Level].Label
		place := "level " + label
		if c != nil && !c.StaticMax.Keeps(float64(f.Cold.Lowest.NoFlow), c.StaticMax.Highest()) {
			w.add("static", place, f.Level, "level %s: %s at its lowest outlet with no flow, over the %s (%s) of %s", label, both(f.Cold.Lowest.NoFlow), c.StaticMax.US.Text(3), c.StaticMax.SI.Text(3), c.Name)
		}
		if f.Cold.Highest.NoFlow < 0 {
			w.add("vacuum", place, f.Level, "level %s: no water stands at its highest outlet with no flow, the pressure there is %s", label, both(f.Cold.Highest.NoFlow))
		}
		if f.Level < t.b.Ground {
			continue
		}
		least, water := f.Cold.Highest.Design, "cold"
		if f.Hot != nil && f.Hot.Highest.Design < least {
			least, water = f.Hot.Highest.Design, "hot"
		}
		switch {
		case w.Top > 0 && least < w.Top*(1-1e-9)-1e-3:
			w.add("top", place, f.Level, "level %s: %s %s at its highest outlet at design flow, under the %s to be kept", label, both(least), water, both(w.Top))
		case c != nil && t.b.loaded() && float64(least) < c.ShowerMin.Lowest()*(1-1e-9):
			w.add("shower", place, f.Level, "level %s: %s %s at its highest outlet at design flow, under the %s (%s) for a shower of %s", label, both(least), water, c.ShowerMin.US.Text(3), c.ShowerMin.SI.Text(3), c.Name)
		}
	}
	for _, f := range w.Taps {
		if f.Count == 0 {
			continue
		}
		p := f.Cold
		if f.HotShare > 0 && f.Hot < p {
			p = f.Hot
		}
		if p < f.Tap.Least*(1-1e-9) {
			label := t.b.Levels[f.Level].Label
			w.add("tap", "level "+label, f.Level, "level %s: the %s has %s while it runs, under the %s it needs", label, f.Tap.Name, both(p), both(f.Tap.Least))
		}
	}
}

func (w *Whole) findPipes(t *tree) {
	for i := range t.s {
		s := &t.s[i]
		if s.Tube == nil {
			continue
		}
		fastest := t.pipe.Cold
		if s.Hot {
			fastest = t.pipe.Hot
		}
		if s.Velocity > fastest*(1+1e-9) {
			w.add("velocity", s.Name, s.Level, "the %s runs at %.3g ft/s (%.3g m/s) in %s in (DN %d), the largest of the table, over %.3g ft/s", s.Name, s.Velocity/unit.Velocity(unit.Foot), s.Velocity, s.Tube.Nominal, s.Tube.DN, fastest/unit.Velocity(unit.Foot))
		}
	}
}

func (w *Whole) findHot(t *tree) {
	hot, c := w.Hot, w.Case.Profile
	if hot == nil {
		return
	}
	h := t.b.Heater
	level := t.b.LevelAt(h.Elevation)
	for _, p := range hot.Plants {
		name := "the heater of zone " + t.b.Zones[p.Zone].Name
		at := t.b.LevelAt(p.At)
		if !MayStand(p.Working, h.Rating, h.Relief, reliefRoom) {
			w.add("rating", "heater", at, "%s stands under %s with no flow; its tank and relief valve allow %s", name, both(p.Working), both(min(h.Rating, h.Relief)-reliefRoom))
		}
		switch {
		case p.Cap <= p.Working && p.Working <= h.Rating-reliefRoom:
			w.add("expansion", "heater", at, "%s stands under %s already; warmed water may not go over %s, so that no expansion tank has room", name, both(p.Working), both(p.Cap))
		case p.WarmedTo > p.Cap*(1+1e-9):
			w.add("expansion", "heater", at, "the expansion tank of %s lets warmed water go to %s, over %s", name, gaugeText(p.WarmedTo), both(p.Cap))
		}
		if h.ReliefHeat > 0 && h.ReliefHeat < p.MinRelief {
			w.add("relief", "heater", at, "the relief valve of %s passes %.0f Btu/h (%.3g kW), less than the input of %.0f Btu/h", name, h.ReliefHeat/unit.BtuHour, h.ReliefHeat/1000, p.MinRelief/unit.BtuHour)
		}
	}
	if hot.Units > 0 && hot.Store.Short > 1 {
		w.add("store", "heater", level, "the day's hot water falls short by %.0f US gal (%.0f L): more storage or more input", hot.Missing/unit.USGallon, hot.Missing/unit.Litre)
	}
	if c == nil {
		return
	}
	if !t.b.Limited && !c.FixtureHot.Keeps(float64(hot.Delivered), c.FixtureHot.Highest()) {
		w.add("scald", "heater", level, "water of %.0f °F (%.0f °C) goes to the fixtures, over the %s (%s) of %s at a shower or bath, and no fixture limits it", hot.Delivered.Fahrenheit(), hot.Delivered.Celsius(), c.FixtureHot.US.Text(3), c.FixtureHot.SI.Text(3), c.Name)
	}
	if t.b.Loop == nil && hot.Units > 0 {
		if far := t.farthest(); c.Recirculation.Required(far, t.b.Storeys()) {
			w.add("recirculation", "hot water", -1, "the farthest hot outlet is %.0f ft (%.0f m) of pipe from its heater and %d storeys are supplied: %s asks for recirculation or heat tracing", far/unit.Foot, far, t.b.Storeys(), c.Name)
		}
	}
}

func gaugeText(p unit.Pressure) string {
	if !finite(float64(p)) {
		return "more than any pressure: the water fills it"
	}
	return both(p)
}

// farthest is the longest pipe from a heater to a hot outlet.
func (t *tree) farthest() unit.Length {
	far := make([]unit.Length, len(t.s))
	var most unit.Length
	for i := range t.s {
		s := &t.s[i]
		if !s.Hot {
			continue
		}
		far[i] = far[s.From] + t.run(s)
		if s.Kind == BranchStretch {
			most = max(most, far[i]+t.b.HighOutlet)
		}
	}
	return most
}

func (w *Whole) findLoops(t *tree) {
	for _, l := range w.Loops {
		name := t.b.Zones[l.Zone].Name
		if l.NoReach {
			w.add("loop", "loop of zone "+name, -1, "the loop of zone %s needs %.1f ft (%.1f m) at %.3g gpm (%.3g L/s), and its circulator gives %.1f ft there: it drives %.3g gpm", name,
				l.Head/unit.Foot, l.Head, l.Asked/unit.GPM, l.Asked/unit.LitrePerSecond, l.Pump.Head(l.Asked)/unit.Foot, l.Flow/unit.GPM)
		}
		if l.Return.Celsius() < leastReturn-0.05 {
			w.add("return", "loop of zone "+name, -1, "the loop of zone %s comes back at %.0f °F (%.0f °C), under the %.0f °F (%d °C) that keeps Legionella down", name,
				l.Return.Fahrenheit(), l.Return.Celsius(), unit.Celsius(leastReturn).Fahrenheit(), leastReturn)
		}
	}
}
