package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var streetFlowTestSkill = problems.Skill{
	ID: "street-flow-test", Title: "What the street main can give",
	Chapter: 1, Order: 220, Year: 4, Kind: problems.Sum,
	Ask: "A flow test on the main in front of the site: {street} static; {residual} residual with {tested} running. The water utility wants {kept} kept in the main. What flow can be drawn down to that?",
	Givens: []problems.Given{
		{Name: "street", Says: "static pressure of the main before the test", Measure: &measure.Pressure},
		{Name: "residual", Says: "residual pressure during the test", Measure: &measure.Pressure},
		{Name: "tested", Says: "flow during the test", Measure: &measure.FlowRate},
		{Name: "kept", Says: "residual that must be kept in the main", Measure: &measure.Pressure},
	},
	Rules: []problems.Rule{
		{
			Name: "test_drop", Says: "drop of pressure in the test", Measure: &measure.Pressure,
			Formula: "street - residual",
			Why:     "The drop is the friction that the tested flow made in the mains.",
			Slips: []problems.Slip{{
				ID: "residual-for-drop", Formula: "residual",
				Did:  "You took the residual, {residual}, for the drop.",
				Why:  "The residual is what was left. Friction took the rest, and friction is what grows with flow.",
				Next: "Drop means before less during. With no flow it must be zero.",
			}},
		},
		{
			Name: "full_drop", Says: "drop of pressure that may be used", Measure: &measure.Pressure,
			Formula: "street - kept",
			Why:     "From the static down to what must be kept, the main's pressure may go into friction.",
			Slips: []problems.Slip{
				{
					ID: "all-of-it", Formula: "street",
					Did:  "You used the whole static, {street}, as if the main might run down to nothing.",
					Why:  "With nothing left in the main, houses on high ground go into vacuum and dirty water is drawn in. That is why {kept} stays.",
					Next: "Ask what is left in the main at the flow you work out.",
				},
				{
					ID: "below-the-residual", Formula: "residual - kept",
					Did:  "You counted from the residual of the test, {residual}, down to {kept}.",
					Why:  "The formula compares two drops from one start. The test's drop began at the static, so this one does too.",
					Next: "Both drops start from the same static reading.",
				},
			},
		},
		{
			Name: "drop_ratio", Says: "how many times the drop of the test", Measure: &measure.Share,
			Formula: "full_drop / test_drop",
			Why:     "The flow wanted belongs to the full drop, so that one stands on top.",
			Slips: []problems.Slip{{
				ID: "upside-down", Formula: "test_drop / full_drop",
				Did:  "You divided the test's drop by the full drop.",
				Why:  "A larger drop drives a larger flow, so the ratio must be more than one where more may be used than the test used.",
				Next: "Ask whether the answer should be more or less than the tested flow; the ratio must agree.",
			}},
		},
		{
			Name: "available", Says: "flow at the residual to be kept", Measure: &measure.FlowRate,
			Formula: "tested x drop_ratio^0.54",
			Why:     "In mains the drop grows as the flow to the power 1.85 (Hazen-Williams). Turned round, the flow grows as the drop to the power 1 / 1.85, which is 0.54.",
			Slips: []problems.Slip{
				{
					ID: "linear", Formula: "tested x drop_ratio",
					Did:  "You multiplied the tested flow by the ratio of the drops itself.",
					Why:  "Twice the flow makes three and a half times the friction in the mains. So the flow grows much more slowly than the drop.",
					Next: "Put the power on the ratio before you multiply: 3 becomes about 1.8, 4 about 2.1.",
				},
				{
					ID: "plain-root", Formula: "tested x sqrt(drop_ratio)",
					Did:  "You took the plain root of the ratio.",
					Why:  "The root is for one opening, such as a nozzle. Long mains follow 0.54, a little more than the root.",
					Next: "Nozzle: power 0.5. Pipe by Hazen-Williams: power 0.54. Say which one the pressure is lost in.",
				},
			},
		},
	},
	Holds: "A test at one flow tells how the main behaves at others, as long as the same mains, pumps and valves feed it. Pressures are read at one hydrant while another flows. It tells of that day and hour: the peak of the day, or a pump that is off, gives less.",
	Cautions: []string{
		"Hydrants belong to the utility and the fire service: test with their leave and their people. Open and shut slowly; a hydrant slammed shut can break a main.",
		"Stand clear of the stream and of the caps; a cap under pressure flies.",
	},
	Sources: []problems.Source{
		{Says: "Flow at 20 psi from a test, power 0.54: NFPA 291, recommended practice for fire flow testing", Confidence: solver.Memory},
		{Says: "20 psi (140 kPa) kept in the main: rule of many utilities; the utility decides", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		s.Tower(building.Plan{Min: 6, Max: 30})
		kept := s.Pick([]float64{20}, []float64{140})
		type found struct{ street, drop float64 }
		var fit []found
		streets, drops := []float64{60, 65, 70, 75, 80, 85}, []float64{10, 12, 14, 15, 16, 18, 20}
		if !s.US() {
			streets, drops = []float64{410, 425, 450, 480, 500, 525, 550}, []float64{70, 80, 90, 100, 110, 125, 140}
		}
		for _, street := range streets {
			for _, drop := range drops {
				ratio := (street - kept) / drop
				if ratio >= 2.4 && ratio <= 5 {
					fit = append(fit, found{street, drop})
				}
			}
		}
		f, _ := pick(s, fit)
		b := s.Building
		b.Street.Static, b.Street.Low = s.Press(f.street), s.Press(f.street-f.drop)
		b.Street.GaugeName = "at the main"
		s.Set("street", f.street)
		s.Set("residual", f.street-f.drop)
		s.Set("tested", s.Pick([]float64{400, 500, 600, 750, 800, 900}, []float64{25, 30, 35, 40, 45, 50, 60}))
		s.Set("kept", kept)
	},
	Solve: func(w problems.World) float64 {
		st := w.Building.Street
		return float64(solver.StreetFlow(w.Flow("tested"), st.Static, w.Pressure("residual"), w.Pressure("kept")))
	},
}

func init() { add(&streetFlowTestSkill) }

var bucketFlowSkill = problems.Skill{
	ID: "bucket-flow", Title: "Flow by bucket and watch",
	Chapter: 1, Order: 230, Year: 1, Kind: problems.Sum,
	Ask: "On level {level} the wide-open {outlet} fills {bucket} of a bucket in {filling_time}. What is its flow?",
	Givens: []problems.Given{
		{Name: "bucket", Says: "water caught in the bucket", Measure: &measure.Tank},
		{Name: "filling_time", Says: "time that it took", Measure: &measure.TimeSeconds},
	},
	Rules: []problems.Rule{
		{
			Name: "filling_minutes", Says: "the time in minutes", Measure: &measure.Of{Name: "min", US: "min", SI: "min"},
			Formula: "filling_time / seconds_per_minute",
			Why:     "The watch counts seconds and the flow is wanted for a minute.",
			Slips: []problems.Slip{
				{
					ID: "seconds-as-minutes", Formula: "filling_time",
					Did:  "You went on with the number of seconds as if they were minutes.",
					Why:  "That makes the filling 60 times as long and the flow 60 times too small.",
					Next: "A bucket that fills in less than a minute has more than one bucketful a minute.",
				},
				{
					ID: "seconds-as-hundredths", Formula: "filling_time / 100",
					Did:  "You wrote {filling_time} as hundredths of a minute.",
					Why:  "A minute has 60 seconds, not 100. Thirty seconds are 0.5 minute, not 0.30.",
					Next: "Try your rule on 60 seconds. It must give one minute.",
				},
			},
		},
		{
			Name: "flow", Says: "flow of the outlet", Measure: &measure.OutletFlow,
			Formula: "bucket / filling_minutes",
			Why:     "Flow is how much comes in one minute: volume over time.",
			Slips: []problems.Slip{
				{
					ID: "upside-down", Formula: "filling_minutes / bucket",
					Did:  "You divided the time by the volume.",
					Why:  "That is minutes for one gallon or litre. The flow is gallons or litres for one minute.",
					Next: "Read the unit aloud: gallons a minute. What stands before the a goes on top.",
				},
				{
					ID: "multiplied", Formula: "bucket x filling_minutes",
					Did:  "You multiplied {bucket} by the time.",
					Why:  "A longer filling means a weaker flow. Multiplied, it would come out stronger.",
					Next: "Imagine the filling taking twice as long. Your flow must halve.",
				},
			},
		},
	},
	Holds: "A bucket and a watch measure a flow without any chart. Take the time over a good part of a minute, start when the stream enters, and do it twice. What one outlet gives alone it may not give when its neighbours run.",
	Cautions: []string{
		"With hot water, test the temperature first and keep hands out of the stream: water at 140 °F (60 °C) burns in seconds.",
	},
	Sources: []problems.Source{
		{Says: "Bucket and watch: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 3, Max: 14})
		street, _ := pick(s, gaugeReadings(s))
		s.SetStreet(street, street-s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), 0, "on the gauge in the meter room")
		outlets := []struct {
			name   string
			lo, hi float64 // flow in L/min
		}{
			{"shower", 5, 10}, {"bath spout", 11, 22}, {"hose faucet", 15, 30}, {"service sink faucet", 9, 18},
		}
		o := outlets[s.Int(0, len(outlets)-1)]
		buckets, litres := []float64{2, 2.5, 3, 4, 5}, 3.785
		if !s.US() {
			buckets, litres = []float64{8, 10, 12, 15, 20}, 1
		}
		type found struct{ bucket, seconds float64 }
		var fit []found
		for _, bucket := range buckets {
			for sec := 18.0; sec <= 90; sec++ {
				if q := bucket * litres * 60 / sec; q >= o.lo && q <= o.hi && (sec < 52 || sec > 68) {
					fit = append(fit, found{bucket, sec})
				}
			}
		}
		f, _ := pick(s, fit)
		n := s.Int(2, t.Storeys)
		s.Focus = t.Storey(n)
		s.Name("level", t.Level(n))
		s.Name("outlet", o.name)
		s.Set("bucket", f.bucket)
		s.Set("filling_time", f.seconds)
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.BucketFlow(unit.Volume(w.SI("bucket")), w.SI("filling_time")))
	},
}

func init() { add(&bucketFlowSkill) }

var meterLeakSkill = problems.Skill{
	ID: "meter-leak", Title: "A leak from two meter readings",
	Chapter: 1, Order: 240, Year: 1, Kind: problems.Sum,
	Ask: "At night every outlet of the building is shut and the fill valves are closed. The meter stands at {reading_before}; {time_between} later it stands at {reading_after}. How much leaks away in a minute?",
	Givens: []problems.Given{
		{Name: "reading_before", Says: "first reading of the meter", Measure: &measure.Tank},
		{Name: "reading_after", Says: "second reading of the meter", Measure: &measure.Tank},
		{Name: "time_between", Says: "time between the readings", Measure: &measure.TimeHours},
	},
	Rules: []problems.Rule{
		{
			Name: "used", Says: "water that went through the meter", Measure: &measure.Tank,
			Formula: "reading_after - reading_before",
			Why:     "A meter counts all the water since it was set. What went through between two readings is their difference.",
			Slips: []problems.Slip{{
				ID: "one-reading-alone", Formula: "reading_after",
				Did:  "You took the second reading, {reading_after}, for the water that went through.",
				Why:  "The meter had already counted {reading_before} before the test began.",
				Next: "With no leak both readings agree. Your sum must give zero then.",
			}},
		},
		{
			Name: "an_hour", Says: "leak in an hour", Measure: &measure.HourFlow,
			Formula: "used / time_between",
			Why:     "The water ran over {time_between}; in one hour it was that part of it.",
			Slips: []problems.Slip{
				{
					ID: "multiplied", Formula: "used x time_between",
					Did:  "You multiplied {used} by {time_between}.",
					Why:  "The meter has already run for the whole time. One hour's share is less than the whole.",
					Next: "Over several hours, what went in one hour is the smaller number.",
				},
				{
					ID: "upside-down", Formula: "time_between / used",
					Did:  "You divided the hours by the water.",
					Why:  "That is the time for one gallon or litre, not the water of one hour.",
					Next: "Read the unit aloud: gallons an hour. What stands before the an goes on top.",
				},
			},
		},
		{
			Name: "leak", Says: "leak in a minute", Measure: &measure.OutletFlow,
			Formula: "an_hour / minutes_per_hour",
			Why:     "An hour has 60 minutes, and each takes its part of the hour's leak.",
			Slips: []problems.Slip{
				{
					ID: "hour-as-minute", Formula: "an_hour",
					Did:  "You gave the leak of an hour, {an_hour}, as the leak of a minute.",
					Why:  "That is 60 times too much. At that rate a dripping valve would be a running tap.",
					Next: "The shorter the time, the less water. A minute's number is the smaller one.",
				},
				{
					ID: "times-sixty", Formula: "an_hour x minutes_per_hour",
					Did:  "You multiplied by the minutes of an hour.",
					Why:  "A minute is a part of an hour, so it gets a part of the water. Divide.",
					Next: "The shorter the time, the less water. A minute's number is the smaller one.",
				},
			},
		},
	},
	Holds: "Nothing is drawn, so what the meter counts goes somewhere: a closet that runs on, a relief valve that weeps, a pipe below a slab. Small leaks need long waits, because the smallest hand of a large meter may not move for them at all.",
	Cautions: []string{
		"A weeping relief valve is a symptom: never plug it, cap it or valve it off. Find out why the pressure or the temperature is up.",
		"Test the air of a confined meter pit before going in.",
	},
	Sources: []problems.Source{
		{Says: "Night test on the meter: common practice, no source", Confidence: solver.Practice},
	},
	Draw: func(s *building.Sheet) {
		s.Tower(building.Plan{Min: 3, Max: 20})
		street, _ := pick(s, gaugeReadings(s))
		s.SetStreet(street, street-s.PickPlate([]float64{5, 8, 10}, []float64{35, 50, 75}), 0, "on the gauge in the meter room")
		before := 10*s.Steps(12_000, 98_000, 1) + s.Steps(1, 9, 1)
		hours := s.Pick([]float64{4, 5, 5.5, 6, 6.5, 7, 7.5}, []float64{4, 5, 5.5, 6, 6.5, 7, 7.5})
		an := s.Pick([]float64{4, 6, 8, 9, 12, 14, 18, 22, 30}, []float64{15, 22, 28, 36, 45, 54, 70, 90, 120})
		s.Set("reading_before", before)
		s.Set("reading_after", before+an*hours)
		s.Set("time_between", hours)
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.BucketFlow(unit.Volume(w.SI("reading_after")-w.SI("reading_before")), w.SI("time_between")))
	},
}

func init() { add(&meterLeakSkill) }
