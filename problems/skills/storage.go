package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var storageForPeakSkill = problems.Skill{
	ID: "storage-for-peak", Title: "Storage for the morning peak",
	Chapter: 6, Order: 80, Year: 4, Kind: problems.Sum,
	Ask: "In a morning peak of {peak} the showers draw {draw} of mixed water at {mixed}. The store is kept at {hot}, the cold water comes at {cold}. The heater recovers {recovery} meanwhile. Of the tank {usable} comes out hot enough; the rest is cooled by the water that follows. How large must the tank be?",
	Givens: []problems.Given{
		{Name: "peak", Says: "length of the peak", Measure: &measure.TimeHours},
		{Name: "draw", Says: "mixed water drawn in the peak", Measure: &measure.Tank},
		{Name: "mixed", Says: "temperature of the mixed water", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature of the store", Measure: &measure.Temp},
		{Name: "cold", Says: "temperature of the cold supply", Measure: &measure.Temp},
		{Name: "recovery", Says: "recovery of the heater", Measure: &measure.HourFlow},
		{Name: "usable", Says: "share of the tank that comes out hot", Measure: &measure.Share},
	},
	Rules: []problems.Rule{
		{
			Name: "hot_share", Says: "share of hot water in the draw", Measure: &measure.Share,
			Formula: "(mixed - cold) / (hot - cold)",
			Why:     "The tank gives only the hot part of what the showers use. Both differences start at the cold water.",
			Slips: []problems.Slip{
				{
					ID: "temperatures-divided", Formula: "mixed / hot",
					Did:  "You divided the temperatures themselves.",
					Why:  "The cold water brings {cold} along. Only what lies above that comes from the tank.",
					Next: "With mixed water as cold as the supply the share must be nought.",
				},
				{
					ID: "cold-share", Formula: "(hot - mixed) / (hot - cold)",
					Did:  "You worked out the share of cold water.",
					Why:  "How far the mix is below the hot says how much cold is in it.",
					Next: "The nearer the mix to the hot, the more hot is in it.",
				},
			},
		},
		{
			Name: "hot_draw", Says: "hot water drawn", Measure: &measure.Tank,
			Formula: "draw x hot_share",
			Why:     "So much leaves the hot side in the peak.",
			Slips: []problems.Slip{{
				ID: "mixed-as-hot", Formula: "draw",
				Did:  "You took the mixed water as if it all came from the tank.",
				Why:  "At the shower cold water runs in too. The tank would be bought too large.",
				Next: "Read at which temperature the draw is told. At {mixed} it is mixed.",
			}},
		},
		{
			Name: "recovered", Says: "hot water made in the peak", Measure: &measure.Tank,
			Formula: "recovery x peak",
			Why:     "The burner does not wait for the end of the peak.",
			Slips: []problems.Slip{{
				ID: "hour-for-peak", Formula: "recovery x 1",
				Did:  "You counted one hour of recovery.",
				Why:  "The peak lasts {peak}, and the heater works as long as that.",
				Next: "Gallons (litres) an hour times hours: the hours must be those of the peak.",
			}},
		},
		{
			Name: "from_store", Says: "what the store has to give", Measure: &measure.Tank,
			Formula: "hot_draw - recovered",
			Why:     "What the heater makes in the peak need not be stored.",
			Slips: []problems.Slip{{
				ID: "recovery-left-out", Formula: "hot_draw",
				Did:  "You left the recovery out.",
				Why:  "Then the store would have to give the whole peak alone, and {recovered} are made meanwhile.",
				Next: "Two sources feed the peak: the store and the heater.",
			}},
		},
		{
			Name: "tank", Says: "size of the tank", Measure: &measure.Tank,
			Formula: "from_store / usable",
			Why:     "Cold water follows the draw into the tank and cools the last of it. Only the usable share counts.",
			Would:   storeForPeak,
			Slips: []problems.Slip{
				{
					ID: "whole-tank-usable", Formula: "from_store",
					Did:  "You counted on the whole tank.",
					Why:  "The last part comes out lukewarm. The last showers of the morning would be cold.",
					Next: "The tank is larger than what is drawn from it.",
				},
				{
					ID: "multiplied-by-usable", Formula: "from_store x usable",
					Did:  "You multiplied by the usable share.",
					Why:  "That makes the tank smaller than the water it has to give.",
					Next: "Multiply back: tank times {usable} must be what the store has to give.",
				},
			},
		},
	},
	Holds: "A peak is met by two things: what stands ready and what the heater makes meanwhile. A large heater needs a small tank and the other way round. First turn mixed water into hot, then take off the recovery, then divide by the usable share. Some tables have the usable share in them already: read what they say.",
	Cautions: []string{
		legionella, scald, forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Draw of 4,644 L from two tanks of 1,893 L, three quarters usable: US Army Corps of Engineers, ETL 1110-3-489 (1998), p. 7", Confidence: solver.Confirmed},
		{Says: "Usable 70 %: ASHRAE Handbook, HVAC Applications, service water heating", Confidence: solver.Confirmed},
	},
	Draw: drawStorage,
	Solve: func(w problems.World) float64 {
		h := w.Building.Heater
		share := solver.HotShare(w.Temperature("mixed"), h.Cold, h.Hot)
		draw := unit.Volume(w.SI("draw") * share)
		return float64(solver.PeakStorage(draw, w.Flow("recovery"), w.SI("peak"), w.SI("usable")))
	},
}

func init() { add(&storageForPeakSkill) }

// storeForPeak goes through the peak with a tank of that volume.
func storeForPeak(w problems.World, v float64) problems.Outcome {
	h, peak := w.Building.Heater, w.SI("peak")
	asked := w.SI("draw") * solver.HotShare(w.Temperature("mixed"), h.Cold, h.Hot) // of hot water
	gives := v * w.SI("usable")
	short := asked - w.SI("recovery")*peak - gives
	water := func(v float64) string { return w.Text(measure.Tank, v) }
	lead := "From a tank of " + water(v) + " come " + water(gives) + " hot enough: "
	switch least := asked / 200; {
	case short > least:
		lasts := w.Text(measure.TimeHours, gives/(asked/peak-w.SI("recovery")))
		return problems.Outcome{Says: []string{lead + water(short) + " would be missing. The showers would run cold " + lasts + " into the peak of " + w.Text(measure.TimeHours, peak) + "."}}
	case short < -least:
		return problems.Outcome{Says: []string{lead + water(-short) + " would be left at the end of the peak, kept warm day and night for nothing."}}
	}
	return problems.Outcome{Kept: true, Says: []string{lead + "they last to the end of the peak."}}
}

// drawStorage draws a peak of which the heater makes a third to two thirds.
func drawStorage(s *building.Sheet) {
	heaterTower(s)
	h := s.Building.Heater
	hot, _ := pick(s, stores(s))
	cold, _ := pick(s, colds(s))
	mixed := s.Pick(showerUS, showerSI)
	h.Hot, h.Cold = degrees(s, hot), degrees(s, cold)
	draw := s.Pick([]float64{500, 600, 800, 1000, 1200, 1500, 2000, 3000}, []float64{2000, 2500, 3000, 4000, 5000, 6000, 8000, 10000})
	peak := s.Pick([]float64{0.5, 1.5, 2, 3}, []float64{0.5, 1.5, 2, 3})
	part := float64(s.Int(33, 65)) / 100
	step := s.Pick([]float64{10}, []float64{20})
	made := part * draw * (mixed - cold) / (hot - cold) / peak
	s.Set("peak", peak)
	s.Set("draw", draw)
	s.Set("mixed", mixed)
	s.Set("hot", hot)
	s.Set("cold", cold)
	s.Set("recovery", float64(int(made/step))*step)
	s.Set("usable", s.Pick([]float64{0.7, 0.75, 0.8}, []float64{0.7, 0.75, 0.8}))
}
