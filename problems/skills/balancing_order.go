package skills

import (
	"fmt"
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Ways round are called alike where the shorter is more than this of the longer.
// Common practice, no source.
const alikeWays = 0.8

var balancingOrderSkill = problems.Skill{
	ID: "balancing-order", Title: "Which balancing valve is nearly shut?",
	Chapter: 7, Order: 90, Year: 3, Kind: problems.Choice,
	Ask: "A hot loop feeds {risers} risers of the same size and height. {piping} To the nearest riser {supply_near} of supply main run from the heater, and {return_near} of return main run back from it. To the farthest the supply main is {supply_far} long, and its return main {return_far}. How will the balancing valves stand? Call the ways round alike where the shorter is more than 0.8 of the longer.",
	Givens: []problems.Given{
		{Name: "supply_near", Says: "supply main from the heater to the nearest riser", Measure: &measure.PipeLength},
		{Name: "return_near", Says: "return main from the nearest riser to the heater", Measure: &measure.PipeLength},
		{Name: "supply_far", Says: "supply main from the heater to the farthest riser", Measure: &measure.PipeLength},
		{Name: "return_far", Says: "return main from the farthest riser to the heater", Measure: &measure.PipeLength},
	},
	Rules: []problems.Rule{
		{
			Name: "way_near", Says: "main on the way round through the nearest riser", Measure: &measure.PipeLength,
			Formula: "supply_near + return_near",
			Why:     "Friction counts out and back. The risers themselves are alike.",
			Slips: []problems.Slip{{
				ID: "near-supply-alone", Formula: "supply_near", Family: "return-not-counted",
				Did:  "You counted the supply alone, {supply_near}.",
				Why:  "The water has to come home as well. The return is smaller pipe and rubs the more.",
				Next: "Start at the heater and stop at the heater.",
			}},
		},
		{
			Name: "way_far", Says: "main on the way round through the farthest riser", Measure: &measure.PipeLength,
			Formula: "supply_far + return_far",
			Why:     "Out and back again, by the pipe that is drawn.",
			Slips: []problems.Slip{{
				ID: "far-supply-alone", Formula: "supply_far", Family: "return-not-counted",
				Did:  "You counted the supply alone, {supply_far}.",
				Why:  "The water has to come home as well. The return is smaller pipe and rubs the more.",
				Next: "Start at the heater and stop at the heater.",
			}},
		},
		{
			Name: "ratio", Says: "nearest way over farthest way", Measure: &measure.Share,
			Formula: "way_near / way_far",
			Why:     "A small ratio means that the nearest riser would take most of the flow. A ratio near 1 means that the piping balances itself.",
			Slips: []problems.Slip{{
				ID: "supplies-compared", Formula: "supply_near / supply_far",
				Did:  "You compared the supplies only.",
				Why:  "What is near on the supply need not be near on the return. That is the whole point of reverse return.",
				Next: "Put a finger on the return's last riser: first out, last home is reverse return.",
			}},
		},
		{
			Name: "order", Says: "the balancing valves", Measure: &measure.Answer,
			Choices: []string{"nearest nearly shut, farthest wide open", "all nearly alike", "farthest nearly shut, nearest wide open"},
			Formula: "(ratio > 0.8) + (ratio > 1.25)",
			Why:     "The shorter way round has pressure over, and its valve must take it. Where all ways are alike, no valve has more to take than another.",
			Would:   balanceSo,
			Slips: []problems.Slip{
				{
					ID: "order-reversed", Formula: "2 / (ratio < 0.8)",
					Did:  "You shut the farthest valve and opened the nearest.",
					Why:  "The farthest riser has the longest pipe and the least pressure over. Shut down further, it goes cold first.",
					Next: "Ask which riser would steal the water if all valves stood open. That one is throttled.",
				},
				{
					ID: "alike-in-direct-return", Formula: "1 / (ratio < 0.8)",
					Did:  "You set all valves alike.",
					Why:  "Here the ways round differ: {way_near} and {way_far}. Alike, the nearest riser takes most of the flow.",
					Next: "Alike is right only where first out is last home.",
				},
				{
					ID: "direct-return-by-habit", Formula: "0 / (ratio > 0.8)",
					Did:  "You throttled the nearest riser, as in direct return.",
					Why:  "Here the riser that is first on the supply is last on the return. Its way round is as long as the others.",
					Next: "Look where the return starts before you touch a valve.",
				},
			},
		},
	},
	Holds: "Water shares itself out by the ways it can go: the easiest gets the most. In direct return the nearest riser is nearest both ways, and its valve ends nearly shut. In reverse return the first riser out is the last home, so all ways are about alike, for the price of one more length of return. Valves that follow the temperature set themselves in either.",
	Cautions: []string{
		"Never shut a balancing valve fully: its riser goes dead, and dead hot pipe is where Legionella grows.",
		legionella, scald,
	},
	Sources: []problems.Source{
		{Says: "Order of the valves, direct and reverse return; ways called alike where the shorter is more than 0.8 of the longer", Confidence: solver.Practice},
		loopReturn,
	},
	Draw: drawBalancingOrder,
	Solve: func(w problems.World) float64 {
		l := w.Building.Loop
		near, far := l.FarthestFromLoop, l.FarthestFromHeater
		switch {
		case float64(near) > float64(far)/alikeWays:
			return 2
		case float64(near) > float64(far)*alikeWays:
			return 1
		}
		return 0
	},
}

func init() { add(&balancingOrderSkill) }

// balanceSo sets the valves so and shares the flow of two risers between them
// by the length of their ways.
func balanceSo(w problems.World, v float64) problems.Outcome {
	near := float64(w.Length("supply_near") + w.Length("return_near"))
	far := float64(w.Length("supply_far") + w.Length("return_far"))
	direct := near < alikeWays*far
	o := problems.Outcome{}
	times := w.Text(measure.Share, math.Sqrt(far/near))
	switch {
	case direct && v == 0:
		o.Kept = true
		o.Says = []string{"The valve of the nearest riser takes what its short way leaves over. All risers could carry the same flow and come back equally hot."}
	case direct && v == 1:
		o.Says = []string{"With all valves alike the nearest riser would carry up to " + times + " times what the farthest carries. The farthest would come back the coldest, and Legionella grows where it is lukewarm."}
	case direct:
		o.Says = []string{"Even with all valves open the nearest riser would carry up to " + times + " times what the farthest carries. Throttled as well, the farthest would hardly move, and Legionella grows where it is lukewarm."}
	case v == 1:
		o.Kept = true
		o.Says = []string{"Every way round is about as long as the others, so all risers would carry nearly the same flow and come back equally hot."}
	case v == 0:
		o.Says = []string{"The nearest riser's way is as long as the farthest's. Nearly shut it would carry little and come back lukewarm, and Legionella grows there."}
	default:
		o.Says = []string{"The farthest riser's way is as long as the nearest's. Nearly shut it would carry little and come back lukewarm, and Legionella grows there."}
	}
	return o
}

// drawBalancingOrder draws a row of risers in direct or in reverse return.
func drawBalancingOrder(s *building.Sheet) {
	heaterTower(s)
	n := s.Int(3, 5)
	gap := s.Pick([]float64{30, 40, 50, 60}, []float64{9, 12, 15, 18})
	first := s.Pick([]float64{20, 25, 35, 45}, []float64{6, 8, 10, 14})
	more := s.Pick([]float64{4, 6, 8}, []float64{1, 2, 2.5})
	row := gap * float64(n-1)
	reverse := s.Chance(0.5)
	supplyNear, supplyFar := first, first+row
	returnNear, returnFar := first+more, first+row+more
	s.Name("piping", "The return main starts at the farthest riser and picks up the others on its way to the heater.")
	if reverse {
		returnNear, returnFar = first+2*row+more, first+row+more
		s.Name("piping", "The return main starts at the nearest riser, goes along to the farthest, and from there comes back to the heater.")
	}
	s.Name("risers", fmt.Sprintf("%d", n))
	s.Set("supply_near", supplyNear)
	s.Set("return_near", returnNear)
	s.Set("supply_far", supplyFar)
	s.Set("return_far", returnFar)
	s.Building.Loop = &solver.Loop{
		Supply: s.Length(supplyFar), Return: s.Length(math.Max(returnNear, returnFar)), Drop: unit.TempDifference(5),
		FarthestFromHeater: s.Length(supplyFar + returnFar), FarthestFromLoop: s.Length(supplyNear + returnNear),
	}
}
