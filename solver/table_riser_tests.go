package solver

// TestRule is how a code has water piping tested before it is closed in.
type TestRule struct {
	Profile    string // id of a Profile
	Words      string
	Section    string
	Confidence Confidence
}

// TestRules are the least that each code asks; a job's specification often
// asks more. All are amended locally.
var TestRules = []TestRule{
	{"npc", "water at the pressure in service, or air at 700 kPa for 2 h", "2.3.7.", Memory},
	{"ipc", "water at no less than the working pressure of the system", "312.5", Memory},
	{"upc", "water at no less than the working pressure", "609.4", Memory},
	{"shop", "water at one and a half times the working pressure", "", Practice},
}

// TestRuleOf is the test rule of a profile; that of the shop where it has none.
func TestRuleOf(profile string) TestRule {
	for _, r := range TestRules {
		if r.Profile == profile {
			return r
		}
	}
	return TestRules[len(TestRules)-1]
}
