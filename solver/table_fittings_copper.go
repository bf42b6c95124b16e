package solver

// FittingSizes are the columns of the tables of equivalent lengths.
var FittingSizes = []string{"1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3"}

// FittingsCopper is IPC (2018), Appendix E, Table E103.3(5), after the Copper
// Tube Handbook: feet of straight tube that lose what a soldered fitting
// loses, by size. The rows were recalled.
var FittingsCopper = []Fitting{
	{"90° elbow", []float64{1, 2, 2.5, 3, 4, 5.5, 7, 9}},
	{"45° elbow", []float64{0.5, 0.5, 1, 1, 1.5, 2, 2.5, 3.5}},
	{"tee, through the branch", []float64{2, 3, 4.5, 5.5, 7, 9, 12, 15}},
	{"swing check valve", []float64{2, 3, 4.5, 5.5, 6.5, 9, 11.5, 14.5}},
}
