package devices

import (
	"riserwork/problems"
	"riserwork/problems/skills"
)

// Shown names the number that shows what happens without a device.
type Shown string

// Numbers that show it.
const (
	ShowsNothing Shown = ""
	ShowsStatic  Shown = "static"  // pressure behind a valve that does not hold
	ShowsSurge   Shown = "surge"   // spike of a fast closing
	ShowsSiphon  Shown = "siphon"  // height that a vacuum lifts water
	ShowsGrowth  Shown = "growth"  // water that has nowhere to go
	ShowsScald   Shown = "scald"   // time until the skin burns
	ShowsThrust  Shown = "thrust"  // push on a bend
	ShowsBack    Shown = "back"    // column that stands on a resting pump
	ShowsMoved   Shown = "moved"   // length that a hot riser grows
	ShowsCooling Shown = "cooling" // waiting time at a leg that has gone cold
)

// shown is where a number comes from: the skill that works it out, and the
// sentence that its numbers are put into.
type shown struct {
	of    Shown
	skill string
	says  string
}

var shownBy = []shown{
	{ShowsStatic, "failed-valve", "For one such building: a valve set to {setting} that lets {inlet} through gives {pressure} at a tap below it."},
	{ShowsSurge, "surge", "For one such branch: water at {speed}, stopped at once, takes {standing} up to {peak}."},
	{ShowsSiphon, "siphon-depth", "A vacuum of {vacuum} lifts water {lifted} high."},
	{ShowsGrowth, "expansion-volume", "For one such heater: {volume} warmed from {cold} to {hot} wants room for {expansion} more."},
	{ShowsThrust, "thrust", "For one such bend: at {test} the water pushes it outward with {thrust}."},
	{ShowsBack, "head-to-pressure", "A column of {column} stands on what is below it with {pressure}."},
	{ShowsMoved, "pipe-movement", "For one such riser: {length}, warmed from {installed} to {hot}, grows by {movement}."},
	{ShowsCooling, "tap-wait", "Where nothing moves the pipe goes cold: {length} of {size} tube keep {tap} waiting {wait} at {flow}."},
}

// Consequence is the number that shows it, worked out for a problem drawn from
// the seed under the house rules, as a sentence; with the problem, which can be
// opened. Both are empty where physics gives no single number. Times to burn are
// those of the Ontario Building Code's note A-7.2.10.7, which is confirmed.
func Consequence(of Shown, seed uint64, house problems.House) (string, *problems.Problem) {
	if of == ShowsScald {
		return "Water at 140 °F (60 °C) burns an adult's skin in 1 to 5 seconds, at 120 °F (49 °C) in nearly 10 minutes, an older person's in about 2; a child's sooner.", nil
	}
	for _, s := range shownBy {
		if s.of != of {
			continue
		}
		skill, ok := skills.ByID(s.skill)
		if !ok {
			return "", nil
		}
		p, err := problems.New(skill, seed, house)
		if err != nil {
			return "", nil
		}
		return p.Fill(s.says, p.Env()), p
	}
	return "", nil
}
