package devices

import "riserwork/problems"

// Decision is a choice between ways to build, justified by one reason.
type Decision struct {
	ID, Ask string
	Options []Option // one of them right
	Source  problems.Source
}

// Option is one answer that may be chosen, with what is said to it.
type Option struct {
	Text  string
	Right bool
	Why   string
}

// Decisions are the choices.
func Decisions() []Decision { return decisions }

var decisions = []Decision{
	{
		ID: "preventer-by-hazard", Source: read("CSA B64.10, hazard classes; local survey"),
		Ask: "The survey puts a car wash on the ground floor of a tower into the severe hazard class. Which device isolates the premises?",
		Options: []Option{
			{"a reduced-pressure backflow preventer", true, "A severe hazard asks for the device that opens to a drain when its checks fail."},
			{"a double check valve assembly, since it loses less pressure", false, "It would save perhaps 6 psi, but suits a moderate hazard at most. Pressure is found elsewhere."},
			{"a single check valve behind the meter", false, "A check is no backflow preventer: it cannot be tested, and grit holds it open."},
			{"a vacuum breaker at each tap", false, "That guards outlets, not the main, and not against back-pressure from pumps."},
		},
	},
	{
		ID: "no-size-fits", Source: practice,
		Ask: "No pipe size meets the friction that is left: the budget is nearly used up by the meter and the preventer. What is looked at first?",
		Options: []Option{
			{"a larger meter or a preventer with less loss that the hazard still allows, then a booster", true, "The budget is raised where it is lost. If that is not enough, pressure must be added."},
			{"a preventer of a lower class than the hazard", false, "The hazard decides the device, not the pressure."},
			{"the pressure kept at the top outlet, which is set to zero", false, "Then the pipes are right and the shower is dry."},
			{"a higher speed than the pipe may have", false, "It wears the pipe through and hammers; speed is a limit of its own."},
		},
	},
	{
		ID: "power-failure", Source: physics,
		Ask: "The booster has no power. Its bypass with a check is sound. Which floors still have water?",
		Options: []Option{
			{"those that the street's own pressure reaches, through the bypass", true, "The street pushes through the check of the bypass as high as its pressure goes."},
			{"none: the pumps stand in the way", false, "The bypass goes round them for this very case."},
			{"all, at less pressure", false, "Above the reach of the street there is none."},
			{"only those above the pressure tank", false, "The tank gives out a few gallons once; then it is empty."},
		},
	},
	{
		ID: "tall-heater", Source: read("heater rating plates, 125 or 150 psi"),
		Ask: "A 30-storey tower with its pumps in the cellar keeps about 170 psi there. Where does the storage heater go?",
		Options: []Option{
			{"on a floor high enough that the pressure there is below its rating, or behind a zone's reduced pressure", true, "Each 100 ft up takes 43 psi off; the tank is rated 125 or 150 psi."},
			{"in the cellar, with a relief valve set above 170 psi", false, "The relief must be set at or below the tank's rating; so it would open for good."},
			{"in the cellar: the street has only 60 psi", false, "The tank sees the pump, not the street."},
			{"in the cellar, behind a larger expansion tank", false, "An expansion tank takes growth, not the pump's pressure."},
		},
	},
	{
		ID: "reducing-in-loop", Source: practice,
		Ask: "The lower hot zone of a tower shares one recirculated loop with the upper one and has too much pressure. What is done?",
		Options: []Option{
			{"each zone gets its own heater and loop, fed at its own pressure", true, "Then no reducing valve stands in a loop, and hot and cold break at the same floors."},
			{"a reducing valve in the loop, with a stronger circulator", false, "The circulator would have to make good the valve's whole drop, many times what it can."},
			{"a relief valve on the lower zone", false, "A relief valve is a last guard, not a regulator: it would run all day."},
			{"the balancing valves of the lower zone nearly shut", false, "They set flow, and do nothing at rest."},
		},
	},
	{
		ID: "store-and-limit", Source: practice,
		Ask: "How are Legionella and scalding both kept away in a building with showers?",
		Options: []Option{
			{"store hot, keep the whole loop hot, and limit the temperature at the fixture", true, "Bacteria are held down where water stands and moves, and the skin is guarded where it is touched."},
			{"store at the temperature of the shower", false, "That is where Legionella grows best."},
			{"mix down at the heater to the shower's limit", false, "Then the whole loop stands at the temperature that bacteria like, and comes back cooler still."},
			{"turn the store up and leave the fixtures as they are", false, "At 140 °F (60 °C) skin burns within seconds."},
		},
	},
	{
		ID: "where-zones-break", Source: practice,
		Ask: "A tower's zones are planned. What decides where they break?",
		Options: []Option{
			{"the lowest outlet of each zone is within the limit at no flow, its highest has enough at the busy hour, and a floor is there for the station", true, "Both ends of the zone decide, and a valve station must stand somewhere."},
			{"an equal number of floors in each", false, "Floor heights and the street's own reach are not equal."},
			{"the limit at the lowest outlet alone", false, "Then nobody has looked at the top of the zone at the busy hour."},
			{"the pump's best point", false, "The pump serves the zones, not they the pump."},
		},
	},
	{
		ID: "gauges-disagree", Source: practice,
		Ask: "Two gauges at one place read 3 psi (20 kPa) apart. What comes first?",
		Options: []Option{
			{"swap the two gauges and read again", true, "If the difference moves with the gauge, the gauge is at fault and not the pipe."},
			{"reset the reducing valve", false, "A valve set by a false gauge is set wrong."},
			{"take the mean", false, "One of them is wrong; the mean is wrong too."},
			{"clean the strainer between them", false, "They stand at one place; nothing is between them."},
		},
	},
	{
		ID: "feed-direction", Source: physics,
		Ask: "A tower is planned where the power fails for hours every month, and its roof can carry a tank. How is it fed?",
		Options: []Option{
			{"pumped up to a roof tank, and fed downward from it", true, "The tank stands above the taps: it runs them by its height alone until it is empty."},
			{"fed upward by a booster with a pressure tank", false, "A pressure tank gives out a few gallons; then every floor above the reach of the street is dry."},
			{"fed upward by a booster with twice the pumps", false, "All of them stand still at once when the power fails."},
			{"fed by the street alone", false, "Its pressure ends a few floors up, with or without power."},
		},
	},
	{
		ID: "hose-in-the-cellar", Source: recalled("IPC 608.16.4: hose connections have a vacuum breaker"),
		Ask: "A hose connection is put into the garbage room of a tower. What keeps the hose from fouling the building's own water?",
		Options: []Option{
			{"a vacuum breaker at the hose connection", true, "It lets air in where the hose could draw back, before anything reaches the branch."},
			{"the preventer at the water entry", false, "It guards the street. The floors between hose and entry are not guarded by it."},
			{"a check valve in the branch", false, "It cannot be tested, and a grain of sand holds it open."},
			{"a sign that the hose must hang above the floor drain", false, "A sign keeps nothing back on the day that somebody drops the hose into a bucket."},
		},
	},
}
