package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var noFlowOutletSkill = problems.Skill{
	ID: "no-flow-outlet", Title: "The most behind the pump, with no flow",
	Chapter: 4, Order: 50, Year: 3, Kind: problems.Sum,
	Ask: "At constant speed the booster's curve shows {duty_head} at design flow and {shut_off_head} at no flow. The street gives between {low_street} and {high_street} at the inlet. Behind the pump, at its height, are joints good for {joint_rating}, valves for {valve_rating} and a pressure tank for {tank_rating}. What may stand behind the pump at most, and do all parts bear it?",
	Givens: []problems.Given{
		{Name: "duty_head", Says: "head of the pump at design flow", Measure: &measure.Height},
		{Name: "shut_off_head", Says: "head of the pump at no flow", Measure: &measure.Height},
		{Name: "low_street", Says: "lowest street pressure at the inlet", Measure: &measure.Pressure, Plate: true},
		{Name: "high_street", Says: "highest street pressure at the inlet", Measure: &measure.Pressure, Plate: true},
		{Name: "joint_rating", Says: "rating of the joints", Measure: &measure.Pressure},
		{Name: "valve_rating", Says: "rating of the valves", Measure: &measure.Pressure},
		{Name: "tank_rating", Says: "rating on the pressure tank's plate", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "shut_off", Says: "pressure that the pump adds at no flow", Measure: &measure.Pressure,
			Formula: "gamma x shut_off_head",
			Why:     "A pump makes its highest head when nothing flows, at the left end of its curve.",
			Slips: []problems.Slip{
				{
					ID: "duty-head", Formula: "gamma x duty_head",
					Did:  "You took {duty_head}, the head at design flow.",
					Why:  "At night nothing flows. The pump climbs its curve to {shut_off_head}, and the parts have to bear that.",
					Next: "For what is too much, look at no flow; for what is too little, at design flow.",
				},
				{
					ID: "divided", Formula: "shut_off_head / gamma",
					Did:  "You divided {shut_off_head} by {gamma}.",
					Why:  "Dividing turns a pressure into a height. The height is known here and the pressure is wanted, so multiply.",
					Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
				},
			},
		},
		{
			Name: "outlet", Says: "most pressure behind the pump", Measure: &measure.Pressure,
			Formula: "high_street + shut_off",
			Why:     "The pump adds to what comes in. With no flow the street is at its highest too.",
			Slips: []problems.Slip{
				{
					ID: "low-street", Formula: "low_street + shut_off",
					Did:  "You added {low_street}, the street at its lowest.",
					Why:  "The low street belongs to the busy hour. When nothing flows the street is up at {high_street}.",
					Next: "Highest with highest: no flow and the street's top reading.",
				},
				{
					ID: "street-left-out", Formula: "shut_off",
					Did:  "You left out the street.",
					Why:  "A booster does not begin at zero. It adds {shut_off} to the {high_street} at its inlet.",
					Next: "Two terms behind a booster: what comes in and what is added.",
				},
			},
		},
		{
			Name: "weakest", Says: "rating of the weakest part", Measure: &measure.Pressure,
			Formula: "min(joint_rating, valve_rating, tank_rating)",
			Why:     "The same pressure stands on all of them. The weakest decides.",
			Slips: []problems.Slip{{
				ID: "strongest", Formula: "max(joint_rating, valve_rating, tank_rating)",
				Did:  "You took the strongest part.",
				Why:  "The strong part holds, and the weak one beside it bursts.",
				Next: "Look for the smallest number on any plate.",
			}},
		},
		{
			Name: "verdict", Says: "the parts", Measure: &measure.Answer, Choices: []string{"bear it", "do not all bear it"},
			Formula: "outlet > weakest",
			Why:     "If they do not, take stronger parts, a flatter curve or a pump with speed control and its own limit, and a relief valve set for the weakest part.",
			Slips: []problems.Slip{{
				ID: "wrong-way-round", Formula: "outlet < weakest",
				Did:  "You compared {outlet} with {weakest} the wrong way round.",
				Why:  "A rating is the most a part bears. More than that is too much.",
				Next: "Say it in words: has, bears.",
			}},
		},
	},
	Holds:    "Two worst cases come together at night: the street at its highest and the pump at the no-flow end of its curve. Their sum stands on everything behind the pump. The pipe is seldom the weak part: look at joints, flanges, valves, tank and relief valve, each at its own height.",
	Cautions: []string{neverRelief, pumpDry},
	Sources: []problems.Source{
		footSource,
		{Says: "Shut-off head 1.15 to 1.35 times the design head: common practice, no source", Confidence: solver.Practice},
		{Says: "Ratings are those on the plates: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		_, static, low := boostedTower(s, 12, 20)
		over := s.Chance(0.5)
		ratings := lists(s, []float64{125, 150, 175, 200, 250, 300}, []float64{860, 1035, 1200, 1380, 1725, 2070})
		type found struct {
			duty, shut float64
			weak       int
		}
		fits := map[bool][]found{}
		step := s.Pick([]float64{5}, []float64{2})
		enough := math.Ceil(float64(solver.WaterColumn.HeightOf(s.Building.Booster.ShutOff)/s.Length(step))) * step
		for _, duty := range upTo(enough, enough+8*step, step) {
			for _, ratio := range []float64{1.2, 1.25, 1.3} {
				shut := math.Round(duty * ratio)
				most := static + plateHead(s, shut)
				for i, r := range ratings[:5] {
					gap := most/onPlate(s, r) - 1
					if math.Abs(gap) > 0.03 && math.Abs(gap) < 0.2 {
						fits[gap > 0] = append(fits[gap > 0], found{duty, shut, i})
					}
				}
			}
		}
		f, ok := pick(s, fits[over])
		if !ok {
			f, _ = pick(s, fits[!over])
		}
		parts := []float64{ratings[f.weak], ratings[s.Int(f.weak+1, len(ratings)-1)], ratings[s.Int(f.weak+1, len(ratings)-1)]}
		turn := s.Int(0, 2)
		b := s.Building
		b.Booster.Boost, b.Booster.ShutOff = solver.WaterColumn.OfColumn(s.Length(f.duty)), solver.WaterColumn.OfColumn(s.Length(f.shut))
		b.Zones = nil
		feedAbove(s, 0)
		s.Focus = b.Ground
		s.Set("duty_head", f.duty)
		s.Set("shut_off_head", f.shut)
		s.Set("low_street", low)
		s.Set("high_street", static)
		s.Set("joint_rating", parts[turn])
		s.Set("valve_rating", parts[(turn+1)%3])
		s.Set("tank_rating", parts[(turn+2)%3])
	},
	Solve: func(w problems.World) float64 {
		most := solver.Series(w.Building.Street.Static, w.Gamma().OfColumn(w.Length("shut_off_head")), 1)
		if most > min(w.Pressure("joint_rating"), w.Pressure("valve_rating"), w.Pressure("tank_rating")) {
			return 1
		}
		return 0
	},
}

func init() { add(&noFlowOutletSkill) }
