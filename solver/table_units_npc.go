package solver

// UnitsNPC is National Plumbing Code of Canada (2020), Division B, Table
// 2.6.3.2.-A: hydraulic loads in fixture units. All rows were recalled as
// those of the IPC's table and need the printed code beside them.
var UnitsNPC = []Fixture{
	{"Bathroom group, 6 L per flush tank", Private, "flush tank", 2.7, 1.5, 3.6, Memory},
	{"Bathtub with or without shower head", Private, "faucet", 1.0, 1.0, 1.4, Memory},
	{"Bathtub with or without shower head", Public, "faucet", 3.0, 3.0, 4.0, Memory},
	{"Lavatory, 8.3 L/min or less", Private, "faucet", 0.5, 0.5, 0.7, Memory},
	{"Lavatory, 8.3 L/min or less", Public, "faucet", 1.5, 1.5, 2.0, Memory},
	{"Shower head, 9.5 L/min or less per head", Private, "mixing valve", 1.0, 1.0, 1.4, Memory},
	{"Shower head, 9.5 L/min or less per head", Public, "mixing valve", 3.0, 3.0, 4.0, Memory},
	{"Kitchen sink, domestic, 8.3 L/min or less", Private, "faucet", 1.0, 1.0, 1.4, Memory},
	{"Water closet, 6 L per flush or less, flush tank", Private, "flush tank", 2.2, 0, 2.2, Memory},
	{"Hose bibb, 1/2 in", Private, "valve", 2.5, 0, 2.5, Memory},
}
