package solver

// UnitsUPC is UPC, Table 610.3 (earlier Table 6-5): water supply fixture
// units. The table prints the total; its footnote (from memory) gives a
// fixture with both waters three quarters of it on each. Rows marked Memory
// were recalled.
var UnitsUPC = []Fixture{
	{"Water closet 1.6 gpf", Private, "gravity tank", 2.5, 0, 2.5, Confirmed},
	{"Lavatory", Private, "faucet", 0.75, 0.75, 1, Confirmed},
	{"Bathtub or tub/shower", Private, "faucet", 3, 3, 4, Confirmed},
	{"Shower", Private, "per head", 1.5, 1.5, 2, Confirmed},
	{"Kitchen sink", Private, "faucet", 1.125, 1.125, 1.5, Confirmed},
	{"Dishwasher", Private, "automatic", 0, 1.5, 1.5, Confirmed},
	{"Clothes washer", Private, "automatic", 3, 3, 4, Confirmed},
	{"Laundry sink", Private, "faucet", 1.125, 1.125, 1.5, Confirmed},
	{"Drinking fountain", Private, "valve", 0.5, 0, 0.5, Confirmed},
	{"Bar sink", Public, "faucet", 1.5, 1.5, 2, Confirmed},
	{"Bar sink", Private, "faucet", 0.75, 0.75, 1, Confirmed},
	{"Mop or service sink", Public, "faucet", 2.25, 2.25, 3, Confirmed},
	{"Mop or service sink", Private, "faucet", 1.125, 1.125, 1.5, Confirmed},
	{"Hose bibb, first", Private, "valve", 2.5, 0, 2.5, Confirmed},
	{"Hose bibb, each additional", Private, "valve", 1, 0, 1, Confirmed},
	{"Lawn sprinkler, per head", Private, "valve", 1, 0, 1, Confirmed},
	{"Water closet 1.6 gpf", Public, "gravity tank", 2.5, 0, 2.5, Memory},
	{"Lavatory", Public, "faucet", 0.75, 0.75, 1, Memory},
	{"Shower", Public, "per head", 1.5, 1.5, 2, Memory},
}

// Flush valves of one branch by UPC, Table 610.10: units of the first four
// together, and of each further one; confirmed.
var (
	FlushClosetsUPC = Falling{First: []float64{40, 70, 90, 105}, Further: 10}
	FlushUrinalsUPC = Falling{First: []float64{20, 35, 45, 53}, Further: 5}
)
