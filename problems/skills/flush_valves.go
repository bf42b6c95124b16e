package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var flushValveUnitsSkill = problems.Skill{
	ID: "flush-valve-units", Title: "Several flush valves on one branch",
	Chapter: 3, Order: 20, Year: 3, Kind: problems.Table,
	Ask: "A branch feeds {closets} water closets and {urinals} urinals, all with flush valves, and {lavs} lavatories. {table_says} The first water closet counts {first_closet}, four together {four_closets}, each further one {further}. The first urinal counts {first_urinal}, {urinals} together {urinal_row}. A lavatory counts {lav_units}. How many units does the branch carry?",
	Givens: []problems.Given{
		{Name: "closets", Says: "water closets on the branch", Measure: &measure.Count},
		{Name: "urinals", Says: "urinals on the branch", Measure: &measure.Count},
		{Name: "lavs", Says: "lavatories on the branch", Measure: &measure.Count},
		{Name: "first_closet", Says: "units of the first water closet", Measure: &measure.Units},
		{Name: "four_closets", Says: "units of four water closets together", Measure: &measure.Units},
		{Name: "further", Says: "units of each water closet over four", Measure: &measure.Units},
		{Name: "first_urinal", Says: "units of the first urinal", Measure: &measure.Units},
		{Name: "urinal_row", Says: "units of {urinals} urinals together", Measure: &measure.Units},
		{Name: "lav_units", Says: "units of a lavatory", Measure: &measure.Units},
	},
	Rules: []problems.Rule{
		{
			Name: "closet_sum", Says: "units of the water closets", Measure: &measure.Units,
			Formula: "four_closets + (closets - 4) x further", Table: "flush-valves", Row: "closets",
			Why: "The table adds up the first four with falling values; from the fifth on each adds the same.",
			Slips: []problems.Slip{
				{
					ID: "each-as-the-first", Formula: "closets x first_closet",
					Did:  "You gave each of the {closets} water closets the {first_closet} of the first one.",
					Why:  "A flush lasts a few seconds, so the second and third hardly ever fall on the first. The table lets each further valve count less.",
					Next: "Look at the table's heading: is the number for one valve, or for all of them together?",
				},
				{
					ID: "each-as-the-last", Formula: "closets x further",
					Did:  "You gave each of the {closets} water closets the {further} of a further one.",
					Why:  "One valve alone already draws its full stream through the branch. The first few must count high, or the branch is too small for even one flush.",
					Next: "Start with the row for four, then add what is over four.",
				},
				{
					ID: "further-ones-left-out", Formula: "four_closets",
					Did:  "You stopped at the row for four.",
					Why:  "There are {closets} on the branch. Those over four add {further} each.",
					Next: "Count the fixtures on the drawing again, and hold them against the row you read.",
				},
			},
		},
		{
			Name: "valves", Says: "units of all flush valves", Measure: &measure.Units,
			Formula: "closet_sum + urinal_row",
			Why:     "Urinals have rows of their own, read for all of them together.",
			Slips: []problems.Slip{{
				ID: "each-urinal-as-the-first", Formula: "closet_sum + urinals x first_urinal",
				Did:  "You gave each of the {urinals} urinals the {first_urinal} of the first one.",
				Why:  "Urinals fall in value as water closets do: together they come to {urinal_row}.",
				Next: "With flush valves ask how many together, never how much each.",
			}},
		},
		{
			Name: "units", Says: "units of the branch", Measure: &measure.Units,
			Formula: "valves + lavs x lav_units",
			Why:     "Faucets keep their value, however many they are.",
			Slips: []problems.Slip{{
				ID: "lavatories-left-out", Formula: "valves",
				Did:  "You left the lavatories out.",
				Why:  "They are small beside flush valves, but they are on the branch.",
				Next: "Tick off each kind of fixture on the drawing as it goes into the sum.",
			}},
		},
	},
	Holds: "A flush valve draws hard for a few seconds and then rests. One on a branch needs its whole stream; of five, two at once are rare. A code that lets the value fall with the number says so in its table; another gives every valve the same. Never mix the two.",
	Cautions: []string{
		sizingStudy,
	},
	Sources: []problems.Source{
		{Says: "Flush valves 40, 70, 90, 105, then 10 each; urinals 20, 35, 45, 53, then 5 each: UPC, Table 610.10, by a city's worksheet of 2011", Confidence: solver.Confirmed},
		{Says: "A public lavatory, 1.0: UPC, Table 610.3", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		suppliedTower(s, building.Plan{Uses: []solver.Use{solver.Office}, Min: 3, Max: 12})
		closets := s.Int(6, 12)
		urinals := s.Int(2, 4)
		lavs, _ := solver.FixtureIn(solver.UnitsUPC, "Lavatory", solver.Public, "")
		words := "Your code counts flush valves together (UPC, Table 610.10)."
		if s.Profile.ID != "upc" {
			words = "This job is under a code that counts flush valves together (UPC, Table 610.10); not every code does."
		}
		s.Name("table_says", words)
		s.Set("closets", float64(closets))
		s.Set("urinals", float64(urinals))
		s.Set("lavs", float64(s.Int(4, 10)))
		s.Set("first_closet", solver.FlushClosetsUPC.Units(1))
		s.Set("four_closets", solver.FlushClosetsUPC.Units(4))
		s.Set("further", solver.FlushClosetsUPC.Further)
		s.Set("first_urinal", solver.FlushUrinalsUPC.Units(1))
		s.Set("urinal_row", solver.FlushUrinalsUPC.Units(urinals))
		s.Set("lav_units", lavs.Total)
	},
	Solve: func(w problems.World) float64 {
		return solver.FlushClosetsUPC.Units(int(w.SI("closets"))) + solver.FlushUrinalsUPC.Units(int(w.SI("urinals"))) + w.SI("lavs")*w.SI("lav_units")
	},
}

func init() { add(&flushValveUnitsSkill) }
