package solver

import (
	"fmt"
	"math"

	"riserwork/solver/unit"
)

// Water is liquid water at one temperature and near the pressure of the
// atmosphere; the pressure of a tall building changes none of it by 0.1 %, but
// for the vapour pressure, which is the water's own.
type Water struct {
	Density   float64       // kg/m3
	Viscosity float64       // Pa·s
	Heat      float64       // specific heat, J/(kg K)
	Vapour    unit.Pressure // absolute; below it the water boils
	Sound     unit.Velocity // of a wave in the open, in no pipe
}

// WaterAt is water at a temperature from 0 to 100 °C; outside it is an error.
func WaterAt(t unit.Temperature) (Water, error) {
	c := t.Celsius()
	if !(c >= -1e-9 && c <= 100+1e-9) {
		return Water{}, fmt.Errorf("solver: water of %.4g °C, expected 0 to 100 °C", c)
	}
	c = math.Max(c, 0)
	return Water{
		Density:   waterDensity(c),
		Viscosity: waterViscosity(float64(t)),
		Heat:      waterHeat(c),
		Vapour:    waterVapour(float64(t)),
		Sound:     waterSound(c),
	}, nil
}

// Column is the pressure of a metre of the water.
func (w Water) Column() unit.Gradient { return unit.Gradient(w.Density * StandardGravity) }

// Kinematic is the viscosity over the density, m2/s.
func (w Water) Kinematic() float64 { return w.Viscosity / w.Density }

// Bulk is the bulk modulus, from the speed of sound.
//
//	K = rho a2
func (w Water) Bulk() unit.Pressure {
	return unit.Pressure(w.Density * float64(w.Sound) * float64(w.Sound))
}

// waterDensity in kg/m3, 0 to 150 °C at 1 atm, to 0.001 %: G. S. Kell, Journal
// of Chemical and Engineering Data 20 (1975), eq. 16; from memory.
func waterDensity(c float64) float64 {
	top := along(c, 999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12)
	return top / (1 + 16.879850e-3*c)
}

// waterViscosity in Pa·s, 253 to 383 K at 0.1 MPa, to 1 %: J. Pátek and
// others, Journal of Physical and Chemical Reference Data 38 (2009), the form
// that IAPWS SR6-08 takes over; from memory.
func waterViscosity(kelvin float64) float64 {
	r := kelvin / 300
	return 1e-6 * (280.68*math.Pow(r, -1.9) + 511.45*math.Pow(r, -7.7) + 61.131*math.Pow(r, -19.6) + 0.45903*math.Pow(r, -40))
}

// waterHeat in J/(kg K), 0 to 150 °C, to 0.09 % of IAPWS-IF97: C. O. Popiel and
// J. Wojtkowiak, Heat Transfer Engineering 19 (1998); from memory.
func waterHeat(c float64) float64 {
	root := math.Sqrt(c)
	return 1000 * (4.2174356 - 0.0056181625*c + 0.0012992528*c*root - 0.00011535353*c*c + 4.14964e-6*c*c*root)
}

// waterVapour is the pressure of saturation in Pa, 273 to 647 K: IAPWS-IF97
// (R7-97, 2012), region 4, eq. 30; from memory.
func waterVapour(kelvin float64) unit.Pressure {
	v := kelvin - 0.23855557567849/(kelvin-0.65017534844798e3)
	a := along(v, -0.72421316703206e6, 0.11670521452767e4, 1)
	b := along(v, 0.12020824702470e5, -0.17073846940092e2)*v - 0.32325550322333e7
	c := along(v, 0.40511340542057e6, -0.48232657361591e4, 0.14915108613530e2)
	root := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return unit.Pressure(1e6 * root * root * root * root)
}

// waterSound in m/s, 0 to 95 °C at 1 atm, carried on to 100 °C: W. Marczak,
// Journal of the Acoustical Society of America 102 (1997); from memory.
func waterSound(c float64) unit.Velocity {
	return unit.Velocity(along(c, 1402.385, 5.038813, -5.799136e-2, 3.287156e-4, -1.398845e-6, 2.787860e-9))
}

// along is a polynomial, its coefficients from that of x^0 upward.
func along(x float64, coefficients ...float64) float64 {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		sum = float64(sum*x) + coefficients[i]
	}
	return sum
}
