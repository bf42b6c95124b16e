package devices

// returnDetail is the return of a hot loop, from the last branch to the heater.
var returnDetail = Detail{
	Arrangement: Arrangement{
		ID: "return", Title: "Return of the hot loop",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the last branch", To: "the bottom of the heater", Stand: []Station{
				{Device: "balancing-valve"}, {Device: "thermometer"}, {Device: "aquastat"}, {Device: "isolating-valve"}, {Device: "circulator", Marks: []string{"bronze"}}, {Device: "return-check"}, {Device: "isolating-valve"}, {Device: "dip-tube"},
			}},
			{Name: "to the mixing valve", Of: "main", After: 5, Join: -1, Stand: []Station{{Device: "isolating-valve"}, {Device: "mixing-valve"}}},
		},
	},
	Flow: []string{"balancing-valve", "circulator", "return-check", "dip-tube"},
	Checks: []Check{
		{"return-check-there", "A check stands in the return.", "A big draw must not pull cold water backward.", practice, has("main", "return-check", 1), ""},
		{"return-check-turned", "The check opens toward the heater.", "Turned, the loop stands still.", practice, faces("main", "return-check"), ""},
		{"return-circulator-turned", "The circulator's arrow points toward the heater.", "Turned, it works against the check.", practice, faces("main", "circulator"), ""},
		{"return-potable", "The circulator is made for drinking water.", "Iron rusts in water that is always fresh.", recalled("NSF/ANSI/CAN 61, what touches drinking water"), marked("main", "circulator", "bronze"), ""},
		{"return-valves", "The circulator has a valve on each side.", "It is changed without draining the loop.", practice, both("main", "circulator", "isolating-valve"), ""},
		{"return-no-reducing", "No reducing valve stands in the loop.", "The circulator would have to make good its whole drop.", practice, lacks("main", "reducing-valve"), ""},
		{"return-both", "The return also feeds the cold port of the mixing valve.", "With no draw the mixing valve needs cooler water from somewhere, or it creeps to the store's heat.", read("Chicago Municipal Code, 18-29-607: to the heater and to the mixing valve"), has("to the mixing valve", "mixing-valve", 1), ""},
	},
	Faults: []Fault{
		{ID: "return-no-check", Breaks: "return-check-there", Run: "main", At: "circulator", Did: "There is no check in the return.", Then: "A big draw pulls cold water backward up the return: far taps turn lukewarm.", Change: missing("main", "return-check")},
		{ID: "return-check-backward", Breaks: "return-check-turned", Run: "main", At: "return-check", Did: "The check in the return stands against the flow.", Then: "Nothing moves: the circulator hums and the far taps are cold.", Shows: ShowsCooling, Change: turned("main", "return-check")},
		{ID: "return-circulator-backward", Breaks: "return-circulator-turned", Run: "main", At: "circulator", Did: "The circulator stands against the flow.", Then: "It pushes against the check: no flow, a hot pump, cold taps.", Shows: ShowsCooling, Change: turned("main", "circulator")},
		{ID: "return-reducing", Breaks: "return-no-reducing", Run: "main", At: "reducing-valve", Did: "A reducing valve stands in the recirculated loop.", Then: "The circulator would have to make good its whole drop, many times what it can: the loop stands still.", Shows: ShowsCooling, Change: added("main", "thermometer", Station{Device: "reducing-valve"})},
		{ID: "return-iron", Breaks: "return-potable", Run: "main", At: "circulator", Did: "A circulator with an iron body, made for heating, stands in the loop.", Then: "The water is always fresh, so the iron rusts: brown hot water, and a seized pump.", Change: unmark("main", "circulator", "bronze", "iron body")},
		{ID: "return-heater-only", Breaks: "return-both", Run: "main", At: "return-check", Did: "The return goes to the heater alone.", Then: "With nobody drawing, the mixing valve gets no cooler water: the loop climbs to the heat of the store.", Shows: ShowsScald, Change: away("to the mixing valve")},
	},
}

// branchReturnsDetail are three risers with their returns: the main run goes
// by the far one.
var branchReturnsDetail = Detail{
	Arrangement: Arrangement{
		ID: "branch-returns", Title: "Balancing three risers, direct return",
		Runs: []Run{
			{Name: "far riser", Join: -1, From: "the mixing valve", To: "the heater", Stand: []Station{
				{Device: "thermometer"}, {Device: "isolating-valve"}, {Device: "fixture-stop", Marks: []string{"far floors"}}, {Device: "balancing-valve", Marks: []string{"wide open"}}, {Device: "thermometer"}, {Device: "circulator"},
			}},
			{Name: "near riser", Of: "far riser", After: 0, Join: 4, Stand: []Station{{Device: "isolating-valve"}, {Device: "fixture-stop", Marks: []string{"near floors"}}, {Device: "balancing-valve", Marks: []string{"nearly shut"}}}},
			{Name: "middle riser", Of: "far riser", After: 0, Join: 4, Stand: []Station{{Device: "isolating-valve"}, {Device: "fixture-stop", Marks: []string{"middle floors"}}, {Device: "balancing-valve", Marks: []string{"half open"}}}},
		},
	},
	Flow: []string{"isolating-valve", "fixture-stop", "balancing-valve", "circulator"},
	Checks: []Check{
		{"branch-each-balanced", "Each return has a balancing valve.", "Without one, a short way takes it all.", practice, func(a *Arrangement) bool {
			return has("near riser", "balancing-valve", 1)(a) && has("middle riser", "balancing-valve", 1)(a) && has("far riser", "balancing-valve", 1)(a)
		}, ""},
		{"branch-order", "With a direct return the near valve is nearly shut and the far one wide open.", "The near branch has the most pressure to spare.", practice, func(a *Arrangement) bool {
			return bare("near riser", "balancing-valve", "wide open")(a) && bare("far riser", "balancing-valve", "nearly shut")(a)
		}, ""},
		{"branch-circulator-turned", "The circulator pushes toward the heater.", "Turned, it works against the check behind it.", practice, faces("far riser", "circulator"), ""},
		{"branch-balanced-behind", "The balancing valve stands in the return, behind the last branch.", "Ahead of the branches it throttles the taps as well.", practice, func(a *Arrangement) bool {
			return before("near riser", "fixture-stop", "balancing-valve")(a) && before("middle riser", "fixture-stop", "balancing-valve")(a) && before("far riser", "fixture-stop", "balancing-valve")(a)
		}, ""},
	},
	Faults: []Fault{
		{ID: "branch-no-valve", Breaks: "branch-each-balanced", Run: "near riser", At: "fixture-stop", Did: "The near riser has no balancing valve.", Then: "The water takes the short way back, and the far riser stays cold.", Shows: ShowsCooling, Change: missing("near riser", "balancing-valve")},
		{ID: "branch-reversed", Breaks: "branch-order", Run: "near riser", At: "balancing-valve", Did: "The near valve stands wide open and the far one nearly shut.", Then: "The near riser takes the flow, and the far one stays cold.", Shows: ShowsCooling, Change: func(a *Arrangement) {
			unmarked("near riser", "balancing-valve", "wide open")(a)
			unmarked("far riser", "balancing-valve", "nearly shut")(a)
		}},
		{ID: "branch-circulator-backward", Breaks: "branch-circulator-turned", Run: "far riser", At: "circulator", Did: "The circulator stands against the flow.", Then: "It pushes the return backward up the risers, against the check: no flow, and far taps that stay cold.", Shows: ShowsCooling, Change: turned("far riser", "circulator")},
		{ID: "branch-balanced-early", Breaks: "branch-balanced-behind", Run: "middle riser", At: "balancing-valve", Did: "The middle riser's balancing valve stands ahead of its branches.", Then: "Set for the trickle of the loop, it starves the taps of that riser at the busy hour.", Change: swapped("middle riser", "fixture-stop", "balancing-valve")},
	},
}

// branchEndDetail is the end of a branch with its last two fixtures.
var branchEndDetail = Detail{
	Arrangement: Arrangement{
		ID: "branch-end", Title: "End of a branch",
		Runs: []Run{
			{Name: "main", Join: -1, From: "the riser", To: "the last fixture", Stand: []Station{
				{Device: "isolating-valve"}, {Device: "fixture-stop", Marks: []string{"last but one"}}, {Device: "arrester"}, {Device: "fixture-stop", Marks: []string{"last"}},
			}},
			{Name: "hose connection", Of: "main", After: 0, Join: -1, To: "a hose", Stand: []Station{{Device: "fixture-stop"}, {Device: "vacuum-breaker"}}},
		},
	},
	Checks: []Check{
		{"end-arrester", "An arrester stands on a branch with fast-closing valves.", "Something must take up the blow.", recalled("PDI-WH 201"), has("main", "arrester", 1), ""},
		{"end-arrester-place", "It stands between the last two fixtures.", "The wave runs to the end of the branch.", recalled("PDI-WH 201, placing rule"), both("main", "arrester", "fixture-stop"), "arrester"},
		{"end-vacuum-breaker", "The hose connection has a vacuum breaker.", "A hose can lie in anything.", recalled("IPC 608.16.4: hose connections have a vacuum breaker"), has("hose connection", "vacuum-breaker", 1), ""},
		{"end-breaker-last", "No valve stands behind the vacuum breaker.", "Under pressure day and night its disc sticks shut.", recalled("IPC 608.14.6: no valve downstream of an atmospheric vacuum breaker"), func(a *Arrangement) bool {
			r := a.run("hose connection")
			i := r.at("vacuum-breaker")
			return i < 0 || i == len(r.Stand)-1
		}, ""},
		{"end-no-dead-leg", "No length of pipe is left behind that nobody draws from.", "Standing water feeds Legionella.", practice, none("capped end"), ""},
	},
	Faults: []Fault{
		{ID: "end-no-arrester", Breaks: "end-arrester", Run: "main", At: "fixture-stop", Did: "There is no arrester on a branch with fast-closing valves.", Then: "Each closing bangs, and joints work loose.", Shows: ShowsSurge, Change: missing("main", "arrester")},
		{ID: "end-arrester-first", Breaks: "end-arrester-place", Run: "main", At: "arrester", Did: "The arrester stands at the head of the branch.", Then: "The blow happens at the far end, past it.", Shows: ShowsSurge, Change: func(a *Arrangement) {
			a.remove("main", a.run("main").at("arrester"))
			a.insert("main", 0, Station{Device: "arrester"})
		}},
		{ID: "end-hose-bare", Breaks: "end-vacuum-breaker", Run: "hose connection", At: "fixture-stop", Did: "The hose connection has no vacuum breaker.", Then: "When the main fails, a bucket is drawn back through the hose.", Shows: ShowsSiphon, Change: missing("hose connection", "vacuum-breaker")},
		{ID: "end-breaker-valved", Breaks: "end-breaker-last", Run: "hose connection", At: "isolating-valve", Did: "A valve stands behind the vacuum breaker.", Then: "The breaker stands under pressure day and night, its disc sticks, and it no longer lets air in.", Shows: ShowsSiphon, Change: func(a *Arrangement) {
			a.insert("hose connection", len(a.run("hose connection").Stand), Station{Device: "isolating-valve"})
		}},
		{ID: "end-dead-leg", Breaks: "end-no-dead-leg", Run: "capped end", At: "isolating-valve", Did: "A length of pipe to a fixture that is gone was left in, shut and full.", Then: "Its standing water goes stale and feeds the live pipe.", Change: along(Run{Name: "capped end", Of: "main", After: 1, Join: -1, Stand: []Station{{Device: "isolating-valve", Marks: []string{"shut"}}}})},
	},
}
