package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

// The moves of a meter change in their order. A move that the place does not
// have is left out.
var meterMoves = []string{"fit the bonding jumper", "open the bypass", "shut both valves of the meter", "relieve the pressure and prove it", "loosen the unions"}

var meterChangeSkill = problems.Skill{
	ID: "meter-change", Title: "Order of work at a water meter",
	Chapter: 8, Order: 110, Year: 1, Kind: problems.Choice,
	Ask: "A water meter is to be changed. The service and the pipe behind the meter are {pipe_says}. {bypass_says} {jumper_says} What is the first move, the second and the third, and how long is the space for the new meter if {clearance} is to be kept free on each side of its body of {body}?",
	Givens: []problems.Given{
		{Name: "metal", Says: "is the pipe metal on both sides", Measure: &measure.Count},
		{Name: "bonded", Says: "is a bonding jumper in place across the meter", Measure: &measure.Count},
		{Name: "bypass", Says: "is there a bypass", Measure: &measure.Count},
		{Name: "leave", Says: "has the utility given leave to open it", Measure: &measure.Count},
		{Name: "body", Says: "length of the meter's body", Measure: &measure.Bore},
		{Name: "clearance", Says: "space to keep on each side", Measure: &measure.Bore},
	},
	Rules: []problems.Rule{
		{
			Name: "move_one", Says: "first move", Measure: &measure.Answer, Choices: meterMoves,
			Formula: "2 - (bypass and leave) - (2 - (bypass and leave)) x (metal and (bonded < 1))",
			Why:     "A metal service may carry current from the building's ground. Once the meter is out, that current goes through whoever holds both ends. So the jumper comes before everything.",
			Slips: []problems.Slip{
				{
					ID: "jumper-forgotten", Formula: "2 - (bypass and leave) + 0 / (metal and (bonded < 1))",
					Did:  "You began with the valves.",
					Why:  "The pipe is metal and nothing bridges the meter yet. The jumper goes on before a hand is put to the pipe.",
					Next: "Metal on both sides, and no jumper: bond first.",
				},
				{
					ID: "jumper-for-nothing", Formula: "0 / ((metal < 1) or (bonded > 0))",
					Did:  "You began with a jumper.",
					Why:  "Here none is to be fitted: plastic carries no current, and a jumper that is in place already does its work.",
					Next: "Ask of what the pipe is, and look whether the jumper is there.",
				},
				{
					ID: "bypass-without-leave", Formula: "1 + 0 / (bypass > leave)",
					Did:  "You opened the bypass.",
					Why:  "Its valve is sealed, and the utility has given no leave. Water that runs past the meter is not yours to give.",
					Next: "A seal is opened by those who set it, or with their word.",
				},
				{
					ID: "unions-first", Formula: "4",
					Did:  "You loosened the unions at once.",
					Why:  "The meter stands under full pressure, and perhaps in a live ground path.",
					Next: "Bond, bypass, shut, relieve, and only then open.",
				},
			},
		},
		{
			Name: "move_two", Says: "second move", Measure: &measure.Answer, Choices: meterMoves,
			Formula: "max(move_one + 1, 2 - (bypass and leave))",
			Why:     "The bypass is open before the meter is shut, so that the building keeps its water. Without one the valves are shut next.",
			Slips: []problems.Slip{
				{
					ID: "shut-before-bypass", Formula: "2 + 0 / ((bypass and leave) and (move_one < 1))",
					Did:  "You shut the meter's valves before the bypass was open.",
					Why:  "The whole building is without water in between, and flush valves and heaters above may siphon.",
					Next: "Open the new way before you shut the old one.",
				},
				{
					ID: "unions-second", Formula: "4",
					Did:  "You went to the unions.",
					Why:  "The meter is not yet shut off and relieved.",
					Next: "A union is opened last of all.",
				},
			},
		},
		{
			Name: "move_three", Says: "third move", Measure: &measure.Answer, Choices: meterMoves,
			Formula: "move_two + 1",
			Why:     "Bypass, valves, relief, unions: no step is passed over.",
			Slips: []problems.Slip{{
				ID: "one-move-skipped", Formula: "min(4, move_two + 2) + 0 / (move_two < 3)",
				Did:  "You went on to {got}.",
				Why:  "One move lies between. A shut valve can leak, and a pipe is not empty before a gauge or an open cock says so.",
				Next: "After each move ask what could still hurt me.",
			}},
		},
		{
			Name: "length", Says: "space for the meter", Measure: &measure.Bore,
			Formula: "body + 2 x clearance",
			Why:     "A wrench and a hand must get in on both sides.",
			Slips: []problems.Slip{
				{
					ID: "one-side-only", Formula: "body + clearance",
					Did:  "You kept the space on one side.",
					Why:  "A meter has two unions, and each wants a wrench.",
					Next: "Draw the body and put a space at either end.",
				},
				{
					ID: "body-alone", Formula: "body",
					Did:  "You gave the body without the space.",
					Why:  "Then the meter fits and cannot be got out again.",
					Next: "Leave room for the next one who has to change it.",
				},
			},
		},
	},
	Holds: "A meter is a gap in a pipe that may be the building's ground. Bond across it, give the building its water by the bypass, shut, relieve and prove, then open. Back the other way: meter in and tight, valves open slowly, bypass shut and sealed, and a jumper that belongs there stays for good.",
	Cautions: []string{
		"Treat a metal service as live. Test it, fit the jumper before the first union is loosened, and call an electrician where the law says so. If a spark is seen or a tingle is felt, stop and leave it.",
		"Meters and seals belong to the utility. Only its people, or those it names, open them.",
		"In a pit: test the air first, and never go in alone.",
	},
	Sources: []problems.Source{
		{Says: "Bonding around meters and the like: NEC 250.53(D)(1); CEC section 10, by inspectors' forums", Confidence: solver.Confirmed},
		{Says: "Bypass before valves, and the order of the moves", Confidence: solver.Practice},
		{Says: "Space of 6 to 12 in (150 to 300 mm) at each side: utilities differ", Confidence: solver.Practice},
	},
	Draw: drawMeterChange,
	Solve: func(w problems.World) float64 {
		return float64(w.Length("body") + w.Length("clearance") + w.Length("clearance"))
	},
}

func init() { add(&meterChangeSkill) }

// drawMeterChange draws a service of metal or plastic, with or without a
// jumper, a bypass and the utility's leave.
func drawMeterChange(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 12})
	metal := s.Chance(0.75)
	bonded := metal && s.Chance(0.3)
	bypass := s.Chance(0.7)
	leave := bypass && s.Chance(0.75)
	s.Name("pipe_says", choose(metal, "copper", "plastic"))
	s.Name("jumper_says", choose(bonded, "A bonding jumper is in place across the meter.", "No jumper is in place across the meter."))
	s.Name("bypass_says", choose(!bypass, "There is no bypass.", choose(leave,
		"There is a bypass with a sealed valve, and the utility has given leave to open it.",
		"There is a bypass with a sealed valve, and the utility has given no leave to open it.")))
	s.Values = append(s.Values, yesOrNo("metal", metal), yesOrNo("bonded", bonded), yesOrNo("bypass", bypass), yesOrNo("leave", leave))
	s.Set("body", s.Pick([]float64{13, 15.25, 17, 24, 27}, []float64{330, 387, 430, 500, 600}))
	s.Set("clearance", s.Pick([]float64{6, 8, 10, 12}, []float64{150, 200, 250, 300}))
}
