package building

import (
	"strconv"

	"riserwork/solver"
	"riserwork/solver/unit"
)

// Plan says which buildings suit a skill. The zero Plan is any use, any
// number of storeys that the use allows, no parking.
type Plan struct {
	Uses    []solver.Use // nil: any
	Min     int          // storeys; 0: as the use has it
	Max     int
	Parking bool // may have parking levels below ground
	Cellar  bool // at least one level below ground
	NoSkip  bool // every level number is used: labels are counts
}

// Tower is a drawn building with its heights as they are told.
type Tower struct {
	*solver.Building
	Storeys int
	Floor   Height // floor to floor, typical
	Ground  Height // floor to floor, level 1
	Parking Height // floor to floor below ground
	Below   int    // levels below ground
}

// Tower draws a building: its use, storeys and heights. It becomes the
// sheet's building, with the outlet heights of a shower and a water closet.
func (s *Sheet) Tower(p Plan) *Tower {
	k := s.kind(p)
	lo, hi := max(k.minStoreys, p.Min), k.maxSt
	if p.Max > 0 {
		hi = min(hi, p.Max)
	}
	t := &Tower{Storeys: s.storeys(k, lo, max(lo, hi))}
	if s.US() {
		t.Floor, t.Ground, t.Parking = one(s.Rand, k.floorUS), one(s.Rand, k.groundUS), one(s.Rand, parkingUS)
	} else {
		t.Floor, t.Ground, t.Parking = one(s.Rand, k.floorSI), one(s.Rand, k.groundSI), one(s.Rand, parkingSI)
	}
	if p.Parking || p.Cellar {
		t.Below = s.Int(k.parkingMin, k.maxPrk)
		if p.Cellar {
			t.Below = max(1, t.Below)
		}
	}
	skip13 := !p.NoSkip && t.Storeys > 13 && s.Chance(0.3)
	t.Building = s.build(k.use, t, skip13)
	s.Building = t.Building
	s.Focus = t.Building.Top()
	return t
}

// kind draws a use that the plan allows and that can have its storeys.
func (s *Sheet) kind(p Plan) kindOfBuilding {
	var fit []kindOfBuilding
	for _, k := range kinds {
		if (len(p.Uses) == 0 || contains(p.Uses, k.use)) && k.maxSt >= p.Min && (p.Max == 0 || k.minStoreys <= p.Max) {
			fit = append(fit, k)
		}
	}
	if len(fit) == 0 {
		return kinds[0]
	}
	return one(s.Rand, fit)
}

// storeys draws the usual numbers four times in five, any other otherwise.
func (s *Sheet) storeys(k kindOfBuilding, lo, hi int) int {
	var usual []int
	for _, n := range k.often {
		if n >= lo && n <= hi {
			usual = append(usual, n)
		}
	}
	if len(usual) > 0 && s.Chance(0.8) {
		return one(s.Rand, usual)
	}
	return s.Int(lo, hi)
}

func contains[T comparable](list []T, v T) bool {
	for _, x := range list {
		if x == v {
			return true
		}
	}
	return false
}

// build stacks the levels of a tower.
func (s *Sheet) build(use solver.Use, t *Tower, skip13 bool) *solver.Building {
	b := &solver.Building{Use: use, Ground: t.Below}
	b.HighOutlet, b.LowOutlet = unit.Length(ShowerMetres), unit.Length(ClosetMetres)
	if s.US() {
		b.HighOutlet, b.LowOutlet = ShowerFeet*unit.Foot, ClosetFeet*unit.Foot
	}
	at := -s.Length(t.Parking.Value) * unit.Length(t.Below)
	add := func(label string, role solver.Role, h Height) {
		b.Levels = append(b.Levels, solver.Level{Label: label, Role: role, Elevation: at, Height: s.Length(h.Value)})
		at += s.Length(h.Value)
	}
	for i := t.Below; i > 0; i-- {
		add("P"+strconv.Itoa(i), solver.Parking, t.Parking)
	}
	add("1", solver.GroundRole, t.Ground)
	for n := 2; n <= t.Storeys; n++ {
		label := n
		if skip13 && n >= 13 {
			label++
		}
		add(strconv.Itoa(label), solver.Typical, t.Floor)
	}
	add("Roof", solver.Roof, Height{})
	return b
}

// Up is the height of level 1's floor to the floor of the n-th storey, in the
// unit of heights.
func (t *Tower) Up(n int) float64 {
	if n <= 1 {
		return 0
	}
	return t.Ground.Value + float64(n-2)*t.Floor.Value
}

// Level is the label of the n-th storey.
func (t *Tower) Level(n int) string { return t.Levels[t.Storey(n)].Label }
