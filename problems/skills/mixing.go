package skills

import (
	"math"

	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var mixingValveSkill = problems.Skill{
	ID: "mixing-valve", Title: "Hot and cold in a mixing valve",
	Chapter: 6, Order: 10, Year: 2, Kind: problems.Sum,
	Ask: "{valve} mixes {hot} hot water with {cold} cold water to {mixed} and lets out {flow}. What share of it is hot? How much hot and how much cold runs in? Say which is which.",
	Givens: []problems.Given{
		{Name: "hot", Says: "hot water at the valve", Measure: &measure.Temp},
		{Name: "cold", Says: "cold water at the valve", Measure: &measure.Temp},
		{Name: "mixed", Says: "mixed water", Measure: &measure.Temp},
		{Name: "flow", Says: "mixed flow", Measure: &measure.FlowRate},
	},
	Rules: []problems.Rule{
		{
			Name: "lift", Says: "how far the mix is above the cold", Measure: &measure.TempDrop,
			Formula: "mixed - cold",
			Why:     "The hot water has to warm the mix from the cold water's temperature, not from nought degrees.",
			Slips: []problems.Slip{{
				ID: "mixed-for-lift", Formula: "mixed", Family: "temperature-for-difference",
				Did:  "You used the mixed temperature, {mixed}, itself.",
				Why:  "The cold water brings {cold} along for nothing. Only what is above that comes from the hot side.",
				Next: "Try it with no hot water at all: the mix is then {cold} and the line must give nought.",
			}},
		},
		{
			Name: "span", Says: "how far the hot is above the cold", Measure: &measure.TempDrop,
			Formula: "hot - cold",
			Why:     "This is the most the mix could be above the cold: all hot.",
			Slips: []problems.Slip{{
				ID: "hot-for-span", Formula: "hot", Family: "temperature-for-difference",
				Did:  "You used the hot temperature, {hot}, itself.",
				Why:  "Both differences start at the cold water, {cold}. A zero on a thermometer means nothing to the mix.",
				Next: "If the answer would change when you read the same water in °C instead of °F, a temperature stands where a difference belongs.",
			}},
		},
		{
			Name: "hot_share", Says: "share of hot water", Measure: &measure.Share,
			Formula: "lift / span",
			Why:     "At all cold the mix is lifted by nothing, at all hot by the whole span. In between the share of hot is the part of the span.",
			Would:   mixShare,
			Slips: []problems.Slip{
				{
					ID: "upside-down", Formula: "span / lift",
					Did:  "You divided the whole span by the lift and got more than 1.",
					Why:  "A share is a part of the whole. More than 1 would be more hot water than mixed water.",
					Next: "The smaller difference goes on top.",
				},
				{
					ID: "share-from-the-hot", Formula: "(span - lift) / span",
					Did:  "You worked out how far the mix is below the hot.",
					Why:  "That is the share of cold water. The nearer the mix is to the hot, the more hot is in it.",
					Next: "A mix nearer to the hot than to the cold must have a hot share over one half.",
				},
			},
		},
		{
			Name: "hot_flow", Says: "hot water into the valve", Measure: &measure.FlowRate,
			Formula: "flow x hot_share",
			Why:     "The share says how much of the mixed flow is hot.",
			Would:   mixHot,
			Slips: []problems.Slip{
				{
					ID: "cold-for-hot", Formula: "flow x (1 - hot_share)",
					Did:  "You multiplied by the share of the cold water.",
					Why:  "{hot_share} is the hot share; what is left of 1 is cold.",
					Next: "Write the word hot or cold beside every flow.",
				},
				{
					ID: "divided-by-share", Formula: "flow / hot_share",
					Did:  "You divided the mixed flow by the share.",
					Why:  "Then more hot water would run in than comes out mixed.",
					Next: "Each of the two inlets carries less than {flow}.",
				},
			},
		},
		{
			Name: "cold_flow", Says: "cold water into the valve", Measure: &measure.FlowRate,
			Formula: "flow - hot_flow",
			Why:     "What comes out has come in: hot and cold add up to the mixed flow.",
			Would:   mixCold,
			Slips: []problems.Slip{{
				ID: "hot-given-for-cold", Formula: "hot_flow",
				Did:  "You gave the hot flow once more.",
				Why:  "The heater is sized on the hot flow and the cold branch on the cold one. Exchanged, both come out wrong.",
				Next: "Hot and cold together must give {flow}.",
			}},
		},
	},
	Holds:    "Mixed water lies between its two parts, and it lies nearer to the one there is more of. The heat that the hot water gives away is what the cold water takes up, so the shares are the distances on the thermometer.",
	Cautions: []string{scald, legionella, "A mixing valve is tested with a thermometer after it is set and at every service; a crossed or blocked side changes the mix at once."},
	Sources: []problems.Source{
		{Says: "Hot share (110 - 40) / (140 - 40) = 0.70, worked for a shower. UFC 3-420-01 (25 Oct 2004), 506.1.3", Confidence: solver.Confirmed},
		loopReturn,
	},
	Draw: drawMixing,
	Solve: func(w problems.World) float64 {
		hot := solver.HotShare(w.Building.Mixing.Mixed, w.Building.Heater.Cold, w.Building.Heater.Hot)
		return float64(w.Flow("flow")) * (1 - hot)
	},
}

func init() { add(&mixingValveSkill) }

func mixShare(w problems.World, v float64) problems.Outcome {
	return mix(w, w.Flow("flow")*unit.Flow(v))
}
func mixHot(w problems.World, v float64) problems.Outcome { return mix(w, unit.Flow(v)) }

func mixCold(w problems.World, v float64) problems.Outcome {
	return mix(w, w.Flow("flow")-unit.Flow(v))
}

// mix lets so much hot water into the valve and the rest of its flow cold.
func mix(w problems.World, hot unit.Flow) problems.Outcome {
	all, h, wanted := w.Flow("flow"), w.Building.Heater, w.Building.Mixing.Mixed
	says := "With " + w.Rate(hot) + " of hot and " + w.Rate(all-hot) + " of cold, the mix would come to "
	switch {
	case hot > all:
		says = w.Rate(hot) + " of hot cannot run into a valve that lets out " + w.Rate(all) + ". With nothing but hot, the mix would come to "
		hot = all
	case hot < 0:
		says = w.Rate(all-hot) + " of cold cannot run into a valve that lets out " + w.Rate(all) + ". With nothing but cold, the mix would come to "
		hot = 0
	}
	got := solver.Blend(hot, h.Hot, all-hot, h.Cold)
	b := w.Building.Copy()
	b.Mixing.Mixed = got
	o := problems.Outcome{Building: b, Kept: w.Temp(got) == w.Temp(wanted)}
	o.Marks = []problems.Mark{{Where: problems.AtMixing, Text: w.Temp(got), Kept: o.Kept}}
	if o.Kept {
		o.Says = []string{says + w.Temp(got) + ", as it should."}
		return o
	}
	o.Says = []string{says + w.Temp(got) + "; " + w.Temp(wanted) + " is wanted."}
	switch hottest := w.Hottest(); {
	case wanted <= hottest && got > hottest:
		o.Says = append(o.Says, "No more than "+w.Temp(hottest)+" is allowed at a shower or bath: water as hot as that scalds.")
	case wanted > hottest && got < loopLeast(w):
		o.Says = append(o.Says, "A loop is to come back at "+w.Temp(loopLeast(w))+" or more, and this water leaves the valve cooler: Legionella grows in it.")
	}
	return o
}

// drawMixing draws the master valve at the heater, kept warm enough for a
// loop, or a shower's own valve. The hot share is clear of a half and of what
// dividing the temperatures themselves would give.
func drawMixing(s *building.Sheet) {
	heaterTower(s)
	b := s.Building
	master := s.Chance(0.5)
	hots, mixes := hotLists(s, master)
	type aim struct{ hot, mixed, cold float64 }
	var fit []aim
	for _, hot := range hots {
		for _, mixed := range mixes {
			for _, cold := range colds(s) {
				share := (mixed - cold) / (hot - cold)
				if math.Abs(share-0.5) > 0.06 && share < 0.93 && math.Abs(mixed/hot/share-1) > 0.04 {
					fit = append(fit, aim{hot, mixed, cold})
				}
			}
		}
	}
	a, _ := pick(s, fit)
	valve, flow := "A shower's own mixing valve", s.Pick([]float64{1.5, 1.8, 2, 2.5}, []float64{0.1, 0.12, 0.13, 0.15})
	if master {
		valve = "The master mixing valve at the heater"
		flow = s.Pick([]float64{12, 15, 18, 20, 24, 30, 36, 40, 50}, []float64{0.8, 1, 1.2, 1.5, 1.8, 2, 2.5, 3})
	}
	s.Name("valve", valve)
	b.Heater.Hot, b.Heater.Cold = degrees(s, a.hot), degrees(s, a.cold)
	b.Mixing = &solver.MixingValve{Mixed: degrees(s, a.mixed)}
	s.Set("hot", a.hot)
	s.Set("cold", a.cold)
	s.Set("mixed", a.mixed)
	s.Set("flow", flow)
}

var blendSkill = problems.Skill{
	ID: "blend", Title: "Two streams run together",
	Chapter: 6, Order: 20, Year: 2, Kind: problems.Sum,
	Ask: "{place} {warm_flow} at {warm} runs together with {cool_flow} at {cool}. What is the temperature of the mix?",
	Givens: []problems.Given{
		{Name: "warm_flow", Says: "flow of the warmer stream", Measure: &measure.FlowRate},
		{Name: "warm", Says: "temperature of the warmer stream", Measure: &measure.Temp},
		{Name: "cool_flow", Says: "flow of the cooler stream", Measure: &measure.FlowRate},
		{Name: "cool", Says: "temperature of the cooler stream", Measure: &measure.Temp},
	},
	Rules: []problems.Rule{
		{
			Name: "total", Says: "both flows together", Measure: &measure.FlowRate,
			Formula: "warm_flow + cool_flow",
			Why:     "The heat of both is spread over all the water.",
			Slips: []problems.Slip{{
				ID: "one-flow-only", Formula: "warm_flow",
				Did:  "You spread the heat over the warmer stream alone.",
				Why:  "Both streams leave in one pipe. Spread over less water, the mix would come out hotter than either.",
				Next: "Add up everything that flows into the pipe.",
			}},
		},
		{
			Name: "blended", Says: "temperature of the mix", Measure: &measure.Temp,
			Formula: "(warm_flow x warm + cool_flow x cool) / total",
			Why:     "Each stream counts with its flow: twice the water, twice the say.",
			Slips: []problems.Slip{
				{
					ID: "plain-average", Formula: "(warm + cool) / 2",
					Did:  "You took the middle of {warm} and {cool}.",
					Why:  "That holds for two equal flows only. Here one stream is larger and draws the mix to its side.",
					Next: "Before you start, say to which side of the middle the mix must lie.",
				},
				{
					ID: "flows-crossed", Formula: "(warm_flow x cool + cool_flow x warm) / total",
					Did:  "You multiplied each temperature by the other stream's flow.",
					Why:  "Each flow carries its own temperature. Crossed, the mix lies on the wrong side of the middle.",
					Next: "Write the two streams one below the other, each with its flow and its temperature, and multiply along the line.",
				},
				{
					ID: "cool-left-out", Formula: "warm_flow x warm / total",
					Did:  "You left the cooler stream's heat out of the sum.",
					Why:  "Cool water is not at nought degrees. It brings {cool_flow} at {cool} into the mix.",
					Next: "The mix must lie between {cool} and {warm}.",
				},
			},
		},
	},
	Holds:    "No heat is lost where two streams meet: what the warmer one gives, the cooler one takes. So the mix is the mean of the two temperatures, each counted as often as there is water of it.",
	Cautions: []string{scald, legionella},
	Sources:  []problems.Source{{Says: "Heat balance of two streams; physics. The same figures as the shower of UFC 3-420-01 (25 Oct 2004), 506.1.3, read backwards", Confidence: solver.Confirmed}},
	Draw:     drawBlend,
	Solve: func(w problems.World) float64 {
		return float64(solver.Blend(w.Flow("warm_flow"), w.Temperature("warm"), w.Flow("cool_flow"), w.Temperature("cool")))
	},
}

func init() { add(&blendSkill) }

// drawBlend draws two heaters on one header, or two taps into a tub, of flows
// that differ.
func drawBlend(s *building.Sheet) {
	heaterTower(s)
	flows := lists(s, []float64{10, 12, 15, 18, 20, 25, 30}, []float64{0.6, 0.8, 1, 1.2, 1.5, 2})
	warm, cool := s.Pick([]float64{150, 155, 160}, []float64{65, 68, 70}), s.Pick([]float64{126, 130, 135}, []float64{52, 54, 56})
	place := "Two heaters feed one header, and one of them lags behind."
	if s.Chance(0.5) {
		flows = lists(s, []float64{1, 1.5, 2, 2.5, 3, 4}, []float64{0.06, 0.08, 0.1, 0.15, 0.2, 0.25})
		warm, cool = s.Pick([]float64{125, 130, 140}, []float64{52, 55, 60}), s.Pick([]float64{45, 50, 55, 60}, []float64{7, 10, 12, 15})
		place = "A laundry tub is filled from two taps."
	}
	s.Name("place", place)
	type aim struct{ warm, cool float64 }
	var fit []aim
	for _, a := range flows {
		for _, b := range flows {
			if r := a / b; r > 1.35 && r < 4 || r > 0.25 && r < 0.74 {
				fit = append(fit, aim{a, b})
			}
		}
	}
	a, _ := pick(s, fit)
	s.Building.Heater.Hot, s.Building.Heater.Cold = degrees(s, warm), degrees(s, cool)
	s.Set("warm_flow", a.warm)
	s.Set("warm", warm)
	s.Set("cool_flow", a.cool)
	s.Set("cool", cool)
}
