package marking

import (
	"riserwork/problems"
)

// SchemeLine is one line of a mark scheme.
type SchemeLine struct {
	Says     string // what the line works out
	Method   string // what earns the mark for method
	Value    string // what earns the mark for the value
	From, To string // values taken when earlier lines were rounded
}

// Scheme is the mark scheme of a problem, for an instructor.
func Scheme(p *problems.Problem) []SchemeLine {
	band := p.ChainBand((*problems.Step).Coarse)
	var out []SchemeLine
	for i, l := range p.Worked() {
		s := &p.Steps[i]
		b := band[p.StepSlot(i)]
		out = append(out, SchemeLine{l.Says, l.Symbols, l.Value, s.Text(b.Lo), s.Text(b.Hi)})
	}
	return out
}
