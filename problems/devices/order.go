package devices

import "riserwork/problems"

// Work is an order of work: what is done first, and next, and why.
type Work struct {
	ID, Title string
	Ask       string
	Steps     []Step
	Caution   string
	Source    problems.Source
}

// Step is one step of an order of work; Why says why it comes where it does.
type Step struct{ Does, Why string }

// Works are the orders of work.
func Works() []Work { return works }

var works = []Work{
	{
		ID: "hand-over", Title: "A new system, from the last joint to the keys",
		Ask: "The piping of a new building is complete. In which order is it taken to the hand-over?",
		Steps: []Step{
			{"test it under pressure with water", "leaks are found while the walls are open and before anything is cleaned"},
			{"flush it", "chips and flux go out before the chlorine has to work through them"},
			{"disinfect it with chlorine for the time that the code asks", "only clean pipe can be disinfected"},
			{"flush the chlorine out and take samples", "a sample with chlorine in it proves nothing"},
			{"set the reducing valves and balance the loop", "set with the pipes as they will be used"},
			{"label it, write the settings down and hand it over", "the next one must find what was set"},
		},
		Caution: "Post every outlet while chlorine stands in the pipes. Test with water, not air.",
		Source:  practice,
	},
	{
		ID: "change-meter", Title: "Changing a water meter",
		Ask: "A meter with a bypass is changed in a metal service. In which order?",
		Steps: []Step{
			{"clamp the bonding jumper across the meter", "the pipe may carry current the moment it is parted"},
			{"open the sealed bypass, as the utility allows", "the building stays in water"},
			{"shut the valve ahead of the meter, then the one behind it", "the meter must stand alone"},
			{"relieve the pressure at the test tee and see it fall", "shut valves leak; only an open cock proves it"},
			{"loosen the unions and change the meter, arrow with the flow", "now nothing is behind them"},
			{"open slowly, let the air out, shut and seal the bypass", "fast filling slams air through the new meter"},
		},
		Caution: "Bonding is electrician's work where the law says so.",
		Source:  read("NEC 250.53(D)(1); Canadian Electrical Code, section 10 (bonding round the meter)"),
	},
	{
		ID: "service-reducing-valve", Title: "Opening a reducing valve",
		Ask: "The seat of a zone's reducing valve is to be cleaned; the station has a locked bypass. In which order?",
		Steps: []Step{
			{"tell the occupants and write down both gauges", "the readings show afterward whether it is right"},
			{"shut the valve ahead of it, then the one behind it", "nothing may flow in from either side"},
			{"relieve the pressure between them and see both gauges at zero", "a column stands above a shut valve"},
			{"open the valve, clean seat and strainer", "only now is there nothing behind the cover"},
			{"open the inlet slowly with the outlet shut, and set it at no flow", "a valve that creeps is seen at once"},
			{"open the outlet, look at a flowing tap, and write down the setting", "static and flowing are both proved"},
		},
		Caution: "Feed the zone through the bypass only with a hand on it and an eye on the gauge.",
		Source:  practice,
	},
	{
		ID: "change-circulator", Title: "Changing a circulator",
		Ask: "A loop's circulator is changed. In which order?",
		Steps: []Step{
			{"lock out its power and prove it dead", "an aquastat can start it at any time"},
			{"shut the valve on each side of it", "the loop stays full"},
			{"let the water between them cool and drain", "the loop is hot enough to scald"},
			{"change it, arrow toward the heater", "the old flow and the new must agree"},
			{"open the suction side, let the air out, then the discharge side", "a dry pump burns its bearings"},
			{"give it power and see the return warm up", "only the thermometer proves that it moves water"},
		},
		Caution: "Hot water stands in the loop: let it cool before it is opened.",
		Source:  practice,
	},
	{
		ID: "change-element", Title: "Changing the element of an electric heater",
		Ask: "An element of an electric storage heater is changed. In which order?",
		Steps: []Step{
			{"switch off, lock out and prove dead", "208 to 600 V stand at its terminals"},
			{"shut the cold feed and open a hot tap", "the pressure is let off where it is seen"},
			{"drain the tank below the element", "hot water first, at the drain and not in the face"},
			{"change the element and its seal", "the hole is dry now"},
			{"fill with a hot tap open until it runs without air", "the element must be covered"},
			{"only then give it power", "a dry element burns out in seconds"},
		},
		Caution: "Electrical work is for those who may do it.",
		Source:  practice,
	},
	{
		ID: "start-booster", Title: "Putting a booster to work",
		Ask: "A new booster set is put to work. In which order?",
		Steps: []Step{
			{"set the air in the tank with no water in it", "with water in it the gauge shows the water's pressure"},
			{"fill and let the air out of the pump casings", "a dry pump burns its seal"},
			{"give each pump a touch of power and look at its turning", "turning backward it pumps a little, which misleads"},
			{"set cut-in and cut-out at the switch's own height", "the pressure that counts is the one where it stands"},
			{"trip the low-suction switch by shutting the suction slowly", "it must work on the day that the street fails"},
			{"run at peak draw and write down pressures and amps", "later faults are found by these"},
		},
		Caution: "Never run a pump dry or against a shut valve. Couplings guarded.",
		Source:  practice,
	},
	{
		ID: "drain-riser", Title: "Draining a riser",
		Ask: "One cold riser of a tall building is drained for a repair. In which order?",
		Steps: []Step{
			{"tell the occupants", "somebody is in the shower"},
			{"shut the valve at the foot", "no new water comes in"},
			{"open a tap at the top", "air must get in, or the column hangs and siphons what it finds"},
			{"open the drain at the foot, slowly", "the whole column stands on it"},
			{"see the gauge at zero and water no longer run", "only then is it empty"},
			{"open the joint", "now nothing stands above it"},
		},
		Caution: "A column of 200 ft (60 m) stands with 87 psi (600 kPa) on the drain.",
		Source:  physics,
	},
}
