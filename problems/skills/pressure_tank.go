package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var pressureTankSkill = problems.Skill{
	ID: "pressure-tank", Title: "What a pressure tank gives",
	Chapter: 4, Order: 70, Year: 4, Kind: problems.Sum,
	Ask: "The pump's switch cuts in at {cut_in} and out at {cut_out}, read at the pump. The pressure tank of {tank_volume} stands on level {level}, {tank_up} above it. It was pre-charged, empty of water, to {charge_gap} below the cut-in at its own place. The site lies {altitude} above sea level; the atmosphere is {site_air}. How much water does the tank give between cut-out and cut-in?",
	Givens: []problems.Given{
		{Name: "cut_in", Says: "cut-in at the pump", Measure: &measure.Pressure},
		{Name: "cut_out", Says: "cut-out at the pump", Measure: &measure.Pressure},
		{Name: "tank_volume", Says: "volume on the tank's plate", Measure: &measure.Tank, Plate: true},
		{Name: "tank_up", Says: "height of the tank above the pump's switch", Measure: &measure.Height},
		{Name: "charge_gap", Says: "pre-charge below the cut-in, at the tank", Measure: &measure.Pressure},
		{Name: "site_air", Says: "atmosphere at the site", Measure: &measure.AbsPressure},
	},
	Rules: []problems.Rule{
		{
			Name: "column", Says: "pressure lost on the way up to the tank", Measure: &measure.Pressure,
			Formula: "gamma x tank_up",
			Why:     "The tank stands above the switch. Its air feels less than the switch shows.",
			Slips: []problems.Slip{{
				ID: "divided", Formula: "tank_up / gamma",
				Did:  "You divided {tank_up} by {gamma}.",
				Why:  "Dividing turns a pressure into a height. The height is known here and the pressure is wanted, so multiply.",
				Next: "The psi are less than half the feet; the kPa are about ten times the metres.",
			}},
		},
		{
			Name: "low_abs", Says: "absolute pressure in the tank at cut-in", Measure: &measure.AbsPressure,
			Formula: "cut_in - column + site_air",
			Why:     "Less the climb, to be at the tank; plus the atmosphere, to count from vacuum. Boyle's law wants both.",
			Slips: []problems.Slip{
				{
					ID: "gauge-at-cut-in", Family: "gauge pressures in Boyle", Formula: "cut_in - column",
					Did:  "You left out the atmosphere, {site_air}.",
					Why:  "A gauge shows zero where there is still an atmosphere of air. Squeezed air counts from vacuum.",
					Next: "Before a gas law: has the atmosphere gone on?",
				},
				{
					ID: "pump-place-at-cut-in", Family: "the pump's pressures at the tank", Formula: "cut_in + site_air",
					Did:  "You used the cut-in as read at the pump.",
					Why:  "The tank stands {tank_up} higher, and the water between weighs {column}.",
					Next: "A pressure belongs to a place. Carry it to where the tank stands.",
				},
				{
					ID: "column-added", Formula: "cut_in + column + site_air",
					Did:  "You added the {column} of the climb.",
					Why:  "The tank stands above the pump. Going up takes pressure away.",
					Next: "Up takes away, down gives.",
				},
			},
		},
		{
			Name: "high_abs", Says: "absolute pressure in the tank at cut-out", Measure: &measure.AbsPressure,
			Formula: "cut_out - column + site_air",
			Why:     "The same two steps for the higher pressure.",
			Slips: []problems.Slip{
				{
					ID: "gauge-at-cut-out", Family: "gauge pressures in Boyle", Formula: "cut_out - column",
					Did:  "You left out the atmosphere, {site_air}.",
					Why:  "A gauge shows zero where there is still an atmosphere of air. Squeezed air counts from vacuum.",
					Next: "Before a gas law: has the atmosphere gone on?",
				},
				{
					ID: "pump-place-at-cut-out", Family: "the pump's pressures at the tank", Formula: "cut_out + site_air",
					Did:  "You used the cut-out as read at the pump.",
					Why:  "The tank stands {tank_up} higher, and the water between weighs {column}.",
					Next: "A pressure belongs to a place. Carry it to where the tank stands.",
				},
			},
		},
		{
			Name: "charge_abs", Says: "absolute pre-charge", Measure: &measure.AbsPressure,
			Formula: "low_abs - charge_gap",
			Why:     "The pre-charge is a little below the cut-in, so that the tank never runs quite empty before the pump starts.",
			Would:   chargeTank,
			Slips: []problems.Slip{{
				ID: "gap-added", Formula: "low_abs + charge_gap",
				Did:  "You put the {charge_gap} on top.",
				Why:  "Charged above the cut-in, the tank is empty before the pump starts, and the pressure falls with a jerk.",
				Next: "Pre-charge, cut-in, cut-out: in that order upward.",
			}},
		},
		{
			Name: "gas_low", Says: "room that the gas takes at cut-in", Measure: &measure.Tank,
			Formula: "tank_volume x charge_abs / low_abs",
			Why:     "At pre-charge the gas fills the tank. At a higher pressure it takes less room, as one pressure to the other.",
			Slips: []problems.Slip{{
				ID: "upside-down", Formula: "tank_volume x low_abs / charge_abs",
				Did:  "You turned the ratio upside down.",
				Why:  "Then the gas would take more room than the tank has. Squeezed, it takes less.",
				Next: "No gas in a tank is larger than the tank.",
			}},
		},
		{
			Name: "gas_high", Says: "room that the gas takes at cut-out", Measure: &measure.Tank,
			Formula: "tank_volume x charge_abs / high_abs",
			Why:     "At cut-out the gas is squeezed further, and the water has the rest of the tank.",
			Slips: []problems.Slip{{
				ID: "from-cut-in", Formula: "tank_volume x low_abs / high_abs",
				Did:  "You began with the whole tank full of gas at cut-in.",
				Why:  "The gas fills the whole tank at its pre-charge. At cut-in a little water is in already.",
				Next: "Ask at what pressure the tank holds no water: the pre-charge.",
			}},
		},
		{
			Name: "drawdown", Says: "water that the tank gives", Measure: &measure.Tank,
			Formula: "gas_low - gas_high",
			Why:     "From cut-out to cut-in the gas grows, and pushes out as much water.",
			Would:   countOnTank,
			Slips: []problems.Slip{
				{
					ID: "all-the-water", Formula: "tank_volume - gas_high",
					Did:  "You counted all the water in the tank at cut-out.",
					Why:  "Down to cut-in not all of it comes out; then the pump starts and fills again.",
					Next: "Drawdown lies between two pressures, so two gas volumes are subtracted.",
				},
				{
					ID: "gas-as-answer", Formula: "gas_high",
					Did:  "You gave the gas's room at cut-out, {gas_high}.",
					Why:  "That is gas, not water. Water is what the gas pushes out when it grows.",
					Next: "A drawdown is a small part of the tank, a fifth or a third.",
				},
			},
		},
	},
	Holds:    "A pressure tank gives what its gas gains in room between cut-out and cut-in. Boyle: pressure times volume stays the same, with absolute pressures, at the tank's own place. The same tank gives more higher up in the building, where its pressures are lower; at altitude there is less atmosphere to add. A wider differential gives more water.",
	Cautions: []string{bladder, pumpLock},
	Sources: []problems.Source{
		{Says: "Drawdown by Boyle with absolute pressures, at sea level and at 6,000 ft: articles on pressure tanks in a drilling trade magazine", Confidence: solver.Confirmed},
		{Says: "Pre-charge 2 psi (15 kPa) below cut-in, tank empty of water: common practice, no source", Confidence: solver.Practice},
		{Says: "Atmosphere by altitude: US Standard Atmosphere (1976)", Confidence: solver.Confirmed},
	},
	Draw: func(s *building.Sheet) {
		t, _, _ := boostedTower(s, 12, 18)
		at, _ := pick(s, sitesSI)
		if s.US() {
			at, _ = pick(s, sitesUS)
		}
		n := s.Int(t.Storeys/2, t.Storeys)
		up := t.Up(n)
		here := s.Pick([]float64{26, 28, 30, 35}, []float64{180, 200, 220, 240}) // at the top shower
		step := s.Pick([]float64{1}, []float64{5})
		in := math.Round((here+head(s, t.Up(t.Storeys)+s.Shower()))/step) * step
		s.Focus = t.Storey(n)
		s.Name("level", t.Level(n))
		s.Name("altitude", at.altitude)
		s.Set("cut_in", in)
		s.Set("cut_out", in+s.Pick([]float64{18, 20, 24, 28}, []float64{125, 140, 160, 200}))
		s.Set("tank_volume", s.PickPlate([]float64{62, 80, 120, 158, 211}, []float64{200, 300, 500, 750}))
		setHeight(s, "tank_up", up)
		s.Set("charge_gap", s.Pick([]float64{2, 3}, []float64{15, 20}))
		s.Set("site_air", at.atmosphere)
	},
	Solve: func(w problems.World) float64 {
		return float64(airTank(w).Drawdown())
	},
}

func init() { add(&pressureTankSkill) }

// airTank is the pressure tank as it is to be charged.
func airTank(w problems.World) solver.AirTank {
	up := w.Building.Levels[w.Focus].Elevation
	here := func(name string) unit.Pressure {
		return solver.AbsolutePressure(solver.FloorPressure(w.Pressure(name), w.Gamma(), up), w.Pressure("site_air"))
	}
	return solver.AirTank{
		Volume: unit.Volume(w.SI("tank_volume")), CutIn: here("cut_in"), CutOut: here("cut_out"),
		Precharge: here("cut_in") - w.Pressure("charge_gap"),
	}
}

// chargeTank charges the tank to an absolute pressure.
func chargeTank(w problems.World, v float64) problems.Outcome {
	tank := airTank(w)
	right, gives := tank.Precharge, tank.Drawdown()
	tank.Precharge = unit.Pressure(v)
	gauge := tank.Precharge - w.Pressure("site_air")
	water := func(v unit.Volume) string { return w.Text(measure.Tank, float64(v)) }
	lead := "Charged to " + w.Press(gauge) + " on a gauge, the tank "
	switch {
	case gauge <= 0:
		return problems.Outcome{Says: []string{"A pre-charge of " + w.Text(measure.AbsPressure, v) + " lies below the atmosphere: the tank would have to be pumped empty of air, and would fill up with water."}}
	case w.Press(tank.Precharge) == w.Press(right):
		return problems.Outcome{Kept: true, Says: []string{lead + "would give " + water(gives) + " from cut-out to cut-in, and keep a little water."}}
	case tank.Precharge > tank.CutIn:
		return problems.Outcome{Says: []string{lead + "would be empty of water before the pump starts: it cuts in at " + w.Press(tank.CutIn-w.Pressure("site_air")) + " there, and the pressure falls with a jerk."}}
	}
	return problems.Outcome{Says: []string{lead + "would give " + water(tank.Drawdown()) + " from cut-out to cut-in; charged rightly it gives " + water(gives) + "."}}
}

// countOnTank lets the pump be chosen for a drawdown.
func countOnTank(w problems.World, v float64) problems.Outcome {
	gives := float64(airTank(w).Drawdown())
	water := func(v float64) string { return w.Text(measure.Tank, v) }
	says := "The tank would give " + water(gives) + " from cut-out to cut-in"
	switch {
	case water(v) == water(gives):
		return problems.Outcome{Kept: true, Says: []string{says + ", as reckoned."}}
	case v > gives:
		return problems.Outcome{Says: []string{says + ", not " + water(v) + ": the pump would start " + unit.Format(v/gives, 2) + " times as often as reckoned."}}
	}
	return problems.Outcome{Says: []string{says + ", not only " + water(v) + ": with the starts reckoned by that, too large a tank would be bought."}}
}
