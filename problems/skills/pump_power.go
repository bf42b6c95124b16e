package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var motorRule = problems.Rule{
	Name: "motor", Says: "next standard motor", Measure: &measure.Motor, Whole: true, Table: "motors", Row: "shaft",
	Formula: "next_motor_hp(shaft)", Metric: "next_motor_hp(shaft x power_factor)",
	Why:   "Motors come in steps. The one that is bought gives at least the shaft's power.",
	Would: fitMotor,
	Slips: []problems.Slip{
		{
			ID: "rounded-down", Only: problems.OnlyUS, Formula: "lower_motor_hp(shaft)",
			Did:  "You took {got}, the step below {shaft}.",
			Why:  "At design flow the pump would ask for more than the motor gives. It runs hot, and its overload trips at the busy hour.",
			Next: "A thing that must carry a load is rounded up.",
		},
		{
			ID: "motor-too-small", Only: problems.OnlySI, Formula: "lower_motor_hp(shaft x power_factor)",
			Did:  "You took {got} for a shaft of {shaft}: the kilowatts were read as horsepower, or the size was rounded down.",
			Why:  "A horsepower is 0.746 kW, the smaller unit, so it takes more of them, and the motor must give at least that. This one trips at the busy hour.",
			Next: "Horsepower are about a third more than the kilowatts. Then take the next size up.",
		},
	},
}

var pumpPowerSkill = problems.Skill{
	ID: "pump-power", Title: "Power of the pump and its motor",
	Chapter: 4, Order: 30, Year: 3, Kind: problems.Sum,
	Ask: "A booster pump moves {flow} and adds {boost}. At this point of its curve its efficiency is {pump_eff}. What power does the water take, what power the shaft, and which standard motor in horsepower is the smallest that gives it? No spare is asked for.",
	Givens: []problems.Given{
		{Name: "flow", Says: "design flow of the pump", Measure: &measure.FlowRate},
		{Name: "boost", Says: "pressure that the pump adds", Measure: &measure.Pressure},
		{Name: "pump_eff", Says: "efficiency of the pump, as a share of one", Measure: &measure.Share},
	},
	Rules: []problems.Rule{
		{
			Name: "pump_head", Says: "head of the pump", Measure: &measure.Height,
			Formula: "boost / gamma",
			Why:     "The power formula with {power_base} counts in height of water.",
			Slips: []problems.Slip{
				{
					ID: "multiplied", Formula: "boost x gamma",
					Did:  "You multiplied {boost} by {gamma}.",
					Why:  "Multiplying turns a height into a pressure. The pressure is known here and the height is wanted, so divide.",
					Next: "The feet are more than twice the psi; the metres are about a tenth of the kPa.",
				},
				{
					ID: "pressure-for-head", Formula: "boost",
					Did:  "You put the pressure in where the height belongs.",
					Why:  "With {power_base} the formula wants feet or metres of water. A pressure has a number of its own: 1714 with psi, 1000 with kPa.",
					Next: "3960 goes with feet, 1714 with psi; 102 with metres, 1000 with kPa. Say both together.",
				},
			},
		},
		{
			Name: "water_power", Says: "power that the water takes", Measure: &measure.PumpPower,
			Formula: "flow x pump_head / power_base",
			Why:     "Power is weight lifted in a time: so much water every minute or second, up such a height.",
			Slips: []problems.Slip{{
				ID: "pressure-base-with-head", Formula: "flow x pump_head / 1714", Metric: "flow x pump_head / 1000",
				Did:  "You divided by the number that goes with a pressure.",
				Why:  "Your height is in feet or metres, and that goes with {power_base}. Otherwise the power is off by the factor between pressure and height.",
				Next: "3960 goes with feet, 1714 with psi; 102 with metres, 1000 with kPa.",
			}},
		},
		{
			Name: "shaft", Says: "power at the shaft", Measure: &measure.PumpPower,
			Formula: "water_power / pump_eff",
			Why:     "The pump loses a part to friction and leakage inside. The shaft must bring that as well.",
			Slips: []problems.Slip{
				{
					ID: "times-efficiency", Formula: "water_power x pump_eff",
					Did:  "You multiplied by the efficiency.",
					Why:  "That makes the shaft give less than the water takes. Losses have to be brought in on top.",
					Next: "Shaft is more than water. Check that the number grew.",
				},
				{
					ID: "efficiency-left-out", Formula: "water_power",
					Did:  "You gave {water_power}, the water's power, as the shaft's.",
					Why:  "That would be a pump without losses. This one turns {pump_eff} of its power into lift.",
					Next: "Three powers in a row: water, shaft, wire. Each is larger than the one before.",
				},
			},
		},
		motorRule,
	},
	Routes: []problems.Route{{
		Says: "straight from the pressure",
		Rules: []problems.Rule{
			{
				Name: "water_power", Says: "power that the water takes", Measure: &measure.PumpPower,
				Formula: "flow x boost / pressure_base",
				Why:     "Flow times pressure is power. With gpm and psi the number is 1714, with litres a second and kPa it is 1000.",
				Slips: []problems.Slip{{
					ID: "head-base-with-pressure", Formula: "flow x boost / 3960", Metric: "flow x boost / 102",
					Did:  "You put the pressure into the formula that counts in height.",
					Why:  "3960 goes with feet and 102 with metres. Here a pressure stands on the line.",
					Next: "3960 goes with feet, 1714 with psi; 102 with metres, 1000 with kPa.",
				}},
			},
			{
				Name: "shaft", Says: "power at the shaft", Measure: &measure.PumpPower,
				Formula: "water_power / pump_eff",
				Why:     "What the pump loses inside is brought by the shaft as well.",
			},
			motorRule,
		},
	}},
	Holds:    "The water takes flow times height: Q H / 3960 in horsepower with gpm and feet, Q H / 102 in kilowatts with litres a second and metres. Flow times pressure is the same thing: Q P / 1714 with psi, Q P / 1000 with kPa. The shaft brings more, by the pump's efficiency, and the motor is the next size up. Offices that want a tenth of spare say so, and near a step that changes the motor.",
	Cautions: []string{pumpLock, pumpDry, "Motor wiring, overloads and disconnects are an electrician's work."},
	Sources: []problems.Source{
		{Says: "Q H / 3960 and Q H / (3960 x efficiency): university course page on pumps and power requirements", Confidence: solver.Confirmed},
		{Says: "1714 is 33,000 x 12 / 231, 102 is 1000 / 9.81: worked out", Confidence: solver.Memory},
		{Says: "Standard motors: NEMA MG 1", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		boostedTower(s, 12, 22)
		type point struct{ flow, boost, eff float64 }
		step := s.Pick([]float64{2}, []float64{20})
		enough := math.Ceil(float64(s.Building.Booster.ShutOff/s.Press(step))) * step
		round := upTo(enough, enough+4*step, step)
		var fit []point
		for _, q := range lists(s, []float64{60, 80, 100, 120, 150, 180, 200, 250}, []float64{4, 5, 6, 8, 10, 12, 15}) {
			for _, p := range round {
				for _, e := range []float64{0.55, 0.6, 0.65, 0.7} {
					hp := q * p / 1714 / e
					if !s.US() {
						hp = q * p / 1000 / e / 0.746
					}
					if motorClear(hp) && hp > 2 && hp < 30 {
						fit = append(fit, point{q, p, e})
					}
				}
			}
		}
		f, _ := pick(s, fit)
		setBoost(s, s.Press(f.boost))
		s.Set("flow", f.flow)
		s.Set("boost", f.boost)
		s.Set("pump_eff", f.eff)
	},
	Solve: func(w problems.World) float64 {
		m, _ := solver.NextMotor(shaftPower(w))
		return float64(m)
	},
}

func init() { add(&pumpPowerSkill) }

// shaftPower is the power at the pump's shaft, as a motor's is told.
func shaftPower(w problems.World) unit.Power {
	h := w.Gamma().HeightOf(w.Building.Booster.Boost)
	shaft := solver.ShaftPower(w.Flow("flow"), h, w.SI("power_base"), w.SI("pump_eff"))
	if w.House.System != unit.US { // kilowatts become horsepower by the school's factor
		shaft *= unit.Power(w.SI("power_factor"))
	}
	return shaft
}

// fitMotor puts a motor of so much power on the pump.
func fitMotor(w problems.World, v float64) problems.Outcome {
	motor, shaft := unit.Power(v), shaftPower(w)
	hp := func(p unit.Power) string { return w.Text(measure.Motor, float64(p)) }
	enough, _ := solver.NextMotor(shaft)
	size, listed := solver.NextMotor(motor)
	lead := "At design flow the shaft would ask " + hp(shaft) + " of a motor of " + hp(motor)
	switch {
	case hp(motor) == hp(enough):
		return problems.Outcome{Kept: true, Says: []string{lead + ": it carries that, and the size below would not."}}
	case motor < shaft:
		return problems.Outcome{Says: []string{lead + ": it would run hot, and its overload would trip at the busy hour."}}
	case !listed || hp(size) != hp(motor):
		return problems.Outcome{Says: []string{lead + ". That is no standard size: " + hp(enough) + " is the first that carries it."}}
	}
	return problems.Outcome{Says: []string{lead + ". It carries that, but " + hp(enough) + " would as well: a larger motor and its wiring are paid for nothing."}}
}

// motorClear reports that honest rounding, by either road, does not change the
// motor.
func motorClear(hp float64) bool {
	a, _ := solver.NextMotor(unit.Power(hp*0.965) * 745.7)
	b, _ := solver.NextMotor(unit.Power(hp*1.035) * 745.7)
	return a == b
}

var runningCostSkill = problems.Skill{
	ID: "running-cost", Title: "What a pump costs in a year",
	Chapter: 4, Order: 120, Year: 3, Kind: problems.Sum,
	Ask: "A booster pump takes {shaft} at its shaft. Its motor turns {motor_eff} of its current into work. It runs {run_hours} in a year, and a kilowatt-hour costs {tariff}. What does its electricity cost in the year?",
	Givens: []problems.Given{
		{Name: "shaft", Says: "power at the pump's shaft", Measure: &measure.Motor},
		{Name: "motor_eff", Says: "efficiency of the motor, as a share of one", Measure: &measure.Share},
		{Name: "run_hours", Says: "hours that it runs in a year", Measure: &measure.TimeHours},
		{Name: "tariff", Says: "price of a kilowatt-hour", Measure: &measure.Tariff},
	},
	Rules: []problems.Rule{
		{
			Name: "shaft_kw", Says: "the shaft's power in kilowatts", Measure: &measure.MotorInput,
			Formula: "shaft x watt_per_hp / watt_per_kw",
			Why:     "Electricity is sold by the kilowatt-hour, so the power is wanted in kilowatts.",
			Slips: []problems.Slip{
				{
					ID: "horsepower-for-kilowatts", Formula: "shaft",
					Did:  "You read the horsepower as kilowatts.",
					Why:  "A horsepower is 0.746 kW. The bill would come out a third too high.",
					Next: "Kilowatts are about three quarters of the horsepower.",
				},
				{
					ID: "factor-upside-down", Formula: "shaft x watt_per_kw / watt_per_hp",
					Did:  "You divided where you should multiply.",
					Why:  "A kilowatt is more than a horsepower, so there are fewer of them.",
					Next: "Kilowatts are about three quarters of the horsepower.",
				},
			},
		},
		{
			Name: "wire", Says: "power taken from the wire", Measure: &measure.MotorInput,
			Formula: "shaft_kw / motor_eff",
			Why:     "The motor warms itself with the rest. The meter counts that too.",
			Slips: []problems.Slip{
				{
					ID: "times-efficiency", Formula: "shaft_kw x motor_eff",
					Did:  "You multiplied by the efficiency.",
					Why:  "Then the wire would bring less than the shaft gives. A motor makes no power.",
					Next: "From water to shaft to wire the power grows. Check that it did.",
				},
				{
					ID: "efficiency-left-out", Formula: "shaft_kw",
					Did:  "You left out the motor's efficiency.",
					Why:  "The meter counts what goes into the motor, not what comes out at the shaft.",
					Next: "Ask where the meter sits: ahead of the motor.",
				},
			},
		},
		{
			Name: "energy", Says: "energy in a year", Measure: &measure.Energy,
			Formula: "wire x run_hours",
			Why:     "Power times the time it is taken is energy.",
			Slips: []problems.Slip{{
				ID: "every-hour-of-the-year", Formula: "wire x 8760",
				Did:  "You counted all 8,760 hours of the year.",
				Why:  "The pump runs {run_hours}. The rest of the time it stands.",
				Next: "Take the hours it runs, not the hours there are.",
			}},
		},
		{
			Name: "cost", Says: "cost in a year", Measure: &measure.Money,
			Formula: "energy x tariff",
			Why:     "Each kilowatt-hour costs {tariff}.",
			Slips: []problems.Slip{{
				ID: "divided-by-price", Formula: "energy / tariff",
				Did:  "You divided by the price.",
				Why:  "A higher price must make a higher bill. Divided, it makes a lower one.",
				Next: "Double the price in your mind: the bill must double.",
			}},
		},
	},
	Holds:    "Three powers stand in a row: what the water takes, what the shaft brings, what the wire brings. The bill is for the last. Kilowatts times hours are kilowatt-hours, and each has its price. A booster that throttles what it has made, or boosts what the street brings already, pays for it every hour.",
	Cautions: []string{pumpLock},
	Sources: []problems.Source{
		{Says: "1 hp is 745.7 W. NIST SP 811 (2008), App. B.9", Confidence: solver.Confirmed},
		{Says: "Hours, prices and efficiencies: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		boostedTower(s, 12, 22)
		s.Set("shaft", s.Pick([]float64{2.6, 3.4, 4.2, 5.6, 6.5, 8.2, 9.6, 12.4}, []float64{2.6, 3.4, 4.2, 5.6, 6.5, 8.2, 9.6, 12.4}))
		s.Set("motor_eff", s.Pick([]float64{0.82, 0.85, 0.88, 0.9, 0.92}, []float64{0.82, 0.85, 0.88, 0.9, 0.92}))
		s.Set("run_hours", s.Steps(1500, 5000, 500))
		s.Set("tariff", math.Round(100*s.Steps(0.08, 0.24, 0.01))/100)
	},
	Solve: func(w problems.World) float64 {
		shaft := unit.Power(w.SI("shaft") * w.SI("watt_per_hp") / w.SI("watt_per_kw"))
		return solver.YearlyCost(shaft, w.SI("motor_eff"), w.SI("run_hours"), w.SI("tariff"))
	},
}

func init() { add(&runningCostSkill) }
