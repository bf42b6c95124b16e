package solver

// PipeLoss is what one size of pipe loses, in Btu/h for each foot.
type PipeLoss struct {
	Nominal   string
	Bare      float64 // copper tube, type L, without insulation
	Insulated float64 // any pipe, insulated
}

// HeatLosses are heat losses of pipe at 140 °F in air of 70 °F, the smallest
// size first: the circulation table of older ASHRAE and ASPE guides as a
// public engineering document prints it; confirmed.
var HeatLosses = []PipeLoss{
	{"1/2", 19, 15},
	{"3/4", 26, 17},
	{"1", 32, 19},
	{"1-1/4", 39, 21},
	{"1-1/2", 46, 24},
	{"2", 58, 29},
	{"2-1/2", 68, 32},
	{"3", 81, 38},
	{"4", 103, 46},
}
