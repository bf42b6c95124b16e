package solver

// FittingsIllinois is 77 Ill. Adm. Code 890, Appendix A, Table Q, its columns
// of cast fittings: feet of straight tube that lose what a fitting loses, by
// size; confirmed.
var FittingsIllinois = []Fitting{
	{"90° elbow", []float64{1, 2, 4, 5, 8, 11, 14, 18}},
	{"45° elbow", []float64{0.5, 1, 2, 2, 3, 5, 8, 11}},
	{"tee, through the branch", []float64{2, 3, 5, 7, 9, 12, 16, 20}},
}
