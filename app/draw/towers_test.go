package draw_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"riserwork/app/draw"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// tower is a building to draw, and how.
type tower struct {
	name string
	b    *solver.Building
	opt  draw.Options
}

func newSheet(t *testing.T, seed uint64, sys unit.System) *building.Sheet {
	t.Helper()
	p, ok := solver.ProfileByID("shop")
	require.True(t, ok)
	return &building.Sheet{Rand: rand.New(rand.NewPCG(seed, 7)), System: sys, Profile: p, PSI: unit.PSI, Gallon: unit.USGallon}
}

// told are notes at every device of the entry, and a question on a level.
func told(sys unit.System, ask int) draw.Options {
	unit := map[bool]string{true: " psi", false: " kPa"}[sys == unit.US]
	return draw.Options{
		System: sys, Ask: &draw.Note{Level: ask, Text: "?" + unit},
		Notes: []draw.Note{
			{Where: draw.AtGauge, Text: "450" + unit}, {Where: draw.AtMeter, Text: "35" + unit},
			{Where: draw.AtStrainer, Text: "15" + unit}, {Where: draw.AtBackflow, Text: "80" + unit},
			{Where: draw.AtPump, Text: "1,000" + unit}, {Where: draw.AtHeader, Text: "300" + unit},
			{Level: ask, Where: draw.AtFloor, Text: "8'-10\" from floor to floor"},
			{Where: draw.AtHeater, Text: "60 °C"}, {Where: draw.AtMixing, Text: "52 °C"}, {Where: draw.AtLoop, Text: "0.4 L/s"},
		},
	}
}

// stacked is a tower whose levels over the eighth are zones of nine behind
// valves on a booster; the highest zone hangs on the rising pipe itself.
func stacked(s *building.Sheet, storeys int) *solver.Building {
	t := s.Tower(building.Plan{Min: storeys, Max: storeys, Parking: true, Uses: []solver.Use{solver.MixedUse}})
	s.Street(0, "on the gauge in the meter room")
	s.MainDepth()
	t.Booster = &solver.Booster{Elevation: t.Levels[0].Elevation, Boost: 2000 * unit.Kilopascal, ShutOff: 2200 * unit.Kilopascal}
	lo := t.Storey(8)
	t.Zones = []solver.Zone{{Name: "street", Bottom: 0, Top: lo - 1, Supply: solver.FromStreet}}
	for lo <= t.Top() {
		z := solver.Zone{Name: strconv.Itoa(len(t.Zones)), Bottom: lo, Top: min(lo+8, t.Top()), Supply: solver.FromBooster}
		if z.Top < t.Top() {
			z.Valve = &solver.Valve{Elevation: t.Levels[lo].Elevation + unit.Metre, Setting: 400 * unit.Kilopascal}
		}
		t.Zones = append(t.Zones, z)
		lo = z.Top + 1
	}
	return t.Building
}

// towers are buildings of every kind that can be drawn, of 3 to 60 storeys.
func towers(t *testing.T) []tower {
	var out []tower
	add := func(name string, b *solver.Building, opt draw.Options) {
		require.NoError(t, b.Check(), name)
		out = append(out, tower{name, b, opt})
		opt.Solved = true
		out = append(out, tower{name + ", solved", b, opt})
		opt.Solved, opt.HideZones, opt.HideElevations, opt.HideDepth = false, true, true, true
		out = append(out, tower{name + ", hidden", b, opt})
	}
	for _, sys := range unit.Systems {
		for _, n := range []int{3, 14, 60} {
			s := newSheet(t, uint64(n), sys)
			tw := s.Tower(building.Plan{Min: n, Max: n, Parking: n > 3})
			s.Street(0, "on the gauge in the meter room")
			s.MainDepth()
			name := strconv.Itoa(n) + " storeys, " + string(sys)
			add("street, "+name, tw.Building, told(sys, tw.Storey((n+1)/2)))
			hot := *tw.Building
			hot.Heater, hot.Mixing, hot.Loop = &solver.Heater{Elevation: tw.Levels[0].Elevation}, &solver.MixingValve{}, &solver.Loop{ValveInLoop: unit.PSI}
			add("hot, "+name, &hot, told(sys, tw.Top()))
			tank := *tw.Building
			tank.Header = &solver.Header{Elevation: tw.Levels[tw.Top()+1].Elevation + 3*unit.Metre}
			tank.Zones = []solver.Zone{{Name: "tank", Top: tw.Top(), Supply: solver.FromHeader}}
			tank.Street.GaugeName = "at the main"
			add("tank, "+name, &tank, told(sys, tw.Building.Ground))
			pit := hot
			pit.Booster = &solver.Booster{Elevation: tw.Levels[0].Elevation - 2*unit.Metre, ShutOff: 900 * unit.Kilopascal}
			pit.Street.GaugeAt = pit.Booster.Elevation
			pit.Zones = []solver.Zone{{Name: "1", Top: tw.Top(), Supply: solver.FromBooster, Valve: &solver.Valve{Elevation: pit.Booster.Elevation, Setting: 400 * unit.Kilopascal}}}
			pit.Heater = nil
			add("pit, "+name, &pit, told(sys, tw.Top()))
			entry := *tw.Building
			entry.Zones = []solver.Zone{{Name: "all", Top: tw.Top(), Supply: solver.FromStreet, Valve: &solver.Valve{Elevation: tw.Levels[tw.Building.Ground].Elevation, Setting: 100 * unit.Kilopascal}}}
			add("valve at the entry, "+name, &entry, told(sys, tw.Top()))
		}
		add("stacked 60, "+string(sys), stacked(newSheet(t, 5, sys), 60), told(sys, 30))
		s := newSheet(t, 2, sys)
		tw := s.Tower(building.Plan{Min: 28, Max: 28, Uses: []solver.Use{solver.Apartment}})
		s.Street(0, "on the gauge in the meter room")
		if s.DownFeed(tw, s.UsualZones()) {
			opt := told(sys, tw.Top())
			opt.Ask = &draw.Note{Level: tw.Zones[0].Top, Where: draw.AtValve, Text: "?"}
			add("down-feed 28, "+string(sys), tw.Building, opt)
		}
	}
	return out
}

func solved(t *testing.T, b *solver.Building) *solver.Solution {
	t.Helper()
	p, _ := solver.ProfileByID("shop")
	sol, err := solver.Solve(b, solver.Settings{Profile: p})
	require.NoError(t, err)
	return sol
}
