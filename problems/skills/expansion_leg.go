package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var expansionLegSkill = problems.Skill{
	ID: "expansion-leg", Title: "The leg that bends for a hot riser",
	Chapter: 8, Order: 45, Year: 4, Kind: problems.Sum,
	Ask: "A hot riser of {size} copper tube (outside diameter {outside}, nominal {nominal}) moves {movement} where it turns into an offset. The leg of the offset bends with it and carries no clamp. By the rule for copper its length is {leg_factor} times the root of diameter times movement, both in the same unit. How long must the leg be, and does it fit into the {space} that is free?",
	Givens: []problems.Given{
		{Name: "outside", Says: "outside diameter of the tube", Measure: &measure.Bore},
		{Name: "nominal", Says: "nominal size of the tube", Measure: &measure.Bore},
		{Name: "movement", Says: "movement at the offset", Measure: &measure.Movement},
		{Name: "leg_factor", Says: "figure of the rule for copper", Measure: &measure.Share},
		{Name: "space", Says: "free length for the leg", Measure: &measure.PipeLength},
	},
	Rules: []problems.Rule{
		{
			Name: "product", Says: "outside diameter times movement", Measure: &measure.CrossArea,
			Formula: "outside x movement",
			Why:     "A thick pipe is stiffer than a thin one, and a large movement bends it further. Both lengthen the leg.",
			Slips: []problems.Slip{{
				ID: "nominal-for-outside", Formula: "nominal x movement",
				Did:  "You put in the nominal size, {nominal}.",
				Why:  "The nominal size is a name. The metal that is stretched lies at the outside, {outside} across.",
				Next: "For force and bending take the outside, for flow the bore.",
			}},
		},
		{
			Name: "root", Says: "root of it", Measure: &measure.Movement,
			Formula: "sqrt(product)",
			Why:     "The bend that a leg can take grows with the square of its length. So the length goes with the root.",
			Slips: []problems.Slip{{
				ID: "root-left-out", Formula: "product",
				Did:  "You left out the root.",
				Why:  "Four times the movement needs twice the leg, not four times. And an area is no length.",
				Next: "Look at the units: an area must pass through a root to become a length.",
			}},
		},
		{
			Name: "leg", Says: "length of the leg", Measure: &measure.Movement,
			Formula: "leg_factor x root",
			Why:     "The figure holds how far copper may be bent: the root of three times its stiffness over the stress allowed.",
			Slips: []problems.Slip{{
				ID: "divided-by-factor", Formula: "root / leg_factor",
				Did:  "You divided by {leg_factor}.",
				Why:  "A leg is far longer than the movement it takes up. Divided, it comes out shorter than the tube is thick.",
				Next: "A leg is some feet or metres long for each inch or centimetre of movement.",
			}},
		},
		{
			Name: "leg_long", Says: "length of the leg, as it is cut", Measure: &measure.LongPart,
			Formula: "leg / inches_per_foot", Metric: "leg / mm_per_metre",
			Why: "Diameter and movement went in as inches or millimetres, so the leg comes out in them.",
			Slips: []problems.Slip{
				{
					ID: "ten-for-twelve", Only: problems.OnlyUS, Formula: "leg / 10",
					Did:  "You divided the inches by ten.",
					Why:  "A foot has 12 inches. The leg comes out a fifth too long.",
					Next: "36 inches are a yard, three feet: try your figure on that.",
				},
				{
					ID: "hundred-for-thousand", Only: problems.OnlySI, Formula: "leg / 100",
					Did:  "You divided the millimetres by 100.",
					Why:  "A metre has 1,000 mm. The leg comes out ten times too long.",
					Next: "A leg of 1 to 4 m is usual.",
				},
			},
		},
		{
			Name: "fits", Says: "the leg", Measure: &measure.Answer, Choices: []string{"fits", "does not fit"},
			Formula: "leg_long > space",
			Why:     "If it does not fit, put an anchor in the middle of the riser so that each half moves half as far, or take a loop or a compensator.",
			Slips: []problems.Slip{{
				ID: "fits-turned-round", Formula: "leg_long < space",
				Did:  "You read {leg_long} against {space} the wrong way round.",
				Why:  "The leg may be shorter than the space it lies in, not longer.",
				Next: "Say it in words: needs, has.",
			}},
		},
	},
	Holds: "A pipe that grows must have something that bends. The leg of an offset is held at its ends only and bends into a flat S. The stiffer the pipe and the larger the movement, the longer it is. A leg that is too short tears its elbow or its joint, years later, inside the wall.",
	Cautions: []string{
		"No clamp, no sleeve packed hard, no branch on the leg: whatever holds it makes it shorter.",
		"The figure is for copper tube with soldered joints. Plastic, pressed and grooved joints have the figures of their makers.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "L = root of (3 E / S) times root of (d e), E 17,000,000 psi and S 6,000 psi: Copper Tube Handbook, expansion loops and offsets; 92.2, or 7.68 for feet from inches", Confidence: solver.Memory},
		{Says: "Outside diameter of copper tube: ASTM B88", Confidence: solver.Confirmed},
	},
	Draw: drawExpansionLeg,
	Solve: func(w problems.World) float64 {
		leg := solver.ExpansionLeg(w.Length("outside"), w.Length("movement"), w.SI("leg_factor"))
		unitLeg := float64(leg) / w.SI(choose(w.House.System == unit.US, "inches_per_foot", "mm_per_metre"))
		if unitLeg > float64(w.Length("space")) {
			return 1
		}
		return 0
	},
}

func init() { add(&expansionLegSkill) }

// drawExpansionLeg draws a leg that fits or does not by a clear margin.
func drawExpansionLeg(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 5, Max: 15})
	const factor = 92.2
	type aim struct {
		tube           pipeSize
		outside, moves float64
		space          float64
	}
	fits := s.Chance(0.5)
	var list []aim
	for _, tube := range solver.Tubes {
		if tube.Inches < 0.75 || tube.Inches > 2.5 {
			continue
		}
		p, outside := tubeSize(s, tube, solver.TypeL), tube.Outside
		if !s.US() {
			outside = math.Round(outside*254) / 10
		}
		for _, moves := range lists(s, []float64{0.5, 0.6, 0.75, 0.8, 1, 1.2, 1.25, 1.5, 1.75, 2}, []float64{12, 15, 18, 20, 25, 30, 35, 40, 50}) {
			leg := factor * math.Sqrt(outside*moves) / s.Pick([]float64{12}, []float64{1000})
			for _, space := range lists(s, upTo(4, 16, 1), upTo(1.2, 5, 0.2)) {
				space = math.Round(space*10) / 10
				if off := leg / space; (off < 1) == fits && math.Abs(off-1) > 0.05 && off > 0.6 && off < 1.5 && math.Abs(math.Sqrt(outside*moves)-outside*moves) > 0.05 && math.Abs(p.nominal/outside-1) > 0.025 {
					list = append(list, aim{tube: p, outside: outside, moves: moves, space: space})
				}
			}
		}
	}
	a, _ := pick(s, list)
	s.Name("size", a.tube.words)
	s.Set("outside", a.outside)
	s.Set("nominal", a.tube.nominal)
	s.Set("movement", a.moves)
	s.Set("leg_factor", factor)
	s.Set("space", a.space)
}
