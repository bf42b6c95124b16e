package solver

// shopTop is what shops plan to leave at the highest outlet where the code
// names no number for it. Common practice, no source.
var shopTop = Limit{
	US: psi(25), SI: kpa(170), Over: true, None: true,
	Words:      "no number for the highest outlet here; 25 psi (170 kPa) is shop practice, and the fixture maker governs",
	Confidence: Practice,
}

// Profiles are the code editions to choose from. Section numbers and values
// marked Memory were recalled, not read; buy or consult the code itself.
var Profiles = []Profile{
	{
		ID: "npc", Name: "National Plumbing Code of Canada", Edition: "2020",
		StaticMax: Limit{US: psi(79.8), SI: kpa(550), Over: true, Section: "2.6.3.3.", Confidence: Memory,
			Words: "static pressure at a fixture that may be more than 550 kPa: pressure reducing valve"},
		TopMin: shopTop,
		ShowerMin: Limit{US: psi(20), SI: kpa(140), Over: true, None: true, Confidence: Practice,
			Words: "no number here: the flow pressure that the maker asks; 20 psi (140 kPa) is usual for a shower"},
		Recirculation: RecirculationRule{
			Length:  Limit{US: feet(98.4), SI: metres(30), Over: true, Section: "2.6.1.1.(2)", Confidence: Memory, Words: "developed length more than 30 m"},
			Storeys: 4, From: "developed length of the hot water system",
			Words: "more than 30 m of developed length, or more than 4 storeys supplied"},
		FixtureHot: Limit{US: fahrenheit(120), SI: celsius(49), Over: true, Section: "2.2.10.7.", Confidence: Memory,
			Words: "shower or bath: not more than 49 °C"},
		ExpansionCap: Limit{US: psi(79.8), SI: kpa(550), Over: true, None: true, Section: "2.6.1.11.", Confidence: Memory,
			Words: "a closed system needs protection from expansion; no cap printed here, 550 kPa is the static limit"},
		SuctionMin: Limit{US: psi(10), SI: kpa(70), Over: true, None: true, Confidence: Practice,
			Words: "no number here; the water utility sets the lowest suction, often 20 psi (140 kPa) in the main"},
	},
	{
		ID: "ipc", Name: "International Plumbing Code", Edition: "2021",
		StaticMax: Limit{US: psi(80), SI: kpa(552), Over: true, Section: "604.8", Confidence: Memory,
			Words: "static pressure in a building more than 80 psi (552 kPa): pressure reducing valve with strainer"},
		TopMin: shopTop,
		ShowerMin: Limit{US: psi(20), SI: kpa(138), Over: true, Section: "Table 604.3", Confidence: Confirmed,
			Words: "shower with a balanced-pressure or thermostatic valve: 20 psi (138 kPa) flowing"},
		Recirculation: RecirculationRule{
			Length: Limit{US: feet(50), SI: metres(15.24), Over: true, Section: "607.2", Confidence: Confirmed, Words: "developed length more than 50 ft"},
			From:   "developed length from the source to the fixture; pipe that is recirculated or heat traced counts as the source",
			Words:  "more than 50 ft (15.24 m) of developed length from the source to the fixture, where recirculated pipe counts as the source; storeys are not counted"},
		FixtureHot: Limit{US: fahrenheit(120), SI: celsius(49), Over: true, Section: "412.3", Confidence: Memory,
			Words: "shower: not more than 120 °F (49 °C) by the valve's limit stop"},
		ExpansionCap: Limit{US: psi(80), SI: kpa(552), Over: true, Section: "607.3 with 604.8", Confidence: Confirmed,
			Words: "a closed hot system keeps within the static limit of 80 psi (552 kPa)"},
		SuctionMin: Limit{US: psi(10), SI: kpa(69), Over: true, Section: "606.5.5", Confidence: Memory,
			Words: "booster: cut-off so that suction does not fall below 10 psi (69 kPa)"},
	},
	{
		ID: "upc", Name: "Uniform Plumbing Code", Edition: "2024",
		StaticMax: Limit{US: psi(80), SI: kpa(552), Over: true, Section: "608.2", Confidence: Confirmed,
			Words: "static pressure more than 80 psi (552 kPa): regulator, set to 80 psi or less"},
		TopMin: Limit{US: psi(15), SI: kpa(103), Over: true, Section: "608.1", Confidence: Memory,
			Words: "at least 15 psi (103 kPa) left after all losses at the highest outlet; shops plan for 25"},
		ShowerMin: Limit{US: psi(20), SI: kpa(138), Over: true, None: true, Confidence: Practice,
			Words: "no number for a shower here; 20 psi (138 kPa) is usual, and the maker governs"},
		Recirculation: RecirculationRule{
			Length: Limit{None: true, Confidence: Memory, Words: "no length in the model text"},
			From:   "developed length of the hot water system",
			Words:  "no such rule in the model text; states add their own, and practice recirculates long runs"},
		FixtureHot: Limit{US: fahrenheit(120), SI: celsius(49), Over: true, Section: "408.3", Confidence: Memory,
			Words: "shower or tub-shower: not more than 120 °F (49 °C)"},
		ExpansionCap: Limit{US: psi(80), SI: kpa(552), Over: true, Section: "608.2", Confidence: Confirmed,
			Words: "expansion does not take the pressure above 80 psi (552 kPa); designed systems may use a relief valve set at 100 psi or less"},
		SuctionMin: Limit{US: psi(10), SI: kpa(69), Over: true, Section: "609.9", Confidence: Confirmed,
			Words: "low-suction cut-off within 5 ft of the booster's inlet, set at 10 psi (69 kPa) or more"},
	},
	{
		ID: "shop", Name: "Shop practice", Edition: "no code",
		StaticMax: Limit{US: psi(80), SI: kpa(550), Over: true, Confidence: Practice,
			Words: "no more than 80 psi (550 kPa) at any fixture"},
		TopMin: Limit{US: psi(25), SI: kpa(170), Over: true, Confidence: Practice,
			Words: "at least 25 psi (170 kPa) at the highest outlet"},
		ShowerMin: Limit{US: psi(25), SI: kpa(170), Over: true, Confidence: Practice,
			Words: "at least 25 psi (170 kPa) at a shower"},
		Recirculation: RecirculationRule{
			Length:  Limit{US: feet(100), SI: metres(30), Over: true, Confidence: Practice, Words: "more than 100 ft (30 m)"},
			Storeys: 4, From: "developed length, heater to farthest outlet",
			Words: "more than 100 ft (30 m) from heater to farthest outlet, or more than 4 storeys"},
		FixtureHot: Limit{US: fahrenheit(120), SI: celsius(49), Over: true, Confidence: Practice,
			Words: "no hotter than 120 °F (49 °C) at a shower or bath"},
		ExpansionCap: Limit{US: psi(80), SI: kpa(550), Over: true, Confidence: Practice,
			Words: "warmed water keeps below 80 psi (550 kPa)"},
		SuctionMin: Limit{US: psi(10), SI: kpa(70), Over: true, Confidence: Practice,
			Words: "at least 10 psi (70 kPa) at the booster's inlet"},
	},
}
