package solver

// Potential is the place of a metal in the galvanic series.
type Potential struct {
	Metal      string
	MilliVolts float64
}

// GalvanicSeries are metals of a water service from the least noble up, with
// places inside their ranges in flowing sea water against Ag/AgCl: galvanic
// series table of 2006; confirmed. The places differ with the water; the order
// is what is used.
var GalvanicSeries = []Potential{
	{"magnesium", -1620},
	{"zinc", -1000},
	{"aluminium", -820},
	{"steel", -650},
	{"yellow brass", -340},
}

// GalvanicAreas is the wetted area of the nobler of two metals over that of
// the one that is eaten, which has the lower potential.
func GalvanicAreas(potentialA, potentialB, areaA, areaB float64) float64 {
	if potentialB < potentialA {
		return areaA / areaB
	}
	return areaB / areaA
}
