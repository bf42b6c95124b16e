package walk

import (
	"riserwork/solver"
	"riserwork/solver/unit"
)

// hot goes through the heater of the highest zone, up to its far tap and round
// its loop.
func (k *walker) hot() {
	zone := k.b.ZoneOf(k.top)
	if k.Whole.Hot == nil || k.Whole.Floors[k.top].Hot == nil {
		return
	}
	for i := range k.Whole.Hot.Plants {
		if p := &k.Whole.Hot.Plants[i]; p.Zone == zone {
			k.heater(p)
		}
	}
	var loop *solver.LoopWater
	for i := range k.Whole.Loops {
		if l := &k.Whole.Loops[i]; l.Zone == zone && len(l.Risers) > 0 {
			loop = l
		}
	}
	if loop != nil {
		k.outward(loop)
	}
	k.farTap()
	if loop != nil {
		k.homeward(loop)
	}
}

// heater goes from the cold feed to the mixing valve.
func (k *walker) heater(p *solver.PlantWater) {
	h, level := k.b.Heater, k.b.LevelAt(p.At)
	base := k.base(k.Whole.Floors[k.top].Cold.Stretch)
	spot := k.plantSpot
	feed := at{"heater-feed", "cold feed of the heater, level " + k.b.Levels[level].Label, "feed-check", Heater, NoFlow, "The heater stands under this at rest.", true, level, spot(level, AtHeater)}
	if rise := p.At - base.End; rise > nothing || rise < -nothing {
		k.still(feed, p.Working, base.At.NoFlow, rise)
	} else {
		feed.says = "The heater stands as high as the valve or pump that feeds it, and at rest under what that makes."
		k.add(feed, nightSum, float64(p.Working), float64(base.At.Design), float64(base.At.NoFlow-base.At.Design))
	}
	k.add(at{"expansion", "expansion tank", "expansion-tank", Heater, NoFlow, "Warming makes so much more water, and the check shuts the way back.", false, level, spot(level, AtHeater)},
		growSum, float64(p.Grows), float64(p.Content), float64(p.Grows/p.Content))
	k.add(at{"heater", "heater", "thermostat", Heater, Hot, "So much is the water warmed.", true, level, spot(level, AtHeater)},
		warmSum, float64(k.Whole.Hot.Rise), float64(h.Hot), float64(h.Cold))
	k.add(at{"relief", "relief valve of the heater", "temperature-relief", Heater, NoFlow, "So far is the pressure at rest from lifting the relief valve.", false, level, spot(level, AtHeater)},
		spareSum, float64(h.Relief-p.Working), float64(h.Relief), float64(p.Working))
	if k.b.Mixing != nil {
		k.add(at{"mixing", "mixing valve", "mixing-valve", Heater, Hot, "What leaves for the taps.", true, level, spot(level, AtMixing)},
			blendSum, float64(k.Whole.Hot.Delivered), k.Whole.Hot.HotPart, float64(h.Hot), float64(h.Cold))
	}
}

// outward goes from the heater to the top of the farthest riser.
func (k *walker) outward(l *solver.LoopWater) {
	far := &l.Risers[len(l.Risers)-1]
	zone := &k.b.Zones[l.Zone]
	k.cool(at{"hot-foot", "foot of the farthest hot riser", "thermometer", Loop, Hot, "The main has cooled it so far.", false, zone.Bottom, AtFloor}, far.Foot, l.Supply)
	k.cool(at{"hot-top", "top of the hot riser, level " + k.b.Levels[k.top].Label, "insulation", Loop, Hot, "The riser has cooled it further.", true, k.top, AtFloor}, far.Top, far.Foot)
}

// cool adds a station where the water has cooled on the way.
func (k *walker) cool(a at, is, was unit.Temperature) {
	if was > is {
		k.add(a, coolSum, float64(is), float64(was), float64(was-is))
	}
}

// farTap is the hot side of the highest outlet.
func (k *walker) farTap() {
	out := k.Whole.Floors[k.top].Hot
	i := out.Stretch
	for k.Whole.Stretches[i].From >= 0 && k.Whole.Stretches[i].Hot {
		i = k.Whole.Stretches[i].From
	}
	from := &k.Whole.Stretches[i]
	k.moving(at{"far-tap", "hot side of the highest shower, level " + k.b.Levels[k.top].Label, "fixture-limiter", Loop, Flowing, "Heater and hot pipe take their share; this is left of what the zone is fed with.", true, k.top, AtOutlet},
		out.Highest.Design, from.At.Design, k.b.Highest(k.top)-from.End)
}

// homeward goes down the return to the heater.
func (k *walker) homeward(l *solver.LoopWater) {
	near, far := &l.Risers[0], &l.Risers[len(l.Risers)-1]
	zone, plant := &k.b.Zones[l.Zone], k.plantLevel(l.Zone)
	if len(l.Risers) > 1 {
		k.add(at{"balancing", "balancing valve of the nearest riser", "balancing-valve", Loop, Hot, "Its valve is to take so much, that the farthest riser gets its flow.", false, zone.Bottom, k.plantSpot(plant, AtLoop)},
			throttleSum, float64(near.Drop), float64(far.Loss), float64(near.Loss), float64(far.Drop))
	}
	k.cool(at{"back-foot", "foot of the return riser", "aquastat", Loop, Hot, "The return has cooled it further.", false, zone.Bottom, k.plantSpot(plant, AtLoop)}, far.Back, far.Top)
	common := k.gamma.OfColumn(l.Head) - far.Loss - far.Drop
	k.add(at{"circulator", "circulator", "circulator", Loop, Hot, "The head that the circulator is to make at the flow asked of it.", true, plant, k.plantSpot(plant, AtLoop)},
		headSum, float64(l.Head), float64(far.Loss+far.Drop), float64(common))
	k.cool(at{"return", "return at the heater", "return-check", Loop, Hot, "All risers together come back at this.", true, plant, k.plantSpot(plant, AtLoop)}, l.Return, l.Supply)
	k.add(at{"home", "back in the heater", "dip-tube", Loop, Hot, "So much the water of the loop is warmed again, and the round begins anew.", false, plant, k.plantSpot(plant, AtHeater)},
		warmSum, float64(l.Supply-l.Return), float64(l.Supply), float64(l.Return))
}

// plantLevel is the level that the heater of a zone stands on.
func (k *walker) plantLevel(zone int) int {
	for i := range k.Whole.Hot.Plants {
		if p := &k.Whole.Hot.Plants[i]; p.Zone == zone {
			return k.b.LevelAt(p.At)
		}
	}
	return k.b.LevelAt(k.b.Heater.Elevation)
}

// plantSpot is where a station of a plant stands: at the heater that is drawn,
// or on the floor of a plant higher up.
func (k *walker) plantSpot(level int, where Where) Where {
	if level == k.b.LevelAt(k.b.Heater.Elevation) {
		return where
	}
	return AtFloor
}
