package paper

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit/measure"
)

func walkUp(t *site) bool   { return !t.boosted }
func pumped(t *site) bool   { return t.boosted }
func oneLift(t *site) bool  { return t.boosted && !t.lifts }
func twoLifts(t *site) bool { return t.boosted && t.lifts }

// plans are all parts in the order of the work: up from the street, then the
// demand, the pump, the zones, and the hot water.
func plans() []plan {
	list := coldPlans()
	list = append(list, pumpPlans()...)
	return append(list, hotPlans()...)
}

func coldPlans() []plan {
	return []plan{
		{
			name: "height", skill: full("fixture-height"),
			ask:  "How high is the top shower, on level {level}, above the gauge in the meter room?",
			tell: tellHeight,
		},
		{
			name: "top-static", skill: as("floor-pressure", 1, "floor_height", "outlet"), spare: true, fits: walkUp,
			ask:  "With no water running, what does the top shower have from the street?",
			from: []source{{"height", "height", "height"}},
			tell: func(t *told) bool {
				t.Name("level", t.Level(t.Storeys))
				t.Set("street", t.static)
				return true
			},
		},
		{
			name: "reach", skill: full("reach-with-losses"),
			ask: "At the peak the street is at its lowest. How high above the gauge does it reach, with {least} left?",
			tell: func(t *told) bool {
				t.Set("street", t.low)
				t.Set("meter_loss", t.meter)
				t.Set("backflow_loss", t.backflow)
				t.Set("friction", t.friction)
				t.Set("least", t.least)
				return true
			},
		},
		{
			name: "need", skill: needSkill(),
			ask:  "Choose what feeds the top floor, and give the height that decides it.",
			from: []source{{"reach", "reach", "reach"}, {"height", "height", "height"}},
		},
		{
			name: "first-short", fits: pumped,
			skill: with(without(bare(as("first-short-floor", 2, "street")), "ground-like-the-rest"), "ground_height", "floor of level 2 above the gauge"),
			ask:   "Which is the first storey that the street does not feed?",
			from:  []source{{"reach", "reach", "reach"}},
			tell: func(t *told) bool {
				t.Set("least", t.least)
				t.Set("ground_height", t.gauge+t.Ground.Value)
				t.SetHeight("floor_height", t.Floor)
				t.Set("outlet", t.Shower())
				return true
			},
		},
		{
			name: "budget", skill: full("pressure-budget"), spare: true, fits: walkUp,
			ask:  "At the peak, what is left for friction in the pipe up to the top shower?",
			from: []source{{"height", "height", "height"}},
			tell: func(t *told) bool {
				t.Set("street", t.low)
				t.Set("meter_loss", t.meter)
				t.Set("backflow_loss", t.backflow)
				t.Set("least", t.least)
				return true
			},
		},
		{
			name: "rate", skill: as("uniform-loss", 1, "spare", "least"), spare: true, fits: walkUp,
			ask:  "The pipe to the top shower is {pipe} long, its fittings count as {fittings}. What friction may it have, {per_length}?",
			from: []source{{"left", "budget", "left"}},
		},
		{
			name: "units", skill: as("fixture-units", 0), spare: true,
			uses: []solver.Use{solver.Apartment, solver.Office, solver.Residence}, fits: func(t *site) bool {
				switch t.house.Code {
				case "npc":
					return t.Building.Use == solver.Apartment
				case "upc":
					return t.Building.Use == solver.Office
				}
				return t.Building.Use == solver.Apartment || t.Building.Use == solver.Office || t.Building.Use == solver.Residence
			},
			ask: "Levels {bottom_level} to {top_level} are alike, for {use} use, with {closet_control}. How many units hang on the pipe that feeds all of it, cold and hot together?",
			tell: func(t *told) bool {
				t.Set("bottom_level", 2)
				t.Set("top_level", float64(t.Storeys))
				return true
			},
			after: func(s *site, t *told) {
				for _, l := range t.Labels {
					if l.Name == "closet_control" {
						s.valves = l.Text == "flush valves"
						break
					}
				}
			},
		},
		{
			name: "demand", skill: bare(as("demand-from-units", 0)),
			ask:  "The water closets have {right_curve}. What demand do those units make, between the rows of the table?",
			from: []source{{"units", "units", "units"}},
			tell: func(t *told) bool { return skills.TellDemand(t.Sheet, t.Get("units"), t.valves) },
		},
		{
			name: "demand", skill: as("demand-from-units", 0),
			ask: "The main riser carries {units}, and the water closets have {right_curve}. What demand do they make, between the rows of the table?",
		},
		{
			name: "size", skill: bare(as("pipe-velocity", 0)), spare: true,
			ask:  "The main riser is to be {size} copper tube, type {tube_type}. How fast does the demand run in it, and does the tube pass?",
			from: []source{{"flow", "demand", "demand"}},
			tell: func(t *told) bool { return skills.TellRiserTube(t.Sheet, t.Get("flow")) },
		},
		surgePlan(walkUp, "Beside the top shower", "top-static", "pressure"),
	}
}

// surgePlan is a quick valve on a branch where so much stands with no flow.
func surgePlan(fits func(*site) bool, where, part, step string) plan {
	return plan{
		name: "surge", skill: as("surge", 0), spare: true, fits: fits,
		ask:  where + " a branch of copper tube, type L, {size}, carries {flow} at {speed}, and a quick valve stops it at once. In this tube each ft/s (m/s) that is stopped raises the pressure by {per_speed}. How high does the pressure jump, from {standing}?",
		from: []source{{"standing", part, step}},
	}
}

func tellHeight(t *told) bool {
	t.Name("level", t.Level(t.Storeys))
	t.Name("datum", "the gauge in the meter room")
	t.Name("other", "the street main")
	t.Name("read_at", "on the gauge in the meter room")
	t.Name("skip_says", "")
	t.Set("label", float64(t.Storeys))
	t.Set("skipped", 0)
	t.SetHeight("ground", t.Ground)
	t.SetHeight("typical", t.Floor)
	t.Set("datum_below", t.gauge)
	t.Set("other_below", t.main)
	t.Set("outlet", t.Shower())
	return true
}

func pumpPlans() []plan {
	return []plan{
		{
			name: "boost", skill: full("boost"), fits: oneLift,
			ask:  "The booster stands at the gauge. What must its pumps add, so that the top shower has {least} at the peak?",
			from: []source{{"height", "height", "height"}},
			tell: func(t *told) bool {
				t.Set("static", t.static)
				t.Set("low_street", t.low)
				t.Set("entry_loss", t.meter+t.backflow)
				t.Set("set_loss", t.Pick([]float64{4, 5, 6, 7}, []float64{30, 35, 40, 50}))
				t.Set("friction", t.friction)
				t.Set("least", t.least)
				return true
			},
		},
		{
			name: "suction", skill: full("suction-check"), fits: twoLifts,
			ask: "The lower pumps stand {rise} above the gauge. What is left at their inlet at the peak, and is that enough?",
			tell: func(t *told) bool {
				t.Set("static", t.static)
				t.Set("low_street", t.low)
				t.Set("entry_loss", t.meter+t.backflow)
				t.Set("pipe_loss", t.Pick([]float64{2, 3, 4}, []float64{15, 20, 25}))
				t.Set("rise", t.Pick([]float64{2, 3, 4, 5}, []float64{0.6, 0.9, 1.2, 1.5}))
				t.Set("allowed", t.Profile.SuctionMin.Value(t.System).Value)
				return true
			},
		},
		{
			name: "series", fits: twoLifts,
			skill: with(bare(as("series-lifts", 0)), "low_street", "pressure at the inlet of the lower pumps, at the peak"),
			ask:   "The tower lifts in two steps, with an open tank on level {tank_level}. What must the lower pumps add, and what the upper ones, which stand beside the tank?",
			from:  []source{{"low_street", "suction", "suction"}, {"top_up", "height", "height"}},
			tell: func(t *told) bool {
				at := t.Storeys * t.Int(48, 58) / 100
				t.Name("tank_level", t.Level(at))
				t.Set("tank_up", t.gauge+t.Up(at)+t.Pick([]float64{6, 7, 8}, []float64{1.8, 2.1, 2.4}))
				t.Set("low_friction", t.Pick([]float64{6, 7, 8, 9}, []float64{40, 50, 60}))
				t.Set("valve_least", t.Pick([]float64{10, 15}, []float64{70, 100}))
				t.Set("high_friction", t.Pick([]float64{4, 5, 11}, []float64{30, 35, 75}))
				t.Set("least", t.least)
				return true
			},
		},
		motorPlan("boost", "boost", oneLift, "The booster moves the demand of the riser."),
		motorPlan("series", "high_boost", twoLifts, "The upper pumps move the demand of the riser."),
		{
			name: "no-flow", skill: bare(as("no-flow-outlet", 0)), spare: true, fits: oneLift,
			ask:  "With no flow the pump's curve shows {shut_off_head}. What may stand behind it at most, and do all parts bear it?",
			from: []source{{"duty_head", "motor", "pump_head"}},
			tell: tellNoFlow,
		},
		{
			name: "zone", skill: full("tallest-zone-working"), fits: pumped,
			ask: "How many floors may a zone behind a reducing valve have?",
			tell: func(t *told) bool {
				t.fallOff = t.Pick([]float64{8, 10, 12}, []float64{50, 60, 70, 80})
				t.zoneFriction = t.Pick([]float64{3, 4, 5, 6}, []float64{25, 30, 35, 40})
				t.Set("most", t.most)
				t.Set("least", t.least)
				t.SetHeight("floor_height", t.Floor)
				t.Set("high_outlet", t.Shower())
				t.Set("low_outlet", t.Closet())
				t.Set("fall_off", t.fallOff)
				t.Set("friction", t.zoneFriction)
				return true
			},
			after: func(s *site, t *told) { s.fallOff, s.zoneFriction = t.Get("fall_off"), t.Get("friction") },
		},
		{
			name: "zones", skill: zonesSkill(), fits: pumped,
			ask:  "Zones are filled from below; what is left over is the top zone. How many zones hang on the booster, and on which storey does the top one begin?",
			from: []source{{"first_short", "first-short", "first_short"}, {"zone_floors", "zone", "floors"}},
			tell: func(t *told) bool { t.Set("storeys", float64(t.Storeys)); return true },
		},
		{
			name: "setting", skill: full("zone-valve-setting"), fits: pumped,
			ask:  "The valve of the top zone stands {valve_up} above the zone's lowest floor. Find its setting, rounded up to the next step of {valve_step}, and check the lowest outlet at no flow.",
			from: []source{{"bottom_level", "zones", "top_break"}},
			tell: func(t *told) bool { t.Set("top_level", float64(t.Storeys)); tellZoneValve(t); return true },
		},
		{
			name: "setting", skill: settingOnly(0), fits: pumped,
			ask:  "The valve of the top zone stands {valve_up} above the zone's lowest floor. Find its setting, rounded up to the next step of {valve_step}.",
			from: []source{{"bottom_level", "zones", "top_break"}},
			tell: func(t *told) bool { t.Set("top_level", float64(t.Storeys)); tellZoneValve(t); return true },
		},
		{
			name: "setting-low", spare: true, fits: pumped,
			skill: with(settingOnly(1, "bottom_level", "top_level"), "gaps", "floor-to-floor heights in a full zone"),
			ask:   "Now the valve of a full zone, below the top one. Find its setting in the same way.",
			from:  []source{{"gaps", "zone", "gaps"}},
			tell: func(t *told) bool {
				i := t.p.Index("zones")
				if i < 0 || t.p.Parts[i].Steps[1].Value < 2 {
					return false
				}
				t.Name("bottom_level", "the zone's lowest floor")
				t.Name("top_level", "the zone's highest floor")
				tellZoneValve(t)
				return true
			},
		},
		surgePlan(pumped, "Just behind the valve of the top zone, which lets no pressure creep past its setting,", "setting", "setting"),
		{
			name: "ratio", skill: bare(as("reduction-ratio", 0)), spare: true, fits: oneLift,
			ask:  "A zone valve beside the booster takes its water from the pumps at design flow and gives what the valve of the top zone gives. One valve may reduce by {ratio_limit} to 1. If two in series are needed, {middle} is proposed between them. What is to be built?",
			from: []source{{"inlet", "boost", "discharge"}, {"outlet", "setting", "setting"}},
			tell: tellRatio,
		},
		{
			name: "roof-tank", skill: as("house-tank", 0, "level"), spare: true, fits: oneLift,
			ask: "In place of the booster an open tank on the roof might feed the top floor. The roof slab is {slab_up} above the top shower. How high must the lowest water stand above it, for {least} with friction left out? The tank covers {base}; its pump starts at a depth of {low_depth} and stops at {high_depth}, and has {fill_time} for that. What flow must it have?",
			tell: func(t *told) bool {
				t.Set("least", t.least)
				up := t.Floor.Value - t.Shower()
				if !t.US() {
					up = math.Round(1e6*up) / 1e6
				}
				t.SetHeight("slab_up", building.Height{Value: up, Text: building.FeetInches(measure.Height.Unit(t.System), up)})
				return true
			},
		},
		{
			name: "heater-level", skill: bare(as("heater-pressure", 0)), spare: true, fits: oneLift,
			ask:  "Choose: may a heater fed from the booster main, ahead of any zone valve, stand on level {level}? Give the pressure that decides it.",
			from: []source{{"discharge", "no-flow", "outlet"}},
			tell: func(t *told) bool {
				n := t.Int(1, t.Storeys)
				rating := t.PickPlate([]float64{125, 150}, []float64{860, 1035})
				t.Name("level", t.Level(n))
				t.Set("street", t.static)
				t.Set("height", t.gauge+t.Up(n))
				t.Set("tank_rating", rating)
				t.Set("relief_setting", t.PickPlate([]float64{100, 125}, []float64{690, 860}))
				t.Set("room", t.Pick([]float64{10}, []float64{70}))
				return true
			},
		},
		{
			name: "test", skill: full("riser-test"), spare: true,
			ask:  "The riser is tested with water, with the gauge at the top shower. What stands at its foot, and may it be tested in one piece?",
			from: []source{{"height", "height", "height"}},
			tell: func(t *told) bool {
				t.Set("working", t.Pick([]float64{80, 90, 100, 110}, []float64{550, 600, 700, 750}))
				t.Set("test_factor", 1.5)
				t.Set("test_least", t.Pick([]float64{100, 150}, []float64{700, 1000}))
				t.Set("weakest", t.PickPlate([]float64{150, 175, 200, 250, 300}, []float64{1035, 1200, 1380, 1725, 2070}))
				return true
			},
		},
	}
}

func motorPlan(part, step string, fits func(*site) bool, who string) plan {
	return plan{
		name: "motor", skill: bare(as("pump-power", 0)), spare: true, fits: fits,
		ask:  who + " At this point of the curve the efficiency is {pump_eff}. Which standard motor is the smallest that gives the power?",
		from: []source{{"flow", "demand", "demand"}, {"boost", part, step}},
		tell: func(t *told) bool {
			t.Set("pump_eff", t.Pick([]float64{0.55, 0.58, 0.6, 0.62, 0.65, 0.68, 0.7, 0.72}, []float64{0.55, 0.58, 0.6, 0.62, 0.65, 0.68, 0.7, 0.72}))
			return true
		},
	}
}

func tellNoFlow(t *told) bool {
	shut := math.Round(t.Get("duty_head") * t.Pick([]float64{1.2, 1.25, 1.3}, []float64{1.2, 1.25, 1.3}))
	most := float64(t.PlatePress(t.static) + solver.WaterColumn.OfColumn(t.Length(shut)))
	t.Set("shut_off_head", shut)
	t.Set("low_street", t.low)
	t.Set("high_street", t.static)
	list, unit := []float64{125, 150, 175, 200, 250, 300}, float64(t.Press(1))
	if !t.US() {
		list = []float64{860, 1035, 1200, 1380, 1725, 2070}
	}
	i := t.Int(0, len(list)-2)
	if gap := math.Abs(most/unit/list[i] - 1); gap < 0.03 || gap > 0.3 {
		return false
	}
	t.Set("joint_rating", list[i+1])
	t.Set("valve_rating", list[i])
	t.Set("tank_rating", list[t.Int(i+1, len(list)-1)])
	return true
}

// tellRatio tells the maker's limit and a middle setting of the draw, clear of
// both ends of the range.
func tellRatio(t *told) bool {
	in, out := float64(t.PlatePress(t.Get("inlet"))/t.Press(1)), t.Get("outlet")
	if !t.PlateUS() || t.US() {
		in = t.Get("inlet")
	}
	step := t.Pick([]float64{5}, []float64{25})
	limit := t.Pick([]float64{1.5, 2, 2.5, 3}, []float64{1.5, 2, 2.5, 3})
	if in <= out+2*step {
		return false
	}
	middle := step * math.Round((out+(in-out)*t.Pick([]float64{0.15, 0.3, 0.5, 0.7, 0.85}, []float64{0.15, 0.3, 0.5, 0.7, 0.85}))/step)
	for _, near := range []float64{in / out / limit, middle * limit / in, middle / (out * limit), in / limit / (out * limit)} {
		if math.Abs(near-1) < 0.04 {
			return false
		}
	}
	t.Set("ratio_limit", limit)
	t.Set("middle", middle)
	return middle > out && middle < in
}

// settingOnly is the setting of a zone valve without the check at no flow,
// for zones so near the limit that rounding might turn the check.
func settingOnly(skip int, drop ...string) *problems.Skill {
	s := bare(as("zone-valve-setting", skip, append(drop, "creep", "low_outlet")...))
	s.Rules = s.Rules[:len(s.Rules)-2]
	return s
}

func tellZoneValve(t *told) {
	t.SetHeight("floor_height", t.Floor)
	t.Set("valve_up", t.UpValve())
	t.Set("high_outlet", t.Shower())
	t.Set("low_outlet", t.Closet())
	t.Set("least", t.least)
	t.Set("fall_off", t.fallOff)
	t.Set("friction", t.zoneFriction)
	t.Set("valve_step", t.ValveStep())
	t.Set("creep", t.Pick([]float64{3, 4, 5}, []float64{20, 25, 30}))
	t.Set("most", t.most)
}

func hotPlans() []plan {
	return []plan{
		{
			name: "hot-demand", skill: as("hot-demand", 0), spare: true,
			uses: []solver.Use{solver.Apartment, solver.Hotel, solver.Hospital},
			fits: func(t *site) bool {
				u := t.Building.Use
				return u == solver.Apartment || u == solver.Hotel || u == solver.Hospital
			},
			ask: "The fixtures on hot water are counted, with their use by the hour. What is the probable demand, and how much is to be stored?",
		},
		{
			name: "input", skill: inputSkill(), spare: true,
			ask:  "The heater is to recover the probable demand in the hour. What input must it have?",
			from: []source{{"probable", "hot-demand", "probable"}},
			tell: func(t *told) bool {
				t.Set("cold", t.cold)
				t.Set("hot", t.store)
				t.Set("efficiency", t.Pick([]float64{0.8, 0.82, 0.85}, []float64{0.8, 0.82, 0.85}))
				return true
			},
		},
		{
			name: "relief", skill: bare(as("relief-rating", 0)), spare: true,
			ask:  "A relief valve at hand passes {rating} and opens at {setting}; {room} is to be kept free below that. Does it suit this heater?",
			from: []source{{"input", "input", "input"}},
			tell: func(t *told) bool {
				step := t.Pick([]float64{5000}, []float64{1})
				over := t.Pick([]float64{0.9, 1.1, 1.15, 1.2, 1.25}, []float64{0.9, 1.1, 1.15, 1.2, 1.25})
				t.Set("efficiency", 0.82)
				t.Set("rating", math.Round(t.Get("input")*over/step)*step)
				t.Set("tank_rating", t.Pick([]float64{125, 150}, []float64{860, 1035}))
				t.Set("setting", t.Pick([]float64{125, 150}, []float64{860, 1035}))
				t.Set("working", t.Pick([]float64{55, 60, 65, 70}, []float64{380, 410, 450, 480}))
				t.Set("room", t.Pick([]float64{25}, []float64{175}))
				return true
			},
		},
		{
			name: "mixing", skill: as("mixing-valve", 0), spare: true,
			ask: "The master mixing valve mixes {hot} and {cold} water to {mixed} and lets out {flow}. What runs in hot, and what cold?",
			tell: func(t *told) bool {
				t.Set("hot", t.store)
				t.Set("cold", t.cold)
				t.Set("mixed", t.mixed)
				t.Set("flow", t.Pick([]float64{12, 15, 18, 20, 24, 30, 36, 40, 50}, []float64{0.8, 1, 1.2, 1.5, 1.8, 2, 2.5, 3}))
				t.Name("valve", "The master mixing valve at the heater")
				return true
			},
		},
		{
			name: "expansion", skill: as("expansion-volume", 0), spare: true,
			ask: "Heater and hot piping hold {volume}. How much more room does that water want, warmed from {cold} to {hot}?",
			tell: func(t *told) bool {
				t.Set("volume", t.tank)
				t.Set("cold", t.cold)
				t.Set("hot", t.store)
				return t.waterSpace()
			},
		},
		{
			name: "expansion-tank", skill: as("expansion-tank", 0), spare: true,
			ask:  "That water goes into a diaphragm tank, pre-charged to {line}, with {cap} allowed when warm. How large must the tank be?",
			from: []source{{"expansion", "expansion", "expansion"}},
		},
		{
			name: "keep-hot", skill: bare(as("recirculation-required", 0)), spare: true,
			ask:  "Hot water is supplied to all {storeys} storeys. From the heater, beside the gauge, the pipe runs {to_riser} to the riser, up it as high as the top shower, and {branch} along the branch to the farthest outlet. {kept_says} The rule ({code}): {rule_says}. Must this pipe be recirculated or heat traced?",
			from: []source{{"up", "height", "height"}},
			tell: func(t *told) bool {
				_, _, ok := skills.TellRecirculation(t.Sheet, t.Storeys, t.Get("up"))
				return ok
			},
		},
		{
			name: "loop", skill: as("circulation-flow", 0), spare: true,
			ask: "The hot main leaves the mixing valve at {hot} and may come back at {back}. What flow must the circulator keep up?",
			tell: func(t *told) bool {
				t.Set("hot", t.mixed)
				t.Set("back", t.back)
				return true
			},
		},
	}
}

// waterSpace tells the room that water takes at the temperatures of the site.
func (t *told) waterSpace() bool {
	draw := skill("expansion-volume").Draw
	for range 60 {
		other := *t.Sheet
		other.Values, other.Labels = nil, nil
		draw(&other)
		if other.Get("cold") == t.cold && other.Get("hot") == t.store {
			t.Set("cold_space", other.Get("cold_space"))
			t.Set("hot_space", other.Get("hot_space"))
			return true
		}
	}
	return false
}
