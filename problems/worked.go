package problems

import (
	"strings"

	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// Line is one line of the right working, as an instructor writes it.
type Line struct {
	Says    string        // "pressure lost going up"
	Symbols string        // "gamma × height"
	Numbers string        // "0.433 × 96"
	Value   string        // "41.6 psi"
	Why     string        // why this line is so
	Expr    *formula.Expr // for MathML
}

// Worked is the whole right working.
func (p *Problem) Worked() []Line {
	env := p.Env()
	lines := make([]Line, len(p.Steps))
	for i := range p.Steps {
		lines[i] = p.WorkedLine(i, env)
	}
	return lines
}

// WorkedLine is line i of the right working over the numbers of env, which
// may be the learner's own where they stand.
func (p *Problem) WorkedLine(i int, env []float64) Line {
	s := &p.Steps[i]
	return Line{
		Says:    p.Fill(s.Says, env),
		Symbols: s.Expr.Text(),
		Numbers: s.Expr.Numbers(func(name string) string { return p.bare(name, env) }),
		Value:   s.Text(s.Bound.Eval(env)),
		Why:     p.Fill(s.Why, env),
		Expr:    s.Expr,
	}
}

// bare is the number of a name without its unit, for a line of arithmetic.
func (p *Problem) bare(name string, env []float64) string {
	i := p.Slot(name)
	if i < 0 {
		return name
	}
	text := p.SlotText(i, env[i])
	if strings.ContainsRune(text, '\'') {
		return unit.Format(env[i], 4)
	}
	if s := i - len(p.Told); s >= 0 && len(p.Steps[s].Choices) > 0 {
		return text
	}
	text = strings.TrimSuffix(text, p.SlotUnit(i).Name)
	return strings.TrimSuffix(text, "\u00a0")
}

// Hint is help with step i in three goes: which line, which rule, the line
// worked.
func (p *Problem) Hint(i, turn int, env []float64) string {
	l := p.WorkedLine(i, env)
	switch turn {
	case 1:
		return "Look for this line: " + l.Says + "."
	case 2:
		return l.Says + " = " + l.Symbols
	}
	return l.Says + " = " + l.Symbols + " = " + l.Numbers + " = " + l.Value
}
