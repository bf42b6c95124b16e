package solver

// SmoothnessC are values of the C of Hazen and Williams for design: Lindeburg,
// Civil Engineering Reference Manual, 4th ed. (1986), as adapted in an
// environmental engineering reference, Table 4.4; confirmed. Copper is printed
// as 140, 145 and 150 by others, so a problem always tells its C.
var SmoothnessC = []Smoothness{
	{"copper tube", 140},
	{"plastic pipe", 150},
	{"cement-lined ductile iron", 140},
	{"galvanized steel", 120},
	{"cast iron, 10 years old", 110},
	{"cast iron, 20 years old", 90},
}

// Smoothness is the C of a material.
type Smoothness struct {
	Material string
	C        float64
}
