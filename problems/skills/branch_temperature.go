package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var branchTemperatureSkill = problems.Skill{
	ID: "branch-temperature", Title: "Temperature at a far branch",
	Chapter: 7, Order: 60, Year: 4, Kind: problems.Sum,
	Ask: "At night nobody draws. {flow} circulates and leaves the heater at {hot}. The supply loses {loss_near} up to the near riser, where {branch_flow} turns off into that riser's return. The rest goes on, and the supply loses {loss_far} more on its way to the far riser. How hot is the water at the foot of the far riser?",
	Givens: []problems.Given{
		{Name: "hot", Says: "temperature at the heater's outlet", Measure: &measure.Temp},
		{Name: "flow", Says: "circulation flow at the heater", Measure: &measure.FlowRate},
		{Name: "branch_flow", Says: "part of it that the near riser takes", Measure: &measure.FlowRate},
		{Name: "loss_near", Says: "heat lost from the heater to the near riser", Measure: &measure.PipeHeat},
		{Name: "loss_far", Says: "heat lost from the near riser to the far one", Measure: &measure.PipeHeat},
	},
	Rules: []problems.Rule{
		{
			Name: "drop_near", Says: "drop from the heater to the near riser", Measure: &measure.TempDrop,
			Formula: "loss_near / (flow_heat x flow)", Metric: "loss_near / (watt_per_kw x flow_heat x flow)",
			Why: "In this piece the whole flow pays for the loss of this piece alone.",
			Slips: []problems.Slip{{
				ID: "whole-loss-at-the-first", Formula: "(loss_near + loss_far) / (flow_heat x flow)", Metric: "(loss_near + loss_far) / (watt_per_kw x flow_heat x flow)",
				Did:  "You let the whole supply's loss fall on the first piece.",
				Why:  "Up to the near riser the pipe has lost {loss_near} only. The rest is lost farther on.",
				Next: "Go along the pipe and cool the water piece by piece.",
			}},
		},
		{
			Name: "at_near", Says: "temperature at the near riser", Measure: &measure.Temp,
			Formula: "hot - drop_near",
			Why:     "The water can only cool on its way.",
			Slips: []problems.Slip{{
				ID: "drop-added", Formula: "hot + drop_near",
				Did:  "You added the drop.",
				Why:  "Water does not get hotter in a pipe that gives off heat.",
				Next: "Nothing on the loop may be hotter than {hot}.",
			}},
		},
		{
			Name: "flow_far", Says: "flow to the far riser", Measure: &measure.FlowRate,
			Formula: "flow - branch_flow",
			Why:     "What the near riser takes does not come farther.",
			Slips: []problems.Slip{
				{
					ID: "flow-of-the-whole", Formula: "flow",
					Did:  "You let the whole {flow} go on.",
					Why:  "{branch_flow} has turned off at the near riser. Less water cools more, so the far end is colder than this shows.",
					Next: "Write the flow of each piece on the drawing before you reckon.",
				},
				{
					ID: "flow-of-the-near", Formula: "branch_flow",
					Did:  "You took what the near riser takes.",
					Why:  "That part goes home by the near riser's return. The far riser gets what is left.",
					Next: "At a tee the flows that leave add up to the one that comes.",
				},
			},
		},
		{
			Name: "drop_far", Says: "drop from the near riser to the far one", Measure: &measure.TempDrop,
			Formula: "loss_far / (flow_heat x flow_far)", Metric: "loss_far / (watt_per_kw x flow_heat x flow_far)",
			Why: "The loss of this piece is paid by the flow of this piece.",
			Slips: []problems.Slip{{
				ID: "near-loss-again", Formula: "loss_near / (flow_heat x flow_far)", Metric: "loss_near / (watt_per_kw x flow_heat x flow_far)",
				Did:  "You took the loss of the first piece, {loss_near}, again.",
				Why:  "Between the risers {loss_far} is lost. The first piece is paid already.",
				Next: "Loss and flow of one line belong to one piece of pipe.",
			}},
		},
		{
			Name: "at_far", Says: "temperature at the foot of the far riser", Measure: &measure.Temp,
			Formula: "at_near - drop_far",
			Why:     "The second piece starts with what the first has left.",
			Slips: []problems.Slip{{
				ID: "from-the-heater", Formula: "hot - drop_far",
				Did:  "You started the second piece at {hot}.",
				Why:  "The water has cooled to {at_near} by then.",
				Next: "Each piece starts where the one before it ended.",
			}},
		},
	},
	Holds: "Each piece of pipe cools the water by its own loss over the flow that runs in that piece. Behind every riser the flow is less, so the same loss cools it more: the far end of a loop is the first to go lukewarm.",
	Cautions: []string{
		legionella, "Turning the heater up does not mend a cold far riser: it makes the near taps too hot. Balance the loop.", scald,
	},
	Sources: []problems.Source{
		{Says: "Drop = loss / (500 x flow): 8.33 lb x 60 min = 499.8. A water heater maker's design manual", Confidence: solver.Confirmed},
		loopReturn,
	},
	Draw: drawBranchTemperature,
	Solve: func(w problems.World) float64 {
		q := w.Flow("flow")
		at := solver.Along(w.Building.Heater.Hot, w.SI("flow_heat"),
			solver.Section{Loss: unit.Power(w.SI("loss_near")), Flow: q},
			solver.Section{Loss: unit.Power(w.SI("loss_far")), Flow: q - w.Flow("branch_flow")})
		return float64(at[1])
	},
}

func init() { add(&branchTemperatureSkill) }

// drawBranchTemperature draws two pieces of supply that each cool the water by
// some degrees, and keeps the far one above the guideline's return.
func drawBranchTemperature(s *building.Sheet) {
	heaterTower(s)
	hot := s.Pick([]float64{138, 140, 142, 145}, []float64{59, 60, 61, 62})
	least := s.Pick([]float64{125}, []float64{52})
	type aim struct{ flow, branch, near, far float64 }
	var fit []aim
	per, losses := s.Pick([]float64{500}, []float64{4190}), lists(s, upTo(2000, 9000, 500), upTo(600, 3000, 100))
	for _, flow := range lists(s, []float64{2, 2.5, 3, 4}, []float64{0.12, 0.15, 0.18, 0.2, 0.25}) {
		for _, branch := range lists(s, []float64{0.5, 0.8, 1, 1.2, 1.5}, []float64{0.04, 0.05, 0.06, 0.08, 0.1}) {
			rest := flow - branch
			if math.Abs(rest/branch-1) < 0.2 || rest < 0.4*flow || rest > 0.75*flow {
				continue
			}
			for _, near := range losses {
				for _, far := range losses {
					a, b := near/per/flow, far/per/rest
					low := s.Pick([]float64{4}, []float64{2})
					if a >= low && b >= low && math.Abs(far/near-1) > 0.25 && hot-a-b >= least {
						fit = append(fit, aim{flow, branch, near, far})
					}
				}
			}
		}
	}
	a, _ := pick(s, fit)
	s.Building.Heater.Hot = degrees(s, hot)
	s.Building.Loop = &solver.Loop{Drop: unit.TempDifference(5)}
	s.Set("hot", hot)
	s.Set("flow", a.flow)
	s.Set("branch_flow", a.branch)
	s.Set("loss_near", a.near)
	s.Set("loss_far", a.far)
}
