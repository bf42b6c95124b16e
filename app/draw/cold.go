package draw

import (
	"strconv"

	"riserwork/solver"
)

// cold draws the risers of the zones with a branch on each level.
func (c *canvas) cold() {
	if c.plan.b.Header != nil && c.usesHeader() {
		c.header()
	}
	for i := range c.plan.zones {
		z := &c.plan.zones[i]
		var p *pipe
		switch {
		case z.onRise:
			p = c.pipeOf("pipe:rise")
		case z.Supply == solver.FromHeader:
			p = c.downRiser(z)
		default:
			p = c.upRiser(z)
		}
		for n := range c.rows {
			if r := &c.rows[n]; r.kind == levelRow && r.lo >= z.Bottom && r.lo <= z.Top {
				c.branch(p, z, r)
			}
		}
	}
}

func (c *canvas) usesHeader() bool {
	for _, z := range c.plan.zones {
		if z.Supply == solver.FromHeader {
			return true
		}
	}
	return false
}

func (c *canvas) pipeOf(key string) *pipe {
	for _, p := range c.pipes {
		if p.key == key {
			return p
		}
	}
	return c.pipe("cw", "", key, "cold water riser")
}

func (c *canvas) riser(z *zonePlan) *pipe {
	n := strconv.Itoa(z.number)
	label := "cold water riser " + n
	if c.plan.named() {
		label += ", zone " + z.Name
	}
	return c.pipe("cw", "R"+n+"-CW", "pipe:R"+n, label)
}

// upRiser draws a riser fed from its foot: by the street at the tee of the
// entry, or by the booster through a reducing valve.
func (c *canvas) upRiser(z *zonePlan) *pipe {
	p := c.riser(z)
	top := c.rowOf(z.Top).branch - 9
	foot := c.rowOf(z.Bottom).branch
	if z.Valve != nil && z.Supply == solver.FromBooster {
		v := c.rowOf(z.valve).valve
		c.run(p, Point{xRise, v}, Point{xZone, v})
		c.mark(p, tee("cw", xRise, v))
		c.valveStation(z, v)
		foot = max(foot, v, c.coldForHeater(z))
		c.run(p, Point{xZone, foot}, Point{xZone, top})
		c.device("symbol", "", "drain valve", drain(xZone, foot))
		c.signs[signDrain] = true
	} else {
		t := c.rowOf(c.plan.entry).train
		c.mark(p, tee("cw", xZone, t))
		c.run(p, Point{xZone, t}, Point{xZone, top})
		if foot > t {
			c.run(p, Point{xZone, t}, Point{xZone, foot})
		}
		c.device("symbol", "", "shut-off valve at the foot of the riser", shutOff(xZone, t-14, up))
		c.signs[signShutOff] = true
		if z.Valve != nil {
			c.inline(z, c.rowOf(z.valve).branch+15, up)
			return p
		}
		c.mark(p, arrow("cw", xZone, t-26, up))
	}
	return p
}

// inline draws a reducing valve in a riser.
func (c *canvas) inline(z *zonePlan, y float64, t turn) {
	c.spot(AtValve, z.valve, c.device("valve", c.valveKey(z), "reducing valve "+valveTag(z), reducing(xZone, y, t, -t.dy)))
	c.write(text("device", valveTag(z), xZone+17, y+4, small, "").bold())
	c.signs[signReducing] = true
}

// valveStation draws a reducing valve between two shut-off valves, on the way
// from the rising pipe to a zone's riser.
func (c *canvas) valveStation(z *zonePlan, y float64) {
	c.device("symbol", "", "shut-off valve before the reducing valve", []Item{bowTie(xRise-10, y, left, 4.5, 4)})
	c.device("symbol", "", "shut-off valve behind the reducing valve", []Item{bowTie(xZone+12, y, left, 4.5, 4)})
	b := c.device("valve", c.valveKey(z), "reducing valve "+valveTag(z), reducing(216, y, left, 1))
	tag := text("device", valveTag(z), 216, y-15, small, "middle").bold()
	c.write(tag)
	c.spot(AtValve, z.valve, b.join(tag.Bounds()))
	c.signs[signReducing], c.signs[signShutOff] = true, true
}

func valveTag(z *zonePlan) string { return "PRV-" + strconv.Itoa(z.number) }

func (c *canvas) valveKey(z *zonePlan) string { return "device:prv-" + strconv.Itoa(z.number) }

// downRiser draws the part of a down-feed riser that feeds one zone, from its
// reducing valve or the header down.
func (c *canvas) downRiser(z *zonePlan) *pipe {
	p := c.riser(z)
	foot := c.rowOf(z.Bottom).branch
	last := z.number == 1 || c.plan.zones[z.number-2].Supply != solver.FromHeader
	if !last {
		foot = c.rowOf(c.plan.zones[z.number-2].valve).valve
	}
	foot = max(foot, c.coldForHeater(z))
	y := c.headerLine()
	if z.Valve != nil {
		y = c.rowOf(z.valve).valve
		c.inline(z, y, down)
	} else if c.plan.high == c.plan.b.Top()+1 {
		y = c.roof - 16
	}
	c.run(p, Point{xZone, y}, Point{xZone, foot})
	if z.Valve == nil {
		c.device("symbol", "", "shut-off valve at the head of the riser", shutOff(xZone, y+11, down))
		c.signs[signShutOff] = true
	}
	c.mark(p, arrow("cw", xZone, c.rowOf(z.Top).branch-10, down))
	if last {
		c.device("symbol", "", "drain valve", drain(xZone, foot))
		c.signs[signDrain] = true
	}
	return p
}

// header draws the high main under the roof, or the tank over it.
func (c *canvas) header() {
	p, y := c.plan, c.headerLine()
	rise := c.pipeOf("pipe:rise")
	if p.high == p.b.Top()+1 {
		c.run(rise, Point{xRise, y}, Point{xFloat, y}, Point{xFloat, y + 9})
		c.tank(y + 6)
		return
	}
	c.run(rise, Point{xRise, y}, Point{xZone - 34, y})
	c.mark(rise, tee("cw", xZone, y))
	b := c.device("symbol", "device:header-gauge", "gauge in the header", gauge(xZone-34, y, left))
	name := text("device", "HEADER", xZone-58, y+4, small, "end").bold()
	c.write(name)
	c.spot(AtHeader, p.high, b.join(name.Bounds()))
	c.signs[signGauge] = true
}

// xFloat is where the float valve of the roof tank stands.
const xFloat = 222

// tank draws an open roof tank on its legs, top at y. Its inlet ends over the
// water, so that nothing can be drawn back.
func (c *canvas) tank(top float64) {
	const x0, x1 = xZone - 20, xRise - 12
	bottom := c.roof - 16
	items := []Item{
		shape("tank", Paper, 1.6, Point{x0, top}, Point{x0, bottom}, Point{x1, bottom}, Point{x1, top}),
		line("cw-level", 1.2, Point{x0, top + 12}, Point{x1, top + 12}),
		shape("cw-level", Ink, 0, Point{xZone, top + 11}, Point{xZone - 4, top + 5}, Point{xZone + 4, top + 5}),
		line("tank", 1.6, Point{x0 + 6, bottom}, Point{x0 + 6, c.roof}),
		line("tank", 1.6, Point{x1 - 6, bottom}, Point{x1 - 6, c.roof}),
		line("symbol", 1.2, Point{xFloat, top + 4}, Point{xFloat - 12, top + 11}),
		circle("symbol", Paper, 1.2, xFloat-14, top+12, 3),
	}
	b := c.device("tank", "device:tank", "roof tank", items)
	c.write(text("device", "TANK", (x0+x1)/2, bottom-4, small, "middle").bold())
	c.spot(AtHeader, c.plan.high, b)
}

// branch draws the pipe from a riser to the fixtures of a level, with the
// valve that shuts it.
func (c *canvas) branch(p *pipe, z *zonePlan, r *row) {
	x := z.x()
	end := x - 46
	c.run(p, Point{x, r.branch}, Point{end, r.branch})
	c.take(spread([]Point{{x, r.branch}, {end, r.branch}}).grow(2), "")
	c.mark(p, tee("cw", x, r.branch))
	c.mark(p, arrow("cw", end, r.branch, left))
	c.device("symbol", "", "valve of the branch on level "+c.plan.b.Levels[r.lo].Label, []Item{bowTie(x-17, r.branch, left, 4.5, 3.5)})
	c.spot(AtOutlet, r.lo, around(end, r.branch, 6, 6))
}

func (z *zonePlan) x() float64 {
	if z.onRise {
		return xRise
	}
	return xZone
}
