package draw

import (
	"slices"
	"strconv"

	"riserwork/problems/devices"
)

// rowsOf breaks the main run into rows, so that as few side runs as can be go
// on in another row, and then so that the rows are few and even.
func rowsOf(a *devices.Arrangement) []stretch {
	n := len(a.Runs[0].Stand)
	best, least := []int{0, n}, 1<<30
	var try func(ends []int)
	try = func(ends []int) {
		from := ends[len(ends)-1]
		if from == n {
			if c := costOf(a, ends); c < least {
				best, least = slices.Clone(ends), c
			}
			return
		}
		for to := from + 1; to <= min(n, from+perRow); to++ {
			try(append(ends, to))
		}
	}
	try([]int{0})
	var rows []stretch
	for i := range len(best) - 1 {
		rows = append(rows, stretch{from: best[i], to: best[i+1]})
	}
	return rows
}

// costOf weighs the ends of rows.
func costOf(a *devices.Arrangement, ends []int) int {
	cost := 6 * len(ends)
	for i := range len(ends) - 1 {
		long := ends[i+1] - ends[i]
		cost += (perRow - long) * (perRow - long) / 4
		for _, r := range a.Runs[1:] {
			// Room for what ends beyond its row.
			if r.Join < 0 && r.After+1 > ends[i] && r.After+1 <= ends[i+1] && r.After+1-ends[i]+len(r.Stand) > perRow {
				cost += 3
			}
		}
	}
	for _, r := range a.Runs[1:] {
		if r.Join < 0 || r.After < 0 {
			continue
		}
		for _, e := range ends[1 : len(ends)-1] {
			if r.After+1 < e && e < r.Join {
				cost += 40
			}
		}
	}
	return cost
}

// gapX is where a gap of a row lies.
func (s *sheet) gapX(r stretch, gap int) float64 {
	return detailLeft + float64(gap-r.from)*s.pitch
}

// row draws one row of the main run with its side runs.
func (s *sheet) row(i int) {
	main := s.a.Runs[0]
	r := &s.rows[i]
	over, under := s.sides(i)
	lanes := 0
	for _, o := range over {
		lanes = max(lanes, o.lane+1)
	}
	tops := make([]float64, lanes) // y of each lane, the lowest first
	for lane := lanes - 1; lane >= 0; lane-- {
		marks := 0.0
		for _, o := range over {
			if o.lane == lane && o.stands {
				marks = max(marks, linesOf(o.run.Stand, s.pitch))
			}
		}
		s.y += 46
		tops[lane] = s.y
		s.y += 32 + 12*marks
	}
	s.y += 36
	r.y = s.y
	s.mainPipe(i, over, under)
	for _, o := range over {
		s.over(o, tops[o.lane], r.y)
	}
	for _, o := range over {
		s.name(o.run, o.x0, o.x1, tops[o.lane])
	}
	stations := main.Stand[r.from:r.to]
	s.tankBehind(stations, s.gapX(*r, r.from)+s.pitch/2, s.pitch, r.y)
	for k := range stations {
		s.station(main, r.from+k, s.gapX(*r, r.from+k)+s.pitch/2, r.y)
	}
	if s.opt.Gaps {
		for gap := r.from; gap <= r.to; gap++ {
			if gap > r.from || i == 0 {
				s.gap(gap, s.gapX(*r, gap), r.y)
			}
		}
	}
	s.y += 36 + 12*linesOf(stations, s.pitch)
	for _, u := range under {
		s.y += 40
		s.under(u, r.y, s.y)
		s.y += 34 + 12*linesOf(u.run.Stand, s.pitch)
	}
	s.ends(i)
}

// mainPipe draws the pipe of a row with its arrows and tees.
func (s *sheet) mainPipe(i int, over, under []side) {
	r := s.rows[i]
	x0, x1 := 6.0, s.gapX(r, r.to)+10
	if i > 0 {
		s.goesOn(x0+6, r.y, string(rune('A'+i-1)))
		x0 = 20
	}
	if i < len(s.rows)-1 {
		s.goesOn(x1+4, r.y, string(rune('A'+i)))
	} else {
		s.pipes = append(s.pipes, arrow("main", x1+4, r.y, right))
	}
	s.pipe(Point{x0, r.y}, Point{x1, r.y})
	tees := map[float64]bool{}
	for _, o := range slices.Concat(over, under) {
		if o.wire() {
			continue
		}
		if o.leaves {
			tees[o.x0] = true
		}
		if o.joins {
			tees[o.x1] = true
		}
	}
	for gap := r.from; gap <= r.to; gap++ {
		x := s.gapX(r, gap)
		switch {
		case tees[x]:
			s.pipes = append(s.pipes, tee("main", x, r.y))
		case gap == r.from && i == 0, gap == (r.from+r.to+1)/2:
			s.pipes = append(s.pipes, arrow("main", x, r.y, right))
		}
	}
}

// goesOn is the letter of a place where a pipe goes on in another row.
func (s *sheet) goesOn(x, y float64, letter string) {
	s.items = append(s.items, circle("key", Paper, 1.2, x, y, 8), text("key", letter, x, y+4, small, "middle").bold())
	s.take(around(x, y, 8, 8), "")
}

func (s *sheet) pipe(points ...Point) {
	s.pipes = append(s.pipes, line("main", 2.4, points...))
	for i := range points[1:] {
		s.take(spread(points[i:i+2]).grow(2), "")
	}
}

// write puts a text at the first place that is free.
func (s *sheet) write(words string, at []Point, anchor string) {
	for _, p := range at {
		it := text("run", words, p.X, p.Y, small, anchor)
		if b := it.Bounds(); s.free(b, "") && b.Within(Box{0, 0, width, 1e6}) {
			s.items = append(s.items, it)
			s.take(b, "")
			s.y = max(s.y, p.Y+6)
			return
		}
	}
	// Nowhere is free: a line of its own.
	s.y += 12
	it := text("run", words, 6, s.y, small, "")
	s.items = append(s.items, it)
	s.take(it.Bounds(), "")
	s.y += 4
}

// ends says where the main run comes from and where it goes.
func (s *sheet) ends(i int) {
	main, r := s.a.Runs[0], s.rows[i]
	if i == 0 && main.From != "" {
		words := "from " + main.From
		s.write(words, []Point{{4, r.y - 32}, {4, r.y + 46}, {4, r.y - 14}}, "")
	}
	if i == len(s.rows)-1 && main.To != "" {
		words := "to " + main.To
		x := min(width-4, s.gapX(r, r.to)+22+textWidth(words, small, false))
		s.write(words, []Point{{x, r.y + 4}, {width - 4, r.y - 32}, {width - 4, r.y + 46}, {x, r.y - 14}}, "end")
	}
}

// inTank are the devices that stand in the wall of a storage tank.
var inTank = []string{"dip-tube", "tank-anode", "temperature-relief", "thermostat"}

// tankBehind draws the tank behind the devices that stand in it; the first of
// them all stands at first, the others each on.
func (s *sheet) tankBehind(stations []devices.Station, first, each, y float64) {
	from, to := -1, -1
	for k, st := range stations {
		if slices.Contains(inTank, st.Device) {
			if from < 0 {
				from = k
			}
			to = k
		}
	}
	if from < 0 {
		return
	}
	b := Box{first + each*float64(from) - 18, y - 4, first + each*float64(to) + 18, y + 16}
	shell := rect("tank", "", b)
	shell.Stroke, shell.R = 1.4, 8
	s.pipes = append(s.pipes, shell)
}

// Sign is the sign of a device by itself, on a piece of its pipe.
func Sign(d *devices.Device) *Scene {
	const wide, high = 96, 64
	pipe := line("main", 2.4, Point{6, 38}, Point{wide - 6, 38})
	items := []Item{rect("paper", Paper, Box{0, 0, wide, high}), pipe, arrow("main", wide-8, 38, right)}
	items = append(items, group("device", "", "", deviceSign(d.ID, wide/2, 38, right)...))
	return &Scene{Width: wide, Height: high, Title: "Sign of the " + d.Name, Desc: "As drawings show it.", Items: items,
		Table: [][]string{{"Place", "Device"}, {strconv.Itoa(1), d.Name}}}
}
