package unit

// Length is a length or height in metres.
type Length float64

// Pressure is a pressure in pascals; above atmosphere unless said otherwise.
type Pressure float64

// Gradient is a pressure per length in Pa/m: the weight of a water column, or
// the friction of a pipe.
type Gradient float64

// Flow is a volume flow in m3/s.
type Flow float64

// Velocity is a speed in m/s.
type Velocity float64

// Volume is a volume in m3.
type Volume float64

// Power is a rate of heat or work in watts.
type Power float64

// Temperature is a temperature on the Kelvin scale, in kelvins.
type Temperature float64

// TempDifference is a difference of temperatures in kelvins.
type TempDifference float64

// Base units of Go code are 1; others by multiplication: 8*unit.Foot in,
// float64(h/unit.Foot) out.
const (
	Metre Length = 1
	Foot  Length = 0.3048 * Metre
	Inch  Length = Foot / 12

	Pascal     Pressure = 1
	Kilopascal Pressure = 1000 * Pascal
	PSI        Pressure = 0.45359237 * 9.80665 / (0.0254 * 0.0254)

	PascalPerMetre Gradient = 1

	CubicMetre       Volume = 1
	Litre            Volume = 0.001 * CubicMetre
	USGallon         Volume = 231 * 0.0254 * 0.0254 * 0.0254
	ImperialGallon   Volume = 4.54609 * Litre
	CubicMetrePerSec Flow   = 1
	LitrePerSecond   Flow   = 0.001
	GPM              Flow   = Flow(USGallon) / 60

	Watt    Power = 1
	BtuHour Power = 1055.05585262 / 3600
)

// OfColumn is the pressure of a water column of the given height.
func (g Gradient) OfColumn(h Length) Pressure { return Pressure(float64(g) * float64(h)) }

// HeightOf is the height of a water column that makes pressure p.
func (g Gradient) HeightOf(p Pressure) Length { return Length(float64(p) / float64(g)) }

// Celsius is a temperature from degrees Celsius.
func Celsius(t float64) Temperature { return Temperature(t + 273.15) }

// Fahrenheit is a temperature from degrees Fahrenheit.
func Fahrenheit(t float64) Temperature { return Temperature((t + 459.67) * 5 / 9) }

// Celsius is the temperature in degrees Celsius.
func (t Temperature) Celsius() float64 { return float64(t) - 273.15 }

// Fahrenheit is the temperature in degrees Fahrenheit.
func (t Temperature) Fahrenheit() float64 { return float64(t)*9/5 - 459.67 }
