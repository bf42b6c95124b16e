package walk

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
)

// Size is how big a building the walk goes through.
type Size string

// The sizes.
const (
	Small  Size = "small"
	Middle Size = "middle"
	Tall   Size = "tall"
)

// Sizes are the sizes, the smallest first, with their storeys.
var Sizes = []struct {
	Size   Size
	Lo, Hi int
	Says   string
}{
	{Small, 3, 6, "3 to 6 storeys, on the street or on a small pump"},
	{Middle, 8, 18, "8 to 18 storeys, pumped, in zones"},
	{Tall, 20, 36, "20 to 36 storeys, many zones"},
}

// storeys of a size; one that is not known is Middle.
func storeys(z Size) (known Size, lo, hi int) {
	for _, s := range Sizes {
		if s.Size == z {
			return s.Size, s.Lo, s.Hi
		}
	}
	return storeys(Middle)
}

// maxDraws bounds how many buildings are drawn before New gives up.
const maxDraws = 80

// New draws a building that keeps every limit, and the walk through it. The
// same three give the same walk on every platform.
func New(size Size, seed uint64, house problems.House) (*Walk, error) {
	size, lo, hi := storeys(size)
	h := fnv.New64a()
	fmt.Fprintf(h, "walk/%d/%s/%s", Version, size, house.System)
	rng := rand.New(rand.NewPCG(seed, h.Sum64()))
	var last error
	for n := 1; n <= maxDraws; n++ {
		sheet := problems.NewSheet(rng, house)
		b, set, err := draw(sheet, lo, hi, house)
		if err != nil {
			last = err
			continue
		}
		whole, err := solver.SolveWhole(b, solver.Case{Settings: set})
		if err != nil {
			last = err
			continue
		}
		if len(whole.Findings) > 0 {
			last = fmt.Errorf("walk: %s", whole.Findings[0].Says)
			continue
		}
		w, err := Through(whole, seed, house)
		if err != nil {
			last = err
			continue
		}
		w.Size, w.Drawn = size, n
		return w, nil
	}
	return nil, fmt.Errorf("walk: no building of size %s was found in %d draws from seed %d: %w", size, maxDraws, seed, last)
}

// settings are those of a house.
func settings(house problems.House, sheet *building.Sheet) (solver.Settings, error) {
	probe := problems.NewSheet(nil, house)
	probe.Set("before", 100)
	probe.Set("height", 1)
	p, err := problems.Bind(standSum, 0, house, probe)
	if err != nil {
		return solver.Settings{}, err
	}
	return solver.Settings{Gamma: p.World().Gamma(), Profile: sheet.Profile, TopMin: sheet.Press(sheet.TopMin)}, nil
}

// draw lays a building out in round numbers.
func draw(s *building.Sheet, lo, hi int, house problems.House) (*solver.Building, solver.Settings, error) {
	set, err := settings(house, s)
	if err != nil {
		return nil, set, err
	}
	pick := func(us, si []float64) unit.Pressure { return s.Press(s.Pick(us, si)) }
	uses := []solver.Use{solver.Apartment, solver.Residence, solver.Hotel}
	o := solver.Outline{Use: uses[s.Int(0, len(uses)-1)], Storeys: s.Int(lo, hi), Below: 1, Booster: true, Zoned: true, Heater: true, Loop: true}
	if lo < 8 {
		o.Booster = s.Chance(0.5)
	} else {
		o.Below, o.OwnPlant = s.Int(1, 2), true
	}
	o.Floor = s.Length(s.Pick([]float64{9, 9.5, 10}, []float64{2.7, 2.8, 3}))
	o.First = s.Length(s.Pick([]float64{12, 13, 15}, []float64{3.6, 4, 4.5}))
	o.Under = s.Length(s.Pick([]float64{10, 11}, []float64{3, 3.3}))
	o.Static = pick([]float64{55, 60, 65, 70, 75}, []float64{380, 400, 420, 450, 480, 500})
	o.Low = o.Static - pick([]float64{6, 8, 10}, []float64{40, 50, 60})
	o.Losses = solver.Losses{Meter: pick([]float64{4, 5, 6}, []float64{30, 35, 40}), Backflow: pick([]float64{8, 10, 12}, []float64{60, 70, 80}), Strainer: pick([]float64{1, 2}, []float64{8, 12})}
	o.Suites = s.Int(4, 10)
	o.Risers = 1 + (o.Suites-1)/4
	o.FallOff = pick([]float64{5, 8}, []float64{35, 50})
	o.Hot, o.Mixed = unit.Celsius(60), unit.Fahrenheit(s.Pick([]float64{125, 130}, []float64{125.6, 129.2}))
	suites := float64(o.Suites * o.Storeys)
	o.Volume = unit.Volume(40*suites) * unit.USGallon
	if !s.US() {
		o.Volume = unit.Volume(150*suites) * unit.Litre
	}
	b, err := o.Building(set)
	if err != nil {
		return nil, set, err
	}
	if !s.US() {
		roundOff(b)
	}
	return b, set, nil
}

// roundOff gives a metric building metric settings: valves and pumps up to
// 5 kPa, the rest to what its plates say.
func roundOff(b *solver.Building) {
	up := func(p *unit.Pressure) { *p = solver.Upward(*p, 5*unit.Kilopascal) }
	for i := range b.Zones {
		if v := b.Zones[i].Valve; v != nil {
			up(&v.Setting)
		}
	}
	if p := b.Booster; p != nil {
		up(&p.Boost)
		up(&p.ShutOff)
	}
	b.HighOutlet, b.LowOutlet, b.Street.MainDepth = 2*unit.Metre, 0.2*unit.Metre, 1.8*unit.Metre
	if b.Heater != nil {
		b.Heater.Rating = 1035 * unit.Kilopascal
	}
	if b.Loop != nil {
		b.Loop.ValveInLoop = 35 * unit.Kilopascal
	}
}
