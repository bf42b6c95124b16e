// Package solver holds the sums of water supply in buildings: pressures up
// and down a building, where the street pressure runs out, pressure zones and
// their reducing valves, hot water made, mixed and kept moving.
//
// Every sum is a pure function over the quantities of package unit, one topic
// a file, named as the trade names it. [Building] is a building and its water
// supply; [Solve] works out the whole of it. [Profiles] are the code editions
// with their limits, [Constants] the figures that schools teach.
//
// It is for study. It leaves out what a design needs: local amendments, the
// makers' data, and the judgement of a licensed person.
package solver
