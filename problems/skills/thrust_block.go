package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var thrustBlockSkill = problems.Skill{
	ID: "thrust-block", Title: "Size of a thrust block",
	Chapter: 8, Order: 70, Year: 4, Kind: problems.Sum,
	Ask: "A bend in the {size} water service is held by a concrete block against the soil. The table gives {table_thrust} for this bend at {table_pressure}. The service works at {working} and is tested at {test}. The soil, {soil_kind}, bears {soil} sideways, and the sum is made safe by a factor of {factor}. How much area must the block press on?",
	Givens: []problems.Given{
		{Name: "table_thrust", Says: "push in the table", Measure: &measure.Force},
		{Name: "table_pressure", Says: "pressure that the table holds for", Measure: &measure.Pressure},
		{Name: "working", Says: "working pressure", Measure: &measure.Pressure},
		{Name: "test", Says: "test pressure", Measure: &measure.Pressure},
		{Name: "soil", Says: "what the soil bears sideways", Measure: &measure.Bearing},
		{Name: "factor", Says: "safety factor", Measure: &measure.Share},
	},
	Rules: []problems.Rule{
		{
			Name: "thrust", Says: "push in the test", Measure: &measure.Force,
			Formula: "table_thrust x test / table_pressure",
			Why:     "The push grows with the pressure. The table holds for one pressure, the test is at another.",
			Slips: []problems.Slip{
				{
					ID: "table-not-scaled", Formula: "table_thrust",
					Did:  "You took the table's figure as it stands.",
					Why:  "It holds for {table_pressure}. At {test} the push is greater.",
					Next: "Read the heading of the table: for which pressure?",
				},
				{
					ID: "working-for-test", Formula: "table_thrust x working / table_pressure",
					Did:  "You scaled to the working pressure, {working}.",
					Why:  "The block is there for the highest pressure the pipe will see, and that is the test at {test}.",
					Next: "Ask for the highest pressure that this bend will ever carry.",
				},
				{
					ID: "scaled-backwards", Formula: "table_thrust x table_pressure / test",
					Did:  "You scaled the table's figure the wrong way.",
					Why:  "A higher pressure pushes harder. Your line makes it softer.",
					Next: "Say first whether the new push must be larger or smaller.",
				},
			},
		},
		{
			Name: "design", Says: "push with the safety factor", Measure: &measure.Force,
			Formula: "thrust x factor",
			Why:     "Soil is never as even as its table. The factor is there for the soft spot.",
			Slips: []problems.Slip{
				{
					ID: "factor-left-out", Formula: "thrust",
					Did:  "You left the safety factor out.",
					Why:  "Then the block holds only if the soil is as good as its table everywhere.",
					Next: "Tick off every given. {factor} must be used once.",
				},
				{
					ID: "divided-by-factor", Formula: "thrust / factor",
					Did:  "You divided by the safety factor.",
					Why:  "That makes the block smaller than with no safety at all.",
					Next: "Safety makes loads larger or strengths smaller.",
				},
			},
		},
		{
			Name: "bearing_area", Says: "area of the block against the soil", Measure: &measure.BlockArea,
			Formula: "design / soil",
			Why:     "Each square foot or metre of soil holds so much. The push is spread over as many as it needs.",
			Slips: []problems.Slip{{
				ID: "upside-down", Formula: "soil / design",
				Did:  "You divided the soil's bearing by the push.",
				Why:  "A harder push needs a larger block. In your line it gets a smaller one.",
				Next: "Softer soil, larger block: the soil belongs below.",
			}},
		},
	},
	Holds: "A thrust block spreads the push of a fitting over enough soil that has never been dug. Area is push times safety factor over what the soil bears. The block sits behind the fitting, in line with the push, and leaves the bolts and joints free. In muck or peat nothing holds: there the joints are restrained instead.",
	Cautions: append([]string{
		"Only undisturbed soil counts. A later trench behind the block takes its hold away.",
	}, thrustCautions...),
	Sources: []problems.Source{
		{Says: "Block of 3.62 ft² at 200 psi, 1,500 lb/ft² and a factor of 1.5, table for 100 psi: NFPA 24, Table A-8-6.2, in a city's calculation", Confidence: solver.Confirmed},
		{Says: "Soft clay 1,000, sand 2,000, sand and gravel 3,000, with clay 4,000 lb/ft²: handbook of a pipe maker", Confidence: solver.Confirmed},
	},
	Draw: drawThrustBlock,
	Solve: func(w problems.World) float64 {
		thrust := w.SI("table_thrust") * w.SI("test") / w.SI("table_pressure")
		return solver.BlockArea(thrust, w.SI("factor"), w.Pressure("soil"))
	},
}

func init() { add(&thrustBlockSkill) }

// soils are what soil bears sideways under 2 ft of cover, psf and kPa.
var soils = []struct {
	says   string
	us, si float64
}{{"soft clay", 1000, 50}, {"sand", 2000, 95}, {"sand and gravel", 3000, 145}, {"sand and gravel bound with clay", 4000, 190}}

func drawThrustBlock(s *building.Sheet) {
	ironService(s)
	at := s.Pick([]float64{100}, []float64{700})
	angle := s.Pick([]float64{90, 45, 22.5}, []float64{90, 45, 22.5})
	outside := unit.Length(s.Get("outside")) * unit.Inch
	if !s.US() {
		outside = unit.Length(s.Get("outside")) * unit.Metre / 1000
	}
	thrust := solver.BendThrust(s.Press(at), outside, angle)
	soil, _ := pick(s, soils)
	s.Name("soil_kind", soil.says)
	s.Set("table_pressure", at)
	if s.US() {
		s.Set("table_thrust", math.Round(measure.Force.Unit(s.System).FromSI(thrust)))
	} else {
		s.Set("table_thrust", math.Round(measure.Force.Unit(s.System).FromSI(thrust)*10)/10)
	}
	s.Set("soil", s.Pick([]float64{soil.us}, []float64{soil.si}))
	s.Set("factor", s.Pick([]float64{1.5, 2, 1.25}, []float64{1.5, 2, 1.25}))
}
