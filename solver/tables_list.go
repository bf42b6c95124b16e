package solver

import (
	"strconv"
	"strings"

	"riserwork/solver/unit"
)

const unitsNote = "Total is for a pipe that feeds both waters; it is less than cold and hot together."

// Tables are all tables of this package that a reader looks up, in the order
// of the chapters.
var Tables = []Table{
	{Name: "constants", Title: "Constants and the roundings that are taught", Source: "Factors of units: NIST SP 811 (2008), App. B.9; the roundings: common practice", Confidence: Confirmed,
		Note: "The first number is shown unless the house rules choose another; the others are taken as well.",
		Head: said("What", "Unit", "Numbers"), Rows: constantRows},
	{Name: "water", Title: "Water by temperature", Source: "Kell (1975), eq. 16, worked out here", Confidence: Memory,
		Head: in([]string{"°F", "lb/ft³", "psi/ft"}, []string{"°C", "kg/m³", "kPa/m"}), Rows: waterRows},
	{Name: "units-ipc", Title: "Fixture units, IPC", Source: "IPC (2018), Appendix E, Table E103.3(2)", Confidence: Confirmed, Note: unitsNote,
		Head: fixtureHead, Rows: fixtureRows(UnitsIPC)},
	{Name: "units-npc", Title: "Fixture units, NPC", Source: "NPC (2020), Division B, Table 2.6.3.2.-A", Confidence: Memory, Note: unitsNote,
		Head: fixtureHead, Rows: fixtureRows(UnitsNPC)},
	{Name: "units-upc", Title: "Fixture units, UPC", Source: "UPC, Table 610.3", Confidence: Confirmed, Note: unitsNote,
		Head: fixtureHead, Rows: fixtureRows(UnitsUPC)},
	{Name: "flush-valves", Title: "Several flush valves on one branch", Source: "UPC, Table 610.10", Confidence: Confirmed,
		Note: "Units of so many valves together. Each further water closet adds 10, each further urinal 5.",
		Head: said("Valves", "Water closets, wsfu", "Urinals, wsfu"), Rows: flushRows},
	{Name: "demand", Title: "Demand from fixture units", Source: "IPC (2018), Appendix E, Table E103.3(3), after Hunter", Confidence: Memory,
		Note: "Between two rows a straight line is near enough. Flush tanks and flush valves have a column each.",
		Head: in([]string{"wsfu", "Flush tanks, gpm", "Flush valves, gpm"}, []string{"wsfu", "Flush tanks, L/s", "Flush valves, L/s"}), Rows: demandRows},
	{Name: "copper-tube", Title: "Copper water tube", Source: "ASTM B88", Confidence: Confirmed,
		Note: "The bore is the outside diameter less two walls; it is not the nominal size.",
		Head: in([]string{"Nominal, in", "Outside, in", "Bore K, in", "Bore L, in", "Bore M, in"}, []string{"DN", "Outside, mm", "Bore K, mm", "Bore L, mm", "Bore M, mm"}), Rows: tubeRows},
	{Name: "fittings-copper", Title: "Equivalent lengths, soldered fittings", Source: "IPC (2018), Appendix E, Table E103.3(5)", Confidence: Memory,
		Head: fittingHead(FittingsCopper), Rows: fittingRows(FittingsCopper)},
	{Name: "fittings-cast", Title: "Equivalent lengths, cast fittings", Source: "77 Ill. Adm. Code 890, Appendix A, Table Q", Confidence: Confirmed,
		Head: fittingHead(FittingsIllinois), Rows: fittingRows(FittingsIllinois)},
	{Name: "hazen-williams", Title: "C of Hazen and Williams", Source: "Lindeburg, Civil Engineering Reference Manual, 4th ed. (1986), as adapted in an environmental engineering reference, Table 4.4", Confidence: Confirmed,
		Note: "The smoother the pipe, the higher C and the smaller the loss. Others print copper as 140 to 150.",
		Head: said("Pipe", "C"), Rows: smoothRows},
	{Name: "velocity", Title: "Highest speeds in copper tube", Source: "Copper Tube Handbook, as an engineering handbook page repeats it", Confidence: Confirmed,
		Note: "Plastic takes what its maker says.",
		Head: in([]string{"Water", "ft/s"}, []string{"Water", "m/s"}), Rows: speedRows},
	{Name: "motors", Title: "Standard motors", Source: "sizes that makers list", Confidence: Practice,
		Head: said("hp", "kW"), Rows: motorRows},
	{Name: "limits-npc", Title: "Limits, National Plumbing Code of Canada 2020", Source: "the sections named in the rows", Confidence: Memory, Head: limitHead, Rows: limitRows("npc")},
	{Name: "limits-ipc", Title: "Limits, International Plumbing Code 2021", Source: "the sections named in the rows", Confidence: Memory, Head: limitHead, Rows: limitRows("ipc")},
	{Name: "limits-upc", Title: "Limits, Uniform Plumbing Code 2024", Source: "the sections named in the rows", Confidence: Memory, Head: limitHead, Rows: limitRows("upc")},
	{Name: "limits-shop", Title: "Limits, shop practice", Source: "habits of the trade", Confidence: Practice, Head: limitHead, Rows: limitRows("shop")},
	{Name: "riser-tests", Title: "Tests before the walls are closed", Source: "the sections named in the rows", Confidence: Memory,
		Note: "The least that each asks. A job's specification often asks more.",
		Head: said("Code", "Test", "Where it stands"), Rows: testRows},
	{Name: "scald", Title: "How fast hot water burns", Source: "Moritz and Henriques (1947), as a valve maker prints it", Confidence: Confirmed,
		Note: "Of an adult. A child or an older person burns sooner.",
		Head: in([]string{"°F", "Time"}, []string{"°C", "Time"}), Rows: scaldRows},
	{Name: "arresters", Title: "Water hammer arresters", Source: "PDI-WH 201", Confidence: Memory,
		Head: said("Most units, wsfu", "Size"), Rows: arresterRows},
}

func constantRows(s unit.System) []TableRow {
	var out []TableRow
	for _, c := range Constants {
		t := c.In(s)
		out = append(out, TableRow{Cells: []string{c.SaysIn(s), t.Unit, strings.Join(append(append([]string{}, t.Accept...), t.Coarse...), ", ")}})
	}
	return out
}

// waterRows is water from 40 to 180 °F, or 5 to 80 °C.
func waterRows(s unit.System) []TableRow {
	first, last, step, of := 40.0, 180.0, 20.0, fahrenheit
	density, column := mustUnit("lb/ft³"), mustUnit("psi/ft")
	if s != unit.US {
		first, last, step, of = 0, 80, 10, celsius
		density, column = mustUnit("kg/m³"), mustUnit("kPa/m")
	}
	var out []TableRow
	for t := first; t <= last; t += step {
		if w, err := WaterAt(unit.Temperature(of(t).SI())); err == nil {
			out = append(out, TableRow{t, []string{cell(t, 3), cell(density.FromSI(w.Density), 4), cell(column.FromSI(float64(w.Column())), 4)}})
		}
	}
	return out
}

func fixtureHead(unit.System) []string {
	return []string{"Fixture", "Use", "Control", "Cold", "Hot", "Total", "How known"}
}

func fixtureRows(list []Fixture) func(unit.System) []TableRow {
	return func(unit.System) []TableRow {
		out := make([]TableRow, len(list))
		for i, f := range list {
			out[i].Cells = []string{f.Name, string(f.Use), f.Control, cell(f.Cold, 4), cell(f.Hot, 4), cell(f.Total, 4), string(f.Confidence)}
		}
		return out
	}
}

func flushRows(unit.System) []TableRow {
	var out []TableRow
	for n := 1; n <= 8; n++ {
		out = append(out, TableRow{float64(n), []string{strconv.Itoa(n), cell(FlushClosetsUPC.Units(n), 4), cell(FlushUrinalsUPC.Units(n), 4)}})
	}
	return out
}

func demandRows(s unit.System) []TableRow {
	flow := func(r Row) string {
		if s == unit.US {
			return cell(r.GPM, 9)
		}
		return cell(r.LS, 9)
	}
	var out []TableRow
	valves := ValveCurve
	for _, r := range TankCurve {
		valve := "none"
		if len(valves) > 0 && valves[0].Units == r.Units {
			valve, valves = flow(valves[0]), valves[1:]
		}
		out = append(out, TableRow{r.Units, []string{cell(r.Units, 9), flow(r), valve}})
	}
	return out
}

func tubeRows(s unit.System) []TableRow {
	var out []TableRow
	for _, t := range Tubes {
		size, key, length, figures := t.Nominal, t.Inches, unit.Inch, 4
		if s != unit.US {
			size, key, length, figures = strconv.Itoa(t.DN), float64(t.DN), 0.001*unit.Metre, 3
		}
		of := func(l unit.Length) string { return cell(float64(l/length), figures) }
		out = append(out, TableRow{key, []string{size, of(unit.Length(t.Outside) * unit.Inch), of(t.Bore(TypeK)), of(t.Bore(TypeL)), of(t.Bore(TypeM))}})
	}
	return out
}

func fittingHead(list []Fitting) func(unit.System) []string {
	return func(s unit.System) []string {
		head := []string{"Size"}
		for _, f := range list {
			name := f.Name + ", ft"
			if s != unit.US {
				name = f.Name + ", m"
			}
			head = append(head, name)
		}
		return head
	}
}

func fittingRows(list []Fitting) func(unit.System) []TableRow {
	return func(s unit.System) []TableRow {
		var out []TableRow
		for i, size := range FittingSizes {
			cells := []string{nominal(size, s)}
			for _, f := range list {
				if s == unit.US {
					cells = append(cells, cell(f.Feet[i], 3))
				} else {
					cells = append(cells, strconv.FormatFloat(f.Feet[i]*float64(unit.Foot), 'f', 1, 64))
				}
			}
			out = append(out, TableRow{Cells: cells})
		}
		return out
	}
}

// nominal is a size as the system tells it: "1-1/4 in", "DN 32".
func nominal(size string, s unit.System) string {
	for _, t := range Tubes {
		if t.Nominal == size && s != unit.US {
			return "DN " + strconv.Itoa(t.DN)
		}
	}
	return size + " in"
}

func smoothRows(unit.System) []TableRow {
	var out []TableRow
	for _, m := range SmoothnessC {
		out = append(out, TableRow{Cells: []string{m.Material, cell(m.C, 3)}})
	}
	return out
}

func speedRows(s unit.System) []TableRow {
	var out []TableRow
	for _, l := range VelocityLimits {
		out = append(out, TableRow{Cells: []string{l.Water, cell(l.In(s), 3)}})
	}
	return out
}

func motorRows(s unit.System) []TableRow {
	var out []TableRow
	for _, hp := range Motors {
		kw := mustUnit("hp").Convert(hp, mustUnit("kW"))
		key := hp
		if s != unit.US {
			key = kw
		}
		out = append(out, TableRow{key, []string{cell(hp, 3), cell(kw, 3)}})
	}
	return out
}

var limitHead = said("Limit", "Number", "Says", "Where it stands", "How known")

// Limits are the limits of a profile with a title each; the rule of
// recirculation is the one of its length.
func (p *Profile) Limits() []Named {
	long := p.Recirculation.Length
	long.Words = p.Recirculation.Words
	return []Named{
		{"Static pressure", p.StaticMax},
		{"Left at the top", p.TopMin},
		{"At a shower", p.ShowerMin},
		{"Recirculation", long},
		{"Hot water at a shower or bath", p.FixtureHot},
		{"Warmed water", p.ExpansionCap},
		{"At the booster's inlet", p.SuctionMin},
	}
}

// Named is a limit with its title.
type Named struct {
	Title string
	Limit
}

// Where says where a limit stands in its code.
func (l Limit) Where() string {
	switch {
	case l.None && l.Section == "":
		return "no such rule"
	case l.None:
		return "no number in section " + l.Section
	case l.Section == "":
		return "no section"
	}
	return "section " + l.Section
}

func limitRows(profile string) func(unit.System) []TableRow {
	return func(s unit.System) []TableRow {
		p, ok := ProfileByID(profile)
		if !ok {
			return nil
		}
		var out []TableRow
		for _, l := range p.Limits() {
			number := "none"
			if v := l.Value(s); v.Unit.Name != "" {
				number = v.Text(3)
			}
			out = append(out, TableRow{Cells: []string{l.Title, number, l.Words, l.Where(), string(l.Confidence)}})
		}
		return out
	}
}

func testRows(unit.System) []TableRow {
	var out []TableRow
	for _, r := range TestRules {
		p, _ := ProfileByID(r.Profile)
		where := "no section"
		if r.Section != "" {
			where = "section " + r.Section
		}
		out = append(out, TableRow{Cells: []string{p.Name, r.Words, where + "; " + string(r.Confidence)}})
	}
	return out
}

func scaldRows(s unit.System) []TableRow {
	var out []TableRow
	for _, r := range ScaldTimes {
		v := r.Water
		if s == unit.US {
			v = fahrenheit(v.In(mustUnit("°F")))
		}
		time := cell(r.Seconds, 3) + " s"
		if r.Seconds >= 60 {
			time = cell(r.Seconds/60, 2) + " min"
		}
		out = append(out, TableRow{v.Value, []string{cell(v.Value, 3), time}})
	}
	return out
}

func arresterRows(unit.System) []TableRow {
	var out []TableRow
	for i, most := range ArresterUnits {
		out = append(out, TableRow{most, []string{cell(most, 3), string(rune('A' + i))}})
	}
	return out
}
