package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// heatLossSource is the table of solver.HeatLosses.
var heatLossSource = problems.Source{Says: "Heat loss of pipe at 140 °F (60 °C) in air of 70 °F (21 °C): circulation table of older ASHRAE and ASPE guides, as a public engineering document prints it", Confidence: solver.Confirmed}

var loopHeatLossSkill = problems.Skill{
	ID: "loop-heat-loss", Title: "Heat that a loop loses",
	Chapter: 7, Order: 40, Year: 3, Kind: problems.Table,
	Ask: "From the heater {main} of {main_size} run to the riser, {riser} of {riser_size} up it, and {back} of {back_size} return come back to the heater. Mains and riser are insulated; the return is still bare. The table of heat losses: {main_size} insulated {main_wrapped}, bare {main_bare}; {riser_size} insulated {riser_wrapped}, bare {riser_bare}; {back_size} insulated {back_wrapped}, bare {back_bare}. What heat does the whole loop lose, from the heater's outlet round to its return?",
	Givens: []problems.Given{
		{Name: "main", Says: "supply main of {main_size}, insulated", Measure: &measure.PipeLength},
		{Name: "riser", Says: "supply riser of {riser_size}, insulated", Measure: &measure.PipeLength},
		{Name: "back", Says: "return of {back_size}, bare", Measure: &measure.PipeLength},
		{Name: "main_wrapped", Says: "table, {main_size} insulated", Measure: &measure.HeatPerPipe},
		{Name: "main_bare", Says: "table, {main_size} bare", Measure: &measure.HeatPerPipe},
		{Name: "riser_wrapped", Says: "table, {riser_size} insulated", Measure: &measure.HeatPerPipe},
		{Name: "riser_bare", Says: "table, {riser_size} bare", Measure: &measure.HeatPerPipe},
		{Name: "back_wrapped", Says: "table, {back_size} insulated", Measure: &measure.HeatPerPipe},
		{Name: "back_bare", Says: "table, {back_size} bare", Measure: &measure.HeatPerPipe},
	},
	Rules: []problems.Rule{
		{
			Name: "main_heat", Says: "heat lost by the main", Measure: &measure.PipeHeat,
			Formula: "main x main_wrapped",
			Why:     "The row is the size, the column is what covers the pipe. Loss for a foot or metre, times the length.",
			Slips: []problems.Slip{{
				ID: "main-bare-column", Formula: "main x main_bare", Family: "wrong-column",
				Did:  "You took {main_bare} from the bare column for the insulated main.",
				Why:  "Bare pipe loses about twice as much. The pump would be chosen for heat that the insulation keeps in.",
				Next: "Say size and cover aloud, then put one finger on the row and one on the column.",
			}},
		},
		{
			Name: "riser_heat", Says: "heat lost by the riser", Measure: &measure.PipeHeat,
			Formula: "riser x riser_wrapped",
			Why:     "The riser is a smaller size with a row of its own.",
			Slips: []problems.Slip{{
				ID: "main-row-for-riser", Formula: "riser x main_wrapped",
				Did:  "You took the row of the main, {main_wrapped}, for the riser.",
				Why:  "A smaller pipe has less surface to lose heat through: {riser_size} loses {riser_wrapped}.",
				Next: "Go back to the table each time the size changes.",
			}},
		},
		{
			Name: "back_heat", Says: "heat lost by the return", Measure: &measure.PipeHeat,
			Formula: "back x back_bare",
			Why:     "It is not insulated yet, so its figure stands in the bare column.",
			Slips: []problems.Slip{
				{
					ID: "return-insulated-column", Formula: "back x back_wrapped", Family: "wrong-column",
					Did:  "You took {back_wrapped} from the insulated column for the bare return.",
					Why:  "Nobody has wrapped this pipe. It loses {back_bare}, and a pump chosen for less lets the loop cool.",
					Next: "Take the column from what is on the job today, not from what is planned.",
				},
				{
					ID: "riser-row-for-return", Formula: "back x riser_bare",
					Did:  "You took the row of the riser for the return.",
					Why:  "The return is {back_size}, the riser {riser_size}. Each has its own row.",
					Next: "Go back to the table each time the size changes.",
				},
			},
		},
		{
			Name: "loss", Says: "heat lost by the whole loop", Measure: &measure.PipeHeat,
			Formula: "main_heat + riser_heat + back_heat",
			Why:     "The loss is asked from the heater's outlet round to its return. All the pipe between these two points counts.",
			Slips: []problems.Slip{
				{
					ID: "supply-only", Formula: "main_heat + riser_heat",
					Did:  "You counted the supply and left the return out.",
					Why:  "That is the loss from the heater to the last branch. The question goes on to where the return comes in.",
					Next: "Ask from where to where, and count the pipe between.",
				},
				{
					ID: "riser-left-out", Formula: "main_heat + back_heat",
					Did:  "You left the riser out.",
					Why:  "It is hot like the rest. A plan shows it as a dot, but it is pipe.",
					Next: "Go round the loop with a finger: along, up, back.",
				},
			},
		},
	},
	Holds:    "Hot pipe gives off heat by its surface and by what covers it, so a table has a row for the size and a column for the cover. Times the length, and summed round the loop, that is what the circulator must bring.",
	Cautions: []string{legionella, "Bare hot pipe within reach burns. Insulate it, or guard it, before the loop is turned on."},
	Sources:  []problems.Source{heatLossSource, loopReturn},
	Draw:     drawLoopHeatLoss,
	Solve: func(w problems.World) float64 {
		l := w.Building.Loop
		main := solver.Run{Length: w.Length("main"), Loss: w.SI("main_wrapped")}
		riser := solver.Run{Length: l.Supply - main.Length, Loss: w.SI("riser_wrapped")}
		return float64(solver.RunsLoss(main, riser, solver.Run{Length: l.Return, Loss: l.ReturnLoss}))
	},
}

func init() { add(&loopHeatLossSkill) }

// lossOf is a figure of the table in the unit of the house: whole Btu/h for a
// foot, W/m to the tenth.
func lossOf(s *building.Sheet, btu float64) float64 {
	if s.US() {
		return btu
	}
	return math.Round(btu*float64(unit.BtuHour)/float64(unit.Foot)*10) / 10
}

// lossSI is a drawn loss in W/m.
func lossSI(s *building.Sheet, v float64) float64 {
	if s.US() {
		return v * float64(unit.BtuHour/unit.Power(unit.Foot))
	}
	return v
}

// tubeRow is the tube whose loss a row of the table is.
func tubeRow(s *building.Sheet, row solver.PipeLoss) string {
	for _, t := range solver.Tubes {
		if t.Nominal == row.Nominal {
			return tubeSize(s, t, solver.TypeL).words
		}
	}
	return row.Nominal
}

// drawLoopHeatLoss draws a loop of three sizes in which every part tells.
func drawLoopHeatLoss(s *building.Sheet) {
	heaterTower(s)
	i := s.Int(3, 5)
	rows := [3]solver.PipeLoss{solver.HeatLosses[i], solver.HeatLosses[i-s.Int(1, 2)], solver.HeatLosses[s.Int(0, 1)]}
	if rows[1] == rows[2] {
		rows[2] = solver.HeatLosses[0]
	}
	mains := lists(s, []float64{60, 80, 100, 120, 150, 180}, []float64{18, 24, 30, 36, 45, 55})
	main, _ := pick(s, mains)
	var risers, backs []float64
	for _, v := range lists(s, []float64{50, 70, 90, 110, 140, 160}, []float64{16, 21, 27, 34, 42, 50}) {
		if r := v / main; r > 0.5 && r < 1.6 {
			risers = append(risers, v)
		}
	}
	riser, _ := pick(s, risers)
	for _, v := range lists(s, []float64{130, 170, 190, 220, 250, 280}, []float64{39, 48, 58, 66, 75, 85}) {
		if r := v / (main + riser); r > 0.6 && r < 1.3 {
			backs = append(backs, v)
		}
	}
	back, _ := pick(s, backs)
	for k, part := range []string{"main", "riser", "back"} {
		s.Name(part+"_size", tubeRow(s, rows[k]))
		s.Set(part+"_wrapped", lossOf(s, rows[k].Insulated))
		s.Set(part+"_bare", lossOf(s, rows[k].Bare))
	}
	s.Set("main", main)
	s.Set("riser", riser)
	s.Set("back", back)
	s.Building.Loop = &solver.Loop{
		Supply: s.Length(main + riser), Return: s.Length(back),
		SupplyLoss: (main*lossSI(s, s.Get("main_wrapped")) + riser*lossSI(s, s.Get("riser_wrapped"))) / (main + riser),
		ReturnLoss: lossSI(s, s.Get("back_bare")),
		Drop:       unit.TempDifference(5),
	}
}
