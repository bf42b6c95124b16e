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

var chooseSizeSkill = problems.Skill{
	ID: "choose-size", Title: "Choosing the size",
	Chapter: 3, Order: 150, Year: 3, Kind: problems.Choice,
	Ask: "A pipe carries {flow} of {water}. Friction may be {allowed}, and the water no faster than {limit} ({other_limit} for {other_water}). Three sizes of copper tube, type L, are at hand. A: {size_a}, bore {bore_a}, friction at this flow {loss_a}. B: {size_b}, bore {bore_b}, {loss_b}. C: {size_c}, bore {bore_c}, {loss_c}. C passes both tests, and the code's smallest size for this pipe is below A. Which is the smallest size that will do?",
	Givens: append([]problems.Given{
		{Name: "flow", Says: "flow", Measure: &measure.FlowRate},
		{Name: "allowed", Says: "friction that the pipe may have", Measure: &measure.Friction},
		{Name: "limit", Says: "highest speed of {water}", Measure: &measure.Velocity},
		{Name: "other_limit", Says: "highest speed of {other_water}", Measure: &measure.Velocity},
	}, append(append(sizeGivens("a"), sizeGivens("b")...), sizeGivens("c")...)...),
	Rules: []problems.Rule{
		speedRule("a"), speedRule("b"),
		{
			Name: "by_friction", Says: "smallest size by friction", Measure: &measure.Answer,
			Formula: "(loss_a > allowed) + (loss_b > allowed)", Choices: sizeChoices,
			Why: "Go up the list until the friction is no more than allowed.",
		},
		{
			Name: "by_speed", Says: "smallest size by speed", Measure: &measure.Answer,
			Formula: "(velocity_a > limit) + (velocity_b > limit)", Choices: sizeChoices,
			Why: "Go up the list until the water is no faster than the limit.",
			Slips: []problems.Slip{{
				ID:      "limit-of-the-other-water",
				Formula: "(velocity_a > other_limit) + (velocity_b > other_limit)",
				Did:     "You held the speeds against {other_limit}, the limit for {other_water}.",
				Why:     "This pipe carries {water}: {limit}.",
				Next:    "Read the letters on the line, CW or HW and its temperature, before you take a limit.",
			}},
		},
		{
			Name: "size", Says: "the size to use", Measure: &measure.Answer,
			Formula: "max(by_friction, by_speed)", Choices: sizeChoices,
			Why:   "The size must pass both tests, so the larger of the two answers stands.",
			Would: laySize,
			Slips: []problems.Slip{{
				ID: "one-test-only", Formula: "min(by_friction, by_speed)",
				Did:  "You chose {got}, which passes only one of the two tests.",
				Why:  "Enough pressure at the end does not mean the water runs slowly enough, nor the other way round.",
				Next: "Two columns, friction and speed. A size is good when both have a tick.",
			}},
		},
	},
	Holds: "A size must pass three tests: its friction fits the budget, its water is no faster than the limit, and it is not below the code's smallest size. The smallest size that passes all is used, and it is always rounded up. Small pipe mostly fails on friction, pipe of 2 in and more on speed.",
	Cautions: []string{
		fastWater, leadFree, sizingStudy,
	},
	Sources: []problems.Source{
		speedSource, tubeSource,
		{Says: "Friction at C 140 by Hazen-Williams", Confidence: solver.Memory},
	},
	Draw:  drawChooseSize,
	Solve: solveChooseSize,
}

func init() { add(&chooseSizeSkill) }

var sizeChoices = []string{"size A", "size B", "size C"}

func sizeGivens(x string) []problems.Given {
	big := letter(x)
	return []problems.Given{
		{Name: "bore_" + x, Says: "bore of size " + big, Measure: &measure.Bore},
		{Name: "nominal_" + x, Says: "nominal size of " + big, Measure: &measure.Bore},
		{Name: "loss_" + x, Says: "friction of size " + big + " at this flow", Measure: &measure.Friction},
	}
}

// speedRule is the speed in size x with its slip.
func speedRule(x string) problems.Rule {
	of := func(format string) string { return fmt.Sprintf(format, x) }
	return problems.Rule{
		Name: "velocity_" + x, Says: "speed of the water in size " + letter(x), Measure: &measure.Velocity,
		Formula: of("velocity_factor x flow / bore_%s^2"),
		Why:     "Speed is flow over the opening, and the opening goes with the square of the bore.",
		Slips: []problems.Slip{{
			ID: "nominal-for-bore-" + x, Family: "nominal-for-bore", Formula: of("velocity_factor x flow / nominal_%s^2"),
			Did:  of("You put in the nominal size, {nominal_%s}."),
			Why:  of("The nominal size is a name. The water runs in the bore, {bore_%s}."),
			Next: "Take the inside diameter from the table of the tube, for its type.",
		}},
	}
}

// trial is a size with its speed and friction at a flow.
type trial struct {
	pipeSize
	speed, loss float64
}

// threeSizes is three sizes in a row at one flow, with the friction allowed.
type threeSizes struct {
	sizes         [3]trial
	flow, allowed float64
}

func drawChooseSize(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 15})
	limit, other := drawWater(s)
	var bySpeed, byFriction []threeSizes
	for _, d := range threes(s) {
		v, clearV := failing(d.sizes, limit, speedIn)
		o, clearO := failing(d.sizes, other, speedIn)
		f, clearF := failing(d.sizes, d.allowed, lossIn)
		passes := d.sizes[2].speed <= 0.97*limit && d.sizes[2].loss <= 0.97*d.allowed
		if !passes || !clearV || !clearO || !clearF || o == v || v == f {
			continue
		}
		if v > f {
			bySpeed = append(bySpeed, d)
		} else {
			byFriction = append(byFriction, d)
		}
	}
	fit := bySpeed
	if len(fit) == 0 || len(byFriction) > 0 && s.Chance(0.7) { // the hottest water leaves none
		fit = byFriction
	}
	d, _ := pick(s, fit)
	s.Set("flow", d.flow)
	s.Set("allowed", d.allowed)
	for i, t := range d.sizes {
		x := string(rune('a' + i))
		s.Name("size_"+x, t.words)
		s.Set("bore_"+x, t.bore)
		s.Set("nominal_"+x, t.nominal)
		s.Set("loss_"+x, t.loss)
	}
}

// threes lists flows, three sizes in a row, and frictions to allow.
func threes(s *building.Sheet) []threeSizes {
	const c = 140
	sizes := tubeSizes(s, solver.TypeL)
	places := s.Pick([]float64{10}, []float64{100})
	var out []threeSizes
	for _, flow := range drawFlows(s) {
		for i := 0; i+2 < len(sizes); i++ {
			d := threeSizes{flow: flow}
			for k := range d.sizes {
				p := sizes[i+k]
				loss := math.Round(frictionOf(s, flow, c, p.bore)*places) / places
				d.sizes[k] = trial{p, speedOf(s, flow, p.bore), loss}
			}
			if d.sizes[2].loss < 3/places {
				continue
			}
			for _, allowed := range lists(s, []float64{2, 3, 4, 5, 6, 8}, []float64{0.4, 0.6, 0.8, 1, 1.2, 1.6}) {
				d.allowed = allowed
				out = append(out, d)
			}
		}
	}
	return out
}

func speedIn(t trial) float64 { return t.speed }
func lossIn(t trial) float64  { return t.loss }

// failing counts which of A and B are over a limit; clear is false where one
// is so near it that rounding decides.
func failing(sizes [3]trial, limit float64, of func(trial) float64) (n int, clear bool) {
	clear = true
	for _, t := range sizes[:2] {
		if math.Abs(of(t)/limit-1) < 0.03 {
			clear = false
		}
		if of(t) > limit {
			n++
		}
	}
	return n, clear
}

func solveChooseSize(w problems.World) float64 {
	return float64(solver.SmallestPipe(trialsAtHand(w), unit.Gradient(w.SI("allowed")), unit.Velocity(w.SI("limit"))))
}

// trialsAtHand are the three sizes at the flow of the pipe.
func trialsAtHand(w problems.World) (list []solver.Trial) {
	for _, x := range []string{"a", "b", "c"} {
		list = append(list, solver.Trial{
			Loss:     unit.Gradient(w.SI("loss_" + x)),
			Velocity: solver.PipeVelocity(w.Flow("flow"), w.Length("bore_"+x), w.SI("velocity_factor")),
		})
	}
	return list
}

// laySize lays the pipe in one of the three sizes.
func laySize(w problems.World, v float64) problems.Outcome {
	list := trialsAtHand(w)
	t, right := list[int(v)], int(solveChooseSize(w))
	allowed, limit := w.SI("allowed"), w.SI("limit")
	speed := func(v float64) string { return w.Text(measure.Velocity, v) }
	friction := func(v float64) string { return w.Text(measure.Friction, v) }
	says := "In " + sizeChoices[int(v)] + " the water would run at " + speed(float64(t.Velocity)) + ", where " + speed(limit) + " is the most, and lose " + friction(float64(t.Loss)) + " of the " + friction(allowed) + " allowed."
	o := problems.Outcome{Kept: int(v) == right, Says: []string{says}}
	switch {
	case int(v) > right:
		o.Says = append(o.Says, "Both are kept, and in "+sizeChoices[right]+" as well: the larger pipe and its insulation are paid for nothing.")
	case float64(t.Velocity) > limit && float64(t.Loss) > allowed:
		o.Says = append(o.Says, "It would be noisy, wear at its bends, and leave too little at the end.")
	case float64(t.Velocity) > limit:
		o.Says = append(o.Says, "It would be noisy and wear at its bends.")
	case float64(t.Loss) > allowed:
		o.Says = append(o.Says, "Too little would be left at the end.")
	}
	return o
}
