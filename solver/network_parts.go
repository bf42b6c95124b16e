package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// Part is what a link holds: a [HazenPipe], a [DarcyPipe], a [Throttle] or a
// [Pump].
type Part interface {
	// drop is the pressure in Pa that is lost at a flow in m3/s, and how fast
	// it grows with the flow. It grows everywhere, and there is no jump in it.
	drop(q float64, w Water) (pa, slope float64)
	check() error
	oneWay() bool
}

// creep is a flow in m3/s, a few drops an hour, under which a loss that grows
// with a power of the flow grows in a straight line instead: a loss that did
// not grow at all would leave the flow open.
const creep = 1e-9

// power is k q |q|^(n-1) and its slope, a straight line under creep.
func power(k, q, n float64) (v, slope float64) {
	size2 := float64(q*q) + creep*creep
	base := k * math.Pow(size2, (n-1)/2)
	return base * q, base * (1 + (n-1)*q*q/size2)
}

// HazenPipe is a pipe by the formula of Hazen and Williams; its length holds
// the equivalent lengths of its fittings.
type HazenPipe struct {
	Length, Bore unit.Length
	C            float64
}

func (p HazenPipe) drop(q float64, w Water) (pa, slope float64) {
	at1 := float64(HazenSI.Loss(1, p.C, p.Bore)) * float64(p.Length) * w.Density / 1000
	return power(at1, q, 1.852)
}

func (p HazenPipe) check() error {
	return positive(figure{"the length", float64(p.Length)}, figure{"the bore", float64(p.Bore)}, figure{"the C", p.C})
}

func (HazenPipe) oneWay() bool { return false }

// DarcyPipe is a pipe by the formula of Darcy and Weisbach, with the sum of
// the loss factors of its fittings.
type DarcyPipe struct {
	Length, Bore, Rough unit.Length
	Fittings            float64
}

func (p DarcyPipe) drop(q float64, w Water) (pa, slope float64) {
	const step = 1e-6
	at := math.Max(math.Abs(q), creep)
	return p.lost(q, w), (p.lost(at*(1+step), w) - p.lost(at*(1-step), w)) / (2 * step * at)
}

func (p DarcyPipe) lost(q float64, w Water) float64 {
	v := float64(PipeVelocity(unit.Flow(q), p.Bore, RoundPipe))
	return float64(DarcyLoss(unit.Flow(q), p.Bore, p.Rough, w))*float64(p.Length) + p.Fittings*w.Density*v*math.Abs(v)/2
}

func (p DarcyPipe) check() error {
	if !(p.Rough >= 0 && p.Rough <= p.Bore/20 && p.Fittings >= 0 && p.Fittings < 1e9) {
		return fmt.Errorf("a roughness of %.4g mm and fittings of %.4g, expected 0 to a twentieth of the bore, and 0 or more", p.Rough*1000, p.Fittings)
	}
	return positive(figure{"the length", float64(p.Length)}, figure{"the bore", float64(p.Bore)})
}

func (DarcyPipe) oneWay() bool { return false }

// Throttle is a valve, an open tap or a device by its flow factor Cv: the gpm
// that lose 1 psi, of water of 60 °F.
//
//	p = (Q / Cv)2 x density over that of 60 °F
type Throttle struct{ Cv float64 }

func (t Throttle) drop(q float64, w Water) (pa, slope float64) {
	k := float64(unit.PSI) / float64(unit.GPM*unit.GPM) / (t.Cv * t.Cv) * w.Density / 999.0
	return power(k, q, 2)
}

func (t Throttle) check() error { return positive(figure{"the Cv", t.Cv}) }

func (Throttle) oneWay() bool { return false }

// Pump is a pump by its curve, with a check valve.
type Pump struct{ Curve PumpCurve }

func (p Pump) drop(q float64, w Water) (pa, slope float64) {
	weight := float64(w.Column())
	bend, slope := power(-p.Curve.Bend*weight, q, 2)
	line := -p.Curve.Slope * weight
	return bend + line*q - float64(p.Curve.Shut)*weight, slope + line
}

func (p Pump) check() error {
	c := p.Curve
	if !(c.Shut > 0 && c.Shut < 1e6 && c.Slope <= 0 && c.Bend <= 0 && c.Slope+c.Bend < 0) {
		return fmt.Errorf("a pump of %.4g m at no flow, slope %.4g and bend %.4g, expected a head that falls with the flow from the first", c.Shut, c.Slope, c.Bend)
	}
	return nil
}

func (Pump) oneWay() bool { return true }

// figure is a number of a part by its name.
type figure struct {
	name  string
	value float64
}

// positive refuses the first figure that is not above nought and in bounds.
func positive(figures ...figure) error {
	for _, f := range figures {
		if !(f.value > 1e-9 && f.value < 1e9) {
			return fmt.Errorf("%s is %g, expected more than 0", f.name, f.value)
		}
	}
	return nil
}
