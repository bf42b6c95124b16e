package page

import (
	"slices"

	"riserwork/app/draw"
)

// behind is how many of the numbers one has come past stand on the picture.
const behind = 5

// picture is the riser diagram with a mark where one stands, its number where
// it is known, and the last few before it.
func (p *walkPage) picture() *draw.Scene {
	w, s := p.walk, p.station()
	opt := draw.Options{System: w.House.System, Ask: &draw.Note{Level: s.Level, Where: draw.Place(s.Where)}}
	if !p.asks(p.at) {
		opt.Ask.Text = s.Value
	}
	taken := []draw.Note{{Level: s.Level, Where: draw.Place(s.Where)}}
	for i := p.at - 1; i >= 0 && len(opt.Notes) < behind; i-- {
		before := &w.Stations[i]
		n := draw.Note{Level: before.Level, Where: draw.Place(before.Where)}
		if slices.Contains(taken, n) {
			continue
		}
		taken = append(taken, n)
		n.Text = before.Value
		opt.Notes = append(opt.Notes, n)
	}
	scene := draw.Riser(w.Building, w.Whole.Street, opt)
	if !p.asks(p.at) {
		dotted(scene.Items)
	}
	scene.Desc += " You are here: " + s.Place + "."
	return &scene
}

// dotted puts a dot in place of the question mark, where nothing is asked.
func dotted(items []draw.Item) {
	for i := range items {
		it := &items[i]
		if it.Part == "ask" && it.Text == "?" {
			it.Text = "●"
		}
		dotted(it.Kids)
	}
}
