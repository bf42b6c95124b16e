package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var expansionVolumeSkill = problems.Skill{
	ID: "expansion-volume", Title: "How much warm water grows",
	Chapter: 6, Order: 90, Year: 3, Kind: problems.Sum,
	Ask: "Heater and hot piping hold {volume}, and a check valve on the cold feed shuts them off from the street. The water is warmed from {cold} to {hot}. By the water table it takes {cold_space} cold and {hot_space} hot. How much more room does it want?",
	Givens: []problems.Given{
		{Name: "volume", Says: "water in heater and hot piping", Measure: &measure.Tank},
		{Name: "cold", Says: "temperature at the start", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature at the end", Measure: &measure.Temp},
		{Name: "cold_space", Says: "specific volume of the cold water", Measure: &measure.SpecVolume},
		{Name: "hot_space", Says: "specific volume of the hot water", Measure: &measure.SpecVolume},
	},
	Rules: []problems.Rule{
		{
			Name: "more_space", Says: "more space for each pound (kilogram)", Measure: &measure.SpecVolume,
			Formula: "hot_space - cold_space",
			Why:     "The two numbers are nearly alike. Only their difference is growth, so take it before anything is rounded.",
			Slips: []problems.Slip{{
				ID: "hot-space-for-growth", Formula: "hot_space",
				Did:  "You took {hot_space}, the whole space of the hot water.",
				Why:  "Most of that space is there already: the cold water fills it.",
				Next: "Growth is a difference, and a small one.",
			}},
		},
		{
			Name: "grown_share", Says: "growth as a share of the cold water", Measure: &measure.Share,
			Formula: "more_space / cold_space",
			Why:     "Set over the space it had cold, the growth holds for any amount of water.",
			Slips: []problems.Slip{
				{
					ID: "ratio-for-growth", Formula: "hot_space / cold_space",
					Did:  "You took the ratio of hot to cold.",
					Why:  "That is the whole hot water for each cold gallon or litre, just over 1. The growth is what is over the 1.",
					Next: "From 40 to 140 °F (5 to 60 °C) water grows by less than 2 in a hundred.",
				},
				{
					ID: "space-for-share", Only: problems.OnlyUS, Formula: "more_space",
					Did:  "You used the growth of a pound or kilogram as the share.",
					Why:  "A share is growth over what was there: it must be divided by {cold_space}.",
					Next: "A share has no unit. If cubic feet or litres are left, a division is missing.",
				},
			},
		},
		{
			Name: "expansion", Says: "water that must go somewhere", Measure: &measure.Tank,
			Formula: "grown_share x volume",
			Why:     "Every gallon or litre in the heater and the hot pipe grows by that share.",
			Slips: []problems.Slip{{
				ID: "whole-volume", Formula: "(1 + grown_share) x volume",
				Did:  "You gave the whole hot water.",
				Why:  "The {volume} has its room in heater and pipe. Only what is over it looks for a new place.",
				Next: "The tank asked for is small beside the heater.",
			}},
		},
	},
	Holds: "Water grows when it warms, by its specific volumes: the difference over the cold one. While the feed is open to the street the growth flows back there. Behind a check valve, a backflow preventer or a reducing valve it cannot, and water hardly gives: the pressure shoots up until the relief valve opens.",
	Cautions: []string{
		neverRelief,
		"A relief valve that weeps at every firing is a sign of a closed system without a working expansion tank. It is repaired at the cause.",
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "V (v2 / v1 - 1): an online engineering handbook, expansion tanks", Confidence: solver.Confirmed},
		{Says: "Specific volumes: IAPWS-IF97, region 1; 1,000 gal from 40 to 140 °F grow by 16.9 gal: ASPE Data Book, vol. 2", Confidence: solver.Memory},
	},
	Draw: drawExpansion,
	Solve: func(w problems.World) float64 {
		return float64(solver.ExpansionVolume(unit.Volume(w.SI("volume")), w.SI("cold_space"), w.SI("hot_space")))
	},
}

func init() { add(&expansionVolumeSkill) }

// spaces are specific volumes of water, ft3/lb at °F and L/kg at °C.
type space struct{ at, takes float64 }

// By IAPWS-IF97, region 1, at 0.55 MPa in US units and at 0.1 MPa in SI; from
// memory.
var (
	coldSpaceUS = []space{{40, 0.016015}, {50, 0.01602}, {60, 0.016031}}
	hotSpaceUS  = []space{{120, 0.016201}, {140, 0.016289}, {160, 0.01639}}
	coldSpaceSI = []space{{5, 1}, {10, 1.0003}, {15, 1.0009}}
	hotSpaceSI  = []space{{50, 1.0121}, {60, 1.0171}, {65, 1.0199}, {70, 1.0228}}
)

func drawExpansion(s *building.Sheet) {
	heaterTower(s)
	colds, hots := coldSpaceSI, hotSpaceSI
	if s.US() {
		colds, hots = coldSpaceUS, hotSpaceUS
	}
	cold, _ := pick(s, colds)
	hot, _ := pick(s, hots)
	h := s.Building.Heater
	h.Cold, h.Hot = degrees(s, cold.at), degrees(s, hot.at)
	s.Set("volume", s.Pick([]float64{120, 200, 300, 400, 500, 800, 1000, 1500, 2000}, []float64{450, 750, 1000, 1200, 1500, 2000, 3000, 4500, 7500}))
	s.Set("cold", cold.at)
	s.Set("hot", hot.at)
	s.Set("cold_space", cold.takes)
	s.Set("hot_space", hot.takes)
}

var expansionTankSkill = problems.Skill{
	ID: "expansion-tank", Title: "Choosing an expansion tank",
	Chapter: 6, Order: 100, Year: 4, Kind: problems.Sum,
	Ask: "Behind a check valve, {expansion} of expanding water is to go into a diaphragm tank. The line stands at {line} where the tank hangs, and its pre-charge is set to that. Warm, the pressure may rise to {cap} ({cap_says}). The relief valve opens at {relief}; the air outside is at {air}. How large must the tank be?",
	Givens: []problems.Given{
		{Name: "expansion", Says: "water that the tank must take in", Measure: &measure.Tank},
		{Name: "line", Says: "line pressure at the tank, and its pre-charge", Measure: &measure.Pressure},
		{Name: "cap", Says: "highest pressure with the water warmed", Measure: &measure.Pressure},
		{Name: "relief", Says: "setting of the relief valve", Measure: &measure.Pressure},
		{Name: "air", Says: "atmosphere at the site", Measure: &measure.AbsPressure},
	},
	Rules: []problems.Rule{
		{
			Name: "line_abs", Says: "absolute pressure at the start", Measure: &measure.AbsPressure,
			Formula: "line + air",
			Why:     "The gas behind the diaphragm is squeezed, and gas counts from vacuum.",
			Slips: []problems.Slip{{
				ID: "gauge-at-start", Family: "gauge-for-absolute", Formula: "line",
				Did:  "You used the gauge's {line}.",
				Why:  "A gauge reads zero in the open air, yet the gas there still has {air}. With gauge pressures the tank comes out too small.",
				Next: "Wherever gas is squeezed, add the atmosphere first.",
			}},
		},
		{
			Name: "top_abs", Says: "absolute pressure at the end", Measure: &measure.AbsPressure,
			Formula: "cap + air",
			Why:     "The end of the squeeze is the highest pressure that the system may have, not the one at which the relief valve opens.",
			Slips: []problems.Slip{
				{
					ID: "gauge-at-end", Family: "gauge-for-absolute", Formula: "cap",
					Did:  "You used the gauge's {cap}.",
					Why:  "A gauge reads zero in the open air, yet the gas there still has {air}. Both pressures must count from vacuum.",
					Next: "Wherever gas is squeezed, add the atmosphere first.",
				},
				{
					ID: "up-to-the-relief-valve", Formula: "relief + air",
					Did:  "You let the pressure rise to the relief valve's {relief}.",
					Why:  "That valve is the last guard, for when all else fails. The fixtures may see {cap}, and a tank sized up to {relief} is far too small for it.",
					Next: "Ask who must bear the pressure: taps and hoses, every day.",
				},
			},
		},
		{
			Name: "accepts", Says: "share of the tank that takes water", Measure: &measure.Share,
			Formula: "1 - line_abs / top_abs",
			Why:     "Gas squeezed from {line_abs} to {top_abs} keeps the part line over top of its room. What it gives up, the water gets.",
			Slips: []problems.Slip{
				{
					ID: "gas-left-for-water", Formula: "line_abs / top_abs",
					Did:  "You took the part that the gas keeps.",
					Why:  "The water gets the rest of 1. In a closed hot system that is a small part.",
					Next: "If the pressure may hardly rise, hardly any water goes in: the share must go to nought.",
				},
				{
					ID: "rise-over-start", Formula: "top_abs / line_abs - 1",
					Did:  "You set the rise over the pressure at the start.",
					Why:  "The gas fills the whole tank at the start. What it gives up is counted against the end: rise over {top_abs}.",
					Next: "However high the pressure, no more than the whole tank can fill: the share stays below 1.",
				},
			},
		},
		{
			Name: "tank", Says: "volume of the tank", Measure: &measure.Tank,
			Formula: "expansion / accepts",
			Why:     "Only that share of the tank takes water, so the tank is that much larger than the water.",
			Would:   hangExpansionTank,
			Slips: []problems.Slip{
				{
					ID: "share-left-out", Formula: "expansion",
					Did:  "You gave the water itself as the size of the tank.",
					Why:  "Most of the tank stays full of gas. Filled to the brim, it would press far over {cap}.",
					Next: "The tank is several times the water it takes.",
				},
				{
					ID: "multiplied-by-share", Formula: "expansion x accepts",
					Did:  "You multiplied by the share.",
					Why:  "Then the tank would be smaller than the water that has to go in.",
					Next: "Less acceptance, larger tank: divide.",
				},
			},
		},
	},
	Holds: "The gas in the tank is squeezed from the line pressure to the highest one allowed, and the water gets the room it gives up: 1 less P1 over P2, both absolute. The nearer the reducing valve is set to the cap, the larger the tank; set at the cap, no tank is large enough. The next size up from the list is bought, and its plate must allow both the volume and the pressure.",
	Cautions: []string{
		"Let the water out, then the air, before a tank is loosened; a charged shell is never opened. Pre-charge with dry air or nitrogen, by gauge, while the tank is empty of water.",
		"The tank hangs between check valve and heater, with no valve between that could shut it off unseen.",
		neverRelief,
		forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Diaphragm tank, 2 gal from 80 to 135 psi: 5.44 gal: a consulting engineer's article on sizing, part 2", Confidence: solver.Confirmed},
		{Says: "Same formula without the growth of the vessel: ASHRAE Handbook, HVAC Systems and Equipment", Confidence: solver.Memory},
		{Says: "Highest pressure by the code chosen: IPC 607.3 with 604.8, UPC 608.2; National code: no figure, 550 kPa is the static limit", Confidence: solver.Memory},
	},
	Draw: drawExpansionTank,
	Solve: func(w problems.World) float64 {
		air := w.Pressure("air")
		return float64(solver.ExpansionTank(unit.Volume(w.SI("expansion")), w.Pressure("line"), w.Pressure("cap"), air))
	},
}

func init() { add(&expansionTankSkill) }

// hangExpansionTank hangs a tank of that volume at the heater.
func hangExpansionTank(w problems.World, v float64) problems.Outcome {
	taken, cap, relief := w.SI("expansion"), w.Pressure("cap"), w.Pressure("relief")
	warm := solver.WarmedTo(unit.Volume(taken), unit.Volume(v), w.Pressure("line"), w.Pressure("air"))
	lead := "With a tank of " + w.Text(measure.Tank, v) + " "
	says, kept := w.Stands(lead+"the warmed water", warm, cap)
	o := problems.Outcome{Kept: kept, Says: []string{says + "."}}
	switch {
	case warm >= relief:
		warm = relief
		o.Says = []string{lead + "the relief valve would open at every firing: it does so at " + w.Press(relief) + ", and no more than " + w.Press(cap) + " is allowed."}
	case kept && w.Spare(cap+cap-warm, cap):
		o.Kept = false
		o.Says = append(o.Says, "A smaller one keeps that as well.")
	}
	o.Marks = []problems.Mark{{Where: problems.AtHeater, Text: w.Press(warm), Kept: o.Kept}}
	return o
}

// drawExpansionTank draws a line at least 10 psi (70 kPa) under the cap.
func drawExpansionTank(s *building.Sheet) {
	heaterTower(s)
	most := s.Profile.ExpansionCap
	limit := most.Value(s.System).Value
	var lines []float64
	for _, p := range lists(s, []float64{45, 50, 55, 60, 65, 70}, []float64{300, 325, 350, 375, 400, 425, 450}) {
		if limit-p >= s.Pick([]float64{9.5}, []float64{70}) {
			lines = append(lines, p)
		}
	}
	line, _ := pick(s, lines)
	s.Name("cap_says", most.Words)
	s.Set("expansion", s.Pick([]float64{2, 3.4, 4.2, 5, 6.8, 8.5, 12, 17}, []float64{8, 12, 17, 20, 26, 34, 50, 68}))
	s.Set("line", line)
	s.Set("cap", limit)
	s.Set("relief", s.Pick([]float64{125, 150}, []float64{860, 1035}))
	s.Set("air", s.Pick([]float64{14.7}, []float64{101.3}))
}
