package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var mixedReturnSkill = problems.Skill{
	ID: "mixed-return", Title: "Returns run together",
	Chapter: 7, Order: 110, Year: 3, Kind: problems.Choice,
	Ask: "Three risers send their returns into one pipe to the heater: {flow_a} at {temp_a}, {flow_b} at {temp_b}, and from the farthest {flow_c} at {temp_c}. Nothing of the loop is to come back under {least}. What does the thermometer at the heater read where they have run together, and may the balancing stay as it is?",
	Givens: []problems.Given{
		{Name: "flow_a", Says: "return flow of the first riser", Measure: &measure.FlowRate},
		{Name: "temp_a", Says: "return temperature of the first riser", Measure: &measure.Temp},
		{Name: "flow_b", Says: "return flow of the second riser", Measure: &measure.FlowRate},
		{Name: "temp_b", Says: "return temperature of the second riser", Measure: &measure.Temp},
		{Name: "flow_c", Says: "return flow of the farthest riser", Measure: &measure.FlowRate},
		{Name: "temp_c", Says: "return temperature of the farthest riser", Measure: &measure.Temp},
		{Name: "least", Says: "guideline for every return", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "total", Says: "return flow at the heater", Measure: &measure.FlowRate,
			Formula: "flow_a + flow_b + flow_c",
			Why:     "All three run home in one pipe.",
			Slips: []problems.Slip{{
				ID: "farthest-left-out", Formula: "flow_a + flow_b",
				Did:  "You left the farthest riser's flow out.",
				Why:  "It is small, but it is there, and it brings the coolest water.",
				Next: "Count the pipes at the header: three come in.",
			}},
		},
		{
			Name: "blended", Says: "temperature of the returns together", Measure: &measure.Temp,
			Formula: "(flow_a x temp_a + flow_b x temp_b + flow_c x temp_c) / total",
			Why:     "Each return counts with its flow: twice the water, twice the say.",
			Slips: []problems.Slip{{
				ID: "plain-average", Formula: "(temp_a + temp_b + temp_c) / 3",
				Did:  "You took the plain average of the three temperatures.",
				Why:  "That holds for equal flows only. Here the first riser sends most of the water, and the mix lies nearer to it.",
				Next: "Before you start, say which stream is the largest: the mix leans that way.",
			}},
		},
		{
			Name: "verdict", Says: "the balancing", Measure: &measure.Answer, Choices: []string{"must be done again", "may stay as it is"},
			Formula: "(temp_a >= least) and (temp_b >= least) and (temp_c >= least)",
			Why:     "Every riser has to keep the guideline by itself. A hot one does not help a cold one: they meet only behind the last tap.",
			Would:   leaveBalance,
			Slips: []problems.Slip{
				{
					ID: "judged-by-the-mix", Formula: "1 / (temp_c < least)",
					Did:  "You judged by the mixed return, {blended}.",
					Why:  "The thermometer at the heater sees the large hot returns. The farthest riser comes back at {temp_c}, and its taps stand on lukewarm pipe.",
					Next: "Put a thermometer on every return, not only at the heater.",
				},
				{
					ID: "coolest-disliked", Formula: "0 / (temp_c >= least)",
					Did:  "You sent a loop back to be balanced in which every return keeps {least}.",
					Why:  "The farthest is always a little cooler. At {temp_c} it keeps the guideline.",
					Next: "Compare each return with the guideline, not with its neighbour.",
				},
			},
		},
	},
	Holds:    "Streams that meet share their heat, each by its flow. So a mixed return hides a cold riser: the less a riser flows, the colder it is and the less it shows in the mix.",
	Cautions: []string{legionella, "The guideline is for buildings where people are at risk; local rules may ask for more, and the authority decides.", scald},
	Sources:  []problems.Source{loopReturn, {Says: "Heat balance of streams; physics", Confidence: solver.Practice}},
	Draw:     drawMixedReturn,
	Solve: func(w problems.World) float64 {
		least := unit.Temperature(math.Inf(1))
		for _, name := range []string{"temp_a", "temp_b", "temp_c"} {
			least = min(least, w.Temperature(name))
		}
		if least >= w.Temperature("least") {
			return 1
		}
		return 0
	},
}

func init() { add(&mixedReturnSkill) }

// leaveBalance leaves the valves as they are, or sets them again.
func leaveBalance(w problems.World, v float64) problems.Outcome {
	cold, least := w.Temperature("temp_c"), w.Temperature("least")
	mix := solver.Together(
		solver.Stream{Flow: w.Flow("flow_a"), Temp: w.Temperature("temp_a")},
		solver.Stream{Flow: w.Flow("flow_b"), Temp: w.Temperature("temp_b")},
		solver.Stream{Flow: w.Flow("flow_c"), Temp: cold})
	o := problems.Outcome{Kept: (v == 1) == (cold >= least)}
	switch {
	case v == 1 && o.Kept:
		o.Says = []string{"The farthest riser would go on coming back at " + w.Temp(cold) + ", and " + w.Temp(least) + " is asked: every return keeps it."}
	case v == 1:
		o.Says = []string{"The thermometer at the heater would read " + w.Temp(mix) + ", and the farthest riser would go on coming back at " + w.Temp(cold) + "; " + w.Temp(least) + " is asked, and below it Legionella grows."}
	case o.Kept:
		o.Says = []string{"The near valves would be throttled until the farthest riser, now at " + w.Temp(cold) + ", comes back at " + w.Temp(least) + " or more."}
	default:
		o.Says = []string{"A day's work for nothing: the coolest return comes back at " + w.Temp(cold) + ", and " + w.Temp(least) + " is enough."}
	}
	o.Marks = []problems.Mark{{Where: problems.AtLoop, Text: w.Temp(mix), Kept: o.Kept}}
	return o
}

// drawMixedReturn draws two returns that are hot enough and a farthest one
// that is, or is not, while the mix always is.
func drawMixedReturn(s *building.Sheet) {
	heaterTower(s)
	least := s.Pick([]float64{124}, []float64{51})
	good := s.Chance(0.4)
	type aim struct{ fa, fb, fc, a, b, c float64 }
	var fit []aim
	fc := s.Pick([]float64{0.5, 0.6, 0.8}, []float64{0.03, 0.04, 0.05})
	for _, fa := range lists(s, []float64{2, 2.5, 3, 4}, []float64{0.15, 0.18, 0.2, 0.25}) {
		for _, fb := range lists(s, []float64{1, 1.2, 1.5}, []float64{0.07, 0.08, 0.1}) {
			for _, a := range lists(s, []float64{132, 134, 136, 138}, []float64{56, 57, 58, 59}) {
				for _, b := range lists(s, []float64{128, 130, 131}, []float64{53, 54, 55}) {
					for _, c := range lists(s, []float64{104, 108, 112, 115, 126, 127}, []float64{38, 41, 44, 46, 52, 53}) {
						mix := (fa*a + fb*b + fc*c) / (fa + fb + fc)
						far := math.Abs(mix - (a+b+c)/3)
						if (c >= least) == good && mix > least+1 && far > s.Pick([]float64{2.2}, []float64{0.9}) {
							fit = append(fit, aim{fa, fb, fc, a, b, c})
						}
					}
				}
			}
		}
	}
	x, _ := pick(s, fit)
	s.Building.Loop = &solver.Loop{Drop: unit.TempDifference(5)}
	s.Set("flow_a", x.fa)
	s.Set("temp_a", x.a)
	s.Set("flow_b", x.fb)
	s.Set("temp_b", x.b)
	s.Set("flow_c", x.fc)
	s.Set("temp_c", x.c)
	s.Set("least", least)
}
