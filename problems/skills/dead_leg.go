package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var deadLegSkill = problems.Skill{
	ID: "dead-leg", Title: "How long may a dead leg be?",
	Chapter: 7, Order: 20, Year: 2, Kind: problems.Choice,
	Ask: "A branch of {size} tube leaves a hot riser that is kept hot by recirculation. It goes {along} along the ceiling and {down} down to the tap. The specification of the job allows {limit} of {size} as a dead leg, and {other} of {other_size}. From the heater to the branch it is {from_heater} of pipe. May the branch stay as it is drawn?",
	Givens: []problems.Given{
		{Name: "from_heater", Says: "pipe from the heater to the branch, kept hot", Measure: &measure.PipeLength},
		{Name: "along", Says: "branch along the ceiling", Measure: &measure.PipeLength},
		{Name: "down", Says: "branch down to the tap", Measure: &measure.PipeLength},
		{Name: "limit", Says: "longest dead leg of {size}", Measure: &measure.PipeLength},
		{Name: "other", Says: "longest dead leg of {other_size}", Measure: &measure.PipeLength},
	},
	Rules: []problems.Rule{
		{
			Name: "leg", Says: "length of the dead leg", Measure: &measure.PipeLength,
			Formula: "along + down",
			Why:     "A dead leg begins where the water stops circulating and ends at the tap.",
			Slips: []problems.Slip{
				{
					ID: "from-the-heater", Formula: "from_heater + along + down",
					Did:  "You measured from the heater.",
					Why:  "The riser is kept hot, so its water is no dead leg. Only the branch cools.",
					Next: "Ask where the water is hot for certain, and measure from there.",
				},
				{
					ID: "drop-left-out", Formula: "along",
					Did:  "You left out the {down} down to the tap.",
					Why:  "Water stands in the vertical piece as well. A plan shows it as a dot.",
					Next: "End at the tap.",
				},
			},
		},
		{
			Name: "part", Says: "dead leg over its limit", Measure: &measure.Share,
			Formula: "leg / limit",
			Why:     "The wider the pipe, the more water it holds and the shorter it may be. Over 1 the branch is too long.",
			Slips: []problems.Slip{
				{
					ID: "other-size", Formula: "leg / other",
					Did:  "You compared with {other}, the limit of {other_size}.",
					Why:  "The branch is {size}, and each size has its own limit: {limit}.",
					Next: "Read the size off the drawing before you look for the limit.",
				},
				{
					ID: "upside-down", Formula: "limit / leg",
					Did:  "You divided the limit by the leg.",
					Why:  "Then a longer branch would look the better one.",
					Next: "The leg stands on top: longer makes more.",
				},
			},
		},
		{
			Name: "verdict", Says: "the branch", Measure: &measure.Answer, Choices: []string{"may stay", "is too long"},
			Formula: "part > 1",
			Why:     "Longer than the limit, the loop is brought nearer, or the branch is made narrower where the flow allows it.",
			Slips: []problems.Slip{{
				ID: "read-backwards", Formula: "part <= 1",
				Did:  "You wrote {got} for {leg} beside the limit of {limit}.",
				Why:  "The limit is the longest that is allowed. Shorter is better.",
				Next: "Say it as a sentence: is {leg} more than {limit}?",
			}},
		},
	},
	Holds:    "Behind the loop the water stands and goes lukewarm between uses. How much stands there goes with the length and the square of the bore, so a wide branch must be shorter.",
	Cautions: []string{legionella, "A branch that nobody uses any more is cut off at the main, not capped at the wall.", "Limits differ from place to place and are amended locally. The authority decides."},
	Sources: []problems.Source{
		{Says: "Metric figures of the job's specification: 10 m at 1/2 in, 5 m at 3/4 in and 2 m at 1 in, federal mechanical design standard of Canada 15161, table 6.1", Confidence: solver.Confirmed},
		{Says: "US figures: the same metres rounded down here to 32, 16 and 6 ft, which no standard prints", Confidence: solver.Practice},
	},
	Draw: drawDeadLeg,
	Solve: func(w problems.World) float64 {
		if w.Building.Loop.FarthestFromLoop > w.Length("limit") {
			return 1
		}
		return 0
	},
}

func init() { add(&deadLegSkill) }

// drawDeadLeg draws a branch clearly longer or shorter than its limit.
func drawDeadLeg(s *building.Sheet) {
	heaterTower(s)
	limits := lists(s, []float64{32, 16, 6}, []float64{10, 5, 2})
	row, long := s.Int(1, 3), s.Chance(0.5)
	type aim struct{ along, down float64 }
	var fit []aim
	limit := limits[row-1]
	for _, along := range lists(s, []float64{3, 4, 5, 7, 8, 9, 12, 15, 18, 22, 25, 30}, []float64{0.8, 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 9, 10.5, 12}) {
		for _, down := range lists(s, []float64{2, 3, 4, 5, 7}, []float64{0.4, 0.6, 1.2, 1.5, 2.2}) {
			part := (along + down) / limit
			if (part > 1) == long && math.Abs(part-1) > 0.15 && part > 0.5 && part < 1.6 && down > 0.15*along && down < along {
				fit = append(fit, aim{along, down})
			}
		}
	}
	a, _ := pick(s, fit)
	from := s.Pick([]float64{60, 80, 100, 140}, []float64{18, 25, 30, 42})
	other := row%3 + 1
	s.Name("size", tubeSize(s, solver.Tubes[row-1], solver.TypeL).words)
	s.Name("other_size", tubeSize(s, solver.Tubes[other-1], solver.TypeL).words)
	s.Set("limit", limit)
	s.Set("other", limits[other-1])
	s.Set("from_heater", from)
	s.Set("along", a.along)
	s.Set("down", a.down)
	s.Building.Loop = &solver.Loop{
		Supply: s.Length(from), FarthestFromLoop: s.Length(a.along + a.down), FarthestFromHeater: s.Length(from + a.along + a.down),
		Drop: unit.TempDifference(5),
	}
}
