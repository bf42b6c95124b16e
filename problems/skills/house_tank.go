package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// tankCare is shown where water stands in an open tank.
const tankCare = "An open tank of drinking water has a tight cover, a screened overflow and an air gap at its inlet. No hose hangs in it."

var houseTankSkill = problems.Skill{
	ID: "house-tank", Title: "A house tank on the roof",
	Chapter: 4, Order: 100, Year: 3, Kind: problems.Sum,
	Ask: "An open house tank is to feed the building by its height. The roof slab is {slab_up} above the top shower on level {level}, which must have {least} ({limit_says}; friction left out). How high must the tank's lowest water stand above the slab? The tank covers {base}; its pump starts at a depth of {low_depth} and stops at {high_depth}, and has {fill_time} to fill that. What flow must it have, with nothing drawn?",
	Givens: []problems.Given{
		{Name: "least", Says: "pressure to be left at the top shower", Measure: &measure.Pressure},
		{Name: "slab_up", Says: "height of the roof slab above the top shower", Measure: &measure.Height},
		{Name: "base", Says: "area that the tank covers", Measure: &measure.BlockArea},
		{Name: "low_depth", Says: "depth of water at which the pump starts", Measure: &measure.Height},
		{Name: "high_depth", Says: "depth of water at which the pump stops", Measure: &measure.Height},
		{Name: "fill_time", Says: "time to fill from one to the other", Measure: &measure.FillTime},
	},
	Rules: []problems.Rule{
		{
			Name: "above_shower", Says: "height of the lowest water above the top shower", Measure: &measure.Height,
			Formula: "least / gamma",
			Why:     "Nothing pushes but the water's own height. So much pressure takes so much height.",
			Would:   tankAboveShower,
			Slips: []problems.Slip{
				{
					ID: "multiplied", Formula: "least x gamma",
					Did:  "You multiplied {least} by {gamma}.",
					Why:  "Multiplying turns a height into a pressure. The pressure is known here and the height is wanted, so divide.",
					Next: "25 psi take 58 ft, 170 kPa take 17 m.",
				},
				{
					ID: "slab-is-enough", Formula: "slab_up",
					Did:  "You set the tank on the slab, {slab_up} over the top shower.",
					Why:  "That height gives the top shower only a trickle: 10 ft are 4.3 psi, 3 m are 29 kPa. Being above is not enough.",
					Next: "Turn the pressure that is wanted into a height, and compare.",
				},
			},
		},
		{
			Name: "stand", Says: "height of the lowest water above the slab", Measure: &measure.Height,
			Formula: "above_shower - slab_up",
			Why:     "The slab gives {slab_up} of the height. The tank's stand has to give the rest, or the top floors get a small booster of their own.",
			Would:   func(w problems.World, v float64) problems.Outcome { return tankAboveShower(w, v+w.SI("slab_up")) },
			Slips: []problems.Slip{
				{
					ID: "slab-added", Formula: "above_shower + slab_up",
					Did:  "You added the {slab_up} of the slab.",
					Why:  "The slab is part of that height already. The stand comes out too tall by twice as much.",
					Next: "Draw shower, slab and water one above the other.",
				},
				{
					ID: "slab-left-out", Formula: "above_shower",
					Did:  "You counted the whole height from the slab.",
					Why:  "The height counts from the top shower, and the slab is {slab_up} above it already.",
					Next: "Draw shower, slab and water one above the other.",
				},
			},
		},
		{
			Name: "depth", Says: "depth between start and stop", Measure: &measure.Height,
			Formula: "high_depth - low_depth",
			Why:     "Only the water between the two floats comes and goes.",
			Slips: []problems.Slip{{
				ID: "whole-depth", Formula: "high_depth",
				Did:  "You took the whole depth, {high_depth}.",
				Why:  "The pump starts when {low_depth} are still in the tank. That part is not filled again.",
				Next: "Usable water lies between two levels.",
			}},
		},
		{
			Name: "usable", Says: "water between start and stop", Measure: &measure.Tank,
			Formula: "base x depth x tank_factor",
			Why:     "Area times depth is the room; the factor turns it into gallons or litres.",
			Slips: []problems.Slip{
				{
					ID: "factor-left-out", Formula: "base x depth",
					Did:  "You left out {tank_factor}.",
					Why:  "Area times depth gives cubic feet or cubic metres, not gallons or litres.",
					Next: "Read the units along the line.",
				},
				{
					ID: "pounds-for-gallons", Only: problems.OnlyUS, Formula: "base x depth x 62.4",
					Did:  "You multiplied by 62.4.",
					Why:  "That is the pounds in a cubic foot of water. Gallons are 7.48.",
					Next: "62.4 lb, 7.48 gal: say the unit with the number.",
				},
			},
		},
		{
			Name: "fill_rate", Says: "flow of the fill pump", Measure: &measure.FlowRate,
			Formula: "usable / fill_time", Metric: "usable / (fill_time x seconds_per_minute)",
			Why:   "So much water in so much time. What is drawn meanwhile comes on top.",
			Would: fillTank,
			Slips: []problems.Slip{
				{
					ID: "litres-a-minute", Only: problems.OnlySI, Formula: "usable / fill_time",
					Did:  "You divided by the minutes and called it litres a second.",
					Why:  "That is litres a minute, sixty times as many.",
					Next: "A pump of a building moves some litres a second, not hundreds.",
				},
				{
					ID: "hours-for-minutes", Only: problems.OnlyUS, Formula: "60 x usable / fill_time",
					Did:  "You worked out gallons an hour and called them gallons a minute.",
					Why:  "gpm count by the minute. Yours is sixty times as large.",
					Next: "Gallons over minutes is gpm as it stands.",
				},
			},
		},
	},
	Holds:    "A gravity tank gives pressure by its height and nothing else: 25 psi is 58 ft (170 kPa is 17 m) above the top outlet. A tank on the roof slab leaves the floors just under it short, and they need a stand, a small booster or flush tanks. In return the building runs on for a while when the power fails.",
	Cautions: []string{tankCare, "Stands and slabs that carry a tank are an engineer's work: water weighs 62.4 lb a cubic foot, a tonne a cubic metre."},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "231 cubic inches in a US gallon: 7.4805 in a cubic foot. NIST SP 811 (2008), App. B.8", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 6, Max: 18})
		slab := t.Up(t.Storeys+1) - t.Up(t.Storeys) - s.Shower()
		least := keepAtTop(s)
		low := s.Pick([]float64{1.5, 2, 2.5}, []float64{0.4, 0.5, 0.6, 0.8})
		deep := s.Pick([]float64{3, 4, 5}, []float64{1.0, 1.2, 1.5})
		base := s.Pick([]float64{60, 80, 100, 120}, []float64{6, 8, 10, 12})
		minutes := s.Pick([]float64{25, 30, 40, 45, 60}, []float64{25, 30, 40, 45, 60})
		s.Street(0, "on the gauge in the meter room")
		b := s.Building
		b.Header = &solver.Header{Elevation: b.Highest(b.Top()) + solver.WaterColumn.HeightOf(s.Press(least))}
		b.Zones = []solver.Zone{{Name: "tank", Bottom: 0, Top: b.Top(), Supply: solver.FromHeader}}
		s.Focus = b.Top()
		s.Name("level", t.Level(t.Storeys))
		s.Set("least", least)
		setHeight(s, "slab_up", slab)
		s.Set("base", base)
		s.Set("low_depth", low)
		s.Set("high_depth", math.Round((low+deep)*10)/10)
		s.Set("fill_time", minutes)
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.FillRate(tankBase(w), w.Length("high_depth"), w.Length("low_depth"), w.SI("fill_time")))
	},
}

func init() { add(&houseTankSkill) }

// tankBase is the area of the tank as the school's factor of gallons has it.
func tankBase(w problems.World) float64 { return w.SI("base") * w.SI("tank_factor") }

// tankAboveShower stands the tank's lowest water so high above the top shower.
func tankAboveShower(w problems.World, v float64) problems.Outcome {
	b := w.Building.Copy()
	top, least := b.Top(), w.Pressure("least")
	b.Header.Elevation, b.Header.Pressure = b.Highest(top)+unit.Length(v), 0
	at := b.At(top, b.Highest(top), w.Gamma())
	says, kept := w.Left("the top shower, on "+w.Level(top)+",", "", at, least)
	o := problems.Outcome{Kept: kept, Building: b, Marks: []problems.Mark{w.Mark(top, problems.AtHighest, at, kept)}}
	o.Says = []string{"With the lowest water " + w.Tall(unit.Length(v)) + " above it, " + says + "."}
	if wanted := w.Gamma().HeightOf(least); kept && w.Tall(unit.Length(v)) != w.Tall(wanted) {
		o.Kept = false
		o.Says = append(o.Says, w.Tall(wanted)+" would do: the rest of the stand is paid for nothing.")
	}
	return o
}

// fillTank fills the tank with a pump of that flow.
func fillTank(w problems.World, v float64) problems.Outcome {
	given := w.SI("fill_time")
	takes := given * float64(solver.FillRate(tankBase(w), w.Length("high_depth"), w.Length("low_depth"), given)) / v
	minutes := func(s float64) string { return w.Text(measure.FillTime, s) }
	says := "A pump of " + w.Rate(unit.Flow(v)) + " would fill from one level to the other in " + minutes(takes)
	switch {
	case minutes(takes) == minutes(given):
		return problems.Outcome{Kept: true, Says: []string{says + ", as it should."}}
	case takes > given:
		return problems.Outcome{Says: []string{says + "; it has " + minutes(given) + ", and the tank may run dry meanwhile."}}
	}
	return problems.Outcome{Says: []string{says + "; it has " + minutes(given) + ". Pump and pipe would be larger than they need be, and start more often."}}
}

var seriesLiftsSkill = problems.Skill{
	ID: "series-lifts", Title: "Two lifts with a tank between",
	Chapter: 4, Order: 110, Year: 4, Kind: problems.Sum,
	Ask: "A tower is lifted in two steps. The lower pumps stand at the street's gauge, {low_street} at the peak, and fill an open tank whose inlet is {tank_up} higher; friction to it is {low_friction}, and its float valve wants {valve_least}. The upper pumps draw from that tank at its inlet's height and feed the shower on level {level}, {top_up} above the street's gauge, with {high_friction} of friction and {least} left ({limit_says}). What must each set of pumps add?",
	Givens: []problems.Given{
		{Name: "low_street", Says: "lowest street pressure", Measure: &measure.Pressure, Plate: true},
		{Name: "tank_up", Says: "height of the middle tank's inlet above the gauge", Measure: &measure.Height},
		{Name: "low_friction", Says: "friction up to the tank", Measure: &measure.Pressure},
		{Name: "valve_least", Says: "pressure that the tank's float valve wants", Measure: &measure.Pressure},
		{Name: "top_up", Says: "height of the top shower above the gauge", Measure: &measure.Height},
		{Name: "high_friction", Says: "friction from the tank to the top shower", Measure: &measure.Pressure},
		{Name: "least", Says: "pressure to be left at the top shower", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "low_column", Says: "climb to the middle tank, as a pressure", Measure: &measure.Pressure,
			Formula: "gamma x tank_up",
			Why:     "The lower pumps lift the water to the tank and no further.",
			Slips: []problems.Slip{{
				ID: "lower-lifts-it-all", Formula: "gamma x top_up",
				Did:  "You had the lower pumps lift to the top of the building.",
				Why:  "They end at the tank, {tank_up} up. From there the upper pumps take over.",
				Next: "Draw a line through the tank. Each set of pumps has its own half.",
			}},
		},
		{
			Name: "low_boost", Says: "pressure that the lower pumps must add", Measure: &measure.Pressure,
			Formula: "low_column + low_friction + valve_least - low_street",
			Why:     "Climb, friction and the float valve are to be paid; the street brings its share.",
			Slips: []problems.Slip{
				{
					ID: "street-left-out", Formula: "low_column + low_friction + valve_least",
					Did:  "You did not take off what the street brings.",
					Why:  "The lower pumps begin with {low_street} at their inlet and add only the rest.",
					Next: "Boost is needed behind the pump, less there already ahead of it.",
				},
				{
					ID: "valve-left-out", Formula: "low_column + low_friction - low_street",
					Did:  "You left out the {valve_least} at the float valve.",
					Why:  "The water would come up to the valve and not run through it.",
					Next: "Climb, friction, what is left at the end: three terms.",
				},
			},
		},
		{
			Name: "rest", Says: "height from the tank to the top shower", Measure: &measure.Height,
			Formula: "top_up - tank_up",
			Why:     "The open tank is a new start. Heights count from it.",
			Slips: []problems.Slip{{
				ID: "whole-building", Formula: "top_up",
				Did:  "You had the upper pumps lift the whole height, {top_up}.",
				Why:  "The water is {tank_up} up already when they take it. Pumps chosen so overfeed the upper floors by the whole lower lift.",
				Next: "The tank is a new ground level. Count from it.",
			}},
		},
		{
			Name: "high_column", Says: "that height as a pressure", Measure: &measure.Pressure,
			Formula: "gamma x rest",
			Why:     "Each foot or metre of height costs the same pressure.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "rest / gamma",
				Did:  "You divided {rest} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known here and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "high_boost", Says: "pressure that the upper pumps must add", Measure: &measure.Pressure,
			Formula: "high_column + high_friction + least",
			Why:     "In an open tank the street's pressure is gone. The upper pumps begin at zero.",
			Slips: []problems.Slip{
				{
					ID: "street-taken-off-again", Formula: "high_column + high_friction + least - low_street",
					Did:  "You took the street's {low_street} off here as well.",
					Why:  "The open tank has let that pressure go. The upper pumps get water, not pressure.",
					Next: "Ask what a gauge on the open tank shows: nothing.",
				},
				{
					ID: "residual-left-out", Formula: "high_column + high_friction",
					Did:  "You left out the {least} at the top shower.",
					Why:  "The water would just reach the shower head.",
					Next: "Climb, friction, what is left at the end: three terms.",
				},
			},
		},
	},
	Holds:    "An open tank breaks the pressure. What comes before it ends there, what comes after it begins there at zero, so each lift is sized alone with the tank as its ground. That is why very tall towers can be built: no pipe and no pump carries the whole height.",
	Cautions: []string{tankCare, pumpDry, pumpLock},
	Sources: []problems.Source{
		footSource, topSource, topCode,
		{Says: "Lifts in series with break tanks: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Uses: []solver.Use{solver.Apartment, solver.Office, solver.MixedUse, solver.Hotel}, Min: 28, Max: 45})
		static := s.PickPlate([]float64{55, 60, 65}, []float64{400, 425, 450})
		low := static - s.PickPlate([]float64{8, 10, 12}, []float64{50, 75})
		s.SetStreet(static, low, 0, "on the gauge in the meter room")
		n := t.Storeys/2 + s.Int(-2, 2)
		tank := t.Up(n) + s.Pick([]float64{6, 7}, []float64{1.8, 2.1})
		top := t.Up(t.Storeys) + s.Shower()
		lowFriction := s.Pick([]float64{6, 7, 8, 9}, []float64{45, 50, 60})
		highFriction := s.Pick([]float64{6, 8, 9, 10}, []float64{45, 55, 65, 70})
		valve := s.Pick([]float64{10, 12, 15}, []float64{70, 85, 100})
		least := keepAtTop(s)
		b := s.Building
		middle := t.Storey(n)
		b.Booster = &solver.Booster{Boost: s.Press(head(s, tank)+lowFriction+valve) - s.PlatePress(low)}
		b.Booster.ShutOff = b.Booster.Boost * 1.2
		b.Zones = []solver.Zone{
			{Name: "low", Bottom: 0, Top: middle, Supply: solver.FromBooster},
			{Name: "high", Bottom: middle + 1, Top: b.Top(), Supply: solver.FromHeader},
		}
		b.Header = &solver.Header{Elevation: s.Length(tank), Pressure: s.Press(head(s, top-tank) + least)}
		s.Focus = b.Top()
		s.Name("level", t.Level(t.Storeys))
		s.Set("low_street", low)
		setHeight(s, "tank_up", tank)
		s.Set("low_friction", lowFriction)
		s.Set("valve_least", valve)
		setHeight(s, "top_up", top)
		s.Set("high_friction", highFriction)
		s.Set("least", least)
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		up := b.Highest(b.Top()) - b.Header.Elevation
		return float64(solver.Discharge(w.Gamma(), up, w.Pressure("high_friction"), w.Pressure("least")))
	},
}

func init() { add(&seriesLiftsSkill) }
