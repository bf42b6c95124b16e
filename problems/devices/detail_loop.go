package devices

// returnDetail is the return of a hot loop, from the last branch to the heater.
var returnDetail = Detail{
	Arrangement: Arrangement{
		ID: "return", Title: "Return of the hot loop",
		Runs: []Run{
			{Name: "main", Join: -1, Stand: []Station{
				{Device: "balancing-valve"}, {Device: "thermometer"}, {Device: "aquastat"}, {Device: "isolating-valve"}, {Device: "circulator"}, {Device: "return-check"}, {Device: "isolating-valve"}, {Device: "dip-tube"},
			}},
			{Name: "to the mixing valve", Of: "main", After: 5, Join: -1, Stand: []Station{{Device: "isolating-valve"}, {Device: "mixing-valve"}}},
		},
	},
	Flow: []string{"balancing-valve", "circulator", "return-check", "dip-tube"},
	Checks: []Check{
		{"return-check-there", "A check stands in the return.", "A big draw must not pull cold water backward.", practice, has("main", "return-check", 1), ""},
		{"return-check-turned", "The check opens toward the heater.", "Turned, the loop stands still.", practice, faces("main", "return-check"), ""},
		{"return-circulator-turned", "The circulator's arrow points toward the heater.", "Turned, it works against the check.", practice, faces("main", "circulator"), ""},
		{"return-valves", "The circulator has a valve on each side.", "It is changed without draining the loop.", practice, both("main", "circulator", "isolating-valve"), ""},
		{"return-no-reducing", "No reducing valve stands in the loop.", "The circulator would have to make good its whole drop.", practice, lacks("main", "reducing-valve"), ""},
		{"return-both", "The return also feeds the cold port of the mixing valve.", "With no draw the mixing valve needs cooler water from somewhere, or it creeps to the store's heat.", read("Chicago Municipal Code, 18-29-607: to the heater and to the mixing valve"), has("to the mixing valve", "mixing-valve", 1), ""},
	},
	Faults: []Fault{
		{ID: "return-no-check", Breaks: "return-check-there", Run: "main", At: "circulator", Did: "There is no check in the return.", Then: "A big draw pulls cold water backward up the return: far taps turn lukewarm.", Change: missing("main", "return-check")},
		{ID: "return-check-backward", Breaks: "return-check-turned", Run: "main", At: "return-check", Did: "The check in the return stands against the flow.", Then: "Nothing moves: the circulator hums and the far taps are cold.", Shows: ShowsCooling, Change: turned("main", "return-check")},
		{ID: "return-circulator-backward", Breaks: "return-circulator-turned", Run: "main", At: "circulator", Did: "The circulator stands against the flow.", Then: "It pushes against the check: no flow, a hot pump, cold taps.", Shows: ShowsCooling, Change: turned("main", "circulator")},
		{ID: "return-reducing", Breaks: "return-no-reducing", Run: "main", At: "reducing-valve", Did: "A reducing valve stands in the recirculated loop.", Then: "The circulator would have to make good its whole drop, many times what it can: the loop stands still.", Shows: ShowsCooling, Change: added("main", "thermometer", Station{Device: "reducing-valve"})},
		{ID: "return-heater-only", Breaks: "return-both", Run: "main", At: "return-check", Did: "The return goes to the heater alone.", Then: "With nobody drawing, the mixing valve gets no cooler water: the loop climbs to the heat of the store.", Shows: ShowsScald, Change: away("to the mixing valve")},
	},
}

// branchReturnsDetail are the returns of three risers, near to far.
var branchReturnsDetail = Detail{
	Arrangement: Arrangement{
		ID: "branch-returns", Title: "Balancing three risers, direct return",
		Runs: []Run{
			{Name: "main", Join: -1, Stand: []Station{{Device: "isolating-valve"}, {Device: "thermometer"}, {Device: "circulator"}}},
			{Name: "near riser", Of: "main", After: 0, Join: 2, Stand: []Station{{Device: "isolating-valve"}, {Device: "balancing-valve", Marks: []string{"nearly shut"}}}},
			{Name: "middle riser", Of: "main", After: 0, Join: 2, Stand: []Station{{Device: "isolating-valve"}, {Device: "balancing-valve", Marks: []string{"half open"}}}},
			{Name: "far riser", Of: "main", After: 0, Join: 2, Stand: []Station{{Device: "isolating-valve"}, {Device: "balancing-valve", Marks: []string{"wide open"}}}},
		},
	},
	Checks: []Check{
		{"branch-each-balanced", "Each return has a balancing valve.", "Without one, a short way takes it all.", practice, func(a *Arrangement) bool {
			return has("near riser", "balancing-valve", 1)(a) && has("middle riser", "balancing-valve", 1)(a) && has("far riser", "balancing-valve", 1)(a)
		}, ""},
		{"branch-order", "With a direct return the near valve is nearly shut and the far one wide open.", "The near branch has the most pressure to spare.", practice, func(a *Arrangement) bool {
			return bare("near riser", "balancing-valve", "wide open")(a) && bare("far riser", "balancing-valve", "nearly shut")(a)
		}, ""},
	},
	Faults: []Fault{
		{ID: "branch-no-valve", Breaks: "branch-each-balanced", Run: "near riser", At: "isolating-valve", Did: "The near riser has no balancing valve.", Then: "The water takes the short way back, and the far riser stays cold.", Shows: ShowsCooling, Change: missing("near riser", "balancing-valve")},
		{ID: "branch-reversed", Breaks: "branch-order", Run: "near riser", At: "balancing-valve", Did: "The near valve stands wide open and the far one nearly shut.", Then: "The near riser takes the flow, and the far one stays cold.", Shows: ShowsCooling, Change: func(a *Arrangement) {
			unmarked("near riser", "balancing-valve", "wide open")(a)
			unmarked("far riser", "balancing-valve", "nearly shut")(a)
		}},
	},
}

// branchEndDetail is the end of a branch with its last two fixtures.
var branchEndDetail = Detail{
	Arrangement: Arrangement{
		ID: "branch-end", Title: "End of a branch",
		Runs: []Run{
			{Name: "main", Join: -1, Stand: []Station{
				{Device: "isolating-valve"}, {Device: "fixture-stop", Marks: []string{"last but one"}}, {Device: "arrester"}, {Device: "fixture-stop", Marks: []string{"last"}},
			}},
			{Name: "hose connection", Of: "main", After: 0, Join: -1, Stand: []Station{{Device: "fixture-stop"}, {Device: "vacuum-breaker"}}},
		},
	},
	Checks: []Check{
		{"end-arrester", "An arrester stands on a branch with fast-closing valves.", "Something must take up the blow.", recalled("PDI-WH 201"), has("main", "arrester", 1), ""},
		{"end-arrester-place", "It stands between the last two fixtures.", "The wave runs to the end of the branch.", recalled("PDI-WH 201, placing rule"), both("main", "arrester", "fixture-stop"), "arrester"},
		{"end-vacuum-breaker", "The hose connection has a vacuum breaker.", "A hose can lie in anything.", practice, has("hose connection", "vacuum-breaker", 1), ""},
		{"end-no-dead-leg", "No length of pipe is left behind that nobody draws from.", "Standing water feeds Legionella.", practice, none("capped end"), ""},
	},
	Faults: []Fault{
		{ID: "end-no-arrester", Breaks: "end-arrester", Run: "main", At: "fixture-stop", Did: "There is no arrester on a branch with fast-closing valves.", Then: "Each closing bangs, and joints work loose.", Shows: ShowsSurge, Change: missing("main", "arrester")},
		{ID: "end-arrester-first", Breaks: "end-arrester-place", Run: "main", At: "arrester", Did: "The arrester stands at the head of the branch.", Then: "The blow happens at the far end, past it.", Shows: ShowsSurge, Change: func(a *Arrangement) {
			a.remove("main", a.run("main").at("arrester"))
			a.insert("main", 0, Station{Device: "arrester"})
		}},
		{ID: "end-hose-bare", Breaks: "end-vacuum-breaker", Run: "hose connection", At: "fixture-stop", Did: "The hose connection has no vacuum breaker.", Then: "When the main fails, a bucket is drawn back through the hose.", Shows: ShowsSiphon, Change: missing("hose connection", "vacuum-breaker")},
		{ID: "end-dead-leg", Breaks: "end-no-dead-leg", Run: "capped end", At: "isolating-valve", Did: "A length of pipe to a fixture that is gone was left in, shut and full.", Then: "Its standing water goes stale and feeds the live pipe.", Change: along(Run{Name: "capped end", Of: "main", After: 1, Join: -1, Stand: []Station{{Device: "isolating-valve", Marks: []string{"shut"}}}})},
	},
}
