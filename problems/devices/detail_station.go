package devices

// valveStationDetail is a reducing valve station of one valve.
var valveStationDetail = Detail{
	Arrangement: Arrangement{
		ID: "valve-station", Title: "Reducing valve station",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the riser", To: "the zone", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "entry-strainer"}, {Device: "pressure-gauge"}, {Device: "reducing-valve"}, {Device: "pressure-gauge"}, {Device: "isolating-valve"}, {Device: "relief-valve"},
			}},
			{Name: "bypass", Of: "main", After: 0, Join: 6, Stand: []Station{{Device: "reducing-bypass", Marks: []string{"locked shut"}}}},
		},
	},
	Flow: []string{"entry-strainer", "reducing-valve", "relief-valve"},
	Checks: []Check{
		{"station-strainer", "A strainer stands ahead of the reducing valve.", "Grit on its seat keeps the valve from closing.", read("UPC 2015, 608.2 (not from 1-1/2 in up); IPC 604.8 (always), from memory"), has("main", "entry-strainer", 1), ""},
		{"station-strainer-first", "The strainer stands ahead of the valve, not behind it.", "Behind it the strainer guards nothing.", read("UPC 2015, 608.2; IPC 604.8, from memory"), before("main", "entry-strainer", "reducing-valve"), "entry-strainer"},
		{"station-turned", "The reducing valve's arrow points with the flow.", "Turned, it shuts or does not reduce.", practice, faces("main", "reducing-valve"), ""},
		{"station-gauges", "A gauge stands on each side of the valve.", "Set without a gauge, it is set by guess.", practice, both("main", "reducing-valve", "pressure-gauge"), ""},
		{"station-valves", "A valve stands on each side.", "The strainer and the valve are serviced with both shut.", practice, both("main", "reducing-valve", "isolating-valve"), ""},
		{"station-bypass-locked", "The bypass is locked shut.", "Open, it puts the full pressure on the zone.", practice, marked("bypass", "reducing-bypass", "locked shut"), ""},
		{"station-relief", "A relief valve or an alarm guards the zone.", "A valve that sticks open shows up before a hose bursts.", practice, has("main", "relief-valve", 1), ""},
	},
	Faults: []Fault{
		{ID: "station-no-strainer", Breaks: "station-strainer", Run: "main", At: "reducing-valve", Did: "There is no strainer ahead of the reducing valve.", Then: "Grit lodges on the seat: at night, with no flow, the pressure behind it creeps up to the pressure ahead.", Shows: ShowsStatic, Change: missing("main", "entry-strainer")},
		{ID: "station-strainer-behind", Breaks: "station-strainer-first", Run: "main", At: "entry-strainer", Did: "The strainer stands behind the reducing valve.", Then: "The valve is the strainer now: grit sits on its seat.", Change: func(a *Arrangement) {
			a.remove("main", a.run("main").at("entry-strainer"))
			a.insert("main", a.run("main").at("reducing-valve")+1, Station{Device: "entry-strainer"})
		}},
		{ID: "station-backward", Breaks: "station-turned", Run: "main", At: "reducing-valve", Did: "The reducing valve stands against the flow.", Then: "It does not regulate: the zone gets too much or next to nothing.", Change: turned("main", "reducing-valve")},
		{ID: "station-bypass-open", Breaks: "station-bypass-locked", Run: "bypass", At: "reducing-bypass", Did: "The bypass stands open.", Then: "The full pressure of the riser stands on the zone, whatever the valve is set to.", Shows: ShowsStatic, Change: unmarked("bypass", "reducing-bypass", "open")},
	},
}

// parallelStationDetail is a small and a large valve side by side.
var parallelStationDetail = Detail{
	Arrangement: Arrangement{
		ID: "parallel-station", Title: "Small and large reducing valve in parallel",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the riser", To: "the zone", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "entry-strainer"}, {Device: "pressure-gauge"}, {Device: "isolating-valve"}, {Device: "reducing-valve", Marks: []string{"set lower"}}, {Device: "isolating-valve"}, {Device: "pressure-gauge"}, {Device: "relief-valve"},
			}},
			{Name: "small valve", Of: "main", After: 2, Join: 6, Stand: []Station{
				{Device: "isolating-valve"}, {Device: "small-reducing-valve", Marks: []string{"set higher"}}, {Device: "isolating-valve"},
			}},
		},
	},
	Checks: []Check{
		{"parallel-settings", "The small valve is set higher than the large one.", "It must open first and close last.", practice, func(a *Arrangement) bool {
			return marked("small valve", "small-reducing-valve", "set higher")(a) && marked("main", "reducing-valve", "set lower")(a)
		}, ""},
		{"parallel-turned", "Both valves stand with the flow.", "Turned, a reducing valve does not regulate.", practice, func(a *Arrangement) bool {
			return faces("small valve", "small-reducing-valve")(a) && faces("main", "reducing-valve")(a)
		}, ""},
		{"parallel-small-valves", "The small valve can be shut off on both sides.", "It is serviced while the large one works.", practice, both("small valve", "small-reducing-valve", "isolating-valve"), ""},
		{"parallel-strainer", "The strainer stands ahead of both valves.", "Both seats are guarded.", read("UPC 2015, 608.2; IPC 604.8, from memory"), func(a *Arrangement) bool {
			return has("main", "entry-strainer", 1)(a) && leaves("small valve", "entry-strainer", "reducing-valve")(a)
		}, ""},
	},
	Faults: []Fault{
		{ID: "parallel-swapped", Breaks: "parallel-settings", Run: "small valve", At: "small-reducing-valve", Did: "The large valve is set higher than the small one.", Then: "The large valve works alone, almost shut at night: it hunts and wears its seat, and the small one never opens.", Change: func(a *Arrangement) {
			unmarked("small valve", "small-reducing-valve", "set lower")(a)
			unmarked("main", "reducing-valve", "set higher")(a)
		}},
		{ID: "parallel-backward", Breaks: "parallel-turned", Run: "small valve", At: "small-reducing-valve", Did: "The small valve stands against the flow.", Then: "It does not regulate, and the large one is left to hunt at the small flows of the night.", Change: turned("small valve", "small-reducing-valve")},
		{ID: "parallel-before-strainer", Breaks: "parallel-strainer", Run: "small valve", At: "small-reducing-valve", Did: "The small valve is fed from ahead of the strainer.", Then: "Grit reaches the seat that works all night.", Change: moved("small valve", 0)},
	},
}

// downFeedDetail is the head of a riser that feeds downward.
var downFeedDetail = Detail{
	Arrangement: Arrangement{
		ID: "down-feed", Title: "Head of a down-feed",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the pumps", To: "the lowest branch", Stand: []Station{
				{Device: "check-valve"}, {Device: "air-vent"}, {Device: "riser-valve"}, {Device: "entry-strainer"}, {Device: "reducing-valve"}, {Device: "pressure-gauge"}, {Device: "fixture-stop"}, {Device: "riser-drain"},
			}},
		},
	},
	Flow: []string{"riser-valve", "entry-strainer", "reducing-valve", "fixture-stop", "riser-drain"},
	Checks: []Check{
		{"down-valve", "A valve stands at the top of the down-feed.", "It is shut where the water comes from.", read("Chicago Municipal Code, 18-29-606 (top of every down-feed)"), has("main", "riser-valve", 1), ""},
		{"down-valve-first", "That valve stands ahead of the fixtures' stops.", "Behind them it shuts nothing.", read("Chicago Municipal Code, 18-29-606 (top of every down-feed)"), before("main", "riser-valve", "fixture-stop"), "riser-valve"},
		{"down-turned", "The reducing valve stands with the flow.", "Turned, it does not regulate.", practice, faces("main", "reducing-valve"), ""},
		{"down-air", "Air can get in at the top when the pumps stop.", "Otherwise the falling column draws the header below atmosphere.", physics, has("main", "air-vent", 1), ""},
		{"down-drain", "A drain stands at the foot.", "The riser is emptied there.", read("Ontario Building Code, riser valves and drain (text seen)"), has("main", "riser-drain", 1), ""},
	},
	Faults: []Fault{
		{ID: "down-no-valve", Breaks: "down-valve", Run: "main", At: "entry-strainer", Did: "There is no valve at the top of the down-feed.", Then: "One leak shuts the header, and with it every down-feed.", Change: missing("main", "riser-valve")},
		{ID: "down-no-drain", Breaks: "down-drain", Run: "main", At: "fixture-stop", Did: "There is no drain at the foot of the down-feed.", Then: "Its lowest part stays full: a repair there begins with a flood.", Change: missing("main", "riser-drain")},
		{ID: "down-reducing-backward", Breaks: "down-turned", Run: "main", At: "reducing-valve", Did: "The reducing valve stands against the flow.", Then: "It does not regulate: the floors below get too much or next to nothing.", Shows: ShowsStatic, Change: turned("main", "reducing-valve")},
		{ID: "down-no-air", Breaks: "down-air", Run: "main", At: "check-valve", Did: "Nothing lets air in at the top of the down-feed.", Then: "When the pumps stop and a low tap is open, the top is drawn below atmosphere: it pulls in what stands at any open hose.", Shows: ShowsSiphon, Change: missing("main", "air-vent")},
		{ID: "down-valve-late", Breaks: "down-valve-first", Run: "main", At: "riser-valve", Did: "The riser's valve stands behind the branches.", Then: "The branches cannot be shut off from above.", Change: swapped("main", "riser-valve", "fixture-stop")},
	},
}
