package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Cautions and sources that skills of boosters share.
const (
	pumpLock   = "Lock out the pump and its valves, relieve the pressure and prove it gone on a gauge before a coupling or a union is opened."
	pumpDry    = "A pump is not run dry or against a closed valve: it boils its own water and ruins its seal. Check the rotation, and keep the coupling guard on."
	lowSuction = "A booster must not pull the street down: a low-suction cut-off stops it, as code and water utility ask."
	bladder    = "A pressure tank is a pressure vessel: let the water out, then the air, before any opening is loosened. Pre-charge with dry air or nitrogen, by gauge, within the plate's rating."
)

var boosterHabits = problems.Source{Says: "Losses of a pump set of 4 to 8 psi (30 to 55 kPa), residual of 25 psi (170 kPa): common practice, no source", Confidence: solver.Practice}

// boostedTower draws a tower on a booster. It returns the street's highest
// and lowest pressure in the unit of gauges; the gauge stands at level 1.
func boostedTower(s *building.Sheet, lo, hi int) (t *building.Tower, static, low float64) {
	t = s.Tower(building.Plan{Min: lo, Max: hi})
	static = pumpRoom(s, 0, lift(s, t, 0))
	low = static - s.PickPlate([]float64{8, 10, 12}, []float64{50, 75})
	s.SetStreet(static, low, 0, "on the gauge in the meter room")
	feedAbove(s, 0)
	s.Focus = t.Top()
	s.Name("level", t.Level(t.Storeys))
	return t, static, low
}

// setBoost gives the booster another boost, with the zones that go with it.
func setBoost(s *building.Sheet, boost unit.Pressure) {
	b := s.Building
	b.Booster.Boost, b.Booster.ShutOff = boost, boost*1.2
	b.Zones = nil
	feedAbove(s, 0)
}

var boostSkill = problems.Skill{
	ID: "boost", Title: "Pressure that the booster must add",
	Chapter: 4, Order: 10, Year: 2, Kind: problems.Sum,
	Ask: "The booster stands beside the meter. The gauge ahead of the meter shows {static} at night and no less than {low_street} at the peak. At design flow meter and backflow preventer take {entry_loss}, the pump set's own valves {set_loss}, the riser {friction}. The shower on level {level} is {height} above the pump and must have {least} ({limit_says}). What must the pumps add?",
	Givens: []problems.Given{
		{Name: "static", Says: "highest street pressure, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "low_street", Says: "lowest street pressure, at the peak", Measure: &measure.Pressure, Plate: true},
		{Name: "entry_loss", Says: "loss of meter and backflow preventer", Measure: &measure.Pressure},
		{Name: "set_loss", Says: "loss of the pump set's own valves and headers", Measure: &measure.Pressure},
		{Name: "friction", Says: "friction of the riser", Measure: &measure.Pressure},
		{Name: "height", Says: "height of the highest shower above the pump", Measure: &measure.Height},
		{Name: "least", Says: "pressure to be left at the highest shower", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "suction", Says: "pressure at the pump's inlet at the peak", Measure: &measure.Pressure,
			Formula: "low_street - entry_loss",
			Why:     "The pump works hardest when the street is lowest. Meter and backflow preventer come before it, so they are paid here and not again.",
			Slips: []problems.Slip{
				{
					ID: "static-street", Formula: "static - entry_loss",
					Did:  "You began with {static}, the street at night.",
					Why:  "At the peak the street has sunk to {low_street}. A pump chosen for the night is short when everybody draws.",
					Next: "For what the pump must add, take the street at its lowest.",
				},
				{
					ID: "entry-left-out", Formula: "low_street",
					Did:  "You left out the {entry_loss} of meter and backflow preventer.",
					Why:  "The gauge stands ahead of them. The pump gets what is left behind them.",
					Next: "Walk from the gauge to the pump and count what the water goes through.",
				},
			},
		},
		{
			Name: "column", Says: "pressure that the climb costs", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "Each foot or metre of height costs the same pressure.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known here and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "discharge", Says: "pressure needed behind the pumps", Measure: &measure.Pressure,
			Formula: "column + friction + set_loss + least",
			Why:     "Behind the pumps the water pays for the set, the riser and the climb, and still has {least} at the shower.",
			Slips: []problems.Slip{
				{
					ID: "residual-left-out", Formula: "column + friction + set_loss",
					Did:  "You left out the {least} at the shower.",
					Why:  "The water would just reach the shower head and stand there without pressure.",
					Next: "Height, friction, what is left at the end: three terms in every boost.",
				},
				{
					ID: "friction-left-out", Formula: "column + set_loss + least",
					Did:  "You left out the {friction} of the riser.",
					Why:  "At the peak the water runs, and running water pays for the pipe. The top would be short by {friction}.",
					Next: "Height, friction, what is left at the end: three terms in every boost.",
				},
				{
					ID: "set-left-out", Formula: "column + friction + least",
					Did:  "You left out the {set_loss} of the pump set itself.",
					Why:  "Check valves, isolating valves and headers of the set take their share between the pump and the riser.",
					Next: "Look at the set as a piece of pipe: what does it lose at design flow?",
				},
			},
		},
		{
			Name: "boost", Says: "pressure that the pumps must add", Measure: &measure.Pressure,
			Formula: "discharge - suction",
			Why:     "A booster adds to what the street brings to its inlet. Only the difference is the pump's work.",
			Would:   addBoost,
			Slips: []problems.Slip{
				{
					ID: "street-not-subtracted", Formula: "discharge",
					Did:  "You gave {discharge}, all that is needed behind the pumps.",
					Why:  "The street brings {suction} of it to the inlet for nothing. A pump chosen so overfeeds the whole building.",
					Next: "Two gauges stand beside a pump. The pump makes the difference of the two.",
				},
				{
					ID: "added", Formula: "discharge + suction",
					Did:  "You added {suction} to {discharge}.",
					Why:  "The street helps the pump. The more it brings, the less the pump has to add.",
					Next: "Think of a stronger street: your boost must get smaller.",
				},
			},
		},
	},
	Holds:    "A booster adds pressure to what arrives. Work backward from the highest shower: what must be left there, plus friction, plus the climb, plus the pump set's own loss, is what must stand behind the pumps. Take off what the street brings to the inlet at its lowest. The rest is the boost.",
	Cautions: []string{lowSuction, pumpLock},
	Sources:  []problems.Source{footSource, topSource, topCode, boosterHabits},
	Draw: func(s *building.Sheet) {
		t, static, low := boostedTower(s, 12, 22)
		b := s.Building
		height := t.Up(t.Storeys) + s.Shower()
		friction := s.Pick([]float64{9, 10, 12, 14, 15}, []float64{60, 70, 80, 90, 100})
		b.Friction = unit.Gradient(float64(s.Press(friction)) / float64(s.Length(height)))
		entry := s.Meter() + s.Backflow(s.Chance(0.3))
		s.Set("static", static)
		s.Set("low_street", low)
		s.Set("entry_loss", entry)
		s.Set("set_loss", s.Pick([]float64{4, 5, 6, 7}, []float64{30, 35, 40, 50}))
		s.Set("friction", friction)
		setHeight(s, "height", height)
		s.Set("least", keepAtTop(s))
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		up := b.Highest(b.Top()) - b.Street.GaugeAt
		losses := b.Friction.OfColumn(up) + w.Pressure("set_loss")
		return float64(solver.Discharge(w.Gamma(), up, losses, w.Pressure("least")) - b.Street.Low + b.Losses.Total())
	},
}

func init() { add(&boostSkill) }

// addBoost gives the pumps a boost, of which the set's own valves take their
// part.
func addBoost(w problems.World, v float64) problems.Outcome {
	behind := w.Pressure("low_street") - w.Pressure("entry_loss") + unit.Pressure(v) - w.Pressure("set_loss")
	b, at := topFedAt(w, behind)
	return boosted(w, b, at, "With pumps that add "+w.Press(unit.Pressure(v)))
}

// topFedAt is the building with so much behind its pumps at the peak, the top
// fed without a valve, and what the top shower then has.
func topFedAt(w problems.World, behind unit.Pressure) (b *solver.Building, top unit.Pressure) {
	b = w.Building.Copy()
	b.Friction = unit.Gradient(float64(w.Pressure("friction")) / float64(w.Length("height")))
	b.Booster.Boost = behind - (b.Street.Low - b.Losses.Total())
	b.Booster.ShutOff = b.Booster.Boost
	for z := range b.Zones {
		v := b.Zones[z].Valve
		if v != nil && (z == len(b.Zones)-1 || v.Setting > b.Inlet(z, w.Gamma())) {
			b.Zones[z].Valve = nil
		}
	}
	return b, b.Flowing(b.Top(), b.Highest(b.Top()), w.Gamma())
}

var totalHeadSkill = problems.Skill{
	ID: "total-head", Title: "Pump head from two gauges",
	Chapter: 4, Order: 20, Year: 2, Kind: problems.Sum,
	Ask: "A booster pump runs at design flow. The gauge at its inlet reads {suction}, the gauge at its outlet {discharge}. The outlet gauge hangs {gauges_apart} higher than the inlet gauge; both pipes are the same size. What is the pump's total head, to look up on its curve?",
	Givens: []problems.Given{
		{Name: "suction", Says: "gauge at the pump's inlet", Measure: &measure.Pressure, Plate: true},
		{Name: "discharge", Says: "gauge at the pump's outlet", Measure: &measure.Pressure, Plate: true},
		{Name: "gauges_apart", Says: "height of the outlet gauge above the inlet gauge", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "gain", Says: "pressure gained between the gauges", Measure: &measure.Pressure,
			Formula: "discharge - suction",
			Why:     "The pump adds to what comes in, so its work is the difference of the two gauges.",
			Slips: []problems.Slip{
				{
					ID: "discharge-alone", Formula: "discharge",
					Did:  "You took the outlet gauge alone, {discharge}.",
					Why:  "The street brings {suction} of that to the inlet. The pump only adds the rest.",
					Next: "Two gauges, one pump: subtract before anything else.",
				},
				{
					ID: "gauges-added", Formula: "discharge + suction",
					Did:  "You added the two gauges.",
					Why:  "With the pump off both gauges read nearly the same, and the pump adds nothing. Your sum would give twice the street.",
					Next: "Try the sum with the pump off: it must give zero.",
				},
			},
		},
		{
			Name: "gauge_head", Says: "that gain as a height of water", Measure: &measure.Height,
			Formula: "gain / gamma",
			Why:     "Pump curves are drawn in feet or metres of water, so the pressure is turned into a height.",
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "gain x gamma",
				Did:  "You multiplied {gain} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. The pressure is known here and the height is wanted, so divide.",
				Next: "The feet are more than twice the psi; the metres are about a tenth of the kPa.",
			}},
		},
		{
			Name: "total_head", Says: "total head of the pump", Measure: &measure.Height,
			Formula: "gauge_head + gauges_apart",
			Why:     "Between the gauges the pump also lifts the water by {gauges_apart}. The outlet gauge does not show that, because it hangs higher.",
			Slips: []problems.Slip{
				{
					ID: "gauges-apart-left-out", Formula: "gauge_head",
					Did:  "You left out the {gauges_apart} between the two gauges.",
					Why:  "The pump lifted the water up to the higher gauge as well. Hung level with the inlet gauge, the outlet gauge would read that much more.",
					Next: "Ask of two gauges whether they hang at one height.",
				},
				{
					ID: "gauges-apart-subtracted", Formula: "gauge_head - gauges_apart",
					Did:  "You took the {gauges_apart} off.",
					Why:  "The higher gauge reads too little for the comparison, so the height is put back on.",
					Next: "Move the outlet gauge down to the inlet in your mind. Its needle rises.",
				},
			},
		},
	},
	Holds:    "Head is what a pump gives to each pound of water, told as a height. It is the same for cold and hot water, so curves are drawn in feet or metres. From two gauges: pressure gained, divided by {gamma}, plus the height between the gauges. Where the two pipes differ in size a little speed is gained too, left out here.",
	Cautions: []string{pumpLock, pumpDry},
	Sources:  []problems.Source{footSource, {Says: "Head between two gauges with equal pipes: from memory", Confidence: solver.Memory}},
	Draw: func(s *building.Sheet) {
		_, _, low := boostedTower(s, 12, 22)
		suction := low - s.PickPlate([]float64{13, 15, 17}, []float64{90, 100, 115})
		step := s.PickPlate([]float64{2}, []float64{10})
		gain := math.Ceil(float64(s.Building.Booster.ShutOff/s.PlatePress(step))+float64(s.Int(4, 9))) * step
		setBoost(s, s.PlatePress(gain))
		s.Set("suction", suction)
		s.Set("discharge", suction+gain)
		s.Set("gauges_apart", s.Pick([]float64{3, 3.5, 4, 4.5, 5}, []float64{0.9, 1.1, 1.2, 1.4, 1.5}))
	},
	Solve: func(w problems.World) float64 {
		suction := w.Pressure("suction")
		return float64(solver.PumpHead(suction, suction+w.Building.Booster.Boost, w.Gamma(), w.Length("gauges_apart")))
	},
}

func init() { add(&totalHeadSkill) }
