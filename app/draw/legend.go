package draw

// sign is a sign that the legend explains.
type sign uint8

const (
	signShutOff sign = iota
	signCheck
	signReducing
	signPump
	signGauge
	signStrainer
	signMeter
	signBackflow
	signDrain
	signHeater
	signMixing
	signExpansion
	signRelief
	signBalancing
	numSigns
)

// explained are the signs in the order of the legend, each drawn about a
// centre.
var explained = [numSigns]struct {
	says string
	draw func(x, y float64) []Item
}{
	signShutOff:   {"shut-off valve", func(x, y float64) []Item { return shutOff(x, y, right) }},
	signCheck:     {"check valve", func(x, y float64) []Item { return check(x, y, right) }},
	signReducing:  {"reducing valve (PRV)", func(x, y float64) []Item { return reducing(x, y+3, right, -1) }},
	signPump:      {"pump", func(x, y float64) []Item { return pumpSign(x, y, right) }},
	signGauge:     {"pressure gauge", func(x, y float64) []Item { return gauge(x, y+9, up) }},
	signStrainer:  {"strainer", func(x, y float64) []Item { return strainer(x, y-2) }},
	signMeter:     {"water meter", meterSign},
	signBackflow:  {"backflow preventer", func(x, y float64) []Item { return lettered(x, y, 14, 8, "BFP") }},
	signDrain:     {"drain valve", func(x, y float64) []Item { return drain(x, y-5) }},
	signHeater:    {"water heater", func(x, y float64) []Item { return lettered(x, y, 12, 9, "WH") }},
	signMixing:    {"mixing valve", func(x, y float64) []Item { return lettered(x, y, 11, 8, "MV") }},
	signExpansion: {"expansion tank", func(x, y float64) []Item { return expansion(x, y-11) }},
	signRelief:    {"relief valve", func(x, y float64) []Item { return relief(x+9, y+1, y+17)[:4] }},
	signBalancing: {"balancing valve", func(x, y float64) []Item { return balancing(x, y, right) }},
}

// kindOfPipe is how a pipe is drawn and lettered.
type kindOfPipe struct{ part, letters, dash, says string }

// pipeKinds are the pipes in the order of the legend: cold dash and dot, hot
// two dots, hot return three. Plain dashes would read as a vent. Common
// practice, no source.
var pipeKinds = []kindOfPipe{
	{"cw", "CW", "13 3 2 3", "cold water"},
	{"hw", "HW", "13 3 2 3 2 3", "hot water"},
	{"hwr", "HWR", "13 3 2 3 2 3 2 3", "hot water return"},
}

func pipeKind(part string) kindOfPipe {
	for _, k := range pipeKinds {
		if k.part == part {
			return k
		}
	}
	return pipeKinds[0]
}

// legend explains the signs that the sheet shows, in two columns.
func (c *canvas) legend() {
	c.foot += 8
	c.front = append(c.front, line("rule", 0.8, Point{xLabel, c.foot}, Point{width - xLabel, c.foot}))
	c.foot += 4
	col := 0
	add := func(says string, items func(x, y float64) []Item) {
		x := float64(xLabel + col*178)
		if col == 0 {
			c.foot += 24
		}
		y := c.foot - 10
		c.front = append(c.front, group("legend", "", "", append(items(x+22, y), text("legend", says, x+48, y+4, small, ""))...))
		col = 1 - col
	}
	for _, p := range pipeKinds {
		if c.hasPipe(p.part) {
			add(p.letters+" "+p.says, func(x, y float64) []Item {
				it := line(p.part, 1.8, Point{x - 22, y}, Point{x + 21, y})
				it.Dash = p.dash
				return []Item{it}
			})
		}
	}
	for s, e := range explained {
		if c.signs[s] {
			add(e.says, e.draw)
		}
	}
	c.foot += 20
	c.front = append(c.front, text("note", "Not to scale · for study", width/2, c.foot-4, small, "middle"))
	c.foot += 4
}

func (c *canvas) hasPipe(part string) bool {
	for _, p := range c.pipes {
		if p.part == part {
			return true
		}
	}
	return false
}
