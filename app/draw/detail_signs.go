package draw

import (
	"math"
	"strings"
)

// deviceSigns are the signs of the devices about a place on a pipe that runs
// across the sheet. What stands on a tee is drawn above the pipe, drains below
// it. Devices that the trade draws alike share a sign. Common practice, no
// source.
var deviceSigns = map[string]func(x, y float64, t turn) []Item{
	"service-valve":        boxedValve,
	"restraint":            rodded,
	"service-anode":        anodeSign,
	"wall-sleeve":          sleeveSign,
	"main-valve":           shutOff,
	"entry-strainer":       strainerSign,
	"meter":                arrowed(func(x, y float64, _ turn) []Item { return meterSign(x, y) }),
	"meter-bypass":         shutOff,
	"bonding-jumper":       clamps,
	"test-tee":             plugged,
	"backflow-preventer":   arrowed(boxed("RP", 12)),
	"double-check":         arrowed(boxed("DC", 12)),
	"test-cocks":           cocks,
	"air-gap-drain":        funnel,
	"pressure-gauge":       func(x, y float64, _ turn) []Item { return gauge(x, y, up) },
	"drain-port":           func(x, y float64, _ turn) []Item { return drain(x, y) },
	"low-suction-switch":   onStem("LS"),
	"pump":                 pumpSign,
	"check-valve":          check,
	"flexible-connector":   flexible,
	"pressure-switch":      onStem("PS"),
	"pressure-tank":        tankSign,
	"relief-valve":         reliefSign(""),
	"pump-bypass":          check,
	"isolating-valve":      shutOff,
	"riser-valve":          shutOff,
	"riser-drain":          func(x, y float64, _ turn) []Item { return drain(x, y) },
	"air-vent":             onStem("AV"),
	"riser-anchor":         anchorSign,
	"expansion-loop":       loopSign,
	"fire-stop":            fireStop,
	"reducing-valve":       arrowed(func(x, y float64, t turn) []Item { return reducing(x, y, t, -t.dx) }),
	"small-reducing-valve": arrowed(func(x, y float64, t turn) []Item { return reducing(x, y, t, -t.dx) }),
	"reducing-bypass":      shutOff,
	"feed-check":           check,
	"expansion-tank":       func(x, y float64, _ turn) []Item { return hung(x, y) },
	"vacuum-relief":        onStem("VR"),
	"dip-tube":             dipTube,
	"tank-anode":           anodeRod,
	"temperature-relief":   reliefSign("T&P"),
	"relief-discharge":     dischargeSign,
	"drain-cock":           func(x, y float64, _ turn) []Item { return drain(x, y) },
	"dielectric-union":     unionSign,
	"heat-trap":            trapSign,
	"thermostat":           onStem("TS"),
	"mixing-valve":         boxed("MV", 11),
	"mixing-checks":        check,
	"thermometer":          onStem("T"),
	"circulator":           pumpSign,
	"aquastat":             onStem("AQ"),
	"return-check":         check,
	"balancing-valve":      balancing,
	"insulation":           covered,
	"fixture-stop":         stopSign,
	"arrester":             arresterSign,
	"vacuum-breaker":       boxed("VB", 11),
	"fixture-limiter":      boxed("PB", 11),
}

// deviceSign is the sign of a device; one that has none of its own is a box
// with its first letters.
func deviceSign(id string, x, y float64, t turn) []Item {
	if draw, ok := deviceSigns[id]; ok {
		return draw(x, y, t)
	}
	letters := ""
	for _, word := range strings.Split(id, "-") {
		if word != "" && len(letters) < 2 {
			letters += strings.ToUpper(word[:1])
		}
	}
	return arrowed(boxed(letters, 11))(x, y, t)
}

func boxed(letters string, half float64) func(x, y float64, t turn) []Item {
	return func(x, y float64, _ turn) []Item { return lettered(x, y, half, 8, letters) }
}

// arrowed puts the arrow of the body above a sign that shows no direction.
func arrowed(sign func(x, y float64, t turn) []Item) func(x, y float64, t turn) []Item {
	return func(x, y float64, t turn) []Item {
		items := sign(x, y, t)
		top := y - 18
		return append(items, line("symbol", 1.4, t.at(x, top, -7, 0), t.at(x, top, 3, 0)), arrow("symbol", x+4*t.dx, top, t))
	}
}

// onStem is a device on a tee: its letters in a circle over a stem.
func onStem(letters string) func(x, y float64, t turn) []Item {
	return func(x, y float64, _ turn) []Item {
		r := 8.5
		if len(letters) > 1 {
			r = 10
		}
		return []Item{
			line("symbol", 1.3, Point{x, y}, Point{x, y - 9}),
			circle("symbol", Paper, 1.3, x, y-9-r, r),
			text("letters", letters, x, y-5-r, 11, "middle").bold(),
		}
	}
}

func boxedValve(x, y float64, t turn) []Item {
	frame := rect("symbol", Paper, around(x, y, 10, 8))
	frame.Stroke = 1.2
	return append([]Item{frame, line("symbol", 1.2, Point{x, y - 8}, Point{x, y - 20}), line("symbol", 1.6, Point{x - 5, y - 20}, Point{x + 5, y - 20})}, shutOff(x, y, t)...)
}

// rodded is a joint held by rods through lugs on both sides of it.
func rodded(x, y float64, _ turn) []Item {
	var items []Item
	for _, s := range []float64{-1, 1} {
		items = append(items,
			line("symbol", 1.4, Point{x - 12, y + 8*s}, Point{x + 12, y + 8*s}),
			line("symbol", 1.8, Point{x + 9*s, y - 11}, Point{x + 9*s, y + 11}))
	}
	return items
}

func anodeSign(x, y float64, _ turn) []Item {
	wire := line("symbol", 1.2, Point{x, y}, Point{x, y - 12})
	wire.Dash = "3 2"
	rod := rect("symbol", Ink, around(x, y-17, 11, 4))
	return []Item{wire, rod}
}

func clamps(x, y float64, _ turn) []Item { return boxed("B", 8)(x, y, right) }

func sleeveSign(x, y float64, _ turn) []Item {
	items := wallParts(x, y, 5, 22)
	return append(items, line("symbol", 1.4, Point{x - 10, y - 6}, Point{x + 10, y - 6}), line("symbol", 1.4, Point{x - 10, y + 6}, Point{x + 10, y + 6}))
}

// wallParts are the wall or floor above and below a pipe that goes through it.
func wallParts(x, y, half, high float64) []Item {
	var items []Item
	for _, b := range []Box{{x - half, y - high, x + half, y - 6}, {x - half, y + 6, x + half, y + 14}} {
		it := rect("symbol", Paper, b)
		it.Stroke = 1.1
		items = append(items, it)
		for h := b.Y0 + 4; h < b.Y1; h += 4 {
			items = append(items, line("symbol", 0.7, Point{b.X0, h}, Point{b.X1, h - 4}))
		}
	}
	return items
}

func fireStop(x, y float64, _ turn) []Item {
	items := wallParts(x, y, 6, 20)
	for _, s := range []float64{-1, 1} {
		it := rect("symbol", Ink, around(x, y+4.5*s, 6, 2.5))
		items = append(items, it)
	}
	return items
}

func strainerSign(x, y float64, t turn) []Item {
	return arrowed(func(x, y float64, _ turn) []Item { return strainer(x, y) })(x, y, t)
}

func plugged(x, y float64, _ turn) []Item {
	return []Item{line("symbol", 1.6, Point{x, y}, Point{x, y - 14}), line("symbol", 1.6, Point{x - 5, y - 14}, Point{x + 5, y - 14}), tee("symbol", x, y)}
}

func cocks(x, y float64, _ turn) []Item {
	var items []Item
	for _, dx := range []float64{-8, 0, 8} {
		items = append(items, line("symbol", 1.3, Point{x + dx, y}, Point{x + dx, y - 13}), line("symbol", 1.3, Point{x + dx - 3, y - 8}, Point{x + dx + 3, y - 8}))
	}
	return items
}

// funnel is an open drain under the end of a pipe, with air between.
func funnel(x, y float64, _ turn) []Item {
	return []Item{
		line("symbol", 1.6, Point{x, y - 4}, Point{x, y + 3}),
		line("symbol", 1.5, Point{x - 8, y + 8}, Point{x, y + 16}, Point{x + 8, y + 8}),
	}
}

func flexible(x, y float64, _ turn) []Item {
	wave := []Point{{x - 9, y}}
	for i := range 17 {
		wave = append(wave, Point{x - 8 + float64(i), y - 4*math.Sin(float64(i)*math.Pi/4)})
	}
	return []Item{
		rect("symbol", Paper, around(x, y, 9, 6)),
		line("symbol", 1.5, append(wave, Point{x + 9, y})...),
		line("symbol", 1.6, Point{x - 10, y - 6}, Point{x - 10, y + 6}), line("symbol", 1.6, Point{x + 10, y - 6}, Point{x + 10, y + 6}),
	}
}

func tankSign(x, y float64, _ turn) []Item {
	shell := rect("symbol", Paper, Box{x - 9, y - 26, x + 9, y - 4})
	shell.Stroke, shell.R = 1.4, 8
	return []Item{line("symbol", 1.3, Point{x, y}, Point{x, y - 4}), shell, line("symbol", 1.2, Point{x - 9, y - 14}, Point{x - 3, y - 12}, Point{x + 3, y - 16}, Point{x + 9, y - 14})}
}

// hung is an expansion tank over its pipe.
func hung(x, y float64) []Item {
	return []Item{
		line("symbol", 1.2, Point{x, y}, Point{x, y - 8}),
		circle("symbol", Paper, 1.3, x, y-17, 9),
		line("symbol", 1.2, Point{x - 9, y - 17}, Point{x - 3, y - 15}, Point{x + 3, y - 19}, Point{x + 9, y - 17}),
	}
}

// reliefSign is an angle valve under a spring on a tee.
func reliefSign(letters string) func(x, y float64, t turn) []Item {
	return func(x, y float64, _ turn) []Item {
		c := y - 12
		items := []Item{
			line("symbol", 1.3, Point{x, y}, Point{x, c}),
			shape("symbol", Paper, 1.2, Point{x, c}, Point{x - 4, c + 7}, Point{x + 4, c + 7}),
			shape("symbol", Paper, 1.2, Point{x, c}, Point{x + 8, c - 4}, Point{x + 8, c + 4}),
			line("symbol", 1.2, Point{x, c}, Point{x - 3, c - 3}, Point{x + 3, c - 5}, Point{x - 3, c - 8}, Point{x + 3, c - 10}, Point{x, c - 13}),
		}
		if letters != "" {
			items = append(items, text("letters", letters, x-8, c+1, 11, "end").bold())
		}
		return items
	}
}

func anchorSign(x, y float64, _ turn) []Item {
	return []Item{
		line("symbol", 2, Point{x - 7, y - 7}, Point{x + 7, y + 7}), line("symbol", 2, Point{x - 7, y + 7}, Point{x + 7, y - 7}),
		line("symbol", 1.4, Point{x - 9, y + 12}, Point{x + 9, y + 12}), line("symbol", 1.4, Point{x - 9, y - 12}, Point{x + 9, y - 12}),
	}
}

func loopSign(x, y float64, _ turn) []Item {
	return []Item{rect("symbol", Paper, around(x, y, 9, 3)), line("symbol", 2.2, Point{x - 10, y}, Point{x - 10, y - 20}, Point{x + 10, y - 20}, Point{x + 10, y})}
}

func trapSign(x, y float64, _ turn) []Item {
	return []Item{rect("symbol", Paper, around(x, y, 8, 3)), line("symbol", 2.2, Point{x - 9, y}, Point{x - 9, y - 12}, Point{x, y - 12}, Point{x, y + 9}, Point{x + 9, y + 9}, Point{x + 9, y})}
}

func dipTube(x, y float64, _ turn) []Item {
	return []Item{line("symbol", 1.4, Point{x - 3, y}, Point{x - 3, y + 15}), line("symbol", 1.4, Point{x + 3, y}, Point{x + 3, y + 15})}
}

func anodeRod(x, y float64, _ turn) []Item {
	return []Item{rect("symbol", Ink, Box{x - 5, y - 5, x + 5, y - 2}), rect("symbol", Ink, Box{x - 2, y - 2, x + 2, y + 15})}
}

// dischargeSign is an elbow that turns the discharge down.
func dischargeSign(x, y float64, _ turn) []Item {
	return []Item{line("symbol", 2.2, Point{x, y - 7}, Point{x, y + 7}), line("symbol", 2.2, Point{x - 6, y}, Point{x + 6, y}), arrow("symbol", x, y+10, down)}
}

func unionSign(x, y float64, _ turn) []Item {
	gap := rect("symbol", Paper, around(x, y, 2, 6))
	return []Item{gap,
		line("symbol", 1.5, Point{x - 6, y - 5}, Point{x - 6, y + 5}), line("symbol", 1.5, Point{x + 6, y - 5}, Point{x + 6, y + 5}),
		line("symbol", 2, Point{x - 2, y - 8}, Point{x - 2, y + 8}), line("symbol", 2, Point{x + 2, y - 8}, Point{x + 2, y + 8})}
}

func covered(x, y float64, _ turn) []Item {
	var items []Item
	for _, s := range []float64{-1, 1} {
		items = append(items, line("symbol", 1.2, Point{x - 14, y + 7*s}, Point{x + 14, y + 7*s}))
		for dx := -12.0; dx <= 8; dx += 5 {
			items = append(items, line("symbol", 0.8, Point{x + dx, y + 7*s}, Point{x + dx + 4, y + 3*s}))
		}
	}
	return items
}

// stopSign is a stop with the supply to its fixture.
func stopSign(x, y float64, t turn) []Item {
	return append(shutOff(x, y, t), line("symbol", 1.3, Point{x, y}, Point{x, y - 16}), line("symbol", 1.3, Point{x - 5, y - 16}, Point{x + 5, y - 16}))
}

func arresterSign(x, y float64, _ turn) []Item {
	body := rect("symbol", Paper, Box{x - 6, y - 27, x + 6, y - 6})
	body.Stroke, body.R = 1.4, 3
	return []Item{line("symbol", 1.3, Point{x, y}, Point{x, y - 6}), body, line("symbol", 2.2, Point{x - 6, y - 13}, Point{x + 6, y - 13})}
}
