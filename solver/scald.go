package solver

import "riserwork/solver/unit"

// ScaldTimesUS are the times of US tables for deep burns of an adult: US
// Consumer Product Safety Commission (120 and 140 °F) and a children's
// hospital (130, 135 and 150 °F); confirmed. The coolest is first.
var ScaldTimesUS = []ScaldTime{
	{fahrenheit(120), 300},
	{fahrenheit(130), 30},
	{fahrenheit(135), 10},
	{fahrenheit(140), 6},
	{fahrenheit(150), 1.5},
}

// ScaldTimesIn are the rows that tables in a system's unit print.
func ScaldTimesIn(s unit.System) []ScaldTime {
	if s == unit.US {
		return ScaldTimesUS
	}
	return ScaldTimes
}
