package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var thrustSkill = problems.Skill{
	ID: "thrust", Title: "Push on a bend",
	Chapter: 8, Order: 50, Year: 4, Kind: problems.Sum,
	Ask: "The water service is {size} iron pipe, {outside} outside. At the wall it turns by {angle}. It works at {working} and is tested at {test}. How hard does the bend push outward in the test?",
	Givens: []problems.Given{
		{Name: "nominal", Says: "nominal size of the pipe", Measure: &measure.Bore},
		{Name: "outside", Says: "outside diameter of the pipe", Measure: &measure.Bore},
		{Name: "angle", Says: "angle of the bend", Measure: &measure.Angle},
		{Name: "working", Says: "working pressure", Measure: &measure.Pressure},
		{Name: "test", Says: "test pressure", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		outsideArea, axialPush,
		{
			Name: "thrust", Says: "push on the bend", Measure: &measure.Force,
			Formula: "2 x push x sin(angle / 2)",
			Why:     "The water pushes along both legs. At a bend the two pushes do not cancel: what is left points outward, through the middle of the bend.",
			Slips: []problems.Slip{
				{
					ID: "one-leg-only", Formula: "push x sin(angle / 2)",
					Did:  "You counted the push of one leg.",
					Why:  "The bend has two openings, and the water pushes on both.",
					Next: "A right-angle bend must give more than a dead end of the same pipe, about 1.4 times.",
				},
				{
					ID: "angle-not-halved", Formula: "2 x push x sin(angle)",
					Did:  "You took the sine of the whole angle, {angle}.",
					Why:  "The outward push lies in the middle between the two legs, so each leg makes half the angle with it.",
					Next: "Twice the push of a dead end is the most any bend can give, and only one that turns right back gives it.",
				},
				{
					ID: "dead-end-for-bend", Formula: "push",
					Did:  "You gave the push of a dead end.",
					Why:  "At a dead end the whole push is left over. At a bend it depends on the angle: {angle} gives another figure.",
					Next: "Does the angle stand anywhere in your line? It must.",
				},
			},
		},
	},
	Holds:    "Water under pressure pushes at every change of direction, running or not. In a straight pipe the pushes cancel. At a bend the two legs leave a push outward, 2 P A sin(angle / 2); at a dead end or a closed valve P A. The area goes by the outside diameter, because water gets into the joint, and the pressure is that of the test, the highest the pipe will see.",
	Cautions: thrustCautions,
	Sources: []problems.Source{
		{Says: "Push at bends and dead ends of iron pipe for each 100 psi, 4 in and most of 6 in: NFPA 24, Table A-8-6.2, quoted in a city's calculation", Confidence: solver.Confirmed},
		{Says: "The larger sizes of the same table", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		ironService(s)
		s.Set("angle", s.Pick([]float64{90, 45, 22.5}, []float64{90, 45, 22.5}))
	},
	Solve: func(w problems.World) float64 {
		return solver.BendThrust(w.Pressure("test"), w.Length("outside"), w.SI("angle"))
	},
}

func init() { add(&thrustSkill) }

var thrustCautions = []string{
	"Rods and blocks are made for the test pressure, and the block must have set before the test. Never stand in line with a plug, cap or bend under test.",
	"A trench is shored before anyone steps in.",
	forcesStudy,
}

// outsideArea is the area that water at pressure presses on at a joint.
var outsideArea = problems.Rule{
	Name: "area", Says: "area by the outside diameter", Measure: &measure.CrossArea,
	Formula: "pi x outside^2 / 4",
	Why:     "Water gets past the end of the pipe into the joint and presses on the pipe's whole end, wall included.",
	Slips: []problems.Slip{
		{
			ID: "nominal-for-outside", Formula: "pi x nominal^2 / 4",
			Did:  "You put in the nominal size, {nominal}.",
			Why:  "The nominal size is a name. Iron pipe is larger outside, {outside}, and the push is larger with it.",
			Next: "For flow take the bore, for thrust the outside. The name of the size is good for neither.",
		},
		{
			ID: "diameter-for-radius", Formula: "pi x outside^2",
			Did:  "You squared the diameter and did not divide by 4.",
			Why:  "Pi times the square is for the radius. With the diameter it gives four times the area.",
			Next: "A circle covers a bit more than three quarters of the square around it.",
		},
	},
}

// axialPush is the push along a pipe at test pressure.
var axialPush = problems.Rule{
	Name: "push", Says: "push along the pipe", Measure: &measure.Force,
	Formula: "test x area", Metric: "test x area / square_mm",
	Why: "Pressure is force for each bit of area. The test is the highest pressure the joint will see.",
	Slips: []problems.Slip{{
		ID: "working-for-test", Formula: "working x area", Metric: "working x area / square_mm",
		Did:  "You took the working pressure, {working}.",
		Why:  "The pipe is tested at {test}, and that is the day the joint comes apart if it was held for less.",
		Next: "Ask for the highest pressure that this joint will ever carry.",
	}},
}

// ironPipe is a size of ductile iron pipe: outside diameters by the thrust
// table of NFPA 24, confirmed to 6 in; DN by ISO 6708, from memory.
type ironPipe struct{ inches, dn, outside float64 }

var ironPipes = []ironPipe{{4, 100, 4.80}, {6, 150, 6.90}, {8, 200, 9.05}, {10, 250, 11.10}, {12, 300, 13.20}}

// ironService draws a tower and its iron water service with a test pressure
// and a working one.
func ironService(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 4, Max: 20})
	p, _ := pick(s, ironPipes[:4])
	nominal, outside, size := p.inches, p.outside, measure.Bore.Unit("us").Of(p.inches).Text(3)
	if !s.US() {
		nominal, outside = p.dn, math.Round(p.outside*25.4)
		if s.System == unit.Metric {
			size = "DN\u00a0" + measure.Count.Unit(s.System).Of(p.dn).Text(3)
		} else {
			nominal = math.Round(p.inches * 25.4)
		}
	}
	s.Name("size", size)
	s.Set("nominal", nominal)
	s.Set("outside", outside)
	s.Set("test", s.Pick([]float64{150, 175, 200}, []float64{1000, 1200, 1400}))
	s.Set("working", s.Pick([]float64{60, 75, 90, 110}, []float64{400, 500, 600, 750}))
}
