package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var reductionRatioSkill = problems.Skill{
	ID: "reduction-ratio", Title: "Reduction ratio and two stages",
	Chapter: 5, Order: 120, Year: 4, Kind: problems.Choice,
	Ask: "The lowest zone of a tower is taken off the booster header. The gauge before its reducing valve reads {inlet}, and the zone is to have {outlet}. The maker allows a reduction of {ratio_limit} to 1 in one valve, in gauge pressures. If two valves in series are needed, a colleague would set the first to {middle}. Is one valve enough, and if not, does that setting do?",
	Givens: []problems.Given{
		{Name: "inlet", Says: "gauge before the valve", Measure: &measure.Pressure, Plate: true},
		{Name: "outlet", Says: "pressure wanted behind it", Measure: &measure.Pressure},
		{Name: "ratio_limit", Says: "highest reduction of one valve, from the maker", Measure: &measure.Share},
		{Name: "middle", Says: "setting proposed between two valves", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "ratio", Says: "reduction from inlet to outlet", Measure: &measure.Share,
			Formula: "inlet / outlet",
			Why:     "What wears a valve out is how many times it cuts the pressure down: the water shoots through the narrow seat, and bubbles form and collapse there.",
			Slips: []problems.Slip{
				{
					ID: "difference", Formula: "inlet - outlet",
					Did:  "You took {outlet} off {inlet}.",
					Why:  "That is how much pressure the valve takes away. The maker's limit says how many times smaller the outlet may be, and that is a division.",
					Next: "A limit such as 3 to 1 has no unit. The line it is compared with has none either.",
				},
				{
					ID: "upside-down", Formula: "outlet / inlet",
					Did:  "You divided the outlet by the inlet.",
					Why:  "That gives less than 1, and a reduction is told the other way: so many parts in, one part out.",
					Next: "The higher pressure stands before the valve and on top of the line.",
				},
			},
		},
		{
			Name: "lowest", Says: "lowest setting between two valves", Measure: &measure.Pressure,
			Formula: "inlet / ratio_limit",
			Why:     "Set lower than this, the first valve would cut down by more than its limit.",
			Slips: []problems.Slip{
				{
					ID: "first-valve-multiplied", Formula: "inlet x ratio_limit",
					Did:  "You multiplied the inlet by {ratio_limit}.",
					Why:  "The valve reduces, so what comes out is smaller than what goes in. No setting can lie above the inlet.",
					Next: "Along the flow divide; against the flow multiply.",
				},
				{
					ID: "ends-swapped", Formula: "outlet x ratio_limit", Family: "ends-swapped",
					Did:  "You took what the second valve allows, {ratio_limit} times {outlet}.",
					Why:  "That is the highest setting, the other end of the range. The lowest one is kept by the first valve, which sees {inlet}.",
					Next: "First valve, inlet, lowest. Second valve, outlet, highest.",
				},
			},
		},
		{
			Name: "highest", Says: "highest setting between two valves", Measure: &measure.Pressure,
			Formula: "outlet x ratio_limit",
			Why:     "Set higher than this, the second valve would have to cut down by more than its limit to reach the outlet.",
			Slips: []problems.Slip{
				{
					ID: "second-valve-divided", Formula: "outlet / ratio_limit",
					Did:  "You divided the outlet by {ratio_limit}.",
					Why:  "Before the second valve the pressure is higher than behind it. Divided, the setting would lie below what the zone needs.",
					Next: "The setting must come out between {outlet} and {inlet}.",
				},
				{
					ID: "ends-swapped-high", Formula: "inlet / ratio_limit", Family: "ends-swapped",
					Did:  "You took what the first valve allows, {inlet} over {ratio_limit}.",
					Why:  "That is the lowest setting. The highest one is kept by the second valve, which has to come down to {outlet}.",
					Next: "First valve, inlet, lowest. Second valve, outlet, highest.",
				},
			},
		},
		{
			Name: "verdict", Says: "what is to be built", Measure: &measure.Answer,
			Choices: []string{"one valve is enough", "two valves, and the setting does", "two valves, and the setting does not do"},
			Formula: "(ratio > ratio_limit) x (1 + ((middle < lowest) or (middle > highest)))",
			Would:   reduceBy,
			Why:     "Up to the limit one valve is enough. Over it two share the work, and any setting between lowest and highest keeps both of them within the limit.",
		},
	},
	Holds:    "A reducing valve may cut the pressure down so many times and no more, or the water tears at its seat and it whistles and wears. Two valves in series each take a part. The setting between them is a range: high enough for the first valve, low enough for the second. In the shop the ratio is taken in gauge pressures; the maker's cavitation chart governs.",
	Cautions: []string{relieveFirst, "If a valve sticks open, its inlet pressure goes through to the zone. A relief valve or an alarm stands behind it for that reason."},
	Sources: []problems.Source{
		{Says: "Reduction of 3 or 4 to 1 in one valve, gauge over gauge", Confidence: solver.Practice},
	},
	Draw: drawReduction,
	Solve: func(w problems.World) float64 {
		in, out, limit := w.Pressure("inlet"), w.Pressure("outlet"), w.SI("ratio_limit")
		if solver.ReductionRatio(in, out) <= limit {
			return 0
		}
		if lo, hi := solver.MiddleSettings(in, out, limit); w.Pressure("middle") < lo || w.Pressure("middle") > hi {
			return 2
		}
		return 1
	},
}

func init() { add(&reductionRatioSkill) }

// drawReduction draws one of the three verdicts, by a clear margin.
func drawReduction(s *building.Sheet) {
	t := s.Tower(building.Plan{Uses: zoned, Min: 20, Max: 36})
	gauge := s.UpValve()
	low := lift(s, t, gauge)
	want := s.Int(0, 2)
	type aim struct{ in, out, limit, middle float64 }
	var fit []aim
	step := s.Pick([]float64{5}, []float64{25})
	outs := lists(s, []float64{45, 50, 55, 60, 65, 70}, []float64{300, 325, 350, 375, 400, 450})
	for _, in := range upTo(low, min(low+6*gaugeStep(s), s.PickPlate([]float64{250}, []float64{1725})), gaugeStep(s)) {
		code := in / onPlate(s, 1)
		for _, out := range outs {
			for _, limit := range []float64{3, 3.5, 4} {
				for _, middle := range upTo(out+3*step, code-3*step, 2*step) {
					if got, clear := reduction(code, out, limit, middle); clear && got == want {
						fit = append(fit, aim{in, out, limit, middle})
					}
				}
			}
		}
	}
	a, ok := pick(s, fit)
	if !ok {
		a = aim{low, 10 * step, 3, 15 * step}
	}
	pumpRoom(s, gauge, a.in)
	top := t.Storey(floorsOn(s, t, gauge, a.out))
	firstZone(s, top, s.Length(gauge), s.Press(a.out), 0)
	feedAbove(s, top+1)
	s.Focus = t.Storey(1)
	s.Set("inlet", a.in)
	s.Set("outlet", a.out)
	s.Set("ratio_limit", a.limit)
	s.Set("middle", a.middle)
}

// reduction is the verdict and whether it stands clear of every limit.
func reduction(in, out, limit, middle float64) (verdict int, clear bool) {
	lo, hi := in/limit, out*limit
	far := func(a, b float64) bool { return math.Abs(a/b-1) > 0.04 }
	clear = far(in/out, limit) && far(middle, lo) && far(middle, hi) && far(lo, hi)
	switch {
	case in/out <= limit:
		return 0, clear
	case middle < lo || middle > hi:
		return 2, clear
	}
	return 1, clear
}

// reduceBy builds one valve (0), or two with the middle setting (1); or it
// refuses that setting (2).
func reduceBy(w problems.World, v float64) problems.Outcome {
	in, middle, out, limit := w.Pressure("inlet"), w.Pressure("middle"), w.Pressure("outlet"), w.SI("ratio_limit")
	cut := func(from, to unit.Pressure) (says string, kept bool) {
		r := solver.ReductionRatio(from, to)
		return "from " + w.Press(from) + " to " + w.Press(to) + ", " + w.Text(measure.Share, r) + " to 1", r <= limit
	}
	most := w.Text(measure.Share, limit) + " to 1 is allowed in one valve."
	one, does := cut(in, out)
	if v == 0 {
		return problems.Outcome{Kept: does, Says: []string{"One valve would cut the pressure down " + one + "; " + most}}
	}
	if does {
		return problems.Outcome{Says: []string{"One valve would cut the pressure down " + one + "; " + most, "The second valve would be bought for nothing."}}
	}
	first, firstDoes := cut(in, middle)
	second, secondDoes := cut(middle, out)
	o := problems.Outcome{Kept: (firstDoes && secondDoes) == (v == 1)}
	o.Says = []string{"The first valve would cut the pressure down " + first + ", the second " + second + "; " + most}
	if v == 2 && !o.Kept {
		o.Says = append(o.Says, "Neither is over it: the setting would do.")
	}
	return o
}
