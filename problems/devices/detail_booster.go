package devices

import (
	"riserwork/problems"
	"riserwork/solver"
)

// boosterDetail is a booster set: two pumps, with the street's own way past them.
var boosterDetail = Detail{
	Arrangement: Arrangement{
		ID: "booster", Title: "Booster set",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the street", To: "the risers", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "pressure-gauge"}, {Device: "low-suction-switch"},
				{Device: "flexible-connector"}, {Device: "pump"}, {Device: "flexible-connector"}, {Device: "check-valve"}, {Device: "isolating-valve"},
				{Device: "pressure-gauge"}, {Device: "pressure-switch"}, {Device: "relief-valve"},
			}},
			{Name: "second pump", Of: "main", After: 2, Join: 8, Stand: []Station{
				{Device: "flexible-connector"}, {Device: "pump"}, {Device: "flexible-connector"}, {Device: "check-valve"}, {Device: "isolating-valve"},
			}},
			{Name: "bypass", Of: "main", After: 0, Join: 8, Stand: []Station{{Device: "pump-bypass"}}},
			{Name: "tank", Of: "main", After: 9, Join: -1, Stand: []Station{{Device: "isolating-valve"}, {Device: "drain-cock"}, {Device: "pressure-tank"}}},
		},
	},
	Flow: []string{"low-suction-switch", "pump", "check-valve", "pressure-switch"},
	Checks: []Check{
		{"booster-low-suction", "A low-suction switch stands ahead of the pumps.", "The pumps must not draw the street down.", read("UPC 2024, 609.9: cut-off within 5 ft of the inlet, not less than 10 psi"), has("main", "low-suction-switch", 1), ""},
		{"booster-low-suction-place", "The low-suction switch stands on the suction side.", "Behind the pump it reads the boosted pressure.", read("UPC 2024, 609.9: cut-off within 5 ft of the inlet, not less than 10 psi"), before("main", "low-suction-switch", "pump"), "low-suction-switch"},
		{"booster-check", "Each pump has a check valve on its discharge.", "A resting pump must not be a way back.", practice, func(a *Arrangement) bool {
			return has("main", "check-valve", 1)(a) && has("second pump", "check-valve", 1)(a)
		}, ""},
		{"booster-check-turned", "The checks open toward the building.", "Turned, the pump works against a shut door.", practice, func(a *Arrangement) bool {
			return faces("main", "check-valve")(a) && faces("second pump", "check-valve")(a)
		}, ""},
		{"booster-switch-after-check", "The pressure switch stands behind the check.", "Ahead of it the pressure drops at each stop, and the pump hunts.", practice, before("main", "check-valve", "pressure-switch"), "pressure-switch"},
		{"booster-bypass-check", "The bypass holds its check toward the building.", "Turned, the boosted water runs back to the street side.", practice, faces("bypass", "pump-bypass"), ""},
		{"booster-relief", "A relief valve stands on the discharge.", "At no flow and high street pressure the weakest part is in danger.", recalled("IPC 606.5: a relief valve guards the pressure tank of a booster"), has("main", "relief-valve", 1), ""},
		{"booster-pump-turned", "The pumps push toward the building.", "Turned, a pump works against its check.", practice, func(a *Arrangement) bool {
			return faces("main", "pump")(a) && faces("second pump", "pump")(a)
		}, ""},
		{"booster-flexible", "The pumps are joined to the pipes by flexible connectors.", "Shaking goes into the building otherwise.", practice, func(a *Arrangement) bool { return has("main", "flexible-connector", 2)(a) }, ""},
		{"booster-tank-drain", "The tank can be shut off and drained.", "Its air is set with no water in it.", practice, func(a *Arrangement) bool {
			return has("tank", "isolating-valve", 1)(a) && has("tank", "drain-cock", 1)(a)
		}, ""},
	},
	Faults: []Fault{
		{ID: "booster-no-low-suction", Breaks: "booster-low-suction", Run: "main", At: "pump", Did: "The low-suction switch is missing.", Then: "At the peak the pumps draw the main below its least pressure, and run dry when the street fails.", Change: missing("main", "low-suction-switch")},
		{ID: "booster-low-suction-behind", Breaks: "booster-low-suction-place", Run: "main", At: "low-suction-switch", Did: "The low-suction switch stands behind the pump.", Then: "It reads the boosted pressure and never trips.", Change: func(a *Arrangement) {
			a.remove("main", a.run("main").at("low-suction-switch"))
			a.insert("main", a.run("main").at("pressure-switch"), Station{Device: "low-suction-switch"})
		}},
		{ID: "booster-no-check", Breaks: "booster-check", Run: "second pump", At: "pump", Did: "One pump has no check valve.", Then: "The running pump sends its water back through the resting one, which spins backward.", Shows: ShowsBack, Change: missing("second pump", "check-valve")},
		{ID: "booster-check-backward", Breaks: "booster-check-turned", Run: "main", At: "check-valve", Did: "A check valve stands against the flow.", Then: "That pump works against a shut door: pressure at the pump, no flow, a hot casing.", Change: turned("main", "check-valve")},
		{ID: "booster-bypass-backward", Breaks: "booster-bypass-check", Run: "bypass", At: "pump-bypass", Did: "The check of the bypass opens toward the street side.", Then: "Boosted water runs round and round, and in a power failure the street feeds nobody.", Change: turned("bypass", "pump-bypass")},
		{ID: "booster-no-relief", Breaks: "booster-relief", Run: "main", At: "pressure-switch", Did: "No relief valve guards the discharge.", Then: "A stuck switch puts the shut-off pressure of the pump, on top of the street's, on the weakest joint.", Change: missing("main", "relief-valve")},
		{ID: "booster-switch-early", Breaks: "booster-switch-after-check", Run: "main", At: "pressure-switch", Did: "The pressure switch stands ahead of the check.", Then: "At each stop the pressure there falls to the street's, and the pump starts again at once: it hunts until its motor burns.", Change: func(a *Arrangement) {
			a.remove("main", a.run("main").at("pressure-switch"))
			a.insert("main", a.run("main").at("check-valve"), Station{Device: "pressure-switch"})
		}},
		{ID: "booster-pump-backward", Breaks: "booster-pump-turned", Run: "second pump", At: "pump", Did: "The second pump stands against the flow.", Then: "It pushes against its own check: no flow, and the casing runs hot.", Change: turned("second pump", "pump")},
	},
}

// riserFootDetail is the foot of a riser.
var riserFootDetail = Detail{
	Arrangement: Arrangement{
		ID: "riser-foot", Title: "Hot riser, foot to head",
		Runs: []Run{{Name: "main", Join: -1, From: "the hot main, at the foot", To: "the top", Stand: []Station{
			{Device: "riser-valve"}, {Device: "riser-drain"}, {Device: "riser-anchor", Marks: []string{"guided"}}, {Device: "fire-stop"}, {Device: "expansion-loop"}, {Device: "riser-anchor", Marks: []string{"guided"}}, {Device: "fire-stop"}, {Device: "air-vent"},
		}}},
	},
	Flow: []string{"riser-valve", "riser-drain", "expansion-loop", "air-vent"},
	Checks: []Check{
		{"riser-valve-there", "A valve stands at the foot of the riser.", "One riser is shut, not the building.", read("Chicago Municipal Code, 18-29-606 (base of every riser)"), has("main", "riser-valve", 1), ""},
		{"riser-drain-there", "A drain stands at the foot.", "The riser is emptied there and not through a tap.", read("Ontario Building Code, riser valves and drain (text seen)"), has("main", "riser-drain", 1), ""},
		{"riser-drain-above", "The drain stands above the valve.", "Below it the drain empties the main and not the riser.", practice, before("main", "riser-valve", "riser-drain"), "riser-drain"},
		{"riser-drain-low", "The drain stands at the foot, below everything else on the riser.", "What is below a drain stays full.", practice, before("main", "riser-drain", "riser-anchor"), ""},
		{"riser-anchored", "A hot riser has an anchor on both sides of its loop.", "The loop only works between two fixed points.", practice, has("main", "riser-anchor", 2), ""},
		{"riser-guided", "Guides keep the riser straight between anchor and loop.", "Without them it bows in place of working the loop.", problems.Source{Says: "makers' instructions for expansion loops and joints", Confidence: solver.Practice}, func(a *Arrangement) bool {
			return marked("main", "riser-anchor", "guided")(a)
		}, ""},
		{"riser-fire-stopped", "The floor sleeves are fire-stopped.", "A hole in a floor is a chimney.", recalled("building codes, penetrations of fire separations"), func(a *Arrangement) bool {
			return bare("main", "fire-stop", "open sleeve")(a)
		}, ""},
		{"riser-vent", "The head of the riser can let air out.", "Air at the top spits, and stops a loop.", practice, has("main", "air-vent", 1), ""},
	},
	Faults: []Fault{
		{ID: "riser-no-valve", Breaks: "riser-valve-there", Run: "main", At: "riser-drain", Did: "There is no valve at the foot of the riser.", Then: "A leak on one floor shuts down the whole building.", Change: missing("main", "riser-valve")},
		{ID: "riser-no-drain", Breaks: "riser-drain-there", Run: "main", At: "riser-valve", Did: "There is no drain at the foot of the riser.", Then: "It is emptied through somebody's tap, and pressure stays above the shut valve.", Change: missing("main", "riser-drain")},
		{ID: "riser-drain-below", Breaks: "riser-drain-above", Run: "main", At: "riser-drain", Did: "The drain stands below the valve.", Then: "With the valve shut it drains the wrong side: the riser stays full and under pressure.", Change: swapped("main", "riser-valve", "riser-drain")},
		{ID: "riser-no-guides", Breaks: "riser-guided", Run: "main", At: "riser-anchor", Did: "The riser has no guides beside its loop.", Then: "It bows sideways instead of working the loop, and its joints are bent.", Shows: ShowsMoved, Change: unmark("main", "riser-anchor", "guided", "no guides")},
		{ID: "riser-open-sleeve", Breaks: "riser-fire-stopped", Run: "main", At: "fire-stop", Did: "The sleeve through the floor is left open.", Then: "Smoke and fire climb through it from floor to floor.", Change: unmarked("main", "fire-stop", "open sleeve")},
		{ID: "riser-one-anchor", Breaks: "riser-anchored", Run: "main", At: "expansion-loop", Did: "An anchor is missing at the expansion loop of a hot riser.", Then: "The riser pushes its whole growth one way, and tears at its branches.", Shows: ShowsMoved, Change: missing("main", "riser-anchor")},
	},
}
