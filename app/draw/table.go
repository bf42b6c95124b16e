package draw

import (
	"strings"

	"riserwork/solver"
)

// levelTable is the drawing as rows, the highest level first. Pressures stand
// in it only where the answer may be seen.
func levelTable(p *plan, sol *solver.Solution, opt Options) [][]string {
	head := []string{"Level"}
	if opt.elevations() {
		head = append(head, "Floor at")
	}
	if p.named() {
		head = append(head, "Zone")
	}
	head = append(head, "What is there")
	pressures := opt.Solved && sol != nil && len(sol.Levels) == p.b.Top()+1
	if pressures {
		head = append(head, "Highest outlet, no flow", "Lowest outlet, no flow")
	}
	out := [][]string{head}
	for i := p.b.Top(); i >= 0; i-- {
		l := p.b.Levels[i]
		cells := []string{l.Label}
		if opt.elevations() {
			cells = append(cells, depth(l.Elevation, opt.System))
		}
		if p.named() {
			name := ""
			if z := p.zoneOf(i); z != nil {
				name = z.Name
			}
			cells = append(cells, name)
		}
		cells = append(cells, p.there(i, opt))
		if pressures {
			cells = append(cells, pressure(sol.Levels[i].Highest, opt.System), pressure(sol.Levels[i].Lowest, opt.System))
		}
		out = append(out, cells)
	}
	return out
}

// there lists what stands on a level, with what is told about it; what stands
// under the lowest level or over the highest is told there.
func (p *plan) there(i int, opt Options) string {
	on := func(level int) bool {
		return level == i || level == pit && i == 0 || level == p.b.Top()+1 && i == p.b.Top()
	}
	var out []string
	add := func(is bool, says string, where ...Place) {
		if !is {
			return
		}
		for _, n := range opt.Notes {
			for _, w := range where {
				if n.Where == w && (n.Where != AtValve || n.Level == i || n.Level == pit) {
					says += ", " + n.Text
				}
			}
		}
		out = append(out, says)
	}
	add(i == p.b.Ground, "street main", AtMain)
	add(on(p.entry), "gauge", AtGauge)
	add(on(p.entry), "strainer", AtStrainer)
	add(on(p.entry), "meter", AtMeter)
	add(on(p.entry), "backflow preventer", AtBackflow)
	add(p.pump != none && on(p.pump), "pump", AtPump)
	for j := range p.zones {
		z := &p.zones[j]
		add(z.Valve != nil && on(z.valve), valveTag(z), AtValve)
	}
	add(p.high != none && on(p.high), p.highName(), AtHeader)
	add(p.hot != none && on(p.hot), "heater", AtHeater)
	add(p.b.Mixing != nil && on(p.hot), "mixing valve", AtMixing)
	add(p.loop && on(p.hot), "circulator", AtLoop)
	for _, n := range opt.Notes {
		add(n.Level == i && (n.Where == AtFloor || n.Where == AtOutlet), n.Text)
	}
	if a := opt.Ask; a != nil {
		add(a.Level == i, strings.TrimSpace("asked: "+a.Text))
	}
	return strings.Join(out, "; ")
}

func (p *plan) highName() string {
	if p.high > p.b.Top() {
		return "roof tank"
	}
	return "header"
}
