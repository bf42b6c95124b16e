package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var surgeSkill = problems.Skill{
	ID: "surge", Title: "Water hammer",
	Chapter: 8, Order: 10, Year: 3, Kind: problems.Sum,
	Ask: "On level {level} a branch of copper tube, type L, {size}, carries {flow} at {speed}. A quick valve stops it at once. In this tube each ft/s (m/s) that is stopped raises the pressure by {per_speed}. With no flow the branch stands at {standing}. How high does the pressure jump?",
	Givens: []problems.Given{
		{Name: "flow", Says: "flow in the branch", Measure: &measure.FlowRate},
		{Name: "speed", Says: "speed of the water in the branch", Measure: &measure.Velocity},
		{Name: "per_speed", Says: "surge for each unit of speed stopped at once", Measure: &measure.SurgeRate},
		{Name: "standing", Says: "pressure in the branch with no flow", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "jump", Says: "rise of pressure by the surge", Measure: &measure.Pressure,
			Formula: "per_speed x speed",
			Why:     "The moving water has nowhere to go. The faster it ran, the harder it hits the closed valve.",
			Slips: []problems.Slip{
				{
					ID: "flow-for-speed", Formula: "per_speed x flow",
					Did:  "You multiplied by the flow, {flow}.",
					Why:  "The blow comes from how fast the water runs. The same flow in a larger pipe is slower and hits softer.",
					Next: "Look at the unit of {per_speed}: it asks for a speed.",
				},
				{
					ID: "speed-squared", Formula: "per_speed x speed^2",
					Did:  "You squared the speed.",
					Why:  "Friction goes with nearly the square of the speed. A surge goes with the speed itself: twice as fast, twice the blow.",
					Next: "Multiply the units: they give a pressure only if the speed comes in once.",
				},
			},
		},
		{
			Name: "peak", Says: "pressure at the blow", Measure: &measure.Pressure,
			Formula: "standing + jump",
			Why:     "The surge comes on top of what stands in the pipe already.",
			Slips: []problems.Slip{
				{
					ID: "standing-left-out", Formula: "jump",
					Did:  "You gave the surge alone, {jump}.",
					Why:  "The pipe is not empty of pressure when the valve shuts. The joint has to hold both.",
					Next: "A peak is higher than the rise that led to it.",
				},
				{
					ID: "standing-subtracted", Formula: "jump - standing",
					Did:  "You took the standing pressure off.",
					Why:  "It does not push back against the surge. Both press on the same wall.",
					Next: "Ask what a gauge with a red pointer would show: it starts at {standing} and jumps up from there.",
				},
			},
		},
	},
	Holds: "Water that is stopped at once turns its speed into pressure: density times wave speed times the speed stopped. In type L copper that is 52 to 57 psi for each ft/s (1,180 to 1,290 kPa for each m/s), and more in steel. Lower speed is the first cure, a slower valve the second, an arrester close to the valve the third.",
	Cautions: []string{
		"A surge can pull a joint apart or break a hose far from the valve that made it. Shut valves slowly, large ones most of all.",
		"Pressure stays behind a closed valve. Relieve it and prove it on a gauge before a joint is opened.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Surge as density times wave speed times speed stopped: Moser, Buried Pipe Design, ch. 4", Confidence: solver.Confirmed},
		{Says: "52 to 57 psi for each ft/s in type L copper, by Korteweg's formula with handbook values of the metal", Confidence: solver.Memory},
	},
	Draw: drawSurge,
	Solve: func(w problems.World) float64 {
		return float64(w.Pressure("standing") + solver.Surge(w.SI("per_speed"), unit.Velocity(w.SI("speed"))))
	},
}

func init() { add(&surgeSkill) }

// forcesStudy closes the cautions of forces and chemicals.
const forcesStudy = "These are sums for study. The makers' figures, the local code and the authority decide, and a licensed person signs."

// Figures of copper and of water for the speed of a wave. From memory.
const (
	rigidWave     = 4720 * unit.Foot / unit.Metre // m/s, in a pipe that does not stretch
	waterModulus  = 300_000 * unit.PSI
	copperModulus = 17_000_000 * unit.PSI
)

// surgeRate is the surge for each unit of speed in a tube of type L, rounded
// to half a psi for each ft/s, or to 5 kPa for each m/s.
func surgeRate(s *building.Sheet, t solver.Tube) float64 {
	a := solver.WaveSpeed(unit.Velocity(rigidWave), waterModulus, copperModulus, t.Bore(solver.TypeL), unit.Length(t.L)*unit.Inch)
	rate := float64(a) // m/s; times 1,000 kg/m3 that is kPa for each m/s
	if s.US() {
		return math.Round(rate*1000*float64(unit.Foot/unit.Metre)/float64(unit.PSI)*2) / 2
	}
	return math.Round(rate/5) * 5
}

// branchLevel draws a level and tells it; it returns what stands at its lowest
// outlet, in whole psi or in steps of 5 kPa.
func branchLevel(s *building.Sheet, t *building.Tower) float64 {
	s.Focus = s.Int(t.Storey(1), t.Top())
	s.Name("level", t.Levels[s.Focus].Label)
	p := t.At(s.Focus, t.Lowest(s.Focus), solver.WaterColumn)
	if s.US() {
		return math.Floor(float64(p / unit.PSI))
	}
	return math.Floor(float64(p/unit.Kilopascal)/5) * 5
}

func drawSurge(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Min: 3, Max: 15})
	standing := branchLevel(s, t)
	type aim struct {
		tube        solver.Tube
		flow, speed float64
	}
	fine, least, most := 10.0, 4.0, 8.0
	if !s.US() {
		fine, least, most = 100, 1.2, 2.4
	}
	var fit []aim
	for _, tube := range solver.Tubes {
		if tube.Inches > 2 {
			continue
		}
		bore := tubeSize(s, tube, solver.TypeL).bore
		for _, flow := range drawFlows(s) {
			v := math.Round(speedOf(s, flow, bore)*fine) / fine
			if v >= least && v <= most && math.Abs(flow/v-1) > 0.08 && math.Abs(flow/v/v-1) > 0.08 {
				fit = append(fit, aim{tube, flow, v})
			}
		}
	}
	a, _ := pick(s, fit)
	s.Name("size", tubeSize(s, a.tube, solver.TypeL).words)
	s.Set("flow", a.flow)
	s.Set("speed", a.speed)
	s.Set("per_speed", surgeRate(s, a.tube))
	s.Set("standing", standing)
}

var slowClosingSkill = problems.Skill{
	ID: "slow-closing", Title: "Slow enough to close",
	Chapter: 8, Order: 20, Year: 4, Kind: problems.Choice,
	Ask: "A valve on level {level} stands at the end of {length} of {pipe}; the run begins at a large main. A pressure wave travels at {wave} in it. The valve closes in {closing}. Does it stop the water as if at once, with the whole surge?",
	Givens: []problems.Given{
		{Name: "length", Says: "length of the run", Measure: &measure.PipeLength},
		{Name: "wave", Says: "speed of a pressure wave in this pipe", Measure: &measure.Velocity},
		{Name: "closing", Says: "time the valve takes to close", Measure: &measure.TimeSeconds},
	},
	Rules: []problems.Rule{
		{
			Name: "back", Says: "time of the wave to the main and back", Measure: &measure.TimeSeconds,
			Formula: "2 x length / wave",
			Why:     "The wave runs to the main, turns round there and comes back with relief. Until then the valve knows of no help.",
			Slips: []problems.Slip{
				{
					ID: "one-way-only", Formula: "length / wave",
					Did:  "You took the way to the main only.",
					Why:  "At the main the wave has only turned round. The relief reaches the valve after the way back too.",
					Next: "There and back again: the length counts twice.",
				},
				{
					ID: "upside-down", Formula: "wave / (2 x length)",
					Did:  "You divided the speed by the way.",
					Why:  "A longer run takes more time. In your line it would take less.",
					Next: "Way over speed is time, as on the road.",
				},
			},
		},
		{
			Name: "at_once", Says: "is it a stop at once?", Measure: &measure.Answer,
			Formula: "closing < back", Choices: []string{"no", "yes"},
			Why: "If the valve is shut before the wave is back, it is as if it had shut in no time.",
			Slips: []problems.Slip{{
				ID: "comparison-turned-round", Formula: "closing > back",
				Did:  "You held {closing} against {back} and drew the opposite.",
				Why:  "The relief comes back after {back}. A valve that is shut by then takes the whole blow; one that is still closing takes less.",
				Next: "Less time than the wave, whole surge. More time, less surge.",
			}},
		},
	},
	Holds: "A surge is at its full height if the valve shuts before the wave has been to the main and back. What is slow therefore depends on the run: a tenth of a second is slow on a short branch and quick on a long main. Just over the limit the surge is a little less, not gone; makers ask for several times as long.",
	Cautions: []string{
		"Close large valves by hand, slowly, the last quarter slowest of all.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Return time of the wave, 2 L / a: TM 5-813-9 / UFC 3-230-13A, Fig. 4-5", Confidence: solver.Confirmed},
		{Says: "Wave speeds of ductile iron: Moser, Buried Pipe Design, Table 4.1", Confidence: solver.Confirmed},
		{Says: "Wave speeds of copper and plastic, by Korteweg's formula", Confidence: solver.Memory},
	},
	Draw: drawSlowClosing,
	Solve: func(w problems.World) float64 {
		if w.SI("closing") < solver.WaveReturn(w.Length("length"), unit.Velocity(w.SI("wave"))) {
			return 1
		}
		return 0
	},
}

func init() { add(&slowClosingSkill) }

func drawSlowClosing(s *building.Sheet) {
	t := suppliedTower(s, building.Plan{Min: 3, Max: 15})
	branchLevel(s, t)
	pipe, wave := "copper tube", s.Pick([]float64{3900, 4000, 4100, 4200}, []float64{1180, 1200, 1250, 1280})
	if s.Chance(0.3) {
		pipe, wave = "PEX tube", s.Pick([]float64{1100, 1150}, []float64{335, 350})
	}
	yes := s.Chance(0.5)
	type aim struct{ length, closing float64 }
	var fit []aim
	for _, length := range lists(s, []float64{20, 30, 40, 60, 80, 120, 150, 200, 250, 300}, []float64{6, 9, 12, 18, 25, 40, 50, 60, 75, 90}) {
		back := 2 * length / wave
		for _, closing := range []float64{0.01, 0.02, 0.03, 0.05, 0.08, 0.1, 0.15, 0.2, 0.3, 0.5, 0.75} {
			r := closing / back
			if yes && r > 0.3 && r < 0.85 || !yes && r > 1.2 && r < 5 {
				fit = append(fit, aim{length, closing})
			}
		}
	}
	a, _ := pick(s, fit)
	s.Name("pipe", pipe)
	s.Set("length", a.length)
	s.Set("wave", wave)
	s.Set("closing", a.closing)
}
