package solver

// UnitsIPC is IPC (2018), Appendix E, Table E103.3(2): load values in water
// supply fixture units. Rows marked Memory were recalled.
var UnitsIPC = []Fixture{
	{"Bathroom group", Private, "flush tank", 2.7, 1.5, 3.6, Confirmed},
	{"Bathroom group", Private, "flushometer valve", 6.0, 3.0, 8.0, Confirmed},
	{"Bathtub", Private, "faucet", 1.0, 1.0, 1.4, Confirmed},
	{"Bathtub", Public, "faucet", 3.0, 3.0, 4.0, Confirmed},
	{"Bidet", Private, "faucet", 1.5, 1.5, 2.0, Confirmed},
	{"Combination fixture", Private, "faucet", 2.25, 2.25, 3.0, Confirmed},
	{"Dishwashing machine", Private, "automatic", 0, 1.4, 1.4, Confirmed},
	{"Drinking fountain", Public, "3/8 in valve", 0.25, 0, 0.25, Confirmed},
	{"Kitchen sink", Private, "faucet", 1.0, 1.0, 1.4, Confirmed},
	{"Kitchen sink", Public, "faucet", 3.0, 3.0, 4.0, Confirmed},
	{"Laundry trays (1 to 3)", Private, "faucet", 1.0, 1.0, 1.4, Confirmed},
	{"Lavatory", Private, "faucet", 0.5, 0.5, 0.7, Confirmed},
	{"Lavatory", Public, "faucet", 1.5, 1.5, 2.0, Confirmed},
	{"Service sink", Public, "faucet", 2.25, 2.25, 3.0, Confirmed},
	{"Shower head", Public, "mixing valve", 3.0, 3.0, 4.0, Memory},
	{"Shower head", Private, "mixing valve", 1.0, 1.0, 1.4, Memory},
	{"Urinal", Public, "1 in flushometer valve", 10.0, 0, 10.0, Memory},
	{"Urinal", Public, "3/4 in flushometer valve", 5.0, 0, 5.0, Memory},
	{"Urinal", Public, "flush tank", 3.0, 0, 3.0, Memory},
	{"Washing machine (8 lb)", Private, "automatic", 1.0, 1.0, 1.4, Memory},
	{"Washing machine (8 lb)", Public, "automatic", 2.25, 2.25, 3.0, Memory},
	{"Washing machine (15 lb)", Public, "automatic", 3.0, 3.0, 4.0, Memory},
	{"Water closet", Private, "flushometer valve", 6.0, 0, 6.0, Memory},
	{"Water closet", Private, "flush tank", 2.2, 0, 2.2, Memory},
	{"Water closet", Public, "flushometer valve", 10.0, 0, 10.0, Memory},
	{"Water closet", Public, "flush tank", 5.0, 0, 5.0, Memory},
	{"Water closet", Public, "flushometer tank", 2.0, 0, 2.0, Memory},
}
