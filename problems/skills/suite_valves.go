package skills

import (
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var suiteValvesSkill = problems.Skill{
	ID: "suite-valves", Title: "Valves in the suites",
	Chapter: 5, Order: 110, Year: 3, Kind: problems.Sum,
	Ask: "A riser has no zone valve. The gauge on the pump discharge stands {depth} below the floor of level 1 and reads {discharge} with no flow. Level 1 is {ground} high, every floor above it {floor_height}. The limit at a fixture is {limit} ({code}: {limit_says}). On how many storeys, counted from level 1, does the lowest outlet stand above the limit, so that the suites need valves of their own?",
	Givens: []problems.Given{
		{Name: "discharge", Says: "gauge on the pump discharge, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "limit", Says: "most static pressure at a fixture", Measure: &measure.Pressure},
		{Name: "depth", Says: "depth of the gauge below the floor of level 1", Measure: &measure.Height},
		{Name: "outlet", Says: "height of the lowest outlet above its floor", Measure: &measure.Height},
		{Name: "ground", Says: "floor to floor height of level 1", Measure: &measure.Height},
		{Name: "floor_height", Says: "floor to floor height of the levels above", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "over", Says: "pressure to lose before the limit is met", Measure: &measure.Pressure,
			Formula: "discharge - limit",
			Why:     "Climbing takes pressure away. What is over the limit at the gauge has to be used up by height.",
			Slips: []problems.Slip{{
				ID: "whole-pressure", Formula: "discharge",
				Did:  "You used all of {discharge}, down to zero.",
				Why:  "The suites are safe as soon as {limit} is left. Above that level no valve is needed, though there is still plenty of pressure.",
				Next: "Ask where the pressure has come down to the limit, not where it ends.",
			}},
		},
		{
			Name: "height", Says: "height above the gauge where the limit is met", Measure: &measure.Height,
			Formula: "over / gamma",
			Why:     "Every foot or metre of climb takes the same pressure, so the pressure to lose divided by it is the height.",
			Slips: []problems.Slip{{
				ID: "multiplied", Formula: "over x gamma",
				Did:  "You multiplied {over} by {gamma}.",
				Why:  "Multiplying turns a height into a pressure. Here the pressure is known and the height is wanted, so divide.",
				Next: "The feet are more than twice the psi; the metres are about a tenth of the kPa.",
			}},
		},
		{
			Name: "over_ground", Says: "highest floor, above level 1, whose lowest outlet is at the limit", Measure: &measure.Height,
			Formula: "height - depth - outlet",
			Why:     "The height counts from the gauge and ends at the outlet. The gauge lies below level 1 and the outlet stands above its floor, so both come off.",
			Slips: []problems.Slip{
				{
					ID: "depth-left-out", Formula: "height - outlet",
					Did:  "You counted the height from level 1, and the gauge stands {depth} below it.",
					Why:  "Part of the climb is spent before the water comes to level 1. Left out, it gives valves to floors that need none.",
					Next: "Begin every height at the gauge that was read.",
				},
				{
					ID: "depth-added", Formula: "height + depth - outlet",
					Did:  "You added {depth} to the height.",
					Why:  "The water climbs {depth} before it passes level 1, so less of the height is left above that floor, not more.",
					Next: "Sketch the gauge, level 1 and the end of the height; the piece above level 1 is the shorter one.",
				},
			},
		},
		{
			Name: "above_second", Says: "of that, above the floor of level 2", Measure: &measure.Height,
			Formula: "over_ground - ground",
			Why:     "Level 1 is taller than the rest, so it is taken off by itself. The rest is floors of one height.",
			Slips: []problems.Slip{{
				ID: "ground-as-typical", Formula: "over_ground - floor_height",
				Did:  "You took level 1 to be {floor_height} high like the others.",
				Why:  "The entrance floor is {ground} high. Taken too low, it moves every floor above it down.",
				Next: "Look at the section of the building first: ground floors are tall.",
			}},
		},
		{
			Name: "gaps", Says: "whole floors in it", Measure: &measure.Count, Whole: true,
			Formula: "rounddown(above_second / floor_height)",
			Why:     "The pressure falls as one climbs. The last floor still above the limit is the last whole one in this height; a floor higher is already below the limit.",
			Slips: []problems.Slip{{
				ID: "rounded-up", Formula: "roundup(above_second / floor_height)",
				Did:  "You rounded up to {got}.",
				Why:  "The next floor lies higher than the point where the limit is met. Its outlets are within the limit already.",
				Next: "Work out the pressure on the floor you end at and on the one above: the limit lies between.",
			}},
		},
		{
			Name: "storeys", Says: "storeys whose suites need valves", Measure: &measure.Count, Whole: true,
			Formula: "gaps + 2",
			Why:     "Level 1 and level 2 are below the height that was divided into floors. Both are over the limit too.",
			Would:   valvesInSuites,
			Slips: []problems.Slip{
				{
					ID: "gaps-for-storeys", Formula: "gaps",
					Did:  "You gave {gaps}, the floors above level 2, as all of them.",
					Why:  "Levels 1 and 2 lie lower still and have more pressure. They need the valves most.",
					Next: "Name the levels one by one from the bottom up to the last one over the limit.",
				},
				{
					ID: "one-storey-short", Formula: "gaps + 1",
					Did:  "You added one storey to {gaps}.",
					Why:  "The {gaps} are floors above the floor of level 2. Level 2 itself and level 1 are two more.",
					Next: "Try it with none above: then levels 1 and 2 are over the limit, which is two storeys.",
				},
			},
		},
	},
	Holds:    "Standing water has most pressure at the bottom and loses the same with every foot or metre up. So there is one height where it passes the limit. Every fixture below it needs a reducing valve, one for the zone or one in each suite.",
	Cautions: []string{relieveFirst, "A reducing valve shuts the suite off from the riser: warmed water must have room, and the valve must stay where it can be reached and serviced."},
	Sources:  []problems.Source{waterColumn, zoneLimitsBy},
	Draw:     drawSuiteValves,
	Solve: func(w problems.World) float64 {
		return float64(solver.StoreysOver(w.Building, w.Pressure("limit"), w.Gamma()))
	},
}

func init() { add(&suiteValvesSkill) }

// drawSuiteValves draws a pumped tower in which the limit is met in the middle
// of a floor.
func drawSuiteValves(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: []solver.Use{solver.Apartment, solver.Residence, solver.MixedUse}, Min: 12, Max: 28, Cellar: true})
	depth := tape(s, t.Parking.Value*float64(t.Below)-s.UpValve())
	low := lift(s, t, -depth)
	type aim struct{ discharge, floors float64 }
	var fit []aim
	for _, d := range upTo(low, low+10*gaugeStep(s), gaugeStep(s)) {
		up := (d/onPlate(s, 1) - s.Most()) / head(s, 1)
		floors := (up - depth - s.Closet() - t.Ground.Value) / t.Floor.Value
		if f := building.Fraction(floors, 1); floors > 1 && floors < float64(t.Storeys-3) && f > 0.33 && f < 0.67 {
			fit = append(fit, aim{d, floors})
		}
	}
	c, ok := pick(s, fit)
	if !ok {
		c = aim{low, 0}
	}
	pumpRoom(s, -depth, c.discharge)
	t.Zones = []solver.Zone{{Name: "1", Bottom: 0, Top: t.Top(), Supply: solver.FromBooster}}
	s.Focus = t.Storey(min(t.Storeys, int(c.floors)+2))
	s.Name("code", s.Profile.Name)
	s.Name("limit_says", s.Profile.StaticMax.Words)
	s.Set("discharge", c.discharge)
	s.Set("limit", s.Most())
	s.Set("depth", depth)
	s.Set("outlet", s.Closet())
	s.SetHeight("ground", t.Ground)
	s.SetHeight("floor_height", t.Floor)
}

// valvesInSuites gives valves to so many storeys from level 1 up, and looks at
// the last that gets one and the first that gets none.
func valvesInSuites(w problems.World, v float64) problems.Outcome {
	b, n, limit := w.Building, int(v), w.Pressure("limit")
	o := problems.Outcome{Kept: true}
	if n > b.Storeys() {
		o.Kept = false
		o.Says = append(o.Says, "The building has "+strconv.Itoa(b.Storeys())+" storeys, not "+strconv.Itoa(n)+".")
		n = b.Storeys()
	}
	if n < b.Storeys() {
		i := b.Storey(n + 1)
		p := b.At(i, b.Lowest(i), w.Gamma())
		says, kept := w.Stands("the lowest outlet on "+w.Level(i)+", the first without a valve,", p, limit)
		o.Kept = o.Kept && kept
		o.Says = append(o.Says, problems.Sentence(says)+".")
		o.Marks = append(o.Marks, w.Mark(i, problems.AtLowest, p, kept))
	}
	if n >= 1 {
		i := b.Storey(n)
		p := b.At(i, b.Lowest(i), w.Gamma())
		wanted := !w.Within(p, limit)
		o.Kept = o.Kept && wanted
		if wanted {
			o.Says = append(o.Says, "On "+w.Level(i)+", the last with one, "+w.Press(p)+" stands before the valve: it is wanted there.")
		} else {
			o.Says = append(o.Says, "On "+w.Level(i)+", the last with one, only "+w.Press(p)+" stands before the valve: it would have nothing to do.")
		}
		o.Marks = append(o.Marks, w.Mark(i, problems.AtLowest, p, wanted))
	}
	return o
}
