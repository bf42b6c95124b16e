package devices

// heaterDetail is a storage heater with its connections.
var heaterDetail = Detail{
	Arrangement: Arrangement{
		ID: "heater", Title: "Storage heater",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the cold riser", To: "the hot main", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "feed-check"}, {Device: "expansion-tank"}, {Device: "vacuum-relief", Marks: []string{"above the tank"}}, {Device: "dielectric-union"}, {Device: "dip-tube"}, {Device: "tank-anode"}, {Device: "temperature-relief"}, {Device: "dielectric-union"}, {Device: "thermometer"}, {Device: "isolating-valve"},
			}},
			{Name: "drain", Of: "main", After: 5, Join: -1, Stand: []Station{{Device: "drain-cock"}}},
		},
	},
	Flow: []string{"feed-check", "expansion-tank", "dip-tube", "thermometer"},
	Checks: []Check{
		{"heater-expansion", "Where a check closes the feed, an expansion tank takes in the growing water.", "Water does not give way.", read("IPC text as Philadelphia adopted it, P-607.3"), has("main", "expansion-tank", 1), ""},
		{"heater-expansion-side", "The expansion tank stands between the check and the heater.", "Ahead of the check it is cut off from what grows.", read("IPC text as Philadelphia adopted it, P-607.3: downstream of checks and reducing valves"), before("main", "feed-check", "expansion-tank"), "expansion-tank"},
		{"heater-expansion-open", "No valve that can be left shut stands between tank and heater.", "Shut, it takes the expansion tank away.", practice, func(a *Arrangement) bool {
			r := a.run("main")
			i, j := r.at("expansion-tank"), r.at("dip-tube")
			for k := i; i >= 0 && k < j; k++ {
				if r.Stand[k].Device == "isolating-valve" {
					return false
				}
			}
			return true
		}, ""},
		{"heater-vacuum", "A vacuum relief valve guards a tank that could be siphoned.", "A tank is made for pressure from inside, not from outside.", read("UPC 2015, 608.7; IRC P2804.7; BC 2024, 2.6.1.7.(8), each with its own condition"), has("main", "vacuum-relief", 1), ""},
		{"heater-vacuum-high", "The vacuum relief stands above the top of the tank.", "Below it, the tank is half empty before air comes in.", recalled("IPC 504.2; makers' instructions"), marked("main", "vacuum-relief", "above the tank"), ""},
		{"heater-cold-valve", "A valve stands on the cold feed.", "The heater is shut off without shutting off the building.", recalled("IPC 606.2: a shut-off on the cold supply of every water heater"), func(a *Arrangement) bool {
			r := a.run("main")
			return r.Stand[0].Device == "isolating-valve"
		}, ""},
		{"heater-two-metals", "Copper joins the steel tank through a dielectric union on both sides.", "Where the two touch in water, the steel is eaten.", recalled("IPC 605, joints between different metals"), has("main", "dielectric-union", 2), ""},
		{"heater-relief", "A temperature and pressure relief valve stands in the top of the tank.", "It is the last guard.", read("Illinois Plumbing Code, 890.1230"), has("main", "temperature-relief", 1), ""},
		{"heater-check-turned", "The check opens toward the heater.", "Turned, no cold water comes in.", practice, faces("main", "feed-check"), ""},
		{"heater-dip", "The cold water is led to the bottom of the tank.", "Cold and hot stay apart.", practice, has("main", "dip-tube", 1), ""},
		{"heater-drain", "The tank can be drained at its bottom.", "Sediment goes out there.", practice, has("drain", "drain-cock", 1), ""},
	},
	Faults: []Fault{
		{ID: "heater-no-expansion", Breaks: "heater-expansion", Run: "main", At: "feed-check", Did: "A check closes the feed, and there is no expansion tank.", Then: "Each heating drives the pressure up until the relief valve weeps.", Shows: ShowsGrowth, Change: missing("main", "expansion-tank")},
		{ID: "heater-expansion-wrong-side", Breaks: "heater-expansion-side", Run: "main", At: "expansion-tank", Did: "The expansion tank stands on the street side of the check.", Then: "The growing water cannot reach it: the relief valve weeps as if no tank were there.", Shows: ShowsGrowth, Change: swapped("main", "feed-check", "expansion-tank")},
		{ID: "heater-expansion-valved", Breaks: "heater-expansion-open", Run: "main", At: "isolating-valve", Did: "A shut-off stands between the expansion tank and the heater.", Then: "Left shut by mistake, it takes the expansion tank away.", Shows: ShowsGrowth, Change: added("main", "vacuum-relief", Station{Device: "isolating-valve"})},
		{ID: "heater-no-vacuum", Breaks: "heater-vacuum", Run: "main", At: "dielectric-union", Did: "The tank is fed from its bottom, and there is no vacuum relief.", Then: "When the riser is drained the tank is sucked empty; it may buckle, or its element burn dry.", Shows: ShowsSiphon, Change: missing("main", "vacuum-relief")},
		{ID: "heater-vacuum-low", Breaks: "heater-vacuum-high", Run: "main", At: "vacuum-relief", Did: "The vacuum relief stands below the top of the tank.", Then: "The tank is siphoned down to it before any air comes in: the upper element burns dry.", Shows: ShowsSiphon, Change: unmark("main", "vacuum-relief", "above the tank", "below the tank top")},
		{ID: "heater-no-cold-valve", Breaks: "heater-cold-valve", Run: "main", At: "feed-check", Did: "There is no valve on the heater's cold feed.", Then: "A leaking tank cannot be stopped without shutting off the riser.", Change: func(a *Arrangement) { a.remove("main", 0) }},
		{ID: "heater-no-union", Breaks: "heater-two-metals", Run: "main", At: "thermometer", Did: "Copper is screwed straight into the steel tank at its hot outlet.", Then: "The steel thread beside the copper pits and leaks.", Change: missing("main", "dielectric-union")},
		{ID: "heater-no-relief", Breaks: "heater-relief", Run: "main", At: "tank-anode", Did: "The tank has no temperature and pressure relief valve.", Then: "With a stuck thermostat nothing stops the tank from bursting.", Change: missing("main", "temperature-relief")},
		{ID: "heater-check-backward", Breaks: "heater-check-turned", Run: "main", At: "feed-check", Did: "The check on the cold feed stands against the flow.", Then: "No cold water comes in: the hot taps are dry.", Change: turned("main", "feed-check")},
		{ID: "heater-no-dip", Breaks: "heater-dip", Run: "main", At: "tank-anode", Did: "The dip tube is missing.", Then: "Cold water runs across the top to the outlet: lukewarm taps over a hot tank.", Change: missing("main", "dip-tube")},
	},
}

// reliefDetail is the discharge of a relief valve.
var reliefDetail = Detail{
	Arrangement: Arrangement{
		ID: "relief", Title: "Relief valve and its discharge",
		Runs: []Run{{Name: "main", Join: -1, From: "the tank", To: "the floor drain", Stand: []Station{
			{Device: "temperature-relief"}, {Device: "relief-discharge", Marks: []string{"full size", "falls all the way", "plain end"}}, {Device: "air-gap-drain"},
		}}},
	},
	Checks: []Check{
		{"relief-no-valve-before", "No valve stands between the tank and the relief valve.", "Shut, it takes the last guard away.", read("Illinois Plumbing Code, 890.1230: no shut-off between relief valve and tank"), func(a *Arrangement) bool {
			return a.run("main").Stand[0].Device == "temperature-relief"
		}, ""},
		{"relief-no-valve-behind", "No valve stands in the discharge.", "Shut, the relief valve has nowhere to go.", read("UPC 2015, 608.5"), func(a *Arrangement) bool {
			r := a.run("main")
			for _, s := range r.Stand[r.at("temperature-relief")+1:] {
				if s.Device == "isolating-valve" || s.Device == "check-valve" {
					return false
				}
			}
			return true
		}, ""},
		{"relief-full-size", "The discharge is as large as the valve's outlet all the way.", "Reduced, it holds the valve back.", read("UPC 2015, 608.5: full size"), marked("main", "relief-discharge", "full size"), ""},
		{"relief-falls", "The discharge falls all the way.", "Water left in a rise rusts the seat, freezes or stands as scale.", read("UPC 2015, 608.5: drained by gravity, no trap"), marked("main", "relief-discharge", "falls all the way"), ""},
		{"relief-plain-end", "Its end has no thread.", "A thread asks for a plug, and one day somebody fits it.", read("UPC 2015, 608.5: no thread"), marked("main", "relief-discharge", "plain end"), ""},
		{"relief-alone", "The discharge serves one relief valve.", "Two that let go together hold each other back.", recalled("IPC 504.6: a discharge serves one relief device"), none("second relief valve"), ""},
		{"relief-air-gap", "It ends over a drain across an air gap, where it is seen.", "A weeping valve must be noticed.", read("UPC 2015, 608.5"), has("main", "air-gap-drain", 1), ""},
	},
	Faults: []Fault{
		{ID: "relief-valve-before", Breaks: "relief-no-valve-before", Run: "main", At: "isolating-valve", Did: "A shut-off stands between the tank and its relief valve.", Then: "Left shut, nothing guards the tank.", Change: added("main", "temperature-relief", Station{Device: "isolating-valve"})},
		{ID: "relief-valve-behind", Breaks: "relief-no-valve-behind", Run: "main", At: "isolating-valve", Did: "A valve stands in the discharge.", Then: "Shut, the relief valve opens and nothing comes out.", Change: added("main", "relief-discharge", Station{Device: "isolating-valve"})},
		{ID: "relief-reduced", Breaks: "relief-full-size", Run: "main", At: "relief-discharge", Did: "The discharge is reduced.", Then: "It holds back the steam and water that must get out.", Change: unmark("main", "relief-discharge", "full size", "reduced")},
		{ID: "relief-rises", Breaks: "relief-falls", Run: "main", At: "relief-discharge", Did: "The discharge rises on its way.", Then: "Water stands in it on the valve's seat, which rusts shut.", Change: unmark("main", "relief-discharge", "falls all the way", "rises")},
		{ID: "relief-threaded", Breaks: "relief-plain-end", Run: "main", At: "relief-discharge", Did: "The end of the discharge is threaded.", Then: "It drips, somebody screws a plug in, and the tank has no guard.", Change: unmark("main", "relief-discharge", "plain end", "threaded end")},
		{ID: "relief-plugged", Breaks: "relief-plain-end", Run: "main", At: "relief-discharge", Did: "The end of the discharge is plugged.", Then: "Somebody stopped a drip, and took the tank's last guard away.", Change: unmark("main", "relief-discharge", "plain end", "plugged end")},
		{ID: "relief-trapped", Breaks: "relief-falls", Run: "main", At: "relief-discharge", Did: "The discharge has a trap in it.", Then: "Water stands in it, freezes or leaves scale, and holds back the valve.", Change: unmark("main", "relief-discharge", "falls all the way", "trapped")},
		{ID: "relief-two", Breaks: "relief-alone", Run: "second relief valve", At: "temperature-relief", Did: "Two relief valves share one discharge.", Then: "When both let go, each holds the other back; and nobody sees which one weeps.", Change: along(Run{Name: "second relief valve", Of: "main", After: -1, Join: 1, From: "a second tank", Stand: []Station{{Device: "temperature-relief"}}})},
		{ID: "relief-tied", Breaks: "relief-air-gap", Run: "main", At: "relief-discharge", Did: "The discharge is piped straight into the drain.", Then: "Nobody sees it weep, and the sewer stands against the valve.", Change: missing("main", "air-gap-drain")},
	},
}

// mixingDetail is a master mixing valve.
var mixingDetail = Detail{
	Arrangement: Arrangement{
		ID: "mixing", Title: "Master mixing valve",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the heater", To: "the hot main", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "entry-strainer"}, {Device: "mixing-checks"}, {Device: "mixing-valve"}, {Device: "thermometer"},
			}},
			{Name: "cold leg", Of: "main", After: -1, Join: 3, From: "cold", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "entry-strainer"}, {Device: "mixing-checks"},
			}},
			{Name: "return of the loop", Of: "main", After: -1, Join: 3, From: "the loop", Stand: []Station{{Device: "circulator"}, {Device: "return-check"}}},
		},
	},
	Flow: []string{"entry-strainer", "mixing-checks", "mixing-valve", "thermometer"},
	Checks: []Check{
		{"mixing-hot-check", "The hot leg has a check.", "Cold must not cross into the hot pipe.", practice, has("main", "mixing-checks", 1), ""},
		{"mixing-cold-check", "The cold leg has a check.", "Hot must not cross into the cold pipe.", practice, has("cold leg", "mixing-checks", 1), ""},
		{"mixing-thermometer", "A thermometer proves what the valve sends out.", "A valve that drifts is seen before it scalds.", practice, has("main", "thermometer", 1), ""},
		{"mixing-return-ahead", "The return of the loop joins ahead of the mixing valve.", "Behind it the loop's water goes round without being warmed.", read("Chicago Municipal Code, 18-29-607: to the heater and to the mixing valve"), func(a *Arrangement) bool {
			side := a.run("return of the loop")
			return side == nil || side.Join <= max(a.run("main").at("mixing-valve"), 0)
		}, ""},
		{"mixing-return-check", "A check stands in the return.", "A big draw must not pull water backward up the return.", practice, has("return of the loop", "return-check", 1), ""},
		{"mixing-thermometer-after", "The thermometer stands behind the valve.", "Ahead of it, it reads the store.", practice, before("main", "mixing-valve", "thermometer"), "thermometer"},
		{"mixing-checks-turned", "The checks open toward the valve.", "Turned, one leg is shut.", practice, func(a *Arrangement) bool {
			return faces("main", "mixing-checks")(a) && faces("cold leg", "mixing-checks")(a)
		}, ""},
	},
	Faults: []Fault{
		{ID: "mixing-no-cold-check", Breaks: "mixing-cold-check", Run: "cold leg", At: "entry-strainer", Did: "The cold leg of the mixing valve has no check.", Then: "When nobody draws, hot water crosses into the cold riser: cold taps run warm at night.", Change: missing("cold leg", "mixing-checks")},
		{ID: "mixing-no-hot-check", Breaks: "mixing-hot-check", Run: "main", At: "mixing-valve", Did: "The hot leg of the mixing valve has no check.", Then: "When the cold side stands higher, cold water crosses into the heater's outlet and the near taps turn lukewarm.", Change: missing("main", "mixing-checks")},
		{ID: "mixing-return-behind", Breaks: "mixing-return-ahead", Run: "return of the loop", At: "circulator", Did: "The return of the loop is tied in behind the mixing valve.", Then: "Its water goes round and round without passing the heater: with nobody drawing, the loop goes cold.", Shows: ShowsCooling, Change: func(a *Arrangement) { a.run("return of the loop").Join = 4 }},
		{ID: "mixing-no-return-check", Breaks: "mixing-return-check", Run: "return of the loop", At: "circulator", Did: "There is no check in the return.", Then: "A big draw pulls cold water backward up the return to the far taps.", Change: missing("return of the loop", "return-check")},
		{ID: "mixing-thermometer-early", Breaks: "mixing-thermometer-after", Run: "main", At: "thermometer", Did: "The thermometer stands ahead of the valve it should prove.", Then: "It reads the store, whatever the valve sends out.", Shows: ShowsScald, Change: swapped("main", "mixing-valve", "thermometer")},
		{ID: "mixing-no-thermometer", Breaks: "mixing-thermometer", Run: "main", At: "mixing-valve", Did: "No thermometer stands behind the mixing valve.", Then: "A valve that drifts is first noticed by whoever is scalded.", Shows: ShowsScald, Change: missing("main", "thermometer")},
		{ID: "mixing-check-backward", Breaks: "mixing-checks-turned", Run: "cold leg", At: "mixing-checks", Did: "The check of the cold leg stands against the flow.", Then: "The valve gets no cold water: a good one shuts, a worn one passes the store's heat.", Shows: ShowsScald, Change: turned("cold leg", "mixing-checks")},
	},
}
