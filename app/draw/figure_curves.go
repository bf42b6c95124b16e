package draw

import (
	"math"

	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// The plot of a picture, in px.
const (
	graphLeft  = 54.0
	graphRight = 250.0
	graphTop   = 24.0
	graphFoot  = 180.0
)

// graph is a pair of axes with the ends of what runs along them.
type graph struct {
	f              *figure
	x0, x1, y0, y1 float64
}

func (f *figure) graph(x0, x1, y0, y1 float64, across, up string) graph {
	f.add(line("device", 1.6, Point{graphLeft, graphTop - 8}, Point{graphLeft, graphFoot}, Point{graphRight + 8, graphFoot}))
	f.write(across, (graphLeft+graphRight)/2, graphFoot+34, "middle")
	f.write(up, 6, graphTop-8, "")
	return graph{f, x0, x1, y0, y1}
}

func (g graph) at(x, y float64) Point {
	return Point{graphLeft + (graphRight-graphLeft)*(x-g.x0)/(g.x1-g.x0), graphFoot - (graphFoot-graphTop)*(y-g.y0)/(g.y1-g.y0)}
}

// curve draws a function; what leaves the plot is left out.
func (g graph) curve(part string, stroke float64, dash string, from, to float64, y func(float64) float64) {
	var points []Point
	for i := range 41 {
		x := from + (to-from)*float64(i)/40
		if p := g.at(x, y(x)); p.Y >= graphTop-8 && p.Y <= graphFoot && p.X <= graphRight+8 {
			points = append(points, p)
		}
	}
	if len(points) > 1 {
		it := line(part, stroke, points...)
		it.Dash = dash
		g.f.add(it)
	}
}

func (g graph) dot(x, y float64) {
	p := g.at(x, y)
	g.f.add(circle("told", Ink, 0, p.X, p.Y, 4))
}

// drop draws thin lines from a point to both axes.
func (g graph) drop(x, y float64) {
	p := g.at(x, y)
	it := line("dim", 1, Point{graphLeft, p.Y}, p, Point{p.X, graphFoot})
	it.Dash = "3 3"
	g.f.add(it)
}

// demand is a piece of the demand curve: two rows of the table with a
// straight line between them.
func (f *figure) demand(units, flow string) {
	f.about(226, "Between two rows of the table",
		"The rows at "+f.told("row_low")+" and "+f.told("row_high")+" have "+f.told("flow_low")+" and "+f.told("flow_high")+". At "+f.told(units)+" the straight line between them gives "+f.told(flow)+".",
		"row_low", "flow_low", "row_high", "flow_high", units, flow)
	u0, u1, q0, q1 := f.val("row_low"), f.val("row_high"), f.val("flow_low"), f.val("flow_high")
	wide, tall := (u1-u0)*0.35, (q1-q0)*0.35
	g := f.graph(u0-wide, u1+wide, q0-tall, q1+tall, "fixture units", "flow")
	bend := func(u float64) float64 {
		t := (u - u0) / (u1 - u0)
		return q0 + (q1-q0)*(t-0.12*t*(t-1))
	}
	g.curve("dim", 1, "3 3", u0-wide, u1+wide, bend)
	f.add(line("cw", 2.6, g.at(u0, q0), g.at(u1, q1)))
	for _, p := range [][2]float64{{u0, q0}, {u1, q1}} {
		at := g.at(p[0], p[1])
		f.add(circle("cw", Paper, 2, at.X, at.Y, 5))
	}
	g.drop(f.val(units), f.val(flow))
	g.dot(f.val(units), f.val(flow))
	f.number(whole(u0), g.at(u0, 0).X, graphFoot+17, "middle")
	f.number(whole(u1), g.at(u1, 0).X, graphFoot+17, "middle")
	f.number(f.told("flow_high"), g.at(u1, q1).X+12, g.at(u1, q1).Y+5, "")
	f.number(f.told("flow_low"), g.at(u0, q0).X+14, g.at(u0, q0).Y+14, "")
	f.number(f.told(flow), 262, g.at(0, (q0+q1)/2).Y+18, "")
	f.write("here", 262, g.at(0, (q0+q1)/2).Y+2, "")
}

// friction is what the same flow loses in the sizes beside this one.
func (f *figure) friction() {
	f.about(228, "The same flow in other sizes",
		"The loss falls with nearly the fifth power of the bore: a size larger takes a third to a half of it.", "flow", "bore", "rate")
	u := measure.Bore.Unit(f.p.House.System)
	bore := f.val("bore")
	rate := func(b float64) float64 { return f.val("rate") * math.Pow(bore/b, 4.87) }
	var sizes []solver.Tube
	for i, t := range solver.Tubes {
		if u.FromSI(float64(t.Bore(solver.TypeL))) >= bore*0.98 || i == len(solver.Tubes)-3 {
			sizes = solver.Tubes[max(0, i-1):min(len(solver.Tubes), i+3)]
			break
		}
	}
	most := rate(u.FromSI(float64(sizes[0].Bore(solver.TypeL))))
	for i, t := range sizes {
		x := 24 + float64(i)*84
		tall := math.Max(2, 140*rate(u.FromSI(float64(t.Bore(solver.TypeL))))/most)
		b := Box{x, 180 - tall, x + 50, 180}
		f.add(box("cw", "", b))
		f.hatch("cw", b, 8)
		name := t.Nominal + " in"
		if f.p.House.System != unit.US {
			name = "DN " + whole(float64(t.DN))
		}
		f.write(name, x+25, 198, "middle")
		f.number(unit.Format(rate(u.FromSI(float64(t.Bore(solver.TypeL)))), 2), x+25, 172-tall, "middle")
	}
	f.add(line("device", 1.6, Point{12, 180}, Point{348, 180}))
	f.write("loss, "+f.p.Steps[f.p.Slot("rate")-len(f.p.Told)].Unit.Name, 180, 218, "middle")
}

// pumps are one pump, and the pumps of the problem side by side and one after
// the other.
func (f *figure) pumps() {
	f.about(226, "Side by side, and one after the other",
		"Side by side the flows add at the same head. One after the other the heads add at the same flow.", "pumps", "each", "together", "outlet", "in_series")
	head := func(q float64) float64 { return 1 - 0.75*q*q }
	g := f.graph(0, 2.3, 0, 2.2, "flow", "head")
	g.curve("cw", 2.6, "", 0, 1.05, head)
	g.curve("device", 2, "7 4", 0, 2.1, func(q float64) float64 { return head(q / 2) })
	g.curve("device", 2, "2 3", 0, 1.05, func(q float64) float64 { return 2 * head(q) })
	f.write("one", g.at(1.1, 0).X, g.at(0, 0.12).Y, "")
	f.write("side by side", 262, g.at(0, 0.42).Y, "")
	f.write("one after", g.at(0.75, 0).X, g.at(0, 1.9).Y, "")
	f.write("the other", g.at(0.75, 0).X, g.at(0, 1.9).Y+16, "")
	f.arrow("dim", 1.2, g.at(0.72, 0.61), g.at(1.44, 0.61))
	f.arrow("dim", 1.2, g.at(0.5, 0.81), g.at(0.5, 1.62))
}

// speeds is a pump at two speeds.
func (f *figure) speeds() {
	f.about(226, "One pump at two speeds",
		"Flow follows the speed, head its square. At "+f.told("new_speed")+" the curve goes down from "+f.told("old_shut_off")+" to "+f.told("new_shut_off")+" at no flow.",
		"old_speed", "new_speed", "old_flow", "new_flow", "old_head", "new_head", "old_shut_off", "new_shut_off")
	n := f.val("ratio")
	q, h, shut := f.val("old_flow"), f.val("old_head"), f.val("old_shut_off")
	bend := (h - shut) / (q * q)
	most := math.Max(1, n)
	g := f.graph(0, 1.5*q*most, 0, shut*1.15*most*most, "flow", "head")
	g.curve("cw", 2.6, "", 0, 1.4*q, func(x float64) float64 { return shut + bend*x*x })
	g.curve("device", 2, "7 4", 0, 1.4*q*n, func(x float64) float64 { return shut*n*n + bend*x*x })
	g.dot(q, h)
	g.dot(q*n, h*n*n)
	f.number(f.told("old_speed"), 262, g.at(0, h).Y+5, "")
	f.number(f.told("new_speed"), 262, g.at(0, h*n*n).Y+5, "")
}

// spike is the pressure over time where a valve is shut at once.
func (f *figure) spike() {
	f.about(226, "The blow on top of the standing pressure",
		"Where the water is stopped at once, "+f.told("jump")+" comes on top of the "+f.told("standing")+" that stand in the pipe: "+f.told("peak")+".", "standing", "jump", "peak")
	g := f.graph(0, 10, 0, f.val("peak")*1.08, "time", "pressure")
	s, j := f.val("standing"), f.val("jump")
	points := []Point{g.at(0, s), g.at(2, s)}
	for i := range 60 {
		t := float64(i) / 60 * 8
		points = append(points, g.at(2+t, math.Max(0, s+j*math.Exp(-t/1.6)*math.Cos(2.6*t))))
	}
	f.add(line("cw", 2.2, points...))
	calm := line("dim", 1, g.at(0, s), g.at(10, s))
	calm.Dash = "3 3"
	f.add(calm)
	f.number(f.told("standing"), 258, g.at(0, s).Y+5, "")
	f.number(f.told("peak"), g.at(2, 0).X+10, graphTop+8, "")
	f.write("valve shut", g.at(2, 0).X, graphFoot+17, "middle")
}
