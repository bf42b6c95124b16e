package devices

// entryDetail is the water entry, from the wall to the building's own lines.
var entryDetail = Detail{
	Arrangement: Arrangement{
		ID: "entry", Title: "Water entry",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the street main", To: "the building", Stand: []Station{
				{Device: "service-valve"}, {Device: "wall-sleeve"}, {Device: "main-valve"}, {Device: "drain-port"},
				{Device: "entry-strainer"}, {Device: "meter"}, {Device: "test-tee"}, {Device: "isolating-valve"},
				{Device: "backflow-preventer"}, {Device: "isolating-valve"}, {Device: "pressure-gauge"},
			}},
			{Name: "bonding jumper", Of: "main", After: 4, Join: 6, Stand: []Station{{Device: "bonding-jumper"}}},
			{Name: "relief port", Of: "main", After: 8, Join: -1, Stand: []Station{{Device: "air-gap-drain"}}},
		},
	},
	Flow: []string{"service-valve", "wall-sleeve", "main-valve", "entry-strainer", "meter", "backflow-preventer"},
	Checks: []Check{
		{"entry-main-valve", "The building has its own valve just inside the wall.", "Somebody inside must be able to stop the water.", read("Ontario Building Code, valves of the service (text seen)"), has("main", "main-valve", 1), ""},
		{"entry-strainer-first", "The strainer stands ahead of the meter and the preventer.", "Grit is caught before it does harm.", practice, before("main", "entry-strainer", "meter"), "entry-strainer"},
		{"entry-meter-turned", "The meter's arrow points with the flow.", "A meter that runs backward counts backward.", practice, faces("main", "meter"), ""},
		{"entry-bonded", "A jumper bonds the pipe across the meter.", "The pipe may carry current, and the meter will be taken out one day.", read("NEC 250.53(D)(1); Canadian Electrical Code, section 10"), has("bonding jumper", "bonding-jumper", 1), ""},
		{"entry-preventer", "A backflow preventer isolates the building.", "What is in the building must not reach the street.", read("CSA B64.10, premise isolation by hazard, as Ontario applies it"), has("main", "backflow-preventer", 1), ""},
		{"entry-preventer-after-meter", "The preventer stands behind the meter.", "Water spilled at its relief port has been measured, and no unmetered tee is left.", practice, before("main", "meter", "backflow-preventer"), "backflow-preventer"},
		{"entry-preventer-gauge", "The gauge that shows what the building gets stands behind the preventer.", "The preventer takes 8 to 15 psi (55 to 105 kPa) of what the street gives.", practice, before("main", "backflow-preventer", "pressure-gauge"), ""},
		{"entry-no-early-branch", "Nothing branches off between the street and the preventer.", "A branch ahead of it is not isolated.", recalled("CSA B64.10, premise isolation"), none("early branch"), ""},
		{"entry-sleeve", "The pipe comes through the wall in a sleeve.", "A wall settles; the pipe must not carry it.", recalled("IPC 305: pipes through foundation walls are sleeved or arched over"), has("main", "wall-sleeve", 1), ""},
		{"entry-drain", "A drain stands at the lowest point behind the main valve.", "Otherwise the building cannot be emptied.", read("Ontario Building Code, drain port after the building valve (text seen)"), has("main", "drain-port", 1), ""},
	},
	Faults: []Fault{
		{ID: "entry-no-main-valve", Breaks: "entry-main-valve", Run: "main", At: "drain-port", Did: "There is no main valve inside the wall.", Then: "A leak at the meter runs until the utility comes to shut the street valve.", Change: missing("main", "main-valve")},
		{ID: "entry-strainer-late", Breaks: "entry-strainer-first", Run: "main", At: "entry-strainer", Did: "The strainer stands behind the meter.", Then: "Grit from the main stops the meter before the strainer can catch it.", Change: swapped("main", "entry-strainer", "meter")},
		{ID: "entry-meter-backward", Breaks: "entry-meter-turned", Run: "main", At: "meter", Did: "The meter stands against the flow.", Then: "It counts backward, and some kinds block.", Change: turned("main", "meter")},
		{ID: "entry-unbonded", Breaks: "entry-bonded", Run: "main", At: "meter", Did: "No bonding jumper crosses the meter.", Then: "Whoever loosens the union opens the building's earth with both hands on it.", Change: away("bonding jumper")},
		{ID: "entry-no-preventer", Breaks: "entry-preventer", Run: "main", At: "pressure-gauge", Did: "No backflow preventer isolates the building.", Then: "When a street main breaks, water from boilers, hoses and tanks runs into the town's supply.", Change: func(a *Arrangement) {
			missing("main", "backflow-preventer")(a)
			away("relief port")(a)
		}},
		{ID: "entry-preventer-first", Breaks: "entry-preventer-after-meter", Run: "main", At: "backflow-preventer", Did: "The backflow preventer stands ahead of the meter.", Then: "What it spills is never measured, and the utility will have it moved.", Change: swapped("main", "meter", "backflow-preventer")},
		{ID: "entry-branch-early", Breaks: "entry-no-early-branch", Run: "early branch", At: "fixture-stop", Did: "A branch leaves ahead of the backflow preventer.", Then: "What hangs on it is open to the street: the preventer guards all but that.", Change: along(Run{Name: "early branch", Of: "main", After: 7, Join: -1, Stand: []Station{{Device: "fixture-stop"}}})},
		{ID: "entry-no-sleeve", Breaks: "entry-sleeve", Run: "main", At: "service-valve", Did: "The service comes through the wall with no sleeve.", Then: "The wall settles on the pipe and shears it, and ground water runs in along it.", Change: missing("main", "wall-sleeve")},
		{ID: "entry-no-drain", Breaks: "entry-drain", Run: "main", At: "main-valve", Did: "There is no drain behind the main valve.", Then: "The pipes cannot be emptied for a repair or against frost.", Change: missing("main", "drain-port")},
	},
}

// compoundMeterDetail is a compound meter with the bypass that keeps the
// building in water while it is changed.
var compoundMeterDetail = Detail{
	Arrangement: Arrangement{
		ID: "compound-meter", Title: "Compound meter with bypass",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the street", To: "the building", Stand: []Station{
				{Device: "main-valve"}, {Device: "isolating-valve"}, {Device: "entry-strainer"}, {Device: "meter"}, {Device: "test-tee"}, {Device: "isolating-valve"}, {Device: "backflow-preventer"},
			}},
			{Name: "bypass", Of: "main", After: 0, Join: 6, Stand: []Station{{Device: "meter-bypass", Marks: []string{"sealed shut"}}}},
			{Name: "bonding jumper", Of: "main", After: 1, Join: 5, Stand: []Station{{Device: "bonding-jumper"}}},
		},
	},
	Flow: []string{"main-valve", "entry-strainer", "meter", "test-tee", "backflow-preventer"},
	Checks: []Check{
		{"meter-valves", "The meter has a valve on each side.", "It is changed with both shut.", recalled("IPC 606.1: a full-open valve on the discharge side of every meter"), both("main", "meter", "isolating-valve"), ""},
		{"meter-bypass-there", "A bypass keeps the building in water while the meter is changed.", "A tower cannot be dry for a morning.", practice, has("bypass", "meter-bypass", 1), ""},
		{"meter-bypass-sealed", "The bypass is shut and sealed.", "Open, it is water that nobody pays for.", practice, marked("bypass", "meter-bypass", "sealed shut"), ""},
		{"meter-bypass-before-preventer", "The bypass ends ahead of the backflow preventer.", "A way round the preventer undoes it.", practice, func(a *Arrangement) bool {
			side := a.run("bypass")
			return side == nil || side.Join >= 0 && side.Join <= a.run("main").at("backflow-preventer")
		}, ""},
		{"meter-test-tee", "A test tee stands behind the meter, ahead of its outlet valve.", "The meter is proved without taking it out.", practice, has("main", "test-tee", 1), ""},
	},
	Faults: []Fault{
		{ID: "meter-no-outlet-valve", Breaks: "meter-valves", Run: "main", At: "test-tee", Did: "The valve behind the meter is missing.", Then: "With the meter out and the bypass open, water comes back at the open end.", Change: missing("main", "isolating-valve")},
		{ID: "meter-no-bypass", Breaks: "meter-bypass-there", Run: "main", At: "meter", Did: "There is no bypass round the meter.", Then: "The whole building is dry whenever the meter is changed.", Change: away("bypass")},
		{ID: "meter-bypass-open", Breaks: "meter-bypass-sealed", Run: "bypass", At: "meter-bypass", Did: "The bypass is open and carries no seal.", Then: "Most of the water goes round the meter, which reads next to nothing.", Change: unmarked("bypass", "meter-bypass", "open")},
		{ID: "meter-bypass-round-preventer", Breaks: "meter-bypass-before-preventer", Run: "bypass", At: "meter-bypass", Did: "The bypass goes round the backflow preventer as well.", Then: "Whenever it is open, nothing stands between the building and the street.", Change: func(a *Arrangement) { a.run("bypass").Join = len(a.run("main").Stand) }},
	},
}

// backflowDetail is a reduced-pressure preventer as it is set up to be tested.
var backflowDetail = Detail{
	Arrangement: Arrangement{
		ID: "preventer", Title: "Reduced-pressure backflow preventer",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the meter", To: "a severe hazard", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "entry-strainer"}, {Device: "backflow-preventer", Marks: []string{"above flood level"}}, {Device: "test-cocks"}, {Device: "isolating-valve"},
			}},
			{Name: "relief port", Of: "main", After: 2, Join: -1, Stand: []Station{{Device: "air-gap-drain", Marks: []string{"air gap"}}}},
		},
	},
	Checks: []Check{
		{"preventer-valves", "A valve stands on each side of the preventer.", "It is tested every year with both shut.", practice, both("main", "backflow-preventer", "isolating-valve"), ""},
		{"preventer-no-bypass", "Nothing goes round the preventer, unless it is a second preventer.", "A plain bypass undoes it.", practice, none("bypass"), ""},
		{"preventer-air-gap", "Its relief port spills into a drain across an air gap.", "A sewer that backs up must not reach the port.", practice, marked("relief port", "air-gap-drain", "air gap"), ""},
		{"preventer-class", "Where the hazard is severe, a reduced-pressure preventer stands.", "Two checks alone show no one that they leak.", read("CSA B64.10, hazard classes"), has("main", "backflow-preventer", 1), ""},
		{"preventer-dry", "It stands above any flood.", "Under water its relief port draws in what it should keep out.", recalled("IPC 608.14: not in pits that flood"), marked("main", "backflow-preventer", "above flood level"), ""},
		{"preventer-turned", "Its arrow points with the flow.", "Turned, it shuts the building off or spills.", practice, faces("main", "backflow-preventer"), ""},
		{"preventer-cocks", "Test cocks are there.", "Without a test nobody knows that the checks hold.", practice, has("main", "test-cocks", 1), ""},
	},
	Faults: []Fault{
		{ID: "preventer-plain-bypass", Breaks: "preventer-no-bypass", Run: "bypass", At: "isolating-valve", Did: "A plain valved bypass goes round the preventer.", Then: "Somebody opens it for a test and forgets it: the building is open to the street.", Change: along(Run{Name: "bypass", Of: "main", After: 0, Join: 4, Stand: []Station{{Device: "isolating-valve"}}})},
		{ID: "preventer-drain-tied", Breaks: "preventer-air-gap", Run: "relief port", At: "air-gap-drain", Did: "The relief port is piped straight into the drain.", Then: "When the drain backs up, sewage stands at the port.", Change: unmarked("relief port", "air-gap-drain", "piped in tight")},
		{ID: "preventer-one-valve", Breaks: "preventer-valves", Run: "main", At: "test-cocks", Did: "The valve behind the preventer is missing.", Then: "The second check cannot be tested.", Change: missing("main", "isolating-valve")},
		{ID: "preventer-too-weak", Breaks: "preventer-class", Run: "main", At: "double-check", Did: "A double check stands where the hazard is severe.", Then: "When both checks are worn nothing opens to a drain and nobody sees it: the hazard reaches the street.", Change: func(a *Arrangement) {
			r := a.run("main")
			r.Stand[r.at("backflow-preventer")] = Station{Device: "double-check"}
			away("relief port")(a)
		}},
		{ID: "preventer-in-pit", Breaks: "preventer-dry", Run: "main", At: "backflow-preventer", Did: "The preventer stands in a pit that floods.", Then: "With its port under water it draws in what stands in the pit.", Change: unmark("main", "backflow-preventer", "above flood level", "in a pit that floods")},
		{ID: "preventer-backward", Breaks: "preventer-turned", Run: "main", At: "backflow-preventer", Did: "The preventer stands against the flow.", Then: "Its checks stay shut: the building gets no water.", Change: turned("main", "backflow-preventer")},
	},
}
