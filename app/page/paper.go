package page

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/paper"
)

// papersKey is where the papers under way are saved.
const papersKey = "riserwork-papers"

const papersVersion = 1

// maxPapers is how many papers are kept.
const maxPapers = 4

// papers are those that lie begun, the latest first.
type papers struct {
	Version int          `json:"version"`
	Papers  []paperSaved `json:"papers"`
}

// paperSaved is a paper under way: what names it, and each part as typed.
type paperSaved struct {
	Draws int            `json:"draws"` // version of the papers
	Size  paper.Size     `json:"size"`
	Seed  uint64         `json:"seed"`
	House problems.House `json:"house"`
	Says  string         `json:"says"` // the building in a few words
	At    int            `json:"at"`   // the part that lies open
	Parts []partSaved    `json:"parts"`
}

// partSaved is one part as typed.
type partSaved struct {
	Lines  []entry `json:"lines"`
	Marked bool    `json:"marked,omitempty"`
	Noted  noted   `json:"noted"` // what of it is in the record
}

func (d *papers) check() error {
	if d.Version != papersVersion {
		return errVersion(d.Version, papersVersion)
	}
	if len(d.Papers) > maxPapers {
		return errors.New("there are more papers in it than are ever saved")
	}
	for i := range d.Papers {
		if err := d.Papers[i].check(); err != nil {
			return err
		}
	}
	return nil
}

func (s *paperSaved) check() error {
	if len(s.Parts) > paper.MaxParts || s.At < 0 || s.At >= len(s.Parts) {
		return errors.New("a paper in it has more parts than a paper can have")
	}
	if length16(s.Says) > maxLine {
		return errors.New("a paper in it has a longer name than a paper can have")
	}
	for _, p := range s.Parts {
		if len(p.Lines) > maxLines {
			return errors.New("a part in it has more lines than a part can have")
		}
		for _, e := range p.Lines {
			if length16(e.Text) > 4*maxLine || length16(e.Noted) > 4*maxLine || e.Hints < 0 || e.Hints > hintTurns {
				return errors.New("a line in it is longer than a line can be")
			}
		}
	}
	s.House = sound(s.House)
	return nil
}

func loadPapers(s app.BrowserStorage) (papers, string) {
	d := papers{Version: papersVersion}
	says := load(s, papersKey, "your papers", &d)
	return d, says
}

// fresh is nothing written yet on a paper.
func fresh(p *paper.Paper, size paper.Size) paperSaved {
	says, _, _ := strings.Cut(p.Says, " over ")
	s := paperSaved{Draws: paper.Version, Size: size, Seed: p.Seed, House: p.House, Says: says}
	for i := range p.Parts {
		s.Parts = append(s.Parts, partSaved{Lines: make([]entry, len(p.Parts[i].Steps))})
	}
	return s
}

// find is what was typed on a paper, which may be nothing.
func (d *papers) find(p *paper.Paper, size paper.Size) paperSaved {
	of := fresh(p, size)
	for _, s := range d.Papers {
		if s.same(&of) && s.fits(&of) {
			return s
		}
	}
	return of
}

// put lays a paper on top, in place of its older state.
func (d *papers) put(s paperSaved) {
	d.Version = papersVersion
	s.Parts = slices.Clone(s.Parts)
	for i := range s.Parts {
		s.Parts[i].Lines = slices.Clone(s.Parts[i].Lines)
	}
	d.Papers = slices.DeleteFunc(d.Papers, func(o paperSaved) bool { return o.same(&s) })
	d.Papers = slices.Insert(d.Papers, 0, s)
	d.Papers = d.Papers[:min(len(d.Papers), maxPapers)]
}

// same reports whether two are states of one paper.
func (s *paperSaved) same(o *paperSaved) bool {
	return s.Draws == o.Draws && s.Size == o.Size && s.Seed == o.Seed && sameHouse(s.House, o.House)
}

// fits reports whether what is saved has the parts and lines of a fresh one.
func (s *paperSaved) fits(fresh *paperSaved) bool {
	return slices.EqualFunc(s.Parts, fresh.Parts, func(a, b partSaved) bool { return len(a.Lines) == len(b.Lines) })
}

// stands says how far a paper is.
func (s *paperSaved) stands() string {
	n := 0
	for i := range s.Parts {
		if s.Parts[i].Marked {
			n++
		}
	}
	return fmt.Sprintf("%s: %d of %d parts marked", s.Says, n, len(s.Parts))
}

// texts are the lines of all parts.
func (s *paperSaved) texts() [][]string {
	out := make([][]string, len(s.Parts))
	for i := range s.Parts {
		for _, e := range s.Parts[i].Lines {
			out[i] = append(out[i], strings.TrimSpace(e.Text))
		}
	}
	return out
}

// begun reports whether a part has a line.
func (p *partSaved) begun() bool {
	return slices.ContainsFunc(p.Lines, func(e entry) bool { return strings.TrimSpace(e.Text) != "" })
}

// places are where the answer of a part stands on the drawing.
var places = map[string]draw.Place{
	"top-static": draw.AtOutlet, "boost": draw.AtPump, "demand": draw.AtMeter,
	"mixing": draw.AtMixing, "input": draw.AtHeater, "loop": draw.AtLoop,
}

// drawing is the riser diagram as far as the parts are solved.
func drawing(p *paper.Paper, m *paper.Marked, marked func(int) bool) *draw.Scene {
	done := func(name string) bool {
		i := p.Index(name)
		return i >= 0 && marked(i) && m.Parts[i].Done
	}
	b := p.Building.Copy()
	if !done("need") {
		b.Booster = nil
	}
	if !done("zones") || b.Booster == nil {
		b.Zones = nil
	}
	opt := draw.Options{System: p.House.System, HideElevations: !done("height"), HideZones: b.Zones == nil}
	for i := range p.Parts {
		place, ok := places[p.Parts[i].Name]
		if !ok || !done(p.Parts[i].Name) || place == draw.AtPump && b.Booster == nil {
			continue
		}
		a := m.Parts[i].Judged.Answer()
		level := b.Ground
		if place == draw.AtOutlet {
			level = b.Top()
		}
		opt.Notes = append(opt.Notes, draw.Note{Level: level, Where: place, Text: a.Text(a.Value)})
	}
	if !done("setting") {
		for i := range b.Zones {
			b.Zones[i].Valve = nil
		}
	}
	scene := draw.Riser(b, nil, opt)
	return &scene
}

// partWord says how a part stands.
func partWord(m *paper.PartMark, s *partSaved) string {
	switch {
	case s.Marked && m.Done && m.Marks == m.Of:
		return "right"
	case s.Marked:
		return fmt.Sprintf("%d of %d", m.Marks, m.Of)
	case s.begun():
		return "begun"
	}
	return "open"
}
