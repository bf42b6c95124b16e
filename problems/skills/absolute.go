package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// Sites above sea level with their standard atmosphere, rounded as the trade
// uses it. US Standard Atmosphere (1976): 14.696 psia at sea level, 12.23 at
// 5,000 ft, 11.78 at 6,000 ft; 89.9 kPa at 1,000 m.
type site struct {
	altitude   string
	atmosphere float64
}

var (
	sitesUS = []site{{"3,500 ft", 12.9}, {"4,200 ft", 12.6}, {"5,000 ft", 12.2}, {"6,000 ft", 11.8}}
	sitesSI = []site{{"700 m", 93}, {"1,000 m", 89.9}, {"1,050 m", 89.3}, {"1,400 m", 85.6}}
)

var absolutePressureSkill = problems.Skill{
	ID: "absolute-pressure", Title: "From gauge to absolute pressure",
	Chapter: 1, Order: 180, Year: 2, Kind: problems.Sum,
	Ask: "The building stands {altitude} above sea level, where the atmosphere is {site_air}. With no water flowing the gauge in the meter room reads {street}. A pressure tank stands on level {level}, {tank_up} above that gauge. What is the absolute pressure of the air in the tank?",
	Givens: []problems.Given{
		{Name: "street", Says: "street pressure on the gauge in the meter room, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "tank_up", Says: "height of the tank above the gauge", Measure: &measure.Height},
		{Name: "site_air", Says: "atmosphere at the site, {altitude} above sea level", Measure: &measure.AbsPressure},
	},
	Rules: []problems.Rule{
		{
			Name: "lost", Says: "pressure lost going up to the tank", Measure: &measure.Pressure,
			Formula: "gamma x tank_up",
			Why:     "The water standing between the two weighs on the gauge, not on the tank above it.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "tank_up / gamma",
				Did:  "You divided {tank_up} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known and the pressure is wanted, so multiply.",
				Next: "In US units the psi is less than half the feet; in SI the kPa is about ten times the metres.",
			}},
		},
		{
			Name: "at_tank", Says: "gauge pressure at the tank", Measure: &measure.Pressure,
			Formula: "street - lost",
			Why:     "A gauge on the tank itself would read what the street has left at that height.",
			Slips: []problems.Slip{{
				ID: "added", Formula: "street + lost",
				Did:  "You added {lost} to {street}.",
				Why:  "The tank stands above the gauge. Going up, pressure is lost.",
				Next: "Up takes away, down gives. Say it before you write the sign.",
			}},
		},
		{
			Name: "absolute", Says: "absolute pressure of the air in the tank", Measure: &measure.AbsPressure,
			Formula: "at_tank + site_air",
			Why:     "A gauge calls the open air zero. Counted from true vacuum, the air of the site is there as well.",
			Slips: []problems.Slip{
				{
					ID: "atmosphere-left-out", Formula: "at_tank",
					Did:  "You gave {at_tank}, the gauge pressure, as the absolute one.",
					Why:  "A gauge in the open reads zero, yet the open air here has {site_air}. Gas laws count from vacuum, so that part must be in.",
					Next: "Ask what an open tank would have by your sum. Zero means gauge; about an atmosphere means absolute.",
				},
				{
					ID: "atmosphere-subtracted", Formula: "at_tank - site_air",
					Did:  "You took the atmosphere, {site_air}, off the gauge pressure.",
					Why:  "The atmosphere stands under every gauge reading. Counted from vacuum there is more, not less.",
					Next: "Absolute is the larger of the two numbers. Check that yours grew.",
				},
				{
					ID: "sea-level-air", Formula: "at_tank + 14.7", Metric: "at_tank + 101.3",
					Did:  "You added the atmosphere of sea level.",
					Why:  "At {altitude} there is less air above the site: {site_air}. In a tank sum that shifts the volume.",
					Next: "Ask where the job is. Around half a psi goes for each 1,000 ft, or 11 to 12 kPa for each 1,000 m.",
				},
			},
		},
	},
	Holds: "Gauge pressure counts from the air around the gauge, absolute pressure from vacuum; between them lies the atmosphere of the site. Differences of pressure are the same in both. Only where a gas is squeezed, as in a pressure tank or an expansion tank, must the absolute one be used.",
	Cautions: []string{
		"A pressure tank is a pressure vessel: let the water out, then the air, before any opening is loosened.",
		"Pre-charge with dry air or nitrogen, by gauge, and stay within the rating on the plate.",
	},
	Sources: []problems.Source{
		{Says: "Standard atmosphere 101,325 Pa (14.696 psi). NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Atmosphere by altitude: US Standard Atmosphere (1976), 12.23 psia at 5,000 ft", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 4, Max: 10})
		at, _ := pick(s, sitesSI)
		if s.US() {
			at, _ = pick(s, sitesUS)
		}
		type found struct {
			street float64
			n      int
		}
		var fit []found
		for _, street := range gaugeReadings(s) {
			for n := 2; n <= t.Storeys; n++ {
				if left := street - plateHead(s, t.Up(n)); left >= s.PickPlate([]float64{20}, []float64{140}) {
					fit = append(fit, found{street, n})
				}
			}
		}
		f, _ := pick(s, fit)
		s.SetStreet(f.street, f.street-s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), 0, "on the gauge in the meter room")
		s.Focus = t.Storey(f.n)
		s.Name("level", t.Level(f.n))
		s.Name("altitude", at.altitude)
		s.Set("street", f.street)
		setHeight(s, "tank_up", t.Up(f.n))
		s.Set("site_air", at.atmosphere)
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		gauge := b.At(w.Focus, b.Levels[w.Focus].Elevation, w.Gamma())
		return float64(solver.AbsolutePressure(gauge, w.Pressure("site_air")))
	},
}

func init() { add(&absolutePressureSkill) }

var siphonDepthSkill = problems.Skill{
	ID: "siphon-depth", Title: "How deep a vacuum draws",
	Chapter: 1, Order: 190, Year: 2, Kind: problems.Choice,
	Ask: "The main was shut and drained, and a gauge at the faucet on level {level} shows a vacuum of {vacuum}. A hose hangs from that faucet into an open tank; the water in the tank stands {below} below the faucet. How high does the vacuum lift water, and is the water of the tank drawn into the pipe?",
	Givens: []problems.Given{
		{Name: "vacuum", Says: "vacuum at the faucet, below the atmosphere", Measure: &measure.Vacuum},
		{Name: "below", Says: "height from the water in the tank up to the faucet", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "lifted", Says: "height to which the vacuum lifts water", Measure: &measure.Height,
			Formula: "head_per_vacuum x vacuum",
			Why:     "The open air pushes on the water in the tank, and the pipe pushes back less. The water rises until its weight makes up the difference.",
			Slips: []problems.Slip{
				{
					ID: "divided", Formula: "vacuum / head_per_vacuum",
					Did:  "You divided {vacuum} by {head_per_vacuum}.",
					Why:  "The factor is the height that one unit of vacuum lifts. Each further unit lifts as much again, so multiply.",
					Next: "Full vacuum, about 30 inHg or 101 kPa, lifts about 34 ft or 10.3 m. Yours must be the same share of that.",
				},
				{
					ID: "what-is-left", Formula: "head_per_vacuum x (29.92 - vacuum)", Metric: "head_per_vacuum x (101.3 - vacuum)",
					Did:  "You used what is left of the atmosphere in the pipe, not the vacuum.",
					Why:  "What is left in the pipe holds the water down. What is missing there, {vacuum}, is what the outside air has over it.",
					Next: "No vacuum lifts nothing. If your sum gives its greatest height at no vacuum, it counts the wrong part.",
				},
			},
		},
		{
			Name: "drawn", Says: "is the water of the tank drawn into the pipe", Measure: &measure.Answer,
			Formula: "lifted > below", Choices: []string{"no", "yes"},
			Why: "Once the lift is more than the height up to the faucet, the water goes over the top and down into the pipe.",
			Slips: []problems.Slip{{
				ID: "wrong-way-round", Formula: "lifted < below",
				Did:  "You compared {lifted} with {below} the wrong way round.",
				Why:  "Water that can be lifted higher than it has to climb gets into the pipe; water that cannot stays in the hose.",
				Next: "Draw the hose and mark both heights on it. See which mark is the higher.",
			}},
		},
	},
	Holds: "A vacuum does not pull; the air outside pushes. One inch of mercury less in the pipe lets it push water up 1.13 ft, one kilopascal 0.102 m. Even a perfect vacuum stops at about 34 ft (10.3 m) at sea level. A standing column that falls away in a tall riser makes such a vacuum at its top.",
	Cautions: []string{
		"Shutting or draining a tall riser can draw dirty water in at the top: warn the occupants, and open a high tap so that air gets in.",
		"No hose is left in a tank, sink or bucket. A hose outlet has its own vacuum breaker; what a tank needs instead is for the hazard survey, the local code and a certified tester to say.",
		"A sum that says no is no protection: the next vacuum may be deeper. Report the cross-connection.",
	},
	Sources: []problems.Source{
		{Says: "Inch of mercury and foot of water, conventional: 1 inHg is 1.1329 ft of water. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Siphons and how they are broken: Cross-Connection Control Manual, EPA 816-R-03-002 (2003)", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 4, Max: 16})
		street, _ := pick(s, gaugeReadings(s))
		s.SetStreet(street, street-s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), 0, "on the gauge in the meter room")
		n := s.Int(3, t.Storeys)
		s.Focus = t.Storey(n)
		s.Name("level", t.Level(n))
		vacuum := s.Pick([]float64{5, 6, 7, 8, 9, 10, 11, 12}, []float64{14, 16, 18, 20, 22, 25, 28, 30, 35})
		lift := vacuum * s.Pick([]float64{1.13}, []float64{0.102})
		drawn := s.Chance(0.5)
		var fit []float64
		for _, d := range tankDepths(s) {
			if over := lift/d - 1; drawn && over > 0.2 && over < 0.9 || !drawn && over < -0.2 && over > -0.5 {
				fit = append(fit, d)
			}
		}
		below, _ := pick(s, fit)
		s.Set("vacuum", vacuum)
		s.Set("below", below)
	},
	Solve: func(w problems.World) float64 {
		if solver.Lift(w.Pressure("vacuum"), w.SI("head_per_vacuum")) > w.Length("below") {
			return 1
		}
		return 0
	},
}

func init() { add(&siphonDepthSkill) }

// tankDepths are heights from the water of an open tank up to a faucet.
// Common practice, no source.
func tankDepths(s *building.Sheet) []float64 {
	if s.System == unit.US {
		return []float64{3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 12, 14, 16, 18}
	}
	return []float64{0.9, 1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.4, 2.8, 3.2, 3.6, 4.0, 4.5, 5.0}
}
