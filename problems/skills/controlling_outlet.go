package skills

import (
	"fmt"
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var controllingOutletSkill = problems.Skill{
	ID: "controlling-outlet", Title: "The outlet that governs",
	Chapter: 2, Order: 50, Year: 3, Kind: problems.Choice,
	Ask: "Three outlets hang on one main. A: a {name_a} on level {level_a}, {height_a} up, {friction_a} of friction on the way, needs {least_a}. B: a {name_b} on level {level_b}, {height_b} up, {friction_b} of friction, needs {least_b}. C: a {name_c} on level {level_c}, {height_c} up, {friction_c} of friction, needs {least_c}. Heights count from the gauge in the meter room; the needs are flowing pressures ({need_says}). Which outlet governs the pressure that must stand there?",
	Givens: append(append(
		outletGivens("a"), outletGivens("b")...), outletGivens("c")...),
	Rules: []problems.Rule{
		outletRule("a"), outletRule("b"), outletRule("c"),
		{
			Name: "governs", Says: "the outlet that governs", Measure: &measure.Answer,
			Formula: "(needs_b > max(needs_a, needs_c)) + 2 x (needs_c > max(needs_a, needs_b))",
			Choices: []string{"outlet A", "outlet B", "outlet C"},
			Why:     "One pressure serves all three, so it must suit the one that asks for most. The others then have more than they need.",
			Would:   governBy,
			Slips: []problems.Slip{{
				ID:      "highest-taken",
				Formula: "(height_b > max(height_a, height_c)) + 2 x (height_c > max(height_a, height_b))",
				Did:     "You chose the outlet that stands highest.",
				Why:     "Height is only one of three things to pay. A lower one that is far away, or needs much itself, can ask for more at the start.",
				Next:    "Set three columns beside each other: height as pressure, friction, own need. Compare the sums, not the first column.",
			}},
		},
	},
	Holds: "The outlet that governs is the one that needs most at the start: its height, the friction up to it, and the pressure it must have itself, all as pressure. Often that is the highest one. It is another where a lower outlet has a long run or a flush valve, and the building here is one of those.",
	Cautions: []string{
		"With more at the start for the one that governs, the lowest outlets get more as well: check them against the static limit of the code.",
	},
	Sources: []problems.Source{
		footSource,
		{Says: "25 psi (170 kPa) at a shower in shop practice, 20 psi (138 kPa) in other profiles without a number: common practice, no source", Confidence: solver.Practice},
		{Says: "Shower with a balanced-pressure or thermostatic valve, 20 psi (138 kPa) flowing: IPC (2021), Table 604.3", Confidence: solver.Confirmed},
		{Says: "Flush valve of a water closet 35 psi (240 kPa), of a urinal 25 psi (170 kPa), lavatory and sink 8 psi (55 kPa) flowing: IPC (2021), Table 604.3; the maker governs", Confidence: solver.Memory},
	},
	Draw: drawOutlets,
	Solve: func(w problems.World) float64 {
		return float64(solver.Governing(threeOutlets(w), w.Gamma()))
	},
}

func init() { add(&controllingOutletSkill) }

// threeOutlets are A, B and C as they are told.
func threeOutlets(w problems.World) (list []solver.Outlet) {
	for _, x := range []string{"a", "b", "c"} {
		list = append(list, solver.Outlet{
			Above: w.Length("height_" + x), Friction: w.Pressure("friction_" + x), Least: w.Pressure("least_" + x),
		})
	}
	return list
}

// governBy gives the gauge what one outlet asks for, and looks at the others.
func governBy(w problems.World, v float64) problems.Outcome {
	list := threeOutlets(w)
	start := list[int(v)].Needs(w.Gamma())
	var fed, short []string
	for i, x := range list {
		says, ok := w.Left("outlet "+letters[i], "", x.Left(start, w.Gamma()), x.Least)
		switch {
		case i == int(v):
		case ok:
			fed = append(fed, says)
		default:
			short = append(short, says)
		}
	}
	o := problems.Outcome{Kept: len(short) == 0, Says: short}
	if o.Kept {
		o.Says = fed
	}
	for i, says := range o.Says {
		if i == 0 {
			says = "with " + w.Press(start) + " on the gauge, as outlet " + letters[int(v)] + " asks, " + says
		}
		o.Says[i] = problems.Sentence(says) + "."
	}
	return o
}

var letters = []string{"A", "B", "C"}

// outletGivens are what is told of outlet x.
func outletGivens(x string) []problems.Given {
	big := letter(x)
	return []problems.Given{
		{Name: "height_" + x, Says: "height of outlet " + big + " above the gauge", Measure: &measure.Height},
		{Name: "friction_" + x, Says: "friction on the way to outlet " + big, Measure: &measure.Pressure},
		{Name: "least_" + x, Says: "flowing pressure that outlet " + big + " needs", Measure: &measure.Pressure},
	}
}

// letter is the outlet's letter as a drawing has it: A.
func letter(x string) string { return string(x[0] - 'a' + 'A') }

// outletRule is the line of outlet x with its slips.
func outletRule(x string) problems.Rule {
	of := func(format string) string { return fmt.Sprintf(format, x) }
	return problems.Rule{
		Name: "needs_" + x, Says: "pressure that outlet " + letter(x) + " asks for at the gauge", Measure: &measure.Pressure,
		Formula: of("gamma x height_%[1]s + friction_%[1]s + least_%[1]s"),
		Why:     "The gauge must carry the height, the friction of the way, and what the outlet itself needs.",
		Slips: []problems.Slip{
			{
				ID: "own-need-left-out-" + x, Family: "own-need-left-out",
				Formula: of("gamma x height_%[1]s + friction_%[1]s"),
				Did:     of("You left out the {least_%[1]s} that the {name_%[1]s} needs itself."),
				Why:     "Height and friction only bring the water to the outlet. Without a pressure of its own it drips.",
				Next:    "Think of the gauge at the outlet: it must not read zero with the water running.",
			},
			{
				ID: "friction-left-out-" + x, Family: "friction-left-out",
				Formula: of("gamma x height_%[1]s + least_%[1]s"),
				Did:     of("You left out the friction on the way to the {name_%[1]s}, {friction_%[1]s}."),
				Why:     "The outlets are compared with water running. A long way costs pressure as height does.",
				Next:    "Three columns for each outlet: height, friction, own need. None may stay empty.",
			},
			{
				ID: "height-not-turned-" + x, Family: "height-not-turned",
				Formula: of("height_%[1]s + friction_%[1]s + least_%[1]s"),
				Did:     of("You added the height, {height_%[1]s}, as if it were a pressure."),
				Why:     "Feet or metres and psi or kPa do not add. A height becomes a pressure through {gamma}.",
				Next:    "Write the unit on each number of the sum. All must be the same.",
			},
		},
	}
}

// outletKind is an outlet with its height above the floor and the flowing
// pressure it needs; least 0 is a shower, which takes the profile's number.
type outletKind struct {
	name               string
	aboveUS, aboveSI   float64
	leastUS, leastSI   float64
	hospitals, offices bool
}

// outletKinds are common practice, no source, save where the skill says so.
var outletKinds = []outletKind{
	{"shower", building.ShowerFeet, building.ShowerMetres, 0, 0, true, false},
	{"lavatory faucet", 3, 0.9, 8, 55, true, true},
	{"sink faucet", 3, 0.9, 8, 55, true, true},
	{"water closet with a flush valve", 2.2, 0.65, 35, 240, true, true},
	{"urinal with a flush valve", 3.8, 1.15, 25, 170, false, true},
	{"clothes washer", 3.5, 1.1, 20, 140, true, false},
}

// drawOutlets draws three outlets of which the highest does not govern.
func drawOutlets(s *building.Sheet) {
	type hung struct {
		outletKind
		n                       int
		height, friction, least float64
	}
	t := s.Tower(building.Plan{Uses: []solver.Use{solver.Hospital, solver.Office}, Min: 5, Max: 10})
	margin := s.Pick([]float64{3}, []float64{12})
	var three [3]hung
	for tries := 0; tries < 200; tries++ {
		needs, high, most := [3]float64{}, 0, 0
		for i := range three {
			o := &three[i]
			o.outletKind, _ = pick(s, outletKinds)
			o.n = s.Int(t.Storeys-3, t.Storeys)
			o.height = t.Up(o.n) + s.Pick([]float64{o.aboveUS}, []float64{o.aboveSI})
			o.friction = s.Pick([]float64{4, 5, 6, 7, 10, 12, 14}, []float64{25, 30, 35, 45, 60, 75, 90})
			o.least = s.Pick([]float64{o.leastUS}, []float64{o.leastSI})
			if o.least == 0 {
				o.least = s.Profile.ShowerMin.Value(s.System).Value
			}
			needs[i] = head(s, o.height) + o.friction + o.least
			if o.height > three[high].height {
				high = i
			}
			if needs[i] > needs[most] {
				most = i
			}
		}
		ok := high != most && three[0].n != three[1].n && three[1].n != three[2].n && three[0].n != three[2].n
		for i, o := range three {
			suits := o.hospitals && t.Use == solver.Hospital || o.offices && t.Use == solver.Office
			ok = ok && suits && o.least != o.friction && (i == most || needs[most]-needs[i] >= margin)
		}
		if ok {
			s.Focus = t.Storey(three[most].n)
			break
		}
	}
	s.Building.Street.GaugeName = "on the gauge in the meter room"
	street := math.Ceil(s.PickPlate([]float64{60}, []float64{425}))
	s.SetStreet(street, street-s.PickPlate([]float64{5, 8}, []float64{35, 50}), 0, s.Building.Street.GaugeName)
	words := "the maker of each fixture governs"
	for i, o := range three {
		if o.leastUS == 0 {
			words = s.Profile.ShowerMin.Words
		}
		x := string(rune('a' + i))
		s.Name("name_"+x, o.name)
		s.Name("level_"+x, t.Level(o.n))
		setHeight(s, "height_"+x, math.Round(o.height*100)/100)
		s.Set("friction_"+x, o.friction)
		s.Set("least_"+x, o.least)
	}
	s.Name("need_says", words)
}
