package draw

// Where the devices of the heater stand.
const (
	xHeater    = 104
	xMixing    = 144 // over the tee of its cold leg
	xTank      = 125 // expansion tank, between check valve and heater
	xColdCheck = 160
	xColdValve = 174
	xPumpBack  = 216
)

// hotLines are the heights of the heater's pipes on the sheet.
type hotLines struct{ hot, back, cold float64 }

func (c *canvas) hotLines() hotLines {
	y := c.rowOf(c.plan.hot).hot
	return hotLines{y + 12, y + 44, y + 76}
}

// coldForHeater is the height at which a zone's riser feeds the heater; 0
// where it does not.
func (c *canvas) coldForHeater(z *zonePlan) float64 {
	if c.plan.hot == none || c.heaterZone() != z {
		return 0
	}
	return c.hotLines().cold
}

// heaterZone is the zone that the heater is fed from: that of its level, the
// lowest where no zone has its level.
func (c *canvas) heaterZone() *zonePlan {
	if z := c.plan.zoneOf(c.plan.hot); z != nil {
		return z
	}
	return &c.plan.zones[0]
}

// hot draws the heater, its cold feed, the hot riser and the return.
func (c *canvas) hot() {
	if c.plan.hot == none {
		return
	}
	y, z := c.hotLines(), c.heaterZone()
	c.vessel(y)
	c.coldFeed(y, z.x())
	hw := c.pipe("hw", "", "pipe:hot", "hot water riser")
	c.run(hw, Point{xHeater, y.hot + 10}, Point{xHeater, y.hot}, Point{xHot, y.hot})
	top, foot := c.hotSpan(z, y.hot)
	c.run(hw, Point{xHot, foot}, Point{xHot, top})
	if foot != y.hot {
		c.mark(hw, tee("hw", xHot, y.hot))
	}
	if c.plan.b.Mixing != nil {
		c.mixing(y)
	}
	for i := range c.rows {
		if r := &c.rows[i]; r.kind == levelRow && r.lo >= max(z.Bottom, c.plan.b.Ground) && r.lo <= z.Top {
			c.run(hw, Point{xHot, r.branch + 6}, Point{xHot - 13, r.branch + 6})
			c.mark(hw, tee("hw", xHot, r.branch+6))
			c.mark(hw, arrow("hw", xHot-13, r.branch+6, left))
		}
	}
	c.device("symbol", "", "shut-off valve of the hot riser", shutOff(xHot-16, y.hot, right))
	c.signs[signShutOff] = true
	if l := c.plan.b.Loop; l != nil {
		c.loopReturn(y, top)
		if l.ValveInLoop > 0 {
			b := c.device("valve", "device:prv-hot", "reducing valve in the hot loop", reducing(xHot, y.hot-16, up, 1))
			c.spot(AtValve, none, b)
			c.signs[signReducing] = true
		}
	}
}

// hotSpan is the top and the foot of the hot riser.
func (c *canvas) hotSpan(z *zonePlan, at float64) (top, foot float64) {
	top, foot = c.rowOf(z.Top).y0+9, at
	if r := c.rowOf(max(z.Bottom, c.plan.b.Ground)); r != nil && r.branch > at {
		foot = r.branch + 6
	}
	return min(top, at-30), foot
}

// vessel draws the storage heater with its relief valve.
func (c *canvas) vessel(y hotLines) {
	box := rect("heater", Paper, Box{xHeater - 13, y.hot + 10, xHeater + 13, y.cold + 8})
	box.R, box.Stroke = 8, 1.6
	items := append([]Item{box}, text("letters", "WH", xHeater, (y.hot+y.cold)/2+14, small, "middle").bold())
	b := c.device("heater", "device:heater", "storage water heater", items)
	c.device("symbol", "device:relief", "temperature and pressure relief valve, piped to an open drain", relief(xHeater-13, y.hot+30, y.cold+14))
	c.spot(AtHeater, c.plan.hot, b)
	c.signs[signHeater], c.signs[signRelief] = true, true
}

// coldFeed draws the cold pipe to the heater: valve, check valve, and the
// expansion tank between check valve and heater.
func (c *canvas) coldFeed(y hotLines, from float64) {
	p := c.pipe("cw", "", "pipe:heater-feed", "cold water to the heater")
	c.run(p, Point{from, y.cold}, Point{xHeater + 13, y.cold})
	c.mark(p, tee("cw", from, y.cold))
	c.device("symbol", "", "shut-off valve before the heater", shutOff(xColdValve, y.cold, left))
	c.device("symbol", "", "check valve before the heater", check(xColdCheck, y.cold, left))
	c.device("symbol", "device:expansion", "expansion tank", expansion(xTank, y.cold))
	c.signs[signCheck], c.signs[signExpansion] = true, true
}

// mixing draws the master mixing valve with its cold leg.
func (c *canvas) mixing(y hotLines) {
	p := c.pipeOf("pipe:heater-feed")
	c.run(p, Point{xMixing, y.cold}, Point{xMixing, y.hot + 7})
	c.mark(p, tee("cw", xMixing, y.cold))
	c.spot(AtMixing, c.plan.hot, c.device("symbol", "device:mixing", "master mixing valve", lettered(xMixing, y.hot, 11, 8, "MV")))
	c.signs[signMixing] = true
}

// loopReturn draws the return of the loop with its balancing valve, circulator and
// check valve.
func (c *canvas) loopReturn(y hotLines, top float64) {
	p := c.pipe("hwr", "", "pipe:return", "hot water return")
	c.run(p, Point{xHot, top}, Point{xReturn, top}, Point{xReturn, y.back}, Point{xHeater + 13, y.back})
	c.device("symbol", "device:balancing", "balancing valve", balancing(xReturn, top+15, down))
	b := c.device("symbol", "device:circulator", "circulator", pumpSign(xPumpBack, y.back, left))
	c.device("symbol", "", "check valve behind the circulator", check(xPumpBack-19, y.back, left))
	c.spot(AtLoop, c.plan.hot, b)
	c.signs[signBalancing], c.signs[signPump], c.signs[signCheck] = true, true, true
}
