package skills

import (
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var fixtureUnitsSkill = problems.Skill{
	ID: "fixture-units", Title: "Fixture units of a riser",
	Chapter: 3, Order: 10, Year: 1, Kind: problems.Table,
	Ask: "Levels {bottom_level} to {top_level} of {building} are alike. Each has {closets} water closets with {closet_control}, {sinks} {sink_name} and {others} {other_name}, all for {use} use. The table ({table_says}) gives total units for a water closet of {closet_units}, for {sink_one} {sink_units} ({sink_else} for {other_use} use), for {other_one} {other_units}; cold and hot apart, {sink_one} has {sink_cold} and {sink_hot}, {other_one} {other_cold} and {other_hot}. How many units are on the pipe that feeds all of it, cold and hot together?",
	Givens: []problems.Given{
		{Name: "bottom_level", Says: "lowest of the levels that are alike", Measure: &measure.Count},
		{Name: "top_level", Says: "highest of the levels that are alike", Measure: &measure.Count},
		{Name: "closets", Says: "water closets of a level", Measure: &measure.Count},
		{Name: "closet_units", Says: "units of a water closet, total", Measure: &measure.Units},
		{Name: "sinks", Says: "{sink_name} of a level", Measure: &measure.Count},
		{Name: "sink_units", Says: "units of {sink_one} for {use} use, total", Measure: &measure.Units},
		{Name: "sink_else", Says: "units of {sink_one} for {other_use} use, total", Measure: &measure.Units},
		{Name: "sink_cold", Says: "units of {sink_one} on the cold pipe", Measure: &measure.Units},
		{Name: "sink_hot", Says: "units of {sink_one} on the hot pipe", Measure: &measure.Units},
		{Name: "others", Says: "{other_name} of a level", Measure: &measure.Count},
		{Name: "other_units", Says: "units of {other_one} for {use} use, total", Measure: &measure.Units},
		{Name: "other_cold", Says: "units of {other_one} on the cold pipe", Measure: &measure.Units},
		{Name: "other_hot", Says: "units of {other_one} on the hot pipe", Measure: &measure.Units},
	},
	Rules: []problems.Rule{
		{
			Name: "closet_sum", Says: "units of the water closets of a level", Measure: &measure.Units,
			Formula: "closets x closet_units", Table: "units", Row: "water closet",
			Why: "Each fixture puts its units on the pipe; a water closet has cold water only.",
		},
		{
			Name: "sink_sum", Says: "units of the {sink_name} of a level", Measure: &measure.Units,
			Formula: "sinks x sink_units", Table: "units", Row: "{sink_one}",
			Why: "The pipe feeds both waters, so the total column counts.",
			Slips: []problems.Slip{
				{
					ID: "cold-and-hot-second", Family: "cold-and-hot", Formula: "sinks x (sink_cold + sink_hot)",
					Did:  "You added the cold and the hot column of {sink_one}.",
					Why:  "Nobody opens both taps fully. Each column is about three quarters of the total, since with one water shut the other must do more; their sum counts half as much again.",
					Next: "The total column is smaller than cold and hot together. If your sum is larger, you have added.",
				},
				{
					ID: "other-use", Formula: "sinks x sink_else",
					Did:  "You took {sink_else}, the line for {other_use} use.",
					Why:  "The same fixture is used far more often where the public comes. These are for {use} use.",
					Next: "Say whose fixture it is before you look for the line: one household, or whoever walks in.",
				},
			},
		},
		{
			Name: "other_sum", Says: "units of the {other_name} of a level", Measure: &measure.Units,
			Formula: "others x other_units", Table: "units", Row: "{other_one}",
			Why: "The pipe feeds both waters, so the total column counts.",
			Slips: []problems.Slip{{
				ID: "cold-and-hot-third", Family: "cold-and-hot", Formula: "others x (other_cold + other_hot)",
				Did:  "You added the cold and the hot column of {other_one}.",
				Why:  "Nobody opens both taps fully. Each column is about three quarters of the total; their sum counts half as much again.",
				Next: "The total column is smaller than cold and hot together. If your sum is larger, you have added.",
			}},
		},
		{
			Name: "per_level", Says: "units of one level", Measure: &measure.Units,
			Formula: "closet_sum + sink_sum + other_sum",
			Why:     "Units add, whatever the fixture.",
		},
		{
			Name: "levels", Says: "number of levels", Measure: &measure.Count, Whole: true,
			Formula: "top_level - bottom_level + 1",
			Why:     "Both the first and the last level have fixtures, so both count.",
			Slips: []problems.Slip{{
				ID: "gaps-for-levels", Formula: "top_level - bottom_level",
				Did:  "You subtracted the two numbers and got {got} levels.",
				Why:  "That counts the steps from one level to the next. Fixtures stand on the first level as well, so there is one level more.",
				Next: "Count on your fingers from {bottom_level} to {top_level}, both named aloud.",
			}},
		},
		{
			Name: "units", Says: "units on the pipe that feeds all of it", Measure: &measure.Units,
			Formula: "per_level x levels",
			Why:     "Every level hangs on this pipe.",
			Slips: []problems.Slip{{
				ID: "one-level", Formula: "per_level",
				Did:  "You gave the units of one level.",
				Why:  "The pipe at the foot feeds all {levels} levels. Sized for one, it would starve the others.",
				Next: "Stand at the foot of the riser and look up: count all that is above.",
			}},
		},
	},
	Holds: "A fixture unit is a weight, not a flow. It says how hard a fixture leans on the pipe, by how much it draws and how often. Weights add; flows are read from the table only at the end. A fixture with both waters has three weights: cold, hot, and a total that is less than the two together.",
	Cautions: []string{
		sizingStudy,
	},
	Sources: []problems.Source{
		{Says: "Units of most fixtures: IPC (2018), Appendix E, Table E103.3(2)", Confidence: solver.Confirmed},
		{Says: "Water closets and showers in the same table, and NPC (2020), Table 2.6.3.2.-A", Confidence: solver.Memory},
		{Says: "UPC, Table 610.3, private lines and service sinks: a city's worksheet of 2011", Confidence: solver.Confirmed},
		{Says: "Cold and hot are each three quarters of the total: NBS BMS79 (1941)", Confidence: solver.Confirmed},
	},
	Draw: drawFixtureUnits,
	Solve: func(w problems.World) float64 {
		sum := 0.0
		for _, f := range [][2]string{{"closets", "closet_units"}, {"sinks", "sink_units"}, {"others", "other_units"}} {
			sum += w.SI(f[0]) * w.SI(f[1])
		}
		levels := 0.0
		for n := w.SI("bottom_level"); n <= w.SI("top_level"); n++ {
			levels++
		}
		return sum * levels
	},
}

func init() { add(&fixtureUnitsSkill) }

// washroom is a set of three kinds of fixtures as one kind of building has it,
// named as a table of fixture units names them. Private ones count lavatories
// over the water closets, and bathtubs under them.
type washroom struct {
	code             string // the profile; empty: all but npc and upc
	building         string
	uses             []solver.Use
	use              solver.Occupancy
	closet, control  string
	second, third    string
	sinks, others    string // in words, many
	aSecond, aThird  string // in words, one
	closetNo, secNo  []int
	thirdNo          []int
	otherUseOfSecond solver.Occupancy
}

// washrooms are common practice, no source; the units are of the tables.
var washrooms = []washroom{
	{"", "an apartment building", []solver.Use{solver.Apartment}, solver.Private, "Water closet", "flush tank", "Lavatory", "Bathtub",
		"lavatories", "bathtubs", "a lavatory", "a bathtub", []int{8, 10, 12}, []int{1, 2, 3}, []int{1, 2, 3}, solver.Public},
	{"", "an office building", []solver.Use{solver.Office}, solver.Public, "Water closet", "flushometer valve", "Lavatory", "Service sink",
		"lavatories", "service sinks", "a lavatory", "a service sink", []int{6, 7, 8, 10}, []int{4, 5, 6, 8}, []int{2, 3}, solver.Private},
	{"", "a student residence", []solver.Use{solver.Residence}, solver.Public, "Water closet", "flushometer valve", "Lavatory", "Shower head",
		"lavatories", "showers", "a lavatory", "a shower", []int{6, 8}, []int{8, 10}, []int{5, 6, 7}, solver.Private},
	{"npc", "an apartment building", []solver.Use{solver.Apartment}, solver.Private, "Water closet, 6 L per flush or less, flush tank", "flush tank", "Lavatory, 8.3 L/min or less", "Bathtub with or without shower head",
		"lavatories", "bathtubs", "a lavatory", "a bathtub", []int{8, 10, 12}, []int{1, 2, 3}, []int{1, 2, 3}, solver.Public},
	{"upc", "an office building", []solver.Use{solver.Office}, solver.Public, "Water closet 1.6 gpf", "gravity tank", "Mop or service sink", "Lavatory",
		"service sinks", "lavatories", "a service sink", "a lavatory", []int{6, 7, 8, 10}, []int{2, 3}, []int{4, 5, 6, 8}, solver.Private},
}

// controls are the words of a table for what flushes, in plain words.
func plainControl(c string) string {
	if c == "flushometer valve" {
		return "flush valves"
	}
	return "flush tanks"
}

func drawFixtureUnits(s *building.Sheet) {
	code := s.Profile.ID
	if code != "npc" && code != "upc" {
		code = ""
	}
	var fit []washroom
	for _, w := range washrooms {
		if w.code == code {
			fit = append(fit, w)
		}
	}
	r, _ := pick(s, fit)
	t := suppliedTower(s, building.Plan{Uses: r.uses, Min: 5, Max: 16, NoSkip: true})
	table := solver.UnitsOf(s.Profile.ID)
	closet, _ := solver.FixtureIn(table, r.closet, r.use, r.control)
	second, _ := solver.FixtureIn(table, r.second, r.use, "")
	other, _ := solver.FixtureIn(table, r.second, r.otherUseOfSecond, "")
	third, _ := solver.FixtureIn(table, r.third, r.use, "")
	closets, _ := pick(s, r.closetNo)
	sinks, _ := pick(s, r.secNo)
	others, _ := pick(s, r.thirdNo)
	if r.use == solver.Private { // some suites have a second lavatory, some only a shower
		sinks, others = closets+sinks, closets-others
	}
	bottom := s.Int(2, 3)
	s.Name("building", r.building)
	s.Name("closet_control", plainControl(r.control))
	s.Name("sink_name", r.sinks)
	s.Name("sink_one", r.aSecond)
	s.Name("other_name", r.others)
	s.Name("other_one", r.aThird)
	s.Name("use", string(r.use))
	s.Name("other_use", string(r.otherUseOfSecond))
	s.Name("table_says", unitsTable(s.Profile.ID))
	s.Focus = t.Top()
	top, _ := strconv.Atoi(t.Level(t.Storeys))
	s.Set("bottom_level", float64(bottom))
	s.Set("top_level", float64(top))
	s.Set("closets", float64(closets))
	s.Set("closet_units", closet.Total)
	s.Set("sinks", float64(sinks))
	s.Set("sink_units", second.Total)
	s.Set("sink_else", other.Total)
	s.Set("sink_cold", second.Cold)
	s.Set("sink_hot", second.Hot)
	s.Set("others", float64(others))
	s.Set("other_units", third.Total)
	s.Set("other_cold", third.Cold)
	s.Set("other_hot", third.Hot)
}

// unitsTable says which table of fixture units a profile prints.
func unitsTable(profile string) string {
	switch profile {
	case "npc":
		return "NPC, Table 2.6.3.2.-A, recalled"
	case "upc":
		return "UPC, Table 610.3"
	}
	return "IPC, Table E103.3(2)"
}
