package draw

import "math"

// mix is two streams that run together, each as thick as its flow.
func (f *figure) mix(flowA, tempA, flowB, tempB, flow, temp string) {
	f.about(200, "Two streams run together",
		f.told(flowA)+" of "+f.told(tempA)+" and "+f.told(flowB)+" of "+f.told(tempB)+" make "+f.told(flow)+" of "+f.told(temp)+". The heat that one gives is the heat that the other takes.",
		flowA, tempA, flowB, tempB, flow, temp)
	share := f.val(flowA) / f.val(flow)
	const thick = 44.0
	a, b := thick*share, thick*(1-share)
	mid := 100.0
	f.add(shape("hw", "", 1.6, Point{14, 40}, Point{80, 40}, Point{170, mid - thick/2}, Point{170, mid - thick/2 + a}, Point{80, 40 + a}, Point{14, 40 + a}),
		shape("cw", "", 1.6, Point{14, 160 - b}, Point{80, 160 - b}, Point{170, mid + thick/2 - b}, Point{170, mid + thick/2}, Point{80, 160}, Point{14, 160}))
	f.hatch("hw", Box{14, 40, 80, 40 + a}, 5)
	f.hatch("cw", Box{14, 160 - b, 80, 160}, 11)
	f.add(box("device", Paper, Box{170, mid - thick/2, 250, mid + thick/2}))
	f.arrow("device", 2.4, Point{184, mid}, Point{240, mid})
	f.number(f.told(tempA)+", "+f.told(flowA), 14, 30, "")
	f.number(f.told(tempB)+", "+f.told(flowB), 14, 180, "")
	f.number(f.told(temp), 260, mid-4, "")
	f.number(f.told(flow), 260, mid+14, "")
}

// heat is what a burner takes in: part goes into the water, the rest up the
// flue.
func (f *figure) heat(input, useful string) {
	f.about(190, "What goes in, and what reaches the water",
		f.told(input)+" go in, "+f.told(useful)+" reach the water; the rest leaves by the flue and the shell.", input, useful, "rise")
	share := math.Min(0.97, f.val(useful)/f.val(input))
	const thick, x1, x2 = 60.0, 130.0, 210.0
	low := 130.0
	split := low - thick*share
	f.add(shape("device", "", 1.6, Point{14, low - thick}, Point{x1, low - thick}, Point{x2 - 20, 34}, Point{x2 + 10, 34}, Point{x1 + 30, split}, Point{x2, split}, Point{x2, low}, Point{14, low}))
	f.hatch("hw", Box{14, split, x2, low}, 8)
	f.arrow("hw", 2.4, Point{x2 + 6, (split + low) / 2}, Point{x2 + 44, (split + low) / 2})
	f.number(f.told(input), 14, low-thick-8, "")
	f.number(f.told(useful), x2+6, low+20, "")
	f.write("to the water", x2+6, low+37, "")
	f.write("up the flue", x2+16, 30, "")
}

// loop is a circulation loop whose water cools on its way.
func (f *figure) loop() {
	f.about(220, "The loop cools on its way",
		"Water leaves at "+f.told("hot")+" and comes back at "+f.told("back")+". What the pipes lose, "+f.told("loss")+", the flow must carry with a drop of "+f.told("drop")+".",
		"hot", "back", "drop", "loss", "flow")
	f.add(box("device", Paper, Box{30, 120, 96, 196}))
	f.write("heater", 63, 163, "middle")
	supply := line("hw", 4, Point{63, 120}, Point{63, 40}, Point{290, 40}, Point{290, 110})
	back := line("hwr", 2, Point{290, 110}, Point{290, 180}, Point{96, 180})
	back.Dash = "8 4"
	f.add(supply, back)
	for _, x := range []float64{120, 180, 240} {
		f.arrow("dim", 1, Point{x, 36}, Point{x, 14})
	}
	f.arrow("hw", 2, Point{140, 60}, Point{190, 60})
	f.arrow("hwr", 2, Point{240, 164}, Point{190, 164})
	f.number(f.told("hot"), 72, 84, "")
	f.number(f.told("back"), 106, 200, "")
	f.number("lost: "+f.told("loss"), 280, 100, "end")
	f.number(f.told("flow"), 280, 130, "end")
}

// boyle is a tank with a bladder at its lower and at its upper pressure.
func (f *figure) boyle(volume, low, high, lowPressure, highPressure string) {
	f.about(216, "The same air at two pressures",
		"At "+f.told(lowPressure)+" the air fills "+f.told(low)+" of the tank, at "+f.told(highPressure)+" it is pressed to "+f.told(high)+". The water between is what the tank gives.",
		volume, lowPressure, low, highPressure, high)
	for i, names := range [][2]string{{low, lowPressure}, {high, highPressure}} {
		x := 40 + float64(i)*170
		share := math.Min(0.95, f.val(names[0])/f.val(volume))
		top, foot := 36.0, 166.0
		at := top + (foot-top)*share
		f.hatch("cw", Box{x, at, x + 80, foot}, 8)
		f.add(box("device", "", Box{x, top, x + 80, foot}), line("device", 1.6, Point{x, at}, Point{x + 80, at}))
		f.write("air", x+40, (top+at)/2+5, "middle")
		f.number(f.told(names[0]), x+40, 28, "middle")
		f.number(f.told(names[1]), x+40, 190, "middle")
	}
	f.arrow("dim", 2, Point{136, 100}, Point{194, 100})
	f.write("pumped", 165, 88, "middle")
}

// growth is a pipe cold and hot.
func (f *figure) growth() {
	f.about(170, "A pipe grows as it warms",
		f.told("length")+" of pipe, warmed by "+f.told("change")+", grow by "+f.told("movement")+".", "length", "change", "movement")
	pipe := func(part string, y, end float64) {
		f.add(box(part, "", Box{20, y, end, y + 16}))
	}
	f.add(line("device", 3, Point{20, 24}, Point{20, 136}))
	pipe("cw", 40, 260)
	pipe("hw", 92, 286)
	f.hatch("hw", Box{260, 92, 286, 108}, 5)
	for _, x := range []float64{260, 286} {
		it := line("dim", 1, Point{x, 60}, Point{x, 128})
		it.Dash = "3 3"
		f.add(it)
	}
	f.span(Point{260, 128}, Point{286, 128})
	f.number(f.told("movement"), 280, 150, "middle")
	f.number(f.told("length"), 140, 34, "middle")
	f.number("warmer by "+f.told("change"), 140, 86, "middle")
	f.write("anchor", 26, 150, "")
}
