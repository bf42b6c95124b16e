package unit

// System is the set of units a problem is worked in.
type System string

// Systems of units. Mixed is the Canadian one: heights and code in SI, while
// gauges and plates read US units, which are converted first.
const (
	US     System = "us"
	Metric System = "metric"
	Mixed  System = "mixed"
)

// Systems in the order offered.
var Systems = []System{US, Metric, Mixed}

// Measure is a thing measured, with the unit the trade measures it in.
type Measure struct {
	Name   string
	US, SI string  // unit names
	Round  float64 // smallest step of its gauge or tape in the unit: whole psi, kPa, ft; 0 has none
	RoundM float64 // the same in SI
	Point  bool    // a temperature on a scale, not a difference
}

// Measures of the skills. Round is what people read off a gauge or a tape.
var (
	GaugePressure = Measure{Name: "pressure", US: "psi", SI: "kPa", Round: 1, RoundM: 1}
	AbsPressure   = Measure{Name: "absolute pressure", US: "psia", SI: "kPa abs", Round: 1, RoundM: 1}
	Vacuum        = Measure{Name: "vacuum", US: "inHg", SI: "kPa", Round: 0, RoundM: 1}
	Height        = Measure{Name: "height", US: "ft", SI: "m", Round: 1}
	PipeLength    = Measure{Name: "pipe length", US: "ft", SI: "m", Round: 1}
	Friction      = Measure{Name: "friction", US: "psi/100 ft", SI: "kPa/m"}
	Tank          = Measure{Name: "volume", US: "US gal", SI: "L"}
	FlowRate      = Measure{Name: "flow", US: "gpm", SI: "L/s"}
	HourFlow      = Measure{Name: "hourly flow", US: "gph", SI: "L/h"}
	Temp          = Measure{Name: "temperature", US: "°F", SI: "°C", Round: 1, RoundM: 1, Point: true}
	TempDrop      = Measure{Name: "temperature difference", US: "°F", SI: "K", Round: 1, RoundM: 1}
	Heat          = Measure{Name: "heat", US: "Btu", SI: "kJ"}
	HeatRate      = Measure{Name: "heat rate", US: "Btu/h", SI: "kW"}
	HeatPerPipe   = Measure{Name: "heat loss of pipe", US: "Btu/(h·ft)", SI: "W/m"}
	TimeHours     = Measure{Name: "time", US: "h", SI: "h"}
	TimeSeconds   = Measure{Name: "time", US: "s", SI: "s"}
	Share         = Measure{Name: "share"}
	Count         = Measure{Name: "count"}
	Answer        = Measure{Name: "answer"}
)

// Unit is the unit of the measure in a system; Mixed works in SI.
func (m Measure) Unit(s System) Unit {
	name := m.SI
	if s == US {
		name = m.US
	}
	if name == "" {
		return Number
	}
	u, err := Parse(name)
	if err != nil {
		return Unit{Name: name}
	}
	if !m.Point {
		u = u.Difference()
	}
	return u
}

// Least is the smallest sensible step of the measure in a system, 0 for none.
func (m Measure) Least(s System) float64 {
	if s == US {
		return m.Round
	}
	return m.RoundM
}
