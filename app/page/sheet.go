package page

import (
	"errors"
	"slices"
	"strings"

	"riserwork/problems"
)

// sheet is a problem under way: what names it, and the lines as typed.
type sheet struct {
	Skill   string         `json:"skill"`
	Version int            `json:"version"` // of the skill
	Seed    uint64         `json:"seed"`
	House   problems.House `json:"house"`
	Kind    string         `json:"kind,omitempty"`
	Lines   []entry        `json:"lines"`
	Given   int            `json:"given,omitempty"`  // lines at the head that are shown worked
	Tapped  []int          `json:"tapped,omitempty"` // lines or answers that were tapped, in order
	Mix     []int          `json:"mix,omitempty"`
	Givens  []problems.Own `json:"givens,omitempty"` // numbers of one's own
	Marked  bool           `json:"marked,omitempty"` // as a whole, once
	Done    bool           `json:"done,omitempty"`
	Shown   bool           `json:"shown,omitempty"` // the working was seen before it was done
	Noted   noted          `json:"noted"`           // what of it is in the record
}

// entry is one line of a sheet.
type entry struct {
	Text   string `json:"text"`
	Marked bool   `json:"marked,omitempty"` // its finding shows
	Hints  int    `json:"hints,omitempty"`  // hints shown, of three
	HintAt string `json:"hintAt,omitempty"` // what stood there at the last hint
	Noted  string `json:"noted,omitempty"`  // what of it is in the record
}

// noted is what of a sheet is in the record, beside its lines.
type noted struct {
	Marked bool `json:"marked,omitempty"`
	Done   bool `json:"done,omitempty"`
	Tapped int  `json:"tapped,omitempty"`
}

// names reports whether the sheet is that of the address.
func (s *sheet) names(a address) bool {
	return s.Skill == a.skill.ID && s.Version == a.skill.Version && s.Seed == a.seed && s.Kind == a.kind && sameHouse(s.House, a.house) && slices.Equal(s.Givens, a.givens)
}

// begun reports whether anything stands on the sheet.
func (s *sheet) begun() bool { return len(s.Tapped) > 0 || s.written() > s.Given }

// written counts the lines that are not empty.
func (s *sheet) written() int {
	n := 0
	for _, e := range s.Lines {
		if strings.TrimSpace(e.Text) != "" {
			n++
		}
	}
	return n
}

// Bounds of the saved sheets.
const (
	maxSheets = 6
	maxLines  = 60
)

// desk is the sheets that lie open, the latest first.
type desk struct {
	Version int     `json:"version"`
	Sheets  []sheet `json:"sheets"`
}

const deskVersion = 1

// check refuses a desk that was not written by this program.
func (d *desk) check() error {
	if d.Version != deskVersion {
		return errVersion(d.Version, deskVersion)
	}
	if len(d.Sheets) > maxSheets {
		return errors.New("there are more open problems in it than are ever saved")
	}
	for _, s := range d.Sheets {
		if len(s.Lines) > maxLines || len(s.Tapped) > maxLines {
			return errors.New("a problem in it has more lines than a problem can have")
		}
		if s.Kind != readKind(s.Kind) {
			return errors.New("a problem in it is worked in a way that is not here")
		}
		if s.Given < 0 || s.Given > len(s.Lines) || s.Noted.Tapped < 0 {
			return errors.New("a problem in it has more lines shown than lines")
		}
		if len(s.Givens) > maxLines || slices.ContainsFunc(s.Givens, func(o problems.Own) bool { return len(o.Name)+len(o.Text) > 8*maxOwn }) {
			return errors.New("a number in it is longer than a number can be")
		}
		for _, e := range s.Lines {
			if length16(e.Text) > 4*maxLine || length16(e.Noted) > 4*maxLine || e.Hints < 0 || e.Hints > hintTurns {
				return errors.New("a line in it is longer than a line can be")
			}
		}
	}
	return nil
}

// find is the sheet of an address.
func (d *desk) find(a address) (sheet, bool) {
	for _, s := range d.Sheets {
		if s.names(a) {
			return s, true
		}
	}
	return sheet{}, false
}

// put lays a sheet on top, in place of its older state.
func (d *desk) put(s sheet) {
	s.Lines, s.Tapped = slices.Clone(s.Lines), slices.Clone(s.Tapped)
	d.Version = deskVersion
	d.Sheets = slices.DeleteFunc(d.Sheets, func(o sheet) bool {
		return o.Skill == s.Skill && o.Version == s.Version && o.Seed == s.Seed && o.Kind == s.Kind && sameHouse(o.House, s.House) && slices.Equal(o.Givens, s.Givens)
	})
	d.Sheets = slices.Insert(d.Sheets, 0, s)
	d.Sheets = d.Sheets[:min(len(d.Sheets), maxSheets)]
}
