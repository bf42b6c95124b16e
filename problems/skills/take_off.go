package skills

import (
	"math"
	"strconv"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var takeOffSkill = problems.Skill{
	ID: "take-off", Title: "Developed length from the riser diagram",
	Chapter: 3, Order: 80, Year: 1, Kind: problems.Sum,
	Ask: "Read the run to the remotest outlet off the riser diagram. From the meter {offset} of pipe lead to the foot of the riser, at the floor of level 1. Level 1 is {ground_height} high, each level above it {floor_height}. The branch leaves the riser {branch_up} above the floor of level {top_level} and runs {branch} to the outlet. How long is the run?",
	Givens: []problems.Given{
		{Name: "offset", Says: "pipe from the meter to the foot of the riser", Measure: &measure.PipeLength},
		{Name: "ground_height", Says: "floor to floor height of level 1", Measure: &measure.Height},
		{Name: "floor_height", Says: "floor to floor height of the levels above", Measure: &measure.Height},
		{Name: "top_level", Says: "level of the remotest outlet", Measure: &measure.Count},
		{Name: "branch_up", Says: "height of the branch above its floor", Measure: &measure.Height},
		{Name: "branch", Says: "pipe of the branch to the outlet", Measure: &measure.PipeLength},
	},
	Rules: []problems.Rule{
		{
			Name: "gaps", Says: "typical floor heights below level {top_level}", Measure: &measure.Count, Whole: true,
			Formula: "top_level - 2",
			Why:     "From level 2 to level {top_level} there is one typical floor height less than the label, less the ground floor.",
			Slips: []problems.Slip{{
				ID: "ground-counted-too", Formula: "top_level - 1",
				Did:  "You counted {got} typical floor heights.",
				Why:  "That counts level 1 among them. Its height stands on the drawing by itself, and it is added by itself.",
				Next: "Begin at the floor of level 2 and count the steps up.",
			}},
		},
		{
			Name: "riser", Says: "length of the riser", Measure: &measure.PipeLength,
			Formula: "ground_height + gaps x floor_height + branch_up",
			Why:     "The riser stands from the floor of level 1 to where the branch leaves it.",
			Slips: []problems.Slip{
				{
					ID: "ground-as-typical", Formula: "(gaps + 1) x floor_height + branch_up",
					Did:  "You took level 1 as high as the levels above it, {floor_height}.",
					Why:  "A ground floor has a lobby or shops and is taller: {ground_height} here.",
					Next: "Read each elevation on the drawing before you multiply.",
				},
				{
					ID: "branch-height-left-out", Formula: "ground_height + gaps x floor_height",
					Did:  "You ended the riser at the floor of level {top_level}.",
					Why:  "The branch leaves it {branch_up} higher.",
					Next: "End a pipe where the next one begins.",
				},
			},
		},
		{
			Name: "length", Says: "developed length of the run", Measure: &measure.PipeLength,
			Formula: "offset + riser + branch",
			Why:     "Developed length follows the centre line of the pipe, whatever way it turns.",
			Slips: []problems.Slip{
				{
					ID: "riser-twice", Formula: "offset + 2 x riser + branch",
					Did:  "You counted the riser twice.",
					Why:  "Two risers stand beside each other on the sheet, cold and hot. The water to this outlet goes up one of them.",
					Next: "Run a finger from the meter to the outlet without lifting it.",
				},
				{
					ID: "branch-left-out", Formula: "offset + riser",
					Did:  "You left out the branch.",
					Why:  "It is the smallest pipe of the run, and foot for foot it often loses the most.",
					Next: "The run ends at the outlet, not at the riser.",
				},
				{
					ID: "offset-left-out", Formula: "riser + branch",
					Did:  "You left out the {offset} from the meter to the riser.",
					Why:  "On a riser diagram the horizontal main looks short, since the sheet is not to scale.",
					Next: "Take lengths from the figures, never from the look of the drawing.",
				},
			},
		},
	},
	Holds: "Friction is paid for every foot of pipe, level or upright. The developed length of a run is measured along the pipe from where the pressure is known to the outlet that is hardest to serve.",
	Cautions: []string{
		"Where pipe passes a fire-rated floor or wall the sleeve is stopped again to the listing; where it is hung high, the lift and its guard come first.",
	},
	Sources: []problems.Source{
		{Says: "Developed length along the centre line, meter to remotest outlet: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := suppliedTower(s, building.Plan{Min: 5, Max: 20, NoSkip: true})
		n := s.Int(max(4, t.Storeys-2), t.Storeys)
		s.Focus = t.Storey(n)
		level, _ := strconv.Atoi(t.Level(n))
		offset := s.Pick([]float64{25, 40, 60, 80, 100, 120}, []float64{8, 12, 18, 25, 30, 36})
		branch := s.Pick([]float64{20, 30, 45, 50, 65, 75}, []float64{6, 9, 14, 16, 20, 22})
		if offset == branch {
			branch += s.Pick([]float64{5}, []float64{2})
		}
		s.Set("offset", offset)
		setHeight(s, "ground_height", t.Ground.Value)
		setHeight(s, "floor_height", t.Floor.Value)
		s.Set("top_level", float64(level))
		s.Set("branch_up", s.Pick([]float64{8, 9}, []float64{2.4, 2.6}))
		s.Set("branch", branch)
	},
	Solve: func(w problems.World) float64 {
		at := w.Building.Levels[w.Focus].Elevation + w.Length("branch_up")
		return float64(w.Length("offset") + at - w.Building.Levels[w.Building.Ground].Elevation + w.Length("branch"))
	},
}

func init() { add(&takeOffSkill) }

var developedLengthSkill = problems.Skill{
	ID: "developed-length", Title: "Pipe and its fittings",
	Chapter: 3, Order: 90, Year: 2, Kind: problems.Table,
	Ask: "A run of {size} copper tube measures {pipe} along its centre line. It has {elbows} elbows of 90° and {tees} tees in which the water turns into the branch. The table ({table_says}) gives a {size} elbow as much loss as {elbow_each} of straight tube and such a tee {tee_each}; for {other_size}, {elbow_other} and {tee_other}. What total length is friction reckoned on?",
	Givens: []problems.Given{
		{Name: "pipe", Says: "tube of the run along its centre line", Measure: &measure.PipeLength},
		{Name: "elbows", Says: "elbows of 90°", Measure: &measure.Count},
		{Name: "elbow_each", Says: "tube that loses as much as one elbow of {size}", Measure: &measure.PipeLength},
		{Name: "elbow_other", Says: "the same for {other_size}", Measure: &measure.PipeLength},
		{Name: "tees", Says: "tees in which the water turns", Measure: &measure.Count},
		{Name: "tee_each", Says: "tube that loses as much as one such tee of {size}", Measure: &measure.PipeLength},
		{Name: "tee_other", Says: "the same tee for {other_size}", Measure: &measure.PipeLength},
	},
	Rules: []problems.Rule{
		{
			Name: "elbow_length", Says: "tube that the elbows stand for", Measure: &measure.PipeLength, Table: "{fittings}", Row: "{size}",
			Formula: "elbows x elbow_each",
			Why:     "Each elbow stirs the water up as so much straight tube would slow it.",
			Slips: []problems.Slip{
				{
					ID: "one-elbow", Formula: "elbow_each",
					Did:  "You counted one elbow.",
					Why:  "The water goes through all {elbows}, and each takes its part.",
					Next: "The table is for one fitting. Multiply by how many there are.",
				},
				{
					ID: "other-size-elbow", Family: "other-size", Formula: "elbows x elbow_other",
					Did:  "You took {elbow_other}, the line for {other_size}.",
					Why:  "A larger fitting stands for more tube, and a smaller one for less. The table has a line for each size.",
					Next: "Find the size on the drawing first, then the line, then the column.",
				},
			},
		},
		{
			Name: "tee_length", Says: "tube that the tees stand for", Measure: &measure.PipeLength, Table: "{fittings}", Row: "{size}",
			Formula: "tees x tee_each",
			Why:     "Water that turns into the branch of a tee loses more than in an elbow.",
			Slips: []problems.Slip{
				{
					ID: "tee-as-elbow", Formula: "tees x elbow_each",
					Did:  "You counted the tees as elbows, {elbow_each} each.",
					Why:  "In a tee the turn is sharp and the way behind it open. Through the branch it loses {tee_each}.",
					Next: "For a tee ask first: straight through, or round the corner?",
				},
				{
					ID: "other-size-tee", Family: "other-size", Formula: "tees x tee_other",
					Did:  "You took {tee_other}, the line for {other_size}.",
					Why:  "A larger fitting stands for more tube, and a smaller one for less. The table has a line for each size.",
					Next: "Find the size on the drawing first, then the line, then the column.",
				},
			},
		},
		{
			Name: "total", Says: "total length for friction", Measure: &measure.PipeLength,
			Formula: "pipe + elbow_length + tee_length",
			Why:     "Tube and fittings stand in one stream, so their losses add.",
			Slips: []problems.Slip{
				{
					ID: "fittings-left-out", Formula: "pipe",
					Did:  "You gave the tube alone, {pipe}.",
					Why:  "The fittings of a run often stand for a third to a half of its length again. Left out, the pipe is sized too small.",
					Next: "Total length is more than the tape shows. If it is not, the fittings are missing.",
				},
				{
					ID: "tees-left-out", Formula: "pipe + elbow_length",
					Did:  "You left the tees out.",
					Why:  "They turn the water as elbows do, and more sharply.",
					Next: "Tick off each fitting on the drawing as it goes into the sum.",
				},
			},
		},
	},
	Holds: "A fitting stirs the water and so costs pressure. It is told as the length of straight tube of the same size that would cost as much. Tube and fittings together are the length that friction is reckoned on.",
	Cautions: []string{
		leadFree, sizingStudy,
	},
	Sources: []problems.Source{
		{Says: "Equivalent lengths of cast fittings: 77 Ill. Adm. Code 890, Appendix A, Table Q", Confidence: solver.Confirmed},
		{Says: "Equivalent lengths of soldered fittings: IPC (2018), Appendix E, Table E103.3(5)", Confidence: solver.Memory},
	},
	Draw: drawDevelopedLength,
	Solve: func(w problems.World) float64 {
		total := w.Length("pipe")
		for _, f := range [][2]string{{"elbows", "elbow_each"}, {"tees", "tee_each"}} {
			for n := 0; n < int(w.SI(f[0])); n++ {
				total += w.Length(f[1])
			}
		}
		return float64(total)
	},
}

func init() { add(&developedLengthSkill) }

func drawDevelopedLength(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 12})
	table, says, name := solver.FittingsIllinois, "77 Ill. Adm. Code 890, Table Q, cast fittings", "fittings-cast"
	if s.Chance(0.5) {
		table, says, name = solver.FittingsCopper, "IPC, Table E103.3(5), soldered fittings", "fittings-copper"
	}
	i := s.Int(2, 6)
	j := i - 1
	if s.Chance(0.5) {
		j = i + 1
	}
	var fit []float64
	elbows, tees := s.Int(5, 9), s.Int(2, 4)
	each := func(fitting, size int) float64 { return feetOrMetres(s, table[fitting].Feet[size]) }
	const elbow, tee = 0, 2
	fittings := float64(elbows)*each(elbow, i) + float64(tees)*each(tee, i)
	for _, p := range lists(s, []float64{60, 80, 100, 120, 150, 180, 220, 260}, []float64{18, 24, 30, 36, 45, 55, 65, 80}) {
		if r := fittings / p; r > 0.2 && r < 0.7 {
			fit = append(fit, p)
		}
	}
	pipe, _ := pick(s, fit)
	s.Name("size", sizeWords(s, solver.FittingSizes[i]))
	s.Name("other_size", sizeWords(s, solver.FittingSizes[j]))
	s.Name("table_says", says)
	s.Name("fittings", name)
	s.Set("pipe", pipe)
	s.Set("elbows", float64(elbows))
	s.Set("elbow_each", each(elbow, i))
	s.Set("elbow_other", each(elbow, j))
	s.Set("tees", float64(tees))
	s.Set("tee_each", each(tee, i))
	s.Set("tee_other", each(tee, j))
}

// feetOrMetres is a length of a table in feet, as the system tells it: metres
// to a tenth.
func feetOrMetres(s *building.Sheet, feet float64) float64 {
	if s.US() {
		return feet
	}
	return math.Round(feet*float64(unit.Foot)*10) / 10
}

// sizeWords tells a nominal size as the system does.
func sizeWords(s *building.Sheet, nominal string) string {
	for _, t := range solver.Tubes {
		if t.Nominal == nominal {
			return tubeSize(s, t, solver.TypeL).words
		}
	}
	return nominal + "\u00a0in"
}
