// Package measure lists what the trade measures, each with its unit in US and
// in SI working.
package measure

import "riserwork/solver/unit"

// Of is a thing measured, with the unit the trade measures it in.
type Of struct {
	Name   string
	US, SI string  // unit names
	Round  float64 // smallest step of its gauge or tape in the unit: whole psi, kPa, ft; 0 has none
	RoundM float64 // the same in SI
	Point  bool    // a temperature on a scale, not a difference
}

// Measures of the skills, which take their address: a table of addresses is
// laid out by the compiler and costs the page no time at its start. Round is what people read off a gauge or a tape.
var (
	Pressure    = Of{Name: "pressure", US: "psi", SI: "kPa", Round: 1, RoundM: 1}
	AbsPressure = Of{Name: "absolute pressure", US: "psia", SI: "kPa abs", Round: 1, RoundM: 1}
	Vacuum      = Of{Name: "vacuum", US: "inHg", SI: "kPa", Round: 0, RoundM: 1}
	Height      = Of{Name: "height", US: "ft", SI: "m", Round: 1}
	PipeLength  = Of{Name: "pipe length", US: "ft", SI: "m", Round: 1}
	Friction    = Of{Name: "friction", US: "psi/100 ft", SI: "kPa/m"}
	Tank        = Of{Name: "volume", US: "US gal", SI: "L"}
	FlowRate    = Of{Name: "flow", US: "gpm", SI: "L/s"}
	OutletFlow  = Of{Name: "flow of an outlet", US: "gpm", SI: "L/min"}
	HourFlow    = Of{Name: "hourly flow", US: "gph", SI: "L/h"}
	Temp        = Of{Name: "temperature", US: "°F", SI: "°C", Round: 1, RoundM: 1, Point: true}
	TempDrop    = Of{Name: "temperature difference", US: "°F", SI: "K", Round: 1, RoundM: 1}
	Heat        = Of{Name: "heat", US: "Btu", SI: "kJ"}
	HourHeat    = Of{Name: "heat in an hour", US: "Btu/h", SI: "kJ/h"}
	HeatRate    = Of{Name: "heat rate", US: "Btu/h", SI: "kW"}
	PipeHeat    = Of{Name: "heat rate", US: "Btu/h", SI: "W"}
	HeatPerPipe = Of{Name: "heat loss of pipe", US: "Btu/(h·ft)", SI: "W/m"}
	TimeHours   = Of{Name: "time", US: "h", SI: "h"}
	TimeSeconds = Of{Name: "time", US: "s", SI: "s"}
	Units       = Of{Name: "fixture units", US: "wsfu", SI: "wsfu"}
	Velocity    = Of{Name: "velocity", US: "ft/s", SI: "m/s"}
	Bore        = Of{Name: "pipe diameter", US: "in", SI: "mm"}
	SurgeRate   = Of{Name: "surge of a speed", US: "psi·s/ft", SI: "kPa·s/m"}
	Movement    = Of{Name: "movement", US: "in", SI: "mm"}
	LongPart    = Of{Name: "part of a length", US: "ft", SI: "m"}
	Growth      = Of{Name: "growth by warming", US: "ppm/°F", SI: "ppm/K"}
	CrossArea   = Of{Name: "area", US: "in²", SI: "mm²"}
	BlockArea   = Of{Name: "area", US: "ft²", SI: "m²"}
	Angle       = Of{Name: "angle", US: "°", SI: "°"}
	Force       = Of{Name: "force", US: "lbf", SI: "kN"}
	Bearing     = Of{Name: "bearing of soil", US: "psf", SI: "kPa"}
	PipeContent = Of{Name: "content of pipe", US: "US gal/ft", SI: "L/m"}
	PipeWeight  = Of{Name: "weight of pipe", US: "lb/ft", SI: "kg/m"}
	Weight      = Of{Name: "weight", US: "lb", SI: "kg"}
	Chemical    = Of{Name: "weight of chemical", US: "lb", SI: "g"}
	Dose        = Of{Name: "dose", US: "ppm", SI: "mg/L"}
	Charge      = Of{Name: "electric charge", US: "A·h", SI: "A·h"}
	AnodeCharge = Of{Name: "charge of a metal", US: "A·h/lb", SI: "A·h/kg"}
	Current     = Of{Name: "current", US: "A", SI: "A"}
	SmallAmps   = Of{Name: "current", US: "mA", SI: "mA"}
	Potential   = Of{Name: "electric potential", US: "mV", SI: "mV"}
	TimeYears   = Of{Name: "time", US: "year", SI: "year"}
	SpecVolume  = Of{Name: "specific volume", US: "ft³/lb", SI: "L/kg"}
	Share       = Of{Name: "share"}
	Count       = Of{Name: "count"}
	PumpPower   = Of{Name: "power", US: "hp", SI: "kW"}
	Motor       = Of{Name: "motor", US: "hp", SI: "hp"} // motors are bought in horsepower in Canada too
	MotorInput  = Of{Name: "power", US: "kW", SI: "kW"}
	PumpSpeed   = Of{Name: "speed", US: "rpm", SI: "rpm"}
	Starts      = Of{Name: "starts", US: "starts/h", SI: "starts/h"}
	CycleTime   = Of{Name: "time", US: "min", SI: "s"}
	FillTime    = Of{Name: "time", US: "min", SI: "min"}
	Energy      = Of{Name: "energy", US: "kWh", SI: "kWh"}
	Tariff      = Of{Name: "price of energy", US: "$/kWh", SI: "$/kWh"}
	Money       = Of{Name: "cost", US: "$", SI: "$"}
	Fuel        = Of{Name: "heat of a fuel", US: "therm", SI: "GJ"}
	FuelPrice   = Of{Name: "price of heat", US: "$/therm", SI: "$/GJ"}
	ValveFactor = Of{Name: "flow factor of a valve"}
	Answer      = Of{Name: "answer"}
)

// Unit is the unit of the measure in a system; the mixed one works in SI.
func (m Of) Unit(s unit.System) unit.Unit {
	name := m.SI
	if s == unit.US {
		name = m.US
	}
	if name == "" {
		return unit.Number
	}
	u, err := unit.Parse(name)
	if err != nil {
		return unit.Unit{Name: name}
	}
	if !m.Point {
		u = u.Difference()
	}
	return u
}

// Least is the smallest sensible step of the measure in a system, 0 for none.
func (m Of) Least(s unit.System) float64 {
	if s == unit.US {
		return m.Round
	}
	return m.RoundM
}
