package solver

import "riserwork/solver/unit"

// PipeMovement is how much longer a pipe becomes when it warms; alpha is the
// coefficient of its material in 1/K.
//
//	dL = alpha L dT
func PipeMovement(alpha float64, length unit.Length, change unit.TempDifference) unit.Length {
	return unit.Length(alpha * float64(length) * float64(change))
}
