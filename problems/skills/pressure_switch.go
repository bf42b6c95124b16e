package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var pressureSwitchSkill = problems.Skill{
	ID: "pressure-switch", Title: "Pressure switch and starts per hour",
	Chapter: 4, Order: 60, Year: 3, Kind: problems.Sum,
	Ask: "A pump of {pump_flow} is run by a pressure switch beside it. The shower on level {level} is {height} above the switch; friction up to it is {friction}, and {least} must be left ({limit_says}). The switch has a differential of {differential}, and the pressure tank gives {drawdown} between cut-out and cut-in. Find cut-in and cut-out, and how often the pump starts in an hour at worst. The motor may start {allowed_starts}. Is that kept?",
	Givens: []problems.Given{
		{Name: "pump_flow", Says: "flow of the pump", Measure: &measure.FlowRate},
		{Name: "height", Says: "height of the highest shower above the switch", Measure: &measure.Height},
		{Name: "friction", Says: "friction from the switch to the shower", Measure: &measure.Pressure},
		{Name: "least", Says: "pressure to be left at the highest shower", Measure: &measure.Pressure},
		{Name: "differential", Says: "differential of the switch", Measure: &measure.Pressure},
		{Name: "drawdown", Says: "water that the tank gives from cut-out to cut-in", Measure: &measure.Tank},
		{Name: "allowed_starts", Says: "starts that the motor bears", Measure: &measure.Starts},
	},
	Rules: []problems.Rule{
		{
			Name: "column", Says: "pressure that the climb costs", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "The switch feels the pressure where it stands, with all the water above it.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known here and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "cut_in", Says: "cut-in pressure at the switch", Measure: &measure.Pressure,
			Formula: "column + friction + least",
			Why:     "Just before the pump starts, the top shower must still have {least}. So the pump starts at climb, friction and residual together.",
			Would:   cutIn,
			Slips: []problems.Slip{
				{
					ID: "top-floor-pressure", Formula: "least",
					Did:  "You set the switch to {least}, what the top shower needs.",
					Why:  "The switch stands {height} lower. At {least} there, the water would not reach the upper floors at all before the pump starts.",
					Next: "A pressure belongs to a place. Carry it to where the switch stands.",
				},
				{
					ID: "residual-left-out", Formula: "column + friction",
					Did:  "You left out the {least} at the shower.",
					Why:  "The pump would start when the top shower has run dry.",
					Next: "Climb, friction, residual: three terms.",
				},
				{
					ID: "friction-left-out", Formula: "column + least",
					Did:  "You left out the {friction} of the piping.",
					Why:  "When the shower runs, that is missing at the top just before the pump starts.",
					Next: "Climb, friction, residual: three terms.",
				},
			},
		},
		{
			Name: "cut_out", Says: "cut-out pressure at the switch", Measure: &measure.Pressure,
			Formula: "cut_in + differential",
			Why:     "The pump starts at the lower pressure and stops at the higher. Cut-in keeps the top floor, so the differential goes on top.",
			Would:   cutOut,
			Slips: []problems.Slip{{
				ID: "differential-downward", Formula: "cut_in - differential",
				Did:  "You took the differential off.",
				Why:  "Then the pump would start {differential} below what the top floor needs.",
				Next: "In, then up to out. Out is the higher number.",
			}},
		},
		{
			Name: "half_flow", Says: "draw at which the pump starts most often", Measure: &measure.FlowRate,
			Formula: "pump_flow / 2",
			Why:     "At a small draw the tank lasts long, near full flow the pump runs long. In the middle, at half flow, both times together are shortest.",
			Slips: []problems.Slip{{
				ID: "full-flow", Formula: "pump_flow",
				Did:  "You took the whole flow, {pump_flow}.",
				Why:  "If the building draws all that the pump gives, nothing is left to fill the tank, and the pump runs on without a stop.",
				Next: "Half goes out to the building, half into the tank.",
			}},
		},
		{
			Name: "cycle", Says: "time from one start to the next", Measure: &measure.CycleTime,
			Formula: "2 x drawdown / half_flow",
			Why:     "The tank fills at half flow while the pump runs, and empties at half flow while it stands: the drawdown twice.",
			Slips: []problems.Slip{{
				ID: "filling-alone", Formula: "drawdown / half_flow",
				Did:  "You counted the drawdown once.",
				Why:  "That is the time to fill. Before the next start the tank has to empty again, which takes as long.",
				Next: "A cycle goes from start to start: running and standing.",
			}},
		},
		{
			Name: "starts", Says: "starts in an hour at worst", Measure: &measure.Starts,
			Formula: "minutes_per_hour / cycle", Metric: "seconds_per_hour / cycle",
			Why: "So many cycles fit into an hour. In US units it comes to 15 Q / drawdown, in SI to 900 Q / drawdown.",
		},
		{
			Name: "verdict", Says: "the starts", Measure: &measure.Answer, Choices: []string{"are kept", "are too many"},
			Formula: "starts > allowed_starts",
			Why:     "Every start heats the motor. Too many are cured by a larger tank or a wider differential.",
			Would:   startSoOften,
			Slips: []problems.Slip{{
				ID: "wrong-way-round", Formula: "starts < allowed_starts",
				Did:  "You compared {starts} with {allowed_starts} the wrong way round.",
				Why:  "The motor's number is the most it bears. Fewer starts are well.",
				Next: "Say it in words: does, may do. More than it may is too many.",
			}},
		},
	},
	Holds:    "A switch knows only the pressure at its own place. Cut-in there is climb plus friction plus what the top shower needs; cut-out is cut-in plus the differential. Starts are worst at half flow, where filling and emptying both take drawdown over half the flow: 15 Q / V an hour with gpm and gallons.",
	Cautions: []string{pumpLock, bladder, "Cut-out stays below the setting of the relief valve and the rating of tank and fittings."},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "Worst at half flow: the time V/(Qp - q) + V/q is shortest at q = Qp/2, worked out", Confidence: solver.Memory},
		{Says: "Up to 20 starts an hour to 5 hp, 12 to 15 hp: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t, _, _ := boostedTower(s, 10, 16)
		friction := s.Pick([]float64{8, 9, 10, 12, 14}, []float64{55, 60, 70, 80, 90})
		diff := s.Pick([]float64{16, 18, 20, 24}, []float64{110, 125, 140, 160})
		most := s.Pick([]float64{12, 15, 20}, []float64{12, 15, 20})
		many := s.Chance(0.4)
		type found struct{ flow, drawdown float64 }
		var fit []found
		for _, q := range lists(s, []float64{40, 50, 60, 80, 100}, []float64{2.5, 3, 4, 5, 6}) {
			for _, v := range lists(s, []float64{24, 28, 32, 36, 42, 48, 56, 64, 75, 90, 110}, []float64{90, 110, 125, 140, 160, 180, 210, 240, 280, 340, 420}) {
				starts := 15 * q / v
				if !s.US() {
					starts = 900 * q / v
				}
				if r := starts / most; math.Abs(r-1) > 0.08 && r > 0.5 && r < 1.9 && (r > 1) == many {
					fit = append(fit, found{q, v})
				}
			}
		}
		f, _ := pick(s, fit)
		s.Set("pump_flow", f.flow)
		setHeight(s, "height", t.Up(t.Storeys)+s.Shower())
		s.Set("friction", friction)
		s.Set("least", keepAtTop(s))
		s.Set("differential", diff)
		s.Set("drawdown", f.drawdown)
		s.Set("allowed_starts", most)
	},
	Solve: func(w problems.World) float64 {
		if startsAtWorst(w) > w.SI("allowed_starts") {
			return 1
		}
		return 0
	},
}

func init() { add(&pressureSwitchSkill) }

// startsAtWorst is how often the pump starts, in a second.
func startsAtWorst(w problems.World) float64 {
	q := w.Flow("pump_flow")
	return 1 / solver.CycleSeconds(unit.Volume(w.SI("drawdown")), q, q/2)
}

// cutIn sets the pressure at which the pump starts.
func cutIn(w problems.World, v float64) problems.Outcome {
	b, at := topFedAt(w, unit.Pressure(v))
	if b.Booster.Boost <= 0 {
		b = nil // the street alone brings more
	}
	top, least := w.Building.Top(), w.Pressure("least")
	says, kept := w.Left("the shower on "+w.Level(top), "just before the pump starts", at, least)
	o := problems.Outcome{Kept: kept, Building: b, Marks: []problems.Mark{w.Mark(top, problems.AtHighest, at, kept)}}
	o.Says = []string{"Set to cut in at " + w.Press(unit.Pressure(v)) + ", " + says + "."}
	if w.Spare(at, least) {
		o.Kept = false
		o.Says = append(o.Says, "That is "+w.Press(at-least)+" more than is asked, and the whole building stands under it.")
	}
	return o
}

// cutOut sets the pressure at which the pump stops.
func cutOut(w problems.World, v float64) problems.Outcome {
	in := w.Gamma().OfColumn(w.Length("height")) + w.Pressure("friction") + w.Pressure("least")
	out, wanted := unit.Pressure(v), w.Pressure("differential")
	lead := "Set to cut out at " + w.Press(out) + ", "
	switch {
	case w.Press(out-in) == w.Press(wanted):
		return problems.Outcome{Kept: true, Says: []string{lead + "the pump would stop " + w.Press(wanted) + " above the cut-in, as wide as the differential is told."}}
	case out <= in:
		return problems.Outcome{Says: []string{lead + "the pump would have to stop below the " + w.Press(in) + " at which it starts: the top shower would never get its " + w.Press(w.Pressure("least")) + "."}}
	}
	return problems.Outcome{Says: []string{lead + "the pump would stop " + w.Press(out-in) + " above the cut-in; the differential is " + w.Press(wanted) + ", and the drawdown of the tank goes with it."}}
}

// startSoOften leaves the tank as it is (0) or buys a larger one (1).
func startSoOften(w problems.World, v float64) problems.Outcome {
	starts, most := startsAtWorst(w), w.SI("allowed_starts")
	o := problems.Outcome{Kept: starts > most == (v == 1)}
	says := "At half flow the pump would start " + w.Text(measure.Starts, starts) + "; the motor bears " + w.Text(measure.Starts, most)
	switch {
	case o.Kept:
		says += "."
	case v == 0:
		says += ". Left so, its winding would burn out before its time."
	default:
		says += ". A larger tank would be bought for nothing."
	}
	o.Says = []string{says}
	return o
}
