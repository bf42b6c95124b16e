package solver

// Occupancy is who uses a fixture.
type Occupancy string

// Private fixtures serve one dwelling or room, public ones whoever comes.
const (
	Private Occupancy = "private"
	Public  Occupancy = "public"
)

// Fixture is a row of a table of fixture units: what the fixture puts on its
// cold pipe, on its hot pipe, and on a pipe that feeds both.
type Fixture struct {
	Name             string
	Use              Occupancy
	Control          string // "flush tank", "faucet"
	Cold, Hot, Total float64
	Confidence       Confidence
}

// UnitsOf is the table of fixture units of a profile.
func UnitsOf(profile string) []Fixture {
	switch profile {
	case "npc":
		return UnitsNPC
	case "upc":
		return UnitsUPC
	}
	return UnitsIPC
}

// FixtureIn is the first row of a table with the name, use and control; an
// empty control is any.
func FixtureIn(table []Fixture, name string, use Occupancy, control string) (Fixture, bool) {
	for _, f := range table {
		if f.Name == name && f.Use == use && (control == "" || f.Control == control) {
			return f, true
		}
	}
	return Fixture{}, false
}

// Falling is a table of flush valves on one branch: the more there are, the
// less each further one adds, since few flush at once.
type Falling struct {
	First   []float64 // of one, two, three ... together
	Further float64   // of each one more
}

// Units are the fixture units of n flush valves together.
func (f Falling) Units(n int) float64 {
	if n <= 0 {
		return 0
	}
	if n <= len(f.First) {
		return f.First[n-1]
	}
	return f.First[len(f.First)-1] + f.Further*float64(n-len(f.First))
}
