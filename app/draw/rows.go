package draw

import "riserwork/solver"

// rowKind is what a row of the sheet shows.
type rowKind uint8

const (
	levelRow rowKind = iota
	foldRow          // levels that are alike
	pitRow
	earthRow // under a building with no level below ground
)

// row is a strip of the sheet: a level, or a run of levels folded into one.
type row struct {
	kind   rowKind
	lo, hi int     // levels, the same where one is drawn
	y0, y1 float64 // ceiling and floor
	branch float64 // of the fixtures' branch
	valve  float64 // of a reducing valve
	hot    float64 // top of the heater's part; 0: none here
	train  float64 // of the entry's or the booster's pipe; 0: none here
}

// Heights of rows and their parts, in px.
const (
	plainHeight  = 34
	askedHeight  = 46
	valveHeight  = 52
	headerHeight = 58
	hotHeight    = 106
	trainHeight  = 70
	mainHeight   = 100 // under the ground line, where the main lies
	maxUnfolded  = 14  // storeys
)

// rows lays out the strips of the sheet, highest first, from y down.
func (p *plan) rows(opt Options, y float64) []row {
	var out []row
	b := p.b
	keep := p.kept(opt)
	for i := b.Top(); i >= 0; i-- {
		lo := i
		for !keep[i] && lo > 0 && !keep[lo-1] {
			lo--
		}
		kind := levelRow
		if lo < i {
			kind = foldRow
		}
		out = append(out, p.row(kind, lo, i, opt, &y))
		i = lo
	}
	switch {
	case p.hasPit():
		out = append(out, p.row(pitRow, pit, pit, opt, &y))
	case b.Ground == 0:
		out = append(out, row{kind: earthRow, lo: none, hi: none, y0: y, y1: y + mainHeight - 20})
	}
	return out
}

func (p *plan) row(kind rowKind, lo, hi int, opt Options, y *float64) row {
	r := row{kind: kind, lo: lo, hi: hi, y0: *y}
	h := float64(plainHeight)
	up := false // a valve on the branch of the level
	if kind != foldRow {
		if opt.asks(lo) {
			h = askedHeight
		}
		for _, z := range p.zones {
			if z.valve == lo {
				h = valveHeight
				up = z.Supply != solver.FromHeader
			}
		}
		if p.high == lo {
			h = headerHeight
		}
	}
	r.branch, r.valve = r.y0+h-13, r.y0+17
	if up {
		r.branch, r.valve = r.y0+26, r.y0+26
	}
	r.y1 = r.y0 + h
	if kind != foldRow && p.hot == lo {
		r.hot = r.y1
		r.y1 += hotHeight
	}
	if kind != foldRow && (p.entry == lo || p.pump == lo) {
		r.y1 += trainHeight
		r.train = r.y1 - 34
	}
	if p.underGround(lo) {
		r.y1 = max(r.y1, r.y0+mainHeight)
		if r.train > 0 {
			r.train = max(r.train, r.y1-34)
		}
	}
	*y = r.y1
	return r
}

// underGround reports whether a level is the first one under the ground.
func (p *plan) underGround(level int) bool {
	return level == p.b.Ground-1 && level != none
}

// kept says which levels are drawn by themselves. All are where the building
// is low; else those that something stands on, the limits of zones, the lowest
// and the highest two, and those asked or told about.
func (p *plan) kept(opt Options) []bool {
	b := p.b
	keep := make([]bool, b.Top()+1)
	if b.Storeys() <= maxUnfolded {
		for i := range keep {
			keep[i] = true
		}
		return keep
	}
	mark := func(i int) {
		if i >= 0 && i < len(keep) {
			keep[i] = true
		}
	}
	for i := 0; i <= b.Ground+1; i++ {
		mark(i)
	}
	mark(b.Top() - 1)
	mark(b.Top())
	for _, i := range []int{p.entry, p.pump, p.high, p.hot} {
		mark(i)
	}
	for _, z := range p.zones {
		mark(z.Bottom)
		mark(z.Top)
		mark(z.valve)
	}
	if opt.Ask != nil {
		mark(opt.Ask.Level)
	}
	for _, n := range opt.Notes {
		mark(n.Level)
	}
	for i := range keep {
		if b.Levels[i].Role == solver.Mechanical {
			keep[i] = true
		}
	}
	return keep
}
