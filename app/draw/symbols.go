package draw

import "math"

// Signs of the trade, drawn about a centre. Each is filled with paper, so that
// the pipe under it does not show. turn says where the water goes.
type turn struct{ dx, dy float64 }

var (
	right = turn{1, 0}
	left  = turn{-1, 0}
	up    = turn{0, -1}
	down  = turn{0, 1}
)

// at is the point that lies along and across the flow from x, y.
func (t turn) at(x, y, along, across float64) Point {
	return Point{x + along*t.dx - across*t.dy, y + along*t.dy + across*t.dx}
}

// bowTie is a shut-off valve.
func bowTie(x, y float64, t turn, half, wide float64) Item {
	return shape("symbol", Paper, 1.3, t.at(x, y, -half, -wide), t.at(x, y, half, wide), t.at(x, y, half, -wide), t.at(x, y, -half, wide))
}

func shutOff(x, y float64, t turn) []Item { return []Item{bowTie(x, y, t, 6, 4.5)} }

// check is a valve that lets water through one way: a triangle against a seat.
func check(x, y float64, t turn) []Item {
	return []Item{
		shape("symbol", Paper, 1.3, t.at(x, y, -5, -5), t.at(x, y, 5, 0), t.at(x, y, -5, 5)),
		line("symbol", 1.6, t.at(x, y, 5, -5), t.at(x, y, 5, 5)),
	}
}

// reducing is a pressure reducing valve: a valve with a spring chamber on its
// stem. The chamber lies to the right of the flow where side is 1.
func reducing(x, y float64, t turn, side float64) []Item {
	chamber := []Point{t.at(x, y, -6, side*7)}
	for i := range 9 {
		a := math.Pi * float64(i) / 8
		chamber = append(chamber, t.at(x, y, -6*math.Cos(a), side*(7+5*math.Sin(a))))
	}
	return []Item{
		line("symbol", 1.3, Point{x, y}, t.at(x, y, 0, side*7)),
		shape("symbol", Paper, 1.3, chamber...),
		bowTie(x, y, t, 8, 5.5),
	}
}

func pumpSign(x, y float64, t turn) []Item {
	return []Item{
		circle("symbol", Paper, 1.4, x, y, 9),
		shape("symbol", Ink, 0, t.at(x, y, 8.5, 0), t.at(x, y, -4, -7), t.at(x, y, -4, 7)),
	}
}

// lettered is a device drawn as its letters in a box.
func lettered(x, y, halfW, halfH float64, letters string) []Item {
	box := rect("symbol", Paper, around(x, y, halfW, halfH))
	box.Stroke = 1.4
	return []Item{box, text("letters", letters, x, y+4, 11, "middle").bold()}
}

func meterSign(x, y float64) []Item {
	return []Item{circle("symbol", Paper, 1.4, x, y, 9), text("letters", "M", x, y+4, 11, "middle").bold()}
}

// strainer is a body with a slanted leg that holds the screen.
func strainer(x, y float64) []Item {
	return []Item{
		line("symbol", 1.4, Point{x - 7, y - 5}, Point{x - 7, y + 5}),
		line("symbol", 1.4, Point{x + 7, y - 5}, Point{x + 7, y + 5}),
		line("symbol", 1.4, Point{x - 3, y}, Point{x + 5, y + 9}),
		line("symbol", 1.4, Point{x + 2, y + 11.5}, Point{x + 8, y + 6.5}),
		line("symbol", 1.4, Point{x - 7, y}, Point{x + 7, y}),
	}
}

// gauge is a pressure gauge on its cock, side px to the side of the pipe.
func gauge(x, y float64, t turn) []Item {
	c := t.at(x, y, 15, 0)
	return []Item{
		line("symbol", 1.2, Point{x, y}, t.at(x, y, 9, 0)),
		circle("symbol", Paper, 1.3, c.X, c.Y, 6),
		line("symbol", 1.2, Point{c.X - 2, c.Y + 2}, Point{c.X + 3, c.Y - 3}),
	}
}

// balancing is a valve that is set once and locked: a slanted line with a knob
// through its body.
func balancing(x, y float64, t turn) []Item {
	return []Item{
		bowTie(x, y, t, 6, 4.5),
		line("symbol", 1.2, t.at(x, y, -6, -7), t.at(x, y, 6, 7)),
		circle("symbol", Ink, 0, t.at(x, y, 6, 7).X, t.at(x, y, 6, 7).Y, 1.8),
	}
}

// relief is an angle valve under a spring; its discharge runs down, open to
// the air over a funnel.
func relief(x, y, floor float64) []Item {
	return []Item{
		line("symbol", 1.2, Point{x, y}, Point{x - 8, y}, Point{x - 8, floor - 9}),
		shape("symbol", Paper, 1.2, Point{x - 8, y}, Point{x - 1, y - 4}, Point{x - 1, y + 4}),
		shape("symbol", Paper, 1.2, Point{x - 8, y}, Point{x - 12, y + 7}, Point{x - 4, y + 7}),
		line("symbol", 1.2, Point{x - 8, y}, Point{x - 11, y - 3}, Point{x - 5, y - 5}, Point{x - 11, y - 7}, Point{x - 8, y - 10}),
		line("symbol", 1.2, Point{x - 13, floor - 6}, Point{x - 8, floor}, Point{x - 3, floor - 6}),
	}
}

// expansion is an expansion tank with its membrane, hung under a pipe.
func expansion(x, y float64) []Item {
	return []Item{
		line("symbol", 1.2, Point{x, y}, Point{x, y + 6}),
		circle("symbol", Paper, 1.3, x, y+13, 7),
		line("symbol", 1.2, Point{x - 7, y + 13}, Point{x - 3, y + 15}, Point{x + 3, y + 11}, Point{x + 7, y + 13}),
	}
}

// drain is a drain valve under the foot of a riser.
func drain(x, y float64) []Item {
	return []Item{
		line("symbol", 1.2, Point{x, y}, Point{x, y + 11}),
		shape("symbol", Paper, 1.1, Point{x - 2.5, y + 3}, Point{x + 2.5, y + 9}, Point{x - 2.5, y + 9}, Point{x + 2.5, y + 3}),
	}
}

// arrow is the direction of flow, on the pipe.
func arrow(part string, x, y float64, t turn) Item {
	return shape(part, Ink, 0, t.at(x, y, 5, 0), t.at(x, y, -4, -3.5), t.at(x, y, -4, 3.5))
}

// tee is where pipes join; pipes that only cross have none.
func tee(part string, x, y float64) Item { return circle(part, Ink, 0, x, y, 2.4) }
