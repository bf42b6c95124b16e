package marking

import (
	"math"
	"strings"

	"riserwork/problems"
	"riserwork/solver/formula"
	"riserwork/solver/unit"
)

// reading is one line as it may be read. A line with a comma that is either a
// decimal or a thousands mark has two.
type reading struct {
	value   float64 // the number written last; NaN where only an expression stands
	half    float64 // half of its last place
	figures int
	digits  string // as written, for digits that changed places
	written bool   // a number was written as the line's result
	expr    *formula.Expr
	unit    unit.Unit
	hasUnit bool
	label   string
	word    string // "yes" or "no", or a word of a choice
}

// maxLine bounds the bytes of one line that are read.
const maxLine = 400

// readLine reads a line in every way that it may be meant; none where it
// holds no number, with the reason.
func readLine(p *problems.Problem, text string) ([]reading, string) {
	text = strings.TrimSpace(text)
	if len(text) > maxLine {
		return nil, "the line is longer than 400 characters"
	}
	if w := choiceIn(p, text); w != "" {
		return []reading{{value: math.NaN(), word: w}}, ""
	}
	first, err := formula.ReadLine(text, lineOptions(p, false))
	if err != nil {
		return nil, err.Error()
	}
	out := []reading{toReading(first)}
	if first.Ambiguous {
		if second, err := formula.ReadLine(text, lineOptions(p, true)); err == nil {
			out = append(out, toReading(second))
		}
	}
	return out, ""
}

func lineOptions(p *problems.Problem, comma bool) formula.Options {
	return formula.Options{
		DecimalComma: comma, Imperial: p.House.Imperial,
		Names: func(name string) bool { return p.Slot(name) >= 0 },
	}
}

func toReading(l formula.Line) reading {
	r := reading{value: math.NaN(), unit: l.Unit, hasUnit: l.HasUnit, label: l.Label, word: l.Choice}
	if n := len(l.Exprs); n > 0 {
		r.expr = l.Exprs[n-1]
	}
	if l.Value != nil {
		r.value, r.half, r.figures, r.digits, r.written = l.Value.Value, l.Value.Half, l.Value.Figures, l.Value.Text, true
		if !r.hasUnit && l.Value.Unit.Name != "" {
			r.unit, r.hasUnit = l.Value.Unit, true
		}
	}
	return r
}

// number is a reading turned to the unit of a step.
type number struct {
	v, half  float64 // the value written
	e, eHalf float64 // the value of the expression, where there is one
	hasExpr  bool
	figures  int
	digits   string
	turned   bool // it was written in another unit of the same kind
	raw      bool // its unit does not fit the step: the bare number is taken
	noUnit   bool // no unit stands by it and one is needed
}

// numbers are the ways a reading may answer step s: in its own unit, and as a
// bare number where that unit does not fit.
func (m *sheet) numbers(r reading, s *problems.Step) []number {
	if r.word != "" || len(s.Choices) > 0 {
		return choice(r, s)
	}
	n := number{v: r.value, half: r.half, figures: r.figures, digits: r.digits}
	m.addExpr(&n, r)
	if !r.written {
		if !n.hasExpr {
			return nil
		}
		n.v, n.half, n.figures = n.e, 0, 9
	}
	if !r.hasUnit {
		n.noUnit = s.Unit.Name != "" && s.Unit.Name != "%"
		return m.withUnits(n, r, s)
	}
	from, to := r.unit, s.Unit
	if to.Zero != unit.Scale {
		from = from.Difference()
	}
	if from.Dim == to.Dim && zeroFits(from, to) {
		if from.Factor == to.Factor && from.Offset == to.Offset {
			return m.withUnits(n, r, s)
		}
		t := n.turn(from, to)
		n.raw = true
		return []number{t, n}
	}
	n.raw = true
	return []number{n}
}

// zeroFits reports whether a pressure or temperature written from one zero
// may answer a step that counts from another: plain psi may stand for both.
func zeroFits(from, to unit.Unit) bool {
	return from.Zero == to.Zero || from.Zero == unit.Plain || to.Zero == unit.Plain && from.Zero != unit.Absolute
}

// turn converts the number and its half from one unit to another.
func (n number) turn(from, to unit.Unit) number {
	plainFrom, plainTo := from, to
	plainFrom.Zero, plainTo.Zero = unit.Plain, unit.Plain
	conv := func(v float64) float64 { return plainFrom.Convert(v, plainTo) }
	scale := math.Abs(from.Factor / to.Factor)
	n.v, n.half = conv(n.v), n.half*scale
	if n.hasExpr {
		n.e, n.eHalf = conv(n.e), n.eHalf*scale
	}
	n.turned, n.digits = true, ""
	return n
}

// addExpr works out the line's expression over what is told and the
// learner's own numbers.
func (m *sheet) addExpr(n *number, r reading) {
	if r.expr == nil {
		return
	}
	b, err := r.expr.Bind(m.p.Slot)
	if err != nil {
		return
	}
	env := m.ownIntervals()
	for i := range env {
		env[i] = formula.Around((env[i].Lo+env[i].Hi)/2, 0)
	}
	span := b.Span(env)
	if math.IsInf(span.Lo, 0) || math.IsInf(span.Hi, 0) || math.IsNaN(span.Lo) || math.IsNaN(span.Hi) {
		return
	}
	n.e, n.eHalf, n.hasExpr = b.Eval(m.ownEnv()), span.Width()/2, true
	if math.IsNaN(n.e) {
		n.hasExpr = false
	}
}

// withUnits adds the reading of an expression whose numbers bear units of
// another system: 428 kPa - 9.81 kPa/m x 29.3 m answers a step in psi.
func (m *sheet) withUnits(n number, r reading, s *problems.Step) []number {
	if r.expr == nil {
		return []number{n}
	}
	q, err := r.expr.Check(func(name string) (unit.Quantity, bool) {
		i := m.p.Slot(name)
		if i < 0 {
			return unit.Quantity{}, false
		}
		return m.p.SlotUnit(i).Of(m.ownEnv()[i]), true
	})
	if err != nil || q.Unit.Dim != s.Unit.Dim || q.Unit.IsNumber() || (q.Unit.Zero == unit.Scale) != (s.Unit.Zero == unit.Scale) {
		return []number{n}
	}
	e := s.Unit.FromSI(q.SI())
	if math.IsNaN(e) || math.Abs(e-n.e) <= 1e-9*math.Abs(e) {
		if !r.written {
			n.noUnit = false
		}
		return []number{n}
	}
	t := n
	t.e, t.eHalf, t.turned = e, 5e-4*math.Abs(e), true
	if !r.written {
		t.v, t.noUnit = e, false
	}
	return []number{n, t}
}

// choiceIn is the word of a decision that a line consists of, or, where it
// holds no digit, the only one that it holds.
func choiceIn(p *problems.Problem, text string) string {
	text = strings.ToLower(strings.Trim(text, " .:=!"))
	found := ""
	for _, s := range p.Steps {
		for _, c := range s.Choices {
			c = strings.ToLower(c)
			if c == text {
				return c
			}
			if strings.ContainsAny(text, "0123456789") || !hasWord(text, c) || strings.Contains(found, c) {
				continue
			}
			if found != "" && !strings.Contains(c, found) {
				return ""
			}
			found = c
		}
	}
	return found
}

// hasWord reports whether a phrase stands in a text as whole words.
func hasWord(text, phrase string) bool {
	return strings.Contains(" "+strings.NewReplacer(",", " ", ".", " ", ":", " ", ";", " ").Replace(text)+" ", " "+phrase+" ")
}

// choice reads the word of a decision; a bare 0 or 1 is not one.
func choice(r reading, s *problems.Step) []number {
	if len(s.Choices) == 0 {
		return nil
	}
	word := strings.ToLower(r.word)
	if word == "" {
		word = strings.ToLower(strings.TrimSpace(r.label))
	}
	for i, c := range s.Choices {
		if word != "" && strings.EqualFold(c, word) {
			return []number{{v: float64(i), figures: 9}}
		}
	}
	return nil
}
