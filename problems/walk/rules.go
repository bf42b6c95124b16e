package walk

import (
	"riserwork/problems"
	"riserwork/solver/unit/measure"
)

// sum is the one line that gives the number of a station.
type sum = problems.Skill

// line lays a sum out: what it is, its formula, the givens that stand in it,
// why it is so, and its slips.
func line(of *measure.Of, formula, metric, why string, givens []problems.Given, slips ...problems.Slip) *sum {
	rule := problems.Rule{Name: "number", Says: "the number at this place", Formula: formula, Metric: metric, Measure: of, Why: why, Slips: slips}
	if of.Point {
		rule.Figures = 4 // to a tenth of a degree
	}
	return &sum{ID: "walk", Kind: problems.Sum, Givens: givens, Rules: []problems.Rule{rule}}
}

func given(name, says string, of *measure.Of) problems.Given {
	return problems.Given{Name: name, Says: says, Measure: of}
}

var (
	before   = given("before", "pressure before it", &measure.Pressure)
	height   = given("height", "height between the two", &measure.Height)
	friction = given("friction", "pressure that the pipe takes at the busy hour", &measure.Pressure)
)

// Slips that several sums share.
var (
	addedUp = problems.Slip{
		ID: "added", Formula: "before + gamma x height",
		Did:  "You added the {height} of climb.",
		Why:  "Going up, the water overhead weighs against the pressure that drives it.",
		Next: "Up takes away, down gives. Say it before you write the sign.",
	}
	divided = problems.Slip{
		ID: "divided", Formula: "before - height / gamma",
		Did:  "You divided {height} by {gamma}.",
		Why:  "Dividing turns a pressure into a height. The height is known here.",
		Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
	}
	climbIgnored = problems.Slip{
		ID: "climb-left-out", Formula: "before",
		Did:  "You went on with {before}, as it was below.",
		Why:  "Each foot or metre that the water climbs costs it pressure, moving or not.",
		Next: "Look for the height between the two places first.",
	}
	lossAlone = problems.Slip{
		ID: "loss-alone", Formula: "lost",
		Did:  "You gave the {lost} that is lost.",
		Why:  "That is what the device takes. Behind it stands what is left.",
		Next: "Ask: lost, or left?",
	}
	lossAdded = problems.Slip{
		ID: "loss-added", Formula: "before + lost",
		Did:  "You added the {lost}.",
		Why:  "Nothing in a pipe but a pump gives pressure to water that flows. A loss is taken away.",
		Next: "Along the flow every loss is subtracted.",
	}
)

// The sums of the walk.
var (
	loseSum = line(&measure.Pressure, "before - lost", "", "What the device takes is gone; the rest goes on.",
		[]problems.Given{before, given("lost", "pressure that it takes", &measure.Pressure)}, lossAdded, lossAlone)

	boostSum = line(&measure.Pressure, "before + boost", "", "The pump adds its own pressure to what comes to it.",
		[]problems.Given{before, given("boost", "pressure that the pump adds", &measure.Pressure)},
		problems.Slip{
			ID: "boost-alone", Formula: "boost",
			Did:  "You gave the {boost} that the pump adds.",
			Why:  "A pump lifts what it is given. The pressure at its inlet is still there at its outlet.",
			Next: "Read both gauges of a pump: inlet and outlet.",
		},
		problems.Slip{
			ID: "boost-taken", Formula: "before - boost",
			Did:  "You took {boost} away.",
			Why:  "The pump is there to add pressure.",
			Next: "Only a pump adds; everything else on the line takes.",
		})

	standSum = line(&measure.Pressure, "before - gamma x height", "", "Standing water loses its own weight for every foot or metre up, and nothing else.",
		[]problems.Given{before, height}, addedUp, divided, climbIgnored)

	hangSum = line(&measure.Pressure, "before + gamma x height", "", "Going down, the water overhead pushes along.",
		[]problems.Given{before, height},
		problems.Slip{
			ID: "taken", Formula: "before - gamma x height",
			Did:  "You took the {height} off, though the place lies lower.",
			Why:  "Going down, the water above pushes too.",
			Next: "Up takes away, down gives. Say it before you write the sign.",
		})

	climbSum = line(&measure.Pressure, "before - gamma x height - friction", "", "The climb and the pipe both take their share. What is left arrives.",
		[]problems.Given{before, height, friction},
		problems.Slip{
			ID: "friction-left-out", Formula: "before - gamma x height",
			Did:  "You took off the climb and left out the {friction} of the pipe.",
			Why:  "Moving water rubs along the pipe. At the busy hour that pressure does not arrive.",
			Next: "With flow there are two losses on the way up: climb and pipe.",
		},
		problems.Slip{
			ID: "friction-added", Formula: "before - gamma x height + friction",
			Did:  "You added the {friction} of the pipe.",
			Why:  "Friction gives nothing back.",
			Next: "Along the flow every loss is subtracted.",
		},
		problems.Slip{
			ID: "climb-left-out", Formula: "before - friction",
			Did:  "You left out the {height} of climb.",
			Why:  "The water overhead weighs on what is below it, flowing or not.",
			Next: "Look for the height between the two places first.",
		},
		problems.Slip{
			ID: "divided", Formula: "before - height / gamma - friction",
			Did:  "You divided {height} by {gamma}.",
			Why:  "Dividing turns a pressure into a height. The height is known here.",
			Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
		})

	fallSum = line(&measure.Pressure, "before + gamma x height - friction", "", "Going down, the water overhead pushes along, and the pipe takes its share.",
		[]problems.Given{before, height, friction},
		problems.Slip{
			ID: "friction-left-out", Formula: "before + gamma x height",
			Did:  "You left out the {friction} of the pipe.",
			Why:  "Moving water rubs along the pipe, downward too.",
			Next: "With flow, ask what the pipe takes.",
		})

	spareSum = line(&measure.Pressure, "more - less", "", "What lies between the two is to spare.",
		[]problems.Given{given("more", "the higher of the two", &measure.Pressure), given("less", "the lower of the two", &measure.Pressure)},
		problems.Slip{
			ID: "both-added", Formula: "more + less",
			Did:  "You added the two.",
			Why:  "Room between two pressures is how far they are apart.",
			Next: "To spare means: one less the other.",
		})

	nightSum = line(&measure.Pressure, "busy + swing", "", "At rest nothing is lost on the way, and the pressure stands higher.",
		[]problems.Given{given("busy", "pressure at the busy hour", &measure.Pressure), given("swing", "how much higher it stands at rest", &measure.Pressure)},
		problems.Slip{
			ID: "swing-taken", Formula: "busy - swing",
			Did:  "You took the {swing} away.",
			Why:  "The busy hour is the low end. With no flow the pressure stands higher.",
			Next: "More people drawing, less pressure.",
		})

	pushSum = line(&measure.Force, "pressure x area", "pressure x area / 1000000", "Pressure is a force on every bit of the end that holds it.",
		[]problems.Given{given("pressure", "pressure in the pipe", &measure.Pressure), given("area", "area of the pipe's end", &measure.CrossArea)},
		problems.Slip{
			ID: "half", Formula: "pressure x area / 2", Metric: "pressure x area / 2000000",
			Did:  "You took half of it.",
			Why:  "The whole end is pushed, and only from one side.",
			Next: "Pressure times area, nothing shared.",
		})

	warmSum = line(&measure.TempDrop, "hot - cold", "", "The heater makes up what lies between cold and hot.",
		[]problems.Given{given("hot", "temperature when hot", &measure.Temp), given("cold", "temperature as it comes in", &measure.Temp)},
		problems.Slip{
			ID: "hot-alone", Formula: "hot",
			Did:  "You gave {hot}, the temperature itself.",
			Why:  "The water was not at nought when it came in.",
			Next: "A rise has two temperatures in it.",
		})

	coolSum = line(&measure.Temp, "before - drop", "", "The pipe gives heat off on the way, so the water arrives cooler.",
		[]problems.Given{given("before", "temperature before", &measure.Temp), given("drop", "what it cools on the way", &measure.TempDrop)},
		problems.Slip{
			ID: "drop-added", Formula: "before + drop",
			Did:  "You added the {drop}.",
			Why:  "Nothing warms the water on its way; the pipe only gives heat off.",
			Next: "Away from the heater it gets cooler.",
		})

	growSum = line(&measure.Tank, "content x growth", "", "Every gallon or litre grows by the same share when it is warmed.",
		[]problems.Given{given("content", "water in heater and hot pipe", &measure.Tank), given("growth", "share that it grows by", &measure.Share)})

	blendSum = line(&measure.Temp, "share x hot + (1 - share) x cold", "", "Each stream brings its own heat, by its share.",
		[]problems.Given{given("share", "share of hot water in the mix", &measure.Share), given("hot", "temperature of the hot", &measure.Temp), given("cold", "temperature of the cold", &measure.Temp)},
		problems.Slip{
			ID: "cold-left-out", Formula: "share x hot",
			Did:  "You left the cold stream out.",
			Why:  "The cold water brings heat too: it is not at nought.",
			Next: "Two streams, two terms.",
		},
		problems.Slip{
			ID: "shares-changed", Formula: "share x cold + (1 - share) x hot",
			Did:  "You gave the hot share to the cold.",
			Why:  "The {share} belongs to the hot stream.",
			Next: "Write the share beside its own temperature first.",
		})

	throttleSum = line(&measure.Pressure, "far - own + least", "", "The near riser has less pipe. Its valve takes the rest, so that no riser is the easy way.",
		[]problems.Given{given("far", "loss of the farthest circuit", &measure.Pressure), given("own", "loss of this circuit", &measure.Pressure), given("least", "what the valve of the farthest takes", &measure.Pressure)},
		problems.Slip{
			ID: "least-left-out", Formula: "far - own",
			Did:  "You left out the {least} in the farthest valve.",
			Why:  "That valve takes a little too, and the near one must match circuit and valve.",
			Next: "Add up both circuits to the end, valves with them.",
		})

	headSum = line(&measure.Height, "(circuit + common) / gamma", "", "The pump lifts nothing in a closed loop. It only makes up what pipes and valves take.",
		[]problems.Given{given("circuit", "loss of the farthest circuit with its valve", &measure.Pressure), given("common", "loss of heater and mixing valve", &measure.Pressure)},
		problems.Slip{
			ID: "multiplied", Formula: "(circuit + common) x gamma",
			Did:  "You multiplied by {gamma}.",
			Why:  "Multiplying turns a height into a pressure. Here the pressure is known and the height is wanted.",
			Next: "A height of water in feet is a larger number than its psi.",
		},
		problems.Slip{
			ID: "common-left-out", Formula: "circuit / gamma",
			Did:  "You left out the {common} of heater and mixing valve.",
			Why:  "All of the loop's water goes through them.",
			Next: "Go round once with a finger and add up everything it meets.",
		})
)
