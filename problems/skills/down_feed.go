package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var downFeedPressureSkill = problems.Skill{
	ID: "down-feed-pressure", Title: "Pressure on the way down from a header",
	Chapter: 5, Order: 50, Year: 2, Kind: problems.Sum,
	Ask: "A header under the roof feeds the tower downward. It runs {header_up} above the floor of level {top_level}, the highest, and its gauge reads {header} with no flow. Floors are {floor_height} apart and no valve stands in between. What does a gauge at the {fixture} on level {level} read?",
	Givens: []problems.Given{
		{Name: "header", Says: "pressure in the header, no flow", Measure: &measure.Pressure},
		{Name: "top_level", Says: "highest level of the building", Measure: &measure.Count},
		{Name: "level", Says: "level asked about", Measure: &measure.Count},
		{Name: "floor_height", Says: "floor to floor height", Measure: &measure.Height},
		{Name: "header_up", Says: "height of the header above the highest level's floor", Measure: &measure.Height},
		{Name: "outlet", Says: "height of the fixture's outlet above its floor", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "gaps", Says: "floor heights from level {top_level} down to level {level}", Measure: &measure.Count, Whole: true,
			Formula: "top_level - level",
			Why:     "From one level to the next is one floor height.",
			Slips: []problems.Slip{
				{
					ID: "from-the-ground", Formula: "level - 1",
					Did:  "You counted {got} floor heights, from the ground up to level {level}.",
					Why:  "The water in a down-feed hangs from the header. Its pressure grows with the depth under the header; how high the floor is above the street does not matter.",
					Next: "Put your finger on the place where the pressure is known and count from there.",
				},
				{
					ID: "floors-for-gaps", Formula: "top_level - level + 1",
					Did:  "You counted {got} floors and took as many heights.",
					Why:  "Both end floors are in that count. Between them there is one height less.",
					Next: "Subtract the level numbers: from 20 down to 19 is one height.",
				},
			},
		},
		{
			Name: "drop", Says: "depth of the outlet under the header", Measure: &measure.Height,
			Formula: "gaps x floor_height + header_up - outlet",
			Why:     "From floor to floor, then the header is higher than its floor and the outlet higher than its own.",
			Slips: []problems.Slip{
				{
					ID: "offsets-left-out", Formula: "gaps x floor_height",
					Did:  "You measured from floor to floor.",
					Why:  "The gauge is at the header, {header_up} over its floor, and the outlet stands {outlet} over its own. The water stands from one to the other.",
					Next: "Measure from gauge to outlet; the slabs are only helpers.",
				},
				{
					ID: "outlet-added", Formula: "gaps x floor_height + header_up + outlet",
					Did:  "You added the height of the outlet above its floor.",
					Why:  "An outlet above the floor is nearer to the header, so less water stands over it. Its height comes off.",
					Next: "Sketch floor, outlet and header, and look which way the arrow runs.",
				},
			},
		},
		{
			Name: "gained", Says: "pressure gained going down", Measure: &measure.Pressure,
			Formula: "gamma x drop",
			Why:     "Each foot or metre of water standing over the outlet adds its weight.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "drop / gamma",
				Did:  "You divided {drop} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "pressure", Says: "pressure at the {fixture} on level {level}", Measure: &measure.Pressure,
			Formula: "header + gained",
			Why:     "The header pushes from above and the water under it adds its own weight. On the way down pressure grows.",
			Slips: []problems.Slip{
				{
					ID: "subtracted", Formula: "header - gained",
					Did:  "You took {gained} off the {header} of the header.",
					Why:  "That is the sum for going up. In a down-feed the lowest floors have the most pressure, and that is why they need reducing valves.",
					Next: "Up takes away, down gives. Say it before you write the sign.",
				},
				{
					ID: "header-left-out", Formula: "gained",
					Did:  "You gave {gained}, the weight of the water under the header.",
					Why:  "That would be so if the header stood at zero. It stands at {header}, and every outlet under it has that too.",
					Next: "Start from the gauge you know, then add or take away.",
				},
			},
		},
	},
	Holds: "A down-feed hangs on its header: what an outlet has is the header's pressure and the weight of the water between. The top floor has least. Its pressure must never go below zero, also when the pumps stop, or the top of the riser draws in air and dirty water.",
	Cautions: []string{
		"A riser that is shut or drained from below pulls a vacuum at its top. Open a high tap, tell the occupants and check the vacuum relief.",
		relieveFirst,
	},
	Sources: []problems.Source{
		waterColumn,
		{Says: "Header under the ceiling of the highest level, 40 to 50 psi (280 to 350 kPa) in it", Confidence: solver.Practice},
	},
	Draw: drawDownFeed,
	Solve: func(w problems.World) float64 {
		b := w.Building
		return float64(b.At(w.Focus, b.Levels[w.Focus].Elevation+w.Length("outlet"), w.Gamma()))
	},
}

func init() { add(&downFeedPressureSkill) }

// fixture is an outlet by its name and height above its floor.
type fixture struct {
	name   string
	us, si float64
}

// downFixtures are outlets whose own height shows in the answer.
var downFixtures = []fixture{{"shower head", building.ShowerFeet, building.ShowerMetres}, {"lavatory", 3, 0.9}, {"kitchen sink", 3, 0.9}}

// drawDownFeed draws a level of the top zone, which hangs on the header with
// no valve.
func drawDownFeed(s *building.Sheet) {
	t, plan, ok := downFeed(s, building.Plan{Uses: zoned, Min: 12, Max: 36, NoSkip: true}, 0, s.UsualZones())
	if !ok {
		return
	}
	fix := downFixtures[s.Int(0, len(downFixtures)-1)]
	up := s.Pick([]float64{fix.us}, []float64{fix.si})
	b := t.Building
	highest := b.Zones[len(b.Zones)-1]
	var levels []int
	for i := highest.Bottom; i < b.Top(); i++ {
		n := i - b.Ground + 1
		gained := head(s, float64(t.Storeys-n)*t.Floor.Value+s.DownValve()-up)
		if n > 1 && t.Storeys-n > 1 && t.Storeys-n != n-1 && t.Storeys-n != n-2 && gained < 0.9*plan.Header {
			levels = append(levels, n)
		}
	}
	n, ok := pick(s, levels)
	if !ok {
		n = t.Storeys - 2
	}
	s.Focus = t.Storey(n)
	s.Name("fixture", fix.name)
	s.Set("header", plan.Header)
	s.Set("top_level", float64(t.Storeys))
	s.Set("level", float64(n))
	s.SetHeight("floor_height", t.Floor)
	s.Set("header_up", s.DownValve())
	s.Set("outlet", up)
}

// downFeed draws towers until one can be laid out as a down-feed of at least
// so many zones behind valves, with one of the usual header pressures. It
// returns the plan it was laid out by.
func downFeed(s *building.Sheet, towers building.Plan, valves int, plan building.ZonePlan) (*building.Tower, building.ZonePlan, bool) {
	headers := []float64{260, 280, 300, 325, 350}
	if s.US() {
		headers = []float64{40, 42, 45, 48, 50}
	}
	for range maxTowers {
		t := s.Tower(towers)
		s.Street(0, "on the gauge in the meter room")
		plan.Header = headers[s.Int(0, len(headers)-1)]
		if s.DownFeed(t, plan) && len(t.Zones) > valves {
			return t, plan, true
		}
	}
	return nil, plan, false
}

// maxTowers bounds how many towers are drawn for a down-feed; most take the
// first.
const maxTowers = 60
