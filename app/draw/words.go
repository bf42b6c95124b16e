package draw

import (
	"math"
	"strconv"

	"riserwork/solver/unit"
)

// height is a length as drawings write it: feet and inches, or metres to the
// centimetre.
func height(l unit.Length, sys unit.System) string {
	sign := ""
	if sys != unit.US {
		v := math.Round(float64(l/unit.Metre) * 100)
		if v < 0 {
			sign = "−"
		}
		return sign + strconv.FormatFloat(math.Abs(v)/100, 'f', 2, 64)
	}
	in := math.Round(float64(l/unit.Foot) * 12)
	if in < 0 {
		sign, in = "−", -in
	}
	feet := math.Floor(in / 12)
	return sign + strconv.Itoa(int(feet)) + "'-" + strconv.Itoa(int(in-12*feet)) + `"`
}

// depth is a height with its unit.
func depth(l unit.Length, sys unit.System) string {
	if sys == unit.US {
		return height(l, sys)
	}
	return height(l, sys) + " m"
}

// pressure is a pressure to the whole psi or kPa.
func pressure(p unit.Pressure, sys unit.System) string {
	return pressureNumber(p, sys) + "\u00a0" + pressureUnit(sys)
}

func pressureUnit(sys unit.System) string {
	if sys == unit.US {
		return "psi"
	}
	return "kPa"
}

func pressureNumber(p unit.Pressure, sys unit.System) string {
	v := float64(p / unit.Kilopascal)
	if sys == unit.US {
		v = float64(p / unit.PSI)
	}
	return whole(math.Round(v))
}

func whole(v float64) string { return unit.Format(v, 9) }

func levelName(label string) string {
	if label == "Roof" {
		return "ROOF"
	}
	return "LEVEL " + label
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
