package draw

import (
	"math"
	"strconv"
	"strings"
)

// water draws a standing column of water between two heights.
func (f *figure) water(x, top, foot float64) {
	b := Box{x, top, x + 34, foot}
	f.hatch("cw", b, 9)
	f.add(line("cw", 2, Point{x, top - 12}, Point{x, foot}, Point{x + 34, foot}, Point{x + 34, top - 12}))
}

// dial is a gauge at the end of a short pipe to the right.
func (f *figure) dial(x, y float64) {
	f.add(line("cw", 2, Point{x, y}, Point{x + 20, y}), circle("device", Paper, 1.6, x+32, y, 12),
		line("device", 1.6, Point{x + 32, y}, Point{x + 39, y - 7}))
}

// column is water open at its top over a gauge at its foot.
func (f *figure) column(height, pressure string) {
	f.about(220, "A column of water over a gauge",
		"The water stands "+f.told(height)+" above the gauge, which reads "+f.told(pressure)+". Only the height counts, not the width of the pipe.", height, pressure)
	f.water(110, 30, 190)
	f.span(Point{86, 30}, Point{86, 190})
	f.number(f.told(height), 76, 114, "end")
	f.dial(144, 184)
	f.number(f.told(pressure), 196, 189, "")
	f.write("no pressure at the surface", 156, 34, "")
	f.write("all of it on the gauge", 196, 207, "")
}

// gauges is a pipe full of water with a gauge at each end of a height.
func (f *figure) gauges(height, upper, lower string) {
	f.about(210, "One pipe, two places",
		"The lower place is "+f.told(height)+" below the upper. Above it is "+f.told(upper)+", below "+f.told(lower)+": the column between them is the difference.", upper, height, lower)
	f.add(box("cw", "", Box{116, 14, 134, 196}))
	f.hatch("cw", Box{116, 14, 134, 196}, 9)
	f.dial(134, 36)
	f.dial(134, 176)
	f.span(Point{92, 36}, Point{92, 176})
	f.number(f.told(height), 82, 110, "end")
	f.number(f.told(upper), 188, 41, "")
	f.number(f.told(lower), 188, 181, "")
	f.arrow("dim", 1.4, Point{236, 60}, Point{236, 150})
	f.write("down: more", 248, 110, "")
}

// mostFloors is how many floors a picture draws before it leaves some out.
const mostFloors = 7

// floors counts gaps against floors: a fence with its posts.
func (f *figure) floors(from, to float64, gaps string) {
	n := int(to-from) + 1
	shown := min(max(n, 1), mostFloors)
	f.about(float64(40+shown*26), "Floors and the gaps between them",
		"From floor "+whole(from)+" to floor "+whole(to)+" there are "+strconv.Itoa(n)+" floors and "+f.told(gaps)+" gaps between them.", gaps)
	f.rows = append(f.rows, []string{"floors, both ends counted", strconv.Itoa(n)})
	y := func(i int) float64 { return 20 + float64(shown-1-i)*26 }
	for i := range shown {
		name := whole(from + float64(i))
		if shown < n && i == shown-2 {
			name = "…"
		}
		if i == shown-1 {
			name = whole(to)
		}
		f.add(line("device", 3, Point{90, y(i)}, Point{200, y(i)}))
		f.number(name, 80, y(i)+5, "end")
		if i > 0 {
			f.span(Point{146, y(i-1) - 2}, Point{146, y(i) + 2})
		}
	}
	f.number(strconv.Itoa(n)+" floors", 218, 32, "")
	f.number(f.told(gaps)+" gaps", 218, 54, "")
	f.write("measure the gaps,", 218, 78, "")
	f.write("not the floors", 218, 95, "")
	f.height = math.Max(f.height, 108)
}

// reach is the street pressure used up by height, down to what must be left.
func (f *figure) reach(street, least, reach string) {
	f.about(230, "How high the pressure reaches",
		"The pressure begins at "+f.told(street)+" and falls with height. At "+f.told(reach)+" it is down to "+f.told(least)+", which must be left.", street, least, reach)
	const x0, y0, top = 96.0, 196.0, 40.0
	share := math.Min(0.85, math.Max(0.15, f.val(least)/f.val(street)))
	end := x0 + 180*share
	f.add(shape("under", "", 0, Point{x0, top - 14}, Point{end, top - 14}, Point{end, y0}, Point{x0, y0}),
		line("device", 1.6, Point{x0, top - 14}, Point{x0, y0}, Point{x0 + 210, y0}),
		line("cw", 2.6, Point{x0 + 180, y0}, Point{end, top}))
	dash := line("limit", 1.4, Point{end, top - 14}, Point{end, y0})
	dash.Dash = "5 4"
	f.add(dash, circle("cw", Ink, 0, end, top, 4))
	f.span(Point{x0 - 18, top}, Point{x0 - 18, y0})
	f.number(f.told(reach), x0-26, 122, "end")
	f.number(f.told(least), end, 220, "middle")
	if end > x0+120 {
		f.number(f.told(street), 352, y0-8, "end")
	} else {
		f.number(f.told(street), x0+180, 220, "middle")
	}
	f.write("pressure", 352, y0-22, "end")
	f.write("must be left", end+10, top-2, "")
}

// stack is a pressure as a bar that its parts fill.
func (f *figure) stack(sum string, parts ...string) {
	f.about(float64(56+len(parts)*30), "Where the pressure goes",
		f.told(sum)+" is shared out: the parts add up to the whole.", append([]string{sum}, parts...)...)
	const x0, wide = 12.0, 200.0
	whole := f.val(sum)
	f.add(box("cw", "", Box{x0, 14, x0 + wide, 32}))
	f.hatch("cw", Box{x0, 14, x0 + wide, 32}, 9)
	f.number(f.told(sum)+" in all", x0+wide+12, 28, "")
	x := x0
	for i, name := range parts {
		y := 46 + float64(i)*30
		w := math.Max(2, wide*math.Max(0, f.val(name))/whole)
		f.add(box("device", Paper, Box{x, y, x + w, y + 18}))
		if i%2 == 0 {
			f.hatch("device", Box{x, y, x + w, y + 18}, 6)
		}
		f.number(f.told(name), x0+wide+12, y+14, "")
		f.write(strings.ReplaceAll(name, "_", " "), 352, y+14, "end")
		x += w
	}
}
