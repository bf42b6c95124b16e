package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var hazenWilliamsSkill = problems.Skill{
	ID: "hazen-williams", Title: "Friction by Hazen-Williams",
	Chapter: 3, Order: 120, Year: 3, Kind: problems.Sum,
	Ask: "{flow} run through {length} of {size} copper tube, type {tube_type}. Its bore is {bore} (nominal {nominal}), and C is {c_factor}; for {rough_name} it would be {c_other}. The formula of Hazen and Williams is {form}. What pressure is lost in the run?",
	Givens: []problems.Given{
		{Name: "flow", Says: "flow", Measure: &measure.FlowRate},
		{Name: "length", Says: "length of the run, fittings included", Measure: &measure.PipeLength},
		{Name: "bore", Says: "inside diameter of the tube", Measure: &measure.Bore},
		{Name: "nominal", Says: "nominal size of the tube", Measure: &measure.Bore},
		{Name: "c_factor", Says: "C of copper tube", Measure: &measure.Share},
		{Name: "c_other", Says: "C of {rough_name}", Measure: &measure.Share},
	},
	Rules: []problems.Rule{
		{
			Name: "rate", Says: "friction of the tube at this flow", Measure: &measure.Friction, Table: "hazen-williams",
			Formula: "hazen x (flow / flow_base / c_factor)^1.852 / (bore / bore_base)^4.87",
			Metric:  "gamma x hazen x (flow / flow_base / c_factor)^1.852 / (bore / bore_base)^4.87",
			Why:     "Friction grows with nearly the square of the flow, and falls with nearly the fifth power of the bore. A high C is a smooth pipe.",
			Slips: []problems.Slip{
				{
					ID:      "nominal-for-bore",
					Formula: "hazen x (flow / flow_base / c_factor)^1.852 / (nominal / bore_base)^4.87",
					Metric:  "gamma x hazen x (flow / flow_base / c_factor)^1.852 / (nominal / bore_base)^4.87",
					Did:     "You put in the nominal size, {nominal}.",
					Why:     "The nominal size is a name. The water runs in the bore, {bore}, and the fifth power makes much of a small difference.",
					Next:    "Take the inside diameter from the table of the tube, for its type.",
				},
				{
					ID:      "other-c",
					Formula: "hazen x (flow / flow_base / c_other)^1.852 / (bore / bore_base)^4.87",
					Metric:  "gamma x hazen x (flow / flow_base / c_other)^1.852 / (bore / bore_base)^4.87",
					Did:     "You put in {c_other}, the C of {rough_name}.",
					Why:     "C says how smooth the wall is. This is copper tube, {c_factor}.",
					Next:    "Name the material before you take its C.",
				},
				{
					ID: "square-of-the-bore", Only: problems.OnlyUS,
					Formula: "hazen x (flow / flow_base / c_factor)^1.852 / (bore / bore_base)^2",
					Did:     "You put the square of the bore under the line.",
					Why:     "The square belongs to the velocity. For the same flow a narrower pipe has faster water and more wall to it, and friction falls with the power 4.87.",
					Next:    "Velocity: square. Friction: nearly the fifth power. Keep the two formulas apart.",
				},
				{
					ID: "litres-for-cubic-metres", Only: problems.OnlySI,
					Formula: "gamma x hazen x (flow / c_factor)^1.852 / (bore / bore_base)^4.87",
					Did:     "You put in {flow} as it stands.",
					Why:     "In SI the formula counts in cubic metres a second. A litre is a thousandth of one, and the power makes the error some hundreds of thousands of times.",
					Next:    "Turn litres a second and millimetres into cubic metres and metres before the first key is pressed.",
				},
				{
					ID:      "power-of-flow-left-out",
					Formula: "hazen x (flow / flow_base / c_factor) / (bore / bore_base)^4.87",
					Metric:  "gamma x hazen x (flow / flow_base / c_factor) / (bore / bore_base)^4.87",
					Did:     "You left out the power 1.852 of the flow over C.",
					Why:     "Twice the flow loses not twice but three and a half times as much. Without the power the figure means nothing.",
					Next:    "Work the bracket first, then raise it, then multiply.",
				},
			},
		},
		{
			Name: "loss", Says: "pressure lost in the run", Measure: &measure.Pressure,
			Formula: "rate x length / hundred", Metric: "rate x length",
			Why: "The rate is for 100 ft, or for one metre. The run has so many of them.",
			Slips: []problems.Slip{
				{
					ID: "rate-as-loss", Formula: "rate",
					Did:  "You gave the rate, {got}, as the loss of the run.",
					Why:  "It is the loss of 100 ft, or of one metre. The run is {length} long.",
					Next: "Ask: in what length? Then multiply by how many such lengths there are.",
				},
				{
					ID: "hundred-left-out", Only: problems.OnlyUS, Formula: "rate x length",
					Did:  "You multiplied by the feet and did not divide by 100.",
					Why:  "The rate is for 100 ft, so the run is counted in hundreds of feet. Otherwise the loss is a hundred times too large.",
					Next: "150 ft are one and a half hundreds. The loss is one and a half times the rate.",
				},
			},
		},
	},
	Holds: "Hazen and Williams measured water near 60 °F (16 °C) in pipes of many kinds and drew one curve through it all. The C of the pipe stands for its wall. On hot water the formula gives a little too much, which is safe. US: 4.52 (Q/C)^1.852 / d^4.87 psi a foot, with gpm and inches. SI: 10.67 (Q/C)^1.852 / d^4.87 metres a metre, with cubic metres a second and metres.",
	Cautions: []string{
		"Friction within the budget is not enough: check the speed as well, and take the larger pipe.",
	},
	Sources: []problems.Source{
		{Says: "Hazen-Williams: 4.52 (Q/C)^1.852 / d^4.87 (NFPA 13 form), 10.67 in SI", Confidence: solver.Memory},
		{Says: "C 140 for copper, 150 plastic, 120 galvanized, 110 cast iron of 10 years: Lindeburg, Civil Engineering Reference Manual, 4th ed. (1986), as adapted", Confidence: solver.Confirmed},
		{Says: "C is also printed as 145 and 150 for copper: use what the class or the office gives", Confidence: solver.Practice},
		tubeSource,
	},
	Draw:  drawFriction,
	Solve: func(w problems.World) float64 { return float64(hazenOf(w)) * float64(w.Length("length")) },
}

func init() { add(&hazenWilliamsSkill) }

// hazenOf is the friction of the told flow by the formula as the class has it.
func hazenOf(w problems.World) unit.Gradient {
	form := solver.Hazen{Figure: unit.Gradient(w.SI("hazen")), Flow: w.Flow("flow_base"), Bore: w.Length("bore_base")}
	if form.Bore == unit.Metre { // a head per length, in SI
		form.Figure *= w.Gamma()
	}
	return form.Loss(w.Flow("flow"), w.SI("c_factor"), w.Length("bore"))
}

// tubeAt is a tube with a flow in it, at a speed between the limits.
type tubeAt struct {
	pipeSize
	flow float64
}

// tubesAt lists the round flows of tubes that run between two speeds, each
// size of pipe in one list.
func tubesAt(s *building.Sheet, of solver.TubeType, low, high float64) [][]tubeAt {
	var out [][]tubeAt
	for _, p := range tubeSizes(s, of) {
		var list []tubeAt
		for _, q := range drawFlows(s) {
			if v := speedOf(s, q, p.bore); v >= low && v <= high {
				list = append(list, tubeAt{p, q})
			}
		}
		if len(list) > 0 {
			out = append(out, list)
		}
	}
	return out
}

// drawTube draws a tube type, a size and a flow in it, and tells them.
func drawTube(s *building.Sheet, low, high float64) tubeAt {
	of, _ := pick(s, []solver.TubeType{solver.TypeK, solver.TypeL, solver.TypeL, solver.TypeM})
	list, _ := pick(s, tubesAt(s, of, low, high))
	t, _ := pick(s, list)
	s.Name("tube_type", string(rune(of)))
	s.Name("size", t.words)
	s.Set("bore", t.bore)
	s.Set("nominal", t.nominal)
	return t
}

func drawFriction(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 12})
	t := drawTube(s, s.Pick([]float64{3}, []float64{0.9}), s.Pick([]float64{8}, []float64{2.4}))
	rough, _ := pick(s, solver.SmoothnessC[1:])
	for rough.C == solver.SmoothnessC[0].C {
		rough, _ = pick(s, solver.SmoothnessC[1:])
	}
	rate := frictionOf(s, t.flow, solver.SmoothnessC[0].C, t.bore)
	var fit []float64
	for _, v := range lists(s, []float64{40, 60, 80, 120, 150, 180, 240, 300}, []float64{12, 18, 24, 35, 45, 55, 75, 90}) {
		loss := rate * v
		if s.US() {
			loss /= 100
		}
		least, most, apart := s.Pick([]float64{2}, []float64{8}), s.Pick([]float64{25}, []float64{175}), s.Pick([]float64{1.3}, []float64{3})
		if loss >= least && loss <= most && math.Abs(loss-rate) > apart {
			fit = append(fit, v)
		}
	}
	length, _ := pick(s, fit)
	s.Name("rough_name", rough.Material)
	s.Name("form", words(s,
		"452 (Q/C)^1.852 / d^4.87 psi for 100 ft, with gpm and inches",
		"10.67 (Q/C)^1.852 / d^4.87 metres of head for a metre, with cubic metres a second and metres"))
	s.Set("flow", t.flow)
	s.Set("length", length)
	s.Set("c_factor", solver.SmoothnessC[0].C)
	s.Set("c_other", rough.C)
}
