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

// side is a side run, or the part of one, that lies over or under a row.
type side struct {
	run            devices.Run
	x0, x1         float64 // where it leaves the row and where it joins it
	leaves, joins  bool    // false: it comes from elsewhere, or goes there
	stands         bool    // its devices stand on this part
	mark           string  // letter of the place where it goes on
	lane           int
	comesIn, goOut bool // it goes on in another row
}

// gapX is where a gap of a row lies.
func (s *sheet) gapX(r stretch, gap int) float64 {
	return detailLeft + float64(gap-r.from)*s.pitch
}

// ported are the devices that a side run joins at a port of their own.
var ported = []string{"mixing-valve", "fixture-limiter"}

// joinX is where a side run comes down to a row: to the pipe ahead of a
// device, or to the device itself.
func (s *sheet) joinX(r stretch, to int) float64 {
	x := s.gapX(r, to)
	if to < r.to && slices.Contains(ported, s.a.Runs[0].Stand[to].Device) {
		x += s.pitch / 2
	}
	return x
}

// sides are the side runs over and under a row.
func (s *sheet) sides(i int) (over, under []side) {
	r := s.rows[i]
	last := s.rows[len(s.rows)-1]
	in := func(gap int, end bool) bool { // the row a gap belongs to, at its start or its end
		if end {
			return gap > r.from && gap <= r.to || r.from == 0 && gap == 0
		}
		return gap >= r.from && gap < r.to || r == last && gap == r.to
	}
	for _, run := range s.a.Runs[1:] {
		from, to := run.After+1, min(run.Join, len(s.a.Runs[0].Stand))
		if run.Join < 0 {
			if in(from, true) {
				under = append(under, side{run: run, x0: s.gapX(r, from), leaves: true, stands: true})
			}
			continue
		}
		starts, ends := in(from, false), in(to, true)
		if run.After < 0 {
			if ends {
				over = append(over, side{run: run, x0: 6, x1: s.joinX(r, to), joins: true, stands: true})
			}
			continue
		}
		// A gap at the end of a row is the start of the next.
		if ends && from == r.from {
			starts = true
		}
		switch {
		case starts && ends:
			over = append(over, side{run: run, x0: s.gapX(r, from), x1: s.joinX(r, to), leaves: true, joins: true, stands: true})
		case starts:
			over = append(over, side{run: run, x0: s.gapX(r, from), x1: width - 12, leaves: true, goOut: true, stands: r.to-from >= len(run.Stand), mark: s.letter(run.Name)})
		case ends:
			onFirst := false
			for _, other := range s.rows {
				if from >= other.from && from < other.to {
					onFirst = other.to-from >= len(run.Stand)
				}
			}
			over = append(over, side{run: run, x0: 12, x1: s.joinX(r, to), joins: true, comesIn: true, stands: !onFirst, mark: s.letter(run.Name)})
		}
	}
	slices.SortStableFunc(over, func(a, b side) int { return int(a.x1 - a.x0 - b.x1 + b.x0) })
	for j := range over {
		for lane := 0; ; lane++ {
			if !slices.ContainsFunc(over[:j], func(o side) bool { return o.lane == lane && o.x0 < over[j].x1 && over[j].x0 < o.x1 }) {
				over[j].lane = lane
				break
			}
		}
	}
	for j := range under {
		under[j].lane = j
	}
	return over, under
}

// letter is that of the place where a pipe goes on in another row.
func (s *sheet) letter(run string) string {
	i := slices.IndexFunc(s.a.Runs, func(r devices.Run) bool { return r.Name == run })
	return string(rune('N' + i))
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
	s.tankBehind(stations, r.y)
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

// wire reports whether a run is a wire and no pipe.
func (o side) wire() bool {
	return len(o.run.Stand) == 1 && o.run.Stand[0].Device == "bonding-jumper"
}

// over draws a side run above its row.
func (s *sheet) over(o side, y, main float64) {
	points := []Point{{o.x0, y}, {o.x1, y}}
	if o.leaves {
		points = append([]Point{{o.x0, main}}, points...)
	}
	if o.joins {
		points = append(points, Point{o.x1, main})
	}
	s.pipe(points...)
	if o.wire() {
		s.pipes[len(s.pipes)-1].Stroke = 1.4
		s.pipes[len(s.pipes)-1].Dash = "5 3"
	}
	x0, x1 := o.x0, o.x1
	if o.comesIn {
		s.goesOn(x0, y, o.mark)
	}
	if o.goOut {
		s.goesOn(x1, y, o.mark)
	}
	if !o.joins || o.goOut {
		x1 -= 10
	} else if !o.wire() {
		s.pipes = append(s.pipes, arrow("main", o.x1, (y+main)/2, down))
	}
	if o.stands {
		each := (x1 - x0) / float64(len(o.run.Stand)+1)
		if n := float64(len(o.run.Stand)); each < 44 && x1-x0 >= 44*(n-1) {
			each = 44
		}
		first := (x0+x1)/2 - each*float64(len(o.run.Stand)-1)/2
		for k := range o.run.Stand {
			s.station(o.run, k, first+each*float64(k), y)
		}
	}
}

// under draws a side run that ends, below its row.
func (s *sheet) under(o side, main, y float64) {
	step := max(46, min(s.pitch, 56))
	long := step * float64(len(o.run.Stand))
	x := o.x0
	points := []Point{{x, main}, {x, y}}
	if x+long > detailRight {
		x = max(10, detailRight-long)
		mid := y - 30
		points = []Point{{o.x0, main}, {o.x0, mid}, {x, mid}, {x, y}}
	}
	end := x + long
	if o.run.To != "" {
		end += 8
	}
	s.pipe(append(points, Point{end - step/2, y})...)
	if o.run.To != "" {
		s.pipe(Point{end - step/2, y}, Point{end, y})
		s.pipes = append(s.pipes, arrow("main", end, y, right))
	}
	for k := range o.run.Stand {
		s.station(o.run, k, x+step*(float64(k)+0.5), y)
	}
	s.name(o.run, x, end, y)
	if o.run.To != "" {
		s.write("to "+o.run.To, []Point{{end + 8, y + 4}, {end - 4, y - 12}, {x + 6, y + 40}}, "")
	}
}

// name writes the name of a side run where there is room.
func (s *sheet) name(r devices.Run, x0, x1, y float64) {
	words := r.Name
	if r.From != "" {
		words += ", from " + r.From
	}
	w := textWidth(words, small, false)
	var at []Point
	for _, up := range []float64{-6, -33, 16, -20} {
		for _, x := range []float64{x0 + 6, x1 - w - 4, (x0 + x1 - w) / 2, x1 + 6, x0 - w - 6} {
			if x > 2 && x+w < width-2 {
				at = append(at, Point{x, y + up})
			}
		}
	}
	s.write(words, at, "")
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

// tankBehind draws the tank behind the devices that stand in it.
func (s *sheet) tankBehind(stations []devices.Station, y float64) {
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
	b := Box{detailLeft + float64(from)*s.pitch + 4, y - 4, detailLeft + float64(to+1)*s.pitch - 4, y + 16}
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
