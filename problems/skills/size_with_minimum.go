package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var sizeWithMinimumSkill = problems.Skill{
	ID: "size-with-minimum", Title: "The smallest size that code allows",
	Chapter: 3, Order: 155, Year: 3, Kind: problems.Choice,
	Ask: "A branch carries {flow} of {water}. Friction may be {allowed}, the speed {limit}. A chart gives for copper tube, type L: size A, {size_a}, {loss_a} and {speed_a}; size B, {size_b}, {loss_b} and {speed_b}; size C, {size_c}, {loss_c} and {speed_c}. C passes both. Code and job specification allow no pipe below {least_size} here. Which is the smallest size that will do?",
	Givens: []problems.Given{
		{Name: "flow", Says: "flow", Measure: &measure.FlowRate},
		{Name: "allowed", Says: "friction that the pipe may have", Measure: &measure.Friction},
		{Name: "limit", Says: "highest speed of {water}", Measure: &measure.Velocity},
		{Name: "least_nominal", Says: "smallest nominal size allowed", Measure: &measure.Bore},
		{Name: "nominal_a", Says: "nominal size of A", Measure: &measure.Bore},
		{Name: "nominal_b", Says: "nominal size of B", Measure: &measure.Bore},
		{Name: "loss_a", Says: "friction in size A", Measure: &measure.Friction},
		{Name: "loss_b", Says: "friction in size B", Measure: &measure.Friction},
		{Name: "loss_c", Says: "friction in size C", Measure: &measure.Friction},
		{Name: "speed_a", Says: "speed in size A", Measure: &measure.Velocity},
		{Name: "speed_b", Says: "speed in size B", Measure: &measure.Velocity},
		{Name: "speed_c", Says: "speed in size C", Measure: &measure.Velocity},
	},
	Rules: []problems.Rule{
		{
			Name: "by_friction", Says: "smallest size by friction", Measure: &measure.Answer,
			Formula: "(loss_a > allowed) + (loss_b > allowed)", Choices: sizeChoices,
			Why: "Go up the list until the friction is no more than allowed.",
			Slips: []problems.Slip{{
				ID: "friction-turned-round", Formula: "(loss_a < allowed) + (loss_b < allowed) + 0 / ((loss_a < allowed) + (loss_b < allowed) - (loss_a > allowed) - (loss_b > allowed))",
				Did:  "You read the frictions against {allowed} the wrong way round.",
				Why:  "What is allowed is a most. A size with less passes.",
				Next: "A larger pipe always loses less: if a small one passes, all larger ones do.",
			}},
		},
		{
			Name: "by_speed", Says: "smallest size by speed", Measure: &measure.Answer,
			Formula: "(speed_a > limit) + (speed_b > limit)", Choices: sizeChoices,
			Why: "Go up the list until the water is no faster than the limit.",
			Slips: []problems.Slip{{
				ID: "friction-column-again", Formula: "by_friction + 0 / ((speed_a > limit) + (speed_b > limit) - by_friction)",
				Did:  "You wrote the size that the friction asks for once more.",
				Why:  "This line is about speed. A pipe may have pressure enough and still be too fast, or the other way round.",
				Next: "One column at a time: cover the other with your hand.",
			}},
		},
		{
			Name: "by_code", Says: "smallest size by code and specification", Measure: &measure.Answer,
			Formula: "(nominal_a < least_nominal) + (nominal_b < least_nominal)", Choices: sizeChoices,
			Why: "The size named is itself allowed; those below it are not, whatever the chart says.",
			Slips: []problems.Slip{{
				ID: "next-above-the-least", Formula: "min(2, (nominal_a <= least_nominal) + (nominal_b <= least_nominal)) + 0 / (nominal_b >= least_nominal)",
				Did:  "You went one size above {least_size}.",
				Why:  "No pipe below {least_size} means that {least_size} itself may be used.",
				Next: "Not below means at or above.",
			}},
		},
		{
			Name: "size", Says: "the size to use", Measure: &measure.Answer,
			Formula: "max(by_friction, by_speed, by_code)", Choices: sizeChoices,
			Why:   "The size must pass all three tests, so the largest of the three answers stands.",
			Would: layLeast,
			Slips: []problems.Slip{
				{
					ID: "code-left-out", Formula: "max(by_friction, by_speed) + 0 / (by_code > max(by_friction, by_speed))",
					Did:  "You let friction and speed decide and left the code's smallest size out.",
					Why:  "A small flow would run well in small pipe, but the code looks further: lime, later fixtures, the valve's own need.",
					Next: "Three columns: friction, speed, smallest size. All three need a tick.",
				},
				{
					ID: "code-alone", Formula: "by_code + 0 / (by_code < max(by_friction, by_speed))",
					Did:  "You took the code's smallest size as the size.",
					Why:  "It is a floor, not a choice. In it the water would be too fast or lose too much.",
					Next: "The smallest size allowed is where the search begins.",
				},
			},
		},
	},
	Holds: "Three tests for a size: its friction fits the budget, its water is no faster than the limit, and it is not below the smallest size that the code or the job names for this pipe. The largest of the three answers is used. For hot water the limit of speed is lower, and lower again above 140 °F (60 °C).",
	Cautions: []string{
		fastWater, leadFree, sizingStudy,
	},
	Sources: []problems.Source{
		speedSource, tubeSource,
		{Says: "Friction at C 140 by Hazen-Williams", Confidence: solver.Memory},
		{Says: "A smallest size for each pipe: tables of the local code and the specification of the job; here it is told", Confidence: solver.Practice},
	},
	Draw:  drawSizeWithMinimum,
	Solve: solveSizeWithMinimum,
}

func init() { add(&sizeWithMinimumSkill) }

func solveSizeWithMinimum(w problems.World) float64 {
	var list []solver.Trial
	for _, x := range []string{"a", "b", "c"} {
		list = append(list, solver.Trial{Loss: unit.Gradient(w.SI("loss_" + x)), Velocity: unit.Velocity(w.SI("speed_" + x))})
	}
	size := solver.SmallestPipe(list, unit.Gradient(w.SI("allowed")), unit.Velocity(w.SI("limit")))
	for size < 2 && w.SI("nominal_"+string(rune('a'+size))) < w.SI("least_nominal") {
		size++
	}
	return float64(size)
}

// drawSizeWithMinimum draws three sizes of which the code's smallest decides in
// half of the draws.
func drawSizeWithMinimum(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 15})
	water := solver.VelocityLimits[s.Int(0, 2)]
	limit := water.In(s.System)
	code, want := s.Chance(0.5), s.Int(1, 2)
	type aim struct {
		threeSizes
		least int
	}
	var fit, rest []aim
	for _, d := range threes(s) {
		v, clearV := failing(d.sizes, limit, speedIn)
		f, clearF := failing(d.sizes, d.allowed, lossIn)
		passes := d.sizes[2].speed <= 0.97*limit && d.sizes[2].loss <= 0.97*d.allowed
		if !passes || !clearV || !clearF {
			continue
		}
		for least := range 3 {
			most := max(v, f)
			if least == most {
				continue
			}
			rest = append(rest, aim{d, least})
			if max(most, least) == want && (least > most) == code {
				fit = append(fit, aim{d, least})
			}
		}
	}
	a, ok := pick(s, fit)
	if !ok { // the hottest water leaves few
		a, _ = pick(s, rest)
	}
	s.Name("water", water.Water)
	s.Name("least_size", a.sizes[a.least].words)
	s.Set("flow", a.flow)
	s.Set("allowed", a.allowed)
	s.Set("limit", limit)
	s.Set("least_nominal", a.sizes[a.least].nominal)
	for i, t := range a.sizes {
		x := string(rune('a' + i))
		s.Name("size_"+x, t.words)
		if i < 2 {
			s.Set("nominal_"+x, t.nominal)
		}
		s.Set("loss_"+x, t.loss)
		s.Set("speed_"+x, math.Round(t.speed*100)/100)
	}
}
