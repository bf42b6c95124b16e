package solver

import (
	"strings"

	"riserwork/solver/unit"
)

// Table is a table as it is shown to a reader: its heading and its rows in
// the units of a system, and where they are from.
type Table struct {
	Name       string // in links: "demand"
	Title      string
	Source     string
	Confidence Confidence // of the rows that do not say their own
	Note       string     // how it is read; may be empty
	Head       func(unit.System) []string
	Rows       func(unit.System) []TableRow
}

// TableRow is a row: the number that it is found by, 0 where a word finds it,
// and its cells as printed.
type TableRow struct {
	Key   float64
	Cells []string
}

// TableNamed is the table of a name; where each code has its own, that of the
// profile, and that of the IPC for a profile without one.
func TableNamed(name, profile string) (*Table, bool) {
	for _, try := range []string{name, name + "-" + profile, name + "-ipc"} {
		for i := range Tables {
			if Tables[i].Name == try {
				return &Tables[i], true
			}
		}
	}
	return nil, false
}

// Around are the rows about a key, so many on each side of where it lies,
// which is not marked; all rows where no number finds them.
func (t *Table) Around(s unit.System, key float64, beside int) []TableRow {
	rows := t.Rows(s)
	at := 0
	for at < len(rows) && rows[at].Key <= key {
		at++
	}
	return rows[max(0, at-beside):min(len(rows), at+beside)]
}

// About are the rows whose first cell holds a word, each with its neighbours,
// so that the lines for another use stand there as they do in print.
func (t *Table) About(s unit.System, word string) []TableRow {
	rows := t.Rows(s)
	near := make([]bool, len(rows)+2)
	for i, r := range rows {
		if strings.Contains(plain(r.Cells[0]), plain(word)) {
			near[i], near[i+1], near[i+2] = true, true, true
		}
	}
	var out []TableRow
	for i, r := range rows {
		if near[i+1] {
			out = append(out, r)
		}
	}
	return out
}

// plain is a text for comparing: small letters and plain spaces.
func plain(text string) string { return strings.ToLower(strings.ReplaceAll(text, "\u00a0", " ")) }

// in chooses the heading of a system.
func in(us, si []string) func(unit.System) []string {
	return func(s unit.System) []string {
		if s == unit.US {
			return us
		}
		return si
	}
}

// said is one heading for every system.
func said(head ...string) func(unit.System) []string { return in(head, head) }

func cell(v float64, figures int) string { return unit.Format(v, figures) }
