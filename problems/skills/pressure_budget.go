package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var pressureBudgetSkill = problems.Skill{
	ID: "pressure-budget", Title: "What is left for friction",
	Chapter: 3, Order: 100, Year: 2, Kind: problems.Sum,
	Ask: "The lowest street pressure at peak is {street} on the gauge in the meter room, ahead of the meter. The highest outlet is {height} above it and must keep {least} ({limit_says}). At the design flow of {design_flow} the meter takes {meter_loss} and the backflow preventer {backflow_loss}. What pressure is left for friction in the pipe?",
	Givens: []problems.Given{
		{Name: "street", Says: "lowest street pressure at peak, ahead of the meter", Measure: &measure.Pressure, Plate: true},
		{Name: "height", Says: "height of the highest outlet above the gauge", Measure: &measure.Height},
		{Name: "meter_loss", Says: "loss of the meter at design flow", Measure: &measure.Pressure},
		{Name: "backflow_loss", Says: "loss of the backflow preventer at design flow", Measure: &measure.Pressure},
		{Name: "least", Says: "pressure to be kept at the highest outlet", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "column", Says: "pressure that the height costs", Measure: &measure.Pressure,
			Formula: "gamma x height",
			Why:     "Each foot or metre of water above the gauge weighs on it.",
			Slips: []problems.Slip{
				{
					ID: "height-as-pressure", Formula: "height",
					Did:  "You took the height itself, {height}, as a pressure.",
					Why:  "Feet and psi are not the same thing: a foot of water is less than half a psi. In SI a metre is nearly ten kilopascals.",
					Next: "Write the unit on each number of the sum. All must be the same.",
				},
				{
					ID: "divided", Formula: "height / gamma",
					Did:  "You divided {height} by {gamma}.",
					Why:  "Dividing turns a pressure into a height. Here the height is known, so multiply.",
					Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
				},
			},
		},
		{
			Name: "devices", Says: "what the devices take at design flow", Measure: &measure.Pressure,
			Formula: "meter_loss + backflow_loss",
			Why:     "Both stand between the gauge and the pipe.",
			Slips: []problems.Slip{
				{
					ID: "backflow-left-out", Formula: "meter_loss",
					Did:  "You left the backflow preventer out.",
					Why:  "The water must hold its springs open. That costs {backflow_loss} at the design flow, and often it is the largest loss of the entry.",
					Next: "Walk along the pipe from the gauge and write down each device.",
				},
				{
					ID: "meter-left-out", Formula: "backflow_loss",
					Did:  "You left the meter out.",
					Why:  "The gauge stands ahead of it. All the water still has to turn it.",
					Next: "Look where the gauge sits. What comes after it must be paid for.",
				},
			},
		},
		{
			Name: "left", Says: "pressure left for friction", Measure: &measure.Pressure,
			Formula: "street - column - devices - least",
			Why:     "Height, devices and the outlet are served first. What remains may be lost along the pipe.",
			Slips: []problems.Slip{
				{
					ID: "least-left-out", Formula: "street - column - devices",
					Did:  "You spent what the outlet must keep as well.",
					Why:  "The pipe would lose it all, and the top shower would only drip. {least} must arrive there.",
					Next: "Five things share the street pressure: height, meter, backflow preventer, outlet, friction. Name all five.",
				},
				{
					ID: "column-left-out", Formula: "street - devices - least",
					Did:  "You left the height out.",
					Why:  "The water must be lifted {height} before any of it comes out.",
					Next: "In a building of several floors the height is nearly always the largest item.",
				},
			},
		},
	},
	Holds: "The street pressure is a purse. Height, meter, backflow preventer and the outlet's own need are paid first; what is left is all that friction may cost. If little is left the pipe must be large; if nothing is left there must be a pump.",
	Cautions: []string{
		"Pressure is never saved by a weaker backflow preventer than the hazard asks for, nor by a bypass around it: the hazard survey and the local code choose the device.",
		"Behind a reducing valve some codes let only a part of its setting be counted: UPC 80 % where its Table 610.4 is used.",
	},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "The order of the budget: IPC (2018), Appendix E, E103.2", Confidence: solver.Memory},
		{Says: "80 % of the reduced pressure with Table 610.4: UPC", Confidence: solver.Memory},
	},
	Draw: drawBudget,
	Solve: func(w problems.World) float64 {
		b := w.Building
		return float64(solver.PressureLeft(b.Street.Low, w.Gamma(), w.Length("height"), b.Losses.Total(), w.Pressure("least")))
	},
}

func init() { add(&pressureBudgetSkill) }

// drawBudget draws low buildings until the street can feed one: then a reading
// of the gauge that leaves something for friction, and that keeps the lowest
// outlet under the static limit at night.
func drawBudget(s *building.Sheet) {
	least := keepAtTop(s)
	swing := s.PickPlate([]float64{5, 8}, []float64{35, 50})
	most := onPlate(s, s.Most()) - swing - s.PickPlate([]float64{2}, []float64{15})
	readings := upTo(s.PickPlate([]float64{45}, []float64{310}), most, s.PickPlate([]float64{1}, []float64{10}))
	var height, meter, backflow float64
	var fit []float64
	for tries := 0; tries < 30 && len(fit) == 0; tries++ {
		t := s.Tower(building.Plan{Min: 3, Max: 6})
		height = t.Up(t.Storeys) + s.Shower() - s.UpValve()
		meter, backflow = s.Meter(), s.Backflow(s.Chance(0.5))
		for _, street := range readings {
			left := street - plateHead(s, height) - onPlate(s, meter+backflow+least)
			if meter != backflow && left >= s.PickPlate([]float64{3}, []float64{20}) && left <= s.PickPlate([]float64{20}, []float64{140}) {
				fit = append(fit, street)
			}
		}
	}
	street, ok := pick(s, fit)
	if !ok {
		street = readings[len(readings)-1]
	}
	s.SetStreet(street+swing, street, s.UpValve(), "on the gauge in the meter room")
	s.Name("design_flow", flowText(s, s.Pick([]float64{60, 80, 100, 120}, []float64{4, 5, 6, 8})))
	s.Set("street", street)
	setHeight(s, "height", height)
	s.Set("meter_loss", meter)
	s.Set("backflow_loss", backflow)
	s.Set("least", least)
}

var uniformLossSkill = problems.Skill{
	ID: "uniform-loss", Title: "Friction that the pipe may have",
	Chapter: 3, Order: 110, Year: 2, Kind: problems.Sum,
	Ask: "After height and devices {spare} of the street pressure is over at the peak, and the outlet must keep {least}. The run measures {pipe}, and its fittings stand for {fittings} of pipe more. What friction may the pipe have, the same all along, {per_length}?",
	Givens: []problems.Given{
		{Name: "spare", Says: "pressure over after height and devices", Measure: &measure.Pressure},
		{Name: "least", Says: "pressure to be kept at the outlet", Measure: &measure.Pressure},
		{Name: "pipe", Says: "developed length of the run", Measure: &measure.PipeLength},
		{Name: "fittings", Says: "pipe that the fittings stand for", Measure: &measure.PipeLength},
	},
	Rules: []problems.Rule{
		{
			Name: "left", Says: "pressure left for friction", Measure: &measure.Pressure,
			Formula: "spare - least",
			Why:     "What the outlet keeps may not be lost on the way.",
			Slips: []problems.Slip{{
				ID: "least-left-out", Formula: "spare",
				Did:  "You spread all of {spare} over the pipe.",
				Why:  "Then nothing is left at the outlet, where {least} must be.",
				Next: "Set aside what the outlet keeps before you spend on friction.",
			}},
		},
		{
			Name: "total", Says: "total length for friction", Measure: &measure.PipeLength,
			Formula: "pipe + fittings",
			Why:     "Fittings lose pressure too, and share in what is left.",
			Slips: []problems.Slip{{
				ID: "fittings-left-out", Formula: "pipe",
				Did:  "You took the tube alone, {pipe}.",
				Why:  "The fittings also use pressure. Left out, the pipe is allowed too much friction and comes out a size too small.",
				Next: "Total length is more than the tape shows.",
			}},
		},
		{
			Name: "rate", Says: "friction that the pipe may have", Measure: &measure.Friction,
			Formula: "left / total x hundred", Metric: "left / total",
			Why: "The same friction all along just uses up what is left at the end. Charts tell it for 100 ft, or for one metre.",
			Slips: []problems.Slip{
				{
					ID: "hundred-left-out", Only: problems.OnlyUS, Formula: "left / total",
					Did:  "You left the figure for one foot, {got}.",
					Why:  "It is right for a foot, but charts and tables read psi for 100 ft. With it you would choose a pipe many sizes too large.",
					Next: "Usual figures are 1 to 10 psi for 100 ft. One far below is for a foot.",
				},
				{
					ID: "per-hundred-metres", Only: problems.OnlySI, Formula: "left / total x 100",
					Did:  "You turned it into a figure for 100 m.",
					Why:  "The question and the chart are for one metre. A figure for 100 m read there gives a pipe far too small.",
					Next: "Usual figures are 0.2 to 2 kPa for a metre. Compare the size.",
				},
				{
					ID: "upside-down", Formula: "total / left",
					Did:  "You divided the length by the pressure.",
					Why:  "That tells how many feet or metres share one unit of pressure. Friction is pressure for a length, so the pressure is on top.",
					Next: "Say the unit as you divide: psi for feet, kPa for metres.",
				},
			},
		},
	},
	Holds: "With one rate of friction all along the run, every section can be sized from one line of the chart. The rate is what is left for friction, shared over pipe and fittings. A long run gets little for each foot, so its pipe is larger.",
	Cautions: []string{
		"The rate is for friction only. The speed limit is checked besides, and the larger pipe of the two is used.",
	},
	Sources: []problems.Source{
		{Says: "Pressure left for friction, total length, uniform loss: IPC (2018), Appendix E, E103.3", Confidence: solver.Memory},
		{Says: "Riser friction of 2 to 5 psi for 100 ft: common practice, no source", Confidence: solver.Practice},
	},
	Draw: drawUniformLoss,
	Solve: func(w problems.World) float64 {
		return float64(solver.UniformLoss(w.Pressure("spare")-w.Pressure("least"), w.Length("pipe")+w.Length("fittings")))
	},
}

func init() { add(&uniformLossSkill) }

func drawUniformLoss(s *building.Sheet) {
	suppliedTower(s, building.Plan{Min: 3, Max: 10})
	least := keepAtTop(s)
	pipe := s.Pick([]float64{120, 150, 180, 220, 260, 300, 350}, []float64{36, 45, 55, 65, 80, 90, 105})
	share := float64(s.Int(30, 60)) / 100
	fittings := math.Round(pipe * share)
	var fit []float64
	for _, left := range lists(s, upTo(3, 18, 1), upTo(20, 120, 5)) {
		rate := left / (pipe + fittings)
		if s.US() {
			rate *= 100
		}
		if low, high := s.Pick([]float64{1}, []float64{0.2}), s.Pick([]float64{8}, []float64{1.8}); rate >= low && rate <= high && left != least {
			fit = append(fit, left)
		}
	}
	left, _ := pick(s, fit)
	s.Name("per_length", words(s, "in psi for 100 ft", "in kPa for each metre"))
	s.Set("spare", least+left)
	s.Set("least", least)
	s.Set("pipe", pipe)
	s.Set("fittings", fittings)
}
