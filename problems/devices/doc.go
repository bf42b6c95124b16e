// Package devices holds what stands on the water lines of a building and how
// it is put together: each device with its purpose, its place and what happens
// without it; the sound arrangements of a water entry, a booster, a valve
// station, a heater and a loop; what each arrangement must keep; and the faults
// that are met on the job. The questions of reasoning are drawn from them.
//
// Everything here is data and pure functions: a seed draws the same question
// everywhere.
package devices
