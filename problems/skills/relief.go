package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var reliefRatingSkill = problems.Skill{
	ID: "relief-rating", Title: "Does the relief valve suit?",
	Chapter: 6, Order: 110, Year: 3, Kind: problems.Choice,
	Ask: "A storage heater has an input of {input} and an efficiency of {efficiency}. Its tank is rated {tank_rating}, and it works at {working}. The relief valve at hand can pass {rating} and opens at {setting}. {room} is to be kept free between working pressure and setting. Does the valve suit?",
	Givens: []problems.Given{
		{Name: "input", Says: "input on the heater's plate", Measure: &measure.HeatRate},
		{Name: "efficiency", Says: "efficiency, as a decimal", Measure: &measure.Share},
		{Name: "tank_rating", Says: "highest working pressure on the tank's plate", Measure: &measure.Pressure},
		{Name: "working", Says: "working pressure at the heater", Measure: &measure.Pressure},
		{Name: "rating", Says: "heat that the relief valve can pass", Measure: &measure.HeatRate},
		{Name: "setting", Says: "pressure at which it opens", Measure: &measure.Pressure},
		{Name: "room", Says: "room to keep, so that it stays shut", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "passes", Says: "can it pass the heat?", Measure: &measure.Answer,
			Formula: "rating >= input", Choices: []string{"no", "yes"},
			Why: "If the thermostat sticks, the burner runs on. The valve must carry off all that the burner can make.",
			Slips: []problems.Slip{
				{
					ID: "output-for-input", Formula: "1 + 0 / ((rating >= input x efficiency) and (rating < input))",
					Did:  "You held the valve's {rating} against the heat that gets into the water.",
					Why:  "The rule goes by the input, {input}. Nobody counts on losses when the control has failed.",
					Next: "Two plates side by side: input on the heater, Btu/h or kW on the valve. The valve's must not be smaller.",
				},
				{
					ID: "rating-turned-round", Formula: "0 / (rating >= input)",
					Did:  "You drew the opposite from {rating} and {input}.",
					Why:  "A valve that can pass more than the burner makes is good; one that passes less is not.",
					Next: "The valve's number is at or above the heater's.",
				},
			},
		},
		{
			Name: "below_tank", Says: "does it open in time for the tank?", Measure: &measure.Answer,
			Formula: "setting <= tank_rating", Choices: []string{"no", "yes"},
			Why: "The valve must open before the tank is loaded over its plate. Equal is allowed.",
			Slips: []problems.Slip{{
				ID: "setting-turned-round", Formula: "setting > tank_rating",
				Did:  "You drew the opposite from {setting} and {tank_rating}.",
				Why:  "A valve set above the tank would let the tank burst first.",
				Next: "The weakest vessel sets the most that the valve may be set to.",
			}},
		},
		{
			Name: "spare", Says: "room between working pressure and setting", Measure: &measure.Pressure,
			Formula: "setting - working",
			Why:     "Near its setting a valve weeps, lime grows on the seat, and one day it does not open.",
			Slips: []problems.Slip{{
				ID: "room-under-the-tank", Formula: "tank_rating - working + 0 / (tank_rating > setting or tank_rating < setting)",
				Did:  "You took the room below the tank's plate.",
				Why:  "It is the valve that weeps, and it opens at {setting}.",
				Next: "Start from the number stamped on the valve.",
			}},
		},
		{
			Name: "suits", Says: "does the valve suit?", Measure: &measure.Answer,
			Formula: "passes and below_tank and (spare >= room)", Choices: []string{"no", "yes"},
			Why:   "All three must hold. One no is a no.",
			Would: fitRelief,
			Slips: []problems.Slip{{
				ID: "one-test-missed", Formula: "1 + 0 / (passes + below_tank + (spare >= room) < 3)",
				Did:  "You let the valve pass, though one of the three tests fails.",
				Why:  "Heat, tank and room are three different dangers. Passing two of them does not help with the third.",
				Next: "Three lines, three ticks. Only then it is fitted.",
			}},
		},
	},
	Holds: "A temperature and pressure relief valve must pass at least the whole input of the heater, open at or below the tank's rating and at 210 °F (99 °C), and stand far enough above the working pressure to stay shut. Over 200,000 Btu/h (58 kW) the tank and valve are those of the boiler code. Electric heaters count 3,412 Btu/h for each kW.",
	Cautions: []string{
		neverRelief,
		"A tank without a working relief valve is a bomb. Nobody fires a heater to try it out without one.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Rated for the input, set no higher than the tank's rating and 210 °F: the model codes and the plate of the valve", Confidence: solver.Memory},
		{Says: "Over 200,000 Btu/h rated by the boiler code: a town's rules in Ohio", Confidence: solver.Confirmed},
		{Says: "Room above the working pressure", Confidence: solver.Practice},
	},
	Draw: drawRelief,
	Solve: func(w problems.World) float64 {
		if reliefSuits(w) {
			return 1
		}
		return 0
	},
}

func init() { add(&reliefRatingSkill) }

func reliefSuits(w problems.World) bool {
	return solver.ReliefSuits(unit.Power(w.SI("rating")), unit.Power(w.SI("input")), w.Pressure("setting"), w.Pressure("tank_rating"), w.Pressure("working"), w.Pressure("room"))
}

// fitRelief leaves the relief valve in its box (0) or fits it (1).
func fitRelief(w problems.World, v float64) problems.Outcome {
	suits := reliefSuits(w)
	o := problems.Outcome{Kept: suits == (v == 1)}
	heat := func(name string) string { return w.Text(measure.HeatRate, w.SI(name)) }
	setting, tank, working := w.Pressure("setting"), w.Pressure("tank_rating"), w.Pressure("working")
	switch {
	case suits && v == 1:
		o.Says = []string{"Fitted, it would open at " + w.Press(setting) + ", pass all of the " + heat("input") + ", and stay shut at " + w.Press(working) + "."}
		return o
	case suits:
		o.Says = []string{"Nothing speaks against this valve: another would pass the heat, guard the tank and stay shut no better."}
		return o
	case v == 0:
		o.Says = []string{"So it is not fitted, and the heater is not fired before a valve that suits is there."}
		return o
	}
	if w.SI("rating") < w.SI("input") {
		o.Says = append(o.Says, "Fitted, it would pass "+heat("rating")+" of the "+heat("input")+" that a burner with a stuck control makes: the pressure would go on rising with the valve wide open.")
	}
	if setting > tank {
		o.Says = append(o.Says, "It would stay shut up to "+w.Press(setting)+", and the tank is made for "+w.Press(tank)+": the tank would go first.")
	}
	if setting-working < w.Pressure("room") {
		o.Says = append(o.Says, "Only "+w.Press(setting-working)+" would lie between working pressure and setting, where "+w.Press(w.Pressure("room"))+" is kept: it would weep until lime closes it.")
	}
	return o
}

// drawRelief draws a valve that suits, that passes the output only, that is
// set above the tank, or that leaves too little room.
func drawRelief(s *building.Sheet) {
	heaterTower(s)
	h := s.Building.Heater
	input := s.Pick([]float64{75000, 100000, 150000, 199000, 300000, 399000, 500000}, []float64{22, 29, 44, 58, 73, 88, 117, 147})
	efficiency := s.Pick([]float64{0.8, 0.82, 0.85}, []float64{0.8, 0.82, 0.85})
	step := s.Pick([]float64{5000}, []float64{1})
	rating := float64(int(input*1.25/step)) * step
	tank, setting := s.Pick([]float64{150}, []float64{1035}), s.Pick([]float64{125, 150}, []float64{860, 1035})
	working := s.Pick([]float64{60, 70, 80, 90}, []float64{400, 475, 550, 600})
	switch s.Int(0, 4) {
	case 0, 1: // between output and input
		rating = float64(int(input*(1+efficiency)/2/step)) * step
	case 2:
		tank, setting = s.Pick([]float64{125}, []float64{860}), s.Pick([]float64{150}, []float64{1035})
	case 3:
		working = setting - s.Pick([]float64{10, 15}, []float64{70, 100})
	}
	h.Efficiency = efficiency
	h.Input = unit.Power(input) * unit.BtuHour
	if !s.US() {
		h.Input = unit.Power(input) * 1000 * unit.Watt
	}
	h.Rating = s.Press(tank)
	s.Set("input", input)
	s.Set("efficiency", efficiency)
	s.Set("tank_rating", tank)
	s.Set("working", working)
	s.Set("rating", rating)
	s.Set("setting", setting)
	s.Set("room", s.Pick([]float64{25}, []float64{175}))
}
