package draw

import (
	"slices"

	"riserwork/problems/devices"
)

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
		s.tankBehind(o.run.Stand, first, each, y)
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
