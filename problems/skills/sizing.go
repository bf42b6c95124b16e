package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// suppliedTower draws a building that its street feeds where that is enough,
// else a booster with zones.
func suppliedTower(s *building.Sheet, p building.Plan) *building.Tower {
	t := s.Tower(p)
	gauge := s.UpValve()
	need := lift(s, t, gauge)
	swing := s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75})
	if street := need + 2*gaugeStep(s); street <= s.PickPlate([]float64{75}, []float64{500}) {
		s.SetStreet(street, street-swing, gauge, "on the gauge in the meter room")
		return t
	}
	pumpRoom(s, gauge, need)
	feedAbove(s, 0)
	return t
}

// flushes are the uses whose water closets have flush valves, tanks those
// whose have flush tanks. Common practice, no source.
var (
	flushes = []solver.Use{solver.Office, solver.Hospital, solver.Residence}
	tanks   = []solver.Use{solver.Apartment, solver.Hotel}
)

// pipeSize is a size of copper tube as a problem tells it, in inches or mm.
type pipeSize struct {
	words         string // "1-1/4 in", "DN 32"
	nominal, bore float64
}

// tubeSizes lists the sizes of a tube type, the smallest first. It leaves out
// those whose nominal size is so near the bore that rounding hides which of
// them was used.
func tubeSizes(s *building.Sheet, of solver.TubeType) []pipeSize {
	var out []pipeSize
	for _, t := range solver.Tubes {
		p := tubeSize(s, t, of)
		if off := p.nominal/p.bore - 1; math.Abs(off) > 0.0065 && t.Inches <= 4 {
			out = append(out, p)
		}
	}
	return out
}

// tubeSize tells a tube: in the mixed system sizes are in inches, worked in
// mm; in the metric one they have a DN.
func tubeSize(s *building.Sheet, t solver.Tube, of solver.TubeType) pipeSize {
	bore := float64(t.Bore(of) / unit.Inch)
	if s.US() {
		return pipeSize{t.Nominal + "\u00a0in", t.Inches, math.Round(bore*1000) / 1000}
	}
	mm := math.Round(bore*254) / 10
	if s.System == unit.Mixed {
		return pipeSize{t.Nominal + "\u00a0in", math.Round(t.Inches*254) / 10, mm}
	}
	return pipeSize{"DN\u00a0" + measure.Count.Unit(s.System).Of(float64(t.DN)).Text(3), float64(t.DN), mm}
}

// speedOf is the speed of a drawn flow in a drawn bore, to draw by.
func speedOf(s *building.Sheet, flow, bore float64) float64 {
	if s.US() {
		return 0.408 * flow / (bore * bore)
	}
	return 1273 * flow / (bore * bore)
}

// frictionOf is the friction of a drawn flow, to draw by: psi per 100 ft or
// kPa per metre.
func frictionOf(s *building.Sheet, flow, c, bore float64) float64 {
	if s.US() {
		p := solver.HazenUS.Loss(unit.Flow(flow)*unit.GPM, c, unit.Length(bore)*unit.Inch)
		return float64(p) * float64(100*unit.Foot) / float64(unit.PSI)
	}
	p := solver.HazenSI.Loss(unit.Flow(flow)*unit.LitrePerSecond, c, unit.Length(bore/1000))
	return float64(p) / 1000
}

// drawFlows are the round flows of building pipe: gpm or L/s.
func drawFlows(s *building.Sheet) []float64 {
	var out []float64
	if s.US() {
		out = append(out, upTo(3, 20, 1)...)
		out = append(out, upTo(22, 60, 2)...)
		return append(out, upTo(65, 400, 5)...)
	}
	out = append(out, upTo(0.2, 2, 0.05)...)
	out = append(out, upTo(2.1, 6, 0.1)...)
	out = append(out, upTo(6.5, 25, 0.5)...)
	for i, v := range out {
		out[i] = math.Round(v*100) / 100
	}
	return out
}

// flowText is a flow with its unit, for the words of a question.
func flowText(s *building.Sheet, v float64) string {
	return measure.FlowRate.Unit(s.System).Of(v).Text(6)
}

// Sources that skills of pipe sizing share.
var (
	tubeSource  = problems.Source{Says: "Bore of copper tube: ASTM B88", Confidence: solver.Confirmed}
	speedSource = problems.Source{Says: "8 ft/s (2.4 m/s) cold, 5 ft/s (1.5 m/s) hot up to 140 °F (60 °C), 2 to 3 ft/s (0.6 to 0.9 m/s) hotter: Copper Tube Handbook", Confidence: solver.Confirmed}
	curveSource = problems.Source{Says: "Demand by fixture units: IPC (2018), Appendix E, Table E103.3(3)", Confidence: solver.Memory}
	curveAgrees = problems.Source{Says: "The flush tank rows from 60 to 1,000 units: 77 Ill. Adm. Code 890, Appendix A, Table N, within 1 %", Confidence: solver.Confirmed}
)

// Cautions that skills of pipe sizing share.
const (
	sizingStudy = "These are sums for study. The table, the method and the smallest sizes are those of the local code, and a licensed person signs for the size."
	leadFree    = "Pipe, fittings and solder for drinking water are lead-free."
)
