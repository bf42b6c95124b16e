package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

var speedChangeSkill = problems.Skill{
	ID: "speed-change", Title: "A pump at another speed",
	Chapter: 4, Order: 80, Year: 4, Kind: problems.Sum,
	Ask: "A pump draws from an open break tank. At {old_speed} its curve goes through {old_flow} at {old_head}, with {old_power} at the shaft; at no flow it makes {old_shut_off}. It is turned down to {new_speed}. Where does that point of its curve go, and does water still reach the shower on level {level}, {climb} above the water in the tank? By how much is the head at no flow short, or over?",
	Givens: []problems.Given{
		{Name: "old_speed", Says: "speed before", Measure: &measure.PumpSpeed},
		{Name: "new_speed", Says: "speed after", Measure: &measure.PumpSpeed},
		{Name: "old_flow", Says: "flow at a point of the curve, before", Measure: &measure.FlowRate},
		{Name: "old_head", Says: "head at that point, before", Measure: &measure.Height},
		{Name: "old_power", Says: "shaft power at that point, before", Measure: &measure.PumpPower},
		{Name: "old_shut_off", Says: "head at no flow, before", Measure: &measure.Height},
		{Name: "climb", Says: "height of the shower above the water in the tank", Measure: &measure.Height},
	},
	Rules: []problems.Rule{
		{
			Name: "ratio", Says: "new speed as a share of the old", Measure: &measure.Share,
			Formula: "new_speed / old_speed",
			Why:     "Everything goes by how many times the speed it is.",
			Slips: []problems.Slip{{
				ID: "upside-down", Formula: "old_speed / new_speed",
				Did:  "You turned the speeds over.",
				Why:  "Turned down, a pump gives less, so the share is below one. Yours would make it give more.",
				Next: "New over old.",
			}},
		},
		{
			Name: "new_flow", Says: "flow at the new speed", Measure: &measure.FlowRate,
			Formula: "old_flow x ratio",
			Why:     "Each turn moves the same water, so the flow goes with the turns.",
			Slips: []problems.Slip{{
				ID: "flow-squared", Formula: "old_flow x ratio^2",
				Did:  "You squared the share for the flow.",
				Why:  "The square belongs to the head. Half the turns move half the water.",
				Next: "Flow, head, power: one, two, three.",
			}},
		},
		{
			Name: "new_head", Says: "head at the new speed", Measure: &measure.Height,
			Formula: "old_head x ratio^2",
			Why:     "The wheel throws the water at a speed, and height goes with the square of a speed.",
			Slips: []problems.Slip{{
				ID: "head-linear", Formula: "old_head x ratio",
				Did:  "You took the head down by the share itself.",
				Why:  "Head goes with the square: at half speed a quarter is left.",
				Next: "Flow, head, power: one, two, three.",
			}},
		},
		{
			Name: "new_power", Says: "shaft power at the new speed", Measure: &measure.PumpPower,
			Formula: "old_power x ratio^3",
			Why:     "Power is flow times head, one power and two make three.",
			Slips: []problems.Slip{
				{
					ID: "power-squared", Formula: "old_power x ratio^2",
					Did:  "You squared the share for the power.",
					Why:  "Both flow and head fall, so the power falls with the third power.",
					Next: "Flow, head, power: one, two, three.",
				},
				{
					ID: "power-linear", Formula: "old_power x ratio",
					Did:  "You took the power down by the share itself.",
					Why:  "Both flow and head fall, so the power falls with the third power.",
					Next: "Flow, head, power: one, two, three.",
				},
			},
		},
		{
			Name: "new_shut_off", Says: "head at no flow at the new speed", Measure: &measure.Height,
			Formula: "old_shut_off x ratio^2",
			Why:     "The no-flow point of the curve sinks with the square like every other.",
			Slips: []problems.Slip{{
				ID: "shut-off-linear", Formula: "old_shut_off x ratio",
				Did:  "You took the no-flow head down by the share itself.",
				Why:  "It is a head like any other, and goes with the square.",
				Next: "Flow, head, power: one, two, three.",
			}},
		},
		{
			Name: "verdict", Says: "does water reach the shower", Measure: &measure.Answer, Choices: []string{"no", "yes"},
			Formula: "new_shut_off > climb",
			Why:     "The climb does not shrink with the speed. If the pump cannot hold the water up with no flow, it delivers nothing.",
			Slips: []problems.Slip{{
				ID: "wrong-way-round", Formula: "new_shut_off < climb",
				Did:  "You compared {new_shut_off} with {climb} the wrong way round.",
				Why:  "The pump has to hold up more than the climb, or nothing comes out at the top.",
				Next: "Say it in words: makes, needs.",
			}},
		},
		{
			Name: "margin", Says: "head at no flow short of the climb, or over it", Measure: &measure.Height,
			Formula: "abs(new_shut_off - climb)",
			Why:     "The pump's head sank with the speed. The building's height did not.",
			Slips: []problems.Slip{{
				ID: "climb-scaled-too", Formula: "abs(old_shut_off - climb) x ratio^2",
				Did:  "You let the climb shrink with the speed.",
				Why:  "The speed laws are for the pump's own curve. The building stays as tall as it was.",
				Next: "Friction shrinks with the flow, height with nothing.",
			}},
		},
	},
	Holds:    "At n times the speed a pump's own curve gives n times the flow, n squared the head, n cubed the power. That is the curve, not the system. Where all the head is friction the pump runs down that road. A riser is mostly height, and height does not shrink: turned down to 80 %, a pump that made 250 ft (76 m) makes 160 ft (49 m), and a riser of 190 ft (58 m) gets nothing.",
	Cautions: []string{pumpDry, pumpLock},
	Sources: []problems.Source{
		{Says: "Flow, head and power with n, n2, n3: column on pumps in an Australian trade magazine; Texas Tech University, CE 3305, affinity laws", Confidence: solver.Confirmed},
		{Says: "DOE-HDBK-1012/3-92, module HT-03", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		t := s.Tower(building.Plan{Min: 12, Max: 20})
		climb := t.Up(t.Storeys) + s.Shower()
		flow := s.Pick([]float64{60, 80, 100, 120, 150}, []float64{4, 5, 6, 8, 10})
		reaches := s.Chance(0.4)
		step := s.Pick([]float64{5}, []float64{2})
		type found struct{ shut, ratio float64 }
		var fit []found
		for _, shut := range upTo(math.Ceil(climb*1.3/step)*step, climb*1.75, step) {
			for _, pct := range upTo(70, 92, 2) {
				left := shut * pct * pct / 1e4 / climb
				if math.Abs(left-1) > 0.06 && left > 0.7 && left < 1.35 && (left > 1) == reaches {
					fit = append(fit, found{shut, pct / 100})
				}
			}
		}
		f, _ := pick(s, fit)
		duty := math.Round(f.shut / 1.2)
		power := flow * duty / 3960 / 0.65
		if !s.US() {
			power = flow * duty / 102 / 0.65
		}
		boost := solver.WaterColumn.OfColumn(s.Length(duty))
		b := s.Building
		s.SetStreet(s.PickPlate([]float64{50, 55, 60}, []float64{350, 375, 400}), s.PickPlate([]float64{40, 42}, []float64{275, 290}), 0, "on the gauge in the meter room")
		b.Booster = &solver.Booster{Boost: boost, ShutOff: boost * 1.2}
		b.Zones = []solver.Zone{{Name: "1", Bottom: 0, Top: b.Top(), Supply: solver.FromBooster}}
		s.Focus = b.Top()
		s.Name("level", t.Level(t.Storeys))
		s.Set("old_speed", 3500)
		s.Set("new_speed", math.Round(3500*f.ratio))
		s.Set("old_flow", flow)
		s.Set("old_head", duty)
		s.Set("old_power", math.Round(power*10)/10)
		s.Set("old_shut_off", f.shut)
		setHeight(s, "climb", climb)
	},
	Solve: func(w problems.World) float64 {
		b := w.Building
		p := solver.Speeds{Head: w.Length("old_shut_off")}.AtSpeed(w.SI("new_speed") / w.SI("old_speed"))
		return math.Abs(float64(p.Head - b.Highest(b.Top()) + b.Booster.Elevation))
	},
}

func init() { add(&speedChangeSkill) }

var pumpsTogetherSkill = problems.Skill{
	ID: "pumps-together", Title: "Pumps side by side and one after the other",
	Chapter: 4, Order: 90, Year: 3, Kind: problems.Sum,
	Ask: "A booster set has {pumps} like pumps side by side. Each is chosen for {share_each} of the design flow of {design_flow}, and adds {boost} at its share. The inlet has {suction}. What do all give together, what share of the design flow is left with one pump out, and what stands behind the set? What would stand behind two such pumps piped one after the other?",
	Givens: []problems.Given{
		{Name: "pumps", Says: "pumps in the set", Measure: &measure.Count},
		{Name: "share_each", Says: "share of the design flow that each is chosen for", Measure: &measure.Share},
		{Name: "design_flow", Says: "design flow of the building", Measure: &measure.FlowRate},
		{Name: "boost", Says: "pressure that each pump adds at its share", Measure: &measure.Pressure},
		{Name: "suction", Says: "pressure at the inlet", Measure: &measure.Pressure, Plate: true},
	},
	Rules: []problems.Rule{
		{
			Name: "each", Says: "flow of one pump", Measure: &measure.FlowRate,
			Formula: "design_flow x share_each",
			Why:     "Each pump is chosen for {share_each} of the whole, so that something is left when one is out.",
			Slips: []problems.Slip{{
				ID: "shared-out-evenly", Formula: "design_flow / pumps",
				Did:  "You shared the flow out evenly among the {pumps} pumps.",
				Why:  "Then nothing is in hand when one is out. These are chosen larger, for {share_each} each.",
				Next: "Look for the share in the schedule of the pumps.",
			}},
		},
		{
			Name: "together", Says: "flow of all pumps", Measure: &measure.FlowRate,
			Formula: "pumps x each",
			Why:     "Side by side the flows add.",
			Slips: []problems.Slip{{
				ID: "flow-of-one", Formula: "each",
				Did:  "You gave the flow of one pump.",
				Why:  "Side by side each moves its own water into one header. The flows add.",
				Next: "Side by side: flows add. One after the other: pressures add.",
			}},
		},
		{
			Name: "with_one_out", Says: "flow with one pump out", Measure: &measure.FlowRate,
			Formula: "together - each",
			Why:     "One pump's flow is missing.",
		},
		{
			Name: "share_left", Says: "share of the design flow that is left", Measure: &measure.Share,
			Formula: "with_one_out / design_flow",
			Why:     "What counts for the building is the design flow, not all that the set could give.",
			Slips: []problems.Slip{{
				ID: "share-of-the-set", Formula: "with_one_out / together",
				Did:  "You compared with {together}, all that the set can give.",
				Why:  "The set is larger than the building needs. The building asks for {design_flow}.",
				Next: "Share of what? Of the design flow.",
			}},
		},
		{
			Name: "outlet", Says: "pressure behind the set", Measure: &measure.Pressure,
			Formula: "suction + boost",
			Why:     "All pumps lift from one inlet header to one outlet header. There is one boost between the two, however many pumps run.",
			Slips: []problems.Slip{
				{
					ID: "boost-for-each-pump", Formula: "suction + pumps x boost",
					Did:  "You counted the boost {pumps} times.",
					Why:  "Pumps side by side add flow, not pressure. No water goes through two of them.",
					Next: "Follow one drop: through how many pumps does it go?",
				},
				{
					ID: "suction-left-out", Formula: "boost",
					Did:  "You left out the {suction} at the inlet.",
					Why:  "A booster adds to what comes in.",
					Next: "Two terms behind a booster: what comes in and what is added.",
				},
			},
		},
		{
			Name: "in_series", Says: "pressure behind two pumps one after the other", Measure: &measure.Pressure,
			Formula: "suction + 2 x boost",
			Why:     "One after the other, the same water goes through both and is boosted twice.",
			Slips: []problems.Slip{{
				ID: "boosted-once", Formula: "suction + boost",
				Did:  "You counted one boost.",
				Why:  "The second pump takes what the first one gives and adds its own to it.",
				Next: "Follow one drop: through how many pumps does it go?",
			}},
		},
	},
	Holds:    "Pumps side by side add their flows at one pressure; pumps one after the other add their pressures at one flow. On a real system curve two side by side give less than twice the flow, because friction grows; here each is told at its own share. Sets are chosen as two pumps of about 65 %, or three of 50 %, so that one may be out.",
	Cautions: []string{pumpLock, "Each pump side by side has its own check valve, or the running one pushes the water back through the standing one."},
	Sources: []problems.Source{
		{Says: "Two of 65 %, three of 50 %: common practice, no source", Confidence: solver.Practice},
		{Says: "Flows add side by side, heads add one after the other: from memory", Confidence: solver.Memory},
	},
	Draw: func(s *building.Sheet) {
		_, _, low := boostedTower(s, 12, 20)
		type set struct{ pumps, share float64 }
		of, _ := pick(s, []set{{2, 0.65}, {2, 0.7}, {2, 0.6}, {3, 0.5}, {3, 0.4}, {3, 0.45}, {4, 0.35}, {4, 0.4}})
		step := s.Pick([]float64{2}, []float64{10})
		boost := math.Ceil(float64(s.Building.Booster.ShutOff/s.Press(step))) * step
		setBoost(s, s.Press(boost))
		s.Set("pumps", of.pumps)
		s.Set("share_each", of.share)
		s.Set("design_flow", s.Pick([]float64{80, 100, 120, 150, 180, 200, 240, 300}, []float64{5, 6, 8, 10, 12, 15, 18, 20}))
		s.Set("boost", boost)
		s.Set("suction", low-s.PickPlate([]float64{13, 15, 17}, []float64{90, 100, 115}))
	},
	Solve: func(w problems.World) float64 {
		return float64(solver.Series(w.Pressure("suction"), w.Building.Booster.Boost, 2))
	},
}

func init() { add(&pumpsTogetherSkill) }
