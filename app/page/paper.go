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

// paperKey is where the paper under way is saved.
const paperKey = "riserwork-paper"

const paperVersion = 1

// paperSaved is the paper under way: what names it, and each part as typed.
type paperSaved struct {
	Version int            `json:"version"`
	Draws   int            `json:"draws"` // version of the papers
	Size    paper.Size     `json:"size"`
	Seed    uint64         `json:"seed"`
	House   problems.House `json:"house"`
	At      int            `json:"at"` // the part that lies open
	Parts   []partSaved    `json:"parts"`
}

// partSaved is one part as typed.
type partSaved struct {
	Lines  []entry `json:"lines"`
	Marked bool    `json:"marked,omitempty"`
}

func (s *paperSaved) check() error {
	if s.Version != paperVersion {
		return errVersion(s.Version, paperVersion)
	}
	if len(s.Parts) > paper.MaxParts || s.At < 0 || s.At > len(s.Parts) {
		return errors.New("it has more parts than a paper can have")
	}
	for _, p := range s.Parts {
		if len(p.Lines) > maxLines {
			return errors.New("a part in it has more lines than a part can have")
		}
		for _, e := range p.Lines {
			if length16(e.Text) > 4*maxLine || e.Hints < 0 || e.Hints > hintTurns {
				return errors.New("a line in it is longer than a line can be")
			}
		}
	}
	s.House = sound(s.House)
	return nil
}

func loadPaper(s app.BrowserStorage) (paperSaved, string) {
	p := paperSaved{Version: paperVersion}
	says := load(s, paperKey, "your paper", &p)
	return p, says
}

// fresh is nothing written yet on a paper.
func fresh(p *paper.Paper) paperSaved {
	s := paperSaved{Version: paperVersion, Draws: paper.Version, Size: p.Size, Seed: p.Seed, House: p.House}
	for i := range p.Parts {
		s.Parts = append(s.Parts, partSaved{Lines: make([]entry, len(p.Parts[i].Steps))})
	}
	return s
}

// of reports whether what is saved was typed on a paper.
func (s *paperSaved) of(p *paper.Paper, size paper.Size) bool {
	return s.Draws == paper.Version && s.Size == size && s.Seed == p.Seed && sameHouse(s.House, p.House) && len(s.Parts) == len(p.Parts) && s.At < len(s.Parts)
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
