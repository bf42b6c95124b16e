package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var scaldTimeSkill = problems.Skill{
	ID: "scald-time", Title: "How long until hot water burns",
	Chapter: 6, Order: 135, Year: 1, Kind: problems.Table,
	Ask: "A shower valve should be stopped at {limit}. After a repair it lets out {hot}. A table for adults ({table_says}) has: {limit}, {limit_time}; {between}, {between_time}; {hot}, {hot_time}. Someone who is startled needs {reach} to get out of the water. How many times sooner does it burn than at the right stop, and can an adult get out in time?",
	Givens: []problems.Given{
		{Name: "limit", Says: "temperature at the right stop", Measure: &measure.Temp},
		{Name: "hot", Says: "temperature found", Measure: &measure.Temp},
		{Name: "between", Says: "a temperature between them in the table", Measure: &measure.Temp},
		{Name: "limit_time", Says: "time to burn at the right stop", Measure: &measure.TimeSeconds},
		{Name: "between_time", Says: "time to burn at the row between", Measure: &measure.TimeSeconds},
		{Name: "hot_time", Says: "time to burn at the temperature found", Measure: &measure.TimeSeconds},
		{Name: "reach", Says: "time to get out of the water", Measure: &measure.TimeSeconds},
	},
	Rules: []problems.Rule{
		{
			Name: "found_time", Says: "time to burn at the temperature found", Measure: &measure.TimeSeconds,
			Formula: "hot_time",
			Why:     "The row is that of the water on the skin, not of the water that should be there.",
			Slips: []problems.Slip{
				{
					ID: "row-of-the-limit", Formula: "limit_time",
					Did:  "You read the row of {limit}.",
					Why:  "That is where the stop should be. The water found has {hot}.",
					Next: "Put a ruler under the row that you read.",
				},
				{
					ID: "neighbour-row", Formula: "between_time",
					Did:  "You read the row of {between}.",
					Why:  "It is the neighbour of the right row. A few degrees change the time many times over.",
					Next: "Row first, then column, then the unit at the head.",
				},
			},
		},
		{
			Name: "sooner", Says: "times sooner than at the right stop", Measure: &measure.Share,
			Formula: "limit_time / found_time",
			Why:     "The time at the right stop over the time now says how often the one goes into the other.",
			Slips: []problems.Slip{
				{
					ID: "upside-down", Formula: "found_time / limit_time",
					Did:  "You divided the short time by the long one.",
					Why:  "That gives what part is left. How many times sooner must be more than one.",
					Next: "Sooner means the longer time is on top.",
				},
				{
					ID: "temperatures-compared", Formula: "hot / limit",
					Did:  "You compared the temperatures.",
					Why:  "A few degrees look like little. The time to burn falls much faster than the temperature rises.",
					Next: "The table is there because no simple share holds.",
				},
			},
		},
		{
			Name: "burnt", Says: "is an adult out in time?", Measure: &measure.Answer, Choices: []string{"yes", "no"},
			Formula: "reach > found_time",
			Why:     "The burn is there when the time in the water is longer than the time of the table. A child or an older person burns sooner and gets out later.",
			Slips: []problems.Slip{{
				ID: "times-turned-round", Formula: "reach < found_time",
				Did:  "You read {reach} against {found_time} the wrong way round.",
				Why:  "Out before the time of the table is safe; after it is burnt.",
				Next: "Say it in words: needs, has.",
			}},
		},
	},
	Holds: "Ten degrees decide between minutes and seconds. At 120 °F (49 °C) an adult has minutes, at 140 °F (60 °C) about five seconds. That is why the limit stands at the fixture and is proved with a thermometer after each repair.",
	Cautions: []string{
		scald,
		"The times are for a healthy adult. An older adult, a child, a person who cannot feel or move has far less: in one code's note two minutes at 49 °C.",
		"Tables differ. None of them is a time that is safe to wait.",
	},
	Sources: []problems.Source{
		{Says: "120 °F five minutes, 140 °F six seconds: US Consumer Product Safety Commission; 130 °F 30 s, 135 °F 10 s, 150 °F 1.5 s: a children's hospital's table", Confidence: solver.Confirmed},
		{Says: "48 to 60 °C: Moritz and Henriques (1947), as a valve maker prints it", Confidence: solver.Confirmed},
		{Says: "Older adult, 49 °C, two minutes: Ontario Building Code (2012), note A-7.2.10.7", Confidence: solver.Confirmed},
		{Says: "Time to get out of a shower", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		heaterTower(s)
		rows := solver.ScaldTimesIn(s.System)
		first := s.Pick([]float64{0}, []float64{1})
		hot := s.Int(int(first)+2, len(rows)-1)
		between := s.Int(int(first)+1, hot-1)
		var fit []float64
		for _, reach := range []float64{2, 3, 4, 8, 12, 15, 20, 40} {
			if part := reach / rows[hot].Seconds; part < 0.85 && part > 0.1 || part > 1.2 && part < 4 {
				fit = append(fit, reach)
			}
		}
		reach, _ := pick(s, fit)
		s.Name("table_says", words(s, "a safety commission's and a children's hospital's", "Moritz and Henriques, 1947"))
		s.Set("limit", rows[int(first)].Water.Value)
		s.Set("hot", rows[hot].Water.Value)
		s.Set("between", rows[between].Water.Value)
		s.Set("limit_time", rows[int(first)].Seconds)
		s.Set("between_time", rows[between].Seconds)
		s.Set("hot_time", rows[hot].Seconds)
		s.Set("reach", reach)
	},
	Solve: func(w problems.World) float64 {
		for _, r := range solver.ScaldTimesIn(w.House.System) {
			if d := float64(w.Temperature("hot")) - r.Water.SI(); d < 0.01 && d > -0.01 && w.SI("reach") > r.Seconds {
				return 1
			}
		}
		return 0
	},
}

func init() { add(&scaldTimeSkill) }
