package paper

import (
	"riserwork/problems"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

// Skills that only a whole building asks for.

func needSkill() *problems.Skill {
	return &problems.Skill{
		ID: "need-of-boost", Version: 1, Title: "Street pressure or a booster", Chapter: 2, Year: 2, Kind: problems.Choice,
		Givens: []problems.Given{
			{Name: "reach", Says: "height above the gauge that the street reaches", Measure: &measure.Height},
			{Name: "height", Says: "height of the top shower above the gauge", Measure: &measure.Height},
		},
		Rules: []problems.Rule{
			{
				Name: "margin", Says: "height between the reach and the top shower", Measure: &measure.Height,
				Formula: "abs(height - reach)",
				Why:     "Both heights count from the same gauge, so their difference is what the street has to spare, or what it lacks.",
				Slips: []problems.Slip{{
					ID: "heights-added", Formula: "height + reach",
					Did:  "You added {height} and {reach}.",
					Why:  "Both begin at the gauge. Added, they measure nothing in this building.",
					Next: "Draw both from the gauge upward, side by side: the gap at the top is what you want.",
				}},
			},
			{
				Name: "fed_by", Says: "what feeds the top floor", Measure: &measure.Answer,
				Choices: []string{"the street", "a booster"},
				Formula: "height > reach",
				Why:     "Where the top shower lies above the reach, the street at its lowest does not keep the pressure there that it must have.",
				Slips: []problems.Slip{{
					ID: "the-wrong-way-round", Formula: "reach > height",
					Did:  "You compared {reach} and {height} the wrong way round.",
					Why:  "A reach above the top shower means pressure to spare. A reach below it means that the top floor runs short at the peak.",
					Next: "Mark the reach on the riser diagram. What stands above the mark needs help.",
				}},
			},
		},
		Holds:   "The lowest street pressure, less all losses and less what must be left, holds up a certain height of water. Every outlet below that height is served, every one above it is not.",
		Sources: []problems.Source{{Says: "Height and reach compared: common practice, no source", Confidence: solver.Practice}},
	}
}

func zonesSkill() *problems.Skill {
	return &problems.Skill{
		ID: "zones-of-tower", Version: 1, Title: "Number of zones and the top break", Chapter: 5, Year: 3, Kind: problems.Sum,
		Givens: []problems.Given{
			{Name: "storeys", Says: "storeys of the building", Measure: &measure.Count},
			{Name: "first_short", Says: "first storey that the street does not feed", Measure: &measure.Count},
			{Name: "zone_floors", Says: "floors that one zone may have", Measure: &measure.Count},
		},
		Rules: []problems.Rule{
			{
				Name: "boosted", Says: "storeys on the booster", Measure: &measure.Count, Whole: true,
				Formula: "storeys - first_short + 1",
				Why:     "The first short storey is itself on the booster, so it counts.",
				Slips: []problems.Slip{
					{
						ID: "first-not-counted", Formula: "storeys - first_short",
						Did:  "You subtracted {first_short} from {storeys} and left it there.",
						Why:  "That counts the steps from the first boosted storey to the top one. Both ends belong to the booster, so there is one storey more.",
						Next: "Try it on fingers: from 3 to 5 are three storeys.",
					},
					{
						ID: "all-boosted", Formula: "storeys",
						Did:  "You put all {storeys} storeys on the booster.",
						Why:  "The storeys below {first_short} have enough from the street. Pumped as well, they cost power all year and get too much pressure.",
						Next: "Take off what the street feeds before you divide.",
					},
				},
			},
			{
				Name: "zones", Says: "zones on the booster", Measure: &measure.Count, Whole: true,
				Formula: "roundup(boosted / zone_floors)",
				Why:     "A part of a zone needs its valve too, so the number goes up.",
				Slips: []problems.Slip{{
					ID: "zones-rounded-down", Formula: "rounddown(boosted / zone_floors)",
					Did:  "You rounded {boosted / zone_floors} zones down.",
					Why:  "The floors left over would have to join a zone that is full already, and its lowest outlet would go over the limit.",
					Next: "Floors in a zone round down, zones round up.",
				}},
			},
			{
				Name: "top_break", Says: "lowest storey of the top zone", Measure: &measure.Count, Whole: true,
				Formula: "first_short + (zones - 1) x zone_floors",
				Why:     "The full zones lie below, the rest is the top zone.",
				Slips: []problems.Slip{
					{
						ID: "one-zone-too-many", Formula: "first_short + zones x zone_floors",
						Did:  "You went up {zones} whole zones from storey {first_short}.",
						Why:  "After that many zones the building ends. The top zone begins where the last but one stops.",
						Next: "The first zone begins at {first_short}, so for the last one add a zone less.",
					},
					{
						ID: "from-the-ground", Formula: "1 + (zones - 1) x zone_floors",
						Did:  "You counted the zones from storey 1.",
						Why:  "The boosted zones begin above what the street feeds, at storey {first_short}.",
						Next: "Write the first zone's floors out: they start with {first_short}.",
					},
				},
			},
		},
		Holds:   "The street takes what it reaches. The rest is cut into zones none of which is taller than the limit allows; hot and cold break at the same floors.",
		Sources: []problems.Source{{Says: "Full zones from below, the rest on top: common practice, no source", Confidence: solver.Practice}},
	}
}

func inputSkill() *problems.Skill {
	return &problems.Skill{
		ID: "input-for-demand", Version: 1, Title: "Input of the heater", Chapter: 6, Year: 3, Kind: problems.Sum,
		Givens: []problems.Given{
			{Name: "probable", Says: "probable demand of hot water in the hour", Measure: &measure.HourFlow},
			{Name: "cold", Says: "cold water", Measure: &measure.Temp},
			{Name: "hot", Says: "water in the store", Measure: &measure.Temp},
			{Name: "efficiency", Says: "efficiency of the heater", Measure: &measure.Share},
		},
		Rules: []problems.Rule{
			{
				Name: "rise", Says: "temperature rise", Measure: &measure.TempDrop,
				Formula: "hot - cold",
				Why:     "The heater adds only what the cold water lacks.",
				Slips: []problems.Slip{{
					ID: "hot-for-rise", Formula: "hot - cold + cold - 0 °F", Metric: "hot - 0 °C",
					Did:  "You took the hot temperature, {hot}, for the rise.",
					Why:  "The water does not arrive at zero; it brings {cold} with it.",
					Next: "Rise is from where to where: write both.",
				}},
			},
			{
				Name: "useful", Says: "heat that goes into the water", Measure: &measure.HeatRate,
				Formula: "probable x water_heat x rise", Metric: "probable x water_heat x rise / seconds_per_hour",
				Why: "Each gallon (litre) takes so much heat for each degree.",
				Slips: []problems.Slip{{
					ID: "factor-left-out", Formula: "probable x rise", Metric: "probable x rise / seconds_per_hour",
					Did:  "You left out {water_heat}, the heat of a gallon (litre) for one degree.",
					Why:  "Without it the line has gallons (litres) and degrees in it and no heat.",
					Next: "Look at the units: Btu/h (kW) must come from somewhere.",
				}},
			},
			{
				Name: "input", Says: "input of the heater", Measure: &measure.HeatRate,
				Formula: "useful / efficiency",
				Why:     "Part of what is burned goes up the flue, so more must go in than comes out.",
				Slips: []problems.Slip{
					{
						ID: "times-efficiency", Formula: "useful x efficiency",
						Did:  "You multiplied by {efficiency}.",
						Why:  "Then less fuel goes in than heat comes out, which no heater does.",
						Next: "Input is always the larger of the two.",
					},
					{
						ID: "efficiency-left-out", Formula: "useful",
						Did:  "You gave the output, {useful}, as the input.",
						Why:  "The plate of a heater shows its input; {efficiency} of it reaches the water.",
						Next: "Output at the tap, input at the gas cock.",
					},
				},
			},
		},
		Holds:    "A heater that recovers the probable demand in the hour makes up in that hour what is drawn.",
		Cautions: []string{"Store hot enough against Legionella and mix down before the tap: water at 140 °F (60 °C) scalds in seconds."},
		Sources:  []problems.Source{{Says: "Heat of water by volume and rise: common practice, no source", Confidence: solver.Practice}},
	}
}
