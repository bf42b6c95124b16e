package devices

// loopDevices keep hot water moving.
var loopDevices = []Device{
	{
		ID: "circulator", Name: "circulator", Part: Loop,
		Purpose: "keeps the hot water moving, so that the heat lost in the pipes is made up",
		Place:   "on the return, just before the heater, with a valve on each side",
		Way:     "arrow toward the heater, shaft level",
		Without: "The far taps run cold for minutes, and the loop stands lukewarm, where Legionella grows.",
		Shows:   ShowsCooling,
		Source:  practice, Near: []string{"pump", "expansion-tank", "thermostat"},
	},
	{
		ID: "aquastat", Name: "aquastat", Part: Loop,
		Purpose: "starts the circulator when the return has cooled and stops it when it is hot",
		Place:   "strapped on or let into the return",
		Without: "The circulator runs without need, or is forgotten off.",
		Source:  practice, Near: []string{"thermostat", "pressure-switch", "thermometer"},
	},
	{
		ID: "return-check", Name: "check valve on the return", Part: Loop,
		Purpose: "keeps cold water from being drawn backward up the return to the taps",
		Place:   "on the return, between the circulator and the heater or the mixing valve",
		Way:     "arrow toward the heater",
		Without: "A big draw pulls cold water backward through the return, and far taps turn lukewarm.",
		Source:  practice, Near: []string{"feed-check", "check-valve", "mixing-checks"},
	},
	{
		ID: "balancing-valve", Name: "balancing valve", Part: Loop,
		Purpose: "holds each return to its share, so that the far branch gets its flow too",
		Place:   "on the return of every branch: nearly shut near the heater, wide open at the far end of a direct return",
		Without: "The water takes the short way back, and the far branch stays cold.",
		Shows:   ShowsCooling,
		Source:  practice, Near: []string{"isolating-valve", "reducing-valve", "mixing-valve"},
	},
	{
		ID: "insulation", Name: "pipe insulation", Part: Loop,
		Purpose: "keeps the heat in the hot pipe, and the cold pipe from sweating",
		Place:   "on all hot supply and return, and on cold pipe in damp places",
		Without: "The loop loses two to three times the heat, and must run as much faster.",
		Source:  practice, Near: []string{"heat-trap", "fire-stop", "circulator"},
	},
}

// outletDevices stand on the branches and at the fixtures.
var outletDevices = []Device{
	{
		ID: "fixture-stop", Name: "fixture stop", Part: Outlet,
		Purpose: "shuts one fixture off",
		Place:   "under each fixture, on hot and cold",
		Without: "A new washer in one tap shuts a whole floor down.",
		Source:  practice, Near: []string{"riser-valve", "balancing-valve", "vacuum-breaker"},
	},
	{
		ID: "arrester", Name: "water hammer arrester", Part: Outlet,
		Purpose: "takes up the blow when a valve shuts fast",
		Place:   "on the branch, between the last two fixtures, on hot and cold apart",
		Without: "Pipes bang when a solenoid or flush valve shuts, and joints work loose.",
		Shows:   ShowsSurge,
		Source:  recalled("PDI-WH 201, placing rule"), Near: []string{"expansion-tank", "air-vent", "flexible-connector"},
	},
	{
		ID: "vacuum-breaker", Name: "vacuum breaker", Part: Outlet,
		Purpose: "lets air in at an outlet, so that a hose or a basin cannot be drawn back",
		Place:   "on every hose connection and flush valve, above the highest water it could draw from",
		Without: "A hose left in a bucket of cleaner is drunk by the next floor when the pressure falls.",
		Shows:   ShowsSiphon,
		Source:  recalled("IPC 608.16.4: hose connections have a vacuum breaker"), Near: []string{"vacuum-relief", "check-valve", "air-gap-drain"},
	},
	{
		ID: "fixture-limiter", Name: "pressure-balanced or thermostatic valve at the fixture", Part: Outlet,
		Purpose: "keeps what leaves a shower or bath within the limit, also when somebody flushes",
		Place:   "at the shower or bath itself, its stop set and proved with a thermometer",
		Without: "The shower scalds when a neighbour flushes.",
		Shows:   ShowsScald,
		Source:  read("Ontario Building Code, 7.6.5.2: shower valves, 49 °C"), Near: []string{"mixing-valve", "thermostat", "reducing-valve"},
	},
}
