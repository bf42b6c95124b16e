package solver

import (
	"math"

	"riserwork/solver/unit"
)

// Surge is the pressure that rises where a speed of water stops at once.
// perSpeed is the density of the water times the speed of the wave, Pa for
// each m/s (Joukowsky's formula).
//
//	P = rho a dv
func Surge(perSpeed float64, stopped unit.Velocity) unit.Pressure {
	return unit.Pressure(perSpeed * float64(stopped))
}

// WaveSpeed is the speed of a pressure wave in a pipe, in water of bulk
// modulus water; wall is the modulus of the pipe's material (Korteweg's
// formula). rigid is the speed in a pipe that does not stretch.
//
//	a = a0 / sqrt(1 + K D / (E t))
func WaveSpeed(rigid unit.Velocity, water, wall unit.Pressure, bore, thickness unit.Length) unit.Velocity {
	return rigid / unit.Velocity(math.Sqrt(1+float64(water/wall)*float64(bore/thickness)))
}

// WaveReturn is the time in seconds that the wave takes to the start of the
// pipe and back: a valve that closes faster stops the water at once.
//
//	t = 2 L / a
func WaveReturn(length unit.Length, wave unit.Velocity) float64 {
	return 2 * float64(length) / float64(wave)
}

// ArresterUnits is the most fixture units of the arrester sizes A to F, by the
// standard PDI-WH 201; from memory.
var ArresterUnits = [6]float64{11, 32, 60, 113, 154, 330}

// ArresterFor is the size of arrester, an index into ArresterUnits, and how
// many of it a branch of so many fixture units gets: a branch over the longest
// for one gets two, each for half of the units. Past the table the size is
// len(ArresterUnits).
func ArresterFor(units float64, length, longest unit.Length) (size, count int) {
	count = 1
	if length > longest {
		count = 2
	}
	for size < len(ArresterUnits) && units/float64(count) > ArresterUnits[size] {
		size++
	}
	return size, count
}
