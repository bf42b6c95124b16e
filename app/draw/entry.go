package draw

import "riserwork/solver"

// street draws the main in the ground and the service into the building.
func (c *canvas) street() {
	p := c.plan
	y := c.groundLine() + 20
	mains := []Item{circle("main", Paper, 2, xMain, y, 6), circle("main", Ink, 0, xMain, y, 1.5)}
	b := c.device("main", "device:main", "street main", mains)
	c.spot(AtMain, p.b.Ground, b)
	c.write(text("device", "STREET", xLabel, y+19, small, "").bold())
	c.write(text("device", "MAIN", xLabel, y+31, small, "").bold())
	if d := p.b.Street.MainDepth; d > 0 && c.opt.depth() {
		c.write(text("dim", depth(d, c.opt.System), xLabel, y+43, small, ""))
		c.back = append(c.back, line("dim", 0.8, Point{26, c.groundLine()}, Point{26, y}),
			line("dim", 1, Point{23, c.groundLine() + 6}, Point{29, c.groundLine()}), line("dim", 1, Point{23, y + 3}, Point{29, y - 3}))
	}
	c.device("symbol", "device:curb-stop", "curb stop with its box", append([]Item{
		line("symbol", 1.2, Point{xCurb, y}, Point{xCurb, c.groundLine()}),
		line("symbol", 2.2, Point{xCurb - 4, c.groundLine()}, Point{xCurb + 4, c.groundLine()})}, shutOff(xCurb, y, right)...))
	c.signs[signShutOff] = true
}

// entry draws the train of devices from the service to the foot of the
// risers.
func (c *canvas) entry() {
	p, r := c.plan, c.rowOf(c.plan.entry)
	y, service := r.train, c.groundLine()+20
	main := c.pipe("cw", "", "pipe:entry", "cold water service and entry")
	end := float64(xZone)
	if p.rise {
		end = xTail
	}
	c.run(main, Point{xMain + 6, service}, Point{xService, service}, Point{xService, y}, Point{end, y})
	c.device("symbol", "device:shut-off", "main shut-off valve", shutOff(xGate, y, right))
	c.gauges(y, service)
	c.spot(AtStrainer, p.entry, c.device("symbol", "device:strainer", "strainer", strainer(xStrainer, y)))
	c.spot(AtMeter, p.entry, c.device("symbol", "device:meter", "water meter", meterSign(xMeter, y)))
	c.spot(AtBackflow, p.entry, c.device("symbol", "device:backflow", "backflow preventer", lettered(xBackflow, y, 14, 8, "BFP")))
	c.signs[signGauge], c.signs[signStrainer], c.signs[signMeter], c.signs[signBackflow] = true, true, true, true
	if p.rise {
		c.riseFoot(main, y)
	}
}

// gauges draws the gauge that the street pressure is read on: behind the
// shut-off, or outside at the main.
func (c *canvas) gauges(y, service float64) {
	x := float64(xGauge)
	if c.plan.gaugeAtMain() {
		x, y = 56, service
	}
	t := up
	if c.plan.gaugeAtMain() {
		t = down
	}
	c.spot(AtGauge, c.plan.entry, c.device("symbol", "device:gauge", "pressure gauge", gauge(x, y, t)))
}

// riseFoot draws the booster and the foot of the pipe that runs past the
// lower zones.
func (c *canvas) riseFoot(main *pipe, y float64) {
	p := c.plan
	at := y
	if r := c.rowOf(p.pump); r != nil {
		at = r.train
	}
	rise := c.pipe("cw", "", "pipe:rise", "cold water, past the lower zones")
	if at == y {
		c.run(rise, Point{xTail, y}, Point{xRise, y}, Point{xRise, c.riseTop()})
	} else {
		c.run(rise, Point{xTail, y}, Point{xTail, at}, Point{xRise, at}, Point{xRise, c.riseTop()})
	}
	if p.pump != none {
		b := c.device("symbol", "device:booster", "booster pump", pumpSign(xPump, at, right))
		c.spot(AtPump, p.pump, b)
		c.device("symbol", "device:booster-check", "check valve of the booster", check(xCheck, at, right))
		c.write(text("device", "P-1", xPump, at+21, small, "middle").bold())
		c.signs[signPump], c.signs[signCheck] = true, true
	}
	c.device("symbol", "device:rise-valve", "shut-off valve at the foot of the riser", shutOff(xRise, at-14, up))
	c.mark(rise, arrow("cw", xRise, at-27, up))
}

// riseTop is where the pipe past the lower zones ends: at the header, at the
// take-off of the highest zone behind a valve, or at the top of a zone it
// feeds itself.
func (c *canvas) riseTop() float64 {
	y := c.bottom()
	for _, z := range c.plan.zones {
		switch {
		case z.Supply == solver.FromHeader:
			return c.headerLine()
		case z.onRise:
			y = min(y, c.rowOf(z.Top).branch-9)
		case z.Supply == solver.FromBooster:
			y = min(y, c.rowOf(z.valve).valve)
		}
	}
	return y
}

// headerLine is the height of the header on the sheet, or of the tank's inlet.
func (c *canvas) headerLine() float64 {
	if c.plan.high == c.plan.b.Top()+1 {
		return c.roof - 56
	}
	if r := c.rowOf(c.plan.high); r != nil {
		return r.y0 + 15
	}
	return c.roof - 12
}
