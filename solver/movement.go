package solver

import (
	"math"

	"riserwork/solver/unit"
)

// PipeMovement is how much longer a pipe becomes when it warms; alpha is the
// coefficient of its material in 1/K.
//
//	dL = alpha L dT
func PipeMovement(alpha float64, length unit.Length, change unit.TempDifference) unit.Length {
	return unit.Length(alpha * float64(length) * float64(change))
}

// ExpansionLeg is the length of pipe that must be free to bend in an offset
// which takes up a movement; factor is the root of 3 E/S of its material, 92.2
// for copper (Copper Tube Handbook, from memory).
//
//	L = sqrt(3 E/S) sqrt(D dL)
func ExpansionLeg(outside, movement unit.Length, factor float64) unit.Length {
	return unit.Length(factor * math.Sqrt(float64(outside)*float64(movement)))
}
