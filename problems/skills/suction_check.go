package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var suctionCheckSkill = problems.Skill{
	ID: "suction-check", Title: "Is there enough at the pump's inlet",
	Chapter: 4, Order: 40, Year: 3, Kind: problems.Sum,
	Ask: "The meter is in the cellar, the booster {rise} above it. The gauge ahead of the meter shows {static} at night and {low_street} at the peak. At design flow meter and backflow preventer take {entry_loss}, strainer and pipe to the pump {pipe_loss}. No less than {allowed} may be left at the inlet ({allowed_says}). Is the suction high enough?",
	Givens: []problems.Given{
		{Name: "static", Says: "highest street pressure, no flow", Measure: &measure.Pressure, Plate: true},
		{Name: "low_street", Says: "street pressure at peak flow", Measure: &measure.Pressure, Plate: true},
		{Name: "entry_loss", Says: "loss of meter and backflow preventer", Measure: &measure.Pressure},
		{Name: "pipe_loss", Says: "loss of strainer and pipe to the pump", Measure: &measure.Pressure},
		{Name: "rise", Says: "height of the pump's inlet above the gauge", Measure: &measure.Height},
		{Name: "allowed", Says: "least pressure allowed at the inlet", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "behind_meter", Says: "pressure behind meter and backflow preventer", Measure: &measure.Pressure,
			Formula: "low_street - entry_loss",
			Why:     "The suction is at its lowest when the pumps draw most and the street is at its lowest.",
			Slips: []problems.Slip{
				{
					ID: "static-street", Formula: "static - entry_loss",
					Did:  "You began with {static}, the street with no flow.",
					Why:  "The pump pulls its hardest at the peak, and then the street stands at {low_street}.",
					Next: "A least value is checked at the worst moment. When is that?",
				},
				{
					ID: "entry-left-out", Formula: "low_street",
					Did:  "You left out the {entry_loss} of meter and backflow preventer.",
					Why:  "They stand between the gauge and the pump, and a backflow preventer is often the largest loss on the suction side.",
					Next: "Walk from the gauge to the pump and count what the water goes through.",
				},
			},
		},
		{
			Name: "column", Says: "pressure lost on the rise to the pump", Measure: &measure.Pressure,
			Formula: "gamma x rise",
			Why:     "The pump stands higher than the gauge, and the street must lift the water to it.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "rise / gamma",
				Did:  "You divided {rise} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known here and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "suction", Says: "pressure at the pump's inlet", Measure: &measure.Pressure,
			Formula: "behind_meter - pipe_loss - column",
			Why:     "What strainer, pipe and rise take is missing at the inlet.",
			Slips: []problems.Slip{
				{
					ID: "pipe-left-out", Formula: "behind_meter - column",
					Did:  "You left out the {pipe_loss} of strainer and pipe.",
					Why:  "They lie on the suction side. When the strainer clogs they are the first to starve the pump.",
					Next: "Gauge to inlet: devices, pipe, height. Three things to take off.",
				},
				{
					ID: "rise-added", Formula: "behind_meter - pipe_loss + column",
					Did:  "You added the {column} of the rise.",
					Why:  "The pump stands above the gauge. Going up takes pressure away.",
					Next: "Up takes away, down gives. Say it before you write the sign.",
				},
			},
		},
		{
			Name: "verdict", Says: "the suction", Measure: &measure.Answer, Choices: []string{"is high enough", "is too low"},
			Formula: "suction < allowed",
			Why:     "Below the allowed pressure the cut-off stops the pump, and if it did not, the street's other users would feel it.",
			Slips: []problems.Slip{{
				ID: "wrong-way-round", Formula: "suction > allowed",
				Did:  "You compared {suction} with {allowed} the wrong way round.",
				Why:  "The limit is a least value. More than it is well, less is not.",
				Next: "Say it in words: has, must have. Less than it must have is too low.",
			}},
		},
	},
	Holds:    "A pump that takes more than the street brings pulls the main down, for the neighbours too, and dirty water may be drawn in. So codes and utilities ask for a least pressure at the inlet, with a cut-off that stops the pump there. Check it at peak flow: lowest street, less every loss up to the inlet. Local limits differ: ask the utility.",
	Cautions: []string{lowSuction, "There is no plain bypass round a backflow preventer to win suction pressure."},
	Sources: []problems.Source{
		{Says: "Cut-off within 5 ft of the inlet, set at 10 psi (69 kPa) or more: UPC (2024), 609.9", Confidence: solver.Confirmed},
		{Says: "Cut-off at 10 psi (69 kPa): IPC (2021), 606.5.5", Confidence: solver.Memory},
		{Says: "20 psi (140 kPa) to be kept in the main by many utilities: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 12, Max: 22, Cellar: true})
		rise := s.Pick([]float64{9, 10, 11, 12, 13, 14}, []float64{2.8, 3.0, 3.4, 3.6, 4.0, 4.2})
		pipe := s.Pick([]float64{3, 4, 5}, []float64{20, 25, 30, 35})
		entry := s.Meter() + s.Backflow(s.Chance(0.3))
		allowed := s.Profile.SuctionMin.Value(s.System).Value
		low := s.Chance(0.5)
		var fit []float64
		for _, p := range upTo(s.PickPlate([]float64{24}, []float64{165}), s.PickPlate([]float64{52}, []float64{360}), s.PickPlate([]float64{1}, []float64{5})) {
			left := p - onPlate(s, entry+pipe+head(s, rise))
			over, step := left-onPlate(s, allowed), s.PickPlate([]float64{1}, []float64{7})
			if left > 2*step && math.Abs(over) > 2*step && over < 14*step && (over < 0) == low {
				fit = append(fit, p)
			}
		}
		peak, _ := pick(s, fit)
		static := peak + s.PickPlate([]float64{8, 10, 12}, []float64{50, 75})
		s.SetStreet(static, peak, -rise, "on the gauge in the cellar")
		shut := s.PlatePress(lift(s, t, -rise)) - s.Building.Street.Static
		s.Building.Booster = &solver.Booster{ShutOff: shut, Boost: shut / 1.2}
		feedAbove(s, 0)
		s.Focus = t.Storey(1)
		s.Name("allowed_says", s.Profile.SuctionMin.Words)
		s.Set("static", static)
		s.Set("low_street", peak)
		s.Set("entry_loss", entry)
		s.Set("pipe_loss", pipe)
		s.Set("rise", rise)
		s.Set("allowed", allowed)
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		behind := b.Street.Low - b.Losses.Total() - w.Pressure("pipe_loss")
		if solver.FloorPressure(behind, w.Gamma(), b.Booster.Elevation-b.Street.GaugeAt) < w.Pressure("allowed") {
			return 1
		}
		return 0
	},
}

func init() { add(&suctionCheckSkill) }
