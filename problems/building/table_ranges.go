package building

import "riserwork/solver"

// kindOfBuilding is what is usual for one use. US and metric heights are two
// sets of round numbers, not conversions of each other.
type kindOfBuilding struct {
	use                solver.Use
	minStoreys, maxSt  int
	often              []int
	floorUS, floorSI   []Height
	groundUS, groundSI []Height
	parkingMin, maxPrk int
}

// kinds of buildings: storeys, floor to floor heights, levels of parking.
// Common practice, no source.
var kinds = []kindOfBuilding{
	{solver.Apartment, 3, 60, []int{4, 6, 8, 10, 12, 15, 18, 20, 24, 28, 32, 40},
		inches(104, 106, 108, 116, 120), plains(2.75, 2.85, 2.9, 3.0),
		plains(12, 13, 14, 15), plains(3.6, 4.0, 4.5), 0, 3},
	{solver.Hotel, 4, 45, []int{5, 6, 8, 10, 12, 15, 18, 22, 28},
		inches(108, 116, 120), plains(2.9, 3.0, 3.1),
		plains(14, 16, 18, 20), plains(4.5, 5.0, 6.0), 0, 3},
	{solver.Hospital, 3, 15, []int{3, 4, 5, 6, 8, 10, 12},
		inches(162, 168, 174, 180), plains(4.2, 4.5, 4.8),
		plains(18, 19, 20), plains(5.3, 5.6, 6.0), 0, 2},
	{solver.Residence, 3, 25, []int{4, 5, 6, 8, 10, 12, 16, 20},
		inches(108, 116, 120), plains(2.9, 3.0),
		plains(13, 14, 15), plains(3.8, 4.0, 4.5), 0, 1},
	{solver.Office, 3, 60, []int{4, 6, 8, 10, 12, 15, 20, 25, 30, 40},
		inches(144, 150, 156, 162), plains(3.7, 3.8, 3.9, 4.0),
		plains(16, 17, 18, 20), plains(4.8, 5.0, 5.5, 6.0), 0, 3},
	{solver.MixedUse, 6, 60, []int{8, 12, 16, 20, 25, 30, 40, 50},
		inches(104, 106, 108, 116, 120), plains(2.85, 2.9, 3.0),
		plains(16, 17, 18, 20), plains(4.8, 5.0, 5.5, 6.0), 1, 3},
}

// Heights of outlets above their floor, in feet and in metres: the highest is
// the shower head, the lowest the water closet. Common practice, no source.
const (
	ShowerFeet, ShowerMetres = 6.5, 2.0
	ClosetFeet, ClosetMetres = 0.7, 0.2
)

// Street pressures, losses and depths. Common practice, no source.
var (
	streetUS     = []float64{50, 55, 60, 65, 70, 75, 58, 62, 68}
	streetSI     = []float64{350, 375, 400, 425, 450, 475, 500}
	streetLowUS  = []float64{30, 35, 38}
	streetLowSI  = []float64{200, 225, 250}
	streetHighUS = []float64{90, 100, 110}
	streetHighSI = []float64{600, 650, 700}
	swingUS      = []float64{5, 8, 10, 12}
	swingSI      = []float64{35, 50, 75}
	meterUS      = []float64{4, 5, 6, 7, 8}
	meterSI      = []float64{30, 35, 40, 45, 50}
	doubleUS     = []float64{4, 5, 6}
	doubleSI     = []float64{30, 35, 40}
	reducedUS    = []float64{10, 11, 12}
	reducedSI    = []float64{70, 80, 90}
	strainerUS   = []float64{1.5, 2, 2.5, 3}
	strainerSI   = []float64{10, 15, 20}
	mainUS       = []float64{3, 4, 5, 6, 7, 8}
	mainSI       = []float64{0.9, 1.2, 1.5, 1.7, 2.0, 2.4}
	parkingUS    = inches(114, 120, 126)
	parkingSI    = plains(2.9, 3.0, 3.2)
)
