package draw

import (
	"slices"
	"strconv"
	"strings"

	"riserwork/problems/devices"
)

// DetailOptions say what a drawing of an arrangement shows.
type DetailOptions struct {
	Title string // in place of the arrangement's own
	Gaps  bool   // the gaps of the main run can be pointed at, and not the devices
}

// Pick is what can be pointed at in a drawing of an arrangement.
type Pick struct {
	Key  string // of its item
	Says string // in words
	Spot devices.Spot
}

// Picks are the devices of a drawing in the order of their numbers, or the
// gaps of its main run along the flow.
func Picks(a *devices.Arrangement, gaps bool) []Pick {
	var list []Pick
	if gaps {
		main := a.Runs[0]
		for at := range len(main.Stand) + 1 {
			list = append(list, Pick{gapKey(main.Name, at), gapSays(main, at), devices.Spot{Run: main.Name, At: at}})
		}
		return list
	}
	n := 0
	for _, r := range a.Runs {
		for at, s := range r.Stand {
			n++
			list = append(list, Pick{stationKey(r.Name, at), strconv.Itoa(n) + " " + nameOf(s), devices.Spot{Run: r.Name, At: at}})
		}
	}
	return list
}

func stationKey(run string, at int) string { return "station:" + run + ":" + strconv.Itoa(at) }
func gapKey(run string, at int) string     { return "gap:" + run + ":" + strconv.Itoa(at) }

func gapSays(r devices.Run, at int) string {
	switch {
	case at == 0:
		return "ahead of 1 " + nameOf(r.Stand[0])
	case at == len(r.Stand):
		return "behind " + strconv.Itoa(at) + " " + nameOf(r.Stand[at-1])
	}
	return "between " + strconv.Itoa(at) + " " + nameOf(r.Stand[at-1]) + " and " + strconv.Itoa(at+1) + " " + nameOf(r.Stand[at])
}

func nameOf(s devices.Station) string {
	d, ok := devices.ByID(s.Device)
	if !ok {
		return s.Device
	}
	return d.Name
}

// Where things stand across a drawing of an arrangement, in px.
const (
	detailLeft  = 24
	detailRight = width - 24
	detailPitch = 60 // between devices, at most
	perRow      = 7
)

// sheet is a drawing of an arrangement under way.
type sheet struct {
	room
	a      *devices.Arrangement
	opt    DetailOptions
	pitch  float64
	rows   []stretch
	pipes  []Item
	items  []Item
	y      float64
	number map[string]int // of a station, by its key
}

// stretch is a row of the main run: its devices from from, below to.
type stretch struct {
	from, to int
	y        float64
}

// Detail draws an arrangement: the main run in rows from left to right, its
// side runs above and below, each device with its number and what is to be
// seen at it, and a list of the devices under it.
func Detail(a *devices.Arrangement, opt DetailOptions) *Scene {
	if opt.Title == "" {
		opt.Title = a.Title
	}
	s := &sheet{a: a, opt: opt, number: map[string]int{}}
	for i, p := range Picks(a, false) {
		s.number[p.Key] = i + 1
	}
	s.rows = rowsOf(a)
	most := 1
	for _, r := range s.rows {
		most = max(most, r.to-r.from)
	}
	s.pitch = min(detailPitch, (detailRight-detailLeft)/float64(most))
	for i := range s.rows {
		s.row(i)
	}
	s.list()
	paper := rect("paper", Paper, Box{0, 0, width, s.y})
	return &Scene{
		Width: width, Height: s.y, Title: opt.Title,
		Desc:  "The water goes from left to right, row by row. Not to scale, for study.",
		Items: append(append([]Item{paper}, s.pipes...), s.items...),
		Table: detailTable(a),
	}
}

// detailTable is the drawing as rows.
func detailTable(a *devices.Arrangement) [][]string {
	rows := [][]string{{"Place", "Run", "Device", "How it stands"}}
	n := 0
	for i, r := range a.Runs {
		for _, st := range r.Stand {
			n++
			how := "with the flow"
			if d, ok := devices.ByID(st.Device); ok && d.Way == "" {
				how = ""
			}
			if st.Turned {
				how = "against the flow"
			}
			parts := append(slices.DeleteFunc([]string{how}, func(s string) bool { return s == "" }), st.Marks...)
			if len(parts) == 0 {
				parts = []string{"in its place"}
			}
			name := r.Name
			if i > 0 {
				name += " (" + course(a, r) + ")"
			}
			rows = append(rows, []string{strconv.Itoa(n), name, nameOf(st), strings.Join(parts, ", ")})
		}
	}
	return rows
}

// course says where a side run leaves the main one and joins it.
func course(a *devices.Arrangement, r devices.Run) string {
	main := a.Runs[0]
	var says string
	switch {
	case r.After >= 0 && r.After < len(main.Stand):
		says = "leaves behind " + strconv.Itoa(r.After+1)
	case r.From != "":
		says = "from " + r.From
	default:
		says = "leaves at the head"
	}
	switch {
	case r.Join >= len(main.Stand):
		says += ", joins at the end"
	case r.Join >= 0:
		says += ", joins ahead of " + strconv.Itoa(r.Join+1)
	case r.To != "":
		says += ", to " + r.To
	default:
		says += ", ends"
	}
	return says
}

// station puts a device on the sheet: its sign, its number, its marks.
func (s *sheet) station(run devices.Run, at int, x, y float64) {
	st := run.Stand[at]
	t := right
	if st.Turned {
		t = left
	}
	key := stationKey(run.Name, at)
	n := s.number[key]
	items := deviceSign(st.Device, x, y, t)
	items = append(items, text("number", strconv.Itoa(n), x, y+28, 12, "middle").bold())
	for i, m := range marksOf(st, s.pitch) {
		items = append(items, text("told", m, x, y+41+12*float64(i), small, "middle"))
	}
	label := strconv.Itoa(n) + " " + nameOf(st)
	if st.Turned {
		label += ", against the flow"
	}
	if len(st.Marks) > 0 {
		label += ", " + strings.Join(st.Marks, ", ")
	}
	for _, it := range items {
		s.take(it.Bounds(), "")
	}
	if s.opt.Gaps {
		s.items = append(s.items, group("device", "", "", items...))
		return
	}
	hit := rect("hit", "", Box{x - 22, y - 29, x + 22, y + 31})
	hit.R = 6
	s.items = append(s.items, group("device", key, label, append(items, hit)...))
}

// gap is a place between two devices that can be pointed at.
func (s *sheet) gap(at int, x, y float64) {
	hit := rect("hit", "", Box{x - s.pitch/2, y - 26, x + s.pitch/2, y + 26})
	hit.R = 6
	hit.X, hit.W = max(hit.X, 1), min(hit.W, width-1-hit.X)
	s.items = append(s.items, group("gap", gapKey(s.a.Runs[0].Name, at), gapSays(s.a.Runs[0], at),
		circle("hole", Paper, 1.4, x, y, 7.5), line("hole", 1.6, Point{x - 4, y}, Point{x + 4, y}), line("hole", 1.6, Point{x, y - 4}, Point{x, y + 4}), hit))
}

// marksOf are the words at a device, in lines as wide as there is room.
func marksOf(st devices.Station, wide float64) []string {
	var lines []string
	for _, m := range st.Marks {
		current := ""
		for _, word := range strings.Fields(m) {
			if current != "" && textWidth(current+" "+word, small, false) > wide-4 {
				lines = append(lines, current)
				current = ""
			}
			current = strings.TrimSpace(current + " " + word)
		}
		lines = append(lines, current)
	}
	return lines
}

func linesOf(stand []devices.Station, wide float64) float64 {
	most := 0
	for _, st := range stand {
		most = max(most, len(marksOf(st, wide)))
	}
	return float64(most)
}

// list names the devices by their numbers, in two columns where they fit.
func (s *sheet) list() {
	picks := Picks(s.a, false)
	s.y += 4
	s.items = append(s.items, line("rule", 0.8, Point{xLabel, s.y}, Point{width - xLabel, s.y}))
	col, half := 0, float64(width)/2
	for _, p := range picks {
		number, name, _ := strings.Cut(p.Says, " ")
		wide := textWidth(name, 11.5, false) > half-28
		if col == 0 || wide {
			s.y += 17
			col = 0
		}
		x := 6 + float64(col)*half
		s.items = append(s.items, text("number", number, x+14, s.y, 12, "end").bold(), text("legend", name, x+20, s.y, 11.5, ""))
		col = 1 - col
		if wide {
			col = 0
		}
	}
	s.y += 18
	s.items = append(s.items, text("note", "Not to scale · for study", width/2, s.y, small, "middle"))
	s.y += 6
}
