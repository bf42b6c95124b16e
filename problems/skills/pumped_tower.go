package skills

import (
	"math"
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// tape rounds a height to what one measures with a tape in a riser: a whole
// foot, or a tenth of a metre.
func tape(s *building.Sheet, v float64) float64 {
	if s.US() {
		return math.Round(v)
	}
	return math.Round(v*10) / 10
}

// upTo lists lo, lo+step and on to hi.
func upTo(lo, hi, step float64) []float64 {
	var out []float64
	for v := lo; v <= hi+step/1000; v += step {
		out = append(out, v)
	}
	return out
}

// gaugeStep is a round step of a gauge: 5 psi, 25 kPa.
func gaugeStep(s *building.Sheet) float64 { return s.PickPlate([]float64{5}, []float64{25}) }

// lift is the least round reading of a gauge at gaugeAt, in the unit of
// gauges, that keeps what the code asks at the tower's top outlet.
func lift(s *building.Sheet, t *building.Tower, gaugeAt float64) float64 {
	up := s.Heights(t.Highest(t.Top())) - gaugeAt
	step := gaugeStep(s)
	return math.Ceil((onPlate(s, s.Least())+plateHead(s, up))/step+0.2) * step
}

// pumpRoom gives the building a booster whose discharge gauge stands at
// gaugeAt and reads discharge with no flow. It returns the street pressure.
func pumpRoom(s *building.Sheet, gaugeAt, discharge float64) (street float64) {
	street = s.PickPlate(pumpRoomStreet.us, pumpRoomStreet.si)
	if street >= discharge { // a pump adds
		street = leastStreet(s)
	}
	s.SetStreet(street, street-s.PickPlate([]float64{8, 10}, []float64{50, 75}), gaugeAt, "on the gauge in the pump room")
	shut := s.PlatePress(discharge) - s.Building.Street.Static
	s.Building.Booster = &solver.Booster{Elevation: s.Length(gaugeAt), ShutOff: shut, Boost: shut / 1.2}
	return street
}

// pumpRoomStreet are the street pressures on the gauge in a pump room.
var pumpRoomStreet = struct{ us, si []float64 }{[]float64{45, 50, 55, 60}, []float64{325, 350, 400}}

// leastStreet is the least of them, in the unit of plates.
func leastStreet(s *building.Sheet) float64 {
	if s.PlateUS() {
		return pumpRoomStreet.us[0]
	}
	return pumpRoomStreet.si[0]
}

// feedAbove zones the levels from index bottom to the top on the booster, each
// zone with a valve on its lowest level where the riser has too much there.
func feedAbove(s *building.Sheet, bottom int) {
	b := s.Building
	const gamma = solver.WaterColumn
	keep := s.Press(s.Least() + s.Pick([]float64{15}, []float64{100}))
	whole := s.Press(s.Pick([]float64{3}, []float64{20})) // settings are rounded up
	room := gamma.HeightOf(s.Press(s.Most()) - whole - keep)
	for bottom <= b.Top() {
		top := bottom
		for top < b.Top() && b.Highest(top+1)-b.Lowest(bottom) <= room {
			top++
		}
		z := solver.Zone{Name: strconv.Itoa(len(b.Zones) + 1), Bottom: bottom, Top: top, Supply: solver.FromBooster}
		at := b.Levels[bottom].Elevation + s.Length(s.UpValve())
		set := solver.Upward(keep+gamma.OfColumn(b.Highest(top)-at), s.Press(s.ValveStep()))
		lowest := solver.FloorPressure(b.Street.Static+b.Booster.ShutOff, gamma, b.Lowest(bottom)-b.Street.GaugeAt)
		if lowest > s.Press(s.Most())-whole {
			inlet := lowest - gamma.OfColumn(at-b.Lowest(bottom))
			set = min(set, solver.Upward(inlet-whole, s.Press(s.ValveStep())))
			z.Valve = &solver.Valve{Elevation: at, Setting: set}
		}
		b.Zones = append(b.Zones, z)
		bottom = top + 1
	}
}

// floorsOn is how many storeys a zone valve at gaugeAt can serve at a setting
// in the unit of code pressures, no flow.
func floorsOn(s *building.Sheet, t *building.Tower, gaugeAt, setting float64) int {
	n := 1
	for n < t.Storeys-1 && setting-head(s, t.Up(n+1)+s.Shower()-gaugeAt) >= s.Least() {
		n++
	}
	return n
}

// firstZone begins the zones of a pumped tower with the levels from the lowest
// to top, behind a valve at the given elevation.
func firstZone(s *building.Sheet, top int, at unit.Length, setting, fallOff unit.Pressure) {
	s.Building.Zones = []solver.Zone{{
		Name: "1", Bottom: 0, Top: top, Supply: solver.FromBooster,
		Valve: &solver.Valve{Elevation: at, Setting: setting, FallOff: fallOff},
	}}
}

// Cautions that skills on valves, tests and hot water share.
const (
	neverRelief = "Never plug, valve, reduce, thread or join a relief discharge, and never fit a relief valve set above the weakest vessel. One that weeps is a sign: find out why."
	scald       = "Water at 140 °F (60 °C) burns an adult in seconds, a child or an older person sooner. A master valve at the heater is no scald protection at a shower or bath: the limit belongs at the fixture."
	legionella  = "Legionella grows in lukewarm water. Store hot, keep the loop hot all the way back, and limit the temperature at the fixture, not by a lukewarm system."
)

// loopReturn is the guideline for the water that comes back.
var loopReturn = problems.Source{Says: "Return of at least 124 °F (51 °C), storage of 140 °F (60 °C). ASHRAE Guideline 12-2000, for buildings at risk", Confidence: solver.Confirmed}
