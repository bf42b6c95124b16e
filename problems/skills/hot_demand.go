package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var hotDemandCurveSkill = problems.Skill{
	ID: "hot-demand-curve", Title: "Demand of the hot main",
	Chapter: 3, Order: 60, Year: 3, Kind: problems.Table,
	Ask:    "A building has flush valves on its water closets. Its hot main feeds {levels} levels, each with {lavs} lavatories and {showers} showers for public use. By the table ({units_say}) a lavatory has {lav_hot} on the hot pipe and {lav_units} in total, a shower {shower_hot} and {shower_units}. " + bothRows + " What demand is the hot main sized for?",
	Givens: append(hotFixtures(), rowGivens(true)...),
	Rules: append([]problems.Rule{
		{
			Name: "per_level", Says: "hot units of one level", Measure: &measure.Units, Table: "units", Row: "lavatory",
			Formula: "lavs x lav_hot + showers x shower_hot",
			Why:     "The hot main carries hot water only, so the hot column counts; a water closet has none.",
			Slips: []problems.Slip{
				{
					ID: "total-column", Formula: "lavs x lav_units + showers x shower_units",
					Did:  "You took the total units, {lav_units} and {shower_units}.",
					Why:  "The total is for a pipe that feeds both waters. The hot pipe of the same fixture carries about three quarters of it.",
					Next: "Ask which water runs in this pipe before you choose the column.",
				},
				{
					ID: "showers-left-out", Formula: "lavs x lav_hot",
					Did:  "You left the showers out.",
					Why:  "In the morning they are the largest users of hot water there are.",
					Next: "Tick off each kind of fixture as it goes into the sum.",
				},
			},
		},
		{
			Name: "hot_units", Says: "units on the hot main", Measure: &measure.Units,
			Formula: "per_level x levels",
			Why:     "All levels hang on this main.",
			Slips: []problems.Slip{{
				ID: "one-level", Formula: "per_level",
				Did:  "You took one level alone.",
				Why:  "The main at the heater feeds all {levels} levels.",
				Next: "Stand at the heater and count all that hangs on the pipe.",
			}},
		},
	}, rowRules("hot_units", "demand of the hot main", true)...),
	Holds: "Nothing on the hot pipe has a flush valve. Whatever flushes in the building, the hot main is read from the column for flush tanks, with the hot units of its fixtures.",
	Cautions: []string{
		"Faster than 5 ft/s (1.5 m/s) hot water wears copper thin; over 140 °F (60 °C) the limit is lower still.",
		legionella,
		sizingStudy,
	},
	Sources: []problems.Source{
		curveSource, curveAgrees,
		{Says: "Hot units of a public lavatory: IPC (2018), Table E103.3(2)", Confidence: solver.Confirmed},
		{Says: "Hot units of a public shower in the same table; NPC and UPC values; the hot pipe on the column of flush tanks", Confidence: solver.Memory},
	},
	Draw: drawHotDemand,
	Solve: func(w problems.World) float64 {
		return straight(w, (w.SI("lavs")*w.SI("lav_hot")+w.SI("showers")*w.SI("shower_hot"))*w.SI("levels"))
	},
}

func init() { add(&hotDemandCurveSkill) }

func hotFixtures() []problems.Given {
	return []problems.Given{
		{Name: "levels", Says: "levels on the hot main", Measure: &measure.Count},
		{Name: "lavs", Says: "lavatories of a level", Measure: &measure.Count},
		{Name: "lav_hot", Says: "units of a lavatory on the hot pipe", Measure: &measure.Units},
		{Name: "lav_units", Says: "units of a lavatory in total", Measure: &measure.Units},
		{Name: "showers", Says: "showers of a level", Measure: &measure.Count},
		{Name: "shower_hot", Says: "units of a shower on the hot pipe", Measure: &measure.Units},
		{Name: "shower_units", Says: "units of a shower in total", Measure: &measure.Units},
	}
}

// publicFixtures are a lavatory and a shower for public use as each code's
// table names them.
func publicFixtures(profile string) (lav, shower solver.Fixture) {
	names := [2]string{"Lavatory", "Shower head"}
	switch profile {
	case "npc":
		names = [2]string{"Lavatory, 8.3 L/min or less", "Shower head, 9.5 L/min or less per head"}
	case "upc":
		names[1] = "Shower"
	}
	lav, _ = solver.FixtureIn(solver.UnitsOf(profile), names[0], solver.Public, "")
	shower, _ = solver.FixtureIn(solver.UnitsOf(profile), names[1], solver.Public, "")
	return lav, shower
}

func drawHotDemand(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Uses: []solver.Use{solver.Residence, solver.Hospital}, Min: 4, Max: 12})
	lav, shower := publicFixtures(s.Profile.ID)
	levels := t.Storeys - 1
	type floor struct{ lavs, showers int }
	var fit []floor
	for lavs := 6; lavs <= 20; lavs += 2 {
		for showers := 4; showers <= 12; showers++ {
			hot := (float64(lavs)*lav.Hot + float64(showers)*shower.Hot) * float64(levels)
			if hot >= 100 && hot <= 740 && clearOfRows(hot) && lavs != showers {
				fit = append(fit, floor{lavs, showers})
			}
		}
	}
	f, _ := pick(s, fit)
	hot := (float64(f.lavs)*lav.Hot + float64(f.showers)*shower.Hot) * float64(levels)
	nameCurves(s, [2]string{"flush tanks", "flush valves"}, "Nothing on the hot pipe flushes: the flush valves of the building are all on the cold side. Their column gives a hot main that is too large, slow to fill and quick to cool.")
	s.Name("units_say", unitsTable(s.Profile.ID))
	s.Set("levels", float64(levels))
	s.Set("lavs", float64(f.lavs))
	s.Set("lav_hot", lav.Hot)
	s.Set("lav_units", lav.Total)
	s.Set("showers", float64(f.showers))
	s.Set("shower_hot", shower.Hot)
	s.Set("shower_units", shower.Total)
	tellRows(s, hot, solver.TankCurve, solver.ValveCurve)
}
