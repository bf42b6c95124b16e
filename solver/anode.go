package solver

// AnodeLife is how long an anode lasts in seconds: its mass in kg, the charge
// that a kilogram of its metal holds in A s/kg, the share of it that protects,
// and the current in A.
//
//	t = m capacity efficiency / I
func AnodeLife(mass, capacity, efficiency, current float64) float64 {
	return mass * capacity * efficiency / current
}
