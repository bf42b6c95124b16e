package desk

import (
	"fmt"
	"io"
	"math"

	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// WholeJSON is a building worked out. Every number is in the unit that Units
// names for its kind.
type WholeJSON struct {
	Units    map[string]string `json:"units"`
	Demand   float64           `json:"demand"`
	Load     float64           `json:"load"`
	Floors   []FloorJSON       `json:"floors"`
	Pipes    []StretchJSON     `json:"pipes"`
	Pumps    []PumpJSON        `json:"pumps"`
	Valves   []ValveJSON       `json:"valves"`
	Taps     []TapJSON         `json:"taps"`
	Hot      *HotJSON          `json:"hot,omitempty"`
	Loops    []LoopJSON        `json:"loops"`
	Surge    *SurgeJSON        `json:"surge,omitempty"`
	Findings []FindingJSON     `json:"findings"`
}

// StatesJSON is a pressure in the three states.
type StatesJSON struct {
	NoFlow float64 `json:"noFlow"`
	Design float64 `json:"design"`
	Open   float64 `json:"open"`
}

// FloorJSON is one level, the lowest first.
type FloorJSON struct {
	Level     string      `json:"level"`
	Elevation float64     `json:"elevation"`
	Zone      string      `json:"zone"`
	Load      float64     `json:"load"`
	ColdHigh  StatesJSON  `json:"coldHighest"`
	ColdLow   StatesJSON  `json:"coldLowest"`
	HotHigh   *StatesJSON `json:"hotHighest,omitempty"`
	HotLow    *StatesJSON `json:"hotLowest,omitempty"`
}

// StretchJSON is a stretch of pipe or a device, after what feeds it.
type StretchJSON struct {
	Name     string     `json:"name"`
	From     int        `json:"from"`
	Kind     string     `json:"kind"`
	Load     float64    `json:"load"`
	Flow     float64    `json:"flow"`
	OpenFlow float64    `json:"openFlow"`
	Size     string     `json:"size,omitempty"`
	Velocity float64    `json:"velocity"`
	Loss     float64    `json:"loss"`
	End      StatesJSON `json:"end"`
}

// PumpJSON is a booster or a lift.
type PumpJSON struct {
	Name      string     `json:"name"`
	Flow      float64    `json:"flow"`
	Suction   StatesJSON `json:"suction"`
	Discharge StatesJSON `json:"discharge"`
	Boost     float64    `json:"boost"`
	Needed    float64    `json:"needed"`
	Head      float64    `json:"head"`
}

// ValveJSON is the reducing valve of a zone.
type ValveJSON struct {
	Zone    string     `json:"zone"`
	Setting float64    `json:"setting"`
	Flow    float64    `json:"flow"`
	Inlet   StatesJSON `json:"inlet"`
	Outlet  StatesJSON `json:"outlet"`
}

// TapJSON is an open tap; flows are of one of like ones.
type TapJSON struct {
	Level string  `json:"level"`
	Tap   string  `json:"tap"`
	Count int     `json:"count"`
	Flow  float64 `json:"flow"`
	Alone float64 `json:"alone"`
	Mixed float64 `json:"mixed,omitempty"`
}

// HotJSON is the hot water plant.
type HotJSON struct {
	Delivered float64     `json:"delivered"`
	Recovery  float64     `json:"recovery"`
	Day       float64     `json:"day"`
	Lowest    float64     `json:"lowest"`
	Missing   float64     `json:"missing"`
	Stored    [24]float64 `json:"stored"`
	Drawn     [24]float64 `json:"drawn"`
}

// LoopJSON is the return of one zone.
type LoopJSON struct {
	Zone   string    `json:"zone"`
	Flow   float64   `json:"flow"`
	Head   float64   `json:"head"`
	Heat   float64   `json:"heat"`
	Supply float64   `json:"supply"`
	Return float64   `json:"return"`
	Valves []float64 `json:"valves"`
}

// SurgeJSON is a tap shut at once.
type SurgeJSON struct {
	Level string  `json:"level"`
	Tap   string  `json:"tap"`
	Rise  float64 `json:"rise"`
}

// FindingJSON is a limit not kept.
type FindingJSON struct {
	Limit string `json:"limit"`
	Place string `json:"place"`
	Says  string `json:"says"`
}

// plain gives numbers in the units of a system, to nine figures.
type plain unit.System

func (p plain) of(v float64, m *measure.Of) float64 {
	x := m.Unit(unit.System(p)).FromSI(v)
	if x == 0 || math.IsInf(x, 0) || math.IsNaN(x) {
		return 0
	}
	scale := math.Pow(10, 8-math.Floor(math.Log10(math.Abs(x))))
	return math.Round(x*scale) / scale
}

func (p plain) states(v solver.Pressures) StatesJSON {
	return StatesJSON{p.of(float64(v.NoFlow), &measure.Pressure), p.of(float64(v.Design), &measure.Pressure), p.of(float64(v.Open), &measure.Pressure)}
}

func wholeJSON(w *solver.Whole, s unit.System) WholeJSON {
	p, b := plain(s), w.Building
	flow := func(q unit.Flow) float64 { return p.of(float64(q), &measure.FlowRate) }
	press := func(v unit.Pressure) float64 { return p.of(float64(v), &measure.Pressure) }
	temp := func(t unit.Temperature) float64 { return p.of(float64(t), &measure.Temp) }
	volume := func(v unit.Volume) float64 { return p.of(float64(v), &measure.Tank) }
	v := WholeJSON{
		Units: map[string]string{}, Demand: flow(w.Demand), Load: w.Load.Total,
		Floors: []FloorJSON{}, Pipes: []StretchJSON{}, Pumps: []PumpJSON{}, Valves: []ValveJSON{}, Taps: []TapJSON{}, Loops: []LoopJSON{}, Findings: []FindingJSON{},
	}
	for name, m := range map[string]*measure.Of{"pressure": &measure.Pressure, "flow": &measure.FlowRate, "elevation": &measure.Height, "velocity": &measure.Velocity, "temperature": &measure.Temp, "volume": &measure.Tank, "heat": &measure.HeatRate, "load": &measure.Units, "valve": &measure.ValveFactor} {
		v.Units[name] = m.Unit(s).Name
	}
	v.Units["valve"] = "Cv"
	for _, f := range w.Floors {
		if f.Zone < 0 {
			continue
		}
		l := b.Levels[f.Level]
		row := FloorJSON{Level: l.Label, Elevation: p.of(float64(l.Elevation), &measure.Height), Zone: b.Zones[f.Zone].Name, Load: f.Load.Total, ColdHigh: p.states(f.Cold.Highest), ColdLow: p.states(f.Cold.Lowest)}
		if f.Hot != nil {
			high, low := p.states(f.Hot.Highest), p.states(f.Hot.Lowest)
			row.HotHigh, row.HotLow = &high, &low
		}
		v.Floors = append(v.Floors, row)
	}
	for _, s := range w.Stretches {
		row := StretchJSON{Name: s.Name, From: s.From, Kind: string(s.Kind), Load: s.Units, Flow: flow(s.Flow), OpenFlow: flow(s.OpenFlow), Velocity: p.of(float64(s.Velocity), &measure.Velocity), Loss: press(s.Loss), End: p.states(s.At)}
		if s.Tube != nil {
			row.Size = s.Tube.Nominal
		}
		v.Pipes = append(v.Pipes, row)
	}
	for _, d := range w.Pumps {
		v.Pumps = append(v.Pumps, PumpJSON{d.Name, flow(d.Flow), p.states(d.Suction), p.states(d.Discharge), press(d.Boost), press(d.Needed), p.of(float64(d.Head), &measure.Height)})
	}
	for _, d := range w.Valves {
		v.Valves = append(v.Valves, ValveJSON{b.Zones[d.Zone].Name, press(d.Setting), flow(d.Flow), p.states(d.Inlet), p.states(d.Outlet)})
	}
	for _, t := range w.Taps {
		row := TapJSON{Level: b.Levels[t.Level].Label, Tap: t.Tap.Name, Count: t.Count, Flow: flow(t.Each), Alone: flow(t.Alone)}
		if t.Mixed > 0 {
			row.Mixed = temp(t.Mixed)
		}
		v.Taps = append(v.Taps, row)
	}
	if h := w.Hot; h != nil {
		hot := HotJSON{Delivered: temp(h.Delivered), Recovery: flow(h.Recovery), Day: volume(h.Day), Lowest: volume(h.Lowest), Missing: volume(h.Missing)}
		for i := range h.Stored {
			hot.Stored[i], hot.Drawn[i] = volume(h.Stored[i]), volume(h.Hours[i])
		}
		v.Hot = &hot
	}
	for _, l := range w.Loops {
		row := LoopJSON{Zone: b.Zones[l.Zone].Name, Flow: flow(l.Flow), Head: p.of(float64(l.Head), &measure.Height), Heat: p.of(float64(l.Heat), &measure.HeatRate), Supply: temp(l.Supply), Return: temp(l.Return), Valves: []float64{}}
		for _, r := range l.Risers {
			row.Valves = append(row.Valves, p.of(r.Valve, &measure.ValveFactor))
		}
		v.Loops = append(v.Loops, row)
	}
	if s := w.Surge; s != nil {
		v.Surge = &SurgeJSON{b.Levels[s.Level].Label, s.Tap.Name, press(s.Rise)}
	}
	for _, f := range w.Findings {
		v.Findings = append(v.Findings, FindingJSON{f.Limit, f.Place, f.Says})
	}
	return v
}

func printWhole(out io.Writer, w *solver.Whole, v WholeJSON) {
	fmt.Fprintf(out, "%s, %d storeys: %.4g fixture units, %.4g %s\n\n", w.Building.Use, w.Building.Storeys(), v.Load, v.Demand, v.Units["flow"])
	fmt.Fprintf(out, "%-7s %-8s %10s %10s %10s %10s   %s\n", "level", "zone", "no flow", "no flow", "design", "hot design", v.Units["pressure"])
	fmt.Fprintf(out, "%-7s %-8s %10s %10s %10s %10s\n", "", "", "lowest", "highest", "highest", "highest")
	for i := len(v.Floors) - 1; i >= 0; i-- {
		f := v.Floors[i]
		hot := ""
		if f.HotHigh != nil {
			hot = fmt.Sprintf("%.1f", f.HotHigh.Design)
		}
		fmt.Fprintf(out, "%-7s %-8s %10.1f %10.1f %10.1f %10s\n", f.Level, f.Zone, f.ColdLow.NoFlow, f.ColdHigh.NoFlow, f.ColdHigh.Design, hot)
	}
	fmt.Fprintln(out)
	for _, p := range v.Pumps {
		fmt.Fprintf(out, "%s: %.4g %s, boost %.4g %s (%.4g needed)\n", p.Name, p.Flow, v.Units["flow"], p.Boost, v.Units["pressure"], p.Needed)
	}
	for _, d := range v.Valves {
		fmt.Fprintf(out, "valve of zone %s: set to %.4g %s, %.4g in, %.4g %s\n", d.Zone, d.Setting, v.Units["pressure"], d.Inlet.NoFlow, d.Flow, v.Units["flow"])
	}
	for _, t := range v.Taps {
		fmt.Fprintf(out, "level %s, %s: %.3g %s each, alone %.3g\n", t.Level, t.Tap, t.Flow, v.Units["flow"], t.Alone)
	}
	for _, l := range v.Loops {
		fmt.Fprintf(out, "loop of zone %s: %.3g %s at %.3g %s of head, back at %.4g%s\n", l.Zone, l.Flow, v.Units["flow"], l.Head, v.Units["elevation"], l.Return, v.Units["temperature"])
	}
	if len(v.Findings) == 0 {
		fmt.Fprintln(out, "every limit is kept")
	}
	for _, f := range v.Findings {
		fmt.Fprintf(out, "%s\n", f.Says)
	}
	fmt.Fprintln(out, "For study, not for design.")
}
