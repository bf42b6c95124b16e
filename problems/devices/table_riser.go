package devices

// riserDevices stand on the pipes that climb, and in reducing valve stations.
var riserDevices = []Device{
	{
		ID: "riser-valve", Name: "riser valve", Part: Riser,
		Purpose: "shuts one riser and leaves the others in service",
		Place:   "at the foot of every riser, at the top of one that feeds downward",
		Without: "A leak in one riser shuts down the whole building.",
		Caution: "Pressure stays above a shut valve: open a high tap and the drain, and prove it on a gauge.",
		Source:  read("Chicago Municipal Code, 18-29-606 (base of every riser, top of every down-feed)"), Near: []string{"main-valve", "fixture-stop", "balancing-valve"},
	},
	{
		ID: "riser-drain", Name: "drain at the foot of the riser", Part: Riser,
		Purpose: "empties the riser above its valve",
		Place:   "just above the valve at the foot",
		Without: "A riser is emptied through somebody's tap.",
		Source:  read("Ontario Building Code, riser valves and drain (text seen)"), Near: []string{"air-vent", "drain-cock", "test-tee"},
	},
	{
		ID: "air-vent", Name: "air vent at the top", Part: Riser,
		Purpose: "lets air out of the highest point, and in when the riser is drained",
		Place:   "at the top of every riser and loop, or a fixture there does it",
		Without: "Air gathers at the top, taps spit and the loop stops there.",
		Source:  practice, Near: []string{"vacuum-relief", "relief-valve", "arrester"},
	},
	{
		ID: "riser-anchor", Name: "anchor with guides", Part: Riser,
		Purpose: "holds the riser at one point and keeps it straight, so that it grows where it was meant to",
		Place:   "one fixed point between each two bends or joints that take up movement, with guides between",
		Without: "The hot riser pushes its branches out of the walls.",
		Shows:   ShowsMoved,
		Source:  practice, Near: []string{"restraint", "fire-stop", "flexible-connector"},
	},
	{
		ID: "expansion-loop", Name: "expansion loop or offset", Part: Riser,
		Purpose: "takes up the length that a hot pipe grows",
		Place:   "between two anchors, its leg long enough for the movement",
		Without: "The hot pipe bows between its anchors, and its joints crack.",
		Shows:   ShowsMoved,
		Source:  physics, Near: []string{"expansion-tank", "restraint", "arrester"},
	},
	{
		ID: "fire-stop", Name: "fire-stopped floor sleeve", Part: Riser,
		Purpose: "lets the riser move through the floor and keeps smoke and fire from passing",
		Place:   "in every floor and fire wall that a pipe goes through",
		Without: "A fire climbs from floor to floor along the pipe.",
		Source:  practice, Near: []string{"wall-sleeve", "riser-anchor", "insulation"},
	},
}

// zoneDevices make a station that reduces the pressure of a zone.
var zoneDevices = []Device{
	{
		ID: "reducing-valve", Name: "pressure reducing valve", Part: Zone,
		Purpose: "lowers the pressure to what the fixtures below or behind it may have, and holds it there",
		Place:   "at the entry, at the head of each zone, or in each suite; never in the recirculated part of a hot loop",
		Way:     "arrow with the flow",
		Beside:  []string{"entry-strainer", "isolating-valve", "pressure-gauge"},
		Without: "The lowest outlets get the whole pressure: taps hammer, hoses burst, stops leak.",
		Shows:   ShowsStatic,
		Source:  read("UPC 2015, 608.2: over 80 psi static; IPC 604.8, from memory"), Near: []string{"relief-valve", "balancing-valve", "check-valve"},
	},
	{
		ID: "small-reducing-valve", Name: "small reducing valve beside the large one", Part: Zone,
		Purpose: "passes the small flows of the night without hunting, and opens first because it is set a little higher",
		Place:   "in parallel with the large valve, set 5 to 10 psi above it",
		Without: "The large valve works almost shut at night: it hunts, whistles and wears its seat.",
		Source:  practice, Near: []string{"reducing-bypass", "relief-valve", "balancing-valve"},
	},
	{
		ID: "reducing-bypass", Name: "valved bypass of the station", Part: Zone,
		Purpose: "keeps a zone in water while its reducing valve is serviced, with a hand on the valve and an eye on the gauge",
		Place:   "round the reducing valve, with a locked valve or, better, a second reducing valve",
		Without: "The zone is dry whenever its valve is serviced.",
		Caution: "An open bypass puts the full pressure on the zone.",
		Source:  practice, Near: []string{"meter-bypass", "pump-bypass", "isolating-valve"},
	},
}
