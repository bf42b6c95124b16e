package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var safeTemperaturesSkill = problems.Skill{
	ID: "safe-temperatures", Title: "Set points: hot enough and cool enough",
	Chapter: 6, Order: 130, Year: 3, Kind: problems.Choice,
	Ask: "A plan for the hot water of a building: the tank is kept at {store}, the mixing valve sends {main} into the loop, and the loop cools by {drop} from the valve to the end of its return. The stops of the shower valves are set to {fixture}. Asked are at least {store_least} in the tank, at least {return_least} at the end of the return, and at most {fixture_limit} at the shower ({limit_says}). Is the plan safe?",
	Givens: []problems.Given{
		{Name: "store", Says: "temperature of the tank", Measure: &measure.Temp},
		{Name: "main", Says: "temperature behind the mixing valve", Measure: &measure.Temp},
		{Name: "drop", Says: "drop of the loop, from the mixing valve to the end of the return", Measure: &measure.TempDrop},
		{Name: "fixture", Says: "stop of the shower valves", Measure: &measure.Temp},
		{Name: "store_least", Says: "least in the tank", Measure: &measure.Temp},
		{Name: "return_least", Says: "least at the end of the return", Measure: &measure.Temp},
		{Name: "fixture_limit", Says: "most at the shower", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "store_safe", Says: "is the tank hot enough?", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "store >= store_least",
			Why:     "Legionella grows in lukewarm water and dies in hot. The tank holds the most water and the most sludge, so it is kept hot.",
			Slips: []problems.Slip{{
				ID: "store-turned-round", Formula: "store < store_least",
				Did:  "You read {store} against {store_least} the other way round.",
				Why:  "For the tank the figure is a least: hotter is safer, and met exactly is enough.",
				Next: "Least or most? Say which before you compare.",
			}},
		},
		{
			Name: "back", Says: "temperature at the end of the return", Measure: &measure.Temp,
			Formula: "main - drop",
			Why:     "The water cools all the way round. Its coldest place is where it comes back.",
			Slips: []problems.Slip{
				{
					ID: "drop-added", Formula: "main + drop",
					Did:  "You added the drop.",
					Why:  "Pipe loses heat to the building and never gains any. The return is always the cooler end.",
					Next: "Put your hand on both pipes: the return is the cooler one.",
				},
				{
					ID: "store-as-start", Formula: "store - drop",
					Did:  "You began with the tank's {store}.",
					Why:  "The loop does not see the tank. The mixing valve lets {main} into it.",
					Next: "Start at the last thing that sets the temperature.",
				},
			},
		},
		{
			Name: "loop_safe", Says: "is the loop hot enough all the way?", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "back >= return_least",
			Why:     "The end of the return must be warm enough, or bacteria grow in all the pipe ahead of it.",
			Slips: []problems.Slip{
				{
					ID: "supply-for-return", Formula: "1 + 0 / ((main >= return_least) and (back < return_least))",
					Did:  "You held {main}, the start of the loop, against {return_least}.",
					Why:  "The figure is for the end of the return. There the water has {back}.",
					Next: "Look for the coldest place of the pipe, and ask whether that one is hot enough.",
				},
				{
					ID: "return-turned-round", Formula: "0 / (back >= return_least)",
					Did:  "You read {back} against {return_least} the other way round.",
					Why:  "For the return the figure is a least: more is safer.",
					Next: "Least or most? Say which before you compare.",
				},
			},
		},
		{
			Name: "skin_safe", Says: "is the shower cool enough?", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "fixture <= fixture_limit",
			Why:     "The limit stands at the shower, where the skin is. The stop of its valve keeps it.",
			Slips: []problems.Slip{
				{
					ID: "loop-held-to-the-shower", Formula: "0 / ((main > fixture_limit) and (fixture <= fixture_limit))",
					Did:  "You held the loop's {main} against the limit of the shower.",
					Why:  "Cool enough for skin all the way is warm enough for Legionella. The loop stays hot; the valve at the shower, set to {fixture}, protects.",
					Next: "Hot up to the fixture, limited at the fixture.",
				},
				{
					ID: "stop-over-the-limit", Formula: "1 + 0 / (fixture > fixture_limit)",
					Did:  "You let a stop of {fixture} pass.",
					Why:  "The shower may have {fixture_limit} at most. Hotter water burns in a few minutes or less.",
					Next: "The stop of the valve, proved with a thermometer, must not be above the limit.",
				},
			},
		},
		{
			Name: "safe", Says: "is the plan safe?", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "store_safe and loop_safe and skin_safe",
			Why:     "Growth in tank and pipe, and burns at the tap, are different dangers. All three tests must be passed.",
			Slips: []problems.Slip{{
				ID: "one-limit-only", Formula: "1 + 0 / (store_safe + loop_safe + skin_safe < 3)",
				Did:  "You let the plan pass, though one of the three tests fails.",
				Why:  "Hot enough against Legionella does not make it cool enough for skin, nor the other way round.",
				Next: "Three places, three ticks: tank, end of the return, shower.",
			}},
		},
	},
	Holds: "Scalding and Legionella are one question. Store hot, keep the loop hot to the very end of the return, and make the water cool enough only at the fixture. A loop turned down to what skin can bear is a loop in which bacteria grow.",
	Cautions: []string{
		scald, legionella,
		"Hospitals and care homes have rules of their own, stricter on both sides. The local code and the owner's water plan decide.",
	},
	Sources: []problems.Source{
		loopReturn,
		{Says: "The limit at a shower: the code chosen, amended locally", Confidence: solver.Memory},
		{Says: "Legionella multiplies between 25 and 45 °C; 90 % die in two hours at 50 °C and in two minutes at 60 °C. WHO, Legionella and the prevention of legionellosis (2007), and an encyclopedia's summary", Confidence: solver.Confirmed},
	},
	Draw: drawSafeTemperatures,
	Solve: func(w problems.World) float64 {
		b := w.Building
		back := b.Mixing.Mixed - unit.Temperature(b.Loop.Drop)
		if solver.SafeTemperatures(b.Heater.Hot, back, w.Temperature("fixture"), w.Temperature("store_least"), w.Temperature("return_least"), w.Temperature("fixture_limit")) {
			return 1
		}
		return 0
	},
}

func init() { add(&safeTemperaturesSkill) }

// drawSafeTemperatures draws a plan that is safe, or that fails in the tank,
// in the loop or at the shower.
func drawSafeTemperatures(s *building.Sheet) {
	heaterTower(s)
	storeLeast, returnLeast := s.Pick([]float64{140}, []float64{60}), s.Pick([]float64{124}, []float64{51})
	limit := s.Profile.FixtureHot.Value(s.System).Value
	room := s.Pick([]float64{2}, []float64{1.5})
	store := s.Pick([]float64{140, 145, 150}, []float64{60, 62, 65})
	fixture := s.Pick([]float64{105, 108, 110, 115, 120}, []float64{40, 42, 43, 45, 49})
	cool := false
	switch s.Int(0, 4) {
	case 0:
		store = s.Pick([]float64{132, 134, 135}, []float64{57, 58})
	case 1:
		cool = true
	case 2:
		fixture = s.Pick([]float64{125, 128, 130}, []float64{51, 53, 55})
	}
	type aim struct{ main, drop float64 }
	var fit []aim
	for _, main := range lists(s, []float64{120, 122, 125, 126, 128, 130, 132, 135}, []float64{49, 50, 52, 53, 54, 55, 56, 58}) {
		for _, drop := range lists(s, []float64{4, 5, 6, 8, 10}, []float64{2, 3, 4, 5}) {
			if over := main - drop - returnLeast; (over < 0) == cool && math.Abs(over) >= room && main <= store-2 && over < 5*room && math.Abs(main+2*drop-store) > 0.6 {
				fit = append(fit, aim{main, drop})
			}
		}
	}
	a, _ := pick(s, fit)
	h := s.Building.Heater
	h.Cold, h.Hot = degrees(s, lists(s, []float64{50}, []float64{10})[0]), degrees(s, store)
	s.Building.Mixing = &solver.MixingValve{Mixed: degrees(s, a.main)}
	s.Building.Loop = &solver.Loop{Drop: unit.TempDifference(degrees(s, a.main) - degrees(s, a.main-a.drop))}
	s.Name("limit_says", s.Profile.FixtureHot.Words)
	s.Set("store", store)
	s.Set("main", a.main)
	s.Set("drop", a.drop)
	s.Set("fixture", fixture)
	s.Set("store_least", storeLeast)
	s.Set("return_least", returnLeast)
	s.Set("fixture_limit", limit)
}
