package solver

import "riserwork/solver/unit"

// HeightBetween is the height from a lower gauge to an upper one on the same
// standing water; both must be right, and no water may flow.
//
//	h = (P_lower - P_upper) / gamma
func HeightBetween(lower, upper unit.Pressure, gamma unit.Gradient) unit.Length {
	return gamma.HeightOf(lower - upper)
}

// AbsolutePressure counts a gauge pressure from vacuum, with the atmosphere of
// the place where the gauge stands.
//
//	P_abs = P_gauge + P_atmosphere
func AbsolutePressure(gauge, atmosphere unit.Pressure) unit.Pressure { return gauge + atmosphere }

// Lift is the height to which a vacuum lifts water: 1.133 ft for an inch of
// mercury, 0.102 m for a kilopascal (NIST SP 811, 2008, App. B.9). perVacuum
// is that height in m/Pa.
//
//	h = k V
func Lift(vacuum unit.Pressure, perVacuum float64) unit.Length {
	return unit.Length(float64(vacuum) * perVacuum)
}

// BucketFlow is the flow that fills a volume in a time given in seconds; a
// meter read twice gives a flow in the same way.
//
//	Q = V / t
func BucketFlow(v unit.Volume, seconds float64) unit.Flow {
	return unit.Flow(float64(v) / seconds)
}

// Outlet is an outlet as the start of the pipe sees it.
type Outlet struct {
	Above    unit.Length   // above the start
	Friction unit.Pressure // lost on the way at design flow
	Least    unit.Pressure // that it needs itself, flowing
}

// Needs is the pressure that the outlet asks for at the start of the pipe.
//
//	P = gamma h + friction + P_min
func (o Outlet) Needs(gamma unit.Gradient) unit.Pressure {
	return gamma.OfColumn(o.Above) + o.Friction + o.Least
}

// Left is what the outlet has, flowing, of a pressure at the start of the pipe.
//
//	P = P_start - gamma h - friction
func (o Outlet) Left(start unit.Pressure, gamma unit.Gradient) unit.Pressure {
	return FloorPressure(start, gamma, o.Above) - o.Friction
}

// Governing is the index of the outlet that needs most at the start; it
// decides for all. It is -1 for no outlets.
func Governing(outlets []Outlet, gamma unit.Gradient) int {
	best := -1
	for i, o := range outlets {
		if best < 0 || o.Needs(gamma) > outlets[best].Needs(gamma) {
			best = i
		}
	}
	return best
}
