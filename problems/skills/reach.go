package skills

import (
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// What is kept at the highest outlet, by the shops and by one code.
var (
	topSource = problems.Source{
		Says:       "25 psi (170 kPa) left at the highest outlet: common practice, no source; the maker of the fixture governs",
		Confidence: solver.Practice,
	}
	topCode = problems.Source{
		Says:       "15 psi (103 kPa) left at the highest outlet after all losses: UPC (2024), 608.1",
		Confidence: solver.Memory,
	}
)

// footSource is the pressure of a foot of water.
var footSource = problems.Source{
	Says:       "Foot of water, conventional: 2,989.067 Pa. NIST SP 811 (2008), App. B.9",
	Confidence: solver.Confirmed,
}

var reachSkill = problems.Skill{
	ID: "reach", Title: "How high the street pressure reaches",
	Chapter: 2, Order: 10, Year: 1, Kind: problems.Sum,
	Ask: "The lowest street pressure of the day is {street} on the gauge in the meter room. {least} must be left at the highest outlet ({limit_says}). Leave friction and devices aside. How high above the gauge may that outlet be?",
	Givens: []problems.Given{
		{Name: "street", Says: "lowest street pressure, on the gauge in the meter room", Measure: &measure.Pressure, Plate: true},
		{Name: "least", Says: "pressure to be left at the highest outlet", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "spare", Says: "pressure that may be spent on height", Measure: &measure.Pressure,
			Formula: "street - least",
			Why:     "What must be left at the top cannot be used up on the way to it.",
			Slips: []problems.Slip{
				{
					ID: "nothing-left", Formula: "street",
					Did:  "You spent the whole street pressure, {street}, on height.",
					Why:  "At that height nothing is left: the shower would only just be wet. {least} must still be there.",
					Next: "Set aside what the outlet keeps before you buy any height.",
				},
				{
					ID: "residual-added", Formula: "street + least",
					Did:  "You added {least} to the street pressure.",
					Why:  "What must be left at the outlet is paid by the street, it is not given to it.",
					Next: "The more must be left at the top, the lower the reach. Check that your sum does so.",
				},
			},
		},
		{
			Name: "reach", Says: "height that the street reaches above the gauge", Measure: &measure.Height,
			Formula: "spare / gamma",
			Why:     "Each foot or metre of height costs the same pressure, so the spare pressure buys that many.",
			Would:   outletAtReach(false),
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "spare x gamma",
				Did:  "You multiplied {spare} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. Here the pressure is known and the height is wanted, so divide.",
				Next: "In US units the feet come out more than twice the psi; in SI the metres come out about a tenth of the kPa.",
			}},
		},
	},
	Holds: "The street lifts water until its weight has used up all the pressure but what the outlet keeps. One psi lifts 2.31 ft, one kilopascal 0.102 m. The reach counts from the gauge where the pressure was read, and the lowest pressure of the day decides.",
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "80 psi at the street with 25 psi kept reaches 127 ft: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		s.Tower(building.Plan{Min: 4, Max: 20})
		least := keepAtTop(s)
		var fit []float64
		for _, street := range gaugeReadings(s) {
			if spare := street - onPlate(s, least); spare >= 0.3*street {
				fit = append(fit, street)
			}
		}
		low, _ := pick(s, fit)
		s.SetStreet(low+s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), low, 0, "on the gauge in the meter room")
		s.Set("street", low)
		s.Set("least", least)
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.Reach(w.Building.Street.Low, w.Pressure("least"), w.Gamma()))
	},
}

func init() { add(&reachSkill) }

var reachWithLossesSkill = problems.Skill{
	ID: "reach-with-losses", Title: "Reach after the losses",
	Chapter: 2, Order: 20, Year: 2, Kind: problems.Sum,
	Ask: "The lowest street pressure at peak is {street} on the gauge in the meter room, ahead of the meter. At the design flow of {design_flow} the meter takes {meter_loss}, the backflow preventer {backflow_loss}, and the pipe to the highest outlet {friction}. {least} must be left at that outlet ({limit_says}). How high above the gauge may the outlet be?",
	Givens: []problems.Given{
		{Name: "street", Says: "lowest street pressure at peak, ahead of the meter", Measure: &measure.Pressure, Plate: true},
		{Name: "meter_loss", Says: "loss of the meter at design flow", Measure: &measure.Pressure},
		{Name: "backflow_loss", Says: "loss of the backflow preventer at design flow", Measure: &measure.Pressure},
		{Name: "friction", Says: "friction of the pipe to the highest outlet at design flow", Measure: &measure.Pressure},
		{Name: "least", Says: "pressure to be left at the highest outlet", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "losses", Says: "losses on the way at design flow", Measure: &measure.Pressure,
			Formula: "meter_loss + backflow_loss + friction",
			Why:     "All three stand in the same stream, so each takes its part.",
			Slips: []problems.Slip{
				{
					ID: "backflow-left-out", Formula: "meter_loss + friction",
					Did:  "You left the backflow preventer out.",
					Why:  "Its springs must be held open by the water, and that costs {backflow_loss} at the design flow.",
					Next: "Walk along the pipe from the street and write down each device that you pass.",
				},
				{
					ID: "meter-left-out", Formula: "backflow_loss + friction",
					Did:  "You left the meter out.",
					Why:  "The gauge stands ahead of the meter. All the water still has to turn it, and that costs {meter_loss}.",
					Next: "Look where the gauge sits. What comes after it must be paid for.",
				},
				{
					ID: "friction-left-out", Formula: "meter_loss + backflow_loss",
					Did:  "You left the friction of the pipe out.",
					Why:  "Water that runs rubs along the pipe and its fittings: {friction} of it on this way.",
					Next: "Devices, pipe, height, what is left: four things to pay. Tick them off.",
				},
			},
		},
		{
			Name: "after_losses", Says: "pressure after the losses", Measure: &measure.Pressure,
			Formula: "street - losses",
			Why:     "A loss is pressure that is gone for good.",
			Slips: []problems.Slip{{
				ID: "losses-added", Formula: "street + losses",
				Did:  "You added the losses to the street pressure.",
				Why:  "A device takes pressure from the water. Nothing but a pump gives any.",
				Next: "Behind a meter the gauge reads less than before it. Check that your number fell.",
			}},
		},
		{
			Name: "spare", Says: "pressure that may be spent on height", Measure: &measure.Pressure,
			Formula: "after_losses - least",
			Why:     "What must be left at the top cannot be used up on the way to it.",
			Slips: []problems.Slip{
				{
					ID: "nothing-left", Formula: "after_losses",
					Did:  "You spent all of {after_losses} on height.",
					Why:  "At that height nothing is left at the outlet, where {least} must be.",
					Next: "Set aside what the outlet keeps before you buy any height.",
				},
				{
					ID: "residual-added", Formula: "after_losses + least",
					Did:  "You added {least} to what the losses left.",
					Why:  "What must be left at the outlet is paid by the street, it is not given to it.",
					Next: "The more must be left at the top, the lower the reach. Check that your sum does so.",
				},
			},
		},
		{
			Name: "reach", Says: "height that the street reaches above the gauge", Measure: &measure.Height,
			Formula: "spare / gamma",
			Why:     "Each foot or metre of height costs the same pressure, so the spare pressure buys that many.",
			Would:   outletAtReach(true),
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "spare x gamma",
				Did:  "You multiplied {spare} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. Here the pressure is known and the height is wanted, so divide.",
				Next: "In US units the feet come out more than twice the psi; in SI the metres come out about a tenth of the kPa.",
			}},
		},
	},
	Holds: "The street's pressure is spent on four things: devices, friction, height, and what must be left at the outlet. Take off three and the fourth remains. A device's loss belongs to a stated flow, so the design flow stands beside every loss. A meter loses far less at half the flow; the springs of a backflow preventer take most of theirs at any flow.",
	Cautions: []string{
		"Pressure is never saved by a weaker backflow preventer than the hazard asks for, nor by a bypass around it: the hazard survey and the local code choose the device.",
	},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "Losses of meters, double checks and reduced pressure assemblies at design flow: common practice, no source; the maker's curve governs", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		s.Tower(building.Plan{Min: 4, Max: 20})
		least := keepAtTop(s)
		meter, backflow, friction := 0.0, 0.0, 0.0
		for meter == backflow || meter == friction || backflow == friction {
			meter, backflow = s.Meter(), s.Backflow(s.Chance(0.3))
			friction = s.Pick([]float64{3, 4, 5, 6}, []float64{20, 25, 30, 40})
		}
		var fit []float64
		for _, street := range gaugeReadings(s) {
			if spare := street - onPlate(s, meter+backflow+friction+least); spare >= 0.13*street {
				fit = append(fit, street)
			}
		}
		low, _ := pick(s, fit)
		s.SetStreet(low+s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), low, 0, "on the gauge in the meter room")
		if s.US() {
			s.Name("design_flow", strconv.Itoa(10*s.Int(8, 24))+"\u00a0gpm")
		} else {
			s.Name("design_flow", strconv.Itoa(s.Int(5, 15))+"\u00a0L/s")
		}
		s.Set("street", low)
		s.Set("meter_loss", meter)
		s.Set("backflow_loss", backflow)
		s.Set("friction", friction)
		s.Set("least", least)
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		return float64(solver.Reach(b.Street.Low-b.Losses.Total()-w.Pressure("friction"), w.Pressure("least"), w.Gamma()))
	},
}

func init() { add(&reachWithLossesSkill) }

// outletAtReach hangs the highest outlet at a height above the gauge, and asks
// the street for the level whose outlet is the last below it.
func outletAtReach(losses bool) problems.Would {
	return func(w problems.World, v float64) problems.Outcome {
		b, up := w.Building, unit.Length(v)
		street := b.Street.Low
		if losses {
			street -= b.Losses.Total() + w.Pressure("friction")
		}
		least := w.Pressure("least")
		at := solver.FloorPressure(street, w.Gamma(), up)
		says, kept := w.Left("an outlet hung "+w.Tall(up)+" above the gauge", "", at, least)
		o := problems.Outcome{Says: []string{problems.Sentence(says) + "."}, Kept: kept}
		if given := w.Tall(solver.Reach(at, least, w.Gamma())); w.Spare(at, least) {
			o.Kept = false
			o.Says = append(o.Says, "The street reaches "+given+" higher: so much height would be pumped for nothing.")
		}
		if i := levelUnder(b, up); i >= 0 && !kept {
			p := solver.FloorPressure(street, w.Gamma(), b.Highest(i)-b.Street.GaugeAt)
			says, ok := w.Left("the shower on "+w.Level(i), "", p, least)
			if !ok {
				o.Says = append(o.Says, "Counted on up to there, "+says+".")
			}
			o.Marks = append(o.Marks, w.Mark(i, problems.AtHighest, p, ok))
		}
		return o
	}
}

// levelUnder is the highest level whose highest outlet is no more than up
// above the street's gauge; -1 where none is.
func levelUnder(b *solver.Building, up unit.Length) int {
	for i := b.Top(); i >= b.Ground; i-- {
		if b.Highest(i)-b.Street.GaugeAt <= up {
			return i
		}
	}
	return -1
}
