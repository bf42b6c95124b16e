package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var compoundMeterSkill = problems.Skill{
	ID: "compound-meter", Title: "A compound meter and its loss",
	Chapter: 3, Order: 160, Year: 3, Kind: problems.Table,
	Ask: "A compound meter has a small side for little flow and a large side for much; it changes over at {changeover}. The maker gives the small side {small_loss} at {small_rated}, and the large side {large_loss} at {large_rated}. Does a flow of {now} turn the large side? And what does the meter lose at the peak of {peak}, through the large side?",
	Givens: []problems.Given{
		{Name: "changeover", Says: "flow at which the meter changes over to its large side", Measure: &measure.FlowRate},
		{Name: "now", Says: "flow at this moment", Measure: &measure.FlowRate},
		{Name: "peak", Says: "flow at the peak", Measure: &measure.FlowRate},
		{Name: "small_rated", Says: "flow of the small side in the maker's table", Measure: &measure.FlowRate},
		{Name: "small_loss", Says: "its loss at that flow", Measure: &measure.Pressure},
		{Name: "large_rated", Says: "flow of the large side in the maker's table", Measure: &measure.FlowRate},
		{Name: "large_loss", Says: "its loss at that flow", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "large_side", Says: "does the large side turn now?", Measure: &measure.Answer,
			Formula: "now > changeover", Choices: []string{"no", "yes"},
			Why: "A weighted valve keeps the large side shut until the flow is strong enough to lift it.",
			Slips: []problems.Slip{{
				ID: "sides-swapped", Formula: "now < changeover",
				Did:  "You gave {now} to the wrong side.",
				Why:  "The small side counts the little flows that a large wheel would let pass unseen. Over {changeover} the large side opens.",
				Next: "Little flow, small wheel. Hold the flow against the changeover first.",
			}},
		},
		{
			Name: "ratio", Says: "peak over the flow of the maker's table", Measure: &measure.Share,
			Formula: "peak / large_rated",
			Why:     "The table gives the loss at one flow. The ratio says how far the peak is from it.",
			Slips: []problems.Slip{
				{
					ID: "small-side-rated", Family: "small-side", Formula: "peak / small_rated",
					Did:  "You set the peak against {small_rated}, the figure of the small side.",
					Why:  "At the peak the large side carries the flow. Through the small side it would lose many times as much.",
					Next: "First say which side turns, then take its line of the table.",
				},
				{
					ID: "ratio-upside-down", Formula: "large_rated / peak",
					Did:  "You set the table's flow over the peak.",
					Why:  "At less than the table's flow the loss must be less, so the ratio must be below one.",
					Next: "The flow you ask about is on top.",
				},
			},
		},
		{
			Name: "loss", Says: "loss of the meter at the peak", Measure: &measure.Pressure,
			Formula: "large_loss x ratio^2",
			Why:     "In a meter loss goes with the square of the flow: half the flow, a quarter of the loss.",
			Slips: []problems.Slip{
				{
					ID: "not-squared", Formula: "large_loss x ratio",
					Did:  "You took the loss down in the ratio of the flows, and not of their squares.",
					Why:  "Twice the flow pushes four times as hard through the same opening. The loss of a device goes with the square.",
					Next: "Try half the flow: a quarter of the loss must come out.",
				},
				{
					ID: "small-side-loss", Family: "small-side", Formula: "small_loss x ratio^2",
					Did:  "You took {small_loss}, the loss of the small side.",
					Why:  "At the peak the large side carries the flow: {large_loss} at {large_rated}.",
					Next: "First say which side turns, then take its line of the table.",
				},
			},
		},
	},
	Holds: "A compound meter is two meters with a valve between them, so that one leaking tap at night and a full building in the morning are both counted. Choose it by the flow it may carry all day and by the least flow it must see; its loss then goes with the square of the flow.",
	Cautions: []string{
		"Before a meter is taken out its pipe is bridged with a bonding jumper, and a metal service is treated as live: an electrician where the law says so.",
		"No plain bypass around a meter: where the utility allows one, its valve is shut and sealed.",
		"A meter pit is a confined space: test the air before anyone goes in.",
	},
	Sources: []problems.Source{
		{Says: "Loss of a meter with the square of the flow: physics of turbulent loss; the maker's curve governs", Confidence: solver.Practice},
		{Says: "Compound meters of 2, 3, 4 and 6 in up to about 160, 320, 500 and 1,000 gpm", Confidence: solver.Memory},
		{Says: "Changeover at about a tenth of the large side's flow: common practice, no source", Confidence: solver.Practice},
	},
	Draw: drawCompoundMeter,
	Solve: func(w problems.World) float64 {
		return float64(solver.MeterLoss(w.Pressure("large_loss"), w.Flow("large_rated"), w.Flow("peak")))
	},
}

func init() { add(&compoundMeterSkill) }

// compound is a compound meter as a maker's table may have it: flows in gpm
// and L/s of its large and small side, and its changeover.
type compound struct {
	largeUS, smallUS, overUS float64
	largeSI, smallSI, overSI float64
}

// compounds are of 2, 3, 4 and 6 in. From memory.
var compounds = []compound{
	{160, 20, 15, 10, 1.25, 0.9},
	{320, 30, 20, 20, 1.9, 1.3},
	{500, 40, 30, 30, 2.5, 1.9},
	{1000, 50, 45, 60, 3.2, 2.8},
}

func drawCompoundMeter(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 4, Max: 20})
	m, _ := pick(s, compounds)
	large, small, over := s.Pick([]float64{m.largeUS}, []float64{m.largeSI}), s.Pick([]float64{m.smallUS}, []float64{m.smallSI}), s.Pick([]float64{m.overUS}, []float64{m.overSI})
	share := float64(s.Int(55, 85)) / 100
	step := s.Pick([]float64{5}, []float64{0.5})
	peak := math.Round(share*large/step) * step
	now := over * float64(s.Int(3, 7)) / 10
	if s.Chance(0.5) {
		now = over * float64(s.Int(14, 25)) / 10
	}
	s.Set("changeover", over)
	s.Set("now", math.Round(now*10)/10)
	s.Set("peak", peak)
	s.Set("small_rated", small)
	s.Set("small_loss", s.Pick([]float64{5, 6, 7}, []float64{35, 40, 50}))
	s.Set("large_rated", large)
	s.Set("large_loss", s.Pick([]float64{13, 14, 15, 18}, []float64{80, 95, 105, 125}))
}
