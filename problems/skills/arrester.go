package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var arresterSizeSkill = problems.Skill{
	ID: "arrester-size", Title: "Choosing a water hammer arrester",
	Chapter: 8, Order: 30, Year: 3, Kind: problems.Table,
	Ask: "On level {level} a cold branch, {length} long, feeds {closets} water closets with flush valves of {closet_units} and {lavs} lavatories of {lav_units}. One arrester serves a branch of up to {longest}; a longer one gets two, each for half of the units. The table: A to {most_a}, B to {most_b}, C to {most_c}, D to {most_d}, E to {most_e}, F to 330 wsfu. Which size is used?",
	Givens: []problems.Given{
		{Name: "length", Says: "length of the branch", Measure: &measure.PipeLength},
		{Name: "closets", Says: "water closets", Measure: &measure.Count},
		{Name: "closet_units", Says: "cold units of a water closet", Measure: &measure.Units},
		{Name: "lavs", Says: "lavatories", Measure: &measure.Count},
		{Name: "lav_units", Says: "cold units of a lavatory", Measure: &measure.Units},
		{Name: "lav_total", Says: "hot and cold units of a lavatory together", Measure: &measure.Units},
		{Name: "longest", Says: "longest branch for one arrester", Measure: &measure.PipeLength},
		{Name: "most_a", Says: "most units of size A", Measure: &measure.Units},
		{Name: "most_b", Says: "most units of size B", Measure: &measure.Units},
		{Name: "most_c", Says: "most units of size C", Measure: &measure.Units},
		{Name: "most_d", Says: "most units of size D", Measure: &measure.Units},
		{Name: "most_e", Says: "most units of size E", Measure: &measure.Units},
	},
	Rules: []problems.Rule{
		{
			Name: "branch", Says: "cold units on the branch", Measure: &measure.Units,
			Formula: "closets x closet_units + lavs x lav_units",
			Why:     "Every quick valve on the branch can start a blow, so the units of the whole branch count.",
			Slips: []problems.Slip{
				{
					ID: "lavatories-left-out", Formula: "closets x closet_units",
					Did:  "You counted the water closets alone.",
					Why:  "Lever taps shut as quickly as a flush valve. All fixtures of the branch count.",
					Next: "Walk along the branch and tick off each fixture.",
				},
				{
					ID: "hot-and-cold-together", Formula: "closets x closet_units + lavs x lav_total",
					Did:  "You took {lav_total} for a lavatory, its hot and cold together.",
					Why:  "A blow on the hot pipe is not caught on the cold one. Each pipe has its own arrester, for its own units.",
					Next: "Ask which water runs in this pipe before you choose the column.",
				},
			},
		},
		{
			Name: "arresters", Says: "arresters on the branch", Measure: &measure.Count, Whole: true,
			Formula: "1 + (length > longest)",
			Why:     "A blow spends itself on a long branch before it finds the arrester. So a long branch gets a second one near its middle.",
			Would:   spreadArresters,
			Slips: []problems.Slip{
				{
					ID: "one-on-a-long-branch", Formula: "1 + 0 / (length > longest)",
					Did:  "You put one arrester on {length} of branch.",
					Why:  "Beyond {longest} the fixtures at the other end are too far away from it.",
					Next: "Two questions for each branch: how many units, how long.",
				},
				{
					ID: "two-on-a-short-branch", Formula: "2 + 0 / (length <= longest)",
					Did:  "You put two arresters on {length} of branch.",
					Why:  "Up to {longest} one is enough, if it sits between the last two fixtures.",
					Next: "Hold the length of the branch against {longest} first.",
				},
			},
		},
		{
			Name: "each", Says: "units for each arrester", Measure: &measure.Units,
			Formula: "branch / arresters",
			Why:     "Two arresters share the branch: their sizes together must carry its units.",
		},
		{
			Name: "size", Says: "size of the arrester", Measure: &measure.Answer,
			Formula: "(each > most_a) + (each > most_b) + (each > most_c) + (each > most_d) + (each > most_e)", Table: "arresters", Row: "each",
			Choices: []string{"A", "B", "C", "D", "E", "F"},
			Would:   fitArrester,
			Why:     "Go down the table to the first row that is large enough.",
			Slips: []problems.Slip{
				{
					ID: "row-below", Formula: "(each > most_b) + (each > most_c) + (each > most_d) + (each > most_e) + 0 / (each > most_a)",
					Did:  "You chose the row above, which ends before {each}.",
					Why:  "Its cushion of gas is too small for this branch; it is squeezed flat and the blow goes on.",
					Next: "The row must reach up to your units: {each} or more in its second figure.",
				},
			},
		},
	},
	Holds: "An arrester is a cushion of gas behind a piston. It must be large enough for the water that may come to a stop, so it is chosen by the fixture units of its pipe, and close enough to the valve to be in time. Hot and cold sides have their own. Over 65 psi (450 kPa) of flow pressure the next size is used.",
	Cautions: []string{
		"An arrester is no expansion tank, and an expansion tank no arrester: the one works in thousandths of a second, the other over an hour.",
		"Pressure stays behind a closed valve. Relieve it before an arrester is unscrewed.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "A second arrester on branches longer than 20 ft: standard PDI-WH 201, by a trade article", Confidence: solver.Confirmed},
		{Says: "Units of the sizes A to F, half of the units each, next size over 65 psi: PDI-WH 201", Confidence: solver.Memory},
		{Says: "Units of the fixtures are told for study; the code's own table governs", Confidence: solver.Practice},
	},
	Draw: drawArrester,
	Solve: func(w problems.World) float64 {
		size, _ := solver.ArresterFor(branchUnits(w), w.Length("length"), w.Length("longest"))
		return float64(size)
	},
}

func init() { add(&arresterSizeSkill) }

// branchUnits are the cold units of the branch.
func branchUnits(w problems.World) float64 {
	return w.SI("closets")*w.SI("closet_units") + w.SI("lavs")*w.SI("lav_units")
}

// spreadArresters puts so many arresters on the branch.
func spreadArresters(w problems.World, v float64) problems.Outcome {
	length, longest := w.Length("length"), w.Length("longest")
	_, right := solver.ArresterFor(branchUnits(w), length, longest)
	pipe := func(l unit.Length) string { return w.Text(measure.PipeLength, float64(l)) }
	o := problems.Outcome{Kept: int(v) == right}
	switch n := counted(int(v), "arrester"); {
	case o.Kept:
		o.Says = []string{"With " + n + " on " + pipe(length) + " of branch, each valve has one near enough: one serves up to " + pipe(longest) + "."}
	case int(v) < right:
		o.Says = []string{"With " + n + " on " + pipe(length) + " of branch, the fixtures at the far end would hammer on: one serves up to " + pipe(longest) + "."}
	default:
		o.Says = []string{"With " + n + " on " + pipe(length) + " of branch there would be more than the blow needs: one serves up to " + pipe(longest) + "."}
	}
	return o
}

// fitArrester fits a size of arrester, an index into the table.
func fitArrester(w problems.World, v float64) problems.Outcome {
	units := branchUnits(w)
	right, count := solver.ArresterFor(units, w.Length("length"), w.Length("longest"))
	text := func(v float64) string { return w.Text(measure.Units, v) }
	size := string(rune('A' + int(v)))
	says := "Size " + size + " takes up to " + text(solver.ArresterUnits[int(v)]) + ", and this one would have " + text(units/float64(count)) + " behind it"
	switch {
	case int(v) == right:
		return problems.Outcome{Kept: true, Says: []string{says + "."}}
	case int(v) < right:
		return problems.Outcome{Says: []string{says + ": its gas would be squeezed flat, and the pipe would bang."}}
	}
	return problems.Outcome{Says: []string{says + ". It would hold, and a smaller one as well."}}
}

func drawArrester(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Uses: flushes, Min: 3, Max: 15})
	branchLevel(s, t)
	long := s.Chance(0.5)
	length := s.Pick([]float64{8, 10, 12, 15, 18}, []float64{2.5, 3, 4, 5, 5.5})
	if long {
		length = s.Pick([]float64{24, 28, 30, 35, 40}, []float64{7, 8, 9, 10, 12})
	}
	const closetUnits, lavCold, lavTotal = 10, 1.5, 2
	most := solver.ArresterUnits
	type aim struct{ closets, lavs int }
	var fit []aim
	for closets := 2; closets <= 14; closets++ {
		for lavs := 2; lavs <= 12; lavs++ {
			branch := float64(closets)*closetUnits + float64(lavs)*lavCold
			each := branch
			if long {
				each /= 2
			}
			clear := each > 1.04*most[0] && branch > 1.04*most[0]
			for _, m := range most {
				clear = clear && (each < 0.96*m || each > 1.04*m)
			}
			if clear && each < most[len(most)-1] {
				fit = append(fit, aim{closets, lavs})
			}
		}
	}
	a, _ := pick(s, fit)
	s.Set("length", length)
	s.Set("closets", float64(a.closets))
	s.Set("closet_units", closetUnits)
	s.Set("lavs", float64(a.lavs))
	s.Set("lav_units", lavCold)
	s.Set("lav_total", lavTotal)
	s.Set("longest", s.Pick([]float64{20}, []float64{6}))
	for i, name := range []string{"most_a", "most_b", "most_c", "most_d", "most_e"} {
		s.Set(name, most[i])
	}
}
