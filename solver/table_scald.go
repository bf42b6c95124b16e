package solver

import "riserwork/solver/unit"

// ScaldTimes is how long water of a temperature takes to burn the skin of an
// adult deeply: Moritz and Henriques (1947), as a valve maker prints it;
// confirmed. A child or an older person burns sooner.
var ScaldTimes = []ScaldTime{
	{celsius(48), 1200},
	{celsius(49), 600},
	{celsius(51), 252},
	{celsius(55), 30},
	{celsius(60), 5},
}

// ScaldTime is the time in seconds at a temperature.
type ScaldTime struct {
	Water   unit.Quantity
	Seconds float64
}
