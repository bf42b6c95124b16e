package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var pressureBelowGaugeSkill = problems.Skill{
	ID: "pressure-below-gauge", Title: "Pressure below the gauge, going down",
	Chapter: 1, Order: 150, Year: 1, Kind: problems.Sum,
	Ask: "The building is fed down from a header on the top level. The gauge on the header reads {reading} with no water flowing and is {gauge_up} above the floor of level 1. What does a gauge read on the shower arm on level {level}, {outlet_up} above the same floor?",
	Givens: []problems.Given{
		{Name: "reading", Says: "reading of the gauge on the header, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "gauge_up", Says: "gauge on the header, above the floor of level 1", Measure: &measure.Height},
		{Name: "outlet_up", Says: "shower arm on level {level}, above the floor of level 1", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "drop", Says: "height from the gauge down to the shower arm", Measure: &measure.Height,
			Formula: "gauge_up - outlet_up",
			Why:     "Only the water between the two points makes the difference between them.",
			Slips: []problems.Slip{
				{
					ID: "whole-height", Formula: "gauge_up",
					Did:  "You took {gauge_up}, the whole height from the header down to level 1.",
					Why:  "The shower is not on level 1: {outlet_up} of that height is below it and presses on other floors.",
					Next: "Name both ends of the height before you write it: from the header's gauge, to the shower arm.",
				},
				{
					ID: "height-from-ground", Formula: "outlet_up",
					Did:  "You took {outlet_up}, the height of the shower arm above level 1.",
					Why:  "This water comes from above. What counts is how far the shower is below the gauge, not how far above the ground.",
					Next: "Follow the water with a finger, from the header to the shower. That way is the height.",
				},
			},
		},
		{
			Name: "gained", Says: "pressure gained going down", Measure: &measure.Pressure,
			Formula: "gamma x drop",
			Why:     "Each foot or metre of water below the gauge adds its weight.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "drop / gamma",
				Did:  "You divided {drop} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known and the pressure is wanted, so multiply.",
				Next: "In US units the psi is less than half the feet; in SI the kPa is about ten times the metres.",
			}},
		},
		{
			Name: "pressure", Says: "pressure at the shower on level {level}", Measure: &measure.Pressure,
			Formula: "reading + gained",
			Why:     "The header's pressure is there already; the water hanging below it comes on top.",
			Slips: []problems.Slip{
				{
					ID: "subtracted", Formula: "reading - gained",
					Did:  "You took {gained} off {reading}.",
					Why:  "That would be right going up. Below the gauge the water stands on the shower and adds to what the header gives.",
					Next: "Up takes away, down gives. Say it before you write the sign.",
				},
				{
					ID: "gained-as-answer", Formula: "gained",
					Did:  "You gave {gained}, what the way down adds, as the answer.",
					Why:  "The header itself stands at {reading}, and that reaches every floor below. An open tank would have nothing there, a header has.",
					Next: "Read the question once more when the last line is written: gained, or in all?",
				},
				{
					ID: "depth-left-out", Formula: "reading",
					Did:  "You gave {reading}, the reading of the header, for the shower too.",
					Why:  "Without flow there is no friction, but the weight of the water is still there. Lower down the pressure is higher.",
					Next: "Two gauges on one riser agree only where they hang at one height.",
				},
			},
		},
	},
	Holds: "Standing water gets heavier on the way down: 0.433 psi for each foot, 9.81 kPa for each metre. So the lowest floor of a down-fed zone has the highest pressure, and with no water flowing nothing takes it off again.",
	Cautions: []string{
		standingColumn,
	},
	Sources: []problems.Source{
		{Says: "Foot of water, conventional: 2,989.067 Pa. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Pressure in a header: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 6, Max: 18})
		up := t.Up(t.Storeys) + s.DownValve()
		type found struct {
			reading float64
			n       int
		}
		var fit []found
		for _, p := range headerReadings(s) {
			for n := 2; n < t.Storeys; n++ {
				gained := plateHead(s, up-t.Up(n)-s.Shower())
				if all := p + gained; all >= 1.25*p && all <= 0.95*onPlate(s, s.Most()) {
					fit = append(fit, found{p, n})
				}
			}
		}
		f, _ := pick(s, fit)
		s.Street(0, "on the gauge in the meter room")
		b := s.Building
		b.Header = &solver.Header{Elevation: s.Length(up), Pressure: s.PlatePress(f.reading)}
		b.Zones = []solver.Zone{{Name: "down-feed", Bottom: 0, Top: b.Top(), Supply: solver.FromHeader}}
		s.Focus = t.Storey(f.n)
		s.Name("level", t.Level(f.n))
		s.Set("reading", f.reading)
		setHeight(s, "gauge_up", up)
		setHeight(s, "outlet_up", t.Up(f.n)+s.Shower())
	},
	Solve: func(w problems.World) float64 {
		return float64(w.Building.At(w.Focus, w.Building.Highest(w.Focus), w.Gamma()))
	},
}

func init() { add(&pressureBelowGaugeSkill) }

// headerReadings are pressures in the header of a down-feed system, as its
// gauge shows them. Common practice, no source.
func headerReadings(s *building.Sheet) []float64 {
	if s.PlateUS() {
		return []float64{25, 28, 30, 32, 35, 38, 40, 42, 45}
	}
	return []float64{180, 200, 210, 225, 240, 250, 275, 300}
}
