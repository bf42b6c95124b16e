package devices

import "slices"

// serviceDetail is the buried service, from the main to the wall.
var serviceDetail = Detail{
	Arrangement: Arrangement{
		ID: "service", Title: "Buried service with its bend",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the street main", To: "the meter", Stand: []Station{
				{Device: "service-valve"}, {Device: "restraint", Marks: []string{"elbow, rodded"}}, {Device: "service-anode"}, {Device: "wall-sleeve"}, {Device: "main-valve"}, {Device: "drain-port"},
			}},
		},
	},
	Flow: []string{"service-valve", "wall-sleeve", "main-valve", "drain-port"},
	Checks: []Check{
		{"service-rodded", "The bend is held by rods, by locked joints or by a block.", "Water pushes a bend outward, most of all under test.", physics, func(a *Arrangement) bool {
			return bare("main", "restraint", "elbow, no rods")(a)
		}, ""},
		{"service-valved", "The utility can shut the service at the property line.", "A burst service must not need the main shut.", practice, has("main", "service-valve", 1), ""},
		{"service-sleeved", "The pipe comes through the wall in a sleeve.", "A wall settles; the pipe must not carry it.", recalled("IPC 305: pipes through foundation walls are sleeved or arched over"), has("main", "wall-sleeve", 1), ""},
		{"service-inside", "The main valve stands inside, behind the wall.", "It must be reached in an emergency.", read("Ontario Building Code, valves of the service (text seen)"), before("main", "wall-sleeve", "main-valve"), "main-valve"},
		{"service-drain-behind", "The drain stands behind the main valve.", "Ahead of it, it drains the street.", read("Ontario Building Code, drain port after the building valve (text seen)"), before("main", "main-valve", "drain-port"), "drain-port"},
	},
	Faults: []Fault{
		{ID: "service-no-rods", Breaks: "service-rodded", Run: "main", At: "restraint", Did: "The rods are missing at the elbow.", Then: "At the test the elbow is pushed off its pipe.", Shows: ShowsThrust, Change: unmark("main", "restraint", "elbow, rodded", "elbow, no rods")},
		{ID: "service-no-sleeve", Breaks: "service-sleeved", Run: "main", At: "service-anode", Did: "The pipe is walled in with no sleeve.", Then: "The wall settles on it and shears it.", Change: missing("main", "wall-sleeve")},
		{ID: "service-valve-outside", Breaks: "service-inside", Run: "main", At: "main-valve", Did: "The main valve is buried outside the wall.", Then: "With water running in the cellar nobody can reach it.", Change: swapped("main", "wall-sleeve", "main-valve")},
		{ID: "service-drain-early", Breaks: "service-drain-behind", Run: "main", At: "drain-port", Did: "The drain stands ahead of the main valve.", Then: "With the valve shut it drains the street, and the building stays full.", Change: swapped("main", "main-valve", "drain-port")},
		{ID: "service-no-valve", Breaks: "service-valved", Run: "main", At: "restraint", Did: "There is no service valve at the property line.", Then: "A burst service can only be stopped at the main, with the whole street off.", Change: missing("main", "service-valve")},
	},
}

// zonePairDetail is the cold and the hot of one zone, which must stand at one
// pressure where they meet.
var zonePairDetail = Detail{
	Arrangement: Arrangement{
		ID: "zone-pair", Title: "Hot and cold of one zone",
		Runs: []Run{
			{Name: "cold", Join: -1, From: "the riser", To: "the shower", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "entry-strainer"}, {Device: "reducing-valve"}, {Device: "pressure-gauge"}, {Device: "riser-valve"}, {Device: "fixture-stop"}, {Device: "fixture-limiter"},
			}},
			{Name: "hot", Of: "cold", After: 3, Join: 6, Stand: []Station{{Device: "expansion-tank"}, {Device: "dip-tube", Marks: []string{"heater"}}}},
		},
	},
	Flow: []string{"entry-strainer", "reducing-valve", "riser-valve", "fixture-stop", "fixture-limiter"},
	Checks: []Check{
		{"zone-equal", "The heater of a zone is fed from behind the zone's reducing valve.", "Hot and cold must stand at one pressure where they meet.", practice, leaves("hot", "reducing-valve", "fixture-limiter"), ""},
		{"zone-limited", "The shower has a valve that limits what leaves it.", "The master mixing valve guards no skin.", read("Ontario Building Code, 7.6.5.2: shower valves, 49 °C"), has("cold", "fixture-limiter", 1), ""},
		{"zone-expansion", "Where a reducing valve closes the way back, an expansion tank stands at the heater.", "The growing water cannot go back through it.", read("IPC text as Philadelphia adopted it, P-607.3"), has("hot", "expansion-tank", 1), ""},
		{"zone-strainer-first", "The strainer stands ahead of the reducing valve.", "Behind it the strainer guards nothing.", read("UPC 2015, 608.2; IPC 604.8, from memory"), before("cold", "entry-strainer", "reducing-valve"), "entry-strainer"},
	},
	Faults: []Fault{
		{ID: "zone-unequal", Breaks: "zone-equal", Run: "hot", At: "dip-tube", Did: "The heater is fed from ahead of the zone's reducing valve.", Then: "Hot stands at the riser's pressure and cold at the zone's: showers scald, and hot water crosses into the cold wherever a mixing valve leaks.", Shows: ShowsScald, Change: moved("hot", 0)},
		{ID: "zone-no-limiter", Breaks: "zone-limited", Run: "cold", At: "fixture-stop", Did: "The shower has a plain valve that limits nothing.", Then: "When a neighbour flushes, the cold falls off and the shower scalds.", Shows: ShowsScald, Change: func(a *Arrangement) {
			missing("cold", "fixture-limiter")(a)
			a.run("hot").Join = len(a.run("cold").Stand)
		}},
		{ID: "zone-no-expansion", Breaks: "zone-expansion", Run: "hot", At: "dip-tube", Did: "The heater behind a reducing valve has no expansion tank.", Then: "Each heating drives the whole zone's pressure up until its relief valve weeps.", Shows: ShowsGrowth, Change: missing("hot", "expansion-tank")},
		{ID: "zone-strainer-behind", Breaks: "zone-strainer-first", Run: "cold", At: "entry-strainer", Did: "The strainer stands behind the reducing valve.", Then: "Grit reaches the seat first: at night the pressure creeps up to the riser's.", Shows: ShowsStatic, Change: swapped("cold", "entry-strainer", "reducing-valve")},
	},
}

// openFeedDetail is a small heater with the growing water let back into the
// street, where the shop still builds so.
var openFeedDetail = Detail{
	Arrangement: Arrangement{
		ID: "open-feed", Title: "Small heater on an open feed, where the rule asks for a bleed hole in the check",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the street, with no check", To: "the taps", Stand: []Station{
				{Device: "main-valve"}, {Device: "isolating-valve"}, {Device: "feed-check", Marks: []string{"bleed hole"}}, {Device: "vacuum-relief"}, {Device: "dip-tube"}, {Device: "temperature-relief"}, {Device: "thermometer"},
			}},
		},
	},
	Flow: []string{"main-valve", "feed-check", "dip-tube", "thermometer"},
	Checks: []Check{
		{"open-bleed", "The check has a bleed hole, since no expansion tank stands behind it.", "What grows must have a way back.", read("Massachusetts, 248 CMR 10.14 (thermal check with a 1/8 in hole), as tradesmen quote it"), func(a *Arrangement) bool {
			return marked("main", "feed-check", "bleed hole")(a) || has("main", "expansion-tank", 1)(a)
		}, ""},
		{"open-line", "Nothing ahead of a bleed hole closes the line.", "The hole is no use where the growing water meets a shut valve farther up.", physics, func(a *Arrangement) bool {
			r := a.run("main")
			return !slices.ContainsFunc(r.Stand, func(s Station) bool { return s.Device == "reducing-valve" || s.Device == "double-check" })
		}, ""},
		{"open-check-turned", "The check opens toward the heater.", "Turned, no cold water comes in.", practice, faces("main", "feed-check"), ""},
		{"open-relief", "A temperature and pressure relief valve stands in the tank.", "It is the last guard.", read("Illinois Plumbing Code, 890.1230"), has("main", "temperature-relief", 1), ""},
	},
	Faults: []Fault{
		{ID: "open-solid-check", Breaks: "open-bleed", Run: "main", At: "feed-check", Did: "The check is solid, and there is no expansion tank.", Then: "The growing water has no way back: each heating opens the relief valve.", Shows: ShowsGrowth, Change: unmark("main", "feed-check", "bleed hole", "solid")},
		{ID: "open-reducing", Breaks: "open-line", Run: "main", At: "reducing-valve", Did: "A reducing valve ahead closes the line that the bleed hole counts on.", Then: "Water passes the hole and stops at the valve: each heating drives the pressure up. It needs an expansion tank now.", Shows: ShowsGrowth, Change: added("main", "isolating-valve", Station{Device: "reducing-valve"})},
		{ID: "open-double-check", Breaks: "open-line", Run: "main", At: "double-check", Did: "A double check ahead closes the line that the bleed hole counts on.", Then: "Water passes the hole and stops at the checks: each heating drives the pressure up. It needs an expansion tank now.", Shows: ShowsGrowth, Change: added("main", "isolating-valve", Station{Device: "double-check"})},
		{ID: "open-no-relief", Breaks: "open-relief", Run: "main", At: "dip-tube", Did: "The tank has no temperature and pressure relief valve.", Then: "With a stuck thermostat nothing stops the tank from bursting.", Change: missing("main", "temperature-relief")},
	},
}
