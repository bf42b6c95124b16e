package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var boosterShortfallSkill = problems.Skill{
	ID: "booster-shortfall", Title: "Does it need a booster, and by how much",
	Chapter: 2, Order: 40, Year: 2, Kind: problems.Sum,
	Ask: "The gauge in the meter room reads {static} at noon with no flow, and {peak} at the peak of the day. At that flow the meter and the backflow preventer take {losses}, the riser {friction}. The shower on level {level}, the highest outlet, is {height} above the gauge; {least} must be left there ({limit_says}). Does the building need a booster? By how much is it short, or how much is to spare?",
	Givens: []problems.Given{
		{Name: "static", Says: "gauge in the meter room at noon, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "peak", Says: "lowest residual on that gauge, at peak flow", Measure: &measure.Pressure, Plate: true},
		{Name: "losses", Says: "loss of meter and backflow preventer at peak flow", Measure: &measure.Pressure},
		{Name: "friction", Says: "friction of the riser at peak flow", Measure: &measure.Pressure},
		{Name: "height", Says: "height of the highest shower above the gauge", Measure: &measure.Height},
		{Name: "least", Says: "pressure to be left at the highest outlet", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "entry", Says: "pressure behind the backflow preventer at peak", Measure: &measure.Pressure,
			Formula: "peak - losses",
			Why:     "The top floor is short at the peak of the day or not at all, so the sum starts from the lowest residual.",
			Slips: []problems.Slip{
				{
					ID: "noon-static", Formula: "static - losses",
					Did:  "You started from {static}, the static of noon.",
					Why:  "At noon nobody showers. At the peak the street itself has fallen to {peak}, and that is when the top floor calls.",
					Next: "For what is too low take the lowest street pressure, for what is too high the highest.",
				},
				{
					ID: "losses-left-out", Formula: "peak",
					Did:  "You left out the meter and the backflow preventer.",
					Why:  "The gauge stands ahead of them, and at peak flow they take {losses}.",
					Next: "Look where the gauge sits. What comes after it must be paid for.",
				},
			},
		},
		{
			Name: "lost", Says: "pressure lost going up", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "Each foot or metre of height costs the same pressure.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known and the pressure is wanted, so multiply.",
				Next: "In US units the psi is less than half the feet; in SI the kPa is about ten times the metres.",
			}},
		},
		{
			Name: "at_top", Says: "pressure at the highest shower at peak", Measure: &measure.Pressure,
			Formula: "entry - lost - friction",
			Why:     "Height and friction both come off on the way up.",
			Slips: []problems.Slip{
				{
					ID: "friction-left-out", Formula: "entry - lost",
					Did:  "You left out the friction of the riser.",
					Why:  "At the peak the water runs, and the riser takes {friction} from it.",
					Next: "Devices, height, friction: three things are paid before the shower. Tick them off.",
				},
				{
					ID: "height-left-out", Formula: "entry - friction",
					Did:  "You compared at the ground: the height up to level {level} is left out.",
					Why:  "Pressure is plentiful at the foot of a riser. The highest outlet decides, and {height} of water stands in the way.",
					Next: "Before you compare, ask where this pressure would be read.",
				},
			},
		},
		{
			Name: "booster", Says: "is a booster needed", Measure: &measure.Answer,
			Formula: "at_top < least", Choices: []string{"no", "yes"},
			Why:   "The street alone must leave {least} at the highest outlet. If it leaves less, a pump makes up the rest.",
			Would: boosterOrNot,
			Slips: []problems.Slip{{
				ID: "wrong-way-round", Formula: "at_top > least",
				Did:  "You compared {at_top} with {least} the wrong way round.",
				Why:  "A booster helps where less is there than must be left, and only wears the piping where there is more.",
				Next: "Say it in words: has, needs. Less than it needs is short.",
			}},
		},
		{
			Name: "margin", Says: "pressure short, or to spare", Measure: &measure.Pressure,
			Formula: "abs(least - at_top)",
			Why:     "The difference between what is there and what must be left is what is short, or to spare.",
			Would:   boostBy,
			Slips: []problems.Slip{
				{
					ID: "top-as-answer", Formula: "at_top",
					Did:  "You gave {at_top}, the pressure at the top, as the answer.",
					Why:  "That is what is there. Short or to spare is how far it lies from {least}.",
					Next: "Two numbers stand side by side, has and needs. The answer is the gap between them.",
				},
				{
					ID: "added", Formula: "least + at_top",
					Did:  "You added {at_top} and {least}.",
					Why:  "What is already there need not be made again. A pump sized so would overfeed the top.",
					Next: "If exactly {least} were there, nothing would be short. Your sum must give zero then.",
				},
			},
		},
	},
	Holds: "A building needs a booster when the street, at its lowest and with everything running, does not leave enough at the outlet that is hardest to serve. How short it is there is what the pump must add at that flow. A walk-up of three storeys seldom needs one, and a pump that is not needed is a pump to keep up.",
	Cautions: []string{
		"A booster must not pull the street down: low-suction cut-off by the code and the utility. Pumps are locked out before a coupling or a union is touched.",
	},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "Lowest residual at peak, not the static: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		least := keepAtTop(s)
		friction := s.Pick([]float64{3, 4, 5, 6}, []float64{20, 25, 30, 40})
		short := s.Chance(0.6)
		var height, losses float64
		var fit []noonAndPeak
		for tries := 0; tries < 20 && len(fit) == 0; tries++ {
			t := s.Tower(building.Plan{Min: 3, Max: 10})
			height = t.Up(t.Storeys) + s.Shower()
			losses = s.Meter() + s.Backflow(s.Chance(0.3))
			fit = streetsForTop(s, losses, head(s, height)+friction, least, short)
		}
		b := s.Building
		f, _ := pick(s, fit)
		s.SetStreet(f.static, f.peak, 0, "on the gauge in the meter room")
		b.Friction = unit.Gradient(float64(s.Press(friction)) / float64(s.Length(height)))
		s.Focus = b.Top()
		s.Name("level", b.Levels[b.Top()].Label)
		s.Set("static", f.static)
		s.Set("peak", f.peak)
		s.Set("losses", losses)
		s.Set("friction", friction)
		setHeight(s, "height", height)
		s.Set("least", least)
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		sol, err := solver.Solve(b, solver.Settings{Gamma: w.Gamma(), TopMin: w.Pressure("least")})
		if err != nil {
			return math.NaN()
		}
		return math.Abs(float64(w.Pressure("least") - sol.TopOnly + w.Pressure("friction")))
	},
}

func init() { add(&boosterShortfallSkill) }

// noonAndPeak are two readings of the street gauge.
type noonAndPeak struct{ static, peak float64 }

// streetsForTop are the readings with which the highest outlet is short, or
// not, of least by a margin that honest rounding does not turn. Losses and
// the rest of the way up are in the unit of code pressures.
func streetsForTop(s *building.Sheet, losses, way, least float64, short bool) (fit []noonAndPeak) {
	unitPlate, unitCode := s.PickPlate([]float64{1}, []float64{7}), s.Pick([]float64{1}, []float64{7})
	for n := 34.0; n <= 80; n++ {
		peak := n * unitPlate
		top := (peak/onPlate(s, 1) - losses - way) / unitCode
		gap := least/unitCode - top
		if top < 4 || math.Abs(gap) < 4 || gap < -25 || short != (gap > 0) || math.Abs(gap-top) < 2.5 {
			continue
		}
		for _, swing := range []float64{5, 7, 8, 10} {
			if math.Abs(swing*unitPlate-onPlate(s, losses)) > 0.5 {
				fit = append(fit, noonAndPeak{peak + swing*unitPlate, peak})
			}
		}
	}
	return fit
}

// topAtPeak is what the highest shower has at the peak with a booster that
// adds boost there.
func topAtPeak(w problems.World, boost unit.Pressure) (b *solver.Building, at unit.Pressure) {
	b = w.Building.Copy()
	if boost > 0 {
		b.Booster = &solver.Booster{Elevation: b.Street.GaugeAt, Boost: boost, ShutOff: boost}
		b.Zones = []solver.Zone{{Name: "1", Bottom: 0, Top: b.Top(), Supply: solver.FromBooster}}
	}
	return b, b.Flowing(b.Top(), b.Highest(b.Top()), w.Gamma())
}

// boosterOrNot builds the house without a booster (0) or with one (1).
func boosterOrNot(w problems.World, v float64) problems.Outcome {
	_, at := topAtPeak(w, 0)
	top := w.Building.Top()
	says, enough := w.Left("the shower on "+w.Level(top), "at the peak of the day", at, w.Pressure("least"))
	o := problems.Outcome{Kept: enough == (v == 0), Marks: []problems.Mark{w.Mark(top, problems.AtHighest, at, enough)}}
	switch {
	case v == 0:
		says = "Without a booster " + says + "."
	case enough:
		says = "Without any booster " + says + ": the pump would have nothing to do."
	default:
		says = "The booster is wanted: without it " + says + "."
	}
	o.Says = []string{says}
	return o
}

// boostBy adds the margin by a booster where the street is short, and spends
// it on something else where it is to spare.
func boostBy(w problems.World, v float64) problems.Outcome {
	top, least, by := w.Building.Top(), w.Pressure("least"), unit.Pressure(v)
	where := "the shower on " + w.Level(top)
	_, at := topAtPeak(w, 0)
	if w.Enough(at, least) {
		says, kept := w.Left(where, "at the peak of the day", at-by, least)
		o := problems.Outcome{Kept: kept, Marks: []problems.Mark{w.Mark(top, problems.AtHighest, at-by, kept)}}
		o.Says = []string{"With " + w.Press(by) + " spent on a filter or a longer run, " + says + "."}
		if w.Spare(at-by, least) {
			o.Kept = false
			o.Says = append(o.Says, "Of what the street has to spare, "+w.Press(at-by-least)+" would lie unused.")
		}
		return o
	}
	b, at := topAtPeak(w, by)
	return boosted(w, b, at, "With a booster that adds "+w.Press(by))
}

// boosted says what the top shower has at the peak, at, of what is to be left
// there.
func boosted(w problems.World, b *solver.Building, at unit.Pressure, lead string) problems.Outcome {
	top, least := b.Top(), w.Pressure("least")
	says, kept := w.Left("the shower on "+w.Level(top), "at the peak of the day", at, least)
	o := problems.Outcome{Kept: kept, Building: b, Marks: []problems.Mark{w.Mark(top, problems.AtHighest, at, kept)}}
	o.Says = []string{lead + ", " + says + "."}
	if w.Spare(at, least) {
		o.Kept = false
		o.Says = append(o.Says, "That is "+w.Press(at-least)+" more than is asked, paid for day and night.")
	}
	return o
}
