package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

const fastWater = "Water that runs too fast wears copper thin at elbows and tees, makes noise, and hits hard when a valve shuts. Small pipe and quiet rooms take less than the limit; for plastic ask its maker."

var pipeVelocitySkill = problems.Skill{
	ID: "pipe-velocity", Title: "How fast the water runs",
	Chapter: 3, Order: 130, Year: 2, Kind: problems.Sum,
	Ask: "{flow} of {water} run through {size} copper tube, type {tube_type}. Its bore is {bore} (nominal {nominal}). The limit for {water} is {limit}, for {other_water} {other_limit}. How fast does the water run, and does the tube pass?",
	Givens: []problems.Given{
		{Name: "flow", Says: "flow", Measure: &measure.FlowRate},
		{Name: "bore", Says: "inside diameter of the tube", Measure: &measure.Bore},
		{Name: "nominal", Says: "nominal size of the tube", Measure: &measure.Bore},
		{Name: "limit", Says: "highest speed of {water}", Measure: &measure.Velocity},
		{Name: "other_limit", Says: "highest speed of {other_water}", Measure: &measure.Velocity},
	},
	Rules: []problems.Rule{
		{
			Name: "velocity", Says: "speed of the water", Measure: &measure.Velocity, Table: "copper-tube", Row: "nominal",
			Formula: "velocity_factor x flow / bore^2",
			Why:     "The same flow through a smaller opening must run faster, and the opening goes with the square of the bore.",
			Slips: []problems.Slip{
				{
					ID: "nominal-for-bore", Formula: "velocity_factor x flow / nominal^2",
					Did:  "You put in the nominal size, {nominal}.",
					Why:  "The nominal size is a name. The water runs in the bore, {bore}.",
					Next: "Take the inside diameter from the table of the tube, for its type.",
				},
				{
					ID: "not-squared", Formula: "velocity_factor x flow / bore",
					Did:  "You divided by the bore and did not square it.",
					Why:  "The opening is an area. Half the bore is a quarter of the opening.",
					Next: "Try twice the bore in your formula: the water must run at a quarter of the speed.",
				},
				{
					ID: "radius-for-bore", Formula: "velocity_factor x flow / (bore / 2)^2",
					Did:  "You put in half the bore, the radius.",
					Why:  "The figure {velocity_factor} is made for the diameter. With the radius the speed comes out four times too high.",
					Next: "Supply pipe runs at 2 to 8 ft/s (0.6 to 2.4 m/s). Far more is a sign.",
				},
			},
		},
		{
			Name: "too_fast", Says: "is that too fast for {water}?", Measure: &measure.Answer, Table: "velocity",
			Formula: "velocity > limit", Choices: []string{"no", "yes"},
			Why: "The limit is for the water in this pipe: hot water wears copper sooner, and the hotter the sooner.",
			Slips: []problems.Slip{{
				ID: "limit-of-the-other-water", Formula: "velocity > other_limit",
				Did:  "You held it against {other_limit}, the limit for {other_water}.",
				Why:  "This is {water}: {limit}.",
				Next: "Read the letters on the line, CW or HW and its temperature, before you take a limit.",
			}},
		},
	},
	Holds: "What flows in a minute is the opening times the speed. So speed is flow over area. In gpm, inches and ft/s that is 0.408 Q/d²; in L/s, mm and m/s it is 1273 Q/d².",
	Cautions: []string{
		fastWater,
	},
	Sources: []problems.Source{
		speedSource, tubeSource,
		{Says: "v = 0.408 Q / d²: continuity in US units", Confidence: solver.Memory},
		{Says: "Chicago 18-29-604.10.1.2: no more than 8 ft/s", Confidence: solver.Confirmed},
		{Says: "Canada: as the maker of the pipe says. Ontario Building Code (2012), 7.6.3.5.", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		suppliedTower(s, building.Plan{Min: 3, Max: 12})
		right, other := drawWater(s)
		low, high := math.Min(right, other), math.Max(right, other)
		t := drawTube(s, 1.04*low, 0.96*high)
		s.Set("flow", t.flow)
	},
	Solve: func(w problems.World) float64 {
		v := solver.PipeVelocity(w.Flow("flow"), w.Length("bore"), w.SI("velocity_factor"))
		if v > unit.Velocity(w.SI("limit")) {
			return 1
		}
		return 0
	},
}

func init() { add(&pipeVelocitySkill) }

// drawWater draws two waters, tells the limits of both and returns them: that
// of the water in the pipe, and the other.
func drawWater(s *building.Sheet) (right, other float64) { return tellWater(s, s.Int(0, 2)) }

// tellWater is drawWater for a given water in the pipe.
func tellWater(s *building.Sheet, a int) (right, other float64) {
	b := (a + s.Int(1, 2)) % 3
	water := solver.VelocityLimits
	right, other = water[a].In(s.System), water[b].In(s.System)
	s.Name("water", water[a].Water)
	s.Name("other_water", water[b].Water)
	s.Set("limit", right)
	s.Set("other_limit", other)
	return right, other
}

var pipeCapacitySkill = problems.Skill{
	ID: "pipe-capacity", Title: "What a pipe may carry",
	Chapter: 3, Order: 140, Year: 2, Kind: problems.Sum,
	Ask: "A branch of {size} copper tube, type {tube_type}, carries {water} to a row of {outlet_name}. Its bore is {bore} (nominal {nominal}). The limit for {water} is {limit}, for {other_water} {other_limit}. Each {one_outlet} takes {each}. How many may run at once?",
	Givens: []problems.Given{
		{Name: "bore", Says: "inside diameter of the tube", Measure: &measure.Bore},
		{Name: "nominal", Says: "nominal size of the tube", Measure: &measure.Bore},
		{Name: "limit", Says: "highest speed of {water}", Measure: &measure.Velocity},
		{Name: "other_limit", Says: "highest speed of {other_water}", Measure: &measure.Velocity},
		{Name: "each", Says: "flow of one {one_outlet}", Measure: &measure.FlowRate},
	},
	Rules: []problems.Rule{
		{
			Name: "capacity", Says: "flow of the tube at the limit", Measure: &measure.FlowRate, Table: "copper-tube", Row: "nominal",
			Formula: "limit x bore^2 / velocity_factor",
			Why:     "Opening times speed is flow; the figure holds the units together.",
			Slips: []problems.Slip{
				{
					ID: "nominal-for-bore", Formula: "limit x nominal^2 / velocity_factor",
					Did:  "You put in the nominal size, {nominal}.",
					Why:  "The water runs in the bore, {bore}. The nominal size is a name.",
					Next: "Take the inside diameter from the table of the tube, for its type.",
				},
				{
					ID: "not-squared", Formula: "limit x bore / velocity_factor",
					Did:  "You did not square the bore.",
					Why:  "The opening is an area. Twice the bore carries four times the flow at the same speed.",
					Next: "Check with twice the bore: from 1 in to 2 in the flow grows fourfold.",
				},
				{
					ID: "limit-of-the-other-water", Formula: "other_limit x bore^2 / velocity_factor",
					Did:  "You took {other_limit}, the limit for {other_water}.",
					Why:  "This branch carries {water}: {limit}.",
					Next: "Read the letters on the line before you take a limit.",
				},
			},
		},
		{
			Name: "outlets", Says: "how many may run at once", Measure: &measure.Count, Whole: true,
			Formula: "rounddown(capacity / each)",
			Why:     "Only whole ones run. One more would push the water over the limit.",
			Slips: []problems.Slip{{
				ID: "rounded-up", Formula: "roundup(capacity / each)",
				Did:  "You rounded up to {got}.",
				Why:  "With {got} running the water is faster than the limit.",
				Next: "For what a pipe may carry, what is over a whole number is spare.",
			}},
		},
	},
	Holds: "At a given speed a pipe carries what its opening lets through, and the opening goes with the square of the bore. Pipe of 2 in and more is mostly held by the speed limit, smaller pipe by friction.",
	Cautions: []string{
		fastWater, scald,
	},
	Sources: []problems.Source{
		speedSource, tubeSource,
		{Says: "Hose 5 gpm (19 L/min), commercial dishwasher 1.5 to 7 gpm, hot share of a shower: common practice, no source", Confidence: solver.Practice},
	},
	Draw: drawCapacity,
	Solve: func(w problems.World) float64 {
		q := solver.PipeFlow(unit.Velocity(w.SI("limit")), w.Length("bore"), w.SI("velocity_factor"))
		return math.Floor(float64(q / w.Flow("each")))
	},
}

func init() { add(&pipeCapacitySkill) }

// outletRow is a row of like outlets, with what each takes.
type outletRow struct {
	many, one string
	us, si    []float64
}

// capacityRows are outlets of cold water, of hot, and of the hottest, in the order of
// the velocity limits. Common practice, no source.
var capacityRows = [3]outletRow{
	{"wash-down hoses", "hose", []float64{4, 5, 6}, []float64{0.25, 0.3, 0.4}},
	{"shower valves", "shower valve", []float64{1, 1.25, 1.5}, []float64{0.06, 0.08, 0.09}},
	{"commercial dishwashers", "dishwasher", []float64{4, 5, 6, 7}, []float64{0.25, 0.3, 0.4}},
}

func drawCapacity(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 12})
	water := s.Int(0, 2)
	row := capacityRows[water]
	right, _ := tellWater(s, water)
	each := s.Pick(row.us, row.si)
	of, _ := pick(s, []solver.TubeType{solver.TypeK, solver.TypeL, solver.TypeL, solver.TypeM})
	var fit []pipeSize
	for _, p := range tubeSizes(s, of) {
		n := right / speedOf(s, each, p.bore)
		if part := building.Fraction(n, 1); n > 2 && n < 40 && part > 0.2 && part < 0.8 && n*0.012 < math.Min(part, 1-part) {
			fit = append(fit, p)
		}
	}
	p, _ := pick(s, fit)
	s.Name("outlet_name", row.many)
	s.Name("one_outlet", row.one)
	s.Name("tube_type", string(rune(of)))
	s.Name("size", p.words)
	s.Set("bore", p.bore)
	s.Set("nominal", p.nominal)
	s.Set("each", each)
}
