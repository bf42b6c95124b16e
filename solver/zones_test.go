package solver_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Shop facts and published figures of zones and valves; sources are in the
// table.
func TestZonesAndValvesAgainstPrintedFigures(t *testing.T) {
	const gamma = solver.WaterColumn
	for _, w := range workedZones(t, "next valve", "down", "tallest zone", "valve setting") {
		g := w.givens
		press := func(i int) unit.Pressure { return unit.Pressure(g[i]) }
		var got float64
		switch w.sum {
		case "next valve":
			got = float64(solver.NextValve(press(0), press(1), gamma))
		case "down":
			got = float64(solver.FloorPressure(press(0), gamma, -unit.Length(g[1])))
		case "tallest zone":
			got = float64(solver.TallestZone(press(0), press(1), press(2), press(3), gamma))
		case "valve setting":
			got = float64(solver.ValveSetting(press(0), gamma, unit.Length(g[1]), press(2), press(3)))
		}
		assert.InDelta(t, w.want, got, w.within, w.id)
	}
}

// 104 ft is 10 floors of 10 ft: 11 would give 72.6 psi where 70 are allowed.
// Common practice, no source.
func TestNextValveStandsOnTheHigherFloor(t *testing.T) {
	const floor = 10 * unit.Foot
	drop := solver.NextValve(70*unit.PSI, 25*unit.PSI, solver.WaterColumn)
	n := solver.WholeFloors(drop, floor)
	assert.Equal(t, 10, n)
	under := func(n int) float64 {
		return float64(solver.FloorPressure(25*unit.PSI, solver.WaterColumn, -unit.Length(n)*floor) / unit.PSI)
	}
	assert.LessOrEqual(t, under(n), 70.0)
	assert.InDelta(t, 72.6, under(n+1), 0.1)
}

func TestFloorsOfAZone(t *testing.T) {
	const ft = unit.Foot
	for _, c := range []struct {
		height, floor unit.Length
		want          int
	}{
		{127 * ft, 9 * ft, 14},   // 121.2 ft from floor to floor: 13 gaps
		{92 * ft, 9 * ft, 10},    // 86.2 ft: 9 gaps
		{45.8 * ft, 10 * ft, 5},  // exactly 4 gaps
		{45.79 * ft, 10 * ft, 4}, // a hair under
		{5.8 * ft, 10 * ft, 1},   // one floor's own outlets
		{5 * ft, 10 * ft, 0},
	} {
		got := solver.ZoneFloors(c.height, c.floor, 6.5*ft, 0.7*ft)
		assert.Equal(t, c.want, got, "%.2f ft", float64(c.height/ft))
	}
}

// The floors found keep both limits at rest, and one floor more does not.
func TestATallestZoneKeepsItsLimits(t *testing.T) {
	const high, low = 2 * unit.Metre, 0.2 * unit.Metre
	for most := 450.0; most <= 550; most += 25 {
		for least := 140.0; least <= 240; least += 20 {
			for _, floor := range []unit.Length{2.75, 2.9, 3, 3.7, 4.2} {
				h := solver.TallestZone(unit.Pressure(most)*unit.Kilopascal, unit.Pressure(least)*unit.Kilopascal, 0, 0, solver.WaterColumn)
				n := solver.ZoneFloors(h, floor, high, low)
				atBottom := func(n int) unit.Pressure {
					return solver.FloorPressure(unit.Pressure(least)*unit.Kilopascal, solver.WaterColumn, low-high-unit.Length(n-1)*floor)
				}
				require.LessOrEqual(t, float64(atBottom(n)/unit.Kilopascal), most+1e-6)
				require.Greater(t, float64(atBottom(n+1)/unit.Kilopascal), most)
			}
		}
	}
}

func TestSettingsAreRoundedUp(t *testing.T) {
	for _, c := range []struct{ p, step, want unit.Pressure }{
		{67.1 * unit.PSI, unit.PSI, 68 * unit.PSI},
		{68 * unit.PSI, unit.PSI, 68 * unit.PSI},
		{451 * unit.Kilopascal, 5 * unit.Kilopascal, 455 * unit.Kilopascal},
		{455 * unit.Kilopascal, 5 * unit.Kilopascal, 455 * unit.Kilopascal},
	} {
		assert.InDelta(t, float64(c.want), float64(solver.Upward(c.p, c.step)), 1e-6)
	}
}

func TestZonesFillFromBelow(t *testing.T) {
	for _, c := range []struct {
		storeys, fed, per int
		want              []int
	}{
		{20, 7, 9, []int{8, 17}},
		{39, 7, 9, []int{8, 17, 26, 35}},
		{27, 7, 10, []int{8, 18}},
		{7, 7, 10, nil},
		{20, 7, 0, nil},
	} {
		got := solver.ZoneBottoms(c.storeys, c.fed, c.per)
		assert.Equal(t, c.want, got, "%+v", c)
		assert.Len(t, got, solver.ZoneCount(c.storeys-c.fed, c.per))
	}
}

// A circulator in front of a reducing valve: 118 psi in, 68 out and 6 of
// friction ask for 129 ft of head; 6 psi alone ask for 14. Common practice, no
// source.
func TestCirculatorAcrossAValve(t *testing.T) {
	got := solver.CirculatorAcrossValve(118*unit.PSI, 68*unit.PSI, 6*unit.PSI, solver.WaterColumn)
	assert.InDelta(t, 129, float64(got/unit.Foot), 0.5)
	got = solver.CirculatorAcrossValve(0, 0, 6*unit.PSI, solver.WaterColumn)
	assert.InDelta(t, 14, float64(got/unit.Foot), 0.5)
}

// downFed is a tower of 30 floors of 10 ft under a header of 40 psi, with two
// valves of 25 psi one below the other.
func downFed() *solver.Building {
	b := &solver.Building{Street: solver.Street{Static: 60 * unit.PSI, Low: 55 * unit.PSI}, HighOutlet: 6.5 * unit.Foot, LowOutlet: 0.7 * unit.Foot}
	for i := range 31 {
		l := solver.Level{Elevation: unit.Length(i) * 10 * unit.Foot, Height: 10 * unit.Foot}
		b.Levels = append(b.Levels, l)
	}
	b.Header = &solver.Header{Elevation: 300 * unit.Foot, Pressure: 40 * unit.PSI}
	valve := func(at unit.Length) *solver.Valve {
		return &solver.Valve{Elevation: at, Setting: 25 * unit.PSI}
	}
	b.Zones = []solver.Zone{
		{Name: "A", Bottom: 0, Top: 10, Supply: solver.FromHeader, Valve: valve(110 * unit.Foot)},
		{Name: "B", Bottom: 11, Top: 20, Supply: solver.FromHeader, Valve: valve(210 * unit.Foot)},
		{Name: "top", Bottom: 21, Top: 29, Supply: solver.FromHeader},
	}
	return b
}

// Each valve of a down-feed sees the zone above it, and stuck open it passes
// that on: by hand, with 0.4335 psi a foot.
func TestValvesBelowEachOther(t *testing.T) {
	b := downFed()
	require.NoError(t, b.Check())
	const gamma = solver.WaterColumn
	psi := func(p unit.Pressure) float64 { return float64(p / unit.PSI) }
	assert.InDelta(t, 40+0.43353*90, psi(b.Inlet(1, gamma)), 0.01, "header and 90 ft")
	assert.InDelta(t, 25+0.43353*100, psi(b.Inlet(0, gamma)), 0.01, "upper setting and 100 ft")
	assert.Zero(t, b.Inlet(2, gamma), "no valve")
	at := 50 * unit.Foot
	assert.InDelta(t, 25+0.43353*60, psi(b.At(5, at, gamma)), 0.01, "valve in order")
	assert.InDelta(t, 25+0.43353*160, psi(b.StuckOpen(0, at, gamma)), 0.01, "valve stuck open")
	assert.Equal(t, 1, b.ZoneOf(15))
	assert.Equal(t, -1, b.ZoneOf(30))

	// Stuck open is as if the valve had never been there.
	plain := downFed()
	plain.Zones[1].Bottom = 0
	plain.Zones = plain.Zones[1:]
	assert.InDelta(t, psi(plain.At(5, at, gamma)), psi(b.StuckOpen(0, at, gamma)), 1e-9)
}

// An up-feed valve sees the booster or the street, not its neighbour.
func TestInletOfAnUpFeedValve(t *testing.T) {
	b := downFed()
	b.Booster = &solver.Booster{Boost: 100 * unit.PSI, ShutOff: 120 * unit.PSI}
	b.Zones[1].Supply = solver.FromBooster
	got := float64(b.Inlet(1, solver.WaterColumn) / unit.PSI)
	assert.InDelta(t, 180-0.43353*210, got, 0.01)
}
