package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var heaterPressureSkill = problems.Skill{
	ID: "heater-pressure", Title: "Where a heater may stand",
	Chapter: 5, Order: 160, Year: 4, Kind: problems.Choice,
	Ask: "A storage heater is fed from the booster main, ahead of any zone valve. The street gives {street}. The gauge on the pump discharge reads {discharge} with no flow. The heater is to stand on level {level}, {height} above that gauge. Its tank is rated {tank_rating}, its relief valve is set at {relief_setting}, and {room} is to be kept free below the weaker of the two. May it stand there?",
	Givens: []problems.Given{
		{Name: "street", Says: "street pressure before the pumps, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "discharge", Says: "gauge on the pump discharge, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "height", Says: "height of the heater above that gauge", Measure: &measure.Height},
		{Name: "tank_rating", Says: "highest working pressure on the tank's plate", Measure: &measure.Pressure, Plate: true},
		{Name: "relief_setting", Says: "pressure setting on the relief valve's tag", Measure: &measure.Pressure, Plate: true},
		{Name: "room", Says: "room to keep below it, so that the relief valve stays shut", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "lost", Says: "pressure lost on the climb to the heater", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "The heater hangs on the main like a gauge would: it has what the pump gives less the water below it.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "at_heater", Says: "working pressure at the heater", Measure: &measure.Pressure,
			Formula: "discharge - lost",
			Why:     "With no flow the pumps stand at their highest, and the tank has to bear it day and night.",
			Slips: []problems.Slip{
				{
					ID: "street-looked-at", Formula: "street",
					Did:  "You took the street's {street} for the heater.",
					Why:  "The heater is fed behind the booster. In a tower the pumps give two or three times the street, and the tank sees that.",
					Next: "Follow the pipe back from the heater's cold inlet: what is the last thing that sets the pressure?",
				},
				{
					ID: "climb-left-out", Formula: "discharge",
					Did:  "You took the gauge's {discharge} without the climb.",
					Why:  "That is the pressure in the pump room. On level {level} the water has lost {lost} on the way up.",
					Next: "A reading holds at its own height only.",
				},
				{
					ID: "climb-added", Formula: "discharge + lost",
					Did:  "You added the climb.",
					Why:  "The heater stands above the gauge, so the column between them works against the pump.",
					Next: "Up takes away, down gives.",
				},
			},
		},
		{
			Name: "weaker", Says: "weaker of tank and relief valve", Measure: &measure.Pressure,
			Formula: "min(tank_rating, relief_setting)",
			Why:     "The tank must not be overpressed, and the relief valve must not stand open. The lower figure keeps both.",
			Slips: []problems.Slip{{
				ID: "stronger-taken", Formula: "max(tank_rating, relief_setting)",
				Did:  "You took the higher of {tank_rating} and {relief_setting}.",
				Why:  "The relief valve would open long before. A heater that weeps at its relief all day is a heater in the wrong place.",
				Next: "Where several parts share one pressure, the lowest figure decides.",
			}},
		},
		{
			Name: "allowed", Says: "highest working pressure for it", Measure: &measure.Pressure,
			Formula: "weaker - room",
			Why:     "Warming water pushes the pressure up, and relief valves begin to weep a little below their setting. So some room is kept.",
			Slips: []problems.Slip{
				{
					ID: "room-added", Formula: "weaker + room",
					Did:  "You added {room} to {weaker}.",
					Why:  "That would let the pressure stand above the setting, with the relief valve open.",
					Next: "Room below a limit makes the allowed figure smaller.",
				},
				{
					ID: "room-left-out", Formula: "weaker",
					Did:  "You allowed everything up to {weaker}.",
					Why:  "At that pressure the relief valve is at the point of opening, and each heating-up opens it.",
					Next: "Ask what is left for the pressure to rise when the water warms.",
				},
			},
		},
		{
			Name: "verdict", Says: "the heater on level {level}", Measure: &measure.Answer,
			Choices: []string{"may stand there", "may not stand there"},
			Formula: "at_heater > allowed",
			Would:   standThere,
			Why:     "If it may not: stand it higher, feed it through a zone valve, or buy a tank and a relief valve of a higher rating together.",
		},
	},
	Holds: "A tank feels the pressure at its own height. Low in a tower that is nearly all that the pumps make, whatever the street says. Tanks are commonly rated 125 or 150 psi (860 or 1,035 kPa), so a tall building decides where its heaters stand by that figure.",
	Cautions: []string{
		neverRelief,
		"The relief valve is set at or below the rating of the weakest vessel, and its temperature part at or below 210 °F (99 °C).",
		relieveFirst,
	},
	Sources: []problems.Source{
		waterColumn,
		{Says: "Relief valve not set above the tank's rating nor above 150 psi, 210 °F. Illinois Plumbing Code 890.1230; Washington WAC 296-150V-1580", Confidence: solver.Confirmed},
		{Says: "10 psi (70 kPa) kept free below the relief setting", Confidence: solver.Practice},
	},
	Draw: drawHeaterPressure,
	Solve: func(w problems.World) float64 {
		if solver.MayStand(atHeater(w), w.Building.Heater.Rating, w.Pressure("relief_setting"), w.Pressure("room")) {
			return 0
		}
		return 1
	},
}

func init() { add(&heaterPressureSkill) }

// drawHeaterPressure draws a level on which the heater stands or may not
// stand by a clear margin.
func drawHeaterPressure(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: zoned, Min: 12, Max: 34})
	gauge := s.UpValve()
	type aim struct{ floor, discharge, height, tank, relief float64 }
	var may, not []aim
	room := s.Pick([]float64{10}, []float64{70})
	low := lift(s, t, gauge)
	for _, d := range upTo(low, low+3*gaugeStep(s), gaugeStep(s)) {
		for n := 2; n <= t.Storeys; n++ {
			height := tape(s, t.Up(n)-gauge)
			at := d/onPlate(s, 1) - head(s, height)
			for _, r := range heaterRatings(s) {
				over := at - (r[1]/onPlate(s, 1) - room)
				if size := math.Abs(over) / head(s, 1); size < s.Pick([]float64{10}, []float64{3}) || size > 6*t.Floor.Value {
					continue
				}
				if a := (aim{float64(n), d, height, r[0], r[1]}); over > 0 {
					not = append(not, a)
				} else {
					may = append(may, a)
				}
			}
		}
	}
	a, ok := pick(s, may)
	if s.Chance(0.5) || !ok {
		if n, has := pick(s, not); has {
			a = n
		}
	}
	street := pumpRoom(s, gauge, a.discharge)
	feedAbove(s, 0)
	s.Focus = t.Storey(max(2, int(a.floor)))
	t.Heater = &solver.Heater{Elevation: s.Length(gauge) + s.Length(a.height), Rating: s.PlatePress(a.tank)}
	s.Name("level", t.Levels[s.Focus].Label)
	s.Set("street", street)
	s.Set("discharge", a.discharge)
	s.Set("height", a.height)
	s.Set("tank_rating", a.tank)
	s.Set("relief_setting", a.relief)
	s.Set("room", room)
}

// heaterRatings are pairs of tank and relief valve, in the unit of plates.
func heaterRatings(s *building.Sheet) [][2]float64 {
	if s.PlateUS() {
		return [][2]float64{{150, 125}, {150, 100}, {125, 100}}
	}
	return [][2]float64{{1035, 860}, {1035, 690}, {860, 690}}
}

// atHeater is the working pressure at the heater, no flow.
func atHeater(w problems.World) unit.Pressure {
	b := w.Building
	return solver.FloorPressure(b.Street.Static+b.Booster.ShutOff, w.Gamma(), b.Heater.Elevation-b.Street.GaugeAt)
}

// standThere stands the heater on its level (0) or refuses to (1).
func standThere(w problems.World, v float64) problems.Outcome {
	at, tank, relief, room := atHeater(w), w.Building.Heater.Rating, w.Pressure("relief_setting"), w.Pressure("room")
	allowed := min(tank, relief) - room
	may := solver.MayStand(at, tank, relief, room)
	o := problems.Outcome{Kept: may == (v == 0), Marks: []problems.Mark{w.Mark(w.Focus, problems.AtHeater, at, may)}}
	o.Says = []string{"On " + w.Level(w.Focus) + " the heater would stand at " + w.Press(at) + " with no flow; " + w.Press(allowed) + " is the most for it."}
	switch {
	case v == 0 && at >= relief:
		o.Says = append(o.Says, "Its relief valve, set at "+w.Press(relief)+", would run all day.")
	case v == 0 && !may:
		o.Says = append(o.Says, "Only "+w.Press(relief-at)+" lies below the relief valve's setting: each heating-up would open it.")
	case v == 1 && may:
		o.Says = append(o.Says, "Nothing speaks against the place: moved, it would cost pipe for nothing.")
	case v == 1:
		o.Says = append(o.Says, "So it does not stand there, or it is fed through a zone valve.")
	}
	return o
}
