package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

// Slips that only some scenarios have divide by a condition: where it does not
// hold they divide by nothing and have no value.
var vacuumReliefSkill = problems.Skill{
	ID: "vacuum-relief", Title: "Does the heater need a vacuum relief valve?",
	Chapter: 6, Order: 150, Year: 4, Kind: problems.Choice,
	Ask: "A water heater stands with its foot {tank_up} above the floor of the meter room. It {stores_says}, and the cold water enters {feed_says}. The highest outlet on its hot water is {outlet_up} above the same floor. The cold line is shut at the meter and opened at a drain {drain_up} above that floor. How hard does the line pull at the heater, and does the rule of this place ({code}: {rule_says}) ask for a vacuum relief valve?",
	Givens: []problems.Given{
		{Name: "tank_up", Says: "height of the heater's foot above the meter room", Measure: &measure.Height},
		{Name: "drain_up", Says: "height of the open drain", Measure: &measure.Height},
		{Name: "outlet_up", Says: "height of the highest outlet on its hot water", Measure: &measure.Height},
		{Name: "stores", Says: "has it a storage tank", Measure: &measure.Count},
		{Name: "bottom_fed", Says: "does the cold water enter at the bottom", Measure: &measure.Count},
		{Name: "rule_height", Says: "does the rule go by the tank's height", Measure: &measure.Count},
		{Name: "rule_feed", Says: "does the rule go by a bottom feed", Measure: &measure.Count},
		{Name: "rule_any", Says: "does the rule take any tank that may be siphoned", Measure: &measure.Count},
	},
	Rules: []problems.Rule{
		{
			Name: "drop", Says: "height of the column that hangs below the heater", Measure: &measure.Height,
			Formula: "tank_up - drain_up",
			Why:     "With the street shut, the water from the heater down to the open drain has nothing under it and hangs on the tank.",
			Slips: []problems.Slip{{
				ID: "from-the-floor", Formula: "tank_up",
				Did:  "You took the whole height above the floor of the meter room.",
				Why:  "The line is open at the drain, {drain_up} up. Below that no water hangs.",
				Next: "A siphon reaches from the water's top to the opening where air is.",
			}},
		},
		{
			Name: "pull", Says: "vacuum that the column makes at the heater", Measure: &measure.Pressure,
			Formula: "gamma x drop",
			Why:     "The same column that would press below a gauge pulls above a drain.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "drop / gamma",
				Did:  "You divided {drop} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "No siphon pulls harder than the air presses: 14.7 psi, 101 kPa.",
			}},
		},
		{
			Name: "above", Says: "does the tank stand above the outlets it serves?", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "tank_up > outlet_up",
			Why:     "A tank above its outlets empties through any of them when the street fails.",
			Slips: []problems.Slip{{
				ID: "drain-for-outlets", Formula: "1 + 0 / (tank_up < outlet_up)",
				Did:  "You found the tank above the drain and wrote yes.",
				Why:  "This line asks about the outlets it serves. The highest of them is at {outlet_up}, above the tank.",
				Next: "Two heights side by side: foot of the tank, highest outlet.",
			}},
		},
		{
			Name: "asked", Says: "does the rule speak of a tank like this?", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "rule_any or (rule_height and above) or (rule_feed and bottom_fed)",
			Why:     "Codes name different triggers: a tank above its outlets, a tank fed at the bottom, any tank that may be siphoned. Take the one in front of you.",
			Slips: []problems.Slip{
				{
					ID: "feed-for-height", Formula: "bottom_fed + 0 / ((rule_height > rule_feed) and (bottom_fed > above or bottom_fed < above))",
					Did:  "You went by where the cold water enters.",
					Why:  "Another code does. This one asks whether the tank stands above the outlets it serves.",
					Next: "Read the rule again and underline its \"where\".",
				},
				{
					ID: "height-for-feed", Formula: "above + 0 / ((rule_feed > rule_height) and (bottom_fed > above or bottom_fed < above))",
					Did:  "You went by the tank's height.",
					Why:  "Another code does. This one asks whether the tank is fed at the bottom.",
					Next: "Read the rule again and underline its \"where\".",
				},
				{
					ID: "any-tank-read-narrow", Formula: "0 / ((rule_any > 0) and (above < 1))",
					Did:  "You asked for a tank above its outlets, and wrote no.",
					Why:  "This rule takes any tank that may be siphoned. A line that is opened below the tank is enough.",
					Next: "Ask what could pull on the tank, not only where its outlets are.",
				},
			},
		},
		{
			Name: "needed", Says: "vacuum relief valve", Measure: &measure.Answer, Choices: []string{"not asked for", "asked for"},
			Formula: "stores and asked",
			Why:     "The rules protect tanks: one that is sucked empty caves in, or is heated dry.",
			Slips: []problems.Slip{{
				ID: "no-tank-there", Formula: "1 + 0 / (asked > stores)",
				Did:  "You asked for a valve on a heater that stores no water.",
				Why:  "There is no tank to cave in. The rules on vacuum relief speak of storage tanks.",
				Next: "Before a rule is used: does it speak of the thing in front of you?",
			}},
		},
	},
	Holds: "When the street is shut and a line is opened below a tank, the water in it falls and pulls. A tank is built for pressure from inside: a few psi the other way can cave it in, and an element or a flue left without water burns. A vacuum relief valve on the cold line, above the tank's top, lets air in instead. It is no backflow preventer and no relief valve.",
	Cautions: []string{
		"Before a main is shut, heaters above the work are turned off, and a high tap is opened so that air comes in there.",
		"A vacuum relief valve is no vacuum breaker at a hose and no pressure relief: each has its own place, and a tank needs its relief valve besides.",
		"Rules on vacuum relief differ from place to place and are amended locally. The maker's sheet may ask for one where the code does not.",
	},
	Sources: []problems.Source{
		{Says: "Tank above the outlets it serves: UPC 608.7, by a code body's note on its 2015 edition", Confidence: solver.Confirmed},
		{Says: "Tank fed at the bottom: IRC P2804.7", Confidence: solver.Confirmed},
		{Says: "The same in the International Plumbing Code, 504.2", Confidence: solver.Memory},
		{Says: "Any tank that may be subject to back-siphonage: British Columbia 2.6.1.7.(8)", Confidence: solver.Confirmed},
		{Says: "The same in the National Plumbing Code of Canada 2020", Confidence: solver.Memory},
		{Says: "Where no code is chosen: a tank above its outlets or fed at the bottom", Confidence: solver.Practice},
		footSource,
	},
	Draw: drawVacuumRelief,
	Solve: func(w problems.World) float64 {
		b := w.Building
		yes := func(name string) bool { return w.SI(name) > 0 }
		rule := solver.VacuumRule{AboveOutlets: yes("rule_height"), BottomFed: yes("rule_feed"), AnyTank: yes("rule_any")}
		if yes("stores") && rule.Asks(b.Heater.Elevation-b.Street.GaugeAt > w.Length("outlet_up"), yes("bottom_fed")) {
			return 1
		}
		return 0
	},
}

func init() { add(&vacuumReliefSkill) }

// vacuumRule is what a profile says on vacuum relief, in words and as a rule.
func vacuumRule(profile string) (says string, r solver.VacuumRule) {
	switch profile {
	case "upc":
		return "tanks above the outlets that they serve", solver.VacuumRule{AboveOutlets: true}
	case "ipc":
		return "tanks that are fed at the bottom", solver.VacuumRule{BottomFed: true}
	case "npc":
		return "any tank that may be subject to back-siphonage", solver.VacuumRule{AnyTank: true}
	}
	return "practice: tanks above their outlets, and tanks fed at the bottom", solver.VacuumRule{AboveOutlets: true, BottomFed: true}
}

// drawVacuumRelief draws a heater over the outlets of a building, or between
// them, and a drain on its cold line within the reach of a siphon.
func drawVacuumRelief(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Uses: tanks, Min: 4, Max: 12})
	top := tape(s, t.Up(t.Storeys)+s.Shower())
	tank := tape(s, s.Heights(t.Levels[len(t.Levels)-1].Elevation)) + s.Pick([]float64{1, 2}, []float64{0.3, 0.5})
	if s.Chance(0.5) {
		tank = tape(s, t.Up(s.Int(3, t.Storeys))) + s.Pick([]float64{1}, []float64{0.3})
	}
	drop := s.Pick([]float64{9, 12, 14, 16, 18}, []float64{2.8, 3.5, 4, 4.5, 5.2})
	says, rule := vacuumRule(s.Profile.ID)
	stores, bottom := s.Chance(0.75), s.Chance(0.5)
	t.Street.GaugeAt = 0
	t.Heater = &solver.Heater{Elevation: s.Length(tape(s, tank)), Rating: s.PlatePress(s.PickPlate([]float64{150}, []float64{1035}))}
	s.Name("code", s.Profile.Name)
	s.Name("rule_says", says)
	s.Name("stores_says", choose(stores, "has a storage tank", "stores no water"))
	s.Name("feed_says", choose(bottom, "at the bottom", "at the top"))
	s.Set("tank_up", tape(s, tank))
	s.Set("drain_up", tape(s, tank-drop))
	s.Set("outlet_up", top)
	for _, v := range []struct {
		name string
		yes  bool
	}{{"stores", stores}, {"bottom_fed", bottom}, {"rule_height", rule.AboveOutlets}, {"rule_feed", rule.BottomFed}, {"rule_any", rule.AnyTank}} {
		s.Values = append(s.Values, yesOrNo(v.name, v.yes))
	}
}

// yesOrNo is a given that is yes, 1, or no, 0.
func yesOrNo(name string, yes bool) building.Value {
	return building.Value{Name: name, Value: choose(yes, 1.0, 0.0), Text: choose(yes, "yes", "no")}
}

// choose is one of two things.
func choose[T any](first bool, a, b T) T {
	if first {
		return a
	}
	return b
}
