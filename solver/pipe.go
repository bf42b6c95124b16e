package solver

import (
	"math"

	"riserwork/solver/unit"
)

// TubeType is a wall of copper tube.
type TubeType byte

// Types of copper water tube, the thickest wall first.
const (
	TypeK TubeType = 'K'
	TypeL TubeType = 'L'
	TypeM TubeType = 'M'
)

// Tube is a size of copper tube; diameters and walls in inches.
type Tube struct {
	Nominal string
	Inches  float64 // the nominal size as a number
	DN      int
	Outside float64
	K, L, M float64 // walls
}

// Bore is the inside diameter.
func (t Tube) Bore(of TubeType) unit.Length {
	wall := t.L
	switch of {
	case TypeK:
		wall = t.K
	case TypeM:
		wall = t.M
	}
	return unit.Length(t.Outside-2*wall) * unit.Inch
}

// Fitting is what a fitting loses, as feet of straight tube of its size; the
// sizes are FittingSizes.
type Fitting struct {
	Name string
	Feet []float64
}

// RoundPipe is 4/pi: flow over the square of the bore, times this, is the
// velocity. Schools teach it as 0.408 (gpm, in, ft/s) or 1273 (L/s, mm, m/s).
const RoundPipe = 4 / math.Pi

// PipeVelocity is the speed of water in a round pipe.
//
//	v = (4/pi) Q / d2
func PipeVelocity(q unit.Flow, bore unit.Length, roundPipe float64) unit.Velocity {
	return unit.Velocity(roundPipe * float64(q) / float64(bore*bore))
}

// PipeFlow is the flow of a round pipe at a speed.
//
//	Q = v d2 / (4/pi)
func PipeFlow(v unit.Velocity, bore unit.Length, roundPipe float64) unit.Flow {
	return unit.Flow(float64(v) * float64(bore*bore) / roundPipe)
}

// Hazen is a form of the formula of Hazen and Williams: its figure, and the
// flow and the bore that it counts in.
//
//	p per length = Figure (Q / Flow / C)^1.852 / (d / Bore)^4.87
//
// It holds for water near 60 °F in turbulent flow; on hot water it gives a
// little too much. NFPA 13 form and SI form, from memory; older print rounds
// the exponents to 1.85.
type Hazen struct {
	Figure unit.Gradient
	Flow   unit.Flow
	Bore   unit.Length
}

// HazenUS counts in gpm and inches, HazenSI in cubic metres a second and
// metres with water of 1,000 kg/m3.
var (
	HazenUS = Hazen{Figure: unit.Gradient(4.52 * float64(unit.PSI) / float64(unit.Foot)), Flow: unit.GPM, Bore: unit.Inch}
	HazenSI = Hazen{Figure: 10.67 * WaterColumn, Flow: unit.CubicMetrePerSec, Bore: unit.Metre}
)

// Loss is the friction per length of a flow in a pipe of a bore and a C.
func (h Hazen) Loss(q unit.Flow, c float64, bore unit.Length) unit.Gradient {
	return h.Figure * unit.Gradient(math.Pow(float64(q/h.Flow)/c, 1.852)/math.Pow(float64(bore/h.Bore), 4.87))
}

// UniformLoss is the friction per length that a run may take, so that it just
// uses up what is left.
func UniformLoss(left unit.Pressure, length unit.Length) unit.Gradient {
	return unit.Gradient(float64(left) / float64(length))
}

// PressureLeft is what height and devices leave of the street pressure for
// friction.
//
//	left = street - gamma h - devices - least
func PressureLeft(street unit.Pressure, gamma unit.Gradient, above unit.Length, devices, least unit.Pressure) unit.Pressure {
	return FloorPressure(street, gamma, above) - devices - least
}

// MeterLoss is the loss of a meter at a flow, from its loss at another: it
// grows with the square.
//
//	p = p0 (Q / Q0)2
func MeterLoss(known unit.Pressure, at, q unit.Flow) unit.Pressure {
	return known * unit.Pressure(q/at) * unit.Pressure(q/at)
}

// Trial is a pipe size tried at the design flow.
type Trial struct {
	Loss     unit.Gradient
	Velocity unit.Velocity
}

// SmallestPipe is the index of the first trial, smallest pipe first, that
// keeps both limits; -1 where none does.
func SmallestPipe(sizes []Trial, loss unit.Gradient, v unit.Velocity) int {
	for i, t := range sizes {
		if t.Loss <= loss && t.Velocity <= v {
			return i
		}
	}
	return -1
}

// TubeArea is the area in m2 of a circle: the opening of a bore, which is also
// its content in m3 for each metre.
func TubeArea(diameter unit.Length) float64 {
	return math.Pi * float64(diameter) * float64(diameter) / 4
}

// FullPipe is the weight in kg/m of a pipe full of water: the empty pipe in
// kg/m and its content in m3/m times the weight of water in kg/m3.
func FullPipe(bare, content, water float64) float64 { return bare + content*water }
