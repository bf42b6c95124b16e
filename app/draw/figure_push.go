package draw

import "math"

// bend is a bend between two runs of pipe, with the push of each and what
// both make together.
func (f *figure) bend() {
	f.about(230, "The push on a bend",
		"Each leg pushes with "+f.told("push")+"; on a bend of "+f.told("angle")+" both together push outward with "+f.told("thrust")+".", "push", "angle", "thrust")
	a := f.val("angle") * math.Pi / 180
	c := Point{176, 130}
	in := Point{c.X - 130, c.Y}
	out := Point{c.X + 120*math.Cos(a), c.Y + 120*math.Sin(a)}
	if out.Y > 216 {
		out = Point{c.X + (216-c.Y)/math.Tan(a), 216}
	}
	for _, side := range []float64{-7, 7} {
		mitre := side / math.Cos(a/2)
		f.add(line("cw", 1.8, Point{in.X, in.Y + side},
			Point{c.X - mitre*math.Sin(a/2), c.Y + mitre*math.Cos(a/2)},
			Point{out.X - side*math.Sin(a), out.Y + side*math.Cos(a)}))
	}
	f.arrow("device", 2.4, in, Point{c.X - 14, c.Y})
	// The bend is pushed to its outer side, along the line that halves it.
	x, y := math.Sin(a/2), -math.Cos(a/2)
	f.arrow("hw", 4, Point{c.X + 10*x, c.Y + 10*y}, Point{c.X + 74*x, c.Y + 74*y})
	f.number(f.told("push"), 46, c.Y-14, "")
	f.number(f.told("thrust"), c.X+math.Min(84, 90*x), math.Max(34, c.Y+80*y), "")
	f.number(f.told("angle"), c.X-20, c.Y+36, "end")
}

// deadEnd is a capped pipe held by rods.
func (f *figure) deadEnd() {
	f.about(190, "The push on a dead end",
		"The water pushes on the whole outside area of the end with "+f.told("push")+"; "+f.told("rods")+" rods hold it.", "area", "push", "rod_load", "rods")
	f.add(box("cw", "", Box{30, 66, 220, 118}), box("device", Ink, Box{220, 58, 228, 126}))
	for _, y := range []float64{76, 92, 108} {
		f.arrow("cw", 2, Point{170, y}, Point{216, y})
	}
	f.add(line("device", 3, Point{60, 50}, Point{240, 50}), line("device", 3, Point{60, 134}, Point{240, 134}))
	f.add(line("device", 5, Point{60, 42}, Point{60, 142}), line("device", 5, Point{240, 42}, Point{240, 142}))
	f.number(f.told("push"), 154, 97, "end")
	f.number(f.told("rods")+" rods of "+f.told("rod_load"), 60, 32, "")
	f.write("the rods pull against it", 60, 166, "")
}

// wedge is the pressure in a zone, between the most at its foot and the least
// at its top.
func (f *figure) wedge(most, least, height string) {
	f.about(214, "From the most to the least",
		"Between "+f.told(most)+" below and "+f.told(least)+" above there is room for "+f.told(height)+" of water.", most, least, height)
	const x0, top, foot = 130.0, 30.0, 180.0
	share := math.Min(0.9, math.Max(0.1, f.val(least)/f.val(most)))
	end := x0 + 120*share
	f.add(shape("cw", "", 1.8, Point{x0, top}, Point{end, top}, Point{x0 + 120, foot}, Point{x0, foot}))
	for i := range 6 {
		y := top + (foot-top)*float64(i)/5
		f.add(line("cw", 1, Point{x0, y}, Point{end + (x0+120-end)*float64(i)/5, y}))
	}
	f.span(Point{x0 - 20, top}, Point{x0 - 20, foot})
	f.number(f.told(height), x0-30, 110, "end")
	f.number(f.told(least), end+12, top+5, "")
	f.number(f.told(most), x0+132, foot+5, "")
	f.write("pressure", x0+60, 202, "middle")
}

// zoneStack is a tower broken into zones.
func (f *figure) zoneStack() {
	f.about(250, "The tower in zones",
		"The street feeds up to floor "+f.told("fed")+". Above it "+f.told("boosted")+" floors make "+f.told("zones")+" zones of at most "+f.told("zone_floors")+".", "storeys", "fed", "boosted", "zones", "first_break", "top_break")
	const x0, x1, foot, tall = 96.0, 190.0, 234.0, 216.0
	storeys, fed, size := f.val("storeys"), f.val("fed"), f.val("zone_floors")
	y := func(n float64) float64 { return foot - tall*n/storeys }
	f.hatch("cw", Box{x0, y(fed), x1, foot}, 9)
	f.add(box("device", "", Box{x0, foot - tall, x1, foot}))
	f.write("street", x1+14, (y(fed)+foot)/2+5, "")
	f.write("up to "+whole(fed), x0-10, y(fed)+12, "end")
	for n, z := fed, 1; n < storeys && z < 12; n, z = n+size, z+1 {
		end := math.Min(storeys, n+size)
		f.add(line("limit", 2.4, Point{x0 - 6, y(n)}, Point{x1 + 6, y(n)}))
		if y(n)-y(end) >= 16 {
			f.number("zone "+whole(float64(z)), (x0+x1)/2, (y(n)+y(end))/2+5, "middle")
			f.number(whole(n+1)+" to "+whole(end), x1+14, (y(n)+y(end))/2+5, "")
		}
	}
}
