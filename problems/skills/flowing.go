package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var staticOrFlowingSkill = problems.Skill{
	ID: "static-or-flowing", Title: "Static or flowing: is the pipe too small",
	Chapter: 1, Order: 200, Year: 2, Kind: problems.Choice,
	Ask: "With no water flowing the gauge in the meter room reads {street}. The shower on level {level} is {height} above that gauge. At the design flow the plan allows {friction} of friction on the way. With that flow running, a gauge at the shower reads {flowing}. Gauges and charts agree within {spread}. Is the pipe as planned, or is it too small or choked?",
	Givens: []problems.Given{
		{Name: "street", Says: "street pressure on the gauge in the meter room, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "height", Says: "height of the shower head above that gauge", Measure: &measure.Height},
		{Name: "friction", Says: "friction on the way at design flow, by the plan", Measure: &measure.Pressure},
		{Name: "flowing", Says: "gauge at the shower with the design flow running", Measure: &measure.Pressure, Plate: true},
		{Name: "spread", Says: "how closely gauges and charts agree", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "lost", Says: "pressure lost going up", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "The height costs the same whether the water stands or runs.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "height / gamma",
				Did:  "You divided {height} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. Here the height is known and the pressure is wanted, so multiply.",
				Next: "In US units the psi is less than half the feet; in SI the kPa is about ten times the metres.",
			}},
		},
		{
			Name: "standing", Says: "static pressure at the shower", Measure: &measure.Pressure,
			Formula: "street - lost",
			Why:     "With no flow there is no friction: only the height comes off. A pipe of any bore shows this same static.",
			Slips: []problems.Slip{{
				ID: "added", Formula: "street + lost",
				Did:  "You added {lost} to {street}.",
				Why:  "Going up, the water above the gauge works against the street.",
				Next: "Up takes away, down gives. Say it before you write the sign.",
			}},
		},
		{
			Name: "residual", Says: "what the shower should have at design flow", Measure: &measure.Pressure,
			Formula: "standing - friction",
			Why:     "Running water pays for the height and for the friction of the pipe as well.",
			Slips: []problems.Slip{
				{
					ID: "static-at-flow", Formula: "standing",
					Did:  "You took the static pressure, {standing}, for the pressure at flow.",
					Why:  "Static is what stands there with every tap shut. Once water runs, a sound pipe loses {friction} here too, and that is no fault.",
					Next: "Ask of each pressure: is the water running? If it is, friction comes off.",
				},
				{
					ID: "friction-added", Formula: "standing + friction",
					Did:  "You added the friction, {friction}, to the static pressure.",
					Why:  "Friction eats pressure. Running water never arrives with more than the static there.",
					Next: "Flowing is the lower of the two readings. Check that yours is.",
				},
				{
					ID: "height-left-out", Formula: "street - friction",
					Did:  "You took the friction off the street pressure in the meter room.",
					Why:  "The height of {height} is still to be paid before the shower.",
					Next: "Bring the static up to the outlet first, then let the water run.",
				},
			},
		},
		{
			Name: "verdict", Says: "what the flowing reading says of the pipe", Measure: &measure.Answer,
			Formula: "residual - flowing > spread", Choices: []string{"as planned", "too small"},
			Why: "Only the flowing reading can show a pipe that is too small or choked: it falls well below static less the planned friction.",
		},
	},
	Holds: "Static pressure is the same through a wide pipe and a narrow one, because friction needs flow. So a good static reading proves nothing about bore: 60 psi with the tap shut and 12 with it open is a small or choked pipe. Read both, at one place, and compare the drop with the drop that was planned.",
	Cautions: []string{
		"Before a strainer, valve or pipe is opened to look for the choke: isolate, relieve the pressure and prove it gone on a gauge.",
	},
	Sources: []problems.Source{
		{Says: "Static less height less friction is the residual: common practice, no source", Confidence: solver.Practice},
		{Says: "Gauges and charts within 3 psi (20 kPa): common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 4, Max: 9})
		friction := s.Pick([]float64{5, 6, 7, 8, 10}, []float64{35, 40, 50, 60, 70})
		missing := 0.0
		if s.Chance(0.5) {
			missing = s.PickPlate([]float64{8, 10, 12, 14}, []float64{55, 70, 85, 100})
		}
		type found struct {
			street, flowing float64
			n               int
		}
		var fit []found
		for _, street := range gaugeReadings(s) {
			for n := 2; n <= t.Storeys; n++ {
				left := street - onPlate(s, head(s, t.Up(n)+s.Shower())+friction)
				if flowing := math.Ceil(left - missing - 0.3); flowing >= s.PickPlate([]float64{8}, []float64{55}) && left < 0.75*street {
					fit = append(fit, found{street, flowing, n})
				}
			}
		}
		f, _ := pick(s, fit)
		s.SetStreet(f.street, f.street-s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), 0, "on the gauge in the meter room")
		s.Focus = t.Storey(f.n)
		s.Building.Friction = unit.Gradient(float64(s.Press(friction)) / float64(s.Length(t.Up(f.n)+s.Shower())))
		s.Name("level", t.Level(f.n))
		s.Set("street", f.street)
		setHeight(s, "height", t.Up(f.n)+s.Shower())
		s.Set("friction", friction)
		s.Set("flowing", f.flowing)
		s.Set("spread", s.Pick([]float64{3}, []float64{20}))
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		above := b.Highest(w.Focus) - b.Street.GaugeAt
		residual := b.At(w.Focus, b.Highest(w.Focus), w.Gamma()) - b.Friction.OfColumn(above)
		if residual-w.Pressure("flowing") > w.Pressure("spread") {
			return 1
		}
		return 0
	},
}

func init() { add(&staticOrFlowingSkill) }

var flowRootPressureSkill = problems.Skill{
	ID: "flow-root-pressure", Title: "Flow follows the root of pressure",
	Chapter: 1, Order: 210, Year: 2, Kind: problems.Sum,
	Ask: "The maker's sheet gives a shower head {rated_flow} at {rated} of flowing pressure. On level {level} a gauge beside the running head reads {found}. What does that shower give there?",
	Givens: []problems.Given{
		{Name: "rated_flow", Says: "flow on the maker's sheet", Measure: &measure.OutletFlow},
		{Name: "rated", Says: "flowing pressure on the maker's sheet", Measure: &measure.Pressure},
		{Name: "found", Says: "flowing pressure found at the head", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "pressure_share", Says: "share of the rated pressure that is there", Measure: &measure.Share,
			Formula: "found / rated",
			Why:     "The flow wanted is at the pressure found, so that pressure stands on top.",
			Slips: []problems.Slip{{
				ID: "upside-down", Formula: "rated / found",
				Did:  "You divided {rated} by {found}.",
				Why:  "That share is more than one, and it would make the shower stronger at a lower pressure.",
				Next: "Less pressure, less flow. The share that you multiply by must be less than one.",
			}},
		},
		{
			Name: "flow", Says: "flow at the pressure found", Measure: &measure.OutletFlow,
			Formula: "rated_flow x sqrt(pressure_share)",
			Why:     "Pressure at an opening goes into speed, and it grows as the square of the speed. So the flow goes with the root of the pressure.",
			Slips: []problems.Slip{
				{
					ID: "linear", Formula: "rated_flow x pressure_share",
					Did:  "You multiplied by the share of pressure itself, {pressure_share}, and took no root.",
					Why:  "Twice the flow needs four times the pressure. So the flow falls off more slowly than the pressure does.",
					Next: "A quarter of the pressure still gives half the flow. Try your rule on that.",
				},
				{
					ID: "halved", Formula: "rated_flow x pressure_share / 2",
					Did:  "You took half of the share where its root was wanted.",
					Why:  "A root is the number which times itself gives the share. For a share below one it is larger than the share, not half of it.",
					Next: "Multiply your root by itself: the share must come back.",
				},
			},
		},
	},
	Holds: "The pressure at an open outlet turns into speed, and doubling the speed takes four times the pressure. It holds for one opening that does not change: a head, a nozzle, a fixed valve. A head with a flow regulator holds its flow instead, and gives its rated flow over a wide range.",
	Cautions: []string{
		"More pressure at one side of a shower valve shifts the mix: check the temperature at the head, and the valve's own limit, after any change of pressure.",
	},
	Sources: []problems.Source{
		{Says: "Flow of a nozzle at two pressures: Hydraulic Institute, Engineering Data Library, theoretical discharge of nozzles, 94.0 gpm at 10 psi and 163 gpm at 30 psi for 1 in", Confidence: solver.Confirmed},
		{Says: "Shower heads of 1.5 to 2.5 gpm (5.7 to 9.5 L/min), rated at 80 psi (550 kPa): common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 4, Max: 12})
		type found struct {
			street, there float64
			n             int
		}
		var fit []found
		drop := s.Pick([]float64{6, 8, 10}, []float64{40, 55, 70})
		for _, street := range []float64{55, 60, 65, 70, 75} {
			if !s.US() {
				street = math.Round(street*6.895/25) * 25
			}
			for n := 2; n <= t.Storeys; n++ {
				there := math.Round(street - head(s, t.Up(n)+s.Shower()) - drop)
				if there >= s.Pick([]float64{15}, []float64{100}) && there <= s.Pick([]float64{45}, []float64{310}) {
					fit = append(fit, found{street, there, n})
				}
			}
		}
		f, _ := pick(s, fit)
		b := s.Building
		b.Street.Static, b.Street.Low = s.Press(f.street), s.Press(f.street-s.Pick([]float64{5, 8}, []float64{35, 50}))
		b.Street.GaugeName = "on the gauge in the meter room"
		b.Friction = unit.Gradient(float64(s.Press(drop)) / float64(s.Length(t.Up(f.n)+s.Shower())))
		s.Focus = t.Storey(f.n)
		s.Name("level", t.Level(f.n))
		s.Set("rated_flow", s.Pick([]float64{1.5, 1.75, 1.8, 2, 2.5}, []float64{5.7, 6.6, 7.6, 9.5}))
		s.Set("rated", s.Pick([]float64{60, 80}, []float64{410, 550}))
		s.Set("found", f.there)
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.FlowAtPressure(w.Flow("rated_flow"), w.Pressure("rated"), w.Pressure("found")))
	},
}

func init() { add(&flowRootPressureSkill) }
