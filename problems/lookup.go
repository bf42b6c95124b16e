package problems

import (
	"strings"

	"riserwork/solver"
)

// rowsBeside is how many rows an excerpt shows on each side of the key.
const rowsBeside = 3

// LookUp is the piece of a table that step i reads: rows around the one that
// is looked for, with neighbours that tempt. Nothing in it says which is
// right. False where the step reads none.
func (p *Problem) LookUp(i int) (t *solver.Table, rows []solver.TableRow, ok bool) {
	s, env := &p.Steps[i], p.Env()
	if s.Table == "" {
		return nil, nil, false
	}
	if t, ok = solver.TableNamed(p.Fill(s.Table, env), p.House.Profile().ID); !ok {
		return nil, nil, false
	}
	at := p.Slot(s.Row)
	if at < 0 {
		at = p.Given(s.Row)
	}
	switch {
	case at >= 0:
		rows = t.Around(p.House.System, env[at], rowsBeside)
	case s.Row != "":
		rows = t.About(p.House.System, thing(p.Fill(s.Row, env)))
	}
	if len(rows) == 0 {
		rows = t.Rows(p.House.System)
	}
	return t, rows, true
}

// thing is a word without its article: "a lavatory" is found as "lavatory".
func thing(text string) string {
	return strings.TrimPrefix(strings.TrimPrefix(text, "an "), "a ")
}
